using System.Collections.Immutable;
using Setout.Cutting.Programs;

namespace Setout.Solvers.Tests.Runs;

/// <summary>Something to be done.</summary>
/// <param name="Label">The batch it may be done in, from 0.</param>
/// <param name="Needs">What must be done before it, or before it in the same batch, by its place in the list.</param>
internal sealed record BatchTask(int Label, ImmutableArray<int> Needs);

/// <summary>
/// The fewest batches in which tasks can be done, where a batch does any tasks of one label, one after the other. By an integer programme: column "label l at
/// place t" costs one; column "task c is done by place t" may rise from one place to the next only where its label is, and never above that of what it needs.
/// </summary>
internal static class FewestBatches
{
    /// <summary>The fewest; null when the library did not come to an end.</summary>
    /// <param name="tasks">Each after all that it needs.</param>
    /// <param name="free">Labels whose batches cost nothing; there may be as many of them as there are tasks.</param>
    public static int? Of(IReadOnlyList<BatchTask> tasks, IReadOnlySet<int>? free = null)
    {
        if (tasks.Count == 0) return 0;
        int labels = tasks.Max(t => t.Label) + 1, places = free is { Count: > 0 } ? tasks.Count : Greedy(tasks);
        bool Costs(int column) => column < labels * places && !(free?.Contains(column / places) ?? false);
        var rows = new List<ProgramRow>();
        var entries = Enumerable.Range(0, (labels + tasks.Count) * places).Select(_ => new List<(int Row, long Count)>()).ToList();
        int At(int label, int place) => (label * places) + place;
        int Done(int task, int place) => ((labels + task) * places) + place;
        void Row(long low, long high, params ReadOnlySpan<(int Column, long Count)> terms)
        {
            foreach ((int column, long count) in terms) entries[column].Add((rows.Count, count));
            rows.Add(new(low, high));
        }
        // As often as a chain comes back to it, which only helps the library.
        for (int l = 0; l < labels; l++) Row(Returns(tasks, l), places, [.. Enumerable.Range(0, places).Select(t => (At(l, t), 1L))]);
        for (int t = 0; t < places; t++)
        {
            // One label at a place, and no place left out.
            Row(0, 1, [.. Enumerable.Range(0, labels).Select(l => (At(l, t), 1L))]);
            if (t > 0) Row(0, 1, [.. Enumerable.Range(0, labels).SelectMany(l => new[] { (At(l, t - 1), 1L), (At(l, t), -1L) })]);
            for (int c = 0; c < tasks.Count; c++)
            {
                // Done by t less done by t - 1 is 0, or 1 where its label is.
                if (t == 0) Row(0, 1, (At(tasks[c].Label, t), 1), (Done(c, t), -1));
                else
                {
                    Row(0, 1, (Done(c, t), 1), (Done(c, t - 1), -1));
                    Row(0, 2, (At(tasks[c].Label, t), 1), (Done(c, t), -1), (Done(c, t - 1), 1));
                }
                foreach (int need in tasks[c].Needs) Row(0, 1, (Done(need, t), 1), (Done(c, t), -1));
                if (t == places - 1) Row(1, 1, (Done(c, t), 1));
            }
        }
        ProgramColumn[] columns = [.. entries.Select((e, i) => new ProgramColumn(Costs(i) ? 1 : 0, 1, e))];
        IntegerAnswer answer = LibraryPrograms.Instance.Choose(new(rows, columns), new(60, 1), CancellationToken.None);
        return answer is { Finished: true, Counts: { } counts } ? counts.Where((_, i) => Costs(i)).Sum() : null;
    }

    /// <summary>Whether these labels, in turn, do everything, when each batch does all it can.</summary>
    public static bool DoesAll(IReadOnlyList<BatchTask> tasks, IEnumerable<int> labels)
    {
        var done = new bool[tasks.Count];
        foreach (int label in labels) Batch(tasks, label, done);
        return Array.TrueForAll(done, d => d);
    }

    /// <summary>Does all of a label that can be done.</summary>
    public static int Batch(IReadOnlyList<BatchTask> tasks, int label, bool[] done)
    {
        int count = 0;
        for (int c = 0; c < tasks.Count; c++)
            if (!done[c] && tasks[c].Label == label && tasks[c].Needs.All(n => done[n]))
            {
                done[c] = true;
                count++;
            }
        return count;
    }

    /// <summary>The same tasks with those of one label and the same needs as one: whenever one of them can be done, so can the other.</summary>
    public static BatchTask[] Merged(IReadOnlyList<BatchTask> tasks)
    {
        var known = new Dictionary<(int, string), int>();
        var merged = new List<BatchTask>();
        var of = new int[tasks.Count];
        for (int c = 0; c < of.Length; c++)
        {
            int[] needs = [.. tasks[c].Needs.Select(n => of[n]).Distinct().Order()];
            if (known.TryAdd((tasks[c].Label, string.Join(' ', needs)), merged.Count)) merged.Add(new(tasks[c].Label, [.. needs]));
            of[c] = known[(tasks[c].Label, string.Join(' ', needs))];
        }
        return [.. merged];
    }

    private static int Returns(IReadOnlyList<BatchTask> tasks, int label)
    {
        // For each task the most batches of the label up to it, and whether the last of them may still run.
        var times = new int[tasks.Count];
        var outside = new int[tasks.Count];
        for (int c = 0; c < times.Length; c++)
        {
            int all = tasks[c].Needs.Select(n => times[n]).DefaultIfEmpty(0).Max(), over = tasks[c].Needs.Select(n => outside[n]).DefaultIfEmpty(0).Max();
            times[c] = tasks[c].Label == label ? Math.Max(all, over + 1) : all;
            outside[c] = tasks[c].Label == label ? over : all;
        }
        return times.DefaultIfEmpty(0).Max();
    }

    // Some order: the label that does most at each place.
    private static int Greedy(IReadOnlyList<BatchTask> tasks)
    {
        var done = new bool[tasks.Count];
        int places = 0, labels = tasks.Max(t => t.Label) + 1;
        for (; !Array.TrueForAll(done, d => d); places++)
            Batch(tasks, Enumerable.Range(0, labels).MaxBy(l => Batch(tasks, l, [.. done])), done);
        return places;
    }
}
