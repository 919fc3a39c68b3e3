using System.Collections.Immutable;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut;

/// <summary>Finds the way a move took: back from a figure, only through what moved, to the nearest reading or fact that changed.</summary>
internal sealed class RippleWalk(SetPiece before, SetPiece after)
{
    private readonly Dictionary<QuantityKey, Choice> _choicesBefore = ByKey(before), _choicesAfter = ByKey(after);

    /// <summary>From what changed to the size behind a figure to cut; the figure itself only where it is what changed.</summary>
    public ImmutableArray<QuantityKey> To(QuantityKey toCut)
    {
        ImmutableArray<QuantityKey> way = Way(toCut, after, _choicesAfter);
        // What a voided reading moved may be a term of the old working only, such as packing.
        if (!IsChanged(way[0]) && Way(toCut, before, _choicesBefore) is var old && IsChanged(old[0])) way = old;
        return way.Length > 1 ? way[..^1] : way;
    }

    private ImmutableArray<QuantityKey> Way(QuantityKey start, SetPiece set, Dictionary<QuantityKey, Choice> choices)
    {
        var next = new Dictionary<QuantityKey, QuantityKey?> { [start] = null };
        var pending = new Queue<QuantityKey>([start]);
        QuantityKey? root = null;
        while (pending.TryDequeue(out QuantityKey key))
        {
            if (IsChanged(key)) return Back(key, next);
            bool isRoot = true;
            foreach (QuantityKey from in From(key, set, choices))
            {
                if (!HasMoved(from)) continue;
                isRoot = false;
                if (next.TryAdd(from, key)) pending.Enqueue(from);
            }
            if (isRoot) root ??= key;
        }
        return Back(root ?? start, next);
    }

    private static IEnumerable<QuantityKey> From(QuantityKey key, SetPiece set, Dictionary<QuantityKey, Choice> choices)
    {
        if (!set.Worked.Values.TryGetValue(key, out Worked? worked)) return [];
        IEnumerable<QuantityKey> from = worked.Quantity.Working.WorkedFrom;
        return choices.TryGetValue(key, out Choice? choice) && choice.Decides is { } decides ? from.Append(decides) : from;
    }

    private static ImmutableArray<QuantityKey> Back(QuantityKey from, Dictionary<QuantityKey, QuantityKey?> next)
    {
        var way = ImmutableArray.CreateBuilder<QuantityKey>();
        for (QuantityKey? key = from; key is { } at; key = next[at]) way.Add(at);
        return way.ToImmutable();
    }

    /// <summary>True when what is read of it, or what was decided, is not what it was.</summary>
    private bool IsChanged(QuantityKey key) => (PinOf(before, key), PinOf(after, key)) switch
    {
        (null, null) => false,
        ({ } old, { } now) => old.IsFact != now.IsFact || !old.Values.AsSpan().SequenceEqual(now.Values.AsSpan()),
        _ => true,
    };

    private bool HasMoved(QuantityKey key) => IsChanged(key)
        || !before.Worked.Values.TryGetValue(key, out Worked? old) || !after.Worked.Values.TryGetValue(key, out Worked? now) || old.Value != now.Value;

    private static Pin? PinOf(SetPiece set, QuantityKey key) => set.Worked.Values.GetValueOrDefault(key)?.Pin;

    private static Dictionary<QuantityKey, Choice> ByKey(SetPiece set) => set.Choices.DistinctBy(c => c.Key).ToDictionary(c => c.Key);
}
