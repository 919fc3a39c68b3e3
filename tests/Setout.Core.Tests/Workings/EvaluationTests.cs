// Over 200 lines: every kind of working, on a graph small enough to be worked by hand.
using Setout.Core.Measures;
using Setout.Core.Workings;
using static Setout.Core.Tests.Workings.Quantities;

namespace Setout.Core.Tests.Workings;

public class EvaluationTests
{
    [Fact]
    public void Finish_SumWithThirds_StaysExact()
    {
        WorkedPiece worked = Work([Stated("whole", 100), new(Key("share"), "share", new Sum([Term.From("whole", 1, Key("whole"))], Rational.Of(1, 3)))]);
        Assert.Equal(Mm(Rational.Of(100, 3)), worked[Key("share")]);
        Assert.Empty(worked.Findings);
    }

    [Fact]
    public void Finish_SumOfQuantitiesAndFigures_AddsEachSoManyTimes()
    {
        // 400 less two slides of 12.7 less 0.8 of play: 373.8
        WorkedPiece worked = Work([Stated("opening", 400), new(Key("box"), "box", new Sum(
            Term.From("opening", 1, Key("opening")), Term.From("slides", -2, Mm(Rational.Of(127, 10)), Given), Term.From("play", -1, Mm(Rational.Of(8, 10)), Given)))]);
        Assert.Equal(Mm(Rational.Of(3738, 10)), worked[Key("box")]);
    }

    [Theory]
    [InlineData(true, 6)]
    [InlineData(false, 9)]
    public void Finish_Extreme_TakesTheOutermostTerm(bool isLeast, int expected)
    {
        WorkedPiece worked = Work([Stated("a", 7), Stated("b", 3), new(Key("e"), "e", new Extreme(
            [Term.From("a", 1, Key("a")), Term.From("b twice", 2, Key("b")), Term.From("figure", 1, Mm(9), Given)], isLeast))]);
        Assert.Equal(Mm(expected), worked[Key("e")]);
    }

    [Theory]
    [InlineData(Rounding.Down, 200)]
    [InlineData(Rounding.Up, 205)]
    [InlineData(Rounding.Nearest, 205)]
    public void Finish_ToCut_LandsOnTheGridInItsDirection(Rounding rounding, int tenths)
    {
        WorkedPiece worked = Work([Stated("exact", Rational.Of(203, 10)), new(Key("exact.to-cut"), "to cut", new ToCut(Key("exact"), Grid.HalfMillimetre, rounding, "why"))]);
        Assert.Equal(Mm(Rational.Of(tenths, 10)), worked[Key("exact").ToCut]);
    }

    [Fact]
    public void Finish_FigureThatNobodyKnows_ExpectsNothingOfWhatRestsOnItUntilItIsRead()
    {
        Quantity[] quantities = [new(Key("sheet"), "sheet", new Stated(Mm(1), Origin.Unknown)), Stated("opening", 400), Sum("box", (1, "opening"), (-2, "sheet")), Sum("front", (1, "box"))];
        WorkedPiece none = Work(quantities);
        Assert.Equal(["box", "front", "sheet"], none.Values.Values.Where(w => w.RestsOnUnknown).Select(w => w.Quantity.Key.Text).Order(StringComparer.Ordinal));
        // What is read is as it was read, and nothing lies over or under.
        WorkedPiece box = Work(quantities, ("box", Read(364)));
        Assert.Equal(ExactLength.Zero, box.Values[Key("box")].Over);
        Assert.False(box.Values[Key("front")].RestsOnUnknown);
        WorkedPiece sheet = Work(quantities, ("sheet", Read(18)));
        Assert.Equal(ExactLength.Zero, sheet.Values[Key("sheet")].Over);
        Assert.Equal(Mm(364), sheet[Key("front")]);
        Assert.False(sheet.Values[Key("box")].RestsOnUnknown);
    }

    [Fact]
    public void Work_AskedBeforeTheRestIsDefined_GivesTheSameAsAtTheEnd()
    {
        var evaluation = new Evaluation(Pins());
        evaluation.Define(Stated("a", 5));
        evaluation.Define(Sum("b", (2, "a")));
        Assert.Equal(Mm(10), evaluation.Work(Key("b"))!.Value);
        evaluation.Define(Sum("c", (1, "a"), (1, "b")));
        Assert.Equal(Mm(15), evaluation.Finish()[Key("c")]);
    }

    [Fact]
    public void Define_KeyTaken_Throws()
    {
        var evaluation = new Evaluation(Pins());
        evaluation.Define(Stated("a", 5));
        Assert.Throws<ArgumentException>(() => evaluation.Define(Stated("a", 6)));
    }

    [Fact]
    public void Finish_ReadingInTheMiddle_MovesAllDownstreamAndKeepsWhatWasExpected()
    {
        WorkedPiece worked = Work(
            [Stated("sheet", 18), Stated("outside", 600), Sum("inside", (1, "outside"), (-2, "sheet")), Sum("box", (1, "inside"), (-1, "sheet"))],
            ("inside", Read(563)));
        Worked inside = worked.Values[Key("inside")];
        Assert.Equal((Mm(563), Mm(564), Mm(-1)), (inside.Value, inside.Expected, inside.Over));
        Assert.Equal(Mm(563 - 18), worked[Key("box")]);
        Assert.Equal(Mm(600), worked[Key("outside")]);
        Assert.NotNull(inside.Pin);
        Assert.Equal(ExactLength.Zero, worked.Values[Key("box")].Over);
    }

    [Theory]
    [InlineData(Combining.Mean, 12)]
    [InlineData(Combining.Narrowest, 10)]
    [InlineData(Combining.Widest, 15)]
    public void Finish_SeveralSpots_AreCombinedByTheRuleOfTheQuantity(Combining combining, int expected)
    {
        WorkedPiece worked = Work([new(Key("q"), "q", new Stated(Mm(20), Given), combining)], ("q", Read(11, 15, 10)));
        Assert.Equal(Mm(expected), worked[Key("q")]);
    }

    [Fact]
    public void Finish_ReadingOfWhatCannotBeWorkedOut_CountsAllTheSame()
    {
        WorkedPiece worked = Work([Sum("a", (1, "missing")), Sum("b", (2, "a"))], ("a", Read(7)));
        Assert.Equal(Mm(14), worked[Key("b")]);
        Assert.Equal(Mm(7), worked.Values[Key("a")].Expected);
        Finding finding = Assert.Single(worked.Findings);
        Assert.Equal(("working.unknown-key", "a"), (finding.Code, finding.Key));
    }

    [Fact]
    public void Finish_ReadingOfUnknownQuantity_IsAFindingAndChangesNothing()
    {
        WorkedPiece worked = Work([Stated("a", 5)], ("gone.width", Read(3)));
        Finding finding = Assert.Single(worked.Findings);
        Assert.Equal(("reading.no-quantity", Severity.Warn, "gone"), (finding.Code, finding.Severity, finding.Key));
        Assert.Contains("gone.width", finding.Words, StringComparison.Ordinal);
        Assert.Equal(Mm(5), worked[Key("a")]);
    }

    [Fact]
    public void Finish_UnknownKey_IsAFindingWithThePathAndLeavesDependentsWithoutValue()
    {
        WorkedPiece worked = Work([Stated("a", 5), Sum("b", (1, "a"), (1, "nowhere")), Sum("c", (1, "b"))]);
        Finding finding = Assert.Single(worked.Findings);
        Assert.Equal(("working.unknown-key", Severity.Stop), (finding.Code, finding.Severity));
        Assert.Contains("b from nowhere", finding.Words, StringComparison.Ordinal);
        Assert.Equal([Key("a")], worked.Values.Keys);
        Assert.Throws<KeyNotFoundException>(() => worked[Key("c")]);
    }

    [Fact]
    public void Finish_ThreeAskingForOneUnknownKey_IsOneFinding()
    {
        WorkedPiece worked = Work([Sum("b", (1, "nowhere")), Sum("c", (1, "nowhere")), Sum("d", (1, "nowhere"))]);
        Assert.Single(worked.Findings);
        Assert.Empty(worked.Values);
    }

    [Fact]
    public void Finish_RingOfOne_IsAFinding()
    {
        WorkedPiece worked = Work([Sum("a", (1, "a"))]);
        Finding finding = Assert.Single(worked.Findings);
        Assert.Equal("working.ring", finding.Code);
        Assert.Contains("a from a.", finding.Words, StringComparison.Ordinal);
        Assert.Empty(worked.Values);
    }

    [Fact]
    public void Finish_RingOfThree_NamesThePathAndLeavesTheRestStanding()
    {
        WorkedPiece worked = Work([Stated("x", 1), Sum("a", (1, "b")), Sum("b", (1, "c")), Sum("c", (1, "a")), Sum("d", (1, "a"), (1, "x")), Sum("e", (1, "x"))]);
        Finding finding = Assert.Single(worked.Findings);
        Assert.Contains("a from b from c from a", finding.Words, StringComparison.Ordinal);
        Assert.Equal([Key("e"), Key("x")], worked.Values.Keys.Order());
    }

    [Fact]
    public void Finish_LongRing_IsOneFindingThatCanBeRead()
    {
        const int count = 50_000;
        WorkedPiece worked = Work(Enumerable.Range(0, count).Select(i => Sum($"q{i}", (1, $"q{(i + 1) % count}"))));
        Finding finding = Assert.Single(worked.Findings);
        Assert.Equal("working.ring", finding.Code);
        Assert.InRange(finding.Words.Length, 20, 400);
        Assert.Contains("q0 from q1", finding.Words, StringComparison.Ordinal);
        Assert.Contains("from q0.", finding.Words, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("a", "b")]
    [InlineData("b", "a")]
    public void Finish_ReadingWithinARing_OpensIt(string first, string second)
    {
        // With b read at 7 there is no ring left: a is 7 + 1, and b would have been expected at 8 + 1.
        Dictionary<string, Quantity> both = new() { ["a"] = Plus("a", "b"), ["b"] = Plus("b", "a") };
        WorkedPiece worked = Work([both[first], both[second]], ("b", Read(7)));
        Assert.Empty(worked.Findings);
        Assert.Equal((Mm(8), Mm(7)), (worked[Key("a")], worked[Key("b")]));
        Assert.Equal(Mm(9), worked.Values[Key("b")].Expected);

        static Quantity Plus(string key, string of) => new(Key(key), key, new Sum(Term.From(of, 1, Key(of)), Term.From("one", 1, Mm(1), Given)));
    }

    [Fact]
    public void Finish_ChainOfAHundredThousand_DoesNotExhaustTheStack()
    {
        const int count = 100_000;
        // Defined back to front, so that the first one asked for needs all the others.
        IEnumerable<Quantity> chain = Enumerable.Range(0, count).Reverse()
            .Select(i => i == 0 ? Stated("q0", 1) : new Quantity(Key($"q{i}"), "q", new Sum(Term.From("before", 1, Key($"q{i - 1}")), Term.From("one", 1, Mm(1), Given))));
        WorkedPiece worked = Work(chain);
        Assert.Equal(Mm(count), worked[Key($"q{count - 1}")]);
        Assert.Equal(count, worked.Order.Length);
    }

    [Fact]
    public void Finish_ChainOfReadings_DoesNotExhaustTheStackEither()
    {
        const int count = 20_000;
        Quantity[] chain = [.. Enumerable.Range(0, count).Reverse().Select(i => i == 0 ? Stated("q0", 1) : Sum($"q{i}", (1, $"q{i - 1}")))];
        WorkedPiece worked = Work(chain, [.. chain.Select((q, i) => (q.Key.Text, Read(i)))]);
        // The one read at i stands before the one read at i + 1: each was expected where its forerunner was read.
        Assert.All(Enumerable.Range(1, count - 1), i => Assert.Equal(Mm(-1), worked.Values[Key($"q{i}")].Over));
    }
}
