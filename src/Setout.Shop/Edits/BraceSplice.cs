using System.Text;
using Setout.Shop.Texts;

namespace Setout.Shop.Edits;

/// <summary>Splices lists and maps in braces and brackets, on one line or on several.</summary>
internal static class BraceSplice
{
    /// <summary>One entry or item: where it begins and ends in the text.</summary>
    private readonly record struct Span(int Start, int End);

    /// <summary>A new entry or item at a place among the others.</summary>
    /// <param name="text">The text.</param>
    /// <param name="node">A list or a map in braces.</param>
    /// <param name="index">Where it stands then.</param>
    /// <param name="written">What is added.</param>
    public static string Insert(string text, YamlNode node, int index, string written)
    {
        Span[] spans = Spans(node);
        if (spans.Length == 0) return text.Insert(node.Start + 1, written);
        if (index < spans.Length) return text.Insert(spans[index].Start, StandsAlone(text, spans, index) ? $"{written},{Between(text, spans[index])}" : $"{written}, ");
        Span last = spans[^1];
        if (!StandsAlone(text, spans, spans.Length - 1)) return text.Insert(last.End, $", {written}");
        // On a line of its own, behind a remark at the end of the line above.
        int comma = Comma(text, last.End);
        string closed = comma < 0 ? text.Insert(last.End, ",") : text;
        int end = TextLines.End(closed, last.End);
        if (closed.AsSpan(last.End..end).IndexOfAny(']', '}') >= 0 && TextLines.RemarkAfter(closed, (comma < 0 ? last.End : comma) + 1).IsEmpty) return text.Insert(last.End, $",{Between(text, last)}{written}");
        return closed.Insert(end, $"{Between(text, last)}{written}{(comma < 0 ? "" : ",")}");
    }

    /// <summary>An entry or item taken out with its remarks.</summary>
    public static string TakeOut(string text, YamlNode node, int index)
    {
        Span[] spans = Spans(node);
        (int start, int end) = (spans[index].Start, spans[index].End);
        int comma = Comma(text, end);
        if (comma >= 0) end = comma + 1;
        if (StandsAlone(text, spans, index) && TextLines.RemarkAfter(text, end) is var remark && (!remark.IsEmpty || text.AsSpan(end..TextLines.End(text, end)).Trim().IsEmpty))
            return string.Concat(text.AsSpan(0, TextLines.WithRemarksAbove(text, start, index > 0 ? spans[index - 1].End : node.Start)), text.AsSpan(TextLines.Next(text, end)));
        if (index + 1 < spans.Length && text.AsSpan(end..spans[index + 1].Start).IndexOfAny('\n', '\r') < 0) end = spans[index + 1].Start;
        else if (index > 0 && index == spans.Length - 1 && text.AsSpan(spans[index - 1].End..start).IndexOfAny('\n', '\r') < 0) (start, end) = (spans[index - 1].End, spans[index].End);
        else end += TextLines.RemarkAfter(text, end).Length;
        return text[..start] + text[end..];
    }

    /// <summary>An item moved.</summary>
    public static string Move(string text, YamlList list, int from, int to)
    {
        Span[] spans = Spans(list);
        // With remarks between them it cannot be told for certain which belongs to which.
        for (int i = 0; i < spans.Length; i++)
            if (text.AsSpan(spans[i].End..(i + 1 < spans.Length ? spans[i + 1].Start : list.End)).Contains('#')) return MovedLines(text, list, spans, from, to);
        List<string> items = [.. spans.Select(s => text[s.Start..s.End])];
        string moved = items[from];
        items.RemoveAt(from);
        items.Insert(to, moved);
        var result = new StringBuilder(text, 0, spans[0].Start, text.Length);
        for (int i = 0; i < spans.Length; i++) result.Append(items[i]).Append(text, spans[i].End, (i + 1 < spans.Length ? spans[i + 1].Start : text.Length) - spans[i].End);
        return result.ToString();
    }

    // Each item has lines of its own, with remarks above it and at its end; all get a comma, which may stand behind the last too.
    private static string MovedLines(string text, YamlList list, Span[] spans, int from, int to)
    {
        var items = new List<string>();
        int first = 0, next = 0;
        for (int i = 0; i < spans.Length; i++)
        {
            int start = TextLines.WithRemarksAbove(text, spans[i].Start, i > 0 ? spans[i - 1].End : list.Start), comma = Comma(text, spans[i].End), end = TextLines.Next(text, spans[i].End);
            bool isWhole = comma < 0 ? i == spans.Length - 1 && end <= list.End : end > comma;
            if (!StandsAlone(text, spans, i) || !isWhole || (i > 0 && start != next)) throw new NoRoomException();
            if (i == 0) first = start;
            items.Add(comma < 0 ? text[start..spans[i].End] + "," + text[spans[i].End..end] : text[start..end]);
            next = end;
        }
        string moved = items[from];
        items.RemoveAt(from);
        items.Insert(to, moved);
        return text[..first] + string.Concat(items) + text[next..];
    }

    private static Span[] Spans(YamlNode node) => node switch
    {
        YamlMap map => [.. map.Entries.Select(e => new Span(e.Key.Start, Math.Max(e.Key.End, e.Value.End)))],
        YamlList list => [.. list.Items.Select(i => new Span(i.Start, i.End))],
        _ => [],
    };

    // Begins its line, and the one before it ends on another.
    private static bool StandsAlone(string text, Span[] spans, int index) => TextLines.IsFirst(text, spans[index].Start) && (index == 0 || spans[index - 1].End < TextLines.Start(text, spans[index].Start));

    private static string Between(string text, Span beside) => TextLines.LineEnd(text) + text[TextLines.Start(text, beside.Start)..beside.Start];

    private static int Comma(string text, int end)
    {
        while (end < text.Length && char.IsWhiteSpace(text[end])) end++;
        return end < text.Length && text[end] == ',' ? end : -1;
    }
}
