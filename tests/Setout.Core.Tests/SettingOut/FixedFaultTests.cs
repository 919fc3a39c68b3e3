using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;
using Setout.Core.SettingOut.Whole;
using Setout.Core.Workings;
using Setout.Testing;
using static Setout.Testing.Described;

namespace Setout.Core.Tests.SettingOut;

/// <summary>Faults that were found and put right, each kept as the smallest piece that showed it.</summary>
public class FixedFaultTests
{
    private static SetPiece SetOut(Grid grid, ImmutableArray<Member> members, params (string Key, string Read)[] readings) =>
        PieceSetOut.Of(Piece(LengthUnit.Inch, UsualMaterials, [Kind("box")], members), grid,
            readings.ToImmutableDictionary(r => new QuantityKey(r.Key), r => new Pin([Of(r.Read)], new(OriginKind.Reading, "read"), "e")));

    private static ExactLength Value(SetPiece set, string key) => set.Worked[new QuantityKey(key)];

    private static Placement Placed(SetPiece set, string part, int member = 0) => set.Parts.Single(p => p.Key == part).Placements[member];

    [Fact]
    public void Deck_BetweenPartitionsOffTheGrid_IsNotLongerThanItsOpening()
    {
        // Inside 24 - 1 7/16 = 22 9/16; less 10 and 23/32: 11 27/32 = 11 13.5/16. To the nearest 1/16 it would be 11 7/8, a 32nd too long.
        SetPiece set = SetOut(Grid.Sixteenth, [Case(Of("24"), Of("24"), Of("12"), new Division(true,
            [Opening("A", Share(Of("10"))), new Divider("P", null, Place.None), Opening("B", Rest, new Division(false, [Opening("B1"), new Divider("E", null, Place.None), Opening("B2")]))]))]);
        Assert.Equal((Of("11 27/32"), Of("11 13/16")), (Value(set, "B.width"), Value(set, "E.length.to-cut")));
        Assert.Empty(SetPieceChecker.Violations(set));
    }

    [Fact]
    public void Partition_OfACaseOffTheGrid_IsNotLongerThanItsOpening()
    {
        // Inside height 24 - 1 7/16 = 22 9/16 on a grid of 1/8: down to 22 1/2, where the nearest would be 22 5/8.
        SetPiece set = SetOut(Grid.FromStep(Length.FromInches(1, 8)), [Case(Of("24"), Of("24"), Of("12"), new Division(true, [Opening("A"), new Divider("P", null, Place.None), Opening("B")]))]);
        Assert.Equal((Of("22 9/16"), Of("22 1/2")), (Value(set, "C.opening.height"), Value(set, "P.length.to-cut")));
    }

    [Fact]
    public void Back_OfACaseThatRoundingMadeWider_CoversIt()
    {
        // Top and bottom 24 - 1 7/16 = 22 9/16, on a grid of 1/8 cut 22 5/8: the case comes out 24 1/16, the back must not stay 24.
        SetPiece set = SetOut(Grid.FromStep(Length.FromInches(1, 8)), [Case(Of("24"), Of("24"), Of("12"), null, "bottom")]);
        Assert.Equal(Of("24 1/16"), Value(set, "C.back.width"));
        Assert.Equal(Of("24 1/8"), Value(set, "C.back.width.to-cut"));
        Assert.Empty(SetPieceChecker.Violations(set));
    }

    [Fact]
    public void Top_OfAFrameOffTheGrid_LiesOnThePostsAsCut()
    {
        SetPiece set = SetOut(Grid.Sixteenth, [Frame(Of("40"), Of("33 3/64"), Of("24"), Of("4"), Laid.Flat, Opening("A")),
            new Top("T", "", Named("wood"), Given("0"), Given("0"), Given("0"), Given("0"), Place.None)]);
        Assert.Equal(Of("33 1/16"), Placed(set, "T").Z);
        Assert.Empty(SetPieceChecker.Violations(set));
    }

    [Fact]
    public void Frame_DepthOffTheGrid_PostsMeetTheTiesAsCut()
    {
        // Ties 24 1/25 - 3 = 21 1/25, cut 21 1/16: the back posts stand behind them, not where the sum says.
        SetPiece set = SetOut(Grid.Sixteenth, [Frame(Of("40"), Of("33"), Of("24.04"), Of("4"), Laid.Flat, Opening("A"))]);
        Assert.Equal(Placed(set, "F.tie").Y + Of("21 1/16"), Placed(set, "F.post", 1).Y);
        Assert.Empty(SetPieceChecker.Violations(set));
    }

    [Fact]
    public void Frame_ToeRead_MovesRailsAndPanelsTogether()
    {
        Frame frame = Frame(Of("40"), Of("33"), Of("24"), Of("4"), Laid.Flat, Opening("A", default, null, "wood"));
        SetPiece set = SetOut(Grid.ThirtySecond, [frame], ("F.toe", "4 1/4"));
        Assert.Equal((Of("4 1/4"), Of("7 3/4")), (Placed(set, "A.rail").Z, Placed(set, "A.panel").Z));
        Assert.Empty(SetPieceChecker.Violations(set));
    }

    [Fact]
    public void Shelves_BetweenBarePosts_AreJoinedToThePosts()
    {
        SetPiece set = SetOut(Grid.ThirtySecond, [Frame(Of("40"), Of("33"), Of("24"), Of("4"), Laid.Flat, Opening("A", default, new Shelves(Named("wood"), null, [Named("S")])))]);
        Assert.Equal("F.post", Assert.Single(set.Joints, j => j.Part == "S").Against);
    }

    [Fact]
    public void Finding_OfOneKey_DoesNotHideThatOfAKeyThatBeginsAlike()
    {
        // S1 is a drawer too wide for its opening; S10 a shelf set back further than it is deep.
        SetPiece set = SetOut(Grid.ThirtySecond, [Case(Of("40"), Of("24"), Of("14"), new Division(true,
        [
            Opening("A", default, new DrawerBank(Named("box"), [new Drawer("S1", default, Given("30"), null, Place.None)])),
            new Divider("P", null, Place.None),
            Opening("B", default, new Shelves(null, Given("15"), [Named("S10")])),
        ]))]);
        Assert.Equal(["drawer.too-wide", "shelf.no-depth"], set.Findings.Where(f => f.Severity == Severity.Stop).Select(f => f.Code).Order());
    }

    [Theory]
    [InlineData("19/32", "drawer.no-height")] // the groove ends 3/8 + 7/32 = 19/32 up
    [InlineData("5/8", "drawer.too-low")]
    public void Drawer_TooLowToHoldItsBottom_Stops(string height, string code)
    {
        SetPiece set = SetOut(Grid.ThirtySecond, [Case(Of("20"), Of("12"), Of("14"), new DrawerBank(Named("box"), [new Drawer("D", default, null, Given(height), Place.None)]))]);
        Assert.Equal(code, Assert.Single(set.Findings).Code);
    }

    [Fact]
    public void Drawer_OverTheWholeWindowOfAnyGrid_HasItsPlayWithinLimits()
    {
        // Aimed at the middle of the window and rounded down, a grid of 1/32 or finer cannot leave it.
        foreach (Grid grid in new[] { Grid.ThirtySecond, Grid.SixtyFourth, Grid.HalfMillimetre })
        {
            for (int i = 0; i < 64; i++)
            {
                SetPiece set = SetOut(grid, [Case(Of("20") + ExactLength.FromInches(Rational.Of(i, 640)), Of("12"), Of("14"), new DrawerBank(Named("box"), [Drawer("D")]))]);
                Assert.Contains(set.Gaps, g => g.Key.Text == "D.play");
                Assert.All(set.Gaps, gap => Assert.True(set.Worked[gap.Key] >= gap.Least && set.Worked[gap.Key] <= gap.Most, $"{grid} {i}: {gap.Key} {set.Worked[gap.Key]}"));
            }
        }
    }
}
