using System.Globalization;

namespace Setout.Core.Measures.Text;

/// <summary>What a token of a length text is.</summary>
internal enum LengthToken { Number, VulgarFraction, Slash, Plus, Minus, Times, Divide, Open, Close, Foot, Inch, Metric, End }

/// <summary>One token with its place; <see cref="SpaceBefore"/> tells <c>23-1/4</c> from <c>23 - 1/4</c>.</summary>
internal readonly record struct ScannedToken(LengthToken Kind, int Position, bool SpaceBefore, Rational Value, bool IsWholeNumber);

/// <summary>Cuts a length text into tokens. Knows typographic and plain marks, vulgar fractions and small digits.</summary>
internal static class LengthScanner
{
    private const string Vulgar = "¼½¾⅐⅑⅒⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞";
    private static readonly (int, int)[] s_vulgar =
        [(1, 4), (1, 2), (3, 4), (1, 7), (1, 9), (1, 10), (1, 3), (2, 3), (1, 5), (2, 5), (3, 5), (4, 5), (1, 6), (5, 6), (1, 8), (3, 8), (5, 8), (7, 8)];
    private const string Superscripts = "⁰¹²³⁴⁵⁶⁷⁸⁹";
    private const string Subscripts = "₀₁₂₃₄₅₆₇₈₉";

    private static readonly Dictionary<string, (LengthToken Kind, Rational Millimetres)> s_words = new(StringComparer.OrdinalIgnoreCase)
    {
        ["in"] = (LengthToken.Inch, default),
        ["inch"] = (LengthToken.Inch, default),
        ["inches"] = (LengthToken.Inch, default),
        ["ft"] = (LengthToken.Foot, default),
        ["foot"] = (LengthToken.Foot, default),
        ["feet"] = (LengthToken.Foot, default),
        ["mm"] = (LengthToken.Metric, 1),
        ["cm"] = (LengthToken.Metric, 10),
        ["m"] = (LengthToken.Metric, 1000),
        ["x"] = (LengthToken.Times, default),
    };

    public static ParseResult<List<ScannedToken>> Scan(string text)
    {
        var tokens = new List<ScannedToken>();
        int i = 0;
        bool space = false;
        while (i < text.Length)
        {
            char c = text[i];
            if (char.IsWhiteSpace(c) || c is '\u00A0' or '\u202F' or '\u2009') { space = true; i++; continue; }
            int at = i;
            if (DigitOf(c) >= 0 || (c is '.' or ',' && i + 1 < text.Length && DigitOf(text[i + 1]) >= 0))
            {
                ParseResult<(Rational Value, bool Whole, int End)> number = Number(text, i);
                if (!number.IsRead) return ParseResult<List<ScannedToken>>.Failed(number.Fault!);
                tokens.Add(new(LengthToken.Number, at, space, number.Value.Value, number.Value.Whole));
                i = number.Value.End;
            }
            else if (Vulgar.IndexOf(c) is >= 0 and int v)
            {
                tokens.Add(new(LengthToken.VulgarFraction, at, space, Rational.Of(s_vulgar[v].Item1, s_vulgar[v].Item2), false));
                i++;
            }
            else if (char.IsAsciiLetter(c))
            {
                while (i < text.Length && char.IsAsciiLetter(text[i])) i++;
                string word = text[at..i];
                if (!s_words.TryGetValue(word, out (LengthToken Kind, Rational Millimetres) known))
                    return ParseResult<List<ScannedToken>>.Failed("length.unknown-word", at, $"'{Shown(word)}' is not a unit.", "Use in, ft, mm, cm or m.");
                tokens.Add(new(known.Kind, at, space, known.Millimetres, false));
            }
            else
            {
                bool twoMarks = c is '\'' or '’' && i + 1 < text.Length && text[i + 1] == c;
                LengthToken? kind = c switch
                {
                    '/' or '\u2044' or '\u2215' => LengthToken.Slash,
                    '+' => LengthToken.Plus,
                    '-' or '\u2212' or '\u2013' or '\u2010' or '\u2011' => LengthToken.Minus,
                    '*' or '×' or '·' => LengthToken.Times,
                    '÷' => LengthToken.Divide,
                    '(' => LengthToken.Open,
                    ')' => LengthToken.Close,
                    '"' or '″' or '”' or '“' => LengthToken.Inch,
                    '\'' or '′' or '’' or '‘' => twoMarks ? LengthToken.Inch : LengthToken.Foot,
                    _ => null,
                };
                if (kind is null)
                    return ParseResult<List<ScannedToken>>.Failed("length.unknown-sign", at, $"'{Shown(c.ToString())}' does not belong in a length.", "Write for example 23 1/4, 1' 11 1/4\", 590 mm or 96/3 - 3/4.");
                tokens.Add(new(kind.Value, at, space, default, false));
                i += twoMarks ? 2 : 1;
            }
            space = false;
        }
        tokens.Add(new(LengthToken.End, text.Length, space, default, false));
        return ParseResult<List<ScannedToken>>.Of(tokens);
    }

    private static string Shown(string text) => char.IsControl(text[0]) ? $"\\u{(int)text[0]:x4}" : text;

    private static int DigitOf(char c) =>
        char.IsAsciiDigit(c) ? c - '0' : Superscripts.IndexOf(c) is >= 0 and int s ? s : Subscripts.IndexOf(c);

    private static ParseResult<(Rational, bool, int)> Number(string text, int start)
    {
        int i = start, marks = 0, digitsBefore = 0, digitsAfter = 0;
        char mark = default;
        Rational value = 0;
        Rational place = 1;
        // Small digits only make fractions (23¹⁄₁₆): a change of digit style begins a new number.
        int style = Style(text[start]);
        for (; i < text.Length; i++)
        {
            char c = text[i];
            if (DigitOf(c) >= 0)
            {
                if (Style(c) != style && marks == 0) break;
                if (digitsBefore + digitsAfter >= 15)
                    return ParseResult<(Rational, bool, int)>.Failed("length.too-many-digits", start, "A number of more than 15 digits is not a length.", "Shorten it.");
                if (marks == 0) { value = (value * 10) + DigitOf(c); digitsBefore++; }
                else { place /= 10; value += place * DigitOf(c); digitsAfter++; }
            }
            else if (c is '.' or ',' && i + 1 < text.Length && char.IsAsciiDigit(text[i + 1]) && style <= 0)
            {
                if (++marks > 1)
                    return ParseResult<(Rational, bool, int)>.Failed("length.thousands", i, "A second decimal mark: thousands marks are not read.", "Write the number without marks for thousands, such as 1250 or 1250.5.");
                mark = c;
            }
            else break;
        }
        if (mark == ',' && digitsAfter == 3 && digitsBefore is >= 1 and <= 3 && text[start] != '0')
        {
            string before = text[start..(start + digitsBefore)], after = text[(start + digitsBefore + 1)..i];
            return ParseResult<(Rational, bool, int)>.Failed("length.two-readings", start + digitsBefore,
                $"{text[start..i]} could be {before}.{after} or {before}{after}.",
                string.Create(CultureInfo.InvariantCulture, $"Write {before}.{after} for the decimal or {before}{after} for the thousands."));
        }
        return ParseResult<(Rational, bool, int)>.Of((value, marks == 0, i));
    }

    private static int Style(char c) => char.IsAsciiDigit(c) ? 0 : Superscripts.Contains(c) ? 1 : Subscripts.Contains(c) ? 2 : -1;
}
