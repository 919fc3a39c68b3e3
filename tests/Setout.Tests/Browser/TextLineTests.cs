using Microsoft.Playwright;

namespace Setout.Tests.Browser;

/// <summary>From a note to the line of the text that it is about.</summary>
public sealed class TextLineTests(Room room)
{
    private const string Broken = "setout: 1\nname: Broken\nunit: in\nmateriels:\n  ply: {panel: mdf, label: 3/4}\n";

    private static Task ChosenAsync(IPage page, string words) =>
        page.WaitForFunctionAsync("words => { const t = document.getElementById('text'); return t && t.value.slice(t.selectionStart, t.selectionEnd) === words; }", words);

    [Fact]
    public async Task Note_OfALine_LeadsToItInTheText()
    {
        await using KeptShop shop = await KeptShop.OpenAsync(hasSamples: false);
        shop.Keep("broken", Broken);
        await using Sheet sheet = await room.OpenAsync(address: shop.Address);
        IPage page = sheet.Page;
        await page.GotoAsync("/piece/broken");
        await page.GetByRole(AriaRole.Link, new() { Name = "line 4 of the text of broken" }).First.ClickAsync();
        await Assertions.Expect(page.Locator("#text")).ToBeFocusedAsync();
        await ChosenAsync(page, "materiels:");
        // On the page of the text itself what is half changed stays.
        await page.Locator("#text").FillAsync("# half typed\n" + Broken);
        await page.GetByRole(AriaRole.Link, new() { Name = "line 4 of the text of broken" }).First.ClickAsync();
        await ChosenAsync(page, "unit: in");
        Assert.Empty(sheet.Complaints);
    }

    /// <summary>Where a piece can be read, its lines are no way to find something: the words say what the link leads to.</summary>
    [Fact]
    public async Task Note_OfAPieceThatCanBeRead_LeadsToItsPlaceWithoutANumber()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        string page = await shop.Client.GetStringAsync("/piece/luthiers-bench");
        Assert.Matches("<a href=\"/piece/luthiers-bench/text\\?line=[0-9]+\" data-line>its place in the text of luthiers-bench</a>", page);
        Assert.DoesNotMatch("line [0-9]+ of the text", page);
    }
}
