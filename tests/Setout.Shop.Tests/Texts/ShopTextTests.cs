using Setout.Core.Measures;
using Setout.Core.Workings;
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
    public void Read_TheSample_HasNoFinding()
    {
        TextRead<Shop.Texts.Shop> read = ShopText.Read(Repository.Read("samples", "shop.yaml"));
        Assert.Empty(read.Findings);
        Assert.Equal(16, read.Value!.Stock.Length);
    }
}
