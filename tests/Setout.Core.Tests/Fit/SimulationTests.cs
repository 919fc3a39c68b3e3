using System.Collections.Immutable;
using Setout.Core.Fit;
using Setout.Core.Measures;
using static Setout.Core.Tests.Fit.ClosedForm;

namespace Setout.Core.Tests.Fit;

/// <summary>Seeded simulation: against the convolution, closed forms of order statistics and the bounds that any joint chance keeps.</summary>
public sealed class SimulationTests
{
    private static Window In(SpreadTree of, Rational least, Rational most) => new(of, Mm(least), Mm(most));

    private static JointQuestion Ask(params ImmutableArray<Window> windows) => new(windows, []);

    /// <summary>A spread of causes drawn from a few ids, so that windows share them; limits that neither surely hold nor surely fail.</summary>
    private static Window RandomWindow(Random random)
    {
        var spread = new Spread(Mm(random.Next(100)), [.. Enumerable.Range(0, random.Next(1, 9)).Select(_ =>
        {
            int id = random.Next(20);
            return new Effect(id % 3 == 0 ? Peaked($"c{id}", id + 1) : Even($"c{id}", -id, id + 1), Rational.Of(random.Next(1, 9) * (random.Next(2) == 0 ? 1 : -1), 4));
        })]);
        ExactLength range = spread.WorstHigh - spread.WorstLow;
        ExactLength least = spread.WorstLow + (range * Rational.Of(random.Next(0, 45), 100));
        return new(spread, least, least + (range * Rational.Of(random.Next(10, 60), 100)));
    }

    private static ImmutableArray<Window> RandomWindows(int seed, int count)
    {
        var random = new Random(seed);
        return [.. Enumerable.Range(0, count).Select(_ => RandomWindow(random))];
    }

    /// <summary>Two ways that share nothing but the causes. A bound of three standard deviations is passed once in 370 times, so a few of 300 may miss.</summary>
    [Fact]
    public void Ask_RandomSums_AgreesWithConvolution()
    {
        ImmutableArray<Window> windows = RandomWindows(1, 300);
        JointAnswer answer = Simulation.Ask(new(windows, []), 7);
        int missed = 0;
        for (int i = 0; i < windows.Length; i++)
        {
            Chance exact = Convolution.Within(windows[i].Of.AsSpread!, windows[i].Least, windows[i].Most);
            double apart = Math.Abs(exact.Share.Value - answer.Windows[i].Share.Value);
            if (apart > exact.Share.Error + answer.Windows[i].Share.Error) missed++;
            Assert.True(apart < 0.02, $"{i}: {exact.Share} against {answer.Windows[i].Share}");
        }
        Assert.True(missed <= 5, $"{missed} of 300 missed");
    }

    [Fact]
    public void Ask_SameSeed_IsTheSameAndAnotherSeedIsNot()
    {
        JointQuestion question = new(RandomWindows(2, 20), [[0, 1, 2], [3, 4]]);
        JointAnswer a = Simulation.Ask(question, 5), b = Simulation.Ask(question, 5), c = Simulation.Ask(question, 6);
        Assert.Equal(a.Windows, b.Windows);
        Assert.Equal(a.Groups, b.Groups);
        Assert.Equal(a.All, b.All);
        Assert.NotEqual(a.Windows, c.Windows);
    }

    /// <summary>No joint chance is above the least of its parts nor below one less the sum of their misses (Frechet, Bonferroni). On one set of draws that holds to the last sample.</summary>
    [Fact]
    public void Ask_Groups_KeepTheBoundsOfFrechetAndBonferroni()
    {
        for (int seed = 0; seed < 30; seed++)
        {
            JointAnswer answer = Simulation.Ask(new(RandomWindows(seed, 6), [[0, 1, 2], [2, 3], [4], []]), seed, 4096);
            for (int g = 0; g < 3; g++)
            {
                double[] singles = [.. answer.Question.Groups[g].Select(i => answer.Windows[i].Share.Value)];
                Assert.InRange(answer.Groups[g].Share.Value, 1 - singles.Sum(s => 1 - s) - 1e-12, singles.Min());
            }
            Assert.Equal(answer.Windows[4], answer.Groups[2]);
            Assert.Equal(Chance.Sure, answer.Groups[3]);
            Assert.True(answer.All.Share.Value <= answer.Groups.Min(g => g.Share.Value));
        }
    }

    /// <summary>Independent windows multiply (definition of independence); windows on one cause hold or fail together.</summary>
    [Fact]
    public void Ask_TwoWindows_MultiplyWhenIndependentAndCoincideWhenShared()
    {
        JointAnswer apart = Simulation.Ask(Ask(In(Sum(Even("a", 1)), -1, 0), In(Sum(Even("b", 1)), Rational.Of(-1, 2), 1)), 1);
        Assert.True(apart.All.Share.Covers(0.5 * 0.75), $"{apart.All.Share}");
        JointAnswer shared = Simulation.Ask(Ask(In(Sum(Even("a", 1)), -1, 0), In(Sum(Even("a", 1)) + Mm(5), 4, 5)), 1);
        Assert.Equal(shared.Windows[0], shared.All);
        JointAnswer against = Simulation.Ask(Ask(In(Sum(Even("a", 1)), -1, 0), In(-Sum(Even("a", 1)), -1, Rational.Of(-1, 100))), 1);
        Assert.Equal(0, against.All.Share.Value);
        Assert.True(against.All.Share.Error > 0); // none of so many is not surely never
    }

    /// <summary>Common random numbers: a window answers the same whatever else is asked.</summary>
    [Fact]
    public void Ask_WithOtherWindowsBeside_AnswersTheSame()
    {
        ImmutableArray<Window> windows = RandomWindows(3, 10);
        JointAnswer all = Simulation.Ask(new(windows, []), 9, 5000);
        for (int i = 0; i < windows.Length; i++) Assert.Equal(Simulation.Ask(Ask(windows[i]), 9, 5000).All, all.Windows[i]);
    }

    [Fact]
    public void With_ItselfOrOthers_IsTheSameAsAskingAnew()
    {
        JointQuestion question = new(RandomWindows(4, 12), [[0, 5, 7], [1, 2]]);
        JointAnswer first = Simulation.Ask(question, 3);
        JointAnswer same = first.With([(5, question.Windows[5]), (0, question.Windows[0])]);
        Assert.Equal((first.All, first.Windows, first.Groups), (same.All, same.Windows, same.Groups), Equal);

        Window wider = question.Windows[7] with { Most = question.Windows[7].Most + Mm(1) };
        JointAnswer changed = first.With([(7, wider)]);
        JointAnswer anew = Simulation.Ask(question with { Windows = question.Windows.SetItem(7, wider) }, 3);
        Assert.Equal((anew.All, anew.Windows, anew.Groups), (changed.All, changed.Windows, changed.Groups), Equal);
        // On the same draws a wider window can only gain.
        Assert.True(changed.Windows[7].Share.Value >= first.Windows[7].Share.Value && changed.All.Share.Value >= first.All.Share.Value);

        static bool Equal((Chance All, ImmutableArray<Chance> Windows, ImmutableArray<Chance> Groups) a, (Chance All, ImmutableArray<Chance> Windows, ImmutableArray<Chance> Groups) b) =>
            a.All == b.All && a.Windows.SequenceEqual(b.Windows) && a.Groups.SequenceEqual(b.Groups);
    }

    /// <summary>A cause made narrower keeps its draws: one narrowed inside a window round its middle can only gain, sample by sample.</summary>
    [Fact]
    public void With_NarrowerCause_OnlyGains()
    {
        Window window = In(Sum(Even("a", 3)), -1, 1);
        JointAnswer first = Simulation.Ask(Ask(window), 2);
        Rational half = 3;
        for (Chance last = first.All; half > 1; half -= Rational.Of(1, 4))
        {
            Chance next = first.With([(0, window with { Of = window.Of.With(Even("a", half)) })]).All;
            Assert.True(next.Share.Value >= last.Share.Value);
            last = next;
        }
    }

    [Fact]
    public void With_CauseChangedInOneWindowOnly_IsRefused()
    {
        JointAnswer answer = Simulation.Ask(Ask(In(Sum(Even("a", 3)), -1, 1), In(Sum(Even("a", 3)), 0, 1)), 2);
        ArgumentException refused = Assert.Throws<ArgumentException>(() => answer.With([(0, In(Sum(Even("a", 1)), -1, 1))]));
        Assert.Contains("'a'", refused.Message, StringComparison.Ordinal);
    }

    /// <summary>The end of the interval solves |share - p| = z * root(p(1-p)/n): Wilson's own equation (1927).</summary>
    [Theory]
    [InlineData(0, 16384)]
    [InlineData(1, 16384)]
    [InlineData(8192, 16384)]
    [InlineData(100, 300)]
    [InlineData(299, 300)]
    [InlineData(300, 300)]
    public void Bound_OfACount_SolvesWilsonsEquation(int hits, int samples)
    {
        Chance chance = Simulation.ShareOf(hits, samples);
        double share = (double)hits / samples, far = share + (2 * hits <= samples ? chance.Share.Error : -chance.Share.Error);
        Assert.Equal(share, chance.Share.Value);
        Assert.Equal(Math.Abs(share - far), 3 * Math.Sqrt(far * (1 - far) / samples), 1e-9);
        Assert.True(chance.Share.Error > 0);
    }

    /// <summary>What the worst case settles is not drawn.</summary>
    [Fact]
    public void Ask_SettledWindows_AreExact()
    {
        Window sure = In(Sum(Even("a", 1)), -1, 1), never = In(Sum(Even("b", 1)), 2, 3), open = In(Sum(Even("c", 1)), 0, 1);
        JointAnswer answer = Simulation.Ask(new([sure, never, open], [[0], [0, 2], [1, 2], [0, 1]]), 1);
        Assert.Equal([Chance.Sure, Chance.Never, answer.Windows[2]], answer.Windows);
        Assert.Equal([Chance.Sure, answer.Windows[2], Chance.Never, Chance.Never], answer.Groups);
        Assert.Equal(Chance.Never, answer.All);
        Assert.Equal(Chance.Sure, Simulation.Ask(new([], []), 1).All);
    }

    [Fact]
    public void Ask_WrongQuestions_AreRefused()
    {
        Window fine = In(Sum(Even("a", 1)), 0, 1);
        Assert.Throws<ArgumentException>(() => Simulation.Ask(Ask(In(Sum(Even("a", 1)), 1, 0)), 1));
        Assert.Throws<ArgumentException>(() => Simulation.Ask(new([fine], [[1]]), 1));
        Assert.Throws<ArgumentException>(() => Simulation.Ask(Ask(fine, In(Sum(Even("a", 2)), 0, 1)), 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Simulation.Ask(Ask(fine), 1, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => Simulation.Ask(Ask(fine), 1).With([(1, fine)]));
        Assert.ThrowsAny<OperationCanceledException>(() => Simulation.Ask(Ask(fine), 1, token: new CancellationToken(canceled: true)));
    }

    /// <summary>Counts that fill no whole word nor block.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(63)]
    [InlineData(65)]
    [InlineData(300)]
    public void Ask_AnyNumberOfSamples_CountsThoseAlone(int samples)
    {
        JointAnswer answer = Simulation.Ask(Ask(In(Sum(Even("a", 1)), -2, 0), In(Sum(Even("a", 1)), 0, 2)), 1, samples);
        // A draw lies above or below the middle, and never on it.
        Assert.Equal(1, answer.Windows[0].Share.Value + answer.Windows[1].Share.Value, 12);
    }
}
