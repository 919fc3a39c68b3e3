using Setout.Cutting;
using Setout.Cutting.Sheets;

namespace Setout.Shop.Plans;

/// <summary>How much search the layouts of a plan get, all materials together.</summary>
public abstract class LayoutEffort
{
    // What a first look at every material takes of the whole time; the rest goes where it is of use.
    private const int FirstLook = 4;

    // What is kept for laying sheets out once more in plain strips.
    private const int InPlainStrips = 10;

    // What laying out anew takes of the time of a material whose sheets are kept where they can be; the rest goes to keeping them, as it does of a budget of steps.
    private const double Anew = 0.75;

    /// <summary>The same plan on any machine: each material is searched for so many steps.</summary>
    public static LayoutEffort Steps(SolverOptions options) => new ByWork(options);

    /// <summary>The steps of an everyday job.</summary>
    public static LayoutEffort Usual { get; } = new ByWork(SolverOptions.Default);

    /// <summary>
    /// As good as may be had in a time; the plan then depends on the machine. A first look at every material takes a quarter of it, looks at plain
    /// strips a tenth at most. The rest is shared evenly by those whose layouts are not proven, and what a proof saves goes to the next.
    /// </summary>
    /// <param name="time">Above zero.</param>
    /// <param name="clock">Tells the time.</param>
    public static LayoutEffort Within(TimeSpan time, TimeProvider clock) => new ByTime(time, clock);

    /// <summary>Cancelled when somebody takes the best so far; never, by default.</summary>
    internal virtual CancellationToken Enough => CancellationToken.None;

    /// <summary>Lays a material out once more in another way, when all have their layouts.</summary>
    /// <param name="looks">How many such looks are still to come, this one counted.</param>
    /// <param name="solve">Lays it out.</param>
    internal abstract SheetOutcome Again(int looks, Func<SolverOptions, SheetOutcome> solve);

    /// <summary>Has every material laid out.</summary>
    internal abstract void Spend(IReadOnlyList<MaterialLaying> layings, IProgress<string>? progress, CancellationToken cancel);

    private sealed class ByWork(SolverOptions options) : LayoutEffort
    {
        internal override CancellationToken Enough => options.Enough;

        internal override SheetOutcome Again(int looks, Func<SolverOptions, SheetOutcome> solve) => solve(options);

        internal override void Spend(IReadOnlyList<MaterialLaying> layings, IProgress<string>? progress, CancellationToken cancel)
        {
            foreach (MaterialLaying laying in layings)
            {
                progress?.Report(laying.Material.Name);
                laying.Search(options, progress, cancel);
                cancel.ThrowIfCancellationRequested();
            }
        }
    }

    private sealed class ByTime(TimeSpan time, TimeProvider clock) : LayoutEffort
    {
        private readonly TimeSpan _again = time / InPlainStrips;
        private long _start = clock.GetTimestamp();
        private TimeSpan _spentAgain;

        internal override SheetOutcome Again(int looks, Func<SolverOptions, SheetOutcome> solve)
        {
            TimeSpan left = time - clock.GetElapsedTime(_start), kept = _again - _spentAgain, share = (left < kept ? left : kept) / looks;
            // Where a search took longer than it was told to, a first answer is all that there is time for.
            if (share <= TimeSpan.Zero) return solve(SolverOptions.Until(new(canceled: true)));
            long began = clock.GetTimestamp();
            using var enough = new CancellationTokenSource(share, clock);
            SheetOutcome found = solve(SolverOptions.Until(enough.Token));
            _spentAgain += clock.GetElapsedTime(began);
            return found;
        }

        internal override void Spend(IReadOnlyList<MaterialLaying> layings, IProgress<string>? progress, CancellationToken cancel)
        {
            _start = clock.GetTimestamp();
            TimeSpan forAll = layings.Any(l => l is SheetLaying) ? time - _again : time;
            foreach (MaterialLaying laying in layings) Search(laying, time / (FirstLook * layings.Count), "", progress, cancel);
            MaterialLaying[] open = [.. layings.Where(l => !l.IsSettled)];
            for (int i = 0; i < open.Length; i++)
            {
                TimeSpan left = forAll - clock.GetElapsedTime(_start);
                if (left > TimeSpan.Zero) Search(open[i], left / (open.Length - i), ", longer", progress, cancel);
            }
        }

        private void Search(MaterialLaying laying, TimeSpan share, string how, IProgress<string>? progress, CancellationToken cancel)
        {
            progress?.Report(laying.Material.Name + how);
            using var enough = new CancellationTokenSource(share, clock);
            using CancellationTokenSource? mostly = laying.KeepsTo ? new CancellationTokenSource(share * Anew, clock) : null;
            laying.Search(SolverOptions.Until(enough.Token) with { MostlyEnough = mostly?.Token ?? CancellationToken.None }, progress, cancel);
            cancel.ThrowIfCancellationRequested();
        }
    }
}
