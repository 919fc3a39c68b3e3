namespace Setout.Cutting.Sheets.Model;

/// <summary>What a node of a search tree is.</summary>
internal enum NodeKind
{
    /// <summary>Nothing lies here yet.</summary>
    Free,

    /// <summary>A part.</summary>
    Part,

    /// <summary>Slices that follow each other along the grain.</summary>
    Along,

    /// <summary>Slices that follow each other across the grain.</summary>
    Across,

    /// <summary>A place in the table that holds no node.</summary>
    Unused,
}

/// <summary>A free rectangle of a sheet, large enough for the smallest part.</summary>
/// <param name="Along">Size along the grain.</param>
/// <param name="Across">Size across the grain.</param>
/// <param name="Promise">What it is worth keeping free, more than its area, so that one large rectangle beats two small ones.</param>
/// <param name="Node">Its place in the sheet's table.</param>
/// <param name="Stages">Cuts on the way from the sheet to it.</param>
/// <param name="Parent">What it is a slice of; free for the whole sheet.</param>
internal readonly record struct FreeRectangle(long Along, long Across, double Promise, int Node, int Stages, NodeKind Parent)
{
    /// <summary>Cuts on the way to a part that is laid in its corner.</summary>
    /// <param name="restAlong">What the part leaves along the grain.</param>
    /// <param name="restAcross">What it leaves across the grain.</param>
    /// <param name="first">How the first cut separates, where both rests are there.</param>
    public int StagesWith(long restAlong, long restAcross, NodeKind first)
    {
        if (restAlong == 0 && restAcross == 0) return Stages;
        if (restAcross == 0) return Parent == NodeKind.Along ? Stages : Stages + 1;
        if (restAlong == 0) return Parent == NodeKind.Across ? Stages : Stages + 1;
        return Parent == first ? Stages + 1 : Stages + 2;
    }
}
