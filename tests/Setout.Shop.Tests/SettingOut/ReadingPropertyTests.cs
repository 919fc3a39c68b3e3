using CsCheck;
using Setout.Core.Fit;
using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Shop.Plans;
using Setout.Shop.Texts;
using Setout.Testing;
using static Setout.Shop.Tests.SettingOut.BenchLog;

namespace Setout.Shop.Tests.SettingOut;

/// <summary>What holds of any readings, over all samples.</summary>
public sealed class ReadingPropertyTests
{
    // What the bench can read: no figure of the plan that only leads to one on the saw.
    private static readonly (PieceSource Source, SetPiece Set, QuantityKey[] Keys)[] s_samples = [.. Samples.Select(name =>
    {
        PieceSource source = Source(Sample.Text(name));
        SetPiece set = source.SetOut();
        return (source, set, set.Worked.Order.Where(k => set.Worked.Values.ContainsKey(k) && !set.Worked.Values.ContainsKey(k.ToCut) && !k.Text.EndsWith(QuantityKey.ToCutSuffix, StringComparison.Ordinal) && set.Worked[k].Sign > 0).ToArray());
    })];

    private static readonly Gen<int> s_sample = Gen.Int[0, s_samples.Length - 1];

    public static TheoryData<string> Names => [.. Samples];

    private static ReadingEntry Entry(QuantityKey key, ExactLength value, string with = "", string spot = "") => new("", "2026-05-04T09:40:00Z", key, [value], with, spot);

    private static void AssertSame(SetPiece a, SetPiece b)
    {
        Assert.Equal(a.Worked.Order, b.Worked.Order);
        foreach (QuantityKey key in a.Worked.Order) Assert.Equal(a.Worked.Values.GetValueOrDefault(key)?.Value, b.Worked.Values.GetValueOrDefault(key)?.Value);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Reading_OfWhatWasExpected_MovesNothingAndFindsNothing(string name)
    {
        (PieceSource source, SetPiece set, QuantityKey[] keys) = s_samples[Array.IndexOf(Samples, name)];
        Assert.NotEmpty(keys);
        foreach (QuantityKey key in keys)
        {
            // A tape may be coarser than what is known, which is said; the calliper is not.
            SetPiece after = source.SetOut(Entry(key, set.Worked[key], "calliper"));
            AssertSame(set, after);
            // That what bounds an opening is not marked cut yet is said of openings alone.
            Assert.All(after.Findings.Except(set.Findings).Concat(ReadingChecks.Of(after, source.Shop.Accuracy)), f => Assert.True(f.Code == BeforeBuilt.Code && BeforeBuilt.Missing(after, key).Length > 0, $"{key}: {f.Code}"));
        }
    }

    /// <summary>Some 64ths to either side: readings as they come.</summary>
    private static readonly Gen<(int Key, int Off)> s_reading = Gen.Select(Gen.Int[0, 9999], Gen.Int[-8, 8]);

    private static ReadingEntry Near(int sample, (int Key, int Off) reading)
    {
        (PieceSource _, SetPiece set, QuantityKey[] keys) = s_samples[sample];
        QuantityKey key = keys[reading.Key % keys.Length];
        return Entry(key, ExactLength.Max(ExactLength.FromInches(Rational.Of(1, 64)), set.Worked[key] + ExactLength.FromInches(Rational.Of(reading.Off, 64))));
    }

    [Fact]
    public void Readings_OfDifferentQuantities_CommuteToTheTick() => Gen.Select(s_sample, s_reading, s_reading).Holds((sample, one, two) =>
    {
        (ReadingEntry a, ReadingEntry b) = (Near(sample, one), Near(sample, two));
        if (a.Key == b.Key) return;
        PieceSource source = s_samples[sample].Source;
        SetPiece first = source.SetOut(a, b), second = source.SetOut(b, a);
        AssertSame(first, second);
        Assert.Equal(first.Findings.Select(f => (f.Code, f.Key, f.Words)), second.Findings.Select(f => (f.Code, f.Key, f.Words)));
    }, iter: 300, threads: 1);

    [Fact]
    public void Reading_Voided_RestoresEveryQuantityToTheTick() => Gen.Select(s_sample, s_reading, s_reading).Holds((sample, one, two) =>
    {
        (ReadingEntry kept, ReadingEntry taken) = (Near(sample, one), Near(sample, two));
        PieceSource source = s_samples[sample].Source;
        SetPiece before = source.SetOut(kept), after = source.SetOut(kept, taken, Void(1));
        AssertSame(before, after);
        Assert.Equal(before.Findings, after.Findings);
        Ripple ripple = Ripple.Of(before, after);
        Assert.Equal(0, ripple.Figures);
        // There and back: what moved moves back by as much.
        SetPiece between = source.SetOut(kept, taken);
        var there = Ripple.Of(before, between).Moved.SelectMany(m => m.Figures).Select(f => (f.Size.ToCut, f.By)).Order().ToList();
        var back = Ripple.Of(between, after).Moved.SelectMany(m => m.Figures).Select(f => (f.Size.ToCut, -f.By)).Order().ToList();
        Assert.Equal(there, back);
        // Whatever moved did so through something that was read: the way begins there.
        Assert.All(Ripple.Of(before, between).Moved, m => Assert.Equal(taken.Key, m.From));
    }, iter: 300, threads: 1);

    /// <summary>Any length at all, at several spots, of several quantities that contradict each other.</summary>
    [Fact]
    public void Readings_OfNonsense_GiveFindingsAndNeverFail()
    {
        Gen<(int Key, int Size, int Spot)> nonsense = Gen.Select(Gen.Int[0, 9999], Gen.Int[1, 30_000_00], Gen.Int[0, 4]);
        int found = 0;
        Gen.Select(s_sample, nonsense.Array[1, 8]).Holds((sample, readings) =>
        {
            (PieceSource source, SetPiece set, QuantityKey[] keys) = s_samples[sample];
            SetPiece after = source.SetOut(readings.Select(r => Entry(keys[r.Key % keys.Length], ExactLength.FromMillimetres(Rational.Of(r.Size, 100)), "", r.Spot == 0 ? "" : $"s{r.Spot}")));
            foreach (Finding finding in after.Findings)
            {
                Assert.NotEmpty(finding.Words);
                Assert.NotEmpty(finding.Remedy);
            }
            // Up to 30 m where furniture is expected: something is said of it, unless it is a figure that is picked or decided.
            if (after.Findings.Except(set.Findings).Any()) Interlocked.Increment(ref found);
            Ripple.Of(set, after);
            // Not twice of one reading: slip, far off, spots that differ, not explained.
            string[] once = ["reading.slip", "reading.far-off", "reading.outlier", "reading.unexplained"];
            Assert.All(after.Findings.Where(f => once.Contains(f.Code)).GroupBy(f => after.Worked.Values.Values.Where(w => w.Pin is not null && w.Quantity.Key.Owner == f.Key && f.Words.StartsWith(w.Quantity.Name, StringComparison.Ordinal)).MaxBy(w => w.Quantity.Name.Length)),
                g => Assert.Single(g));
        }, iter: 400, threads: 1);
        Assert.InRange(found, 360, 400);
    }
}
