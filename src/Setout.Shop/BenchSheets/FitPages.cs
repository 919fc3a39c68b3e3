using System.Collections.Immutable;
using Setout.Core.Fit;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Drawing.Documents;
using Setout.Drawing.Fits;
using Setout.Drawing.Scenes;
using Setout.Shop.Drawings;
using Setout.Shop.Plans;

namespace Setout.Shop.BenchSheets;

/// <summary>The fit sheet: the chances, what to measure first with room to write the reading, the gaps drawn, and allowances.</summary>
internal static class FitPages
{
    // Two pages of gaps are looked at; more are not. Those least likely to fit come first.
    private const int MostDrawings = 2;

    // What a section title, a heading and a foot leave of a page.
    private const double DrawingHeight = 210;

    /// <summary>The section; none when there is no gap that could fail to fit.</summary>
    public static IEnumerable<Section> Of(SetPiece set, FitReport report, Paper paper)
    {
        if (report.Gaps.Length == 0) yield break;
        yield return new("Fit", [Chances(set, report), .. Measure(set.Piece.Hand, report), .. Drawings(set, report, paper), .. Allowances(set, report)]);
    }

    private static TableBlock Chances(SetPiece set, FitReport report)
    {
        static CellRow Row(Phrase name, GroupFit group) => CellRow.Of(Cell.Of(name), Cell.Of(FitLines.Right(group.Right, group)), Cell.Of(FitLines.Right(group.RightMeasured, group)), Cell.Of(FitLines.AllAtOnce(group)));
        return new(
        [
            new("Gaps right the first time, on the average", ColumnWidth.Share(1)),
            new("as it stands", ColumnWidth.Fit, ColumnAlign.Right), new("measured first", ColumnWidth.Fit, ColumnAlign.Right), new("all at once", ColumnWidth.Fit, ColumnAlign.Right),
        ],
        [
            Row(Phrase.Of("the whole piece").Bold(), report.Whole),
            .. report.Groups.Select(g => Row(Figures.Phrase(FitLines.OpeningName(set, g.Key)), g)),
        ]);
    }

    private static IEnumerable<Block> Measure(Hand hand, FitReport report)
    {
        yield return new HeadingBlock("Measure first");
        if (report.Measure.Length == 0)
        {
            yield return new ParagraphBlock("Nothing that is still to be read would help.");
            yield break;
        }
        CellRow Row(MeasureFirst reading) => CellRow.Of(
            new Cell([Figures.Phrase(reading.Name).Bold(), Phrase.Of($"{hand.Say($"{reading.Key} \u00B7 ", "")}{FitLines.Brings(reading)}{(reading.Kind == MeasureKind.Awaited ? "; parts wait for it" : "")}")]),
            Cell.Of(reading.Instrument), Cell.Of(FitLines.RightThen(report, reading)), Cell.Of(""));
        yield return new TableBlock([new("What, most useful first", ColumnWidth.Share(1)), new("With", ColumnWidth.Fit), new("right then", ColumnWidth.Fit, ColumnAlign.Right), new("Reading", ColumnWidth.Millimetres(32))],
            [.. report.Measure.Select(Row)], TickBoxes.EachRow);
        yield return new ParagraphBlock(hand.Say("Write it down here, then: setout record FILE KEY READING --with INSTRUMENT. What is not cut yet follows it.", $"Write it down here, then enter it on the workbench: the stage {Hands.FitStage} has a field for each. What is not cut yet follows it."), TextSize.Small);
    }

    private static IEnumerable<Block> Allowances(SetPiece set, FitReport report)
    {
        if (report.Allowances.Length == 0) yield break;
        yield return new HeadingBlock("Allowances");
        foreach (string line in FitLines.Allowances(set, report, hasKeys: set.Piece.Hand == Hand.Commands)) yield return new ParagraphBlock(Figures.Phrase(line));
    }

    private static IEnumerable<Block> Drawings(SetPiece set, FitReport report, Paper paper)
    {
        ImmutableArray<AlikeGaps> alike = AlikeGaps.Of(report);
        ImmutableArray<Scene> scenes = Drawn(alike.Length);
        int drawn = alike.Length;
        // Fewer until they fit, so that the words of how to read them stand under the last.
        while (scenes.Length > MostDrawings) scenes = Drawn(--drawn);
        yield return new HeadingBlock("The gaps, the least likely to fit first");
        foreach (Scene scene in scenes) yield return new SceneBlock(scene);
        if (drawn < alike.Length)
            yield return new ParagraphBlock($"{alike.Skip(drawn).Sum(a => a.Gaps.Length)} more gaps are likelier to fit than these; {set.Piece.Hand.Say("'setout fit FILE --all' lists them", $"the stage {Hands.FitStage} shows them")}.", TextSize.Small);

        ImmutableArray<Scene> Drawn(int most) => GapPictures.Of(set, alike[..most], new GapPaper(paper == Paper.A4 ? 174 : 180, DrawingHeight));
    }
}
