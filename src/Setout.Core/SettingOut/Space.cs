using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut;

/// <summary>An opening on the way to being filled: where its sizes stand and what is around it.</summary>
/// <param name="Owner">The key readings refer to.</param>
/// <param name="Prefix">What its quantities' keys begin with.</param>
/// <param name="Name">For people.</param>
/// <param name="Width">Clear width.</param>
/// <param name="Height">Clear height.</param>
/// <param name="Depth">Clear depth.</param>
/// <param name="X">From the left of the piece.</param>
/// <param name="Y">From the front of the piece.</param>
/// <param name="Z">From the floor.</param>
/// <param name="Edges">What bounds it.</param>
/// <param name="Of">The material of members inside, unless they name one.</param>
/// <param name="Carrier">The key of the parts beside it, which carry what is in it.</param>
/// <param name="Place">Where it stands in the piece file.</param>
/// <param name="Face">Its size at the face, which fronts go by: not what is read along the slides.</param>
/// <param name="TakesSlides">False between bare posts, where slides have nothing to screw to.</param>
/// <param name="Door">The thickness of inset doors that take up its front; null for none.</param>
internal sealed record Space(
    string Owner, string Prefix, string Name, QuantityKey Width, QuantityKey Height, QuantityKey Depth,
    ExactLength X, ExactLength Y, ExactLength Z, Edges Edges, Named Of, string Carrier, Place Place, FaceSize Face, bool TakesSlides = true, QuantityKey? Door = null)
{
    /// <summary>How what divides it meets what carries it; butted by default.</summary>
    public DividerFit Dividers { get; init; } = DividerFit.Butt;

    /// <summary>What lies in front of it; null for nothing.</summary>
    public FaceFrameSetting? FaceFrame { get; init; }

    /// <summary>From where heights in it are measured, in words: with a face frame what is behind it may lie lower.</summary>
    public string Ground => Edges.Bottom.Frame is null ? "bottom of the opening" : "upper edge of the rail below it";

    /// <summary>The doors before it; null for none.</summary>
    public DoorsBefore? Doors { get; init; }
    /// <summary>What rails go by that divide it; null where none may: only the bays of frames take them.</summary>
    public Railing? Railing { get; init; }

    /// <summary>The rails it stands on, which may carry a drawer; null for anything else.</summary>
    public RailPair? Below { get; init; }

    /// <summary>The rails above it; null for anything else.</summary>
    public RailPair? Above { get; init; }

    /// <summary>The sticks beside it between front and rear post; null for none.</summary>
    public BearerSetting? Bearers { get; init; }
}

/// <summary>Doors before a space: nothing of a face frame stands before what divides it, and drawers in it keep clear of them.</summary>
/// <param name="Left">How far an open door and its hinges stand in at the left; null where none hangs there, or no drawers are behind.</param>
/// <param name="Right">The same at the right.</param>
internal sealed record DoorsBefore(QuantityKey? Left, QuantityKey? Right);

/// <summary>
/// The size of an opening where the fronts lie over it, as the carcase was set out and cut. A reading of the opening is taken inside, along the
/// slides, at the narrowest: it decides the boxes, and a taper inside must not make the fronts narrower.
/// </summary>
internal sealed record FaceSize(QuantityKey Width, QuantityKey Height);

/// <summary>The four sides of an opening.</summary>
internal sealed record Edges(Edge Left, Edge Right, Edge Top, Edge Bottom);

/// <summary>One side of an opening.</summary>
/// <param name="Member">The thickness of the member there.</param>
/// <param name="Kind">Which rule a front over it follows.</param>
/// <param name="Beside">For a frame: the thickness of the slide panel between opening and post, which a front covers too.</param>
/// <param name="Part">The key of the part whose thickness <paramref name="Member"/> is, or <paramref name="Beside"/> where there is one; empty where there is no such part.</param>
internal sealed record Edge(QuantityKey Member, EdgeKind Kind, QuantityKey? Beside = null, string Part = "")
{
    /// <summary>From the lower or left end of that part to where the opening begins, as terms; empty where nothing is cut into it.</summary>
    public ImmutableArray<Term> Start { get; init; } = [];

    /// <summary>What of a face frame lies in front of it; null for nothing.</summary>
    public FrameEdge? Frame { get; init; }

    /// <summary>True where no member is: a front ends with the opening.</summary>
    public bool IsOpen { get; init; }

    /// <summary>Of a doubled partition, whose two panels together are <see cref="Member"/>: the thickness of the one that faces the opening; null for any other.</summary>
    public QuantityKey? Single { get; init; }

    /// <summary>The thickness of the panel that stands right beside the opening.</summary>
    public QuantityKey Own => Beside ?? Single ?? Member;

    /// <summary>True for a rail that an inset front above it comes down before.</summary>
    public bool IsCovered { get; init; }
}

/// <summary>A member of a face frame in front of one side of an opening.</summary>
/// <param name="In">How far its edge stands into the opening.</param>
/// <param name="Width">Its width, as seen from the front.</param>
/// <param name="Part">Its part.</param>
/// <param name="Start">From the lower or left end of that part to where the opening begins, as terms.</param>
/// <param name="Behind">The thickness of what it covers.</param>
internal sealed record FrameEdge(QuantityKey In, QuantityKey Width, string Part, ImmutableArray<Term> Start, QuantityKey Behind);

/// <summary>Which rule a front over an edge follows.</summary>
internal enum EdgeKind
{
    /// <summary>The outside of a case: all but the reveal is covered.</summary>
    CaseOutside,

    /// <summary>A member shared with the neighbour: half each, less half the gap.</summary>
    Shared,

    /// <summary>A post or rail of a frame: a fixed overlay.</summary>
    Frame,
}
