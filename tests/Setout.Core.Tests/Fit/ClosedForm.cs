using System.Numerics;
using Setout.Core.Fit;
using Setout.Core.Measures;

namespace Setout.Core.Tests.Fit;

/// <summary>Short ways to make causes in millimetres, and the exact reference that the distribution is held against.</summary>
internal static class ClosedForm
{
    public static ExactLength Mm(Rational millimetres) => ExactLength.FromMillimetres(millimetres);

    public static Cause Even(string id, Rational low, Rational high) => new(id, CauseKind.Repeat, id, Mm(low), Mm(high), Shape.Even);

    public static Cause Even(string id, Rational half) => Even(id, -half, half);

    public static Cause Peaked(string id, Rational half) => new(id, CauseKind.Repeat, id, Mm(-half), Mm(half), Shape.Peaked);

    /// <summary>A value of zero with these causes, each once.</summary>
    public static Spread Sum(params IEnumerable<Cause> causes) => new(ExactLength.Zero, [.. causes.Select(cause => new Effect(cause, 1))]);

    /// <summary>
    /// The chance that a sum of uniforms from 0 to each width is less than x, in exact fractions, so that no digit is lost: inclusion and exclusion over
    /// all subsets S of the widths, sum of (-1)^|S| (x - S)^n over those below x, divided by n! times all widths. Textbook; for equal widths the Irwin-Hall distribution.
    /// </summary>
    public static double Below(Rational[] widths, Rational x)
    {
        int n = widths.Length;
        Rational sum = 0;
        for (int subset = 0; subset < 1 << n; subset++)
        {
            Rational left = x;
            for (int i = 0; i < n; i++)
                if ((subset >> i & 1) == 1) left -= widths[i];
            if (left.Sign <= 0) continue;
            Rational power = Power(left, n);
            sum += BitOperations.PopCount((uint)subset) % 2 == 0 ? power : -power;
        }
        for (int i = 0; i < n; i++) sum /= widths[i] * (i + 1);
        return sum.ToDouble();
    }

    private static Rational Power(Rational value, int times) => Rational.Of(BigInteger.Pow(value.Numerator, times), BigInteger.Pow(value.Denominator, times));
}
