using CsCheck;
using Setout.Core.Fit;
using Setout.Core.Measures;
using Setout.Testing;
using static Setout.Core.Tests.Fit.ClosedForm;

namespace Setout.Core.Tests.Fit;

/// <summary>Sums of causes: merging, worst case, root-sum-square, standard deviation.</summary>
public sealed class SpreadTests
{
    private static readonly Gen<Rational> s_number = Gen.Select(Gen.Long[-50, 50], Gen.Long[1, 8], Rational.Of);

    // Few ids, so that spreads share causes. One id always has the same limits.
    private static readonly Gen<Effect> s_effect = Gen.Select(Gen.Int[0, 5], s_number,
        (i, times) => new Effect(i % 2 == 0 ? Even($"c{i}", -i, 2 * i) : Peaked($"c{i}", i), times));

    private static readonly Gen<Spread> s_spread = Gen.Select(s_number, s_effect.Array[0, 6], (value, effects) => new Spread(Mm(value), [.. effects]));

    [Fact]
    public void Effects_InAnyOrderAndNumber_AreMergedByIdWithoutZeros()
    {
        Cause a = Even("a", 1), b = Even("b", 2), c = Even("c", 3);
        var spread = new Spread(Mm(10), [new(c, 1), new(a, 1), new(b, 2), new(c, -1), new(a, Rational.Of(1, 2)), new(Even("d", 1), 0)]);
        Assert.Equal([new Effect(a, Rational.Of(3, 2)), new Effect(b, 2)], spread.Effects);
        Assert.Equal([new Effect(a, 1)], (spread with { Effects = [new(a, 3), new(a, -2)] }).Effects);
    }

    [Fact]
    public void Effects_Default_AreNone() => Assert.Empty(new Spread(Mm(1), default).Effects);

    [Fact]
    public void Sums_OfSpreads_FollowTheLawsOfNumbers() => Gen.Select(s_spread, s_spread, s_number).Holds((a, b, k) =>
        a + b == b + a && (a - a) == Spread.Of(ExactLength.Zero) && (a + b) * k == (a * k) + (b * k) && a - b == a + (b * -1)
        && (a * k).Mean == a.Mean * k && (a + b).Mean == a.Mean + b.Mean && (a + Mm(k)).WorstLow == a.WorstLow + Mm(k)
        && (-a).WorstHigh == -a.WorstLow && (a + b).WorstHigh <= a.WorstHigh + b.WorstHigh && (a == b) == (b == a) && a.GetHashCode() == (a * 1).GetHashCode());

    /// <summary>Two different errors under one name would silently cancel or double.</summary>
    [Fact]
    public void Sum_OneIdWithTwoSpreads_IsRefused()
    {
        ArgumentException refused = Assert.Throws<ArgumentException>(() => Spread.Of(Mm(1), Even("sheet", 1)) + Spread.Of(Mm(1), Even("sheet", 2)));
        Assert.Contains("'sheet'", refused.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => Spread.Of(Mm(1), Even("sheet", 1)) + Spread.Of(Mm(1), Peaked("sheet", 1)));
    }

    [Fact]
    public void Cause_LimitsTheWrongWayRound_IsRefused()
    {
        Assert.Throws<ArgumentException>(() => Even("a", 1, 0));
        Assert.Throws<ArgumentException>(() => Even("a", 1).Between(Mm(1), Mm(0)));
        Assert.Equal(Mm(0), Even("a", 1, 1).Range);
    }

    /// <summary>
    /// The inside width of a case, less a box: width +-0.5, two sides of two sheets +-0.4 each, box +-0.5. Derived: worst = sum = 1.8; likely = root of the
    /// sum of squares = root(0.25 + 0.16 + 0.16 + 0.25) = 0.9055 (textbook formulas of tolerance stack-up).
    /// </summary>
    [Fact]
    public void Stack_CaseLessBox_WorstIsSumAndLikelyIsRootOfSquares()
    {
        Spread play = Spread.Of(Mm(400), Even("width", Rational.Of(1, 2))) - Spread.Of(Mm(18), Even("sheet 1", Rational.Of(2, 5)))
            - Spread.Of(Mm(18), Even("sheet 2", Rational.Of(2, 5))) - Spread.Of(Mm(338), Even("box", Rational.Of(1, 2)));
        Assert.Equal(Mm(26), play.Value);
        Assert.Equal(Mm(26) - Mm(Rational.Of(9, 5)), play.WorstLow);
        Assert.Equal(Mm(26) + Mm(Rational.Of(9, 5)), play.WorstHigh);
        Assert.True(play.RootSumSquare.Millimetres.Covers(Math.Sqrt(0.82)));
        Assert.Equal(0.91, play.RootSumSquare.Millimetres.Value, 2);
    }

    /// <summary>Correlated errors add, independent ones add in squares (GUM 5.2.2, note 1, and 5.1.2): twice against root 2.</summary>
    [Theory]
    [InlineData(Shape.Even)]
    [InlineData(Shape.Peaked)]
    public void TwoSides_OfOneSheet_ShowTwiceTheErrorAndOfTwoSheetsRootTwo(Shape shape)
    {
        Spread Side(string sheet) => Spread.Of(Mm(18), new Cause(sheet, CauseKind.Sheet, sheet, Mm(Rational.Of(-1, 5)), Mm(Rational.Of(1, 5)), shape));
        Spread one = Side("A"), shared = Side("A") + Side("A"), apart = Side("A") + Side("B");
        foreach (Func<Spread, double> of in new Func<Spread, double>[] { s => s.RootSumSquare.Millimetres.Value, s => s.StandardDeviation.Millimetres.Value })
        {
            Assert.Equal(2, of(shared) / of(one), 14);
            Assert.Equal(Math.Sqrt(2), of(apart) / of(one), 14);
        }
        Assert.Equal(Mm(Rational.Of(182, 5)), shared.WorstHigh);
        Assert.Equal(shared.WorstHigh, apart.WorstHigh);
    }

    /// <summary>An opening and a box made at one fence setting: the setting's error cancels.</summary>
    [Fact]
    public void Difference_OfSizesThatShareACause_Cancels()
    {
        Spread difference = Spread.Of(Mm(400), Even("fence", 1)) - Spread.Of(Mm(380), Even("fence", 1));
        Assert.Equal(Spread.Of(Mm(20)), difference);
        Assert.True(difference.IsCertain);
    }

    /// <summary>
    /// The end gauge of JCGM 100:2008 (GUM), H.1, from memory: standard uncertainties of 25, 9.7, 2.9 and 16.6 nm combine to 32 nm. An even cause has its half
    /// width over root 3 (4.3.7), a peaked one over root 6 (4.3.9).
    /// </summary>
    [Theory]
    [InlineData(Shape.Even, 1.7320508075688772)]
    [InlineData(Shape.Peaked, 2.4494897427831781)]
    public void StandardDeviation_EndGaugeOfTheGum_Is32Nanometres(Shape shape, double root)
    {
        double[] uncertainties = [25, 9.7, 2.9, 16.6];
        Spread gauge = Sum(uncertainties.Select((u, i) =>
        {
            ExactLength half = Mm(Rational.Of((decimal)(u * root)) / 1_000_000);
            return new Cause($"c{i}", CauseKind.Reading, "", -half, half, shape);
        }));
        double nanometres = gauge.StandardDeviation.Millimetres.Value * 1e6;
        Assert.Equal(32, Math.Round(nanometres));
        Assert.Equal(Math.Sqrt(uncertainties.Sum(u => u * u)), nanometres, 1e-4);
    }

    /// <summary>An error that is known to run to one side moves the mean (GUM F.2.4.4: asymmetric limits take their middle).</summary>
    [Fact]
    public void Lopsided_Cause_MovesTheMeanAndKeepsItsWidth()
    {
        var spread = new Spread(Mm(100), [new Effect(Even("long", 0, 3), -2)]);
        Assert.Equal((Mm(94), Mm(97), Mm(100)), (spread.WorstLow, spread.Mean, spread.WorstHigh));
        Assert.True(spread.RootSumSquare.Millimetres.Covers(3));
        Assert.True(spread.StandardDeviation.Millimetres.Covers(Math.Sqrt(3)));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(200)]
    [InlineData(-250)]
    public void Roots_OfWidthsOfAnySize_StayInBound(int power)
    {
        Rational scale = power >= 0 ? Rational.Of(System.Numerics.BigInteger.Pow(10, power), 1) : 1 / Rational.Of(System.Numerics.BigInteger.Pow(10, -power), 1);
        Estimate root = Sum(Even("a", scale * 3), Even("b", scale * 4)).RootSumSquare.Millimetres;
        Assert.True(Math.Abs(root.Value / (5 * Math.Pow(10, power)) - 1) < 1e-12);
        Assert.True(root.Error < root.Value * 1e-13);
    }

    [Fact]
    public void NoSpread_HasNoWidth()
    {
        Spread fixedSize = Sum(Even("a", 1, 1), Even("b", 0));
        Assert.True(fixedSize.IsCertain);
        Assert.Equal((Mm(1), Mm(1), Mm(1)), (fixedSize.WorstLow, fixedSize.Mean, fixedSize.WorstHigh));
        Assert.Equal(new Estimate(0, 0), fixedSize.RootSumSquare.Millimetres);
        Assert.Equal(new Estimate(0, 0), Spread.Of(Mm(1)).StandardDeviation.Millimetres);
    }

    [Fact]
    public void With_NarrowerCause_ReplacesItAndNoOther()
    {
        Spread spread = Sum(Even("a", 1), Even("b", 2));
        Assert.Equal(Sum(Even("a", 1), Even("b", Rational.Of(1, 10))), spread.With(Even("b", 2).Between(Mm(Rational.Of(-1, 10)), Mm(Rational.Of(1, 10)))));
        Assert.Same(spread, spread.With(Even("c", 1)));
    }
}
