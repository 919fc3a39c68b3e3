using System.Net;
using System.Net.Sockets;
using System.Text;
using Setout.Commands;
using Setout.Workbench;

namespace Setout.Tests.Browser;

public sealed class AnswersTests(Room room)
{
    private HttpClient Client => new(new HttpClientHandler { AllowAutoRedirect = false }) { BaseAddress = new(room.Address) };

    [Theory]
    [InlineData("evil.example")]
    [InlineData("localhost.evil.example")]
    [InlineData("192.168.1.20")]
    public async Task Host_OfSomeoneElse_IsRefusedWithAWordOfHelp(string host)
    {
        using HttpClient client = Client;
        using var request = new HttpRequestMessage(HttpMethod.Get, "/piece/luthiers-bench");
        request.Headers.Host = host;
        using HttpResponseMessage answer = await client.SendAsync(request);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        string text = await answer.Content.ReadAsStringAsync();
        Assert.Contains("http://localhost:", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Luthiers", text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("localhost")]
    [InlineData("127.0.0.1:5280")]
    [InlineData("[::1]:5280")]
    public async Task Host_OfThisMachine_IsAnswered(string host)
    {
        using HttpClient client = Client;
        using var request = new HttpRequestMessage(HttpMethod.Get, "/");
        request.Headers.Host = host;
        using HttpResponseMessage answer = await client.SendAsync(request);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
    }

    [Theory]
    [InlineData("/")]
    [InlineData("/piece/luthiers-bench")]
    [InlineData("/piece/none")]
    [InlineData("/nowhere")]
    public async Task Answer_OfEveryKind_KeepsToItself(string path)
    {
        using HttpClient client = Client;
        using HttpResponseMessage answer = await client.GetAsync(path);
        Assert.Equal(
            "default-src 'none'; script-src 'self'; style-src 'self'; font-src 'self'; img-src 'self' data:; connect-src 'self'; base-uri 'none'; form-action 'self'; frame-ancestors 'none'",
            Assert.Single(answer.Headers.GetValues("Content-Security-Policy")));
        Assert.Equal("nosniff", Assert.Single(answer.Headers.GetValues("X-Content-Type-Options")));
        Assert.Equal("same-origin", Assert.Single(answer.Headers.GetValues("Referrer-Policy")));
        string page = await answer.Content.ReadAsStringAsync();
        Assert.DoesNotContain("style=\"", page, StringComparison.Ordinal);
        Assert.DoesNotContain("<style", page, StringComparison.Ordinal);
        Assert.DoesNotContain("onclick", page, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/piece/..%2Fshop")]
    [InlineData("/piece/..%2F..%2Fetc%2Fpasswd")]
    [InlineData("/piece/..%5C..%5Cshop")]
    [InlineData("/piece/shop")]
    [InlineData("/piece/luthiers-bench.yaml")]
    [InlineData("/piece/%2Fetc%2Fpasswd")]
    [InlineData("/piece/luthiers-bench%00")]
    public async Task Name_ThatIsNoPieceOfTheFolder_IsNotFound(string path)
    {
        // Over a bare socket: a client would tidy the address up before sending it.
        string answer = await RawAsync(path);
        Assert.Matches("^HTTP/1.1 (404|400) ", answer);
        Assert.DoesNotContain("root:", answer, StringComparison.Ordinal);
        Assert.DoesNotContain("setout-shop", answer, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Name_ThatIsNearAPiece_IsNotFoundWithAGuess()
    {
        using HttpClient client = Client;
        using HttpResponseMessage answer = await client.GetAsync("/piece/luthier-bench");
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        string page = await answer.Content.ReadAsStringAsync();
        Assert.Contains("href=\"/piece/luthiers-bench\"", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Name_WithMarkup_IsEscaped()
    {
        using HttpClient client = Client;
        using HttpResponseMessage answer = await client.GetAsync("/piece/%3Cscript%3Ealert(1)%3C%2Fscript%3E");
        Assert.DoesNotContain("<script>alert", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        Assert.DoesNotContain("<script>alert", await client.GetStringAsync("/piece/luthiers-bench?size=%3Cscript%3Ealert(1)"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("luthiers-bench", "")]
    [InlineData("plan-chest", "?paper=letter")]
    public async Task BenchSheets_WhenFetched_AreAPdfToKeep(string piece, string query)
    {
        using HttpClient client = Client;
        using HttpResponseMessage answer = await client.GetAsync($"/piece/{piece}/bench-sheets.pdf{query}");
        Assert.Equal("application/pdf", answer.Content.Headers.ContentType?.MediaType);
        Assert.Equal("attachment", answer.Content.Headers.ContentDisposition?.DispositionType);
        Assert.Equal($"{piece}-bench-sheets.pdf", answer.Content.Headers.ContentDisposition?.FileName?.Trim('"'));
        byte[] pdf = await answer.Content.ReadAsByteArrayAsync();
        Assert.Equal("%PDF", Encoding.ASCII.GetString(pdf, 0, 4));
    }

    [Fact]
    public async Task BenchSheets_OfOneStage_AreThoseAloneAndOneThatIsNotThereSaysSo()
    {
        using HttpClient client = Client;
        Assert.Contains("/piece/jar-cabinet/bench-sheets.pdf?only=machine\"", await client.GetStringAsync("/piece/jar-cabinet/machine"), StringComparison.Ordinal);
        using HttpResponseMessage answer = await client.GetAsync("/piece/jar-cabinet/bench-sheets.pdf?only=break-down");
        Assert.Equal("jar-cabinet-break-down-sheets.pdf", answer.Content.Headers.ContentDisposition?.FileName?.Trim('"'));
        // The jar cabinet says nothing of a finish.
        Assert.DoesNotContain("only=finish", await client.GetStringAsync("/piece/jar-cabinet/finish"), StringComparison.Ordinal);
        foreach (string only in new[] { "finish", "cutting" })
        {
            using HttpResponseMessage none = await client.GetAsync($"/piece/jar-cabinet/bench-sheets.pdf?only={only}");
            Assert.Equal(HttpStatusCode.NotFound, none.StatusCode);
            Assert.Contains(only == "finish" ? "has no sheets" : "break-down", await none.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task Typeface_WhenFetched_IsKeptForGood()
    {
        using HttpClient client = Client;
        string page = await client.GetStringAsync("/");
        string style = System.Text.RegularExpressions.Regex.Match(page, "/assets/[0-9a-f]+/workbench.css").Value;
        string css = await client.GetStringAsync(style);
        string font = "/assets/" + System.Text.RegularExpressions.Regex.Match(css, "[0-9a-f]+/IBMPlexSans-Regular.ttf").Value;
        using HttpResponseMessage answer = await client.GetAsync(font);
        Assert.Equal("font/ttf", answer.Content.Headers.ContentType?.MediaType);
        Assert.Contains("immutable", answer.Headers.GetValues("Cache-Control").Single(), StringComparison.Ordinal);
        Assert.Equal(Setout.Drawing.Scenes.Typeface.File(Setout.Drawing.Scenes.Face.Regular), await answer.Content.ReadAsByteArrayAsync());
    }

    [Fact]
    public async Task Workbench_OnATakenPort_StopsWithAHint()
    {
        using var folder = new TestFolder();
        var terminal = new TestTerminal();
        int taken = new Uri(room.Address).Port;
        Assert.Equal(ExitCode.Usage, await terminal.RunAsync("serve", "--port", $"{taken}", "--data", folder.Of("data")));
        Assert.Contains($"Port {taken} is taken", terminal.Error, StringComparison.Ordinal);
        Assert.Contains("--port 0", terminal.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Workbench_WhenCancelled_StopsCleanlyAfterSayingWhereItWas()
    {
        using var folder = new TestFolder();
        using var cancel = new CancellationTokenSource();
        var terminal = new TestTerminal(cancel.Token);
        Task<int> run = terminal.RunAsync("serve", "--port", "0", "--data", folder.Of("data"));
        await Task.WhenAny(run, terminal.UntilOutHolds("--help"));
        Assert.Contains("http://127.0.0.1:", terminal.Out, StringComparison.Ordinal);
        Assert.Contains("Ctrl-C", terminal.Out, StringComparison.Ordinal);
        Assert.Contains(folder.Of("data"), terminal.Out, StringComparison.Ordinal);
        await cancel.CancelAsync();
        Assert.Equal(ExitCode.Fine, await run);
    }

    [Fact]
    public void Faults_AfterAllPages_AreNone() => Assert.Equal("", room.Faults);

    private async Task<string> RawAsync(string path)
    {
        var address = new Uri(room.Address);
        using var socket = new TcpClient();
        await socket.ConnectAsync(address.Host, address.Port);
        await using NetworkStream stream = socket.GetStream();
        await stream.WriteAsync(Encoding.ASCII.GetBytes($"GET {path} HTTP/1.1\r\nHost: {address.Authority}\r\nConnection: close\r\n\r\n"));
        using var reader = new StreamReader(stream);
        return await reader.ReadToEndAsync();
    }
}
