// Over 200 lines: what a drawing may be made of, records that are read together.
using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Drawing.Dimensioning;
using Setout.Drawing.Scenes;

namespace Setout.Drawing.Elevations;

/// <summary>What a rectangle of the elevation is.</summary>
public enum PartKind
{
    /// <summary>An upright stick.</summary>
    Post,

    /// <summary>A level stick.</summary>
    Rail,

    /// <summary>The edge of a panel, seen end on.</summary>
    PanelEdge,

    /// <summary>A level member that divides or carries.</summary>
    Deck,

    /// <summary>The top.</summary>
    Top,

    /// <summary>A drawer's front.</summary>
    DrawerFront,

    /// <summary>A door.</summary>
    Door,

    /// <summary>A back, seen through an open space.</summary>
    Back,

    /// <summary>A panel seen on its face: an end, a filled bay.</summary>
    PanelFace,

    /// <summary>A stick seen on its end.</summary>
    StickEnd,

    /// <summary>What is cut into a face and does not go through.</summary>
    Recess,

    /// <summary>What is bought and screwed on: a foot, a castor.</summary>
    Fitting,
}

/// <summary>Which way the grain lines run.</summary>
public enum GrainRun
{
    /// <summary>As is usual for the kind: along posts and rails, level on drawer fronts, upright on doors and backs, none on edges.</summary>
    ByKind,

    /// <summary>Up and down.</summary>
    Upright,

    /// <summary>Side to side.</summary>
    Level,

    /// <summary>Not shown.</summary>
    None,
}

/// <summary>A rectangle of the model: x to the right, y up from the floor.</summary>
public readonly record struct ModelRect(Length Left, Length Bottom, Length Width, Length Height)
{
    /// <summary>Left plus width.</summary>
    public Length Right => Left + Width;

    /// <summary>Bottom plus height.</summary>
    public Length Top => Bottom + Height;
}

/// <summary>A place of the model: x to the right, y up.</summary>
public readonly record struct ModelPoint(Length X, Length Y);

/// <summary>A round hole of the model, by its middle.</summary>
/// <param name="X">From the left.</param>
/// <param name="Y">From below.</param>
/// <param name="Diameter">How wide; what is too small to see is drawn larger.</param>
/// <param name="IsHidden">Whether it is bored from the far side.</param>
public readonly record struct ModelHole(Length X, Length Y, Length Diameter, bool IsHidden = false);

/// <summary>A member as seen from one side.</summary>
/// <param name="Key">Its permanent key.</param>
/// <param name="Title">Words for it, such as <c>left bank, drawer 3</c>.</param>
/// <param name="Kind">What it is.</param>
/// <param name="Area">Its outline.</param>
/// <param name="Order">Painted from the smallest to the largest: what is behind first.</param>
public sealed record ElevationPart(string Key, string Title, PartKind Kind, ModelRect Area, int Order = 0)
{
    /// <summary>Which way the grain runs.</summary>
    public GrainRun Grain { get; init; }

    /// <summary>Whether the edges are behind something and drawn broken.</summary>
    public bool IsHidden { get; init; }

    /// <summary>Whether the red pencil goes round it.</summary>
    public bool IsMarked { get; init; }

    /// <summary>What is cut out of it, right through: what is behind shows there.</summary>
    public ImmutableArray<ModelRect> Taken { get; init; } = [];

    /// <summary>Its outline where that is no rectangle, such as a strip with mitred ends; nothing is taken out of it then.</summary>
    public ImmutableArray<ModelPoint> Outline { get; init; } = [];

    /// <summary>Holes in its face.</summary>
    public ImmutableArray<ModelHole> Holes { get; init; } = [];

    /// <summary>Handles on it, in model lengths.</summary>
    public ImmutableArray<ModelRect> Handles { get; init; } = [];
}

/// <summary>A clear space. It has no lines of its own; it can be pointed at, and says what it is.</summary>
/// <param name="Key">Its permanent key.</param>
/// <param name="Title">Words for it.</param>
/// <param name="Area">Its outline.</param>
/// <param name="Label">What stands in it, such as <c>open</c>; empty for a filled one.</param>
public sealed record ElevationOpening(string Key, string Title, ModelRect Area, Phrase Label)
{
    /// <summary>Whether the red pencil goes round it.</summary>
    public bool IsMarked { get; init; }
}

/// <summary>A machine or another thing that stands in or on the piece and is not made: a broken outline with its name.</summary>
public sealed record ElevationGhost(string Key, string Title, ModelRect Area, Phrase Label);

/// <summary>One dimension of a chain, in model lengths along the chain.</summary>
/// <param name="From">Where it begins: x, or y for upright chains.</param>
/// <param name="To">Where it ends; larger.</param>
/// <param name="Figure">What stands on it; empty leaves the span without a line.</param>
/// <param name="Key">The quantity's key.</param>
/// <param name="Title">Words for it, such as <c>width over all 84 in</c>.</param>
/// <param name="IsMarked">In red pencil.</param>
public sealed record ElevationSpan(Length From, Length To, Phrase Figure, string Key = "", string Title = "", bool IsMarked = false);

/// <summary>Dimensions on one line beside the elevation.</summary>
public sealed record ElevationChain(Side Side, ImmutableArray<ElevationSpan> Spans)
{
    /// <summary>A chain from its stations and the figures between them.</summary>
    /// <param name="side">Where it stands.</param>
    /// <param name="stations">Ascending.</param>
    /// <param name="figures">One fewer than the stations; an empty one leaves its span without a line.</param>
    /// <param name="marked">Which of them is in red pencil, or -1.</param>
    /// <exception cref="ArgumentException">The counts do not fit.</exception>
    public static ElevationChain Of(Side side, IReadOnlyList<Length> stations, IReadOnlyList<Phrase> figures, int marked = -1) =>
        figures.Count == stations.Count - 1
            ? new(side, [.. figures.Select((f, i) => new ElevationSpan(stations[i], stations[i + 1], f, IsMarked: i == marked))])
            : throw new ArgumentException("A chain has one figure fewer than stations.", nameof(figures));
}

/// <summary>A dimension inside the elevation, such as the depth of a well.</summary>
/// <param name="Span">Its ends along the line, and the figure.</param>
/// <param name="At">Where the line stands: x of an upright one, y of a level one.</param>
/// <param name="IsUpright">Whether it runs up and down.</param>
public sealed record InnerDimension(ElevationSpan Span, Length At, bool IsUpright);

/// <summary>All that a view shows.</summary>
/// <param name="Title">What is drawn, such as <c>Instrument makers' bench, front</c>.</param>
/// <param name="Description">Sentences for someone who cannot see it.</param>
/// <param name="Parts">Members.</param>
public sealed record ElevationInput(string Title, string Description, ImmutableArray<ElevationPart> Parts)
{
    /// <summary>Clear spaces.</summary>
    public ImmutableArray<ElevationOpening> Openings { get; init; } = [];

    /// <summary>Machines and other things not made.</summary>
    public ImmutableArray<ElevationGhost> Ghosts { get; init; } = [];

    /// <summary>Chains round it; nearest first on each side.</summary>
    public ImmutableArray<ElevationChain> Chains { get; init; } = [];

    /// <summary>Dimensions inside it.</summary>
    public ImmutableArray<InnerDimension> Inner { get; init; } = [];

    /// <summary>From where it is seen, in words beside the scale; empty for none.</summary>
    public string Caption { get; init; } = "";

    /// <summary>Whether it stands on the floor; a hung piece does not, nor does a plan.</summary>
    public bool HasFloor { get; init; } = true;
}

/// <summary>The paper a drawing may use.</summary>
/// <param name="Width">Paper millimetres.</param>
/// <param name="Height">Paper millimetres, at most; a drawing that needs less is less high.</param>
public sealed record PaperBox(double Width, double Height)
{
    /// <summary>Height of the em of figures; default 4 mm.</summary>
    public double FigureSize { get; init; } = 4;

    /// <summary>The drawing is not larger than 1 to this: that of the view it goes with.</summary>
    public int Scale { get; init; } = 1;

    /// <summary>How far figures may be shrunk so that the model is drawn larger, against <see cref="FigureSize"/>, 0 to 1; default 0.6, 1 for not at all.</summary>
    public double LeastShrunk { get; init; } = 0.6;
}

/// <summary>The drawing and where the model lies on it.</summary>
/// <param name="Scene">The drawing.</param>
/// <param name="Scale">The model is drawn 1 to this.</param>
/// <param name="Origin">The paper point of the model's x = 0 on the floor.</param>
public sealed record ElevationDrawing(Scene Scene, int Scale, Point Origin);
