using System.Collections.Immutable;
using System.Globalization;
using Setout.Core.Measures;
using Setout.Core.Workings;
using Setout.Shop.Texts;

namespace Setout.Tests.Browser;

/// <summary>What becomes of a plan that is being cut when the shop changes under it.</summary>
public sealed partial class ShopTests
{
    /// <summary>What a plan does not stand on may change under it, also where it would have been laid out otherwise; what it stands on ends it, and is named.</summary>
    [Theory]
    [InlineData("price: 98.00", "price: 12.00", "prices of wood", true)]
    [InlineData("name: yard", "name: the yard behind the house", "its name", true)]
    [InlineData("# What the yard has.", "# What the yard had.", "", true)]
    [InlineData("unit: mm\nstock:", "unit: mm\nkerf: {sheets: 2.2}\nstock:", "saws and kerfs", false)]
    [InlineData("size: 1500 x 1250, have: 2", "size: 1500 x 1250, have: 5", "more wood in the rack", true)]
    [InlineData("size: 1500 x 1250, have: 2", "size: 1500 x 1250, have: 1", "the wood", false)]
    [InlineData("size: 1500 x 1250, have: 2", "size: 1500 x 1240, have: 2", "the wood", false)]
    public async Task PlanThatWasBegun_WhenTheShopIsChanged_EndsOnlyByWhatItStandsOn(string from, string to, string told, bool isKept)
    {
        await using KeptShop shop = await WithTrayAsync();
        await MarkNextAsync(shop, "g1");
        string before = await shop.Client.GetStringAsync("/piece/tray/break-down");
        shop.ChangeNow("shop", t => t.Replace(from, to, StringComparison.Ordinal));
        Assert.Contains(to, shop.Text("shop"), StringComparison.Ordinal);
        string page = await shop.Client.GetStringAsync("/piece/tray/break-down");
        Assert.Equal(isKept, !page.Contains("run.plan-given-up", StringComparison.Ordinal));
        Assert.Equal(isKept, page.Contains("id=\"run-1\" data-run", StringComparison.Ordinal) && page.Contains("Cutting goes on by the plan that was begun", StringComparison.Ordinal));
        Assert.Contains(told, page, StringComparison.Ordinal);
        if (isKept) Assert.Equal(before.Split("data-run=").Length, page.Split("data-run=").Length);
        // Either way the next run can be marked.
        await MarkNextAsync(shop, "g2");
        Assert.Equal(2, Log(shop).Entries.Length);
        if (isKept) Assert.Equal(Log(shop).Entries.Cast<MarkEntry>().First().Plan, Log(shop).Entries.Cast<MarkEntry>().Last().Plan);
    }

    /// <summary>Sheets that are bought in the middle of a plan go into the rack, the plan goes on, and its runs take them from there; a sheet that the plan takes from the rack anyway is not taken for a bought one.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task PlanThatWasBegun_WhenItsWoodIsBought_GoesOnAndTakesItFromTheRack(bool isBought)
    {
        await using KeptShop shop = await WithOneSheetToBuyAsync();
        await MarkNextAsync(shop, "m0");
        string plan = Log(shop).Entries.OfType<MarkEntry>().Single().Plan;
        if (isBought) shop.ChangeNow("shop", t => t.Replace("have: 1, ", "have: 2, ", StringComparison.Ordinal));
        string page = await shop.Client.GetStringAsync("/piece/tray/break-down");
        Assert.DoesNotContain("run.plan-given-up", page, StringComparison.Ordinal);
        Assert.Equal(!isBought, page.Contains("The rack does not know of", StringComparison.Ordinal));
        for (int i = 1; i < 40 && Cut(shop) < 4; i++) await MarkNextAsync(shop, "m" + i);
        Assert.Equal(4, Cut(shop));
        MarkEntry[] marks = [.. Log(shop).Entries.OfType<MarkEntry>()];
        Assert.All(marks, m => Assert.Equal(plan, m.Plan));
        WoodSource[] sheets = [.. marks.SelectMany(m => m.Took).Where(t => t.Source != WoodSource.Blank).Select(t => t.Source).Order()];
        Assert.Equal(WoodSource.Rack, marks[0].Took.Single().Source);
        Assert.Equal(isBought ? [WoodSource.Rack, WoodSource.Rack] : new[] { WoodSource.Rack, WoodSource.Bought }.Order(), sheets);
    }

    // 1500 x 1250 holds one of the large parts: one sheet is there, one is to be bought. Nothing is trued off and no setting is shared, so each is begun by a run of its own.
    private static async Task<KeptShop> WithOneSheetToBuyAsync()
    {
        KeptShop shop = await KeptShop.OpenAsync(hasSamples: false);
        shop.Keep("tray", Tray.Replace("length: 600, width: 400", "length: 1400, width: 900", StringComparison.Ordinal) + "  - {part: C, name: lid, of: ply, length: 1300, width: 950}\n");
        shop.Keep("shop", Yard.Replace("have: 2, ", "have: 1, ", StringComparison.Ordinal) + "  - {panel: birch plywood, label: 18 mm, size: 1500 x 1250, price: 98.00}\ntrim: {sheets: 0}\n");
        return shop;
    }

    /// <summary>What was bought for a plan and is gone, because another piece took it or it is kept for one, is to be bought again: the page says so, and the plan goes on.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task PlanThatWasBegun_WhenWhatWasBoughtIsForAnotherPiece_GoesOnAndSaysThatItIsToBeBought(bool isTaken)
    {
        await using KeptShop shop = await WithOneSheetToBuyAsync();
        shop.Keep("other", Tray.Replace("name: Tray", "name: Other", StringComparison.Ordinal));
        await MarkNextAsync(shop, "m0");
        string plan = Log(shop).Entries.OfType<MarkEntry>().Single().Plan;
        const string there = "have: 1, price: 98.00}   # from the last job";
        if (isTaken)
        {
            shop.ChangeNow("shop", t => t.Replace("have: 1, ", "have: 2, ", StringComparison.Ordinal));
            LoggedSize sheet = new(Length.FromMillimetres(1500), Length.FromMillimetres(1250));
            shop.Log("other", new MarkEntry("o1", DateTimeOffset.UtcNow.ToString("yyyy-MM-ddTHH:mm:ss.fffZ", CultureInfo.InvariantCulture), Progress.Cut, ["A"], ImmutableDictionary<QuantityKey, ExactLength>.Empty) { Took = [new("ply", WoodSource.Rack, "", sheet)] });
        }
        else shop.ChangeNow("shop", t => t.Replace(there, there + "\n  - {panel: birch plywood, label: 18 mm, size: 1500 x 1250, have: 1, for: Other}", StringComparison.Ordinal));
        string page = await shop.Client.GetStringAsync("/piece/tray/break-down");
        Assert.DoesNotContain("run.plan-given-up", page, StringComparison.Ordinal);
        Assert.Contains("The rack does not know of", page, StringComparison.Ordinal);
        Assert.Contains("more wood in the rack", page, StringComparison.Ordinal);
        for (int i = 1; i < 40 && Cut(shop) < 4; i++) await MarkNextAsync(shop, "m" + i);
        MarkEntry[] marks = [.. Log(shop).Entries.OfType<MarkEntry>()];
        Assert.All(marks, m => Assert.Equal(plan, m.Plan));
        Assert.Equal(new[] { WoodSource.Rack, WoodSource.Bought }.Order(), marks.SelectMany(m => m.Took).Where(t => t.Source != WoodSource.Blank).Select(t => t.Source).Order());
    }
}
