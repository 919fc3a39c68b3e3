using CsCheck;
using Setout.Core.Fit;
using Setout.Core.Measures;
using Setout.Testing;
using static Setout.Core.Tests.Fit.ClosedForm;

namespace Setout.Core.Tests.Fit;

/// <summary>One distribution asked many questions, and the best shift.</summary>
public sealed class DistributionTests
{
    /// <summary>Growing windows hold more, and windows side by side add up (axioms of chance), within the bounds.</summary>
    [Fact]
    public void Within_WindowsSideBySide_AddUp()
    {
        Distribution sum = Distribution.Of(Sum(Even("a", 3), Peaked("b", 2), Even("c", 1), Even("d", Rational.Of(1, 7))));
        double total = 0;
        for (int x = -70; x < 70; x++)
        {
            Chance part = sum.Within(Mm(Rational.Of(x, 10)), Mm(Rational.Of(x + 1, 10)));
            Assert.True(part.Share.Value >= -1e-15 && part.AtLeast >= 0 && part.AtMost <= 1);
            total += part.Share.Value;
        }
        Assert.Equal(1, total, 1e-9);
    }

    /// <summary>The best shift against a scan of all others, lopsided causes included.</summary>
    [Fact]
    public void BestShift_AgainstAScan_IsNeverBeaten() => Gen.Select(Gen.Int[1, 20], Gen.Int[-20, 20], Gen.Int[1, 20], Gen.Int[0, 40]).Holds((even, low, peaked, window) =>
    {
        Distribution sum = Distribution.Of(Sum(Even("a", low, low + even), Peaked("b", peaked)) + Mm(7));
        ExactLength width = Mm(window), best = sum.BestShift(width);
        Chance At(ExactLength shift) => sum.Within(-shift, width - shift);
        Chance top = At(best);
        ExactLength from = best - sum.WorstHigh + sum.WorstLow, step = (sum.WorstHigh - sum.WorstLow) / 50;
        for (int i = 0; i <= 100; i++) Assert.False(At(from + (step * i)).IsSurelyAbove(top));
    }, iter: 100);

    /// <summary>A symmetric distribution has its window centred on the mean, also where the window is wider than all that can come.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(40)]
    public void BestShift_AnyWidth_CentresTheWindow(int width)
    {
        Spread spread = Sum(Even("a", 1), Peaked("b", 2)) + Mm(3);
        Assert.Equal(Mm(Rational.Of(width, 2) - 3), Distribution.Of(spread).BestShift(Mm(width)));
        Assert.Equal(Mm(Rational.Of(width, 2) - 3), Distribution.Of(Spread.Of(Mm(3))).BestShift(Mm(width)));
    }

    [Fact]
    public void BestShift_OfNoWindow_IsRefused() => Assert.Throws<ArgumentException>(() => Distribution.Of(Sum(Even("a", 1))).BestShift(Mm(-1)));
}
