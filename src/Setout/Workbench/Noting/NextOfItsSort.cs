using System.Collections.Immutable;
using Setout.Core.Workings;
using Setout.Shop.Texts;

namespace Setout.Workbench.Noting;

/// <summary>
/// Which thing of a batch stands chosen when one of it was just marked: the next of the same sort, a drawer after a drawer, a part after a part. It follows from the log alone, so that it is the same with a script and
/// without. All of the batch stands first where nothing of it was marked last, or all of it was.
/// </summary>
internal static class NextOfItsSort
{
    /// <summary>The index of what is chosen; 0 for the first.</summary>
    /// <param name="what">What is offered: all of it first, then whole drawers and the like, then one by one.</param>
    /// <param name="log">The facts.</param>
    /// <param name="progress">The word of the mark.</param>
    public static int In(ImmutableArray<Markable> what, Log log, string progress)
    {
        if (what.Length < 2 || log.Entries.IsEmpty || log.Entries[^1] is not MarkEntry { Run: null } last || last.Keys.IsEmpty || !last.Progress.ToString().Equals(progress, StringComparison.OrdinalIgnoreCase)) return 0;
        string[][] keys = [.. what.Select(w => w.Value.Split(' ', StringSplitOptions.RemoveEmptyEntries))];
        string[] owners = [.. last.Keys.Select(OwnerOf).Distinct()];
        // Of more than one drawer: that was all of it, or no sort that is offered.
        if (owners is not [var owner]) return 0;
        bool isOne = last.Keys.Length == 1;
        int[] alike = [.. Enumerable.Range(1, what.Length - 1).Where(i => isOne ? keys[i].Length == 1 : keys[i].Length > 1)];
        if (alike.Length == 0) return 0;
        // First what is left of the same; then what comes after it; then from the beginning.
        int Rank(int i) => isOne && PartOf(keys[i][0]) == PartOf(last.Keys[0]) ? 0 : OwnerOf(keys[i][0]) == owner ? 1 : string.CompareOrdinal(OwnerOf(keys[i][0]), owner) > 0 ? 2 : 3;
        return alike.MinBy(Rank);
    }

    private static string OwnerOf(string key) => new QuantityKey(PartOf(key)).Owner;

    private static string PartOf(string key) => key.Split('#')[0];
}
