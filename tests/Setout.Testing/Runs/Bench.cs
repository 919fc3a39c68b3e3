// Over 200 lines: what happens to wood at one cut, from the figure to the pieces on the bench, is to be read in one place.
using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Cutting.Boards;
using Setout.Cutting.Runs;
using Setout.Cutting.Sheets;

namespace Setout.Testing.Runs;

/// <summary>The blanks that lie there while a plan is worked through.</summary>
internal sealed class Bench(ImmutableArray<RunMaterial> materials, SawLimits limits, RunPlan plan)
{
    private readonly ImmutableArray<SawViolation>.Builder _found = ImmutableArray.CreateBuilder<SawViolation>();
    private readonly Dictionary<int, Wood> _there = [];
    private readonly HashSet<int> _ever = [];
    private readonly HashSet<(int Material, int Stock)> _thin = [];

    public ImmutableArray<RunMaterial> Materials => materials;

    public SawLimits Limits => limits;

    public RunPlan Plan => plan;

    public ImmutableArray<SawViolation> Found => _found.ToImmutable();

    /// <summary>What lies there now.</summary>
    public IReadOnlyDictionary<int, Wood> There => _there;

    /// <summary>What was there at any time.</summary>
    public IReadOnlySet<int> Ever => _ever;

    public Int128 StockArea { get; private set; }

    public Int128 DustArea { get; private set; }

    /// <summary>True when a blade narrower than the layout reckons with has cut there.</summary>
    public bool HasThinCuts(int material, int stock) => _thin.Contains((material, stock));

    public void Wrong(SawRule rule, string words, int run = 0) => _found.Add(new(rule, run, words));

    public RunBlank? Blank(int id) => id >= 0 && id < plan.Blanks.Length ? plan.Blanks[id] : null;

    public Length LayoutKerf(int material) => materials[material] switch { RunSheets s => s.Instance.Kerf, RunBoards b => b.Instance.Kerf, _ => Length.Zero };

    /// <summary>The size of the part that a blank is, or could give, lying as it lies; null where the material has no such part or it may not lie so.</summary>
    public (Length Along, Length Across)? SizeOf(RunBlank blank) => materials[blank.Material] switch
    {
        RunSheets s => s.Instance.Parts.FirstOrDefault(p => p.Id == blank.PartId) is { } part && (part.Grain == GrainRule.Free || blank.Turn == Turn.None) ? part.Lying(blank.Turn) : null,
        RunBoards b => b.Instance.Parts.FirstOrDefault(p => p.Id == blank.PartId) is { } part && blank.Turn == Turn.None ? (part.Length, b.Width) : null,
        _ => null,
    };

    /// <summary>Puts the stock there as the layouts have it, and holds the plan's list against it.</summary>
    public void LayStock()
    {
        HashSet<int> cut = [.. plan.Runs.SelectMany(r => r.Cuts).SelectMany(c => new[] { c.Off, c.Rest }).OfType<int>()];
        var told = plan.Blanks.Where(b => b.Use == BlankUse.Stock || (b.Use == BlankUse.Part && !cut.Contains(b.Id)))
            .GroupBy(b => (b.Material, b.Stock)).ToDictionary(g => g.Key, g => g.ToList());
        for (int material = 0; material < materials.Length; material++)
        {
            ImmutableArray<Wood> stock = Stock(materials[material], material);
            for (int i = 0; i < stock.Length; i++)
            {
                StockArea += stock[i].Area;
                if (!told.Remove((material, i), out List<RunBlank>? same) || same.Count != 1)
                {
                    Wrong(SawRule.StockIsWhatIsLaid, $"sheet or board {i} of material {material} stands in the list {same?.Count ?? 0} times");
                    continue;
                }
                RunBlank blank = same[0];
                if (blank.Along.Ticks != stock[i].Along || blank.Across.Ticks != stock[i].Across)
                    Wrong(SawRule.StockIsWhatIsLaid, $"blank {blank.Id} is {blank.Along} by {blank.Across}, the stock laid there is {stock[i]}");
                if (Enum.GetValues<BlankSide>().Any(s => Wood.Margin(blank.Trim, s) != stock[i].Side(s).Margin))
                    Wrong(SawRule.StockIsWhatIsLaid, $"blank {blank.Id} has the trim {blank.Trim}, the stock laid there another");
                if (!SameFlaws(blank, stock[i])) Wrong(SawRule.StockIsWhatIsLaid, $"blank {blank.Id} has other flaws than the board laid there");
                if (blank.Spares != 0) Wrong(SawRule.SparesAreThere, $"stock {blank.Id} promises spares");
                _there[blank.Id] = stock[i];
                _ever.Add(blank.Id);
            }
        }
        foreach (RunBlank left in told.Values.SelectMany(v => v))
            Wrong(SawRule.StockIsWhatIsLaid, $"blank {left.Id} is stock {left.Stock} of material {left.Material}, which is not laid");
    }

    private static ImmutableArray<Wood> Stock(RunMaterial material, int index)
    {
        WoodSide Side(Length margin) => new(margin.Ticks, margin.Sign > 0 ? null : 0);
        switch (material)
        {
            case RunSheets sheets:
                return [.. sheets.Layout.Sheets.Select((laid, i) =>
                {
                    SheetStock stock = sheets.Instance.Stock.First(s => s.Id == laid.StockId);
                    return new Wood(index, i, 0, 0, stock.Along.Ticks, stock.Across.Ticks) { Sides = [.. Enum.GetValues<BlankSide>().Select(s => Side(Length.FromTicks(Wood.Margin(stock.Trim, s))))] };
                })];
            case RunBoards boards:
                return [.. boards.Layout.Boards.Select((laid, i) =>
                {
                    BoardStock stock = boards.Instance.Stock.First(s => s.Id == laid.StockId);
                    return new Wood(index, i, 0, 0, stock.Length.Ticks, (stock.Rip?.Width ?? boards.Width).Ticks)
                    {
                        Sides = [Side(Length.Zero), Side(Length.Zero), Side(stock.Trim.Start), Side(stock.Trim.End)],
                        Flaws = Wood.Within(stock.Defects.Select(d => (d.From.Ticks, d.To.Ticks)), 0, stock.Length.Ticks, 0),
                    };
                })];
            default:
                return [];
        }
    }

    // What lies in a margin goes anyhow, so only the rest is compared.
    private static bool SameFlaws(RunBlank blank, Wood wood)
    {
        (long from, long to) = (wood.Side(BlankSide.NearEnd).Margin, wood.Along - wood.Side(BlankSide.FarEnd).Margin);
        return Wood.Within(blank.Flaws.Select(f => (f.From.Ticks, f.To.Ticks)), from, to, 0).SequenceEqual(Wood.Within(wood.Flaws, from, to, 0));
    }

    /// <summary>Makes a cut, as far as it can be made at all.</summary>
    public void Make(Run run, RunCut cut)
    {
        if (!_there.TryGetValue(cut.Blank, out Wood? wood))
        {
            Wrong(SawRule.BlankIsThere, $"blank {cut.Blank} is to be cut, it {(_ever.Contains(cut.Blank) ? "is gone" : "is not there yet")}", run.Number);
            return;
        }
        if (plan.Blanks[cut.Blank].Use is not (BlankUse.Stock or BlankUse.Work))
            Wrong(SawRule.BlankIsToBeCut, $"blank {cut.Blank} is called {plan.Blanks[cut.Blank].Use} and is cut", run.Number);
        if (Wood.AxisOf(cut.From) != cut.Axis)
        {
            Wrong(SawRule.FromIsOnTheAxis, $"blank {cut.Blank} is measured {cut.Axis} from its {cut.From}", run.Number);
            return;
        }
        long extent = wood.Extent(cut.Axis), figure = cut.Figure.Ticks;
        if (figure <= 0 || figure >= extent)
        {
            Wrong(SawRule.FigureIsInside, $"blank {cut.Blank} is {Wood.Mm(extent)} {cut.Axis} and is cut at {cut.Figure}", run.Number);
            return;
        }
        CutRules.Check(this, wood, run, cut);
        _there.Remove(cut.Blank);
        Part(run, cut, wood);
    }

    private void Part(Run run, RunCut cut, Wood wood)
    {
        long extent = wood.Extent(cut.Axis), figure = cut.Figure.Ticks, kerf = cut.Kerf.Ticks;
        (long off, long rest, long dust) = run.Kind switch
        {
            RunKind.True or RunKind.Clear => (figure - kerf, extent - figure, Math.Min(figure, kerf)),
            _ => (figure - cut.Planed.Ticks, extent - figure - kerf - cut.PlanedRest.Ticks, cut.Planed.Ticks + Math.Min(kerf + cut.PlanedRest.Ticks, extent - figure)),
        };
        DustArea += (Int128)wood.Extent(Wood.Other(cut.Axis)) * dust;
        bool near = cut.From == Wood.Near(cut.Axis);
        BlankSide toward = near ? Wood.Far(cut.Axis) : Wood.Near(cut.Axis);
        WoodSide from = wood.Side(cut.From), to = wood.Side(toward);
        WoodSide offCut = run.Kind == RunKind.Rough ? Rough(run, cut.Off, toward) : Sawn(run, off - (extent - to.Margin)), restCut = Sawn(run, from.Margin - (extent - rest));
        Wood offWood = near ? wood.Piece(cut.Axis, 0, off, from, offCut, run.Number) : wood.Piece(cut.Axis, extent - off, off, offCut, from, run.Number);
        Wood restWood = near ? wood.Piece(cut.Axis, extent - rest, rest, restCut, to, run.Number) : wood.Piece(cut.Axis, 0, rest, to, restCut, run.Number);
        long spared = run.Kind is RunKind.Size or RunKind.Break or RunKind.Rough && !CutRules.IsLane(this, wood, cut) ? Math.Max(0, LayoutKerf(wood.Material).Ticks - kerf) : 0;
        if (spared > 0)
        {
            _thin.Add((wood.Material, wood.Stock));
            restWood = cut.Axis == GrainAxis.Along ? restWood with { SparedAlong = restWood.SparedAlong + spared } : restWood with { SparedAcross = restWood.SparedAcross + spared };
        }
        Lay(run, cut.Off, offWood, off);
        Lay(run, cut.Rest, restWood, rest);
        if (run.Kind is RunKind.True or RunKind.Clear && cut.Off is { } piece && Blank(piece) is { Use: not BlankUse.Waste } kept && (run.Kind == RunKind.True || kept.Use is BlankUse.Part or BlankUse.Work))
            Wrong(SawRule.OffcutIsWaste, $"what is cut off blank {cut.Blank} is called {kept.Use}", run.Number);
        SpareRules.Check(this, run, cut);
    }

    // A side that the blade made is true, unless it lies in the raw margin of the side beyond.
    private static WoodSide Sawn(Run run, long margin) => margin > 0 ? new(margin, null) : new(0, run.Number);

    // A rough cut leaves what comes off larger than it need be; by how much only the plan knows, and the parts tell whether it was enough.
    private WoodSide Rough(Run run, int? id, BlankSide side)
    {
        if (id is not { } known || Blank(known) is not { } blank) return new(1, null);
        long said = Wood.Margin(blank.Trim, side), least = Math.Max(1, limits.Guided?.Rough.Ticks ?? 0);
        if (said < least && blank.Use != BlankUse.Waste)
            Wrong(SawRule.TrimsAreTrue, $"a rough cut may run off by {Wood.Mm(least)}, blank {known} has {Wood.Mm(said)} there", run.Number);
        return new(Math.Max(said, 1), null);
    }

    private void Lay(Run run, int? id, Wood wood, long extent)
    {
        if (id is null != extent <= 0)
            Wrong(SawRule.PiecesAreNamed, id is null ? $"{wood} is left of a cut and not named" : $"blank {id} is named, nothing is left there", run.Number);
        if (id is not { } known || extent <= 0) return;
        if (Blank(known) is not { } blank || !_ever.Add(known))
        {
            Wrong(SawRule.MadeOnce, $"blank {known} {(Blank(known) is null ? "is not in the list" : "was made before")}", run.Number);
            return;
        }
        if (blank.Along.Ticks != wood.Along || blank.Across.Ticks != wood.Across)
            Wrong(SawRule.SizesAreTrue, $"blank {known} is {blank.Along} by {blank.Across}, the saw makes {wood}", run.Number);
        if (blank.Material != wood.Material || blank.Stock != wood.Stock)
            Wrong(SawRule.SizesAreTrue, $"blank {known} is of stock {blank.Stock} of material {blank.Material}, it is cut from {wood.Stock} of {wood.Material}", run.Number);
        Wood lying = wood with { Sides = [.. Enum.GetValues<BlankSide>().Select(s => Trimmed(run, blank, wood, s))] };
        if (!SameFlaws(blank, lying)) Wrong(SawRule.FlawsAreTrue, $"blank {known} does not have the flaws that lie in it", run.Number);
        _there[known] = lying;
    }

    private WoodSide Trimmed(Run run, RunBlank blank, Wood wood, BlankSide side)
    {
        GrainAxis axis = Wood.AxisOf(side);
        WoodSide real = wood.Side(side);
        long said = Wood.Margin(blank.Trim, side);
        if (said == real.Margin) return real;
        // What narrower blades have spared may lie beside a margin, or be one.
        if (said > real.Margin && said <= real.Margin + wood.Spared(axis)) return new(said, null);
        // Where margins are all there is, no one asks how wide they are.
        if (blank.Use != BlankUse.Waste || Enum.GetValues<GrainAxis>().All(a => wood.Counted(a) > 0))
            Wrong(SawRule.TrimsAreTrue, $"blank {blank.Id} has {Wood.Mm(said)} to lose at its {side}, it is {Wood.Mm(real.Margin)}", run.Number);
        return real;
    }
}
