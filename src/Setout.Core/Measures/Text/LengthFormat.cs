using System.Numerics;

namespace Setout.Core.Measures.Text;

/// <summary>
/// How lengths are written. Immutable. A fraction is reduced and carries into the whole inch; what is finer than the format shows is
/// never dropped in silence: the <see cref="Figure.Residue"/> says it.
/// </summary>
public sealed record LengthFormat
{
    private static readonly int[] s_powersOfTen = [1, 10, 100, 1_000, 10_000, 100_000, 1_000_000];

    private LengthFormat(LengthUnit unit, int fineness, bool showUnit) => (Unit, Fineness, ShowsUnit) = (unit, fineness, showUnit);

    /// <summary>The unit shown.</summary>
    public LengthUnit Unit { get; }

    /// <summary>Largest denominator for inches (a power of two); parts of a millimetre for metric (10 = one decimal).</summary>
    public int Fineness { get; }

    private int Decimals => Array.IndexOf(s_powersOfTen, Fineness);

    /// <summary>Whether the unit follows the number.</summary>
    public bool ShowsUnit { get; init; }

    /// <summary>Inches to 1/64 with the unit: <c>14 7/32 in</c>.</summary>
    public static LengthFormat Inch { get; } = new(LengthUnit.Inch, 64, true);

    /// <summary>Millimetres to a tenth with the unit: <c>361.2 mm</c>.</summary>
    public static LengthFormat Millimetre { get; } = new(LengthUnit.Millimetre, 10, true);

    /// <summary>The usual format for a unit, with the unit shown.</summary>
    public static LengthFormat For(LengthUnit unit) => unit == LengthUnit.Inch ? Inch : Millimetre;

    /// <summary>Inches to a denominator.</summary>
    /// <param name="denominator">A power of two from 1 to 256.</param>
    /// <exception cref="ArgumentOutOfRangeException">Another denominator.</exception>
    public static LengthFormat Inches(int denominator) => BitOperations.IsPow2(denominator) && denominator is >= 1 and <= 256
        ? new(LengthUnit.Inch, denominator, true)
        : throw new ArgumentOutOfRangeException(nameof(denominator), denominator, "A power of two from 1 to 256.");

    /// <summary>Millimetres to so many decimals.</summary>
    /// <param name="decimals">0 to 6.</param>
    /// <exception cref="ArgumentOutOfRangeException">Another count.</exception>
    public static LengthFormat Millimetres(int decimals) => decimals is >= 0 and <= 6
        ? new(LengthUnit.Millimetre, s_powersOfTen[decimals], true)
        : throw new ArgumentOutOfRangeException(nameof(decimals), decimals, "0 to 6 decimals.");

    /// <summary>The same format without the unit.</summary>
    public LengthFormat Bare => this with { ShowsUnit = false };

    /// <summary>Makes a length ready to be shown, to the nearest step of this format.</summary>
    public Figure Format(ExactLength length)
    {
        Rational value = Unit == LengthUnit.Inch ? length.Inches : length.Millimetres;
        BigInteger steps = (value * Fineness).Round(Rounding.Nearest);
        Rational shown = Rational.Of(steps, Fineness);
        ExactLength residue = length - (Unit == LengthUnit.Inch ? ExactLength.FromInches(shown) : ExactLength.FromMillimetres(shown));
        bool negative = steps.Sign < 0;
        (BigInteger whole, BigInteger rest) = BigInteger.DivRem(BigInteger.Abs(steps), Fineness);
        string unit = !ShowsUnit ? "" : Unit.Mark;
        if (Unit == LengthUnit.Millimetre)
        {
            string decimals = rest.IsZero ? "" : "." + rest.ToString().PadLeft(Decimals, '0').TrimEnd('0');
            return new(negative, whole + decimals, 0, 0, unit, residue);
        }
        if (rest.IsZero) return new(negative, whole.ToString(), 0, 0, unit, residue);
        int common = (int)BigInteger.GreatestCommonDivisor(rest, Fineness);
        return new(negative, whole.IsZero ? "" : whole.ToString(), (int)rest / common, Fineness / common, unit, residue);
    }

    /// <summary>The text of a length in this format.</summary>
    public string Text(ExactLength length) => Format(length).ToString();
}
