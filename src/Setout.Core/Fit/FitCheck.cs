// Over 200 lines: the one walk from spreads to a report.
using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Core.Workings;

namespace Setout.Core.Fit;

/// <summary>
/// Says what will fit before it is cut: each gap with its worst case and its chance, the chance of each bank and of the piece, what to measure
/// first, and which allowance would be best.
/// <para>What to measure first is found one after the other: each time the reading that brings most gaps right on the average, given those
/// already chosen. That need not be the best set of so many readings, but it is the best next one, which is what a person does.</para>
/// </summary>
public static class FitCheck
{
    /// <summary>The seed of the draws, unless said otherwise.</summary>
    public const int UsualSeed = 1;

    // A reading that brings less than this many gaps right, of all together, is not worth a walk to the bench. Common practice, no source.
    private const double WorthReading = 0.005;

    private const int MostReadings = 12;

    /// <summary>Makes the report.</summary>
    /// <param name="set">The piece set out, readings and all.</param>
    /// <param name="accuracy">How closely the shop works.</param>
    /// <param name="seed">Of the draws for chances of several gaps together.</param>
    /// <param name="cancel">Gives up.</param>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public static FitReport Of(SetPiece set, Accuracy accuracy, int seed = UsualSeed, CancellationToken cancel = default)
    {
        var spreads = new Spreads(set, accuracy);
        var whatIf = new WhatIf(spreads);
        // A gap of something that is in its place and found to go is no question any more; one without a value has its own finding.
        List<Standing> gaps = [.. set.Gaps.Select(g => (Gap: g, Now: spreads.Of(g.Key))).Where(g => g.Now is not null).Select(g => new Standing(g.Gap, g.Now!, whatIf))];
        ImmutableArray<ImmutableArray<int>> groups = Groups(gaps, out ImmutableArray<string> keys);
        JointAnswer now = Simulation.Ask(new([.. gaps.Select(g => new Window(g.Then, g.Gap.Least, g.Gap.Most))], groups), seed, token: cancel);
        ImmutableArray<MeasureFirst> measure = Measure(set, gaps, whatIf, now, cancel, out JointAnswer measured);
        return new(
            [.. gaps.Select(g => new GapFit(g.Gap, g.Now, g.ChanceNow, g.Then, g.ChanceThen))],
            [.. keys.Select((key, i) => new GroupFit(key, groups[i].Length, now.Groups[i], measured.Groups[i]))],
            new("", gaps.Count, now.All, measured.All), measure, Allowances(set, gaps));
    }

    private static ImmutableArray<ImmutableArray<int>> Groups(List<Standing> gaps, out ImmutableArray<string> keys)
    {
        var groups = gaps.Select((g, i) => (g.Gap.Group, Index: i)).Where(g => g.Group.Length > 0).GroupBy(g => g.Group, StringComparer.Ordinal).ToList();
        keys = [.. groups.Select(g => g.Key)];
        return [.. groups.Select(g => g.Select(x => x.Index).ToImmutableArray())];
    }

    private static ImmutableArray<MeasureFirst> Measure(SetPiece set, List<Standing> gaps, WhatIf whatIf, JointAnswer now, CancellationToken cancel, out JointAnswer measured)
    {
        var candidates = Candidates(set, gaps).ToDictionary(k => k, _ => (Gain: 0.0, Round: -1));
        ImmutableHashSet<QuantityKey> read = [];
        var chosen = ImmutableArray.CreateBuilder<MeasureFirst>();
        measured = now;
        for (int round = 0; round < MostReadings && candidates.Count > 0; round++)
        {
            foreach (QuantityKey key in candidates.Keys.Order().ToList())
            {
                cancel.ThrowIfCancellationRequested();
                // Only where the last choice touched the same gaps can the gain have changed.
                if (candidates[key].Round >= 0 && !gaps.Any(g => g.Changed == round - 1 && g.Hangs.Contains(key))) continue;
                candidates[key] = (gaps.Where(g => g.Hangs.Contains(key)).Sum(g => g.Gain(whatIf, read.Add(key))), round);
            }
            (QuantityKey best, (double gain, int _)) = candidates.OrderByDescending(c => c.Value.Gain).ThenBy(c => c.Key).First();
            if (gain < WorthReading) break;
            candidates.Remove(best);
            read = read.Add(best);
            var changed = ImmutableArray.CreateBuilder<(int, Window)>();
            Estimate more = new(0, 0);
            for (int i = 0; i < gaps.Count; i++)
            {
                if (!gaps[i].Hangs.Contains(best)) continue;
                Chance before = gaps[i].ChanceThen;
                gaps[i].Take(whatIf, read, round);
                more = more + (gaps[i].ChanceThen.Share - before.Share);
                changed.Add((i, new Window(gaps[i].Then, gaps[i].Gap.Least, gaps[i].Gap.Most)));
            }
            measured = measured.With(changed.ToImmutable(), cancel);
            Quantity quantity = set.Worked.Values[best].Quantity;
            chosen.Add(new(best, quantity.Name, Spreads.UsualInstrument(quantity), changed.Count, more, measured.All));
        }
        return chosen.ToImmutable();
    }

    /// <summary>
    /// What a person can put an instrument to and that figures still to be cut are worked from: wood, slides, and openings. An opening that is the
    /// same as another is read as that one, so that one reading serves all of its drawers.
    /// </summary>
    private static IEnumerable<QuantityKey> Candidates(SetPiece set, List<Standing> gaps)
    {
        var sames = set.Parts.Where(p => !p.HeldUntil.IsDefaultOrEmpty && p.HeldUntil.Length > 1).SelectMany(p => p.HeldUntil.SkipLast(1)).ToHashSet();
        return gaps.SelectMany(g => g.Hangs).Distinct().Where(key => !sames.Contains(key) && set.Worked.Values[key] is { Pin: null } worked
            && (worked.Quantity.Scatter is Scatter.Sheet or Scatter.Section or Scatter.Bought || worked.Quantity.Combining == Combining.Narrowest)
            // A sheet that nobody has read is read as its lot until parts are cut from it.
            && !(worked.Quantity.Scatter == Scatter.Sheet && worked.Quantity.Working is Sum));
    }

    private static ImmutableArray<AllowanceAdvice> Allowances(SetPiece set, List<Standing> gaps)
    {
        var advice = ImmutableArray.CreateBuilder<AllowanceAdvice>();
        foreach (IGrouping<QuantityKey, Standing> group in gaps.Where(g => g.FollowsItsAllowance).GroupBy(g => g.Gap.Allowance!.Value))
        {
            Worked kept = set.Worked.Values[group.Key];
            (Distribution Of, Gap Gap)[] each = [.. group.Select(g => (Distribution.Of(g.Then), g.Gap))];
            Estimate Fit(ExactLength more) => each.Aggregate(new Estimate(0, 0), (sum, g) => sum + g.Of.Within(g.Gap.Least - more, g.Gap.Most - more).Share);
            ExactLength step = set.Grid.Step.ToExact() / 2;
            // Each gap has its own best; what is kept is the same for all, so the steps around all of them are tried, and none that takes it below nothing.
            var shifts = each.Select(g => g.Of.BestShift(g.Gap.Most - g.Gap.Least) + g.Gap.Least).ToList();
            (long low, long high) = ((long)(shifts.Min() / step).Floor(), (long)(shifts.Max() / step).Floor() + 1);
            ExactLength best = ExactLength.Zero;
            Estimate fit = Fit(best), asKept = fit;
            for (long i = low; i <= high; i++)
            {
                ExactLength more = step * Rational.Of(i);
                if ((kept.Value + more).Sign < 0) continue;
                Estimate now = Fit(more);
                // A gain within the bound of the sums is no gain: what is kept stays.
                if (now.Value > fit.Value + fit.Error + now.Error) (best, fit) = (more, now);
            }
            advice.Add(new(group.Key, kept.Quantity.Name, kept.Value, kept.Value + best, asKept, fit, each.Length));
        }
        return advice.ToImmutable();
    }

    /// <summary>A gap on the way: as it stands now, and as it would with what has been chosen to be read.</summary>
    private sealed class Standing
    {
        private readonly ImmutableArray<(QuantityKey ToCut, Rational Times)> _figures;

        public Standing(Gap gap, Spread now, WhatIf whatIf)
        {
            (Gap, Now, Then) = (gap, now, now);
            ChanceNow = ChanceThen = Convolution.Within(now, gap.Least, gap.Most);
            _figures = whatIf.Figures(gap.Key);
            Dictionary<QuantityKey, Rational> from = whatIf.WorkedFrom(_figures, []);
            Hangs = [.. from.Keys];
            FollowsItsAllowance = gap.Allowance is { } allowance && from.TryGetValue(allowance, out Rational times) && times == Rational.One;
        }

        /// <summary>True while the gap grows with its allowance, one for one: what decides it is not cut yet.</summary>
        public bool FollowsItsAllowance { get; }

        public Gap Gap { get; }

        public Spread Now { get; }

        public Spread Then { get; private set; }

        public Chance ChanceNow { get; }

        public Chance ChanceThen { get; private set; }

        /// <summary>What its figures still to be cut are worked from.</summary>
        public ImmutableHashSet<QuantityKey> Hangs { get; }

        /// <summary>The round in which a choice last changed it.</summary>
        public int Changed { get; private set; } = -1;

        public double Gain(WhatIf whatIf, ImmutableHashSet<QuantityKey> read) =>
            Convolution.Within(whatIf.With(Now, _figures, read), Gap.Least, Gap.Most).Share.Value - ChanceThen.Share.Value;

        public void Take(WhatIf whatIf, ImmutableHashSet<QuantityKey> read, int round)
        {
            Then = whatIf.With(Now, _figures, read);
            ChanceThen = Convolution.Within(Then, Gap.Least, Gap.Most);
            Changed = round;
        }
    }
}
