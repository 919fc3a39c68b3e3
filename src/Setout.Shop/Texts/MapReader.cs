// Over 200 lines: the one place where values are taken out of a text, each with its error.
using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Shop.Texts;

/// <summary>What all readers of one text share: the unit of bare numbers and the findings so far.</summary>
internal sealed class TextContext
{
    /// <summary>The longest size that is believed: 30 m.</summary>
    public static readonly Length LongestSize = Length.FromMillimetres(30_000);

    public LengthUnit Unit { get; set; } = LengthUnit.Inch;

    public List<Finding> Findings { get; } = [];

    public void Stop(string code, Place place, string words, string remedy, string key = "") =>
        Findings.Add(new(code, Severity.Stop, key, words, remedy, place));
}

/// <summary>Takes the values of one map by name, notes what is wrong with its place, and at the end names what nobody asked for.</summary>
internal sealed partial class MapReader
{
    private readonly TextContext _context;
    private readonly YamlMap _map;
    private readonly Dictionary<string, (YamlScalar Key, YamlNode Value)> _entries;
    private readonly List<string> _known = [];

    public MapReader(TextContext context, YamlMap map)
    {
        _context = context;
        _map = map;
        _entries = map.Entries.ToDictionary(e => e.Key.Text, e => e, StringComparer.Ordinal);
    }

    public Place Place => _map.Place;

    /// <summary>Where the value of a key stands, or the map itself.</summary>
    public Place PlaceOf(string key) => _entries.TryGetValue(key, out var entry) ? entry.Value.Place : _map.Place;

    public bool Has(string key) => _entries.ContainsKey(key);

    /// <summary>A node, or null when the key is not there.</summary>
    public YamlNode? Node(string key)
    {
        _known.Add(key);
        return _entries.TryGetValue(key, out var entry) ? entry.Value : null;
    }

    /// <summary>A text, or null.</summary>
    public Named? Text(string key)
    {
        switch (Node(key))
        {
            case null: return null;
            case YamlScalar { Text.Length: > 0 and <= 500 } scalar: return new(scalar.Text, scalar.Place);
            case YamlScalar { Text.Length: > 500 } scalar:
                _context.Stop("text.too-long", scalar.Place, $"'{key}' is longer than 500 letters.", "Shorten it.");
                return null;
            case { } other:
                _context.Stop("text.wanted-word", other.Place, $"'{key}' wants a word.", $"Write '{key}: word'.");
                return null;
        }
    }

    /// <summary>A text that must be there.</summary>
    public Named Required(string key, string example)
    {
        if (Text(key) is { } text) return text;
        if (!Has(key)) Missing(key, example);
        return new("", _map.Place);
    }

    /// <summary>A permanent key.</summary>
    public string Key(string key)
    {
        Named text = Required(key, "K1");
        if (text.Text.Length > 0 && !KeyPattern().IsMatch(text.Text))
        {
            _context.Stop("text.bad-key", text.Place, $"'{text.Text}' cannot be a key.", "A key is a letter followed by up to 23 letters, digits or hyphens, such as L3.");
            return "";
        }
        return text.Text;
    }

    /// <summary>A length, or null.</summary>
    public Given? Length(string key, bool mayBeZero = false)
    {
        if (Text(key) is not { } text) return null;
        return LengthOf(text, key, mayBeZero);
    }

    /// <summary>A length that must be there.</summary>
    public Given RequiredLength(string key, string example, bool mayBeZero = false)
    {
        if (Length(key, mayBeZero) is { } given) return given;
        if (!Has(key)) Missing(key, example);
        return new(Core.Measures.Length.FromMillimetres(1), PlaceOf(key));
    }

    /// <summary>A length, an equal share (not there) or the word <c>rest</c>.</summary>
    public ShareOfWhole Share(string key)
    {
        if (Text(key) is not { } text) return ShareOfWhole.Equal with { Place = _map.Place };
        if (text.Text == "rest") return new(null, true, text.Place);
        return LengthOf(text, key, false) is { } given ? new(given.Value, false, given.Place) : new(null, false, text.Place);
    }

    /// <summary>One of some words, or a fallback.</summary>
    public T OneOf<T>(string key, T fallback, params (string Word, T Value)[] words)
    {
        if (Text(key) is not { } text) return fallback;
        foreach ((string word, T value) in words)
            if (word == text.Text) return value;
        string list = string.Join(", ", words.Select(w => w.Word));
        string near = NearestWord.Of(text.Text, words.Select(w => w.Word)) is { } guess ? $"Did you mean '{guess}'? " : "";
        _context.Stop("text.unknown-word", text.Place, $"'{text.Text}' is not known for '{key}'.", $"{near}Use one of: {list}.");
        return fallback;
    }

    /// <summary>A whole number within limits.</summary>
    public int Whole(string key, int fallback, int least, int most)
    {
        if (Text(key) is not { } text) return fallback;
        if (int.TryParse(text.Text, NumberStyles.Integer, CultureInfo.InvariantCulture, out int value) && value >= least && value <= most) return value;
        _context.Stop("text.wanted-number", text.Place, $"'{text.Text}' is not a whole number from {least} to {most}.", $"Write '{key}: {Math.Max(least, 1)}'.");
        return fallback;
    }

    /// <summary>An amount of money, or null.</summary>
    public Money? Price(string key)
    {
        if (Text(key) is not { } text) return null;
        if (decimal.TryParse(text.Text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out decimal value) && value is >= 0 and <= 1_000_000) return new(value);
        _context.Stop("text.wanted-price", text.Place, $"'{text.Text}' is not an amount from 0 to 1000000.", $"Write '{key}: 62.50', without the currency.");
        return null;
    }

    /// <summary>Two lengths as <c>96 x 48</c>, or null.</summary>
    public (Given First, Given Second)? Size(string key)
    {
        if (Text(key) is not { } text) return null;
        string[] halves = text.Text.Split('x', 'X', '×');
        if (halves.Length != 2)
        {
            _context.Stop("text.wanted-size", text.Place, $"'{text.Text}' is not a size.", "Write two lengths such as 96 x 48, along the grain first.");
            return null;
        }
        return LengthOf(new(halves[0].Trim(), text.Place), key, false) is { } a && LengthOf(new(halves[1].Trim(), text.Place), key, false) is { } b ? (a, b) : null;
    }

    /// <summary>The items of a list, each a map; an empty list when the key is not there.</summary>
    public IEnumerable<MapReader> Maps(string key)
    {
        switch (Node(key))
        {
            case null: yield break;
            case YamlList list:
                foreach (YamlNode item in list.Items)
                {
                    if (item is YamlMap map) yield return new(_context, map);
                    else _context.Stop("text.wanted-map", item.Place, $"Each item of '{key}' wants keys with values.", "Write for example '- key: value'.");
                }
                break;
            case YamlScalar { Text: "" }: yield break;
            case { } other:
                _context.Stop("text.wanted-list", other.Place, $"'{key}' wants a list.", "Write one item a line, each begun with '- '.");
                break;
        }
    }

    /// <summary>The map under a key, or null.</summary>
    public MapReader? Map(string key)
    {
        switch (Node(key))
        {
            case null: return null;
            case YamlMap map: return new(_context, map);
            case { } other:
                _context.Stop("text.wanted-map", other.Place, $"'{key}' wants keys with values.", "Write them below it, indented.");
                return null;
        }
    }

    /// <summary>The words of a list.</summary>
    public ImmutableArray<Named> Words(string key)
    {
        switch (Node(key))
        {
            case null: return [];
            case YamlList list:
                var words = ImmutableArray.CreateBuilder<Named>();
                foreach (YamlNode item in list.Items)
                {
                    if (item is YamlScalar { Text.Length: > 0 and <= 500 } scalar) words.Add(new(scalar.Text, scalar.Place));
                    else _context.Stop("text.wanted-word", item.Place, $"Each item of '{key}' wants a word.", $"Write '{key}: [a, b]'.");
                }
                return words.ToImmutable();
            case { } other:
                _context.Stop("text.wanted-list", other.Place, $"'{key}' wants a list.", $"Write '{key}: [a, b]'.");
                return [];
        }
    }

    /// <summary>The names and maps of a map of maps.</summary>
    public IEnumerable<(Named Name, MapReader Map)> NamedMaps(string key)
    {
        if (Map(key) is not { } outer) yield break;
        foreach ((YamlScalar name, YamlNode value) in outer._map.Entries)
        {
            if (!KeyPattern().IsMatch(name.Text))
                _context.Stop("text.bad-key", name.Place, $"'{name.Text}' cannot be a name here.", "Use a letter followed by up to 23 letters, digits or hyphens.");
            else if (value is YamlMap map) yield return (new(name.Text, name.Place), new(_context, map));
            else _context.Stop("text.wanted-map", value.Place, $"'{name.Text}' wants keys with values.", "Write them below it, indented, or as {key: value}.");
        }
    }

    /// <summary>Names every key that nobody asked for, with the nearest known one.</summary>
    public void Done()
    {
        foreach ((YamlScalar key, YamlNode _) in _map.Entries.Where(e => !_known.Contains(e.Key.Text, StringComparer.Ordinal)))
        {
            string near = NearestWord.Of(key.Text, _known) is { } guess ? $"Did you mean '{guess}'? " : "";
            _context.Stop("text.unknown-key", key.Place, $"'{Shown(key.Text)}' is not known here.", $"{near}Known here: {string.Join(", ", _known.Distinct())}.");
        }
    }

    public void Missing(string key, string example) =>
        _context.Stop("text.missing", _map.Place, $"'{key}' is missing here.", $"Add '{key}: {example}'.");

    private Given? LengthOf(Named text, string key, bool mayBeZero)
    {
        ParseResult<ExactLength> read = LengthText.Parse(text.Text, _context.Unit);
        if (!read.IsRead)
        {
            TextFault fault = read.Fault!;
            _context.Stop(fault.Code, text.Place with { Column = text.Place.Column + fault.Position }, $"{key}: {fault.Words}", fault.Remedy);
            return null;
        }
        if (read.Value.Sign < 0 || (read.Value.Sign == 0 && !mayBeZero) || read.Value > TextContext.LongestSize)
        {
            _context.Stop("text.absurd-size", text.Place, $"'{Shown(text.Text)}' cannot be the {key}.",
                $"Write a length {(mayBeZero ? "from 0" : "above 0")} to 30 m.");
            return null;
        }
        return new(read.Value, text.Place);
    }

    private static string Shown(string text) => text.Length > 60 ? text[..60] + "..." : text;

    [GeneratedRegex(@"^[A-Za-z][A-Za-z0-9\-]{0,23}\z")]
    private static partial Regex KeyPattern();
}
