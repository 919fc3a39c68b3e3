using System.Text;
using System.Text.Json;
using Setout.Commands;

namespace Setout.Tests.CommandLine;

public sealed class PlanTests
{
    [Fact]
    public async Task Plan_OfASample_WritesEveryFile()
    {
        using TestFolder folder = new();
        var terminal = new TestTerminal();
        Assert.Equal(ExitCode.Fine, await terminal.RunAsync("plan", Samples.File("jar-cabinet"), "--out", folder.Of("deep", "plan")));
        string[] files = folder.Files();
        foreach (string name in new[] { "plan.json", "parts.csv", "buying.csv", "bench-sheets.pdf", "drawings/front.svg", "breakdown/birch-D.svg" })
            Assert.Contains("deep/plan/" + name, files);
        using JsonDocument json = JsonDocument.Parse(File.ReadAllBytes(folder.Of("deep", "plan", "plan.json")));
        Assert.Equal("Jar cabinet", json.RootElement.GetProperty("piece").GetProperty("name").GetString());
        Assert.Equal("%PDF", Encoding.ASCII.GetString(File.ReadAllBytes(folder.Of("deep", "plan", "bench-sheets.pdf")), 0, 4));
        Assert.Contains("to buy:", terminal.Out, StringComparison.Ordinal);
        int settings = json.RootElement.GetProperty("runs").GetProperty("settings").GetInt32();
        Assert.True(settings > 1);
        Assert.Contains($"at the saws: {settings} settings, the fewest for this layout", terminal.Out, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Plan_OverItsOwnOutput_ReplacesItWholeAndAlike()
    {
        using TestFolder folder = new();
        string target = folder.Of("plan");
        Assert.Equal(ExitCode.Fine, await new TestTerminal().RunAsync("plan", Samples.File("plan-chest"), "--out", target));
        Assert.Equal(ExitCode.Fine, await new TestTerminal().RunAsync("plan", Samples.File("jar-cabinet"), "--out", target));
        string[] files = folder.Files();
        Assert.DoesNotContain(files, f => f.Contains("birch18", StringComparison.Ordinal));
        byte[] first = File.ReadAllBytes(Path.Combine(target, "plan.json"));
        Assert.Equal(ExitCode.Fine, await new TestTerminal().RunAsync("plan", Samples.File("jar-cabinet"), "--out", target));
        Assert.Equal(first, File.ReadAllBytes(Path.Combine(target, "plan.json")));
        Assert.Equal(files, folder.Files());
        Assert.Equal(["plan"], Directory.EnumerateFileSystemEntries(folder.Path).Select(Path.GetFileName));
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task Plan_IntoAFolderThatHoldsSomethingElse_LeavesItUntouched(bool afterAPlanOfOurs)
    {
        using TestFolder folder = new();
        string target = folder.Of("plan");
        if (afterAPlanOfOurs) Assert.Equal(ExitCode.Fine, await new TestTerminal().RunAsync("plan", Samples.File("jar-cabinet"), "--out", target));
        Directory.CreateDirectory(target);
        File.WriteAllText(Path.Combine(target, "letter.txt"), "Dear reader");
        string[] before = folder.Files();
        var terminal = new TestTerminal();
        Assert.Equal(ExitCode.Usage, await terminal.RunAsync("plan", Samples.File("jar-cabinet"), "--out", target));
        Assert.Contains("letter.txt", terminal.Error, StringComparison.Ordinal);
        Assert.Equal(before, folder.Files());
        Assert.Equal("Dear reader", File.ReadAllText(Path.Combine(target, "letter.txt")));
    }

    [Fact]
    public async Task Plan_ThatIsStopped_AnswersOneAndWritesNothing()
    {
        using TestFolder folder = new TestFolder().WithSamples();
        string file = folder.Write("wide.yaml", File.ReadAllText(Samples.File("jar-cabinet")).Replace("width: 38", "width: 380", StringComparison.Ordinal));
        var terminal = new TestTerminal();
        Assert.Equal(ExitCode.Findings, await terminal.RunAsync("plan", file, "--out", folder.Of("plan")));
        Assert.Matches(@"wide\.yaml:\d+:\d+: stop part\.too-long: ", terminal.Error);
        Assert.False(Directory.Exists(folder.Of("plan")));
    }

    [Fact]
    public async Task Plan_OnPaperThatIsNotKnown_AnswersTwo()
    {
        using TestFolder folder = new();
        Assert.Equal(ExitCode.Usage, await new TestTerminal().RunAsync("plan", Samples.File("jar-cabinet"), "--out", folder.Of("plan"), "--paper", "foolscap"));
        Assert.Empty(folder.Files());
    }

    [Fact]
    public async Task Plan_BeforeItsOwnOutput_KeepsEverySheet()
    {
        using TestFolder folder = new();
        string target = folder.Of("plan");
        Assert.Equal(ExitCode.Fine, await new TestTerminal().RunAsync("plan", Samples.File("jar-cabinet"), "--out", target));
        var again = new TestTerminal();
        Assert.Equal(ExitCode.Fine, await again.RunAsync("plan", Samples.File("jar-cabinet"), "--out", target, "--before", target));
        Assert.Matches("as in the plan before: ([1-9][0-9]*) of \\1 sheets", again.Out);
    }

    [Fact]
    public async Task Plan_BeforeWithNothingLeftToLay_SaysNothingOfSheets()
    {
        using TestFolder folder = new();
        string target = folder.Of("plan"), file = folder.Write("try.yaml", "setout: 1\nname: Try\nunit: mm\nmaterials:\n  ply: {panel: mdf, label: 3/4}\nparts:\n  - {part: a, of: ply, length: 400, width: 300}\n");
        Assert.Equal(ExitCode.Fine, await new TestTerminal().RunAsync("plan", file, "--out", target));
        Assert.Equal(ExitCode.Fine, await new TestTerminal().RunAsync("mark", file, "cut", "a"));
        var again = new TestTerminal();
        Assert.Equal(ExitCode.Fine, await again.RunAsync("plan", file, "--out", target, "--before", target));
        Assert.DoesNotContain("as in the plan before", again.Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--seconds", "0")]
    [InlineData("--seconds", "-3")]
    [InlineData("--seconds", "soon")]
    [InlineData("--seconds", "1e3")]
    [InlineData("--seconds", null)]
    [InlineData("--before", null)]
    [InlineData("--before", "nowhere")]
    public async Task Plan_OptionThatMakesNoSense_AnswersTwoAndSaysWhatItWants(string option, string? value)
    {
        using TestFolder folder = new();
        var terminal = new TestTerminal();
        string[] arguments = ["plan", Samples.File("jar-cabinet"), "--out", folder.Of("plan"), option, .. value is null ? Array.Empty<string>() : [value]];
        Assert.Equal(ExitCode.Usage, await terminal.RunAsync(arguments));
        Assert.DoesNotContain("default_command", terminal.Error, StringComparison.Ordinal);
        Assert.Contains(value is "nowhere" ? "no plan in 'nowhere'" : $"'{option}' wants", terminal.Error, StringComparison.Ordinal);
        Assert.Empty(folder.Files());
    }

    [Fact]
    public async Task Plan_BeforeSomethingElse_AnswersOneAndWritesNothing()
    {
        using TestFolder folder = new();
        folder.Write("plan.json", "{\n  \"version\": 1,\n  ]");
        var terminal = new TestTerminal();
        Assert.Equal(ExitCode.Findings, await terminal.RunAsync("plan", Samples.File("jar-cabinet"), "--out", folder.Of("plan"), "--before", folder.Path));
        Assert.Matches(@"plan\.json:3:3: stop before\.unreadable: ", terminal.Error);
        Assert.False(Directory.Exists(folder.Of("plan")));
    }

    [Fact]
    public async Task Plan_ForASecond_TellsThatTheLayoutsAreOfThisMachine()
    {
        using TestFolder folder = new();
        var terminal = new TestTerminal();
        Assert.Equal(ExitCode.Fine, await terminal.RunAsync("plan", Samples.File("jar-cabinet"), "--out", folder.Of("plan"), "--seconds", "0.5"));
        Assert.Contains("layouts searched for 0.5 s on this machine", terminal.Out, StringComparison.Ordinal);
    }
}
