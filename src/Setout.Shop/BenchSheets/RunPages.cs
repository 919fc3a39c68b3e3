using System.Collections.Immutable;
using Setout.Core.Craft;
using Setout.Drawing.Documents;
using Setout.Drawing.Scenes;
using Setout.Shop.Drawings;
using Setout.Shop.Plans;
using Setout.Shop.Runs;

namespace Setout.Shop.BenchSheets;

/// <summary>The runs on paper: one block each that stays together, its figure large, each line with a box to tick.</summary>
internal static class RunPages
{
    private const string Title = "Runs";

    private const string Names = "Chalk its name on each sheet and board, and on what comes off. Off sheet A come A.1, A.2; off board 1 come 1a, 1b. What remains keeps the name, and so does the last piece when all else is waste: "
        + "the last lane of board 1 is still 1. The sides at 0 are those where the figures of the drawing begin.";

    /// <summary>The section; none where nothing is sawn.</summary>
    public static IEnumerable<Section> Of(Plan plan)
    {
        WordedRuns runs = RunWords.Of(plan);
        if (runs.Runs.IsEmpty && runs.Waiting.IsEmpty) yield break;
        bool isMixed = plan.Sheets.Length + plan.Boards.Length > 1;
        yield return new(Title,
        [
            new CautionBlock([Phrase.Of(Cautions.Of("saw").Words), Phrase.Of(Cautions.Of("crosscut").Words), Phrase.Of(Cautions.Deference)]),
            .. runs.First.Select(f => new ParagraphBlock(Figures.Phrase(f).Bold())),
            new ParagraphBlock(Figures.Phrase($"{runs.Summary}{(runs.Summary.Length > 0 ? ". " : "")}{Names}")),
            .. runs.Runs.Select(r => Block(r, isMixed)),
            .. Aside("Put aside whole", "Nothing is cut from this until the reading is taken.", runs.Waiting),
            .. Aside("To the rack", "Write name and size on it.", runs.Kept),
        ]);
    }

    private static Block Block(WordedRun run, bool isMixed)
    {
        string[] materials = [.. run.Cuts.Select(c => c.Material).Distinct()];
        string said = $"{run.Saw}.{(run.Edge.Length > 0 ? $" {Upper(run.Edge)}." : "")}";
        return new TogetherBlock(
        [
            .. run.Before.Select(b => new ParagraphBlock(Figures.Phrase(b).Bold())),
            new ParagraphBlock(Figures.Phrase(run.Heading), TextSize.Large),
            new ParagraphBlock((isMixed && materials is [var only] ? Phrase.Of($"{only}  ").Bold() : Phrase.Empty).Add(Figures.Phrase(string.Join(" ", [said, .. run.Setting])))),
            Table(run, materials.Length > 1),
            .. run.Notes.Select(n => new ParagraphBlock(Figures.Phrase(n).Bold())),
            new ParagraphBlock($"Mind: {run.MindInTurn}", TextSize.Small),
        ]);
    }

    private static TableBlock Table(WordedRun run, bool isMixed)
    {
        var rows = ImmutableArray.CreateBuilder<TableRow>();
        foreach (IGrouping<string, WordedCuts> material in run.Cuts.GroupBy(c => c.Material))
        {
            if (isMixed) rows.Add(new GroupRow(Phrase.Of(material.Key)));
            foreach (WordedCuts cuts in material)
            {
                Phrase off = Figures.Phrase(cuts.Off).Bold();
                rows.Add(CellRow.Of(Cell.Of(Figures.Phrase(cuts.From)), Cell.Of(cuts.Often), run.Edge.Length > 0 ? Cell.Of(off) : new Cell([off, Figures.Phrase(Upper(cuts.Edge)).Italic()]), Cell.Of(Figures.Phrase(cuts.Remains))));
            }
        }
        return new(
        [
            new("Cut", ColumnWidth.Share(2), Size: TextSize.Figure), new("how often", ColumnWidth.Fit), new("what comes off", ColumnWidth.Share(3)), new("what remains", ColumnWidth.Share(2)),
        ], rows.ToImmutable(), TickBoxes.EachRow);
    }

    private static IEnumerable<Block> Aside(string title, string words, ImmutableArray<PutAside> wood)
    {
        if (wood.IsEmpty) yield break;
        yield return new TogetherBlock(
        [
            new HeadingBlock(title), new ParagraphBlock(words),
            new TableBlock([new("Name", ColumnWidth.Fit, Size: TextSize.Figure), new("Of", ColumnWidth.Fit), new("What", ColumnWidth.Share(1))],
                [.. wood.Select(w => CellRow.Of(Cell.Of(w.Name), Cell.Of(w.Material), Cell.Of(Figures.Phrase(w.Words))))], TickBoxes.EachRow),
        ]);
    }

    private static string Upper(string words) => words.Length > 0 ? char.ToUpperInvariant(words[0]) + words[1..] : words;
}
