using Setout.Core.Workings;
using Setout.Shop.Plans;

namespace Setout.Shop.Tests.Plans;

/// <summary>What the layouts find: each exactly one finding that stops, with its place and a remedy.</summary>
public sealed class PlanFindingTests
{
    private const string Head = "setout: 1\nname: Try\nunit: in\n";

    [Fact]
    public void Make_PartLongerThanAnySheet_OneFindingAtThePart()
    {
        Plan plan = Sample.Make(Sample.Source(Head + "materials:\n  ply: {panel: hardwood plywood, label: 3/4}\nparts:\n  - {part: a, of: ply, length: 20, width: 10}\n  - {part: long, of: ply, length: 110, width: 10}\n", null));
        Finding stop = Assert.Single(plan.Findings, f => f.Severity == Severity.Stop);
        Assert.Equal(("part.too-long", "long", 8), (stop.Code, stop.Key, stop.Place.Line));
        Assert.Contains("110 x 10 in", stop.Words, StringComparison.Ordinal);
        Assert.Contains("96 x 48 in", stop.Words, StringComparison.Ordinal);
        Assert.NotEmpty(stop.Remedy);
        Assert.True(plan.IsStopped);
    }

    [Fact]
    public void Make_PartLongerThanAnyBoard_OneFindingAtThePart()
    {
        Plan plan = Sample.Make(Sample.Source(Head + "materials:\n  studs: {lumber: 2x4}\nparts:\n  - {part: a, of: studs, length: 150}\n", null));
        Finding stop = Assert.Single(plan.Findings, f => f.Severity == Severity.Stop);
        Assert.Equal(("part.too-long", "a", 7), (stop.Code, stop.Key, stop.Place.Line));
    }

    [Fact]
    public void Make_PartThatFitsOnlyAcrossItsGrain_SaysSo()
    {
        Plan plan = Sample.Make(Sample.Source(Head + "materials:\n  ply: {panel: hardwood plywood, label: 3/4}\nparts:\n  - {part: a, of: ply, length: 20, width: 60}\n", null));
        Finding stop = Assert.Single(plan.Findings, f => f.Severity == Severity.Stop);
        Assert.Equal("part.against-grain", stop.Code);
        Assert.Contains("grain: free", stop.Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void Make_MaterialWithoutStock_OneFinding()
    {
        Plan plan = Sample.Make(Sample.Source(Head + "materials:\n  oak: {stick: oak, section: 2 x 2}\nparts:\n  - {part: a, of: oak, length: 20}\n", null));
        Finding stop = Assert.Single(plan.Findings, f => f.Severity == Severity.Stop);
        Assert.Equal(("stock.none", "oak"), (stop.Code, stop.Key));
    }

    [Fact]
    public void Make_SizesWithoutPrice_NotesItAndStillPlans()
    {
        Plan plan = Sample.Make(Sample.Source(Head + "materials:\n  board: {panel: particleboard, label: 3/4}\nparts:\n  - {part: a, of: board, length: 20, width: 10}\n", null));
        Assert.Contains(plan.Findings, f => f.Code == "stock.no-price");
        Assert.Equal(1, plan.Unpriced);
        Assert.False(plan.IsStopped);
    }

    [Fact]
    public void Make_BlankInHand_IsUsedBeforeASheetIsBought()
    {
        Plan plan = Sample.Make(Sample.Source(Head + "materials:\n  thin: {panel: hardwood plywood, label: 1/4}\nparts:\n  - {part: a, of: thin, length: 38, width: 28}\n", null));
        BuyingLine line = Assert.Single(plan.Buying);
        Assert.Equal(BuyingKind.FromTheRack, line.Kind);
        Assert.Contains("offcut 12", line.Item, StringComparison.Ordinal);
        Assert.Equal(0, plan.Cost.Amount);
    }
}
