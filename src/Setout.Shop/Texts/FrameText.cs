using System.Collections.Immutable;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Shop.Texts;

/// <summary>Reads what frames have beside posts and bays.</summary>
internal static class FrameText
{
    private static readonly (string Word, Laid Value)[] s_laid = [("on edge", Laid.OnEdge), ("flat", Laid.Flat)];

    /// <summary>A pair of rails between two openings.</summary>
    public static Divider Rail(MapReader map, string key, Place place) =>
        new(key, map.Text("of"), place) { Rail = new(map.OneOf("laid", Laid.OnEdge, s_laid), map.Length("setback", mayBeZero: true), map.YesNo("covered", false)) };

    /// <summary>The slats before an opening; null for none.</summary>
    public static Slats? Slats(MapReader map)
    {
        if (map.Map("slats", "slats") is not { } slats) return null;
        (bool front, bool back) = slats.OneOf("at", (true, false), ("front", (true, false)), ("back", (false, true)), ("both", (true, true)));
        return new(slats.Required("of", "oak"), slats.Whole("count", 1, 1, 100), front, back, map.PlaceOf("slats"));
    }

    /// <summary>The stretchers of a frame.</summary>
    public static ImmutableArray<Stretcher> Stretchers(KeyBook keys, MapReader map)
    {
        var stretchers = ImmutableArray.CreateBuilder<Stretcher>();
        foreach (MapReader item in map.Maps("stretchers", "stretcher", "stretcher: S, at: ends, up: 6"))
        {
            string key = item.Key("stretcher");
            keys.Take(key, item.PlaceOf("stretcher"));
            StretcherAt at = item.OneOf("at", StretcherAt.Ends, ("ends", StretcherAt.Ends), ("front", StretcherAt.Front), ("back", StretcherAt.Back), ("middle", StretcherAt.Middle));
            Given? short_ = item.Length("short", mayBeZero: true);
            stretchers.Add(new(key, item.Text("of"), at, item.RequiredLength("up", "6", mayBeZero: true), item.OneOf("laid", Laid.OnEdge, s_laid), short_, item.PlaceOf("stretcher")));
        }
        return stretchers.ToImmutable();
    }
}
