using System.Collections.Immutable;
using Setout.Drawing.Scenes;

namespace Setout.Drawing.Breakdowns;

/// <summary>Boards as long bars under each other at one scale: running figures from the trued end, marks, waste hatched, what to keep named.</summary>
public static class BoardDrawing
{
    private const double Margin = 2, HeaderSize = 4.8, SoftSize = 3.2;

    /// <summary>Draws. The longest board fills the width; boards that do not fit the height go on to further drawings of the same scale, the lanes of one board together where a drawing holds them all.</summary>
    /// <returns>One scene or more; none has less than one board.</returns>
    /// <exception cref="ArgumentException">There is no board, or one has no length.</exception>
    public static ImmutableArray<Scene> Draw(BoardsInput input, BreakdownPaper paper)
    {
        if (input.Boards.IsDefaultOrEmpty || input.Boards.Any(b => b.Length.Sign <= 0)) throw new ArgumentException("A board drawing needs boards that have a length.", nameof(input));
        double content = paper.Width - (2 * Margin);
        double left = Margin + 5, right = Margin + 1;
        double scale = (paper.Width - left - right) / input.Boards.Max(b => b.Length.ApproximateMillimetres);
        var header = new HeaderBlock(input.HeaderLeft, input.HeaderNote, input.HeaderRight, HeaderSize, SoftSize, content);
        ImmutableArray<Phrase> footer = TextMeasure.Wrap(input.Footer, SoftSize, content);
        double footerHeight = footer.IsEmpty ? 0 : (footer.Length * SoftSize * 1.35) + 2;
        ImmutableArray<BoardRow> rows = [.. input.Boards.Select(b => new BoardRow(b, paper, scale, left, content))];

        var key = new DrawingKey(Key(input), SoftSize, content);
        double reserved = key.Height + footerHeight + Margin + 1, top = Margin + header.Height;
        ImmutableArray<Scene>.Builder scenes = ImmutableArray.CreateBuilder<Scene>();
        int next = 0;
        foreach (int count in BoardPages.Split([.. rows.Select((r, i) => (r.Height, input.Boards[i].Board))], (paper.FirstHeight ?? paper.Height) - top - reserved, paper.Height - top - reserved))
        {
            List<SceneItem> items = [.. header.Draw(Margin, Margin)];
            double y = top;
            int first = next;
            for (; next < first + count; y += rows[next++].Height) items.Add(rows[next].Draw(y));
            items.AddRange(key.Draw(Margin, y));
            y += key.Height;
            if (next == rows.Length)
            {
                foreach (Phrase line in footer)
                {
                    y += SoftSize * 1.35;
                    items.Add(new TextItem(new(Margin, y), line, SoftSize, Anchor.Start, Ink.Soft));
                }
            }
            string title = first == 0 && next == rows.Length ? input.Title : $"{input.Title} ({scenes.Count + 1})";
            scenes.Add(new(paper.Width, y + Margin + 1, title, input.Description, [.. items]));
        }
        return scenes.ToImmutable();
    }

    private static IEnumerable<(KeySign, string)> Key(BoardsInput input)
    {
        if (input.Boards.Any(b => b.Cuts.Any(c => !c.IsWaiting))) yield return (KeySign.Cut, "cut");
        if (input.Boards.Any(b => b.Cuts.Any(c => c.IsWaiting))) yield return (KeySign.Waiting, "waits for a reading");
        bool hasWaste = input.Boards.Any(b => !b.Waste.IsEmpty), hasFlaws = input.Boards.Any(b => !b.Defects.IsEmpty);
        if (hasWaste || hasFlaws) yield return (KeySign.Hatch, hasWaste && hasFlaws ? "waste or flaw" : hasWaste ? "waste" : "flaw");
        if (hasFlaws) yield return (KeySign.Flaw, "edge of a flaw");
    }
}
