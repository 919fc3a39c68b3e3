using System.Collections.Immutable;
using CsCheck;
using Setout.Core.Measures;
using Setout.Cutting.Sheets;
using Setout.Testing;
using static Setout.Cutting.Tests.Sheets.SheetBuild;

namespace Setout.Cutting.Tests.Sheets;

public class SheetPropertyTests
{
    private static readonly Gen<Length> s_size = Gen.Long[1, 40_000_000].Select(Length.FromTicks);

    private static readonly Gen<SheetPart> s_part = Gen.Select(s_size, s_size, Gen.Int[1, 6], Gen.Bool,
        (along, across, count, free) => new SheetPart("", along, across, count, free ? GrainRule.Free : GrainRule.Keep));

    private static readonly Gen<SheetStock> s_stock = Gen.Select(Gen.Long[20_000_000, 80_000_000], Gen.Long[20_000_000, 80_000_000], Gen.Long[0, 2_000_000], Gen.Int[0, 9], Gen.Int[0, 5],
        (along, across, trim, cost, limit) => new SheetStock("", Length.FromTicks(along), Length.FromTicks(across),
            new EdgeTrim(Length.FromTicks(trim), Length.Zero, Length.FromTicks(trim / 2), Length.FromTicks(trim)), new Money(cost), limit == 0 ? null : limit));

    private static readonly Gen<SheetInstance> s_instance = Gen.Select(s_part.Array[0, 12], s_stock.Array[1, 3], Gen.Long[0, 800_000], s_size, s_size,
        (parts, stock, kerf, a, b) => new SheetInstance(
            [.. parts.Select((p, i) => p with { Id = $"p{i}" })], [.. stock.Select((s, i) => s with { Id = $"s{i}" })],
            Length.FromTicks(kerf), new KeepRule(Length.Min(a, b), Length.Max(a, b))));

    // The solver throws when its own checker finds anything; what is asserted beside is what the status promises.
    [Fact]
    public void Solve_RandomInstances_ChecksCleanAndKeepsItsWord() =>
        s_instance.Holds(instance =>
        {
            SheetOutcome outcome = Solve(instance, 20_000);
            Assert.Empty(SheetChecker.Check(instance, outcome.Layout));
            if (outcome.Status is OutcomeStatus.Proven or OutcomeStatus.Feasible) Assert.Empty(outcome.Layout.LeftOut);
            if (instance.Stock.All(s => s.Limit is null)) Assert.Equal(instance.Validate().IsEmpty, outcome.Layout.LeftOut.IsEmpty);
            foreach (LaidSheet sheet in outcome.Layout.Sheets)
                Assert.All(SheetCuts.InOrder(instance, sheet), step => Assert.NotEmpty(step.Positions));
        }, iter: 300);

    [Fact]
    public void Solve_KerfAgainstEnlargedPartsWithoutKerf_SameCountsAndBound() =>
        s_instance.Holds(instance =>
        {
            // Kerf k equals kerf 0 with every part and every trued sheet k longer and wider.
            ImmutableArray<SheetPart> parts = [.. instance.Parts.Select(p => p with { Along = p.Along + instance.Kerf, Across = p.Across + instance.Kerf })];
            ImmutableArray<SheetStock> stock = [.. instance.Stock.Select(s => s with { Limit = null })];
            var plain = new SheetInstance(instance.Parts, stock, instance.Kerf, KeepRule.Nothing);
            var enlarged = new SheetInstance(parts, [.. stock.Select(s => s with { Along = s.Along + instance.Kerf, Across = s.Across + instance.Kerf })], Length.Zero, KeepRule.Nothing);
            SheetOutcome a = Solve(plain, 5_000), b = Solve(enlarged, 5_000);
            Assert.Equal((a.Score.Cost, a.Score.Sheets, a.Bound.Cost, a.Bound.Count), (b.Score.Cost, b.Score.Sheets, b.Bound.Cost, b.Bound.Count));
            Assert.Equal(a.Layout.LeftOut, b.Layout.LeftOut);
        }, iter: 60);

    [Fact]
    public void Solve_PermutedOrMirroredInput_ChecksCleanWithTheSameBound() =>
        s_instance.Holds(instance =>
        {
            var permuted = new SheetInstance([.. instance.Parts.Reverse()], [.. instance.Stock.Reverse()], instance.Kerf, instance.Keep);
            var mirrored = new SheetInstance(
                [.. instance.Parts.Select(p => p with { Along = p.Across, Across = p.Along })],
                [.. instance.Stock.Select(s => s with { Along = s.Across, Across = s.Along, Trim = new(s.Trim.AcrossStart, s.Trim.AcrossEnd, s.Trim.AlongStart, s.Trim.AlongEnd) })],
                instance.Kerf, instance.Keep);
            SheetOutcome outcome = Solve(instance, 5_000);
            foreach (SheetInstance other in (SheetInstance[])[permuted, mirrored])
            {
                SheetOutcome again = Solve(other, 5_000);
                Assert.Equal((outcome.Bound.Cost, outcome.Bound.Count), (again.Bound.Cost, again.Bound.Count));
            }
        }, iter: 60);

    [Fact]
    public void Solve_DoubledStock_LaysNoLess() =>
        s_instance.Holds(instance =>
        {
            var doubled = new SheetInstance(instance.Parts, [.. instance.Stock.Select(s => s with { Limit = s.Limit * 2 })], instance.Kerf, instance.Keep);
            SheetScore once = Solve(instance, 0).Score, twice = Solve(doubled, 0).Score;
            Assert.True(twice.LeftOut <= once.LeftOut, $"{once} with the stock, {twice} with twice as much");
        }, iter: 60);
}
