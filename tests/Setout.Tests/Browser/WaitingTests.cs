using System.Globalization;
using System.Text;
using Microsoft.Playwright;

namespace Setout.Tests.Browser;

/// <summary>Layouts that take long: how far they have come, what there was before, and the best so far on a press.</summary>
public sealed class WaitingTests(Room room)
{
    private const string Yard = """
        setout-shop: 1
        name: yard
        currency: EUR
        unit: mm
        stock:
          - {panel: birch plywood, label: 18 mm, size: 2500 x 1250, price: 98.00}
          - {panel: birch plywood, label: 18 mm, size: 1500 x 1250, price: 61.00}

        """;

    // Each material is searched for by itself. Of one it is done in a moment; of twenty it takes minutes on a small machine, most of them for fewer settings at the saws.
    private static string Panels(string name, int materials)
    {
        var text = new StringBuilder($"setout: 1\nname: {name}\nunit: mm\nmaterials:\n");
        for (int m = 0; m < materials; m++) text.Append(CultureInfo.InvariantCulture, $"  p{m}: {{panel: birch plywood, label: 18 mm}}\n");
        text.Append("parts:\n");
        for (int m = 0; m < materials; m++)
            for (int i = 0; i < (materials == 1 ? 2 : 12); i++)
                text.Append(CultureInfo.InvariantCulture, $"  - {{part: A{(m * 12) + i + 1}, name: panel {(m * 12) + i + 1}, of: p{m}, length: {420 + (((i * 97) + (m * 11)) % 593)}, width: {310 + (((i * 61) + (m * 7)) % 379)}, count: {1 + (i % 2)}}}\n");
        return text.ToString();
    }

    private static async Task<KeptShop> ShopAsync()
    {
        KeptShop shop = await KeptShop.OpenAsync(hasSamples: false);
        shop.Keep("panels", Panels("Panels", 1));
        shop.Keep("others", Panels("Others", 1));
        shop.Keep("shop", Yard);
        return shop;
    }

    [Theory]
    [InlineData("/piece/panels/break-down", true)]
    [InlineData("/piece/panels/break-down", false)]
    [InlineData("/together?piece=panels&piece=others", true)]
    [InlineData("/together?piece=panels&piece=others", false)]
    public async Task LongLayout_ShowsProgressBesideTheLastPlanInGrey_AndIsStoppedWithTheBestSoFar(string address, bool hasScript)
    {
        await using KeptShop shop = await ShopAsync();
        await using Sheet sheet = await room.OpenAsync(hasScript: hasScript, address: shop.Address);
        IPage page = sheet.Page;
        // The first plan is there, and nothing is out of date.
        await shop.Client.GetStringAsync(address);
        await page.GotoAsync(address);
        await Assertions.Expect(page.Locator(".broken")).ToHaveCountAsync(1);
        await Assertions.Expect(page.Locator(".out-of-date")).ToHaveCountAsync(0);
        shop.Change("panels", _ => Panels("Panels", 20));
        await page.GotoAsync(address);
        await Assertions.Expect(page.Locator(".waiting-note")).ToContainTextAsync("Layouts are being worked out");
        await Assertions.Expect(page.Locator(".out-of-date .broken")).ToHaveCountAsync(1);
        await Assertions.Expect(page.GetByText("What follows is out of date")).ToBeVisibleAsync();
        if (address.StartsWith("/together", StringComparison.Ordinal))
        {
            // Nothing that is out of date can be printed; whoever kept the address of the sheets is shown how far the layouts have come.
            await Assertions.Expect(page.Locator("#papers")).ToContainTextAsync("Bench sheets can be had once the layouts are ready.");
            await Assertions.Expect(page.Locator("#papers a")).ToHaveCountAsync(0);
            await page.GotoAsync(address.Replace("/together?", "/together/bench-sheets.pdf?", StringComparison.Ordinal));
            await Assertions.Expect(page.Locator(".waiting-note")).ToBeVisibleAsync();
        }
        // No run of what is out of date can be marked.
        await Assertions.Expect(page.GetByRole(AriaRole.Button, new() { Name = "This run is cut" })).ToHaveCountAsync(0);
        if (hasScript) await Assertions.Expect(page.Locator(".waiting-note [data-laying]")).ToContainTextAsync("p", new() { Timeout = 30_000 });
        await page.GetByRole(AriaRole.Button, new() { Name = "Stop and take the best so far" }).ClickAsync();
        if (!hasScript)
            while (await page.Locator(".waiting-note").CountAsync() > 0) await page.GetByRole(AriaRole.Link, new() { Name = "look again" }).ClickAsync();
        await Assertions.Expect(page.Locator(".waiting-note")).ToHaveCountAsync(0, new() { Timeout = 60_000 });
        await Assertions.Expect(page.Locator(".broken")).ToHaveCountAsync(20, new() { Timeout = 60_000 });
        await Assertions.Expect(page.Locator(".out-of-date")).ToHaveCountAsync(0);
        Assert.Empty(sheet.Complaints);
    }

    /// <summary>What one goes back to was laid out already: it is there at once, and not searched for once more.</summary>
    [Fact]
    public async Task Layout_ThatOneGoesBackTo_IsThereAtOnce()
    {
        await using KeptShop shop = await ShopAsync();
        shop.Change("panels", _ => Panels("Panels", 20));
        await using Sheet sheet = await room.OpenAsync(address: shop.Address);
        IPage page = sheet.Page;
        await page.GotoAsync("/piece/panels/break-down");
        // By itself it would take minutes.
        await page.GetByRole(AriaRole.Button, new() { Name = "Stop and take the best so far" }).ClickAsync();
        await Assertions.Expect(page.Locator(".waiting-note")).ToHaveCountAsync(0, new() { Timeout = 120_000 });
        await Assertions.Expect(page.Locator(".broken")).ToHaveCountAsync(20);
        shop.Change("panels", _ => Panels("Panels", 1));
        await page.GotoAsync("/piece/panels/break-down");
        await Assertions.Expect(page.Locator(".waiting-note")).ToHaveCountAsync(0, new() { Timeout = 60_000 });
        await Assertions.Expect(page.Locator(".broken")).ToHaveCountAsync(1, new() { Timeout = 60_000 });
        shop.Change("panels", _ => Panels("Panels", 20));
        string back = await shop.Client.GetStringAsync("/piece/panels/break-down");
        Assert.DoesNotContain("Layouts are being worked out", back, StringComparison.Ordinal);
        await page.GotoAsync("/piece/panels/break-down");
        await Assertions.Expect(page.Locator(".broken")).ToHaveCountAsync(20);
    }
}
