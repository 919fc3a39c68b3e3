// Over 200 lines: every remedy on one bench, whose figures stand once at the top.
using System.Collections.Immutable;
using Setout.Core.Fit;
using Setout.Core.Fit.Mending;
using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Core.SettingOut.Whole;
using Setout.Core.Workings;
using Setout.Shop.Plans;
using Setout.Testing;
using static Setout.Shop.Tests.SettingOut.Sample;

namespace Setout.Shop.Tests.Fit;

/// <summary>
/// Remedies on the luthiers' bench, worked by hand. Its left bay is 19 9/16 in clear; a box of 18 17/32 in with two slides of 1/2 in leaves 1/32 of
/// play, the middle of 0 to 1/16. Its ends are 17 19/32 long between two sides of 15/32, the bottom 17 31/32 across: 17 19/32 + 2 x 7/32 - 1/16.
/// </summary>
public sealed class RemedySampleTests
{
    private static readonly ImmutableArray<Shim> s_shims = Setout.Shop.Texts.Shop.Usual.Shims;

    private const string EndsCut = "cut: [L3.end], figures: [{of: L3.end.length, is: 17 19/32 in}, {of: L3.end.width, is: 5 1/2 in}]";
    private const string BottomCut = "cut: [L3.bottom], figures: [{of: L3.bottom.width, is: 17 31/32 in}, {of: L3.bottom.length, is: 21 7/16 in}]";
    private const string OpeningRead = "read: L.width, values: [19 7/16 in]";

    private static SetPiece Logged(params string[] entries)
    {
        string log = "setout-log: 1\nentries:\n" + string.Concat(entries.Select((e, i) => $"  - {{id: e{i}, at: \"2026-05-04T09:{i:00}:00Z\", {e}}}\n"));
        (PieceSource? source, var findings) = PieceSource.Read(Text(Bench), log, Text("shop.yaml"));
        Assert.True(source is not null, string.Join("; ", findings.Select(f => f.Finding.Words)));
        return source.SetOut();
    }

    private static SetPiece After(SetPiece set, Remedy remedy) => PieceSetOut.Of(set.Piece, set.Grid, Amendment.Apply(set.Facts, remedy.Amendments));

    private static MendingAdvice Only(SetPiece set, params ImmutableArray<Blank> blanks) => Assert.Single(Remedies.For(set, s_shims, blanks));

    private static RemedyKind[] Kinds(MendingAdvice advice) => [.. advice.Remedies.Select(r => r.Kind)];

    private static void AssertAmends(Remedy remedy, params (string Key, string Value, AmendmentKind Kind)[] expected) =>
        Assert.Equal(expected.Select(e => new Amendment(new(e.Key), e.Value.Length > 0 ? Described.Of(e.Value) : ExactLength.Zero, e.Kind)), remedy.Amendments);

    [Fact]
    public void For_TheSampleAsItIs_IsEmpty() => Assert.Empty(Remedies.For(Of(Bench), s_shims, []));

    [Fact]
    public void For_AnOpeningReadBeforeAnythingIsCut_IsEmpty() => Assert.Empty(Remedies.For(Of(Bench, "L.width: 19 7/16 in"), s_shims, []));

    [Fact]
    public void RailReadShort_WithADrawerCut_TrimsTheDrawerBeforeTheRails()
    {
        // Rails of 20 7/8: between the panels 20 7/8 - 2 x 23/32 = 19 7/16; the box 19 7/16 - 1 - 1/32 = 18 13/32; its ends 18 13/32 - 2 x 15/32 = 17 15/32, 1/8 less; so the bottom too.
        MendingAdvice advice = Only(Logged(EndsCut, BottomCut, "read: L.rail.length.as-cut, values: [20 7/8 in]"));
        Assert.Equal("L3.play", advice.Upset.Key.Text);
        Assert.Equal([RemedyKind.Trim, RemedyKind.Recut], Kinds(advice));
        AssertAmends(advice.Remedies[0], ("L3.end.length.to-cut", "17 15/32", AmendmentKind.CutTo), ("L3.bottom.width.to-cut", "17 27/32", AmendmentKind.CutTo));
        Assert.All(advice.Remedies, r => Assert.DoesNotContain("rim 0 in", r.Words, StringComparison.Ordinal));
    }

    [Fact]
    public void BoxThatIsNarrow_IsShimmedToTheMiddle()
    {
        // Play 19 9/16 - 1 - 18 7/16 = 1/8, 1/16 over. To the middle of 1/32 takes 3/32, 3/64 a side: three cards of 1/64 come to just that.
        SetPiece set = Of(Bench, "L2.box.as-built: 18 7/16 in");
        MendingAdvice advice = Only(set);
        Assert.Equal((UpsetKind.GapOut, "L2.play", Described.Of("1/8"), Described.Of("1/16")), (advice.Upset.Kind, advice.Upset.Key.Text, advice.Upset.Value, advice.Upset.By));
        Assert.Equal([RemedyKind.Shim, RemedyKind.Recut], Kinds(advice));
        Remedy shim = advice.Remedies[0];
        AssertAmends(shim, ("L2.packing", "3/32", AmendmentKind.Reads));
        Assert.Contains("3 x card (3/64 in) behind each slide", shim.Words, StringComparison.Ordinal);
        Assert.Equal(["setout record FILE L2.packing 3/32 in"], shim.Commands);
        Assert.Equal((10, StockUse.None), (shim.Minutes, shim.Stock));
        Assert.Equal(Described.Of("1/32"), After(set, shim).Value("L2.play"));
        Assert.Empty(Remedies.For(After(set, shim), s_shims, []));
    }

    [Fact]
    public void BoxThatIsNarrow_WithOneThickShim_IsPackedOnOneSide()
    {
        // One washer of 1/16 a side would leave 1/8 - 1/8 = 0, on the limit and inside it; a strip of 3/32 a side would leave less than nothing, on one
        // side alone 1/32: with only the strip it goes behind one slide.
        SetPiece set = Of(Bench, "L2.box.as-built: 18 7/16 in");
        Remedy shim = Remedies.For(set, [new("strip", Length.FromInches(3, 32))], [])[0].Remedies[0];
        AssertAmends(shim, ("L2.packing", "3/32", AmendmentKind.Reads));
        Assert.Contains("nothing (0 in) behind one slide of drawer L2 and 1 x strip (3/32 in) behind the other", shim.Words, StringComparison.Ordinal);
        Remedy even = Remedies.For(set, [new("washer", Length.FromInches(1, 16))], [])[0].Remedies[0];
        Assert.Equal(ExactLength.Zero, After(set, even).Value("L2.play"));
        Assert.DoesNotContain(Remedies.For(set, [new("lath", Length.FromInches(1, 4))], [])[0].Remedies, r => r.Kind == RemedyKind.Shim);
    }

    [Fact]
    public void PackingThatIsTooThick_ComesOutAgain()
    {
        // A box of 18 17/32 needs none: 3/32 behind its slides leaves 1/32 - 3/32 = -1/16 of play.
        SetPiece set = Of(Bench, "L2.box.as-built: 18 17/32 in", "L2.packing: 3/32 in");
        Remedy shim = Only(set).Remedies[0];
        Assert.Equal(RemedyKind.Shim, shim.Kind);
        Assert.StartsWith("Take the packing out", shim.Words, StringComparison.Ordinal);
        Assert.Equal(Described.Of("1/32"), After(set, shim).Value("L2.play"));
    }

    [Theory]
    [InlineData("18 19/32", "1/32", "1/64", "18 17/32")] // play -1/32: 1/32 off in all is the least, 1/16 comes to the middle
    [InlineData("18 41/64", "7/128", "5/128", "18 17/32")] // play -5/64: 7/64 in all comes to the middle
    [InlineData("18 21/32", "1/16", "3/64", "18 17/32")] // play -3/32: 1/16 a side comes to the middle
    [InlineData("18 11/16", "1/16", "1/16", "18 9/16")] // play -1/8: 1/16 a side, the most, leaves none
    public void BoxThatIsWide_IsPlanedOnBothSides(string built, string off, string least, string planed)
    {
        SetPiece set = Of(Bench, $"L2.box.as-built: {built} in");
        Remedy plane = Assert.Single(Only(set).Remedies, r => r.Kind == RemedyKind.Plane);
        // What is planed off is recorded beside the reading of the box, which goes on to tell how it was cut.
        Amendment amendment = Assert.Single(plane.Amendments);
        Assert.Equal("L2.planed", amendment.Key.Text);
        Assert.True(amendment.Value >= Described.Of(least) * 2);
        Assert.Equal((Described.Of(planed), Described.Of(off) * 2), (set.Worked[new("L2.box.as-built")] - amendment.Value, amendment.Value));
        ExactLength play = After(set, plane).Value("L2.play");
        Assert.True(play >= ExactLength.Zero && play <= Described.Of("1/16"));
    }

    [Fact]
    public void BoxThatIsWiderThanAPlaneMends_IsMadeAnewFromTheSmallestBlankThatHoldsIt()
    {
        // 18 3/4: play -3/16, 3/32 a side at least. A new box: sides 22 x 4 1/2, ends 17 19/32 x 4 1/2, bottom 21 7/16 x 17 31/32. The short
        // offcut holds one end and a kerf and the other (4 1/2 + 1/8 + 4 1/2 = 9 1/8), not the sides; the long one the sides.
        SetPiece set = Of(Bench, "L2.box.as-built: 18 3/4 in");
        MendingAdvice advice = Only(set,
            new Blank("offcut 7", "boxes", Length.FromInches(24), Length.FromInches(10), null), new Blank("offcut 3", "boxes", Length.FromInches(18), Length.FromInches(37, 4), null),
            new Blank("sheet", "bottoms", Length.FromInches(96), Length.FromInches(48), new(36)));
        Remedy recut = Assert.Single(advice.Remedies);
        Assert.Equal(RemedyKind.Recut, recut.Kind);
        Assert.Equal("drawer L2 side from offcut 7; drawer L2 front and back of the box from offcut 3; drawer L2 bottom from sheet, to buy", recut.Stock.Words);
        Assert.Equal((true, new Money(36)), (recut.Stock.MustBuy, recut.Stock.Cost));
        // Six settings of 5 less one shared height, five parts of 10, and 45 for the box: sides and ends are 4 1/2 high at one setting.
        Assert.Equal((5 * 5) + (5 * 10) + 45, recut.Minutes);
        Assert.Contains(new Amendment(new("L2.box.as-built"), ExactLength.Zero, AmendmentKind.Forget), recut.Amendments);
        Assert.Equal("setout void FILE e0", recut.Commands[0]);
        Assert.Equal(Described.Of("1/32"), After(set, recut).Value("L2.play"));
        // Turned across the grain it would do, but the sides keep their grain.
        Assert.Contains("no blank of boxes holds the drawer L2 side", Only(set, new Blank("cross", "boxes", Length.FromInches(20), Length.FromInches(30), null)).Remedies[0].Stock.Words, StringComparison.Ordinal);
        // With no wood in the rack it says that a sheet must be bought.
        Assert.Contains("no blank of boxes holds the drawer L2 side: a new sheet must be bought", Only(set).Remedies[0].Stock.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void EndsCutAndStillLoose_AreTrimmed()
    {
        // The bay reads 1/8 narrower: 17 19/32 - 1/8 = 17 15/32. The bottom is not cut and goes by the ends as they are.
        SetPiece set = Logged(EndsCut, OpeningRead);
        Remedy trim = Assert.Single(Only(set).Remedies);
        Assert.Equal((RemedyKind.Trim, "crosscut"), (trim.Kind, trim.Caution));
        AssertAmends(trim, ("L3.end.length.to-cut", "17 15/32", AmendmentKind.CutTo));
        Assert.Equal(15, trim.Minutes); // two ends at 5 and one setting at 5
        Assert.Equal(Described.Of("1/32"), After(set, trim).Value("L3.play"));
        Assert.Equal(Described.Of("17 27/32"), After(set, trim).Value("L3.bottom.width.to-cut"));
    }

    [Fact]
    public void EndsTrimmed_TakeTheBottomThatWasCutToThemWithThem()
    {
        // Ends 1/8 shorter leave the bottom of 17 31/32 a slack of 1/16 - 1/8 = -1/16: it no longer goes in, and is trimmed by as much.
        SetPiece set = Logged(EndsCut, BottomCut, OpeningRead);
        Remedy trim = Assert.Single(Only(set).Remedies);
        AssertAmends(trim, ("L3.end.length.to-cut", "17 15/32", AmendmentKind.CutTo), ("L3.bottom.width.to-cut", "17 27/32", AmendmentKind.CutTo));
        Assert.Equal(["L3.end", "L3.bottom"], trim.Parts);
        Assert.Equal(Described.Of("1/16"), After(set, trim).Value("L3.bottom.play-across"));
    }

    [Fact]
    public void EndsTrimmedLittle_LeaveTheBottomAlone()
    {
        // 1/16 narrower: the bottom keeps a slack of 1/16 - 1/16 = 0 and still goes in. Play -1/32 becomes 1/32.
        SetPiece set = Logged(EndsCut, BottomCut, "read: L.width, values: [19 1/2 in]");
        Remedy trim = Assert.Single(Only(set).Remedies);
        Assert.Equal(["L3.end"], trim.Parts);
        Assert.Equal(ExactLength.Zero, After(set, trim).Value("L3.bottom.play-across"));
    }

    [Fact]
    public void EndsThatMayBeTrimmedLess_AreOfferedAlsoSoThatTheBottomStays()
    {
        // 3/32 narrower: ends 3/32 shorter are in the middle again and the bottom 1/32 too wide for its grooves; 1/16 shorter leave no play and no
        // slack, both on their limits, and the bottom alone. That is quicker by one part and one setting.
        SetPiece set = Logged(EndsCut, BottomCut, "read: L.width, values: [19 15/32 in]");
        ImmutableArray<Remedy> trims = Only(set).Remedies;
        Assert.Equal([15, 25], trims.Select(r => r.Minutes));
        Assert.Equal([ExactLength.Zero, Described.Of("1/32")], trims.Select(r => After(set, r).Value("L3.play")));
        Assert.Equal([ExactLength.Zero, Described.Of("1/16")], trims.Select(r => After(set, r).Value("L3.bottom.play-across")));
        Assert.EndsWith("drawer L3, slide play comes to 0 in.", trims[0].Words, StringComparison.Ordinal);
    }

    [Fact]
    public void EndsCutTooShort_AreCutAnewAndTheBottomStays()
    {
        // The bay reads 1/16 wider: play 3/32. New ends of 17 21/32 give the bottom 1/16 more slack: 1/8, the most it may have.
        SetPiece set = Logged(EndsCut, BottomCut, "read: L.width, values: [19 5/8 in]");
        MendingAdvice advice = Only(set);
        Assert.Equal([RemedyKind.Shim, RemedyKind.Recut], Kinds(advice));
        Assert.Equal(["L3.end"], advice.Remedies[1].Parts);
        Assert.Equal(Described.Of("1/8"), After(set, advice.Remedies[1]).Value("L3.bottom.play-across"));
    }

    [Fact]
    public void BoxThatIsTogether_IsPlanedOrMadeAnewButNeverTrimmed()
    {
        MendingAdvice advice = Only(Logged(EndsCut, BottomCut, "assembled: [L3.side, L3.end, L3.bottom]", OpeningRead));
        Assert.Equal([RemedyKind.Plane, RemedyKind.Recut], Kinds(advice));
        Assert.Equal(["L3.side", "L3.end", "L3.bottom"], advice.Remedies[1].Parts);
    }

    [Fact]
    public void FrontTooTall_ANeighbourThatIsNotCutGivesWay()
    {
        // The top front is 4 1/8 for 4, the lowest, which would take it up, is cut to 9 7/8: the stack stands 1/8 over, 1/16 more than may be seen.
        SetPiece set = Logged(
            "cut: [L1.front], figures: [{of: L1.front.height, is: 4 1/8 in}, {of: L1.front.width, is: 22 in}]",
            "cut: [L4.front], figures: [{of: L4.front.height, is: 9 7/8 in}, {of: L4.front.width, is: 22 in}]");
        MendingAdvice advice = Only(set);
        Assert.Equal("L.fronts-short", advice.Upset.Key.Text);
        Assert.Equal([RemedyKind.ChangeUncut, RemedyKind.ChangeUncut, RemedyKind.Trim, RemedyKind.Trim], Kinds(advice));
        AssertAmends(advice.Remedies[0], ("L2.front.height.to-cut", "4 7/8", AmendmentKind.CutTo));
        AssertAmends(advice.Remedies[2], ("L1.front.height.to-cut", "4", AmendmentKind.CutTo));
        Assert.All(advice.Remedies, r => Assert.Equal(ExactLength.Zero, After(set, r).Value("L.fronts-short")));
    }

    [Fact]
    public void FrontThatIsFixed_IsPlanedWhereItIsOrTakenOffAndTrimmed()
    {
        SetPiece set = Logged(
            "cut: [L1.front], figures: [{of: L1.front.height, is: 4 1/8 in}, {of: L1.front.width, is: 22 in}]",
            "cut: [L2.front, L3.front, L4.front], figures: [{of: L2.front.height, is: 5 in}, {of: L3.front.height, is: 6 in}, {of: L4.front.height, is: 9 7/8 in}]",
            "fitted: [L1.front, L2.front, L3.front, L4.front]");
        ImmutableArray<Remedy> ofL1 = [.. Only(set).Remedies.Where(r => r.Parts.SequenceEqual(["L1.front"]))];
        Assert.Equal([RemedyKind.Plane, RemedyKind.TakeApart], ofL1.Select(r => r.Kind));
        // The plane takes its most of 1/16 and leaves -1/16, on the limit; the saw takes all.
        Assert.Equal([-Described.Of("1/16"), ExactLength.Zero], ofL1.Select(r => After(set, r).Value("L.fronts-short")));
        Assert.Equal(20, ofL1[1].Minutes); // take off and fix 10, trim 5, setting 5
    }

    [Fact]
    public void FrontTooTallWithOneBelowThatTakesItUp_Stands()
    {
        Remedy accept = Assert.Single(Only(Logged("cut: [L1.front], figures: [{of: L1.front.height, is: 4 1/16 in}, {of: L1.front.width, is: 22 in}]")).Remedies);
        Assert.Equal((RemedyKind.Accept, 0), (accept.Kind, accept.Minutes));
        Assert.Empty(accept.Amendments);
    }

    [Fact]
    public void PartThatDiffersInsideItsGap_StandsAndSaysHowNearTheLimitItIs()
    {
        // The bay reads 1/32 narrower after the ends were cut: no play is left, and none is the least.
        MendingAdvice advice = Only(Logged(EndsCut, "read: L.width, values: [19 17/32 in]"));
        Assert.Equal((UpsetKind.PartDiffers, Described.Of("17 19/32"), Described.Of("17 9/16")), (advice.Upset.Kind, advice.Upset.Value, advice.Upset.Least));
        Assert.Contains("comes to 0 in, inside 0 in to 1/16 in by 0 in", Assert.Single(advice.Remedies).Words, StringComparison.Ordinal);
    }

    [Fact]
    public void FrontFixedOffItsSpacers_IsFixedAgain()
    {
        SetPiece set = Of(Bench, "L2.front.gap: 1/4 in");
        Remedy again = Remedies.For(set, s_shims, [])[0].Remedies[0];
        Assert.Equal(RemedyKind.TakeApart, again.Kind);
        AssertAmends(again, ("L2.front.gap", "1/8", AmendmentKind.Reads));
    }

    [Fact]
    public void SlidesBoughtTooLong_AreChangedWithTheSidesThatWereCutToThem()
    {
        // 24 in slides where 24 - 2 mm - 1/8 is usable; the next of the series is 22.
        SetPiece loose = Logged("bought: [L3], chosen: [{of: L3.slide.length, is: 24 in}]");
        AssertAmends(Assert.Single(Only(loose).Remedies), ("L3.slide.length", "22", AmendmentKind.Bought));
        SetPiece cut = Logged("cut: [L3.side], figures: [{of: L3.side.length, is: 24 in}], chosen: [{of: L3.slide.length, is: 24 in}]");
        Remedy exchange = Assert.Single(Only(cut).Remedies);
        Assert.Equal((RemedyKind.Exchange, true), (exchange.Kind, exchange.Stock.MustBuy));
        AssertAmends(exchange, ("L3.slide.length", "22", AmendmentKind.Bought), ("L3.side.length.to-cut", "22", AmendmentKind.CutTo));
    }

    [Fact]
    public void SlidesBoughtTooLongWithNoneShorter_SaysSo()
    {
        MendingAdvice advice = Assert.Single(Remedies.For(SetOut(Changed(Bench, "depth: 24", "depth: 10"), "L3.slide.length: 12 in"), s_shims, []), a => a.Upset.Kind == UpsetKind.BoughtTooLong);
        Assert.Empty(advice.Remedies);
        Assert.StartsWith("No other slide", advice.Words, StringComparison.Ordinal);
    }
}
