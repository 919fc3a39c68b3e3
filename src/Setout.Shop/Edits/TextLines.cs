using Setout.Shop.Texts;

namespace Setout.Shop.Edits;

/// <summary>The lines of a text, by zero-based index. A line ends with LF, CR or both.</summary>
internal static class TextLines
{
    /// <summary>The line end that a text uses.</summary>
    public static string LineEnd(string text) =>
        text.Contains("\r\n", StringComparison.Ordinal) ? "\r\n" : text.Contains('\n', StringComparison.Ordinal) || !text.Contains('\r', StringComparison.Ordinal) ? "\n" : "\r";

    /// <summary>Where the line of an index begins; behind a mark of byte order.</summary>
    public static int Start(string text, int at)
    {
        int end = at == 0 ? -1 : text.LastIndexOfAny(['\n', '\r'], at - 1);
        return end < 0 && text.StartsWith('\uFEFF') ? 1 : end + 1;
    }

    /// <summary>Where the line of an index ends, before its line end.</summary>
    public static int End(string text, int at)
    {
        int end = text.AsSpan(at).IndexOfAny('\n', '\r');
        return end < 0 ? text.Length : at + end;
    }

    /// <summary>Where the line after that of an index begins; the length of the text where there is none.</summary>
    public static int Next(string text, int at)
    {
        int end = End(text, at);
        return end >= text.Length ? end : text.AsSpan(end).StartsWith("\r\n") ? end + 2 : end + 1;
    }

    /// <summary>How many blanks stand before the first sign of the line that begins at an index; null for a line with nothing but blanks.</summary>
    public static int? Indent(string text, int start)
    {
        int end = End(text, start), at = start;
        while (at < end && text[at] is ' ' or '\t') at++;
        return at < end ? at - start : null;
    }

    /// <summary>True for a line that begins at an index and holds a remark alone.</summary>
    public static bool IsRemark(string text, int start) => Indent(text, start) is { } indent && text[start + indent] == '#';

    /// <summary>True when nothing but blanks stands before an index on its line.</summary>
    public static bool IsFirst(string text, int at) => text.AsSpan(Start(text, at)..at).Trim([' ', '\t']).IsEmpty;

    /// <summary>Where the line of an index begins, or the first of the remarks right above it that begin as far in.</summary>
    /// <param name="text">The text.</param>
    /// <param name="at">The first sign of a thing on its line.</param>
    /// <param name="from">Remarks before this index belong to something else.</param>
    public static int WithRemarksAbove(string text, int at, int from)
    {
        int start = Start(text, at), indent = at - start;
        while (start > from && start > 0)
        {
            int above = Start(text, start - (start > 1 && text[start - 1] == '\n' && text[start - 2] == '\r' ? 2 : 1));
            if (above < from || above == start || !IsRemark(text, above) || Indent(text, above) != indent) break;
            start = above;
        }
        return start;
    }

    /// <summary>Where the line after that of an index begins, behind remarks right below it that stand further in than a thing.</summary>
    public static int WithRemarksBelow(string text, int end, int indent)
    {
        int next = Next(text, end);
        while (next < text.Length && IsRemark(text, next) && Indent(text, next) > indent) next = Next(text, next);
        return next;
    }

    /// <summary>The text with its last line ended.</summary>
    public static string Ended(string text) => text.Length == 0 || text[^1] is '\n' or '\r' ? text : text + LineEnd(text);

    /// <summary>A text whose last line ends as that of another one did, where that line is the same.</summary>
    public static string EndedAs(string before, string after)
    {
        ReadOnlySpan<char> last = before.AsSpan(Start(before, before.Length)), line = after.AsSpan().TrimEnd(['\n', '\r']);
        return !last.IsEmpty && line.EndsWith(last) && (line.Length == last.Length || line[^(last.Length + 1)] is '\n' or '\r' or '\uFEFF') ? after[..line.Length] : after;
    }

    /// <summary>The remark at the end of a line from an index on, with the blanks before it; empty where there is none.</summary>
    public static ReadOnlySpan<char> RemarkAfter(string text, int at)
    {
        ReadOnlySpan<char> rest = text.AsSpan(at..End(text, at));
        ReadOnlySpan<char> trimmed = rest.TrimStart([' ', '\t']);
        return trimmed.StartsWith("#") && trimmed.Length < rest.Length ? rest : [];
    }
}

/// <summary>There is no room for a splice where it should go: the text is written in a way that is left to people.</summary>
internal sealed class NoRoomException() : Exception("No room.");
