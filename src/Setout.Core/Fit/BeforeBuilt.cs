using System.Collections.Immutable;
using Setout.Core.SettingOut;
using Setout.Core.Workings;

namespace Setout.Core.Fit;

/// <summary>
/// Openings that are read while what bounds them is not marked cut. People read early and mark late, so nothing is refused; but such a reading is taken as the opening of the built piece, and what waits for it
/// is cut by it, so it is said.
/// </summary>
public static class BeforeBuilt
{
    /// <summary>The code of the finding.</summary>
    public const string Code = "reading.before-built";

    // Names beyond these are counted.
    private const int MostNames = 4;

    /// <summary>True for the clear size of an opening: one that parts wait for, or that stands between parts of the piece.</summary>
    public static bool IsOpening(SetPiece set, QuantityKey key) => set.Parts.Any(p => !p.HeldUntil.IsDefaultOrEmpty && p.HeldUntil.Contains(key))
        || set.Openings.Any(o => key == QuantityKey.Of(o.Key, "width") || key == QuantityKey.Of(o.Key, "height") || key == QuantityKey.Of(o.Key, "depth"))
            // A case has the key of the opening in it: its own sizes are those outside.
            && !set.Piece.Members.Any(m => m.Key == key.Owner);

    /// <summary>The parts that a clear size comes of and that no mark calls cut, in the order of the piece; empty for what is no opening.</summary>
    /// <param name="set">The piece.</param>
    /// <param name="key">What is read, or would be.</param>
    public static ImmutableArray<Part> Missing(SetPiece set, QuantityKey key)
    {
        if (!set.Worked.Values.ContainsKey(key) || !IsOpening(set, key)) return [];
        Dictionary<QuantityKey, Part> sizes = [];
        foreach (Part part in set.Parts) foreach (PartSize size in Mending.Bench.Sizes(part)) foreach (QuantityKey figure in new[] { size.Made, size.AsCut, size.ToCut }) sizes.TryAdd(figure, part);
        var bounding = new HashSet<string>(StringComparer.Ordinal);
        var seen = new HashSet<QuantityKey> { key };
        var pending = new Stack<QuantityKey>(seen);
        while (pending.TryPop(out QuantityKey at))
        {
            // What a part was cut by lies behind it: cut, it stands for itself.
            if (at != key && sizes.TryGetValue(at, out Part? cut))
            {
                bounding.Add(cut.Key);
                continue;
            }
            if (!set.Worked.Values.TryGetValue(at, out Worked? worked)) continue;
            foreach (Term term in worked.Quantity.Working switch { Sum sum => sum.Terms, Extreme extreme => extreme.Of, _ => [] }) if (term.Part.Length > 0) bounding.Add(term.Part);
            foreach (QuantityKey from in worked.Quantity.Working.WorkedFrom) if (seen.Add(from)) pending.Push(from);
        }
        return [.. set.Parts.Where(p => (bounding.Contains(p.Key) || StandsBeside(set, key, p)) && set.Facts.CutOf(p) < p.Count && !IsReadAsCut(set, p))];
    }

    // The tape lies between these, whatever the sum goes by.
    private static bool StandsBeside(SetPiece set, QuantityKey key, Part part)
    {
        if (!part.HeldUntil.IsDefaultOrEmpty || set.Openings.FirstOrDefault(o => o.Key == key.Owner) is not { Space: { } space }) return false;
        return part.Placements.Any(p => p.Shared(space) is var (x, y, z) && (key.Text.EndsWith("width", StringComparison.Ordinal) ? (x, y, z) : key.Text.EndsWith("height", StringComparison.Ordinal) ? (z, x, y) : (y, x, z)) is var (along, one, other)
            && along.Sign == 0 && one.Sign > 0 && other.Sign > 0);
    }

    /// <summary>The members of the missing parts, as a mark names them: those of a part that are all missing by its key.</summary>
    public static ImmutableArray<string> Keys(SetPiece set, IEnumerable<Part> missing) =>
    [
        .. missing.SelectMany(p => set.Facts.CutOf(p) == 0 ? [p.Key] : Enumerable.Range(1, p.Count).Where(i => set.Facts.StateOf(p.Key, i) == PartState.Planned).Select(i => BenchFacts.Member(p.Key, i))),
    ];

    /// <summary>What is missing, in words: <c>bay L, rails and frame, posts</c>.</summary>
    public static string Names(IReadOnlyCollection<Part> missing)
    {
        string[] names = [.. missing.Select(p => p.Name)];
        return names.Length <= MostNames ? NamesAnd(names) : $"{string.Join(", ", names[..(MostNames - 1)])} and {names.Length - MostNames + 1} more";
    }

    /// <summary>What the program makes of such a reading, as a sentence.</summary>
    /// <param name="name">The opening, for people.</param>
    /// <param name="missing">What bounds it and is not marked cut, one or more.</param>
    public static string Words(string name, IReadOnlyCollection<Part> missing) => $"{name} is read and counts as the opening of the built piece; not marked cut: {Names(missing)}.";

    /// <summary>What is to be said of a reading that pins what is not there yet by the marks.</summary>
    internal static IEnumerable<Finding> Of(ReadingBench bench, Worked read)
    {
        SetPiece set = bench.Set;
        QuantityKey key = read.Quantity.Key;
        ImmutableArray<Part> missing = Missing(set, key);
        if (missing.IsEmpty) yield break;
        yield return bench.Finding(Code, Severity.Warn, key, Words(read.Quantity.Name, missing),
            $"Mark them if they are cut{set.Piece.Hand.Say($": setout mark FILE cut {string.Join(' ', Keys(set, missing))}", "")}; if they are not, this reading pins what is not there yet: {set.Piece.Hand.VoidReading(read.Pin!.EntryId)}, and read it when they stand.");
    }

    private static string NamesAnd(string[] names) => names.Length < 2 ? string.Concat(names) : $"{string.Join(", ", names[..^1])} and {names[^1]}";

    // What was read off the saw is cut, marked or not.
    private static bool IsReadAsCut(SetPiece set, Part part) => Mending.Bench.Sizes(part).Any(s => set.Worked.Values.TryGetValue(s.AsCut, out Worked? worked) && worked.Pin is { IsFact: false });
}
