using System.Globalization;
using System.Numerics;
using System.Text.RegularExpressions;

namespace Setout.Core.Measures.Text;

/// <summary>Reads and writes what stands on a can: how much is in it, and how far it goes.</summary>
public static partial class AmountText
{
    private const string VolumeCode = "amount.wanted-volume", CoverageCode = "amount.wanted-coverage";

    private const string VolumeRemedy = "Write a number and l, ml, quart, pint, gallon or fl oz, such as 0.75 l or 1 quart.";
    private const string CoverageRemedy = "Write an area in sq ft or m2, per, and an amount, such as 125 sq ft per quart or 12 m2 per l.";

    private static readonly Rational s_most = 1_000_000;

    /// <summary>Reads an amount such as <c>0.75 l</c>, <c>1 quart</c> or <c>1/2 pint</c>.</summary>
    public static ParseResult<Volume> ReadVolume(string text) => VolumeOf(text.Trim(), mayBeOne: false) is { } volume
        ? ParseResult<Volume>.Of(volume)
        : ParseResult<Volume>.Failed(VolumeCode, 0, $"'{text.Trim()}' is no amount of a liquid above 0.", VolumeRemedy);

    /// <summary>Reads a coverage such as <c>125 sq ft per quart</c>, <c>12 m2/l</c> or <c>5 m2 per 0.375 l</c>. A range is refused: which end counts is for whoever knows the wood.</summary>
    public static ParseResult<Coverage> ReadCoverage(string text)
    {
        if (RangePattern().IsMatch(text))
            return ParseResult<Coverage>.Failed("amount.range", 0, $"'{text.Trim()}' is a range.", "Write the smaller of the two, so that there is enough: a first coat on bare wood takes more.");
        Match found = CoveragePattern().Match(text.Trim());
        if (!found.Success || NumberOf(found.Groups["area"].Value) is not { } area || VolumeOf(found.Groups["by"].Value, mayBeOne: true) is not { } by)
            return ParseResult<Coverage>.Failed(CoverageCode, 0, $"'{text.Trim()}' does not say how far a can goes.", CoverageRemedy);
        return ParseResult<Coverage>.Of(new(found.Groups["unit"].Value.StartsWith('m') ? ExactArea.FromSquareMetres(area) : ExactArea.FromSquareFeet(area), by) { IsMetric = found.Groups["unit"].Value.StartsWith('m') });
    }

    /// <summary>An area in the unit of a person, to a hundredth: <c>8.21 sq ft</c>, <c>0.76 m²</c>.</summary>
    public static string Of(ExactArea area, LengthUnit unit) => unit == LengthUnit.Inch ? $"{Decimal(area.SquareFeet, Rounding.Nearest)} sq ft" : $"{Decimal(area.SquareMetres, Rounding.Nearest)} m²";

    /// <summary>An amount that is needed, to a hundredth upwards: <c>1.02 quarts</c>.</summary>
    public static string Needed(Volume volume) => Named(Decimal(volume.Amount, Rounding.Up), volume.Unit);

    /// <summary>An amount as a can has it, to a thousandth: <c>0.375 l</c>.</summary>
    public static string Of(Volume volume) => Named(Decimal(volume.Amount, Rounding.Nearest, 1000), volume.Unit);

    /// <summary>A coverage, such as <c>125 sq ft per quart</c>.</summary>
    public static string Of(Coverage coverage)
    {
        string by = Of(coverage.By);
        return $"{Of(coverage.Area, coverage.IsMetric ? LengthUnit.Millimetre : LengthUnit.Inch)} per {(coverage.By.Amount == Rational.One ? by[2..] : by)}";
    }

    private static string Named(string number, VolumeUnit unit) => unit switch
    {
        VolumeUnit.Litre => $"{number} l",
        VolumeUnit.Millilitre => $"{number} ml",
        VolumeUnit.FluidOunce => $"{number} fl oz",
        _ => $"{number} {unit.ToString().ToLowerInvariant()}{(number == "1" ? "" : "s")}",
    };

    private static string Decimal(Rational value, Rounding rounding, int parts = 100)
    {
        BigInteger steps = (value * parts).Round(rounding);
        return string.Create(CultureInfo.InvariantCulture, $"{(decimal)steps / parts:0.###}");
    }

    private static Volume? VolumeOf(string text, bool mayBeOne)
    {
        Match found = VolumePattern().Match(text);
        if (!found.Success) return null;
        string number = found.Groups["number"].Value.Trim();
        Rational? amount = number.Length == 0 ? mayBeOne ? Rational.One : null : NumberOf(number);
        return amount is not { } some ? null : new Volume(some, found.Groups["unit"].Value switch
        {
            "l" => VolumeUnit.Litre,
            "ml" => VolumeUnit.Millilitre,
            "quart" or "quarts" => VolumeUnit.Quart,
            "pint" or "pints" => VolumeUnit.Pint,
            "gallon" or "gallons" => VolumeUnit.Gallon,
            _ => VolumeUnit.FluidOunce,
        });
    }

    // A decimal, a fraction, or both halves of a mixed number; above zero and no slip of the pen.
    private static Rational? NumberOf(string text)
    {
        Rational sum = Rational.Zero;
        foreach (string half in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (half.Split('/') is [var above, var below])
            {
                if (!long.TryParse(above, NumberStyles.None, CultureInfo.InvariantCulture, out long a) || !long.TryParse(below, NumberStyles.None, CultureInfo.InvariantCulture, out long b) || b == 0) return null;
                sum += Rational.Of(a, b);
            }
            else if (decimal.TryParse(half, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out decimal number)) sum += Rational.Of(number);
            else return null;
        }
        return sum.Sign > 0 && sum <= s_most ? sum : null;
    }

    private const string Number = @"[0-9]{1,9}(?:\.[0-9]{1,6})?|[0-9]{1,6}/[0-9]{1,6}|[0-9]{1,6} [0-9]{1,6}/[0-9]{1,6}";

    [GeneratedRegex($@"^(?<number>(?:{Number})?) ?(?<unit>ml|l|quarts?|pints?|gallons?|fl oz)\z")]
    private static partial Regex VolumePattern();

    [GeneratedRegex($@"^(?<area>{Number}) ?(?<unit>sq ft|m2|m²) ?(?:per |/ ?)(?<by>.+)\z")]
    private static partial Regex CoveragePattern();

    [GeneratedRegex(@"[0-9] ?(?:-|–|to) ?[0-9]")]
    private static partial Regex RangePattern();
}
