using Setout.Core.Fit;
using Setout.Core.Measures;
using static Setout.Core.Tests.Fit.ClosedForm;

namespace Setout.Core.Tests.Fit;

/// <summary>Minima, maxima and sums over spreads.</summary>
public sealed class SpreadTreeTests
{
    private static SpreadTree Uniform(string id) => Sum(Even(id, 0, 1));

    private static Chance Below(SpreadTree tree, Rational x, Rational? from = null) => Simulation.Within(tree, Mm(from ?? -9), Mm(x), 11);

    /// <summary>The least of n uniforms is above t with chance (1-t)^n, the greatest below t with chance t^n (order statistics, textbook).</summary>
    [Theory]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(5)]
    public void Extremes_OfUniforms_AreOrderStatistics(int count)
    {
        SpreadTree[] uniforms = [.. Enumerable.Range(0, count).Select(i => Uniform($"u{i}"))];
        Assert.True(Below(SpreadTree.Least([.. uniforms]), Rational.Of(3, 10)).Share.Covers(1 - Math.Pow(0.7, count)));
        Assert.True(Below(SpreadTree.Greatest([.. uniforms]), Rational.Of(3, 10)).Share.Covers(Math.Pow(0.3, count)));
    }

    /// <summary>Two sums of a least and a least, by integration: P(min(a,b) + min(c,d) &lt; 1) = integral of 2(1-x)(1-x^2) from 0 to 1 = 5/6.</summary>
    [Fact]
    public void Sum_OfTwoLeasts_IsItsIntegral()
    {
        SpreadTree sum = SpreadTree.Least(Uniform("a"), Uniform("b")) + SpreadTree.Least(Uniform("c"), Uniform("d"));
        Assert.True(Below(sum, 1).Share.Covers(5.0 / 6));
        // Turned round and moved it is the same event on the same draws.
        Assert.Equal(Below(sum, 1).Share.Value, Simulation.Within((sum * -2) + Spread.Of(Mm(7)), Mm(5), Mm(99), 11).Share.Value);
        Assert.Equal((Mm(0), Mm(0), Mm(2)), (sum.Value, sum.WorstLow, sum.WorstHigh));
    }

    /// <summary>The span of two uniforms: P(max - min &lt; t) = 1 - (1-t)^2 (order statistics, textbook). The two share their causes.</summary>
    [Fact]
    public void Difference_OfExtremesWithSharedCauses_IsTheSpan()
    {
        SpreadTree span = SpreadTree.Greatest(Uniform("a"), Uniform("b")) - SpreadTree.Least(Uniform("a"), Uniform("b"));
        Assert.True(Below(span, Rational.Of(1, 4)).Share.Covers(1 - (0.75 * 0.75)));
        Assert.Equal(1, Simulation.Within(span, Mm(0), Mm(9), 11).Share.Value);
    }

    /// <summary>A plain spread added goes inside, where shared causes cancel: the least of two spots less the same fence error.</summary>
    [Fact]
    public void Plus_PlainSpread_MeetsSharedCausesInside()
    {
        Spread fence = Sum(Even("fence", 5));
        SpreadTree play = SpreadTree.Least(fence + Sum(Even("a", 0, 1)), fence + Sum(Even("b", 0, 1))) - fence;
        Assert.Equal((Mm(0), Mm(1)), (play.WorstLow, play.WorstHigh));
        Assert.Equal(Below(SpreadTree.Least(Uniform("a"), Uniform("b")), Rational.Of(1, 3)), Below(play, Rational.Of(1, 3)));
    }

    /// <summary>A part that can never count is dropped, whatever the parts share; the rest is a plain spread.</summary>
    [Fact]
    public void Least_PartsThatNeverCount_AreDropped()
    {
        Spread narrow = Sum(Even("fence", 5), Even("a", 1)), wide = Sum(Even("fence", 5), Even("b", 1)) + Mm(2);
        Assert.Equal(narrow, SpreadTree.Least(wide, narrow).AsSpread);
        Assert.Equal(wide, SpreadTree.Greatest(narrow, wide).AsSpread);
        Assert.Null(SpreadTree.Least(narrow, wide - Mm(1)).AsSpread);
        Assert.Equal(narrow, SpreadTree.Least(narrow, narrow).AsSpread);
        Assert.Equal(narrow, SpreadTree.Least(narrow, wide - Mm(1)).With(Even("b", 0)).AsSpread);
        Assert.Equal(Spread.Of(Mm(0)), (SpreadTree.Least(narrow, wide - Mm(1)) * 0).AsSpread);
    }

    [Fact]
    public void Least_OfNothing_IsRefused()
    {
        Assert.Throws<ArgumentException>(() => SpreadTree.Least());
        Assert.Throws<ArgumentException>(() => SpreadTree.Greatest(default));
    }

    /// <summary>A least closed by a fixed size stands at it with a chance of its own: P(min(U, 1/2) = 1/2) = 1/2, and limits are included.</summary>
    [Fact]
    public void Least_ClosedByAFixedSize_StandsOnItsLimit()
    {
        SpreadTree closed = SpreadTree.Least(Uniform("a"), Spread.Of(Mm(Rational.Of(1, 2)))) + Spread.Of(Mm(Rational.Of(1, 3)));
        Chance onIt = Simulation.Within(closed, Mm(Rational.Of(5, 6)), Mm(Rational.Of(5, 6)), 3);
        Assert.True(onIt.Share.Covers(0.5), $"{onIt.Share}");
        Assert.Equal(Chance.Never, Simulation.Within(closed, Mm(Rational.Of(6, 7)), Mm(1), 3));
        Assert.Equal(Chance.Sure, Simulation.Within(closed, Mm(Rational.Of(1, 3)), Mm(Rational.Of(5, 6)), 3));
    }
}
