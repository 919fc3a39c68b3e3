// Over 200 lines: one story from an empty shop to a rack that runs took from, told in steps that share a piece and a yard.
using System.Net;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using Setout.Shop.Texts;

namespace Setout.Tests.Browser;

/// <summary>The shop on its page, and runs that are cut from its rack, in a real browser against the real program and store.</summary>
public sealed partial class ShopTests(Room room)
{
    private const string Tray = """
        setout: 1
        name: Tray
        unit: mm
        materials:
          ply: {panel: birch plywood, label: 18 mm}
        parts:
          - {part: A, name: base, of: ply, length: 600, width: 400}
          - {part: B, name: side, of: ply, length: 600, width: 90, count: 2}

        """;

    private const string Yard = """
        # What the yard has.
        setout-shop: 1
        name: yard
        currency: EUR
        unit: mm
        stock:
          - {panel: birch plywood, label: 18 mm, size: 1500 x 1250, have: 2, price: 98.00}   # from the last job

        """;

    private static async Task<Sheet> At(Room room, KeptShop shop, string path, bool hasScript = true, int width = 1440)
    {
        Sheet sheet = await room.OpenAsync(width, hasScript: hasScript, address: shop.Address);
        await sheet.Page.GotoAsync(path);
        return sheet;
    }

    private static async Task<KeptShop> WithTrayAsync()
    {
        KeptShop shop = await KeptShop.OpenAsync(hasSamples: false);
        shop.Keep("tray", Tray);
        shop.Keep("shop", Yard);
        return shop;
    }

    private static ILocator Field(IPage page, string choice, string field) => page.Locator($"[data-choice='{choice}'] [name='field-{field}']");

    [Fact]
    public async Task Shop_BegunFromNothingWithoutAScript_GetsSheetsInItsRack()
    {
        await using KeptShop shop = await KeptShop.OpenAsync(hasSamples: false);
        await using Sheet sheet = await At(room, shop, "/", hasScript: false, width: 390);
        IPage page = sheet.Page;
        await page.GetByRole(AriaRole.Link, new() { Name = "The shop" }).ClickAsync();
        await page.GetByLabel("Its name").FillAsync("back yard");
        await page.GetByLabel("millimetres").CheckAsync();
        await page.GetByLabel("Kerf of your saw").FillAsync("2.2");
        await page.GetByRole(AriaRole.Button, new() { Name = "Begin the shop" }).ClickAsync();
        await Assertions.Expect(page.Locator("h1")).ToContainTextAsync("back yard");
        Assert.EndsWith("/shop", page.Url, StringComparison.Ordinal);
        await page.GetByRole(AriaRole.Link, new() { Name = "Put wood into the rack" }).First.ClickAsync();
        await page.Locator("[data-choice='add-stock-panel'] > summary").ClickAsync();
        await Field(page, "add-stock-panel", "panel").FillAsync("birch plywood");
        await Field(page, "add-stock-panel", "label").FillAsync("18 mm");
        await Field(page, "add-stock-panel", "size").FillAsync("2500 x 1250");
        await Field(page, "add-stock-panel", "have").FillAsync("3");
        await page.Locator("[data-choice='add-stock-panel'] button").ClickAsync();
        await Assertions.Expect(page.Locator(".bay").First).ToContainTextAsync("3 of 2500 x 1250 mm");
        TextRead<Shop.Texts.Shop> read = ShopText.Read(shop.Text("shop"));
        Assert.True(read.IsSound);
        Assert.Equal(3, read.Value!.Stock[0].Size.InHand);
        Assert.Empty(sheet.Complaints);
    }

    /// <summary>The empty page gives way to the rack at once, and a second sheet is a second line: the form of the first does not stand where it was added.</summary>
    [Fact]
    public async Task Shop_BegunWithAScript_ShowsItsRack_AndTakesOneSheetAfterAnother()
    {
        await using KeptShop shop = await KeptShop.OpenAsync(hasSamples: false);
        await using Sheet sheet = await At(room, shop, "/shop");
        IPage page = sheet.Page;
        await page.GetByLabel("Its name").FillAsync("back yard");
        await page.GetByRole(AriaRole.Button, new() { Name = "Begin the shop" }).ClickAsync();
        await Assertions.Expect(page.Locator("h1")).ToContainTextAsync("back yard");
        await page.GetByRole(AriaRole.Link, new() { Name = "Put wood into the rack" }).First.ClickAsync();
        foreach ((string label, int lines) in new[] { ("3/4", 1), ("1/2", 2) })
        {
            if (!await page.Locator("[data-choice='add-stock-panel']").LookAsync<bool>("d => d.open")) await page.Locator("[data-choice='add-stock-panel'] > summary").ClickAsync();
            await Field(page, "add-stock-panel", "panel").FillAsync("hardwood plywood");
            await Field(page, "add-stock-panel", "label").FillAsync(label);
            await Field(page, "add-stock-panel", "size").FillAsync("96 x 48");
            await Field(page, "add-stock-panel", "have").FillAsync("1");
            await page.Locator("[data-choice='add-stock-panel'] button").ClickAsync();
            await Assertions.Expect(page.Locator(".bay")).ToHaveCountAsync(lines);
        }
        Assert.Equal(2, ShopText.Read(shop.Text("shop")).Value!.Stock.Length);
    }

    [Fact]
    public async Task Price_Changed_IsUndoneByKey_AndAnotherWindowFollows()
    {
        await using KeptShop shop = await WithTrayAsync();
        await using Sheet one = await At(room, shop, "/shop?item=stock.0");
        await using Sheet other = await At(room, shop, "/shop");
        await Assertions.Expect(other.Page.Locator("#rack-title")).ToBeVisibleAsync();
        await Field(one.Page, "set", "price").FillAsync("much");
        await Field(one.Page, "set", "price").PressAsync("Enter");
        await Assertions.Expect(one.Page.Locator("[data-choice='set'] .fault")).ToBeVisibleAsync();
        await Assertions.Expect(Field(one.Page, "set", "price")).ToHaveValueAsync("much");
        await Field(one.Page, "set", "price").FillAsync("104.50");
        await Field(one.Page, "set", "price").PressAsync("Enter");
        await Assertions.Expect(one.Page.Locator("#history")).ToContainTextAsync("revision 2");
        await Assertions.Expect(other.Page.Locator(".bay")).ToContainTextAsync("104.5");
        Assert.Contains("price: 104.50}   # from the last job", shop.Text("shop"), StringComparison.Ordinal);
        // In the field the key takes back what was typed there.
        await one.Page.Locator("h1").ClickAsync();
        await one.Page.Locator("body").PressAsync("Control+z");
        await Assertions.Expect(one.Page.Locator("#history")).ToContainTextAsync("revision 3");
        Assert.Equal(Yard, shop.Text("shop"));
        await Assertions.Expect(other.Page.Locator(".bay")).ToContainTextAsync("98");
    }

    [Fact]
    public async Task Item_ChosenByKeyboard_OpensItsFormWithoutLeavingThePage()
    {
        await using KeptShop shop = await WithTrayAsync();
        await using Sheet sheet = await At(room, shop, "/shop");
        IPage page = sheet.Page;
        await page.EvaluateAsync("() => { window.same = true; }");
        await page.Locator(".shop-lines a", new() { HasText = "Instruments" }).Or(page.Locator(".shop-lines a", new() { HasText = "Within" })).First.FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(Field(page, "set", "tape")).ToBeFocusedAsync();
        await Field(page, "set", "tape").FillAsync("0.8");
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page.Locator(".shop-lines [aria-current]")).ToContainTextAsync("tape 0.8 mm");
        Assert.True(await page.EvaluateAsync<bool>("() => window.same === true"));
        Assert.Empty(sheet.Complaints);
    }

    [Fact]
    public async Task Runs_MarkedOneByOne_MoveWoodInTheRack_AndVoidingGivesItBack()
    {
        await using KeptShop shop = await WithTrayAsync();
        await using Sheet sheet = await At(room, shop, "/piece/tray/break-down");
        IPage page = sheet.Page;
        await Assertions.Expect(page.Locator("#run-1.is-next")).ToBeVisibleAsync();
        int runs = await page.Locator("[data-run]").CountAsync();
        await page.Locator("#run-1").GetByRole(AriaRole.Button).ClickAsync();
        await Assertions.Expect(page.Locator("#run-1.is-cut")).ToBeVisibleAsync();
        await Assertions.Expect(page.Locator("#run-2.is-next")).ToBeVisibleAsync();
        // The plan that was begun goes on: as many runs, under the same numbers; so it does after a restart.
        await Assertions.Expect(page.Locator("[data-run]")).ToHaveCountAsync(runs);
        await shop.RestartAsync();
        await page.ReloadAsync();
        await Assertions.Expect(page.Locator("#run-2.is-next")).ToBeVisibleAsync();
        await Assertions.Expect(page.Locator("[data-run]")).ToHaveCountAsync(runs);
        MarkEntry entry = Assert.IsType<MarkEntry>(Assert.Single(Log(shop).Entries));
        Assert.Equal(WoodSource.Rack, Assert.Single(entry.Took).Source);
        await page.GotoAsync("/shop");
        await Assertions.Expect(page.Locator(".bay").First).ToContainTextAsync("left by Tray");
        await Assertions.Expect(page.Locator(".bay").First).Not.ToContainTextAsync("2 of 1500");
        shop.Log("tray", new VoidEntry("v1", "2026-11-28T10:00:00Z", entry.Id));
        await page.ReloadAsync();
        await Assertions.Expect(page.Locator(".bay").First).ToContainTextAsync("2 of 1500 x 1250 mm");
        await Assertions.Expect(page.Locator(".bay").First).Not.ToContainTextAsync("left by Tray");
    }

    [Fact]
    public async Task AllRuns_Marked_CutAllParts_AndABlankThatIsGoneLeavesTheRack()
    {
        await using KeptShop shop = await WithTrayAsync();
        for (int i = 0; i < 40 && Cut(shop) < 3; i++) await MarkNextAsync(shop, "n" + i);
        Assert.Equal(3, Cut(shop));
        await using Sheet sheet = await At(room, shop, "/shop");
        ILocator blank = sheet.Page.Locator(".bay a", new() { HasText = "left by Tray" }).First;
        string before = shop.Text("tray");
        int blanks = await sheet.Page.Locator(".bay a", new() { HasText = "left by Tray" }).CountAsync();
        Assert.True(blanks > 0);
        await blank.ClickAsync();
        await sheet.Page.GetByRole(AriaRole.Button, new() { Name = "It is gone" }).ClickAsync();
        await Assertions.Expect(sheet.Page.Locator(".bay a", new() { HasText = "left by Tray" })).ToHaveCountAsync(blanks - 1);
        Assert.Equal(before, shop.Text("tray"));
        Assert.Empty(sheet.Complaints);
    }

    [Fact]
    public async Task Run_OfAPlanThatHasChangedSince_IsRefusedAndNothingIsMarked_SentTwiceCountsOnce()
    {
        await using KeptShop shop = await WithTrayAsync();
        string page = await shop.Client.GetStringAsync("/piece/tray/break-down");
        Dictionary<string, string> form = Form(page, "r1");
        shop.Change("tray", t => t.Replace("width: 400", "width: 410", StringComparison.Ordinal));
        using (HttpResponseMessage answer = await PostAsync(shop, form))
        {
            Assert.Equal(HttpStatusCode.Conflict, answer.StatusCode);
            Assert.Contains("The plan has changed since this page was shown", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        }
        Assert.Empty(Log(shop).Entries);
        Dictionary<string, string> now = Form(await shop.Client.GetStringAsync("/piece/tray/break-down"), "r2");
        foreach (int _ in new[] { 1, 2 })
        {
            using HttpResponseMessage answer = await PostAsync(shop, now);
            Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        }
        Assert.Single(Log(shop).Entries);
    }

    [Fact]
    public async Task PlanThatWasBegun_WhenThePieceIsChanged_IsGivenUpAndSaysSo()
    {
        await using KeptShop shop = await WithTrayAsync();
        await MarkNextAsync(shop, "g1");
        shop.Change("tray", t => t.Replace("length: 600, width: 90", "length: 620, width: 90", StringComparison.Ordinal));
        string page = await shop.Client.GetStringAsync("/piece/tray/break-down");
        Assert.Contains("run.plan-given-up", page, StringComparison.Ordinal);
        Assert.Contains("id=\"run-1\"", page, StringComparison.Ordinal);
        await MarkNextAsync(shop, "g2");
        Assert.Equal(2, Log(shop).Entries.Length);
    }

    [Fact]
    public async Task RunOfSeveralPieces_Marked_StandsInTheLogsOfAllUnderOneId_AndTheirPlanGoesOn()
    {
        await using KeptShop shop = await WithTrayAsync();
        shop.Keep("box", Tray.Replace("name: Tray", "name: Box", StringComparison.Ordinal).Replace("length: 600", "length: 500", StringComparison.Ordinal));
        const string address = "/together?piece=tray&piece=box";
        string page = await shop.Client.GetStringAsync(address);
        int runs = page.Split("data-run=").Length;
        HashSet<string> marked = [];
        for (int i = 0; i < 40 && page.Contains("action=\"/together/cut\"", StringComparison.Ordinal); i++)
        {
            Dictionary<string, string> form = Form(page, "t" + i, "/together/cut");
            using var content = new FormUrlEncodedContent([.. form, new("piece", "tray"), new("piece", "box")]);
            using HttpResponseMessage answer = await shop.Client.PostAsync("/together/cut", content);
            Assert.True(answer.StatusCode == HttpStatusCode.Redirect, await answer.Content.ReadAsStringAsync());
            page = await shop.Client.GetStringAsync(address);
            if (Log(shop, "box").Standing.OfType<MarkEntry>().Sum(e => e.Keys.Length) + Cut(shop) == 6) break;
            Assert.Equal(runs, page.Split("data-run=").Length);
        }
        Assert.Equal((3, 3), (Cut(shop), Log(shop, "box").Standing.OfType<MarkEntry>().Sum(e => e.Keys.Length)));
        Assert.Contains(Log(shop).Entries.Select(e => e.Id), id => Log(shop, "box").Entries.Any(e => e.Id == id));
        Assert.All(Log(shop).Entries.OfType<MarkEntry>(), e => Assert.Equal(["box.yaml"], e.With));
    }

    [Fact]
    public async Task Steps_ForwardAndBack_ShowEachCutBesideItsWords()
    {
        await using KeptShop shop = await WithTrayAsync();
        await using Sheet sheet = await At(room, shop, "/piece/tray/break-down", width: 390);
        IPage page = sheet.Page;
        await Assertions.Expect(page.Locator("#saw")).ToContainTextAsync("step 1 of");
        await Assertions.Expect(page.Locator("[data-step='back']")).ToHaveCountAsync(0);
        await page.Locator("[data-step='on']").ClickAsync();
        await Assertions.Expect(page.Locator("#saw")).ToContainTextAsync("step 2 of");
        await Assertions.Expect(page.Locator("#saw .for-phone svg")).ToBeVisibleAsync();
        await page.Locator("[data-step='back']").ClickAsync();
        await Assertions.Expect(page.Locator("#saw")).ToContainTextAsync("step 1 of");
        Assert.Empty(sheet.Complaints);
    }

    [Fact]
    public async Task SheetsBought_GoIntoTheRackWithWhatWasPaid()
    {
        await using KeptShop shop = await KeptShop.OpenAsync(hasSamples: false);
        shop.Keep("tray", Tray);
        shop.Keep("shop", Yard.Replace(", have: 2", "", StringComparison.Ordinal));
        await using Sheet sheet = await At(room, shop, "/piece/tray/buy");
        IPage page = sheet.Page;
        await page.Locator(".bought summary").First.ClickAsync();
        await page.Locator(".bought [name='field-count']").First.FillAsync("2");
        await page.Locator(".bought [name='field-price']").First.FillAsync("91");
        await page.Locator(".bought button").First.ClickAsync();
        await Assertions.Expect(page.Locator("#buying")).ToContainTextAsync("From the rack");
        ShopStock there = ShopText.Read(shop.Text("shop")).Value!.Stock.Single(s => s.Size.InHand is not null);
        Assert.Equal((2, "91"), (there.Size.InHand, there.Size.Price!.Value.ToString().Split('.')[0]));
        Assert.Contains("# What the yard has.", shop.Text("shop"), StringComparison.Ordinal);
        // All of it is there, so the wood is bought.
        await Assertions.Expect(page.Locator(".stand")).ToContainTextAsync("1 of 1 bought");
    }

    /// <summary>The stage is done when each line of the list is: glue is a thing like others, and what comes in packs is marked by its own name.</summary>
    [Fact]
    public async Task ThingsOfTheList_BoughtOneByOne_LeaveNothingDue()
    {
        await using KeptShop shop = await KeptShop.OpenAsync(hasSamples: false);
        shop.Keep("bench", await File.ReadAllTextAsync(Path.Combine(Samples.Folder, "luthiers-bench.yaml")));
        shop.Keep("shop", Yard.Replace("    stock:", "    prices: [{name: \"Pocket screw, coarse, 1 in\", price: 4, pack: 100}]\n    stock:", StringComparison.Ordinal));
        await using Sheet sheet = await At(room, shop, "/piece/bench/buy", hasScript: false);
        IPage page = sheet.Page;
        ILocator again = page.GetByRole(AriaRole.Link, new() { Name = "look again" });
        while (await again.CountAsync() > 0) await again.ClickAsync();
        ILocator bought = page.Locator(".buying > li:not(:has([name='field-count'])) form button");
        int lines = await page.Locator(".buying > li").CountAsync(), woods = await page.Locator(".buying > li:has([name='field-count'])").CountAsync();
        await Assertions.Expect(bought).ToHaveCountAsync(lines - woods);
        for (int left = lines - woods; left > 0; left--)
        {
            await Assertions.Expect(bought).ToHaveCountAsync(left);
            await bought.First.ClickAsync();
        }
        await Assertions.Expect(page.Locator(".stand")).ToContainTextAsync($"{lines - woods} of {lines} bought");
    }

    /// <summary>A mark that leaves the rack wrong says so beside the press, with where it is set right.</summary>
    [Theory]
    [InlineData(", have: 2", true)]
    [InlineData("", false)]
    public async Task Mark_OfWoodThatTheRackDoesNotKnow_SaysSoBesideTheButton(string have, bool isKnown)
    {
        await using KeptShop shop = await KeptShop.OpenAsync(hasSamples: false);
        shop.Keep("tray", Tray);
        shop.Keep("shop", Yard.Replace(", have: 2", have, StringComparison.Ordinal));
        await using Sheet sheet = await At(room, shop, "/piece/tray/break-down");
        ILocator said = sheet.Page.Locator("#run-1 [data-not-in-rack]");
        await Assertions.Expect(sheet.Page.Locator("#run-1").GetByRole(AriaRole.Button, new() { Name = "This run is cut" })).ToBeVisibleAsync();
        await Assertions.Expect(said).ToHaveCountAsync(isKnown ? 0 : 1);
        if (!isKnown)
        {
            await Assertions.Expect(said).ToContainTextAsync("The rack does not know of A");
            await Assertions.Expect(said.GetByRole(AriaRole.Link, new() { Name = "count the rack" })).ToHaveAttributeAsync("href", "/shop");
            await said.GetByRole(AriaRole.Link, new() { Name = "Say that it is bought" }).ClickAsync();
            await Assertions.Expect(sheet.Page).ToHaveURLAsync(new Regex("/piece/tray/buy"));
        }
        await sheet.Page.GotoAsync("/piece/tray?size=A");
        ILocator mark = sheet.Page.Locator("[data-choice='mark-cut']");
        await mark.Locator("summary").ClickAsync();
        await Assertions.Expect(mark).ToContainTextAsync("takes no wood out of the rack");
        await mark.GetByRole(AriaRole.Link, new() { Name = "Mark its run" }).ClickAsync();
        await Assertions.Expect(sheet.Page).ToHaveURLAsync(new Regex("/piece/tray/break-down#runs"));
        Assert.Empty(sheet.Complaints);
    }

    private static Log Log(KeptShop shop, string piece = "tray") => shop.Database.FactsOf(shop.Database.Find(piece)!.Id).Read();

    private static int Cut(KeptShop shop) => Log(shop).Standing.OfType<MarkEntry>().Sum(e => e.Keys.Length);

    private static async Task MarkNextAsync(KeptShop shop, string id)
    {
        using HttpResponseMessage answer = await PostAsync(shop, Form(await shop.Client.GetStringAsync("/piece/tray/break-down"), id));
        Assert.True(answer.StatusCode == HttpStatusCode.Redirect, await answer.Content.ReadAsStringAsync());
    }

    private static async Task<HttpResponseMessage> PostAsync(KeptShop shop, Dictionary<string, string> form)
    {
        using var content = new FormUrlEncodedContent(form);
        return await shop.Client.PostAsync("/piece/tray/cut", content);
    }

    // The form of the first run that can be marked, with an id of its own.
    private static Dictionary<string, string> Form(string page, string id, string to = "/piece/tray/cut")
    {
        int at = page.IndexOf($"action=\"{to}\"", StringComparison.Ordinal);
        Assert.True(at > 0, "No run can be marked.");
        Dictionary<string, string> form = HiddenPattern().Matches(page[at..page.IndexOf("</form>", at, StringComparison.Ordinal)]).Where(m => m.Groups[1].Value != "piece").ToDictionary(m => m.Groups[1].Value, m => WebUtility.HtmlDecode(m.Groups[2].Value));
        form["change"] = id;
        return form;
    }

    [GeneratedRegex("""type="hidden" name="(\w+)" value="([^"]*)" """)]
    private static partial Regex HiddenPattern();
}
