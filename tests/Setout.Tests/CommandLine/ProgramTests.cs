using System.Text.Json;
using Setout.Commands;

namespace Setout.Tests.CommandLine;

public sealed class ProgramTests
{
    [Theory]
    [InlineData("plna", "plan")]
    [InlineData("chekc", "check")]
    [InlineData("recrod", "record")]
    [InlineData("serv", "serve")]
    public async Task Word_ThatIsMistyped_NamesTheNearestAndStartsNothing(string word, string near)
    {
        using var folder = new TestFolder();
        var terminal = new TestTerminal();
        int code = await terminal.RunAsync(word, Samples.File("jar-cabinet"), "--out", folder.Of("out"));
        Assert.Equal(ExitCode.Usage, code);
        Assert.Contains($"Did you mean '{near}'?", terminal.Error, StringComparison.Ordinal);
        Assert.Equal("", terminal.Out);
        Assert.Empty(folder.Files());
    }

    [Theory]
    [InlineData("serve", "--prot", "0")]
    [InlineData("plan", "--out")]
    [InlineData("check", "--jsn")]
    [InlineData("parts")]
    [InlineData("--nonsense")]
    public async Task Usage_ThatIsWrong_AnswersTwoAndSaysSoOnStandardError(params string[] words)
    {
        var terminal = new TestTerminal();
        Assert.Equal(ExitCode.Usage, await terminal.RunAsync(words));
        Assert.Equal("", terminal.Out);
        Assert.Contains("setout", terminal.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Option_ThatIsMistyped_StartsNoServer()
    {
        var terminal = new TestTerminal();
        Task<int> run = terminal.RunAsync("serve", "--no-browsr");
        Assert.Equal(ExitCode.Usage, await run.WaitAsync(TimeSpan.FromSeconds(30)));
        Assert.DoesNotContain("http://", terminal.Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--help")]
    [InlineData("-h")]
    [InlineData("plan", "--help")]
    [InlineData("record", "-h")]
    [InlineData("serve", "--help")]
    public async Task Help_Everywhere_IsAResult(params string[] words)
    {
        var terminal = new TestTerminal();
        Assert.Equal(ExitCode.Fine, await terminal.RunAsync(words));
        Assert.Contains("USAGE", terminal.Out, StringComparison.OrdinalIgnoreCase);
        Assert.Equal("", terminal.Error);
    }

    [Fact]
    public async Task Version_WhenAsked_NamesProgramRulesAndTexts()
    {
        var terminal = new TestTerminal();
        Assert.Equal(ExitCode.Fine, await terminal.RunAsync("--version"));
        Assert.Matches(@"^setout \S+, rule set \S+, piece file \d+, log \d+, shop file \d+, plan\.json \d+\n$", terminal.Out);
    }

    [Fact]
    public async Task File_ThatIsMissing_AnswersTwoAndNamesTheNearest()
    {
        var terminal = new TestTerminal();
        Assert.Equal(ExitCode.Usage, await terminal.RunAsync("check", Path.Combine(Samples.Folder, "jar-cabinte.yaml")));
        Assert.Contains("Did you mean 'jar-cabinet.yaml'?", terminal.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Key_ThatIsMisspelt_IsAnErrorWithFileLineAndColumn()
    {
        using var folder = new TestFolder();
        string file = folder.Write("odd.yaml", "setout: 1\nname: Odd\nunit: in\nmateriels:\n  ply: {panel: mdf, label: 3/4}\n");
        var terminal = new TestTerminal();
        Assert.Equal(ExitCode.Findings, await terminal.RunAsync("parts", file));
        Assert.Contains($"{file}:4:1: stop ", terminal.Error, StringComparison.Ordinal);
        Assert.Contains("materials", terminal.Error, StringComparison.Ordinal);
        Assert.Equal("", terminal.Out);
    }

    [Fact]
    public async Task Check_OfASample_IsFineUntilNotesAreAskedToFail()
    {
        var terminal = new TestTerminal();
        Assert.Equal(ExitCode.Fine, await terminal.RunAsync("check", Samples.File("jar-cabinet")));
        Assert.Contains("0 stop", terminal.Out, StringComparison.Ordinal);
        Assert.Equal(ExitCode.Findings, await new TestTerminal().RunAsync("check", Samples.File("jar-cabinet"), "--fail-on", "note"));
        Assert.Equal(ExitCode.Usage, await new TestTerminal().RunAsync("check", Samples.File("jar-cabinet"), "--fail-on", "loud"));
    }

    [Theory]
    [InlineData("why", "L3.box.width")]
    [InlineData("why", "L3.side")]
    public async Task Why_AsJson_IsOneValue(string command, string key)
    {
        var terminal = new TestTerminal();
        Assert.Equal(ExitCode.Fine, await terminal.RunAsync(command, Samples.File("luthiers-bench"), key, "--json"));
        using JsonDocument json = JsonDocument.Parse(terminal.Out);
        Assert.Equal(JsonValueKind.Array, json.RootElement.ValueKind);
        Assert.NotEqual(0, json.RootElement.GetArrayLength());
        Assert.Equal("", terminal.Error);
    }

    [Theory]
    [InlineData("parts")]
    [InlineData("check")]
    public async Task Lists_AsJson_AreOneValue(string command)
    {
        var terminal = new TestTerminal();
        Assert.Equal(ExitCode.Fine, await terminal.RunAsync(command, Samples.File("jar-cabinet"), "--json"));
        using JsonDocument json = JsonDocument.Parse(terminal.Out);
        Assert.Equal("", terminal.Error);
    }

    [Fact]
    public async Task Why_OfAKeyThatIsNotThere_NamesTheNearest()
    {
        var terminal = new TestTerminal();
        Assert.Equal(ExitCode.Usage, await terminal.RunAsync("why", Samples.File("luthiers-bench"), "L3.box.widht"));
        Assert.Contains("L3.box.width", terminal.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Plan_WhenCancelled_Answers130AndLeavesNothing()
    {
        using var folder = new TestFolder();
        using var cancel = new CancellationTokenSource();
        await cancel.CancelAsync();
        var terminal = new TestTerminal(cancel.Token);
        Assert.Equal(ExitCode.Cancelled, await terminal.RunAsync("plan", Samples.File("jar-cabinet"), "--out", folder.Of("out")));
        Assert.Empty(Directory.EnumerateFileSystemEntries(folder.Path));
        Assert.Contains("nothing was written", terminal.Error, StringComparison.Ordinal);
    }
}
