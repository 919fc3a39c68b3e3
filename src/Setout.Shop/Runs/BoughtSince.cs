using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Cutting.Runs;
using Setout.Shop.Plans;
using Setout.Shop.Rack;
using Setout.Shop.Texts;

namespace Setout.Shop.Runs;

/// <summary>
/// Wood that a plan asked to buy and that has come into the rack since: a run that begins it takes it from there, as long as it is there. What was in the rack before is none of that: the plan
/// knew it and did not take it, for its flaws or for others. Nor is what another piece has taken meanwhile: that is to be bought again. Mutable: what one sheet takes is not there for the next.
/// </summary>
internal sealed class BoughtSince
{
    private readonly Dictionary<(string Identity, Length Along, Length? Across), int> _come = [], _spokenFor = [];
    private readonly PieceSource _source;
    private readonly SetPiece _set;
    private readonly Texts.Shop _inHand;

    /// <summary>What there is for a plan.</summary>
    /// <param name="source">The texts as they are now.</param>
    /// <param name="set">The piece set out from them.</param>
    /// <param name="plan">The plan.</param>
    /// <param name="taken">What a run takes of a root blank, as the plan knew it.</param>
    public BoughtSince(PieceSource source, SetPiece set, SawnPlan plan, Func<RunBlank, TakenWood> taken)
    {
        (_source, _set, _inHand) = (source, set, source.ShopInHand);
        foreach (WoodCome come in plan.Come.Where(c => c.Name.Length == 0)) Add(_come, (come.Identity, come.Along, come.Across), come.Count);
        foreach (Run run in plan.Runs.Runs)
        {
            TakenWood[] planned = [.. plan.TakenBy(run).Where(b => plan.MadeBy(b.Id) is null).Select(taken).Where(IsOfTheRack)];
            // A run that is cut took of what came what it took from the rack and was not planned to; one that is not cut yet wants what it was planned to.
            if (WoodLedger.EntryOf(source.Log, plan.Id, run.Number) is not { } entry)
            {
                foreach (TakenWood wood in planned.Where(w => w.Size!.Flaws.IsEmpty)) Count(_spokenFor, wood, 1);
                continue;
            }
            foreach (TakenWood wood in entry.Took.Where(IsOfTheRack)) Count(_come, wood, -1);
            foreach (TakenWood wood in planned) Count(_come, wood, 1);
        }
    }

    /// <summary>The wood as the run takes it: from the rack where that has it, else as it was planned.</summary>
    public TakenWood Of(TakenWood wood)
    {
        if (wood is not { Source: WoodSource.Bought, Name.Length: 0 } || KeyOf(wood) is not { } key || _come.GetValueOrDefault(key) < 1) return wood;
        TakenWood there = wood with { Source = WoodSource.Rack };
        if (WoodInHand.CountOf(_inHand, _set, there) - _spokenFor.GetValueOrDefault(key) < 1) return wood;
        Add(_come, key, -1);
        Add(_spokenFor, key, 1);
        return there;
    }

    private static bool IsOfTheRack(TakenWood wood) => wood is { Source: WoodSource.Rack, Name.Length: 0 };

    private void Count(Dictionary<(string, Length, Length?), int> counts, TakenWood wood, int count)
    {
        if (KeyOf(wood) is { } key) Add(counts, key, count);
    }

    // Boards that are ripped are told by hand.
    private (string, Length, Length?)? KeyOf(TakenWood wood) => wood.Size is { Section: null } size && StockInHand.IdentityOf(_source.Piece, wood.Of, null) is { } identity ? (identity, size.Along, size.Across) : null;

    private static void Add(Dictionary<(string, Length, Length?), int> counts, (string, Length, Length?) key, int count) => counts[key] = counts.GetValueOrDefault(key) + count;
}
