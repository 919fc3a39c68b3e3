using Setout.Core.Measures;
using Setout.Core.Measures.Text;

namespace Setout.Shop.Texts;

/// <summary>Lengths that are believed of furniture, and what is said of others.</summary>
internal static class BelievedLength
{
    /// <summary>Reads a length that is more than nothing.</summary>
    /// <param name="text">What was typed.</param>
    /// <param name="bare">The unit of a bare number.</param>
    /// <param name="what">What it is to be, in the words of whoever was asked.</param>
    public static ParseResult<ExactLength> Read(string text, LengthUnit bare, string what)
    {
        ParseResult<ExactLength> read = LengthText.Parse(text, bare);
        return read.IsRead && Fault(read.Value, text, bare, what) is { } absurd ? ParseResult<ExactLength>.Failed(absurd) : read;
    }

    /// <summary>Why a length is not believed, with the limits in the unit of whoever typed it; null where it is.</summary>
    /// <param name="value">The length.</param>
    /// <param name="text">As it was typed.</param>
    /// <param name="bare">The unit of a bare number.</param>
    /// <param name="what">What it is to be.</param>
    /// <param name="mayBeZero">Whether nothing is a length here.</param>
    /// <param name="most">The most that is believed; null for 30 m.</param>
    public static TextFault? Fault(ExactLength value, string text, LengthUnit bare, string what, bool mayBeZero = false, Length? most = null)
    {
        Length longest = most ?? TextContext.LongestSize;
        if ((value.Sign == 0 && mayBeZero) || (value >= TextContext.ShortestSize && value <= longest)) return null;
        return new("text.absurd-size", 0, $"'{TextContext.Shown(text.Trim())}' cannot be the {what}.", $"Write a length {(mayBeZero ? "from 0" : "above 0")} to {Most(longest, bare)}.");
    }

    // Never rounded up to a length that would be refused again: 30 m are 1181 in and a bit; 1/4 in is 6.35 mm.
    private static string Most(ExactLength longest, LengthUnit bare)
    {
        if (bare == LengthUnit.Millimetre) return LengthFormat.Millimetres(2).Text(longest);
        Grid step = Grid.FromStep(Length.FromInches(1));
        return LengthFormat.Inch.Text(longest > step.Step * 100 ? longest.RoundTo(step, Rounding.Down).Value : longest);
    }
}
