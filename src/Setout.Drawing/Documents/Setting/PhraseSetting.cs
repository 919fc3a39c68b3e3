using System.Collections.Immutable;
using System.Text;
using Setout.Core.Measures.Text;
using Setout.Drawing.Scenes;

namespace Setout.Drawing.Documents.Setting;

/// <summary>How a mark of a phrase is put on the page.</summary>
internal enum MarkKind
{
    /// <summary>Text that is seen and copied.</summary>
    Shown,

    /// <summary>Text that is copied but not seen: it lies over what is drawn, stretched to its width.</summary>
    Spoken,

    /// <summary>Characters that are seen but not copied: drawn as shapes.</summary>
    Drawn,

    /// <summary>The slanted stroke of a fraction: a shape.</summary>
    Stroke,
}

/// <summary>One mark, placed from the start of the phrase.</summary>
/// <param name="Kind">How it is put.</param>
/// <param name="Text">Its characters; empty for a stroke.</param>
/// <param name="Style">The face.</param>
/// <param name="X">Left end.</param>
/// <param name="Rise">Baseline above the phrase's own.</param>
/// <param name="Size">Em.</param>
/// <param name="Width">Width taken.</param>
internal readonly record struct PhraseMark(MarkKind Kind, string Text, FaceStyle Style, double X, double Rise, double Size, double Width);

/// <summary>
/// A phrase set on one line: whole numbers at full size, fractions as a raised numerator, a slanted stroke and a lowered denominator.
/// Measuring and drawing both go through here, so that they cannot differ.
/// </summary>
internal sealed record PhraseSetting(ImmutableArray<PhraseMark> Marks, double Width)
{
    /// <summary>Size of the numerals of a fraction: more than the 70 % that a figure read at arm's length needs.</summary>
    public const double Numeral = 0.74;

    // Proportions of a fraction in em of the whole number, found by eye on paper with the font of the documents.
    private const double Raise = 0.31, Lower = 0.12, Gap = 0.15;
    private const double StrokeReach = 0.30, StrokeUnderNumerator = 0.095, DenominatorAfter = 0.095;

    /// <summary>
    /// Width of the space that is read between whole number and fraction, in em. It is that of a space between words and so wider than
    /// the gap that is seen: one reader tested takes the number and the fraction for one word when they stand closer than 0.15 em.
    /// </summary>
    private const double SpokenGap = 0.26;

    /// <summary>Thickness of the stroke in em, regular and heavy.</summary>
    public const double StrokeThin = 0.058, StrokeHeavy = 0.078;

    /// <summary>Top of the stroke above the baseline and its foot below it, in em.</summary>
    public const double StrokeTop = 0.80, StrokeFoot = -0.09;

    /// <summary>How far a line reaches above and below its baseline, in em: the fraction reaches furthest.</summary>
    public const double Above = 0.86, Below = 0.24;

    public static PhraseSetting Set(Phrase phrase, double size, ITextMeasure measure)
    {
        var pen = new Pen(size, measure);
        foreach (Run run in phrase.Runs)
        {
            if (run.Figure is { } figure) pen.Figure(figure, FaceStyles.Of(run));
            else pen.Shown(run.Words, FaceStyles.Of(run));
        }
        return new(pen.Marks.ToImmutable(), pen.X);
    }

    public static double WidthOf(Phrase phrase, double size, ITextMeasure measure) => Set(phrase, size, measure).Width;

    private sealed class Pen(double size, ITextMeasure measure)
    {
        public ImmutableArray<PhraseMark>.Builder Marks { get; } = ImmutableArray.CreateBuilder<PhraseMark>();

        public double X { get; private set; }

        public void Shown(string text, FaceStyle style)
        {
            if (text.Length == 0) return;
            double width = measure.Width(text, style, size);
            Marks.Add(new(MarkKind.Shown, text, style, X, 0, size, width));
            X += width;
        }

        public void Figure(Figure figure, FaceStyle style)
        {
            if (figure.IsNegative)
            {
                // Seen as a true minus, copied as the hyphen that every field reads.
                double width = measure.Width("\u2212", style, size);
                Marks.Add(new(MarkKind.Spoken, "-", style, X, 0, size, width));
                Marks.Add(new(MarkKind.Drawn, "\u2212", style, X, 0, size, width));
                X += width;
            }
            Shown(figure.Whole, style);
            if (figure.HasFraction) Fraction(figure, style);
            if (figure.Unit.Length > 0) Shown(" " + figure.Unit, style);
        }

        private void Fraction(Figure figure, FaceStyle style)
        {
            double start = X, spoken = X;
            if (figure.Whole.Length > 0)
            {
                Marks.Add(new(MarkKind.Spoken, " ", style, X, 0, size, SpokenGap * size));
                start += Gap * size;
                spoken += SpokenGap * size;
            }
            string above = figure.Numerator.ToString(), below = figure.Denominator.ToString();
            double small = Numeral * size;
            double widthAbove = measure.Width(above, style, small), widthBelow = measure.Width(below, style, small);
            double strokeX = start + widthAbove - (StrokeUnderNumerator * size);
            double belowX = start + widthAbove + (DenominatorAfter * size);
            double end = belowX + widthBelow;
            Marks.Add(new(MarkKind.Spoken, $"{above}/{below}", style, spoken, 0, size, end - spoken));
            Marks.Add(new(MarkKind.Drawn, above, style, start, Raise * size, small, widthAbove));
            Marks.Add(new(MarkKind.Stroke, "", style, strokeX, 0, size, StrokeReach * size));
            Marks.Add(new(MarkKind.Drawn, below, style, belowX, -Lower * size, small, widthBelow));
            X = end;
        }
    }

    /// <summary>The phrase with a mark in place of every character that the font cannot draw.</summary>
    /// <param name="phrase">Any phrase.</param>
    /// <param name="measure">The font.</param>
    /// <param name="missing">Takes each character that is missing.</param>
    public static Phrase Covered(Phrase phrase, ITextMeasure measure, Action<Rune, string> missing)
    {
        if (phrase.Runs.All(r => IsCovered(r, measure))) return phrase;
        return new([.. phrase.Runs.Select(r => Covered(r, measure, missing))]);
    }

    private static bool IsCovered(Run run, ITextMeasure measure) =>
        run.ToString().EnumerateRunes().All(c => measure.Has(c, FaceStyles.Of(run)));

    private static Run Covered(Run run, ITextMeasure measure, Action<Rune, string> missing)
    {
        string text = run.Figure is { } f ? f.Unit : run.Words;
        var clean = new StringBuilder();
        foreach (Rune character in text.EnumerateRunes())
        {
            if (measure.Has(character, FaceStyles.Of(run))) clean.Append(character.ToString());
            // A new line or a tab inside a phrase is a space; control characters have no shape to miss.
            else if (Rune.IsWhiteSpace(character)) clean.Append(' ');
            else
            {
                missing(character, text);
                clean.Append('?');
            }
        }
        return run.Figure is { } figure ? run with { Figure = figure with { Unit = clean.ToString() } } : run with { Words = clean.ToString() };
    }
}
