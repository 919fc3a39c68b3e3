// Over 300 lines: one method a rule, and all rules of a sheet layout are one idea.
using System.Collections.Immutable;
using Setout.Core.Measures;

namespace Setout.Cutting.Sheets;

/// <summary>
/// Judges a sheet layout without knowing how it was made. It shares only the values with the solvers: it follows the saw
/// through each tree with a walk of its own, in ticks from the corner of the untrimmed sheet, and recomputes every figure.
/// One method a rule; all violations are returned, not the first.
/// </summary>
public static class SheetChecker
{
    /// <summary>Everything that is wrong with a layout; empty when it is sound.</summary>
    public static ImmutableArray<Violation> Check(SheetInstance instance, SheetLayout layout)
    {
        // Without known names nothing else can be judged.
        ImmutableArray<Violation> unknown = [.. KnownNames(instance, layout)];
        if (!unknown.IsEmpty) return unknown;
        ImmutableArray<Violation>.Builder found = ImmutableArray.CreateBuilder<Violation>();
        Dictionary<string, SheetPart> parts = instance.Parts.ToDictionary(p => p.Id, StringComparer.Ordinal);
        for (int i = 0; i < layout.Sheets.Length; i++) found.AddRange(OfOneSheet(new(instance, parts, layout.Sheets[i], i + 1)));
        found.AddRange(DemandIsMet(instance, layout));
        found.AddRange(StockLimitsHold(instance, layout));
        return found.ToImmutable();
    }

    /// <summary>What is wrong with one sheet by itself, whatever else is laid or wanted; empty when it is sound.</summary>
    public static ImmutableArray<Violation> CheckAlone(SheetInstance instance, LaidSheet sheet)
    {
        ImmutableArray<Violation> unknown = [.. KnownNames(instance, new([sheet], []))];
        return unknown.IsEmpty ? [.. OfOneSheet(new(instance, instance.Parts.ToDictionary(p => p.Id, StringComparer.Ordinal), sheet, 1))] : unknown;
    }

    private static IEnumerable<Violation> OfOneSheet(Simulated sheet) =>
    [
        .. SlicesArePositive(sheet),
        .. SlicesAddUp(sheet),
        .. EveryDivisionCuts(sheet),
        .. DustIsNoWiderThanKerf(sheet),
        .. InsideStockAndTrims(sheet),
        .. SlackIsKept(sheet),
        .. StagesAreFew(sheet),
        .. KerfBetweenParts(sheet),
        .. PartsHaveTheirSize(sheet),
        .. GrainIsKept(sheet),
        .. FigureRunsThrough(sheet),
        .. LeftOversAreLabelled(sheet),
        .. SheetIsUsed(sheet),
    ];

    /// <summary>What is wrong with the figures claimed for a sound layout: its cost and count of sheets, recomputed here.</summary>
    public static ImmutableArray<Violation> CheckFigures(SheetInstance instance, SheetLayout layout, Money claimedCost, int claimedSheets)
    {
        ImmutableArray<Violation>.Builder found = ImmutableArray.CreateBuilder<Violation>();
        decimal cost = 0;
        foreach (LaidSheet sheet in layout.Sheets)
            foreach (SheetStock stock in instance.Stock)
                if (stock.Id == sheet.StockId) cost += stock.Cost.Amount;
        if (cost != claimedCost.Amount) found.Add(new(nameof(CheckFigures), 0, $"the stock costs {new Money(cost)}, but {claimedCost} is claimed"));
        if (layout.Sheets.Length != claimedSheets) found.Add(new(nameof(CheckFigures), 0, $"{layout.Sheets.Length} sheets are used, but {claimedSheets} are claimed"));
        return found.ToImmutable();
    }

    private readonly record struct Seen(CutNode Node, long FromAlong, long FromAcross, long Along, long Across, int Stage);

    /// <summary>One sheet with every node where the saw would find it, in ticks from the untrimmed corner.</summary>
    private sealed class Simulated
    {
        private readonly Dictionary<string, SheetPart> _parts;

        public Simulated(SheetInstance instance, Dictionary<string, SheetPart> parts, LaidSheet sheet, int place)
        {
            _parts = parts;
            Instance = instance;
            Place = place;
            Stock = instance.Stock.First(s => s.Id == sheet.StockId);
            EdgeTrim trim = Stock.Trim;
            Visit(sheet.Root, trim.AlongStart.Ticks, trim.AcrossStart.Ticks,
                Stock.Along.Ticks - trim.AlongStart.Ticks - trim.AlongEnd.Ticks,
                Stock.Across.Ticks - trim.AcrossStart.Ticks - trim.AcrossEnd.Ticks, 0);
        }

        public SheetInstance Instance { get; }

        public SheetStock Stock { get; }

        public int Place { get; }

        public List<Seen> Nodes { get; } = [];

        public IEnumerable<(Seen Seen, PartNode Node, SheetPart Part)> Parts =>
            Nodes.Where(n => n.Node is PartNode).Select(n => (n, (PartNode)n.Node, _parts[((PartNode)n.Node).PartId]));

        public Violation Broken(string rule, string words) => new(rule, Place, words);

        private void Visit(CutNode node, long fromAlong, long fromAcross, long along, long across, int stage)
        {
            Nodes.Add(new(node, fromAlong, fromAcross, along, across, stage));
            if (node is not Division division) return;
            foreach (Slice slice in division.Slices)
            {
                if (division.Axis == GrainAxis.Along)
                {
                    Visit(slice.Content, fromAlong, fromAcross, slice.Size.Ticks, across, stage + 1);
                    fromAlong += slice.Size.Ticks + Instance.Kerf.Ticks;
                }
                else
                {
                    Visit(slice.Content, fromAlong, fromAcross, along, slice.Size.Ticks, stage + 1);
                    fromAcross += slice.Size.Ticks + Instance.Kerf.Ticks;
                }
            }
        }
    }

    private static string Mm(long ticks) => Length.FromTicks(ticks).ToString();

    private static string Where(Seen s) => $"at {Mm(s.FromAlong)} along, {Mm(s.FromAcross)} across from the untrimmed corner";

    private static IEnumerable<Violation> KnownNames(SheetInstance instance, SheetLayout layout)
    {
        HashSet<string> stock = [.. instance.Stock.Select(s => s.Id)], parts = [.. instance.Parts.Select(p => p.Id)];
        for (int i = 0; i < layout.Sheets.Length; i++)
        {
            if (!stock.Contains(layout.Sheets[i].StockId))
                yield return new(nameof(KnownNames), i + 1, $"there is no stock {layout.Sheets[i].StockId}");
            foreach (string id in PartIds(layout.Sheets[i].Root).Where(id => !parts.Contains(id)))
                yield return new(nameof(KnownNames), i + 1, $"there is no part {id}");
        }
        foreach (PartCount left in layout.LeftOut.Where(l => !parts.Contains(l.PartId)))
            yield return new(nameof(KnownNames), 0, $"there is no part {left.PartId} to leave out");
    }

    private static IEnumerable<string> PartIds(CutNode node) => node switch
    {
        PartNode part => [part.PartId],
        Division division => division.Slices.SelectMany(p => PartIds(p.Content)),
        _ => [],
    };

    private static IEnumerable<Violation> SlicesArePositive(Simulated sheet) =>
        from seen in sheet.Nodes
        where seen.Node is Division
        from slice in ((Division)seen.Node).Slices
        where slice.Size.Ticks <= 0
        select sheet.Broken(nameof(SlicesArePositive), $"a slice {Where(seen)} has the size {slice.Size}");

    private static IEnumerable<Violation> SlicesAddUp(Simulated sheet)
    {
        foreach (Seen seen in sheet.Nodes)
        {
            if (seen.Node is not Division division) continue;
            long extent = division.Axis == GrainAxis.Along ? seen.Along : seen.Across;
            long sum = division.Dust.Ticks;
            foreach (Slice slice in division.Slices) sum += slice.Size.Ticks;
            sum += sheet.Instance.Kerf.Ticks * (division.Slices.Length - 1);
            if (sum != extent)
                yield return sheet.Broken(nameof(SlicesAddUp), $"slices, kerfs and dust {Where(seen)} add up to {Mm(sum)}, the blank is {Mm(extent)}");
        }
    }

    private static IEnumerable<Violation> EveryDivisionCuts(Simulated sheet) =>
        from seen in sheet.Nodes
        where seen.Node is Division { Slices.Length: 0 } or Division { Slices.Length: 1, Dust.Ticks: 0 }
        select sheet.Broken(nameof(EveryDivisionCuts), $"a division {Where(seen)} makes no cut");

    private static IEnumerable<Violation> DustIsNoWiderThanKerf(Simulated sheet) =>
        from seen in sheet.Nodes
        where seen.Node is Division division && (division.Dust.Ticks < 0 || division.Dust.Ticks > sheet.Instance.Kerf.Ticks)
        select sheet.Broken(nameof(DustIsNoWiderThanKerf), $"{((Division)seen.Node).Dust} {Where(seen)} is called dust, the kerf is {sheet.Instance.Kerf}");

    private static IEnumerable<Violation> InsideStockAndTrims(Simulated sheet)
    {
        EdgeTrim trim = sheet.Stock.Trim;
        long endAlong = sheet.Stock.Along.Ticks - trim.AlongEnd.Ticks, endAcross = sheet.Stock.Across.Ticks - trim.AcrossEnd.Ticks;
        return from seen in sheet.Nodes
               where seen.Node is not Division
               where seen.FromAlong < trim.AlongStart.Ticks || seen.FromAcross < trim.AcrossStart.Ticks
                   || seen.FromAlong + seen.Along > endAlong || seen.FromAcross + seen.Across > endAcross
               select sheet.Broken(nameof(InsideStockAndTrims), $"a slice of {Mm(seen.Along)} by {Mm(seen.Across)} {Where(seen)} leaves the trued sheet, which ends at {Mm(endAlong)} by {Mm(endAcross)}");
    }

    private static IEnumerable<Violation> SlackIsKept(Simulated sheet)
    {
        long slack = sheet.Instance.Slack.Ticks;
        long endAlong = sheet.Stock.Along.Ticks - sheet.Stock.Trim.AlongEnd.Ticks, endAcross = sheet.Stock.Across.Ticks - sheet.Stock.Trim.AcrossEnd.Ticks;
        foreach ((Seen seen, _, SheetPart part) in sheet.Parts)
        {
            long freeAlong = endAlong - seen.FromAlong - seen.Along, freeAcross = endAcross - seen.FromAcross - seen.Across;
            if (slack > 0 && (freeAlong < slack || freeAcross < slack))
                yield return sheet.Broken(nameof(SlackIsKept), $"part {part.Id} {Where(seen)} ends {Mm(freeAlong)} along and {Mm(freeAcross)} across before the far trued edges, a slack of {Mm(slack)} must stay free");
        }
    }

    private static IEnumerable<Violation> StagesAreFew(Simulated sheet) =>
        from found in sheet.Parts
        where sheet.Instance.MostStages is { } most && found.Seen.Stage > most
        select sheet.Broken(nameof(StagesAreFew), $"part {found.Part.Id} {Where(found.Seen)} takes {found.Seen.Stage} divisions, at most {sheet.Instance.MostStages} are allowed");

    private static IEnumerable<Violation> KerfBetweenParts(Simulated sheet)
    {
        Seen[] slices = [.. sheet.Nodes.Where(n => n.Node is not Division)];
        long kerf = sheet.Instance.Kerf.Ticks;
        for (int i = 0; i < slices.Length; i++)
            for (int j = i + 1; j < slices.Length; j++)
            {
                Seen a = slices[i], b = slices[j];
                bool apart = a.FromAlong + a.Along + kerf <= b.FromAlong || b.FromAlong + b.Along + kerf <= a.FromAlong
                    || a.FromAcross + a.Across + kerf <= b.FromAcross || b.FromAcross + b.Across + kerf <= a.FromAcross;
                if (!apart)
                    yield return sheet.Broken(nameof(KerfBetweenParts), $"the slices {Where(a)} and {Where(b)} lie closer than the kerf of {Mm(kerf)}");
            }
    }

    private static IEnumerable<Violation> PartsHaveTheirSize(Simulated sheet) =>
        from found in sheet.Parts
        let quarter = found.Node.Turn == Turn.Quarter
        let along = quarter ? found.Part.Across.Ticks : found.Part.Along.Ticks
        let across = quarter ? found.Part.Along.Ticks : found.Part.Across.Ticks
        where found.Seen.Along != along || found.Seen.Across != across
        select sheet.Broken(nameof(PartsHaveTheirSize), $"part {found.Part.Id} {Where(found.Seen)} comes out {Mm(found.Seen.Along)} by {Mm(found.Seen.Across)}, it must be {Mm(along)} by {Mm(across)}");

    private static IEnumerable<Violation> GrainIsKept(Simulated sheet) =>
        from found in sheet.Parts
        where found.Part.Grain == GrainRule.Keep && found.Node.Turn != Turn.None
        select sheet.Broken(nameof(GrainIsKept), $"part {found.Part.Id} {Where(found.Seen)} lies across the grain");

    // Within a row, whatever has no member just before it must begin a group; from there every next member has one place.
    private static IEnumerable<Violation> FigureRunsThrough(Simulated sheet)
    {
        foreach (FigureGroup group in sheet.Instance.Groups)
        {
            bool along = group.Axis == GrainAxis.Along;
            long Start(Seen s) => along ? s.FromAlong : s.FromAcross;
            long Row(Seen s) => along ? s.FromAcross : s.FromAlong;
            long Size(Seen s) => along ? s.Along : s.Across;
            long Deep(Seen s) => along ? s.Across : s.Along;
            string At(long start, long row) => along ? $"{Mm(start)} along, {Mm(row)} across" : $"{Mm(row)} along, {Mm(start)} across";
            (Seen Seen, PartNode Node, SheetPart Part)[] all = [.. sheet.Parts];
            List<(Seen Seen, PartNode Node, SheetPart Part)> open = [.. all.Where(p => group.PartIds.Contains(p.Part.Id)).OrderBy(p => Row(p.Seen)).ThenBy(p => Start(p.Seen))];
            foreach ((Seen turned, PartNode _, SheetPart part) in open.Where(p => p.Node.Turn != Turn.None))
                yield return sheet.Broken(nameof(FigureRunsThrough), $"part {part.Id} of figure group {group.Id} {Where(turned)} is turned");
            while (open.Count > 0)
            {
                Seen first = open[0].Seen;
                long next = Start(first), deep = 0;
                List<Seen> own = [];
                bool whole = true;
                foreach (string id in group.PartIds)
                {
                    int at = open.FindIndex(p => p.Part.Id == id && Start(p.Seen) == next && Row(p.Seen) == Row(first));
                    if (at < 0)
                    {
                        yield return sheet.Broken(nameof(FigureRunsThrough), $"figure group {group.Id} needs its part {id} at {At(next, Row(first))} from the untrimmed corner, one kerf of {sheet.Instance.Kerf} from its neighbour and in line with it; it is not there");
                        whole = false;
                        break;
                    }
                    deep = Math.Max(deep, Deep(open[at].Seen));
                    next += Size(open[at].Seen) + sheet.Instance.Kerf.Ticks;
                    own.Add(open[at].Seen);
                    open.RemoveAt(at);
                }
                if (!whole)
                {
                    // One word for one broken group; what else is wrong in this row shows once that is mended.
                    open.RemoveAll(p => Row(p.Seen) == Row(first));
                    continue;
                }
                long kerf = sheet.Instance.Kerf.Ticks, end = next - kerf;
                foreach ((Seen other, PartNode _, SheetPart part) in all.Where(p => !own.Contains(p.Seen)))
                    if (Start(other) < end + kerf && Start(other) + Size(other) + kerf > Start(first) && Row(other) < Row(first) + deep + kerf && Row(other) + Deep(other) + kerf > Row(first))
                        yield return sheet.Broken(nameof(FigureRunsThrough), $"part {part.Id} {Where(other)} is cut from the block of figure group {group.Id}, which ends at {At(end, Row(first) + deep)}");
            }
        }
    }

    private static IEnumerable<Violation> LeftOversAreLabelled(Simulated sheet)
    {
        KeepRule keep = sheet.Instance.Keep;
        foreach (Seen seen in sheet.Nodes)
        {
            if (seen.Node is not (KeepNode or WasteNode)) continue;
            bool worth = Math.Min(seen.Along, seen.Across) >= keep.ShortSide.Ticks && Math.Max(seen.Along, seen.Across) >= keep.LongSide.Ticks;
            if (worth != seen.Node is KeepNode)
                yield return sheet.Broken(nameof(LeftOversAreLabelled), $"a left-over of {Mm(seen.Along)} by {Mm(seen.Across)} {Where(seen)} is {(worth ? "worth keeping but called waste" : "kept but not worth it")}");
        }
    }

    private static IEnumerable<Violation> SheetIsUsed(Simulated sheet)
    {
        if (!sheet.Nodes.Exists(n => n.Node is PartNode))
            yield return sheet.Broken(nameof(SheetIsUsed), $"no part is cut from this {sheet.Stock.Id}");
    }

    private static IEnumerable<Violation> DemandIsMet(SheetInstance instance, SheetLayout layout)
    {
        Dictionary<string, long> laid = layout.Sheets.SelectMany(s => PartIds(s.Root)).CountBy(id => id).ToDictionary(p => p.Key, p => (long)p.Value, StringComparer.Ordinal);
        Dictionary<string, long> left = layout.LeftOut.GroupBy(l => l.PartId, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.Sum(l => (long)l.Count), StringComparer.Ordinal);
        foreach (PartCount odd in layout.LeftOut.Where(l => l.Count < 1))
            yield return new(nameof(DemandIsMet), 0, $"{odd.Count} of part {odd.PartId} are left out; a left-out part counts 1 or more");
        foreach (SheetPart part in instance.Parts)
        {
            long have = laid.GetValueOrDefault(part.Id), out_ = left.GetValueOrDefault(part.Id);
            if (have + out_ != part.Count)
                yield return new(nameof(DemandIsMet), 0, $"part {part.Id} is laid {have} times and left out {out_} times, {part.Count} are wanted");
        }
    }

    private static IEnumerable<Violation> StockLimitsHold(SheetInstance instance, SheetLayout layout) =>
        from stock in instance.Stock
        let used = layout.Sheets.Count(s => s.StockId == stock.Id)
        where stock.Limit is { } limit && used > limit
        select new Violation(nameof(StockLimitsHold), 0, $"{used} of {stock.Id} are used, there are {stock.Limit}");
}
