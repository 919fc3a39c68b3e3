using System.Collections.Immutable;
using Setout.Core.Craft;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.SettingOut;
using Setout.Drawing.Documents;
using Setout.Drawing.Scenes;
using Setout.Shop.Drawings;
using Setout.Shop.Plans;
using Setout.Shop.Runs;
using Setout.Shop.Texts;

namespace Setout.Shop.BenchSheets;

/// <summary>The lists on paper: what is bought, and the parts.</summary>
internal static class ListPages
{
    /// <summary>What is bought, and what is taken out of the rack.</summary>
    public static ImmutableArray<Block> Buying(Plan plan)
    {
        var rows = ImmutableArray.CreateBuilder<TableRow>();
        foreach (IGrouping<BuyingKind, BuyingLine> group in plan.Buying.GroupBy(l => l.Kind))
        {
            rows.Add(new GroupRow(Phrase.Of(GroupName(group.Key))));
            foreach (BuyingLine line in group)
            {
                rows.Add(CellRow.Of(Cell.Of($"{line.Count}"), Cell.Of(line.Units), line.Beside.Length == 0 ? Cell.Of(Figures.Phrase(line.Item)) : new([Figures.Phrase(line.Item), Figures.Phrase(line.Beside).Italic()]),
                    Cell.Of(line.Kind == BuyingKind.FromTheRack ? "" : line.Price?.ToString() ?? "?"), Cell.Of(line.Kind == BuyingKind.FromTheRack ? "" : line.Total?.ToString() ?? "?")));
            }
        }
        Block table = new TableBlock(
        [
            new("", ColumnWidth.Fit, ColumnAlign.Right, TextSize.Figure), new("", ColumnWidth.Fit), new("What", ColumnWidth.Share(1)),
            new("each", ColumnWidth.Fit, ColumnAlign.Right), new("in all", ColumnWidth.Fit, ColumnAlign.Right),
        ], rows.ToImmutable(), TickBoxes.EachRow);
        string sum = plan.Cost > Money.Zero ? $"Together {Amount(plan)}{(plan.Unpriced > 0 ? $", without the {plan.Unpriced} lines that have no price" : "")}." : plan.Buying.Any(l => l.Kind != BuyingKind.FromTheRack) ? $"No prices are known; put them into {plan.Set.Piece.Hand.Shop}." : "Nothing to buy.";
        return [table, new ParagraphBlock(sum), new ParagraphBlock("Thickness is read off the sheet that you bring home, not off its label. Take a calliper along.", TextSize.Small)];
    }

    /// <summary>What it costs, as far as there are prices.</summary>
    public static string Amount(Plan plan) => $"{plan.Cost} {plan.Source.Shop.Currency}".TrimEnd();

    /// <summary>What a kind of line stands under.</summary>
    public static string GroupName(BuyingKind kind) => kind switch
    {
        BuyingKind.Sheet => "Sheet goods",
        BuyingKind.Board => "Lumber",
        BuyingKind.Hardware => "Hardware",
        _ => "From the rack",
    };

    /// <summary>Every part with its figures to cut and what it waits for.</summary>
    public static ImmutableArray<Block> Parts(Plan plan)
    {
        SetPiece set = plan.Set;
        LengthFormat bare = LengthFormat.For(set.Piece.Shown).Bare;
        var rows = ImmutableArray.CreateBuilder<TableRow>();
        foreach (IGrouping<string, Part> group in set.Parts.GroupBy(p => p.Material))
        {
            ExactLength thickness = set.Worked[group.First().Thickness];
            rows.Add(new GroupRow(Phrase.Of($"{group.Key}, ").Add(LengthFormat.For(set.Piece.Shown).Format(thickness)).Add($" thick; together {WeightWords.Of(Weights.Of(set, group), set.Piece.Shown)}")));
            foreach (Part part in group)
            {
                rows.Add(CellRow.Of(Cell.Of(Phrase.Of(part.Mark).Bold()), State(plan, part), Cell.Of($"{part.Count}"),
                    Cell.Of(Phrase.Of(bare.Format(set.Worked[part.Length.ToCut]))), Cell.Of(Phrase.Of(bare.Format(set.Worked[part.Width.ToCut]))), Cell.Of(WeightWords.Short(Weights.OfOne(set, part), set.Piece.Shown))));
            }
        }
        return
        [
            new ParagraphBlock($"Figures to cut, in {set.Piece.Shown.Words}{(plan.Source.Together is null ? $", on a grid of {set.Grid}" : "")}{Rounded(set)}. Length runs with the grain. Equal figures are cut at one setting."),
            new TableBlock([new("Mark", ColumnWidth.Fit), new("Part", ColumnWidth.Share(1)), new("Of", ColumnWidth.Fit, ColumnAlign.Right, TextSize.Figure),
                new("Length", ColumnWidth.Fit, ColumnAlign.Right, TextSize.Figure), new("Width", ColumnWidth.Fit, ColumnAlign.Right, TextSize.Figure), new("each", ColumnWidth.Fit, ColumnAlign.Right)], rows.ToImmutable(), TickBoxes.EachRow),
            new ParagraphBlock($"The last column is what one of them weighs. {WeightWords.Whole(set, plan.Source.Together is null)}"),
        ];
    }

    // Who cuts by a figure in the other unit is told how near it is.
    private static string Rounded(SetPiece set) => set.Piece.Shown == set.Piece.Unit ? ""
        : $"; the piece is set out in {set.Piece.Unit.Words}, and each figure is shown to the nearest {(set.Piece.Shown == LengthUnit.Inch ? "1/64 in" : "0.1 mm")}";

    private static Cell State(Plan plan, Part part)
    {
        int cut = plan.Set.Facts.CutOf(part);
        string[] remarks =
        [
            .. plan.Set.EdgesOf(part) is not "raw" and { } edges ? [edges] : Array.Empty<string>(),
            .. cut > 0 ? [cut == part.Count ? "cut" : $"{cut} cut"] : Array.Empty<string>(),
            .. cut < part.Count && plan.Set.IsHeld(part) ? [$"wait: read {HeldWords.Of(plan.Set, part.HeldUntil[^1])} first"] : Array.Empty<string>(),
            .. ReadAsCut.Of(plan.Set, part).Select(r => $"read: {r.Word} {LengthFormat.For(plan.Set.Piece.Shown).Text(r.Read)}"),
        ];
        return remarks.Length == 0 ? Cell.Of(part.Name) : new([Phrase.Of(part.Name), Phrase.Of(string.Join("; ", remarks)).Italic()]);
    }
}
