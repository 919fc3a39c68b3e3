using Setout.Core.Measures;
using Setout.Core.Workings;
using Setout.Shop.Texts;

namespace Setout.Shop.Tests.Texts;

public class LogTests
{
    private static ReadingEntry Read(string id, int minute, int value, string spot = "", string key = "L.width") =>
        new(id, $"2026-05-04T09:{minute:00}:00Z", new(key), [ExactLength.FromMillimetres(value)], "tape", spot);

    private static VoidEntry Void(string id, int minute, string entry) => new(id, $"2026-05-04T09:{minute:00}:00Z", entry);

    private static string Ids(Log log) => string.Join(' ', log.Standing.Select(e => e.Id));

    private static string Values(Log log) => string.Join(' ', log.Pins()[new("L.width")].Values.Select(v => v.Millimetres.ToString()).Order(StringComparer.Ordinal));

    [Fact]
    public void Standing_Voided_IsLeftOut() => Assert.Equal("a", Ids(new([Read("a", 1, 1), Read("b", 2, 2), Void("v", 3, "b")])));

    [Fact]
    public void Standing_VoidingVoided_StandsAgain()
    {
        Assert.Equal("a", Ids(new([Read("a", 1, 1), Void("v", 2, "a"), Void("w", 3, "v")])));
        Assert.Equal("", Ids(new([Read("a", 1, 1), Void("v", 2, "a"), Void("w", 3, "v"), Void("x", 4, "w")])));
    }

    [Fact]
    public void Standing_TwoVoidingsOneTakenBack_StaysVoided() =>
        Assert.Equal("", Ids(new([Read("a", 1, 1), Void("v", 2, "a"), Void("w", 3, "a"), Void("x", 4, "v")])));

    [Fact]
    public void Standing_AnyOrder_IsTheSame()
    {
        Log log = new([Void("w", 3, "v"), Void("v", 2, "a"), Read("a", 1, 1)]);
        Assert.Equal("a", Ids(log));
    }

    [Fact]
    public void Standing_VoidingsInACircle_NeitherHangsNorThrows() =>
        Assert.Equal("a", Ids(new([Read("a", 1, 1), Void("v", 2, "w"), Void("w", 3, "v"), Void("x", 4, "x")])));

    [Fact]
    public void Standing_LongChainOfVoidings_IsFollowedToItsEnd()
    {
        const int links = 100_001;
        var log = new Log([Read("e0", 1, 1), .. Enumerable.Range(1, links).Select(i => Void($"e{i}", 2, $"e{i - 1}"))]);
        Assert.Empty(log.Standing);
    }

    [Fact]
    public void Pins_LaterReading_Supersedes() => Assert.Equal("2", Values(new([Read("a", 1, 1), Read("b", 2, 2)])));

    [Fact]
    public void Pins_Spots_StandTogether() => Assert.Equal("1 2", Values(new([Read("a", 1, 1, "top"), Read("b", 2, 2, "bottom")])));

    [Fact]
    public void Pins_SameSpotAgain_SupersedesThatSpot() => Assert.Equal("2 3", Values(new([Read("a", 1, 1, "top"), Read("b", 2, 2, "bottom"), Read("c", 3, 3, "top")])));

    [Fact]
    public void Pins_ReadingWithoutSpotAfterSpots_ReplacesThem() => Assert.Equal("3", Values(new([Read("a", 1, 1, "top"), Read("b", 2, 2, "bottom"), Read("c", 3, 3)])));

    [Fact]
    public void Pins_SpotAfterReadingWithoutSpot_ReplacesIt() => Assert.Equal("2", Values(new([Read("a", 1, 1), Read("b", 2, 2, "top")])));

    [Fact]
    public void Pins_LastReadingVoided_EarlierOneCountsAgain() => Assert.Equal("1", Values(new([Read("a", 1, 1), Read("b", 2, 2), Void("v", 3, "b")])));

    [Fact]
    public void Pins_AllVoided_IsGone() => Assert.Empty(new Log([Read("a", 1, 1), Void("v", 3, "a")]).Pins());

    [Fact]
    public void Pins_OneEntrySeveralValues_KeepsThemAll()
    {
        ReadingEntry two = Read("a", 1, 1) with { Values = [ExactLength.FromMillimetres(5), ExactLength.FromMillimetres(4)] };
        Assert.Equal("4 5", Values(new([two])));
    }

    [Fact]
    public void Union_SharedEntries_CountOnceInOrderOfTime()
    {
        Log mine = new([Read("a", 1, 1), Read("c", 3, 3)]), theirs = new([Read("a", 1, 1), Read("b", 2, 2), Read("d", 4, 4)]);
        Assert.Equal(["a", "b", "c", "d"], mine.Union(theirs).Entries.Select(e => e.Id));
        Assert.Equal(mine.Union(theirs).Entries.Select(e => e.Id), theirs.Union(mine).Entries.Select(e => e.Id));
    }

    [Fact]
    public void Union_SameTime_IsTheSameBothWays()
    {
        Log mine = new([Read("b", 1, 1)]), theirs = new([Read("a", 1, 2)]);
        Assert.Equal(mine.Union(theirs).Entries.Select(e => e.Id), theirs.Union(mine).Entries.Select(e => e.Id));
    }

    [Fact]
    public void Union_NothingNew_ChangesNothing()
    {
        Log log = new([Read("b", 2, 1), Read("a", 1, 2)]);
        Assert.Same(log, log.Union(log));
        Assert.Same(log, log.Union(Log.Empty));
        Log merged = log.Union(new([Read("c", 3, 3)]));
        Assert.Same(merged, merged.Union(new([Read("c", 3, 3)])));
    }

    [Fact]
    public void Union_TextsOneAfterTheOther_ReadsEachIdOnce()
    {
        string entry = LogText.Write(Read("a", 1, 1)), other = LogText.Write(Read("b", 2, 2));
        TextRead<Log> read = LogText.Read(LogText.Head + entry + other + entry);
        Assert.Empty(read.Findings);
        Assert.Equal(["a", "b"], read.Value!.Entries.Select(e => e.Id));
    }
}
