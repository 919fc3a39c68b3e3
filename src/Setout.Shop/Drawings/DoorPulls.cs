using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Drawing.Elevations;

namespace Setout.Shop.Drawings;

/// <summary>The holes of handles on the fronts of doors: from the closing edge, and from one end.</summary>
internal static class DoorPulls
{
    /// <summary>The holes by the member they are drilled in, such as <c>D1</c> or <c>D2.stile#1</c>.</summary>
    public static ILookup<string, ModelHole> Of(SetPiece set, Whereabouts where) =>
        where.Doors.Where(d => !d.IsFromBehind).SelectMany(d => d.Doors.Keys.SelectMany((key, i) => Holes(set, d.Doors, key.Text, i))).ToLookup(h => h.Member, h => h.Hole, StringComparer.Ordinal);

    private static IEnumerable<(string Member, ModelHole Hole)> Holes(SetPiece set, DoorFilling doors, string key, int index)
    {
        if (set.Piece.DoorKinds.GetValueOrDefault(doors.Like.Text)?.Handles is not { } handles || Value("handle.across") is not { } across || Value("handle.along") is not { } along) yield break;
        bool closesAtRight = doors.Keys.Length > 1 ? index == 0 : !doors.HingesRight;
        bool isFramed = set.Parts.Any(p => p.Key == $"{key}.stile");
        string part = isFramed ? $"{key}.stile" : key;
        if (set.Parts.FirstOrDefault(p => p.Key == part)?.Placements is not { Length: > 0 } places) yield break;
        Placement box = closesAtRight ? places[^1] : places[0];
        ExactLength x = closesAtRight ? box.X + box.SizeX - across : box.X + across, first = handles.FromBottom is null ? box.Z + box.SizeZ - along : box.Z + along;
        ExactLength[] at = Value("handle.apart") is { } apart ? [first, handles.FromBottom is null ? first - apart : first + apart] : [first];
        foreach (ExactLength z in at)
            yield return (isFramed ? $"{part}#{(closesAtRight ? 2 : 1)}" : part, new(x.ToNearestTick(), z.ToNearestTick(), (Value("handle.hole") ?? ExactLength.Zero).ToNearestTick()));

        ExactLength? Value(string what) => set.Worked.Values.TryGetValue(QuantityKey.Of(key, what), out Worked? worked) ? worked.Value : null;
    }
}
