using System.Collections.Immutable;
using CsCheck;
using Setout.Core.Measures;
using Setout.Shop.Facts;
using Setout.Shop.Texts;
using Setout.Testing;

namespace Setout.Store.Tests.Contract;

/// <summary>What every store of facts has to keep. Each kind of store runs it in its own tests.</summary>
public abstract partial class FactStoreContract : IDisposable
{
    private int _places;

    /// <summary>A folder of this test's own.</summary>
    protected string Folder { get; } = Directory.CreateTempSubdirectory("setout-facts-").FullName;

    /// <summary>Opens the store at a place in the folder by a way of its own, as another program would.</summary>
    protected abstract IFactStore Open(string place);

    /// <summary>Lets go of what is open.</summary>
    protected virtual void Close()
    {
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        Close();
        Directory.Delete(Folder, recursive: true);
        GC.SuppressFinalize(this);
    }

    private string NewPlace() => $"p{Interlocked.Increment(ref _places)}";

    [Fact]
    public void Read_NothingAppended_IsEmpty() => Assert.Empty(Open("a").Read().Entries);

    [Fact]
    public void Append_OfNothing_LeavesNothing()
    {
        Assert.Equal(0, Open("a").Append());
        Assert.Equal(0, Open("a").Append(default(ImmutableArray<LogEntry>)));
        Assert.Empty(Open("a").Read().Entries);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Append_EachKind_ReadsBackAsItself(bool atOnce)
    {
        ImmutableArray<LogEntry> entries = FactSamples.EachKind;
        if (atOnce) Assert.Equal(entries.Length, Open("a").Append(entries));
        else Assert.All(entries, e => Assert.Equal(1, Open("a").Append(e)));
        Log log = Open("a").Read();
        Assert.Equal(entries.Select(FactSamples.Words), FactSamples.Words(log));
        Assert.Equal(entries.Select(FactText.Of), log.Entries.Select(FactText.Of));
    }

    [Fact]
    public void Append_Thirds_AreExact()
    {
        var bay = ExactLength.FromInches(Rational.Of(127, 12));
        Open("a").Append(FactSamples.Reading("a", "B.width", [bay, bay, bay]));
        ReadingEntry reading = Assert.IsType<ReadingEntry>(Assert.Single(Open("a").Read().Entries));
        // Three times a third is the whole, to the last fraction.
        Assert.Equal(ExactLength.FromInches(Rational.Of(127, 4)), reading.Values[0] + reading.Values[1] + reading.Values[2]);
    }

    [Fact]
    public void Append_LaterWithAnEarlierTime_StandsLast()
    {
        Open("a").Append(FactSamples.ReadAt("x", 30), FactSamples.ReadAt("b", 20));
        Open("a").Append(FactSamples.ReadAt("m", 10));
        Assert.Equal(["x", "b", "m"], Open("a").Read().Entries.Select(e => e.Id));
    }

    [Fact]
    public void Append_Again_ChangesNothing()
    {
        IFactStore store = Open("a");
        Assert.Equal(FactSamples.EachKind.Length, store.Append(FactSamples.EachKind));
        string[] before = [.. FactSamples.Words(store.Read())];
        Assert.Equal(0, store.Append(FactSamples.EachKind));
        Assert.Equal(0, Open("a").Append([.. FactSamples.EachKind.Reverse()]));
        Assert.Equal(before, FactSamples.Words(Open("a").Read()));
    }

    [Fact]
    public void Append_TwiceInOneCall_CountsOnce()
    {
        Assert.Equal(2, Open("a").Append(FactSamples.ReadAt("x", 1), FactSamples.ReadAt("y", 2), FactSamples.ReadAt("x", 1)));
        Assert.Equal(["x", "y"], Open("a").Read().Entries.Select(e => e.Id));
    }

    [Fact]
    public void Append_SomeOfThemThere_AppendsTheOthers()
    {
        Open("a").Append(FactSamples.ReadAt("x", 1));
        Assert.Equal(2, Open("a").Append(FactSamples.ReadAt("w", 0), FactSamples.ReadAt("x", 1), FactSamples.ReadAt("y", 2)));
        Assert.Equal(["x", "w", "y"], Open("a").Read().Entries.Select(e => e.Id));
    }

    [Fact]
    public void Append_IdTakenByOtherWords_IsAConflictAndNothingIsAppended()
    {
        Open("a").Append(FactSamples.ReadAt("x", 1, 24));
        FactStoreException refused = Assert.Throws<FactStoreException>(() => Open("a").Append(FactSamples.ReadAt("w", 0), FactSamples.ReadAt("x", 1, 25), FactSamples.ReadAt("y", 2)));
        Assert.True(refused.IsConflict);
        Assert.Contains("'x'", refused.Fault.Words, StringComparison.Ordinal);
        Assert.Contains("nothing was appended", refused.Fault.Remedy, StringComparison.Ordinal);
        Assert.Equal(FactSamples.Words(new Log([FactSamples.ReadAt("x", 1, 24)])), FactSamples.Words(Open("a").Read()));
    }

    [Fact]
    public void Append_OneIdWithTwoWordsInOneCall_IsAConflictAndNothingIsAppended()
    {
        Assert.True(Assert.Throws<FactStoreException>(() => Open("a").Append(FactSamples.ReadAt("x", 1, 24), FactSamples.ReadAt("x", 1, 25))).IsConflict);
        Assert.Empty(Open("a").Read().Entries);
    }

    [Fact]
    public void Append_IdsThatDifferInCaseOrAccent_AreDifferent()
    {
        string[] ids = ["k", "K", "\u00E9", "e\u0301", "e", "01", "1"];
        Assert.Equal(ids.Length, Open("a").Append([.. ids.Select(i => FactSamples.ReadAt(i, 1))]));
        Assert.Equal(ids, Open("a").Read().Entries.Select(e => e.Id));
    }

    public static TheoryData<string> Unwritable => [.. s_unwritable.Keys];

    private static readonly Dictionary<string, LogEntry> s_unwritable = new()
    {
        ["no id"] = new VoidEntry("", "2026-05-04T09:40:00Z", "a"),
        ["no time"] = new VoidEntry("b", "today", "a"),
        ["an unseen sign"] = new AllowEntry("b", "2026-05-04T09:40:00Z", "x", "y", "\u001b[31m"),
        ["a nought sign"] = new VoidEntry("b\0", "2026-05-04T09:40:00Z", "a"),
        ["half a letter"] = new AllowEntry("b", "2026-05-04T09:40:00Z", "x", "y", "half \uD83E of it"),
        ["too long a reason"] = new AllowEntry("b", "2026-05-04T09:40:00Z", "x", "y", new('a', 501)),
        ["less than nothing"] = new ReadingEntry("b", "2026-05-04T09:40:00Z", new("L.width"), [ExactLength.FromMillimetres(-1)], "", ""),
    };

    [Theory, MemberData(nameof(Unwritable))]
    public void Append_OneThatWouldNotReadBack_AppendsNothing(string what)
    {
        FactStoreException refused = Assert.Throws<FactStoreException>(() => Open("a").Append(FactSamples.ReadAt("x", 1), s_unwritable[what], FactSamples.ReadAt("y", 2)));
        Assert.False(refused.IsConflict);
        Assert.NotEmpty(refused.Fault.Words);
        Assert.Empty(Open("a").Read().Entries);
    }

    [Fact]
    public void Union_OfTwoStores_HoldsBothAndTwiceChangesNothing()
    {
        IFactStore desk = Open("desk"), phone = Open("phone");
        desk.Append(FactSamples.ReadAt("a", 10), FactSamples.ReadAt("c", 30));
        phone.Append(FactSamples.ReadAt("a", 10), FactSamples.ReadAt("b", 20), FactSamples.ReadAt("d", 40));
        var union = FactUnion.Of(desk.Read(), phone.Read());
        Assert.Equal(["b"], union.Late.Select(e => e.Id));
        Assert.Equal(2, desk.Append(union.Entries));
        Assert.Equal(["a", "c", "b", "d"], desk.Read().Entries.Select(e => e.Id));
        Assert.Empty(FactUnion.Of(desk.Read(), phone.Read()).Entries);
        Assert.Equal(0, desk.Append(phone.Read().Entries));
        Assert.Equal(4, desk.Read().Entries.Length);
    }

    [Fact]
    public void Append_ByChance_KeepsWhatAPlainListWouldKeep() => FactSamples.Random.Array[0, 4].Array[0, 5].Holds(calls =>
    {
        string place = NewPlace();
        IFactStore store = Open(place);
        var model = new List<LogEntry>();
        foreach (LogEntry[] call in calls)
        {
            var with = new List<LogEntry>(model);
            bool fits = true;
            foreach (LogEntry entry in call)
            {
                if (with.Find(e => e.Id == entry.Id) is { } there) fits &= FactSamples.Words(there) == FactSamples.Words(entry);
                else with.Add(entry);
            }
            if (fits)
            {
                Assert.Equal(with.Count - model.Count, store.Append([.. call]));
                model = with;
            }
            else
            {
                Assert.True(Assert.Throws<FactStoreException>(() => store.Append([.. call])).IsConflict);
            }
        }
        Assert.Equal(model.Select(FactSamples.Words), FactSamples.Words(Open(place).Read()));
    }, iter: 60, threads: 1);
}
