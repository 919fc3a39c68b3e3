using System.Globalization;
using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace Setout.Tests.Browser;

/// <summary>What somebody stumbles over who meets the workbench for the first time, on a phone above all.</summary>
public sealed class NewcomerTests(Room room)
{
    private static async Task<Sheet> At(Room room, KeptShop shop, string path, int width = 390)
    {
        Sheet sheet = await room.OpenAsync(width, address: shop.Address);
        await sheet.Page.GotoAsync(path);
        return sheet;
    }

    /// <summary>The smallest letters of the drawing that is seen, in pixels on the screen, with what they say. A gap between number and fraction is no letter.</summary>
    private static Task<string> Smallest(IPage page) => page.EvaluateAsync<string>("""
        () => [...document.querySelectorAll('#drawing svg text, #drawing svg tspan')].filter(t => t.textContent.trim() && t.getBoundingClientRect().width > 0).map(t => {
          const svg = t.ownerSVGElement, one = svg.getBoundingClientRect().width / svg.viewBox.baseVal.width;
          return [parseFloat(getComputedStyle(t).fontSize) * one, t.textContent];
        }).sort((a, b) => a[0] - b[0]).map(([size, words]) => `${size.toFixed(2)} ${words}`)[0] ?? ''
        """);

    [Theory]
    [InlineData("luthiers-bench"), InlineData("jar-cabinet"), InlineData("sewing-corner"), InlineData("plan-chest")]
    public async Task Drawing_OnAPhone_HasNoLetterUnder11Pixels(string piece)
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        foreach (string view in new[] { "", "?view=plan", "?view=side" })
        {
            await using Sheet sheet = await At(room, shop, $"/piece/{piece}{view}");
            string smallest = await Smallest(sheet.Page);
            Assert.True(double.Parse(smallest.Split(' ')[0], CultureInfo.InvariantCulture) >= 10.9, $"{piece}{view}: {smallest}");
        }
    }

    [Fact]
    public async Task Thing_ChosenOnThePhonesDrawing_IsToldUnderItAndThePageStays()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await At(room, shop, "/piece/luthiers-bench");
        IPage page = sheet.Page;
        await page.Locator(".for-phone [data-key='L1.front']").First.ClickAsync();
        ILocator line = page.Locator("#chosen-line");
        await Assertions.Expect(line).ToContainTextAsync("drawer L1, front height");
        await Assertions.Expect(page.Locator(".for-phone [data-key^='L1.front.height'] text")).ToBeVisibleAsync();
        Assert.True(await page.EvaluateAsync<int>("() => scrollY") < 300, "the page went away from the drawing");
        await Assertions.Expect(line).ToBeInViewportAsync();
        await line.GetByRole(AriaRole.Link, new() { Name = "How it comes about" }).ClickAsync();
        await Assertions.Expect(page.Locator("#working .working-title").First).ToBeInViewportAsync();
    }

    [Theory, InlineData(1440), InlineData(390)]
    public async Task Drawers_PutIn_AreSaidUnderTheDrawingWhichIsInView(int width)
    {
        await using KeptShop shop = await KeptShop.OpenAsync(hasSamples: false);
        using HttpResponseMessage begun = await shop.Client.PostAsync("/new", new FormUrlEncodedContent(new Dictionary<string, string>
        {
            ["change"] = "begin-bench-1",
            ["name"] = "bench",
            ["kind"] = "frame",
            ["unit"] = "in",
            ["width"] = "84",
            ["height"] = "34",
            ["depth"] = "26",
        }));
        await using Sheet sheet = await At(room, shop, "/piece/bench?size=A", width);
        IPage page = sheet.Page;
        ILocator drawers = page.Locator("details[data-choice='drawers']");
        await drawers.Locator("summary").ClickAsync();
        await drawers.GetByLabel("How many").FillAsync("3");
        // No kind of drawer is told: there is nothing to choose among.
        await Assertions.Expect(drawers.Locator("select")).ToHaveCountAsync(0);
        await drawers.GetByRole(AriaRole.Button, new() { Name = "Do it" }).ClickAsync();
        await Assertions.Expect(page.Locator("#made")).ToContainTextAsync("3 drawers in A");
        await Assertions.Expect(page.Locator(width < 600 ? "#drawing .for-phone svg" : "#drawing .for-desk svg").First).ToBeInViewportAsync(new() { Ratio = 0.95f });
        await Assertions.Expect(page.Locator("#made")).ToBeInViewportAsync();
    }

    [Fact]
    public async Task Step_TakenBack_IsToldAsThat()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await At(room, shop, "/piece/jar-cabinet?size=C.width", 1440);
        IPage page = sheet.Page;
        foreach (string size in new[] { "44", "46" })
        {
            await page.GetByLabel("Outside width of C", new() { Exact = true }).FillAsync(size);
            await page.GetByLabel("Outside width of C", new() { Exact = true }).PressAsync("Enter");
            await Assertions.Expect(page.Locator("#moved")).ToContainTextAsync(size);
        }
        await page.Locator("[data-key-undo]").ClickAsync();
        await Assertions.Expect(page.Locator("#moved > p:not(.unseen)").First).ToContainTextAsync("Taken back: width of case C: 44 to 46");
        await page.Locator("[data-key-redo]").ClickAsync();
        await Assertions.Expect(page.Locator("#moved > p:not(.unseen)").First).ToContainTextAsync("Width of case C: 44 to 46");
    }

    [Fact]
    public async Task Post_ChosenByEnter_IsPaintedAsChosenItself()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await At(room, shop, "/piece/luthiers-bench", 1440);
        IPage page = sheet.Page;
        ILocator walked = page.Locator(".for-desk .is-walked");
        await page.Locator("#room").FocusAsync();
        for (int i = 0; i < 40 && (await walked.CountAsync() == 0 || await walked.GetAttributeAsync("data-key") != "F.post#1"); i++)
            await page.Keyboard.PressAsync(i % 2 == 0 ? "ArrowLeft" : "ArrowDown");
        await Assertions.Expect(walked).ToHaveAttributeAsync("data-key", "F.post#1");
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page.Locator(".for-desk [data-key='F.post#1']")).ToHaveClassAsync(new Regex("is-chosen"));
        string[] strokes = await page.EvaluateAsync<string[]>("() => ['F.post#1', 'F.post#7'].map(k => getComputedStyle(document.querySelector(`.for-desk [data-key=\"${k}\"] > path, .for-desk [data-key=\"${k}\"] > rect`)).stroke)");
        Assert.Equal(strokes[1], strokes[0]);
    }

    [Fact]
    public async Task Sheet_ForTheRack_AsksSixThingsAndFoldsTheRest()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await At(room, shop, "/shop?item=stock");
        IPage page = sheet.Page;
        ILocator add = page.Locator("details[data-choice='add-stock-panel']");
        await add.Locator("summary").First.ClickAsync();
        await Assertions.Expect(add.Locator("label:visible")).ToHaveTextAsync(["Kind of sheet", "Label, such as 3/4 or 18 mm", "Size, along the grain first", "Price of one", "How many in the rack", "Thickness read of it"], new() { UseInnerText = true });
        await add.GetByText("More about this sheet").ClickAsync();
        await Assertions.Expect(add.GetByLabel("Lot")).ToBeVisibleAsync();
    }

    [Fact]
    public async Task Runs_OfAHandHeldSawOfUnknownShoe_LeadToItsFieldInTheShop()
    {
        await using KeptShop shop = await KeptShop.OpenAsync(hasSamples: false);
        shop.Keep("luthiers-bench", File.ReadAllText(Path.Combine(Samples.Folder, "luthiers-bench.yaml")));
        string html = await shop.Client.GetStringAsync("/piece/luthiers-bench/break-down");
        Assert.Contains("id=\"runs\"", html, StringComparison.Ordinal);
        Assert.Contains("item=saws.guided", html, StringComparison.Ordinal);
        Assert.DoesNotContain("write it as saws", html, StringComparison.Ordinal);
        Assert.DoesNotContain("(saws:", html, StringComparison.Ordinal);
        Assert.DoesNotContain("shop file", html.Split("<main")[1].Split("</main")[0], StringComparison.Ordinal);
    }

    [Fact]
    public async Task Fit_SaysWhatWeighsMostInNamesAndFitsThePhone()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await At(room, shop, "/piece/luthiers-bench/fit");
        IPage page = sheet.Page;
        ILocator weights = page.Locator(".weights");
        await Assertions.Expect(weights.Locator("li")).ToHaveCountAsync(3);
        await Assertions.Expect(weights.Locator("li").First).ToContainTextAsync("not right the first time; moved most by:");
        await Assertions.Expect(weights.GetByRole(AriaRole.Link, new() { Name = "measuring first" })).ToHaveAttributeAsync("href", "#measure-title");
        Assert.DoesNotMatch(@"[A-Z]\d\.[a-z]+\.|as-cut", await page.Locator("main").InnerTextAsync());
        await page.EvaluateAsync("() => document.querySelectorAll('details').forEach(d => d.open = true)");
        Assert.True(await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth - document.documentElement.clientWidth") <= 0, "wider than the screen");
    }
}
