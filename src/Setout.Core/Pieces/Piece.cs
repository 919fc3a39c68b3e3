using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Workings;

namespace Setout.Core.Pieces;

/// <summary>The furniture being built, as described. Immutable; nothing in it is worked out.</summary>
/// <param name="Name">For people.</param>
/// <param name="About">A sentence or two, or empty.</param>
/// <param name="Unit">The unit of bare numbers; the grid, usual sizes and what is bought go by it.</param>
/// <param name="Grid">The grid, if the piece names one; else the shop's.</param>
/// <param name="Materials">By name.</param>
/// <param name="DrawerKinds">By name.</param>
/// <param name="Members">Frame or case, tops, loose parts, in the order written.</param>
/// <param name="Keys">Every permanent key with its place.</param>
public sealed record Piece(
    string Name, string About, LengthUnit Unit, Grid? Grid,
    ImmutableDictionary<string, Material> Materials, ImmutableDictionary<string, DrawerKind> DrawerKinds,
    ImmutableArray<Member> Members, ImmutableDictionary<string, Place> Keys)
{
    private readonly LengthUnit? _shown;

    /// <summary>The unit that figures are shown in: that of bare numbers unless a person asked for the other. It changes words alone, never a size.</summary>
    public LengthUnit Shown { get => _shown ?? Unit; init => _shown = value; }

    /// <summary>By what whoever reads of it enters what is read and done: commands unless somebody says otherwise. It changes words alone, never a size.</summary>
    public Hand Hand { get; init; }

    /// <summary>Kinds of door by name; none by default.</summary>
    public ImmutableDictionary<string, DoorKind> DoorKinds { get; init; } = ImmutableDictionary<string, DoorKind>.Empty;

    /// <summary>What it is finished with, in the order written; none by default.</summary>
    public ImmutableArray<Finish> Finishes { get; init; } = [];

    /// <summary>By how many per cent of moisture solid wood may change where the piece stands, 1 to 20.</summary>
    public int MoistureChange { get; init; } = UsualChange;

    /// <summary>Where that is written; not known where it is not.</summary>
    public Place MoisturePlace { get; init; }

    /// <summary>From 6 to 12 %: indoors, heated winter to damp summer. Common practice, no source.</summary>
    public const int UsualChange = 6;

    /// <summary>The narrowest opening on the way to its place; null, the default, where nothing is said of it.</summary>
    public WayIn? WayIn { get; init; }
}

/// <summary>The narrowest opening on the way to where the piece will stand: a doorway, a stair.</summary>
/// <param name="Width">Clear width.</param>
/// <param name="Height">Clear height.</param>
/// <param name="Place">Where it is written.</param>
public sealed record WayIn(Given Width, Given Height, Place Place);

/// <summary>A main member of the piece.</summary>
/// <param name="Key">Permanent.</param>
/// <param name="Name">For people; empty to use the usual word.</param>
/// <param name="Of">Its material.</param>
/// <param name="Place">Where it stands.</param>
public abstract record Member(string Key, string Name, Named Of, Place Place);

/// <summary>A part that belongs to no structure, with its finished sizes, as a printed bill gives it.</summary>
/// <param name="Count">How many, one or more.</param>
/// <param name="Length">Along the grain.</param>
/// <param name="Width">Across the grain; null for sticks, whose section gives it.</param>
public sealed record LoosePart(string Key, string Name, Named Of, int Count, Given Length, Given? Width, Place Place) : Member(Key, Name, Of, Place);
