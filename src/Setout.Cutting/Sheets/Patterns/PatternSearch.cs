namespace Setout.Cutting.Sheets.Patterns;

/// <summary>
/// The patterns of one sheet that are worth more than a threshold, when there are only so many of each part: rectangles are joined two by two, best
/// promise first, and the promise of a rectangle is its own worth and the most that what lies beyond it can be worth by <see cref="PatternTable"/>.
/// Sources (titles from memory): Wang, "Two algorithms for constrained two-dimensional cutting stock problems", Operations Research 31, 1983 (joining);
/// Viswanathan and Bagchi, "Best-first search methods for constrained two-dimensional cutting stock problems", Operations Research 41, 1993 (promise).
/// What it cannot do: come to an end where very many small parts fit a sheet; then it gives the least promise it can prove.
/// </summary>
/// <param name="table">Filled for the prices of the search.</param>
/// <param name="parts">Ways of lying.</param>
/// <param name="counts">How many of each type.</param>
internal sealed class PatternSearch(PatternTable table, IEnumerable<PatternPart> parts, int[] counts)
{
    private const int MostStates = 700_000;

    private readonly PatternPart[] _parts = [.. parts.Where(p => p.Along <= table.Along && p.Across <= table.Across)];
    private readonly ulong[] _keys = Keys(counts.Length);
    private readonly PriorityQueue<int, (long Promise, long Worth)> _open = new();
    private readonly Dictionary<ulong, int> _known = []; // the last state of a set of parts
    private readonly HashSet<ulong> _foundKeys = [];
    private readonly List<int> _found = [];
    private State[] _states = new State[1024];
    private int _stateCount;
    private Closed[] _closed = new Closed[1024];
    private int _closedCount;
    private long _threshold;

    /// <summary>A rectangle with what is in it: its parts as sorted pairs of type and count, the low twenty bits the count.</summary>
    private struct State
    {
        public int Along, Across;
        public long Worth;
        public int[] Parts;
        public ulong Key;
        public int First, Second; // states it joins; -1 and the index of the way of lying for a part
        public bool JoinsAlong;
        public int Same; // the state before it of the same parts, or -1
    }

    /// <summary>What is looked at most often of a state that others are joined to.</summary>
    private readonly record struct Closed(int Along, int Across, int State, long Worth);

    /// <summary>True when the last search ended because it held as many states as memory is meant for.</summary>
    public bool IsFull => _stateCount >= MostStates;

    /// <summary>Joins tried in the last search.</summary>
    public long Steps { get; private set; }

    /// <summary>Patterns that are worth more than a threshold.</summary>
    /// <param name="prices">Of each type, those that the table was last filled for.</param>
    /// <param name="threshold">Patterns of this worth or less are of no interest.</param>
    /// <param name="mostSteps">Joins tried before the search gives up.</param>
    /// <param name="enough">Ends when so many were found.</param>
    /// <param name="stop">Ends it too.</param>
    /// <returns>The patterns in the order found, each set of parts once; whether the search came to its end, so that there are no others; and a proven most that any pattern can be worth, at least the threshold.</returns>
    public (List<PatternNode> Patterns, bool Finished, long Most) Find(long[] prices, long threshold, long mostSteps, int enough, Func<bool> stop)
    {
        _open.Clear();
        _known.Clear();
        _foundKeys.Clear();
        _found.Clear();
        _stateCount = _closedCount = 0;
        _threshold = threshold;
        Steps = 0;
        if (!table.LookBeyond(stop)) return ([], false, long.MaxValue);
        long most = threshold, unproven = 0;
        for (int p = 0; p < _parts.Length; p++)
        {
            PatternPart part = _parts[p];
            if (prices[part.Type] > 0)
                Offer(new() { Along = part.Along, Across = part.Across, Worth = prices[part.Type], Parts = [PartCounts.Pair(part.Type, 1)], Key = _keys[part.Type], First = -1, Second = p });
        }
        while (_open.TryDequeue(out int at, out (long Promise, long Worth) rank))
        {
            if (_found.Count >= enough || Steps > mostSteps || IsFull || stop())
            {
                unproven = -rank.Promise;
                break;
            }
            if (_closedCount == _closed.Length) Array.Resize(ref _closed, 2 * _closedCount);
            ref readonly State state = ref _states[at];
            _closed[_closedCount++] = new(state.Along, state.Across, at, state.Worth);
            JoinAll(at, state.Along, state.Across, state.Worth);
            Steps += _closedCount;
        }
        foreach (int f in _found) most = Math.Max(most, _states[f].Worth);
        return ([.. _found.Select(Node)], unproven == 0, Math.Max(most, unproven));
    }

    private static ulong[] Keys(int types)
    {
        var random = new SeededRandom(4_099);
        return [.. Enumerable.Range(0, types).Select(_ => random.Bits())];
    }

    private void JoinAll(int at, int ownAlong, int ownAcross, long ownWorth)
    {
        int most = table.Along, deepestOfAll = table.Across;
        for (int c = 0; c < _closedCount; c++)
        {
            ref readonly Closed other = ref _closed[c];
            int along = ownAlong + other.Along, across = ownAcross + other.Across;
            long worth = ownWorth + other.Worth;
            bool inRow = along <= most && worth + table.Beyond(along, Math.Max(ownAcross, other.Across)) > _threshold;
            bool inStack = across <= deepestOfAll && worth + table.Beyond(Math.Max(ownAlong, other.Along), across) > _threshold;
            if (inRow || inStack) Join(at, other.State, inRow, inStack);
        }
    }

    private void Join(int a, int b, bool inRow, bool inStack)
    {
        State first = _states[a], second = _states[b];
        if (PartCounts.Union(first.Parts, second.Parts, counts) is not { } both) return;
        ulong key = unchecked(first.Key + second.Key);
        long worth = first.Worth + second.Worth;
        if (inRow) Offer(new() { Along = first.Along + second.Along, Across = Math.Max(first.Across, second.Across), Worth = worth, Parts = both, Key = key, JoinsAlong = true, First = a, Second = b });
        if (inStack) Offer(new() { Along = Math.Max(first.Along, second.Along), Across = first.Across + second.Across, Worth = worth, Parts = both, Key = key, First = a, Second = b });
    }

    private void Offer(in State state)
    {
        // The same parts in a rectangle that is no larger do as well.
        int same = _known.GetValueOrDefault(state.Key, -1);
        for (int s = same; s >= 0; s = _states[s].Same)
            if (_states[s].Along <= state.Along && _states[s].Across <= state.Across) return;
        if (_stateCount == _states.Length) Array.Resize(ref _states, 2 * _stateCount);
        _states[_stateCount] = state;
        _states[_stateCount].Same = same;
        _known[state.Key] = _stateCount;
        if (state.Worth > _threshold && _foundKeys.Add(state.Key)) _found.Add(_stateCount);
        _open.Enqueue(_stateCount++, (-(state.Worth + table.Beyond(state.Along, state.Across)), -state.Worth));
    }

    private PatternNode Node(int state)
    {
        State of = _states[state];
        return of.First < 0 ? PatternNode.Of(_parts[of.Second]) : PatternNode.Join(of.JoinsAlong, Node(of.First), Node(of.Second));
    }
}
