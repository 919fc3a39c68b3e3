using System.Collections.Immutable;
using Setout.Core.Craft;
using Setout.Core.Workings;
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

    /// <summary>The section; none where nothing is sawn.</summary>
    public static IEnumerable<Section> Of(Plan plan)
    {
        WordedRuns runs = RunWords.Of(plan);
        if (runs.Runs.IsEmpty && runs.Waiting.IsEmpty && runs.Unused.IsEmpty) yield break;
        bool isMixed = plan.Sheets.Length + plan.Boards.Length > 1;
        yield return new(Title,
        [
            .. runs.Runs.IsEmpty ? ImmutableArray<Block>.Empty : Head(plan, runs),
            .. runs.Runs.Select(r => Block(r, isMixed)),
            .. Aside("Put aside whole", $"Nothing is cut from this until the reading is taken{(One(runs.Waiting) is { Length: > 0 } until ? $": {until}" : "")}.", runs.Waiting, [.. Blanks(runs.Await, plan.Set.Piece.Hand)]),
            .. Aside("To the rack", "Write name and size on it.", runs.Kept),
            .. Aside("In hand, not used by this plan", "Left by runs that are marked as cut.", runs.Unused),
        ]);
    }

    private static ImmutableArray<Block> Head(Plan plan, WordedRuns runs) =>
    [
        new CautionBlock([Phrase.Of(Cautions.Of("saw").Words), Phrase.Of(Cautions.Of("crosscut").Words), Phrase.Of(Cautions.Deference)]),
        .. runs.First.Select(f => new ParagraphBlock(Figures.Phrase(f).Bold())),
        .. Blanks(runs.Ask, plan.Set.Piece.Hand),
        new ParagraphBlock(Figures.Phrase($"{runs.Summary}. {runs.Names}")),
        new ParagraphBlock(Marked(plan), TextSize.Small),
    ];

    // A line to write each reading on, before the runs that wait for it.
    private static IEnumerable<Block> Blanks(ImmutableArray<AskedReading> asked, Hand hand)
    {
        if (asked.IsEmpty) yield break;
        yield return new TableBlock([new("Read", ColumnWidth.Share(1)), new("With", ColumnWidth.Fit), new("reckoned with", ColumnWidth.Fit), new("Reading", ColumnWidth.Millimetres(36))],
            [.. asked.Select(a => CellRow.Of(Cell.Of(Figures.Phrase(Upper(a.Words)).Bold()), Cell.Of(a.With), Cell.Of(Figures.Phrase(a.StandsIn)), Cell.Of("")))]);
        yield return new ParagraphBlock(hand.Say("Write it down here, then: setout record FILE KEY READING. Runs that go by it may change: print them anew.",
            "Write it down here, then enter it on the workbench. Runs that go by it may change: print them anew."), TextSize.Small);
    }

    private static string Marked(Plan plan) => plan.Set.Piece.Hand.Say("When a run is cut: setout mark FILE cut --run N --plan DIR, with DIR the folder that this was written to.",
        $"When a run is cut, say so on the workbench: “This run is cut”, under {(plan.Source.Together is null ? "“Break down”" : "“Break down together”")}.");

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
            new ParagraphBlock($"Mind: {run.MindInTurn}"),
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
        // Room goes to what has much to say: wood that is put aside, with what it waits for, beside a name alone.
        ColumnWidth Room(Func<WordedCuts, string> words, double size, int least) => ColumnWidth.Share(Math.Clamp(size * run.Cuts.Max(c => words(c).Length), least, 80));
        return new(
        [
            new("Cut", Room(c => c.From, 1.6, 24), Size: TextSize.Figure), new("how often", ColumnWidth.Fit), new("what comes off", Room(c => c.Off, 1.1, 20)), new("what remains", Room(c => c.Remains, 1, 20)),
        ], rows.ToImmutable(), TickBoxes.EachRow);
    }

    // The reading that all of it waits for; empty where there are several.
    private static string One(ImmutableArray<PutAside> wood) => wood.Select(w => w.Until).Distinct().Take(2).ToArray() is [var only] ? only : "";

    private static IEnumerable<Block> Aside(string title, string words, ImmutableArray<PutAside> wood, ImmutableArray<Block> blanks = default)
    {
        if (wood.IsEmpty) yield break;
        yield return new TogetherBlock(
        [
            new HeadingBlock(title), new ParagraphBlock(words), .. blanks.IsDefault ? [] : blanks,
            new TableBlock([new("Name", ColumnWidth.Fit, Size: TextSize.Figure), new("Of", ColumnWidth.Fit), new("What", ColumnWidth.Share(1))],
                [.. wood.Select(w => CellRow.Of(Cell.Of(w.Name), Cell.Of(w.Material), Cell.Of(Figures.Phrase(One(wood).Length > 0 ? w.Words : w.Whole))))], TickBoxes.EachRow),
        ]);
    }

    private static string Upper(string words) => words.Length > 0 ? char.ToUpperInvariant(words[0]) + words[1..] : words;
}
