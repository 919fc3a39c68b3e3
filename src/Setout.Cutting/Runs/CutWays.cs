using Setout.Core.Measures;
using Setout.Cutting.Sheets;

namespace Setout.Cutting.Runs;

/// <summary>How a cut can be made.</summary>
/// <param name="Way">Which saw.</param>
/// <param name="Kerf">What it takes.</param>
/// <param name="Against">The edge that lies against the fence of sled or crosscut saw; null elsewhere.</param>
/// <param name="TakesTwo">It is heavier than one person lifts.</param>
/// <param name="NeedsCarrier">It is too narrow for a push stick.</param>
internal readonly record struct CutWay(SawWay Way, Length Kerf, BlankSide? Against, bool TakesTwo, bool NeedsCarrier);

/// <summary>How a lane is ripped: the sawn edges of the lane and of the rest are planed, and together with the kerf that is what the layout has between two lanes.</summary>
/// <param name="Way">The saw.</param>
/// <param name="Figure">What is set: the lane, and what is planed off it.</param>
/// <param name="Kerf">What the blade takes.</param>
/// <param name="Planed">Planed off the lane.</param>
/// <param name="PlanedRest">Planed off the rest.</param>
internal readonly record struct LaneWay(CutWay Way, Length Figure, Length Kerf, Length Planed, Length PlanedRest)
{
    // Where the board has too little for that, the blade skims it to the width of the lane.
    public static LaneWay Of(Length width, Length lane, Length between, Length blade)
    {
        Length kerf = Length.Min(blade, between), planed = Length.FromTicks((between - kerf).Ticks / 2);
        if (lane + planed >= width) planed = Length.Zero;
        return new(default, lane + planed, kerf, planed, between - kerf - planed);
    }
}

/// <summary>
/// Chooses the saw for each cut. What is too heavy for one person goes to the guided saw. A rip goes to the fence, a crosscut to the sled or, for boards, to their own saw;
/// what these cannot take, or not safely, goes to the guided saw. No work lies at the fence with an edge that is not longer than its distance from the blade: it would
/// turn on the blade and be thrown back. A blank that is wider than its edge at the fence is long goes there only where no other saw takes it.
/// </summary>
internal sealed class CutWays(SawLimits limits)
{
    public SawLimits Limits => limits;

    /// <summary>True when nobody lifts it alone.</summary>
    public static bool IsHeavy(Wood blank, RunMaterial material) => material.MostArea is { } most && blank.Face > most;

    /// <summary>The way to bring a piece of a blank to size; null with the reason when there is none.</summary>
    public CutWay? Size(Wood blank, GrainAxis axis, Length figure, RunMaterial material, out RefusalKind why)
    {
        Length edge = blank.Extent(Other(axis));
        bool isHeavy = IsHeavy(blank, material), isBoard = material is RunBoards;
        BlankSide? against = Square(blank, axis);
        why = RefusalKind.TooLarge;
        if (isBoard && axis == GrainAxis.Along && Stop(edge, material) is { } stop) return stop;
        bool guideTakesIt = limits.Guided is { } guided && edge <= guided.Longest && Fits(guided.Kerf, material);
        CutWay? guide = guideTakesIt ? new(SawWay.Guide, limits.Guided!.Kerf, null, isHeavy, false) : null;
        if (isHeavy && guide is not null) return guide;
        CutWay? sled = limits is { Sled: { } s, Fence: { } table } && edge <= s.Deepest && figure <= s.Longest && against is not null && Fits(table.Kerf, material)
            ? new(SawWay.Sled, table.Kerf, against, isHeavy, false) : null;
        // A board is never cut to length at the fence.
        bool isCrosscut = isBoard && axis == GrainAxis.Along;
        CutWay? fence = Fence(figure, edge, isHeavy, material, out RefusalKind not);
        if (isCrosscut) (fence, not) = (null, RefusalKind.AgainstTheFence);
        // With its longer side at the fence a blank is steady; with the shorter one it comes last of all ways.
        bool isSteady = edge >= blank.Extent(axis);
        CutWay? steady = isSteady ? fence : null;
        CutWay? way = (axis == GrainAxis.Along ? sled ?? steady : steady ?? sled) ?? guide ?? fence;
        if (way is null && limits.Fence is not null) why = not;
        return way;
    }

    /// <summary>The way to rip a lane off a board; null with the reason when there is none.</summary>
    /// <param name="board">The board.</param>
    /// <param name="width">What is left of its width; more than the lane.</param>
    /// <param name="lane">The width of the lane once it is planed.</param>
    /// <param name="between">What is lost between two lanes: kerf and planing.</param>
    /// <param name="material">The material.</param>
    /// <param name="why">The reason.</param>
    public LaneWay? Lane(Wood board, Length width, Length lane, Length between, RunMaterial material, out RefusalKind why)
    {
        // A board is too narrow to carry a straight edge and a saw beside it: lanes are ripped at the fence alone.
        LaneWay at = LaneWay.Of(width, lane, between, limits.Fence?.Kerf ?? Length.Zero);
        return Fence(at.Figure, board.Along, false, material, out why) is { } way ? at with { Way = way } : null;
    }

    /// <summary>The way to make a raw side true; null when there is none.</summary>
    public CutWay? True(Wood blank, GrainAxis axis, RunMaterial material)
    {
        Length edge = blank.Extent(Other(axis));
        bool isHeavy = IsHeavy(blank, material);
        if (axis == GrainAxis.Along && material is RunBoards && Stop(edge, material) is { } stop) return stop;
        CutWay? guide = limits.Guided is { } guided && edge <= guided.Longest && Fits(guided.Kerf, material) ? new(SawWay.Guide, guided.Kerf, null, isHeavy, false) : null;
        if (isHeavy && guide is not null) return guide;
        return limits is { Sled: { } sled, Fence: { } table } && edge <= sled.Deepest && Square(blank, axis) is { } against && Fits(table.Kerf, material)
            ? new(SawWay.Sled, table.Kerf, against, isHeavy, false) : guide;
    }

    private CutWay? Stop(Length width, RunMaterial material) =>
        limits.Boards is { } saw && width <= saw.Widest && Fits(saw.Kerf, material) ? new(SawWay.Stop, saw.Kerf, BlankSide.NearEdge, false, false) : null;

    private CutWay? Fence(Length figure, Length edge, bool isHeavy, RunMaterial material, out RefusalKind why)
    {
        why = RefusalKind.TooLarge;
        if (limits.Fence is not { } fence || figure > fence.Widest || edge > fence.Room || !(material is RunBoards || Fits(fence.Kerf, material))) return null;
        why = edge <= figure ? RefusalKind.AgainstTheFence : RefusalKind.TooNarrow;
        return edge <= figure || figure < fence.NarrowestCarried ? null : new(SawWay.Fence, fence.Kerf, null, isHeavy, figure < fence.Narrowest);
    }

    // The layout has room for its own kerf and no more.
    private static bool Fits(Length kerf, RunMaterial material) => kerf <= (material is RunSheets sheets ? sheets.Instance.Kerf : ((RunBoards)material).Instance.Kerf);

    // A true side square to the blade's way, near ones first; the edges of boards are true.
    private static BlankSide? Square(Wood blank, GrainAxis axis) => axis == GrainAxis.Along
        ? blank.Trim.AcrossStart.Sign == 0 ? BlankSide.NearEdge : blank.Trim.AcrossEnd.Sign == 0 ? BlankSide.FarEdge : null
        : blank.Trim.AlongStart.Sign == 0 ? BlankSide.NearEnd : blank.Trim.AlongEnd.Sign == 0 ? BlankSide.FarEnd : null;

    internal static GrainAxis Other(GrainAxis axis) => axis == GrainAxis.Along ? GrainAxis.Across : GrainAxis.Along;
}
