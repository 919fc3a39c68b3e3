using Setout.Core.Measures;
using Setout.Cutting.Runs;
using Setout.Shop.Plans;
using Setout.Shop.Rack;
using Setout.Shop.Texts;

namespace Setout.Shop.Runs;

/// <summary>
/// Wood that a plan asked to buy and that has come into the rack since: a run that begins it takes it from there. What was in the rack before is none of that: the plan knew it and did not take
/// it, for its flaws or for others. Mutable: what one sheet takes is not there for the next.
/// </summary>
internal sealed class BoughtSince
{
    private readonly Dictionary<(string Identity, Length Along, Length? Across), int> _there = [];
    private readonly PieceSource _source;

    /// <summary>What there is for a plan.</summary>
    /// <param name="source">The texts as they are now.</param>
    /// <param name="plan">The plan.</param>
    /// <param name="taken">What a run takes of a root blank, as the plan knew it.</param>
    public BoughtSince(PieceSource source, SawnPlan plan, Func<RunBlank, TakenWood> taken)
    {
        _source = source;
        foreach (WoodCome come in plan.Come.Where(c => c.Name.Length == 0)) Add((come.Identity, come.Along, come.Across), come.Count);
        // Runs that are cut took of it what they took from the rack and were not planned to.
        foreach (Run run in plan.Runs.Runs)
        {
            if (WoodLedger.EntryOf(source.Log, plan.Id, run.Number) is not { } entry) continue;
            foreach (TakenWood wood in entry.Took.Where(IsOfTheRack)) Take(wood, -1);
            foreach (TakenWood wood in plan.TakenBy(run).Where(b => plan.MadeBy(b.Id) is null).Select(taken).Where(IsOfTheRack)) Take(wood, 1);
        }
    }

    /// <summary>The wood as the run takes it: from the rack where that has it, else as it was planned.</summary>
    public TakenWood Of(TakenWood wood)
    {
        if (wood is not { Source: WoodSource.Bought, Name.Length: 0 } || KeyOf(wood) is not { } key || _there.GetValueOrDefault(key) < 1) return wood;
        Add(key, -1);
        return wood with { Source = WoodSource.Rack };
    }

    private static bool IsOfTheRack(TakenWood wood) => wood is { Source: WoodSource.Rack, Name.Length: 0 };

    private void Take(TakenWood wood, int count)
    {
        if (KeyOf(wood) is { } key) Add(key, count);
    }

    // Boards that are ripped are told by hand.
    private (string, Length, Length?)? KeyOf(TakenWood wood) => wood.Size is { Section: null } size && StockInHand.IdentityOf(_source.Piece, wood.Of, null) is { } identity ? (identity, size.Along, size.Across) : null;

    private void Add((string, Length, Length?) key, int count) => _there[key] = _there.GetValueOrDefault(key) + count;
}
