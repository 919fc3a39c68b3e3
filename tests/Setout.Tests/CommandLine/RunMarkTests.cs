using System.Text.RegularExpressions;
using Setout.Commands;
using Setout.Shop.Texts;

namespace Setout.Tests.CommandLine;

/// <summary>Runs of a printed plan are marked, voided and gone on with.</summary>
public sealed class RunMarkTests : IDisposable
{
    private readonly TestFolder _folder = new TestFolder().WithSamples();

    private string Rack => _folder.Of("herb-rack.yaml");

    private string LogPath => _folder.Of("herb-rack.log.yaml");

    private string Plan => _folder.Of("plan");

    public void Dispose() => _folder.Dispose();

    private static async Task<(int Code, string Out, string Error)> RunAsync(params string[] words)
    {
        var terminal = new TestTerminal();
        int code = await terminal.RunAsync(words);
        return (code, terminal.Out, terminal.Error);
    }

    private Task<(int Code, string Out, string Error)> MarkAsync(int run) => RunAsync("mark", Rack, "cut", "--run", $"{run}", "--plan", Plan);

    private Log Read() => LogText.Read(File.ReadAllText(LogPath)).Value!;

    [Fact]
    public async Task Mark_RunsInTurnToTheEnd_CutsEveryPartAndSaysWhatIsNext()
    {
        Assert.Equal(ExitCode.Fine, (await RunAsync("plan", Rack, "--out", Plan)).Code);
        int runs = 0;
        for (string said = ""; !said.Contains("last run", StringComparison.Ordinal);)
        {
            (int code, said, string error) = await MarkAsync(++runs);
            Assert.True(code == ExitCode.Fine, error);
            Assert.Matches($"run {runs} of \\d+ is cut; entry e", said);
            if (!said.Contains("last run", StringComparison.Ordinal)) Assert.Contains($"next: run {runs + 1} of ", said, StringComparison.Ordinal);
        }
        Assert.True(runs > 2);
        Assert.Equal(Enumerable.Range(1, runs), Read().Entries.Cast<MarkEntry>().Select(e => e.Run!.Value));
        // Nothing is left to lay out or to buy but hardware.
        Assert.Equal(ExitCode.Fine, (await RunAsync("plan", Rack, "--out", Plan)).Code);
        Assert.DoesNotContain("Sheet goods", File.ReadAllText(_folder.Of("plan", "buying.csv")), StringComparison.Ordinal);
        Assert.DoesNotContain("Lumber", File.ReadAllText(_folder.Of("plan", "buying.csv")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Mark_ARunThatCannotBe_SaysWhyAndWritesNothing()
    {
        await RunAsync("plan", Rack, "--out", Plan);
        async Task RefusedAsync(int run, string code)
        {
            string before = File.Exists(LogPath) ? File.ReadAllText(LogPath) : "";
            (int exit, string said, string error) = await MarkAsync(run);
            Assert.Equal((ExitCode.Findings, ""), (exit, said));
            Assert.Contains($"stop {code}: ", error, StringComparison.Ordinal);
            Assert.Equal(before, File.Exists(LogPath) ? File.ReadAllText(LogPath) : "");
        }

        await RefusedAsync(999, "run.unknown");
        Assert.Equal(ExitCode.Fine, (await MarkAsync(1)).Code);
        await RefusedAsync(1, "run.marked");
        // A run needs those that made its wood: try all, and at least one is refused for that.
        string[] codes = [.. (await Task.WhenAll(Enumerable.Range(3, 3).Select(async i => (await RunAsync("mark", Rack, "cut", "--run", $"{i}", "--plan", Plan, "--dry-run")).Error))).Where(e => e.Length > 0)];
        Assert.Contains(codes, e => e.Contains("run.earlier", StringComparison.Ordinal));
        string text = File.ReadAllText(Rack);
        File.WriteAllText(Rack, text + "\n# another word\n");
        await RefusedAsync(2, "run.other-texts");
        File.WriteAllText(Rack, text);
        Assert.Equal(ExitCode.Fine, (await MarkAsync(2)).Code);
    }

    [Fact]
    public async Task Void_OfARunThatAnotherGoesOnWith_WantsThatOneFirst()
    {
        await RunAsync("plan", Rack, "--out", Plan);
        var ids = new List<string>();
        for (int i = 1; i <= 6; i++) ids.Add(Regex.Match((await MarkAsync(i)).Out, "entry (e[0-9a-f]{8})").Groups[1].Value);
        Log log = Read();
        MarkEntry built = log.Entries.OfType<MarkEntry>().First(e => log.Entries.OfType<MarkEntry>().Any(l => l.Took.Any(t => e.Left.Any(b => b.Name == t.Name))));
        (int code, _, string error) = await RunAsync("void", Rack, built.Id);
        Assert.Equal(ExitCode.Usage, code);
        Assert.Matches($"'run \\d of a plan cut(: [^']+)?' \\(e[0-9a-f]{{8}}\\) goes on with wood that 'run {built.Run} of a plan cut(: [^']+)?' \\({built.Id}\\) left; nothing was written.", error);
        Assert.Contains("Void that one first: setout void", error, StringComparison.Ordinal);
        // From the last to the first all can be taken back, and then the first run can be marked again.
        foreach (string id in Enumerable.Reverse(ids)) Assert.Equal(ExitCode.Fine, (await RunAsync("void", Rack, id)).Code);
        Assert.Empty(Read().Standing);
        Assert.Equal(ExitCode.Fine, (await MarkAsync(1)).Code);
    }

    [Fact]
    public async Task Gone_ABlankOfTheLog_IsNoLongerInHand()
    {
        await RunAsync("plan", Rack, "--out", Plan);
        await MarkAsync(1);
        string name = Read().Entries.OfType<MarkEntry>().SelectMany(e => e.Left).First().Name;
        Assert.Equal(ExitCode.Usage, (await RunAsync("mark", Rack, "gone", name + "x")).Code);
        Assert.Equal(ExitCode.Fine, (await RunAsync("mark", Rack, "gone", name)).Code);
        Assert.Equal(ExitCode.Usage, (await RunAsync("mark", Rack, "gone", name)).Code);
        await RunAsync("plan", Rack, "--out", Plan);
        Assert.DoesNotContain(name, File.ReadAllText(_folder.Of("plan", "buying.csv")), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("cut")]
    [InlineData("cut", "--run", "1")]
    [InlineData("cut", "--run", "one", "--plan", "plan")]
    [InlineData("cut", "--run", "1", "--plan", "no-such-folder")]
    [InlineData("cut", "L1.side", "--run", "1", "--plan", "plan")]
    [InlineData("cut", "L1.side", "--plan", "plan")]
    [InlineData("cut", "L1.side", "--blank", "none")]
    [InlineData("fitted", "--run", "1", "--plan", "plan")]
    [InlineData("assembled", "L1", "--blank", "none")]
    [InlineData("gone")]
    [InlineData("gone", "--run", "1", "--plan", "plan")]
    public async Task Mark_WithWhatDoesNotGoTogether_AnswersTwoAndWritesNothing(params string[] words)
    {
        Assert.Equal(ExitCode.Usage, (await RunAsync(["mark", _folder.Of("luthiers-bench.yaml"), .. words])).Code);
        Assert.False(File.Exists(_folder.Of("luthiers-bench.log.yaml")));
    }

    [Fact]
    public async Task Mark_APlanThatIsNone_IsToldWithItsPlace()
    {
        Directory.CreateDirectory(Plan);
        File.WriteAllText(_folder.Of("plan", "plan.json"), "{\"version\": 1}");
        (int code, _, string error) = await MarkAsync(1);
        Assert.Equal(ExitCode.Findings, code);
        Assert.Contains("stop plan.unreadable:", error, StringComparison.Ordinal);
        File.WriteAllText(_folder.Of("plan", "plan.json"), "{");
        Assert.Contains("plan.json:1:", (await MarkAsync(1)).Error, StringComparison.Ordinal);
    }
}
