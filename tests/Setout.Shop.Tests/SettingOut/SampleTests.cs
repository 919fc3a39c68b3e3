using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Testing;

namespace Setout.Shop.Tests.SettingOut;

public class SampleTests
{
    public static TheoryData<string> Names => [Sample.Bench, Sample.Chest, Sample.Cabinet];

    [Theory]
    [MemberData(nameof(Names))]
    public void SetOut_Sample_CanBeBuilt(string name) => Assert.Empty(SetPieceChecker.Violations(Sample.Of(name)));

    [Theory]
    [MemberData(nameof(Names))]
    public void SetOut_Sample_FindsNothingButUnreadSheets(string name) =>
        Assert.All(Sample.Of(name).Findings, f => Assert.Equal(("material.not-read", Severity.Note), (f.Code, f.Severity)));

    [Theory]
    [InlineData(Sample.Bench, 4 * 7, 7)]
    [InlineData(Sample.Chest, 4 * 10, 10)]
    [InlineData(Sample.Cabinet, 4 * 2, 2)]
    public void SetOut_Sample_HasFivePartsABoxAndAFrontAndAPairOfSlidesEach(string name, int sidesAndEnds, int drawers)
    {
        SetPiece set = Sample.Of(name);
        Assert.Equal(sidesAndEnds, set.Parts.Where(p => p.Role is PartRole.BoxSide or PartRole.BoxEnd).Sum(p => p.Count));
        Assert.Equal(drawers, set.Parts.Where(p => p.Role == PartRole.BoxBottom).Sum(p => p.Count));
        Assert.Equal(drawers, set.Parts.Where(p => p.Role == PartRole.FalseFront).Sum(p => p.Count));
        Assert.Equal(drawers, set.Hardware.Where(h => h.Unit == "pair").Sum(h => h.Count));
        Assert.Equal(drawers, set.Choices.Length);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void SetOut_Sample_PartsOfOneKindOverlapNowhereElse(string name)
    {
        // The checker itself: a side moved by one tick into its neighbour is found.
        SetPiece set = Sample.Of(name);
        int index = set.Parts.IndexOf(set.Parts.First(p => p.Role is PartRole.Side or PartRole.SlidePanel));
        Placement box = set.Parts[index].Placements[1];
        Part moved = set.Parts[index] with { Placements = set.Parts[index].Placements.SetItem(1, box with { X = box.X + (ExactLength)Length.FromTicks(1) }) };
        Part back = set.Parts[index] with { Placements = set.Parts[index].Placements.SetItem(1, box with { X = box.X - (ExactLength)Length.FromTicks(1) }) };
        Assert.True(Violations(moved) + Violations(back) > 0);

        int Violations(Part part) => SetPieceChecker.Violations(set with { Parts = set.Parts.SetItem(index, part) }).Count;
    }

    [Fact]
    public void SetOut_Cabinet_ShelvesShareTheHeightEvenly()
    {
        // Clear height 32 - 2 x 23/32 = 30 9/16. Three shelves take 3 x 23/32 = 2 5/32; four spaces share 28 13/32: 7 13/128 each.
        // On the grid of 1/32 in: 7 3/32 (7 12/128), three times; the space above the top shelf takes the rest: 28 13/32 - 21 9/32 = 7 1/8.
        SetPiece set = Sample.Of(Sample.Cabinet);
        Sample.AssertValues(set, ("C.opening.height", "30 9/16"), ("A3.clear-below.to-cut", "7 3/32"), ("A2.clear-below.to-cut", "7 3/32"), ("A1.clear-below.to-cut", "7 3/32"), ("A.clear-above", "7 1/8"));
        // Shelf: as wide as the opening, as deep as the case inside less the setback: 13 - 15/32 - 1/4 = 12 9/32.
        Sample.AssertValues(set, ("A1.length.to-cut", "20"), ("A1.width.to-cut", "12 9/32"), ("P.length.to-cut", "30 9/16"), ("P.width.to-cut", "12 17/32"));
        // The right side: 36 9/16 - 20 - 23/32 = 15 27/32, its height 30 9/16 - 9 - 23/32 = 20 27/32 above the deck.
        Sample.AssertValues(set, ("B.width", "15 27/32"), ("E.length.to-cut", "15 27/32"), ("B1.height", "20 27/32"), ("B2.height", "9"));
    }

    [Fact]
    public void SetOut_Bench_FrameAddsUp()
    {
        // 78 - 4 x 3 1/2 - 21 - 21 = 22; ties 24 - 2 x 1 1/2 = 21; panels 33 1/4 - 4 - 3 1/2 - 1 1/2 = 24 1/4.
        SetPiece set = Sample.Of(Sample.Bench);
        Sample.AssertValues(set, ("K.rail.length.to-cut", "22"), ("F.tie.length.to-cut", "21"), ("F.post.length.to-cut", "33 1/4"), ("L.panel.length.to-cut", "24 3/16"),
            ("L.panel.width.to-cut", "24"), ("T.length.to-cut", "80"), ("T.width.to-cut", "25 1/2"), ("T.height", "34"));
        Assert.Equal((8, 8, 12), (Count(PartRole.Post), Count(PartRole.Tie), Count(PartRole.Rail)));

        int Count(PartRole role) => set.Parts.Where(p => p.Role == role).Sum(p => p.Count);
    }
}
