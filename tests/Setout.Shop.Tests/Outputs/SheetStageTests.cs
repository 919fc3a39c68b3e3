using Setout.Drawing.Documents;
using Setout.Shop.BenchSheets;
using Setout.Shop.Plans;
using Setout.Shop.Tests.Plans;

namespace Setout.Shop.Tests.Outputs;

/// <summary>The bench sheets of one stage alone.</summary>
public class SheetStageTests
{
    private static string[] Titles(Plan plan, SheetStage? only) => [.. BenchSheetWriter.Compose(plan, "", Paper.Letter, only: only).Sections.Select(s => s.Title)];

    [Theory, MemberData(nameof(Sample.Data), MemberType = typeof(Sample))]
    public void Stages_Together_HaveEverySheetOfTheWhole(string name)
    {
        Plan plan = Sample.Plan(name);
        var each = Enum.GetValues<SheetStage>().ToDictionary(s => s, s => Titles(plan, s));
        // What can be printed has sheets, and what has none is not offered.
        Assert.All(each, s => Assert.Equal(s.Key.IsPrinted(plan.Set), s.Value.Length > 0));
        string[] all = Titles(plan, null);
        Assert.Equal(all.Order(StringComparer.Ordinal), each.SelectMany(s => s.Value).Distinct().Except(["Before you cut"]).Order(StringComparer.Ordinal));
        Assert.All(each.Values, titles => Assert.Equal(all.Where(titles.Contains), titles.Except(["Before you cut"])));
    }

    /// <summary>Who prints only what the saw needs must not miss what the cover says.</summary>
    [Theory, MemberData(nameof(Sample.Data), MemberType = typeof(Sample))]
    public void BreakDown_Alone_HasTheCautionsOfTheCover(string name)
    {
        Plan plan = Sample.Plan(name);
        CautionBlock Of(SheetStage stage) => BenchSheetWriter.Compose(plan, "", Paper.A4, only: stage).Sections[0].Blocks.OfType<CautionBlock>().Single();
        Assert.True(Of(SheetStage.SetOut).Lines.Length > 5);
        Assert.Equal(Of(SheetStage.SetOut).Lines.Select(l => l.ToString()), Of(SheetStage.BreakDown).Lines.Select(l => l.ToString()));
    }

    [Fact]
    public void Words_LeadBackToTheirStage()
    {
        Assert.All(Enum.GetValues<SheetStage>(), s => Assert.Equal(s, SheetStages.Of(s.Word)));
        Assert.Equal(Enum.GetValues<SheetStage>().Length, SheetStages.Words.Distinct().Count());
        Assert.Null(SheetStages.Of("cutting"));
    }
}
