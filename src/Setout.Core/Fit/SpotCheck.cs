using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Workings;

namespace Setout.Core.Fit;

/// <summary>Whether the spots of one reading agree among themselves.</summary>
internal static class SpotCheck
{
    public const string OutlierCode = "reading.outlier";

    // Modified z-score of Iglewicz and Hoaglin, NIST/SEMATECH e-Handbook of Statistical Methods 1.3.5.17, from memory: 0.6745 times the distance
    // from the median over the median absolute deviation; more than 3.5 is an outlier.
    private static readonly Rational s_scale = Rational.Of(6745, 10000), s_most = Rational.Of(7, 2);

    public static Finding? Of(ReadingBench bench, Worked read)
    {
        int count = read.Pin!.Values.Length;
        if (count < 2) return null;
        return read.Quantity.Combining == Combining.Narrowest ? Taper(bench, read) : count < 4 ? Disagree(bench, read) : Outlier(bench, read);
    }

    /// <summary>Which of four or more lies off the others.</summary>
    private static Finding? Outlier(ReadingBench bench, Worked read)
    {
        ImmutableArray<ExactLength> values = read.Pin!.Values;
        ExactLength middle = Median(values);
        ExactLength deviation = Median(values.Select(v => (v - middle).Abs()));
        foreach (int i in Enumerable.Range(0, values.Length).OrderByDescending(i => (values[i] - middle).Abs()))
        {
            ExactLength others = Median(values.RemoveAt(i)), off = (values[i] - others).Abs();
            ExactLength explained = Enumerable.Range(0, values.Length).Where(j => j != i).Max(j => Apart(bench, read, i, j));
            if (off <= explained || (values[i] - middle).Abs() * s_scale <= deviation * s_most) continue;
            string again = Spot(read.Pin, i) is { } spot
                ? $"Measure again there{Hand(bench).Say($": setout record FILE {Typed(read)} READING --spot {Quoted(spot)}", $", and enter it at {Hands.Place(read.Quantity.Name)} with that spot")}"
                : $"Measure again there and record all spots anew, or {Hand(bench).VoidReading(read.Pin.EntryId)}";
            return bench.Finding(OutlierCode, Severity.Warn, read.Quantity.Key,
                $"{read.Quantity.Name} reads {bench.Say(values[i])} at {SpotName(read.Pin, i)}, where the others lie about {bench.Say(others)}; {bench.Say(explained)} could be explained.",
                $"{again}. Until then it counts with the others.");
        }
        return null;
    }

    /// <summary>Of two or three nobody can tell which is wrong.</summary>
    private static Finding? Disagree(ReadingBench bench, Worked read)
    {
        ImmutableArray<ExactLength> values = read.Pin!.Values;
        int least = values.IndexOf(values.Min()), most = values.IndexOf(values.Max());
        ExactLength apart = values[most] - values[least], explained = Apart(bench, read, least, most);
        if (apart <= explained) return null;
        bool isNamed = read.Pin.Spots.Any(s => s.Length > 0);
        string place = Hands.Place(read.Quantity.Name), one = Hand(bench).Say(
            isNamed ? $": setout record FILE {Typed(read)} READING --spot NAME" : $": setout record FILE {Typed(read)} {string.Join(", ", values.Select(_ => "READING"))}, READING",
            isNamed ? $", and enter it at {place} with a spot of its own" : $", and enter all of them anew at {place}");
        return bench.Finding(OutlierCode, Severity.Warn, read.Quantity.Key,
            $"{read.Quantity.Name} reads {bench.Say(values[least])} at {SpotName(read.Pin, least)} and {bench.Say(values[most])} at {SpotName(read.Pin, most)}, {bench.Say(apart)} apart; {bench.Say(explained)} could be explained.",
            $"Read one more spot, to see which of them is off{one}.");
    }

    /// <summary>An opening may honestly differ from front to back; what runs in it minds when that is more than it takes.</summary>
    private static Finding? Taper(ReadingBench bench, Worked read)
    {
        ImmutableArray<ExactLength> values = read.Pin!.Values;
        int least = values.IndexOf(values.Min()), most = values.IndexOf(values.Max());
        ExactLength taper = values[most] - values[least];
        QuantityKey key = read.Quantity.Key;
        ExactLength[] windows = [.. bench.Set.Gaps.Where(g => g.Allowance is not null && RunsIn(bench, g.Key, key)).Select(g => g.Most - g.Least)];
        ExactLength takes = windows.Length > 0 ? windows.Min() : ExactLength.Max(bench.AccuracyOf(read, least), bench.AccuracyOf(read, most)) * 2;
        if (taper <= takes) return null;
        string what = windows.Length > 0 ? $"its slides take {bench.Say(takes)}" : $"{bench.Say(takes)} could be explained";
        string wide = SpotName(read.Pin, most);
        return bench.Finding("opening.tapers", Severity.Warn, key,
            $"{read.Quantity.Name} reads {bench.Say(values[least])} at {SpotName(read.Pin, least)} and {bench.Say(values[most])} at {wide}: it tapers by {bench.Say(taper)}; {what}.",
            windows.Length > 0
                ? $"Boxes go by the narrow end: pack the slides by {bench.Say(taper)} at {wide}, both sides together, or pull it in there."
                : $"What goes in goes by the narrow end: pull it in by {bench.Say(taper)} at {wide}, or pack it there.");
    }

    /// <summary>A play is of the slide line of its drawer, which is of the opening.</summary>
    private static bool RunsIn(ReadingBench bench, QuantityKey play, QuantityKey opening) =>
        bench.Set.Worked.Values.TryGetValue(play, out Worked? worked) && worked.Quantity.Working.WorkedFrom.Any(line => line == opening
            || (bench.Set.Worked.Values.TryGetValue(line, out Worked? from) && from.Quantity.Combining == Combining.Narrowest && from.Quantity.Working.WorkedFrom.Contains(opening)));

    /// <summary>How far two values of one reading may lie apart: each has half of its instrument for itself, all that is read with one instrument shares the other half, and spots differ.</summary>
    private static ExactLength Apart(ReadingBench bench, Worked read, int i, int j)
    {
        ExactLength both = bench.AccuracyOf(read, i).ToExact() + bench.AccuracyOf(read, j);
        bool isOne = Spreads.InstrumentOf(read.Quantity, read.Pin!, i) == Spreads.InstrumentOf(read.Quantity, read.Pin!, j);
        ExactLength spot = read.Quantity.Scatter switch
        {
            Scatter.Sheet => bench.Accuracy.Spot,
            Scatter.Section => bench.Accuracy.Section,
            Scatter.Cut => bench.Accuracy.Repeat,
            Scatter.Placed => bench.Accuracy.Placing,
            Scatter.Bought => bench.Accuracy.Bought,
            _ => Length.Zero,
        };
        return (isOne ? both / 2 : both) + (spot * 2);
    }

    private static ExactLength Median(IEnumerable<ExactLength> values)
    {
        ExactLength[] sorted = [.. values.Order()];
        return (sorted[(sorted.Length - 1) / 2] + sorted[sorted.Length / 2]) / 2;
    }

    private static string? Spot(Pin pin, int index) => index < pin.Spots.Length && pin.Spots[index].Length > 0 ? pin.Spots[index] : null;

    private static string SpotName(Pin pin, int index) => Spot(pin, index) is { } spot ? $"the spot '{spot}'" : $"spot {index + 1}";

    private static string Quoted(string spot) => spot.All(char.IsLetterOrDigit) ? spot : $"\"{spot}\"";

    private static Hand Hand(ReadingBench bench) => bench.Set.Piece.Hand;

    private static string Typed(Worked read) => read.Quantity.Key is { IsAsCut: true } cut ? cut.Text[..^QuantityKey.AsCutSuffix.Length] : read.Quantity.Key.Text;
}
