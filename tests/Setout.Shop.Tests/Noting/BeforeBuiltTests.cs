using Setout.Core.Fit;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Shop.Noting;
using Setout.Shop.Plans;
using Setout.Shop.Tests.Plans;
using Setout.Shop.Texts;

namespace Setout.Shop.Tests.Noting;

/// <summary>Openings that are read, and cut by, while what bounds them is not marked cut.</summary>
public class BeforeBuiltTests
{
    private static string[] MissingOf(SetPiece set, string key) => [.. BeforeBuilt.Missing(set, new(key)).Select(p => p.Key)];

    private static Finding[] Told(SetPiece set) => [.. set.Findings.Where(f => f.Code == BeforeBuilt.Code)];

    // By hand from the drawings of the samples: a bay comes of its rails and lies between its slide panels, or its posts; an opening of a case between sides, decks and partitions.
    [Theory]
    [InlineData("luthiers-bench", "L.width", "L.rail L.panel")]
    [InlineData("luthiers-bench", "L3.opening", "L.rail L.panel")]
    [InlineData("luthiers-bench", "K.width", "F.post K.rail")]
    [InlineData("jar-cabinet", "B2.width", "C.deck C.side P")]
    [InlineData("plan-chest", "C.opening.width", "C.deck C.side")]
    [InlineData("luthiers-bench", "L3.end.length", "")]
    [InlineData("luthiers-bench", "boxes.thickness", "")]
    [InlineData("luthiers-bench", "nothing.width", "")]
    // The width of a case is that outside, and no opening.
    [InlineData("jar-cabinet", "C.width", "")]
    public void Missing_OfAPieceOnPaper_IsWhatBoundsTheOpening(string sample, string key, string parts) =>
        Assert.Equal(parts.Split(' ', StringSplitOptions.RemoveEmptyEntries).Order(), MissingOf(Sample.Source(sample).SetOut(), key).Order());

    [Fact]
    public void Reading_OfABayThatIsNotCut_SaysSoUntilItIsMarked()
    {
        var bench = new AtTheBench("luthiers-bench.yaml");
        bench.Record("L.width", "19 1/2");
        Finding told = Assert.Single(Told(bench.Set));
        Assert.Equal(Severity.Warn, told.Severity);
        Assert.Contains("counts as the opening of the built piece; not marked cut: bay L rail and bay L slide panel", told.Words, StringComparison.Ordinal);
        Assert.Contains("setout mark FILE cut L.rail L.panel", told.Remedy, StringComparison.Ordinal);
        Assert.Contains("void entry e0", told.Remedy, StringComparison.Ordinal);
        // One rail of the bay is missing still.
        bench.Mark(Progress.Cut, "L.rail#1 L.panel");
        Assert.Equal(["L.rail"], MissingOf(bench.Set, "L.width"));
        Assert.Equal(["L.rail#2", "L.rail#3", "L.rail#4"], BeforeBuilt.Keys(bench.Set, BeforeBuilt.Missing(bench.Set, new("L.width"))));
        Assert.Single(Told(bench.Set));
        bench.Mark(Progress.Cut, "L.rail#2 L.rail#3 L.rail#4");
        Assert.Empty(Told(bench.Set));
    }

    [Fact]
    public void Reading_OfABayWhosePartsWereReadOffTheSaw_WantsNoMark()
    {
        var bench = new AtTheBench("luthiers-bench.yaml");
        bench.Record("L.rail.length.as-cut", "21").Mark(Progress.Cut, "L.panel").Record("L.width", "19 1/2");
        Assert.Empty(Told(bench.Set));
    }

    [Fact]
    public void Reading_ForPages_NamesNoCommandAndNoEntry()
    {
        PieceSource source = new AtTheBench("luthiers-bench.yaml").Record("L.width", "19 1/2").Source;
        Finding told = Assert.Single(Told(source.For(Hand.Pages).SetOut()));
        Assert.DoesNotContain("setout", told.Remedy, StringComparison.Ordinal);
        Assert.DoesNotContain("e0", told.Remedy, StringComparison.Ordinal);
        Assert.Contains("void that reading", told.Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void Mark_OfADrawerWhoseBayIsNotCut_SaysWhichMarksAreMissing()
    {
        var bench = new AtTheBench("luthiers-bench.yaml");
        bench.Record("L.width", "19 1/2").Mark(Progress.Cut, "L1");
        var mark = (MarkEntry)bench.Source.Log.Entries[^1];
        Finding told = Assert.Single(NotedMark.Early(bench.Set, mark));
        Assert.Equal("mark.before-built", told.Code);
        Assert.Contains("not marked cut: bay L rail and bay L slide panel", told.Words, StringComparison.Ordinal);
        // What is cut before its opening is read is told as waiting, and what the same mark names is not missing.
        Assert.Empty(NotedMark.Early(bench.Set, mark with { Keys = ["R1.side"] }));
        bench.Mark(Progress.Cut, "L.rail L.panel L2.side");
        Assert.Empty(NotedMark.Early(bench.Set, (MarkEntry)bench.Source.Log.Entries[^1]));
    }
}
