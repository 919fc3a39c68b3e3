using System.Collections.Immutable;
using Setout.Shop.Facts;
using Setout.Shop.Texts;

namespace Setout.Store.Tests.Contract;

/// <content>Several at once, each in a thread of its own with a way of its own to the store, all let go together.</content>
public abstract partial class FactStoreContract
{
    private const int Calls = 20, InACall = 10;

    [Fact]
    public async Task Append_ByTwoAtOnce_LosesNothingAndKeepsCallsWhole()
    {
        await Together(Writer("a"), Writer("b"));
        LogEntry[] entries = [.. Open("log").Read().Entries];
        Assert.Equal(2 * Calls * InACall, entries.Length);
        // Those of one call stand together and in order, and the calls of one writer do.
        Assert.All(entries.Chunk(InACall), call => Assert.Equal(Enumerable.Range(0, InACall).Select(i => $"{call[0].Id[..^1]}{i}"), call.Select(e => e.Id)));
        foreach (string writer in (string[])["a", "b"])
            Assert.Equal(IdsOf(writer), entries.Select(e => e.Id).Where(id => id.StartsWith(writer, StringComparison.Ordinal)));
    }

    [Fact]
    public async Task Append_OfTheSameByTwoAtOnce_CountsEachOnce()
    {
        int[] added = new int[2];
        await Together(() => added[0] = Write("a"), () => added[1] = Write("a"));
        Assert.Equal(Calls * InACall, added.Sum());
        Assert.Equal(IdsOf("a"), Open("log").Read().Entries.Select(e => e.Id));
    }

    [Fact]
    public async Task Append_OfConflictsByTwoAtOnce_LetsOneOfThemStand()
    {
        int stand = 0;
        void Try(int inches)
        {
            for (int i = 0; i < Calls; i++)
            {
                try
                {
                    Open("log").Append(FactSamples.ReadAt($"x{i}", i, inches));
                    Interlocked.Increment(ref stand);
                }
                catch (FactStoreException refused) when (refused.IsConflict)
                {
                    // The other was first.
                }
            }
        }
        await Together(() => Try(24), () => Try(25));
        Assert.Equal(Calls, stand);
        Assert.Equal(Calls, Open("log").Read().Entries.Length);
    }

    [Fact]
    public async Task Read_WhileAnotherWrites_SeesWholeCallsAndNeverLess()
    {
        bool ended = false;
        int reads = 0;
        Action write = Writer("a");
        await Together(
            () =>
            {
                try
                {
                    write();
                }
                finally
                {
                    Volatile.Write(ref ended, true);
                }
            },
            () =>
            {
                int seen = 0;
                string[] expected = [.. IdsOf("a")];
                do
                {
                    string[] ids = [.. Open("log").Read().Entries.Select(e => e.Id)];
                    Assert.Equal(0, ids.Length % InACall);
                    Assert.True(ids.Length >= seen, $"{ids.Length} after {seen}");
                    Assert.Equal(expected[..ids.Length], ids);
                    seen = ids.Length;
                    reads++;
                }
                while (!Volatile.Read(ref ended));
            });
        Assert.True(reads > 0);
        Assert.Equal(IdsOf("a"), Open("log").Read().Entries.Select(e => e.Id));
    }

    private Action Writer(string name) => () => Write(name);

    private int Write(string name) => Enumerable.Range(0, Calls).Sum(call => Open("log").Append(CallOf(name, call)));

    private static ImmutableArray<LogEntry> CallOf(string name, int call) =>
        [.. Enumerable.Range(0, InACall).Select(i => FactSamples.ReadAt($"{name}{call:000}-{i}", call, (call * InACall) + i + 1))];

    private static IEnumerable<string> IdsOf(string name) => Enumerable.Range(0, Calls).SelectMany(call => CallOf(name, call)).Select(e => e.Id);

    private static async Task Together(params Action[] actions)
    {
        using var start = new Barrier(actions.Length);
        await Task.WhenAll(actions.Select(action => Task.Factory.StartNew(() =>
        {
            start.SignalAndWait();
            action();
        }, CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default)));
    }
}
