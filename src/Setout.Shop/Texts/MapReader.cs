// Over 200 lines: the one place where nodes are taken out of a map, each with its error (values: MapReader.Values.cs).
using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Shop.Texts;

/// <summary>
/// Takes the values of one map by name and notes what is wrong with its place. Every key that is asked for, in whatever way, is known
/// from then on; when the context closes, keys that nobody asked for are named with the nearest known one, and keys that are missing
/// are named unless one of those was meant for them.
/// </summary>
internal sealed partial class MapReader
{
    /// <summary>The most letters of a word that names something.</summary>
    public const int LongestWord = 100;

    /// <summary>The most letters of a remark.</summary>
    public const int LongestRemark = 500;

    private readonly TextContext _context;
    private readonly YamlMap _map;
    private readonly Dictionary<string, (YamlScalar Key, YamlNode Value)> _entries;
    private readonly List<string> _known = [];
    private readonly HashSet<string> _told = new(StringComparer.Ordinal);
    private readonly List<(string Key, Finding Finding)> _missing = [];
    private string _kind;
    private bool _isAbandoned;

    /// <param name="context">Of the text.</param>
    /// <param name="map">To be read.</param>
    /// <param name="kind">What kind of map this is; the name of its definition in the schema.</param>
    public MapReader(TextContext context, YamlMap map, string kind)
    {
        (_context, _map, _kind) = (context, map, kind);
        _entries = map.Entries.ToDictionary(e => e.Key.Text, e => e, StringComparer.Ordinal);
        context.Opened(this);
    }

    public Place Place => _map.Place;

    /// <summary>Where the value of a key stands, or the map itself.</summary>
    public Place PlaceOf(string key) => _entries.TryGetValue(key, out var entry) ? entry.Value.Place : _map.Place;

    /// <summary>Where a key stands, or the map itself.</summary>
    public Place KeyPlaceOf(string key) => _entries.TryGetValue(key, out var entry) ? entry.Key.Place : _map.Place;

    /// <summary>True when the key is there, which makes it a known one.</summary>
    public bool Has(string key)
    {
        Know(key);
        return IsThere(key);
    }

    /// <summary>True when the key is there; it does not become a known one.</summary>
    public bool IsThere(string key) => _entries.ContainsKey(key);

    /// <summary>Makes keys known that stand in every kind of map of a list, so that they may come before the word that tells the kind.</summary>
    public void Expect(params ReadOnlySpan<string> keys)
    {
        foreach (string key in keys) Know(key);
    }

    /// <summary>
    /// Tells by its word what kind of map this is; null when none of the words is there (said in a finding, and nothing more is said about
    /// this map).
    /// </summary>
    public string? Which(string words, string remedy, params ReadOnlySpan<(string Word, string Kind)> kinds)
    {
        string? found = null;
        var all = new List<string>();
        foreach ((string word, string kind) in kinds)
        {
            all.Add(word);
            if (!IsThere(word)) continue;
            if (found is null)
            {
                (found, _kind) = (word, kind);
                Know(word);
            }
            else if (_told.Add(word))
            {
                _context.Stop("text.two-kinds", KeyPlaceOf(word), $"This has both '{found}' and '{word}'.", "Keep the one that is meant.");
            }
        }
        if (found is not null) return found;
        // The word stands first, or after what every map of the list begins with: a key further down belongs to some kind or other.
        Mistyped(all, new("text.missing", Severity.Stop, "", words, remedy, _map.Place), _map.Entries.SkipWhile(e => _known.Contains(e.Key.Text, StringComparer.Ordinal)).Take(1));
        Abandon();
        return null;
    }

    /// <summary>Says that a key is missing, unless another key here looks like it.</summary>
    public void MissingOrMistyped(string key, Finding missing) => Mistyped([key], missing, _map.Entries);

    private void Mistyped(List<string> words, Finding missing, IEnumerable<(YamlScalar Key, YamlNode Value)> likely)
    {
        foreach ((YamlScalar key, YamlNode _) in likely)
        {
            if (NearestWord.Of(key.Text, words) is not { } guess) continue;
            _context.Stop("text.unknown-key", key.Place, $"'{TextContext.Shown(key.Text)}' is not known here.", $"Did you mean '{guess}'? Known here: {string.Join(", ", words)}.");
            return;
        }
        _context.Add(missing);
    }

    /// <summary>Says no more about this map. Always false, to be returned.</summary>
    public bool Abandon()
    {
        _isAbandoned = true;
        return false;
    }

    /// <summary>A node, or null when the key is not there.</summary>
    public YamlNode? Node(string key) => Has(key) ? _entries[key].Value : null;

    /// <summary>A value on one line, or null; <paramref name="what"/> says what is wanted.</summary>
    private YamlScalar? Scalar(string key, string code, string what, int most)
    {
        if (Node(key) is not { } node) return null;
        if (node is YamlScalar { Text.Length: > 0 } scalar) return OneLine(scalar, key, most);
        _context.Stop(code, node.Place, $"'{key}' wants {what}.", _context.IsTyped ? $"Type {what}." : $"Write '{key}: ' and {what} on the same line.");
        return null;
    }

    private YamlScalar? OneLine(YamlScalar scalar, string key, int most)
    {
        if (scalar.Text.Length > most)
            _context.Stop("text.too-long", scalar.Place, $"'{key}' is longer than {most} letters.", "Shorten it.");
        else if (scalar.Text.AsSpan().IndexOfAny('\n', '\r', '\t') >= 0)
            _context.Stop("text.one-line", scalar.Place, $"'{key}' goes over several lines or holds a tab.", "Write it on one line, with blanks.");
        else return scalar;
        return null;
    }

    /// <summary>A word or a name, or null.</summary>
    public Named? Text(string key, int most = LongestWord) => Scalar(key, "text.wanted-word", "a word", most) is { } scalar ? new(scalar.Text, scalar.Place) : null;

    /// <summary>A remark, which may go over several lines; empty when it is not there.</summary>
    public string Remark(string key)
    {
        if (Node(key) is not { } node) return "";
        if (node is not YamlScalar scalar)
            _context.Stop("text.wanted-word", node.Place, $"'{key}' wants words.", $"Write '{key}: ' and the words behind it.");
        else if (scalar.Text.Length > LongestRemark)
            _context.Stop("text.too-long", scalar.Place, $"'{key}' is longer than {LongestRemark} letters.", "Shorten it.");
        else return scalar.Text;
        return "";
    }

    /// <summary>A text that must be there.</summary>
    public Named Required(string key, string example)
    {
        if (Text(key) is { } text) return text;
        if (!IsThere(key)) Missing(key, example);
        return new("", _map.Place);
    }

    /// <summary>A permanent key.</summary>
    public string Key(string key)
    {
        Named text = Required(key, "K1");
        return text.Text.Length > 0 && IsKey(text) ? text.Text : "";
    }

    private bool IsKey(Named text)
    {
        if (KeyPattern().IsMatch(text.Text)) return true;
        _context.Stop("text.bad-key", text.Place, $"'{TextContext.Shown(text.Text)}' cannot be a key.", "A key is a letter followed by up to 23 letters, digits or hyphens, such as L3.");
        return false;
    }

    /// <summary>The items of a list, each a map of a kind; an empty list when the key is not there.</summary>
    public ImmutableArray<MapReader> Maps(string key, string kind, string example)
    {
        if (Node(key) is not { } node || node is YamlScalar { Text: "" }) return [];
        if (node is not YamlList list)
        {
            _context.Stop("text.wanted-list", node.Place, $"'{key}' wants a list.", "Write one item a line, each begun with '- '.");
            return [];
        }
        var maps = ImmutableArray.CreateBuilder<MapReader>();
        foreach (YamlNode item in list.Items)
        {
            if (item is YamlMap map) maps.Add(new(_context, map, kind));
            else _context.Stop("text.wanted-map", item.Place, $"Each item of '{key}' wants keys with values.", $"Write for example '- {{{example}}}'.");
        }
        return maps.ToImmutable();
    }

    /// <summary>The items of a list, each a word or a map of a kind; an empty list when the key is not there.</summary>
    public ImmutableArray<(Named? Word, MapReader? Map)> WordsOrMaps(string key, string kind, string example)
    {
        if (Node(key) is not { } node || node is YamlScalar { Text: "" }) return [];
        if (node is not YamlList list)
        {
            _context.Stop("text.wanted-list", node.Place, $"'{key}' wants a list.", $"Write for example '{key}: {example}'.");
            return [];
        }
        var items = ImmutableArray.CreateBuilder<(Named?, MapReader?)>();
        foreach (YamlNode item in list.Items)
        {
            if (item is YamlMap map) items.Add((null, new(_context, map, kind)));
            else if (item is not YamlScalar { Text.Length: > 0 } scalar) _context.Stop("text.wanted-word", item.Place, $"Each item of '{key}' wants a word, or keys with values.", $"Write for example '{key}: {example}'.");
            else if (OneLine(scalar, key, LongestWord) is { } word) items.Add((new Named(word.Text, word.Place), null));
        }
        return items.ToImmutable();
    }

    /// <summary>True when the key is there with nothing in it, or is not there at all.</summary>
    public bool IsEmpty(string key) => Node(key) is null or YamlScalar { Text: "" } or YamlList { Items.Length: 0 } or YamlMap { Entries.Length: 0 };

    /// <summary>The map under a key, or null.</summary>
    public MapReader? Map(string key, string kind)
    {
        if (Node(key) is not { } node) return null;
        if (node is YamlMap map) return new(_context, map, kind);
        _context.Stop("text.wanted-map", node.Place, $"'{key}' wants keys with values.", "Write them below it, indented.");
        return null;
    }

    /// <summary>The words of a list.</summary>
    public ImmutableArray<Named> Words(string key)
    {
        if (Node(key) is not { } node || node is YamlScalar { Text: "" }) return [];
        if (node is not YamlList list)
        {
            _context.Stop("text.wanted-list", node.Place, $"'{key}' wants a list.", $"Write '{key}: [a, b]'.");
            return [];
        }
        var words = ImmutableArray.CreateBuilder<Named>();
        foreach (YamlNode item in list.Items)
        {
            if (item is not YamlScalar { Text.Length: > 0 } scalar)
                _context.Stop("text.wanted-word", item.Place, $"Each item of '{key}' wants a word.", $"Write '{key}: [a, b]'.");
            else if (OneLine(scalar, key, LongestWord) is { } word) words.Add(new(word.Text, word.Place));
        }
        return words.ToImmutable();
    }

    /// <summary>One word, or the words of a list.</summary>
    public ImmutableArray<Named> OneOrMore(string key) => Node(key) is YamlScalar ? Text(key) is { } one ? [one] : [] : Words(key);

    /// <summary>The permanent keys of a list.</summary>
    public ImmutableArray<Named> Keys(string key) => [.. Words(key).Where(IsKey)];

    /// <summary>The names and maps of a map of maps.</summary>
    public IEnumerable<(Named Name, MapReader Map)> NamedMaps(string key, string kind)
    {
        if (Node(key) is null or YamlScalar { Text: "" } || Map(key, "") is not { } outer) yield break;
        outer.Abandon();
        foreach ((YamlScalar name, YamlNode value) in outer._map.Entries)
        {
            if (!KeyPattern().IsMatch(name.Text))
                _context.Stop("text.bad-key", name.Place, $"'{TextContext.Shown(name.Text)}' cannot be a name here.", "Use a letter followed by up to 23 letters, digits or hyphens.");
            else if (value is YamlMap map) yield return (new(name.Text, name.Place), new(_context, map, kind));
            else _context.Stop("text.wanted-map", value.Place, $"'{name.Text}' wants keys with values.", "Write them below it, indented, or as {key: value}.");
        }
    }

    /// <summary>A key that has to be there is not.</summary>
    public void Missing(string key, string example, string code = "text.missing", string? words = null) =>
        _missing.Add((key, new(code, Severity.Stop, "", words ?? $"'{key}' is missing here.", _context.IsTyped ? $"Fill in “{key}”, such as {example}." : $"Add '{key}: {example}'.", _map.Place)));

    /// <summary>Names every key that nobody asked for, with the nearest known one, and every key that is missing.</summary>
    public void Close()
    {
        if (_isAbandoned) return;
        _context.Learn(_kind, _known);
        var guessed = new HashSet<string>(StringComparer.Ordinal);
        foreach ((YamlScalar key, YamlNode _) in _map.Entries)
        {
            if (_context.HasMore) return;
            if (_known.Contains(key.Text, StringComparer.Ordinal) || _told.Contains(key.Text)) continue;
            // A key that is missing is the likelier one to have been meant.
            string? guess = NearestWord.Of(key.Text, [.. _missing.Select(m => m.Key).Where(k => !guessed.Contains(k)), .. _known]);
            if (guess is not null) guessed.Add(guess);
            string near = guess is null ? "" : $"Did you mean '{guess}'? ";
            _context.Stop("text.unknown-key", key.Place, $"'{TextContext.Shown(key.Text)}' is not known here.", $"{near}Known here: {string.Join(", ", _known)}.");
        }
        foreach ((string key, Finding finding) in _missing)
            if (!guessed.Contains(key)) _context.Add(finding);
    }

    /// <summary>Whether something may be called so in a text.</summary>
    public static bool IsName(string name) => KeyPattern().IsMatch(name);

    private void Know(string key)
    {
        if (!_known.Contains(key, StringComparer.Ordinal)) _known.Add(key);
    }

    [GeneratedRegex(@"^[A-Za-z][A-Za-z0-9\-]{0,23}\z")]
    private static partial Regex KeyPattern();
}
