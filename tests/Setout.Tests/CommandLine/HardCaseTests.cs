using Setout.Commands;
using Setout.Shop.Texts;

namespace Setout.Tests.CommandLine;

/// <summary>Cases that once went wrong at the command line, each with what should happen.</summary>
public sealed class HardCaseTests : IDisposable
{
    private readonly TestFolder _folder = new TestFolder().WithSamples();

    private string Cabinet => _folder.Of("jar-cabinet.yaml");

    private string LogPath => _folder.Of("jar-cabinet.log.yaml");

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task Record_TwoFractionsApartByAComma_AreTwoSpots()
    {
        var terminal = new TestTerminal();
        Assert.Equal(ExitCode.Fine, await terminal.RunAsync("record", Cabinet, "birch.thickness", "45/64,46/64"));
        ReadingEntry reading = Assert.IsType<ReadingEntry>(Assert.Single(LogText.Read(File.ReadAllText(LogPath)).Value!.Entries));
        Assert.Equal(2, reading.Values.Length);
    }

    [Theory]
    [InlineData("setout-log: 1\n")]
    [InlineData("setout-log: 1\nentries:\n- id: a\n  at: 2026-05-04T09:40:00Z\n  read: birch.thickness\n  values: [45/64 in]\n")]
    [InlineData("setout-log: 1\nentries: []\n")]
    public async Task Record_IntoALogWrittenByHand_LeavesOneThatReads(string log)
    {
        File.WriteAllText(LogPath, log);
        int code = await new TestTerminal().RunAsync("record", Cabinet, "birch.thickness", "23/32");
        TextRead<Log> after = LogText.Read(File.ReadAllText(LogPath));
        Assert.True(after.IsSound);
        // Either it is in, or it was refused and the log is what it was.
        if (code == ExitCode.Fine) Assert.Contains(after.Value!.Entries.OfType<ReadingEntry>(), r => r.Id != "a");
        else Assert.Equal(log, File.ReadAllText(LogPath));
    }

    [Fact]
    public async Task Record_FarFromWhatWasExpected_IsAskedAboutAndTakenByForce()
    {
        var terminal = new TestTerminal();
        Assert.Equal(ExitCode.Usage, await terminal.RunAsync("record", Cabinet, "B.width", "48"));
        Assert.Contains("far from", terminal.Error, StringComparison.Ordinal);
        Assert.False(File.Exists(LogPath));
        Assert.Equal(ExitCode.Fine, await new TestTerminal().RunAsync("record", Cabinet, "B.width", "48", "--force"));
        var check = new TestTerminal();
        await check.RunAsync("check", Cabinet);
        Assert.Contains("reading.far-off", check.Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("birch.thickness", "18", "18 mm?")]
    [InlineData("B.width", "16 27/32", "15 27/32 in?")]
    [InlineData("B.width", "158", "15.8 in?")]
    [InlineData("birch.thickness", "23/64", "23/32 in?")]
    public async Task Record_WhatLooksLikeASlip_IsAskedAboutByTheLikelyValue(string key, string value, string likely)
    {
        var terminal = new TestTerminal();
        Assert.Equal(ExitCode.Usage, await terminal.RunAsync("record", Cabinet, key, value));
        Assert.Contains(likely, terminal.Error, StringComparison.Ordinal);
        Assert.False(File.Exists(LogPath));
    }

    [Fact]
    public async Task Plan_TrimThatEatsTheStock_IsAFindingAtTheMaterial()
    {
        File.WriteAllText(Cabinet, "setout: 1\nname: Try\nunit: in\nmaterials:\n  ply: {panel: hardwood plywood, label: 3/4, sizes: [{size: 10 x 10, trim: 6}]}\nparts:\n  - {part: a, of: ply, length: 4, width: 3}\n");
        File.Delete(_folder.Of("shop.yaml"));
        var terminal = new TestTerminal();
        Assert.Equal(ExitCode.Findings, await terminal.RunAsync("plan", Cabinet, "--out", _folder.Of("plan")));
        Assert.Contains("jar-cabinet.yaml:5:3: stop stock.trim-too-large", terminal.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Plan_OutWithoutAFolderOrIntoALink_IsAUsageErrorAndTouchesNothing()
    {
        Assert.Equal(ExitCode.Usage, await new TestTerminal().RunAsync("plan", Cabinet, "--out", ""));
        Directory.CreateDirectory(_folder.Of("real"));
        Directory.CreateSymbolicLink(_folder.Of("link"), _folder.Of("real"));
        Assert.Equal(ExitCode.Usage, await new TestTerminal().RunAsync("plan", Cabinet, "--out", _folder.Of("link")));
        Assert.Empty(Directory.EnumerateFileSystemEntries(_folder.Of("real")));
        Assert.NotNull(new DirectoryInfo(_folder.Of("link")).LinkTarget);
    }

    [Fact]
    public async Task Plan_OverAFolderWithAnEmptyFolderOfSomebodyElse_IsRefused()
    {
        string target = _folder.Of("plan");
        Assert.Equal(ExitCode.Fine, await new TestTerminal().RunAsync("plan", Cabinet, "--out", target));
        Directory.CreateDirectory(Path.Combine(target, "mine"));
        Assert.Equal(ExitCode.Usage, await new TestTerminal().RunAsync("plan", Cabinet, "--out", target));
        Assert.True(Directory.Exists(Path.Combine(target, "mine")));
    }

    [Fact]
    public async Task Parts_OfAPieceThatCannotBeReadAsJson_AnswersWithItsFindings()
    {
        File.WriteAllText(Cabinet, "setout: 1\nnmae: Try\nunit: in\n");
        var terminal = new TestTerminal();
        Assert.Equal(ExitCode.Findings, await terminal.RunAsync("parts", Cabinet, "--json"));
        using var answer = System.Text.Json.JsonDocument.Parse(terminal.Out);
        Assert.Contains(answer.RootElement.EnumerateArray(), f => f.GetProperty("code").GetString() == "text.unknown-key");
    }

    [Fact]
    public async Task Parts_OfAKeyThatLooksLikeAnothersMark_CarryDifferentMarks()
    {
        File.WriteAllText(Cabinet, File.ReadAllText(Cabinet).Replace("partition: P", "partition: Cs", StringComparison.Ordinal));
        var terminal = new TestTerminal();
        Assert.Equal(ExitCode.Fine, await terminal.RunAsync("parts", Cabinet, "--json"));
        using var answer = System.Text.Json.JsonDocument.Parse(terminal.Out);
        string?[] marks = [.. answer.RootElement.EnumerateArray().Select(p => p.GetProperty("mark").GetString())];
        Assert.Equal(marks.Length, marks.Distinct().Count());
    }

    [Fact]
    public async Task Why_OfAMark_IsThePartThatCarriesIt()
    {
        var terminal = new TestTerminal();
        Assert.Equal(ExitCode.Fine, await terminal.RunAsync("why", Cabinet, "G1e"));
        Assert.Contains("(G1.end.length)", terminal.Out, StringComparison.Ordinal);
    }
}
