using System.Buffers;
using System.Collections.Immutable;
using Setout.Core.Measures;

namespace Setout.Core.Fit;

/// <summary>
/// The distribution of a sum of independent uniform errors, with a proven bound.
/// <para>Idea: a peaked (triangular) error is the sum of two even ones of half its width, so every sum here is one of uniforms. Adding a uniform of
/// width w turns the distribution function F into its mean over the last w: F'(x) = (1/w) * integral of F from x-w to x (textbook: convolution; the closed
/// form is that of Irwin, 1927, and Hall, 1927, which loses all digits to cancellation for many terms and is used in the tests for few).
/// The uniforms are taken widest first. The first two give their exact trapezoid; from there F is held at the points of a lattice, straight in
/// between, and each mean of such a polyline is exact for any width, on the lattice or off it: nothing is rounded to the lattice.</para>
/// <para>Bound: taking a mean never makes an error larger. So the only errors are those of holding F as a polyline, once a step, and they add up. F rises
/// by no more than L = 1/w1 and bends by no more than M = L*p, where p is the greatest density of all but the widest: the slope of the density is the difference of two of its
/// values over w1. And p is at most 1/w2, and at most root 2 over the root of the sum of the squared widths (Ball, "Cube slicing in R^n", 1986). A polyline of
/// step h is then off by M*h*h/8 and by L*h/4 at most. Uniforms narrower than h are not stepped through: together they have standard deviation s, and leaving them
/// out (but for their mean) moves F by at most M*s*s/2 and by at most L*s. The arithmetic of doubles adds less than N*N/2^52 a step for N cells.</para>
/// <para>The bound is known before the work, so the lattice is made just fine enough for it. It cannot do causes that depend on each other, nor minima and maxima.</para>
/// </summary>
internal sealed class SumOfUniforms
{
    private const int FewestCells = 256, MostCells = 16384;

    // Two ends of a window: a chance is then good to twice this.
    private const double Wanted = 0.00025;

    // All widths are shares of the whole range, so that neither huge nor tiny lengths leave the range of a double.
    private readonly double _range, _start, _cell, _first;
    private readonly double[] _values;

    private SumOfUniforms(double range, double start, double cell, double first, double[] values, double error) =>
        (_range, _start, _cell, _first, _values, Error) = (range, start, cell, first, values, error);

    /// <summary>How far <see cref="Below"/> may be off: no more than this.</summary>
    public double Error { get; }

    /// <summary>Makes the distribution of effects whose ranges add up to <paramref name="range"/>, more than zero.</summary>
    public static SumOfUniforms Of(ImmutableArray<Effect> effects, ExactLength range)
    {
        double whole = range.Ticks.ToDouble();
        double[] widths = Widths(effects, whole);
        int cells = FewestCells;
        Plan plan = Plan.Of(widths, cells);
        while (plan.Error > Wanted && cells < MostCells) plan = Plan.Of(widths, cells *= 2);
        double start = widths.AsSpan(plan.Kept).ToArray().Sum() / 2;
        double first = widths[0], cell = plan.Cell;
        if (plan.Kept == 1) return new(whole, start, cell, first, [], plan.Error);
        double[] values = Trapezoid(first, widths[1], cell, cells);
        double[] sums = ArrayPool<double>.Shared.Rent(cells + 1);
        double reach = first + widths[1];
        for (int i = 2; i < plan.Kept; i++)
        {
            reach += widths[i];
            Average(values, sums.AsSpan(0, cells + 1), widths[i] / cell, Math.Min(cells, (int)Math.Ceiling(reach / cell)));
        }
        ArrayPool<double>.Shared.Return(sums);
        return new(whole, start, cell, first, values, plan.Error);
    }

    /// <summary>The chance of less than so much above the worst low, within <see cref="Error"/>.</summary>
    public double Below(ExactLength aboveLow)
    {
        double x = (aboveLow.Ticks.ToDouble() / _range) - _start;
        if (x <= 0) return 0;
        if (_values.Length == 0) return Math.Min(1, x / _first);
        double at = x / _cell;
        int cell = (int)Math.Min(at, _values.Length);
        return cell >= _values.Length - 1 ? 1 : _values[cell] + ((at - cell) * (_values[cell + 1] - _values[cell]));
    }

    private static double[] Widths(ImmutableArray<Effect> effects, double whole)
    {
        var widths = new List<double>(effects.Length * 2);
        foreach (Effect effect in effects)
        {
            double width = effect.Range.Ticks.ToDouble() / whole;
            if (width <= 0) continue;
            if (effect.Cause.Shape == Shape.Even) widths.Add(width);
            else widths.AddRange([width / 2, width / 2]);
        }
        widths.Sort(static (a, b) => b.CompareTo(a));
        return [.. widths];
    }

    /// <summary>How many uniforms are stepped through, on what cell, with what bound.</summary>
    private readonly record struct Plan(int Kept, double Cell, double Error)
    {
        public static Plan Of(double[] widths, int cells)
        {
            double total = widths.Sum();
            int kept = 1;
            while (kept < widths.Length && widths[kept] >= total / cells) kept++;
            double reach = 0, squares = 0;
            for (int i = 0; i < widths.Length; i++)
            {
                if (i < kept) reach += widths[i];
                else squares += widths[i] * widths[i] / 12;
            }
            double cell = reach / cells, rise = 1 / widths[0], bend = double.PositiveInfinity, others = 0, polyline = 0;
            for (int i = 1; i < kept; i++)
            {
                others += widths[i] * widths[i];
                bend = rise * Math.Min(1 / widths[1], Math.Sqrt(2 / others));
                polyline += Math.Min(rise * cell / 4, bend * cell * cell / 8);
            }
            double leftOut = squares > 0 ? Math.Min(rise * Math.Sqrt(squares), bend * squares / 2) : 0;
            double arithmetic = ((double)cells * cells * kept / (1L << 52)) + (widths.Length * 1e-14);
            return new(kept, cell, polyline + leftOut + arithmetic);
        }
    }

    /// <summary>The distribution function of the sum of two uniforms at the points of the lattice, exact but for the arithmetic.</summary>
    private static double[] Trapezoid(double wide, double narrow, double cell, int cells)
    {
        var values = new double[cells + 1];
        for (int j = 0; j <= cells; j++)
            values[j] = j * cell >= wide + narrow ? 1 : (Area(j * cell, wide) - Area((j * cell) - narrow, wide)) / narrow;
        return values;
    }

    /// <summary>The integral of the distribution function of one uniform from 0 to <paramref name="width"/>.</summary>
    private static double Area(double x, double width) => x <= 0 ? 0 : x <= width ? x * x / (2 * width) : x - (width / 2);

    /// <summary>Each value up to <paramref name="reach"/> becomes the mean of the polyline over the last <paramref name="width"/> cells (one or more, not always whole).</summary>
    private static void Average(Span<double> values, Span<double> sums, double width, int reach)
    {
        double sum = 0, last = values[0];
        for (int j = 0; j <= reach; j++)
        {
            double value = values[j];
            sum += (last + value) / 2;
            sums[j] = sum;
            last = value;
        }
        int whole = (int)width;
        double part = width - whole, scale = 1 / width, ofUpper = part - (part * part / 2), ofLower = part * part / 2;
        // From above, because a value looks only at values below it.
        for (int j = reach, c = reach - whole - 1; c >= 0; j--, c--)
            values[j] = (sums[j] - sums[c + 1] + (ofUpper * values[c + 1]) + (ofLower * values[c])) * scale;
        for (int j = Math.Min(whole, reach); j >= 0; j--) values[j] = sums[j] * scale;
    }
}
