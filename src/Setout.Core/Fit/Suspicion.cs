using System.Numerics;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;

namespace Setout.Core.Fit;

/// <summary>What sort of slip a reading looks like.</summary>
public enum SlipKind
{
    /// <summary>Millimetres typed as inches, or inches as millimetres.</summary>
    Unit,

    /// <summary>Centimetres for millimetres, or a decimal point out of its place: ten times too much or too little.</summary>
    Tenfold,

    /// <summary>16ths for 32nds, 32nds for 64ths, or the reverse: twice the fraction, or half of it.</summary>
    Fraction,

    /// <summary>Read from the 1 in or the 10 cm mark, and that not taken off.</summary>
    Burnt,

    /// <summary>Two digits changed over.</summary>
    Digits,
}

/// <summary>A reading that looks like a slip, and what it likely was.</summary>
/// <param name="Kind">What sort of slip.</param>
/// <param name="Read">The value as given.</param>
/// <param name="Expected">What the working gives.</param>
/// <param name="Likely">What it likely was.</param>
public sealed record Suspicion(SlipKind Kind, ExactLength Read, ExactLength Expected, ExactLength Likely)
{
    // How much nearer the likely value must be: less, and any value a little off could be had by halving some fraction. Common practice, no source.
    private const int Nearer = 4;

    /// <summary>In words: <c>18 mm? 18 in was read where 23/32 in was expected</c>.</summary>
    /// <param name="unit">The unit of the piece.</param>
    public string Words(LengthUnit unit)
    {
        var format = LengthFormat.For(unit);
        return $"{LikelyText(unit)}? {format.Text(Read)} was read where {format.Text(Expected)} was expected";
    }

    /// <summary>What it likely was, as it would be typed.</summary>
    /// <param name="unit">The unit of the piece.</param>
    public string LikelyText(LengthUnit unit)
    {
        if (Kind == SlipKind.Unit) unit = unit.Other;
        var format = LengthFormat.For(unit);
        if (format.Format(Likely).Residue.Sign == 0) return format.Text(Likely);
        // What was typed with a decimal point is worth its digits: 17.85 mm was read, not 17.9.
        if (unit == LengthUnit.Millimetre) return LengthFormat.Millimetres(3).Text(Likely);
        decimal thousandths = (decimal)(Likely.Inches * 1000).Round(Rounding.Nearest);
        return FormattableString.Invariant($"{thousandths / 1000:0.###} in");
    }

    /// <summary>The likeliest slip: the one nearest to the best value. See <see cref="ReadingChecks.Slip"/>.</summary>
    internal static Suspicion? Of(ExactLength best, ExactLength value, Spread expected, Length instrument, LengthUnit unit)
    {
        if (best.Sign <= 0 || value.Sign <= 0) return null;
        ExactLength low = expected.WorstLow - instrument, high = expected.WorstHigh + instrument, off = (value - best).Abs();
        if (low <= value && value <= high) return null;
        return Candidates(value, unit).Where(c => low <= c.Likely && c.Likely <= high && (c.Likely - best).Abs() * Nearer <= off)
            .OrderBy(c => (c.Likely - best).Abs()).Select(c => new Suspicion(c.Kind, value, best, c.Likely)).FirstOrDefault();
    }

    private static IEnumerable<(SlipKind Kind, ExactLength Likely)> Candidates(ExactLength value, LengthUnit unit)
    {
        bool isInch = unit == LengthUnit.Inch;
        yield return (SlipKind.Unit, isInch ? ExactLength.FromMillimetres(value.Inches) : ExactLength.FromInches(value.Millimetres));
        yield return (SlipKind.Tenfold, value * 10);
        yield return (SlipKind.Tenfold, value / 10);
        Rational number = isInch ? value.Inches : value.Millimetres;
        BigInteger whole = number.Floor();
        Rational part = number - Rational.Of(whole, 1);
        // Only what was read in parts of an inch, down to 128ths.
        if (isInch && part.Sign > 0 && (part * 128).IsWhole)
        {
            if (part * 2 < Rational.One) yield return (SlipKind.Fraction, value + ExactLength.FromInches(part));
            yield return (SlipKind.Fraction, value - ExactLength.FromInches(part / 2));
        }
        ExactLength mark = isInch ? ExactLength.FromInches(1) : ExactLength.FromMillimetres(100);
        yield return (SlipKind.Burnt, value - mark);
        yield return (SlipKind.Burnt, value + mark);
        string digits = whole.ToString(System.Globalization.CultureInfo.InvariantCulture);
        for (int i = 0; i + 1 < digits.Length; i++)
        {
            if (digits[i] == digits[i + 1]) continue;
            Rational swapped = Rational.Of(BigInteger.Parse(digits[..i] + digits[i + 1] + digits[i] + digits[(i + 2)..], System.Globalization.CultureInfo.InvariantCulture), 1) + part;
            yield return (SlipKind.Digits, isInch ? ExactLength.FromInches(swapped) : ExactLength.FromMillimetres(swapped));
        }
    }
}
