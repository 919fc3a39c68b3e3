using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut;

/// <summary>A figure of a groove or another cut into parts that moved: what it was set with is to be set again.</summary>
/// <param name="Words">What is cut and where, without its figures.</param>
/// <param name="Figure">Which figure: depth, width, distance.</param>
/// <param name="Before">As it was.</param>
/// <param name="After">As it is.</param>
/// <param name="Size">Its working, of the first part.</param>
/// <param name="Parts">The parts it is cut into, one or more, in order.</param>
public sealed record SettingMoved(string Words, string Figure, ExactLength Before, ExactLength After, QuantityKey Size, ImmutableArray<Part> Parts);

/// <summary>Holes that stand elsewhere on their parts than they did: a story stick or a jig is to be marked anew.</summary>
/// <param name="Name">What they are for.</param>
/// <param name="Stations">How many stand where none stood.</param>
/// <param name="Parts">The parts they are in, one or more, in order.</param>
public sealed record StationsMoved(string Name, int Stations, ImmutableArray<Part> Parts);

/// <summary>What moved besides lengths and widths.</summary>
internal static class SettingsMovedIn
{
    /// <summary>Figures of cuts that were there before and have another value; like ones together.</summary>
    public static ImmutableArray<SettingMoved> Cuts(SetPiece before, SetPiece after)
    {
        HashSet<(string, QuantityKey)> known = [.. before.Machinings.SelectMany(m => m.Figures.Select(f => (m.Part, f.Key)))];
        return
        [
            .. after.Machinings.SelectMany(m => m.Figures.Where(f => known.Contains((m.Part, f.Key))).Select(f => (Cut: m, f.Name, f.Key)))
                .Select(f => (f.Cut, f.Name, f.Key, Old: Value(before, f.Key), New: Value(after, f.Key)))
                .Where(f => f.Old is not null && f.New is not null && f.Old != f.New)
                .GroupBy(f => (f.Cut.Words, f.Name, f.Old, f.New))
                .Select(g => new SettingMoved(g.Key.Words, g.Key.Name, g.Key.Old!.Value, g.Key.New!.Value, g.First().Key, [.. PartsOf(after, g.Select(f => f.Cut.Part))])),
        ];
    }

    /// <summary>Holes of parts that had such holes before, where they stand elsewhere, measured from the lower, front and left faces of their part.</summary>
    public static ImmutableArray<StationsMoved> Holes(SetPiece before, SetPiece after)
    {
        var old = Stations(before).ToLookup(s => (s.Part, s.Name), s => s.At);
        return
        [
            .. Stations(after).GroupBy(s => (s.Part, s.Name)).Where(g => old.Contains(g.Key))
                .Select(g => (g.Key.Part, g.Key.Name, Count: g.Select(s => s.At).Distinct().Except(old[g.Key]).Count())).Where(g => g.Count > 0)
                .GroupBy(g => g.Name).Select(g => new StationsMoved(g.Key, g.Sum(s => s.Count), [.. PartsOf(after, g.Select(s => s.Part))])),
        ];
    }

    private static IEnumerable<(string Part, string Name, (int Number, ExactLength X, ExactLength Y, ExactLength Z) At)> Stations(SetPiece set)
    {
        var parts = set.Parts.ToDictionary(p => p.Key, StringComparer.Ordinal);
        foreach (Bore bore in set.Bores)
        {
            Placement box = parts[bore.Part].Placements[bore.Number - 1];
            yield return (bore.Part, bore.Name, (bore.Number, bore.X - box.X, bore.Y - box.Y, bore.Z - box.Z));
        }
    }

    private static IEnumerable<Part> PartsOf(SetPiece set, IEnumerable<string> keys)
    {
        HashSet<string> wanted = [.. keys];
        return set.Parts.Where(p => wanted.Contains(p.Key));
    }

    private static ExactLength? Value(SetPiece set, QuantityKey key) => set.Worked.Values.TryGetValue(key, out Worked? worked) ? worked.Value : null;
}
