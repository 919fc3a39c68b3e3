using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Shop.Plans;
using Setout.Shop.Tests.Keys;

namespace Setout.Shop.Tests.SettingOut;

/// <summary>Equal openings by their number come out as the list that they stand for.</summary>
public class CountedOpeningTests
{
    private const string Head = """
        setout: 1
        name: Seed drawers
        unit: in
        materials:
          ply: {panel: hardwood plywood, thickness: 3/4}
          thin: {panel: hardwood plywood, thickness: 1/4}
        drawers:
          d: {sides: ply, bottom: thin, front: ply}
        doors:
          e: {of: ply}
        assembly:
          - {case: C, of: ply, width: 40, height: 30, depth: 16, 
        """;

    /// <summary>By hand: 40 - 1 1/2 - 3 x 3/4 = 36 1/4 shared by four is 9 1/16 on the grid of 1/32; exactly.</summary>
    [Fact]
    public void FourOpenings_ShareTheWidth()
    {
        SetPiece set = Sample.SetOut($"{Head}across: {{openings: 4, key: A}}}}");
        Assert.Equal(["A1", "A2", "A3", "A4"], set.Openings.Select(o => o.Key).Where(k => k != "C"));
        Assert.Equal(["A1-2", "A2-3", "A3-4"], set.Parts.Where(p => p.Role == PartRole.Partition).Select(p => p.Key));
        Sample.AssertValues(set, ("A1.width", "9 1/16 in"), ("A4.width", "9 1/16 in"));
    }

    /// <summary>What does not come out on the grid stays with the last, which takes up the residue: 36 1/4 / 3 + 3/4 / 3 is 12 1/3, so 12 5/16, 12 11/32 and what is left.</summary>
    [Fact]
    public void ThreeOpenings_CloseExactly()
    {
        SetPiece set = Sample.SetOut($"{Head}across: {{openings: 3, key: A}}}}");
        ClosedChain chain = Assert.Single(set.Chains, c => c.Name.Contains("openings and partitions", StringComparison.Ordinal));
        Assert.Equal("A3", chain.TakesUp.Owner);
        Assert.Equal(Setout.Testing.Described.Of("37 in"), set.Value("A1.width") + set.Value("A2.width") + set.Value("A3.width"));
    }

    [Theory]
    [InlineData("across: {openings: 3, key: A}", "across: [{opening: A1}, {partition: A1-2}, {opening: A2}, {partition: A2-3}, {opening: A3}]")]
    [InlineData("down: {openings: 2, key: A}", "down: [{opening: A1}, {deck: A1-2}, {opening: A2}]")]
    [InlineData("across: {openings: 2, key: A, doubled: yes, of: ply, grain: front to back}", "across: [{opening: A1}, {partition: A1-2, doubled: yes, of: ply, grain: front to back}, {opening: A2}]")]
    [InlineData("across: {openings: 2, key: A, shelves: {fit: dado, down: [S, R]}}", "across: [{opening: A1, shelves: {fit: dado, down: [A1-S, A1-R]}}, {partition: A1-2}, {opening: A2, shelves: {fit: dado, down: [A2-S, A2-R]}}]")]
    [InlineData("across: {openings: 2, key: A, drawers: {like: d, down: [{drawer: D}, {drawer: E}]}}", "across: [{opening: A1, drawers: {like: d, down: [{drawer: A1-D}, {drawer: A1-E}]}}, {partition: A1-2}, {opening: A2, drawers: {like: d, down: [{drawer: A2-D}, {drawer: A2-E}]}}]")]
    [InlineData("across: {openings: 2, key: A, doors: {like: e, keys: [W]}}", "across: [{opening: A1, doors: {like: e, keys: [A1-W]}}, {partition: A1-2}, {opening: A2, doors: {like: e, keys: [A2-W]}}]")]
    [InlineData("across: {openings: 2, key: A, down: {openings: 2, key: B, shelves: {down: [S]}}}",
        "across: [{opening: A1, down: [{opening: A1-B1, shelves: {down: [A1-B1-S]}}, {deck: A1-B1-2}, {opening: A1-B2, shelves: {down: [A1-B2-S]}}]}, {partition: A1-2}, {opening: A2, down: [{opening: A2-B1, shelves: {down: [A2-B1-S]}}, {deck: A2-B1-2}, {opening: A2-B2, shelves: {down: [A2-B2-S]}}]}]")]
    public void CountedAndListed_GiveTheSamePlan(string counted, string listed)
    {
        string plan = Outcome.Of($"{Head}{counted}}}");
        Assert.DoesNotContain("refused", plan, StringComparison.Ordinal);
        Assert.Equal(Outcome.Of($"{Head}{listed}}}"), plan);
    }

    [Theory]
    [InlineData("across: {openings: 1, key: A}", "text.wanted-number")]
    [InlineData("across: {openings: 51, key: A}", "text.wanted-number")]
    [InlineData("across: {key: A}", "text.missing")]
    [InlineData("across: {openings: 4}", "text.missing")]
    [InlineData("across: {openings: 4, key: A, width: 3}", "text.unknown-key")]
    [InlineData("across: {openings: 3, key: A, shelves: {down: [S], colour: red}}", "text.unknown-key")]
    public void WhatIsWrong_IsToldOnce(string counted, string code)
    {
        (_, var findings) = PieceSource.Read($"{Head}{counted}}}", null, null);
        Assert.Equal(code, Assert.Single(findings).Finding.Code);
    }
}
