using System.Collections.Immutable;
using System.Globalization;
using Setout.Core.Measures.Text;

namespace Setout.Drawing.Scenes;

/// <summary>What a stretch of a set line is.</summary>
internal enum StretchKind
{
    /// <summary>Words, whole numbers, units: text that is seen as it is read.</summary>
    Words,

    /// <summary>The sign of a figure below nought: read as the hyphen that every field takes, seen as a true minus where a writer can.</summary>
    Sign,

    /// <summary>The space between whole number and fraction: a thin gap on the paper, a real space in the text.</summary>
    Gap,

    /// <summary>Raised.</summary>
    Numerator,

    /// <summary>Between the two.</summary>
    Slash,

    /// <summary>Lowered.</summary>
    Denominator,
}

/// <summary>One stretch of a set line: the same signs, face and size, at a place.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Text">The signs, exactly as they are copied.</param>
/// <param name="Face">The file they come from.</param>
/// <param name="X">Where the stretch begins, from the start of the line.</param>
/// <param name="Rise">How far it is lifted above the baseline; negative when it is lowered.</param>
/// <param name="Size">Height of its em.</param>
/// <param name="Width">How far it moves the pen.</param>
internal readonly record struct TextStretch(StretchKind Kind, string Text, Face Face, double X, double Rise, double Size, double Width);

/// <summary>A phrase set at a size: every writer draws these stretches, so a text is as wide on paper as on the screen.</summary>
/// <param name="Stretches">In reading order; their texts together are the plain text of the phrase.</param>
/// <param name="Width">From the first sign to the last.</param>
internal readonly record struct SetLine(ImmutableArray<TextStretch> Stretches, double Width);

/// <summary>Sets phrases into lines. The one place that knows how a fraction is built; proportions found by eye on paper and screen with the font built in.</summary>
public static class TextMeasure
{
    /// <summary>Height of the numerals of a fraction against those of the whole number: more than the 70 % that a figure read at arm's length needs.</summary>
    public const double FractionScale = 0.74;

    /// <summary>How far the numerator is lifted, in ems of the whole number: its head stands a little above the whole number's.</summary>
    public const double NumeratorRise = 0.27;

    /// <summary>How far the denominator is lowered, in ems.</summary>
    public const double DenominatorDrop = 0.06;

    /// <summary>Size of the space between whole number and fraction.</summary>
    public const double GapScale = 0.55;

    /// <summary>Size of the slash.</summary>
    public const double SlashScale = 0.92;

    /// <summary>How far the slash is lifted, in ems, so that it joins the two numerals and does not hang under the line.</summary>
    public const double SlashRise = 0.06;

    /// <summary>The slash leans under the numerator and over the denominator by so much, in ems.</summary>
    public const double SlashTuck = 0.09;

    /// <summary>Height of capitals and digits above the baseline, in ems.</summary>
    public const double CapHeight = 0.698;

    /// <summary>The middle of a text above its baseline, in ems: what is centred on a line or a box is lowered by so much.</summary>
    public const double Middle = CapHeight / 2;

    /// <summary>Highest ink above the baseline, in ems: letters with risers and fractions.</summary>
    public const double Ascent = 0.80;

    /// <summary>Lowest ink below the baseline, in ems: letters with tails.</summary>
    public const double Descent = 0.22;

    /// <summary>Lowest ink of a fraction below the baseline, in ems; its highest is <see cref="Ascent"/>.</summary>
    public const double FractionDescent = 0.08;

    /// <summary>The sign of a figure below nought as it is seen.</summary>
    internal const string Minus = "\u2212";

    /// <summary>The width of a phrase.</summary>
    /// <param name="phrase">The phrase.</param>
    /// <param name="size">Height of the em; the result is in the same unit.</param>
    public static double Width(Phrase phrase, double size)
    {
        double width = 0;
        foreach (Run run in phrase.Runs) width += Width(run, size);
        return width;
    }

    /// <summary>The width of a run. Words need no setting to be measured, and most runs are words.</summary>
    internal static double Width(Run run, double size) =>
        run.Figure is null ? Typeface.Font(Typeface.Of(run)).Width(run.Words, size) : Set(new([run]), size).Width;

    /// <summary>Sets a phrase.</summary>
    internal static SetLine Set(Phrase phrase, double size)
    {
        ImmutableArray<TextStretch>.Builder stretches = ImmutableArray.CreateBuilder<TextStretch>();
        double x = 0;
        void Put(StretchKind kind, string text, Face face, double scale = 1, double rise = 0)
        {
            if (text.Length == 0) return;
            double width = Typeface.Font(face).Width(kind == StretchKind.Sign ? Minus : text, size * scale);
            stretches.Add(new(kind, text, face, x, rise * size, size * scale, width));
            x += width;
        }
        foreach (Run run in phrase.Runs)
        {
            Face face = Typeface.Of(run);
            if (run.Figure is not { } figure)
            {
                Put(StretchKind.Words, run.Words, face);
                continue;
            }
            if (figure.IsNegative) Put(StretchKind.Sign, "-", face);
            Put(StretchKind.Words, figure.Whole, face);
            if (figure.HasFraction)
            {
                if (figure.Whole.Length > 0) Put(StretchKind.Gap, " ", face, GapScale);
                Put(StretchKind.Numerator, figure.Numerator.ToString(CultureInfo.InvariantCulture), face, FractionScale, NumeratorRise);
                x -= SlashTuck * size;
                Put(StretchKind.Slash, "/", face, SlashScale, SlashRise);
                x -= SlashTuck * size;
                Put(StretchKind.Denominator, figure.Denominator.ToString(CultureInfo.InvariantCulture), face, FractionScale, -DenominatorDrop);
            }
            if (figure.Unit.Length > 0) Put(StretchKind.Words, " " + figure.Unit, face);
        }
        return new(stretches.ToImmutable(), x);
    }

    /// <summary>Breaks a phrase at its spaces into lines no wider than <paramref name="width"/>; a single word may be wider. A figure is never broken.</summary>
    public static ImmutableArray<Phrase> Wrap(Phrase phrase, double size, double width) =>
        [.. LineBreaker.Break(phrase, size, width, LongWord.RunsOver).Select(l => l.Text)];
}
