using System.Collections.Immutable;
using System.Text;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Workings;

namespace Setout.Shop.Texts;

/// <summary>What all readers of one text share: the unit of bare numbers, the findings so far, and the keys that each kind of map knows.</summary>
internal sealed class TextContext(TextLimits? limits = null)
{
    /// <summary>The longest size that is believed: 30 m.</summary>
    public static readonly Length LongestSize = Length.FromMillimetres(30_000);

    /// <summary>The shortest size that is believed, where it may not be nothing: 0.001 mm.</summary>
    public static readonly Length ShortestSize = Length.FromTicks(Length.TicksPerMillimetre / 1000);

    private readonly int _most = (limits ?? TextLimits.Usual).Findings;
    private readonly List<Finding> _findings = [];
    private readonly List<MapReader> _readers = [];

    /// <summary>True when there was more to tell than the limit: nobody has to look for more.</summary>
    public bool HasMore { get; private set; }

    /// <summary>The unit of bare numbers.</summary>
    public LengthUnit Unit { get; set; } = LengthUnit.Inch;

    /// <summary>True where every length has to name its unit, as in a log.</summary>
    public bool MustNameUnit { get; init; }

    /// <summary>True where what is read was typed into the fields of a form: then nobody is told how it would be written into a text.</summary>
    public bool IsTyped { get; init; }

    /// <summary>Who is told: see <see cref="IsTyped"/>.</summary>
    public Hand Hand => IsTyped ? Hand.Pages : Hand.Commands;

    /// <summary>How something is written right.</summary>
    /// <param name="key">Its key.</param>
    /// <param name="example">A value that may stand there.</param>
    /// <param name="typed">What is typed into a field, in words; null for the example alone.</param>
    public string Write(string key, string example, string? typed = null) => IsTyped ? $"Type {typed ?? example}" : $"Write '{key}: {example}'";

    /// <summary>The keys asked for, by the kind of map: what the published schemas have to say too.</summary>
    public SortedDictionary<string, SortedSet<string>> Known { get; } = new(StringComparer.Ordinal);

    public void Learn(string kind, IEnumerable<string> keys)
    {
        if (!Known.TryGetValue(kind, out SortedSet<string>? known)) Known[kind] = known = new(StringComparer.Ordinal);
        known.UnionWith(keys);
    }

    public void Stop(string code, Place place, string words, string remedy, string key = "") => Add(new(code, Severity.Stop, key, words, remedy, place));

    public void Add(Finding finding)
    {
        // What stands in openings that are counted is read once for each of them.
        if (_findings.Contains(finding)) return;
        if (_findings.Count < _most) _findings.Add(finding);
        else HasMore = true;
    }

    /// <summary>Every reader of a map is closed at the end, so that none can be forgotten.</summary>
    public void Opened(MapReader reader) => _readers.Add(reader);

    /// <summary>Closes all readers and gives the findings in the order of the text.</summary>
    public ImmutableArray<Finding> Finish()
    {
        foreach (MapReader reader in _readers)
        {
            // Naming the nearest key takes time: a text that is wrong everywhere is not looked at to its end.
            if (HasMore) break;
            reader.Close();
        }
        var ordered = _findings.OrderBy(f => f.Place.Line).ThenBy(f => f.Place.Column).ToList();
        if (HasMore)
            ordered.Add(new("text.too-many-findings", Severity.Stop, "", $"There is more that is wrong than the {_most} findings told.", "Mend these first.", ordered[^1].Place));
        return [.. ordered];
    }

    /// <summary>A word of the text made fit to be repeated: short, and on one line.</summary>
    public static string Shown(string text)
    {
        var shown = new StringBuilder();
        foreach (Rune rune in text.EnumerateRunes())
        {
            if (shown.Length >= 60) return shown.Append("...").ToString();
            if (rune.Value is '\n' or '\t' or '\r' or 0x2028 or 0x2029) shown.Append(' ');
            else shown.Append(rune);
        }
        return shown.ToString();
    }
}

/// <summary>One of the three texts: what it is called and the key that begins it.</summary>
/// <param name="Words">For people.</param>
/// <param name="Key">The key of its version.</param>
/// <param name="Version">The version that this program reads and writes.</param>
internal sealed record TextKind(string Words, string Key, int Version)
{
    public static readonly TextKind Piece = new("a piece file", "setout", PieceText.Version);
    public static readonly TextKind Shop = new("a shop file", "setout-shop", ShopText.Version);
    public static readonly TextKind Log = new("a log", "setout-log", LogText.Version);

    private static readonly TextKind[] s_all = [Piece, Shop, Log];

    /// <summary>Reads a text of this kind: the tree, the version, then what <paramref name="read"/> makes of it.</summary>
    public TextRead<T> Read<T>(string text, TextLimits? limits, TextContext context, Func<MapReader, T> read) where T : class
    {
        TextRead<YamlNode> tree = YamlTree.Read(text, limits);
        foreach (Finding finding in tree.Findings) context.Add(finding);
        if (tree.Value is null) return new(null, context.Finish());
        if (tree.Value is not YamlMap root)
        {
            context.Stop("text.wanted-map", tree.Value.Place, $"{char.ToUpperInvariant(Words[0])}{Words[1..]} is made of keys with values.", $"Begin with '{Key}: {Version}'.");
            return new(null, context.Finish());
        }
        var top = new MapReader(context, root, Key);
        T? value = IsOurs(context, top) ? read(top) : null;
        return new(value, context.Finish());
    }

    private bool IsOurs(TextContext context, MapReader top)
    {
        if (s_all.FirstOrDefault(k => k != this && !top.Has(Key) && top.IsThere(k.Key)) is { } other)
        {
            context.Stop("text.other-kind", top.KeyPlaceOf(other.Key), $"This is {other.Words}, not {Words}.", $"Name {Words} here, which begins with '{Key}: {Version}'.");
            return top.Abandon();
        }
        if (!top.Has(Key))
        {
            top.MissingOrMistyped(Key, new("text.no-version", Severity.Stop, "", "The text does not say its version.", $"Begin with '{Key}: {Version}'.", top.Place));
            return top.Abandon();
        }
        if (top.Text(Key) is not { } said) return top.Abandon();
        if (said.Text == Version.ToString()) return true;
        bool isNumber = said.Text.Length > 0 && said.Text.All(char.IsAsciiDigit);
        bool isNewer = isNumber && said.Text.TrimStart('0') is { Length: > 0 } digits && (digits.Length > 9 || int.Parse(digits) > Version);
        context.Stop("text.version", said.Place,
            isNumber ? $"The text is of version {TextContext.Shown(said.Text)}; this program reads version {Version}." : $"'{TextContext.Shown(said.Text)}' is not a version; this program reads version {Version}.",
            isNewer ? "Use a newer program; nothing was changed." : $"Write '{Key}: {Version}'.");
        return top.Abandon();
    }
}

/// <summary>The permanent keys of one text: each stands for one thing.</summary>
internal sealed class KeyBook(TextContext context)
{
    private readonly Dictionary<string, Place> _keys = new(StringComparer.Ordinal);

    public ImmutableDictionary<string, Place> All => _keys.ToImmutableDictionary();

    public void Take(string key, Place place)
    {
        if (key.Length == 0) return;
        if (!_keys.TryAdd(key, place))
            context.Stop("text.key-taken", place, $"The key '{key}' is taken in line {_keys[key].Line}.", "Each key stands for one thing: choose another.", key);
    }
}
