using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Setout.Core.Workings;

namespace Setout.Shop.Texts;

/// <summary>Names one value of a text: the map it stands in by its owner, then keys inwards.</summary>
/// <param name="Owner">A permanent key, or the name of a material or of a kind of drawer; empty for the outermost map.</param>
/// <param name="Keys">One or more, such as <c>width</c>, or <c>overhang</c> and <c>front</c>.</param>
public sealed record SplicePath(string Owner, ImmutableArray<string> Keys)
{
    /// <summary>The path of a value.</summary>
    public static SplicePath Of(string owner, params ReadOnlySpan<string> keys) => new(owner, [.. keys]);

    /// <inheritdoc/>
    public override string ToString() => string.Join(" / ", Keys.Prepend(Owner).Where(k => k.Length > 0));
}

/// <summary>
/// Edits a text by splicing at the places where the parser found things, so that comments, blank lines and the order of everything
/// else survive. What comes out has been read again and compared: nothing but the named value differs.
/// </summary>
public static partial class PieceSplice
{
    // The words whose value is a permanent key, and the maps whose keys are names.
    private static readonly ImmutableArray<string> s_owners = ["frame", "case", "top", "opening", "partition", "deck", "posts", "drawer", "part"];
    private static readonly ImmutableArray<string> s_named = ["materials", "drawers"];

    /// <summary>
    /// Sets a value, or adds its key after the first line of the map it belongs to. The new text, or null with the finding that says why not.
    /// </summary>
    /// <param name="text">A piece file or a shop file that can be read as YAML.</param>
    /// <param name="path">Which value.</param>
    /// <param name="value">On one line, not empty, as a reader would see it: quotes are added where they are needed.</param>
    public static TextRead<string> Set(string text, SplicePath path, string value)
    {
        TextRead<YamlNode> before = YamlTree.Read(text);
        if (before.Value is null || !before.IsSound) return new(null, before.Findings);
        if (path.Keys.IsDefaultOrEmpty) return Refuse("splice.no-such-place", default, "No key is named.", "Name one.");
        if (value.Trim() != value || value.Length == 0 || value.AsSpan().IndexOfAny('\n', '\r', '\t') >= 0)
            return Refuse("splice.bad-value", default, $"'{TextContext.Shown(value)}' is not a value on one line.", "Give words or figures, without blanks at the ends.");
        YamlMap? map = OwnerIn(before.Value, path.Owner, isOuter: true);
        foreach (string key in path.Keys.AsSpan()[..^1]) map = map?[key] as YamlMap;
        if (map is null) return Refuse("splice.no-such-place", before.Value.Place, $"There is nothing called {path} here.", "Look at the keys of the text.");
        string last = path.Keys[^1], written = Written(value);
        string? after = map[last] switch
        {
            null => Inserted(text, map, $"{Written(last)}: {written}"),
            YamlScalar scalar => Replaced(text, map, last, scalar, written),
            _ => null,
        };
        if (after is null) return Refuse("splice.no-room", map[last]?.Place ?? map.Place, $"{path} cannot be set here.", "Edit the text by hand: this value is a list, a map or goes over several lines.");
        return YamlTree.Read(after).Value is { } changed && Differs(before.Value, changed, map, last, value)
            ? new(after, [])
            : Refuse("splice.no-room", map.Place, $"{path} cannot be set without changing something else.", "Edit the text by hand.");
    }

    private static string? Replaced(string text, YamlMap map, string key, YamlScalar scalar, string written)
    {
        if (scalar.Raw.IndexOfAny('\n', '\r') >= 0) return null;
        if (scalar.Raw.Length > 0) return string.Concat(text.AsSpan(0, scalar.Start), written, text.AsSpan(scalar.End));
        // An empty value has no place of its own: it goes behind the colon.
        int colon = text.IndexOf(':', map.Entries.First(e => e.Key.Text == key).Key.End);
        return colon < 0 ? null : string.Concat(text.AsSpan(0, colon + 1), " ", written, text.AsSpan(colon + 1));
    }

    private static string? Inserted(string text, YamlMap map, string entry)
    {
        if (map.IsFlow && map.Entries.Length == 0) return null;
        (YamlScalar key, YamlNode value) = map.Entries[0];
        if (value is not YamlScalar { Raw: var raw } first || raw.IndexOfAny('\n', '\r') >= 0) return null;
        if (map.IsFlow) return raw.IsEmpty ? null : string.Concat(text.AsSpan(0, first.End), ", ", entry, text.AsSpan(first.End));
        // After the whole line, so that a remark at its end stays with it.
        int from = Math.Max(first.End, key.End), end = text.AsSpan(from).IndexOfAny('\n', '\r');
        string indent = new(' ', key.Place.Column - 1);
        string newline = text.Contains("\r\n", StringComparison.Ordinal) ? "\r\n" : "\n";
        if (end < 0) return $"{text}{newline}{indent}{entry}{newline}";
        end += from;
        end += text.AsSpan(end).StartsWith("\r\n") ? 2 : 1;
        return string.Concat(text.AsSpan(0, end), indent + entry + newline, text.AsSpan(end));
    }

    private static YamlMap? OwnerIn(YamlNode node, string owner, bool isOuter = false)
    {
        if (node is YamlList list) return list.Items.Select(i => OwnerIn(i, owner)).FirstOrDefault(m => m is not null);
        if (node is not YamlMap map) return null;
        if (isOuter && owner.Length == 0) return map;
        if (map.Entries.Any(e => s_owners.Contains(e.Key.Text) && e.Value is YamlScalar key && key.Text == owner)) return map;
        if (isOuter && s_named.Select(n => (map[n] as YamlMap)?[owner] as YamlMap).FirstOrDefault(m => m is not null) is { } named) return named;
        return map.Entries.Select(e => OwnerIn(e.Value, owner)).FirstOrDefault(m => m is not null);
    }

    // True when both trees are the same but for one value of one map.
    private static bool Differs(YamlNode before, YamlNode after, YamlMap where, string key, string value)
    {
        switch (before, after)
        {
            case (YamlScalar a, YamlScalar b): return a.Text == b.Text;
            case (YamlList a, YamlList b): return a.Items.Length == b.Items.Length && a.Items.Zip(b.Items).All(p => Differs(p.First, p.Second, where, key, value));
            case (YamlMap a, YamlMap b):
                bool isHere = ReferenceEquals(a, where);
                if (isHere && (b[key] as YamlScalar)?.Text != value) return false;
                var kept = a.Entries.Where(e => !isHere || e.Key.Text != key).ToList();
                var left = b.Entries.Where(e => !isHere || e.Key.Text != key).ToList();
                return kept.Count == left.Count && kept.Zip(left).All(p => p.First.Key.Text == p.Second.Key.Text && Differs(p.First.Value, p.Second.Value, where, key, value));
            default: return false;
        }
    }

    private static string Written(string value) => PlainPattern().IsMatch(value) ? value : LogText.Quoted(value);

    private static TextRead<string> Refuse(string code, Place place, string words, string remedy) => new(null, [new(code, Severity.Stop, "", words, remedy, place)]);

    // Plain in block and in braces alike: no sign that YAML gives a meaning to.
    [GeneratedRegex(@"^[A-Za-z0-9]([A-Za-z0-9 ./'""*+()×\-]*[A-Za-z0-9./'""*+()×\-])?\z")]
    private static partial Regex PlainPattern();
}
