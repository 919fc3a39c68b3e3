using System.Net;
using Microsoft.Playwright;
using Setout.Core.Craft;
using Setout.Shop.Texts;

namespace Setout.Tests.Browser;

/// <summary>What comes before what: an opening read before it is built, remedies that undo each other, a part planned and read, wood bought and asked for again.</summary>
public sealed class OrderTests(Room room)
{
    private const string Piece = "/piece/luthiers-bench";

    private const string Tray = "setout: 1\nname: Tray\nunit: mm\nmaterials:\n  ply: {panel: birch plywood, label: 18 mm}\nparts:\n  - {part: A, of: ply, length: 600, width: 400}\n";

    private static Log LogOf(KeptShop shop) => shop.Database.FactsOf(shop.Database.Find("luthiers-bench")!.Id).Read();

    private async Task<Sheet> At(KeptShop shop, string path, bool hasScript = true, int width = 1440)
    {
        Sheet sheet = await room.OpenAsync(width, hasScript: hasScript, address: shop.Address);
        await sheet.Page.GotoAsync(path);
        return sheet;
    }

    private static async Task PostAsync(KeptShop shop, string what, string change, params (string Name, string Value)[] fields)
    {
        using var form = new FormUrlEncodedContent([.. new[] { ("change", change), ("revision", "1"), ("back", Piece) }.Concat(fields).Select(f => KeyValuePair.Create(f.Item1, f.Item2))]);
        using HttpResponseMessage answer = await shop.Client.PostAsync($"{Piece}/{what}", form);
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Opening_ReadBeforeItsRailsAreMarked_SaysSo_AndOnePressMarksThem(bool hasScript)
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await At(shop, $"{Piece}?size=L.width", hasScript);
        IPage page = sheet.Page;
        await page.GetByText("Read it", new() { Exact = true }).ClickAsync();
        await Assertions.Expect(page.Locator("[data-choice='note-read'] .mind")).ToContainTextAsync("Not marked cut: bay L rail and bay L slide panel.");
        await page.Locator("#read-value").FillAsync("19 1/2");
        await page.Locator("#read-value").PressAsync("Enter");
        ILocator early = page.Locator("#moved .early");
        await Assertions.Expect(early).ToContainTextAsync("counts as the opening of the built piece; not marked cut: bay L rail and bay L slide panel", new() { Timeout = 30_000 });
        await Assertions.Expect(page.Locator("#moved").GetByRole(AriaRole.Button, new() { Name = "Take back what was read" })).ToBeVisibleAsync();
        await early.GetByRole(AriaRole.Button, new() { Name = "They are cut: mark them" }).ClickAsync();
        await Assertions.Expect(page.Locator("#moved .early")).ToHaveCountAsync(0, new() { Timeout = 30_000 });
        Assert.Equal(["L.rail", "L.panel"], Assert.IsType<MarkEntry>(LogOf(shop).Entries[^1]).Keys);
        await page.GotoAsync($"{Piece}?size=L.width");
        await page.GetByText("Read it", new() { Exact = true }).ClickAsync();
        await Assertions.Expect(page.Locator("[data-choice='note-read'] .mind")).ToHaveCountAsync(0);
        Assert.Empty(sheet.Complaints);
    }

    [Fact]
    public async Task Drawer_MarkedCutByAnOpeningThatIsNotBuilt_IsToldBeforeAndAfter()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await PostAsync(shop, "read", "a1", ("key", "L.width"), ("value", "19 9/16"));
        await using Sheet sheet = await At(shop, $"{Piece}?size=L1.side");
        IPage page = sheet.Page;
        ILocator mark = page.Locator("[data-choice='mark-cut']");
        await mark.Locator("summary").ClickAsync();
        await Assertions.Expect(mark).ToContainTextAsync("by which this is cut; not marked cut: bay L rail and bay L slide panel");
        await PostAsync(shop, "mark", "a2", ("progress", "cut"), ("what", "L1.side"));
        await page.GotoAsync($"{Piece}?size=L1.side");
        await Assertions.Expect(page.Locator("#moved")).ToContainTextAsync("Cut: drawer L1 side", new() { Timeout = 30_000 });
        await Assertions.Expect(page.Locator("#moved .early")).ToContainTextAsync("not marked cut: bay L rail and bay L slide panel");
        Assert.Empty(sheet.Complaints);
    }

    [Fact]
    public async Task Remedies_ThatUndoEachOther_SayInsteadOfWhich_AndTheOtherGoesWithWhy()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await PostAsync(shop, "mark", "a1", ("progress", "cut"), ("what", "F.post F.tie L.rail K.rail R.rail L.panel R.panel L1.side L1.end L1.bottom L2.side L2.end L2.bottom"));
        await PostAsync(shop, "read", "a2", ("key", "L.rail.length"), ("value", "20 7/8"), ("with", "rule"), ("force", "yes"));
        await using Sheet sheet = await At(shop, Piece);
        IPage page = sheet.Page;
        ILocator trim = page.Locator("[data-upset='L1.play'] summary", new() { HasText = "Trim" }).First;
        await Assertions.Expect(trim).ToContainTextAsync("instead of “Cut anew: bay L rail", new() { Timeout = 30_000 });
        await trim.ClickAsync();
        await page.Locator("[data-upset='L1.play'] details[open]").GetByRole(AriaRole.Button, new() { Name = "It is done so" }).ClickAsync();
        await Assertions.Expect(page.Locator("[data-upset='L1.play']")).ToHaveCountAsync(0, new() { Timeout = 30_000 });
        await Assertions.Expect(page.Locator("[data-upset='L2.play'] summary", new() { HasText = "Cut anew: bay L rail" })).ToHaveCountAsync(0);
        await Assertions.Expect(page.Locator("#moved")).ToContainTextAsync("No longer offered for drawer L2, slide play: Cut anew: bay L rail");
        Assert.Empty(sheet.Complaints);
    }

    [Fact]
    public async Task Thickness_FormAndWorking_SayHowManySpots()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await At(shop, $"{Piece}?size=boxes.thickness");
        ILocator form = sheet.Page.Locator("[data-choice='note-read']");
        await form.Locator("summary").ClickAsync();
        await Assertions.Expect(form).ToContainTextAsync("Read so far: no spot. One spot counts for a whole sheet");
        await PostAsync(shop, "read", "a1", ("key", "boxes.thickness"), ("value", "0.465"), ("sheet", "1"), ("with", "calliper"));
        await sheet.Page.GotoAsync($"{Piece}?size=boxes.sheet-1.thickness");
        await Assertions.Expect(sheet.Page.Locator(".margin")).ToContainTextAsync("one spot counts for the whole sheet: a sheet differs in itself by about");
        await sheet.Page.GotoAsync($"{Piece}?size=boxes.thickness");
        await sheet.Page.Locator("[data-choice='note-read'] summary").ClickAsync();
        await Assertions.Expect(sheet.Page.Locator("[data-choice='note-read']")).ToContainTextAsync("Read so far: sheet 1 at 1 spot.");
        Assert.Empty(sheet.Complaints);
    }

    [Fact]
    public async Task Rails_Read_StandInThePartsListAsReadBesideWhatIsToCut()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await PostAsync(shop, "mark", "a1", ("progress", "cut"), ("what", "L.rail"));
        await PostAsync(shop, "read", "a2", ("key", "L.rail.length"), ("value", "20 15/16"), ("with", "rule"));
        await using Sheet sheet = await At(shop, $"{Piece}?size=L.rail.length");
        ILocator line = sheet.Page.Locator("[data-part='L.rail'] .sizes");
        await Assertions.Expect(line).ToContainTextAsync("to cut");
        await Assertions.Expect(line.Locator(".read-as")).ToContainTextAsync("read: length");
        await Assertions.Expect(line).ToContainTextAsync("20 15/16");
        await Assertions.Expect(sheet.Page.Locator("[data-part='K.rail'] .sizes")).Not.ToContainTextAsync("to cut");
        ILocator outline = sheet.Page.Locator("#outline");
        await Assertions.Expect(outline).ToContainTextAsync("bay L, rail length, as cut, 20 15/16 in, read");
        await Assertions.Expect(outline).ToContainTextAsync("; to cut; read: length 20 15/16 in");
        await Assertions.Expect(outline).ToContainTextAsync("bay R, rail length, as cut, 21 in");
        // Terms of workings say the time as a person does.
        await sheet.Page.GotoAsync($"{Piece}?size=L.face-width");
        Assert.DoesNotMatch("[0-9]T[0-9]{2}:[0-9]{2}", await sheet.Page.Locator(".margin").InnerTextAsync());
        Assert.Empty(sheet.Complaints);
    }

    [Fact]
    public async Task Material_MarkedBought_OfWhichMoreIsAskedFor_IsDueAgain()
    {
        await using KeptShop shop = await KeptShop.OpenAsync(hasSamples: false);
        shop.Keep("tray", Tray);
        shop.Keep("shop", "setout-shop: 1\nunit: mm\nstock:\n  - {panel: birch plywood, label: 18 mm, size: 700 x 450, price: 5}\n  - {panel: birch plywood, label: 18 mm, size: 700 x 450, have: 1}\n");
        shop.Log("tray", new MarkEntry("b1", "2026-05-02T09:00:00Z", Progress.Bought, ["ply"], System.Collections.Immutable.ImmutableDictionary<Setout.Core.Workings.QuantityKey, Setout.Core.Measures.ExactLength>.Empty));
        Assert.DoesNotContain("marked bought", await shop.Client.GetStringAsync("/piece/tray/buy"), StringComparison.Ordinal);
        shop.Change("tray", t => t.Replace("width: 400}", "width: 400, count: 3}", StringComparison.Ordinal));
        string page = WebUtility.HtmlDecode(await shop.Client.GetStringAsync("/piece/tray/buy"));
        Assert.Contains("2 sheets more: ply is marked bought, and the rack does not hold enough of it", page, StringComparison.Ordinal);
        Assert.Contains("0 of 1 bought, 1 due", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task CardOfAStep_ItsLinks_LeadWhereTheySay()
    {
        // A shop that does not tell the shoe of its saw: the step asks for it, where it is said.
        await using KeptShop shop = await KeptShop.OpenAsync(hasSamples: false);
        shop.Keep("tray", Tray);
        shop.Keep("shop", "setout-shop: 1\nunit: mm\nstock:\n  - {panel: birch plywood, label: 18 mm, size: 1500 x 1250, have: 2, price: 98.00}\n");
        await using Sheet sheet = await At(shop, "/piece/tray/break-down?run=1");
        IPage page = sheet.Page;
        ILocator card = page.Locator("#saw");
        await Assertions.Expect(card).ToContainTextAsync("step 1 of", new() { Timeout = 60_000 });
        // What it stands on leads there, and back leads to the same step.
        await card.GetByRole(AriaRole.Link, new() { Name = "the hand-held saw" }).First.ClickAsync();
        await Assertions.Expect(page).ToHaveURLAsync(new System.Text.RegularExpressions.Regex("/shop\\?item=saws\\.guided"));
        await Assertions.Expect(page.Locator("#chosen")).ToBeInViewportAsync();
        await page.GoBackAsync();
        await Assertions.Expect(card).ToContainTextAsync("step 1 of", new() { Timeout = 60_000 });
        await card.GetByRole(AriaRole.Link, new() { Name = "On", Exact = true }).ClickAsync();
        await Assertions.Expect(card).ToContainTextAsync("step 2 of");
        await Assertions.Expect(page).ToHaveURLAsync(new System.Text.RegularExpressions.Regex("run=1&cut=1"));
        await card.GetByRole(AriaRole.Link, new() { Name = "Back", Exact = true }).ClickAsync();
        await Assertions.Expect(card).ToContainTextAsync("step 1 of");
        await card.GetByRole(AriaRole.Link, new() { Name = "Run 1 whole, to mark it cut" }).ClickAsync();
        await Assertions.Expect(page.Locator("#run-1")).ToBeInViewportAsync();
        Assert.Empty(sheet.Complaints);
    }

    [Fact]
    public async Task Holes_HaveTheCautionOfDrillingBesideThem()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        string drill = Cautions.Of("drill").Words;
        foreach (string word in new[] { "Clamp the work", "hands", "eye protection", "backing board", "makers of drill" }) Assert.Contains(word, drill, StringComparison.Ordinal);
        string page = WebUtility.HtmlDecode(await shop.Client.GetStringAsync("/piece/sewing-corner/machine"));
        string[] cuts = [.. System.Text.RegularExpressions.Regex.Matches(page, "<li>.*?</li>", System.Text.RegularExpressions.RegexOptions.Singleline).Select(m => m.Value)];
        foreach (string cut in new[] { "Screw holes for the plates of door D1", "Bore cups" }) Assert.Contains(cuts, c => c.Contains(cut, StringComparison.Ordinal) && c.Contains(drill, StringComparison.Ordinal));
        Assert.All(cuts.Where(c => c.Contains("Dado", StringComparison.Ordinal)), c => Assert.DoesNotContain("Caution", c, StringComparison.Ordinal));
        // The faces with holes show those that no cut above tells of.
        Assert.Contains(drill, page[page.IndexOf("id=\"faces-title\"", StringComparison.Ordinal)..], StringComparison.Ordinal);
    }
}
