using System.Collections.Immutable;
using System.Diagnostics;
using System.Net;
using Setout.Shop.Documents;
using Setout.Soak;
using Setout.Store;

namespace Setout.Tests.Browser;

/// <summary>The workbench as a program of its own: killed in the middle of edits, on a full disk, on one that cannot be written to, with four windows.</summary>
public sealed class RealProgramTests : IDisposable
{
    private const int Edits = 300;

    private readonly TestFolder _folder = new();

    private string Data => _folder.Of("data");

    public void Dispose() => _folder.Dispose();

    private void Fill(params string[] names)
    {
        using DataFolder folder = DataFolder.Open(Data, TimeProvider.System).Folder!;
        foreach (string name in names)
            Assert.IsType<ChangeTaken>(folder.Database.Make(Change.Of("fill " + name, "2026-05-04T09:40:00Z", new NewDocument(DocumentKind.Piece, name, File.ReadAllText(Samples.File(name)), "sample"))));
    }

    private static async Task<(HttpStatusCode Status, string Page)> Text(RealProgram program, int edit, string text)
    {
        using HttpResponseMessage answer = await program.Client.PostAsync("/piece/jar-cabinet/text", new FormUrlEncodedContent(new Dictionary<string, string>
        {
            ["change"] = $"edit {edit}",
            ["revision"] = $"{edit}",
            ["back"] = "/piece/jar-cabinet/text",
            ["text"] = text,
        }));
        return (answer.StatusCode, await answer.Content.ReadAsStringAsync());
    }

    [Theory]
    [InlineData(3)]
    [InlineData(140)]
    [InlineData(297)]
    public async Task Edits_PostedToAProgramThatIsKilled_AreThereAsFarAsTheyWereAcknowledged(int killedAfter)
    {
        Fill("jar-cabinet");
        string sample = await File.ReadAllTextAsync(Samples.File("jar-cabinet"), TestContext.Current.CancellationToken);
        int acknowledged = 0;
        using (RealProgram program = await RealProgram.StartAsync(Data))
        {
            var heard = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
            var posting = Task.Run(async () =>
            {
                try
                {
                    for (int edit = 1; edit <= Edits; edit++)
                    {
                        if ((await Text(program, edit, $"{sample}# edit {edit}\n")).Status != HttpStatusCode.Redirect) break;
                        acknowledged = edit;
                        if (edit == killedAfter) heard.SetResult();
                    }
                }
                catch (Exception gone) when (gone is HttpRequestException or IOException or TaskCanceledException)
                {
                    // Killed.
                }
            }, TestContext.Current.CancellationToken);
            await Task.WhenAny(heard.Task, posting);
            program.Kill();
            await posting;
        }
        Assert.InRange(acknowledged, killedAfter, Edits);
        using DataFolder folder = DataFolder.Open(Data, TimeProvider.System).Folder!;
        Document there = folder.Database.Find("jar-cabinet")!;
        // One more may be in whose answer was lost on the way.
        Assert.InRange(there.Revision - 1, acknowledged, acknowledged + 1);
        string[] texts = [.. folder.Database.History(there.Id).Select(h => folder.Database.TextOf(there.Id, h.State.Number)!)];
        Assert.Equal(Enumerable.Range(1, there.Revision - 1).Select(e => $"{sample}# edit {e}\n").Prepend(sample), texts);
    }

    [Fact]
    public async Task Edits_OnAFullDisk_AreRefusedOnThePageAndLoseNothing()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "The limit is set by Linux's own means.");
        Fill("jar-cabinet");
        string sample = await File.ReadAllTextAsync(Samples.File("jar-cabinet"), TestContext.Current.CancellationToken);
        int acknowledged = 0;
        string refused = "";
        // No file of it may become longer than 600 KB, as if there were no more room. The signal that Linux sends then is passed over, as a full disk sends none; and the runtime may not map its
        // code twice, for which it would want a long file.
        using (RealProgram program = await RealProgram.StartAsync(Data, 0, "bash", "-c", "trap '' XFSZ; export DOTNET_EnableWriteXorExecute=0; ulimit -f 600; exec \"$0\" \"$@\""))
        {
            for (int edit = 1; edit <= 400 && refused.Length == 0; edit++)
            {
                // Each is another from end to end, so that each takes its room.
                (HttpStatusCode status, string page) = await Text(program, edit, $"{sample}# {string.Concat(Enumerable.Range(0, 1500).Select(i => $"{edit * i:x} "))}\n");
                if (status == HttpStatusCode.Redirect) acknowledged = edit;
                else
                {
                    Assert.Equal(HttpStatusCode.UnprocessableEntity, status);
                    refused = page;
                }
            }
            Assert.Contains("data-fault", refused, StringComparison.Ordinal);
            Assert.Contains("nothing was written", refused, StringComparison.Ordinal);
            // What was typed is still on the page, and pages are still shown.
            Assert.Contains("What was typed", refused, StringComparison.Ordinal);
            Assert.Contains("jar-cabinet", await program.Client.GetStringAsync("/"), StringComparison.Ordinal);
        }
        using DataFolder folder = DataFolder.Open(Data, TimeProvider.System).Folder!;
        Document there = folder.Database.Find("jar-cabinet")!;
        Assert.True(acknowledged > 0);
        Assert.Equal(acknowledged, there.Revision - 1);
        Assert.Equal(acknowledged + 1, folder.Database.History(there.Id).Length);
    }

    [Fact]
    public async Task Start_OnADiskThatCannotBeWritten_SaysSoAndWhatToDo()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "The disk is made with Linux's own means.");
        Fill("jar-cabinet");
        string[] by = [.. Environment.IsPrivilegedProcess ? ["unshare", "--mount"] : new[] { "unshare", "--mount", "--map-root-user" }, "sh", "-c", $"mount --bind '{Data}' '{Data}' && mount -o remount,ro,bind '{Data}' || exit 77; exec \"$0\" \"$@\""];
        InvalidOperationException said = await Assert.ThrowsAsync<InvalidOperationException>(async () => (await RealProgram.StartAsync(Data, 0, by)).Dispose());
        Assert.SkipWhen(said.Message.Contains("(77)", StringComparison.Ordinal) || said.Message.Contains("unshare:", StringComparison.Ordinal), $"No such disk can be made here: {said.Message}");
        Assert.Contains("(2)", said.Message, StringComparison.Ordinal);
        Assert.Contains("--data", said.Message, StringComparison.Ordinal);
    }

    /// <summary>The long run's short turn: see <c>./soak</c>.</summary>
    [Fact]
    public async Task FourWindows_AndAProgramThatIsKilled_LoseNothingThatWasAcknowledged()
    {
        Fill("jar-cabinet", "plan-chest");
        var windows = new FourWindows(Data, ["jar-cabinet", "plan-chest"]);
        await windows.RunAsync(1, made => made < 25, isKilled: true);
        Assert.Empty(windows.Missing());
        Assert.True(windows.Acknowledged > 30, $"{windows.Acknowledged} acknowledged, {windows.Refused} refused");
        Assert.True(windows.Facts > 0);
    }

    [Fact]
    public async Task Forms_WithAnythingInTheirFields_AreAnsweredWithoutAFault()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        var forms = new FormCases(shop.Client, [.. Samples.Names], ["", "C", "C.width", "K", "L", "L3", "birch"], [.. Samples.Names.Select(n => File.ReadAllText(Samples.File(n)))], File.ReadAllText(Path.Combine(Samples.Folder, "shop.yaml")));
        var random = new Random(7);
        var kinds = new HashSet<string>();
        for (int i = 0; i < 150; i++)
        {
            string input = "";
            try
            {
                kinds.Add(await forms.RunAsync(random, sent => input = sent));
            }
            catch (SoakException fault)
            {
                Assert.Fail($"{fault.Message}\n{input}\n{shop.Terminal.Error}");
            }
        }
        Assert.Equal("", shop.Terminal.Error);
        Assert.Contains(kinds, k => k.EndsWith(": 302", StringComparison.Ordinal));
        Assert.Contains(kinds, k => k.EndsWith(": 422", StringComparison.Ordinal));
    }

    [Fact]
    public void Texts_SpoiltAtTheLevelOfBytesLinesKeysAndValues_GiveAResultOrAFinding()
    {
        ImmutableArray<string> pieces = [.. Samples.Names.Select(n => File.ReadAllText(Samples.File(n)))];
        string shop = File.ReadAllText(Path.Combine(Samples.Folder, "shop.yaml"));
        var kinds = new HashSet<string>();
        for (int seed = 0; seed < 400; seed++)
        {
            string input = "";
            try
            {
                kinds.Add(TextCases.Run(new Random(seed), pieces, shop, i => input = i));
            }
            catch (Exception fault) when (fault is not OutOfMemoryException)
            {
                Assert.Fail($"seed {seed}: {fault}\n{input}");
            }
        }
        Assert.Contains("edit: done", kinds);
        Assert.Contains("piece: told", kinds);
        Assert.Contains("shop: set out", kinds);
    }
}
