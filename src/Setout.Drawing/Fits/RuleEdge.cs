using Setout.Core.Measures;
using Setout.Core.Measures.Text;

namespace Setout.Drawing.Fits;

/// <summary>The strokes of a rule: the finest division that can still be told apart on the paper, longer strokes where a rule has them.</summary>
/// <param name="Step">From stroke to stroke.</param>
/// <param name="Unit">Whose rule it is.</param>
internal readonly record struct RuleEdge(ExactLength Step, LengthUnit Unit)
{
    /// <summary>The longest stroke.</summary>
    public const double Longest = 2.6;

    /// <summary>Strokes nearer than this run together at arm's length; common practice, no source.</summary>
    private const double LeastApart = 1.2;

    private static readonly ExactLength[] s_inch = [.. new[] { 64, 32, 16, 8, 4, 2, 1 }.Select(d => ExactLength.FromInches(Rational.Of(1, d)))];

    private static readonly ExactLength[] s_metric = [.. new[] { Rational.Of(1, 10), Rational.Of(1, 2), 1, 5, 10, 50, 100 }.Select(ExactLength.FromMillimetres)];

    /// <summary>The edge for a scale.</summary>
    /// <param name="unit">Inches divided in halves, or millimetres.</param>
    /// <param name="scale">Paper millimetres for one of wood.</param>
    public static RuleEdge For(LengthUnit unit, double scale)
    {
        ExactLength[] steps = unit == LengthUnit.Inch ? s_inch : s_metric;
        ExactLength step = steps.FirstOrDefault(s => s.ApproximateMillimetres * scale >= LeastApart, steps[^1]);
        return new(step, unit);
    }

    /// <summary>How long the stroke at so many steps from nought is.</summary>
    public double Stroke(long steps)
    {
        if (Unit == LengthUnit.Inch) return steps % 8 == 0 ? Longest : steps % 4 == 0 ? 2 : steps % 2 == 0 ? 1.5 : 1;
        return steps % 10 == 0 ? Longest : steps % 5 == 0 ? 1.8 : 1;
    }
}
