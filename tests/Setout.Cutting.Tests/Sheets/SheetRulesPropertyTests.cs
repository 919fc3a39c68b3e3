using System.Collections.Immutable;
using CsCheck;
using Setout.Core.Measures;
using Setout.Cutting.Sheets.Model;
using Setout.Cutting.Sheets.Search;
using Setout.Cutting.Sheets;
using Setout.Testing;
using static Setout.Cutting.Tests.Sheets.SheetBuild;

namespace Setout.Cutting.Tests.Sheets;

/// <summary>Random orders with slack, figure groups and a layout before.</summary>
public class SheetRulesPropertyTests
{
    private static readonly Gen<Length> s_size = Gen.Long[1_000_000, 30_000_000].Select(Length.FromTicks);

    private static readonly Gen<SheetPart> s_part = Gen.Select(s_size, s_size, Gen.Int[1, 3], Gen.Int[0, 2],
        (along, across, count, free) => new SheetPart("", along, across, count, free == 0 ? GrainRule.Free : GrainRule.Keep));

    private static readonly Gen<SheetStock> s_stock = Gen.Select(Gen.Long[20_000_000, 90_000_000], Gen.Long[20_000_000, 90_000_000], Gen.Long[0, 1_000_000], Gen.Int[0, 9], Gen.Int[0, 5],
        (along, across, trim, cost, limit) => new SheetStock("", Length.FromTicks(along), Length.FromTicks(across),
            new EdgeTrim(Length.FromTicks(trim), Length.Zero, Length.FromTicks(trim / 2), Length.FromTicks(trim)), new Money(cost), limit == 0 ? null : limit));

    private static readonly Gen<SheetInstance> s_order = Gen.Select(s_part.Array[0, 12], s_stock.Array[1, 3], Gen.Long[0, 800_000], Gen.Long[0, 2_000_000], Gen.Int[0, 1_000_000], s_size,
        (parts, stock, kerf, slack, seed, keep) =>
        {
            SheetPart[] named = [.. parts.Select((p, i) => p with { Id = $"p{i}" })];
            var order = new SheetInstance([.. named], [.. stock.Select((s, i) => s with { Id = $"s{i}" })], Length.FromTicks(kerf), new KeepRule(keep, keep));
            return order with { Slack = Length.FromTicks(slack % 3 == 0 ? 0 : slack), Groups = Grouped(named, new Random(seed)) };
        });

    // Kept parts of one count are gathered in groups of two to four; some name one part several times.
    private static ImmutableArray<FigureGroup> Grouped(SheetPart[] parts, Random random)
    {
        ImmutableArray<FigureGroup>.Builder groups = ImmutableArray.CreateBuilder<FigureGroup>();
        foreach (IGrouping<int, SheetPart> same in parts.Where(p => p.Grain == GrainRule.Keep).GroupBy(p => p.Count))
        {
            string[] ids = [.. same.Select(p => p.Id)];
            for (int i = 0; i < ids.Length;)
            {
                int take = random.Next(1, 5);
                GrainAxis axis = random.Next(2) == 0 ? GrainAxis.Along : GrainAxis.Across;
                string[] members = [.. ids.Skip(i).Take(take)];
                if (members.Length == 1 && same.Key > 1 && random.Next(2) == 0) members = [.. Enumerable.Repeat(members[0], same.Key)];
                if (members.Length > 1) groups.Add(new($"g{groups.Count}", axis, [.. members]));
                i += take;
            }
        }
        return groups.ToImmutable();
    }

    // The solver throws when its own checker finds anything; what is asserted beside is that groups stay whole and bounds hold.
    [Fact]
    public void Solve_RandomSlackAndGroups_ChecksCleanAndLeavesOutWholeGroupsOnly() =>
        s_order.Holds(order =>
        {
            SheetOutcome outcome = Solve(order, 10_000);
            if (order.Stock.All(s => s.Limit is null)) Assert.Equal(order.Validate().IsEmpty, outcome.Layout.LeftOut.IsEmpty);
            Dictionary<string, int> left = outcome.Layout.LeftOut.ToDictionary(l => l.PartId, l => l.Count);
            foreach (FigureGroup group in order.Groups)
                Assert.Single(group.PartIds.CountBy(id => id).Select(p => (double)left.GetValueOrDefault(p.Key) / p.Value).Distinct());
        }, iter: 300);

    // The solver throws when a part takes a stage too many.
    [Fact]
    public void Solve_RandomStages_LeavesOutOnlyWhatNeverFits() =>
        Gen.Select(s_order, Gen.Int[1, 5]).Holds((order, most) =>
        {
            SheetInstance few = order with { MostStages = most };
            SheetOutcome outcome = Solve(few, 5_000);
            if (few.Stock.All(s => s.Limit is null)) Assert.Equal(few.Validate().IsEmpty, outcome.Layout.LeftOut.IsEmpty);
        }, iter: 200);

    [Fact]
    public void Solve_SlackAgainstSmallerStock_SameCountsAndBound() =>
        s_order.Holds(order =>
        {
            var smaller = new SheetInstance(order.Parts,
                [.. order.Stock.Select(s => s with { Along = s.Along - order.Slack, Across = s.Across - order.Slack })], order.Kerf, KeepRule.Nothing)
            { Groups = order.Groups };
            SheetInstance slack = new SheetInstance(order.Parts, order.Stock, order.Kerf, KeepRule.Nothing) { Groups = order.Groups, Slack = order.Slack };
            LayoutBound? a = SheetBounds.Of(slack), b = SheetBounds.Of(smaller);
            Assert.Equal(a, b);
            Assert.Equal(Solve(slack, 0).Layout.LeftOut, Solve(smaller, 0).Layout.LeftOut);
        }, iter: 100);

    [Fact]
    public void Solve_RandomOrderAgain_GivesTheSameLayoutAndNeverCostsMoreAfterAChange() =>
        Gen.Select(s_order, Gen.Int[0, 11]).Holds((order, which) =>
        {
            SheetLayout before = Solve(order, 5_000).Layout;
            SheetOutcome again = Solve(order with { Before = before }, 5_000);
            SheetScore stood = SheetObjective.Score(order, before);
            if ((again.Score.LeftOut, again.Score.Cost, again.Score.Sheets) == (stood.LeftOut, stood.Cost, stood.Sheets)) Assert.Equal(0, again.Score.Changed);
            else Assert.True(again.Score < stood, $"{again.Score} after {stood}");
            if (order.Parts.IsEmpty) return;
            SheetPart changed = order.Parts[which % order.Parts.Length];
            SheetInstance after = new SheetInstance(order.Parts.Replace(changed, changed with { Along = changed.Along + Tick }), order.Stock, order.Kerf, order.Keep)
            {
                Slack = order.Slack,
                Groups = order.Groups,
            };
            // Three quarters of the budget go to the new layout, or all of it where no sheet is sound: this is what keeping is measured against.
            SheetScore anew = Solve(after, 3_750).Score, wholly = Solve(after, 5_000).Score, kept = Solve(after with { Before = before }, 5_000).Score;
            if (wholly > anew) anew = wholly;
            Assert.True((kept.LeftOut, kept.Cost, kept.Sheets).CompareTo((anew.LeftOut, anew.Cost, anew.Sheets)) <= 0, $"{kept} kept, {anew} anew");
        }, iter: 200);

    // A search that counts divisions, blocks and rests as the model tells them may rely on what is written: it is sound, and no deeper.
    [Fact]
    public void Write_RandomTrees_NoDeeperThanTheModelSaysAndSound() =>
        Gen.Select(s_order, Gen.Int[0, 1_000_000]).Holds((order, seed) =>
        {
            var random = new Random(seed);
            var model = new SheetModel(order);
            if (model.Types.Length == 0) return;
            Node tree = Divided(model, random.Next(2) == 0 ? NodeKind.Along : NodeKind.Across, model.Stock[0].Along, model.Stock[0].Across, -1, random, [.. model.Types.Select(t => t.Count)]);
            if (tree.Slices!.Count == 0) return;
            int depth = tree.Slices.Max(s => Depth(model, s, tree.Kind, 1));
            // With one a model refuses every block whose members differ.
            SheetInstance limited = order with { MostStages = Math.Clamp(depth, model.Types.Any(t => t.Trims) ? 2 : 1, SheetInstance.MostStagesEver) };
            if (new SheetModel(limited).Types.Length < model.Types.Length) return;
            LaidSheet laid = new TreeWriter(new SheetModel(limited)).Write(0, tree);
            Assert.Empty(SheetChecker.CheckAlone(limited, laid));
        }, iter: 500);

    // Slices of random parts, each divided the other way until its parts fill it; the first part is given where a slice was sized for it.
    private static Node Divided(SheetModel model, NodeKind kind, long along, long across, int first, Random random, int[] pool)
    {
        bool inLine = kind == NodeKind.Along;
        NodeKind other = inLine ? NodeKind.Across : NodeKind.Along;
        long left = inLine ? along : across, width = inLine ? across : along;
        var node = new Node { Kind = kind, Slices = [] };
        for (bool begun = false; ; begun = true)
        {
            int[] fit = [.. Enumerable.Range(0, pool.Length).Where(t => pool[t] > 0 && Size(model.Types[t]) <= left && Width(model.Types[t]) <= width)];
            bool given = !begun && first >= 0;
            if (!given && (fit.Length == 0 || random.Next(6) == 0)) break;
            int type = given ? first : fit[random.Next(fit.Length)];
            PartType part = model.Types[type];
            long size = Size(part);
            if (Width(part) == width)
            {
                pool[type]--;
                node.Slices.Add(new Node { Kind = NodeKind.Part, Type = type });
            }
            else node.Slices.Add(Divided(model, other, inLine ? size : along, inLine ? across : size, type, random, pool));
            left -= size;
        }
        return node;

        long Size(PartType t) => inLine ? t.Along : t.Across;
        long Width(PartType t) => inLine ? t.Across : t.Along;
    }

    private static int Depth(SheetModel model, Node node, NodeKind parent, int above)
    {
        if (node.Kind != NodeKind.Part) return node.Slices!.Max(s => Depth(model, s, node.Kind, above + 1));
        return model.StagesOf(node.Type, 0, above, parent == NodeKind.Along ? GrainAxis.Along : GrainAxis.Across);
    }
}
