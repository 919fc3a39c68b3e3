using System.Collections.Immutable;
using System.Globalization;
using Setout.Core.Measures.Text;

namespace Setout.Drawing.Scenes;

/// <summary>One stretch of a set line: the same signs, face and size, at a place.</summary>
/// <param name="Text">The signs, exactly as they are copied.</param>
/// <param name="Face">The file they come from.</param>
/// <param name="X">Where the stretch begins, from the start of the line.</param>
/// <param name="Rise">How far it is lifted above the baseline.</param>
/// <param name="Size">Height of its em.</param>
/// <param name="Width">How far it moves the pen.</param>
public readonly record struct TextPiece(string Text, Face Face, double X, double Rise, double Size, double Width);

/// <summary>A phrase set at a size: every writer draws these pieces, so a text is as wide on paper as on the screen.</summary>
/// <param name="Pieces">In reading order; their texts together are the plain text of the phrase.</param>
/// <param name="Width">From the first sign to the last.</param>
public readonly record struct SetLine(ImmutableArray<TextPiece> Pieces, double Width);

/// <summary>Sets phrases into lines. The one place that knows how a fraction is built.</summary>
public static class TextMeasure
{
    /// <summary>Height of the numerals of a fraction against those of the whole number.</summary>
    public const double FractionScale = 0.72;

    /// <summary>How far the numerator is lifted, in ems of the whole number: its head stands a little above the whole number's.</summary>
    public const double NumeratorRise = 0.26;

    /// <summary>Size of the space between whole number and fraction: a thin gap on the paper, a real space in the text.</summary>
    public const double GapScale = 0.55;

    /// <summary>Size of the slash.</summary>
    public const double SlashScale = 0.86;

    /// <summary>How far the slash is lifted, in ems, so that it joins the two numerals and does not hang under the line.</summary>
    public const double SlashRise = 0.05;

    /// <summary>The slash leans under the numerator and over the denominator by so much, in ems.</summary>
    public const double SlashTuck = 0.07;

    /// <summary>Height of capitals and digits above the baseline, in ems; the middle of a text is half of it.</summary>
    public const double CapHeight = 0.698;

    /// <summary>Highest ink above the baseline, in ems.</summary>
    public const double Ascent = 0.80;

    /// <summary>Lowest ink below the baseline, in ems.</summary>
    public const double Descent = 0.22;

    /// <summary>The width of a phrase.</summary>
    /// <param name="phrase">The phrase.</param>
    /// <param name="size">Height of the em; the result is in the same unit.</param>
    public static double Width(Phrase phrase, double size) => Set(phrase, size).Width;

    /// <summary>Sets a phrase.</summary>
    public static SetLine Set(Phrase phrase, double size)
    {
        ImmutableArray<TextPiece>.Builder pieces = ImmutableArray.CreateBuilder<TextPiece>();
        double x = 0;
        void Put(string text, Face face, double scale, double rise)
        {
            if (text.Length == 0) return;
            double width = Typeface.Metrics(face).Width(text, size * scale);
            pieces.Add(new(text, face, x, rise * size, size * scale, width));
            x += width;
        }
        foreach (Run run in phrase.Runs)
        {
            Face face = Typeface.Of(run);
            if (run.Figure is not { } figure)
            {
                Put(run.Words, face, 1, 0);
                continue;
            }
            Put((figure.IsNegative ? "-" : "") + figure.Whole, face, 1, 0);
            if (figure.HasFraction)
            {
                if (figure.Whole.Length > 0) Put(" ", face, GapScale, 0);
                Put(figure.Numerator.ToString(CultureInfo.InvariantCulture), face, FractionScale, NumeratorRise);
                x -= SlashTuck * size;
                Put("/", face, SlashScale, SlashRise);
                x -= SlashTuck * size;
                Put(figure.Denominator.ToString(CultureInfo.InvariantCulture), face, FractionScale, 0);
            }
            if (figure.Unit.Length > 0) Put(" " + figure.Unit, face, 1, 0);
        }
        return new(pieces.ToImmutable(), x);
    }

    /// <summary>Breaks a phrase at its spaces into lines no wider than <paramref name="width"/>; a single word may be wider. A figure is never broken.</summary>
    public static ImmutableArray<Phrase> Wrap(Phrase phrase, double size, double width)
    {
        ImmutableArray<Phrase>.Builder lines = ImmutableArray.CreateBuilder<Phrase>();
        ImmutableArray<Run> line = [], chunk = [];
        void EndChunk(Run? space)
        {
            if (chunk.IsEmpty) return;
            ImmutableArray<Run> longer = line.AddRange(chunk);
            if (!line.IsEmpty && Width(new(longer), size) > width)
            {
                lines.Add(Trimmed(line));
                line = chunk;
            }
            else line = longer;
            chunk = [];
            if (space is { } s) line = line.Add(s);
        }
        foreach (Run run in phrase.Runs)
        {
            if (run.Figure is not null) { chunk = chunk.Add(run); continue; }
            string[] words = run.Words.Split(' ');
            for (int i = 0; i < words.Length; i++)
            {
                if (i > 0) EndChunk(run with { Words = " " });
                if (words[i].Length > 0) chunk = chunk.Add(run with { Words = words[i] });
            }
        }
        EndChunk(null);
        if (!line.IsEmpty) lines.Add(Trimmed(line));
        return lines.ToImmutable();
    }

    private static Phrase Trimmed(ImmutableArray<Run> line)
    {
        while (!line.IsEmpty && line[^1].Figure is null && line[^1].Words == " ") line = line.RemoveAt(line.Length - 1);
        // Words of one kind come together again, so that a line is few pieces and stays easy to search.
        ImmutableArray<Run>.Builder joined = ImmutableArray.CreateBuilder<Run>();
        foreach (Run run in line)
        {
            if (joined.Count > 0 && run.Figure is null && joined[^1] is { Figure: null } last && last.IsBold == run.IsBold && last.IsItalic == run.IsItalic)
                joined[^1] = last with { Words = last.Words + run.Words };
            else joined.Add(run);
        }
        return new(joined.ToImmutable());
    }
}
