using Setout.Core.Measures;
using Setout.Cutting.Sheets;
using static Setout.Cutting.Tests.Sheets.SheetBuild;

namespace Setout.Cutting.Tests.Sheets;

public class SheetCheckerTests
{
    // A sheet of 1000 x 600, trims 10, 5, 4, 6: trued 985 x 590. Kerf 3.
    // Two parts 400 x 250 in a strip of 250, then 590 - 250 - 3 = 337 left; in the strip 985 - 803 - 3 = 179 left.
    private static readonly EdgeTrim s_trim = new(Mm(10), Mm(5), Mm(4), Mm(6));

    private static SheetInstance Good(Length? kerf = null, KeepRule? keep = null, EdgeTrim? trim = null, SheetPart? part = null, int? limit = null) =>
        new([part ?? Part("door", 400, 250, 2)], [Stock("ply", 1000, 600, 40, limit, trim ?? s_trim)], kerf ?? Mm(3), keep ?? new KeepRule(Mm(179), Mm(250)));

    private static SheetLayout GoodLayout(CutNode? end = null, CutNode? rest = null, Length? dust = null, Length? firstLong = null, Turn turn = Turn.None) =>
        Layout(new LaidSheet("ply", Rips(
            dust ?? Length.Zero,
            Slice(250, Crosscuts(Length.Zero, Slice(firstLong ?? Mm(400), Lies("door", turn)), Slice(400, Lies("door")), Slice(179, end ?? KeepNode.Instance))),
            Slice(337, rest ?? KeepNode.Instance))));

    [Fact]
    public void Check_GoodLayout_FindsNothing() => Assert.Empty(SheetChecker.Check(Good(), GoodLayout()));

    [Fact]
    public void SlicesAddUp_SliceOneTickLong_Fails()
    {
        Assert.Contains("SlicesAddUp", Rules(Good(), GoodLayout(firstLong: Mm(400) + Tick)));
        Assert.Contains("SlicesAddUp", Rules(Good(), GoodLayout(firstLong: Mm(400) - Tick)));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(-1)]
    public void SlicesAddUp_KerfOneTickOff_Fails(long ticks) =>
        Assert.Contains("SlicesAddUp", Rules(Good(kerf: Mm(3) + Length.FromTicks(ticks)), GoodLayout()));

    [Fact]
    public void SlicesAddUp_TrimOneTickWider_Fails() =>
        Assert.Contains("SlicesAddUp", Rules(Good(trim: s_trim with { AcrossEnd = Mm(6) + Tick }), GoodLayout()));

    [Fact]
    public void InsideStockAndTrims_SliceEndsAtTrim_PassesAndOneTickPastFails()
    {
        static SheetLayout Strip(Length rest) => Layout(new LaidSheet("ply", Rips(Length.Zero,
            Slice(250, Crosscuts(Length.Zero, Slice(400, Lies("door")), Slice(400, Lies("door")), Slice(179, KeepNode.Instance))),
            Slice(rest, KeepNode.Instance))));
        Assert.DoesNotContain("InsideStockAndTrims", Rules(Good(), Strip(Mm(337))));
        Assert.Contains("InsideStockAndTrims", Rules(Good(), Strip(Mm(337) + Tick)));
    }

    [Fact]
    public void InsideStockAndTrims_StartTrimOneTickWider_Fails() =>
        Assert.Contains("InsideStockAndTrims", Rules(Good(trim: s_trim with { AlongStart = Mm(10) + Tick }), GoodLayout()));

    [Fact]
    public void KerfBetweenParts_InnerSliceSpillsOneTickIntoKerf_Fails()
    {
        // The first slice is divided again along the grain; its inner slices reach one tick past its end, into the saw's path.
        static SheetLayout Nested(Length inner) => Layout(new LaidSheet("ply", Rips(Length.Zero,
            Slice(250, Crosscuts(Length.Zero,
                Slice(440, Crosscuts(Length.Zero, Slice(400, Lies("door")), Slice(inner, WasteNode.Instance))),
                Slice(400, Lies("door")), Slice(139, WasteNode.Instance))),
            Slice(337, KeepNode.Instance))));
        Assert.Empty(Rules(Good(), Nested(Mm(37))));
        Assert.Contains("KerfBetweenParts", Rules(Good(), Nested(Mm(37) + Tick)));
    }

    [Fact]
    public void DustIsNoWiderThanKerf_DustOfOneKerf_PassesAndOneTickMoreFails()
    {
        // Across: 250 + 3 + 334 leaves 3, exactly one kerf.
        static SheetLayout Dusty(Length slice, Length dust) => Layout(new LaidSheet("ply", Rips(dust,
            Slice(250, Crosscuts(Length.Zero, Slice(400, Lies("door")), Slice(400, Lies("door")), Slice(179, KeepNode.Instance))),
            Slice(slice, KeepNode.Instance))));
        Assert.Empty(Rules(Good(), Dusty(Mm(334), Mm(3))));
        Assert.Contains("DustIsNoWiderThanKerf", Rules(Good(), Dusty(Mm(334) - Tick, Mm(3) + Tick)));
    }

    [Fact]
    public void DustIsNoWiderThanKerf_DustBelowZero_Fails() =>
        Assert.Contains("DustIsNoWiderThanKerf", Rules(Good(), GoodLayout(dust: -Tick)));

    [Fact]
    public void SlicesArePositive_SliceOfOneTick_PassesAndZeroFails()
    {
        static SheetLayout Sliver(Length sliver) => Layout(new LaidSheet("ply", Rips(Length.Zero,
            Slice(250, Crosscuts(Length.Zero, Slice(400, Lies("door")), Slice(400, Lies("door")), Slice(179, KeepNode.Instance))),
            Slice(Mm(334) - sliver, KeepNode.Instance),
            Slice(sliver, WasteNode.Instance))));
        Assert.Empty(Rules(Good(), Sliver(Tick)));
        Assert.Contains("SlicesArePositive", Rules(Good(), Sliver(Length.Zero)));
    }

    [Fact]
    public void EveryDivisionCuts_OneSliceWithDust_PassesAndWithoutFails()
    {
        SheetInstance skim = new([Part("top", 985, 590)], [Stock("ply", 1000, 600, 40, null, s_trim with { AlongEnd = Mm(5) - Tick })], Mm(3), KeepRule.Nothing);
        Assert.Empty(Rules(skim, Layout(new LaidSheet("ply", Crosscuts(Tick, Slice(985, Lies("top")))))));
        SheetInstance exact = new([Part("top", 985, 590)], [Stock("ply", 1000, 600, 40, null, s_trim)], Mm(3), KeepRule.Nothing);
        Assert.Empty(Rules(exact, Layout(new LaidSheet("ply", Lies("top")))));
        Assert.Contains("EveryDivisionCuts", Rules(exact, Layout(new LaidSheet("ply", Crosscuts(Length.Zero, Slice(985, Lies("top")))))));
    }

    [Theory]
    [InlineData(1, 0)]
    [InlineData(-1, 0)]
    [InlineData(0, 1)]
    [InlineData(0, -1)]
    public void PartsHaveTheirSize_PartOneTickOff_Fails(long along, long across)
    {
        var off = new SheetPart("door", Mm(400) + Length.FromTicks(along), Mm(250) + Length.FromTicks(across), 2, GrainRule.Keep);
        Assert.Equal(["PartsHaveTheirSize"], Rules(Good(part: off), GoodLayout()));
    }

    [Fact]
    public void GrainIsKept_FreePartTurned_PassesAndKeptPartTurnedFails()
    {
        // A square part, so that its size is right either way and only the grain is wrong.
        SheetLayout turned = Layout(new LaidSheet("blank", Lies("tile", Turn.Quarter)));
        SheetInstance With(GrainRule grain) => Instance([Part("tile", 300, 300, 1, grain)], [Stock("blank", 300, 300)]);
        Assert.Empty(Rules(With(GrainRule.Free), turned));
        Assert.Equal(["GrainIsKept"], Rules(With(GrainRule.Keep), turned));
    }

    [Fact]
    public void LeftOversAreLabelled_LeftOverAtKeepRule_IsKeptAndOneTickBelowIsWaste()
    {
        Assert.Empty(Rules(Good(keep: new KeepRule(Mm(179), Mm(250))), GoodLayout()));
        Assert.Equal(["LeftOversAreLabelled"], Rules(Good(keep: new KeepRule(Mm(179) + Tick, Mm(250))), GoodLayout()));
        Assert.Equal(["LeftOversAreLabelled"], Rules(Good(keep: new KeepRule(Mm(179), Mm(250) + Tick)), GoodLayout()));
        Assert.Empty(Rules(Good(keep: new KeepRule(Mm(179) + Tick, Mm(250))), GoodLayout(end: WasteNode.Instance)));
        Assert.Equal(["LeftOversAreLabelled"], Rules(Good(), GoodLayout(end: WasteNode.Instance)));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(3)]
    public void DemandIsMet_OneMoreOrLess_Fails(int wanted) =>
        Assert.Equal(["DemandIsMet"], Rules(Good(part: Part("door", 400, 250, wanted)), GoodLayout()));

    [Fact]
    public void DemandIsMet_LeftOutCountsWithLaid_PassesAndOneTooManyFails()
    {
        SheetInstance three = Good(part: Part("door", 400, 250, 3));
        Assert.Empty(Rules(three, GoodLayout() with { LeftOut = [new("door", 1)] }));
        Assert.Equal(["DemandIsMet"], Rules(three, GoodLayout() with { LeftOut = [new("door", 2)] }));
        Assert.Contains("DemandIsMet", Rules(Good(), GoodLayout() with { LeftOut = [new("door", 0)] }));
    }

    [Fact]
    public void StockLimitsHold_AsManyAsThereAre_PassesAndOneMoreFails()
    {
        SheetLayout two = GoodLayout() with { Sheets = [.. GoodLayout().Sheets, .. GoodLayout().Sheets] };
        SheetPart four = Part("door", 400, 250, 4);
        Assert.Empty(Rules(Good(part: four, limit: 2), two));
        Assert.Equal(["StockLimitsHold"], Rules(Good(part: four, limit: 1), two));
    }

    [Fact]
    public void SheetIsUsed_SheetWithoutPart_Fails()
    {
        SheetLayout spare = GoodLayout() with { Sheets = [.. GoodLayout().Sheets, new LaidSheet("ply", KeepNode.Instance)] };
        Assert.Equal(["SheetIsUsed"], Rules(Good(), spare));
    }

    [Fact]
    public void KnownNames_UnknownStockOrPart_Fails()
    {
        Assert.Equal(["KnownNames"], Rules(Good(), Layout(new LaidSheet("oak", KeepNode.Instance))));
        Assert.Equal(["KnownNames"], Rules(Good(), Layout(new LaidSheet("ply", Lies("lid")))));
        Assert.Equal(["KnownNames"], Rules(Good(), GoodLayout() with { LeftOut = [new("lid", 1)] }));
    }

    [Fact]
    public void CheckFigures_CostAndCountAsLaid_PassesAndOneCentOrSheetOffFails()
    {
        Assert.Empty(SheetChecker.CheckFigures(Good(), GoodLayout(), new Money(40), 1));
        Assert.Single(SheetChecker.CheckFigures(Good(), GoodLayout(), new Money(40.01m), 1));
        Assert.Single(SheetChecker.CheckFigures(Good(), GoodLayout(), new Money(40), 2));
    }
}
