using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Cutting.Runs;
using Setout.Cutting.Sheets;
using Setout.Shop.Plans;

namespace Setout.Shop.Runs;

/// <summary>A cut of a run where it lies on its sheet, measured from the corner of the trued sheet.</summary>
/// <param name="Run">The run.</param>
/// <param name="Cut">The cut.</param>
/// <param name="Turn">Its place among all cuts of the plan, from 0.</param>
/// <param name="At">Where the near side of the blade runs, along the axis of the cut.</param>
public sealed record SawnLine(Run Run, RunCut Cut, int Turn, Length At);

/// <summary>Follows the runs on the sheets, so that drawings say what the runs say. Blanks lie at the corner of their sheet that their reference sides are nearest to.</summary>
public sealed class SawnSheets
{
    private readonly Plan _plan;
    private readonly SheetRectangle?[] _places;
    private readonly ILookup<(int, int), SawnLine> _lines;

    private SawnSheets(Plan plan)
    {
        _plan = plan;
        Names = BlankNames.Of(plan);
        ImmutableArray<RunBlank> blanks = plan.Runs.Blanks;
        _places = new SheetRectangle?[blanks.Length];
        foreach (RunBlank stock in blanks.DistinctBy(b => (b.Material, b.Stock)).Where(b => Names.IsSheet(b.Material)))
        {
            SheetPlan sheets = plan.Sheets[stock.Material];
            EdgeTrim trim = sheets.Instance.Stock.First(s => s.Id == sheets.Outcome.Layout.Sheets[stock.Stock].StockId).Trim;
            _places[stock.Id] = new(-trim.AlongStart, -trim.AcrossStart, stock.Along, stock.Across);
        }
        var lines = new List<SawnLine>();
        foreach ((Run run, RunCut cut) in plan.Runs.Runs.SelectMany(r => r.Cuts.Select(c => (r, c))))
        {
            if (_places[cut.Blank] is not { } place) continue;
            bool isNear = cut.From is BlankSide.NearEdge or BlankSide.NearEnd;
            if (cut.Off is { } off) _places[off] = Within(place, blanks[off], cut.Axis, isNear);
            if (cut.Rest is { } rest) _places[rest] = Within(place, blanks[rest], cut.Axis, !isNear);
            if (run.Kind is RunKind.True or RunKind.Clear) continue;
            (Length start, Length extent) = cut.Axis == GrainAxis.Along ? (place.FromAlong, place.Along) : (place.FromAcross, place.Across);
            lines.Add(new(run, cut, lines.Count, isNear ? start + cut.Figure : start + extent - cut.Figure - cut.Kerf));
        }
        _lines = lines.ToLookup(l => (blanks[l.Cut.Blank].Material, blanks[l.Cut.Blank].Stock));
    }

    /// <summary>What blanks are called.</summary>
    public BlankNames Names { get; }

    /// <summary>Follows the runs of a plan.</summary>
    public static SawnSheets Of(Plan plan) => new(plan);

    /// <summary>The cuts that bring wood to size on one sheet, in the order of work.</summary>
    public IEnumerable<SawnLine> Lines(int material, int sheet) => _lines[(material, sheet)];

    /// <summary>Where a blank of a sheet lies; null for one of a board.</summary>
    public SheetRectangle? PlaceOf(int blank) => _places[blank];

    /// <summary>
    /// The cut of a run that makes a cut of the layout; null where none does yet. The two need not lie at the same figure: a saw with a thinner blade than the layout has room for leaves the
    /// difference with what remains.
    /// </summary>
    /// <param name="material">The material.</param>
    /// <param name="sheet">Which sheet.</param>
    /// <param name="axis">The direction the cut's place is measured in.</param>
    /// <param name="at">Where the layout has it.</param>
    /// <param name="taken">Cuts that are matched already.</param>
    public SawnLine? Making(int material, int sheet, GrainAxis axis, Length at, ICollection<SawnLine> taken)
    {
        SheetInstance instance = _plan.Sheets[material].Instance;
        SawnLine[] near = [.. Lines(material, sheet).Where(l => l.Cut.Axis == axis && !taken.Contains(l)).OrderBy(l => (l.At - at).Abs()).ThenBy(l => l.Turn).Take(1)];
        return near is [var line] && (line.At - at).Abs() <= instance.Kerf * 2 ? line : null;
    }

    private static SheetRectangle Within(SheetRectangle place, RunBlank blank, GrainAxis axis, bool isNear) => axis == GrainAxis.Along
        ? place with { FromAlong = isNear ? place.FromAlong : place.FromAlong + place.Along - blank.Along, Along = blank.Along }
        : place with { FromAcross = isNear ? place.FromAcross : place.FromAcross + place.Across - blank.Across, Across = blank.Across };
}
