using System.Collections.Immutable;
using Setout.Shop.Documents;

namespace Setout.Shop.Tests.Documents;

public sealed class StateTreeTests
{
    // Each state as its number and its parent (0 for none); the number of the one pointed at.
    private static ImmutableArray<HistoryLine> History(int head, params (int Number, int Parent)[] states) =>
        [.. states.Select(s => new HistoryLine(new(s.Number, s.Parent == 0 ? null : s.Parent, $"step {s.Number}", "2026-05-04T09:40:00Z"), [], s.Number == head))];

    private static string Words(ImmutableArray<PlacedState> placed) =>
        string.Join(", ", placed.Select(p => $"{p.Line.State.Number} {p.Place}{(p.Instead is { } other ? $" for {other.Number}" : "")}"));

    [Fact]
    public void Of_OneLine_IsBeforeAndNow() => Assert.Equal("3 Now, 2 Before, 1 Before", Words(StateTree.Of(History(3, (1, 0), (2, 1), (3, 2)))));

    [Fact]
    public void Of_WhatWasUndone_CanBeMadeAgain() => Assert.Equal("3 Undone, 2 Undone, 1 Now", Words(StateTree.Of(History(1, (1, 0), (2, 1), (3, 2)))));

    [Fact]
    public void Of_ABranchThatWasLeft_SaysWhatWasDoneInstead() =>
        Assert.Equal("6 Undone, 5 Now, 4 Before, 3 LeftAside for 4, 2 LeftAside for 4, 1 Before", Words(StateTree.Of(History(5, (1, 0), (2, 1), (3, 2), (4, 1), (5, 4), (6, 5)))));

    [Fact]
    public void Of_NoState_IsEmpty() => Assert.Empty(StateTree.Of([]));

    /// <summary>Against the definition of each place, looked for by climbing from each state.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void Of_RandomTrees_PlacesAreAsDefined(int seed)
    {
        var random = new Random(seed);
        for (int trial = 0; trial < 50; trial++)
        {
            int count = random.Next(1, 40);
            (int Number, int Parent)[] states = [.. Enumerable.Range(1, count).Select(n => (n * 3, n == 1 ? 0 : random.Next(1, n) * 3))];
            int head = random.Next(1, count + 1) * 3;
            var parents = states.ToDictionary(s => s.Number, s => s.Parent);
            IEnumerable<int> Up(int from)
            {
                for (int at = from; at != 0; at = parents[at]) yield return at;
            }
            ImmutableArray<PlacedState> placed = StateTree.Of(History(head, states));
            Assert.Equal(states.Select(s => (long)s.Number).Reverse(), placed.Select(p => p.Line.State.Number));
            foreach (PlacedState state in placed)
            {
                int number = (int)state.Line.State.Number;
                StatePlace wanted = number == head ? StatePlace.Now : Up(head).Contains(number) ? StatePlace.Before : Up(number).Contains(head) ? StatePlace.Undone : StatePlace.LeftAside;
                Assert.Equal(wanted, state.Place);
                if (wanted == StatePlace.LeftAside)
                {
                    int fork = Up(number).First(n => Up(head).Contains(n));
                    Assert.Equal(Up(head).First(n => parents[n] == fork), state.Instead!.Number);
                }
            }
        }
    }
}
