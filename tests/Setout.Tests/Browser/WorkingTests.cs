using System.Text.RegularExpressions;
using Microsoft.Playwright;
using Setout.Core.Measures.Text;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Files;
using Setout.Shop.Plans;

namespace Setout.Tests.Browser;

public sealed class WorkingTests(Room room)
{
    private const string Bench = "/piece/luthiers-bench";

    [Fact]
    public async Task Dimension_WhenClicked_ShowsItsWorkingAsInThePlan()
    {
        await using Sheet sheet = await room.OpenAsync();
        await sheet.Page.GotoAsync(Bench);
        await Settled(sheet);
        await sheet.Page.Locator("#drawing .for-desk [data-key='R.rail.length.as-cut'] text").ClickAsync();
        // The page is not loaded anew, so there is no navigation to wait for: what comes in is the working.
        await sheet.Page.Locator("[data-working='R.rail.length.as-cut']").WaitForAsync();
        Assert.Matches(new Regex("size=R\\.rail\\.length"), sheet.Page.Url);
        await AssertWritten(sheet, "luthiers-bench", "R.rail.length.as-cut");
    }

    /// <summary>The script answers and the typeface is there: a figure that still changes its shape is no target for a pointer.</summary>
    private static async Task Settled(Sheet sheet)
    {
        await sheet.Page.Locator("html.has-script").WaitForAsync(new() { State = WaitForSelectorState.Attached });
        await sheet.Page.EvaluateAsync<bool>("() => document.fonts.ready.then(() => true)");
    }

    [Theory]
    [InlineData("luthiers-bench", "L3.box.width")]
    [InlineData("luthiers-bench", "L3.side.width.to-cut")]
    [InlineData("jar-cabinet", "G1.end.length")]
    [InlineData("plan-chest", "D3.bottom.width")]
    public async Task Size_InTheAddress_ShowsTermsAndSumOfThePlan(string piece, string key)
    {
        await using Sheet sheet = await room.OpenAsync(hasScript: false);
        await sheet.Page.GotoAsync($"/piece/{piece}?size={key}");
        await AssertWritten(sheet, piece, key);
    }

    [Fact]
    public async Task EveryDimensionAndPart_OfEverySample_HasAWorkingBehindItsLink()
    {
        using var client = new HttpClient { BaseAddress = new(room.Address) };
        foreach (string piece in Samples.Names)
        {
            string page = await client.GetStringAsync($"/piece/{piece}");
            var links = Regex.Matches(page, @"href=""(?<path>/piece/[^""?]+\?size=[^""#]+)#working""").Select(m => m.Groups["path"].Value).Distinct().ToList();
            Assert.True(links.Count > 40, $"{piece} has {links.Count} links to workings");
            foreach (string link in links)
                Assert.True((await client.GetStringAsync(link)).Contains("<table class=\"sum\"", StringComparison.Ordinal), $"{link} shows no working");
        }
    }

    [Fact]
    public async Task Outline_OfEverySample_IsEqualToTheDrawing()
    {
        await using Sheet sheet = await room.OpenAsync();
        foreach ((string piece, string view) in Samples.Names.SelectMany(n => new[] { (n, ""), (n, "?view=plan"), (n, "?view=side"), (n, "?view=section") }))
        {
            await sheet.Page.GotoAsync($"/piece/{piece}{view}");
            string[] drawn = await sheet.Page.EvaluateAsync<string[]>("() => [...new Set([...document.querySelectorAll('#drawing .for-desk [data-key]')].map(g => g.dataset.key.split('#')[0]))].sort()");
            string[] written = await sheet.Page.EvaluateAsync<string[]>("() => [...document.querySelectorAll('[data-outline]')].map(a => a.dataset.outline).sort()");
            Assert.NotEmpty(drawn);
            Assert.Equal(drawn, written);
        }
    }

    [Fact]
    public async Task Views_WhenChosen_ShowPlanAndSide_AndASizeChosenThereStaysBesideThem()
    {
        await using Sheet sheet = await room.OpenAsync();
        await sheet.Page.GotoAsync($"{Bench}?size=F.depth");
        await sheet.Page.Locator(".views a", new() { HasTextString = "side" }).ClickAsync();
        await sheet.Page.Locator("#drawing[aria-label='Side elevation']").WaitForAsync();
        Assert.Contains("size=F.depth", sheet.Page.Url, StringComparison.Ordinal);
        await Assertions.Expect(sheet.Page.Locator("#drawing .for-desk [data-key='F.depth'].is-chosen")).ToHaveCountAsync(1);
        await Settled(sheet);
        await sheet.Page.Locator("#drawing .for-desk [data-key='F.height']").ClickAsync();
        await sheet.Page.Locator("#working[data-size='F.height']").WaitForAsync();
        Assert.Contains("view=side", sheet.Page.Url, StringComparison.Ordinal);
        // The way to another size on this page keeps the view.
        await sheet.Page.Locator("[data-outline='F.depth']").ClickAsync();
        await sheet.Page.Locator("#working[data-size='F.depth']").WaitForAsync();
        await Assertions.Expect(sheet.Page.Locator("#drawing")).ToHaveAttributeAsync("aria-label", "Side elevation");
    }

    [Fact]
    public async Task Term_WhenFollowed_LeadsToTheWorkingItComesFromAndBack()
    {
        await using Sheet sheet = await room.OpenAsync();
        await sheet.Page.GotoAsync($"{Bench}?size=L3.box.width");
        await sheet.Page.Locator("[data-working='L3.box.width'] a.term").First.ClickAsync();
        await sheet.Page.Locator("[data-working='L3.opening']").WaitForAsync();
        await AssertWritten(sheet, "luthiers-bench", "L3.opening");
        await sheet.Page.GoBackAsync();
        await sheet.Page.Locator("[data-working='L3.box.width']").WaitForAsync();
        Assert.Contains("size=L3.box.width", sheet.Page.Url, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Part_WhenClickedOnTheDrawing_ShowsBothSizesAndIsMarked()
    {
        await using Sheet sheet = await room.OpenAsync();
        await sheet.Page.GotoAsync(Bench);
        await Settled(sheet);
        await sheet.Page.Locator("#drawing .for-desk [data-key='R3.front']").ClickAsync();
        await sheet.Page.Locator("#working[data-size='R3.front']").WaitForAsync();
        await Assertions.Expect(sheet.Page.Locator("#working .working-title")).ToHaveCountAsync(2);
        await Assertions.Expect(sheet.Page.Locator("#drawing .for-desk .is-chosen")).ToHaveCountAsync(1);
    }

    [Fact]
    public async Task Keyboard_TabToASizeAndEnter_ShowsItsWorkingAndKeepsThePlace()
    {
        await using Sheet sheet = await room.OpenAsync();
        await sheet.Page.GotoAsync(Bench);
        // The outline is one stop; the arrows go on in it.
        for (int i = 0; i < 80; i++)
        {
            await sheet.Page.Keyboard.PressAsync(await sheet.Page.EvaluateAsync<bool>("() => document.activeElement.getAttribute('role') === 'treeitem'") ? "ArrowDown" : "Tab");
            if (await sheet.Page.EvaluateAsync<bool>("() => document.activeElement.dataset.outline === 'K.rail.length.as-cut'")) break;
        }
        await sheet.Page.Keyboard.PressAsync("Enter");
        await sheet.Page.Locator("[data-working='K.rail.length.to-cut']").Or(sheet.Page.Locator("[data-working='K.rail.length.as-cut']")).First.WaitForAsync();
        await Assertions.Expect(sheet.Page.Locator("[data-outline='K.rail.length.as-cut']")).ToBeFocusedAsync();
    }

    [Theory]
    [InlineData("#working .large", "18 17/32")]
    [InlineData("[data-part='L1.end'] .sizes", "17 19/32")]
    public async Task Fraction_WhenCopied_ReadsWithASpaceAndASlash(string selector, string expected)
    {
        await using Sheet sheet = await room.OpenAsync();
        await sheet.Page.GotoAsync($"{Bench}?size=L3.box.width");
        string copied = await sheet.Page.Locator(selector).First.LookAsync<string>("node => { const s = getSelection(); s.selectAllChildren(node); return s.toString(); }");
        Assert.Contains(expected, copied, StringComparison.Ordinal);
        string shown = await sheet.Page.Locator(selector).First.InnerTextAsync();
        Assert.Contains(expected, shown, StringComparison.Ordinal);
        string feature = await sheet.Page.Locator($"{selector} .fraction").First.LookAsync<string>("node => getComputedStyle(node).fontVariantNumeric");
        Assert.Equal("diagonal-fractions", feature);
    }

    [Theory]
    [InlineData("K.rail.length.as-cut", "K.rail.length.as-cut")]
    [InlineData("L3.box.width", "L3.front")]
    [InlineData("F.post.length", "F.post")]
    public async Task Size_WhenChosen_IsMarkedOnTheDrawingWithoutScript(string size, string marked)
    {
        await using Sheet sheet = await room.OpenAsync(hasScript: false);
        await sheet.Page.GotoAsync($"{Bench}?size={size}");
        string[] chosen = await sheet.Page.Locator("#drawing .for-desk .is-chosen").LookAtAllAsync<string[]>("groups => [...new Set(groups.map(g => g.getAttribute('data-key').split('#')[0]))]");
        Assert.Contains(marked, chosen);
        Assert.Contains("rgb(168, 52, 29)", await sheet.Page.Locator($"#drawing .for-desk .is-chosen :is(rect, text)").LookAtAllAsync<string[]>("all => all.flatMap(n => [getComputedStyle(n).stroke, getComputedStyle(n).fill])"));
    }

    [Fact]
    public async Task Size_ThatIsNotThere_NamesTheNearest()
    {
        await using Sheet sheet = await room.OpenAsync(hasScript: false);
        await sheet.Page.GotoAsync($"{Bench}?size=L3.box.widht");
        Assert.Contains("L3.box.width", await sheet.Page.Locator("#working").InnerTextAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Phone_WhenASizeIsChosenInTheParts_ShowsTheWorkingInTheWindow()
    {
        await using Sheet sheet = await room.OpenAsync(390);
        await sheet.Page.GotoAsync(Bench);
        await sheet.Page.Locator("[data-part='R3.side'] .sizes a").First.ClickAsync();
        await sheet.Page.Locator("[data-working='R3.side.length']").WaitForAsync();
        await Assertions.Expect(sheet.Page.Locator("#working .working-title").First).ToBeInViewportAsync();
    }

    /// <summary>The terms and sum on the page against the plan, worked out afresh from the file.</summary>
    private static async Task AssertWritten(Sheet sheet, string piece, string key)
    {
        SetPiece set = PieceFiles.Of(Samples.File(piece), null).Read().Source!.SetOut();
        WrittenWorking working = WrittenWorking.Of(set.Worked, new QuantityKey(key))!;
        ILocator sum = sheet.Page.Locator($"[data-working='{key}']");
        await sum.WaitForAsync();
        Assert.Equal(working.Result(set.Piece.Unit).ToString(), (await sum.Locator(".total td").InnerTextAsync()).Trim());
        Assert.Equal(working.Terms.Length, await sum.Locator("tbody tr").CountAsync() - (working.Share == Core.Measures.Rational.One ? 0 : 1));
        for (int i = 0; i < working.Terms.Length; i++)
        {
            ILocator row = sum.Locator("tbody tr").Nth(i);
            Assert.Contains(working.Terms[i].Words, await row.InnerTextAsync(), StringComparison.Ordinal);
            Assert.EndsWith(working.Figure(working.Terms[i], set.Piece.Unit).ToString(), (await row.Locator("td").InnerTextAsync()).Trim(), StringComparison.Ordinal);
        }
    }
}
