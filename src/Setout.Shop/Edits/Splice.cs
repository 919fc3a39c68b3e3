using Setout.Shop.Texts;

namespace Setout.Shop.Edits;

/// <summary>One change of the tree of a text, at a place.</summary>
/// <param name="At">Where.</param>
public abstract record Splice(TextPath At)
{
    /// <summary>Sets a value or replaces it by another; a key that is not there is added.</summary>
    /// <param name="at">Its last step is a key, or an item that is there.</param>
    /// <param name="value">A word, a list or a map.</param>
    /// <param name="after">Keys of the map that a new one stands behind: the last of them that is there. None: behind the first.</param>
    public static Splice Set(TextPath at, YamlNode value, params ReadOnlySpan<string> after) => new SetValue(at, value, [.. after]);

    /// <summary>Sets a word or a figure.</summary>
    public static Splice Set(TextPath at, string value, params ReadOnlySpan<string> after) => new SetValue(at, Written.Word(value), [.. after]);

    /// <summary>Sets a value; a key that is not there is added behind all others.</summary>
    public static Splice SetLast(TextPath at, YamlNode value) => new SetValue(at, value, []) { IsLast = true };

    /// <summary>Takes a value out with its key, or an item out of its list.</summary>
    public static Splice TakeOut(TextPath at) => new Removal(at);

    /// <summary>Adds an item to a list.</summary>
    /// <param name="list">The list.</param>
    /// <param name="index">Where it stands then, from 0; as many as there are to add it at the end.</param>
    /// <param name="value">The item.</param>
    public static Splice Add(TextPath list, int index, YamlNode value) => new Addition(list, index, value);

    /// <summary>Moves an item within its list.</summary>
    /// <param name="list">The list.</param>
    /// <param name="from">Where it stands, from 0.</param>
    /// <param name="to">Where it stands then, from 0.</param>
    public static Splice Move(TextPath list, int from, int to) => new Moving(list, from, to);
}

/// <summary>A value set, or its key added.</summary>
/// <param name="Value">A word, a list or a map.</param>
/// <param name="After">Keys of the map that a new one stands behind.</param>
internal sealed record SetValue(TextPath At, YamlNode Value, System.Collections.Immutable.ImmutableArray<string> After) : Splice(At)
{
    /// <summary>True where a new key stands behind all others.</summary>
    public bool IsLast { get; init; }

    /// <summary>Behind which entry a new key stands, from 0; -1 in an empty map.</summary>
    public int Behind(YamlMap map)
    {
        if (IsLast) return map.Entries.Length - 1;
        int last = map.Entries.IsEmpty ? -1 : 0;
        for (int i = 0; i < map.Entries.Length; i++)
            if (After.Contains(map.Entries[i].Key.Text)) last = i;
        return last;
    }
}

/// <summary>A value taken out.</summary>
internal sealed record Removal(TextPath At) : Splice(At);

/// <summary>An item added to a list.</summary>
internal sealed record Addition(TextPath At, int Index, YamlNode Value) : Splice(At);

/// <summary>An item moved within its list.</summary>
internal sealed record Moving(TextPath At, int From, int To) : Splice(At);
