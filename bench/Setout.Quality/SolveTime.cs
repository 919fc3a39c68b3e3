using Setout.Cutting;

namespace Setout.Quality;

/// <summary>How long a solve may take: a counted budget where one is given, else seconds from now.</summary>
internal sealed class SolveTime : IDisposable
{
    private readonly CancellationTokenSource _enough = new();

    public SolveTime(long? budget, double seconds, int seed)
    {
        Seconds = seconds;
        if (budget is { } steps)
        {
            Options = new(steps, seed);
            return;
        }
        _enough.CancelAfter(TimeSpan.FromSeconds(seconds));
        Options = SolverOptions.Until(_enough.Token, seed);
    }

    /// <summary>What our own solvers are told.</summary>
    public SolverOptions Options { get; }

    /// <summary>The seconds asked for; for peers that must plan their time. Not used where a budget is given.</summary>
    public double Seconds { get; }

    public void Dispose() => _enough.Dispose();
}
