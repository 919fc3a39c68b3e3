namespace Setout.Core.Craft;

/// <summary>
/// The four-sided frame that fits six distances best in the sense of least squares (Gauss and Newton), with the fourth corner lifted by a
/// given height. A stands in the origin, B on the x axis.
/// </summary>
internal sealed class FrameFit
{
    private static readonly (int From, int To)[] s_pairs = [(0, 1), (1, 2), (2, 3), (3, 0), (0, 2), (1, 3)];

    private readonly double[] _at;
    private readonly double _lift;

    private FrameFit(double[] at, double lift, double[] read)
    {
        _at = at;
        _lift = lift;
        Misfit = Enumerable.Range(0, 6).Max(i => Math.Abs(Length(s_pairs[i].From, s_pairs[i].To) - read[i]));
    }

    /// <summary>The largest disagreement of a reading with the fit, millimetres.</summary>
    public double Misfit { get; }

    /// <summary>Fits six readings: AB, BC, CD, DA, AC, BD, millimetres.</summary>
    public static FrameFit Of(double[] read, double lift)
    {
        // Bx, Cx, Cy, Dx, Dy; from the triangles A-B-C and A-B-D, which are off by the misfit at most.
        double ab = read[0];
        (double cx, double cy) = Apex(ab, read[4], read[1]);
        (double dx, double dy) = Apex(ab, Flat(read[3], lift), Flat(read[5], lift));
        double[] at = [ab, cx, cy, dx, dy];
        for (int round = 0; round < 30; round++)
        {
            var normal = new double[5, 6];
            for (int i = 0; i < 6; i++)
            {
                (int from, int to) = s_pairs[i];
                double length = Distance(at, lift, from, to), miss = read[i] - length;
                var slope = new double[5];
                Add(slope, to, (X(at, to) - X(at, from)) / length, (Y(at, to) - Y(at, from)) / length);
                Add(slope, from, -(X(at, to) - X(at, from)) / length, -(Y(at, to) - Y(at, from)) / length);
                for (int r = 0; r < 5; r++)
                {
                    for (int c = 0; c < 5; c++) normal[r, c] += slope[r] * slope[c];
                    normal[r, 5] += slope[r] * miss;
                }
            }
            double[] step = Solve(normal);
            for (int i = 0; i < 5; i++) at[i] += step[i];
            if (step.Max(Math.Abs) < 1e-12 * ab) break;
        }
        return new(at, lift, read);
    }

    /// <summary>The distance of two corners, 0 to 3 for A to D.</summary>
    public double Length(int from, int to) => Distance(_at, _lift, from, to);

    /// <summary>The four corner angles in degrees, seen along the plane.</summary>
    public double[] Corners() => [.. Enumerable.Range(0, 4).Select(i => Corner((i + 3) % 4, i, (i + 1) % 4))];

    private double Corner(int before, int at, int after)
    {
        double ax = X(_at, before) - X(_at, at), ay = Y(_at, before) - Y(_at, at), bx = X(_at, after) - X(_at, at), by = Y(_at, after) - Y(_at, at);
        return Math.Atan2(Math.Abs((ax * by) - (ay * bx)), (ax * bx) + (ay * by)) * 180 / Math.PI;
    }

    private static double X(double[] at, int corner) => corner switch { 1 => at[0], 2 => at[1], 3 => at[3], _ => 0 };

    private static double Y(double[] at, int corner) => corner switch { 2 => at[2], 3 => at[4], _ => 0 };

    private static double Distance(double[] at, double lift, int from, int to)
    {
        double x = X(at, to) - X(at, from), y = Y(at, to) - Y(at, from), z = from == 3 || to == 3 ? lift : 0;
        return Math.Sqrt((x * x) + (y * y) + (z * z));
    }

    private static void Add(double[] slope, int corner, double x, double y)
    {
        if (corner == 1) slope[0] += x;
        if (corner == 2) (slope[1], slope[2]) = (slope[1] + x, slope[2] + y);
        if (corner == 3) (slope[3], slope[4]) = (slope[3] + x, slope[4] + y);
    }

    private static double Flat(double length, double lift) => Math.Sqrt(Math.Max((length * length) - (lift * lift), length * length / 4));

    /// <summary>Where a corner stands that is so far from A and so far from B.</summary>
    private static (double X, double Y) Apex(double ab, double fromA, double fromB)
    {
        double x = ((ab * ab) + (fromA * fromA) - (fromB * fromB)) / (2 * ab);
        return (x, Math.Sqrt(Math.Max((fromA * fromA) - (x * x), fromA * fromA * 1e-6)));
    }

    /// <summary>Gauss elimination with pivots; the matrix has the right side as its last column.</summary>
    private static double[] Solve(double[,] m)
    {
        for (int c = 0; c < 5; c++)
        {
            int pivot = Enumerable.Range(c, 5 - c).MaxBy(r => Math.Abs(m[r, c]));
            for (int k = 0; k < 6; k++) (m[c, k], m[pivot, k]) = (m[pivot, k], m[c, k]);
            for (int r = 0; r < 5; r++)
            {
                if (r == c) continue;
                double times = m[r, c] / m[c, c];
                for (int k = c; k < 6; k++) m[r, k] -= times * m[c, k];
            }
        }
        return [.. Enumerable.Range(0, 5).Select(i => m[i, 5] / m[i, i])];
    }
}

/// <summary>Four points in space from their six distances.</summary>
internal static class Tetrahedron
{
    /// <summary>
    /// The height of D over the plane of A, B and C, millimetres; 0 when the distances are not possible in space. Placed by coordinates, which is
    /// the same as the determinant of Cayley and Menger and rounds better for flat figures.
    /// </summary>
    public static double Height(double[] read)
    {
        (double ab, double bc, double cd, double da, double ac, double bd) = (read[0], read[1], read[2], read[3], read[4], read[5]);
        double cx = ((ab * ab) + (ac * ac) - (bc * bc)) / (2 * ab), cy = Math.Sqrt((ac * ac) - (cx * cx));
        double dx = ((ab * ab) + (da * da) - (bd * bd)) / (2 * ab);
        double dy = ((da * da) - (cd * cd) + (cx * cx) + (cy * cy) - (2 * cx * dx)) / (2 * cy);
        double squared = (da * da) - (dx * dx) - (dy * dy);
        return squared > 0 ? Math.Sqrt(squared) : 0;
    }
}
