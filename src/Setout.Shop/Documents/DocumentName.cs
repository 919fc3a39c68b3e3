using System.Globalization;
using System.Text;
using Setout.Core.Workings;

namespace Setout.Shop.Documents;

/// <summary>Names of documents. A name is that of a file without its ending on every system, so that what is kept can always be exported.</summary>
public static class DocumentName
{
    /// <summary>The most letters of a name.</summary>
    public const int Longest = 80;

    // Names that some systems keep for devices. Source: the naming rules for files that Microsoft publishes.
    private static readonly string[] s_devices = ["CON", "PRN", "AUX", "NUL", .. Enumerable.Range(1, 9).SelectMany(n => (string[])[$"COM{n}", $"LPT{n}"])];

    /// <summary>The usual name of a shop file.</summary>
    public const string Shop = "shop";

    /// <summary>Why a name cannot be given; null when it can.</summary>
    public static Finding? Fault(DocumentKind kind, string name) => Why(kind, name) is not { } why ? null :
        new("document.name", Severity.Stop, "", why, $"Give it a name of at most {Longest} letters, digits, spaces and hyphens, such as 'music chest'.");

    /// <summary>Names that differ only in large and small letters are one name to some systems: they have this in common.</summary>
    public static string Fold(string name) => name.ToUpperInvariant();

    /// <summary>A name made fit for a file: the same where it is fit already.</summary>
    public static string AsFile(string name)
    {
        var fit = new StringBuilder();
        foreach (Rune rune in name.EnumerateRunes())
        {
            if (fit.Length + rune.Utf16SequenceLength > Longest) break;
            fit.Append(IsFit(rune) ? rune.ToString() : "_");
        }
        string made = fit.ToString().Trim(' ', '.');
        return Why(DocumentKind.Shop, made) is null ? made : made.Length == 0 ? "_" : "_" + made[..Math.Min(made.Length, Longest - 1)].TrimEnd(' ', '.') + "_";
    }

    private static string? Why(DocumentKind kind, string name)
    {
        if (string.IsNullOrWhiteSpace(name)) return "The name is blank.";
        if (name.Length > Longest) return $"The name has {name.Length} letters.";
        foreach (Rune rune in name.EnumerateRunes())
            if (!IsFit(rune)) return Rune.IsControl(rune) || rune == Rune.ReplacementChar ? "The name holds a sign that cannot be seen." : $"The name holds '{rune}'.";
        if (name[0] is ' ' or '.' || name[^1] is ' ' or '.') return "The name begins or ends with a space or a full stop.";
        if (name.EndsWith(".log", StringComparison.OrdinalIgnoreCase)) return $"'{name}' is what a log would be called.";
        if (s_devices.Contains(name.Split('.')[0].ToUpperInvariant())) return $"'{name}' is what some systems call a device.";
        return kind == DocumentKind.Piece && Fold(name) == Fold(Shop) ? $"'{name}' is what a shop file is called." : null;
    }

    // Half letters come out of the enumeration as replacement signs.
    private static bool IsFit(Rune rune) => rune != Rune.ReplacementChar && !"<>:\"/\\|?*".Contains((char)Math.Min(rune.Value, char.MaxValue)) &&
        Rune.GetUnicodeCategory(rune) is not (UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator);
}
