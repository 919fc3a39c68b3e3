using System.Collections.Immutable;
using Setout.Core.Workings;

namespace Setout.Shop.Texts;

/// <summary>A node of a text with its place.</summary>
/// <param name="Place">Line and column, from one.</param>
public abstract record YamlNode(Place Place)
{
    /// <summary>Where it begins in the text, quotes and braces included: a zero-based index.</summary>
    public int Start { get; init; }

    /// <summary>Where it ends in the text, quotes and braces included, blanks and line ends after it left out. A list or a map in lines ends with its last value.</summary>
    public int End { get; init; }
}

/// <summary>A single value.</summary>
/// <param name="Text">As written, without quotes.</param>
public sealed record YamlScalar(string Text, Place Place) : YamlNode(Place)
{
    /// <summary>The whole text it was read from.</summary>
    internal string Whole { get; init; } = "";

    /// <summary>As it stands in the text, with its quotes.</summary>
    internal ReadOnlySpan<char> Raw => Whole.AsSpan(Start, End - Start);

    /// <summary>The place of a sign within <see cref="Text"/>; that of the value itself where it runs over several lines.</summary>
    /// <param name="position">Zero-based, within <see cref="Text"/>.</param>
    internal Place PlaceAt(int position)
    {
        ReadOnlySpan<char> raw = Raw;
        if (raw.IsEmpty || raw.IndexOfAny('\n', '\r') >= 0) return Place;
        int at = raw[0] is '"' or '\'' ? 1 : 0;
        if (at == 0) return Place with { Column = Place.Column + Math.Min(position, raw.Length) };
        for (int i = 0; i < position && at < raw.Length - 1; i++) at += SignAt(raw, at);
        return Place with { Column = Place.Column + at };
    }

    // How many signs of the text make one of the value.
    private static int SignAt(ReadOnlySpan<char> raw, int at)
    {
        if (raw[0] == '\'') return raw[at] == '\'' ? 2 : 1;
        if (raw[at] != '\\' || at + 1 >= raw.Length) return 1;
        return raw[at + 1] switch { 'x' => 4, 'u' => 6, 'U' => 10, _ => 2 };
    }
}

/// <summary>A list.</summary>
public sealed record YamlList(ImmutableArray<YamlNode> Items, Place Place) : YamlNode(Place)
{
    /// <summary>True when written in brackets.</summary>
    public bool IsFlow { get; init; }
}

/// <summary>Keys with values, in the order written. A key stands once.</summary>
public sealed record YamlMap(ImmutableArray<(YamlScalar Key, YamlNode Value)> Entries, Place Place) : YamlNode(Place)
{
    /// <summary>True when written in braces.</summary>
    public bool IsFlow { get; init; }

    /// <summary>The value of a key, or null.</summary>
    public YamlNode? this[string key] => Entries.FirstOrDefault(e => e.Key.Text == key).Value;
}
