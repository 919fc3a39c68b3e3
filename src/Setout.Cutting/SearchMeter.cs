namespace Setout.Cutting;

/// <summary>Counts the steps of a search against its budget and listens for the caller's cancel.</summary>
internal sealed class SearchMeter(SolverOptions options, IProgress<SolverProgress>? progress, CancellationToken cancel) : IDisposable
{
    private readonly CancellationTokenSource _ending = CancellationTokenSource.CreateLinkedTokenSource(options.Enough, cancel);

    private const long ReportEvery = 500_000;
    private readonly SearchMeter? _whole;
    private long _nextReport = ReportEvery;

    private SearchMeter(SearchMeter whole, SolverOptions options, CancellationToken cancel)
        : this(options, null, cancel) => _whole = whole;

    public long Work { get; private set; }

    public long Budget { get; } = options.WorkBudget;

    public long Rounds { get; private set; }

    public int Improvements { get; private set; }

    /// <summary>A meter for a part of the search: its own budget within this one's, its work counted in both.</summary>
    public SearchMeter Share(long budget) => new(this, options with { WorkBudget = Math.Min(budget, Budget - Math.Min(Work, Budget)) }, cancel);

    /// <summary>Signalled by a cancel and by enough alike: for what must end at once.</summary>
    public CancellationToken Ending => _ending.Token;

    public bool Cancelled => cancel.IsCancellationRequested;

    public int Seed => options.Seed;

    /// <summary>The caller's signal to end in good order.</summary>
    public bool Enough => options.Enough.IsCancellationRequested;

    public bool Over => Work >= Budget || Cancelled || Enough;

    public void Dispose() => _ending.Dispose();

    public void Add(long steps)
    {
        Work += steps;
        _whole?.Add(steps);
    }

    public void Round()
    {
        Rounds++;
        _whole?.Round();
    }

    public void Improved()
    {
        Improvements++;
        _whole?.Improved();
    }

    public void Report(Core.Measures.Money cost, int count)
    {
        _whole?.Report(cost, count);
        if (progress is null || Work < _nextReport) return;
        _nextReport = Work + ReportEvery;
        progress.Report(new(Work, Budget, cost, count));
    }
}
