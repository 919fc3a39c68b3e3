using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Shop.Edits;
using Setout.Shop.Tests.SettingOut;

namespace Setout.Shop.Tests.Edits;

/// <summary>What can be typed at a dimension, and where dividers can go.</summary>
public class DrawnSizeTests
{
    // Two decks beside one another, at different heights: each has a line to the other.
    private const string Twin = """
        setout: 1
        name: Twin
        unit: in
        materials:
          ply: {panel: hardwood plywood, label: 3/4, thickness: 3/4}
        assembly:
          - case: C
            of: ply
            width: 40
            height: 40
            depth: 12
            across:
              - opening: A
                width: 18
                down: [{opening: A1, height: 10}, {deck: E1}, {opening: A2, height: rest}]
              - partition: P
              - opening: B
                width: rest
                down: [{opening: B1, height: 14}, {deck: E2}, {opening: B2, height: rest}]
        """;

    [Theory]
    [InlineData(Sample.Bench, "F.width", "F.width")]
    [InlineData(Sample.Bench, "L1.front.height.as-cut", "L1.front.height")]
    [InlineData(Sample.Bench, "L.width", "L.width")]
    [InlineData(Sample.Bench, "L.rail.length.as-cut", "L.width")]
    [InlineData(Sample.Cabinet, "B2.height", "B2.height")]
    [InlineData(Sample.Bench, "carcase.thickness", "carcase.thickness")]
    public void Of_ADimensionThatIsGiven_IsTypedThere(string sample, string key, string given)
    {
        var drawn = DrawnSize.Of(RandomEditsTests.SetOut(Sample.Text(sample)), key);
        Assert.Equal(given, drawn.Own?.Key);
        Assert.Empty(drawn.From);
    }

    [Fact]
    public void Of_AHeightOfATop_NamesWhatItFollowsFrom()
    {
        var drawn = DrawnSize.Of(RandomEditsTests.SetOut(Sample.Text(Sample.Bench)), "T.height");
        Assert.Null(drawn.Own);
        Assert.Contains("F.height", drawn.From.Select(f => f.Key));
        Assert.Contains("slab.thickness", drawn.From.Select(f => f.Key));
        Assert.Equal("slab", drawn.From.Single(f => f.Key == "slab.thickness").At);
    }

    /// <summary>What is named behind a size moves it: no way out is offered that leads nowhere.</summary>
    [Theory, InlineData(Sample.Bench), InlineData(Sample.Cabinet)]
    public void Of_WhatADimensionFollowsFrom_IsReachedByItsWorking(string sample)
    {
        SetPiece set = RandomEditsTests.SetOut(Sample.Text(sample));
        foreach (QuantityKey key in set.Dimensions.Select(d => d.Key))
            foreach (GivenSize from in DrawnSize.Of(set, key.Text).From)
                Assert.True(Reaches(set, key, from.Key, []), $"{key} does not depend on {from.Key}");
    }

    private static bool Reaches(SetPiece set, QuantityKey key, string to, HashSet<string> seen) => key.Exact.Text == to || (seen.Add(key.Text) && set.Worked.Values.TryGetValue(key, out Worked? worked) && (worked.Quantity.Working switch
    {
        Sum sum => sum.Terms.Select(t => t.Of),
        Extreme extreme => extreme.Of.Select(t => t.Of),
        ToCut cut => [cut.Exact],
        _ => [],
    }).OfType<QuantityKey>().Any(k => Reaches(set, k, to, seen)));

    [Fact]
    public void Moves_EveryPlaceWorthStoppingAt_IsWhatItSays()
    {
        SetPiece before = RandomEditsTests.SetOut(Twin);
        DividerMove[] moves = [.. DividerMove.Of(before)];
        Assert.Equal(["E1", "E2", "P"], moves.Select(m => m.Key).Order(StringComparer.Ordinal));
        Assert.Contains("in line with E2", moves.Single(m => m.Key == "E1").Snaps.SelectMany(s => s.Words.Split(", ")));
        foreach (DividerMove move in moves)
        {
            Assert.All(move.Snaps, s => Assert.True(s.Size.Sign > 0 && s.Size < move.Room));
            foreach (DividerSnap snap in move.Snaps)
            {
                Edited edited = new MoveDivider(move.Key, snap.Typed).ApplyTo(Twin);
                Assert.True(edited.IsDone, $"{move.Key} to {snap.Typed}: {edited.Findings.FirstOrDefault()?.Words}");
                SetPiece after = RandomEditsTests.SetOut(edited.Text!);
                ExactLength Size(string opening) => Space(after, opening) is var space && move.IsAcross ? Space(after, opening).SizeX : space.SizeZ;
                ExactLength step = after.Grid.Step, all = Size(move.Before) + Size(move.After);
                foreach (string words in snap.Words.Split(", "))
                {
                    ExactLength off = words switch
                    {
                        "equal spaces" => Size(move.Before) - Size(move.After),
                        "a third at the left" or "a third above" => Size(move.Before) - (all / Rational.Of(3)),
                        "a third at the right" or "a third below" => Size(move.After) - (all / Rational.Of(3)),
                        _ => Face(after, move) - Face(after, moves.Single(m => words == $"in line with {m.Key}")),
                    };
                    Assert.True(off.Abs() <= step, $"{move.Key} at {snap.Typed}, {words}: {off} off");
                }
            }
        }
    }

    private static Placement Space(SetPiece set, string opening) => set.Openings.Single(o => o.Key == opening).Space;

    // The face towards the first opening, from the spaces as they are set out.
    private static ExactLength Face(SetPiece set, DividerMove move) => move.IsAcross ? Space(set, move.Before).X + Space(set, move.Before).SizeX : Space(set, move.Before).Z;

    [Fact]
    public void Moves_OfPosts_AreFoundAndPiecesThatAreCountedHaveNone()
    {
        Assert.Equal(["M1", "M2"], DividerMove.Of(RandomEditsTests.SetOut(Sample.Text(Sample.Bench))).Select(m => m.Key));
        SetPiece bench = RandomEditsTests.SetOut(Sample.Text(Sample.Bench));
        DividerMove first = DividerMove.Of(bench)[0];
        Assert.Equal((ExactLength.FromInches(21), ExactLength.FromInches(43)), (first.Size, first.Room));
    }

    [Fact]
    public void Tree_OfABench_HoldsAllThatHasAKeyOnceAndInItsPlace()
    {
        SetPiece set = RandomEditsTests.SetOut(Sample.Text(Sample.Bench));
        PieceNode[] tree = [.. PieceTree.Of(set.Piece)];
        Assert.Equal(["F", "T"], tree.Select(n => n.Key));
        Assert.Equal(["L", "M1", "K", "M2", "R"], tree[0].Within.Select(n => n.Key));
        Assert.Equal(["L1", "L2", "L3", "L4"], tree[0].Within[0].Within.Select(n => n.Key));
        string[] all = [.. tree.SelectMany(n => n.All).Select(n => n.Key)];
        Assert.Equal(all.Length, all.Distinct().Count());
        Assert.All(all, k => Assert.True(set.Piece.Keys.ContainsKey(k)));
    }
}
