using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Workings;

namespace Setout.Core.Fit;

/// <summary>
/// Sizes that must add up and no longer do, because of what was read. What somebody decided opens no chain, nor does what the instruments
/// of its readings explain, every one at its worst.
/// </summary>
internal static class ChainCheck
{
    public static IEnumerable<Finding> Of(ReadingBench bench)
    {
        WhatIf? walk = null;
        foreach (ClosedChain chain in bench.Set.Chains)
        {
            // Less than half a step can neither be set nor seen: two readings of the same wood differ by more.
            if (chain.Misfit(bench.Set.Worked) is not { } misfit || misfit.Abs() <= bench.Set.Grid.Step.ToExact() / 2) continue;
            walk ??= new WhatIf(bench.Spreads);
            List<(Worked Read, Rational Times)> readings = [.. Readings(bench, chain, walk)];
            if (readings.All(r => r.Read.Over.Sign == 0)) continue;
            ExactLength explained = readings.Aggregate(ExactLength.Zero, (sum, r) => sum + (bench.AccuracyOf(r.Read) * (r.Times.Sign < 0 ? -r.Times : r.Times)));
            if (misfit.Abs() <= explained) continue;
            string way = misfit.Sign > 0 ? "longer than" : "short of";
            yield return bench.Finding("chain.open", Severity.Warn, chain.Whole, $"{chain.Name}: the parts are {bench.Say(misfit.Abs())} {way} the whole.",
                Next(bench, chain, readings));
        }
    }

    /// <summary>The readings that bear on how the chain closes, and how much. What enters on both sides alike does not.</summary>
    private static IEnumerable<(Worked Read, Rational Times)> Readings(ReadingBench bench, ClosedChain chain, WhatIf walk)
    {
        ImmutableArray<(QuantityKey, Rational)> sum = [(chain.Whole, -Rational.One), .. chain.Terms.Where(t => t.Of is not null).Select(t => (t.Of!.Value, t.Times))];
        return walk.WorkedFrom(sum).Where(r => r.Value.Sign != 0).OrderBy(r => r.Key)
            .Select(r => (bench.Set.Worked.Values.GetValueOrDefault(r.Key)!, r.Value)).Where(r => r.Item1?.Pin is { IsFact: false });
    }

    /// <summary>First what nobody has read; when all is read, the one read with the coarsest instrument, of those the one read longest ago.</summary>
    private static string Next(ReadingBench bench, ClosedChain chain, List<(Worked Read, Rational Times)> readings)
    {
        bool IsUnread(QuantityKey key) => bench.Set.Worked.Values.TryGetValue(key, out Worked? worked) && worked.Pin is null;
        if (IsUnread(chain.TakesUp)) return $"A reading moved one of them. Measure {bench.Named(chain.TakesUp)} next.";
        QuantityKey? unread = chain.Terms.Where(t => t.Of is not null).Select(t => (Key: t.Of!.Value, t.Times)).Append((Key: chain.Whole, Times: -Rational.One)).Where(t => IsUnread(t.Key))
            .Select(t => (t.Key, Range: bench.RangeOf(t.Key) * (t.Times.Sign < 0 ? -t.Times : t.Times)))
            .Where(t => t.Range.Sign > 0).OrderByDescending(t => t.Range).Select(t => (QuantityKey?)t.Key).FirstOrDefault();
        if (unread is { } next) return $"A reading moved one of them. Measure {bench.Named(next)} next.";
        Worked oldest = readings.OrderByDescending(r => bench.AccuracyOf(r.Read)).ThenBy(r => r.Read.Pin!.Position).ThenBy(r => r.Read.Quantity.Key).First().Read;
        return $"All of them are read. Measure {bench.Named(oldest.Quantity.Key)} again: of the coarsest readings it is the oldest.";
    }
}
