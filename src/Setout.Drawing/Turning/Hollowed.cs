using System.Collections.Immutable;

namespace Setout.Drawing.Turning;

/// <summary>
/// A block with holes, grooves and notches, as blocks without any beside one another: each of them is painted in its turn, so that what stands in a hole is seen through it.
/// They keep together when parts are moved apart, and where two meet in one flat face there is no line.
/// </summary>
public static class Hollowed
{
    // Closer than this two planes are one, in millimetres.
    private const double Same = 1e-6;

    /// <summary>The block itself where nothing is taken out of it; none where nothing is left.</summary>
    /// <param name="whole">The block.</param>
    /// <param name="taken">What is taken out, along the axes of the piece; may reach beyond it.</param>
    public static ImmutableArray<Block> Of(Block whole, IEnumerable<(Spot Low, Spot High)> taken)
    {
        (Spot Low, Spot High)[] holes = [.. taken.Where(t => Enumerable.Range(0, 3).All(a => Math.Min(t.High[a], whole.High[a]) - Math.Max(t.Low[a], whole.Low[a]) > Same))];
        if (holes.Length == 0) return [whole];
        double[][] planes = [.. Enumerable.Range(0, 3).Select(a => Planes(whole, holes, a))];
        var cells = new Cells(planes, holes);
        return [.. cells.Boxes().Select(b => whole with
        {
            Low = cells.At(b.Low),
            High = cells.At(b.High),
            Around = new(Middle(whole, 0), Middle(whole, 1), Middle(whole, 2)),
            Edges = [.. cells.EdgesOf(b.Low, b.High)],
        })];
    }

    private static double Middle(Block block, int axis) => (block.Low[axis] + block.High[axis]) / 2;

    private static double[] Planes(Block whole, (Spot Low, Spot High)[] holes, int axis)
    {
        var planes = new List<double>();
        foreach (double at in holes.SelectMany(h => new[] { h.Low[axis], h.High[axis] }).Append(whole.Low[axis]).Append(whole.High[axis]).Where(p => p >= whole.Low[axis] && p <= whole.High[axis]).Order())
            if (planes.Count == 0 || at - planes[^1] > Same) planes.Add(at);
        return [.. planes];
    }

    private readonly record struct Cell(int X, int Y, int Z)
    {
        public int this[int axis] => axis switch { 0 => X, 1 => Y, _ => Z };

        public Cell With(int axis, int at) => axis switch { 0 => this with { X = at }, 1 => this with { Y = at }, _ => this with { Z = at } };
    }

    private sealed class Cells(double[][] planes, (Spot Low, Spot High)[] holes)
    {
        private readonly bool[,,] _isThere = Fill(planes, holes);

        private static bool[,,] Fill(double[][] planes, (Spot Low, Spot High)[] holes)
        {
            var there = new bool[planes[0].Length - 1, planes[1].Length - 1, planes[2].Length - 1];
            for (int x = 0; x < there.GetLength(0); x++)
                for (int y = 0; y < there.GetLength(1); y++)
                    for (int z = 0; z < there.GetLength(2); z++)
                    {
                        var middle = new Spot((planes[0][x] + planes[0][x + 1]) / 2, (planes[1][y] + planes[1][y + 1]) / 2, (planes[2][z] + planes[2][z + 1]) / 2);
                        there[x, y, z] = !holes.Any(h => Enumerable.Range(0, 3).All(a => middle[a] > h.Low[a] && middle[a] < h.High[a]));
                    }
            return there;
        }

        public Spot At(Cell corner) => new(planes[0][corner.X], planes[1][corner.Y], planes[2][corner.Z]);

        private bool IsThere(Cell cell)
        {
            for (int axis = 0; axis < 3; axis++)
                if (cell[axis] < 0 || cell[axis] >= _isThere.GetLength(axis)) return false;
            return _isThere[cell.X, cell.Y, cell.Z];
        }

        /// <summary>Few boxes that fill it: each grown from the first cell that is left, along X, then Y, then Z.</summary>
        public IEnumerable<(Cell Low, Cell High)> Boxes()
        {
            var left = (bool[,,])_isThere.Clone();
            bool IsLeft(Cell from, Cell to)
            {
                for (int x = from.X; x < to.X; x++)
                    for (int y = from.Y; y < to.Y; y++)
                        for (int z = from.Z; z < to.Z; z++)
                            if (!left[x, y, z]) return false;
                return true;
            }
            for (int z = 0; z < left.GetLength(2); z++)
                for (int y = 0; y < left.GetLength(1); y++)
                    for (int x = 0; x < left.GetLength(0); x++)
                    {
                        if (!left[x, y, z]) continue;
                        Cell low = new(x, y, z), high = new(x + 1, y + 1, z + 1);
                        for (int axis = 0; axis < 3; axis++)
                            while (high[axis] < left.GetLength(axis) && IsLeft(low.With(axis, high[axis]), high.With(axis, high[axis] + 1))) high = high.With(axis, high[axis] + 1);
                        for (int i = low.X; i < high.X; i++)
                            for (int j = low.Y; j < high.Y; j++)
                                for (int k = low.Z; k < high.Z; k++) left[i, j, k] = false;
                        yield return (low, high);
                    }
        }

        /// <summary>What of the twelve edges of a box is an edge of the whole.</summary>
        public IEnumerable<BlockEdge> EdgesOf(Cell low, Cell high)
        {
            for (int along = 0; along < 3; along++)
            {
                (int u, int v) = (along == 0 ? 1 : 0, along == 2 ? 1 : 2);
                foreach ((bool isHighU, bool isHighV) in new[] { (false, false), (true, false), (false, true), (true, true) })
                {
                    Cell start = low.With(u, isHighU ? high[u] : low[u]).With(v, isHighV ? high[v] : low[v]);
                    for (int at = low[along]; at < high[along]; at++)
                    {
                        int from = at;
                        while (at < high[along] && IsEdge(start.With(along, at), u, v)) at++;
                        if (at > from) yield return new((2 * u) + (isHighU ? 1 : 0), (2 * v) + (isHighV ? 1 : 0), At(start.With(along, from)), At(start.With(along, at)));
                    }
                }
            }
        }

        // Round a line between four cells: an edge where one or three are there, or two across from each other.
        private bool IsEdge(Cell at, int u, int v)
        {
            bool a = IsThere(at), b = IsThere(at.With(u, at[u] - 1)), c = IsThere(at.With(v, at[v] - 1)), d = IsThere(at.With(u, at[u] - 1).With(v, at[v] - 1));
            int there = (a ? 1 : 0) + (b ? 1 : 0) + (c ? 1 : 0) + (d ? 1 : 0);
            return there is 1 or 3 || (there == 2 && a == d);
        }
    }
}
