using System.Collections.Immutable;
using System.Globalization;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Shop.Texts;

/// <content>Lengths, numbers, money and words of a choice.</content>
internal sealed partial class MapReader
{
    // A step of more than an inch is a slip of the pen: common practice, no source.
    private static readonly Length s_coarsestGrid = Core.Measures.Length.FromInches(1);

    /// <summary>A length, or null.</summary>
    /// <param name="key">Its key.</param>
    /// <param name="mayBeZero">Whether nothing is a length here.</param>
    /// <param name="most">The most that is believed; null for 30 m.</param>
    public Given? Length(string key, bool mayBeZero = false, Length? most = null) =>
        Scalar(key, "text.wanted-length", "a length", LongestWord * 2) is { } scalar ? LengthOf(scalar, 0, scalar.Text.Length, key, mayBeZero, most) : null;

    /// <summary>A length that must be there.</summary>
    public Given RequiredLength(string key, string example, bool mayBeZero = false, Length? most = null)
    {
        if (Length(key, mayBeZero, most) is { } given) return given;
        if (!IsThere(key)) Missing(key, example);
        return new(Core.Measures.Length.FromMillimetres(1), PlaceOf(key));
    }

    /// <summary>The lengths of a list, or one length without a list.</summary>
    public ImmutableArray<ExactLength> Lengths(string key) => [.. Givens(key).Select(g => g.Value)];

    /// <summary>The lengths of a list, or one length without a list, each with its place.</summary>
    public ImmutableArray<Given> Givens(string key)
    {
        IEnumerable<YamlNode> items = Node(key) switch
        {
            null => [],
            YamlList list => list.Items,
            { } one => [one],
        };
        var lengths = ImmutableArray.CreateBuilder<Given>();
        foreach (YamlNode item in items)
        {
            if (item is not YamlScalar { Text.Length: > 0 } scalar)
                _context.Stop("text.wanted-length", item.Place, $"'{key}' wants lengths.", $"{_context.Write(key, "[23/32 in]", "lengths apart by commas, such as 23/32 in")}.");
            else if (OneLine(scalar, key, LongestWord * 2) is not null && LengthOf(scalar, 0, scalar.Text.Length, key, false, null) is { } given) lengths.Add(given);
        }
        return lengths.ToImmutable();
    }

    /// <summary>A length, an equal share (not there), so many parts of the shares, or the word <c>rest</c>.</summary>
    public ShareOfWhole Share(string key)
    {
        if (Scalar(key, "text.wanted-length", "a length", LongestWord * 2) is not { } scalar) return ShareOfWhole.Equal with { Place = _map.Place };
        if (scalar.Text == "rest") return new(null, true, scalar.Place);
        if (scalar.Text.Split(' ') is [var number, "part" or "parts"])
        {
            if (int.TryParse(number, NumberStyles.None, CultureInfo.InvariantCulture, out int parts) && parts is >= 1 and <= 1000) return new(null, false, scalar.Place) { Parts = parts };
            _context.Stop("text.wanted-parts", scalar.Place, $"'{scalar.Text}' is no share: '{key}' wants 1 to 1000 parts.", $"{_context.Write(key, "2 parts")}, and '1 part' or nothing for the others.");
            return new(null, false, scalar.Place);
        }
        if (NearestWord.Of(scalar.Text, ["rest"]) is not null)
        {
            _context.Stop("text.unknown-word", scalar.Place, $"'{scalar.Text}' is not known for '{key}'.", "Did you mean 'rest'? Write a length or rest, or leave it out for an equal share.");
            return new(null, false, scalar.Place);
        }
        return new(LengthOf(scalar, 0, scalar.Text.Length, key, false, null)?.Value, false, scalar.Place);
    }

    /// <summary>One of some words, or a fallback.</summary>
    public T OneOf<T>(string key, T fallback, params (string Word, T Value)[] words)
    {
        if (Text(key) is not { } text) return fallback;
        foreach ((string word, T value) in words)
            if (word == text.Text) return value;
        string list = string.Join(", ", words.Select(w => w.Word));
        string near = NearestWord.Of(text.Text, words.Select(w => w.Word)) is { } guess ? $"Did you mean '{guess}'? " : "";
        _context.Stop("text.unknown-word", text.Place, $"'{TextContext.Shown(text.Text)}' is not known for '{key}'.", $"{near}Use one of: {list}.");
        return fallback;
    }

    /// <summary>Some of some words: one, or a list; each once.</summary>
    public ImmutableArray<T> SomeOf<T>(string key, params (string Word, T Value)[] words)
    {
        var some = ImmutableArray.CreateBuilder<T>();
        foreach (Named text in OneOrMore(key))
        {
            if (words.FirstOrDefault(w => w.Word == text.Text) is { Word: not null } found)
            {
                if (!some.Contains(found.Value)) some.Add(found.Value);
                continue;
            }
            string near = NearestWord.Of(text.Text, words.Select(w => w.Word)) is { } guess ? $"Did you mean '{guess}'? " : "";
            _context.Stop("text.unknown-word", text.Place, $"'{TextContext.Shown(text.Text)}' is not known for '{key}'.", $"{near}Use one or more of: {string.Join(", ", words.Select(w => w.Word))}.");
        }
        return some.ToImmutable();
    }

    /// <summary>Yes or no, also as true or false, which some editors make of it.</summary>
    public bool YesNo(string key, bool fallback)
    {
        if (Text(key) is not { } text) return fallback;
        if (text.Text is "yes" or "no" or "true" or "false") return text.Text is "yes" or "true";
        return OneOf(key, fallback, ("yes", true), ("no", false));
    }

    /// <summary>The unit of bare numbers, which the text has to name.</summary>
    public LengthUnit Unit(string key)
    {
        if (!Has(key)) Missing(key, "in");
        return OneOf(key, LengthUnit.Inch, ("in", LengthUnit.Inch), ("mm", LengthUnit.Millimetre));
    }

    /// <summary>A whole number within limits.</summary>
    public int Whole(string key, int fallback, int least, int most)
    {
        if (Scalar(key, "text.wanted-number", "a whole number", LongestWord) is not { } text) return fallback;
        if (int.TryParse(text.Text, NumberStyles.None, CultureInfo.InvariantCulture, out int value) && value >= least && value <= most) return value;
        _context.Stop("text.wanted-number", text.Place, $"'{TextContext.Shown(text.Text)}' is not a whole number from {least} to {most}.", $"{_context.Write(key, $"{Math.Max(least, 1)}", $"one, such as {Math.Max(least, 1)}")}.");
        return fallback;
    }

    /// <summary>An amount of money, or null.</summary>
    public Money? Price(string key)
    {
        if (Scalar(key, "text.wanted-price", "an amount", LongestWord) is not { } text) return null;
        if (decimal.TryParse(text.Text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out decimal value) && value is >= 0 and <= 1_000_000) return new(value);
        _context.Stop("text.wanted-price", text.Place, $"'{TextContext.Shown(text.Text)}' is not an amount from 0 to 1000000.", $"{_context.Write(key, "62.50", "an amount such as 62.50")}, without the currency.");
        return null;
    }

    /// <summary>Two lengths as <c>96 x 48</c>, or null.</summary>
    /// <param name="key">Its key.</param>
    /// <param name="order">Which of the two comes first.</param>
    /// <param name="example">Two such lengths.</param>
    public (Given First, Given Second)? Size(string key, string order = "along the grain first", string example = "96 x 48")
    {
        if (Scalar(key, "text.wanted-size", "two lengths", LongestWord * 2) is not { } scalar) return null;
        int x = scalar.Text.AsSpan().IndexOfAny('x', 'X', '×');
        if (x < 0 || scalar.Text.AsSpan(x + 1).IndexOfAny('x', 'X', '×') >= 0)
        {
            _context.Stop("text.wanted-size", scalar.Place, $"'{TextContext.Shown(scalar.Text)}' is not a size.", $"Write two lengths such as {example}, {order}.");
            return null;
        }
        // Both halves are looked at, so that two mistakes are told at once.
        Given? first = LengthOf(scalar, 0, x, key, false, null), second = LengthOf(scalar, x + 1, scalar.Text.Length, key, false, null);
        return first is { } a && second is { } b ? (a, b) : null;
    }

    /// <summary>A grid, or null. The step has to be one that a tape or a scale shows.</summary>
    /// <param name="key">Its key.</param>
    /// <param name="bare">The unit of a bare number.</param>
    public Grid? Grid(string key, LengthUnit bare)
    {
        (LengthUnit unit, _context.Unit) = (_context.Unit, bare);
        Given? step = Length(key, most: s_coarsestGrid);
        _context.Unit = unit;
        if (step is not { } given) return null;
        if (given.Value.IsWholeTicks) return Core.Measures.Grid.FromStep(given.Value.ToLength());
        _context.Stop("text.bad-grid", given.Place, $"Nothing can be set to steps of {given.Value}.", "Use a step such as 1/32 in, 1/64 in, 0.5 mm or 1 mm.");
        return null;
    }

    private Given? LengthOf(YamlScalar scalar, int from, int to, string key, bool mayBeZero, Length? most)
    {
        string text = scalar.Text[from..to];
        ParseResult<ExactLength> read = LengthText.Parse(text, _context.Unit);
        if (!read.IsRead)
        {
            TextFault fault = read.Fault!;
            _context.Stop(fault.Code, scalar.PlaceAt(from + fault.Position), _context.IsTyped ? fault.Words : $"{key}: {fault.Words}", fault.Remedy);
            return null;
        }
        ExactLength value = read.Value;
        // A length that means the same in inches and in millimetres names its unit.
        if (_context.MustNameUnit && LengthText.Parse(text, LengthUnit.Millimetre) is { IsRead: true } metric && metric.Value != value)
        {
            _context.Stop("text.no-unit", scalar.PlaceAt(from), $"'{TextContext.Shown(text.Trim())}' does not name its unit.", "Write a length with its unit, such as 23/32 in or 18.2 mm.");
            return null;
        }
        if (BelievedLength.Fault(value, text, _context.Unit, key, mayBeZero, most) is not { } absurd) return new(value, scalar.PlaceAt(from));
        _context.Stop(absurd.Code, scalar.PlaceAt(from), absurd.Words, absurd.Remedy);
        return null;
    }
}
