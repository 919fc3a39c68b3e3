using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Cutting.Boards;
using Setout.Cutting.Runs;
using Setout.Cutting.Sheets;

namespace Setout.Testing.Runs;

/// <summary>
/// What has become of one laid board. Lanes lie at known places, since what goes between them is one figure, and stretches lie between flaws, so each blank
/// is asked which stretches of which lanes it holds.
/// </summary>
internal sealed class BoardEnd(Bench bench, RunBoards boards, int material, int index)
{
    private readonly LaidBoard _laid = boards.Layout.Boards[index];
    private readonly BoardInstance _instance = boards.Instance;
    private readonly string _where = $"board {index} of {boards.Name}";

    private readonly (RunBlank Blank, Wood Wood)[] _live =
        [.. bench.There.Where(t => (t.Value.Material, t.Value.Stock) == (material, index)).Select(t => (bench.Plan.Blanks[t.Key], t.Value)).OrderBy(t => t.Item1.Id)];

    public void Check()
    {
        BoardStock stock = _instance.Stock.First(s => s.Id == _laid.StockId);
        bool uncut = _live.Any(l => l.Blank.Use == BlankUse.Stock);
        PartsOut.Check(bench, [.. _live.Select(l => l.Blank)], _laid.PartIds, boards.Held, ImmutableHashSet<string>.Empty, [], _where);
        bool refused = bench.Plan.Refusals.Any(r => _live.Any(l => l.Blank.Id == r.Blank));
        if (uncut) return;
        var waits = new Dictionary<int, List<string>>();
        HashSet<int> serves = [];
        foreach (LaidStretch stretch in _laid.Stretches)
        {
            (long from, long to) = Zone(stock, stretch.Place);
            long Overlap((RunBlank Blank, Wood Wood) l) => HoldsLane(l.Wood, stretch.Lane)
                ? Math.Min(to, l.Wood.FromAlong + l.Wood.Along - l.Wood.Side(BlankSide.FarEnd).Margin) - Math.Max(from, l.Wood.FromAlong + l.Wood.Side(BlankSide.NearEnd).Margin) : 0;
            string[] held = [.. stretch.PartIds.Where(boards.Held.Contains)];
            long left = stretch.LeftOver.Ticks;
            if (held.Length > 0)
            {
                (RunBlank Blank, Wood Wood) best = _live.Where(l => l.Blank.Use == BlankUse.Waiting).OrderByDescending(Overlap).FirstOrDefault();
                long needs = held.Sum(Size) + (_instance.Kerf.Ticks * (held.Length - 1)), has = best.Blank is null ? 0 : Overlap(best);
                if (has < needs)
                {
                    bench.Wrong(SawRule.HeldWait, $"{string.Join(", ", held)} of lane {stretch.Lane}, stretch {stretch.Place} of {_where} need {Wood.Mm(needs)}, {Wood.Mm(has)} wait there");
                    continue;
                }
                waits.TryAdd(best.Blank!.Id, []);
                waits[best.Blank.Id].AddRange(held);
                // What is left over may wait with them.
                if (has >= needs + _instance.Kerf.Ticks + left) continue;
            }
            else if (_live.Any(l => l.Blank.Use == BlankUse.Waiting && Overlap(l) >= left)) continue;
            if (stretch.Use != LeftOverUse.Keep) continue;
            bool thin = bench.HasThinCuts(material, index);
            int kept = Array.FindIndex(_live, l => l.Blank.Use == BlankUse.Keep && (thin ? Overlap(l) >= left : Overlap(l) == left));
            if (kept < 0) bench.Wrong(SawRule.KeptAreLaid, $"{stretch.LeftOver} of lane {stretch.Lane}, stretch {stretch.Place} of {_where} are to be kept, no blank holds just that");
            else serves.Add(_live[kept].Blank.Id);
        }
        foreach ((RunBlank blank, Wood wood) in _live)
        {
            if (blank.Use == BlankUse.Keep && !serves.Contains(blank.Id)) bench.Wrong(SawRule.KeptAreLaid, $"blank {blank.Id}, {wood}, of {_where} is kept, the layout does not keep it");
            if (blank.Use == BlankUse.Waiting && !refused && !blank.Waiting.Order(StringComparer.Ordinal).SequenceEqual(waits.GetValueOrDefault(blank.Id, []).Order(StringComparer.Ordinal)))
                bench.Wrong(SawRule.HeldWait, $"{string.Join(", ", blank.Waiting)} are said to wait in blank {blank.Id} of {_where}, {string.Join(", ", waits.GetValueOrDefault(blank.Id, []))} do");
        }
    }

    private long Size(string part) => _instance.Parts.First(p => p.Id == part).Length.Ticks;

    private bool HoldsLane(Wood wood, int lane)
    {
        long near = (lane - 1) * (boards.Width.Ticks + bench.Limits.RipKerf.Ticks);
        return wood.FromAcross <= near && wood.FromAcross + wood.Across >= near + boards.Width.Ticks;
    }

    // Between trims and flaws, counted here and not by the stock.
    private static (long From, long To) Zone(BoardStock stock, int place)
    {
        long at = stock.Trim.Start.Ticks, end = (stock.Length - stock.Trim.End).Ticks;
        foreach ((long from, long to) in Wood.Within(stock.Defects.Select(d => (d.From.Ticks, d.To.Ticks)), at, end, 0))
        {
            if (from > at && --place == 0) return (at, from);
            at = to;
        }
        return (at, end);
    }
}
