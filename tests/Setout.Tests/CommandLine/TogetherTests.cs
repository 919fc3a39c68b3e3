using Setout.Commands;
using Setout.Shop.Texts;

namespace Setout.Tests.CommandLine;

/// <summary>Several pieces planned and cut together from the command line.</summary>
public sealed class TogetherTests : IDisposable
{
    private readonly TestFolder _folder = new TestFolder().WithSamples();

    private string Jars => _folder.Of("jar-cabinet.yaml");

    private string Bench => _folder.Of("luthiers-bench.yaml");

    private string Plan => _folder.Of("plan");

    public void Dispose() => _folder.Dispose();

    private static async Task<(int Code, string Out, string Error)> RunAsync(params string[] words)
    {
        var terminal = new TestTerminal();
        int code = await terminal.RunAsync(words);
        return (code, terminal.Out, terminal.Error);
    }

    private Log Read(string name) => File.Exists(_folder.Of($"{name}.log.yaml")) ? LogText.Read(File.ReadAllText(_folder.Of($"{name}.log.yaml"))).Value! : Log.Empty;

    private static MarkEntry[] Standing(Log log) => [.. log.Standing.OfType<MarkEntry>()];

    [Fact]
    public async Task Plan_TwoPieces_WritesWhatTheSawNeedsAndNothingOfThePiecesThemselves()
    {
        (int code, string said, string error) = await RunAsync("plan", Jars, Bench, "--out", Plan);
        Assert.True(code == ExitCode.Fine, error);
        Assert.Contains("Jar cabinet and Luthiers' bench: 98 parts cut together", said, StringComparison.Ordinal);
        string[] files = [.. _folder.Files().Where(f => f.StartsWith("plan/", StringComparison.Ordinal))];
        Assert.Contains("plan/bench-sheets.pdf", files);
        Assert.Contains("plan/buying.csv", files);
        Assert.Contains(files, f => f.StartsWith("plan/breakdown/", StringComparison.Ordinal));
        Assert.DoesNotContain(files, f => f.StartsWith("plan/drawings/", StringComparison.Ordinal));
        Assert.Contains("JC-A1", File.ReadAllText(_folder.Of("plan", "parts.csv")), StringComparison.Ordinal);
        // The same again is the same plan.
        byte[] first = File.ReadAllBytes(_folder.Of("plan", "plan.json"));
        await RunAsync("plan", Jars, Bench, "--out", Plan);
        Assert.Equal(first, File.ReadAllBytes(_folder.Of("plan", "plan.json")));
    }

    [Fact]
    public async Task Mark_RunsOfBoth_AnyOfTheFilesWritesIntoEachLogAndVoidingTakesItOutOfEach()
    {
        await RunAsync("plan", Jars, Bench, "--out", Plan);
        string id = "";
        for (int run = 1; Standing(Read("luthiers-bench")).Length == 0 || Standing(Read("jar-cabinet")).Length == 0 || !Standing(Read("jar-cabinet")).Any(e => Standing(Read("luthiers-bench")).Any(b => b.Id == e.Id)); run++)
        {
            (int code, string said, string error) = await RunAsync("mark", run % 2 == 0 ? Jars : Bench, "cut", "--run", $"{run}", "--plan", Plan);
            Assert.True(code == ExitCode.Fine, error);
            Assert.Contains("Jar cabinet:", said, StringComparison.Ordinal);
            id = System.Text.RegularExpressions.Regex.Match(said, "entry (e[0-9a-f]+)").Groups[1].Value;
        }
        MarkEntry jar = Standing(Read("jar-cabinet")).Single(e => e.Id == id), bench = Standing(Read("luthiers-bench")).Single(e => e.Id == id);
        Assert.Equal((jar.Run, jar.Plan), (bench.Run, bench.Plan));
        (int again, _, string refused) = await RunAsync("mark", Jars, "cut", "--run", $"{jar.Run}", "--plan", Plan);
        Assert.Equal(ExitCode.Findings, again);
        Assert.Contains("run.marked", refused, StringComparison.Ordinal);
        (int voided, string told, string wrong) = await RunAsync("void", Bench, id);
        Assert.True(voided == ExitCode.Fine, wrong);
        Assert.Contains("jar-cabinet.log.yaml", told, StringComparison.Ordinal);
        Assert.DoesNotContain(Standing(Read("jar-cabinet")), e => e.Id == id);
        Assert.DoesNotContain(Standing(Read("luthiers-bench")), e => e.Id == id);
        Assert.Equal(ExitCode.Fine, (await RunAsync("mark", Jars, "cut", "--run", $"{jar.Run}", "--plan", Plan)).Code);
    }

    [Fact]
    public async Task Mark_WhereOneLogCannotBeWritten_LeavesNoHalfOfTheRun()
    {
        await RunAsync("plan", Jars, Bench, "--out", Plan);
        // A folder in its place: nothing can be written there, whoever runs the test.
        Directory.CreateDirectory(_folder.Of("luthiers-bench.log.yaml"));
        (int code, _, string error) = await RunAsync("mark", Jars, "cut", "--run", "1", "--plan", Plan);
        Assert.Equal(ExitCode.Usage, code);
        Assert.Contains("luthiers-bench.log.yaml", error, StringComparison.Ordinal);
        Assert.Empty(Read("jar-cabinet").Standing);
    }

    [Fact]
    public async Task Mark_WithAPieceThatIsNotOfThePlan_SaysWhichAre()
    {
        await RunAsync("plan", Jars, Bench, "--out", Plan);
        (int code, _, string error) = await RunAsync("mark", _folder.Of("herb-rack.yaml"), "cut", "--run", "1", "--plan", Plan);
        Assert.Equal(ExitCode.Usage, code);
        Assert.Contains("jar-cabinet.yaml and luthiers-bench.yaml", error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Plan_WhatCannotBeTogether_IsRefusedAndWritesNothing()
    {
        string away = Path.Combine(Directory.CreateDirectory(_folder.Of("away")).FullName, "bench.yaml");
        File.Copy(Bench, away);
        Assert.Equal(ExitCode.Usage, (await RunAsync("plan", Jars, away, "--out", Plan)).Code);
        Assert.Equal(ExitCode.Findings, (await RunAsync("plan", Jars, _folder.Of("plan-chest.yaml"), "--out", Plan)).Code);
        Assert.Equal(ExitCode.Findings, (await RunAsync("plan", Jars, Jars, "--out", Plan)).Code);
        string broken = _folder.Write("broken.yaml", "setout: 1\nname: Broken\nunit: in\nparts: [{part: A, of: nothing, length: 3}]\n");
        (int code, _, string error) = await RunAsync("plan", Jars, broken, "--out", Plan);
        Assert.Equal(ExitCode.Findings, code);
        Assert.Contains("broken.yaml:", error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(Plan));
    }
}
