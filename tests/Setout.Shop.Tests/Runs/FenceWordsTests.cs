using Setout.Core.Craft;
using Setout.Core.Measures;
using Setout.Cutting;
using Setout.Cutting.Runs;
using Setout.Cutting.Sheets;

namespace Setout.Shop.Tests.Runs;

/// <summary>The caution about cuts against the fence, and the rule of the planner: what the one forbids the other does not do.</summary>
public class FenceWordsTests
{
    [Fact]
    public void Cautions_OfTheFence_SayTheRuleOfThePlanner()
    {
        foreach (string key in new[] { "crosscut", "fence" })
            Assert.Contains("longer than the distance from fence to blade", Cautions.Of(key).Words, StringComparison.Ordinal);
        Assert.DoesNotContain(Cautions.All, c => c.Words.Contains("ever crosscut", StringComparison.Ordinal));
    }

    /// <summary>A blank of 600 along the grain, in a shop with a table saw alone: crosscut at the fence while its edge there is longer than the figure, refused from there on.</summary>
    [Theory]
    [InlineData(400, 401, true)]
    [InlineData(400, 400, false)]
    [InlineData(401, 400, false)]
    public void Plan_CrosscutWithATableSawAlone_TheEdgeAtTheFenceDecides(int figure, int edge, bool isCut)
    {
        Length Mm(int millimetres) => Length.FromMillimetres(millimetres);
        var instance = new SheetInstance([new("part", Mm(figure), Mm(edge), 1, GrainRule.Keep)], [SheetStock.InHand("blank", Mm(600), Mm(edge), EdgeTrim.None)], Mm(4), KeepRule.Nothing);
        var layout = new SheetLayout([new("blank", new Division(GrainAxis.Along, [new(Mm(figure), new PartNode("part", Turn.None)), new(Mm(596 - figure), WasteNode.Instance)], Length.Zero))], []);
        RunPlan plan = new CheckedRunPlanner(new RunPlanner()).Plan([new RunSheets("ply", [], instance, layout)], SawLimits.Usual with { Sled = null, Guided = null, Boards = null }).Plan;
        if (isCut) Assert.Equal((SawWay.Fence, Mm(figure)), (plan.Runs.Single().Way, plan.Runs.Single().Figure));
        else Assert.Equal(RefusalKind.AgainstTheFence, plan.Refusals.Single().Kind);
    }
}
