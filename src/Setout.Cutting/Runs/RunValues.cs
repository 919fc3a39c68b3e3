// Over 200 lines: the values of one idea, what a saw is told, each with what it means to the tick.
using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Cutting.Boards;
using Setout.Cutting.Sheets;

namespace Setout.Cutting.Runs;

/// <summary>A side of a blank as it lies: edges run with the grain of the sheet or along the board, ends across. Near sides meet in the reference corner.</summary>
public enum BlankSide
{
    /// <summary>The long-grain edge at the reference corner.</summary>
    NearEdge,

    /// <summary>The long-grain edge opposite.</summary>
    FarEdge,

    /// <summary>The end at the reference corner.</summary>
    NearEnd,

    /// <summary>The end opposite.</summary>
    FarEnd,
}

/// <summary>What a rectangle of wood is when a run has made it.</summary>
public enum BlankUse
{
    /// <summary>A sheet, board or blank as it stands in the rack before the first cut.</summary>
    Stock,

    /// <summary>A blank that a later run cuts.</summary>
    Work,

    /// <summary>A part at its size.</summary>
    Part,

    /// <summary>A left-over worth keeping.</summary>
    Keep,

    /// <summary>A left-over that is not.</summary>
    Waste,

    /// <summary>Wood for parts that wait for a reading: put aside whole.</summary>
    Waiting,
}

/// <summary>What the cuts of a run do.</summary>
public enum RunKind
{
    /// <summary>Makes a raw side true. The figure is all that goes, blade included; the near piece is waste.</summary>
    True,

    /// <summary>Brings what lies at the reference side to its size. So is a run called where other cuts at the same setting are for <see cref="Break"/> or <see cref="Lane"/>.</summary>
    Size,

    /// <summary>Parts a sheet that is too large or too heavy into blanks, on the line. Both sides of the cut count as true.</summary>
    Break,

    /// <summary>
    /// The same beyond the line, in wood that the layout spares: what comes off is larger than its parts need and has a raw side there, which a
    /// better saw trues when the last of them is cut. The rest counts as true at the cut.
    /// </summary>
    Rough,

    /// <summary>Rips a lane off a board; what is planed off the two sawn edges is said with the cut.</summary>
    Lane,

    /// <summary>
    /// Cuts a flaw away up to a mark. The figure is all that goes, blade included. The near piece has the flaw and what is left before it: it is waste, unless
    /// that is worth keeping, or parts wait in it.
    /// </summary>
    Clear,
}

/// <summary>A rectangle of wood.</summary>
/// <param name="Id">Unique within the plan, from 0; the index in <see cref="RunPlan.Blanks"/>.</param>
/// <param name="Material">Index of its material.</param>
/// <param name="Stock">Which laid sheet or board of the material it comes from, from 0.</param>
/// <param name="Along">Its size along the grain of the sheet, or along the board, to the tick as it leaves the saw.</param>
/// <param name="Across">Its size in the other direction.</param>
/// <param name="Use">What it is.</param>
public sealed record RunBlank(int Id, int Material, int Stock, Length Along, Length Across, BlankUse Use)
{
    /// <summary>The part it is, or, for waste with <see cref="Spares"/>, the part it could give; empty for all else. A blank in hand that needs no cut is a part from the start.</summary>
    public string PartId { get; init; } = "";

    /// <summary>How the part lies.</summary>
    public Turn Turn { get; init; }

    /// <summary>For wood that waits, and for stock that nobody cuts yet: each part that is still to come out of it, as often as it is.</summary>
    public ImmutableArray<string> Waiting { get; init; } = [];

    /// <summary>
    /// What goes off each side, the blade included, before it counts as true; zero where a saw has trued the side or it was true from the start.
    /// As stock of a later layout the blank is its sizes with these trims.
    /// </summary>
    public EdgeTrim Trim { get; init; } = EdgeTrim.None;

    /// <summary>For boards: stretches that no part may touch, measured from the near end of this blank as it is.</summary>
    public ImmutableArray<BoardStretch> Flaws { get; init; } = [];

    /// <summary>True when nobody has trued that side yet.</summary>
    public bool IsRaw(BlankSide side) => side switch
    {
        BlankSide.NearEdge => Trim.AcrossStart.Sign > 0,
        BlankSide.FarEdge => Trim.AcrossEnd.Sign > 0,
        BlankSide.NearEnd => Trim.AlongStart.Sign > 0,
        _ => Trim.AlongEnd.Sign > 0,
    };

    /// <summary>Parts that could still be cut from it at the very same setting, beyond what is wanted: of waste alone.</summary>
    public int Spares { get; init; }

    /// <inheritdoc/>
    public bool Equals(RunBlank? other) => other is not null && (Id, Material, Stock, Along, Across, Use, PartId, Turn, Spares)
        == (other.Id, other.Material, other.Stock, other.Along, other.Across, other.Use, other.PartId, other.Turn, other.Spares)
        && Trim == other.Trim && SameArrays.Equal(Waiting, other.Waiting) && SameArrays.Equal(Flaws, other.Flaws);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Id, Material, Stock, Along, Across, Use, PartId, Trim);
}

/// <summary>
/// One cut: where the blade goes through which blank, what it makes. Let E be the blank's extent in the direction of <paramref name="Axis"/>,
/// f the figure, k the kerf. For <see cref="RunKind.Size"/>, <see cref="RunKind.Break"/> and <see cref="RunKind.Rough"/> the piece at the side
/// <paramref name="From"/> has the extent f and the rest E - f - k. For <see cref="RunKind.Lane"/> they are f - p and E - f - k - q, with p and q planed off.
/// For <see cref="RunKind.True"/> and <see cref="RunKind.Clear"/> the piece at that side has f - k, or is nothing if that is not above zero, and the rest has E - f.
/// A rest that is not above zero is nothing: the blade turned it to dust. The other extent of the blank does not change.
/// </summary>
/// <param name="Blank">Id of the blank that is cut.</param>
/// <param name="Axis">The direction the figure is measured in; the blade runs the other way. Across means a rip.</param>
/// <param name="From">The side that lies at fence or stop, or that the figure is measured from: one of the two sides that follow each other along the axis.</param>
/// <param name="Figure">Above zero.</param>
/// <param name="Kerf">What the blade takes.</param>
/// <param name="Off">Id of the piece at that side; null when there is none.</param>
/// <param name="Rest">Id of what lies beyond the blade; null when there is none.</param>
public sealed record RunCut(int Blank, GrainAxis Axis, BlankSide From, Length Figure, Length Kerf, int? Off, int? Rest)
{
    /// <summary>The run that made the side the figure is measured from true; 0 where it was true from the start, null where it is raw, as it may be for a cut that makes it true.</summary>
    public int? FromRun { get; init; }

    /// <summary>On a sled or against the fence of a crosscut saw: the edge that lies against that fence; null elsewhere.</summary>
    public BlankSide? Against { get; init; }

    /// <summary>The run that made that edge true; 0 where it was true from the start; null where there is none.</summary>
    public int? AgainstRun { get; init; }

    /// <summary>For lanes: planed off the sawn edge of the piece that comes off; zero or more.</summary>
    public Length Planed { get; init; }

    /// <summary>For lanes: planed off the sawn edge of the rest; zero or more.</summary>
    public Length PlanedRest { get; init; }

    /// <summary>The blank is heavier than one person lifts.</summary>
    public bool TakesTwo { get; init; }

    /// <summary>The strip is so narrow that it needs a carrier.</summary>
    public bool NeedsCarrier { get; init; }
}

/// <summary>
/// All cuts that are made at one setting, one after the other: one way, with fence, stop or straight edge at one figure, whatever comes off is for. What each cut marks for
/// itself, and what may run off the line, is a setting apart from those.
/// </summary>
/// <param name="Number">From 1, in the order of work.</param>
/// <param name="Way">How they are made.</param>
/// <param name="Kind">What they do.</param>
/// <param name="Figure">What fence or stop is set to, or what is marked; the same for all cuts of the run, except where each is cut at a mark of its own and this is zero.</param>
/// <param name="Cuts">In the order of work; one or more.</param>
public sealed record Run(int Number, SawWay Way, RunKind Kind, Length Figure, ImmutableArray<RunCut> Cuts)
{
    /// <summary>Id of a piece of waste, made in an earlier run, that is large enough to try the setting on; null where there is none and the first cut is the trial.</summary>
    public int? Trial { get; init; }

    /// <summary>
    /// True where fence, stop or straight edge is set for it. False on sled and crosscut saw where each cut goes to a mark: the mark is brought to the blade, nothing is moved but the wood.
    /// </summary>
    public bool IsSetting => Way is not (SawWay.Sled or SawWay.Stop) || Kind is not (RunKind.True or RunKind.Clear);

    /// <inheritdoc/>
    public bool Equals(Run? other) => other is not null && (Number, Way, Kind, Figure, Trial) == (other.Number, other.Way, other.Kind, other.Figure, other.Trial)
        && SameArrays.Equal(Cuts, other.Cuts);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Number, Way, Kind, Figure, SameArrays.Hash(Cuts));
}

/// <summary>Why a cut cannot be made safely, or at all, in this shop.</summary>
public enum RefusalKind
{
    /// <summary>A raw edge or end has no saw that makes it true.</summary>
    NothingTrues,

    /// <summary>The strip is narrower than may pass between fence and blade, and no other saw makes the cut.</summary>
    TooNarrow,

    /// <summary>The cut is longer, or the piece wider, than any saw of the shop takes.</summary>
    TooLarge,

    /// <summary>The work is wider than it is long at the fence, and there is neither a sled nor a guide for it.</summary>
    AgainstTheFence,
}

/// <summary>A cut that no run makes, with the wood that is left uncut because of it.</summary>
/// <param name="Kind">Why.</param>
/// <param name="Blank">Id of the blank that would be cut.</param>
/// <param name="Axis">The direction of the figure.</param>
/// <param name="Figure">Where the cut would be.</param>
/// <param name="PartIds">Parts that cannot come out because of it.</param>
public sealed record RunRefusal(RefusalKind Kind, int Blank, GrainAxis Axis, Length Figure, ImmutableArray<string> PartIds)
{
    /// <inheritdoc/>
    public bool Equals(RunRefusal? other) => other is not null && (Kind, Blank, Axis, Figure) == (other.Kind, other.Blank, other.Axis, other.Figure) && SameArrays.Equal(PartIds, other.PartIds);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Kind, Blank, Axis, Figure);
}

/// <summary>A cut that would be refused next, if all that is refused were mended: of wood that no run makes as yet.</summary>
/// <param name="Refusal">Why, and of which stock.</param>
/// <param name="Along">The wood that would be cut then, along the grain of the sheet.</param>
/// <param name="Across">Its size in the other direction.</param>
public sealed record LaterRefusal(RunRefusal Refusal, Length Along, Length Across);

/// <summary>The work at the saw for all layouts of a plan.</summary>
/// <param name="Blanks">Every rectangle of wood that there ever is, by its id; stock first.</param>
/// <param name="Runs">In the order of work.</param>
/// <param name="Refusals">What cannot be cut; empty for a plan that can be sawn.</param>
/// <param name="LeastSettings">No order of these cuts has fewer settings; equal to their count when they are proven fewest.</param>
public sealed record RunPlan(ImmutableArray<RunBlank> Blanks, ImmutableArray<Run> Runs, ImmutableArray<RunRefusal> Refusals, int LeastSettings)
{
    /// <summary>Nothing to saw.</summary>
    public static RunPlan None { get; } = new([], [], [], 0);

    /// <summary>What would be refused next; empty where nothing is refused.</summary>
    public ImmutableArray<LaterRefusal> Later { get; init; } = [];

    /// <summary>True when no order of these cuts has fewer settings.</summary>
    public bool IsFewest => Settings == LeastSettings;

    /// <summary>How many runs there are that something is set for.</summary>
    public int Settings => Runs.Count(r => r.IsSetting);

    /// <inheritdoc/>
    public bool Equals(RunPlan? other) => other is not null && LeastSettings == other.LeastSettings
        && SameArrays.Equal(Blanks, other.Blanks) && SameArrays.Equal(Runs, other.Runs) && SameArrays.Equal(Refusals, other.Refusals) && SameArrays.Equal(Later, other.Later);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(LeastSettings, SameArrays.Hash(Blanks), SameArrays.Hash(Runs));
}
