using System.Collections.Immutable;
using CsCheck;
using Setout.Cutting.Runs;
using Setout.Testing;

namespace Setout.Solvers.Tests.Runs;

/// <summary>The integer programme for the fewest settings against every order of labels, and the planner's order against the programme.</summary>
public sealed class FewestBatchesTests
{
    // Each task needs up to so many before it; a tree as cuts make it, where it is one.
    private static Gen<BatchTask[]> Graphs(int most, int labels, int needs) =>
        Gen.Select(Gen.Int[0, labels - 1], Gen.Int[0, needs], Gen.Int[0, 999].Array[needs]).Array[1, most].Select(rows =>
            rows.Select((r, i) => new BatchTask(r.Item1, i == 0 ? [] : [.. r.Item3.Take(r.Item2).Select(n => n % i).Distinct().Order()])).ToArray());

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void Of_SmallGraphs_IsTheBestOfEveryOrder(int needs) =>
        Graphs(9, 4, needs).Holds(tasks => Assert.Equal(Shortest(tasks), FewestBatches.Of(tasks)), iter: 60);

    [Fact]
    public void Of_ChainThatComesBack_PaysForIt()
    {
        // a then b then a: three, though there are two labels; a second a beside it is free, and one after b too.
        BatchTask[] tasks = [new(0, []), new(1, [0]), new(0, [1]), new(0, []), new(0, [2])];
        Assert.Equal(3, FewestBatches.Of(tasks));
        Assert.True(FewestBatches.DoesAll(tasks, [0, 1, 0]));
        Assert.False(FewestBatches.DoesAll(tasks, [0, 1]));
    }

    // Breadth first over what is done: the first time all is.
    private static int Shortest(BatchTask[] tasks)
    {
        var seen = new HashSet<string>();
        var open = new List<bool[]> { new bool[tasks.Length] };
        for (int batches = 0; ; batches++)
        {
            if (open.Exists(done => Array.TrueForAll(done, d => d))) return batches;
            var next = new List<bool[]>();
            foreach (bool[] done in open)
                for (int label = 0; label <= tasks.Max(t => t.Label); label++)
                {
                    bool[] after = [.. done];
                    if (FewestBatches.Batch(tasks, label, after) > 0 && seen.Add(string.Concat(after.Select(d => d ? '1' : '0')))) next.Add(after);
                }
            open = next;
        }
    }

    // The one place where the planner's own order is asked.
    private static SettingOrder Planned(BatchTask[] tasks, int budget) =>
        RunOrder.Fewest([.. tasks.Select(t => new OrderedCut(t.Label, t.Needs))], tasks.Max(t => t.Label) + 1, (_, label) => label, budget);

    [Fact]
    public void Planner_RandomGraphs_ProvenIsFewest() =>
        Graphs(14, 5, 1).Holds(tasks => Agrees(tasks, RunOrder.UsualBudget), iter: 150);

    [Fact]
    public void Planner_RandomGraphsOfSeveralNeeds_ProvenIsFewest() =>
        Graphs(14, 5, 3).Holds(tasks => Agrees(tasks, RunOrder.UsualBudget), iter: 150);

    /// <summary>Of two labels nothing is set for: they may be come back to at will.</summary>
    [Fact]
    public void Planner_RandomGraphsWithLabelsThatAreFree_ProvenIsFewest()
    {
        HashSet<int> free = [0, 2];
        int cameBack = 0;
        Graphs(14, 5, 1).Holds(tasks =>
        {
            SettingOrder order = RunOrder.Fewest([.. tasks.Select(t => new OrderedCut(t.Label, t.Needs))], tasks.Max(t => t.Label) + 1, (_, label) => label, isFree: free.Contains);
            int fewest = FewestBatches.Of(tasks, free) ?? throw new InvalidOperationException("The programme did not end."), set = order.Labels.Count(l => !free.Contains(l));
            Assert.True(FewestBatches.DoesAll(tasks, order.Labels), $"{string.Join(' ', order.Labels)} does not do all");
            Assert.True(order.Least == fewest && fewest == set, $"{set} settings, {order.Least} said to be the least; {fewest} are");
            if (order.Labels.CountBy(l => l).Any(l => l.Value > 1 && free.Contains(l.Key))) Interlocked.Increment(ref cameBack);
        }, iter: 100);
        Assert.True(cameBack > 10, $"{cameBack}");
    }

    [Theory]
    [InlineData(0)]
    [InlineData(3)]
    [InlineData(20)]
    public void Planner_LittleBudget_NeverSaysMoreThanIsTrue(int budget) =>
        Graphs(16, 6, 2).Holds(tasks => Agrees(tasks, budget), iter: 40);

    private static void Agrees(BatchTask[] tasks, int budget)
    {
        SettingOrder order = Planned(tasks, budget);
        int fewest = FewestBatches.Of(tasks) ?? throw new InvalidOperationException("The programme did not end.");
        Assert.True(FewestBatches.DoesAll(tasks, order.Labels), $"{string.Join(' ', order.Labels)} does not do all");
        Assert.True(order.Least <= fewest && fewest <= order.Labels.Length, $"{order.Labels.Length} settings, {order.Least} said to be the least; {fewest} are");
    }

    // A comparison that only ever meets easy graphs shows nothing.
    [Fact]
    public void Graphs_ManyComeBackToALabel()
    {
        int back = 0;
        Graphs(14, 5, 2).Holds(tasks =>
        {
            if (Planned(tasks, RunOrder.UsualBudget).Labels.Length > tasks.Select(t => t.Label).Distinct().Count()) Interlocked.Increment(ref back);
        }, iter: 100);
        Assert.True(back > 30, $"{back} of 100 need a label twice.");
    }
}
