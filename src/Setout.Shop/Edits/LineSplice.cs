using Setout.Shop.Texts;

namespace Setout.Shop.Edits;

/// <summary>
/// Splices lists and maps that are written in lines. To an item belong its lines, the remarks right above it that begin as far in as it does, and those right below
/// it that stand further in. Texts that come in end their last line.
/// </summary>
internal static class LineSplice
{
    /// <summary>The lines of an item: from the start of the first to the start of the line behind the last.</summary>
    private readonly record struct Chunk(int Start, int End);

    /// <summary>A new entry behind another one.</summary>
    public static string Insert(string text, YamlMap map, int behind, string key, YamlNode value)
    {
        int indent = map.Entries[0].Key.Place.Column - 1, end = ChunkOf(text, map, behind).End;
        return text.Insert(end, Joined(text, Written.Lines(new YamlMap([(Written.Word(key), value)], default), indent)));
    }

    /// <summary>The value of an entry, replaced by another.</summary>
    public static string Replace(string text, YamlMap map, int index, YamlNode value)
    {
        (YamlScalar key, YamlNode old) = map.Entries[index];
        int indent = map.Entries[0].Key.Place.Column - 1;
        bool isInLines = old is YamlList { IsFlow: false } or YamlMap { IsFlow: false };
        int column = key.Start - TextLines.Start(text, key.Start) + Written.Scalar(key).Length + 2;
        string? onOneLine = value is YamlScalar || Written.IsShort(value, column) ? Written.OnOneLine(value) : null;
        if (isInLines)
        {
            int colon = Colon(text, key), below = TextLines.Next(text, colon), end = TextLines.WithRemarksBelow(text, old.End, indent);
            if (TextLines.Start(text, old.Start) < below) throw new NoRoomException();
            string head = text[..colon] + (onOneLine is null ? "" : " " + onOneLine) + text[colon..below];
            return head + (onOneLine is null ? Joined(text, Written.Lines(value, indent + 2)) : "") + text[end..];
        }
        bool isEmpty = old.Start == old.End;
        if (onOneLine is not null) return string.Concat(text.AsSpan(0, old.Start), isEmpty ? " " : "", onOneLine, text.AsSpan(old.End));
        // A remark at the end of the line stays there.
        string without = string.Concat(text.AsSpan(0, old.Start).TrimEnd(' '), text.AsSpan(old.End));
        int next = TextLines.Next(without, TextLines.End(without, Colon(text, key)));
        return without.Insert(next, Joined(text, Written.Lines(value, indent + 2)));
    }

    /// <summary>An item of a list, replaced by another.</summary>
    public static string Replace(string text, YamlList list, int index, YamlNode value)
    {
        YamlNode old = list.Items[index];
        int dash = Dash(text, list, index), indent = dash - TextLines.Start(text, dash);
        if (old.Start == old.End) throw new NoRoomException();
        bool onOneLine = value is YamlScalar || (old is not (YamlMap { IsFlow: false } or YamlList { IsFlow: false }) && Written.IsShort(value, indent + 2));
        string[] lines = [.. Written.Item(value, indent, onOneLine)];
        if (old is not (YamlMap { IsFlow: false } or YamlList { IsFlow: false }))
        {
            string first = string.Concat(text.AsSpan(0, dash), lines[0].AsSpan(indent), text.AsSpan(old.End));
            return lines.Length == 1 ? first : first.Insert(TextLines.Next(first, dash), Joined(text, lines[1..]));
        }
        int end = TextLines.WithRemarksBelow(text, old.End, indent);
        return string.Concat(text.AsSpan(0, dash), Joined(text, lines).AsSpan(indent), text.AsSpan(end));
    }

    /// <summary>An entry taken out with its remarks.</summary>
    public static string TakeOut(string text, YamlMap map, int index)
    {
        if (map.Entries.Length == 1)
        {
            // The map stays, with nothing in it.
            int end = TextLines.WithRemarksBelow(text, map.End, map.Entries[0].Key.Place.Column - 1), first = map.Entries[0].Key.Start;
            return text[..first] + "{}" + TextLines.LineEnd(text) + text[end..];
        }
        if (index == 0 && !TextLines.IsFirst(text, map.Entries[0].Key.Start))
        {
            // Its line also begins the item of a list: the next entry takes its place. Remarks between would lose theirs.
            (int start, int next) = (map.Entries[0].Key.Start, map.Entries[1].Key.Start);
            if (text.AsSpan(map.Entries[0].Value.End..next).Contains('#') && TextLines.WithRemarksAbove(text, next, 0) < TextLines.Start(text, next)) throw new NoRoomException();
            return text[..start] + text[next..];
        }
        return Without(text, ChunkOf(text, map, index));
    }

    /// <summary>An item taken out with its remarks.</summary>
    public static string TakeOut(string text, YamlList list, int index)
    {
        if (list.Items.Length > 1) return Without(text, ChunkOf(text, list, index));
        Chunk only = ChunkOf(text, list, 0);
        int dash = Dash(text, list, 0);
        return text[..only.Start] + new string(' ', dash - TextLines.Start(text, dash)) + "[]" + TextLines.LineEnd(text) + text[only.End..];
    }

    /// <summary>A new item.</summary>
    public static string Add(string text, YamlList list, int index, YamlNode value)
    {
        int dash = Dash(text, list, 0), indent = dash - TextLines.Start(text, dash);
        if (!TextLines.IsFirst(text, dash)) throw new NoRoomException();
        bool isLast = index == list.Items.Length;
        // It looks as its neighbours do.
        YamlNode like = list.Items[isLast ? index - 1 : index];
        bool onOneLine = Written.IsShort(value, indent + 2) && (like is not YamlMap { IsFlow: false } || list.Items.Any(i => i is YamlMap { IsFlow: true }));
        Chunk beside = ChunkOf(text, list, isLast ? index - 1 : index);
        return text.Insert(isLast ? beside.End : beside.Start, Joined(text, Written.Item(value, indent, onOneLine)));
    }

    /// <summary>An item moved with its remarks; blank lines stay where they are.</summary>
    public static string Move(string text, YamlList list, int from, int to)
    {
        Chunk[] chunks = [.. list.Items.Select((_, i) => ChunkOf(text, list, i))];
        List<string> items = [.. chunks.Select(c => text[c.Start..c.End])];
        string moved = items[from];
        items.RemoveAt(from);
        items.Insert(to, moved);
        var result = new System.Text.StringBuilder(text, 0, chunks[0].Start, text.Length + 2);
        for (int i = 0; i < chunks.Length; i++)
            result.Append(items[i]).Append(text, chunks[i].End, (i + 1 < chunks.Length ? chunks[i + 1].Start : text.Length) - chunks[i].End);
        return result.ToString();
    }

    /// <summary>A list or a map in braces on one long line, written in lines.</summary>
    /// <param name="text">The text.</param>
    /// <param name="parent">What it stands in, in lines.</param>
    /// <param name="index">Which entry or item of that.</param>
    public static string Broken(string text, YamlNode parent, int index)
    {
        if (parent is YamlMap map)
        {
            (YamlScalar key, YamlNode value) = map.Entries[index];
            ReadOnlySpan<char> remark = TextLines.RemarkAfter(text, value.End);
            if (remark.IsEmpty && !text.AsSpan(value.End..TextLines.End(text, value.End)).Trim().IsEmpty) throw new NoRoomException();
            return string.Concat(text.AsSpan(0, Colon(text, key)), string.Concat(remark, TextLines.LineEnd(text)),
                Joined(text, Written.Lines(value, map.Entries[0].Key.Place.Column + 1)), text.AsSpan(TextLines.Next(text, value.End)));
        }
        var list = (YamlList)parent;
        int dash = Dash(text, list, index), indent = dash - TextLines.Start(text, dash);
        YamlNode item = list.Items[index];
        ReadOnlySpan<char> after = TextLines.RemarkAfter(text, item.End);
        string[] lines = [.. Written.Item(item, indent, onOneLine: false)];
        if (!TextLines.IsFirst(text, dash)) throw new NoRoomException();
        lines[0] = string.Concat(lines[0], after);
        return string.Concat(text.AsSpan(0, TextLines.Start(text, dash)), Joined(text, lines), text.AsSpan(TextLines.Next(text, item.End)));
    }

    private static Chunk ChunkOf(string text, YamlMap map, int index)
    {
        (YamlScalar key, YamlNode value) = map.Entries[index];
        int indent = map.Entries[0].Key.Place.Column - 1, from = index == 0 ? 0 : map.Entries[index - 1].Value.End;
        int start = TextLines.IsFirst(text, key.Start) ? TextLines.WithRemarksAbove(text, key.Start, from) : index == 0 ? key.Start : throw new NoRoomException();
        return new(start, TextLines.WithRemarksBelow(text, Math.Max(value.End, Colon(text, key)), indent));
    }

    private static Chunk ChunkOf(string text, YamlList list, int index)
    {
        int dash = Dash(text, list, index), from = index == 0 ? 0 : list.Items[index - 1].End;
        if (!TextLines.IsFirst(text, dash)) throw new NoRoomException();
        return new(TextLines.WithRemarksAbove(text, dash, from), TextLines.WithRemarksBelow(text, Math.Max(dash, list.Items[index].End), dash - TextLines.Start(text, dash)));
    }

    // Of blank lines on both sides those above go too.
    private static string Without(string text, Chunk chunk)
    {
        int start = chunk.Start;
        if (chunk.End >= text.Length || TextLines.Indent(text, chunk.End) is null)
        {
            while (start > 0)
            {
                int above = TextLines.Start(text, start - (start > 1 && text[start - 1] == '\n' && text[start - 2] == '\r' ? 2 : 1));
                if (above == start || TextLines.Indent(text, above) is not null) break;
                start = above;
            }
        }
        return text[..start] + text[chunk.End..];
    }

    private static int Dash(string text, YamlList list, int index)
    {
        int at = index == 0 ? list.Start : list.Items[index - 1].End;
        while (at < text.Length && text[at] != '-')
        {
            if (text[at] == '#') at = TextLines.End(text, at);
            else if (char.IsWhiteSpace(text[at])) at++;
            else break;
        }
        return at < text.Length && text[at] == '-' && at <= list.Items[index].Start ? at : throw new NoRoomException();
    }

    // Behind the colon of a key.
    private static int Colon(string text, YamlScalar key)
    {
        int at = key.End;
        while (at < text.Length && text[at] is ' ' or '\t') at++;
        return at < text.Length && text[at] == ':' ? at + 1 : throw new NoRoomException();
    }

    private static string Joined(string text, IEnumerable<string> lines)
    {
        string end = TextLines.LineEnd(text);
        return string.Concat(lines.Select(l => l + end));
    }
}
