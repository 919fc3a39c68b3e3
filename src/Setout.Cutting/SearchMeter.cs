namespace Setout.Cutting;

/// <summary>Counts the steps of a search against its budget and listens for the caller's cancel.</summary>
internal sealed class SearchMeter(SolverOptions options, IProgress<SolverProgress>? progress, CancellationToken cancel) : IDisposable
{
    private readonly CancellationTokenSource _ending = CancellationTokenSource.CreateLinkedTokenSource(options.Enough, cancel);

    private const long ReportEvery = 500_000;
    private long _nextReport = ReportEvery;

    public long Work { get; private set; }

    public long Budget { get; } = options.WorkBudget;

    public long Rounds { get; set; }

    public int Improvements { get; set; }

    /// <summary>Signalled by a cancel and by enough alike: for what must end at once.</summary>
    public CancellationToken Ending => _ending.Token;

    public bool Cancelled => cancel.IsCancellationRequested;

    public int Seed => options.Seed;

    /// <summary>The caller's signal to end in good order.</summary>
    public bool Enough => options.Enough.IsCancellationRequested;

    public bool Over => Work >= Budget || Cancelled || Enough;

    public void Dispose() => _ending.Dispose();

    public void Add(long steps) => Work += steps;

    public void Report(Core.Measures.Money cost, int count)
    {
        if (progress is null || Work < _nextReport) return;
        _nextReport = Work + ReportEvery;
        progress.Report(new(Work, Budget, cost, count));
    }
}
