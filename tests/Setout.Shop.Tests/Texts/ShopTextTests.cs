// Over 200 lines: the table of mistakes of one kind of text.
using Setout.Core.Fit;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.Workings;
using Setout.Cutting.Runs;
using Setout.Shop.Texts;

namespace Setout.Shop.Tests.Texts;

public class ShopTextTests
{
    private const string Head = "setout-shop: 1\nunit: in\n";

    /// <summary>The code, and a text with the mark ¦ where the only finding stands.</summary>
    public static TheoryData<string, string> Mistakes => new()
    {
        { "text.other-kind", "¦setout: 1\nname: Box\n" },
        { "text.no-version", "¦unit: in\n" },
        { "text.version", "setout-shop: ¦7\n" },
        { "text.missing", "¦setout-shop: 1\n" },
        { "text.too-long", Head + "currency: ¦doubloons\n" },
        { "text.absurd-size", Head + "kerf: {sheets: ¦3}\n" },
        { "text.absurd-size", Head + "kerf: {boards: ¦-1/8}\n" },
        { "text.absurd-size", Head + "instruments: {tape: ¦0}\n" },
        { "text.unknown-key", Head + "instruments: {¦laser: 1/32}\n" },
        { "text.wanted-map", Head + "spread: ¦1/32\n" },
        { "text.wanted-map", Head + "spread: ¦[{setting: 1/32}]\n" },
        { "text.absurd-size", Head + "spread: {setting: ¦1 1/32}\n" },
        { "text.absurd-size", Head + "spread: {slides: ¦-1/256}\n" },
        { "text.absurd-size", Head + "spread: {placing: ¦0.0005 mm}\n" },
        { "text.wanted-length", Head + "spread: {sheet: ¦[1/128]}\n" },
        { "length.unknown-word", Head + "spread: {spot: ¦little}\n" },
        { "text.unknown-key", Head + "spread: {¦bought: 1/256}\n" },
        { "text.twice", Head + "spread: {section: 1/32, ¦section: 1/64}\n" },
        { "text.wanted-list", Head + "shims: ¦none\n" },
        { "text.wanted-list", Head + "shims: ¦{washer: 1/16}\n" },
        { "text.wanted-map", Head + "shims: [¦1/16]\n" },
        { "text.missing", Head + "shims:\n  - ¦{name: washer}\n" },
        { "text.missing", Head + "shims:\n  - ¦{thickness: 1/16}\n" },
        { "text.wanted-word", Head + "shims:\n  - {name: ¦\"\", thickness: 1/16}\n" },
        { "text.unknown-key", Head + "shims:\n  - {name: washer, thickness: 1/16, ¦price: 1}\n" },
        { "text.absurd-size", Head + "shims:\n  - {name: washer, thickness: ¦0}\n" },
        { "text.absurd-size", Head + "shims:\n  - {name: washer, thickness: ¦-1/16}\n" },
        { "text.absurd-size", Head + "shims:\n  - {name: strip, thickness: ¦9/32}\n" },
        { "text.wanted-length", Head + "shims:\n  - {name: washer, thickness: ¦{is: 1/16}}\n" },
        { "shop.shim-twice", Head + "shims:\n  - {name: card, thickness: 1/64}\n  - {name: ¦card, thickness: 1/32}\n" },
        { "text.bad-grid", Head + "grid: {in: ¦1/3}\n" },
        { "text.absurd-size", Head + "grid: {mm: ¦30}\n" },
        { "text.wanted-size", Head + "keep: {sheets: ¦12}\n" },
        { "text.missing", Head + "stock:\n  - ¦{size: 96 x 48}\n" },
        { "text.missing", Head + "stock:\n  - ¦{panel: mdf, label: 3/4}\n" },
        { "text.missing", Head + "stock:\n  - ¦{lumber: 2x4}\n" },
        { "text.two-kinds", Head + "stock:\n  - {lumber: 2x4, ¦stick: oak, length: 96, section: 1 x 2}\n" },
        { "material.unknown-lumber", Head + "stock:\n  - {lumber: ¦2x5, length: 96}\n" },
        { "text.unknown-key", Head + "stock:\n  - {lumber: 2x4, length: 96, ¦size: 96 x 48}\n" },
        { "text.wanted-number", Head + "stock:\n  - {lumber: 2x4, length: 96, have: ¦-1}\n" },
        { "stock.flaws-to-buy", Head + "stock:\n  - ¦{lumber: 2x4, length: 96, flaws: [{from: 1, to: 2}]}\n" },
        { "stock.flaw-empty", Head + "stock:\n  - {lumber: 2x4, length: 96, have: 1, flaws: [{from: 2, to: ¦2}]}\n" },
        { "stock.flaw-empty", Head + "stock:\n  - {stick: oak, section: 1 x 2, length: 96, have: 1, flaws: [{from: 3, to: 4}, {from: 20, to: ¦19 7/8}]}\n" },
        { "stock.flaw-beyond", Head + "stock:\n  - {lumber: 2x4, length: 96, have: 1, flaws: [{from: 95, to: ¦96 1/64}]}\n" },
        { "stock.too-many-flaws", Head + "stock:\n  - {lumber: 2x4, length: 96, have: 1, ¦flaws: [" + string.Join(", ", Enumerable.Repeat("{from: 1, to: 2}", 1000)) + "]}\n" },
        { "text.missing", Head + "stock:\n  - {lumber: 2x4, length: 96, have: 1, flaws: [¦{from: 1}]}\n" },
        { "text.missing", Head + "stock:\n  - {lumber: 2x4, length: 96, have: 1, flaws: [¦{to: 1}]}\n" },
        { "text.absurd-size", Head + "stock:\n  - {lumber: 2x4, length: 96, have: 1, flaws: [{from: ¦-1, to: 2}]}\n" },
        { "text.unknown-key", Head + "stock:\n  - {lumber: 2x4, length: 96, have: 1, flaws: [{from: 1, to: 2, ¦depth: 1}]}\n" },
        { "text.wanted-list", Head + "stock:\n  - {lumber: 2x4, length: 96, have: 1, flaws: ¦{from: 1, to: 2}}\n" },
        { "text.wanted-map", Head + "stock:\n  - {lumber: 2x4, length: 96, have: 1, flaws: [¦3]}\n" },
        { "text.unknown-key", Head + "stock:\n  - {panel: mdf, label: 3/4, size: 96 x 48, have: 1, ¦flaws: []}\n" },
        { "text.unknown-key", Head + "stock:\n  - {panel: mdf, label: 3/4, size: 96 x 48, ¦rip: yes}\n" },
        { "text.unknown-key", Head + "stock:\n  - {lumber: 2x6, length: 96, ¦width: 5 1/2}\n" },
        { "stock.name-twice", Head + "stock:\n  - {lumber: 2x4, length: 96, have: 1, name: end}\n  - {lumber: 2x4, length: 60, have: 2, name: ¦end}\n" },
        { "stock.name-twice", Head + "stock:\n  - {panel: mdf, label: 3/4, size: 20 x 10, have: 1, name: b}\n  - {lumber: 2x4, length: 60}\n  - {panel: mdf, label: 3/4, size: 20 x 10, have: 1, name: ¦b}\n" },
        { "text.unknown-word", Head + "stock:\n  - {lumber: 2x6, length: 96, rip: ¦often}\n" },
        { "text.absurd-size", Head + "kerf: {rips: ¦1 1/32}\n" },
        { "text.wanted-map", Head + "saws: ¦all\n" },
        { "text.wanted-map", Head + "saws: {fence: ¦30}\n" },
        { "text.wanted-map", Head + "saws: {sled: ¦[24, 48]}\n" },
        { "text.wanted-map", Head + "saws: {guided: ¦none}\n" },
        { "text.unknown-key", Head + "saws: {¦bandsaw: {widest: 8}}\n" },
        { "text.unknown-key", Head + "saws: {fence: {¦kerf: 1/8}}\n" },
        { "text.absurd-size", Head + "saws: {fence: {widest: ¦0}}\n" },
        { "text.absurd-size", Head + "saws: {fence: {room: ¦-100}}\n" },
        { "text.absurd-size", Head + "saws: {fence: {carrier: ¦0}}\n" },
        { "shop.carrier-wider", Head + "saws: {fence: {narrowest: 1, carrier: ¦1 1/64}}\n" },
        { "shop.carrier-wider", Head + "saws: {fence: {carrier: ¦2}}\n" },
        { "shop.fence-too-near", Head + "saws: {fence: {narrowest: 3, widest: ¦2}}\n" },
        { "shop.fence-too-near", Head + "saws: {fence: {narrowest: ¦31}}\n" },
        { "text.absurd-size", Head + "saws: {sled: {deepest: ¦0}}\n" },
        { "text.absurd-size", Head + "saws: {guided: {shoe: ¦-5}}\n" },
        { "text.absurd-size", Head + "saws: {guided: {rough: ¦2}}\n" },
        { "text.absurd-size", Head + "saws: {guided: {kerf: ¦1 1/8}}\n" },
        { "text.absurd-size", Head + "saws: {boards: {widest: ¦0}}\n" },
        { "shop.sled-alone", Head + "saws: {fence: no, sled: ¦{deepest: 24}}\n" },
        { "shop.no-saw", Head + "saws: ¦{fence: no, guided: no, boards: no}\n" },
        { "text.wanted-weight", Head + "lift: ¦51\n" },
        { "text.wanted-weight", Head + "lift: ¦a sack\n" },
        { "text.wanted-weight", Head + "lift: ¦-20 kg\n" },
        { "text.wanted-weight", Head + "lift: ¦[51 lb]\n" },
        { "text.absurd-weight", Head + "lift: ¦0 kg\n" },
        { "text.absurd-weight", Head + "lift: ¦500 lb\n" },
        { "text.missing", Head + "prices:\n  - ¦{name: Screw}\n" },
        { "text.missing", Head + "prices:\n  - ¦{price: 1}\n" },
        { "shop.price-twice", Head + "prices:\n  - {name: Screw, price: 1}\n  - {name: ¦Screw, price: 2}\n" },
    };

    [Theory, MemberData(nameof(Mistakes))]
    public void Read_OneMistake_OneFindingAtItsPlace(string code, string marked) => Repository.OnlyFinding(code, marked, t => ShopText.Read(t));

    [Fact]
    public void Read_AlmostEmpty_IsTheUsualShop()
    {
        TextRead<Shop.Texts.Shop> read = ShopText.Read(Head);
        Assert.True(read.IsSound);
        Assert.Equal(Shop.Texts.Shop.Usual with { Stock = read.Value!.Stock }, read.Value);
        Assert.Empty(read.Value.Stock);
    }

    [Fact]
    public void Read_Saws_EachFigureInItsPlace()
    {
        static Length In(long n, long d = 1) => Length.FromInches(n, d);
        SawLimits saws = Sound(Head + "kerf: {sheets: 1/10, boards: 1/5, rips: 3/16}\nsaws:\n  fence: {widest: 40, room: 90, narrowest: 2, carrier: 1/2}\n  sled: {deepest: 20, longest: 50}\n"
            + "  guided: {kerf: 3/32, shoe: 5 1/8, longest: 60, rough: 0}\n  boards: {widest: 12}\n").Saws;
        Assert.Equal(new(new(In(1, 10), In(40), In(90), In(2), In(1, 2)), new(In(20), In(50)), new(In(3, 32), In(41, 8), In(60), Length.Zero), new(In(1, 5), In(12)), In(3, 16)), saws);
        // The hand-held saw has the kerf of sheets until it says its own; what is left out is as usual.
        saws = Sound(Head + "kerf: {sheets: 1/10}\nsaws: {guided: {longest: 60}}\n").Saws;
        Assert.Equal(SawLimits.Usual with { Fence = SawLimits.Usual.Fence! with { Kerf = In(1, 10) }, Guided = new(In(1, 10), null, In(60), In(1, 16)) }, saws);
        // A narrow fence needs no carrier wider than itself.
        Assert.Equal((In(1, 8), In(1, 8)), Sound(Head + "saws: {fence: {narrowest: 1/8}}\n").Saws.Fence is { } near ? (near.Narrowest, near.NarrowestCarried) : default);
    }

    [Fact]
    public void Read_SawsThatAreNotThere_AreNull()
    {
        Assert.Equal((null, null, true, true), Sound(Head + "saws: {fence: no}\n").Saws is var a ? (a.Fence, a.Sled, a.Guided is not null, a.Boards is not null) : default);
        Assert.Equal((null, true), Sound(Head + "saws: {sled: no}\n").Saws is var b ? (b.Sled, b.Fence is not null) : default);
        Assert.Null(Sound(Head + "saws: {guided: no}\n").Saws.Guided);
        Assert.Null(Sound(Head + "saws: {boards: false}\n").Saws.Boards);
        Assert.NotNull(Sound(Head + "saws: {fence: no, guided: no}\n").Saws.Boards);
    }

    // Each sheet can be sawn by either saw: the wider kerf counts, of those that are there.
    [Theory]
    [InlineData("kerf: {sheets: 1/10}", 10, 8)]
    [InlineData("kerf: {sheets: 1/10}\nsaws: {guided: {kerf: 1/5}}", 5, 8)]
    [InlineData("kerf: {sheets: 1/10}\nsaws: {guided: {kerf: 1/20}}", 10, 8)]
    [InlineData("kerf: {sheets: 1/10}\nsaws: {fence: no, guided: {kerf: 1/20}}", 20, 8)]
    [InlineData("kerf: {sheets: 1/10}\nsaws: {guided: no}", 10, 8)]
    [InlineData("kerf: {sheets: 1/10, boards: 1/4}\nsaws: {boards: no, guided: {kerf: 1/5}}", 5, 5)]
    public void Read_Kerfs_LayoutsAreLaidWithTheWidest(string written, int sheets, int boards)
    {
        Shop.Texts.Shop shop = Sound(Head + written + "\n");
        Assert.Equal((Length.FromInches(1, sheets), Length.FromInches(1, boards)), (shop.SheetKerf, shop.BoardKerf));
    }

    [Theory]
    [InlineData("51 lb", 23.13)]
    [InlineData("23kg", 23)]
    [InlineData("30.5 kg", 30.5)]
    [InlineData("200 kg", 200)]
    public void Read_Lift_IsAWeight(string written, double kilograms) => Assert.Equal(kilograms, Sound(Head + $"lift: {written}\n").Lift.Kilograms.Value, 2);

    [Fact]
    public void Read_OneNameForWhatIsToldApart_IsSound()
    {
        Assert.Equal(6, Sound(Head + "stock:\n  - {lumber: 2x4, length: 96, have: 1, name: end}\n  - {lumber: 2x6, length: 96, have: 1, name: end}\n"
            + "  - {lumber: 2x4, length: 60, price: 3, name: yard}\n  - {lumber: 2x4, length: 96, price: 4, name: yard}\n  - {lumber: 2x4, length: 50, have: 1}\n  - {lumber: 2x4, length: 50, have: 1}\n  - {lumber: 2x4, length: 50, have: 0, name: end}\n").Stock.Length);
    }

    // Key by key: what is written is read into its own figure, and every other stays as usual.
    [Theory]
    [InlineData("setting")]
    [InlineData("repeat")]
    [InlineData("sheet")]
    [InlineData("spot")]
    [InlineData("section")]
    [InlineData("placing")]
    [InlineData("slides")]
    public void Read_OneSpread_ChangesThatOneOnly(string key)
    {
        Accuracy With(Length to) => key switch
        {
            "setting" => Accuracy.Usual with { Setting = to },
            "repeat" => Accuracy.Usual with { Repeat = to },
            "sheet" => Accuracy.Usual with { Sheet = to },
            "spot" => Accuracy.Usual with { Spot = to },
            "section" => Accuracy.Usual with { Section = to },
            "placing" => Accuracy.Usual with { Placing = to },
            _ => Accuracy.Usual with { Bought = to },
        };
        Assert.Equal(With(Length.FromInches(1, 10)), Sound(Head + $"spread: {{{key}: 1/10}}\n").Accuracy);
        Assert.Equal(With(Length.FromMillimetres(2)), Sound("setout-shop: 1\nunit: mm\n" + $"spread: {{{key}: 2}}\n").Accuracy);
        Assert.Equal(With(Length.FromInches(1)), Sound(Head + $"spread: {{{key}: 1}}\n").Accuracy);
        Assert.Equal(With(Length.Zero), Sound(Head + $"spread: {{{key}: 0}}\n").Accuracy);
    }

    [Fact]
    public void Read_SlackAndStages_AreTheShopsOwn()
    {
        Shop.Texts.Shop shop = Sound(Head + "slack: 1/16\nmost stages: 3\n");
        Assert.Equal((Length.FromInches(1, 16), 3), (shop.SheetSlack, shop.MostStages));
        Assert.Equal((Length.Zero, null), (Shop.Texts.Shop.Usual.SheetSlack, Shop.Texts.Shop.Usual.MostStages));
        Assert.Equal(Length.Zero, Sound(Head + "slack: 0\n").SheetSlack);
    }

    [Theory]
    [InlineData("slack: 2", "text.absurd-size")]
    [InlineData("most stages: 1", "text.wanted-number")]
    [InlineData("most stages: 10", "text.wanted-number")]
    [InlineData("most stages: few", "text.wanted-number")]
    public void Read_SlackOrStagesPastTheirLimit_OneFinding(string line, string code) =>
        Assert.Equal(code, Assert.Single(ShopText.Read(Head + line + "\n").Findings).Code);

    [Fact]
    public void Read_SpreadAndInstruments_StandTogether()
    {
        Accuracy accuracy = Sound(Head + "spread: {repeat: 1/100}\ninstruments: {tape: 1/20}\n").Accuracy;
        Assert.Equal((Length.FromInches(1, 100), Length.FromInches(1, 20)), (accuracy.Repeat, accuracy.Instruments["tape"]));
        Assert.Equal((Accuracy.Usual.Setting, Accuracy.Usual.Instruments["rule"]), (accuracy.Setting, accuracy.Instruments["rule"]));
    }

    [Fact]
    public void Read_Shims_StandThickestFirst() => Assert.Equal(
        [new("slip", Length.FromInches(1, 4)), new("washer", Length.FromInches(1, 16)), new("second washer", Length.FromInches(1, 16)), new Shim("card", Length.FromTicks(48_000))],
        Sound(Head + "shims:\n  - {name: washer, thickness: 1/16}\n  - {name: card, thickness: 0.3 mm}\n  - {name: second washer, thickness: 1/16}\n  - {name: slip, thickness: 1/4}\n").Shims);

    [Theory]
    [InlineData("shims: []\n")]
    [InlineData("shims:\n")]
    public void Read_EmptyListOfShims_IsAShopThatKeepsNone(string written) => Assert.Empty(Sound(Head + written).Shims);

    [Fact]
    public void Read_NoListOfShims_IsTheUsualOnesThickestFirst()
    {
        Assert.Equal(Shop.Texts.Shop.Usual.Shims, Sound(Head).Shims);
        Assert.Equal(Shop.Texts.Shop.Usual.Shims.OrderByDescending(s => s.Thickness), Shop.Texts.Shop.Usual.Shims);
    }

    [Theory]
    [InlineData("in", "'9/32 in' cannot be the thickness.", "Write a length above 0 to 1/4 in.")]
    [InlineData("mm", "'9/32 in' cannot be the thickness.", "Write a length above 0 to 6.35 mm.")]
    public void Read_ShimTooThick_NamesTheMostInTheUnitOfTheShop(string unit, string words, string remedy)
    {
        Finding finding = Assert.Single(ShopText.Read($"setout-shop: 1\nunit: {unit}\nshims: [{{name: strip, thickness: 9/32 in}}]\n").Findings);
        Assert.Equal((words, remedy), (finding.Words, finding.Remedy));
    }

    [Fact]
    public void Read_ShimTwice_NamesTheLineOfTheFirst()
    {
        Finding finding = Assert.Single(ShopText.Read(Head + "shims:\n  - {name: card, thickness: 1/64}\n  - {name: card, thickness: 1/32}\n").Findings);
        Assert.Equal(("'card' stands among the shims in line 4 already.", "Keep one of them, or give it a name of its own."), (finding.Words, finding.Remedy));
    }

    private static Shop.Texts.Shop Sound(string text)
    {
        TextRead<Shop.Texts.Shop> read = ShopText.Read(text);
        Assert.Empty(read.Findings);
        return read.Value!;
    }

    [Fact]
    public void Read_BareGrids_AreInTheUnitOfTheirKey()
    {
        Shop.Texts.Shop shop = ShopText.Read(Head + "grid: {in: 1/16, mm: 1}\n").Value!;
        Assert.Equal((Grid.Sixteenth, Grid.Millimetre), (shop.InchGrid, shop.MetricGrid));
    }

    [Fact]
    public void Read_NoneLeft_IsNeitherInHandNorForSale()
    {
        TextRead<Shop.Texts.Shop> read = ShopText.Read(Head + "stock:\n  - {lumber: 2x4, length: 50, have: 0}\n  - {lumber: 2x4, length: 60, have: 2}\n  - {lumber: 2x4, length: 96}\n");
        Assert.True(read.IsSound);
        Assert.Equal([2, (int?)null], read.Value!.Stock.Select(s => s.Size.InHand));
    }

    [Fact]
    public void Read_Flaws_StandAsWrittenUpToTheEndsOfTheBoard()
    {
        StockSize size = Assert.Single(Sound(Head + "stock:\n  - {lumber: 2x4, length: 96, have: 2, flaws: [{from: 90, to: 96}, {from: 0, to: 1 1/2}, {from: 1, to: 3}]}\n").Stock).Size;
        Flaw Of(int from, Length to) => new(Length.FromInches(from), to);
        Assert.Equal([Of(90, Length.FromInches(96)), Of(0, Length.FromInches(3, 2)), Of(1, Length.FromInches(3))], size.Flaws);
        Assert.Empty(Assert.Single(Sound(Head + "stock:\n  - {lumber: 2x4, length: 96, flaws: []}\n").Stock).Size.Flaws);
    }

    // A seventh of a tick cannot be cut: a flaw is never told smaller than it is, and the board never longer.
    [Fact]
    public void Read_FlawBetweenTicks_IsLandedOutward()
    {
        StockSize size = Assert.Single(Sound(Head + "stock:\n  - {lumber: 2x4, length: 96/7 + 1, have: 1, flaws: [{from: 1/7, to: 3/7}, {from: 3, to: 96/7 + 1}]}\n").Stock).Size;
        Assert.True(size.Flaws[0].From.ToExact() < ExactLength.FromInches(Rational.Of(1, 7)) && size.Flaws[0].To.ToExact() > ExactLength.FromInches(Rational.Of(3, 7)));
        Assert.True((size.Flaws[0].To - size.Flaws[0].From).ToExact() < ExactLength.FromInches(Rational.Of(2, 7)) + Length.FromTicks(2));
        Assert.Equal(size.Along, size.Flaws[1].To);
    }

    [Fact]
    public void Read_Rip_KeepsWoodAndSectionOfTheBoard()
    {
        Shop.Texts.Shop shop = Sound(Head + "kerf: {rips: 3/16}\nstock:\n  - {lumber: 2x6, length: 96, rip: yes}\n  - {stick: oak, section: 3/4 x 6, length: 60, rip: true}\n  - {lumber: 2x6, length: 96, rip: no}\n  - {lumber: 2x6, length: 96}\n");
        Assert.Equal((Length.FromInches(3, 16), Length.FromInches(1, 8)), (shop.RipKerf, Shop.Texts.Shop.Usual.RipKerf));
        Assert.Equal(["2x6", "", null, null], shop.Stock.Select(s => s.Board?.Nominal));
        Assert.Equal("oak", shop.Stock[1].Board!.Kind);
    }

    [Fact]
    public void Read_TheSample_HasNoFinding()
    {
        TextRead<Shop.Texts.Shop> read = ShopText.Read(Repository.Read("samples", "shop.yaml"));
        Assert.Empty(read.Findings);
        Assert.Equal(19, read.Value!.Stock.Length);
        // The sample writes out how closely a usual shop works, and what it keeps for packing.
        Assert.Equal(Accuracy.Usual with { Instruments = read.Value.Accuracy.Instruments }, read.Value.Accuracy);
        Assert.Equal(Shop.Texts.Shop.Usual.Shims, read.Value.Shims);
    }
}
