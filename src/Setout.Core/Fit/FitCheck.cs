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
        // A gap without a value has its own finding.
        List<Standing> gaps = [.. set.Gaps.Select(g => (Gap: g, Now: spreads.Of(g.Key))).Where(g => g.Now is not null).Select(g => new Standing(g.Gap, g.Now!, spreads, whatIf))];
        ImmutableArray<ImmutableArray<int>> groups = Groups(gaps.Select(g => g.Gap), out ImmutableArray<string> keys);
        JointAnswer now = Simulation.Ask(new([.. gaps.Select(g => new Window(g.Then, g.Gap.Least, g.Gap.Most))], groups), seed, token: cancel);
        Estimate Right(IEnumerable<Standing> of) => Sum(of.Select(g => g.ChanceNow));
        Estimate RightThen(IEnumerable<Standing> of) => Sum(of.Select(g => g.ChanceThen));
        ImmutableArray<MeasureFirst> measure = Measure(spreads, gaps, whatIf, now, cancel, out JointAnswer measured);
        return new(
            [.. gaps.Select(g => new GapFit(g.Gap, g.Now, g.ChanceNow, g.Then, g.ChanceThen))],
            [.. keys.Select((key, i) => new GroupFit(key, groups[i].Length, now.Groups[i], measured.Groups[i], Right(groups[i].Select(g => gaps[g])), RightThen(groups[i].Select(g => gaps[g]))))],
            new("", gaps.Count, now.All, measured.All, Right(gaps), RightThen(gaps)), measure, Allowances(set, gaps));
    }

    /// <summary>Only how the piece and its openings stand now: what a person wants to know after each reading. Its chances with more measured are those of now.</summary>
    /// <param name="set">The piece set out, readings and all.</param>
    /// <param name="accuracy">How closely the shop works.</param>
    /// <param name="seed">As for <see cref="Of"/>, which gives the same chances.</param>
    /// <param name="cancel">Gives up.</param>
    public static (GroupFit Whole, ImmutableArray<GroupFit> Groups) Now(SetPiece set, Accuracy accuracy, int seed = UsualSeed, CancellationToken cancel = default)
    {
        var spreads = new Spreads(set, accuracy);
        List<(Gap Gap, Spread Now)> gaps = [.. set.Gaps.Select(g => (Gap: g, Now: spreads.Of(g.Key))).Where(g => g.Now is not null).Select(g => (g.Gap, g.Now!))];
        ImmutableArray<ImmutableArray<int>> groups = Groups(gaps.Select(g => g.Gap), out ImmutableArray<string> keys);
        JointAnswer now = Simulation.Ask(new([.. gaps.Select(g => new Window(g.Now, g.Gap.Least, g.Gap.Most))], groups), seed, token: cancel);
        ImmutableArray<Chance> each = [.. gaps.Select(g => Convolution.Within(g.Now, g.Gap.Least, g.Gap.Most))];
        GroupFit Group(string key, int count, Chance chance, Estimate right) => new(key, count, chance, chance, right, right);
        return (Group("", gaps.Count, now.All, Sum(each)), [.. keys.Select((key, i) => Group(key, groups[i].Length, now.Groups[i], Sum(groups[i].Select(g => each[g]))))]);
    }

    // Chances add up to an average, whatever the gaps have to do with one another.
    private static Estimate Sum(IEnumerable<Chance> chances) => chances.Aggregate(new Estimate(0, 0), (sum, c) => sum + c.Share);

    private static ImmutableArray<ImmutableArray<int>> Groups(IEnumerable<Gap> gaps, out ImmutableArray<string> keys)
    {
        var groups = gaps.Select((g, i) => (g.Group, Index: i)).Where(g => g.Group.Length > 0).GroupBy(g => g.Group, StringComparer.Ordinal).ToList();
        keys = [.. groups.Select(g => g.Key)];
        return [.. groups.Select(g => g.Select(x => x.Index).ToImmutableArray())];
    }

    private static ImmutableArray<MeasureFirst> Measure(Spreads spreads, List<Standing> gaps, WhatIf whatIf, JointAnswer now, CancellationToken cancel, out JointAnswer measured)
    {
        SetPiece set = spreads.Set;
        List<Candidate> candidates = [.. Readings(set, gaps).Order().Select(k => new Candidate(k, null)), .. spreads.FirstCuts.Select(f => new Candidate(f.AsCut, f))];
        // Parts wait for these, so they will be read whatever they bring.
        HashSet<QuantityKey> awaited = [.. set.Parts.Where(set.IsHeld).Select(p => p.HeldUntil[^1])];
        bool IsAwaited(Candidate candidate) => candidate.First is null && awaited.Contains(candidate.Key);
        var gains = new Dictionary<Candidate, double>();
        var done = Known.Nothing;
        var chosen = ImmutableArray.CreateBuilder<MeasureFirst>();
        measured = now;
        while (candidates.Count > 0)
        {
            foreach (Candidate candidate in candidates.Where(c => !gains.ContainsKey(c)))
            {
                cancel.ThrowIfCancellationRequested();
                Known then = done.And(candidate, spreads);
                gains[candidate] = gaps.Where(g => g.HangsOn(candidate)).Sum(g => g.Gain(whatIf, then));
            }
            Candidate best = candidates.MaxBy(c => gains[c])!;
            if (chosen.Count >= MostReadings || gains[best] < WorthReading)
            {
                candidates.RemoveAll(c => !IsAwaited(c));
                if (candidates.Count == 0) break;
                best = candidates.MaxBy(c => gains[c])!;
            }
            candidates.Remove(best);
            done = done.And(best, spreads);
            var changed = ImmutableArray.CreateBuilder<(int, Window)>();
            Estimate more = new(0, 0);
            for (int i = 0; i < gaps.Count; i++)
            {
                if (!gaps[i].HangsOn(best)) continue;
                (Chance before, Spread was) = (gaps[i].ChanceThen, gaps[i].Then);
                gaps[i].Take(whatIf, done);
                if (gaps[i].Then == was) continue;
                more += gaps[i].ChanceThen.Share - before.Share;
                changed.Add((i, new Window(gaps[i].Then, gaps[i].Gap.Least, gaps[i].Gap.Most)));
                // Whatever bears on the same gap may bring more or less now.
                foreach (Candidate other in candidates.Where(gaps[i].HangsOn)) gains.Remove(other);
            }
            measured = measured.With(changed.ToImmutable(), cancel);
            Quantity quantity = set.Worked.Values[best.Key].Quantity;
            chosen.Add(new(best.Key, best.First is { } first ? $"the first part cut at {first.Words}" : quantity.Name, best.First?.Instrument ?? Spreads.CarefulInstrument(quantity),
                changed.Count, more, measured.All, Sum(gaps.Select(g => g.ChanceThen)), best.First is not null ? MeasureKind.FirstCut : IsAwaited(best) ? MeasureKind.Awaited : MeasureKind.Reading));
        }
        return chosen.ToImmutable();
    }

    /// <summary>
    /// What a person can put an instrument to and that figures still to be cut are worked from: wood, slides, and openings. An opening that is the
    /// same as another is read as that one, so that one reading serves all of its drawers.
    /// </summary>
    private static IEnumerable<QuantityKey> Readings(SetPiece set, List<Standing> gaps)
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

    /// <summary>Something that may be measured: a quantity, or the first part cut at a setting.</summary>
    private sealed record Candidate(QuantityKey Key, FirstCut? First);

    /// <summary>What is taken as measured.</summary>
    private sealed record Known(ImmutableHashSet<QuantityKey> Read, ImmutableArray<Cause> Settings)
    {
        public static Known Nothing { get; } = new([], []);

        public Known And(Candidate candidate, Spreads spreads) => candidate.First is { } first
            ? this with { Settings = Settings.Add(spreads.Careful(first)) }
            : this with { Read = Read.Add(candidate.Key) };
    }

    /// <summary>A gap on the way: as it stands now, and as it would with what has been chosen to be measured.</summary>
    private sealed class Standing
    {
        private readonly ImmutableArray<(QuantityKey ToCut, Rational Times)> _figures;
        private readonly HashSet<string> _causes;
        private readonly Spread _prior;

        public Standing(Gap gap, Spread now, Spreads spreads, WhatIf whatIf)
        {
            (Gap, Now, Then) = (gap, now, now);
            ChanceNow = ChanceThen = Convolution.Within(now, gap.Least, gap.Most);
            _prior = spreads.Prior(gap.Key)!;
            _causes = [.. _prior.Effects.Select(e => e.Cause.Id)];
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

        public bool HangsOn(Candidate candidate) => candidate.First is { } first ? _causes.Contains(first.Id) : Hangs.Contains(candidate.Key);

        public double Gain(WhatIf whatIf, Known known) => Convolution.Within(With(whatIf, known), Gap.Least, Gap.Most).Share.Value - ChanceThen.Share.Value;

        public void Take(WhatIf whatIf, Known known)
        {
            Then = With(whatIf, known);
            ChanceThen = Convolution.Within(Then, Gap.Least, Gap.Most);
        }

        private Spread With(WhatIf whatIf, Known known) => whatIf.With(Gap.Key, _prior, _figures, known.Read, known.Settings);
    }
}
