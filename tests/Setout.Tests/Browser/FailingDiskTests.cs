// Over 200 lines: one list of all kinds of changes, with how a form is taken out of a page and sent again, is worth reading in one place.
using System.IO.Compression;
using System.Net;
using System.Text;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using Setout.Shop.Documents;
using Setout.Soak;
using Setout.Store;

namespace Setout.Tests.Browser;

/// <summary>The real program with its real store on a disk that fills up, or turns read-only, while it is open: every kind of change, over HTTP.</summary>
public sealed partial class FailingDiskTests(Room room) : IDisposable
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
        setout-shop: 1
        name: yard
        currency: EUR
        unit: mm
        stock:
          - {panel: birch plywood, label: 18 mm, size: 1500 x 1250, have: 2, price: 98.00}

        """;

    private const string Bench = "/piece/luthiers-bench";

    private readonly TestFolder _folder = new();

    private string Data => _folder.Of("data");

    public void Dispose() => _folder.Dispose();

    private sealed record Act(string Name, string Path, (string Name, string Value)[] Fields, string Typed)
    {
        public HttpContent Content => new FormUrlEncodedContent(Fields.Select(f => KeyValuePair.Create(f.Name, f.Value)));
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task Changes_OfEveryKind_OnADiskThatTakesNothing_AreToldKeepWhatWasTypedAndGoThroughLater(bool isFull)
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "The disk is made to fail by Linux's own means.");
        FailingDisk disk = isFull ? FailingDisk.Full : FailingDisk.ReadOnly;
        Fill();
        using RealProgram program = await StartAsync(disk);
        HttpClient client = program.Client;
        foreach (Act act in await Acts(client))
        {
            string before = await TextsAsync(client);
            disk.Stop(program, Data);
            string page = await PageAsync(await client.PostAsync(act.Path, act.Content), HttpStatusCode.UnprocessableEntity, act.Name);
            Assert.Contains("data-fault", page, StringComparison.Ordinal);
            Assert.True(page.Contains(isFull ? "There is no room left" : "cannot be read and written here", StringComparison.Ordinal), $"{act.Name}: {page}");
            Assert.Contains("nothing was written", page, StringComparison.Ordinal);
            Assert.DoesNotContain("our fault", page, StringComparison.Ordinal);
            (string Path, (string Name, string Value)[] Fields) again = FormOf(page);
            Assert.Equal(act.Path, again.Path);
            Assert.Equal(act.Fields.Order(), again.Fields.Order());
            if (act.Typed.Length > 0) Assert.Matches($"(?s)<input (?![^>]*type=\"hidden\")[^>]*value=\"{Regex.Escape(act.Typed)}\"|<textarea[^>]*>[^<]*{Regex.Escape(act.Typed)}", page);
            // Pages are still shown, and they show what was there.
            Assert.Equal(before, await TextsAsync(client));
            Assert.Contains("Tray", await client.GetStringAsync("/"), StringComparison.Ordinal);
            disk.GoOn(program, Data);
            using var content = new FormUrlEncodedContent(again.Fields.Select(f => KeyValuePair.Create(f.Name, f.Value)));
            using HttpResponseMessage taken = await client.PostAsync(again.Path, content);
            Assert.True(taken.StatusCode is HttpStatusCode.Redirect or HttpStatusCode.OK, $"{act.Name}: {await taken.Content.ReadAsStringAsync()}");
            string after = await TextsAsync(client);
            Assert.NotEqual(before, after);
            // Made once: the same form again changes nothing more.
            using HttpResponseMessage twice = await client.PostAsync(act.Path, act.Content);
            Assert.Equal(after, await TextsAsync(client));
        }
        // What is there is whole: a backup is opened and counted before it is called one.
        string kept = await PageAsync(await client.PostAsync("/keeping/backup", new FormUrlEncodedContent([KeyValuePair.Create("a", "b")])), HttpStatusCode.OK, "backup");
        Assert.Contains("Backed up", kept, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/piece/jar-cabinet?size=C.width", "[data-choice='width']", "field-size", "40 1/16", "width: 40 1/16")]
    [InlineData("/piece/luthiers-bench?size=L.width", "[data-choice='note-read']", "value", "19 9/16", "L.width")]
    [InlineData("/shop?item=stock.0", "[data-choice='set']", "field-price", "91.50", "91.50")]
    public async Task Field_OnAPageWithAScript_KeepsWhatWasTypedBesideTheRefusalAndIsTakenLater(string address, string choice, string field, string typed, string text)
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "The disk is made to fail by Linux's own means.");
        FailingDisk disk = FailingDisk.Full;
        Fill();
        using RealProgram program = await StartAsync(disk);
        await using Sheet sheet = await room.OpenAsync(address: program.Address);
        IPage page = sheet.Page;
        await page.GotoAsync(address);
        ILocator form = page.Locator(choice), input = form.Locator($"[name='{field}']");
        if (!await input.IsVisibleAsync()) await form.Locator("summary").First.ClickAsync();
        await input.FillAsync(typed);
        disk.Stop(program, Data);
        await input.PressAsync("Enter");
        await Assertions.Expect(form.Locator(".fault")).ToContainTextAsync("There is no room left");
        await Assertions.Expect(form.Locator(".fault")).ToContainTextAsync("Make room on the disk, then try again");
        await Assertions.Expect(input).ToHaveValueAsync(typed);
        Assert.DoesNotContain(text, await TextsAsync(program.Client), StringComparison.Ordinal);
        disk.GoOn(program, Data);
        await input.PressAsync("Enter");
        await Assertions.Expect(page.Locator(".fault:visible")).ToHaveCountAsync(0);
        Assert.Contains(text, await TextsAsync(program.Client), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Backup_OnAFullDisk_IsToldAndLeavesNoHalfFile()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "The disk is made to fail by Linux's own means.");
        FailingDisk disk = FailingDisk.Full;
        Fill();
        using RealProgram program = await StartAsync(disk);
        disk.Stop(program, Data);
        string page = await PageAsync(await program.Client.PostAsync("/keeping/backup", new FormUrlEncodedContent([KeyValuePair.Create("a", "b")])), HttpStatusCode.UnprocessableEntity, "backup");
        Assert.Contains("data-fault", page, StringComparison.Ordinal);
        string backups = $"/proc/{program.Id}/root{Data}/backups";
        Assert.DoesNotContain(Directory.Exists(backups) ? Directory.GetFiles(backups) : [], f => !f.EndsWith("-daily.db", StringComparison.Ordinal));
    }

    private async Task<RealProgram> StartAsync(FailingDisk disk)
    {
        try
        {
            return await RealProgram.StartAsync(Data, 0, disk.By(Data));
        }
        catch (InvalidOperationException said) when (said.Message.Contains("(77)", StringComparison.Ordinal) || said.Message.Contains("unshare:", StringComparison.Ordinal))
        {
            Assert.Skip($"No small disk can be made here: {said.Message}");
            throw;
        }
    }

    private void Fill()
    {
        using DataFolder folder = DataFolder.Open(Data, TimeProvider.System).Folder!;
        foreach ((string name, string text) in new[] { ("jar-cabinet", File.ReadAllText(Samples.File("jar-cabinet"))), ("luthiers-bench", File.ReadAllText(Samples.File("luthiers-bench"))), ("tray", Tray), ("shop", Yard) })
            Assert.IsType<ChangeTaken>(folder.Database.Make(Change.Of("fill " + name, "2026-05-04T09:40:00Z", new NewDocument(name == DocumentName.Shop ? DocumentKind.Shop : DocumentKind.Piece, name, text, "new"))));
    }

    private static async Task<Act[]> Acts(HttpClient client)
    {
        static (string, string)[] Fields(string change, string back, params (string, string)[] own) => [("change", change), ("revision", "1"), ("back", back), .. own];
        (string Path, (string, string)[] Fields) run = FormOf(await client.GetStringAsync("/piece/tray/break-down"), "/piece/tray/cut");
        using var file = new MultipartFormDataContent { { new ByteArrayContent(Encoding.UTF8.GetBytes(Tray.Replace("name: Tray", "name: Other tray", StringComparison.Ordinal))), "file", "other.yaml" } };
        (string Path, (string, string)[] Fields) import = FormOf(await PageAsync(await client.PostAsync("/keeping/import", file), HttpStatusCode.OK, "import"), "/keeping/import/do");
        (string Path, (string Name, string Value)[] Fields) shop = FormOf(await client.GetStringAsync("/shop?item=stock.0"), holds: "name=\"field-price\"");
        return
        [
            new("edit", "/piece/jar-cabinet/edit", Fields("a1", "/piece/jar-cabinet?size=C.width", ("key", "C.width"), ("choice", "width"), ("field-size", "40 1/16")), "40 1/16"),
            new("text", "/piece/jar-cabinet/text", [("change", "a2"), ("revision", "2"), ("back", "/piece/jar-cabinet/text"), ("text", "\n# by hand <&> \"½\"\n" + File.ReadAllText(Samples.File("jar-cabinet")))], "# by hand"),
            new("reading", $"{Bench}/read", Fields("a3", Bench, ("key", "L.width"), ("value", "19 9/16"), ("with", "tape")), "19 9/16"),
            new("mark", $"{Bench}/mark", Fields("a4", Bench, ("progress", "cut"), ("what", "L1.side L1.end")), ""),
            new("run", run.Path, run.Fields, ""),
            new("state named", $"{Bench}/save-point", Fields("a5", $"{Bench}/history", ("point", "before the saw")), "before the saw"),
            new("shop", shop.Path, [.. shop.Fields.Select(f => f.Name == "field-price" ? (f.Name, "91.50") : f)], "91.50"),
            new("import", import.Path, import.Fields, ""),
        ];
    }

    private static async Task<string> PageAsync(HttpResponseMessage answer, HttpStatusCode wanted, string act)
    {
        using (answer)
        {
            string page = await answer.Content.ReadAsStringAsync();
            Assert.True(answer.StatusCode == wanted, $"{act}: {answer.StatusCode}: {page}");
            return page;
        }
    }

    // All texts and logs as they are fetched from the page of backups, without their times.
    private static async Task<string> TextsAsync(HttpClient client)
    {
        using var archive = new ZipArchive(new MemoryStream(await client.GetByteArrayAsync("/keeping/texts.zip")));
        var all = new StringBuilder();
        foreach (ZipArchiveEntry entry in archive.Entries.OrderBy(e => e.FullName, StringComparer.Ordinal))
        {
            using var reader = new StreamReader(entry.Open());
            all.Append(entry.FullName).Append('\n').Append(await reader.ReadToEndAsync());
        }
        return all.Append(await client.GetStringAsync($"{Bench}/history") is var history && history.Contains("before the saw", StringComparison.Ordinal) ? "named" : "").ToString();
    }

    // As a browser sends it: what is in the fields, as it stands there.
    private static (string Path, (string Name, string Value)[] Fields) FormOf(string page, string? path = null, string holds = "name=\"change\"")
    {
        Match form = FormPattern().Matches(page).First(f => path is null ? f.Groups[2].Value.Contains(holds, StringComparison.Ordinal) : f.Groups[1].Value == path);
        (string, string)[] fields =
        [
            .. InputPattern().Matches(form.Groups[2].Value).Select(m => (m.Groups[1].Value, WebUtility.HtmlDecode(m.Groups[2].Value))),
            // The first line end in it is not part of it.
            .. TextPattern().Matches(form.Groups[2].Value).Select(m => (m.Groups[1].Value, Regex.Replace(WebUtility.HtmlDecode(m.Groups[2].Value), "^\n", ""))),
        ];
        return (form.Groups[1].Value, fields);
    }

    [GeneratedRegex("""(?s)<form method="post" action="([^"]+)"[^>]*>(.*?)</form>""")]
    private static partial Regex FormPattern();

    [GeneratedRegex("""<input [^>]*?name="([^"]+)"[^>]*? value="([^"]*)" """)]
    private static partial Regex InputPattern();

    [GeneratedRegex("""(?s)<textarea [^>]*?name="([^"]+)"[^>]*>(.*?)</textarea>""")]
    private static partial Regex TextPattern();
}
