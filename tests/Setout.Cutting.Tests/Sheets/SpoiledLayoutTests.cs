using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Cutting.Sheets;
using static Setout.Cutting.Tests.Sheets.SheetBuild;

namespace Setout.Cutting.Tests.Sheets;

/// <summary>Good layouts of the solver are spoiled at one place each; the checker must see every one.</summary>
public class SpoiledLayoutTests
{
    private static readonly SheetInstance s_instance = Instance(
        [Part("side", 700, 400, 4), Part("shelf", 560, 380, 6), Part("rail", 560, 90, 5, GrainRule.Free), Part("back", 720, 590, 2)],
        [Stock("ply", 2440, 1220, 60, null, EdgeTrim.AllRound(Mm(6)))]);

    private static readonly SheetLayout s_good = Solve(s_instance).Layout;

    public static TheoryData<string, Func<CutNode, CutNode?>> Spoils() => new()
    {
        { "shift", node => node is Division { Slices.Length: > 1 } d ? d with { Slices = d.Slices.SetItem(0, d.Slices[0] with { Size = d.Slices[0].Size + Tick }) } : null },
        { "shift one against the next", node => node is Division { Slices.Length: > 1 } d && (d.Slices[0].Content is PartNode || d.Slices[1].Content is PartNode)
            ? d with { Slices = d.Slices.SetItem(0, d.Slices[0] with { Size = d.Slices[0].Size + Tick }).SetItem(1, d.Slices[1] with { Size = d.Slices[1].Size - Tick }) } : null },
        { "drop", node => node is PartNode ? WasteNode.Instance : null },
        { "turn", node => node is PartNode { PartId: not "rail" } p ? p with { Turn = Turn.Quarter } : null },
        { "turn in its place", node => node is PartNode { PartId: "rail" } p ? p with { Turn = p.Turn == Turn.None ? Turn.Quarter : Turn.None } : null },
        { "exchange", node => node is PartNode { PartId: "side" } p ? p with { PartId = "shelf" } : null },
        { "duplicate", node => node is Division { Slices.Length: > 0 } d ? d with { Slices = d.Slices.Insert(0, d.Slices[0]) } : null },
        { "exceed", node => node is Division d ? d with { Slices = d.Slices.SetItem(d.Slices.Length - 1, d.Slices[^1] with { Size = d.Slices[^1].Size + Mm(1) }) } : null },
        { "lose a slice", node => node is Division { Slices.Length: > 1 } d ? d with { Slices = d.Slices.RemoveAt(0) } : null },
        { "dust one tick more", node => node is Division d ? d with { Dust = d.Dust + Tick } : null },
        { "call kept waste", node => node is KeepNode ? WasteNode.Instance : null },
        { "call waste kept", node => node is WasteNode ? KeepNode.Instance : null },
    };

    [Fact]
    public void Check_UnspoiledLayout_FindsNothing() => Assert.Empty(SheetChecker.Check(s_instance, s_good));

    [Theory]
    [MemberData(nameof(Spoils))]
    public void Check_LayoutSpoiledAtOneNode_FindsIt(string how, Func<CutNode, CutNode?> spoil)
    {
        int spoiled = 0;
        for (int sheet = 0; sheet < s_good.Sheets.Length; sheet++)
            foreach (CutNode root in SpoiledTrees(s_good.Sheets[sheet].Root, spoil))
            {
                SheetLayout bad = s_good with { Sheets = s_good.Sheets.SetItem(sheet, s_good.Sheets[sheet] with { Root = root }) };
                Assert.True(SheetChecker.Check(s_instance, bad).Length > 0, $"{how} went unseen on sheet {sheet + 1}");
                spoiled++;
            }
        Assert.True(spoiled > 0, $"nothing to {how}");
    }

    [Fact]
    public void Check_SheetTwiceOrMissing_FindsIt()
    {
        Assert.NotEmpty(SheetChecker.Check(s_instance, s_good with { Sheets = s_good.Sheets.Add(s_good.Sheets[0]) }));
        Assert.NotEmpty(SheetChecker.Check(s_instance, s_good with { Sheets = s_good.Sheets.RemoveAt(0) }));
    }

    // Every tree that comes of spoiling one node.
    private static IEnumerable<CutNode> SpoiledTrees(CutNode node, Func<CutNode, CutNode?> spoil)
    {
        if (spoil(node) is { } bad) yield return bad;
        if (node is not Division division) yield break;
        for (int i = 0; i < division.Slices.Length; i++)
            foreach (CutNode content in SpoiledTrees(division.Slices[i].Content, spoil))
                yield return division with { Slices = division.Slices.SetItem(i, division.Slices[i] with { Content = content }) };
    }
}
