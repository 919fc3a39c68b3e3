using Setout.Commands;
using Setout.Core.Fit;
using Setout.Core.SettingOut;
using Setout.Shop.Plans;

namespace Setout.Workbench.Pieces;

/// <summary>
/// Keeps the latest plan of each piece. Setting out is done at once; layouts and what will fit are worked out in the background and belong to the hash of the
/// texts they were made from. When the texts change, the layouts of the old ones are given up.
/// </summary>
internal sealed class PlanDesk : IDisposable
{
    private readonly Lock _lock = new();
    private readonly Dictionary<string, OnDesk> _latest = [];

    /// <summary>The piece set out, from the desk where it lies there already.</summary>
    public SetPiece SetOut(string name, PieceSource source) => Latest(name, source).Set.Value;

    /// <summary>The whole plan; begun now if it was not begun before.</summary>
    public Task<Plan> PlanAsync(string name, PieceSource source) => Latest(name, source).Plan.Value;

    /// <summary>The whole plan if it is ready, else null. It is not begun: a shelf of many pieces must not set them all to work.</summary>
    public Plan? PlanIfReady(string name, PieceSource source)
    {
        OnDesk desk = Latest(name, source);
        return desk.Plan is { IsValueCreated: true, Value.IsCompletedSuccessfully: true } ? desk.Plan.Value.Result : null;
    }

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
            return _latest[name] = new(source);
        }
    }

    private sealed class OnDesk
    {
        public OnDesk(PieceSource source)
        {
            Hash = source.Hash;
            Set = new(source.SetOut);
            CancellationToken cancel = Cancel.Token;
            Plan = new(() => Task.Run(() => Planner.Maker.Make(source, LayoutEffort.Usual, null, cancel), cancel));
            Fit = new(() => Task.Run(() => FitCheck.Of(Set.Value, source.Shop.Accuracy, cancel: cancel), cancel));
        }

        public string Hash { get; }
        public CancellationTokenSource Cancel { get; } = new();
        public Lazy<SetPiece> Set { get; }
        public Lazy<Task<Plan>> Plan { get; }
        public Lazy<Task<FitReport>> Fit { get; }
    }
}
