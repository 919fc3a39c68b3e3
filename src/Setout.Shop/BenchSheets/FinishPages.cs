using System.Collections.Immutable;
using Setout.Core.Craft;
using Setout.Core.SettingOut;
using Setout.Drawing.Documents;
using Setout.Drawing.Scenes;
using Setout.Shop.Drawings;
using Setout.Shop.Plans;

namespace Setout.Shop.BenchSheets;

/// <summary>What is finished with what, when, and how much of it that takes.</summary>
internal static class FinishPages
{
    /// <summary>The section; none where the piece says nothing of its finish.</summary>
    public static IEnumerable<Section> Of(SetPiece set)
    {
        ImmutableArray<FinishSheet> sheets = FinishLines.Of(set);
        if (sheets.IsEmpty) yield break;
        ImmutableArray<string> none = FinishLines.None(set);
        yield return new("Finishing",
        [
            new CautionBlock([.. FinishLines.Cautions.Select(c => Phrase.Of(c.Words)), Phrase.Of(Cautions.Deference)]),
            .. sheets.SelectMany(Sheet),
            .. FinishLines.Bare(set) is { IsEmpty: false } bare ? [new ParagraphBlock($"Left bare: {string.Join("; ", bare.Select(b => $"{b.Words}, {b.Area}"))}.")] : ImmutableArray<Block>.Empty,
            .. none.IsEmpty ? ImmutableArray<Block>.Empty : [new ParagraphBlock($"Takes none: {string.Join("; ", none)}.")],
            new ParagraphBlock(FinishLines.Limits, TextSize.Small),
        ]);
    }

    private static IEnumerable<Block> Sheet(FinishSheet sheet)
    {
        yield return new HeadingBlock(sheet.Title);
        yield return new ParagraphBlock(sheet.Sum);
        foreach (FinishGroup group in sheet.Groups)
        {
            yield return new ParagraphBlock(group.Why, TextSize.Small) { KeepsWithNext = true };
            yield return Table(group);
        }
    }

    private static TableBlock Table(FinishGroup group)
    {
        var rows = ImmutableArray.CreateBuilder<TableRow>();
        rows.Add(new GroupRow(Phrase.Of(group.Title)));
        foreach (FinishLine line in group.Lines)
        {
            // On one line where there is room: a piece of a hundred parts is not to take ten pages.
            Phrase sum = Figures.Phrase(line.Sum), said = line.Remark.Length == 0 ? sum : sum.Add("; ").Add(Phrase.Of(line.Remark).Italic());
            rows.Add(CellRow.Of(Cell.Of(Phrase.Of(line.Part.Mark).Bold()), new Cell([Phrase.Of(line.Part.Name), said]), Cell.Of($"{line.Part.Count}"), Cell.Of(line.Area)));
        }
        return new([new("Mark", ColumnWidth.Fit), new("Part", ColumnWidth.Share(1)), new("Of", ColumnWidth.Fit, ColumnAlign.Right), new("Area", ColumnWidth.Fit, ColumnAlign.Right)], rows.ToImmutable(), TickBoxes.EachRow);
    }
}
