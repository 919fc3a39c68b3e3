using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Cutting.Sheets;

namespace Setout.Cutting.Tests.Sheets;

/// <summary>Short words for building sheet instances and trees in tests; whole numbers are millimetres.</summary>
internal static class SheetBuild
{
    public static Length Tick { get; } = Length.FromTicks(1);

    public static Length Mm(long millimetres) => Length.FromMillimetres(millimetres);

    public static SheetPart Part(string id, long along, long across, int count = 1, GrainRule grain = GrainRule.Keep) =>
        new(id, Mm(along), Mm(across), count, grain);

    public static SheetStock Stock(string id, long along, long across, decimal cost = 1, int? limit = null, EdgeTrim? trim = null) =>
        new(id, Mm(along), Mm(across), trim ?? EdgeTrim.None, new Money(cost), limit);

    public static SheetInstance Instance(IEnumerable<SheetPart> parts, IEnumerable<SheetStock> stock, long kerf = 3, KeepRule? keep = null) =>
        new([.. parts], [.. stock], Mm(kerf), keep ?? new KeepRule(Mm(100), Mm(300)));

    public static PartNode Lies(string id, Turn turn = Turn.None) => new(id, turn);

    public static Slice Slice(long size, CutNode content) => new(Mm(size), content);

    public static Slice Slice(Length size, CutNode content) => new(size, content);

    public static Division Rips(Length dust, params ReadOnlySpan<Slice> slices) => new(GrainAxis.Across, [.. slices], dust);

    public static Division Crosscuts(Length dust, params ReadOnlySpan<Slice> slices) => new(GrainAxis.Along, [.. slices], dust);

    public static SheetLayout Layout(params ReadOnlySpan<LaidSheet> sheets) => new([.. sheets], []);

    public static ImmutableHashSet<string> Rules(SheetInstance instance, SheetLayout layout) =>
        [.. SheetChecker.Check(instance, layout).Select(v => v.Rule)];

    public static SheetOutcome Solve(SheetInstance instance, long budget = 300_000, int seed = 1) =>
        SheetSolvers.Default.Solve(instance, new SolverOptions(budget, seed));
}
