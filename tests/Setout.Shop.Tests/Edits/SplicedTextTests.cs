using Setout.Shop.Edits;
using Setout.Shop.Texts;

namespace Setout.Shop.Tests.Edits;

/// <summary>Splices of one text, letter by letter.</summary>
public class SplicedTextTests
{
    private const string Text = """
        a: 1   # one
        # of the list
        list:   # from left to right
          # of the first
          - name: x   # ex
            size: 3

          # of the second
          - {name: y, size: 4}   # why
            # below the second
          - name: z

        last: {p: 1, q: [1, 2]}   # braces
        # the end

        """;

    private static string Do(params Splice[] splices)
    {
        TextRead<string> result = TextSplice.Apply(Text, splices);
        Assert.True(result.IsSound, string.Join("; ", result.Findings));
        return result.Value!;
    }

    private static string Changed(string from, string to)
    {
        Assert.Contains(from, Text, StringComparison.Ordinal);
        return Text.Replace(from, to, StringComparison.Ordinal);
    }

    private static TextPath At(params ReadOnlySpan<PathStep> steps) => new("", [.. steps]);

    [Fact]
    public void TakeOut_Item_GoesWithItsRemarks() => Assert.Equal(
        Changed("\n  # of the second\n  - {name: y, size: 4}   # why\n    # below the second\n", "\n"), Do(Splice.TakeOut(At("list", 1))));

    [Fact]
    public void TakeOut_FirstItem_LeavesTheRemarkOfTheList() => Assert.Equal(
        Changed("  # of the first\n  - name: x   # ex\n    size: 3\n", ""), Do(Splice.TakeOut(At("list", 0))));

    [Fact]
    public void TakeOut_AllItems_LeavesAnEmptyList() => Assert.Equal(
        Changed(Text[Text.IndexOf("  # of the first", StringComparison.Ordinal)..Text.IndexOf("\nlast", StringComparison.Ordinal)], "\n  []\n"), Do(Splice.TakeOut(At("list", 0)), Splice.TakeOut(At("list", 0)), Splice.TakeOut(At("list", 0))));

    [Fact]
    public void TakeOut_Key_GoesWithItsRemarks() => Assert.Equal("a: 1   # one\n\nlast: {p: 1, q: [1, 2]}   # braces\n# the end\n", Do(Splice.TakeOut(At("list"))));

    [Fact]
    public void TakeOut_OfBraces_TakesItsComma()
    {
        Assert.Equal(Changed("{p: 1, q: [1, 2]}", "{q: [1, 2]}"), Do(Splice.TakeOut(At("last", "p"))));
        Assert.Equal(Changed("{p: 1, q: [1, 2]}", "{p: 1}"), Do(Splice.TakeOut(At("last", "q"))));
        Assert.Equal(Changed("[1, 2]", "[1]"), Do(Splice.TakeOut(At("last", "q", 1))));
    }

    [Fact]
    public void Move_Item_TakesItsRemarksAndLeavesBlankLines() => Assert.Equal(Changed(
        "  # of the first\n  - name: x   # ex\n    size: 3\n\n  # of the second\n  - {name: y, size: 4}   # why\n    # below the second\n",
        "  # of the second\n  - {name: y, size: 4}   # why\n    # below the second\n\n  # of the first\n  - name: x   # ex\n    size: 3\n"), Do(Splice.Move(At("list"), 1, 0)));

    [Fact]
    public void Move_InBraces_ChangesPlaces() => Assert.Equal(Changed("[1, 2]", "[2, 1]"), Do(Splice.Move(At("last", "q"), 0, 1)));

    [Fact]
    public void Add_Item_LooksAsItsNeighbours()
    {
        Assert.Equal(Changed("  - name: z\n", "  - name: z\n  - {name: w, size: 5}\n"), Do(Splice.Add(At("list"), 3, Written.Fields(("name", "w"), ("size", "5")))));
        Assert.Equal(Changed("[1, 2]", "[1, 3, 2]"), Do(Splice.Add(At("last", "q"), 1, Written.Word("3"))));
    }

    [Fact]
    public void Add_ItemWithMapsWithin_IsWrittenInLines() => Assert.Equal(
        Changed("  # of the second\n", "  - name: w\n    inner:\n      - {b: 1}\n      - {b: 2}\n  # of the second\n"),
        Do(Splice.Add(At("list"), 1, Written.Map(("name", Written.Word("w")), ("inner", Written.List(Written.Fields(("b", "1")), Written.Fields(("b", "2"))))))));

    [Fact]
    public void Set_ListForAWord_KeepsTheRemarkOfTheLine()
    {
        Assert.Equal(Changed("a: 1   # one\n", "a: [x, y]   # one\n"), Do(Splice.Set(At("a"), Written.Words("x", "y"))));
        Assert.Equal(Changed("a: 1   # one\n", "a:   # one\n  - {b: 1}\n"), Do(Splice.Set(At("a"), Written.List(Written.Fields(("b", "1"))))));
    }

    [Fact]
    public void Set_WordForAList_KeepsTheRemarkOfItsKey() => Assert.Equal(
        Changed(Text[Text.IndexOf("list:", StringComparison.Ordinal)..Text.IndexOf("\nlast", StringComparison.Ordinal)], "list: none   # from left to right\n"), Do(Splice.Set(At("list"), "none")));

    [Fact]
    public void Set_NewKey_StandsBehindTheKeyThatIsNamed()
    {
        Assert.Equal(Changed("    size: 3\n", "    size: 3\n    new: yes\n"), Do(Splice.Set(At("list", 0, "new"), "yes", "name", "size", "none")));
        Assert.Equal(Changed("q: [1, 2]}", "q: [1, 2], new: yes}"), Do(Splice.SetLast(At("last", "new"), Written.Word("yes"))));
    }

    [Fact]
    public void Set_GrownPastALine_BracesBecomeLinesAndTheRemarkStays()
    {
        string grown = new('x', 100);
        Assert.Equal(Changed("last: {p: 1, q: [1, 2]}   # braces\n", $"last:   # braces\n  p: {grown}\n  q: [1, 2]\n"), Do(Splice.Set(At("last", "p"), grown)));
        Assert.Equal(Changed("  - {name: y, size: 4}   # why\n", $"  - name: {grown}   # why\n    size: 4\n"), Do(Splice.Set(At("list", 1, "name"), grown)));
    }

    [Fact]
    public void Apply_CarriageReturns_StayAndAreAdded()
    {
        string text = Text.ReplaceLineEndings("\r\n");
        Assert.Equal(Changed("  - name: z\n", "  - name: z\n  - {name: w, size: 5}\n").ReplaceLineEndings("\r\n"), TextSplice.Apply(text, Splice.Add(At("list"), 3, Written.Fields(("name", "w"), ("size", "5")))).Value);
    }

    [Theory]
    [InlineData("a: [\n  x,   # ex\n  y\n]\n", 1, 0, "a: [\n  y,\n  x,   # ex\n]\n")]
    [InlineData("a: [\n  # of x\n  x,\n  y,   # why\n]\n", 0, 1, "a: [\n  y,   # why\n  # of x\n  x,\n]\n")]
    [InlineData("a: [x,\n  y, z]\n", 0, 2, "a: [y,\n  z, x]\n")]
    public void Move_InBracketsOverSeveralLines_TakesRemarksAlong(string text, int from, int to, string expected) => Assert.Equal(expected, TextSplice.Apply(text, Splice.Move(At("a"), from, to)).Value);

    [Theory]
    [InlineData("a: [\n  x,   # ex\n  y\n]\n", 0, "a: [\n  y\n]\n")]
    [InlineData("a: [\n  x,   # ex\n  y   # why\n]\n", 1, "a: [\n  x,   # ex\n]\n")]
    [InlineData("a: [x,   # ex\n  y]\n", 0, "a: [\n  y]\n")]
    [InlineData("a: [x]\n", 0, "a: []\n")]
    public void TakeOut_InBracketsOverSeveralLines_TakesItsRemark(string text, int index, string expected) => Assert.Equal(expected, TextSplice.Apply(text, Splice.TakeOut(At("a", index))).Value);

    [Theory]
    [InlineData("a: [\n  x,   # ex\n  y   # why\n]\n", 2, "a: [\n  x,   # ex\n  y,   # why\n  z\n]\n")]
    [InlineData("a: [\n  x,\n  y,\n]\n", 0, "a: [\n  z,\n  x,\n  y,\n]\n")]
    [InlineData("a: []\n", 0, "a: [z]\n")]
    [InlineData("a:   # none yet\n", 0, "a: [z]   # none yet\n")]
    public void Add_InBracketsOverSeveralLines_HasALineOfItsOwn(string text, int index, string expected) => Assert.Equal(expected, TextSplice.Apply(text, Splice.Add(At("a"), index, Written.Word("z"))).Value);

    [Fact]
    public void Apply_WhatIsWrittenInAWayOfItsOwn_IsRefusedWithAFinding()
    {
        TextRead<string> result = TextSplice.Apply("? a\n: 1\n? b\n: [1]\n", Splice.Set(At("c"), "3"));
        Assert.Null(result.Value);
        Assert.Equal("splice.no-room", Assert.Single(result.Findings).Code);
    }
}
