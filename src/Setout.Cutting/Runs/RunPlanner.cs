using System.Collections.Immutable;

namespace Setout.Cutting.Runs;

/// <summary>Plans the runs: cuts from the layouts, an order with the fewest settings, then the saw followed through it.</summary>
/// <param name="budget">Settings tried in the search for fewer.</param>
public sealed class RunPlanner(int budget = RunOrder.UsualBudget) : IRunPlanner
{
    /// <inheritdoc/>
    public OrderedRuns Plan(ImmutableArray<RunMaterial> materials, SawLimits limits, CancellationToken cancel = default)
    {
        var ways = new CutWays(limits);
        var cuts = new AllCuts(materials, ways);
        (List<List<PlannedCut>> inTurn, int least) = new CutsInTurn(cuts).Runs(budget, cancel);
        if (FewerWaysRound.Of(cuts, inTurn, ways, budget, cancel) is { } turned)
        {
            (List<List<PlannedCut>> Runs, int Least) then = new CutsInTurn(turned).Runs(budget, cancel);
            if (turned.Refusals.Count < cuts.Refusals.Count || CutsInTurn.Count(then.Runs).CompareTo(CutsInTurn.Count(inTurn)) < 0) (cuts, inTurn, least) = (turned, then.Runs, then.Least);
        }
        var writer = new RunWriter(cuts.Materials, cuts.Stock);
        var runs = ImmutableArray.CreateBuilder<Run>(inTurn.Count);
        foreach (List<PlannedCut> run in inTurn)
        {
            int number = runs.Count + 1;
            Setting setting = run[0].Setting;
            RunKind kind = run.TrueForAll(c => c.Kind == run[0].Kind) ? run[0].Kind : setting.Kind;
            runs.Add(new(number, setting.Way, kind, setting.Figure, [.. run.Select(c => writer.Make(c, number))]));
        }
        var turns = new CutTurns(inTurn.SelectMany(c => c).Select((c, i) => (c, i)).ToDictionary(p => p.c, p => p.i));
        ImmutableArray<RunBlank> blanks = writer.Blanks;
        var plan = new RunPlan(blanks, Trials.Of(runs.ToImmutable(), blanks, cuts.Materials, ways), [.. cuts.Refusals.Select(r => new RunRefusal(r.Kind, writer.IdOf(r.Blank), r.Axis, r.Figure, r.PartIds))], least)
        {
            Later = [.. cuts.Later.Select(r => new LaterRefusal(new(r.Kind, writer.IdOf(r.Blank), r.Axis, r.Figure, r.PartIds), r.Blank.Along, r.Blank.Across))],
        };
        return new(plan, cuts.Sheets(turns), cuts.Boards(turns));
    }
}
