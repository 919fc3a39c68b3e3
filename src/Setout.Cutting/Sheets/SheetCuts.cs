using System.Collections.Immutable;
using Setout.Core.Measures;

namespace Setout.Cutting.Sheets;

/// <summary>What a step of cutting does.</summary>
public enum CutStepKind
{
    /// <summary>Trues one edge of the untrimmed stock.</summary>
    Trim,

    /// <summary>Divides a blank into slices.</summary>
    Divide,
}

/// <summary>One step of breaking a sheet down: all cuts of one division, or the truing of one edge.</summary>
/// <param name="Kind">What it does.</param>
/// <param name="Stage">0 for truing, 1 for divisions of the trued sheet, 2 for divisions of its slices, and so on.</param>
/// <param name="Axis">The direction the positions are measured in; the blade runs the other way. Across means rips.</param>
/// <param name="Blank">The rectangle that is cut, from the trued reference corner; for truing, the stock as it is before that cut.</param>
/// <param name="Path">The way to the blank's node: index of the slice in each division, from the root; empty for the whole sheet.</param>
/// <param name="Positions">
/// Where each cut's near side lies, from the blank's near edge, in order: running dimensions. The blade takes one kerf beyond each. For truing,
/// the distance of the trued edge from the blank's near edge: the blade then lies on the waste side of it.
/// </param>
public sealed record CutStep(CutStepKind Kind, int Stage, GrainAxis Axis, SheetRectangle Blank, ImmutableArray<int> Path, ImmutableArray<Length> Positions)
{
    /// <inheritdoc/>
    public bool Equals(CutStep? other) => other is not null && Kind == other.Kind && Stage == other.Stage && Axis == other.Axis
        && Blank == other.Blank && SameArrays.Equal(Path, other.Path) && SameArrays.Equal(Positions, other.Positions);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Kind, Stage, Axis, Blank, SameArrays.Hash(Path), SameArrays.Hash(Positions));
}

/// <summary>Lists the cuts of a laid sheet in an order a saw can follow.</summary>
public static class SheetCuts
{
    /// <summary>
    /// Truing first: the long-grain reference edge, the crosscut edge square to it, then the two opposite edges, each only if it has a trim.
    /// Then stage by stage, all divisions of a stage before the next, so that a blank exists before it is cut and like cuts lie together.
    /// </summary>
    /// <exception cref="ArgumentException">The sheet's stock is not in the instance.</exception>
    public static ImmutableArray<CutStep> InOrder(SheetInstance instance, LaidSheet sheet)
    {
        SheetStock stock = SheetFace.StockOf(instance, sheet);
        ImmutableArray<CutStep>.Builder steps = ImmutableArray.CreateBuilder<CutStep>();
        AddTrims(stock, steps);
        IEnumerable<CutStep> divisions = SheetFace.Nodes(sheet.Root, stock, instance.Kerf)
            .Where(n => n.Node is Division)
            .Select(n => Divide((Division)n.Node, n.Place, n.Path, instance.Kerf))
            .OrderBy(s => s.Stage); // stable: within a stage the order of the tree stays
        steps.AddRange(divisions);
        return steps.ToImmutable();
    }

    private static CutStep Divide(Division division, SheetRectangle blank, ImmutableArray<int> path, Length kerf)
    {
        ImmutableArray<Length>.Builder positions = ImmutableArray.CreateBuilder<Length>(division.Cuts);
        Length from = Length.Zero;
        for (int i = 0; i < division.Cuts; i++)
        {
            positions.Add(from + division.Slices[i].Size);
            from += division.Slices[i].Size + kerf;
        }
        return new(CutStepKind.Divide, path.Length + 1, division.Axis, blank, path, positions.ToImmutable());
    }

    private static void AddTrims(SheetStock stock, ImmutableArray<CutStep>.Builder steps)
    {
        EdgeTrim trim = stock.Trim;
        var blank = new SheetRectangle(-trim.AlongStart, -trim.AcrossStart, stock.Along, stock.Across);
        if (trim.AcrossStart.Sign > 0)
        {
            steps.Add(new(CutStepKind.Trim, 0, GrainAxis.Across, blank, [], [trim.AcrossStart]));
            blank = blank with { FromAcross = Length.Zero, Across = blank.Across - trim.AcrossStart };
        }
        if (trim.AlongStart.Sign > 0)
        {
            steps.Add(new(CutStepKind.Trim, 0, GrainAxis.Along, blank, [], [trim.AlongStart]));
            blank = blank with { FromAlong = Length.Zero, Along = blank.Along - trim.AlongStart };
        }
        if (trim.AcrossEnd.Sign > 0)
        {
            steps.Add(new(CutStepKind.Trim, 0, GrainAxis.Across, blank, [], [stock.TruedAcross]));
            blank = blank with { Across = stock.TruedAcross };
        }
        if (trim.AlongEnd.Sign > 0)
            steps.Add(new(CutStepKind.Trim, 0, GrainAxis.Along, blank, [], [stock.TruedAlong]));
    }
}
