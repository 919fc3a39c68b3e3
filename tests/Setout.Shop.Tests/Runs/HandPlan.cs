using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Cutting.Runs;
using Setout.Cutting.Sheets;
using Setout.Shop.Plans;
using Setout.Shop.Tests.Plans;

namespace Setout.Shop.Tests.Runs;

/// <summary>A plan with runs written by hand, on the first sheet of the jar cabinet: what is said of them does not hang on any planner.</summary>
internal sealed class HandPlan
{
    private readonly List<RunBlank> _blanks = [];
    private readonly List<Run> _runs = [];
    private Plan _plan;

    public HandPlan(string shop = "")
    {
        _plan = Sample.Plan("jar-cabinet");
        if (shop.Length > 0)
        {
            (PieceSource? source, var findings) = PieceSource.Read(Sample.Text("jar-cabinet"), null, $"setout-shop: 1\nunit: in\n{shop}\n");
            Assert.Empty(findings);
            _plan = _plan with { Source = source! };
        }
    }

    public static Length In(long n, long d = 1) => Length.FromInches(n, d);

    /// <summary>A part of the first material by its mark.</summary>
    public string Part(string mark) => _plan.Set.Parts.First(p => p.Mark == mark).Key;

    public int Blank(long along, long across, BlankUse use, string mark = "", int spares = 0, ImmutableArray<string> waiting = default)
    {
        _blanks.Add(new(_blanks.Count, 0, 0, In(along, 8), In(across, 8), use) { PartId = mark.Length > 0 ? Part(mark) : "", Spares = spares, Waiting = waiting.IsDefault ? [] : [.. waiting.Select(Part)] });
        return _blanks.Count - 1;
    }

    /// <summary>Says what goes off the sides of a blank before they are true.</summary>
    public void Raw(int blank, EdgeTrim trim) => _blanks[blank] = _blanks[blank] with { Trim = trim };

    /// <summary>Makes the sheet one that the log of an earlier plan left.</summary>
    public void IsLeftByAnEarlierPlan() =>
        _plan = _plan with { Sheets = [_plan.Sheets[0] with { Stock = [.. _plan.Sheets[0].Stock.Select(l => l with { IsBlank = true })] }, .. _plan.Sheets[1..]] };

    public void Run(SawWay way, RunKind kind, long figureInEighths, int? trial, params RunCut[] cuts) =>
        _runs.Add(new(_runs.Count + 1, way, kind, In(figureInEighths, 8), [.. cuts]) { Trial = trial });

    public static RunCut Cut(int blank, GrainAxis axis, BlankSide from, long figureInEighths, int? off, int? rest, int? fromRun, BlankSide? against = null, int? againstRun = null) =>
        new(blank, axis, from, In(figureInEighths, 8), In(1, 8), off, rest) { FromRun = fromRun, Against = against, AgainstRun = againstRun };

    public Plan Plan(int least = 0, params RunRefusal[] refusals) => _plan with { Runs = new([.. _blanks], [.. _runs], [.. refusals], least == 0 ? _runs.Count(r => r.IsSetting) : least) };
}
