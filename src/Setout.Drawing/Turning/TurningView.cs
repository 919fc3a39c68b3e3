using System.Collections.Immutable;
using Setout.Drawing.Elevations;
using Setout.Drawing.Scenes;

namespace Setout.Drawing.Turning;

/// <summary>
/// A piece as it is seen from anywhere, in ink lines, without perspective: equal edges stay equal wherever they stand. Blocks are painted from the farthest to the nearest. The script of the
/// workbench does the same sums while a hand turns the piece; this one draws what is printed and what is seen without a script.
/// </summary>
public static class TurningView
{
    // Corners of each face in turn, as bits: 1 high in X, 2 high in Y, 4 high in Z.
    private static readonly int[][] s_faces = [[0, 4, 6, 2], [1, 3, 7, 5], [0, 1, 5, 4], [2, 6, 7, 3], [0, 2, 3, 1], [4, 5, 7, 6]];

    /// <summary>Draws it as large as the paper lets it stand from every side, so that it keeps its size while it is turned.</summary>
    public static Scene Draw(TurningInput input, Standpoint from, PaperBox paper)
    {
        (ImmutableArray<(Spot Low, Spot High)> boxes, ImmutableArray<int> order, Eye eye) = Sorted(input.Blocks, from);
        Spot middle = Middle(input.Blocks);
        double scale = Math.Min(paper.Width, paper.Height) / (2 * Reach(boxes, middle));
        Point At(Spot spot)
        {
            (double right, double up, _) = eye.Of(new(spot.X - middle.X, spot.Y - middle.Y, spot.Z - middle.Z));
            return new((paper.Width / 2) + (right * scale), (paper.Height / 2) - (up * scale));
        }
        return new(paper.Width, paper.Height, input.Title, input.Description,
        [
            .. order.Select(i => new GroupItem(input.Blocks[i].Key, input.Blocks[i].Title,
                Drawn(input.Blocks[i], boxes[i], Off(input.Blocks[i], middle, from.Clamped().Apart), [.. Seen(eye)], At))),
        ]);
    }

    private static ImmutableArray<SceneItem> Drawn(Block block, (Spot Low, Spot High) box, Spot off, int[] seen, Func<Spot, Point> at)
    {
        bool isWhole = block.Around is null;
        return
        [
            .. seen.Select(face => new ShapeItem([.. s_faces[face].Select(c => at(Corner(box, c)))], isWhole ? Ink.Part : null, block.Wash)),
            .. block.Edges.Where(e => seen.Contains(e.Face) || seen.Contains(e.Other)).Select(e => new LineItem(at(e.From.Plus(off)), at(e.To.Plus(off)), Ink.Part)),
        ];
    }

    /// <summary>The blocks by their numbers, from the one painted first to the one painted last.</summary>
    public static ImmutableArray<int> Order(ImmutableArray<Block> blocks, Standpoint from) => Sorted(blocks, from).Order;

    private static (ImmutableArray<(Spot Low, Spot High)> Boxes, ImmutableArray<int> Order, Eye Eye) Sorted(ImmutableArray<Block> blocks, Standpoint from)
    {
        from = from.Clamped();
        Spot middle = Middle(blocks);
        ImmutableArray<(Spot Low, Spot High)> boxes = [.. blocks.Select(b => Apart(b, middle, from.Apart))];
        var eye = new Eye(from);
        return (boxes, PaintingOrder.Of(boxes, eye), eye);
    }

    private static (Spot Low, Spot High) Apart(Block block, Spot middle, double apart)
    {
        Spot off = Off(block, middle, apart);
        return (block.Low.Plus(off), block.High.Plus(off));
    }

    // The middle of each member goes away from that of the piece; what does not touch keeps not touching.
    private static Spot Off(Block block, Spot middle, double apart)
    {
        double Of(int axis) => ((block.Around?[axis] ?? ((block.Low[axis] + block.High[axis]) / 2)) - middle[axis]) * apart;
        return new(Of(0), Of(1), Of(2));
    }

    private static Spot Middle(ImmutableArray<Block> blocks)
    {
        double Of(int axis) => (blocks.Min(b => b.Low[axis]) + blocks.Max(b => b.High[axis])) / 2;
        return new(Of(0), Of(1), Of(2));
    }

    private static double Reach(ImmutableArray<(Spot Low, Spot High)> boxes, Spot middle)
    {
        double Of(int axis) => Math.Max(boxes.Max(b => b.High[axis]) - middle[axis], middle[axis] - boxes.Min(b => b.Low[axis]));
        return Math.Sqrt((Of(0) * Of(0)) + (Of(1) * Of(1)) + (Of(2) * Of(2)));
    }

    private static IEnumerable<int> Seen(Eye eye)
    {
        for (int axis = 0; axis < 3; axis++)
        {
            // A face is seen from the side that it looks to; edge on it is a line that its neighbours have already.
            if (eye.Sight[axis] > Eye.EdgeOn) yield return 2 * axis;
            else if (eye.Sight[axis] < -Eye.EdgeOn) yield return (2 * axis) + 1;
        }
    }

    internal static Spot Corner((Spot Low, Spot High) box, int bits) =>
        new((bits & 1) == 0 ? box.Low.X : box.High.X, (bits & 2) == 0 ? box.Low.Y : box.High.Y, (bits & 4) == 0 ? box.Low.Z : box.High.Z);
}

/// <summary>The three directions of a standpoint.</summary>
internal sealed class Eye
{
    /// <summary>What counts as looking along a face.</summary>
    public const double EdgeOn = 1e-6;

    private readonly double _sinTurn, _cosTurn, _sinTip, _cosTip;

    public Eye(Standpoint from)
    {
        (_sinTurn, _cosTurn) = Math.SinCos(from.Turn * Math.PI / 180);
        (_sinTip, _cosTip) = Math.SinCos(from.Tip * Math.PI / 180);
        Sight = new(-_sinTurn * _cosTip, _cosTurn * _cosTip, -_sinTip);
    }

    /// <summary>The direction in which one looks.</summary>
    public Spot Sight { get; }

    /// <summary>A place by how far right, how far up and how far away it is.</summary>
    public (double Right, double Up, double Far) Of(Spot spot)
    {
        double right = (spot.X * _cosTurn) + (spot.Y * _sinTurn), back = (spot.Y * _cosTurn) - (spot.X * _sinTurn);
        return (right, (spot.Z * _cosTip) + (back * _sinTip), (back * _cosTip) - (spot.Z * _sinTip));
    }
}
