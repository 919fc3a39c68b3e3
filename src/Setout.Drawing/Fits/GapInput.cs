using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Drawing.Scenes;

namespace Setout.Drawing.Fits;

/// <summary>One end of the window of a gap.</summary>
/// <param name="At">Where it is.</param>
/// <param name="Figure">What stands over it.</param>
public sealed record GapLimit(ExactLength At, Phrase Figure);

/// <summary>What a gap may come to.</summary>
/// <param name="Low">The least it can be, all at its worst.</param>
/// <param name="High">The most it can be, all at its worst.</param>
/// <param name="Middle">The middle of where it likely lies.</param>
/// <param name="Likely">How far to either side of the middle it likely lies.</param>
/// <param name="Chance">The chance of landing in the window, in words such as <c>63 %</c>.</param>
public sealed record GapReach(GapLimit Low, GapLimit High, ExactLength Middle, ApproximateLength Likely, Phrase Chance);

/// <summary>A gap, or several that are alike in every figure.</summary>
/// <param name="Key">The permanent key of the first of them.</param>
/// <param name="Title">All that the row shows, in words.</param>
/// <param name="Name">Such as <c>drawers L1, L2: slide play</c>.</param>
/// <param name="Least">The lower end of the window.</param>
/// <param name="Most">The upper end; more than the lower.</param>
/// <param name="Stands">Where it stands when all comes out as meant.</param>
/// <param name="Now">What it may come to as things are.</param>
public sealed record GapRow(string Key, string Title, Phrase Name, GapLimit Least, GapLimit Most, ExactLength Stands, GapReach Now)
{
    /// <summary>Soft words under the name, such as where it stands.</summary>
    public Phrase Note { get; init; } = Phrase.Empty;

    /// <summary>What it may come to once what is to be measured first has been; null where that changes nothing.</summary>
    public GapReach? Then { get; init; }

    /// <summary>What is wrong, in red pencil, such as <c>out by 1/32</c>; empty where the gap stands inside its window.</summary>
    public Phrase Out { get; init; } = Phrase.Empty;
}

/// <summary>Gaps under each other.</summary>
/// <param name="Title">What it is.</param>
/// <param name="Description">Sentences for someone who cannot see it.</param>
/// <param name="Unit">Whose rule the small strokes are.</param>
/// <param name="Rows">From top to bottom.</param>
public sealed record GapsInput(string Title, string Description, LengthUnit Unit, ImmutableArray<GapRow> Rows)
{
    /// <summary>Under the last row, soft: how to read it.</summary>
    public Phrase Footer { get; init; } = Phrase.Empty;
}

/// <summary>Sizes of drawings of gaps in paper millimetres.</summary>
/// <param name="Width">The width of the paper; all of it is used. Under <see cref="Narrow"/> a name stands above its bar, not beside it.</param>
/// <param name="Height">The most height that may be used; a single row may take more.</param>
public sealed record GapPaper(double Width, double Height)
{
    /// <summary>Paper narrower than this has no room for names beside bars.</summary>
    public const double Narrow = 130;

    /// <summary>Names and chances; default 3.7 (10.5 pt).</summary>
    public double TextSize { get; init; } = 3.7;

    /// <summary>Figures over the bars and soft words; default 3.2 (9 pt).</summary>
    public double SmallSize { get; init; } = 3.2;
}
