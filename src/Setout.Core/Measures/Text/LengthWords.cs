namespace Setout.Core.Measures.Text;

/// <summary>What is said of a length that cannot be read: how much of it was understood, what was not, and an example in the unit of whoever typed it.</summary>
internal static class LengthWords
{
    // Longer than this it is not repeated: nobody would find his slip in it.
    private const int LongestRepeated = 40;

    /// <summary>A length as one would type it.</summary>
    public static string Example(LengthUnit bare) => bare == LengthUnit.Inch ? "23 1/4" : "590";

    private static string OneNumber(LengthUnit bare) => bare == LengthUnit.Inch ? "3/4" : "18";

    /// <summary>Nothing was typed.</summary>
    public static TextFault Empty(LengthUnit bare) => new("length.empty", 0, "There is no length here.", $"Write one, such as {Example(bare)}.");

    /// <summary>A word that is no unit.</summary>
    public static TextFault UnknownWord(string text, int at, string word, LengthUnit bare)
    {
        const string code = "length.unknown-word", units = "in, ft, mm, cm or m";
        string before = text[..at].Trim(), after = text[(at + word.Length)..].Trim();
        if (before.Length == 0)
        {
            return IsUnderstood(after, bare)
                ? new(code, at, $"{after} is understood; '{word}' before it is not.", $"Write {after} alone.")
                : new(code, at, $"'{word}' is not a figure.", $"Write figures, such as {Example(bare)}.");
        }
        return IsUnderstood(before, bare)
            ? new(code, at, $"{before} is understood; '{word}' after it is not a unit.", $"Write {before} alone, or with one of {units}, such as {Example(bare)} {bare.Mark}.")
            : new(code, at, $"'{word}' is not a unit.", $"Use {units}, such as {Example(bare)} {bare.Mark}.");
    }

    /// <summary>A sign that stands in no length.</summary>
    public static TextFault UnknownSign(int at, string shown, LengthUnit bare) => new("length.unknown-sign", at, $"'{shown}' does not belong in a length.",
        bare == LengthUnit.Inch ? "Write for example 23 1/4, 1' 11 1/4\", 590 mm or 96/3 - 3/4." : "Write for example 590, 590.5, 23 1/4 in or 2440/3 - 18.");

    /// <summary>What follows a length that could be read.</summary>
    public static TextFault LeftOver(string text, int at, LengthUnit bare)
    {
        const string code = "length.left-over";
        string before = text[..at].Trim(), rest = text[at..].Trim(), understood = before.Length <= LongestRepeated ? $"{before} is understood; " : "";
        return IsOpenFraction(rest)
            ? new(code, at, $"{understood}the fraction '{rest}' has no figure below its stroke.", "Write the figure below the stroke, as in 3 1/2.")
            : new(code, at, $"{understood}'{rest}' {(understood.Length > 0 ? "after it " : "")}is left over.", $"Write one length, such as {Example(bare)}, or join two by + or -.");
    }

    /// <summary>A number that is not there.</summary>
    public static TextFault NumberWanted(string text, ScannedToken at, LengthToken? before, LengthUnit bare)
    {
        const string code = "length.number-wanted";
        return (at.Kind, before) switch
        {
            (LengthToken.End, LengthToken.Slash) => new(code, at.Position, "There is no figure below the stroke.", "Write the figure below the stroke, as in 3 1/2."),
            (LengthToken.Slash, null) => new(code, at.Position, "There is no figure above the stroke.", "Write the figure above the stroke, as in 3 1/2."),
            (LengthToken.End, { }) => new(code, at.Position, $"A number is missing after '{text.TrimEnd()[^1]}'.", $"Write a number there, such as {OneNumber(bare)}."),
            (LengthToken.Inch or LengthToken.Foot or LengthToken.Metric, _) => new(code, at.Position, "The unit has no number before it.", $"Write the number too, such as {Example(bare)} {bare.Mark}."),
            _ => new(code, at.Position, "A number is wanted here.", $"Write a number, such as {OneNumber(bare)}."),
        };
    }

    // One figure with a stroke after it, and nothing below that.
    private static bool IsOpenFraction(string rest) => rest.Length > 1 && LengthScanner.IsSlash(rest[^1]) && rest[..^1].Trim().All(char.IsAsciiDigit);

    private static bool IsUnderstood(string text, LengthUnit bare) => text.Length is > 0 and <= LongestRepeated && LengthText.Parse(text, bare).IsRead;
}
