using System.Collections.Immutable;
using Setout.Drawing.Elevations;
using Setout.Drawing.Scenes;

namespace Setout.Drawing.Sections;

/// <summary>Draws sections side by side at one scale, in as many rows as the width asks for.</summary>
public static class SectionSheet
{
    private const double Margin = 3, Apart = 7, RowGap = 6, NoteSize = 2.9;

    /// <summary>Draws.</summary>
    /// <param name="title">What is shown.</param>
    /// <param name="description">Sentences for someone who cannot see it.</param>
    /// <param name="sections">One or more, in reading order.</param>
    /// <param name="paper">Width of the paper, and how high the drawing may be.</param>
    /// <exception cref="ArgumentException">There is no section.</exception>
    public static Scene Draw(string title, string description, ImmutableArray<SectionInput> sections, PaperBox paper)
    {
        if (sections.IsEmpty) throw new ArgumentException("There is nothing to draw.", nameof(sections));
        ImmutableArray<SectionView> At(int scale) => [.. sections.Select(s => new SectionView(s, new(scale, 0, 0), paper.FigureSize))];
        bool Fits(int scale)
        {
            if (scale < paper.Scale) return false;
            ImmutableArray<SectionView> views = At(scale);
            return Rows(views, paper.Width - (2 * Margin)) is { } rows && Height(rows, views) <= paper.Height;
        }
        int chosen = Scales.Largest(Fits);
        ImmutableArray<SectionView> measured = At(chosen);
        ImmutableArray<ImmutableArray<int>> rows = Rows(measured, paper.Width - (2 * Margin)) ?? [[.. Enumerable.Range(0, sections.Length)]];
        var items = ImmutableArray.CreateBuilder<SceneItem>();
        double y = Margin, widest = rows.Max(r => Width(r, measured)), width = Math.Max(paper.Width, widest + (2 * Margin));
        foreach (ImmutableArray<int> row in rows)
        {
            double spare = (width - (2 * Margin) - Width(row, measured)) / row.Length, x = Margin + (spare / 2), above = row.Max(i => measured[i].Window.Top - measured[i].Bounds.Top);
            foreach (int i in row)
            {
                Box bounds = measured[i].Bounds;
                items.AddRange(new SectionView(sections[i], new(chosen, x - bounds.Left, y + above - measured[i].Window.Top), paper.FigureSize).Draw());
                x += bounds.Width + Apart + spare;
            }
            y += RowHeight(row, measured) + RowGap;
        }
        double height = y - RowGap + NoteSize + Margin;
        items.Add(new TextItem(new(width - Margin, height - Margin), Phrase.Of($"scale 1:{chosen}"), NoteSize, Anchor.End, Ink.Soft));
        return new(width, height, title, description, items.ToImmutable());

        double Height(ImmutableArray<ImmutableArray<int>> of, ImmutableArray<SectionView> views) => (2 * Margin) + NoteSize + of.Sum(r => RowHeight(r, views)) + ((of.Length - 1) * RowGap);
    }

    private static double Width(ImmutableArray<int> row, ImmutableArray<SectionView> views) => row.Sum(i => views[i].Bounds.Width) + ((row.Length - 1) * Apart);

    /// <summary>Windows of one row are level at their upper edges.</summary>
    private static double RowHeight(ImmutableArray<int> row, ImmutableArray<SectionView> views) =>
        row.Max(i => views[i].Window.Top - views[i].Bounds.Top) + row.Max(i => views[i].Bounds.Bottom - views[i].Window.Top);

    /// <summary>As many in a row as fit, the rows as even as can be; null where one alone is too wide.</summary>
    private static ImmutableArray<ImmutableArray<int>>? Rows(ImmutableArray<SectionView> views, double width)
    {
        if (views.Any(v => v.Bounds.Width > width)) return null;
        for (int count = 1; ; count++)
        {
            int each = (views.Length + count - 1) / count;
            ImmutableArray<ImmutableArray<int>> rows = [.. Enumerable.Range(0, views.Length).Chunk(each).Select(r => r.ToImmutableArray())];
            if (rows.All(r => Width(r, views) <= width)) return rows;
        }
    }
}
