using CsCheck;
using Setout.Core.Craft;
using Setout.Core.Measures;
using Setout.Testing;

namespace Setout.Core.Tests.Craft;

/// <summary>Squareness against the law of cosines, published rows and frames made from their corners.</summary>
public sealed class SquarenessTests
{
    private static readonly ExactLength s_tape = ExactLength.FromInches(Rational.Of(1, 32));

    private static ExactLength Mm(double millimetres) => ExactLength.FromMillimetres(Rational.Of((decimal)millimetres));

    private static ExactLength In(double inches) => ExactLength.FromInches(Rational.Of((decimal)inches));

    /// <summary>A frame with opposite sides equal and its diagonals apart by delta, by the law of cosines: d1 is AC.</summary>
    private static FourSides Racked(double w, double h, double delta, Func<double, ExactLength> unit)
    {
        // d1 - d2 = delta and d1^2 + d2^2 = 2 (w^2 + h^2) (the parallelogram law).
        double d2 = (-delta + Math.Sqrt((4 * ((w * w) + (h * h))) - (delta * delta))) / 2;
        return new(unit(w), unit(h), unit(w), unit(h), unit(d2 + delta), unit(d2));
    }

    /// <summary>Rows computed from sin e = (d1 - d2)(d1 + d2) / 4WH (law of cosines; derived, no source needed): angle in degrees, lean over H.</summary>
    [Theory]
    [InlineData(24, 24, 0.0625, 0.106, 0.044)]
    [InlineData(24, 36, 0.0625, 0.090, 0.056)]
    [InlineData(24, 36, 0.125, 0.179, 0.113)]
    [InlineData(36, 30, 0.03125, 0.039, 0.020)]
    [InlineData(48, 96, 0.125, 0.083, 0.140)]
    public void Of_RackedRectangleInInches_AngleAndLean(double w, double h, double delta, double angle, double lean)
    {
        SquarenessResult result = Squareness.Of(Racked(w, h, delta, In), s_tape);
        Assert.Equal(angle, result.OutOfSquare.Degrees.Value, 0.0006);
        Assert.Equal(lean, result.Lean.Millimetres.Value / 25.4, 0.0006);
        Assert.Equal(FrameVerdict.Agree, result.Verdict);
    }

    [Theory]
    [InlineData(600, 720, 1, 0.062152, 0.781025)]
    [InlineData(500, 500, 1, 0.081028, 0.707107)]
    [InlineData(400, 150, 1, 0.204, 0.53)]
    public void Of_RackedRectangleInMillimetres_AngleAndLean(double w, double h, double delta, double angle, double lean)
    {
        SquarenessResult result = Squareness.Of(Racked(w, h, delta, Mm), s_tape);
        Assert.Equal(angle, result.OutOfSquare.Degrees.Value, 0.0005);
        Assert.Equal(lean, result.Lean.Millimetres.Value, 0.005);
    }

    [Fact]
    public void Of_LongerAC_ShortensItByAboutHalfTheDifferenceToTheDiagonalOfTheRectangle()
    {
        SquarenessResult result = Squareness.Of(Racked(600, 720, 4, Mm), s_tape);
        Assert.Equal(Diagonal.AC, result.Shorten);
        Assert.Equal(2, result.By.Millimetres.Value, 0.01);
        Assert.Equal(Math.Sqrt((600 * 600) + (720 * 720)), result.Target!.Value.Millimetres.Value, 1e-5);
        Assert.True(result.Racking.Degrees.Value < 0, "BD is short, so the corner at A is narrow.");
    }

    [Fact]
    public void Of_LongerBD_ShortensBD() => Assert.Equal(Diagonal.BD, Squareness.Of(Racked(600, 720, -4, Mm), s_tape).Shorten);

    [Theory]
    [InlineData(1)]
    [InlineData(5)]
    [InlineData(12)]
    [InlineData(300)]
    public void Of_ThreeFourFive_IsSquare(int k)
    {
        SquarenessResult result = Squareness.Of(new(Mm(4 * k), Mm(3 * k), Mm(4 * k), Mm(3 * k), Mm(5 * k), Mm(5 * k)), s_tape);
        Assert.Equal(0, result.OutOfSquare.Degrees.Value, 1e-7);
        Assert.Equal(Diagonal.None, result.Shorten);
        Assert.Null(result.Target);
        Assert.Equal(5 * k, result.TargetAC.Millimetres.Value, 1e-6);
        Assert.False(result.EqualDiagonalsMislead);
    }

    /// <summary>An isosceles trapezoid has equal diagonals and is not square (geometry).</summary>
    [Fact]
    public void Of_TrapezoidWithEqualDiagonals_SaysThatTheyMislead()
    {
        // AB 600 under CD 590, legs 720: the diagonal is the root of 720^2 + 600 x 590 (Ptolemy).
        double diagonal = Math.Sqrt((720 * 720) + (600 * 590));
        SquarenessResult result = Squareness.Of(new(Mm(600), Mm(720), Mm(590), Mm(720), Mm(diagonal), Mm(diagonal)), s_tape);
        Assert.True(result.EqualDiagonalsMislead);
        Assert.Equal(Diagonal.None, result.Shorten);
        Assert.Equal(Math.Asin(5.0 / 720) * 180 / Math.PI, result.OutOfSquare.Degrees.Value, 1e-5);
        Assert.Equal(0, result.Racking.Degrees.Value, 1e-6);
        Assert.Equal(FrameVerdict.Agree, result.Verdict);
    }

    [Fact]
    public void Of_FrameInWind_IsToldFromASlip()
    {
        // A rectangle 900 x 600 whose fourth corner stands 20 mm up: its sides and the diagonal to it are longer by what that takes.
        // All six together notice it only by hundredths of a millimetre, which is why the lift is measured when there is doubt.
        SquarenessResult wind = Squareness.Of(Lifted(900, 600, 20, null), Mm(0.01));
        Assert.Equal(FrameVerdict.Wind, wind.Verdict);
        Assert.Equal(20, wind.Wind.Millimetres.Value, 0.05);
        SquarenessResult measured = Squareness.Of(Lifted(900, 600, 20, 20), Mm(0.01));
        Assert.Equal(FrameVerdict.Wind, measured.Verdict);
        Assert.Equal(0, measured.Misfit.Millimetres.Value, 1e-4);
        // One diagonal read 12 mm long cannot be, flat or in wind.
        FourSides square = Racked(900, 600, 0, Mm);
        Assert.Equal(FrameVerdict.Slip, Squareness.Of(square with { AC = square.AC + Mm(12) }, Mm(0.5)).Verdict);
    }

    [Fact]
    public void Of_LiftThatDoesNotExplainTheReadings_IsASlip() =>
        Assert.Equal(FrameVerdict.Slip, Squareness.Of(Lifted(900, 600, 0, 60), Mm(0.1)).Verdict);

    private static FourSides Lifted(double w, double h, double lift, double? told)
    {
        double Root(double a, double b, double c) => Math.Sqrt((a * a) + (b * b) + (c * c));
        return new(Mm(w), Mm(h), Mm(Root(w, 0, lift)), Mm(Root(0, h, lift)), Mm(Root(w, h, 0)), Mm(Root(w, h, lift)), told is { } t ? Mm(t) : null);
    }

    /// <summary>Any frame near a rectangle, made from its corners: the fit finds it again, and once pulled to its targets it has no racking left.</summary>
    [Fact]
    public void Of_FrameFromItsCorners_IsFoundAgainAndItsTargetsEndTheRacking() =>
        Gen.Select(Gen.Double[200, 2500], Gen.Double[200, 2500], Gen.Double[-1, 1].Array[5]).Holds((w, h, off) =>
        {
            double scale = Math.Min(w, h) / 20;
            (double X, double Y)[] at = [(0, 0), (w, 0), (w + (off[0] * scale), h + (off[1] * scale)), (off[2] * scale, h + (off[3] * scale))];
            double Apart(int i, int j) => Math.Sqrt(Math.Pow(at[i].X - at[j].X, 2) + Math.Pow(at[i].Y - at[j].Y, 2));
            var frame = new FourSides(Mm(Apart(0, 1)), Mm(Apart(1, 2)), Mm(Apart(2, 3)), Mm(Apart(3, 0)), Mm(Apart(0, 2)), Mm(Apart(1, 3)));
            SquarenessResult result = Squareness.Of(frame, Mm(0.01));
            Assert.Equal(0, result.Misfit.Millimetres.Value, 1e-6);
            double Turn(int before, int i, int after)
            {
                double a = Math.Atan2(at[before].Y - at[i].Y, at[before].X - at[i].X), b = Math.Atan2(at[after].Y - at[i].Y, at[after].X - at[i].X);
                double turn = Math.Abs(a - b) * 180 / Math.PI;
                return Math.Min(turn, 360 - turn);
            }
            double worst = Enumerable.Range(0, 4).Max(i => Math.Abs(Turn((i + 3) % 4, i, (i + 1) % 4) - 90));
            Assert.Equal(worst, result.OutOfSquare.Degrees.Value, 1e-5);

            SquarenessResult pulled = Squareness.Of(frame with { AC = Mm(result.TargetAC.Millimetres.Value), BD = Mm(result.TargetBD.Millimetres.Value) }, Mm(0.01));
            Assert.Equal(0, pulled.Misfit.Millimetres.Value, 1e-5);
            Assert.Equal(0, pulled.Racking.Degrees.Value, 1e-5);
            Assert.Equal(Diagonal.None, pulled.Shorten);
        }, iter: 300);

    [Fact]
    public void Of_SidesThatCannotMeet_IsRefusedWithTheCorners() =>
        Assert.Contains("A, B and C", Assert.Throws<ArgumentException>(() => Squareness.Of(new(Mm(100), Mm(100), Mm(100), Mm(100), Mm(300), Mm(140)), s_tape)).Message, StringComparison.Ordinal);

    /// <summary>Source of the step: PS 1, 1/64 in per nominal foot of the longest edge; for a 4x8 ft sheet that is 1/8 in.</summary>
    [Fact]
    public void ToleranceFor_SheetOfFourByEightFeet_IsAnEighth() =>
        Assert.Equal(In(0.125), Squareness.ToleranceFor(Racked(48, 96, 0, In)));
}
