namespace Setout.Cutting.Sheets.Patterns;

/// <summary>
/// What is cut from a rectangle, as two rectangles joined along or across the grain, or one part, or nothing. It states the sizes it needs, not those of
/// what it is cut from.
/// </summary>
internal sealed class PatternNode
{
    private PatternNode(int along, int across, PatternPart? part, bool joinsAlong, PatternNode? first, PatternNode? second) =>
        (Along, Across, Part, JoinsAlong, First, Second) = (along, across, part, joinsAlong, first, second);

    /// <summary>What it needs along the grain.</summary>
    public int Along { get; }

    /// <summary>What it needs across the grain.</summary>
    public int Across { get; }

    /// <summary>The part, when it is one.</summary>
    public PatternPart? Part { get; }

    /// <summary>Whether the two follow each other along the grain.</summary>
    public bool JoinsAlong { get; }

    /// <summary>The first, when it joins two.</summary>
    public PatternNode? First { get; }

    /// <summary>The second, when it joins two.</summary>
    public PatternNode? Second { get; }

    public static PatternNode Nothing { get; } = new(0, 0, null, false, null, null);

    public static PatternNode Of(PatternPart part) => new(part.Along, part.Across, part, false, null, null);

    public static PatternNode Join(bool along, PatternNode a, PatternNode b) =>
        a == Nothing ? b : b == Nothing ? a
        : along ? new(a.Along + b.Along, Math.Max(a.Across, b.Across), null, true, a, b)
        : new(Math.Max(a.Along, b.Along), a.Across + b.Across, null, false, a, b);

    /// <summary>What it needs in one direction.</summary>
    public int Size(bool along) => along ? Along : Across;

    /// <summary>Of a join: what follows each other in its direction, joins of the same direction taken apart.</summary>
    public IEnumerable<PatternNode> Slices() => First is null ? [this] : [.. SlicesOf(First), .. SlicesOf(Second!)];

    private IEnumerable<PatternNode> SlicesOf(PatternNode node) => node.First is not null && node.JoinsAlong == JoinsAlong ? node.Slices() : [node];

    /// <summary>Adds how many of each type it holds.</summary>
    public void Count(int[] counts)
    {
        if (Part is { } part) counts[part.Type]++;
        First?.Count(counts);
        Second?.Count(counts);
    }

    /// <summary>The same with no more of each type than <paramref name="left"/>, which is lowered by what is kept.</summary>
    public PatternNode Within(int[] left)
    {
        if (Part is { } part) return left[part.Type]-- > 0 ? this : Drop(left, part.Type);
        if (First is null) return this;
        PatternNode first = First.Within(left), second = Second!.Within(left);
        return first == First && second == Second ? this : Join(JoinsAlong, first, second);
    }

    private static PatternNode Drop(int[] left, int type)
    {
        left[type]++;
        return Nothing;
    }
}
