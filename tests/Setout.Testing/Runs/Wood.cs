using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Cutting.Runs;
using Setout.Cutting.Sheets;

namespace Setout.Testing.Runs;

/// <summary>One side of a blank on the bench.</summary>
/// <param name="Margin">What goes off before it is true, in ticks.</param>
/// <param name="Run">The run that made it true, 0 for true from the start, null while it is raw.</param>
internal readonly record struct WoodSide(long Margin, int? Run);

/// <summary>A blank on the bench, as the simulator knows it: in ticks, from the corner of its untrimmed stock.</summary>
internal sealed record Wood(int Material, int Stock, long FromAlong, long FromAcross, long Along, long Across)
{
    // In the order of BlankSide.
    public required ImmutableArray<WoodSide> Sides { get; init; }

    /// <summary>From the near end of this blank.</summary>
    public ImmutableArray<(long From, long To)> Flaws { get; init; } = [];

    /// <summary>What narrower blades than the layout reckons with have spared in each direction, so that a margin may be wider by it.</summary>
    public long SparedAlong { get; init; }

    public long SparedAcross { get; init; }

    /// <summary>The run that made it; 0 for stock.</summary>
    public int MadeBy { get; init; }

    public Int128 Area => (Int128)Along * Across;

    public WoodSide Side(BlankSide side) => Sides[(int)side];

    public long Extent(GrainAxis axis) => axis == GrainAxis.Along ? Along : Across;

    public long Spared(GrainAxis axis) => axis == GrainAxis.Along ? SparedAlong : SparedAcross;

    /// <summary>What is left in a direction once both sides are true.</summary>
    public long Counted(GrainAxis axis) => Extent(axis) - Side(Near(axis)).Margin - Side(Far(axis)).Margin;

    public static BlankSide Near(GrainAxis axis) => axis == GrainAxis.Along ? BlankSide.NearEnd : BlankSide.NearEdge;

    public static BlankSide Far(GrainAxis axis) => axis == GrainAxis.Along ? BlankSide.FarEnd : BlankSide.FarEdge;

    public static GrainAxis Other(GrainAxis axis) => axis == GrainAxis.Along ? GrainAxis.Across : GrainAxis.Along;

    public static GrainAxis AxisOf(BlankSide side) => side is BlankSide.NearEdge or BlankSide.FarEdge ? GrainAxis.Across : GrainAxis.Along;

    public static long Margin(EdgeTrim trim, BlankSide side) => (side switch
    {
        BlankSide.NearEdge => trim.AcrossStart,
        BlankSide.FarEdge => trim.AcrossEnd,
        BlankSide.NearEnd => trim.AlongStart,
        _ => trim.AlongEnd,
    }).Ticks;

    public static string Mm(long ticks) => Length.FromTicks(ticks).ToString();

    public override string ToString() => $"{Mm(Along)} by {Mm(Across)}";

    /// <summary>The piece from <paramref name="start"/> on along the axis, with what the blade left of margins and flaws.</summary>
    public Wood Piece(GrainAxis axis, long start, long extent, WoodSide near, WoodSide far, int run) => this with
    {
        FromAlong = FromAlong + (axis == GrainAxis.Along ? start : 0),
        FromAcross = FromAcross + (axis == GrainAxis.Across ? start : 0),
        Along = axis == GrainAxis.Along ? extent : Along,
        Across = axis == GrainAxis.Across ? extent : Across,
        Sides = Sides.SetItem((int)Near(axis), near).SetItem((int)Far(axis), far),
        Flaws = axis == GrainAxis.Across ? Flaws : Within(Flaws, start, start + extent, start),
        MadeBy = run,
    };

    /// <summary>Stretches cut off at both ends, joined where they touch, measured from a new start.</summary>
    public static ImmutableArray<(long From, long To)> Within(IEnumerable<(long From, long To)> stretches, long from, long to, long start)
    {
        ImmutableArray<(long From, long To)>.Builder found = ImmutableArray.CreateBuilder<(long From, long To)>();
        foreach ((long f, long t) in stretches.Select(s => (From: Math.Max(s.From, from), To: Math.Min(s.To, to))).Where(s => s.From < s.To).Order())
        {
            if (found.Count > 0 && found[^1].To >= f - start) found[^1] = (found[^1].From, Math.Max(found[^1].To, t - start));
            else found.Add((f - start, t - start));
        }
        return found.ToImmutable();
    }
}
