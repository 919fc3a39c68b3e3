using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut;

/// <summary>From where a drawing looks at the piece.</summary>
[Flags]
public enum Views
{
    /// <summary>From nowhere.</summary>
    None = 0,

    /// <summary>The front: X to the right, Z up.</summary>
    Front = 1,

    /// <summary>The plan, from above: X to the right, Y up, so that the front edge lies below.</summary>
    Above = 2,

    /// <summary>The side, from the right: Y to the right, Z up, so that the front edge lies at the left.</summary>
    Right = 4,
}

/// <summary>A size worth drawing, as a dimension between two places.</summary>
/// <param name="Key">The quantity shown.</param>
/// <param name="IsAcross">True for a width, false for a height or a depth.</param>
/// <param name="From">Start, from the left, from the front or from the floor.</param>
/// <param name="To">End.</param>
/// <param name="Row">0 nearest the drawing, 2 for sizes over all.</param>
/// <param name="At">For a height or a depth: how far from the left it belongs; decides on which side it is drawn.</param>
public sealed record SetDimension(QuantityKey Key, bool IsAcross, ExactLength From, ExactLength To, int Row, ExactLength At = default)
{
    private readonly Views? _in;

    /// <summary>True for a size from front to back.</summary>
    public bool IsDeep { get; init; }

    /// <summary>On which views it is drawn. Sizes over all on both that show their axis, others on the front; depths on plan and side.</summary>
    public Views In
    {
        get => _in ?? (IsDeep ? Views.Above | Views.Right : Row == 0 ? Views.Front : Views.Front | (IsAcross ? Views.Above : Views.Right));
        init => _in = value;
    }
}

/// <summary>What is cut out of a part and stays empty: an opening, a slot, a notch.</summary>
/// <param name="Key">The key of what it belongs to.</param>
/// <param name="Name">For people, such as <c>well W</c>.</param>
/// <param name="Part">The key of the part; every member of it that the space meets is cut.</param>
/// <param name="Space">What is taken away; it may reach past the part.</param>
public sealed record CutOut(string Key, string Name, string Part, Placement Space);

/// <summary>The three ways through a piece.</summary>
public enum Along
{
    /// <summary>From left to right.</summary>
    X,

    /// <summary>From front to back.</summary>
    Y,

    /// <summary>Up from the floor.</summary>
    Z,
}

/// <summary>A round hole in one member, in the frame of the piece.</summary>
/// <param name="Key">The key of what it belongs to.</param>
/// <param name="Name">For people, such as <c>cup</c>.</param>
/// <param name="Part">The key of the part.</param>
/// <param name="Number">Which member of it, from 1.</param>
/// <param name="Along">Its axis.</param>
/// <param name="X">The middle of its mouth, from the left.</param>
/// <param name="Y">From the front.</param>
/// <param name="Z">From the floor.</param>
/// <param name="Diameter">How wide; zero for a screw's hole, which nothing is said of.</param>
/// <param name="Depth">How deep; zero for through, or not said.</param>
public sealed record Bore(string Key, string Name, string Part, int Number, Along Along, ExactLength X, ExactLength Y, ExactLength Z, ExactLength Diameter, ExactLength Depth);

/// <summary>Members in their places, for what is bored into them.</summary>
internal static class Bored
{
    /// <summary>All members of a part that have a place.</summary>
    public static IEnumerable<(int Number, Placement Box)> Members(Book book, string part) =>
        book.Parts.FirstOrDefault(p => p.Key == part)?.Placements.Select((box, i) => (i + 1, box)) ?? [];

    /// <summary>The member of a part whose face lies at a place across the piece, at the left of an opening or at its right; null where none does.</summary>
    public static (int Number, Placement Box)? Beside(Book book, string part, ExactLength at, bool isLeft) =>
        Members(book, part).Where(m => (isLeft ? m.Box.X + m.Box.SizeX : m.Box.X) == at).Cast<(int, Placement)?>().FirstOrDefault();

    /// <summary>The member of a part that stands nearest to a place across the piece, at the left of an opening or at its right.</summary>
    public static System.Collections.Immutable.ImmutableArray<int> Nearest(Book book, string part, ExactLength at, bool isLeft) =>
        [.. Members(book, part).OrderBy(m => ((isLeft ? m.Box.X + m.Box.SizeX : m.Box.X) - at).Abs()).Take(1).Select(m => m.Number)];
}

/// <summary>Rows of dowels that are placed when all members stand.</summary>
/// <param name="Owner">The key of their quantities.</param>
/// <param name="Ended">The part whose ends they stand in.</param>
/// <param name="Into">The parts that they go into.</param>
/// <param name="Count">How many in a row.</param>
internal sealed record DowelRows(string Owner, string Ended, ImmutableArray<string> Into, int Count);
