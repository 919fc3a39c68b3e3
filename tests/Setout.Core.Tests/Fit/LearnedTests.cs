using Setout.Core.Fit;
using Setout.Core.Measures;
using Setout.Core.SettingOut;
using static Setout.Core.Tests.Fit.FitPieces;

namespace Setout.Core.Tests.Fit;

/// <summary>What a test box tells of the others, by hand: a box is 21 17/32 wide by the plan.</summary>
public class LearnedTests
{
    private const string Box = "D1.box.as-built";
    private static readonly Accuracy s_stop = Exact with { Setting = Length.FromInches(1, 32) };

    [Fact]
    public void TestBox_ReadOver_PutsAllBoxesOfThatSettingOverByAsMuch()
    {
        SetPiece set = Drawers(3, ("thin.thickness", Read("15/32", "calliper")), (Box, Read("21 35/64", "rule")));
        // 1/64 over with sheets known: the stop stands 1/64 long, and nothing else can be the matter.
        Spread other = SpreadOf(set, s_stop, "D2.box.as-built"), play = SpreadOf(set, s_stop, "D3.play");
        Assert.Equal((In(1379, 64), true), (other.Value, other.IsCertain));
        Assert.Equal(In(1, 64), play.Value);
    }

    [Fact]
    public void TestBox_ReadWithCare_LeavesTheErrorOfTheReadingInTheOthers()
    {
        Accuracy accuracy = s_stop.With("rule", Length.FromInches(1, 128));
        Spread other = SpreadOf(Drawers(2, ("thin.thickness", Read("15/32", "calliper")), (Box, Read("21 35/64", "rule"))), accuracy, "D2.box.as-built");
        // Half of the rule's accuracy and half of the reading's: 1/128 to either side, where it was 1/32.
        Assert.Equal((In(1, 64), In(1, 128), In(1, 128)), (other.Mean - In(689, 32), other.WorstHigh - other.Mean, other.Mean - other.WorstLow));
    }

    [Fact]
    public void TestBox_ReadAsExpected_ShiftsNothing()
    {
        Spread other = SpreadOf(Drawers(2, (Box, Read("21 17/32", "rule"))), s_stop, "D2.box.as-built");
        Assert.Equal((In(689, 32), In(689, 32)), (other.Value, other.Mean));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(64)]
    public void TestBoxes_ThatSpeakAgainstEachOther_LeaveTheThirdBetweenThem(int repeat)
    {
        Accuracy accuracy = s_stop with { Repeat = repeat == 0 ? Length.Zero : Length.FromInches(1, repeat) };
        SetPiece set = Drawers(3, ("thin.thickness", Read("15/32", "calliper")), (Box, Read("21 9/16", "rule")), ("D2.box.as-built", Read("21 1/2", "rule")));
        Spread third = SpreadOf(set, accuracy, "D3.box.as-built");
        Assert.True(third.Mean >= In(43, 2) && third.Mean <= In(345, 16), $"{third.Mean}");
        // What is read is what it reads, and the report still comes.
        Assert.Equal((In(345, 16), In(43, 2)), (SpreadOf(set, accuracy, Box).Value, SpreadOf(set, accuracy, "D2.box.as-built").Value));
        Assert.All(FitCheck.Of(set, accuracy).Gaps, g => Assert.InRange(g.Chance.Share.Value, 0, 1));
    }

    [Fact]
    public void TestBox_ReadCoarserThanTheStopIsKnown_TeachesNothing()
    {
        Accuracy accuracy = s_stop.With("tape", Length.FromInches(1, 16));
        Assert.Equal(SpreadOf(Drawers(2), accuracy, "D2.box.as-built"), SpreadOf(Drawers(2, (Box, Read("21 9/16", "tape"))), accuracy, "D2.box.as-built"));
    }

    [Fact]
    public void Part_MarkedCut_TeachesNothing()
    {
        Accuracy accuracy = Accuracy.Usual;
        SetPiece cut = Drawers(2, ("D1.end.length.to-cut", Read("20 19/32", "") with { IsFact = true }), ("D1.side.length.to-cut", Read("18", "") with { IsFact = true }));
        Assert.Equal(SpreadOf(Drawers(2), accuracy, "D2.box.as-built"), SpreadOf(cut, accuracy, "D2.box.as-built"));
        // Nor is a figure that stands for the finished box, where it was decided and not measured.
        SetPiece decided = Drawers(2, (Box, Read("21 9/16", "") with { IsFact = true }));
        Assert.Equal(SpreadOf(Drawers(2), accuracy, "D2.box.as-built"), SpreadOf(decided, accuracy, "D2.box.as-built"));
    }
}
