using System.Collections.Immutable;
using Setout.Core.Fit;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using static Setout.Core.Tests.Fit.FitPieces;
using static Setout.Testing.Described;

namespace Setout.Core.Tests.Fit;

/// <summary>What a quantity may come to, one source of error at a time, against figures worked by hand.</summary>
public class SpreadsTests
{
    [Fact]
    public void Play_OfAShopThatErrsInNothing_IsWhatIsKept()
    {
        Spread play = SpreadOf(Drawers(1), Exact, "D1.play");
        Assert.Equal((In(1, 32), true), (play.Value, play.IsCertain));
        Assert.Equal(Chance.Sure, Assert.Single(FitCheck.Of(Drawers(1), Exact).Gaps, g => g.Gap.Key == Play).Chance);
    }

    // A given thickness is as good as a rule, off by r either way, and two sides move the play by 2r either way, all equally likely. The play that is
    // kept is p, so the play lies from p - 2r to p + 2r; of that, what lies from 0 to 1/16 fits. In 64ths: p, r, and what fits of how much.
    [Theory]
    [InlineData(2, 1, 4, 4)]
    [InlineData(2, 2, 4, 8)]
    [InlineData(2, 3, 4, 12)]
    [InlineData(0, 2, 4, 8)]
    [InlineData(0, 1, 2, 4)]
    [InlineData(4, 3, 4, 12)]
    [InlineData(6, 2, 2, 8)]
    [InlineData(8, 1, 0, 4)]
    public void Play_WithThicknessAlone_FitsAsOftenAsTheRectangleMeetsTheWindow(int kept, int rule, int fits, int of)
    {
        SetPiece set = Drawers(1, Kind("box", play: Given(In(kept, 64))));
        Accuracy accuracy = Exact.With("rule", In(rule, 64).ToNearestTick());
        Spread play = SpreadOf(set, accuracy, "D1.play");
        Assert.Equal((In(kept, 64), In(kept - (2 * rule), 64), In(kept + (2 * rule), 64)), (play.Value, play.WorstLow, play.WorstHigh));
        Chance chance = FitCheck.Of(set, accuracy).Gaps.Single(g => g.Gap.Key == Play).Chance;
        Assert.InRange((double)fits / of, chance.Share.Value - chance.Share.Error - 1e-12, chance.Share.Value + chance.Share.Error + 1e-12);
        Assert.True(chance.Share.Error <= 0.0005);
    }

    [Fact]
    public void Play_TwoSidesOfOneSheet_TakeItsErrorTwice()
    {
        Length off = Length.FromInches(1, 64);
        Spread play = SpreadOf(Drawers(1), Exact with { Sheet = off }, "D1.play");
        Effect effect = Assert.Single(play.Effects);
        Assert.Equal((CauseKind.Sheet, Rational.Of(-2)), (effect.Cause.Kind, effect.Times));
        Assert.Equal(In(1, 32) + In(2, 64), play.WorstHigh);
        // Half width over root 3: rectangular distribution, JCGM 100:2008 (GUM) 4.3.7.
        Assert.Equal(2 * off.ApproximateMillimetres / Math.Sqrt(3), play.StandardDeviation.Millimetres.Value, 9);
    }

    [Fact]
    public void Play_TwoSidesOfTwoSheets_ScatterByRootTwoLessButReachAsFar()
    {
        BenchFacts facts = BenchFacts.Empty with { Sheets = ImmutableDictionary<string, string>.Empty.Add("D1.side#1", "thin.sheet-1").Add("D1.side#2", "thin.sheet-2") };
        Accuracy accuracy = Exact with { Sheet = Length.FromInches(1, 64) };
        Spread one = SpreadOf(Drawers(1), accuracy, "D1.play"), two = SpreadOf(Drawers(1, facts: facts), accuracy, "D1.play");
        Assert.Equal(2, two.Effects.Length);
        Assert.Equal((one.WorstLow, one.WorstHigh), (two.WorstLow, two.WorstHigh));
        Assert.Equal(Math.Sqrt(2), one.StandardDeviation.Millimetres.Value / two.StandardDeviation.Millimetres.Value, 12);
    }

    [Fact]
    public void Play_TwoSidesOfOneSheetThatIsNamed_TakeItsErrorTwice()
    {
        BenchFacts facts = BenchFacts.Empty with { Sheets = ImmutableDictionary<string, string>.Empty.Add("D1.side", "thin.sheet-1") };
        Accuracy accuracy = Exact with { Sheet = Length.FromInches(1, 64) };
        Assert.Equal(Rational.Of(-2), Assert.Single(SpreadOf(Drawers(1, facts: facts), accuracy, "D1.play").Effects).Times);
    }

    [Fact]
    public void Play_OpeningAndBoxReadWithOneTape_LosesWhatTheTapeItselfIsOff()
    {
        Length off = Length.FromInches(1, 32);
        Accuracy accuracy = Exact.With("tape", off).With("rule", off);
        SetPiece one = Drawers(1, ("D1.opening", Read("22 9/16", "tape")), ("D1.box.as-built", Read("21 17/32", "tape")));
        SetPiece two = Drawers(1, ("D1.opening", Read("22 9/16", "rule")), ("D1.box.as-built", Read("21 17/32", "tape")));
        Spread same = SpreadOf(one, accuracy, "D1.play"), other = SpreadOf(two, accuracy, "D1.play");
        // Of each reading half the accuracy is left, 1/64 + 1/64; of two instruments all of both, 1/32 + 1/32.
        Assert.Equal((In(1, 32), In(2, 64), In(2, 32)), (same.Value, same.WorstHigh - same.Value, other.WorstHigh - other.Value));
        Assert.DoesNotContain(same.Effects, e => e.Cause.Kind == CauseKind.Scale);
        Assert.Equal(2, other.Effects.Count(e => e.Cause.Kind == CauseKind.Scale));
    }

    [Fact]
    public void Play_EndsCutAtOneSetting_MovesWithTheStopInEveryDrawer()
    {
        SetPiece set = Drawers(2);
        Accuracy accuracy = Exact with { Setting = Length.FromInches(1, 64) };
        // Opening and box come from two settings; those of the box are one for both drawers, so their difference is certain.
        Spread first = SpreadOf(set, accuracy, "D1.play"), second = SpreadOf(set, accuracy, "D2.play");
        Assert.Equal(2, first.Effects.Length);
        Assert.True((first - second).IsCertain);
    }

    // Limits of a maker of slides, from the rule SS3: 0.2 to 0.5 mm a side, 0.4 to 1.0 mm in all, the middle 0.7 mm. Inside 24 - 1 7/16 in = 573.0875 mm, less two slides 25.4:
    // 547.6875 mm; less 0.7 mm the box is 546.9875 mm, less 1/32 in = 0.79375 mm it is 546.89375 mm.
    [Theory]
    [InlineData(SlideWindow.Narrow, "546.9875 mm", "0.4 mm", "1.0 mm", "0.7 mm")]
    [InlineData(SlideWindow.Usual, "546.89375 mm", "0 mm", "1/16", "1/32")]
    public void Box_OfEitherSlideWindow_IsMadeForItsMiddle(SlideWindow window, string box, string least, string most, string kept)
    {
        SetPiece set = Drawers(1, Kind("box") with { Window = window });
        Gap gap = set.Gaps.Single(g => g.Key == Play);
        Assert.Equal((Of(box), Of(kept)), (set.Worked[new("D1.box.width")], set.Worked[new("box.play-kept")]));
        Assert.Equal((Of(least), Of(most)), (gap.Least, gap.Most));
        Assert.Equal(new QuantityKey("box.play-kept"), gap.Allowance);
    }
}
