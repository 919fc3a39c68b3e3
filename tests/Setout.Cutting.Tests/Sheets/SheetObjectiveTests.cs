using Setout.Cutting.Sheets;
using static Setout.Cutting.Tests.Sheets.SheetBuild;

namespace Setout.Cutting.Tests.Sheets;

/// <summary>The pair of layouts that docs/cutting.md works by hand.</summary>
public class SheetObjectiveTests
{
    // A blank of 1000 x 600 mm, trued to 985 x 590; two doors of 400 x 250, kerf 3, kept from 150 x 300.
    private static readonly SheetInstance s_doors = Instance([Part("door", 400, 250, 2)],
        [Stock("blank", 1000, 600, trim: new EdgeTrim(Mm(10), Mm(5), Mm(4), Mm(6)))], 3, new KeepRule(Mm(150), Mm(300)));

    private static readonly SheetLayout s_oneStrip = Layout(new LaidSheet("blank", Rips(Mm(0),
        Slice(250, Crosscuts(Mm(0), Slice(400, Lies("door")), Slice(400, Lies("door")), Slice(179, WasteNode.Instance))), Slice(337, KeepNode.Instance))));

    private static readonly SheetLayout s_twoStrips = Layout(new LaidSheet("blank", Rips(Mm(0),
        Slice(250, Crosscuts(Mm(0), Slice(400, Lies("door")), Slice(582, KeepNode.Instance))),
        Slice(250, Crosscuts(Mm(0), Slice(400, Lies("door")), Slice(582, KeepNode.Instance))), Slice(84, WasteNode.Instance))));

    [Fact]
    public void Score_PairOfTheDocs_AsWorkedByHand()
    {
        Assert.Empty(SheetChecker.Check(s_doors, s_oneStrip));
        Assert.Empty(SheetChecker.Check(s_doors, s_twoStrips));
        SheetScore one = SheetObjective.Score(s_doors, s_oneStrip), two = SheetObjective.Score(s_doors, s_twoStrips);
        Assert.Equal((2, 3, (Int128)110_187_483_025), (one.Settings, one.Handling, one.Worth));
        Assert.Equal((2, 4, (Int128)42_340_500_000), (two.Settings, two.Handling, two.Worth));
        Assert.True(one < two);
        Assert.True(one with { Handling = 4 } < two);
        Assert.True(one with { Handling = 5 } > two);
    }
}
