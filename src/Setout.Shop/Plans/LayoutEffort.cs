using Setout.Cutting;

namespace Setout.Shop.Plans;

/// <summary>How much search the layouts of a plan get, all materials together.</summary>
public abstract class LayoutEffort
{
    // What a first look at every material takes of the whole time; the rest goes where it is of use.
    private const int FirstLook = 4;

    // What laying out anew takes of the time of a material whose sheets are kept where they can be; the rest goes to keeping them, as it does of a budget of steps.
    private const double Anew = 0.75;

    /// <summary>The same plan on any machine: each material is searched for so many steps.</summary>
    public static LayoutEffort Steps(SolverOptions options) => new ByWork(options);

    /// <summary>The steps of an everyday job.</summary>
    public static LayoutEffort Usual { get; } = new ByWork(SolverOptions.Default);

    /// <summary>
    /// As good as may be had in a time; the plan then depends on the machine. A first look at every material takes a quarter of it. The rest is
    /// shared evenly by those whose layouts are not proven, and what a proof saves goes to the next.
    /// </summary>
    /// <param name="time">Above zero.</param>
    /// <param name="clock">Tells the time.</param>
    public static LayoutEffort Within(TimeSpan time, TimeProvider clock) => new ByTime(time, clock);

    /// <summary>What one material gets that is laid out once more in another way; null where that is no part of what was asked for.</summary>
    internal virtual SolverOptions? Again => null;

    /// <summary>Has every material laid out.</summary>
    internal abstract void Spend(IReadOnlyList<MaterialLaying> layings, IProgress<string>? progress, CancellationToken cancel);

    private sealed class ByWork(SolverOptions options) : LayoutEffort
    {
        internal override SolverOptions? Again => options;

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
        internal override void Spend(IReadOnlyList<MaterialLaying> layings, IProgress<string>? progress, CancellationToken cancel)
        {
            long start = clock.GetTimestamp();
            foreach (MaterialLaying laying in layings) Search(laying, time / (FirstLook * layings.Count), "", progress, cancel);
            MaterialLaying[] open = [.. layings.Where(l => !l.IsSettled)];
            for (int i = 0; i < open.Length; i++)
            {
                TimeSpan left = time - clock.GetElapsedTime(start);
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
