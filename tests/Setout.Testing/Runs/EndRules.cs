using Setout.Core.Measures;
using Setout.Cutting.Boards;
using Setout.Cutting.Runs;
using Setout.Cutting.Sheets;

namespace Setout.Testing.Runs;

/// <summary>What must be true of all that lies there when the last run is done.</summary>
internal static class EndRules
{
    public static void Check(Bench bench)
    {
        foreach (RunBlank blank in bench.Plan.Blanks)
        {
            if (blank.Use != BlankUse.Stock && !bench.Ever.Contains(blank.Id)) bench.Wrong(SawRule.MadeOnce, $"no cut makes blank {blank.Id}");
            bool waits = blank.Use == BlankUse.Waiting || (blank.Use == BlankUse.Stock && bench.There.ContainsKey(blank.Id));
            if (blank.Waiting.IsEmpty == waits) bench.Wrong(SawRule.HeldWait, $"blank {blank.Id} is {blank.Use}, {blank.Waiting.Length} parts wait in it");
            if (blank.PartId.Length > 0 != (blank.Use == BlankUse.Part || blank.Spares > 0)) bench.Wrong(SawRule.PartsComeOut, $"blank {blank.Id} is {blank.Use} and called part {blank.PartId}");
        }
        foreach ((int id, Wood wood) in bench.There)
        {
            RunBlank blank = bench.Plan.Blanks[id];
            if (blank.Use == BlankUse.Part) Part(bench, blank, wood);
            if (blank.Use == BlankUse.Work) bench.Wrong(SawRule.NothingIsHalfCut, $"blank {id} is made for a later run and none cuts it");
        }
        foreach (RunRefusal refusal in bench.Plan.Refusals) Refusal(bench, refusal);
        Int128 left = bench.There.Keys.Aggregate(Int128.Zero, (sum, id) => sum + (bench.Plan.Blanks[id].Along * bench.Plan.Blanks[id].Across).SquareTicks);
        if (left + bench.DustArea != bench.StockArea)
            bench.Wrong(SawRule.WoodIsNotLost, $"the stock is {Mm2(bench.StockArea)}; {Mm2(left)} lie there and {Mm2(bench.DustArea)} are dust, {bench.StockArea - left - bench.DustArea} square ticks are lost");
    }

    private static string Mm2(Int128 squareTicks) => Area.FromSquareTicks(squareTicks).ToString();

    private static void Part(Bench bench, RunBlank blank, Wood wood)
    {
        RunMaterial material = bench.Materials[wood.Material];
        if (material.Held.Contains(blank.PartId)) bench.Wrong(SawRule.HeldAreNotCut, $"part {blank.PartId} waits for a reading and is cut as blank {blank.Id}", wood.MadeBy);
        (Length Along, Length Across)? size = bench.SizeOf(blank);
        if (size is not { } wanted || (wanted.Along.Ticks, wanted.Across.Ticks) != (wood.Along, wood.Across))
            bench.Wrong(SawRule.PartsHaveTheirSize, $"part {blank.PartId} lies {blank.Turn} and comes out {wood}, it must be {size?.Along} by {size?.Across}", wood.MadeBy);
        foreach (BlankSide side in Enum.GetValues<BlankSide>().Where(s => wood.Side(s).Run is null))
            bench.Wrong(SawRule.PartsAreTrue, $"the {side} of part {blank.PartId}, blank {blank.Id}, is raw", wood.MadeBy);
        if (!wood.Flaws.IsEmpty) bench.Wrong(SawRule.PartsAreTrue, $"a flaw lies in part {blank.PartId}, blank {blank.Id}", wood.MadeBy);
    }

    private static void Refusal(Bench bench, RunRefusal refusal)
    {
        if (!bench.There.TryGetValue(refusal.Blank, out Wood? wood) || bench.Plan.Blanks[refusal.Blank].Use is not (BlankUse.Stock or BlankUse.Waiting))
        {
            bench.Wrong(SawRule.RefusalIsNeeded, $"blank {refusal.Blank} is refused, it does not lie there to be cut");
            return;
        }
        if (refusal.PartIds.IsEmpty) bench.Wrong(SawRule.RefusalIsNeeded, $"the refusal of blank {refusal.Blank} names no part");
        foreach (SawWay way in Enum.GetValues<SawWay>().Where(w => Makes(bench, w, wood, refusal)))
            bench.Wrong(SawRule.RefusalIsNeeded, $"blank {refusal.Blank}, {wood}, {refusal.Axis} at {refusal.Figure} is refused ({refusal.Kind}), {way} could make it");
    }

    private static bool Makes(Bench bench, SawWay way, Wood wood, RunRefusal refusal)
    {
        bool board = bench.Materials[wood.Material] is RunBoards, across = refusal.Axis == GrainAxis.Across, trues = refusal.Kind == RefusalKind.NothingTrues;
        if (CutRules.Refuses(bench.Limits, way, wood, refusal.Axis, refusal.Figure.Ticks, isMarked: trues).Any()) return false;
        if ((way == SawWay.Stop && (!board || across)) || (way == SawWay.Fence && (trues || (board && !across))) || (board && across && way != SawWay.Fence)) return false;
        bool HasTrue(GrainAxis axis) => wood.Side(Wood.Near(axis)).Run is not null || wood.Side(Wood.Far(axis)).Run is not null;
        if (way is SawWay.Sled or SawWay.Stop && !HasTrue(Wood.Other(refusal.Axis))) return false;
        return trues || HasTrue(refusal.Axis);
    }
}

/// <summary>Which parts came out of one sheet or board, and which wait.</summary>
internal static class PartsOut
{
    /// <param name="bench">The bench at the end.</param>
    /// <param name="live">What lies there of this sheet or board.</param>
    /// <param name="laid">The parts laid on it.</param>
    /// <param name="held">The parts that wait.</param>
    /// <param name="mates">Parts whose figure runs through to one that waits: they may wait with it.</param>
    /// <param name="unsized">Parts in strips whose width a reading gives, as often as they are: they must wait.</param>
    /// <param name="where">The sheet or board in words.</param>
    public static void Check(Bench bench, IReadOnlyList<RunBlank> live, IReadOnlyList<string> laid, IReadOnlySet<string> held, IReadOnlySet<string> mates, IReadOnlyList<string> unsized, string where)
    {
        Dictionary<string, int> came = live.Where(b => b.Use == BlankUse.Part).CountBy(b => b.PartId).ToDictionary();
        Dictionary<string, int> waiting = live.SelectMany(b => b.Waiting).CountBy(id => id).ToDictionary(), of = laid.CountBy(id => id).ToDictionary();
        foreach (string id in of.Keys.Union(came.Keys).Union(waiting.Keys).Order(StringComparer.Ordinal))
        {
            int wanted = of.GetValueOrDefault(id), waits = waiting.GetValueOrDefault(id), got = came.GetValueOrDefault(id);
            if (held.Contains(id) && waits != wanted) bench.Wrong(SawRule.HeldWait, $"{wanted} of held part {id} lie in {where}, {waits} wait in blanks");
            int bound = unsized.Count(u => u == id);
            if (got > wanted - bound) bench.Wrong(SawRule.HeldAreNotCut, $"{got} of part {id} came out of {where}; {bound} of {wanted} lie in strips as wide as a part that waits");
            if (live.All(b => bench.Plan.Refusals.All(r => r.Blank != b.Id)) && !held.Contains(id) && !mates.Contains(id) && waits > bound)
                bench.Wrong(SawRule.PartsComeOut, $"{waits} of part {id} of {where} wait, {bound} must");
            if (!held.Contains(id) && got + waits != wanted) bench.Wrong(SawRule.PartsComeOut, $"{got} of part {id} came out of {where} and {waits} wait, that must be {wanted}");
        }
        foreach (RunBlank blank in live.Where(b => !b.Waiting.IsEmpty))
        {
            string[] refused = [.. bench.Plan.Refusals.Where(r => r.Blank == blank.Id).SelectMany(r => r.PartIds)];
            foreach (string id in blank.Waiting.Distinct().Where(id => !held.Contains(id) && !mates.Contains(id) && !refused.Contains(id) && !unsized.Contains(id)))
                bench.Wrong(SawRule.PartsComeOut, $"part {id} of {where} waits in blank {blank.Id}; it is neither held nor refused");
            foreach (string id in refused.Where(id => !blank.Waiting.Contains(id)))
                bench.Wrong(SawRule.RefusalIsNeeded, $"part {id} is refused, it does not wait in blank {blank.Id} of {where}");
        }
    }
}
