using System.Collections.Immutable;
using Setout.Core.Craft;
using Setout.Core.Measures.Text;
using Setout.Core.SettingOut;
using Setout.Drawing.Documents;
using Setout.Drawing.Elevations;
using Setout.Drawing.Scenes;
using Setout.Shop.Drawings;
using Setout.Shop.Plans;
using Setout.Shop.Runs;

namespace Setout.Shop.BenchSheets;

/// <summary>What is cut and bored into parts after they have their sizes: by part, in the order in which the work wants them, then the faces with holes drawn.</summary>
internal static class CutPages
{
    private const string Title = "Cuts and holes";
    private const double FaceHeight = 78;

    /// <summary>The section; none where nothing is cut into any part.</summary>
    public static IEnumerable<Section> Of(Plan plan, Paper paper)
    {
        SetPiece set = plan.Set;
        if (set.Machinings.IsEmpty) yield break;
        ImmutableArray<BoredFace> faces = BoredParts.Of(set, new PaperBox(PageRoom.Of(paper).Width, FaceHeight) { FigureSize = 3.4 });
        yield return new(Title,
        [
            new CautionBlock([Phrase.Of(CutGroup.Caution), Phrase.Of(Cautions.Deference)]),
            Table(plan),
            .. faces.IsEmpty ? ImmutableArray<Block>.Empty : [new HeadingBlock("Where the holes are"),
                new ParagraphBlock(CutGroup.FacesWords, TextSize.Small) { KeepsWithNext = true }, new CautionBlock([Phrase.Of(CutGroup.OfHoles)])],
            .. faces.Select(f => new SceneBlock(f.Scene)),
        ]);
    }

    // What can hurt stands at what is done, not in front of the page alone.
    private static Cell What(GroupedCut cut) => cut.Caution.Length == 0 ? Cell.Of(Figures.Phrase(cut.Words))
        : new([Figures.Phrase(cut.Words), Phrase.Of($"Caution: {cut.Caution}").Italic()]);

    private static TableBlock Table(Plan plan)
    {
        LengthFormat bare = LengthFormat.For(plan.Set.Piece.Shown).Bare;
        var rows = ImmutableArray.CreateBuilder<TableRow>();
        foreach (CutGroup group in CutGroup.Of(plan))
        {
            rows.Add(new GroupRow(Phrase.Of($"{string.Join(" ", group.Parts.Select(p => p.Mark))}  {group.Name}")));
            foreach (GroupedCut cut in group.Cuts)
                rows.Add(CellRow.Of(What(cut), new Cell([.. cut.Figures.Select(f => Phrase.Of($"{f.Name} ").Add(Figures.ByTheRule(bare.Format(plan.Set.Worked[f.Key]))))])));
        }
        return new([new("What", ColumnWidth.Share(3)), new("Figures", ColumnWidth.Share(2))], rows.ToImmutable(), TickBoxes.EachRow);
    }
}
