using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Workings;
using Setout.Cutting.Runs;
using Setout.Cutting.Sheets;
using Setout.Shop.Plans;
using Setout.Shop.Texts;

namespace Setout.Shop.Runs;

/// <summary>Says how the straight edge of a hand-held saw is clamped: on which wood, where, by which of its sides, and on which side of it the blade runs. A sentence each.</summary>
internal sealed class Clamping(Plan plan, BlankNames names)
{
    // No saw's shoe is wider on one side of the blade: common practice, no source.
    private static readonly Length s_widestShoe = Length.FromInches(12);

    private readonly Length? _shoe = plan.Source.Shop.Saws.Guided?.Shoe;
    private readonly LengthFormat _bare = LengthFormat.For(plan.Set.Piece.Shown).Bare;

    /// <summary>For a run of the hand-held saw; where its cuts have figures of their own, a sentence for each figure.</summary>
    public IEnumerable<string> Of(Run run)
    {
        RunCut[][] each = [.. run.Cuts.GroupBy(c => c.Figure).Select(g => g.ToArray())];
        foreach (RunCut[] cuts in each)
        {
            string side = string.Join(" or ", cuts.Select(c => c.Axis).Distinct().OrderDescending().Select(a => a == GrainAxis.Across ? "edge" : "end"));
            string said = run.Kind is RunKind.True or RunKind.Clear ? Beyond(run.Kind, cuts[0], side) : Near(run.Kind, cuts, side);
            yield return each.Length == 1 ? said : $"For {_bare.Text(cuts[0].Figure)} off: {char.ToLowerInvariant(said[0])}{said[1..]}";
        }
        if (Beside(run) is { Length: > 0 } bare)
            yield return $"There is no wood under the straight edge at {CutLines.Names(bare)}: lay a piece of the same thickness beside {(bare.Length > 1 ? "each" : "it")}, fixed down, to carry straight edge and shoe.";
        if (_shoe is null) yield return plan.Set.Piece.Hand.Say("Measure the offset from the shoe's edge to the blade, and write it as saws: guided: shoe.", $"Measure the offset from the shoe's edge to the blade, and enter it at {ShopHands.SawOnPage("guided")}.");
    }

    // Blanks that end before the straight edge that is clamped beyond the cut begins.
    private string[] Beside(Run run) => _shoe is not { } shoe ? [] :
    [
        .. run.Cuts.Where(c => StraightEdge.For(run.Kind, c.Figure, c.Kerf, shoe) is { IsOnNearSide: false } edge
                && edge.At >= Extent(plan.Runs.Blanks[c.Blank], c.Axis))
            .Select(c => names.Spoken(c.Blank)).Distinct(),
    ];

    private static Length Extent(RunBlank blank, GrainAxis axis) => axis == GrainAxis.Along ? blank.Along : blank.Across;

    private string Beyond(RunKind kind, RunCut cut, string side)
    {
        string figure = _bare.Text(cut.Figure), raw = kind == RunKind.True ? $"the raw {side}" : $"the {side} named";
        string at = _shoe is { } known ? _bare.Text(StraightEdge.For(kind, cut.Figure, cut.Kerf, known).At) : $"{figure} and the offset of your saw's shoe";
        return $"Clamp the straight edge on the good wood beyond the cut, its shoe side {at} from {raw} and facing the cut; the blade takes the last of the {figure}, on the waste side.";
    }

    // One set-up, whether what remains is waste or goes on: the straight edge lies on what comes off, where that is wide enough.
    private string Near(RunKind kind, RunCut[] cuts, string side)
    {
        RunCut cut = cuts[0];
        string figure = _bare.Text(cut.Figure), from = $"the {Made(cuts)} {side}", piece = Piece(cuts) is { Length: > 0 } one ? one : $"the piece at {from}";
        string ends = $"the blade runs just past {figure}, outside {(piece.StartsWith("the piece", StringComparison.Ordinal) ? "that piece" : piece)}";
        if (_shoe is not { } shoe)
        {
            string narrow = cut.Figure >= s_widestShoe ? "" : $" Where the piece is narrower than the shoe: straight edge beyond the cut, its shoe side {_bare.Text(cut.Figure + cut.Kerf)} and that offset from {from}; where no wood is there, on a piece of the same thickness laid beside it and fixed down.";
            return $"Clamp the straight edge on {piece}, its shoe side {figure} less the offset of your saw's shoe from {from} and facing the cut; {ends}.{narrow}";
        }
        var edge = StraightEdge.For(kind, cut.Figure, cut.Kerf, shoe);
        return edge.IsOnNearSide
            ? $"Clamp the straight edge on {piece}, its shoe side {_bare.Text(edge.At)} from {from} and facing the cut; {ends}."
            : $"{char.ToUpperInvariant(piece[0])}{piece[1..]} is narrower than the shoe: clamp the straight edge beyond the cut, its shoe side {_bare.Text(edge.At)} from {from} and facing the cut; {ends}.";
    }

    // How the side that all are measured from was made, in a word.
    private string Made(RunCut[] cuts)
    {
        string[] made = [.. cuts.Select(c => c.FromRun is not > 0 ? "reference" : plan.Runs.Runs.First(r => r.Number == c.FromRun).Kind == RunKind.True ? "trued" : "sawn").Distinct()];
        return made is [var one] ? one : "reference";
    }

    // The one name of all that comes off; empty where there are several, and where it is the blank itself that only loses its waste.
    private string Piece(RunCut[] cuts)
    {
        string[] off = [.. cuts.Select(c => c.Off is { } id && plan.Runs.Blanks[id].Use != BlankUse.Waste && names[id] != names[c.Blank] ? names.SpokenPiece(id) : "").Distinct()];
        return off is [var one] ? one : "";
    }
}
