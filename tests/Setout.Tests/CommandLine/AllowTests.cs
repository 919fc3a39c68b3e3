using Setout.Commands;
using Setout.Files;
using Setout.Shop.Texts;

namespace Setout.Tests.CommandLine;

/// <summary><c>setout allow</c>.</summary>
public sealed class AllowTests : IDisposable
{
    private readonly TestFolder _folder = new TestFolder().WithSamples();

    private string Bench => _folder.Of("luthiers-bench.yaml");

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task Allow_OfAFinding_IsToldInEveryReportWithItsReason()
    {
        await new TestTerminal().RunAsync("record", Bench, "L.width", "19", "9/16");
        await new TestTerminal().RunAsync("mark", Bench, "cut", "L1");
        await new TestTerminal().RunAsync("record", Bench, "L.width", "19", "15/32");
        var before = new TestTerminal();
        Assert.Equal(ExitCode.Findings, await before.RunAsync("check", Bench, "--fail-on", "warn"));
        string[] warned = [.. before.Out.Split('\n').Where(l => l.Contains(": warn ", StringComparison.Ordinal))];
        Assert.NotEmpty(warned);
        var fit = new TestTerminal();
        await fit.RunAsync("fit", Bench);
        Assert.Contains("upset: drawer L1, slide play", fit.Out, StringComparison.Ordinal);

        Assert.Equal(ExitCode.Fine, await new TestTerminal().RunAsync("allow", Bench, "upset.gap", "L1.play", "--because", "this one stays shut"));
        var let = new TestTerminal();
        await let.RunAsync("fit", Bench);
        Assert.DoesNotContain("upset: drawer L1, slide play", let.Out, StringComparison.Ordinal);
        Assert.Contains("Because: this one stays shut", let.Out, StringComparison.Ordinal);

        string code = warned[0].Split(": warn ")[1].Split(':')[0];
        Assert.Equal(ExitCode.Fine, await new TestTerminal().RunAsync("allow", Bench, code, "L1", "--because", "seen and meant"));
        var after = new TestTerminal();
        await after.RunAsync("check", Bench);
        Assert.Contains("let stand: seen and meant", after.Out, StringComparison.Ordinal);
        Assert.Equal(warned.Length - 1, after.Out.Split('\n').Count(l => l.Contains(": warn ", StringComparison.Ordinal)));
        Assert.Equal(2, new LogFile(_folder.Of("luthiers-bench.log.yaml")).Read().Entries.OfType<AllowEntry>().Count());
    }

    [Theory]
    [InlineData("no.such", "L1", "--because", "it may")]
    [InlineData("material.not-read", "no-such", "--because", "it may")]
    [InlineData("material.not-read", "boxes", "--because", "")]
    public async Task Allow_ThatCannotBe_WritesNothing(params string[] words)
    {
        string[] before = _folder.Files();
        var terminal = new TestTerminal();
        Assert.Equal(ExitCode.Usage, await terminal.RunAsync(["allow", Bench, .. words]));
        Assert.Equal(before, _folder.Files());
    }
}
