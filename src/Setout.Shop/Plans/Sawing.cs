using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Cutting.Boards;
using Setout.Cutting.Runs;
using Setout.Cutting.Sheets;

namespace Setout.Shop.Plans;

/// <summary>Hands the layouts of a plan to the run planner, all materials together, and takes them back in the order of sawing.</summary>
internal static class Sawing
{
    private static readonly CheckedRunPlanner s_planner = new(new RunPlanner());

    /// <summary>The materials of a plan as the run planner knows them: sheets first, then boards.</summary>
    public static ImmutableArray<RunMaterial> Materials(SetPiece set, ImmutableArray<SheetPlan> sheets, ImmutableArray<BoardPlan> boards, Mass lift)
    {
        ImmutableHashSet<string> held = [.. set.Parts.Where(set.IsHeld).Select(p => p.Key)];
        return
        [
            .. sheets.Select(s => new RunSheets(s.Material.Name, held, s.Instance, s.Outcome.Layout) { Settled = Settled(s), MostArea = OneLift.MostArea(set, s.Material, lift) }),
            .. boards.Select(b => new RunBoards(b.Material.Name, held, b.Instance, b.Outcome.Layout, Width(set, b.Material)) { MostArea = OneLift.MostArea(set, b.Material, lift) }),
        ];
    }

    /// <summary>The layouts with their cuts in order, and the runs.</summary>
    public static (ImmutableArray<SheetPlan> Sheets, ImmutableArray<BoardPlan> Boards, RunPlan Runs) Of(
        SetPiece set, ImmutableArray<SheetPlan> sheets, ImmutableArray<BoardPlan> boards, Texts.Shop shop, CancellationToken cancel)
    {
        OrderedRuns given = s_planner.Plan(Materials(set, sheets, boards, shop.Lift), shop.Saws, cancel);
        return (
            [.. sheets.Select((s, i) => s with { Outcome = s.Outcome with { Layout = given.Sheets[i], Score = SheetObjective.Score(s.Instance, given.Sheets[i]) } })],
            [.. boards.Select((b, i) => b with { Outcome = b.Outcome with { Layout = given.Boards[sheets.Length + i] } })],
            given.Plan);
    }

    // What a shop already follows keeps the order of its cuts.
    private static ImmutableHashSet<int> Settled(SheetPlan plan)
    {
        if (plan.Instance.Before is not { } before) return [];
        Dictionary<LaidSheet, int> there = before.Sheets.CountBy(s => s).ToDictionary();
        var settled = ImmutableHashSet.CreateBuilder<int>();
        for (int i = 0; i < plan.Outcome.Layout.Sheets.Length; i++)
        {
            LaidSheet sheet = plan.Outcome.Layout.Sheets[i];
            if (there.GetValueOrDefault(sheet) < 1) continue;
            there[sheet]--;
            settled.Add(i);
        }
        return settled.ToImmutable();
    }

    private static Length Width(SetPiece set, Stick stick) => Length.Max(Length.FromTicks(1), set.Worked[QuantityKey.Of(stick.Name, "width")].ToNearestTick());
}
