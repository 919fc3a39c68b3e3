using System.Collections.Immutable;
using System.Numerics;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;

namespace Setout.Shop.Plans;

/// <summary>
/// A figure of a sum as a person at the saw adds it up and checks it, the same on the page, on paper and in <c>setout why</c>: a fraction or a tenth where that is the value itself, else a decimal
/// that is, else a decimal told as near. A fraction such as 75713/4064 in is the value too, and no use to anybody there; what is written for machines keeps it.
/// </summary>
/// <param name="Number">The number without its unit.</param>
/// <param name="IsNear">Whether it is near the value only, which has no end as a decimal or a long one.</param>
public readonly record struct SumFigure(string Number, bool IsNear)
{
    /// <summary>The sign of what is near.</summary>
    public const string Near = "\u2248";

    // Half of a 1/64 in needs seven places, in inches and in millimetres; a calliper five.
    private const int MostPlaces = 7;

    private static readonly ExactLength s_fraction = ExactLength.FromInches(Rational.Of(1, 64)), s_tenth = ExactLength.FromMillimetres(Rational.Of(1, 10));

    /// <summary>The figure of a value.</summary>
    /// <param name="value">The value.</param>
    /// <param name="unit">In which it is told.</param>
    /// <param name="grid">The grid that it is landed on; null where it is on none.</param>
    public static SumFigure Of(ExactLength value, LengthUnit unit, Grid? grid = null)
    {
        Figure figure = LengthFormat.For(unit).Bare.Format(value);
        if (figure.IsExact) return new(figure.ToString(), false);
        return Decimal(value, unit) is { } decimals ? new(decimals, false) : new(Nearby(value, unit, grid), true);
    }

    /// <summary>The nearest 1/64 in to a value that is only told as near, such as <c>18 5/8</c>: a rule has no decimals. Nothing for any other, and none in millimetres, where the decimal says it.</summary>
    public static string OnTheRule(ExactLength value, LengthUnit unit) => unit == LengthUnit.Inch && Of(value, unit).IsNear ? LengthFormat.Inch.Bare.Text(value) : "";

    /// <summary>The value as a decimal number; null where it has no end within so few places that anybody would type it.</summary>
    public static string? Decimal(ExactLength value, LengthUnit unit)
    {
        Rational count = Count(value, unit);
        for (int places = 0; places <= MostPlaces; places++)
            if (count * Rational.Of(BigInteger.Pow(10, places), BigInteger.One) is { IsWhole: true } digits) return Text(digits.Numerator, places);
        return null;
    }

    /// <summary>With its sign where it is near, such as <c>≈ 18.6302</c>.</summary>
    public override string ToString() => IsNear ? $"{Near} {Number}" : Number;

    /// <summary>As the end of a sum, such as <c>= 18 5/8</c> or <c>≈ 18.6302</c>: what is near is not called equal.</summary>
    public string AsResult => IsNear ? ToString() : $"= {Number}";

    // Places enough that the decimal lies between the same two marks of the rule and of the grid as the value, halves of them included: whichever way it is rounded, it lands where the value does.
    private static string Nearby(ExactLength value, LengthUnit unit, Grid? grid)
    {
        ImmutableArray<ExactLength> steps = [s_fraction, s_tenth, .. grid is { } own ? [own.Step.ToExact()] : Array.Empty<ExactLength>()];
        for (int places = unit == LengthUnit.Inch ? 4 : 3; ; places++)
        {
            BigInteger scale = BigInteger.Pow(10, places);
            BigInteger digits = (Count(value, unit) * Rational.Of(scale, BigInteger.One)).Round(Rounding.Nearest);
            Rational count = Rational.Of(digits, scale);
            ExactLength near = unit == LengthUnit.Inch ? ExactLength.FromInches(count) : ExactLength.FromMillimetres(count);
            if (steps.All(s => IsBetweenTheSame(near, value, s) && IsBetweenTheSame(near, value, s / 2))) return Text(digits, places);
        }
    }

    // A value on a mark is not rounded to it, so there is nothing to follow.
    private static bool IsBetweenTheSame(ExactLength near, ExactLength value, ExactLength step)
    {
        (Rational here, Rational there) = (near / step, value / step);
        return there.IsWhole || (!here.IsWhole && here.Floor() == there.Floor());
    }

    private static Rational Count(ExactLength value, LengthUnit unit) => unit == LengthUnit.Inch ? value.Inches : value.Millimetres;

    private static string Text(BigInteger digits, int places)
    {
        string text = BigInteger.Abs(digits).ToString().PadLeft(places + 1, '0');
        string decimals = text[^places..].TrimEnd('0');
        return $"{(digits.Sign < 0 ? "-" : "")}{text[..^places]}{(decimals.Length > 0 ? "." : "")}{decimals}";
    }
}
