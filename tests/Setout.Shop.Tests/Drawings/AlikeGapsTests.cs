using System.Collections.Immutable;
using Setout.Core.Fit;
using Setout.Shop.Drawings;
using Setout.Shop.Plans;
using Setout.Shop.Tests.Plans;

namespace Setout.Shop.Tests.Drawings;

public sealed class AlikeGapsTests
{
    [Theory]
    [InlineData("drawer L1, slide play", "drawer L1, slide play")]
    [InlineData("drawers L1, L2: slide play", "drawer L1, slide play", "drawer L2, slide play")]
    [InlineData("drawers D1 to D5, E1: slide play", "drawer D1, slide play", "drawer D2, slide play", "drawer D3, slide play", "drawer D4, slide play", "drawer D5, slide play", "drawer E1, slide play")]
    [InlineData("bay L, drawer 1: reveal", "bay L, reveal", "drawer 1, reveal")]
    [InlineData("shelves S1, S2: side play", "shelf S1, side play", "shelf S2, side play")]
    [InlineData("L, R", "L", "R")]
    public void NameOf_NamesOfAlikeGaps_SaysEachOnce(string expected, params string[] names) => Assert.Equal(expected, AlikeGaps.NameOf([.. names]));

    [Theory]
    [MemberData(nameof(Sample.Data), MemberType = typeof(Sample))]
    public void Of_Sample_EveryGapIsInOneRowAndAlikeInIt(string name)
    {
        Plan plan = Sample.Plan(name);
        FitReport report = FitCheck.Of(plan.Set, plan.Source.Shop.Accuracy);
        ImmutableArray<AlikeGaps> rows = AlikeGaps.Of(report);

        Assert.Equal(report.Gaps.Select(g => g.Gap.Key).Order(), rows.SelectMany(r => r.Gaps).Select(g => g.Gap.Key).Order());
        Assert.All(rows, r => Assert.All(r.Gaps, g => Assert.Equal((r.First.Gap.Least, r.First.Now.WorstLow, FitLines.Percent(r.First.Chance)), (g.Gap.Least, g.Now.WorstLow, FitLines.Percent(g.Chance)))));
        Assert.Equal(rows.Select(r => r.First.Chance.Share.Value).Order(), rows.Select(r => r.First.Chance.Share.Value));
    }
}
