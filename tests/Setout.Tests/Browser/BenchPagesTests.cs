using System.Globalization;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using Setout.Shop.Texts;

namespace Setout.Tests.Browser;

/// <summary>What stands on the pages of the stages while the work goes on: readings to be read again, what is chosen next, times, one piece alone.</summary>
public sealed class BenchPagesTests(Room room)
{
    private const string Piece = "/piece/luthiers-bench";

    private static async Task PostAsync(KeptShop shop, string what, string change, params (string Name, string Value)[] fields)
    {
        using var form = new FormUrlEncodedContent([.. new[] { ("change", change), ("revision", "1"), ("back", Piece) }.Concat(fields).Select(f => KeyValuePair.Create(f.Item1, f.Item2))]);
        using HttpResponseMessage answer = await shop.Client.PostAsync($"{Piece}/{what}", form);
        Assert.Equal(System.Net.HttpStatusCode.Redirect, answer.StatusCode);
    }

    private async Task<Sheet> At(KeptShop shop, string path, bool hasScript = true, int width = 1440)
    {
        Sheet sheet = await room.OpenAsync(width, hasScript: hasScript, address: shop.Address);
        await sheet.Page.GotoAsync(path);
        return sheet;
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Bay_ReadAtBreakDown_StandsThereWithItsFigure_AndIsReadAgain(bool hasScript)
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await PostAsync(shop, "read", "r1", ("key", "L.width"), ("value", "19 1/2"), ("with", "rule"));
        await using Sheet sheet = await At(shop, $"{Piece}/break-down", hasScript);
        ILocator bay = sheet.Page.Locator(".stand-rows > li", new() { HasText = "Bay L, clear width" });
        await Assertions.Expect(bay).ToContainTextAsync("Bay L, clear width between slide panels reads 19 1/2 in, rule, today");
        await bay.GetByText("Read it again").ClickAsync();
        await Assertions.Expect(bay.Locator("form", new() { HasText = "It stands at: 19 1/2 in" })).ToBeVisibleAsync();
        await bay.Locator("input[name='value']").FillAsync("19 9/16");
        await bay.Locator("input[name='value']").PressAsync("Enter");
        await Assertions.Expect(bay).ToContainTextAsync("reads 19 9/16 in", new() { Timeout = 20_000 });
        Assert.Equal(2, shop.Database.FactsOf(shop.Database.Find("luthiers-bench")!.Id).Read().Standing.OfType<ReadingEntry>().Count());
    }

    /// <summary>Rails that come out 1/8 in short are more than stop and tape explain: whoever types it at Break down, or looks at Fit for what to trim, is told to look again there.</summary>
    [Theory]
    [InlineData("/break-down")]
    [InlineData("/fit")]
    public async Task Reading_ThatNothingExplains_IsToldWhereItIsTyped(string path)
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await PostAsync(shop, "read", "r1", ("key", "L.rail.length"), ("value", "20 7/8"), ("with", "tape"));
        await using Sheet sheet = await At(shop, Piece + path);
        await Assertions.Expect(sheet.Page.Locator("#moved .note.is-red").First).ToContainTextAsync("could be explained", new() { Timeout = 60_000 });
        await Assertions.Expect(sheet.Page.Locator("#moved [data-say]")).ToContainTextAsync("look again");
        await Axe.FindsNothingAsync(sheet.Page, path, ColorScheme.Light);
        await sheet.Page.GotoAsync(Piece);
        await Assertions.Expect(sheet.Page.Locator("#moved .note")).ToHaveCountAsync(0);
        await Assertions.Expect(sheet.Page.Locator("#notes .note.is-red").First).ToContainTextAsync("could be explained");
    }

    [Fact]
    public async Task Drawer_MarkedCutOfABatch_TheNextDrawerIsChosen_AndAfterAPartTheNextPart()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await PostAsync(shop, "read", "r1", ("key", "L.width"), ("value", "19 9/16"));
        await using Sheet sheet = await At(shop, $"{Piece}/break-down");
        ILocator bay = sheet.Page.Locator(".stand-rows > li", new() { HasText = "Bay L, clear width" }), which = bay.GetByLabel("Which"), chosen = which.Locator("option:checked");
        await bay.GetByText("Mark cut").First.ClickAsync();
        await Assertions.Expect(chosen).ToContainTextAsync("all ");
        async Task MarkAsync(Regex name)
        {
            await which.SelectOptionAsync(new SelectOptionValue { Label = await which.Locator("option", new() { HasTextRegex = name }).First.InnerTextAsync() });
            await bay.GetByRole(AriaRole.Button, new() { Name = "Mark cut" }).ClickAsync();
        }
        await MarkAsync(new("^all of drawer L2"));
        await Assertions.Expect(chosen).ToContainTextAsync("all of drawer L3", new() { Timeout = 20_000 });
        await MarkAsync(new("^all of drawer L4"));
        // None comes after it: from the beginning.
        await Assertions.Expect(chosen).ToContainTextAsync("all of drawer L1", new() { Timeout = 20_000 });
        await MarkAsync(new("^L3s, "));
        await Assertions.Expect(chosen).ToContainTextAsync("drawer L3", new() { Timeout = 20_000 });
        await Assertions.Expect(chosen).Not.ToContainTextAsync("all ");
    }

    [Fact]
    public async Task Times_OnSheetsAndShelf_FollowWhicheverCameLast()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        // The texts were put there on 2026-11-27; what is read later and earlier than another piece's text.
        shop.Log("jar-cabinet", new ReadingEntry("late", "2031-03-02T10:00:00Z", new("birch.thickness"), [Setout.Core.Measures.ExactLength.FromInches(Setout.Core.Measures.Rational.Of(45, 64))], "calliper", ""));
        shop.Log("luthiers-bench", new ReadingEntry("early", "2020-01-01T10:00:00Z", new("K.width"), [Setout.Core.Measures.ExactLength.FromInches(Setout.Core.Measures.Rational.Of(22, 1))], "tape", ""));
        string shelf = await shop.Client.GetStringAsync("/");
        string Changed(string href) => Regex.Match(shelf[shelf.IndexOf($"<h2><a href=\"/piece/{href}\"", StringComparison.Ordinal)..], "changed ([^<]+?[0-9]:[0-9]{2})").Groups[1].Value;
        string late = DateTimeOffset.Parse("2031-03-02T10:00:00Z", CultureInfo.InvariantCulture).ToLocalTime().ToString("d MMMM yyyy, H:mm", CultureInfo.InvariantCulture);
        Assert.Equal(late, Changed("jar-cabinet"));
        Assert.DoesNotContain("2020", Changed("luthiers-bench"), StringComparison.Ordinal);
        Assert.Contains($"from revision 1, read and marked until {late}", await shop.Client.GetStringAsync("/piece/jar-cabinet"), StringComparison.Ordinal);
        Assert.Contains("from revision 1 of ", await shop.Client.GetStringAsync(Piece), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Cost_AfterAReading_IsToldAgainstBefore_AfterAMarkWhyNot_AfterAnEditOfThatEdit()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        async Task<string> CostAsync() => Regex.Match(await shop.Client.GetStringAsync($"{Piece}/cost"), "<p data-cost-line>([^<]+)</p>").Groups[1].Value;
        await PostAsync(shop, "read", "r1", ("key", "L.width"), ("value", "19 9/16"));
        // Four drawers of six parts each may be cut then.
        Assert.Matches("^Against before it was read: .*24 parts held no longer", await CostAsync());
        string entry = shop.Database.FactsOf(shop.Database.Find("luthiers-bench")!.Id).Read().Entries[0].Id;
        await PostAsync(shop, "void", "v1", ("entry", entry));
        Assert.Matches("^Against before that was taken back or put back: .*24 parts more held", await CostAsync());
        await PostAsync(shop, "mark", "m1", ("progress", "cut"), ("what", "F.post"));
        Assert.StartsWith("What was marked", await CostAsync(), StringComparison.Ordinal);
        shop.ChangeNow("luthiers-bench", t => t.Replace("left: 1, right: 1", "left: 2, right: 2", StringComparison.Ordinal));
        Assert.StartsWith("Against the step before: ", await CostAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Cost_AfterAStepThatWasTakenBack_OrAStateThatWasGoneTo_IsToldAgainstWhereOneCameFrom()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        async Task<string> CostAsync() => System.Net.WebUtility.HtmlDecode(Regex.Match(await shop.Client.GetStringAsync($"{Piece}/cost"), "<p data-cost-line>([^<]+)</p>").Groups[1].Value);
        void Widen(string from, string to) => shop.Change("luthiers-bench", t => t.Replace($"front: 1 1/2, back: 0, left: {from}", $"front: 1 1/2, back: 0, left: {to}", StringComparison.Ordinal));
        Setout.Shop.Documents.Document Now() => shop.Database.Find("luthiers-bench")!;
        void Go(string id, Setout.Shop.Documents.DocumentChange change) => Assert.IsType<Setout.Shop.Documents.ChangeTaken>(shop.Database.Make(Setout.Shop.Documents.Change.Of(id, "2026-11-27T12:00:00Z", change)));
        long first = Now().Line.Head.Number;
        Widen("1", "2");
        // A drawer of six parts out of the piece.
        shop.Change("luthiers-bench", t => t.Replace("            - {drawer: L2, front: 5}\n", "", StringComparison.Ordinal));
        string less = await CostAsync();
        Assert.StartsWith("Against the step before: −6 parts, ", less, StringComparison.Ordinal);
        Go("u1", new Setout.Shop.Documents.UndoStep(Now().Id, Now().Revision));
        Assert.StartsWith("Against before that was taken back: +6 parts, ", await CostAsync(), StringComparison.Ordinal);
        Go("r1", new Setout.Shop.Documents.RedoStep(Now().Id, Now().Revision));
        Assert.Equal(less, await CostAsync());
        Go("g1", new Setout.Shop.Documents.GoBack(Now().Id, Now().Revision, first));
        // Gone back to the very first: against where one came from, whatever that first state was made of.
        Assert.StartsWith("Against the step before: +6 parts, ", await CostAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Bay_ReadAtBreakDown_WithARuleAsTheSheetSays_AndTheNextReadingHasTheKeyboard()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await At(shop, $"{Piece}/break-down");
        ILocator Bay(string name) => sheet.Page.Locator(".stand-rows > li", new() { HasText = $"bay {name}, clear width" });
        ILocator value = Bay("L").Locator("input[name='value']"), next = Bay("R").Locator("> .note-form input[name='value']");
        await Assertions.Expect(Bay("L").Locator("select[name='with']")).ToHaveValueAsync("rule");
        await value.FillAsync("19 9/16");
        await value.PressAsync("Enter");
        await Assertions.Expect(Bay("L")).ToContainTextAsync("reads 19 9/16 in, rule", new() { Timeout = 20_000, IgnoreCase = true });
        await Assertions.Expect(next).ToBeFocusedAsync();
        // None is awaited after this one: the keyboard stays with the list.
        await next.FillAsync("19 9/16");
        await next.PressAsync("Enter");
        await Assertions.Expect(Bay("R")).ToContainTextAsync("reads 19 9/16 in, rule", new() { Timeout = 20_000, IgnoreCase = true });
        await Assertions.Expect(sheet.Page.Locator(".stand-batches > summary")).ToBeFocusedAsync();
    }

    [Theory]
    [InlineData("?piece=jar-cabinet", true)]
    [InlineData("", false)]
    public async Task Together_OfOnePiece_LeadsToItsOwnPage(string asked, bool isTold)
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await At(shop, "/together" + asked, width: 390);
        await Assertions.Expect(sheet.Page.Locator("#only a")).ToHaveCountAsync(isTold ? 1 : 0);
        if (!isTold) return;
        await sheet.Page.Locator("#only a").ClickAsync();
        await sheet.Page.WaitForURLAsync("**/piece/jar-cabinet/break-down");
    }

    [Fact]
    public async Task BreakDown_BeginsWithItsHeading_ThenHowItStands_ThenWhatIsOnThePage()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        string page = await shop.Client.GetStringAsync($"{Piece}/break-down");
        int heading = page.IndexOf("<h1>Break down</h1>", StringComparison.Ordinal), stand = page.IndexOf("id=\"stand\"", StringComparison.Ordinal), contents = page.IndexOf("aria-label=\"On this page\"", StringComparison.Ordinal);
        Assert.True(heading > 0 && heading < stand && stand < contents, $"{heading} {stand} {contents}");
        string[] led = [.. Regex.Matches(page[contents..page.IndexOf("</nav>", contents, StringComparison.Ordinal)], "href=\"#([^\"]+)\"").Select(m => m.Groups[1].Value)];
        Assert.Contains("runs", led);
        Assert.Contains("of-boxes", led);
        Assert.All(led, id => Assert.Single(Regex.Matches(page, $" id=\"{id}\"")));
        foreach (string stage in new[] { "buy", "assemble", "fit" })
        {
            string other = await shop.Client.GetStringAsync($"{Piece}/{stage}");
            Assert.True(other.IndexOf("</h1>", StringComparison.Ordinal) is > 0 and var at && at < other.IndexOf("id=\"stand\"", StringComparison.Ordinal), stage);
        }
    }
}
