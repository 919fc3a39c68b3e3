using Setout.Shop.Plans;

namespace Setout.Workbench.Pieces;

/// <summary>The plans that became ready last, by what they were made from: whoever takes a step back has them at once.</summary>
/// <param name="most">How many; a plan of a whole bench is some megabytes.</param>
internal sealed class RememberedPlans(int most)
{
    /// <summary>Steps one goes back and forth between.</summary>
    public const int Steps = 12;

    private readonly Lock _lock = new();
    private readonly LinkedList<(string Name, string Hash, Plan Plan)> _plans = [];

    /// <summary>The plan of just these texts; null where it is not remembered.</summary>
    /// <param name="name">The name it was asked for under.</param>
    /// <param name="hash">Of the texts it is made from.</param>
    public Plan? Find(string name, string hash)
    {
        lock (_lock)
        {
            if (At(name, hash) is not { } there) return null;
            _plans.Remove(there);
            _plans.AddFirst(there);
            return there.Value.Plan;
        }
    }

    /// <summary>Remembers it before all others; the one that was asked for longest ago is forgotten.</summary>
    public void Remember(string name, string hash, Plan plan)
    {
        lock (_lock)
        {
            if (At(name, hash) is { } old) _plans.Remove(old);
            _plans.AddFirst((name, hash, plan));
            if (_plans.Count > most) _plans.RemoveLast();
        }
    }

    private LinkedListNode<(string Name, string Hash, Plan Plan)>? At(string name, string hash)
    {
        for (var at = _plans.First; at is not null; at = at.Next)
            if (at.Value.Name == name && at.Value.Hash == hash) return at;
        return null;
    }
}
