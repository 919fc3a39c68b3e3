using Setout.Core.Measures;
using Setout.Cutting.Boards;
using Setout.Cutting.Runs;
using Setout.Cutting.Sheets;

namespace Setout.Testing.Runs;

/// <summary>What one cut asks of the saw, of the sides it is measured from and of who stands at it.</summary>
internal static class CutRules
{
    public static void Check(Bench bench, Wood wood, Run run, RunCut cut)
    {
        void Wrong(SawRule rule, string words) => bench.Wrong(rule, $"blank {cut.Blank}, {wood}, {run.Kind} {cut.Axis} at {cut.Figure}: {words}", run.Number);
        SawLimits limits = bench.Limits;
        Kerf(bench, wood, run, cut, Wrong);
        // A cut at a mark of its own needs no stop.
        foreach ((SawRule rule, string words) in Refuses(limits, run.Way, wood, cut.Axis, cut.Figure.Ticks, isMarked: run.Figure.Sign == 0)) Wrong(rule, words);
        Suits(bench, wood, run, cut, Wrong);
        Sides(wood, run, cut, Wrong);
        bool carried = run.Way == SawWay.Fence && limits.Fence is { } fence && cut.Figure < fence.Narrowest;
        if (cut.NeedsCarrier != carried) Wrong(SawRule.CarrierIsNamed, $"a carrier is {(carried ? "needed and not" : "not needed but")} named");
        bool heavy = IsHeavy(bench, wood);
        if (cut.TakesTwo != heavy) Wrong(SawRule.TwoPeopleAreNamed, $"a second person is {(heavy ? "needed and not" : "not needed but")} named");
        if (heavy && run.Way is SawWay.Fence or SawWay.Sled && limits.Guided is { } guided && wood.Extent(Wood.Other(cut.Axis)) <= guided.Longest.Ticks)
            Wrong(SawRule.HeavyStaysOffTheTable, "it is heavy and the guided saw could make the cut");
    }

    public static bool IsHeavy(Bench bench, Wood wood) => bench.Materials[wood.Material].MostArea is { } most && wood.Area > most.SquareTicks;

    /// <summary>Why a way does not take this cut, by size alone; nothing when it does.</summary>
    public static IEnumerable<(SawRule Rule, string Words)> Refuses(SawLimits limits, SawWay way, Wood wood, GrainAxis axis, long figure, bool isMarked = false)
    {
        long length = wood.Extent(Wood.Other(axis));
        switch (way)
        {
            case SawWay.Fence when limits.Fence is { } fence:
                if (length <= figure) yield return (SawRule.EdgeIsLongerThanFigure, $"the edge on the fence is {Wood.Mm(length)}");
                if (figure > fence.Widest.Ticks) yield return (SawRule.FenceReaches, $"the fence goes out to {fence.Widest}");
                if (length > fence.Room.Ticks) yield return (SawRule.RoomAtTheFence, $"there is room for {fence.Room}");
                if (figure < fence.NarrowestCarried.Ticks) yield return (SawRule.StripIsWideEnough, $"the narrowest strip is {fence.NarrowestCarried}");
                break;
            case SawWay.Sled when limits is { Fence: not null, Sled: { } sled }:
                if (length > sled.Deepest.Ticks) yield return (SawRule.SledTakesIt, $"the sled takes {sled.Deepest}");
                if (!isMarked && figure > sled.Longest.Ticks) yield return (SawRule.SledStopReaches, $"its stop goes out to {sled.Longest}");
                break;
            case SawWay.Guide when limits.Guided is { } guided:
                if (length > guided.Longest.Ticks) yield return (SawRule.GuideReaches, $"the straight edge leads {guided.Longest}");
                break;
            case SawWay.Stop when limits.Boards is { } stop:
                if (length > stop.Widest.Ticks) yield return (SawRule.StopSawTakesIt, $"the saw cuts {stop.Widest}");
                break;
            default:
                yield return (SawRule.SawIsThere, $"the shop has nothing for {way}");
                break;
        }
    }

    public static Length? KerfOf(SawLimits limits, SawWay way) => way switch
    {
        SawWay.Fence => limits.Fence?.Kerf,
        SawWay.Sled => limits.Sled is null ? null : limits.Fence?.Kerf,
        SawWay.Guide => limits.Guided?.Kerf,
        _ => limits.Boards?.Kerf,
    };

    /// <summary>A board is ripped into lanes, whatever else is cut at that setting.</summary>
    public static bool IsLane(Bench bench, Wood wood, RunCut cut) => bench.Materials[wood.Material] is RunBoards && cut.Axis == GrainAxis.Across;

    private static void Kerf(Bench bench, Wood wood, Run run, RunCut cut, Action<SawRule, string> wrong)
    {
        if (KerfOf(bench.Limits, run.Way) is { } kerf && cut.Kerf != kerf) wrong(SawRule.KerfIsOfTheSaw, $"the kerf is {cut.Kerf}, the saw's is {kerf}");
        if (IsLane(bench, wood, cut))
        {
            Length lost = cut.Kerf + cut.Planed + cut.PlanedRest;
            // Where nothing is left beyond the last lane, nothing of it is planed.
            bool pays = cut.Rest is null ? lost <= bench.Limits.RipKerf : lost == bench.Limits.RipKerf;
            if (cut.Planed.Sign < 0 || cut.PlanedRest.Sign < 0 || !pays)
                wrong(SawRule.KerfIsOfTheSaw, $"{lost} goes between two lanes, planing counted in; it is {bench.Limits.RipKerf}");
        }
        else if (cut.Planed.Sign != 0 || cut.PlanedRest.Sign != 0) wrong(SawRule.KerfIsOfTheSaw, "something is planed off");
    }

    private static void Suits(Bench bench, Wood wood, Run run, RunCut cut, Action<SawRule, string> wrong)
    {
        bool board = bench.Materials[wood.Material] is RunBoards, across = cut.Axis == GrainAxis.Across;
        string? why = run.Kind switch
        {
            RunKind.Break or RunKind.Rough when run.Way != SawWay.Guide => "only the guided saw parts what is too large",
            RunKind.Lane when !board || !across || run.Way != SawWay.Fence => "a lane is ripped off a board at the fence",
            RunKind.Clear when !board || across => "a flaw is cut out of a board",
            _ when run.Way == SawWay.Stop && (!board || across) => "the crosscut saw crosscuts boards",
            _ when run.Way == SawWay.Fence && board && !across => "a board is crosscut against the fence",
            _ when run.Way != SawWay.Fence && board && across => "a board is ripped away from the fence",
            _ => null,
        };
        if (why is not null) wrong(SawRule.WaySuitsTheCut, why);
    }

    private static void Sides(Wood wood, Run run, RunCut cut, Action<SawRule, string> wrong)
    {
        WoodSide from = wood.Side(cut.From);
        bool mayBeRaw = run.Kind is RunKind.True or RunKind.Clear or RunKind.Rough && run.Way != SawWay.Fence;
        if (from.Run is null && !mayBeRaw) wrong(SawRule.ReferenceIsTrue, $"its {cut.From} is raw");
        if (cut.FromRun != from.Run) wrong(SawRule.FromRunIsNamed, $"its {cut.From} is of run {Name(from.Run)}, {Name(cut.FromRun)} is named");
        long takes = cut.Figure.Ticks - from.Margin;
        // A flaw that begins in the margin goes with it.
        (long first, long last) = cut.From == BlankSide.NearEnd ? (from.Margin, cut.Figure.Ticks) : (wood.Along - cut.Figure.Ticks, wood.Along - from.Margin);
        bool flawed = cut.Axis == GrainAxis.Along && Wood.Within(wood.Flaws, first, last, first) is [{ From: 0 } only] && only.To == takes;
        if (run.Kind == RunKind.True && (takes < 0 || (takes > wood.Spared(cut.Axis) && !flawed) || (from.Margin == 0 && takes == 0)))
            wrong(SawRule.TrueTakesTheMargin, $"its {cut.From} has a margin of {Wood.Mm(from.Margin)}");
        if (run.Kind == RunKind.Clear && takes < 0) wrong(SawRule.TrueTakesTheMargin, $"its {cut.From} has a margin of {Wood.Mm(from.Margin)}, which is not cleared");
        if (run.Way is not (SawWay.Sled or SawWay.Stop))
        {
            if (cut.Against is not null || cut.AgainstRun is not null) wrong(SawRule.AgainstRunIsNamed, "nothing lies against a second fence");
            return;
        }
        if (cut.Against is not { } against || Wood.AxisOf(against) == cut.Axis || wood.Side(against).Run is null)
        {
            wrong(SawRule.AgainstIsTrue, $"no true side square to the figure lies against the fence ({cut.Against})");
            return;
        }
        if (cut.AgainstRun != wood.Side(against).Run) wrong(SawRule.AgainstRunIsNamed, $"its {against} is of run {Name(wood.Side(against).Run)}, {Name(cut.AgainstRun)} is named");
    }

    private static string Name(int? run) => run switch { null => "none (raw)", 0 => "none (true from the start)", _ => $"{run}" };
}
