using System.Globalization;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using UglyToad.PdfPig;

namespace Setout.Tests.Browser;

/// <summary>
/// A fixed list of tasks, done by the words on the screen alone: a bench with two banks of drawers and a well is drawn, laid out and printed, a sheet and an opening are read, a drawer is marked
/// cut, an opening that was read anew upsets it, and what mends it is chosen.
/// </summary>
public sealed class WholeJobTests(Room room)
{
    [Theory]
    [InlineData(false, 1440)]
    [InlineData(true, 1440)]
    [InlineData(false, 1024)]
    [InlineData(true, 1024)]
    [InlineData(false, 390)]
    [InlineData(true, 390)]
    public async Task Bench_DrawnLaidOutPrintedReadCutAndMended_ByWhatIsWrittenOnTheScreen(bool isKeyboard, int width)
    {
        await using KeptShop shop = await KeptShop.OpenAsync(hasSamples: false);
        await using Sheet sheet = await room.OpenAsync(width, address: shop.Address, isWindowed: true);
        IPage page = sheet.Page;
        Hand hand = Hand.Of(isKeyboard, page);
        await page.GotoAsync("/");

        // Drawn.
        await hand.TypeAsync("Its name", "Drawer bench");
        await hand.ChooseAsync("a frame of posts and rails");
        await hand.TypeAsync("Width outside", "7'");
        await hand.TypeAsync("Height outside", "34");
        await hand.TypeAsync("Depth outside", "26");
        await hand.PressAsync(AriaRole.Button, "Begin");
        await hand.PickAsync("bay A, open");
        await DoAsync(hand, "Divide by posts", ("From its left to the posts", "21"));
        await SeenAsync(page, "posts M1");
        await hand.PickAsync("bay B, open");
        await DoAsync(hand, "Divide by posts", ("From its left to the posts", "28"));
        await SeenAsync(page, "posts M2");
        await hand.PickAsync("bay A, open");
        await DoAsync(hand, "Drawers", ("How many", "4"));
        await SeenAsync(page, "drawer A1");
        await hand.PickAsync("bay C, open");
        await DoAsync(hand, "Drawers", ("How many", "3"));
        await SeenAsync(page, "drawer C1");
        await hand.PickAsync("bay B, open");
        await DoAsync(hand, "A top on F, for a well here");
        await SeenAsync(page, "top, 86 x 27 in");
        await hand.PickAsync("bay B, open");
        await DoAsync(hand, "A well", ("Machine", "disc sander"), ("Its feet, left to right x front to back", "18 x 14"), ("From its feet to its table", "5 1/2"), ("From the front edge of the top", "4"));
        await SeenAsync(page, "well W");

        // Laid out and printed.
        await hand.PressAsync(AriaRole.Link, "Break down", isWhole: false);
        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Runs", Exact = true })).ToBeVisibleAsync(new() { Timeout = 60_000 });
        Task<IDownload> waited = page.WaitForDownloadAsync();
        await hand.PressAsync(page.GetByRole(AriaRole.Link, new() { Name = "Bench sheets (PDF)", Exact = true }), waited);
        string printed = Printed(await File.ReadAllBytesAsync(await (await waited).PathAsync()));
        // The sheets that the page tells, material by material, are those of the cover.
        int sheets = (await page.Locator(".verdict").AllInnerTextsAsync()).Sum(v => Regex.Match(v, "^([0-9]+) sheets?\\b") is { Success: true } told ? int.Parse(told.Groups[1].Value, CultureInfo.InvariantCulture) : 0);
        Assert.StartsWith("Drawer bench Cover", printed, StringComparison.Ordinal);
        Assert.Contains($"parts from {sheets} sheets and", printed, StringComparison.Ordinal);

        // A sheet and an opening read.
        await hand.PressAsync(AriaRole.Link, "Set out", isWhole: false);
        await hand.PressAsync(AriaRole.Link, "The thickness of ply-3-4 is a default of 23/32 in.");
        await DoAsync(hand, "Read it", ("Ply-3-4, thickness measures", "45/64"));
        await MovedAsync(page, "Read ply-3-4, thickness: 45/64 in");
        await hand.PickAsync("bay A");
        await DoAsync(hand, "Read it", ("It measures", "19 9/16"));
        await MovedAsync(page, "Read bay A, clear width between slide panels: 19 9/16 in");

        // One drawer cut; the opening read anew upsets it; it is mended.
        await hand.PickAsync("drawer A1");
        await DoAsync(hand, "Mark them cut");
        await MovedAsync(page, "Cut: drawer A1");
        await hand.PickAsync("bay A");
        await DoAsync(hand, "Read it", ("It measures", "19 7/16"));
        ILocator upset = page.GetByRole(AriaRole.Heading, new() { Name = "Upset", Exact = true });
        await Assertions.Expect(upset).ToBeVisibleAsync(new() { Timeout = 30_000 });
        ILocator remedy = await hand.OpenAsync("Trim", isWhole: false);
        await hand.PressAsync(remedy.GetByRole(AriaRole.Button, new() { Name = "It is done so", Exact = true }));
        await Assertions.Expect(upset).ToHaveCountAsync(0, new() { Timeout = 30_000 });

        // Printed anew, the sheets say what was read, and what was marked.
        string again = Printed(await shop.Client.GetByteArrayAsync(await page.GetByRole(AriaRole.Link, new() { Name = "Bench sheets (PDF)", Exact = true }).GetAttributeAsync("href")));
        const string read = "read 19 7/16, rule, [^:,;]+, [0-9]+:[0-9]{2}: the reading counts clear width", marked = ", cut, [^:,;]+, [0-9]+:[0-9]{2}: marked cut; taken as planned";
        foreach (string said in new[] { read, marked })
        {
            Assert.DoesNotMatch(said, printed);
            Assert.Matches(said, again);
        }
        await hand.PressAsync(AriaRole.Link, "What was read and marked");
        await Assertions.Expect(page.GetByRole(AriaRole.Button, new() { Name = "Void it", Exact = false })).ToHaveCountAsync(6, new() { Timeout = 30_000 });
        string[] unkind = [.. sheet.Complaints.Where(c => !c.Contains("favicon", StringComparison.Ordinal))];
        Assert.True(unkind.Length == 0, string.Join("; ", unkind));
        Assert.Empty(sheet.Foreign);
        TestContext.Current.TestOutputHelper?.WriteLine($"{(isKeyboard ? "keyboard" : "pointer")}, {width} px: {hand.Acts} acts, {hand.Strokes} keys beside words, {hand.OnDrawing} chosen on the drawing, {hand.DeadEnds.Count} dead ends, help opened {hand.Helped} times");
        Assert.InRange(hand.Acts, 20, 70);
        Assert.True(hand.DeadEnds.Count == 0, string.Join("; ", hand.DeadEnds));
        Assert.Equal(0, hand.Helped);
        // By mouse things are chosen where they are drawn; three of the nine are covered by what stands in them.
        Assert.Equal(isKeyboard ? 0 : 6, hand.OnDrawing);
    }

    // Opens what is folded, fills it in and sends it.
    private static async Task DoAsync(Hand hand, string words, params (string Label, string Text)[] typed)
    {
        ILocator fold = await hand.OpenAsync(words);
        foreach ((string label, string text) in typed) await hand.TypeAsync(label, text);
        await hand.PressAsync(fold.Locator("button[type='submit']:visible").First);
    }

    // All that is written in a PDF, in one line; the pages are as many as they say.
    private static string Printed(byte[] pdf)
    {
        using var read = PdfDocument.Open(pdf);
        Assert.All(read.GetPages(), p => Assert.Contains($"page {p.Number} of {read.NumberOfPages}", string.Join(' ', p.GetWords().Select(w => w.Text)), StringComparison.Ordinal));
        return string.Join(' ', read.GetPages().SelectMany(p => p.GetWords()).Select(w => w.Text));
    }

    private static Task SeenAsync(IPage page, string words) =>
        Assertions.Expect(page.GetByRole(AriaRole.Treeitem, new() { Name = words, Exact = true })).ToBeVisibleAsync(new() { Timeout = 30_000 });

    private static Task MovedAsync(IPage page, string words) =>
        Assertions.Expect(page.GetByRole(AriaRole.Region, new() { Name = "What moved" })).ToContainTextAsync(new Regex(Regex.Escape(words).Replace("/", "[/⁄]", StringComparison.Ordinal)), new() { Timeout = 30_000 });
}
