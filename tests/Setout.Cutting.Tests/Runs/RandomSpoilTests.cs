using System.Collections.Immutable;
using CsCheck;
using Setout.Core.Measures;
using Setout.Cutting.Runs;
using Setout.Cutting.Sheets;
using Setout.Testing;
using Setout.Testing.Runs;

namespace Setout.Cutting.Tests.Runs;

/// <summary>Sound plans of random jobs, each changed at one random place by as little as can be: the simulator must see it.</summary>
public class RandomSpoilTests
{
    private static readonly Length s_tick = Length.FromTicks(1);

    private const string Thrown = "kept as waste";

    private static readonly RunPlanner s_planner = new(500);

    private static readonly (string How, Func<RunBlank, bool> Where, Func<RunBlank, RunBlank> Spoil)[] s_blanks =
    [
        ("a tick longer", _ => true, b => b with { Along = b.Along + s_tick }),
        ("a tick wider", _ => true, b => b with { Across = b.Across + s_tick }),
        ("a tick shorter", _ => true, b => b with { Along = b.Along - s_tick }),
        ("of other stock", _ => true, b => b with { Stock = b.Stock + 1 }),
        ("another part", b => b.Use == BlankUse.Part, b => b with { PartId = "none" }),
        ("a part as waste", b => b.Use == BlankUse.Part, b => b with { Use = BlankUse.Waste, PartId = "" }),
        ("a part to be cut", b => b.Use == BlankUse.Part, b => b with { Use = BlankUse.Work, PartId = "" }),
        (Thrown, b => b.Use == BlankUse.Keep, b => b with { Use = BlankUse.Waste }),
        ("waste as kept", b => b is { Use: BlankUse.Waste, Spares: 0 }, b => b with { Use = BlankUse.Keep }),
        ("nobody waits", b => !b.Waiting.IsEmpty, b => b with { Waiting = [] }),
        ("one more waits", b => b.Use == BlankUse.Waiting, b => b with { Waiting = b.Waiting.Add(b.Waiting[0]) }),
        ("one more spare", b => b.Spares > 0, b => b with { Spares = b.Spares + 1000 }),
        ("a raw end as true", b => b.Use is BlankUse.Stock or BlankUse.Work or BlankUse.Keep && b.IsRaw(BlankSide.FarEnd), b => b with { Trim = b.Trim with { AlongEnd = Length.Zero } }),
        ("a part with a margin", b => b.Use == BlankUse.Part, b => b with { Trim = b.Trim with { AcrossEnd = Length.FromMillimetres(50) } }),
        ("no flaws", b => b.Use is BlankUse.Stock or BlankUse.Work && b.Flaws.Any(f => f.From > b.Trim.AlongStart && f.To < b.Along - b.Trim.AlongEnd), b => b with { Flaws = [] }),
    ];

    private static readonly (string How, Func<Run, RunCut, bool> Where, Func<RunCut, RunCut> Spoil)[] s_cuts =
    [
        ("a tick more", (_, _) => true, c => c with { Figure = c.Figure + s_tick }),
        ("a tick less", (_, _) => true, c => c with { Figure = c.Figure - s_tick }),
        ("more kerf", (_, _) => true, c => c with { Kerf = c.Kerf + s_tick }),
        ("another blank", (_, _) => true, c => c with { Blank = c.Blank + 1 }),
        ("another run made it", (_, _) => true, c => c with { FromRun = (c.FromRun ?? 0) + 1 }),
        ("raw", (_, c) => c.FromRun is not null, c => c with { FromRun = null }),
        ("nothing against", (_, c) => c.Against is not null, c => c with { Against = null, AgainstRun = null }),
        ("another run made that", (_, c) => c.Against is not null, c => c with { AgainstRun = c.AgainstRun + 1 }),
        ("a rest nobody names", (_, c) => c.Rest is not null, c => c with { Rest = null }),
        ("a piece nobody names", (_, c) => c.Off is not null, c => c with { Off = null }),
        ("one or two", (_, _) => true, c => c with { TakesTwo = !c.TakesTwo }),
        ("a carrier or none", (_, _) => true, c => c with { NeedsCarrier = !c.NeedsCarrier }),
        ("planed", (_, _) => true, c => c with { Planed = c.Planed + s_tick }),
        ("the other direction", (_, _) => true, c => c with { Axis = c.Axis == GrainAxis.Along ? GrainAxis.Across : GrainAxis.Along }),
    ];

    [Fact]
    public void Check_RandomPlanSpoiltAtARandomPlace_SeesIt()
    {
        var done = new System.Collections.Concurrent.ConcurrentDictionary<string, int>();
        Gen.Select(RandomJobs.Jobs, Gen.Int[0, 1_000_000]).Holds((job, seed) =>
        {
            OrderedRuns ordered = s_planner.Plan(job.Materials, job.Limits);
            ImmutableArray<RunMaterial> materials = [.. job.Materials.Select((m, i) => SawSimulator.AsGivenBack(m, i, ordered))];
            RunPlan plan = ordered.Plan;
            if (plan.Runs.IsEmpty || !SawSimulator.Check(materials, job.Limits, plan).IsEmpty) return;
            var random = new Random(seed);
            foreach ((string how, Func<RunBlank, bool> where, Func<RunBlank, RunBlank> spoil) in s_blanks)
                // Where a cut is refused, left-overs may stay with what it leaves.
                if ((how != Thrown || plan.Refusals.IsEmpty) && plan.Blanks.Where(where).ToArray() is { Length: > 0 } suit && suit[random.Next(suit.Length)] is { } blank)
                    Refused(plan with { Blanks = plan.Blanks.SetItem(blank.Id, spoil(blank)) }, $"blank {blank.Id}: {how}", how);
            foreach ((string how, Func<Run, RunCut, bool> where, Func<RunCut, RunCut> spoil) in s_cuts)
            {
                Run run = plan.Runs[random.Next(plan.Runs.Length)];
                int at = random.Next(run.Cuts.Length);
                if (where(run, run.Cuts[at])) Refused(plan with { Runs = plan.Runs.SetItem(run.Number - 1, run with { Cuts = run.Cuts.SetItem(at, spoil(run.Cuts[at])) }) }, $"run {run.Number}, cut {at}: {how}", how);
            }
            int gone = random.Next(plan.Runs.Length);
            Refused(plan with { Runs = [.. plan.Runs.RemoveAt(gone).Select((r, i) => r with { Number = i + 1 })] }, $"run {gone + 1} left out", "a run left out");

            void Refused(RunPlan spoilt, string what, string how)
            {
                done.AddOrUpdate(how, 1, (_, n) => n + 1);
                Assert.False(SawSimulator.Check(materials, job.Limits, spoilt).IsEmpty, what);
            }
        }, iter: 200);
        Assert.DoesNotContain(s_blanks.Select(s => s.How).Concat(s_cuts.Select(s => s.How)), how => done.GetValueOrDefault(how) < 3);
    }
}
