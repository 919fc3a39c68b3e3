// Over 200 lines: what setting out comes to, records that are read together.
using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut;

/// <summary>A face or an edge of a part, by its meaning.</summary>
public enum Face
{
    /// <summary>Towards the inside of the piece or box.</summary>
    Inside,

    /// <summary>Away from it.</summary>
    Outside,

    /// <summary>Edge towards the user.</summary>
    FrontEdge,

    /// <summary>Edge away from the user.</summary>
    BackEdge,

    /// <summary>Upper edge or face.</summary>
    Top,

    /// <summary>Lower edge or face.</summary>
    Bottom,

    /// <summary>Both ends.</summary>
    Ends,

    /// <summary>All four edges.</summary>
    AllEdges,

    // Of doors.

    /// <summary>Edge at the left, from the front.</summary>
    LeftEdge,

    /// <summary>Edge at the right, from the front.</summary>
    RightEdge,
}

/// <summary>Faces and edges in words.</summary>
public static class FaceWords
{
    /// <summary>As people say it, such as <c>front edge</c>.</summary>
    public static string InWords(this Face face) => face switch
    {
        Face.FrontEdge => "front edge",
        Face.BackEdge => "back edge",
        Face.AllEdges => "all edges",
        Face.LeftEdge => "left edge",
        Face.RightEdge => "right edge",
        _ => face.ToString().ToLowerInvariant(),
    };
}

/// <summary>A joint: which face of which part meets which, and what holds them.</summary>
/// <param name="Kind">Which joint.</param>
/// <param name="Part">The part that comes up.</param>
/// <param name="Meets">Which face of it meets.</param>
/// <param name="Against">The part it comes against.</param>
/// <param name="On">Which face of that.</param>
/// <param name="Held">What holds it, in words.</param>
public sealed record Joint(JointKind Kind, string Part, Face Meets, string Against, Face On, string Held)
{
    /// <summary>How far the part goes into the other, as a tenon or a shelf in a dado does; null where it only meets it.</summary>
    public QuantityKey? Depth { get; init; }

    /// <summary>How thick what goes in is, where it is thinner than the part: a tenon or a tongue. Null for the whole thickness.</summary>
    public QuantityKey? Thick { get; init; }

    /// <summary>Where a tongue stands in the thickness: at the face towards the inside, else in the middle.</summary>
    public bool IsAtInside { get; init; }

    /// <summary>True where the first member goes in with its whole thickness, as a raised bottom does.</summary>
    public bool IsFirstWhole { get; init; }

    /// <summary>True where the part may move in or on the other: in a groove without glue, on pins, in slotted holes.</summary>
    public bool IsLoose { get; init; }

    /// <summary>What is cut away at each edge of a tenon, across its width; null for none.</summary>
    public QuantityKey? Shoulder { get; init; }
}

/// <summary>Something to buy that is not wood.</summary>
/// <param name="Key">The permanent key of its owner.</param>
/// <param name="Name">For people and for buying: equal names are bought together.</param>
/// <param name="Count">How many.</param>
/// <param name="Unit">Of what: pair, piece.</param>
/// <param name="Source">Why so many, or why this one.</param>
public sealed record HardwareItem(string Key, string Name, int Count, string Unit, string Source)
{
    /// <summary>True where the name tells how much of it is wanted, as of a finish without a can.</summary>
    public bool IsByAmount { get; init; }

    /// <summary>What it is marked bought by: its name; where that changes with each reading, its owner.</summary>
    public string MarkedBy => IsByAmount ? Key : Name;
}

/// <summary>A groove or another cut into a part after it has its size.</summary>
/// <param name="Part">The part.</param>
/// <param name="Words">What to cut and where, without the figures.</param>
/// <param name="Figures">The figures by name: depth, width, distance.</param>
public sealed record Machining(string Part, string Words, ImmutableArray<(string Name, QuantityKey Key)> Figures)
{
    /// <summary>The keys of what goes into it, or of what owns its holes: which members are cut, and in which face, follows from where those stand. Empty for all members.</summary>
    public ImmutableArray<string> By { get; init; } = [];

    /// <summary>Which members are cut, from 1, where the rule knows; empty where that follows from <see cref="By"/>.</summary>
    public ImmutableArray<int> Numbers { get; init; } = [];

    /// <summary>Which face or edge is cut, where the rule says; null where it follows from what goes in.</summary>
    public Face? On { get; init; }

    /// <summary>True where it runs from end to end along the part, parallel to its edges: it may then be cut into a strip that several such parts come from.</summary>
    public bool IsWholeLength { get; init; }

    /// <summary>The key of the caution that stands at it, where it is none of the grooving; empty for that.</summary>
    public string Caution { get; init; } = "";

    /// <summary>Along which edge of that face, where it is one; null for none.</summary>
    public Face? Edge { get; init; }

    /// <summary>The members that are cut, each with its faces; filled in when all stand.</summary>
    public ImmutableArray<CutMember> Members { get; init; } = [];

    /// <summary>Which members and faces, in words, such as <c>left: right face; right: left face</c>; filled in when all stand.</summary>
    public string Where { get; init; } = "";
}

/// <summary>A member that something is cut into.</summary>
/// <param name="Number">Which of its part, from 1.</param>
/// <param name="Which">Where it stands among its like, such as <c>left front</c>; empty for the only one.</param>
/// <param name="Faces">Which of its faces, in words, one or more.</param>
public sealed record CutMember(int Number, string Which, ImmutableArray<string> Faces)
{
    /// <inheritdoc/>
    public bool Equals(CutMember? other) => other is not null && Number == other.Number && Which == other.Which && Faces.AsSpan().SequenceEqual(other.Faces.AsSpan());

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Number, Which, Faces.Length);
}

/// <summary>When a step comes: what must stand before what.</summary>
public enum Stage
{
    /// <summary>Edges of parts covered or eased, before what is measured from them is cut.</summary>
    Edges,

    /// <summary>Dadoes and holes in parts, before anything is joined.</summary>
    Cuts,

    /// <summary>The carcase or frame, pulled square.</summary>
    Carcase,

    /// <summary>What keeps it square: the back.</summary>
    Back,

    /// <summary>What divides it: partitions, decks, shelves, slide panels.</summary>
    Inside,

    /// <summary>Structures stood level, joined to one another and the top laid on, while one still reaches its screws: in the order of the piece.</summary>
    Top,

    /// <summary>Hung or anchored, empty.</summary>
    Fixing,

    /// <summary>Openings read.</summary>
    Reading,

    /// <summary>Boxes and slides.</summary>
    Drawers,

    /// <summary>Fronts.</summary>
    Fronts,

    /// <summary>Shelves on pins.</summary>
    LooseShelves,

    /// <summary>Doors made and hung.</summary>
    Doors,
}

/// <summary>One step of putting the piece together.</summary>
/// <param name="Stage">When it comes.</param>
/// <param name="Words">What to do.</param>
/// <param name="Parts">The keys of the parts that come in.</param>
/// <param name="Diagonal">What both diagonals should read when the step is square; null where there is nothing to square.</param>
/// <param name="Caution">The key of the caution that belongs to the step, or empty where there is none or an earlier step has it.</param>
public sealed record AssemblyStep(Stage Stage, string Words, ImmutableArray<string> Parts, Length? Diagonal, string Caution)
{
    /// <summary>
    /// What is put together in it: a structure, a drawer, a door, a top or a base, by the key of its <see cref="Unit"/>; empty for the piece
    /// where it stands, and for parts whose edges are worked before anything is joined. Null until the book knows.
    /// </summary>
    public string? On { get; init; }

    /// <summary>Units that are handled whole in it: those made before that come in, or one that is stood up or lifted.</summary>
    public ImmutableArray<string> Whole { get; init; } = [];

    /// <summary>True where its parts are joined by themselves first and come in as one, as a face frame does.</summary>
    public bool IsMadeFirst { get; init; }

    /// <summary>True where its parts stay loose until a later step closes what they stand in.</summary>
    public bool IsDry { get; init; }

    /// <summary>True where its parts are longer than the way in, and are tipped to get past what stands before them.</summary>
    public bool IsTipped { get; init; }
}

/// <summary>What a unit is.</summary>
public enum UnitKind
{
    /// <summary>A frame or a case.</summary>
    Structure,

    /// <summary>A base that a case stands on.</summary>
    Base,

    /// <summary>A top.</summary>
    Top,

    /// <summary>A drawer box.</summary>
    Drawer,

    /// <summary>A framed door.</summary>
    Door,
}

/// <summary>What is made by itself on the bench and then handled as one.</summary>
/// <param name="Key">That of the structure, drawer, door, top or base.</param>
/// <param name="Name">For people.</param>
/// <param name="Kind">What it is.</param>
public sealed record Unit(string Key, string Name, UnitKind Kind);

/// <summary>A size that was set out rather than cut, and stands fast once the parts that bound it are fixed.</summary>
/// <param name="Size">The figure it was set out to.</param>
/// <param name="Bounds">The keys of the parts that fix it; a structure's own sides are not named.</param>
public sealed record Fixing(QuantityKey Size, ImmutableArray<string> Bounds);

/// <summary>An opening as it came out, for drawings and outlines.</summary>
/// <param name="Key">Permanent.</param>
/// <param name="Name">For people.</param>
/// <param name="Content">Open, drawers, shelves, divided.</param>
/// <param name="Space">The clear space.</param>
public sealed record SetOpening(string Key, string Name, string Content, Placement Space);

/// <summary>A piece set out: quantities, parts, joints, hardware and what is worth knowing. Immutable.</summary>
/// <param name="Piece">As described.</param>
/// <param name="Grid">The grid it was set out on.</param>
/// <param name="Worked">All quantities.</param>
/// <param name="Parts">In the order set out.</param>
/// <param name="Joints">All joints.</param>
/// <param name="Hardware">All hardware.</param>
/// <param name="Machinings">What is cut and bored into parts.</param>
/// <param name="Choices">What was picked, and when it would flip.</param>
/// <param name="Chains">What must close.</param>
/// <param name="Gaps">What must land inside limits.</param>
/// <param name="Steps">Assembly, in order.</param>
/// <param name="Openings">All openings.</param>
/// <param name="Dimensions">What to dimension on the views.</param>
/// <param name="Findings">All findings.</param>
public sealed record SetPiece(
    Piece Piece, Grid Grid, WorkedPiece Worked, ImmutableArray<Part> Parts, ImmutableArray<Joint> Joints,
    ImmutableArray<HardwareItem> Hardware, ImmutableArray<Machining> Machinings, ImmutableArray<Choice> Choices,
    ImmutableArray<ClosedChain> Chains, ImmutableArray<Gap> Gaps, ImmutableArray<AssemblyStep> Steps,
    ImmutableArray<SetOpening> Openings, ImmutableArray<SetDimension> Dimensions, ImmutableArray<Finding> Findings)
{
    /// <summary>What was known from the bench.</summary>
    public BenchFacts Facts { get; init; } = BenchFacts.Empty;

    /// <summary>What is made by itself and then handled as one, in the order set out.</summary>
    public ImmutableArray<Unit> Units { get; init; } = [];

    /// <summary>What is cut out of parts and stays empty.</summary>
    public ImmutableArray<CutOut> CutOuts { get; init; } = [];

    /// <summary>Holes whose places are known.</summary>
    public ImmutableArray<Bore> Bores { get; init; } = [];

    /// <summary>What fixes the places that were set out.</summary>
    public ImmutableArray<Fixing> Fixings { get; init; } = [];

    /// <summary>The figure to cut of a size.</summary>
    public Length ToCut(PartSize size) => Worked[size.ToCut].ToNearestTick();

    /// <summary>True while the part waits for a reading: its size is reserved on the stock, and it is not cut yet.</summary>
    public bool IsHeld(Part part) => !part.HeldUntil.IsDefaultOrEmpty && Facts.StateOf(part) == PartState.Planned
        && part.HeldUntil.Any(Worked.Values.ContainsKey) && part.HeldUntil.All(k => !Worked.Values.TryGetValue(k, out Worked? read) || read.Pin is null);

    /// <summary>What is done with the edges of a part, in words: <c>raw</c>, or such as <c>banded: 1 long, 2 ends</c>.</summary>
    public string EdgesOf(Part part)
    {
        EdgeWork work = part.Seen != default && Piece.Materials.GetValueOrDefault(part.Material) is Panel panel ? panel.Edges.Work : EdgeWork.Raw;
        if (work == EdgeWork.Raw) return "raw";
        string[] edges = [.. part.Seen.Long > 0 ? [$"{part.Seen.Long} long"] : Array.Empty<string>(), .. part.Seen.Ends > 0 ? [$"{part.Seen.Ends} end{(part.Seen.Ends > 1 ? "s" : "")}"] : Array.Empty<string>()];
        string word = work switch { EdgeWork.Chamfered => "chamfered", EdgeWork.Banded => "banded", _ => "lipped" };
        return $"{word}: {string.Join(", ", edges)}";
    }

    /// <summary>True when a finding stops the plan.</summary>
    public bool IsStopped => Findings.Any(f => f.Severity == Severity.Stop);
}
