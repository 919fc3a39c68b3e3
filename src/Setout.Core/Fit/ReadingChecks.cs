using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.SettingOut;
using Setout.Core.Workings;

namespace Setout.Core.Fit;

/// <summary>
/// What the readings of a piece tell: which of them look like slips, which spots do not agree, which lie further off than wood, saw and
/// instrument explain, which sizes no longer add up, and what to measure next. Only what was read is looked at, so a piece without
/// readings costs nothing. What was decided rather than measured (a figure cut to, a slide bought, packing put in) is no reading.
/// </summary>
public static class ReadingChecks
{
    /// <summary>The piece with what its readings tell among its findings; the same piece while nothing is read.</summary>
    /// <param name="set">The piece set out.</param>
    /// <param name="accuracy">How closely the shop works.</param>
    public static SetPiece Into(SetPiece set, Accuracy accuracy)
    {
        ImmutableArray<Finding> told = Of(set, accuracy);
        if (told.IsEmpty) return set;
        // A slip says more than that the reading lies far off.
        Finding[] slips = [.. told.Where(f => f.Code == SlipCode)];
        Finding[] said = slips.Length == 0 ? [] : [.. ReadOf(set).Where(r => slips.Any(s => s.Key == r.Quantity.Key.Owner && s.Words.StartsWith(r.Quantity.Name + ": ", StringComparison.Ordinal)))
            .Select(r => BookChecks.FarOff(r, LengthFormat.For(set.Piece.Shown), set.Piece.Hand)).OfType<Finding>()];
        return set with { Findings = [.. set.Findings.Where(f => !said.Contains(f)), .. told] };
    }

    /// <summary>What the readings tell, in the order of the keys, and then the sums that readings opened. Never throws for what was read.</summary>
    /// <param name="set">The piece set out.</param>
    /// <param name="accuracy">How closely the shop works.</param>
    public static ImmutableArray<Finding> Of(SetPiece set, Accuracy accuracy)
    {
        Worked[] read = [.. ReadOf(set)];
        if (read.Length == 0) return [];
        var bench = new ReadingBench(set, new Spreads(set, accuracy), accuracy);
        return [.. read.SelectMany(r => Check(bench, r)), .. read.SelectMany(r => BeforeBuilt.Of(bench, r)), .. ChainCheck.Of(bench), .. SettingCheck.Of(bench.Spreads)];
    }

    /// <summary>
    /// Whether a value looks like a slip: in millimetres for inches, a decimal point out of its place, 16ths for 32nds, a burnt inch, two digits
    /// changed over. Suspected only when the value lies outside what is expected of the quantity and the likely one inside, and at least four
    /// times nearer to the best value; for use before the reading is written. Null where there is nothing to suspect.
    /// </summary>
    /// <param name="read">The quantity, read or not; what its working gives must be above zero.</param>
    /// <param name="value">What was read.</param>
    /// <param name="expected">What the quantity may come to without the reading (<see cref="Spreads.Expected"/>); null for just what its working gives.</param>
    /// <param name="instrument">How far the instrument may be off, to either side.</param>
    /// <param name="unit">The unit of the piece, in which the value was typed.</param>
    public static Suspicion? Slip(Worked read, ExactLength value, Spread? expected, Length instrument, LengthUnit unit)
    {
        // What is decided and not given (a slide of a series, packing) may be anything.
        if (ReadingBench.IsDecided(read.Quantity) && !ReadingBench.IsGiven(read.Quantity)) return null;
        return Suspicion.Of(read.Expected, value, expected ?? Spread.Of(read.Expected), instrument, unit);
    }

    /// <summary>The first of the values that looks like a slip, before they are written as a reading; null where none does, or nothing is known of the quantity.</summary>
    /// <param name="set">The piece set out without the reading.</param>
    /// <param name="accuracy">How closely the shop works.</param>
    /// <param name="key">The quantity. A sheet that nobody has read yet is expected to be as its lot.</param>
    /// <param name="values">What was read.</param>
    /// <param name="instrument">The instrument; empty where it was not said.</param>
    public static Suspicion? SlipOf(SetPiece set, Accuracy accuracy, QuantityKey key, IEnumerable<ExactLength> values, string instrument)
    {
        Worked? known = set.Worked.Values.GetValueOrDefault(key) ?? set.Worked.Values.GetValueOrDefault(QuantityKey.Of(key.Owner, "thickness"));
        if (known is null or { RestsOnUnknown: true, Pin: null }) return null;
        var spreads = new Spreads(set, accuracy);
        Spread? expected = spreads.Expected(known.Quantity.Key);
        Length off = spreads.AccuracyOf(instrument.Length > 0 ? instrument : Spreads.UsualInstrument(known.Quantity));
        return values.Select(v => Slip(known, v, expected, off, set.Piece.Shown)).FirstOrDefault(s => s is not null);
    }

    // So far beyond what everything at its worst explains, wood and saws are not to blame. Common practice, no source.
    private static readonly ExactLength s_doubt = ExactLength.FromInches(Rational.Of(1, 2));

    /// <summary>
    /// The first of the values that lies too far off to be written unasked, with what was expected: grossly off, or 1/2 in further than every error at its
    /// worst explains. Null where none does; what is decided and not measured, such as packing, may be anything. Parameters as for <see cref="SlipOf"/>.
    /// </summary>
    public static (ExactLength Value, ExactLength Expected)? FarOf(SetPiece set, Accuracy accuracy, QuantityKey key, IEnumerable<ExactLength> values, string instrument)
    {
        bool isNew = !set.Worked.Values.TryGetValue(key, out Worked? known);
        if (isNew && !set.Worked.Values.TryGetValue(QuantityKey.Of(key.Owner, "thickness"), out known)) return null;
        if (known is { RestsOnUnknown: true, Pin: null }) return null;
        ExactLength best = isNew ? known!.Value : known!.Expected;
        if (best.Sign == 0) return null;
        var spreads = new Spreads(set, accuracy);
        Spread spread = spreads.Expected(known.Quantity.Key) ?? Spread.Of(best);
        ExactLength explained = ExactLength.Max(spread.WorstHigh - spread.Value, spread.Value - spread.WorstLow)
            + spreads.AccuracyOf(instrument.Length > 0 ? instrument : Spreads.UsualInstrument(known.Quantity)) + s_doubt;
        foreach (ExactLength value in values)
            if (BookChecks.IsFarOff(value, best) || (value - best).Abs() > explained) return (value, best);
        return null;
    }

    internal const string SlipCode = "reading.slip";

    private static IEnumerable<Worked> ReadOf(SetPiece set) => set.Facts.Pins.Where(p => !p.Value.IsFact).Select(p => p.Key).Order()
        .Select(k => set.Worked.Values.GetValueOrDefault(k)).OfType<Worked>().Where(w => w.Pin is { IsFact: false, Values.IsDefaultOrEmpty: false });

    /// <summary>One reading: a slip says most, then that it lies far off, then that its spots do not agree, then that it is not explained.</summary>
    private static IEnumerable<Finding> Check(ReadingBench bench, Worked read)
    {
        Spread expected = bench.Spreads.Expected(read.Quantity.Key) ?? Spread.Of(read.Expected);
        if (Slipped(bench, read, expected) is { } slip)
        {
            yield return slip;
            yield break;
        }
        if (ReadingBench.IsDecided(read.Quantity) || BookChecks.FarOff(read, bench.Format, bench.Set.Piece.Hand) is not null) yield break;
        Finding? spots = SpotCheck.Of(bench, read);
        if (spots is not null) yield return spots;
        if (spots?.Code == SpotCheck.OutlierCode || read.RestsOnUnknown) yield break;
        if (Unexplained(bench, read, expected) is { } unexplained) yield return unexplained;
        else if (Coarser(bench, read, expected) is { } coarser) yield return coarser;
    }

    private static Finding? Slipped(ReadingBench bench, Worked read, Spread expected)
    {
        Pin pin = read.Pin!;
        for (int i = 0; i < pin.Values.Length; i++)
        {
            if (Slip(read, pin.Values[i], expected, bench.AccuracyOf(read, i), bench.Set.Piece.Shown) is not { } slip) continue;
            string likely = slip.LikelyText(bench.Set.Piece.Shown);
            return bench.Finding(SlipCode, Severity.Warn, read.Quantity.Key, $"{read.Quantity.Name}: {slip.Words(bench.Set.Piece.Shown)}.",
                $"Look again. If it is {likely}, {bench.Set.Piece.Hand.VoidReading(pin.EntryId)} and record {likely}; if it is as it was read, let this stand.");
        }
        return null;
    }

    /// <summary>Further off than everything together explains, every cause at its worst and the instrument too.</summary>
    private static Finding? Unexplained(ReadingBench bench, Worked read, Spread expected)
    {
        Quantity quantity = read.Quantity;
        if (bench.Spreads.Of(quantity.Key) is not { } now) return null;
        ExactLength own = (now.WorstHigh - now.WorstLow) / 2, below = expected.Value - expected.WorstLow + own, above = expected.WorstHigh - expected.Value + own;
        if (read.Over <= above && -read.Over <= below) return null;
        // The published limits of a sheet have a finding of their own.
        if (bench.Set.Findings.Any(f => f.Code == "material.outside-limits" && f.Key == quantity.Key.Owner)) return null;
        string way = read.Over.Sign > 0 ? "over" : "under";
        string[] causes = [.. expected.Effects.Where(e => e.Range.Sign > 0).OrderByDescending(e => e.Range).Select(e => e.Cause.Words).Distinct(StringComparer.Ordinal).Take(3)];
        string likely = causes.Length == 0 ? "Nothing else is known that moves it." : $"What moves it, the most first: {string.Join("; ", causes)}.";
        string again = $"{bench.Set.Piece.Hand.VoidReading(read.Pin!.EntryId)} if it was a slip";
        return bench.Finding("reading.unexplained", Severity.Warn, quantity.Key,
            $"{quantity.Name} reads {bench.Say(read.Over.Abs())} {way} the {bench.Say(read.Expected)} expected; {bench.Say(read.Over.Sign > 0 ? above : below)} could be explained. {likely}",
            bench.LargestUnread(quantity) is { } next ? $"Measure {bench.Named(next)} next; {again}." : $"Measure it once more, with another instrument if there is one; {again}.");
    }

    /// <summary>The instrument says less than was known before.</summary>
    private static Finding? Coarser(ReadingBench bench, Worked read, Spread expected)
    {
        ExactLength known = (expected.WorstHigh - expected.WorstLow) / 2;
        if (known.Sign == 0) return null;
        int finest = ReadingBench.Counted(read).MinBy(i => bench.AccuracyOf(read, i));
        Length instrument = bench.AccuracyOf(read, finest);
        if (instrument.ToExact() <= known) return null;
        string name = Spreads.InstrumentOf(read.Quantity, read.Pin!, finest);
        return bench.Finding("reading.coarser", Severity.Note, read.Quantity.Key,
            $"{read.Quantity.Name} was known to {bench.Say(known)} either way before it was read; the {name} may be off by {bench.Say(instrument)}.",
            bench.CoarsestWithin(known) is { } finer ? $"The reading counts all the same. Read it with the {finer} where a gap hangs on it." : "The reading counts all the same.");
    }
}
