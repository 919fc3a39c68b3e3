using System.Collections.Immutable;
using CsCheck;
using Setout.Core.Measures;
using Setout.Cutting;
using Setout.Cutting.Boards;
using Setout.Cutting.Runs;
using Setout.Cutting.Sheets;

namespace Setout.Testing.Runs;

/// <summary>What comes to the saw.</summary>
/// <param name="Materials">Laid out.</param>
/// <param name="Limits">The saws.</param>
public sealed record SawJob(ImmutableArray<RunMaterial> Materials, SawLimits Limits);

/// <summary>
/// Random jobs in random shops: saws missing or small, blades thinner than the layout reckons with, sheets too heavy for one, blanks in hand with uneven trims, parts that wait,
/// figure groups, boards with lanes and flaws, sheets that are followed already, and what runs that were made have left. Sizes come from a short list, so that settings are shared; all are laid by the solvers at a small budget.
/// </summary>
public static class RandomJobs
{
    private const int Budget = 4_000;

    // Half millimetres, with now and then an odd tick.
    private static Gen<Length> Size(int from, int to) =>
        Gen.Select(Gen.Int[2 * from, 2 * to], Gen.Int[0, 9]).Select((half, odd) => Length.FromTicks((half * (Length.TicksPerMillimetre / 2)) + (odd == 0 ? 1 : 0)));

    private static Gen<T> OneIn<T>(int chances, Gen<T> rare, T usual) => Gen.Int[1, chances].SelectMany(n => n == 1 ? rare : Gen.Const(usual));

    private static Gen<T?> Mostly<T>(int chances, Gen<T> usual) where T : class => Gen.Int[1, chances].SelectMany(n => n == 1 ? Gen.Const((T?)null) : usual.Select(u => (T?)u));

    private static readonly Gen<Length> s_trim = Gen.Int[0, 2].SelectMany(n => n == 0 ? Gen.Const(Length.Zero) : Size(1, 14));

    private static readonly Gen<EdgeTrim> s_trims = Gen.Int[0, 3].SelectMany(n => n switch
    {
        0 => Gen.Const(EdgeTrim.None),
        1 => Size(3, 12).Select(EdgeTrim.AllRound),
        _ => Gen.Select(s_trim, s_trim, s_trim, s_trim, (a, b, c, d) => new EdgeTrim(a, b, c, d)),
    });

    private static Gen<Length> Kerf(Length widest) => OneIn(3, Gen.Int[1, 8].Select(n => Length.FromTicks(widest.Ticks * n / 8)), widest);

    /// <summary>Saws whose kerfs are at most <paramref name="kerf"/>: half the shops have them all, and large.</summary>
    private static Gen<SawLimits> Limits(Length kerf) => Gen.Select(Small(kerf), Gen.Bool).Select((small, large) => !large ? small : new(
        new(small.Fence?.Kerf ?? kerf, Length.FromMillimetres(1250), Length.FromMillimetres(3000), Length.FromMillimetres(45), Length.FromMillimetres(8)),
        new(Length.FromMillimetres(900), Length.FromMillimetres(1400)),
        new(small.Guided?.Kerf ?? kerf, null, Length.FromMillimetres(3000), small.Guided?.Rough ?? Length.Zero),
        new(small.Boards?.Kerf ?? kerf, Length.FromMillimetres(300)), small.RipKerf));

    private static Gen<SawLimits> Small(Length kerf) => Gen.Select(
        Mostly(10, Gen.Select(Kerf(kerf), Size(150, 1300), Size(700, 3000), Size(20, 70), Size(5, 20), (k, widest, room, narrow, carried) => new FenceSaw(k, widest, room, narrow, carried))),
        Mostly(6, Gen.Select(Size(150, 900), Size(300, 1400), (deep, far) => new Sled(deep, far))),
        Mostly(6, Gen.Select(Kerf(kerf), Size(500, 3000), Size(0, 5), (k, far, rough) => new GuidedSaw(k, null, far, rough))),
        Mostly(5, Gen.Select(Kerf(kerf), Size(50, 300), (k, wide) => new StopSaw(k, wide))),
        Gen.Select(Gen.Int[0, 2], Size(1, 4)).Select((planed, by) => planed == 0 ? kerf + by : kerf),
        (fence, sled, guided, stop, rip) => new SawLimits(fence, sled, guided, stop, rip));

    private static Gen<RunMaterial> Sheets(string name, Length kerf) => Gen.Select(
        Gen.Select(Size(40, 900).Array[2, 6], Gen.Select(Gen.Int[0, 99], Gen.Int[0, 99], Gen.Int[1, 5], Gen.Int[0, 2], Gen.Int[0, 3]).Array[1, 8]),
        Gen.Select(Size(900, 2500), Size(500, 1300), s_trims),
        Gen.Select(Size(200, 1300), Size(150, 800), s_trims, Gen.Int[1, 2]).Array[0, 2],
        Gen.Select(OneIn(4, Gen.Const((KeepRule?)null), new KeepRule(Length.FromMillimetres(120), Length.FromMillimetres(300))), Gen.Select(Gen.Int[0, 3], Gen.Int[20, 160]).Select((w, a) => w == 0 ? 0 : a), Gen.Int[0, 7], Gen.Int[0, 7]),
        Gen.Int[0, 9_999],
        (parts, sheet, blanks, rules, seed) =>
        {
            (Length[] sizes, (int Along, int Across, int Count, int Grain, int Held)[] rows) = parts;
            SheetPart[] all = [.. rows.Select((r, i) => new SheetPart($"{name}{i}", sizes[r.Along % sizes.Length], sizes[r.Across % sizes.Length], r.Count, r.Grain == 0 ? GrainRule.Free : GrainRule.Keep))];
            var instance = new SheetInstance([.. all],
                [
                    new("sheet", sheet.Item1, sheet.Item2, sheet.Item3, new Money(50), null),
                    .. blanks.Select((b, i) => SheetStock.InHand($"blank {i}", b.Item1, b.Item2, b.Item3, b.Item4)),
                ], kerf, rules.Item1 ?? KeepRule.Nothing)
            {
                Groups = Grouped(all, new Random(seed)),
                Slack = rules.Item3 == 0 ? Length.FromMillimetres(3) : Length.Zero,
                MostStages = rules.Item4 == 0 ? 3 : null,
            };
            SheetLayout layout = SheetSolvers.Default.Solve(instance, new(Budget, 1)).Layout;
            return (RunMaterial)new RunSheets(name, Held(instance, rows, seed), instance, layout)
            {
                MostArea = rules.Item2 == 0 ? null : Length.FromMillimetres(1000) * Length.FromMillimetres(rules.Item2 * 10),
            };
        });

    // Some parts wait; of a figure group mostly all or none.
    private static ImmutableHashSet<string> Held(SheetInstance instance, (int Along, int Across, int Count, int Grain, int Held)[] rows, int seed)
    {
        if (seed % 3 == 0) return [];
        ImmutableHashSet<string> held = [.. instance.Parts.Where((_, i) => rows[i].Held == 0).Select(p => p.Id)];
        if (seed % 5 == 0) return held;
        foreach (FigureGroup group in instance.Groups) held = held.Contains(group.PartIds[0]) ? held.Union(group.PartIds) : held.Except(group.PartIds);
        return held;
    }

    private static ImmutableArray<FigureGroup> Grouped(SheetPart[] parts, Random random)
    {
        if (random.Next(2) == 0) return [];
        ImmutableArray<FigureGroup>.Builder groups = ImmutableArray.CreateBuilder<FigureGroup>();
        foreach (IGrouping<int, SheetPart> same in parts.Where(p => p.Grain == GrainRule.Keep).GroupBy(p => p.Count))
        {
            string[] ids = [.. same.Select(p => p.Id).Take(random.Next(2, 4))];
            if (ids.Length == 1 && same.Key > 1) ids = [.. Enumerable.Repeat(ids[0], same.Key)];
            if (ids.Length > 1) groups.Add(new($"g{groups.Count}", random.Next(2) == 0 ? GrainAxis.Along : GrainAxis.Across, [.. ids]));
        }
        return groups.ToImmutable();
    }

    private static Gen<RunMaterial> Boards(string name, Length kerf, Length rip) => Gen.Select(
        Gen.Select(Size(60, 1100).Array[2, 5], Gen.Select(Gen.Int[0, 99], Gen.Int[1, 6], Gen.Int[0, 4]).Array[1, 6]),
        Gen.Select(Size(20, 180), Gen.Int[1, 4], Size(0, 60), Gen.Int[0, 2]),
        Gen.Select(Size(900, 2600), s_trim, s_trim, Gen.Select(Gen.Int[0, 900], Size(10, 80)).Array[0, 3]).Array[1, 3],
        OneIn(4, Gen.Const(0), 300),
        (parts, lane, stock, keep) =>
        {
            (Length[] sizes, (int Size, int Count, int Held)[] rows) = parts;
            (Length width, int lanes, Length more, int ripped) = lane;
            BoardStock[] boards = [.. stock.Select((s, i) => new BoardStock($"board {i}", s.Item1, new(s.Item2, s.Item3), i == 0 ? new Money(9) : Money.Zero, i == 0 ? null : 1)
            {
                // A flaw is wider than any blade; one at the very end leaves room before it.
                Defects = i == 0 && s.Item4.Length > 1 ? [] : [.. s.Item4.Select(d => Flaw(d.Item1, d.Item2, s.Item1))],
                Rip = ripped == 0 ? null : new((width * lanes) + (rip * (lanes - 1)) + more, width, rip),
            })];
            var instance = new BoardInstance([.. rows.Select((r, i) => new BoardPart($"{name}{i}", sizes[r.Size % sizes.Length], r.Count))], [.. boards.Where(b => b.ClearStretches().Length > 0)],
                kerf, keep == 0 ? Length.FromTicks(long.MaxValue) : Length.FromMillimetres(keep));
            BoardLayout layout = BoardSolvers.Default.Solve(instance, new(Budget, 1)).Layout;
            return (RunMaterial)new RunBoards(name, [.. instance.Parts.Where((_, i) => rows[i].Held == 0).Select(p => p.Id)], instance, layout, width);
        });

    private static BoardStretch Flaw(int thousandths, Length extent, Length board)
    {
        Length from = Length.FromTicks(board.Ticks / 1000 * thousandths);
        return new(from, Length.Min(from + extent, board));
    }

    /// <summary>One to three materials; two jobs in five are followed already, one of them half cut.</summary>
    public static Gen<SawJob> Jobs { get; } = Gen.Select(Gen.Int[0, 4], Gen.Int[0, 9_999]).SelectMany((kind, seed) => First.Select(job => kind switch
    {
        0 => FollowedJobs.SameLayouts(job, seed),
        1 => FollowedJobs.HalfCut(job, seed, Budget),
        _ => job,
    }));

    private static Gen<SawJob> First => Gen.Int[4, 8].SelectMany(half =>
    {
        var kerf = Length.FromTicks(half * (Length.TicksPerMillimetre / 2));
        return Limits(kerf).SelectMany(limits => Gen.Int[0, 5].SelectMany(kind => kind switch
        {
            0 => Sheets("a", kerf).Select(s => new SawJob([s], limits)),
            1 => Boards("b", kerf, limits.RipKerf).Select(b => new SawJob([b], limits)),
            2 => Gen.Select(Sheets("a", kerf), Sheets("c", kerf)).Select((a, c) => new SawJob([a, c], limits)),
            3 => Gen.Select(Boards("b", kerf, limits.RipKerf), Boards("d", kerf, limits.RipKerf)).Select((b, d) => new SawJob([b, d], limits)),
            4 => Gen.Select(Sheets("a", kerf), Boards("b", kerf, limits.RipKerf), Sheets("c", kerf)).Select((a, b, c) => new SawJob([a, b, c], limits)),
            _ => Gen.Select(Sheets("a", kerf), Boards("b", kerf, limits.RipKerf)).Select((a, b) => new SawJob([a, b], limits)),
        }));
    });
}
