namespace Setout.Drawing.Documents.Setting;

/// <summary>
/// A piece of the column that is not split: a line, a row, a box. Its pieces stand from the column's left edge and the strip's own
/// top. The paginator puts strips on pages.
/// </summary>
internal sealed record Strip(double Height, IReadOnlyList<LayoutPiece> Pieces)
{
    /// <summary>Space above; falls away at the top of a page.</summary>
    public double Gap { get; init; }

    /// <summary>Stays on the page of the next.</summary>
    public bool KeepsWithNext { get; init; }

    /// <summary>Begins a page.</summary>
    public bool BreaksBefore { get; init; }

    /// <summary>Ends its page.</summary>
    public bool BreaksAfter { get; init; }

    /// <summary>On a page lying down.</summary>
    public bool LiesDown { get; init; }

    /// <summary>Set again above this strip when it begins a page, in a short form.</summary>
    public Strip? Head { get; init; }

    /// <summary>How to part it when it is higher than a page: takes the heights of the first and of later pages.</summary>
    public Func<double, double, IReadOnlyList<Strip>>? Split { get; init; }

    /// <summary>Title of the section, for the footer.</summary>
    public string Section { get; init; } = "";

    /// <summary>Bookmark set here, or empty.</summary>
    public string Bookmark { get; init; } = "";
}
