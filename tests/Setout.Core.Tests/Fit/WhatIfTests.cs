using Setout.Core.Fit;
using Setout.Core.Measures;
using Setout.Core.SettingOut;
using static Setout.Core.Tests.Fit.FitPieces;

namespace Setout.Core.Tests.Fit;

/// <summary>What is left of a gap when the sheets of its boxes are read first: how the figures worked from them land on the grid, and no more.</summary>
public class WhatIfTests
{
    // Only the thickness is not known, and a calliper reads it as it is.
    private static FitReport Report(int drawers)
    {
        FitReport report = FitCheck.Of(Drawers(drawers), Exact.With("rule", Length.FromInches(1, 16)));
        Assert.Contains(report.Measure, m => m.Key.Text == "thin.thickness");
        return report;
    }

    private static Spread Measured(FitReport report, string key) => report.Gaps.Single(g => g.Gap.Key.Text == key).Measured;

    [Fact]
    public void Play_SidesRead_IsWhatIsKeptAndWhatItsEndIsLandedDown()
    {
        // Ends go down to the grid, by less than 1/32, so the play comes to 1/32 to 2/32; the opening, for which parts wait, is read with the rule: 1/16 either way.
        Spread play = Measured(Report(1), "D1.play");
        Assert.Equal([CauseKind.Scale, CauseKind.Reading, CauseKind.Rounding], play.Effects.Select(e => e.Cause.Kind).OrderBy(k => k));
        Assert.Equal((In(-1, 32), In(4, 32)), (play.WorstLow, play.WorstHigh));
    }

    [Fact]
    public void Plays_OfDrawersAlike_AreLandedAlike()
    {
        FitReport report = Report(3);
        Assert.True((Measured(report, "D1.play") - Measured(report, "D2.play")).IsCertain);
        Assert.True((Measured(report, "D1.play") - Measured(report, "D3.play")).IsCertain);
        // So all come right as often as one does, within what is drawn.
        GapFit play = report.Gaps.Single(g => g.Gap.Key == Play);
        Assert.False(play.ChanceMeasured.IsSurelyAbove(report.Whole.ChanceMeasured));
    }

    [Fact]
    public void Bottom_WorkedFromTheEndAndTheGrooveAsTheyAreCut_FollowsThemWhereTheyLand()
    {
        // End and groove move with the sides and are landed anew, but the bottom is worked from both as landed: its slack is 1/16 whatever they do.
        Spread slack = Measured(Report(1), "D1.bottom.play-across");
        Assert.Equal((In(1, 16), true), (slack.Value, slack.IsCertain));
    }

    [Fact]
    public void Bottom_AlongTheBox_IsLandedByItself()
    {
        // Side less two ends of 15/32, plus two grooves, less 1/16: the two ends are read, so only where the bottom lands is not known.
        Spread slack = Measured(Report(1), "D1.bottom.play-along");
        Assert.Equal(CauseKind.Rounding, Assert.Single(slack.Effects).Cause.Kind);
        Assert.Equal(In(1, 32), slack.WorstHigh - slack.WorstLow);
    }
}
