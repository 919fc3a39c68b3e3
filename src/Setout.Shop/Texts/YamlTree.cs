using System.Collections.Immutable;
using System.Text;
using Setout.Core.Workings;
using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace Setout.Shop.Texts;

/// <summary>A node of a text with its place.</summary>
/// <param name="Place">Line and column, from one.</param>
public abstract record YamlNode(Place Place);

/// <summary>A single value.</summary>
/// <param name="Text">As written, without quotes.</param>
public sealed record YamlScalar(string Text, Place Place) : YamlNode(Place);

/// <summary>A list.</summary>
public sealed record YamlList(ImmutableArray<YamlNode> Items, Place Place) : YamlNode(Place);

/// <summary>Keys with values, in the order written.</summary>
public sealed record YamlMap(ImmutableArray<(YamlScalar Key, YamlNode Value)> Entries, Place Place) : YamlNode(Place);

/// <summary>The most a text may hold. Counted while reading, so that a hostile text is refused early.</summary>
/// <param name="Bytes">Size of the text.</param>
/// <param name="Depth">Lists and maps inside each other.</param>
/// <param name="Nodes">Values, lists and maps in all.</param>
public sealed record TextLimits(int Bytes = 8 * 1024 * 1024, int Depth = 40, int Nodes = 400_000)
{
    /// <summary>The usual limits.</summary>
    public static TextLimits Usual { get; } = new();
}

/// <summary>A value read, with everything that was wrong on the way; the value is null when nothing useful could be read.</summary>
/// <typeparam name="T">What was to be read.</typeparam>
/// <param name="Value">What was read, or null.</param>
/// <param name="Findings">All that is wrong, in the order of the text.</param>
public sealed record TextRead<T>(T? Value, ImmutableArray<Finding> Findings) where T : class
{
    /// <summary>True when nothing stops.</summary>
    public bool IsSound => Value is not null && Findings.All(f => f.Severity != Severity.Stop);
}

/// <summary>
/// Reads YAML into a plain tree with places. Only what our texts need: no anchors, aliases, tags or several documents in one file, which is
/// also what keeps a small text from growing into a large one.
/// </summary>
public static class YamlTree
{
    /// <summary>Reads a text.</summary>
    public static TextRead<YamlNode> Read(string text, TextLimits? limits = null)
    {
        limits ??= TextLimits.Usual;
        if (Encoding.UTF8.GetByteCount(text) > limits.Bytes)
            return Refuse("text.too-large", default, $"The text is larger than {limits.Bytes / 1024 / 1024} MB.", "Split the piece, or look whether this is the right file.");
        if (text.Contains('\0')) return Refuse("text.not-text", default, "This is not a text: it holds a zero byte.", "Look whether this is the right file.");
        try
        {
            return new Builder(new Parser(new StringReader(text)), limits).Document();
        }
        catch (Refused refused)
        {
            return new(null, [refused.Finding]);
        }
        catch (YamlException broken)
        {
            return Refuse("text.not-yaml", At(broken.Start), $"This cannot be read as YAML: {Plain(broken.Message)}", "Look at the indentation, the colons and the quotes near this place.");
        }
    }

    private static string Plain(string message)
    {
        // The parser repeats the place in its message; we say it ourselves.
        int colon = message.IndexOf("): ", StringComparison.Ordinal);
        return (colon >= 0 ? message[(colon + 3)..] : message).TrimEnd('.') + ".";
    }

    private static TextRead<YamlNode> Refuse(string code, Place place, string words, string remedy) =>
        new(null, [new(code, Severity.Stop, "", words, remedy, place)]);

    private static Place At(Mark mark) => new((int)Math.Min(mark.Line, int.MaxValue), (int)Math.Min(mark.Column, int.MaxValue));

    private sealed class Refused(Finding finding) : Exception(finding.Words)
    {
        public Finding Finding { get; } = finding;
    }

    private sealed class Builder(IParser parser, TextLimits limits)
    {
        private int _nodes;

        public TextRead<YamlNode> Document()
        {
            Next();
            if (Next() is StreamEnd) return Refuse("text.empty", default, "The text is empty.", "Begin with 'setout: 1'.");
            YamlNode node = Node(0);
            Next();
            if (Next() is DocumentStart second)
                throw Stop("text.two-documents", second.Start, "There are several documents in this text.", "Keep one a file: take the line '---' out.");
            return new(node, []);
        }

        // The parser's own helpers step ahead; moving by hand keeps 'the event just read' one thing.
        private ParsingEvent Next() => parser.MoveNext() ? parser.Current! : throw new InvalidOperationException("The parser stopped inside a text.");

        private YamlNode Node(int depth) => Node(Next(), depth);

        private YamlNode Node(ParsingEvent here, int depth)
        {
            if (++_nodes > limits.Nodes) throw Stop("text.too-many-nodes", here.Start, $"The text holds more than {limits.Nodes} values.", "Split the piece.");
            if (depth > limits.Depth) throw Stop("text.too-deep", here.Start, $"Lists and maps lie more than {limits.Depth} deep inside each other.", "Write it flatter.");
            if (here is AnchorAlias) throw Stop("text.alias", here.Start, "References (*name) are not used in these texts.", "Write the value out.");
            if (here is NodeEvent { Anchor.IsEmpty: false }) throw Stop("text.anchor", here.Start, "Anchors (&name) are not used in these texts.", "Take the mark out and write values where they belong.");
            if (here is NodeEvent { Tag: { IsEmpty: false, IsNonSpecific: false } }) throw Stop("text.tag", here.Start, "Tags (!name) are not used in these texts.", "Take the tag out.");
            switch (here)
            {
                case Scalar scalar:
                    return new YamlScalar(scalar.Value, At(scalar.Start));
                case SequenceStart list:
                    {
                        var items = ImmutableArray.CreateBuilder<YamlNode>();
                        for (ParsingEvent item = Next(); item is not SequenceEnd; item = Next()) items.Add(Node(item, depth + 1));
                        return new YamlList(items.ToImmutable(), At(list.Start));
                    }
                case MappingStart map:
                    {
                        var entries = ImmutableArray.CreateBuilder<(YamlScalar, YamlNode)>();
                        var seen = new Dictionary<string, Place>(StringComparer.Ordinal);
                        for (ParsingEvent item = Next(); item is not MappingEnd; item = Next())
                        {
                            if (Node(item, depth + 1) is not YamlScalar key) throw Stop("text.key", here.Start, "A key must be a word.", "Write 'word: value'.");
                            if (!seen.TryAdd(key.Text, key.Place))
                                throw new Refused(new("text.twice", Severity.Stop, "", $"'{key.Text}' stands twice, first in line {seen[key.Text].Line}.", "Keep one of them.", key.Place));
                            entries.Add((key, Node(depth + 1)));
                        }
                        return new YamlMap(entries.ToImmutable(), At(map.Start));
                    }
                default:
                    throw new InvalidOperationException($"The parser gave {here.GetType().Name} where a node belongs.");
            }
        }

        private static Refused Stop(string code, Mark at, string words, string remedy) => new(new(code, Severity.Stop, "", words, remedy, At(at)));
    }
}
