using System.Text.RegularExpressions;

namespace Setout.Shop.Outputs;

/// <summary>Commands in words, for a piece that the workbench keeps: it is called <c>@NAME</c> there, and has no file.</summary>
public static partial class CommandWords
{
    /// <summary>The same words with the name of a piece where a command wants its file.</summary>
    /// <param name="words">Such as a remedy: <c>setout record FILE birch.thickness READING</c>, or with the name of a piece file in the place of FILE.</param>
    /// <param name="piece">The name of the piece; empty where it is not known.</param>
    public static string Kept(string words, string piece)
    {
        if (!words.Contains("setout ", StringComparison.Ordinal)) return words;
        string named = piece.Length == 0 ? words : File().Replace(words, m => $"{m.Groups[1].Value} {Name(piece)}");
        return Path().Replace(named, m => $"{m.Groups[1].Value} {Name(m.Groups[2].Value)}");
    }

    /// <summary>The same words for a page, where what is typed on the command line is chosen: to be asked before <see cref="Kept"/>.</summary>
    /// <param name="words">With FILE for the piece.</param>
    public static string OnAPage(string words)
    {
        if (!words.Contains("setout ", StringComparison.Ordinal)) return words;
        return Reading().Replace(words, "").Replace("'setout fit FILE'", "the stage “Fit”", StringComparison.Ordinal).Replace("'setout parts FILE'", "the list of parts", StringComparison.Ordinal);
    }

    /// <summary>A piece as a shell takes it.</summary>
    public static string Name(string piece) => piece.All(c => char.IsLetterOrDigit(c) || c is '-' or '_' or '.') ? "@" + piece : $"\"@{piece}\"";

    // What a command asks to be read, behind a colon or in brackets, up to the end of the sentence.
    [GeneratedRegex("(?:: setout record FILE \\S+ [A-Z]+(?:, [A-Z]+)*(?=\\.|$)| \\(setout record FILE [^)]*\\))", RegexOptions.CultureInvariant)]
    private static partial Regex Reading();

    [GeneratedRegex("(setout (?:record|mark|void|fit|parts|plan|check|why)) FILE\\b", RegexOptions.CultureInvariant)]
    private static partial Regex File();

    [GeneratedRegex("(setout (?:record|mark|void|fit|parts|plan|check|why)) ([^;:@'\"]+?)\\.yaml\\b", RegexOptions.CultureInvariant)]
    private static partial Regex Path();
}
