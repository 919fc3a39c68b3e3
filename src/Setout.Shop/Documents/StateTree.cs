using System.Collections.Immutable;

namespace Setout.Shop.Documents;

/// <summary>Where a state stands, seen from the one that its document points at.</summary>
public enum StatePlace
{
    /// <summary>The document points at it.</summary>
    Now,

    /// <summary>The one that the document points at was made of it, at once or by way of others.</summary>
    Before,

    /// <summary>It was made of the one that the document points at, and undone since.</summary>
    Undone,

    /// <summary>It was undone, and then something else was done.</summary>
    LeftAside,
}

/// <summary>A state with its place.</summary>
/// <param name="Line">The state with its names.</param>
/// <param name="Place">Where it stands.</param>
/// <param name="Instead">Where it was left aside, the step that was made in its stead; else null.</param>
public sealed record PlacedState(HistoryLine Line, StatePlace Place, DocumentState? Instead);

/// <summary>The states of a document as a tree, each with its place.</summary>
public static class StateTree
{
    /// <summary>All states, the newest first.</summary>
    /// <param name="history">As the store gives it: in the order they were made, each after its parent; one of them is pointed at.</param>
    public static ImmutableArray<PlacedState> Of(ImmutableArray<HistoryLine> history)
    {
        var states = history.ToDictionary(h => h.State.Number);
        if (history.FirstOrDefault(h => h.IsHead) is not { } head) return [];
        // Each state that led to the present one, with the step that was made of it on this way.
        var way = new Dictionary<long, DocumentState?> { [head.State.Number] = null };
        for (DocumentState at = head.State; at.Parent is { } parent && states.TryGetValue(parent, out HistoryLine? of); at = of.State) way[parent] = at;
        var places = new Dictionary<long, (StatePlace Place, DocumentState? Instead)>();
        foreach (HistoryLine line in history)
        {
            long number = line.State.Number;
            if (way.TryGetValue(number, out DocumentState? next)) places[number] = (next is null ? StatePlace.Now : StatePlace.Before, null);
            else if (line.State.Parent is { } parent && places.TryGetValue(parent, out var of))
                places[number] = of.Place switch
                {
                    StatePlace.Now or StatePlace.Undone => (StatePlace.Undone, null),
                    StatePlace.Before => (StatePlace.LeftAside, way[parent]),
                    _ => of,
                };
            else places[number] = (StatePlace.LeftAside, null);
        }
        return [.. history.Reverse().Select(h => new PlacedState(h, places[h.State.Number].Place, places[h.State.Number].Instead))];
    }
}
