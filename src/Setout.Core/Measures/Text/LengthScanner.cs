using System.Globalization;
using System.Text;

namespace Setout.Core.Measures.Text;

/// <summary>What a token of a length text is.</summary>
internal enum LengthToken { Number, VulgarFraction, Slash, Plus, Minus, Times, Divide, Open, Close, Foot, Inch, Metric, End }

/// <summary>One token with its place; <see cref="SpaceBefore"/> tells <c>23-1/4</c> from <c>23 - 1/4</c>.</summary>
internal readonly record struct ScannedToken(LengthToken Kind, int Position, bool SpaceBefore, Rational Value, bool IsWholeNumber);

/// <summary>Cuts a length text into tokens. Knows typographic and plain marks, vulgar fractions and small digits.</summary>
internal static class LengthScanner
{
    private const int MostDigits = 15;
    private const string Vulgar = "¼½¾⅐⅑⅒⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞";
    private static readonly (int Above, int Below)[] s_vulgar =
        [(1, 4), (1, 2), (3, 4), (1, 7), (1, 9), (1, 10), (1, 3), (2, 3), (1, 5), (2, 5), (3, 5), (4, 5), (1, 6), (5, 6), (1, 8), (3, 8), (5, 8), (7, 8)];

    private const string FullSize = "0123456789";
    private const string Raised = "⁰¹²³⁴⁵⁶⁷⁸⁹";
    private const string Lowered = "₀₁₂₃₄₅₆₇₈₉";

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

    public static ParseResult<List<ScannedToken>> Scan(string text, LengthUnit bare)
    {
        var tokens = new List<ScannedToken>();
        int i = 0;
        bool space = false;
        while (i < text.Length)
        {
            char c = text[i];
            if (char.IsWhiteSpace(c)) { space = true; i++; continue; }
            int at = i;
            if (DigitsOf(c) is { } digits)
            {
                ParseResult<(Rational Value, bool Whole, int End)> number = Number(text, i, digits);
                if (!number.IsRead) return ParseResult<List<ScannedToken>>.Failed(number.Fault!);
                i = number.Value.End;
                // Small digits only make fractions (23¹⁄₁₆): raised ones stand before the slash, lowered ones after it.
                bool outOfPlace = digits == Raised ? i == text.Length || !IsSlash(text[i])
                    : digits == Lowered && (tokens.Count == 0 || tokens[^1].Kind != LengthToken.Slash);
                if (outOfPlace) return Unknown(text, at, bare);
                tokens.Add(new(LengthToken.Number, at, space, number.Value.Value, number.Value.Whole));
            }
            else if (StartsDecimals(text, i))
            {
                ParseResult<(Rational Value, bool Whole, int End)> number = Number(text, i, FullSize);
                if (!number.IsRead) return ParseResult<List<ScannedToken>>.Failed(number.Fault!);
                i = number.Value.End;
                tokens.Add(new(LengthToken.Number, at, space, number.Value.Value, false));
            }
            else if (Vulgar.IndexOf(c) is >= 0 and int v)
            {
                tokens.Add(new(LengthToken.VulgarFraction, at, space, Rational.Of(s_vulgar[v].Above, s_vulgar[v].Below), false));
                i++;
            }
            else if (char.IsAsciiLetter(c))
            {
                while (i < text.Length && char.IsAsciiLetter(text[i])) i++;
                string word = text[at..i];
                if (!s_words.TryGetValue(word, out (LengthToken Kind, Rational Millimetres) known))
                    return ParseResult<List<ScannedToken>>.Failed(LengthWords.UnknownWord(text, at, word, bare));
                // The full stop of an abbreviation: in. and ft.
                if (known.Kind is LengthToken.Inch or LengthToken.Foot && i < text.Length && text[i] == '.' && !StartsDecimals(text, i)) i++;
                tokens.Add(new(known.Kind, at, space, known.Millimetres, false));
            }
            else
            {
                bool twoMarks = c is '\'' or '’' or '′' && i + 1 < text.Length && text[i + 1] == c;
                LengthToken? kind = c switch
                {
                    _ when IsSlash(c) => LengthToken.Slash,
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
                if (kind is null) return Unknown(text, at, bare);
                tokens.Add(new(kind.Value, at, space, default, false));
                i += twoMarks ? 2 : 1;
            }
            space = false;
        }
        tokens.Add(new(LengthToken.End, text.Length, space, default, false));
        return ParseResult<List<ScannedToken>>.Of(tokens);
    }

    private static ParseResult<List<ScannedToken>> Unknown(string text, int at, LengthUnit bare) =>
        ParseResult<List<ScannedToken>>.Failed(LengthWords.UnknownSign(at, Shown(text, at), bare));

    /// <summary>The sign as it is, or its number where showing it would print nothing, or worse, turn the line round.</summary>
    private static string Shown(string text, int at)
    {
        if (!Rune.TryGetRuneAt(text, at, out Rune rune)) return $"U+{(int)text[at]:X4}";
        return Rune.GetUnicodeCategory(rune) is UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.NonSpacingMark
            or UnicodeCategory.EnclosingMark or UnicodeCategory.PrivateUse or UnicodeCategory.OtherNotAssigned
            ? $"U+{rune.Value:X4}" : rune.ToString();
    }

    /// <summary>A stroke of any kind.</summary>
    public static bool IsSlash(char c) => c is '/' or '\u2044' or '\u2215';

    /// <summary>The ten digits that this one belongs to, or null when it is none.</summary>
    private static string? DigitsOf(char c) =>
        char.IsAsciiDigit(c) ? FullSize : Raised.Contains(c) ? Raised : Lowered.Contains(c) ? Lowered : null;

    private static bool StartsDecimals(string text, int i) =>
        text[i] is '.' or ',' && i + 1 < text.Length && char.IsAsciiDigit(text[i + 1]);

    /// <summary>Digits of one size with at most one decimal mark.</summary>
    private static ParseResult<(Rational, bool, int)> Number(string text, int start, string digits)
    {
        int i = start, mark = -1;
        long value = 0, parts = 1;
        for (; i < text.Length; i++)
        {
            if (digits.IndexOf(text[i]) is >= 0 and int digit)
            {
                if (i - start - (mark < 0 ? 0 : 1) >= MostDigits)
                    return Fault("length.too-many-digits", start, $"A number of more than {MostDigits} digits is not a length.", "Shorten it.");
                value = (value * 10) + digit;
                if (mark >= 0) parts *= 10;
            }
            else if (digits == FullSize && StartsDecimals(text, i))
            {
                if (mark >= 0)
                    return Fault("length.thousands", i, "A second decimal mark: thousands marks are not read.", "Write the number without marks for thousands, such as 1250 or 1250.5.");
                mark = i;
            }
            else break;
        }
        if (mark >= 0 && text[mark] == ',' && i - mark == 4 && mark - start is >= 1 and <= 3 && text[start] != '0')
        {
            string before = text[start..mark], after = text[(mark + 1)..i];
            return Fault("length.two-readings", mark, $"{text[start..i]} could be {before}.{after} or {before}{after}.",
                $"Write {before}.{after} for the decimal or {before}{after} for the thousands.");
        }
        return ParseResult<(Rational, bool, int)>.Of((Rational.Of(value, parts), mark < 0, i));

        static ParseResult<(Rational, bool, int)> Fault(string code, int position, string words, string remedy) =>
            ParseResult<(Rational, bool, int)>.Failed(code, position, words, remedy);
    }
}
