using System.Collections.Immutable;
using CsCheck;
using Setout.Core.Measures;
using Setout.Core.Workings;
using Setout.Testing;
using static Setout.Core.Tests.Workings.Quantities;

namespace Setout.Core.Tests.Workings;

public class EvaluationPropertyTests
{
    /// <summary>A web of quantities without rings: each worked from earlier ones, by a sum, a share, an extreme or a rounding.</summary>
    private static readonly Gen<Quantity[]> s_webs =
        from count in Gen.Int[1, 40]
        from seed in Gen.Int[0, 1_000_000]
        select Web(new Random(seed), count);

    private static Quantity[] Web(Random random, int count)
    {
        var web = new Quantity[count];
        for (int i = 0; i < count; i++)
        {
            QuantityKey key = Key($"q{i}");
            ImmutableArray<Term> terms = [.. Enumerable.Range(0, random.Next(1, 4)).Select(_ => i == 0 || random.Next(4) == 0
                ? Term.From("figure", random.Next(-3, 4), Mm(Rational.Of(random.Next(1, 5000), random.Next(1, 8))), Given)
                : Term.From("of", random.Next(-3, 4), Key($"q{random.Next(i)}")))];
            Working working = (i == 0 ? 0 : random.Next(5)) switch
            {
                0 => new Stated(Mm(Rational.Of(random.Next(1, 5000), random.Next(1, 8))), Given),
                1 => new Sum(terms, Rational.Of(1, random.Next(1, 6))),
                2 => new Extreme(terms, random.Next(2) == 0),
                3 => new ToCut(Key($"q{random.Next(i)}"), Grid.ThirtySecond, (Rounding)random.Next(3), "why"),
                _ => new Sum(terms),
            };
            web[i] = new(key, key.Text, working, (Combining)random.Next(3));
        }
        return web;
    }

    private static Dictionary<string, ExactLength> Values(WorkedPiece worked) => worked.Values.ToDictionary(v => v.Key.Text, v => v.Value.Value);

    [Fact]
    public void Reading_EqualToWhatWasExpected_MovesNothing() =>
        Gen.Select(s_webs, Gen.Int[0, 1000]).Holds((web, pick) =>
        {
            WorkedPiece before = Work(web);
            Quantity read = web[pick % web.Length];
            WorkedPiece after = Work(web, (read.Key.Text, new Pin([before[read.Key], before[read.Key]], new(OriginKind.Reading, "read"), "e1")));
            Assert.Equal(Values(before), Values(after));
            Assert.Equal(ExactLength.Zero, after.Values[read.Key].Over);
        });

    [Fact]
    public void Definition_InAnyOrder_GivesTheSameValuesAndNoFindings() =>
        Gen.Select(s_webs, Gen.Int[0, 1_000_000]).Holds((web, seed) =>
        {
            Quantity[] shuffled = [.. web];
            new Random(seed).Shuffle(shuffled);
            WorkedPiece worked = Work(shuffled);
            Assert.Equal(Values(Work(web)), Values(worked));
            Assert.Empty(worked.Findings);
        });

    [Fact]
    public void Asking_InAnyOrderAtAnyTime_GivesTheSameValues() =>
        Gen.Select(s_webs, Gen.Int[0, 1_000_000]).Holds((web, seed) =>
        {
            var random = new Random(seed);
            var evaluation = new Evaluation(Pins());
            for (int i = 0; i < web.Length; i++)
            {
                evaluation.Define(web[i]);
                evaluation.Work(web[random.Next(i + 1)].Key);
            }
            Assert.Equal(Values(Work(web)), Values(evaluation.Finish()));
        });

    [Fact]
    public void Readings_OfUnrelatedQuantities_DoNotTouchEachOther() =>
        // Two webs side by side, a reading in each: the values of both together are those of each alone.
        Gen.Select(s_webs, s_webs, Gen.Int[0, 1000], Gen.Int[1, 9000]).Holds((one, other, pick, reading) =>
        {
            Quantity[] second = [.. other.Select(Renamed)];
            (string, Pin) first = (one[pick % one.Length].Key.Text, Read(reading)), last = (second[pick % second.Length].Key.Text, Read(reading + 1));
            Quantity[] all = [.. one, .. second];
            Dictionary<string, ExactLength> ab = Values(Work(all, first, last)), ba = Values(Work(all, last, first)), a = Values(Work(all, first)), b = Values(Work(all, last));
            Assert.Equal(ab, ba);
            Assert.All(one, q => Assert.Equal(a[q.Key.Text], ab[q.Key.Text]));
            Assert.All(second, q => Assert.Equal(b[q.Key.Text], ab[q.Key.Text]));
        });

    [Fact]
    public void Reading_OfOneQuantity_MovesOnlyWhatIsWorkedFromIt() =>
        Gen.Select(s_webs, Gen.Int[0, 1000], Gen.Int[1, 9000]).Holds((web, pick, reading) =>
        {
            Quantity read = web[pick % web.Length];
            var downstream = new HashSet<QuantityKey> { read.Key };
            foreach (Quantity quantity in web)
                if (quantity.Working.WorkedFrom.Any(downstream.Contains)) downstream.Add(quantity.Key);
            WorkedPiece before = Work(web), after = Work(web, (read.Key.Text, Read(reading)));
            Assert.All(web.Where(q => !downstream.Contains(q.Key)), q => Assert.Equal(before[q.Key], after[q.Key]));
            Assert.Equal(before[read.Key], after.Values[read.Key].Expected);
        });

    private static Quantity Renamed(Quantity quantity) => new(Other(quantity.Key), quantity.Name, quantity.Working switch
    {
        Sum sum => sum with { Terms = [.. sum.Terms.Select(Renamed)] },
        Extreme extreme => extreme with { Of = [.. extreme.Of.Select(Renamed)] },
        ToCut cut => cut with { Exact = Other(cut.Exact) },
        _ => quantity.Working,
    }, quantity.Combining);

    private static Term Renamed(Term term) => term.Of is { } of ? term with { Of = Other(of) } : term;

    private static QuantityKey Other(QuantityKey key) => Key("other-" + key.Text);
}
