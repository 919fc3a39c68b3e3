using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Cutting.Boards;
using Setout.Cutting.Runs;
using Setout.Cutting.Sheets;
using Setout.Testing.Runs;

namespace Setout.Cutting.Tests.Runs;

/// <summary>Materials, saws and a plan; what a simulator looks at, to be spoilt at one place.</summary>
internal sealed record SawCase(ImmutableArray<RunMaterial> Materials, SawLimits Limits, RunPlan Plan)
{
    public ImmutableArray<SawViolation> Check() => SawSimulator.Check(Materials, Limits, Plan);

    public SawCase WithBlank(int id, Func<RunBlank, RunBlank> change) => this with { Plan = Plan with { Blanks = Plan.Blanks.SetItem(id, change(Plan.Blanks[id])) } };

    public SawCase WithRun(int number, Func<Run, Run> change) => this with { Plan = Plan with { Runs = Plan.Runs.SetItem(number - 1, change(Plan.Runs[number - 1])) } };

    public SawCase WithCut(int number, int cut, Func<RunCut, RunCut> change) => WithRun(number, r => r with { Cuts = r.Cuts.SetItem(cut, change(r.Cuts[cut])) });

    /// <summary>Changes the run and all its cuts.</summary>
    public SawCase WithCuts(int number, Func<Run, Run> run, Func<RunCut, RunCut> cut) => WithRun(number, r => run(r) with { Cuts = [.. r.Cuts.Select(cut)] });

    public SawCase WithMaterial(int index, Func<RunMaterial, RunMaterial> change) => this with { Materials = Materials.SetItem(index, change(Materials[index])) };

    public SawCase WithLimits(Func<SawLimits, SawLimits> change) => this with { Limits = change(Limits) };

    public SawCase WithPlan(Func<RunPlan, RunPlan> change) => this with { Plan = change(Plan) };
}

/// <summary>Short words for plans written by hand; whole numbers are millimetres.</summary>
internal sealed class Written
{
    private readonly List<RunBlank> _blanks = [];
    private readonly List<Run> _runs = [];

    public static Length Mm(long millimetres) => Length.FromMillimetres(millimetres);

    /// <summary>Margins in the order near end, far end, near edge, far edge.</summary>
    public static EdgeTrim Trim(long nearEnd, long farEnd, long nearEdge, long farEdge) => new(Mm(nearEnd), Mm(farEnd), Mm(nearEdge), Mm(farEdge));

    public int Blank(int material, int stock, long along, long across, BlankUse use, EdgeTrim? trim = null, params ReadOnlySpan<(long From, long To)> flaws)
    {
        var here = new List<BoardStretch>();
        foreach ((long from, long to) in flaws) here.Add(new(Mm(from), Mm(to)));
        _blanks.Add(new(_blanks.Count, material, stock, Mm(along), Mm(across), use) { Trim = trim ?? EdgeTrim.None, Flaws = [.. here] });
        return _blanks.Count - 1;
    }

    public int Part(int material, int stock, long along, long across, string id, Turn turn = Turn.None)
    {
        int blank = Blank(material, stock, along, across, BlankUse.Part);
        _blanks[blank] = _blanks[blank] with { PartId = id, Turn = turn };
        return blank;
    }

    public void Change(int id, Func<RunBlank, RunBlank> change) => _blanks[id] = change(_blanks[id]);

    public void Run(SawWay way, RunKind kind, long figure, params ReadOnlySpan<RunCut> cuts) => _runs.Add(new(_runs.Count + 1, way, kind, Mm(figure), [.. cuts]));

    public void Try(int blank) => _runs[^1] = _runs[^1] with { Trial = blank };

    /// <summary>A cut with a kerf of 3 mm.</summary>
    public static RunCut Cut(int blank, BlankSide from, long figure, int? off, int? rest, int? fromRun = null, BlankSide? against = null, int? againstRun = null) =>
        new(blank, from is BlankSide.NearEdge or BlankSide.FarEdge ? GrainAxis.Across : GrainAxis.Along, from, Mm(figure), Mm(3), off, rest)
        {
            FromRun = fromRun,
            Against = against,
            AgainstRun = againstRun,
        };

    public RunPlan Plan() => new([.. _blanks], [.. _runs], [], 0);
}
