using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Cutting.Runs;

namespace Setout.Shop.Texts;

/// <summary>Reads what the saws of a shop take: their kerfs, and how wide, long and narrow the work may be.</summary>
internal static class SawText
{
    // A saw cut, or a rough cut's distance from the line, of more than this is a slip of the pen: common practice, no source.
    private static readonly Length s_coarsest = Length.FromInches(1);

    /// <summary>The saws, and which of them are spoken of; those that are not are the usual ones, with the kerfs of this shop.</summary>
    public static (SawLimits Saws, ImmutableHashSet<SawWay> Told) Read(TextContext context, MapReader top, SawLimits usual)
    {
        MapReader? kerf = top.Map("kerf", "kerf");
        Length Kerf(string key, Length otherwise) => Within(kerf, key, otherwise, mayBeZero: true, s_coarsest);
        Length sheets = Kerf("sheets", usual.Fence!.Kerf), boards = Kerf("boards", usual.Boards!.Kerf), rips = Kerf("rips", usual.RipKerf);
        MapReader? saws = top.Map("saws", "saws");
        FenceSaw? fence = Fence(context, saws, usual.Fence with { Kerf = sheets });
        bool hasSled = saws?.IsNo("sled") != true;
        Sled? sled = Sled(saws, usual.Sled!);
        GuidedSaw? guided = Guided(saws, usual.Guided! with { Kerf = sheets });
        StopSaw? stop = Boards(saws, usual.Boards with { Kerf = boards });
        if (saws is not null && fence is null)
        {
            if (hasSled && saws.IsThere("sled"))
                context.Stop("shop.sled-alone", saws.PlaceOf("sled"), "There is a sled, but no table saw that it runs on.", "Write 'fence: {}' for a table saw like the usual one, or 'sled: no'.");
            if (guided is null && stop is null)
                context.Stop("shop.no-saw", saws.Place, "This shop has no saw at all.", "Take out the 'no' of a saw that is there, such as 'guided: no' of a hand-held saw that runs along a straight edge.");
            sled = null;
        }
        return (new(fence, sled, guided, stop, rips), saws is null ? [] : Told(saws));
    }

    private static ImmutableHashSet<SawWay> Told(MapReader saws) =>
        [.. new[] { ("fence", SawWay.Fence), ("sled", SawWay.Sled), ("guided", SawWay.Guide), ("boards", SawWay.Stop) }.Where(s => saws.IsThere(s.Item1)).Select(s => s.Item2)];

    private static FenceSaw? Fence(TextContext context, MapReader? saws, FenceSaw usual)
    {
        if (saws is null) return usual;
        if (saws.IsNo("fence")) return null;
        if (saws.MapUnlessNo("fence", "fence") is not { } map) return usual;
        Length widest = Within(map, "widest", usual.Widest), room = Within(map, "room", usual.Room), narrowest = Within(map, "narrowest", usual.Narrowest);
        Length carrier = Within(map, "carrier", Length.Min(usual.NarrowestCarried, narrowest));
        if (carrier > narrowest)
        {
            context.Stop("shop.carrier-wider", map.PlaceOf("carrier"), "A strip that needs a carrier is narrower than one that does without.", "Write for 'carrier' at most what 'narrowest' says (1 1/2 in where nothing is said), or make 'narrowest' larger.");
            carrier = narrowest;
        }
        if (narrowest > widest)
            context.Stop("shop.fence-too-near", map.PlaceOf(map.IsThere("widest") ? "widest" : "narrowest"), "The narrowest strip is wider than the fence goes from the blade.", "Write for 'narrowest' the least between fence and blade, and for 'widest' the most.");
        return usual with { Widest = widest, Room = room, Narrowest = narrowest, NarrowestCarried = carrier };
    }

    private static Sled? Sled(MapReader? saws, Sled usual)
    {
        if (saws?.IsNo("sled") == true) return null;
        MapReader? map = saws?.MapUnlessNo("sled", "sled");
        return new(Within(map, "deepest", usual.Deepest), Within(map, "longest", usual.Longest));
    }

    private static GuidedSaw? Guided(MapReader? saws, GuidedSaw usual)
    {
        if (saws?.IsNo("guided") == true) return null;
        if (saws?.MapUnlessNo("guided", "guided") is not { } map) return usual;
        return new(
            Within(map, "kerf", usual.Kerf, mayBeZero: true, s_coarsest), map.Length("shoe", mayBeZero: true) is { } shoe ? Tick(shoe) : usual.Shoe,
            Within(map, "longest", usual.Longest), Within(map, "rough", usual.Rough, mayBeZero: true, s_coarsest));
    }

    private static StopSaw? Boards(MapReader? saws, StopSaw usual)
    {
        if (saws?.IsNo("boards") == true) return null;
        return usual with { Widest = Within(saws?.MapUnlessNo("boards", "board-saw"), "widest", usual.Widest) };
    }

    private static Length Within(MapReader? map, string key, Length otherwise, bool mayBeZero = false, Length? most = null) => map?.Length(key, mayBeZero, most) is { } given ? Tick(given) : otherwise;

    private static Length Tick(Given given) => given.Value.ToNearestTick();
}
