using System.Collections.Immutable;

namespace Setout.Drawing.Scenes;

/// <summary>What becomes of a word that alone is wider than a line.</summary>
internal enum LongWord
{
    /// <summary>It runs over; who asked chooses another size or place.</summary>
    RunsOver,

    /// <summary>It is parted between any two signs.</summary>
    IsParted,
}

/// <summary>One line as it was broken.</summary>
/// <param name="Text">The line without spaces at its ends.</param>
/// <param name="Width">As measured; more than the width asked for only where something that is not parted is wider.</param>
internal readonly record struct BrokenLine(Phrase Text, double Width);

/// <summary>
/// Breaks a phrase into lines, first fit, at spaces. A figure, its fraction and its unit are never parted, nor is a sign from the word
/// it touches; a long word only where that is asked for.
/// </summary>
internal static class LineBreaker
{
    /// <summary>The lines; none for a phrase of nothing.</summary>
    public static ImmutableArray<BrokenLine> Break(Phrase phrase, double size, double width, LongWord longWord)
    {
        var lines = ImmutableArray.CreateBuilder<BrokenLine>();
        var line = new List<Run>();
        double used = 0;
        void End()
        {
            lines.Add(new(Joined(line), used));
            line.Clear();
            used = 0;
        }
        foreach ((List<Run> word, Run before) in Words(phrase))
        {
            double wide = word.Sum(r => TextMeasure.Width(r, size)), space = line.Count == 0 ? 0 : TextMeasure.Width(before, size);
            if (line.Count > 0 && used + space + wide > width)
            {
                End();
                space = 0;
            }
            if (wide <= width || longWord == LongWord.RunsOver)
            {
                if (line.Count > 0) line.Add(before);
                line.AddRange(word);
                used += space + wide;
                continue;
            }
            foreach (Run bit in word.SelectMany(Bits))
            {
                double bitWide = TextMeasure.Width(bit, size);
                if (line.Count > 0 && used + bitWide > width) End();
                line.Add(bit);
                used += bitWide;
            }
        }
        if (line.Count > 0) End();
        return lines.ToImmutable();
    }

    private static IEnumerable<Run> Bits(Run run) => run.Figure is not null
        ? [run]
        : run.Words.EnumerateRunes().Select(c => run with { Words = c.ToString() });

    /// <summary>What stands between spaces, each with the space before it.</summary>
    private static List<(List<Run> Word, Run Before)> Words(Phrase phrase)
    {
        var words = new List<(List<Run>, Run)>();
        var word = new List<Run>();
        var before = new Run(" ", null, false);
        foreach (Run run in phrase.Runs)
        {
            if (run.Figure is not null) { word.Add(run); continue; }
            string[] texts = run.Words.Split(' ');
            for (int i = 0; i < texts.Length; i++)
            {
                if (i > 0)
                {
                    if (word.Count > 0) words.Add((word, before));
                    (word, before) = ([], run with { Words = " " });
                }
                if (texts[i].Length > 0) word.Add(run with { Words = texts[i] });
            }
        }
        if (word.Count > 0) words.Add((word, before));
        return words;
    }

    /// <summary>Words of one kind come together again, so that a line is few pieces and stays easy to search.</summary>
    private static Phrase Joined(List<Run> runs)
    {
        var joined = ImmutableArray.CreateBuilder<Run>();
        foreach (Run run in runs)
        {
            if (joined.Count > 0 && run.Figure is null && joined[^1].Figure is null && Typeface.Of(joined[^1]) == Typeface.Of(run))
                joined[^1] = joined[^1] with { Words = joined[^1].Words + run.Words };
            else joined.Add(run);
        }
        return new(joined.ToImmutable());
    }
}
