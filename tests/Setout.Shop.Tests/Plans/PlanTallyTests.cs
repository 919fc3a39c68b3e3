using Setout.Core.Measures;
using Setout.Shop.Plans;

namespace Setout.Shop.Tests.Plans;

/// <summary>What a plan comes to, against another.</summary>
public class PlanTallyTests
{
    private static readonly PlanTally s_base = new(3, 5, 12, new(200m), 0, 40, 2, 0, 1);

    [Fact]
    public void Against_TheSame_SaysThatNothingHasChanged() => Assert.Equal("the same sheets, boards, settings, money and findings", s_base.Against(s_base));

    [Fact]
    public void Against_OneThatDiffersInAll_SaysEachWithItsSign()
    {
        PlanTally now = s_base with { Sheets = 4, Boards = 3, Settings = 10, Cost = new(214.2m), Parts = 41, Held = 4, Findings = 2 };
        Assert.Equal("+1 sheet, −2 boards, −2 settings, +14.20, +1 part, 2 parts more held for a reading, one finding more", now.Against(s_base));
        Assert.Equal("−1 sheet, +2 boards, +2 settings, −14.20, −1 part, 2 parts held no longer, one finding fewer", s_base.Against(now));
    }

    [Fact]
    public void Against_WithoutAPrice_DoesNotPassItsSumForTheWhole() =>
        Assert.Equal("+5.00 without 2 things that have no price", (s_base with { Cost = new(205m), Unpriced = 2 }).Against(s_base));

    [Fact]
    public void Against_WhereOneIsStopped_SaysSoAndNoDifference()
    {
        PlanTally stopped = new(0, 0, 0, Money.Zero, 0, 40, 0, 1, 1);
        Assert.Equal("it cannot be made so: one finding to mend first", stopped.Against(s_base));
        Assert.Equal("it can be made now; what it is compared with could not", s_base.Against(stopped));
        Assert.Equal("neither this nor what it is compared with can be made as it is", stopped.Against(stopped));
    }
}
