using System.Collections.Immutable;
using Setout.Core.Measures;

namespace Setout.Cutting.Sheets;

/// <summary>What a rectangle on a laid sheet is.</summary>
public enum FaceKind
{
    /// <summary>A part.</summary>
    Part,

    /// <summary>A left-over worth keeping.</summary>
    Keep,

    /// <summary>A left-over not worth keeping.</summary>
    Waste,
}

/// <summary>A rectangle of a sheet, measured from the trued reference corner.</summary>
/// <param name="FromAlong">Distance of its near crosscut edge from the corner, along the grain.</param>
/// <param name="FromAcross">Distance of its near long-grain edge from the corner, across the grain.</param>
/// <param name="Along">Its size along the grain.</param>
/// <param name="Across">Its size across the grain.</param>
public sealed record SheetRectangle(Length FromAlong, Length FromAcross, Length Along, Length Across);

/// <summary>A part or left-over where it lies on its sheet.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="PartId">The part; empty for left-overs.</param>
/// <param name="Turn">How the part lies; none for left-overs.</param>
/// <param name="Place">Where it lies.</param>
/// <param name="Path">The way to its node: index of the slice in each division, from the root.</param>
public sealed record PlacedRectangle(FaceKind Kind, string PartId, Turn Turn, SheetRectangle Place, ImmutableArray<int> Path);

/// <summary>Turns the tree of a laid sheet into rectangles for drawing.</summary>
public static class SheetFace
{
    /// <summary>Every part and left-over of a sheet, in the order of the tree. Kerfs and dust are the gaps between them.</summary>
    /// <exception cref="ArgumentException">The sheet's stock is not in the instance.</exception>
    public static ImmutableArray<PlacedRectangle> Flatten(SheetInstance instance, LaidSheet sheet)
    {
        SheetStock stock = StockOf(instance, sheet);
        ImmutableArray<PlacedRectangle>.Builder found = ImmutableArray.CreateBuilder<PlacedRectangle>();
        foreach ((CutNode node, SheetRectangle place, ImmutableArray<int> path) in Nodes(sheet.Root, stock, instance.Kerf))
            switch (node)
            {
                case PartNode part: found.Add(new(FaceKind.Part, part.PartId, part.Turn, place, path)); break;
                case KeepNode: found.Add(new(FaceKind.Keep, "", Turn.None, place, path)); break;
                case WasteNode: found.Add(new(FaceKind.Waste, "", Turn.None, place, path)); break;
            }
        return found.ToImmutable();
    }

    internal static SheetStock StockOf(SheetInstance instance, LaidSheet sheet) =>
        instance.Stock.FirstOrDefault(s => s.Id == sheet.StockId)
        ?? throw new ArgumentException($"The sheet is laid on stock {sheet.StockId}, which the instance does not have.", nameof(sheet));

    /// <summary>Every node with its rectangle, parents before children, a slice and all that is in it before the next slice.</summary>
    internal static IEnumerable<(CutNode Node, SheetRectangle Place, ImmutableArray<int> Path)> Nodes(CutNode root, SheetStock stock, Length kerf)
    {
        var open = new Stack<(CutNode Node, SheetRectangle Place, ImmutableArray<int> Path)>();
        open.Push((root, new(Length.Zero, Length.Zero, stock.TruedAlong, stock.TruedAcross), []));
        while (open.TryPop(out (CutNode Node, SheetRectangle Place, ImmutableArray<int> Path) at))
        {
            yield return at;
            if (at.Node is not Division division) continue;
            var children = new List<(CutNode, SheetRectangle, ImmutableArray<int>)>(division.Slices.Length);
            Length from = Length.Zero;
            for (int i = 0; i < division.Slices.Length; i++)
            {
                Slice slice = division.Slices[i];
                SheetRectangle place = division.Axis == GrainAxis.Along
                    ? at.Place with { FromAlong = at.Place.FromAlong + from, Along = slice.Size }
                    : at.Place with { FromAcross = at.Place.FromAcross + from, Across = slice.Size };
                children.Add((slice.Content, place, at.Path.Add(i)));
                from += slice.Size + kerf;
            }
            for (int i = children.Count - 1; i >= 0; i--) open.Push(children[i]);
        }
    }
}
