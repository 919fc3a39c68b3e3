// Over 200 lines: what goes out of the shop and comes back, tested by each other.
using System.IO.Compression;
using System.Net;
using System.Net.Http.Headers;
using System.Text;
using System.Text.RegularExpressions;
using Setout.Store;

namespace Setout.Tests.Browser;

/// <summary>Backups, restoring, import and export on pages.</summary>
public sealed class KeepingTests
{
    private static FormUrlEncodedContent Form(params (string Name, string Value)[] fields) => new(fields.Select(f => KeyValuePair.Create(f.Name, f.Value)));

    private static MultipartFormDataContent Files(params (string Name, byte[] Bytes)[] files)
    {
        var form = new MultipartFormDataContent();
        foreach ((string name, byte[] bytes) in files) form.Add(new ByteArrayContent(bytes), "file", name);
        return form;
    }

    private static async Task<string> Page(HttpResponseMessage answer, HttpStatusCode wanted = HttpStatusCode.OK)
    {
        Assert.Equal(wanted, answer.StatusCode);
        return WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync());
    }

    private static string Hidden(string page, string name) => Regex.Match(page, $"name=\"{name}\" value=\"([^\"]*)\"").Groups[1].Value;

    private static void NothingLeft(KeptShop shop) => Assert.False(Directory.Exists(Path.Combine(shop.Place, "incoming")) || Directory.EnumerateFiles(shop.Place, "*look*").Any());

    [Fact]
    public async Task Backup_MadeFetchedAndSentBack_RestoresAfterSayingWhatWouldChange()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        Assert.Contains("There is no backup yet", await shop.Client.GetStringAsync("/"), StringComparison.Ordinal);
        string made = await Page(await shop.Client.PostAsync("/keeping/backup", Form(("a", "b"))));
        string file = Regex.Match(made, "/keeping/backup/([^\"]+)\"").Groups[1].Value;
        byte[] bytes = await shop.Client.GetByteArrayAsync("/keeping/backup/" + file);
        string before = shop.Text("jar-cabinet");
        shop.Change("jar-cabinet", t => t + "# later\n");
        shop.Keep("newer", "setout: 1\nname: Newer\n");
        using HttpResponseMessage sent = await shop.Client.PostAsync("/keeping/upload", Files(("../../my backup.db", bytes)));
        Assert.Equal("/keeping/restore?upload=my%20backup.db", sent.Headers.Location?.ToString());
        string look = WebUtility.HtmlDecode(await shop.Client.GetStringAsync("/keeping/restore?upload=my%20backup.db"));
        Assert.Matches("goes</span>\\s*<strong>newer", look);
        Assert.Matches("changes</span>\\s*<strong>jar-cabinet</strong>\\s*<span>gets the text after: new", look);
        Assert.Contains("# later", shop.Text("jar-cabinet"), StringComparison.Ordinal);
        string done = await Page(await shop.Client.PostAsync("/keeping/restore", Form(("upload", "my backup.db"))));
        Assert.Contains("What was there before is kept in", done, StringComparison.Ordinal);
        Assert.Equal(before, shop.Text("jar-cabinet"));
        Assert.Null(shop.Database.Find("newer"));
        NothingLeft(shop);
        // The page of the piece is that of the restored text, and what a window sends that saw the other is refused.
        Assert.DoesNotContain("# later", await shop.Client.GetStringAsync("/piece/jar-cabinet/text"), StringComparison.Ordinal);
        using HttpResponseMessage old = await shop.Client.PostAsync("/piece/jar-cabinet/undo", Form(("change", "x"), ("revision", "2"), ("back", "/piece/jar-cabinet")));
        Assert.Equal(HttpStatusCode.Conflict, old.StatusCode);
        // And back to what was there.
        string kept = new Backups(Path.Combine(shop.Place, "setout.db"), TimeProvider.System).All().First(b => b.Reason == BackupReason.Restore).Path;
        await Page(await shop.Client.PostAsync("/keeping/restore", Form(("backup", Path.GetFileName(kept)))));
        Assert.NotNull(shop.Database.Find("newer"));
    }

    [Theory]
    [InlineData("text")]
    [InlineData("empty")]
    [InlineData("cut off")]
    [InlineData("other database")]
    [InlineData("broken form")]
    [InlineData("no file")]
    public async Task Upload_ThatIsNoBackup_IsRefusedAndLeavesNothing(string what)
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        string before = shop.Text("jar-cabinet");
        byte[] good = await File.ReadAllBytesAsync(new Backups(Path.Combine(shop.Place, "setout.db"), TimeProvider.System).Make(BackupReason.Asked).File.Path);
        using HttpContent content = what switch
        {
            "text" => Files(("a.db", Encoding.UTF8.GetBytes("This is no database, however it may be called.\n"))),
            "empty" => Files(("a.db", [])),
            "cut off" => Files(("a.db", good[..(good.Length / 2)])),
            "other database" => Files(("a.db", OtherDatabase(shop))),
            "no file" => Files(),
            _ => new ByteArrayContent(Encoding.UTF8.GetBytes("--x\r\nContent-Disposition: form-data; name=file; filename=a.db\r\n\r\nnever ends")) { Headers = { ContentType = MediaTypeHeaderValue.Parse("multipart/form-data; boundary=x") } },
        };
        Assert.Contains("data-fault", await Page(await shop.Client.PostAsync("/keeping/upload", content), HttpStatusCode.UnprocessableEntity), StringComparison.Ordinal);
        NothingLeft(shop);
        Assert.Equal(before, shop.Text("jar-cabinet"));
    }

    [Fact]
    public async Task Import_SeenFirst_IsOneStepAndTakenBackAsOne()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        string before = shop.Text("jar-cabinet"), changed = before + "# ½\" wide\n";
        string list = await Page(await shop.Client.PostAsync("/keeping/import", Files(("jar-cabinet.yaml", Encoding.UTF8.GetBytes(changed)), ("new one.yaml", Encoding.UTF8.GetBytes("setout: 1\nname: New\n")),
            ("plan-chest.yaml", Encoding.UTF8.GetBytes(shop.Text("plan-chest"))), ("letter.yaml", Encoding.UTF8.GetBytes("Dear all\n")), ("half.yaml", [0x73, 0xff, 0xfe]))));
        Assert.Equal(["refused", "changed", "refused", "added", "left"], Regex.Matches(list, "data-act=\"([a-z]+)\"").Select(m => m.Groups[1].Value));
        Assert.Equal(before, shop.Text("jar-cabinet"));
        MultipartFormDataContent Again()
        {
            var form = new MultipartFormDataContent { { new StringContent(Hidden(list, "change")), "change" }, { new StringContent(Hidden(list, "seen")), "seen" } };
            foreach (Match text in Regex.Matches(list, "name=\"name\" value=\"([^\"]*)\" */?>\\s*<input type=\"hidden\" name=\"text\" value=\"([^\"]*)\""))
            {
                form.Add(new StringContent(text.Groups[1].Value), "name");
                form.Add(new StringContent(text.Groups[2].Value), "text");
            }
            return form;
        }
        string done = await Page(await shop.Client.PostAsync("/keeping/import/do", Again()));
        Assert.Contains("Imported: 1 added, 1 changed, 1 left, 1 refused", done, StringComparison.Ordinal);
        Assert.Equal(changed, shop.Text("jar-cabinet"));
        // Sent again, nothing more happens.
        await Page(await shop.Client.PostAsync("/keeping/import/do", Again()));
        Assert.Equal(3, shop.Database.Find("jar-cabinet")!.Revision);
        await Page(await shop.Client.PostAsync("/keeping/import/take-back", Form(("change", "back"), ("made", Hidden(done, "made")))));
        Assert.Equal(before, shop.Text("jar-cabinet"));
        Assert.True(shop.Database.Find("new one")!.Line.IsPutAway);
    }

    [Fact]
    public async Task Import_AfterSomethingElseWasChanged_ShowsTheListAnew()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        byte[] text = Encoding.UTF8.GetBytes(shop.Text("jar-cabinet") + "# more\n");
        string list = await Page(await shop.Client.PostAsync("/keeping/import", Files(("jar-cabinet.yaml", text))));
        shop.Change("jar-cabinet", t => t + "# more\n");
        var form = new MultipartFormDataContent { { new StringContent("i1"), "change" }, { new StringContent(Hidden(list, "seen")), "seen" }, { new StringContent("jar-cabinet.yaml"), "name" }, { new StringContent(Convert.ToBase64String(text)), "text" } };
        Assert.Contains("Something was changed since you saw the list", await Page(await shop.Client.PostAsync("/keeping/import/do", form)), StringComparison.Ordinal);
        Assert.Null(shop.Database.Made("i1"));
    }

    [Fact]
    public async Task Export_OfAll_IsAnArchiveThatImportsAsNothingNew()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        byte[] bytes = await shop.Client.GetByteArrayAsync("/keeping/texts.zip");
        using (var archive = new ZipArchive(new MemoryStream(bytes)))
        {
            using var reader = new StreamReader(archive.GetEntry("jar-cabinet.yaml")!.Open());
            Assert.Equal(shop.Text("jar-cabinet"), await reader.ReadToEndAsync(TestContext.Current.CancellationToken));
        }
        string list = await Page(await shop.Client.PostAsync("/keeping/import", Files(("texts.zip", bytes))));
        Assert.Contains("Nothing would change", list, StringComparison.Ordinal);
        Assert.Contains("data-fault", await Page(await shop.Client.PostAsync("/keeping/import", Files(("texts.zip", bytes[..100]))), HttpStatusCode.UnprocessableEntity), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/keeping/backup/..%2Fsetout.db", HttpStatusCode.NotFound)]
    [InlineData("/keeping/backup/setout.db", HttpStatusCode.NotFound)]
    [InlineData("/keeping/restore?backup=..%2Fsetout.db", HttpStatusCode.NotFound)]
    [InlineData("/keeping/restore?upload=..%2F..%2Fsetout.db", HttpStatusCode.NotFound)]
    [InlineData("/keeping/restore", HttpStatusCode.NotFound)]
    [InlineData("/piece/..%2F..%2Fetc%2Fpasswd/history", HttpStatusCode.NotFound)]
    [InlineData("/together?piece=..%2Fshop&piece=shop", HttpStatusCode.NotFound)]
    public async Task Address_WithTricksInItsNames_LeadsNowhere(string path, HttpStatusCode wanted)
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        using HttpResponseMessage answer = await shop.Client.GetAsync(path);
        Assert.Equal(wanted, answer.StatusCode);
        Assert.DoesNotContain("SQLite", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/keeping/restore")]
    [InlineData("/keeping/upload")]
    [InlineData("/keeping/backup")]
    [InlineData("/keeping/import")]
    [InlineData("/keeping/import/do")]
    [InlineData("/piece/jar-cabinet/put-away")]
    public async Task Post_OfKeepingFromElsewhere_ChangesNothing(string path)
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        foreach (string? origin in new[] { null, "null", "http://evil.example", shop.Address + ".evil.example", shop.Address.Replace("http:", "https:", StringComparison.Ordinal) })
        {
            shop.Client.DefaultRequestHeaders.Remove("Origin");
            if (origin is not null) shop.Client.DefaultRequestHeaders.Add("Origin", origin);
            using HttpResponseMessage answer = await shop.Client.PostAsync(path, Form(("change", "a"), ("revision", "1"), ("back", "/")));
            Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
        }
        shop.Client.DefaultRequestHeaders.Host = "evil.example";
        using HttpResponseMessage foreign = await shop.Client.GetAsync("/keeping/texts.zip");
        Assert.Equal(HttpStatusCode.BadRequest, foreign.StatusCode);
        Assert.False(Directory.Exists(Path.Combine(shop.Place, "backups")));
        Assert.Equal(1, shop.Database.Find("jar-cabinet")!.Revision);
    }

    private static byte[] OtherDatabase(KeptShop shop)
    {
        string path = Path.Combine(shop.Place, "other-program.db");
        using (var connection = new Microsoft.Data.Sqlite.SqliteConnection($"Data Source={path};Pooling=False"))
        {
            connection.Open();
            using Microsoft.Data.Sqlite.SqliteCommand make = connection.CreateCommand();
            make.CommandText = "CREATE TABLE documents (number INTEGER PRIMARY KEY, name TEXT); INSERT INTO documents (name) VALUES ('chest')";
            make.ExecuteNonQuery();
        }
        byte[] bytes = File.ReadAllBytes(path);
        File.Delete(path);
        return bytes;
    }
}
