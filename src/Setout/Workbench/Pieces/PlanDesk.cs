using System.Collections.Immutable;
using Setout.Commands;
using Setout.Core.Fit;
using Setout.Core.SettingOut;
using Setout.Cutting;
using Setout.Shop.Plans;
using Setout.Workbench.Changing;

namespace Setout.Workbench.Pieces;

/// <summary>
/// Keeps the latest plan of each piece. Setting out is done at once; layouts and what will fit are worked out in the background and belong to the hash of the
/// texts they were made from. When the texts change, the layouts of the old ones are given up.
/// </summary>
/// <param name="watch">Told when a layout is ready, or has come further.</param>
internal sealed class PlanDesk(ChangeWatch watch) : IDisposable
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
    public Plan? Last(string name)
    {
        lock (_lock) return _latest.GetValueOrDefault(name)?.Before;
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
    public SetPiece SetOut(string name, PieceSource source) => Latest(name, source).Set.Value;

    /// <summary>The whole plan; begun now if it was not begun before.</summary>
    public Task<Plan> PlanAsync(string name, PieceSource source) => Latest(name, source).Plan.Value;

    /// <summary>The whole plan if it is ready, else null. It is not begun: a shelf of many pieces must not set them all to work.</summary>
    public Plan? PlanIfReady(string name, PieceSource source) => Latest(name, source).Done;

    /// <summary>What will fit; begun now if it was not begun before, and worked out once for each state of the texts. Only of a piece that is not stopped.</summary>
    public Task<FitReport> FitAsync(string name, PieceSource source) => Latest(name, source).Fit.Value;

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
            return _latest[name] = new(source, latest?.Done ?? latest?.Before, Further, IsReady);
        }
    }

    private void Further() => watch.Tell();

    private void IsReady()
    {
        Interlocked.Increment(ref _ready);
        watch.Tell();
    }

    private sealed class OnDesk : IProgress<string>
    {
        private readonly Action _further;
        private volatile string _found = "";

        public OnDesk(PieceSource source, Plan? before, Action further, Action ready)
        {
            (Hash, Before, _further) = (source.Hash, before, further);
            Set = new(source.SetOut);
            CancellationToken cancel = Cancel.Token;
            Plan = new(() =>
            {
                Task<Plan> made = Task.Run(() => Planner.Maker.Make(source, LayoutEffort.Steps(SolverOptions.Default with { Enough = Enough.Token }), this, cancel), cancel);
                _ = made.ContinueWith(_ => ready(), CancellationToken.None, TaskContinuationOptions.None, TaskScheduler.Default);
                return made;
            });
            Fit = new(() => Task.Run(() => FitCheck.Of(Set.Value, source.Shop.Accuracy, cancel: cancel), cancel));
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

        public Lazy<SetPiece> Set { get; }
        public Lazy<Task<Plan>> Plan { get; }
        public Lazy<Task<FitReport>> Fit { get; }
    }
}
