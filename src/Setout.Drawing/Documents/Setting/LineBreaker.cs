using System.Collections.Immutable;
using Setout.Drawing.Scenes;

namespace Setout.Drawing.Documents.Setting;

/// <summary>One line as it was broken.</summary>
/// <param name="Text">The line without spaces at its ends.</param>
/// <param name="Width">As measured; more than the width asked for only when one figure alone is wider.</param>
internal readonly record struct SetLine(Phrase Text, double Width);

/// <summary>
/// Breaks a phrase into lines, first fit: at spaces, and inside a word only when the word alone is wider than the line. A figure, its
/// fraction and its unit are never parted, nor is a sign from the word it touches.
/// </summary>
internal static class LineBreaker
{
    public static ImmutableArray<SetLine> Break(Phrase phrase, double width, double size, ITextMeasure measure)
    {
        var lines = ImmutableArray.CreateBuilder<SetLine>();
        var line = new List<Run>();
        double used = 0;
        foreach (Atom atom in Atoms(phrase))
        {
            double wide = Width(atom.Runs, size, measure);
            double space = line.Count == 0 ? 0 : measure.Width(" ", FaceStyles.Of(atom.Space), size);
            if (line.Count > 0 && used + space + wide > width)
            {
                lines.Add(new(Joined(line), used));
                line.Clear();
                (used, space) = (0, 0);
            }
            if (wide <= width)
            {
                if (line.Count > 0) line.Add(atom.Space);
                line.AddRange(atom.Runs);
                used += space + wide;
                continue;
            }
            // Wider than a whole line: part between runs, then inside words.
            foreach (Run run in atom.Runs)
            {
                foreach (Run bit in Bits(run))
                {
                    double bitWide = Width([bit], size, measure);
                    if (line.Count > 0 && used + bitWide > width)
                    {
                        lines.Add(new(Joined(line), used));
                        line.Clear();
                        used = 0;
                    }
                    line.Add(bit);
                    used += bitWide;
                }
            }
        }
        if (line.Count > 0 || lines.Count == 0) lines.Add(new(Joined(line), used));
        return lines.ToImmutable();
    }

    private readonly record struct Atom(List<Run> Runs, Run Space);

    private static IEnumerable<Run> Bits(Run run) => run.Figure is not null
        ? [run]
        : run.Words.EnumerateRunes().Select(c => run with { Words = c.ToString() });

    private static List<Atom> Atoms(Phrase phrase)
    {
        var atoms = new List<Atom>();
        var current = new List<Run>();
        var space = new Run(" ", null, false);
        foreach (Run run in phrase.Runs)
        {
            if (run.Figure is not null) { current.Add(run); continue; }
            int start = 0;
            for (int i = 0; i <= run.Words.Length; i++)
            {
                if (i < run.Words.Length && run.Words[i] != ' ') continue;
                if (i > start) current.Add(run with { Words = run.Words[start..i] });
                start = i + 1;
                if (i == run.Words.Length) break;
                if (current.Count > 0) atoms.Add(new(current, space));
                (current, space) = ([], run with { Words = " " });
            }
        }
        if (current.Count > 0) atoms.Add(new(current, space));
        return atoms;
    }

    private static double Width(List<Run> runs, double size, ITextMeasure measure)
    {
        double width = 0;
        // Words need no setting to be measured, and most runs are words.
        foreach (Run run in runs)
            width += run.Figure is null ? measure.Width(run.Words, FaceStyles.Of(run), size) : PhraseSetting.WidthOf(new([run]), size, measure);
        return width;
    }

    private static Phrase Joined(List<Run> runs)
    {
        var joined = ImmutableArray.CreateBuilder<Run>();
        foreach (Run run in runs)
        {
            if (joined.Count > 0 && run.Figure is null && joined[^1].Figure is null && FaceStyles.Of(joined[^1]) == FaceStyles.Of(run))
                joined[^1] = run with { Words = joined[^1].Words + run.Words };
            else joined.Add(run);
        }
        return new(joined.ToImmutable());
    }
}
