using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Cutting.Boards;
using Setout.Cutting.Sheets;

namespace Setout.Cutting.Runs;

/// <summary>A rectangle of wood that is known before the cuts have an order: stock, what comes off at a cut, what is left when all cuts of a group are made.</summary>
internal sealed class Wood(int material, int stock, Length along, Length across, EdgeTrim trim)
{
    public int Material => material;

    public int Stock => stock;

    public Length Along => along;

    public Length Across => across;

    public EdgeTrim Trim => trim;

    public BlankUse Use { get; set; } = BlankUse.Work;

    public string PartId { get; set; } = "";

    public Turn Turn { get; set; }

    public List<string> Waiting { get; } = [];

    public ImmutableArray<BoardStretch> Flaws { get; init; } = [];

    /// <summary>Cuts that must be made before it is there.</summary>
    public ImmutableArray<PlannedCut> Needs { get; set; } = [];

    /// <summary>The same with these flaws.</summary>
    public Wood With(ImmutableArray<BoardStretch> flaws) => new(material, stock, along, across, trim) { Flaws = flaws };

    public Area Face => along * across;

    public Length Extent(GrainAxis axis) => axis == GrainAxis.Along ? along : across;

    /// <summary>What must go at its near side before anything is measured from there.</summary>
    public Length Near(GrainAxis axis) => axis == GrainAxis.Along ? trim.AlongStart : trim.AcrossStart;

    /// <summary>What is raw at its far side.</summary>
    public Length Far(GrainAxis axis) => axis == GrainAxis.Along ? trim.AlongEnd : trim.AcrossEnd;

    /// <summary>A slice of it, or what is left: another extent along an axis, other trims on the two sides there.</summary>
    public Wood Sliced(GrainAxis axis, Length extent, Length near, Length far) => axis == GrainAxis.Along
        ? new(material, stock, extent, across, trim with { AlongStart = near, AlongEnd = far })
        : new(material, stock, along, extent, trim with { AcrossStart = near, AcrossEnd = far });
}

/// <summary>A setting: cuts that share it may be made in one run.</summary>
/// <param name="Way">How.</param>
/// <param name="Kind">What for.</param>
/// <param name="Figure">What is set; zero where each cut goes to a mark of its own.</param>
internal readonly record struct Setting(SawWay Way, RunKind Kind, Length Figure);

/// <summary>One cut before it has its turn.</summary>
internal sealed class PlannedCut(Setting setting, CutGroup group, Length figure, Length kerf, Wood? off)
{
    public Setting Setting => setting;

    public CutGroup Group => group;

    public Length Figure => figure;

    public Length Kerf => kerf;

    /// <summary>What comes off at the reference side; null where it all goes to dust.</summary>
    public Wood? Off => off;

    public Length Planed { get; init; }

    public Length PlanedRest { get; init; }

    public BlankSide? Against { get; init; }

    public bool NeedsCarrier { get; init; }

    /// <summary>Cuts that come before it.</summary>
    public ImmutableArray<PlannedCut> Needs { get; init; } = [];
}

/// <summary>Cuts through one blank in one direction, one after the other from its near side. They have no order among themselves unless their needs say so.</summary>
internal sealed class CutGroup(Wood whole, GrainAxis axis)
{
    public Wood Whole => whole;

    public GrainAxis Axis => axis;

    public BlankSide From => axis == GrainAxis.Along ? BlankSide.NearEnd : BlankSide.NearEdge;

    public List<PlannedCut> Cuts { get; } = [];

    /// <summary>What is left once all of them are made; null when nothing is.</summary>
    public Wood? Rest { get; set; }
}

/// <summary>A cut that the shop cannot make.</summary>
internal sealed class NoWay(RefusalKind kind, Wood blank, GrainAxis axis, Length figure, ImmutableArray<string> partIds)
{
    public RefusalKind Kind => kind;

    /// <summary>The wood in which it stays uncut.</summary>
    public Wood Blank { get; set; } = blank;

    public GrainAxis Axis => axis;

    public Length Figure => figure;

    public ImmutableArray<string> PartIds => partIds;
}
