using Setout.Commands;
using UglyToad.PdfPig;

namespace Setout.Tests.CommandLine;

/// <summary><c>setout plan --only STAGE</c>: who stands at the saw wants the sheets of the saw.</summary>
public sealed class PlanOfOneStageTests : IDisposable
{
    private readonly TestFolder _folder = new TestFolder().WithSamples();

    public void Dispose() => _folder.Dispose();

    private async Task<(int Code, string Error)> RunAsync(params string[] words)
    {
        var terminal = new TestTerminal();
        return (await terminal.RunAsync(["plan", _folder.Of("jar-cabinet.yaml"), .. words, "--out", _folder.Of("plan")]), terminal.Error);
    }

    [Fact]
    public async Task Only_BreakDown_PrintsItsSheetsWithTheirCautionsInAFileCalledSo()
    {
        Assert.Equal((ExitCode.Fine, ""), await RunAsync());
        string[] whole = _folder.Files();
        using PdfDocument all = PdfDocument.Open(_folder.Of("plan", "bench-sheets.pdf"));
        Assert.Equal((ExitCode.Fine, ""), await RunAsync("--only", "break-down"));
        // Nobody can take them for the whole; every other file is there.
        Assert.Equal(whole.Select(f => f == "plan/bench-sheets.pdf" ? "plan/break-down-sheets.pdf" : f).Order(StringComparer.Ordinal), _folder.Files().Order(StringComparer.Ordinal));
        using PdfDocument sawn = PdfDocument.Open(_folder.Of("plan", "break-down-sheets.pdf"));
        string text = string.Join(' ', sawn.GetPages().Select(p => p.Text));
        Assert.InRange(sawn.NumberOfPages, 3, all.NumberOfPages - 3);
        Assert.Contains("take precedence", text, StringComparison.Ordinal);
        Assert.Contains("\u00B7 Runs", text, StringComparison.Ordinal);
        Assert.DoesNotContain("\u00B7 Workings", text, StringComparison.Ordinal);
        Assert.DoesNotContain("\u00B7 Assembly", text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("cutting", "There is no stage 'cutting' to print the sheets of. Use set-out, buy, break-down, machine, assemble, fit or finish.")]
    [InlineData(null, "'--only' wants a stage. Use set-out, buy, break-down, machine, assemble, fit or finish.")]
    // The jar cabinet says nothing of a finish.
    [InlineData("finish", "Nothing is to be done at the stage 'finish', so it has no sheets. Nothing was written.")]
    public async Task Only_AStageThatHasNoSheets_AnswersTwoAndWritesNothing(string? stage, string words)
    {
        string[] before = _folder.Files();
        (int code, string error) = await RunAsync(stage is null ? ["--only"] : ["--only", stage]);
        Assert.Equal(ExitCode.Usage, code);
        Assert.Contains(words, error, StringComparison.Ordinal);
        Assert.Equal(before, _folder.Files());
    }

    [Fact]
    public async Task Only_WhatFollowsTheSaw_OfSeveralPieces_StandsInThePlanOfEach()
    {
        (int code, string error) = await RunAsync(_folder.Of("luthiers-bench.yaml"), "--only", "assemble");
        Assert.Equal(ExitCode.Usage, code);
        Assert.Contains("Of several pieces together, what follows the saw stands in the plan of each by itself. Nothing was written.", error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(_folder.Of("plan")));
    }
}
