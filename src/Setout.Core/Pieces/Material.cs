using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Workings;

namespace Setout.Core.Pieces;

/// <summary>Whether parts must keep the direction of the grain.</summary>
public enum Grain
{
    /// <summary>Length runs along the grain.</summary>
    Keep,

    /// <summary>Parts may be turned.</summary>
    Free,
}

/// <summary>A size that can be bought or is in hand.</summary>
/// <param name="Along">Along the grain; the length of a board.</param>
/// <param name="Across">Across the grain; null for boards.</param>
/// <param name="Price">For one; null when not known.</param>
/// <param name="InHand">How many the shop has already; null for what has to be bought.</param>
/// <param name="Name">The shop's own name for it, such as a number chalked on an offcut; empty for none.</param>
/// <param name="Trim">What to true off each edge first; null for the shop's habit.</param>
public sealed record StockSize(Length Along, Length? Across, Money? Price, int? InHand, string Name, Length? Trim)
{
    /// <summary>What to true off each side, where they differ: it then says all that <see cref="Trim"/> would; null, the default, for sides that are alike.</summary>
    public TrimBySide? Sides { get; init; }

    /// <summary>What to true off each side, where the shop has a habit for sides of which nothing is said.</summary>
    /// <param name="habit">Of the shop; zero or more.</param>
    public (Length NearEdge, Length FarEdge, Length NearEnd, Length FarEnd) Trims(Length habit) => Sides is { } sides
        ? (sides.NearEdge ?? habit, sides.FarEdge ?? habit, sides.NearEnd ?? habit, sides.FarEnd ?? habit)
        : (Trim ?? habit, Trim ?? habit, Trim ?? habit, Trim ?? habit);

    /// <summary>Of a board: what no part may touch, in any order; they may overlap. Empty by default.</summary>
    public ImmutableArray<Flaw> Flaws { get; init; } = [];

    /// <summary>Of a board that is ripped into lanes: its width between its true edges; null, the default, for one with the section of the sticks.</summary>
    public Length? Width { get; init; }

    /// <inheritdoc/>
    public bool Equals(StockSize? other) => other is not null && Along == other.Along && Across == other.Across && Price == other.Price && InHand == other.InHand
        && Name == other.Name && Trim == other.Trim && Sides == other.Sides && Width == other.Width && Flaws.AsSpan().SequenceEqual(other.Flaws.AsSpan());

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Along, Across, Price, InHand, Name, Trim, Width, Flaws.Length);
}

/// <summary>
/// What is trued off each side of a blank, the blade's path included; zero or more, null for the shop's habit. Edges run with the grain of a sheet or along a board,
/// ends across. Near sides meet in the corner that everything is measured from.
/// </summary>
/// <param name="NearEdge">Off the reference edge.</param>
/// <param name="FarEdge">Off the edge opposite.</param>
/// <param name="NearEnd">Off the end that is squared first.</param>
/// <param name="FarEnd">Off the end opposite.</param>
public sealed record TrimBySide(Length? NearEdge, Length? FarEdge, Length? NearEnd, Length? FarEnd);

/// <summary>A stretch of a board that no part may touch, such as a loose knot or a check; it goes through the whole width, the blade's path counted in.</summary>
/// <param name="From">Where it begins, along the board from one end as it lies before trimming; zero or more.</param>
/// <param name="To">Where it ends, from the same end; beyond <paramref name="From"/>, within the board.</param>
public readonly record struct Flaw(Length From, Length To);

/// <summary>Wood that parts are made of.</summary>
/// <param name="Name">The piece's own name for it, such as <c>carcase</c>; also its key.</param>
/// <param name="Sizes">Sizes the piece file itself offers; the shop file may add to them.</param>
/// <param name="Place">Where it stands.</param>
public abstract record Material(string Name, ImmutableArray<StockSize> Sizes, Place Place);

/// <summary>Sheet goods.</summary>
/// <param name="Kind">Such as <c>hardwood plywood</c>; one of the known kinds unless <paramref name="Thickness"/> is given.</param>
/// <param name="Label">What the trade calls it, such as <c>3/4</c>; empty when the thickness is given.</param>
/// <param name="Thickness">The thickness given in the piece file, if any.</param>
/// <param name="Grain">Whether its parts keep the grain.</param>
public sealed record Panel(
    string Name, string Kind, string Label, Given? Thickness, Grain Grain, ImmutableArray<StockSize> Sizes, Place Place)
    : Material(Name, Sizes, Place)
{
    /// <summary>What is done with its edges where they are seen; they stay raw by default.</summary>
    public EdgeTreatment Edges { get; init; } = EdgeTreatment.Raw;

    /// <summary>The most divisions between a sheet and a part, 2 to 9; null, the default, where the shop decides.</summary>
    public int? MostStages { get; init; }
}

/// <summary>What is done with the edge of a sheet.</summary>
public enum EdgeWork
{
    /// <summary>Nothing: the edge is left as it is.</summary>
    Raw,

    /// <summary>Its corners are taken off; sizes stay as they are.</summary>
    Chamfered,

    /// <summary>Covered with a thin band; what is cut is smaller by the band.</summary>
    Banded,

    /// <summary>Covered with a strip of wood; what is cut is smaller by the strip.</summary>
    Lipped,
}

/// <summary>How the seen edges of a sheet are treated.</summary>
/// <param name="Work">What is done.</param>
/// <param name="Band">Thickness of the band; null for the usual one.</param>
/// <param name="Lip">The sticks that lips are cut from: their thickness is what the lip adds, their width covers the edge.</param>
/// <param name="Place">Where it is written.</param>
public sealed record EdgeTreatment(EdgeWork Work, Given? Band, Named? Lip, Place Place)
{
    /// <summary>Left as it is.</summary>
    public static EdgeTreatment Raw { get; } = new(EdgeWork.Raw, null, null, default);
}

/// <summary>Sticks of one section, cut to length only.</summary>
/// <param name="Nominal">The name in the yard, such as <c>2x4</c>; empty when the section is given.</param>
/// <param name="Thickness">The smaller size of the section, if given.</param>
/// <param name="Width">The larger size of the section, if given.</param>
/// <param name="Kind">The wood, in words, such as <c>construction lumber</c>.</param>
public sealed record Stick(
    string Name, string Nominal, Given? Thickness, Given? Width, string Kind, ImmutableArray<StockSize> Sizes, Place Place)
    : Material(Name, Sizes, Place);
