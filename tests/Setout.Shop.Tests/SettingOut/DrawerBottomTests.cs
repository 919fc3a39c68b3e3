using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;
using Setout.Core.SettingOut.Whole;
using Setout.Core.Workings;
using Setout.Testing;
using static Setout.Shop.Tests.SettingOut.DrawerPiece;
using static Setout.Shop.Tests.SettingOut.Sample;

namespace Setout.Shop.Tests.SettingOut;

/// <summary>Bottoms grooved all round, slid in, applied, let in. Box 14 31/32 x 20 outside, 13 31/32 x 19 inside, 5 3/4 high.</summary>
public class DrawerBottomTests
{
    [Fact]
    public void SlidIn_BackAndBottom_AsWorkedByHand()
    {
        // Groove 1/4 deep, 3/8 up. Bottom across 13 31/32 + 2 x 1/4 - 1/16 = 14 13/32; depth = inside length 19 + one groove 1/4 + back 1/2 = 19 3/4.
        // Back shorter by what stands below the groove's top: 3/8 + 1/4, so 5 3/4 - 5/8 = 5 1/8.
        SetPiece set = Sound("bottom fit: slid in");
        AssertValues(set, ("D.bottom.width.to-cut", "14 13/32"), ("D.bottom.length.to-cut", "19 3/4"), ("D.back.length.to-cut", "13 31/32"), ("D.back.width.to-cut", "5 1/8"), ("D.inside.height", "5 1/8"));
        Assert.Equal((1, 1), (set.Parts.Single(p => p.Key == "D.end").Count, set.Parts.Single(p => p.Key == "D.back").Count));
        Placement back = set.Place("D.back"), bottom = set.Place("D.bottom"), side = set.Place("D.side");
        Assert.Equal((side.Z + side.SizeZ, bottom.Z + bottom.SizeZ, bottom.Y + bottom.SizeY), (back.Z + back.SizeZ, back.Z, back.Y + back.SizeY));
        // The back is not grooved, and the bottom comes last of all.
        Assert.DoesNotContain(set.Machinings, m => m.Part == "D.back");
        Assert.Contains("Last of all slide the bottom in", Step(set), StringComparison.Ordinal);
    }

    [Fact]
    public void Applied_TakesItsThicknessOffTheSides()
    {
        // 5 3/4 over all: sides 5 3/4 - 1/4 = 5 1/2, all of it clear inside; bottom as large as the box, 14 31/32 x 20.
        SetPiece set = Sound("bottom fit: applied");
        AssertValues(set, ("D.side.width.to-cut", "5 1/2"), ("D.end.width.to-cut", "5 1/2"), ("D.bottom.width.to-cut", "14 31/32"), ("D.bottom.length.to-cut", "20"), ("D.inside.height", "5 1/2"));
        Placement bottom = set.Place("D.bottom"), side = set.Place("D.side");
        Assert.Equal((side.X, side.Y, side.Z), (bottom.X, bottom.Y, bottom.Z + bottom.SizeZ));
        Assert.DoesNotContain(set.Machinings, m => m.Words.StartsWith("Groove", StringComparison.Ordinal));
        Assert.Contains("from below", Step(set), StringComparison.Ordinal);
    }

    [Fact]
    public void LetIn_LiesFlushInARabbetAllRound()
    {
        // Rabbet 1/4 into the sides, as high as the bottom reads: the sheet as for a groove, 14 13/32 x 19 7/16; clear inside 5 3/4 - 1/4.
        SetPiece set = Sound("bottom fit: let in");
        AssertValues(set, ("D.side.width.to-cut", "5 3/4"), ("D.bottom.width.to-cut", "14 13/32"), ("D.bottom.length.to-cut", "19 7/16"), ("D.inside.height", "5 1/2"));
        Assert.Equal(set.Place("D.side").Z, set.Place("D.bottom").Z);
        Assert.Equal([Described.Of("1/4"), Described.Of("1/4")], set.Cut("D.end", "Rabbet along").Figures.Select(f => set.Worked[f.Key]));
    }

    [Fact]
    public void Grooved_IsInBeforeTheBoxIsClosed() => Assert.Contains("put the bottom in dry, glue and screw ends", Step(Sound("")), StringComparison.Ordinal);

    [Theory]
    [InlineData("slid in", "D.back.width.to-cut", "5 7/64")] // 5.75 - 0.375 - 0.26 = 5.115, down
    [InlineData("applied", "D.side.width.to-cut", "5 31/64")] // 5.75 - 0.26 = 5.49, down
    [InlineData("let in", "D.inside.height", "5.49")]
    public void BottomRead_MovesWhatStandsOnIt(string fit, string key, string expected) =>
        AssertValues(SetOut(Written($"bottom fit: {fit}"), "flat.thickness: 0.26 in"), (key, expected));

    [Theory]
    [InlineData("grooved", "rabbet")]
    [InlineData("slid in", "half-blind dovetail")]
    [InlineData("slid in", "dado")]
    [InlineData("slid in", "box joint")]
    [InlineData("applied", "half-blind dovetail")]
    [InlineData("let in", "lock rabbet")]
    public void AnyFit_WithAnyCorner_GoesTogether(string fit, string corners) => Sound($"bottom fit: {fit}, corners: {corners}");

    [Theory]
    // Half of 18 mm is 9; a tick less of wood is as a tick past it.
    [InlineData("9 mm", "18 mm", null)]
    [InlineData("9 mm", "17.99999375 mm", Severity.Warn)]
    [InlineData("18 mm", "18.00000625 mm", Severity.Warn)]
    [InlineData("18 mm", "18 mm", Severity.Stop)]
    public void Groove_DeeperThanTheSideAllows_IsFound(string depth, string side, Severity? expected)
    {
        SetPiece set = Out($"groove depth: {depth}", side: side, grid: "0.5 mm");
        Assert.Equal(expected is { } severity ? ("groove.too-deep", severity) : null, Only(set));
    }

    /// <summary>
    /// D27-library-table-drawer: Mission Furniture, part three (Windsor, 1912; Project Gutenberg 23666), a library table: 41 in long, 8 in from each end to the inner face, so a drawer
    /// opening of 25; sides 3/8, 3 3/4 high, the bottom 3/8 under the back: back 3 3/8 x 24 1/4, bottom 24 1/4 wide. The book allows no clearance.
    /// </summary>
    [Fact]
    public void LibraryTable_DrawerOfABookOf1912_IsTheOneInItsList()
    {
        var kind = new DrawerKind("k", Described.Named("thin"), Described.Named("bottom"), Described.Named("front"), null, null, Described.Given("0"), null, Place.None)
        {
            Slides = SlideWay.Runners,
            Runner = Described.Named("stick"),
            BottomFit = BottomFit.SlidIn,
            GrooveUp = Described.Given("1/8"),
        };
        Piece piece = Described.Piece(LengthUnit.Inch,
            [Described.Sheet("wood", Described.Of("8")), Described.Sheet("thin", Described.Of("3/8")), Described.Sheet("bottom", Described.Of("1/4")), Described.Sheet("front", Described.Of("3/4")), Described.Sticks("stick", Described.Of("3/4"), Described.Of("1"))],
            [kind],
            Described.Case(Described.Of("41"), Described.Of("21"), Described.Of("24"), new DrawerBank(Described.Named("k"), [new("D", ShareOfWhole.Equal, null, Described.Given("3 3/4"), Place.None)])));
        SetPiece set = PieceSetOut.Of(piece, Grid.SixtyFourth, ImmutableDictionary<QuantityKey, Pin>.Empty);
        AssertValues(set, ("D.opening", "25"), ("D.back.width.to-cut", "3 3/8"), ("D.back.length.to-cut", "24 1/4"));
        // The book's bottom is as wide as the inside of the box; ours goes into its grooves as well, 3/16 a side less 1/16 of slack.
        AssertValues(set, ("D.groove.depth.to-cut", "3/16"), ("D.bottom.width.to-cut", "24 9/16"));
        Assert.Equal(Described.Of("24 1/4"), set.Value("D.bottom.width.to-cut") - (set.Value("D.groove.depth.to-cut") * 2) + set.Value("D.bottom.slack"));
    }

    [Theory]
    [InlineData("3/16 in", false)] // a 1/4 in sheet may read 1/16 under
    [InlineData("4.76249375 mm", true)] // a tick less
    public void Bottom_ThinnerThanALightOne_IsNoted(string thick, bool isNoted) =>
        Assert.Equal(isNoted, SetOut(DrawerPiece.Written("").Replace("thickness: 1/4 in", $"thickness: {thick}", StringComparison.Ordinal)).Findings.Any(f => f.Code == "drawer.thin-bottom"));

    private static string Step(SetPiece set) => set.Steps.Single(s => s.Words.StartsWith("Box D:", StringComparison.Ordinal)).Words;
}
