using System.Collections.Concurrent;
using System.Collections.Immutable;
using Setout.Commands;
using Setout.Core.Fit;
using Setout.Core.Measures.Text;
using Setout.Core.SettingOut;
using Setout.Cutting;
using Setout.Shop.Plans;
using Setout.Workbench.Changing;

namespace Setout.Workbench.Pieces;

/// <summary>
/// Keeps the latest plan of each piece. Setting out is done at once; layouts and what will fit are worked out in the background and belong to the hash of the
/// texts they were made from. When the texts change, the layouts of the old ones are given up; those that were ready are remembered for a while, for whoever takes a step back.
/// </summary>
/// <param name="watch">Told when a layout is ready, or has come further.</param>
/// <param name="remembered">What was ready.</param>
internal sealed class PlanDesk(ChangeWatch watch, RememberedPlans remembered) : IDisposable
{
    private readonly Lock _lock = new();
    private readonly Dictionary<string, OnDesk> _latest = [];
    private long _ready;

    /// <summary>Under which name the plan that a piece is being cut by lies on the desk, beside that of what is left.</summary>
    public static string InHand(string piece) => piece + "\nin hand";

    /// <summary>How many plans have become ready: pages that wait for one look again when this grows.</summary>
    public long Ready => Interlocked.Read(ref _ready);

    /// <summary>What is being laid out just now: how far each has come, by the name it was asked for under.</summary>
    public ImmutableDictionary<string, string> LayingOut
    {
        get
        {
            lock (_lock) return _latest.Where(d => d.Value.IsLayingOut).ToImmutableDictionary(d => d.Key, d => d.Value.Found);
        }
    }

    /// <summary>The last plan of a piece that became ready, of whatever texts; null for none yet.</summary>
    public Plan? Last(string name, LengthUnit shown)
    {
        Plan? before;
        lock (_lock) before = _latest.GetValueOrDefault(name)?.Before;
        return before?.Told(before.Source.ShownIn(shown));
    }

    /// <summary>Ends the search for layouts in good order: what was found so far is the plan. False where nothing is being searched for.</summary>
    /// <param name="name">The name it was asked for under.</param>
    /// <param name="hash">Of the texts it is made from.</param>
    public bool TakeBestSoFar(string name, string hash)
    {
        lock (_lock)
        {
            if (_latest.GetValueOrDefault(name) is not { IsLayingOut: true } desk || desk.Hash != hash) return false;
            desk.Enough.Cancel();
            return true;
        }
    }

    /// <summary>The piece set out, from the desk where it lies there already.</summary>
    public SetPiece SetOut(string name, PieceSource source) => Latest(name, source).In(source).Set.Value;

    /// <summary>The whole plan; begun now if it was not begun before.</summary>
    public async Task<Plan> PlanAsync(string name, PieceSource source)
    {
        OnDesk desk = Latest(name, source);
        Plan made = await desk.Plan.Value;
        return desk.In(source).Told(made);
    }

    /// <summary>The whole plan if it is ready, else null. It is not begun: a shelf of many pieces must not set them all to work.</summary>
    public Plan? PlanIfReady(string name, PieceSource source) => Latest(name, source) is { Done: { } made } desk ? desk.In(source).Told(made) : null;

    /// <summary>What will fit; begun now if it was not begun before, and worked out once for each state of the texts. Only of a piece that is not stopped.</summary>
    public Task<FitReport> FitAsync(string name, PieceSource source) => Latest(name, source).In(source).Fit.Value;

    /// <summary>Gives up what is still being worked out.</summary>
    public void Dispose()
    {
        lock (_lock)
        {
            foreach (OnDesk desk in _latest.Values) desk.Cancel.Cancel();
            _latest.Clear();
        }
    }

    private OnDesk Latest(string name, PieceSource source)
    {
        lock (_lock)
        {
            if (_latest.TryGetValue(name, out OnDesk? latest))
            {
                if (latest.Hash == source.Hash) return latest;
                latest.Cancel.Cancel();
            }
            return _latest[name] = new(source, remembered.Find(name, source.Hash), latest?.Done ?? latest?.Before, Further, made => IsReady(name, source.Hash, made));
        }
    }

    private void Further() => watch.Tell();

    private void IsReady(string name, string hash, Task<Plan> made)
    {
        if (made.IsCompletedSuccessfully) remembered.Remember(name, hash, made.Result);
        Interlocked.Increment(ref _ready);
        watch.Tell();
    }

    private sealed class OnDesk : IProgress<string>
    {
        private readonly Action _further;
        private readonly ConcurrentDictionary<LengthUnit, InWords> _told = [];
        private volatile string _found = "";

        public OnDesk(PieceSource source, Plan? made, Plan? before, Action further, Action<Task<Plan>> ready)
        {
            (Hash, Before, _further) = (source.Hash, before, further);
            CancellationToken cancel = Cancel.Token;
            // Whoever looks, in whatever unit: there is one plan, and what is cut by it.
            source = source.ShownIn(null);
            Plan = made is not null ? new(Task.FromResult(made)) : new(() =>
            {
                Task<Plan> making = Task.Run(() => Planner.Maker.Make(source, LayoutEffort.Steps(SolverOptions.Default with { Enough = Enough.Token }), this, cancel), cancel);
                _ = making.ContinueWith(ready, CancellationToken.None, TaskContinuationOptions.None, TaskScheduler.Default);
                return making;
            });
        }

        public string Hash { get; }

        /// <summary>What was ready before, of other texts.</summary>
        public Plan? Before { get; }

        /// <summary>How far it has come, in words.</summary>
        public string Found => _found;

        public bool IsLayingOut => Plan is { IsValueCreated: true, Value.IsCompleted: false };

        public Plan? Done => Plan is { IsValueCreated: true, Value.IsCompletedSuccessfully: true } ? Plan.Value.Result : null;

        public CancellationTokenSource Cancel { get; } = new();

        public CancellationTokenSource Enough { get; } = new();

        public void Report(string value)
        {
            _found = value;
            _further();
        }

        public Lazy<Task<Plan>> Plan { get; }

        /// <summary>The same in the unit that a source is shown in.</summary>
        public InWords In(PieceSource source) => _told.GetOrAdd(source.Piece.Shown, _ => new(source, Cancel.Token));
    }

    /// <summary>What is said of a piece in one unit.</summary>
    private sealed class InWords(PieceSource source, CancellationToken cancel)
    {
        private readonly Lock _lock = new();
        private Plan? _plan;

        public Lazy<SetPiece> Set { get; } = new(source.SetOut);

        public Lazy<Task<FitReport>> Fit { get; } = new(() => Task.Run(() => FitCheck.Of(source.SetOut(), source.Shop.Accuracy, cancel: cancel), cancel));

        public Plan Told(Plan made)
        {
            lock (_lock) return _plan ??= made.Told(source);
        }
    }
}
