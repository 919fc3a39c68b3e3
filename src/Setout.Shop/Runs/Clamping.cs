using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Cutting.Runs;
using Setout.Cutting.Sheets;

namespace Setout.Shop.Runs;

/// <summary>Says how the straight edge of a hand-held saw is clamped: where, by which of its sides, and on which side of it the blade runs. A sentence each.</summary>
/// <param name="shoe">From the edge of the shoe to the near side of the blade; null where nobody has measured it.</param>
/// <param name="bare">How figures are written.</param>
internal sealed class Clamping(Length? shoe, LengthFormat bare)
{
    /// <summary>For a run of the hand-held saw; where its cuts have figures of their own, a sentence for each figure.</summary>
    public IEnumerable<string> Of(Run run)
    {
        RunCut[] each = [.. run.Cuts.DistinctBy(c => c.Figure)];
        foreach (RunCut cut in each)
        {
            string side = string.Join(" or ", run.Cuts.Where(c => c.Figure == cut.Figure).Select(c => c.Axis).Distinct().OrderDescending().Select(a => a == GrainAxis.Across ? "edge" : "end"));
            string said = run.Kind is RunKind.True or RunKind.Clear ? Beyond(run.Kind, cut, side) : Near(run.Kind, cut, side);
            yield return each.Length == 1 ? said : $"For {bare.Text(cut.Figure)} off: {char.ToLowerInvariant(said[0])}{said[1..]}";
        }
        if (shoe is null) yield return "Measure the offset from the shoe's edge to the blade, and write it as saws: guided: shoe.";
    }

    private string Beyond(RunKind kind, RunCut cut, string side)
    {
        string figure = bare.Text(cut.Figure), raw = kind == RunKind.True ? $"the raw {side}" : $"the {side} named";
        string at = shoe is { } known ? bare.Text(StraightEdge.For(kind, cut.Figure, cut.Kerf, known).At) : $"{figure} and the offset of your saw's shoe";
        return $"Clamp the straight edge on the good wood beyond the cut, the side that the shoe runs along {at} from {raw} and towards it; the blade takes the last of the {figure}, on the waste side.";
    }

    // One set-up, whether what remains is waste or goes on: the straight edge lies on what comes off, where that is wide enough.
    private string Near(RunKind kind, RunCut cut, string side)
    {
        string figure = bare.Text(cut.Figure), from = $"the reference {side}";
        if (shoe is { } known && StraightEdge.For(kind, cut.Figure, cut.Kerf, known) is { IsOnNearSide: false } beyond)
            return $"The piece is too narrow for the shoe: clamp the straight edge beyond the cut, the side that the shoe runs along {bare.Text(beyond.At)} from {from} and towards it; the blade runs just past {figure}, outside the piece at {from}.";
        string at = shoe is { } there ? bare.Text(StraightEdge.For(kind, cut.Figure, cut.Kerf, there).At) : $"{figure} less the offset of your saw's shoe";
        return $"Clamp the straight edge on the piece at {from}, the side that the shoe runs along {at} from it and towards the cut; the blade runs just past {figure}, outside that piece.";
    }
}
