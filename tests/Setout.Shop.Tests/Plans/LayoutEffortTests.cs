using System.Collections.Immutable;
using System.Text;
using Setout.Cutting;
using Setout.Cutting.Boards;
using Setout.Cutting.Sheets;
using Setout.Shop.Outputs;
using Setout.Shop.Plans;

namespace Setout.Shop.Tests.Plans;

/// <summary>How the time for a plan is shared by its materials.</summary>
public sealed class LayoutEffortTests
{
    // A clock that moves only when a search takes its time; it remembers what it was asked to signal.
    private sealed class Clock : TimeProvider
    {
        private long _now;

        public List<double> Asked { get; } = [];

        public override long TimestampFrequency => 1000;

        public override long GetTimestamp() => _now;

        public void Pass(double seconds) => _now += (long)(seconds * 1000);

        public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period)
        {
            Asked.Add(dueTime.TotalSeconds);
            return new Never();
        }

        private sealed class Never : ITimer
        {
            public bool Change(TimeSpan dueTime, TimeSpan period) => true;

            public void Dispose()
            {
            }

            public ValueTask DisposeAsync() => ValueTask.CompletedTask;
        }
    }

    // Takes all the time it is given, and proves nothing unless it is told to.
    private sealed class Slow(Clock clock, Func<int, bool> proves) : ISheetSolver, IBoardSolver
    {
        private int _calls;

        /// <summary>What looks at plain strips were given: nothing else here asks for no more than two divisions.</summary>
        public List<double> Plain { get; } = [];

        public SheetOutcome Solve(SheetInstance instance, SolverOptions options, IProgress<SolverProgress>? progress = null, CancellationToken cancel = default)
        {
            SheetOutcome found = SheetSolvers.Default.Solve(instance, new(0, 1), null, cancel);
            if (instance.MostStages == 2)
            {
                Assert.Equal(long.MaxValue, options.WorkBudget);
                Plain.Add(clock.Asked[^1]);
                clock.Asked.RemoveAt(clock.Asked.Count - 1);
                clock.Pass(Plain[^1]);
                return found;
            }
            return Spent(options) ? found with { Status = OutcomeStatus.Proven, Bound = new(found.Score.Cost, found.Score.Sheets, "told") }
                : found with { Status = OutcomeStatus.Feasible, Bound = new(Core.Measures.Money.Zero, 0, "none") };
        }

        public BoardOutcome Solve(BoardInstance instance, SolverOptions options, IProgress<SolverProgress>? progress = null, CancellationToken cancel = default)
        {
            BoardOutcome found = BoardSolvers.Default.Solve(instance, new(0, 1), null, cancel);
            return Spent(options) ? found with { Status = OutcomeStatus.Proven, Bound = new(found.Score.Cost, found.Score.Boards, "told") }
                : found with { Status = OutcomeStatus.Feasible, Bound = new(Core.Measures.Money.Zero, 0, "none") };
        }

        private bool Spent(SolverOptions options)
        {
            Assert.Equal(long.MaxValue, options.WorkBudget);
            clock.Pass(clock.Asked[^1]);
            return proves(_calls++);
        }
    }

    private static (ImmutableArray<double> Asked, ImmutableArray<double> Plain, Plan Plan) Make(Func<int, bool> proves, PieceSource? source = null)
    {
        var clock = new Clock();
        var slow = new Slow(clock, proves);
        Plan plan = new PlanMaker(slow, slow).Make(source ?? Sample.Source("luthiers-bench"), LayoutEffort.Within(TimeSpan.FromSeconds(60), clock));
        return ([.. clock.Asked], [.. slow.Plain], plan);
    }

    [Fact]
    public void Within_NothingProven_AQuarterForAFirstLookATenthForPlainStripsAndTheRestInEqualShares()
    {
        (ImmutableArray<double> asked, ImmutableArray<double> plain, Plan plan) = Make(_ => false);
        int materials = plan.Sheets.Length + plan.Boards.Length;
        Assert.True(materials > 2);
        Assert.Equal(2 * materials, asked.Length);
        Assert.All(asked.Take(materials), s => Assert.Equal(15.0 / materials, s, 0.01));
        Assert.All(asked.Skip(materials), s => Assert.Equal(39.0 / materials, s, 0.01));
        Assert.Equal(54, asked.Sum(), 0.1);
        Assert.NotEmpty(plain);
        Assert.Equal(6, plain.Sum(), 0.1);
    }

    [Fact]
    public void Within_AllButOneProvenAtFirst_TheRestGoesToThatOne()
    {
        (ImmutableArray<double> asked, ImmutableArray<double> plain, Plan plan) = Make(call => call != 1);
        int materials = plan.Sheets.Length + plan.Boards.Length;
        Assert.Equal(materials + 1, asked.Length);
        Assert.Equal(39, asked[^1], 0.1);
        Assert.Equal(6, plain.Sum(), 0.1);
        Assert.All(plan.Sheets, s => Assert.Equal(OutcomeStatus.Proven, s.Outcome.Status));
    }

    [Fact]
    public void Within_LayoutsToKeepTo_AQuarterOfTheTimeOfEachIsLeftForThem()
    {
        Plan earlier = Sample.Plan("plan-chest");
        EarlierLayouts before = EarlierPlan.Read(Encoding.UTF8.GetString(PlanJson.Write(earlier))).Value!;
        (ImmutableArray<double> asked, ImmutableArray<double> plain, Plan plan) = Make(_ => true, earlier.Source.KeepingTo(before));
        int materials = plan.Sheets.Length + plan.Boards.Length;
        Assert.Equal(materials + plan.Sheets.Length, asked.Length);
        Assert.Empty(plain);
        double share = 15.0 / materials;
        Assert.Equal(plan.Sheets.Length, asked.Count(s => Math.Abs(s - (0.75 * share)) < 0.01));
        Assert.Equal(materials, asked.Count(s => Math.Abs(s - share) < 0.01));
    }

    [Fact]
    public void Within_AllProvenAtFirst_NoMoreIsSearchedButForPlainStrips()
    {
        (ImmutableArray<double> asked, ImmutableArray<double> plain, Plan plan) = Make(_ => true);
        Assert.Equal(plan.Sheets.Length + plan.Boards.Length, asked.Length);
        Assert.Equal(6, plain.Sum(), 0.1);
    }

    // A report is kept as it comes, on the thread it comes on.
    private sealed class Heard : List<string>, IProgress<string>
    {
        public void Report(string value) => Add(value);
    }

    [Fact]
    public void Steps_LongSearch_TellsEachBetterLayoutOnce()
    {
        var heard = new Heard();
        new PlanMaker(SheetSolvers.Default, BoardSolvers.Default).Make(Sample.Source("plan-chest"), LayoutEffort.Steps(new(6_000_000, 1)), heard);
        Assert.Contains(heard, h => h.EndsWith(" so far", StringComparison.Ordinal));
        Assert.All(heard.Zip(heard.Skip(1)), p => Assert.NotEqual(p.First, p.Second));
    }

    [Fact]
    public void BestOf_BoundOfOneMeetsTheLayoutOfTheOther_IsProven()
    {
        SheetPlan plan = Sample.Plan("luthiers-bench").Sheets[0];
        SheetOutcome good = plan.Outcome with { Status = OutcomeStatus.Feasible, Bound = new(Core.Measures.Money.Zero, 1, "weak") };
        SheetOutcome poor = good with { Score = good.Score with { Cost = good.Score.Cost + new Core.Measures.Money(1) }, Bound = new(good.Score.Cost, good.Score.Sheets, "strong") };
        foreach (SheetOutcome both in new[] { SheetOutcome.BestOf(good, poor), SheetOutcome.BestOf(poor, good) })
        {
            Assert.Equal((OutcomeStatus.Proven, "strong", good.Score), (both.Status, both.Bound.Method, both.Score));
            Assert.Empty(both.Reasons);
        }
        Assert.Equal(OutcomeStatus.Feasible, SheetOutcome.BestOf(good, good).Status);
    }
}
