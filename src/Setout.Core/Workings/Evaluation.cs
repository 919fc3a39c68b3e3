using System.Collections.Immutable;
using Setout.Core.Measures;

namespace Setout.Core.Workings;

/// <summary>
/// Works quantities out from one another, each once, in any order of asking. A reading replaces the value of its quantity and
/// flows on; the working is still evaluated beside it. Rings and unknown keys become findings with the path, and everything that
/// depends on them is left without a value; nothing hangs and nothing is guessed. Mutable; it dies when <see cref="Finish"/> has been called.
/// </summary>
public sealed class Evaluation(IReadOnlyDictionary<QuantityKey, Pin> pins)
{
    private readonly Dictionary<QuantityKey, Quantity> _quantities = [];
    private readonly List<QuantityKey> _order = [];
    private readonly Dictionary<QuantityKey, Worked?> _worked = [];
    private readonly List<Finding> _findings = [];
    private readonly Queue<Quantity> _read = new();

    // Of one walk at a time; kept, because a piece is thousands of short walks.
    private readonly List<QuantityKey> _path = [];
    private readonly HashSet<QuantityKey> _onPath = [];
    private readonly Stack<(QuantityKey Key, bool IsReturn)> _pending = new();

    /// <summary>Adds a quantity.</summary>
    /// <exception cref="ArgumentException">The key is taken: keys are unique.</exception>
    public void Define(Quantity quantity)
    {
        if (!_quantities.TryAdd(quantity.Key, quantity)) throw new ArgumentException($"The key {quantity.Key} is taken.");
        _order.Add(quantity.Key);
    }

    /// <summary>True when the key is defined.</summary>
    public bool Knows(QuantityKey key) => _quantities.ContainsKey(key);

    /// <summary>The name for people of a quantity that is defined.</summary>
    public string NameOf(QuantityKey key) => _quantities[key].Name;

    /// <summary>The value of a quantity as far as defined now, or null when it cannot be worked out (a finding says why).</summary>
    public Worked? Work(QuantityKey asked)
    {
        if (_worked.TryGetValue(asked, out Worked? done)) return done;
        Walk(asked, null);
        // What a reading replaces is worked out last: nothing waits for it, and a ring that goes through a reading is no ring.
        while (_read.TryDequeue(out Quantity? read))
        {
            foreach (QuantityKey from in read.Working.WorkedFrom) Walk(from, read.Key);
            _worked[read.Key] = WorkOne(read);
        }
        return _worked[asked];
    }

    private void Walk(QuantityKey start, QuantityKey? asker)
    {
        // A stack of our own: a chain of a hundred thousand quantities must not exhaust the machine's.
        (List<QuantityKey> path, HashSet<QuantityKey> onPath, Stack<(QuantityKey Key, bool IsReturn)> pending) = (_path, _onPath, _pending);
        path.Clear();
        if (asker is { } asking) path.Add(asking);
        pending.Push((start, false));
        while (pending.Count > 0)
        {
            (QuantityKey key, bool isReturn) = pending.Pop();
            if (isReturn)
            {
                path.RemoveAt(path.Count - 1);
                onPath.Remove(key);
                if (!_worked.ContainsKey(key)) _worked[key] = WorkOne(_quantities[key]);
                continue;
            }
            if (_worked.ContainsKey(key)) continue;
            if (onPath.Contains(key))
            {
                Ring(path, key);
                continue;
            }
            if (!_quantities.TryGetValue(key, out Quantity? quantity))
            {
                Unknown(path, key);
                continue;
            }
            if (pins.TryGetValue(key, out Pin? pin))
            {
                ExactLength value = pin.Combined(quantity.Combining);
                _worked[key] = new(quantity, value, value, pin);
                _read.Enqueue(quantity);
                continue;
            }
            path.Add(key);
            onPath.Add(key);
            pending.Push((key, true));
            foreach (QuantityKey from in quantity.Working.WorkedFrom.Reverse()) pending.Push((from, false));
        }
    }

    /// <summary>The code of a reading or a mark of what is not there.</summary>
    public const string NoQuantity = "reading.no-quantity";

    /// <summary>Works everything out and closes the books.</summary>
    public WorkedPiece Finish()
    {
        foreach (QuantityKey key in _order) Work(key);
        var values = ImmutableDictionary.CreateBuilder<QuantityKey, Worked>();
        foreach ((QuantityKey key, Worked? worked) in _worked)
            if (worked is not null) values.Add(key, worked);
        foreach (QuantityKey key in pins.Keys.Where(k => !_quantities.ContainsKey(k)).Order())
            _findings.Add(new(NoQuantity, Severity.Warn, key.Owner, $"There is a {(pins[key].IsFact ? "mark" : "reading")} of {key}, but the piece has no such quantity now.",
                "If its part was taken out on purpose, let this stand; else put the part back with the same key, or void the reading."));
        return new([.. _order], values.ToImmutable(), [.. _findings]);
    }

    private Worked? WorkOne(Quantity quantity)
    {
        pins.TryGetValue(quantity.Key, out Pin? pin);
        ExactLength? expected = quantity.Working switch
        {
            Stated stated => stated.Value,
            Sum sum => Total(sum),
            Extreme extreme => Outermost(extreme),
            ToCut cut => ValueOf(cut.Exact) is { } exact ? exact.RoundTo(cut.Grid, cut.Rounding).Value.ToExact() : null,
            _ => throw new InvalidOperationException($"No rule for {quantity.Working.GetType().Name}."),
        };
        // A reading counts even where the plan around it is broken.
        if (expected is null && pin is null) return null;
        ExactLength? read = pin?.Combined(quantity.Combining);
        bool isUnknown = quantity.Working is Stated { Origin: { } origin } ? origin == Origin.Unknown : quantity.Working.WorkedFrom.Any(IsUnknown);
        return new(quantity, read ?? expected!.Value, isUnknown ? read ?? expected!.Value : expected ?? read!.Value, pin) { RestsOnUnknown = isUnknown };
    }

    private bool IsUnknown(QuantityKey key) => _worked.TryGetValue(key, out Worked? worked) && worked is { RestsOnUnknown: true, Pin: null };

    private ExactLength? ValueOf(QuantityKey key) => _worked.TryGetValue(key, out Worked? worked) ? worked?.Value : null;

    private ExactLength? ValueOf(Term term) =>
        (term.Figure?.Value ?? ValueOf(term.Of!.Value)) is { } value ? (term.Times == Rational.One ? value : value * term.Times) : null;

    private ExactLength? Total(Sum sum)
    {
        ExactLength total = ExactLength.Zero;
        foreach (Term term in sum.Terms)
        {
            if (ValueOf(term) is not { } value) return null;
            total += value;
        }
        return sum.Share == Rational.One ? total : total * sum.Share;
    }

    private ExactLength? Outermost(Extreme extreme)
    {
        ExactLength? best = null;
        foreach (Term term in extreme.Of)
        {
            if (ValueOf(term) is not { } value) return null;
            best = best is not { } b ? value : extreme.IsLeast ? ExactLength.Min(b, value) : ExactLength.Max(b, value);
        }
        return best;
    }

    private void Ring(List<QuantityKey> path, QuantityKey key)
    {
        IEnumerable<QuantityKey> ring = path.SkipWhile(k => k != key).Append(key);
        _worked[key] = null;
        _findings.Add(new("working.ring", Severity.Stop, key.Owner, $"These sizes are worked out from each other in a ring: {Written(ring)}.",
            "Give one of them a size of its own."));
    }

    // A path of thousands could not be read: its two ends say where to look.
    private static string Written(IEnumerable<QuantityKey> path)
    {
        QuantityKey[] keys = [.. path];
        return keys.Length <= 12
            ? string.Join(" from ", keys)
            : $"{string.Join(" from ", keys[..6])} from ... {keys.Length - 10} more ... from {string.Join(" from ", keys[^4..])}";
    }

    private void Unknown(List<QuantityKey> path, QuantityKey key)
    {
        _worked[key] = null;
        string asker = path.Count > 0 ? $" ({Written(path.Append(key))})" : "";
        _findings.Add(new("working.unknown-key", Severity.Stop, path.Count > 0 ? path[^1].Owner : key.Owner, $"There is no quantity {key}{asker}.",
            "Check the key against the list of parts."));
    }
}

/// <summary>All quantities of a piece with their values. Immutable.</summary>
/// <param name="Order">The keys in the order they were defined: outside in, as a person would set out.</param>
/// <param name="Values">What could be worked out.</param>
/// <param name="Findings">Rings, unknown keys, readings of nothing.</param>
public sealed record WorkedPiece(
    ImmutableArray<QuantityKey> Order, ImmutableDictionary<QuantityKey, Worked> Values, ImmutableArray<Finding> Findings)
{
    /// <summary>The value of a quantity.</summary>
    /// <exception cref="KeyNotFoundException">It is not defined or could not be worked out.</exception>
    public ExactLength this[QuantityKey key] => Values.TryGetValue(key, out Worked? worked)
        ? worked.Value
        : throw new KeyNotFoundException($"The quantity {key} has no value.");
}
