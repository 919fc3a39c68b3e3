// Over 200 lines: the one door through which a text comes in, with every check at it.
using System.Buffers;
using System.Collections.Immutable;
using System.Text;
using Setout.Core.Workings;
using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace Setout.Shop.Texts;

/// <summary>
/// Reads YAML into a plain tree with places. Only what our texts need: no anchors, aliases, tags or several documents in one file, which is
/// also what keeps a small text from growing into a large one.
/// </summary>
public static class YamlTree
{
    // Signs that no editor shows: controls, marks of direction and order, line ends that only some programs know.
    private static readonly SearchValues<char> s_unseen = SearchValues.Create(
        [.. Controls(), '\u2028', '\u2029', '\u202A', '\u202B', '\u202C', '\u202D', '\u202E', '\u2066', '\u2067', '\u2068', '\u2069', '\uFEFF', '\uFFFE', '\uFFFF']);

    private static readonly SearchValues<char> s_controls = SearchValues.Create([.. Controls()]);

    // Line ends and the tab are text; the rest of the two control ranges is not.
    private static IEnumerable<char> Controls() =>
        Enumerable.Range(0, 0x20).Concat(Enumerable.Range(0x7F, 0x21)).Select(c => (char)c).Where(c => c is not ('\t' or '\n' or '\r'));

    /// <summary>Reads a text. A mark of byte order at its start is passed over.</summary>
    public static TextRead<YamlNode> Read(string text, TextLimits? limits = null)
    {
        limits ??= TextLimits.Usual;
        if (text.Length > limits.Bytes || Encoding.UTF8.GetByteCount(text) > limits.Bytes) return new(null, [limits.TooLarge]);
        int mark = text.StartsWith('\uFEFF') ? 1 : 0;
        if (Unreadable(text, mark) is { } unreadable) return new(null, [unreadable]);
        var builder = new Builder(text, mark, limits);
        try
        {
            return builder.Document();
        }
        catch (Refused refused)
        {
            return builder.With(refused.Finding);
        }
        catch (YamlException broken)
        {
            return builder.With(Tab(text, broken.Start) ?? new("text.not-yaml", Severity.Stop, "",
                $"This cannot be read as YAML: {Plain(broken.Message)}", "Look at the indentation, the colons and the quotes near this place.", builder.At(broken.Start)));
        }
        catch (Exception fault) when (fault is InvalidOperationException or ArgumentException or OverflowException or FormatException)
        {
            // The parser lets some of its own mistakes out at broken brackets and escapes; to the person it is the same.
            return builder.With(new("text.not-yaml", Severity.Stop, "", "This cannot be read as YAML from about here on.",
                "Look at the brackets, the quotes and the backslashes near this place.", builder.Here));
        }
    }

    private static Finding? Unreadable(string text, int from)
    {
        int zero = text.IndexOf('\0');
        if (zero >= 0) return new("text.not-text", Severity.Stop, "", "This is not a text: it holds a zero byte.", "Look whether this is the right file.", TextPlace.Of(text, zero));
        int lost = Lost(text);
        if (lost >= 0)
            return new("text.not-utf8", Severity.Stop, "", "A letter here was lost: the file is not UTF-8.", "Save the file as UTF-8 in your editor and write the letter anew.", TextPlace.Of(text, lost));
        int control = text.AsSpan(from).IndexOfAny(s_unseen);
        if (control < 0) return null;
        control += from;
        return new("text.control", Severity.Stop, "", $"A sign that cannot be seen stands here (U+{(int)text[control]:X4}).", "Take it out.", TextPlace.Of(text, control));
    }

    // The sign that decoders put where they could not read, or half of a pair.
    private static int Lost(string text)
    {
        int replaced = text.IndexOf('\uFFFD'), end = replaced < 0 ? text.Length : replaced;
        for (int i = 0; i < end; i += 2)
        {
            int next = text.AsSpan(i, end - i).IndexOfAnyInRange('\uD800', '\uDFFF');
            if (next < 0) break;
            i += next;
            if (i + 1 >= text.Length || !char.IsSurrogatePair(text[i], text[i + 1])) return i;
        }
        return replaced;
    }

    // The parser tells of a tab at the line before it, in other words.
    private static Finding? Tab(string text, Mark near)
    {
        int line = 0;
        foreach (ReadOnlySpan<char> row in text.AsSpan().EnumerateLines())
        {
            if (++line < near.Line) continue;
            int tab = row.IndexOf('\t');
            if (tab >= 0 && row[..tab].Trim(' ').IsEmpty && !row.Trim().IsEmpty)
                return new("text.tab", Severity.Stop, "", "A tab stands where blanks belong.", "Indent with blanks, two for each step.", new(line, tab + 1));
            if (line > near.Line + 1) break;
        }
        return null;
    }

    private static string Plain(string message)
    {
        // The parser may repeat the place in its message; we say it ourselves.
        int place = message.IndexOf(" (at Line", StringComparison.Ordinal);
        return (place >= 0 ? message[..place] : message).TrimEnd('.') + ".";
    }

    private sealed class Refused(Finding finding) : Exception(finding.Words)
    {
        public Finding Finding { get; } = finding;
    }

    private sealed class Builder(string text, int skipped, TextLimits limits)
    {
        private readonly Parser _parser = new(new StringReader(text[skipped..]));
        private readonly List<Finding> _findings = [];
        private int _nodes;

        public Place Here => At(_parser.Current?.Start ?? Mark.Empty);

        // The parser does not see the mark of byte order, and an editor does not show it. Behind the end the parser counts lines that are not there.
        public Place At(Mark mark) => skipped + mark.Index >= text.Length
            ? TextPlace.Of(text, text.Length)
            : new((int)Math.Clamp(mark.Line, 1, int.MaxValue), (int)Math.Clamp(mark.Column, 1, int.MaxValue));

        public TextRead<YamlNode> With(Finding last) => new(null, [.. _findings, last]);

        public TextRead<YamlNode> Document()
        {
            _parser.Consume<StreamStart>();
            if (_parser.Accept<StreamEnd>(out _)) throw new Refused(new("text.empty", Severity.Stop, "", "The text is empty.", "Begin with the version, such as 'setout: 1'.", new(1, 1)));
            _parser.Consume<DocumentStart>();
            YamlNode node = Node(0);
            _parser.Consume<DocumentEnd>();
            if (_parser.Accept<DocumentStart>(out DocumentStart? second))
                throw Stop("text.two-documents", second.Start, "There are several documents in this text.", "Keep one a file: take the line '---' out.");
            return new(node, [.. _findings]);
        }

        private YamlNode Node(int depth)
        {
            ParsingEvent here = _parser.Consume<ParsingEvent>();
            if (++_nodes > limits.Nodes) throw Stop("text.too-many-nodes", here.Start, $"The text holds more than {limits.Nodes} values.", "Split the piece.");
            if (depth > limits.Depth) throw Stop("text.too-deep", here.Start, $"Lists and maps lie more than {limits.Depth} deep inside each other.", "Write it flatter.");
            if (here is AnchorAlias) throw Stop("text.alias", here.Start, "References (*name) are not used in these texts.", "Write the value out.");
            if (here is NodeEvent { Anchor.IsEmpty: false }) throw Stop("text.anchor", here.Start, "Anchors (&name) are not used in these texts.", "Take the mark out and write values where they belong.");
            if (here is NodeEvent { Tag.IsEmpty: false } tagged && (!tagged.Tag.IsNonSpecific || text[skipped + (int)here.Start.Index] == '!'))
                throw Stop("text.tag", here.Start, "Tags (!name) are not used in these texts.", "Take the tag out.");
            return here switch
            {
                Scalar scalar => Value(scalar),
                SequenceStart list => List(list, depth),
                MappingStart map => Map(map, depth),
                _ => throw new InvalidOperationException($"The parser gave {here.GetType().Name} where a node belongs."),
            };
        }

        private YamlScalar Value(Scalar scalar)
        {
            if (scalar.Value.AsSpan().IndexOfAny(s_controls) is >= 0 and int at)
                throw Stop("text.control", scalar.Start, $"This value holds a sign that cannot be seen (U+{(int)scalar.Value[at]:X4}).", "Take it out.");
            int start = Index(scalar.Start), end = Index(scalar.End);
            while (end > start && text[end - 1] is ' ' or '\t' or '\n' or '\r') end--;
            return new(scalar.Value, At(scalar.Start)) { Whole = text, Start = start, End = Math.Max(start, end) };
        }

        private YamlList List(SequenceStart list, int depth)
        {
            var items = ImmutableArray.CreateBuilder<YamlNode>();
            while (!_parser.Accept<SequenceEnd>(out _)) items.Add(Node(depth + 1));
            var last = _parser.Consume<SequenceEnd>();
            bool isFlow = list.Style == SequenceStyle.Flow;
            int start = Index(list.Start);
            return new(items.ToImmutable(), At(list.Start)) { IsFlow = isFlow, Start = start, End = isFlow ? Index(last.Start) + 1 : items.Count > 0 ? items[^1].End : start };
        }

        private YamlMap Map(MappingStart map, int depth)
        {
            var entries = ImmutableArray.CreateBuilder<(YamlScalar, YamlNode)>();
            var seen = new Dictionary<string, Place>(StringComparer.Ordinal);
            int start = Index(map.Start), end = start;
            while (!_parser.Accept<MappingEnd>(out _))
            {
                YamlNode name = Node(depth + 1);
                if (name is not YamlScalar key)
                    throw new Refused(new("text.key", Severity.Stop, "", "A key must be a word.", "Write 'word: value'.", name.Place));
                YamlNode value = Node(depth + 1);
                if (value is YamlScalar { Raw.IsEmpty: true }) value = AtColon(key, value);
                end = value.End;
                if (seen.TryAdd(key.Text, key.Place)) entries.Add((key, value));
                else if (_findings.Count < limits.Findings)
                    _findings.Add(new("text.twice", Severity.Stop, "", $"'{TextContext.Shown(key.Text)}' stands twice, first in line {seen[key.Text].Line}.", "Keep one of them.", key.Place));
            }
            var last = _parser.Consume<MappingEnd>();
            bool isFlow = map.Style == MappingStyle.Flow;
            return new(entries.ToImmutable(), At(map.Start)) { IsFlow = isFlow, Start = start, End = isFlow ? Index(last.Start) + 1 : end };
        }

        // The parser puts an empty value where the next thing begins; it stands behind the colon.
        private YamlNode AtColon(YamlScalar key, YamlNode empty)
        {
            int at = key.End;
            while (at < text.Length && text[at] is ' ' or '\t') at++;
            at = at < text.Length && text[at] == ':' ? at + 1 : key.End;
            return empty with { Start = at, End = at };
        }

        private int Index(Mark mark) => (int)Math.Min(text.Length, skipped + mark.Index);

        private Refused Stop(string code, Mark at, string words, string remedy) => new(new(code, Severity.Stop, "", words, remedy, At(at)));
    }
}
