using CsCheck;
using Setout.Core.Measures;
using Setout.Shop.Facts;
using Setout.Shop.Texts;
using Setout.Testing;

namespace Setout.Shop.Tests.Facts;

public class FactUnionTests
{
    private static readonly Gen<Log> s_log = Gen.Select(Gen.Int[0, 20], Gen.Int[0, 59]).Array[0, 12]
        .Select(pairs => new Log([.. pairs.DistinctBy(p => p.Item1).Select(p => Read($"e{p.Item1}", p.Item1))]));

    private static LogEntry Read(string id, int minute, int inches = 24) =>
        new ReadingEntry(id, $"2026-05-04T09:{minute:00}:00Z", new("L.width"), [ExactLength.FromInches(inches)], "", "");

    [Fact]
    public void Of_Anything_LacksWhatUnionAdds() => Gen.Select(s_log, s_log).Holds((there, other) =>
    {
        var union = FactUnion.Of(there, other);
        var after = new Log([.. there.Entries, .. union.Entries]);
        return after.Entries.Select(e => e.Id).Order().SequenceEqual(there.Union(other).Entries.Select(e => e.Id).Order())
            && FactUnion.Of(after, other).Entries.IsEmpty
            && FactUnion.Of(after, there).Entries.IsEmpty
            // Where nothing is late, appending gives the very order of the union.
            && (!union.Late.IsEmpty || after.Entries.SequenceEqual(there.Union(other).Entries));
    });

    [Fact]
    public void Of_Older_IsLate()
    {
        var union = FactUnion.Of(new([Read("b", 20)]), new([Read("a", 10), Read("c", 30)]));
        Assert.Equal(["a", "c"], union.Entries.Select(e => e.Id));
        Assert.Equal(["a"], union.Late.Select(e => e.Id));
    }

    [Fact]
    public void Of_NothingThere_IsAllOfTheOtherInItsOrderAndNoneLate()
    {
        var union = FactUnion.Of(Log.Empty, new([Read("b", 20), Read("a", 10)]));
        Assert.Equal(["b", "a"], union.Entries.Select(e => e.Id));
        Assert.Empty(union.Late);
    }

    [Fact]
    public void Of_OneIdWithTwoWords_IsAConflict() =>
        Assert.True(Assert.Throws<FactStoreException>(() => FactUnion.Of(new([Read("a", 1)]), new([Read("a", 1, 25)]))).IsConflict);
}
