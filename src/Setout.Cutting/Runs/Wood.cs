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
/// <param name="Kind">What is set up: <see cref="RunKind.Size"/> for fence, stop or straight edge at a figure; else what is done without a figure, or not to the tick.</param>
/// <param name="Figure">What is set; zero where each cut goes to a mark of its own.</param>
internal readonly record struct Setting(SawWay Way, RunKind Kind, Length Figure)
{
    /// <summary>False where nothing is set: on sled and crosscut saw what goes off is brought to the blade by its mark, and no stop is moved.</summary>
    public bool IsSet => Way is not (SawWay.Sled or SawWay.Stop) || Kind is not (RunKind.True or RunKind.Clear);

    /// <summary>Of a cut: a fence or a straight edge stands where it stands, whether a sheet is parted there, a lane ripped or a part cut.</summary>
    public static Setting Of(SawWay way, RunKind kind, Length figure) => new(way, kind is RunKind.Break or RunKind.Lane ? RunKind.Size : kind, figure);
}

/// <summary>One cut before it has its turn.</summary>
internal sealed class PlannedCut(SawWay way, RunKind kind, CutGroup group, Length figure, Length kerf, Wood? off)
{
    public RunKind Kind => kind;

    // What makes a side true or clears a flaw goes to a mark of its own.
    public Setting Setting { get; } = Setting.Of(way, kind, kind is RunKind.True or RunKind.Clear ? Length.Zero : figure);

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

    /// <summary>True for what is mended together.</summary>
    public bool IsSame(NoWay other) => (Kind, Axis, Figure) == (other.Kind, other.Axis, other.Figure) && PartIds.SequenceEqual(other.PartIds);
}
