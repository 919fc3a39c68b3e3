using System.Buffers;
using System.Text.RegularExpressions;
using Setout.Shop.Texts;

namespace Setout.Shop.Edits;

/// <summary>Values to be written into a text, and how they are written: on one line in braces, or in lines of their own.</summary>
public static partial class Written
{
    /// <summary>The longest line that is made, in signs. Common practice, no source.</summary>
    internal const int Longest = 120;

    private static readonly SearchValues<char> s_notPlain = SearchValues.Create("\n\r,[]{}|>");

    // A line in braces that is begun anew leaves room for what will still be added.
    private const int Roomy = 100;

    /// <summary>A word or a figure as a reader sees it; quotes are added where they are needed.</summary>
    public static YamlScalar Word(string text) => new(text, default);

    /// <summary>A list.</summary>
    public static YamlList List(params IEnumerable<YamlNode> items) => new([.. items], default);

    /// <summary>A list of words.</summary>
    public static YamlList Words(params IEnumerable<string> words) => new([.. words.Select(Word)], default);

    /// <summary>Keys with values; those with null are left out.</summary>
    public static YamlMap Map(params IEnumerable<(string Key, YamlNode? Value)> entries) => new([.. entries.Where(e => e.Value is not null).Select(e => (Word(e.Key), e.Value!))], default);

    /// <summary>Keys with words; those with null or nothing are left out.</summary>
    public static YamlMap Fields(params IEnumerable<(string Key, string? Value)> entries) => Map(entries.Select(e => (e.Key, string.IsNullOrEmpty(e.Value) ? null : (YamlNode)Word(e.Value))));

    /// <summary>On one line, in braces and brackets.</summary>
    internal static string OnOneLine(YamlNode node) => node switch
    {
        YamlMap map => $"{{{string.Join(", ", map.Entries.Select(e => $"{Scalar(e.Key)}: {OnOneLine(e.Value)}"))}}}",
        YamlList list => $"[{string.Join(", ", list.Items.Select(OnOneLine))}]",
        YamlScalar scalar => Scalar(scalar),
        _ => throw new ArgumentOutOfRangeException(nameof(node), node, "A word, a list or a map."),
    };

    /// <summary>For people, without the signs of the text: <c>of thin, fit grooved</c>.</summary>
    internal static string InWords(YamlNode node) => node switch
    {
        YamlMap map => string.Join(", ", map.Entries.Select(e => $"{e.Key.Text} {(e.Value is YamlScalar ? InWords(e.Value) : $"({InWords(e.Value)})")}".Trim())),
        YamlList list => string.Join(", ", list.Items.Select(InWords)),
        _ => ((YamlScalar)node).Text,
    };

    /// <summary>True when a value belongs on one line that has so many signs before it: it holds no maps within, or was in braces before.</summary>
    internal static bool IsShort(YamlNode node, int before) => node switch
    {
        YamlScalar scalar => scalar.Text.AsSpan().IndexOfAny('\n', '\r') < 0 || scalar.Raw.IsEmpty,
        YamlMap { Entries.Length: 0 } or YamlList { Items.Length: 0 } => true,
        _ => (IsPlain(node) || node is YamlMap { IsFlow: true } or YamlList { IsFlow: true }) && before + OnOneLine(node).Length <= Roomy,
    };

    private static bool IsPlain(YamlNode node) => node switch
    {
        YamlMap map => map.Entries.All(e => e.Value is YamlScalar || (e.Value is YamlList list && list.Items.All(i => i is YamlScalar))),
        YamlList list => list.Items.All(i => i is YamlScalar),
        _ => true,
    };

    /// <summary>The lines of a list or a map, without line ends; the first one too is indented.</summary>
    /// <param name="node">A list or a map that is not empty.</param>
    /// <param name="indent">How many blanks stand before.</param>
    internal static IEnumerable<string> Lines(YamlNode node, int indent)
    {
        string blanks = new(' ', indent);
        if (node is YamlMap map)
        {
            foreach ((YamlScalar key, YamlNode value) in map.Entries)
            {
                string begin = $"{blanks}{Scalar(key)}:";
                if (IsShort(value, begin.Length + 1)) yield return $"{begin} {OnOneLine(value)}";
                else
                {
                    yield return begin;
                    foreach (string line in Lines(value, indent + 2)) yield return line;
                }
            }
        }
        else if (node is YamlList list)
        {
            foreach (YamlNode item in list.Items)
                foreach (string line in Item(item, indent, IsShort(item, indent + 2))) yield return line;
        }
        else yield return blanks + OnOneLine(node);
    }

    /// <summary>The lines of an item of a list.</summary>
    /// <param name="item">The item.</param>
    /// <param name="indent">How many blanks stand before its dash.</param>
    /// <param name="onOneLine">True to write it in braces.</param>
    internal static IEnumerable<string> Item(YamlNode item, int indent, bool onOneLine)
    {
        string begin = new string(' ', indent) + "- ";
        if (onOneLine || item is YamlScalar or YamlMap { Entries.Length: 0 } or YamlList { Items.Length: 0 }) return [begin + OnOneLine(item)];
        return Lines(item, indent + 2).Select((line, i) => i == 0 ? begin + line[(indent + 2)..] : line);
    }

    internal static string Scalar(YamlScalar scalar)
    {
        // What was written already stays as it was, quotes and all.
        if (!scalar.Raw.IsEmpty && (scalar.Raw[0] is '"' or '\'' ? scalar.Raw.IndexOfAny('\n', '\r') : scalar.Raw.IndexOfAny(s_notPlain)) < 0) return scalar.Raw.ToString();
        return PlainPattern().IsMatch(scalar.Text) ? scalar.Text : LogText.Quoted(scalar.Text);
    }

    // Plain in block and in braces alike: no sign that YAML gives a meaning to.
    [GeneratedRegex(@"^[A-Za-z0-9]([A-Za-z0-9 ./'""*+()×\-]*[A-Za-z0-9./'""*+()×\-])?\z")]
    private static partial Regex PlainPattern();
}
