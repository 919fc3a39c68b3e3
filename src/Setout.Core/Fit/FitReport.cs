using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Workings;

namespace Setout.Core.Fit;

/// <summary>How one gap stands.</summary>
/// <param name="Gap">Which, with its limits.</param>
/// <param name="Now">What it may come to when all is cut by the plan as it stands.</param>
/// <param name="Chance">The chance that it lands within its limits then.</param>
/// <param name="Measured">What it may come to when what is to be measured first has been.</param>
/// <param name="ChanceMeasured">The chance that it lands within its limits then.</param>
public sealed record GapFit(Gap Gap, Spread Now, Chance Chance, Spread Measured, Chance ChanceMeasured)
{
    /// <summary>The causes that move it most, the largest first; as it stands now.</summary>
    public IEnumerable<Effect> Largest => Now.Effects.OrderByDescending(e => e.Range).ThenBy(e => e.Cause.Id, StringComparer.Ordinal);
}

/// <summary>How several gaps stand together: those of a bank, or all.</summary>
/// <param name="Key">The key of the opening; empty for the whole piece.</param>
/// <param name="Gaps">How many gaps.</param>
/// <param name="Chance">The chance that all of them land within their limits the first time, by the plan as it stands.</param>
/// <param name="ChanceMeasured">The same when what is to be measured first has been.</param>
/// <param name="Right">How many of them come right the first time, on the average: the sum of their chances, whatever they have to do with one another.</param>
/// <param name="RightMeasured">The same when what is to be measured first has been.</param>
public sealed record GroupFit(string Key, int Gaps, Chance Chance, Chance ChanceMeasured, Estimate Right, Estimate RightMeasured);

/// <summary>Something worth reading before more is cut.</summary>
/// <param name="Key">What to read.</param>
/// <param name="Name">For people.</param>
/// <param name="Instrument">What it is best read with.</param>
/// <param name="Gaps">How many gaps it bears on.</param>
/// <param name="MoreFit">How many more gaps come right the first time, on the average, by this reading after those above it.</param>
/// <param name="ChanceThen">The chance of the whole piece once this and those above it are read.</param>
/// <param name="RightThen">How many gaps of the whole piece come right the first time then, on the average.</param>
/// <param name="Kind">What sort of reading it is.</param>
public sealed record MeasureFirst(QuantityKey Key, string Name, string Instrument, int Gaps, Estimate MoreFit, Chance ChanceThen, Estimate RightThen, MeasureKind Kind);

/// <summary>What sort of reading is to be taken first.</summary>
public enum MeasureKind
{
    /// <summary>Of something that is there: wood, slides, an opening.</summary>
    Reading,

    /// <summary>The same, and parts wait for it: it will be read whatever it brings.</summary>
    Awaited,

    /// <summary>Of the first part cut at a setting, so that the stop is set right before the rest is cut.</summary>
    FirstCut,
}

/// <summary>An allowance that somebody chooses, and the one that would suit this shop best.</summary>
/// <param name="Key">The quantity.</param>
/// <param name="Name">For people.</param>
/// <param name="Kept">What is kept now.</param>
/// <param name="Best">What would be best, on steps of half the grid.</param>
/// <param name="FitKept">How many of its gaps come right on the average, of <paramref name="Gaps"/>, as it is kept.</param>
/// <param name="FitBest">The same with the best.</param>
/// <param name="Gaps">How many gaps it decides.</param>
public sealed record AllowanceAdvice(QuantityKey Key, string Name, ExactLength Kept, ExactLength Best, Estimate FitKept, Estimate FitBest, int Gaps);

/// <summary>What will fit, before it is cut. Immutable; the same inputs give the same report.</summary>
/// <param name="Gaps">All gaps, in the order they were set out.</param>
/// <param name="Groups">The openings with fillings, in order.</param>
/// <param name="Whole">All gaps together.</param>
/// <param name="Measure">What to read first, the most useful first.</param>
/// <param name="Allowances">Allowances with the best for this shop.</param>
public sealed record FitReport(
    ImmutableArray<GapFit> Gaps, ImmutableArray<GroupFit> Groups, GroupFit Whole, ImmutableArray<MeasureFirst> Measure, ImmutableArray<AllowanceAdvice> Allowances);
