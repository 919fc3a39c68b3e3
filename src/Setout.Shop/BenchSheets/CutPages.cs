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
            new CautionBlock([Phrase.Of("Put the hood and the spreader back at once after grooving. Groove a scrap first and try in it what goes in."), Phrase.Of(Cautions.Deference)]),
            Table(set, StripGrooves.Of(plan)),
            .. faces.IsEmpty ? ImmutableArray<Block>.Empty : [new HeadingBlock("Where the holes are"),
                new ParagraphBlock("Each face with its front or lower edge below and its lower or left end at the left; measure from there unless a figure runs from the other edge. Parts in pairs are bored as mirror images.", TextSize.Small) { KeepsWithNext = true }],
            .. faces.Select(f => new SceneBlock(f.Scene)),
        ]);
    }

    private static TableBlock Table(SetPiece set, ImmutableArray<StripGroove> strips)
    {
        LengthFormat bare = LengthFormat.For(set.Piece.Unit).Bare;
        string Written(Machining m) => $"{m.Words} ({m.Where}): {string.Join('|', m.Figures.Select(f => $"{f.Name} {set.Worked[f.Key]}"))}";
        // What went into long strips is not cut again.
        string InStrips(Machining cut, IEnumerable<string> parts) => parts.All(p => strips.Any(s => s.Parts.Any(c => c.Part == p && c.Words == cut.Words)))
            ? $"; in the strips already, before run {strips.First(s => s.Parts.Any(c => c.Words == cut.Words && parts.Contains(c.Part))).Before}" : "";
        // Parts with all their cuts alike are cut at the same settings, and stand together.
        var alike = set.Machinings.GroupBy(m => m.Part).Select(g => (Part: set.Parts.First(p => p.Key == g.Key), Cuts: g.ToList()))
            .GroupBy(p => string.Join('\n', p.Cuts.Select(Written))).OrderBy(g => g.Min(p => Turn(set, p.Part.Key)));
        var rows = ImmutableArray.CreateBuilder<TableRow>();
        foreach (var group in alike)
        {
            rows.Add(new GroupRow(Phrase.Of($"{string.Join(" ", group.Select(p => p.Part.Mark))}  {Named([.. group.Select(p => p.Part)])}")));
            foreach (Machining cut in group.First().Cuts)
                rows.Add(CellRow.Of(Cell.Of(Drawings.Figures.Phrase((cut.Where.Length > 0 ? $"{Upper(cut.Words)} ({cut.Where})" : Upper(cut.Words)) + InStrips(cut, group.Select(g => g.Part.Key)))), new Cell([.. cut.Figures.Select(f => Phrase.Of($"{f.Name} ").Add(bare.Format(set.Worked[f.Key])))])));
        }
        return new([new("What", ColumnWidth.Share(3)), new("Figures", ColumnWidth.Share(2))], rows.ToImmutable(), TickBoxes.EachRow);
    }

    /// <summary>The step that a part comes in: what is needed first is cut first.</summary>
    private static int Turn(SetPiece set, string part)
    {
        for (int i = 0; i < set.Steps.Length; i++)
            if (set.Steps[i].Stage != Stage.Edges && set.Steps[i].Parts.Contains(part)) return i;
        return set.Steps.Length;
    }

    private static string Named(ImmutableArray<Part> parts) => parts.Length == 1 ? parts[0].Name : $"{parts[0].Name} and {(parts.Length == 2 ? parts[1].Name : $"{parts.Length - 1} more alike")}";

    private static string Upper(string words) => char.ToUpperInvariant(words[0]) + words[1..];
}
