using CsCheck;
using Setout.Core.Fit;
using Setout.Core.Measures;
using Setout.Testing;
using static Setout.Core.Tests.Fit.ClosedForm;

namespace Setout.Core.Tests.Fit;

/// <summary>The distribution of a sum, against closed forms that are known exactly.</summary>
public sealed class ConvolutionTests
{
    /// <summary>One uniform, a triangle (two), a trapezoid and more: the bound covers the exact answer of inclusion and exclusion (textbook; see ClosedForm) at random windows.</summary>
    [Fact]
    public void Within_RandomSumsAndWindows_BoundCoversTheClosedForm()
    {
        // From very alike to very different widths: the last are narrower than a cell of any lattice.
        Gen<Rational> width = Gen.OneOf(Gen.Long[1, 100].Select(w => Rational.Of(w)), Gen.Long[1, 100].Select(w => Rational.Of(w, 100)), Gen.Long[1, 9].Select(w => Rational.Of(w, 100_000)));
        Gen.Select(Gen.Select(width, Gen.Bool).Array[1, 5], Gen.Double[0, 1], Gen.Double[0, 1]).Holds((terms, a, b) =>
        {
            Spread spread = Sum(terms.Select((term, i) => term.Item2 ? Peaked($"c{i}", term.Item1 / 2) : Even($"c{i}", 0, term.Item1)));
            Rational[] uniforms = [.. terms.SelectMany(term => term.Item2 ? [term.Item1 / 2, term.Item1 / 2] : new[] { term.Item1 })];
            Rational range = uniforms.Aggregate(Rational.Zero, (sum, w) => sum + w);
            Rational from = range * Rational.Of((decimal)Math.Min(a, b)), to = range * Rational.Of((decimal)Math.Max(a, b));
            Chance chance = Convolution.Within(spread, spread.WorstLow + Mm(from), spread.WorstLow + Mm(to));
            double exact = Below(uniforms, to) - Below(uniforms, from);
            Assert.True(chance.Share.Covers(exact), $"{exact} is not within {chance.Share}");
            Assert.True(chance.Share.Error <= 0.0005);
        }, iter: 400);
    }

    /// <summary>Irwin-Hall: F(x) = sum over k of (-1)^k C(n,k) (x-k)^n / n!. The figures are those of the formula, worked in exact fractions.</summary>
    [Theory]
    [InlineData(1, 0.3, 0.3)]
    [InlineData(2, 0.5, 0.125)]
    [InlineData(3, 1.0, 1.0 / 6)]
    [InlineData(3, 1.5, 0.5)]
    [InlineData(4, 1.0, 1.0 / 24)]
    [InlineData(4, 2.0, 0.5)]
    [InlineData(12, 6.0, 0.5)]
    [InlineData(12, 4.0, 10670040.0 / 479001600)] // (4^12 - 12*3^12 + 66*2^12 - 220) / 12!
    public void Within_SumsOfEqualUniforms_IsIrwinHall(int count, double below, double share)
    {
        Distribution sum = Distribution.Of(Sum(Enumerable.Range(0, count).Select(i => Even($"c{i}", 0, 1))));
        Chance chance = sum.Within(Mm(-1), Mm(Rational.Of((decimal)below)));
        Assert.True(chance.Share.Covers(share), $"{share} is not within {chance.Share}");
        Assert.Equal(ChanceMethod.Convolution, chance.Method);
    }

    /// <summary>Twelve uniforms against the exact fractions of all 4096 subsets, at every quarter.</summary>
    [Fact]
    public void Within_TwelveUniforms_CoversTheClosedFormFarIntoTheTails()
    {
        Rational[] widths = [.. Enumerable.Repeat(Rational.One, 12)];
        Distribution sum = Distribution.Of(Sum(Enumerable.Range(0, 12).Select(i => Even($"c{i}", 0, 1))));
        foreach (int quarters in new[] { 1, 5, 10, 15, 20, 24, 30, 40, 47 })
        {
            Rational x = Rational.Of(quarters, 4);
            Assert.True(sum.Within(Mm(0), Mm(x)).Share.Covers(Below(widths, x)), $"at {x}");
        }
    }

    /// <summary>Triangle from -h to h: F(x) = (x+h)^2/(2h^2) below the middle (GUM 4.3.9).</summary>
    [Theory]
    [InlineData(-1.5, 0.03125)]
    [InlineData(-1, 0.125)]
    [InlineData(0, 0.5)]
    [InlineData(1, 0.875)]
    public void Within_OnePeakedCause_IsATriangle(double below, double share) =>
        Assert.True(Convolution.Within(Sum(Peaked("a", 2)), Mm(-2), Mm(Rational.Of((decimal)below))).Share.Covers(share));

    /// <summary>A uniform of width 4 and one of width 2: density level at 1/4 for the middle 2, falling to nothing over 2 at either side (trapezoid, textbook).</summary>
    [Theory]
    [InlineData(0, 2, 0.25)]
    [InlineData(2, 4, 0.5)]
    [InlineData(2.5, 3.5, 0.25)]
    [InlineData(0, 1, 0.0625)]
    public void Within_TwoWidths_IsATrapezoid(double from, double to, double share) =>
        Assert.True(Convolution.Within(Sum(Even("a", 0, 4), Even("b", 0, 2)), Mm(Rational.Of((decimal)from)), Mm(Rational.Of((decimal)to))).Share.Covers(share));

    /// <summary>A uniform of 0 to 1 and a triangle of 0 to 2 are three equal uniforms: F(1) = 1/6, F(3/2) = 1/2 (Irwin-Hall).</summary>
    [Fact]
    public void Within_UniformAndTriangle_IsASumOfThree()
    {
        Distribution sum = Distribution.Of(Sum(Even("a", 0, 1), new Cause("b", CauseKind.Repeat, "", Mm(0), Mm(2), Shape.Peaked)));
        Assert.True(sum.Within(Mm(0), Mm(1)).Share.Covers(1.0 / 6));
        Assert.True(sum.Within(Mm(0), Mm(Rational.Of(3, 2))).Share.Covers(0.5));
    }

    /// <summary>
    /// The calliper of EA-4/02, example S10, from memory: two dominant rectangular errors make a trapezoid of edge ratio b = 0.33, whose 95 % lie within k = 1.83 standard
    /// uncertainties, by k = (1 - root((1-p)(1-b^2))) / root((1+b^2)/6).
    /// </summary>
    [Fact]
    public void Within_TrapezoidOfTheCalliperExample_Holds95PercentAtItsCoverageFactor()
    {
        const double Beta = 0.33, Share = 0.95;
        double k = (1 - Math.Sqrt((1 - Share) * (1 - (Beta * Beta)))) / Math.Sqrt((1 + (Beta * Beta)) / 6);
        Assert.InRange(k, 1.83, 1.84);
        Spread spread = Sum(Even("scale", Rational.Of(133, 200)), Even("jaws", Rational.Of(67, 200)));
        double u = spread.StandardDeviation.Millimetres.Value;
        Assert.Equal(Math.Sqrt((1 + (Beta * Beta)) / 6), u, 14);
        Rational reach = Rational.Of((decimal)(k * u));
        Estimate within = Convolution.Within(spread, Mm(-reach), Mm(reach)).Share;
        Assert.Equal(Share, within.Value, within.Error + 1e-12);
    }

    /// <summary>What the worst case settles is exact, limits included: by definition of the worst case.</summary>
    [Theory]
    [InlineData(-1, 1, 1.0)] // touches at both ends from inside
    [InlineData(-9, 9, 1.0)]
    [InlineData(1, 2, 0.0)] // touches from outside
    [InlineData(-5, -1, 0.0)]
    [InlineData(-5, -2, 0.0)]
    public void Within_SettledByTheWorstCase_IsExact(int least, int most, double share) =>
        Assert.Equal(new Chance(new Estimate(share, 0), ChanceMethod.Certain), Convolution.Within(Sum(Even("a", Rational.Of(1, 2)), Peaked("b", Rational.Of(1, 2))), Mm(least), Mm(most)));

    [Theory]
    [InlineData(5, 5, 1.0)]
    [InlineData(5, 6, 1.0)]
    [InlineData(4, 5, 1.0)]
    [InlineData(6, 7, 0.0)]
    [InlineData(3, 4, 0.0)]
    public void Within_NothingMoves_IsCertain(int least, int most, double share)
    {
        foreach (Spread spread in new[] { Spread.Of(Mm(5)), new Spread(Mm(4), [new(Even("a", 1, 1), 1)]) })
            Assert.Equal(new Chance(new Estimate(share, 0), ChanceMethod.Certain), Convolution.Within(spread, Mm(least), Mm(most)));
    }

    [Fact]
    public void Within_LimitsTheWrongWayRound_IsRefused()
    {
        Assert.Throws<ArgumentException>(() => Convolution.Within(Sum(Even("a", 1)), Mm(1), Mm(0)));
        Assert.Throws<ArgumentException>(() => Convolution.Within(Spread.Of(Mm(1)), Mm(1), Mm(0)));
    }

    [Fact]
    public void Within_WindowOfNoWidth_IsNothing() => Assert.Equal(0, Convolution.Within(Sum(Even("a", 1), Even("b", 1)), Mm(0), Mm(0)).Share.Value);

    /// <summary>A chance has no unit: it is the same at any scale, at the edge of what a double could square and beyond.</summary>
    [Theory]
    [InlineData(40)]
    [InlineData(-40)]
    [InlineData(180)]
    [InlineData(-180)]
    public void Within_WidthsOfAnySize_IsThatOfTheSameShape(int power)
    {
        Rational scale = power > 0 ? Rational.Of(System.Numerics.BigInteger.Pow(10, power), 1) : 1 / Rational.Of(System.Numerics.BigInteger.Pow(10, -power), 1);
        Chance Of(Rational by) => Convolution.Within(Sum(Even("a", by * 3), Peaked("b", by * 2), Even("c", by)), Mm(-by), Mm(by * 2));
        Assert.Equal(Of(1).Share.Value, Of(scale).Share.Value, 1e-9);
    }

    /// <summary>A hair's width beside a mile: both ends are told apart because the worst case is taken off exactly.</summary>
    [Fact]
    public void Within_TinySpreadOnAHugeValue_KeepsItsDigits()
    {
        var spread = new Spread(Mm(Rational.Of(1_000_000_000_000_000_000)), [new(Even("a", Rational.Of(1, 1000)), 1)]);
        Assert.True(Convolution.Within(spread, spread.Value, spread.Value + Mm(1)).Share.Covers(0.5));
    }

    /// <summary>Many causes: a hundred uniforms are all but normal (central limit theorem); 0.6827 lies within one standard deviation, 0.9545 within two (tables of the normal distribution).</summary>
    [Fact]
    public void Within_AHundredCauses_IsAllButNormal()
    {
        Spread spread = Sum(Enumerable.Range(0, 100).Select(i => Even($"c{i}", 1)));
        Rational u = Rational.Of((decimal)spread.StandardDeviation.Millimetres.Value);
        Chance one = Convolution.Within(spread, Mm(-u), Mm(u)), two = Convolution.Within(spread, Mm(-u * 2), Mm(u * 2));
        Assert.Equal(0.6827, one.Share.Value, 0.0015);
        Assert.Equal(0.9545, two.Share.Value, 0.0015);
        Assert.True(one.Share.Error <= 0.0005);
    }
}
