using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Shop.Texts;

namespace Setout.Shop.Plans;

/// <summary>
/// What a mark makes a fact of: the figures that parts were cut to, what was picked for them, and the places that are fixed once what bounds
/// them is. Frozen things never move; whatever a mark does not name may.
/// </summary>
public static class Marking
{
    /// <summary>
    /// The keys that a word stands for: a part or one of its members as they are; the key of a drawer for its box (for all of it when it is
    /// fitted or finished); a material for all of its parts that do not wait for a reading and are not cut. Empty when it stands for none.
    /// </summary>
    public static ImmutableArray<string> Parts(SetPiece set, Progress progress, string word)
    {
        if (set.Parts.Any(p => p.Key == word.Split('#')[0])) return [word];
        // The mark pencilled on a part names it as well.
        if (set.Parts.FirstOrDefault(p => p.Mark == word) is { } marked) return [marked.Key];
        Part[] owned = [.. set.Parts.Where(p => new QuantityKey(p.Key).Owner == word)];
        Part[] box = [.. owned.Where(p => p.Role is PartRole.BoxSide or PartRole.BoxEnd or PartRole.BoxBottom)];
        if (owned.Length > 0) return [.. (box.Length > 0 && progress is not (Progress.Fitted or Progress.Finished) ? box : owned).Select(p => p.Key)];
        return progress == Progress.Cut && set.Piece.Materials.ContainsKey(word)
            ? [.. set.Parts.Where(p => p.Material == word && !set.IsHeld(p)).SelectMany(p => Uncut(set, p))]
            : [];
    }

    // Of a part that is half cut, the other half.
    private static IEnumerable<string> Uncut(SetPiece set, Part part) => set.Facts.CutOf(part) == 0
        ? [part.Key]
        : Enumerable.Range(1, part.Count).Where(i => set.Facts.StateOf(part.Key, i) == PartState.Planned).Select(i => BenchFacts.Member(part.Key, i));

    /// <summary>The figures that the mark makes facts of: those of its parts, and of what they fix in its place.</summary>
    /// <param name="set">The piece as it stands.</param>
    /// <param name="progress">What is marked.</param>
    /// <param name="keys">Keys of parts, or members of them.</param>
    /// <param name="anew">True when parts that are cut already were cut again, to what the plan asks for now.</param>
    public static ImmutableDictionary<QuantityKey, ExactLength> Figures(SetPiece set, Progress progress, IEnumerable<string> keys, bool anew)
    {
        var figures = ImmutableDictionary.CreateBuilder<QuantityKey, ExactLength>();
        // A coat of finish fixes no size.
        if (progress is Progress.Bought or Progress.Finished) return figures.ToImmutable();
        HashSet<string> marked = [.. keys.Select(k => k.Split('#')[0])];
        foreach (Part part in set.Parts.Where(p => marked.Contains(p.Key)))
        {
            foreach (PartSize size in new[] { part.Length, part.Width }.Where(s => s.ToCut != s.Exact))
            {
                if (!set.Worked.Values.TryGetValue(size.ToCut, out Worked? worked)) continue;
                // What is together stands by its own word: the mark that it was cut may be voided later.
                figures[size.Exact] = anew ? worked.Expected : worked.Value;
            }
        }
        if (progress == Progress.Cut) return figures.ToImmutable();
        bool IsFixed(string key) => marked.Contains(key) || set.Parts.FirstOrDefault(p => p.Key == key) is { } part && set.Facts.StateOf(part) >= PartState.Assembled;
        foreach (Fixing fixing in set.Fixings.Where(f => f.Bounds.Any(marked.Contains) && f.Bounds.All(IsFixed)))
        {
            if (set.Worked.Values.TryGetValue(fixing.Size, out Worked? worked) && worked is { Pin: null, Quantity.Working: ToCut cut }) figures[cut.Exact] = worked.Value;
        }
        return figures.ToImmutable();
    }

    /// <summary>What was picked for the parts or things marked, such as the length of their slides: picked once and for all.</summary>
    /// <param name="set">The piece as it stands.</param>
    /// <param name="progress">What is marked.</param>
    /// <param name="keys">Keys of parts; for things bought their names or the keys of their owners.</param>
    /// <param name="anew">True when other ones were bought: what would be picked now.</param>
    public static ImmutableDictionary<QuantityKey, ExactLength> Chosen(SetPiece set, Progress progress, IEnumerable<string> keys, bool anew = false)
    {
        if (progress == Progress.Finished) return ImmutableDictionary<QuantityKey, ExactLength>.Empty;
        HashSet<string> marked = [.. keys.Select(k => k.Split('#')[0])];
        HashSet<QuantityKey> used = progress == Progress.Bought
            ? [.. set.Choices.Where(c => marked.Contains(c.Key.Owner) || set.Hardware.Any(h => h.Key == c.Key.Owner && marked.Contains(h.Name))).Select(c => c.Key)]
            : WorkedFrom(set, set.Parts.Where(p => marked.Contains(p.Key)).SelectMany(p => new[] { p.Length.Exact, p.Width.Exact }));
        return set.Choices.Where(c => used.Contains(c.Key)).ToImmutableDictionary(c => c.Key, c => anew && progress == Progress.Bought ? set.Worked.Values[c.Key].Expected : c.Value);
    }

    private static HashSet<QuantityKey> WorkedFrom(SetPiece set, IEnumerable<QuantityKey> start)
    {
        var seen = new HashSet<QuantityKey>();
        var pending = new Stack<QuantityKey>(start);
        while (pending.TryPop(out QuantityKey key))
        {
            if (!seen.Add(key) || !set.Worked.Values.TryGetValue(key, out Worked? worked)) continue;
            foreach (QuantityKey from in worked.Quantity.Working.WorkedFrom) pending.Push(from);
        }
        return seen;
    }
}
