// Over 200 lines: one grammar, read from top to bottom (docs/lengths.md has it as a table).
namespace Setout.Core.Measures.Text;

/// <summary>
/// Reads lengths in any usual form: <c>23 1/4</c>, <c>23-1/4"</c>, <c>1' 11 1/4"</c>, <c>23.25in</c>, <c>590mm</c>, and sums such as
/// <c>96/3 - 3/4</c>. A bare number is in the unit given. Two possible readings are a fault that names both. Nothing is rounded.
/// </summary>
public static class LengthText
{
    /// <summary>The longest text that is looked at.</summary>
    public const int LongestText = 200;

    /// <summary>The most that brackets may lie inside each other.</summary>
    public const int DeepestBracket = 16;

    /// <summary>The longest length that is read, either way from zero: 10 km. What is read can be added up by the thousand and stay a <see cref="Length"/>.</summary>
    public static Length Longest { get; } = Length.FromMillimetres(10_000_000);

    /// <summary>Reads a text. Bad text is a fault in the result, never an exception.</summary>
    /// <param name="text">What was typed.</param>
    /// <param name="bare">The unit of a number that names none.</param>
    public static ParseResult<ExactLength> Parse(string text, LengthUnit bare)
    {
        if (text.Length > LongestText)
            return ParseResult<ExactLength>.Failed("length.too-long", LongestText, $"A length of more than {LongestText} signs is not read.", "Shorten it.");
        ParseResult<List<ScannedToken>> tokens = LengthScanner.Scan(text, bare);
        if (!tokens.IsRead) return ParseResult<ExactLength>.Failed(tokens.Fault!);
        try
        {
            var reader = new Reader(text, tokens.Value, bare);
            return ParseResult<ExactLength>.Of(reader.Whole());
        }
        catch (Refused refused)
        {
            return ParseResult<ExactLength>.Failed(refused.Fault);
        }
    }

    private sealed class Refused(TextFault fault) : Exception(fault.Words)
    {
        public TextFault Fault { get; } = fault;
    }

    /// <summary>A value on the way: a pure number until a unit makes it a length.</summary>
    private readonly record struct Term(Rational Value, bool IsLength, int Position);

    private sealed class Reader(string text, List<ScannedToken> tokens, LengthUnit bare)
    {
        private int _next;
        private int _depth;

        private ScannedToken Peek => tokens[_next];

        private ScannedToken Ahead(int n) => tokens[Math.Min(_next + n, tokens.Count - 1)];

        private ScannedToken Take()
        {
            ScannedToken token = Peek;
            // The end is never passed, so a look ahead always finds a token.
            if (token.Kind != LengthToken.End) _next++;
            return token;
        }

        public ExactLength Whole()
        {
            if (Peek.Kind == LengthToken.End) throw new Refused(LengthWords.Empty(bare));
            Term sum = Sum();
            if (Peek.Kind != LengthToken.End) throw new Refused(LengthWords.LeftOver(text, Peek.Position, bare));
            var length = ExactLength.FromTicks(AsLength(sum));
            if (length.Abs() > Longest)
                throw Fault("length.too-large", 0, "This is more than 10 km.", "Check the unit and the number of digits.");
            return length;
        }

        private Rational AsLength(Term term) => term.IsLength ? term.Value : term.Value * BareTicks;

        private Rational BareTicks => bare == LengthUnit.Inch ? Length.TicksPerInch : Length.TicksPerMillimetre;

        private Term Sum()
        {
            Term left = Product();
            while (Peek.Kind is LengthToken.Plus or LengthToken.Minus)
            {
                ScannedToken op = Take();
                // 23--1/4 is a slip of the finger, not a sum.
                if (Peek.Kind is LengthToken.Plus or LengthToken.Minus) throw TwoSigns();
                Term right = Product();
                // 36" - 2 reads the bare 2 in the unit of bare numbers, so a sum with a length is a length.
                bool isLength = left.IsLength || right.IsLength;
                Rational a = isLength ? AsLength(left) : left.Value, b = isLength ? AsLength(right) : right.Value;
                left = new(op.Kind == LengthToken.Plus ? a + b : a - b, isLength, left.Position);
            }
            return left;
        }

        private Term Product()
        {
            Term left = Signed();
            while (Peek.Kind is LengthToken.Times or LengthToken.Divide or LengthToken.Slash)
            {
                ScannedToken op = Take();
                Term right = op.Kind != LengthToken.Times && IsChainOfSlashes(left, op) ? new(Take().Value, false, op.Position) : Signed();
                if (op.Kind == LengthToken.Times)
                {
                    if (text[op.Position] is 'x' or 'X' or '×')
                    {
                        string both = text[left.Position..Peek.Position].Trim();
                        throw Fault("length.two-readings", op.Position, $"'{both}' could be a product or the two sides of something.",
                            "Write * for a product, or one side at a time.");
                    }
                    if (left.IsLength && right.IsLength)
                        throw Fault("length.area", op.Position, "A length times a length is an area.", "Multiply by a plain number.");
                    left = new(left.Value * right.Value, left.IsLength || right.IsLength, left.Position);
                }
                else
                {
                    if (right.IsLength)
                        throw Fault("length.ratio", op.Position, "Dividing by a length does not give a length.", "Divide by a plain number.");
                    if (right.Value.Sign == 0)
                        throw Fault("length.zero-division", right.Position, "Division by nothing.", "Divide by another number.");
                    left = new(left.Value / right.Value, left.IsLength, left.Position);
                }
            }
            return left;
        }

        /// <summary>
        /// True for the second division of <c>(96 + 4) / 3 / 7</c>, which goes from left to right; <c>96 ÷ 3/4</c> could be over the
        /// fraction or over 3 and then 4.
        /// </summary>
        private bool IsChainOfSlashes(Term left, ScannedToken division)
        {
            int n = Peek.Kind is LengthToken.Minus or LengthToken.Plus ? 1 : 0;
            ScannedToken above = Ahead(n), slash = Ahead(n + 1), below = Ahead(n + 2);
            // Small digits are a fraction whatever stands before them.
            if (FractionEnd(n) != n + 3 || !char.IsAsciiDigit(text[above.Position])) return false;
            bool tightFraction = !slash.SpaceBefore && !below.SpaceBefore;
            bool tightDivision = !division.SpaceBefore && !Peek.SpaceBefore && division.Kind == LengthToken.Slash;
            if (n == 0 && (tightDivision || !tightFraction)) return true;
            string fraction = $"{above.Value}/{below.Value}", whole = text[left.Position..Ahead(n + 3).Position].Trim();
            throw Fault("length.two-readings", division.Position,
                $"'{whole}' could be over the fraction {fraction}, or over {above.Value} and then over {below.Value}.",
                $"Write ({fraction}) for the fraction, or put the first division in brackets.");
        }

        private Term Signed()
        {
            if (Peek.Kind is LengthToken.Minus or LengthToken.Plus)
            {
                ScannedToken sign = Take();
                if (Peek.Kind is LengthToken.Minus or LengthToken.Plus) throw TwoSigns();
                Term term = Signed();
                return sign.Kind == LengthToken.Minus ? term with { Value = -term.Value } : term;
            }
            if (Peek.Kind == LengthToken.Open)
            {
                ScannedToken open = Take();
                if (++_depth > DeepestBracket) throw Fault("length.too-deep", open.Position, "Too many brackets inside each other.", "Write a simpler sum.");
                Term inner = Sum();
                if (Peek.Kind != LengthToken.Close) throw Fault("length.open-bracket", open.Position, "This bracket is not closed.", "Add the closing bracket.");
                Take();
                _depth--;
                return inner;
            }
            return Measure();
        }

        /// <summary>A number with its unit; feet may be followed by inches.</summary>
        private Term Measure()
        {
            int at = Peek.Position;
            Rational number = Mixed();
            switch (Peek.Kind)
            {
                case LengthToken.Inch:
                    Take();
                    return new(number * Length.TicksPerInch, true, at);
                case LengthToken.Metric:
                    return new(number * Take().Value * Length.TicksPerMillimetre, true, at);
                case LengthToken.Foot:
                    Take();
                    return new((number * 12 * Length.TicksPerInch) + InchesAfterFeet(at), true, at);
                default:
                    return new(number, false, at);
            }
        }

        /// <summary>The inches of <c>1' 11 1/4"</c> or <c>1'-11 1/4"</c>, in ticks; zero when none follow.</summary>
        private Rational InchesAfterFeet(int at)
        {
            int mark = _next;
            ScannedToken? hyphen = Peek.Kind == LengthToken.Minus ? Take() : null;
            ScannedToken first = Peek;
            if (first.Kind is not (LengthToken.Number or LengthToken.VulgarFraction)) { _next = mark; return 0; }
            Rational inches = Mixed(afterFeet: true);
            if (Peek.Kind is LengthToken.Metric or LengthToken.Foot)
            {
                if (hyphen is null)
                    throw Fault("length.left-over", first.Position, "After feet only inches can follow.", "Join other lengths by + or -.");
                _next = mark;
                return 0;
            }
            if (hyphen is { } minus && (minus.SpaceBefore || first.SpaceBefore))
            {
                string feet = text[at..minus.Position].Trim(), rest = text[first.Position..Peek.Position].Trim();
                throw Fault("length.two-readings", minus.Position,
                    $"'{text.Trim()}' could be {feet} {rest}\" (feet and inches) or {feet} less {rest}\".",
                    $"Write {feet} {rest}\" or {feet} - ({rest}\").");
            }
            if (Peek.Kind == LengthToken.Inch) Take();
            return inches * Length.TicksPerInch;
        }

        /// <summary>A whole number, a decimal, a fraction, or a whole number with a fraction.</summary>
        private Rational Mixed(bool afterFeet = false)
        {
            if (IsFractionAt(0)) return Fraction();
            ScannedToken first = Take();
            if (first.Kind != LengthToken.Number) throw new Refused(LengthWords.NumberWanted(text, first, Before(first), bare));
            if (!first.IsWholeNumber) return first.Value;
            if (IsFractionAt(0)) return first.Value + ProperFraction();
            return Peek.Kind == LengthToken.Minus && IsFractionAt(1) ? HyphenJoined(first, afterFeet) : first.Value;
        }

        private LengthToken? Before(ScannedToken token) => tokens.IndexOf(token) is > 0 and var at ? tokens[at - 1].Kind : null;

        private bool IsFractionAt(int n) => FractionEnd(n) != n;

        /// <summary>Where the fraction that begins at this token ends; the same place when there is none.</summary>
        private int FractionEnd(int n) => Ahead(n).Kind switch
        {
            LengthToken.VulgarFraction => n + 1,
            LengthToken.Number when Ahead(n).IsWholeNumber && Ahead(n + 1).Kind == LengthToken.Slash
                && Ahead(n + 2) is { Kind: LengthToken.Number, IsWholeNumber: true } => n + 3,
            _ => n,
        };

        private Rational Fraction()
        {
            ScannedToken above = Take();
            if (above.Kind == LengthToken.VulgarFraction) return above.Value;
            Take();
            ScannedToken below = Take();
            return below.Value.Sign != 0
                ? above.Value / below.Value
                : throw Fault("length.zero-division", below.Position, "Division by nothing.", "Divide by another number.");
        }

        private Rational ProperFraction()
        {
            ScannedToken above = Peek;
            Rational fraction = Fraction();
            if (fraction < 1) return fraction;
            string shown = text[above.Position..Peek.Position].Trim();
            throw Fault("length.improper", above.Position, $"{shown} after a whole number is not less than one.", "Write the fraction less than one, or join by +.");
        }

        /// <summary>
        /// <c>23-1/4"</c> is 23 1/4 in the trade, <c>23 - 1/4</c> is a difference; anything between could be either, and so could
        /// <c>20+3-1/4"</c>, where the hyphen stands among signs that are set as tight as itself.
        /// </summary>
        private Rational HyphenJoined(ScannedToken whole, bool afterFeet)
        {
            ScannedToken minus = Peek, above = Ahead(1), after = Ahead(FractionEnd(1));
            bool improper = above.Kind == LengthToken.Number && above.Value >= Ahead(3).Value;
            if (improper || (minus.SpaceBefore && above.SpaceBefore)) return whole.Value;
            bool tight = !minus.SpaceBefore && !above.SpaceBefore;
            if (tight && after.Kind == LengthToken.Inch && (afterFeet || !FollowsTightOperator()))
            {
                Take();
                return whole.Value + ProperFraction();
            }
            string fraction = text[above.Position..after.Position].Trim();
            throw Fault("length.two-readings", minus.Position,
                $"'{text[whole.Position..after.Position].Trim()}' could be {whole.Value} {fraction} or {whole.Value} less {fraction}.",
                $"Write {whole.Value} {fraction} or {whole.Value} - {fraction} (with blanks on both sides).");
        }

        /// <summary>
        /// True when the number just taken is joined without a blank to an operator between two values, and it matters: less 3 1/4
        /// and less 3 less 1/4 are the same, as long as both are inches.
        /// </summary>
        private bool FollowsTightOperator()
        {
            int number = _next - 1;
            if (number >= 2 && tokens[number - 1].Kind == LengthToken.Minus && bare == LengthUnit.Inch) return false;
            return number >= 2 && !tokens[number].SpaceBefore && IsOperator(tokens[number - 1].Kind)
                && tokens[number - 2].Kind != LengthToken.Open && !IsOperator(tokens[number - 2].Kind);
        }

        private static bool IsOperator(LengthToken kind) =>
            kind is LengthToken.Plus or LengthToken.Minus or LengthToken.Times or LengthToken.Divide or LengthToken.Slash;

        private Refused TwoSigns() => Fault("length.two-signs", Peek.Position, "Two signs in a row.", "Use one.");

        private static Refused Fault(string code, int position, string words, string remedy) => new(new(code, position, words, remedy));
    }
}
