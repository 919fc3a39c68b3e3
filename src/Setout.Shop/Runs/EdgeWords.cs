using System.Collections.Immutable;
using Setout.Core.Measures.Text;
using Setout.Cutting.Runs;
using Setout.Cutting.Sheets;
using Setout.Shop.Plans;

namespace Setout.Shop.Runs;

/// <summary>Says which edge or end lies at fence and stop, or is measured from, so that nobody takes the one opposite for it.</summary>
internal sealed class EdgeWords(Plan plan, BlankNames names)
{
    private readonly LengthFormat _bare = LengthFormat.For(plan.Set.Piece.Shown).Bare;

    private readonly Dictionary<int, Run> _runs = plan.Runs.Runs.ToDictionary(r => r.Number);

    /// <summary>Which run made each side true.</summary>
    public SideRuns Sides { get; } = new(plan.Runs);

    /// <summary>What lies where at cuts that follow on one blank: at fence or stop, or where the figure is measured from; then what lies against the sled's fence.</summary>
    public string Of(Run run, ImmutableArray<RunCut> cuts)
    {
        RunCut first = cuts[0];
        string side = Side(run, first, first.From, first.FromRun);
        // Boards have true edges: which of them lies at the fence of the crosscut saw is the same to it.
        string fence = first.Against is not { } against || run.Way == SawWay.Stop ? "" : $"; against the sled's fence: {Side(run, first, against, first.AgainstRun)}";
        if (run.Kind == RunKind.Clear) return $"mark {_bare.Text(first.Figure)} from {side}; blade on the flaw's side of the mark{fence}";
        if (run.Kind == RunKind.True)
        {
            // A line at a distance from a raw side follows it; on sled and rest the fence makes it square.
            string square = run.Way == SawWay.Guide && Sides.SquareTo(first) is { } to ? $", square to {Side(run, first, to, Sides.Of(first.Blank, to))}" : "";
            return $"off {side}{square}{fence}";
        }
        string just = first.FromRun != run.Number && cuts.Skip(1).Any(c => c.FromRun == run.Number) ? $", then the {Word(first.From)} just {(first.PlanedRest.Sign > 0 ? "planed" : "sawn")}" : "";
        string at = run.Way switch { SawWay.Fence => "at the fence", SawWay.Guide => "measured from", _ => "at the stop" };
        return $"{at}{(run.Way == SawWay.Guide ? "" : ":")} {side}{just}{fence}";
    }

    // A raw or a bought side has a like one opposite: the drawing tells them apart, and on a board with flaws the end they are measured from.
    private string Side(Run run, RunCut cut, BlankSide side, int? by)
    {
        string word = Word(side), zero = side is BlankSide.NearEdge or BlankSide.NearEnd ? "at 0" : "away from 0";
        string flaws = side == BlankSide.NearEnd && !plan.Runs.Blanks[cut.Blank].Flaws.IsEmpty ? ", where its flaws are measured from" : "";
        if (by is null) return $"the raw {word} {zero}{flaws}";
        if (by == 0) return FromTheStart(plan.Runs.Blanks[cut.Blank], side, word, zero, flaws);
        if (by == run.Number) return $"the {word} just {(run.Kind == RunKind.True ? "trued" : cut.PlanedRest.Sign > 0 ? "planed" : "sawn")}";
        return $"the {word} {(_runs.TryGetValue(by.Value, out Run? made) && made.Kind == RunKind.True ? "trued" : "sawn")} in run {by}";
    }

    // Which side was bought with wood that an earlier run left nobody knows any more; where one of two is raw, that tells them apart.
    private string FromTheStart(RunBlank blank, BlankSide side, string word, string zero, string flaws)
    {
        BlankSide opposite = Opposite(side);
        string other = Sides.Of(blank.Id, opposite) is null ? " (the other is raw)" : "";
        bool isBlank = names.LineOf(blank.Material, blank.Stock).IsBlank;
        if (isBlank && plan.Runs.Blanks.First(b => (b.Material, b.Stock) == (blank.Material, blank.Stock)).IsRaw(opposite)) return $"the {word} sawn before, {zero}{flaws}{other}";
        return isBlank || other.Length > 0 ? $"the true {word} {zero}{flaws}{other}" : $"the {word} as bought {zero}{flaws}";
    }

    private static BlankSide Opposite(BlankSide side) => side switch
    {
        BlankSide.NearEdge => BlankSide.FarEdge,
        BlankSide.FarEdge => BlankSide.NearEdge,
        BlankSide.NearEnd => BlankSide.FarEnd,
        _ => BlankSide.NearEnd,
    };

    private static string Word(BlankSide side) => side is BlankSide.NearEdge or BlankSide.FarEdge ? "edge" : "end";
}
