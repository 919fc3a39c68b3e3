using System.Collections.Immutable;
using Setout.Core.Craft;
using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Cutting.Sheets;
using Setout.Drawing.Breakdowns;
using Setout.Drawing.Documents;
using Setout.Drawing.Scenes;
using Setout.Shop.Drawings;
using Setout.Shop.Plans;

namespace Setout.Shop.BenchSheets;

/// <summary>The marking-out drawings of the bench sheets, a section for each material, at their own size: a page has the room that its drawings are made for.</summary>
internal static class BreakdownPages
{
    /// <summary>The sections.</summary>
    public static IEnumerable<Section> Of(Plan plan, Paper paper) =>
        [.. plan.Sheets.Select(s => Sheets(plan, s, paper)), .. plan.Boards.Select(b => Boards(plan, b, paper)).Where(s => s.Blocks.Any(b => b is SceneBlock))];

    private static string Title(string material) => $"Breakdown of {material}";

    /// <summary>
    /// Two sheets stand on a page. One whose figures find no room on half a page is drawn higher: the first as high as the caution over it leaves room, then on a page
    /// of its own, at last on a page lying down, which takes the caution along where there is room.
    /// </summary>
    private static Section Sheets(Plan plan, SheetPlan sheets, Paper paper)
    {
        PageRoom room = PageRoom.Of(paper);
        string title = Title(sheets.Material.Name);
        // Each drawing says itself what may be cut at the fence.
        Block caution = new CautionBlock([Phrase.Of(Weight(plan, sheets))]);
        ImmutableArray<Block> head = [caution, .. Figures(plan.Set, sheets)];
        // In one line over a drawing that needs nearly all of a page lying down.
        ImmutableArray<Block> brief = [new ParagraphBlock(Phrase.Of($"Caution: {Weight(plan, sheets, isBrief: true)}").Bold()), .. Figures(plan.Set, sheets)];
        double first = PageRoom.Under(paper, title, head), alone = PageRoom.Under(paper, title, []);
        BreakdownPaper standing = new(room.Width, room.HalfHeight) { MostHeight = room.Height }, lying = new(room.LyingWidth, room.LyingHeight) { MostHeight = room.LyingHeight };
        double underLying = PageRoom.UnderLying(paper, title, [Kept(head)]), aloneLying = PageRoom.UnderLying(paper, title, []), over = PageRoom.Over(paper, head), underBrief = PageRoom.UnderLying(paper, title, [Kept(brief)]);
        BreakdownPaper lyingFirst = new(room.LyingWidth, underLying) { MostHeight = underLying }, lyingBrief = new(room.LyingWidth, underBrief) { MostHeight = underBrief }, lyingAlone = new(room.LyingWidth, aloneLying) { MostHeight = aloneLying };
        SceneBlock[] Drawn(params ImmutableArray<BreakdownPaper> firstOn) => Cautioned("", firstOn);
        SceneBlock[] Cautioned(string words, ImmutableArray<BreakdownPaper> firstOn) =>
        [
            .. MarkingOut.Of(plan, sheets, sheet => sheet switch
            {
                0 => firstOn,
                // The second may have to leave room for what found none over the first.
                1 => [standing with { MostHeight = over }, standing, lying],
                _ => [standing, lying],
            }, words).Select(s => new SceneBlock(s.Scene, s.Scene.Width > room.Width ? ScenePlace.WholePage : ScenePlace.InColumn)),
        ];
        BreakdownPaper underHead = standing with { MostHeight = first }, underTitle = standing with { MostHeight = alone };
        SceneBlock[] drawings = Drawn(underHead, underTitle, standing, lyingFirst, lyingAlone, lying);
        if (drawings is [{ Place: ScenePlace.InColumn } whole, ..] && whole.Scene.Height > alone) drawings = Drawn(underHead, underTitle, lyingFirst, lyingAlone, lying);
        // A page with a title and a caution alone is looked at by nobody: a drawing too high to stand under both stands under the title.
        if (drawings is [{ Place: ScenePlace.InColumn } high, ..] && high.Scene.Height > first)
        {
            // The caution goes over the next; where there is none, the drawing leaves it room.
            if (drawings.Length > 1) return new(title, [drawings[0], .. head, .. drawings[1..]]);
            drawings = Drawn(underHead, lyingFirst);
        }
        if (drawings is not [{ Place: ScenePlace.WholePage } lies, ..]) return new(title, [.. head, .. drawings]);
        // What finds no room over one that lies down stands over the next that leaves some; where none does, the first is drawn as high as it leaves room.
        int at = lies.Scene.Height <= underLying ? -1 : Array.FindIndex(drawings, d => d.Place == ScenePlace.InColumn && d.Scene.Height <= over);
        if (at > 0) return new(title, [.. drawings[..at], .. head, .. drawings[at..]]);
        if (lies.Scene.Height <= underLying) return new(title, [Kept(head), .. drawings]);
        // Under one line of caution there is more room; where it needs all of the page, it says so itself.
        SceneBlock[] underLine = Drawn(lyingBrief, lyingAlone);
        if (underLine[0].Scene.Height <= underBrief) return new(title, [Kept(brief), .. underLine]);
        SceneBlock[] itself = Cautioned(Weight(plan, sheets, isBrief: true), [lyingAlone]);
        return itself[0].Scene.Height <= aloneLying ? new(title, [.. itself, .. Figures(plan.Set, sheets)]) : new(title, [Kept(head), .. drawings]);
    }

    private static TogetherBlock Kept(ImmutableArray<Block> blocks) => new(blocks) { KeepsWithNext = true };

    /// <summary>What is to be kept in order: a front that is turned or exchanged breaks the figure for good.</summary>
    private static IEnumerable<Block> Figures(SetPiece set, SheetPlan sheets) => sheets.Instance.Groups.Select(g => (Block)new ParagraphBlock(
        $"The figure runs on over {string.Join(", ", g.PartIds.Select(id => set.Parts.First(p => p.Key == id).Mark))}, {(g.Axis == Cutting.Sheets.GrainAxis.Along ? "from left to right" : "from the top down")}. Strike a line across all of them before they are cut apart and mark their upper edges: none is turned or exchanged."));

    private static Section Boards(Plan plan, BoardPlan boards, Paper paper)
    {
        PageRoom room = PageRoom.Of(paper);
        string title = Title(boards.Material.Name);
        ImmutableArray<Block> caution = boards.IsRipped ? [new CautionBlock([Phrase.Of(Cautions.Of("rip").Words)])] : [];
        ImmutableArray<Scene> scenes = BoardBars.Of(plan, boards, new BreakdownPaper(room.Width, room.Height) { FirstHeight = PageRoom.Under(paper, title, caution) });
        return new(title, [.. caution, .. scenes.Select(s => new SceneBlock(s))]);
    }

    // By the same rule as the runs, so that both ask for a second person or neither does.
    private static string Weight(Plan whole, SheetPlan plan, bool isBrief = false)
    {
        string most = WeightWords.Short(whole.Source.Shop.Lift, whole.Set.Piece.Shown);
        SheetStock[] used = [.. plan.Outcome.Layout.Sheets.Select(s => plan.Instance.Stock.First(k => k.Id == s.StockId))];
        if (used.Length == 0 || used.MaxBy(s => s.Along * s.Across) is not { } largest || Weights.OfStock(whole.Set, plan.Material, largest.Along, largest.Across) is not { } mass)
            return $"What this wood weighs is not on record, so the runs cannot say which piece takes two: lift one end first.{(isBrief ? "" : $" {Cautions.Of("lift").Words}")}";
        bool isHeavy = OneLift.MostArea(whole.Set, plan.Material, whole.Source.Shop.Lift) is { } one && largest.Along * largest.Across > one;
        return $"A whole sheet weighs {WeightWords.Of(mass, whole.Set.Piece.Shown)}. {(isHeavy ? $"That may be more than the {most} that one lifts in this shop{(isBrief ? ": two people, or a carrier." : $". {Cautions.Of("lift").Words}")}" : "Carry it upright and look where you go.")}";
    }
}
