namespace Setout.Core.Measures.Text;

/// <summary>Texts of lengths that name their unit, so that they say the same to whoever reads them.</summary>
public static class NamedLength
{
    /// <summary>A length that reads back as itself: a fraction of an inch where that is exact, else millimetres, else a fraction of a millimetre.</summary>
    public static string Exactly(ExactLength length)
    {
        Figure inches = LengthFormat.Inches(256).Format(length);
        if (inches.IsExact) return inches.ToString();
        Figure metric = LengthFormat.Millimetres(6).Format(length);
        return metric.IsExact ? metric.ToString() : $"{length.Millimetres} mm";
    }

    /// <summary>
    /// The same length with its unit named: <c>450</c> in millimetres as <c>450 mm</c>. What names its units is left as it was typed, a sum with bare numbers becomes the length it comes to, and
    /// what is no length comes back unchanged.
    /// </summary>
    /// <param name="text">What was typed.</param>
    /// <param name="bare">The unit of a number that names none.</param>
    public static string Of(string text, LengthUnit bare)
    {
        (ParseResult<ExactLength> meant, ParseResult<ExactLength> other) = (LengthText.Parse(text, bare), LengthText.Parse(text, bare.Other));
        if (!meant.IsRead && !other.IsRead) return text;
        if (meant.IsRead && other.IsRead && meant.Value == other.Value) return text;
        // What is too long in the one unit must not pass for a length in the other.
        if (!meant.IsRead) return Exactly(LengthText.Longest.ToExact() * 2);
        // Behind a sum the unit would belong to its last number alone.
        string named = $"{text.Trim()} {bare.Mark}";
        return IsOneNumber(text) && LengthText.Parse(named, bare) is { IsRead: true, Value: var same } && same == meant.Value ? named : Exactly(meant.Value);
    }

    /// <summary>
    /// Whether a bare figure looks like one of the other unit: a fraction of halves to sixty-fourths typed in millimetres, or a figure of <see cref="LongInInches"/> and more typed in inches. For
    /// whoever changes to and fro between two units this is a likely slip, and is better asked than taken. From memory of such slips; common practice, no source.
    /// </summary>
    /// <param name="text">What was typed.</param>
    /// <param name="bare">The unit of a number that names none.</param>
    public static bool MayBeOther(string text, LengthUnit bare)
    {
        if (Of(text, bare) == text || LengthScanner.Scan(text, bare) is not { IsRead: true, Value: var tokens }) return false;
        if (bare == LengthUnit.Inch) return LengthText.Parse(text, bare) is { IsRead: true, Value: var length } && length.Abs() >= LongInInches;
        return tokens.Exists(t => t.Kind == LengthToken.VulgarFraction)
            || Enumerable.Range(1, tokens.Count - 1).Any(i => tokens[i].Kind == LengthToken.Slash && tokens[i - 1] is { Kind: LengthToken.Number, IsWholeNumber: true } above
                && tokens[Math.Min(i + 1, tokens.Count - 1)] is { Kind: LengthToken.Number, IsWholeNumber: true } below && above.Value < below.Value && s_halves.Contains(below.Value));
    }

    /// <summary>The bare figure in inches from which on millimetres are likelier in a shop: 120 in, 10 ft.</summary>
    public static ExactLength LongInInches { get; } = ExactLength.FromInches(120);

    private static readonly Rational[] s_halves = [2, 4, 8, 16, 32, 64];

    private static bool IsOneNumber(string text) => LengthScanner.Scan(text, LengthUnit.Inch) is { IsRead: true, Value: var tokens }
        && tokens.TrueForAll(t => t.Kind is LengthToken.Number or LengthToken.VulgarFraction or LengthToken.Slash or LengthToken.End || (t.Kind == LengthToken.Minus && t.Position == 0));
}
