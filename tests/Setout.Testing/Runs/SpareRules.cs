using Setout.Core.Measures;
using Setout.Cutting.Runs;
using Setout.Cutting.Sheets;

namespace Setout.Testing.Runs;

/// <summary>Spares that a piece of waste promises when it falls off.</summary>
internal static class SpareRules
{
    public static void Check(Bench bench, Run run, RunCut cut)
    {
        if (cut.Off is { } off && bench.Blank(off) is { Spares: not 0 }) bench.Wrong(SawRule.SparesAreThere, $"blank {off} lies at the stop and promises spares", run.Number);
        if (cut.Rest is not { } rest || bench.Blank(rest) is not { Spares: not 0 } blank || !bench.There.TryGetValue(rest, out Wood? wood)) return;
        if (blank.Use != BlankUse.Waste || run.Kind != RunKind.Size || cut.Off is not { } first || bench.Blank(first) is not { Use: BlankUse.Part } part || !IsAlike(bench, part, blank))
        {
            bench.Wrong(SawRule.SparesAreThere, $"blank {rest} promises spares, it is {blank.Use}, no part {blank.PartId} was cut off it", run.Number);
            return;
        }
        long needs = (cut.Figure.Ticks * blank.Spares) + (cut.Kerf.Ticks * (blank.Spares - 1));
        GrainAxis other = Wood.Other(cut.Axis);
        bool near = cut.From == Wood.Near(cut.Axis);
        bool flawed = cut.Axis == GrainAxis.Along && !Wood.Within(wood.Flaws, near ? 0 : wood.Along - needs, near ? needs : wood.Along, 0).IsEmpty;
        if (blank.Spares < 0 || needs > wood.Counted(cut.Axis) || wood.Counted(other) != wood.Extent(other) || flawed)
            bench.Wrong(SawRule.SparesAreThere, $"blank {rest} promises {blank.Spares} spares at {cut.Figure}, that is {Wood.Mm(needs)}; it is {wood}", run.Number);
    }

    // Parts of one size are one to the saw.
    private static bool IsAlike(Bench bench, RunBlank part, RunBlank spare) => bench.SizeOf(spare) is { } size && size == (part.Along, part.Across);
}

/// <summary>The piece of waste that a setting is tried on.</summary>
internal static class TrialRules
{
    public static void Check(Bench bench, Run run)
    {
        if (run.Trial is not { } trial) return;
        if (bench.Blank(trial) is not { } blank || !bench.There.TryGetValue(trial, out Wood? wood) || blank.Use != BlankUse.Waste)
        {
            bench.Wrong(SawRule.TrialIsWaste, $"blank {trial} is no piece of waste that lies there", run.Number);
            return;
        }
        bool goes = Enum.GetValues<GrainAxis>().Any(axis => wood.Extent(axis) > run.Figure.Ticks
            && !CutRules.Refuses(bench.Limits, run.Way, wood, axis, run.Figure.Ticks).Any());
        if (!goes) bench.Wrong(SawRule.TrialIsWaste, $"blank {trial}, {wood}, cannot be cut at {run.Figure} that way", run.Number);
    }
}
