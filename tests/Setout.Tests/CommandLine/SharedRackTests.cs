using System.Diagnostics;
using System.Text.RegularExpressions;
using Setout.Commands;
using Setout.Shop.Texts;

namespace Setout.Tests.CommandLine;

/// <summary>Two pieces of one shop at the command line: what one takes and leaves, the other sees. The whole way is gone by the program itself.</summary>
public sealed class SharedRackTests : IDisposable
{
    private readonly TestFolder _folder = new();

    public SharedRackTests()
    {
        _folder.Write("shop.yaml", "setout-shop: 1\nunit: mm\nkerf: {sheets: 3}\ntrim: {sheets: 5}\nkeep: {sheets: 200 x 100}\nstock:\n  - {panel: birch plywood, label: 18 mm, size: 1000 x 500, have: 1, name: leaf}\n  - {panel: birch plywood, label: 18 mm, size: 2400 x 1200, price: 30}\n");
        _folder.Write("tray.yaml", "setout: 1\nname: Tray\nunit: mm\nmaterials:\n  ply: {panel: birch plywood, label: 18 mm}\nparts:\n  - {part: a, of: ply, length: 600, width: 485}\n");
        _folder.Write("box.yaml", "setout: 1\nname: Box\nunit: mm\nmaterials:\n  board: {panel: birch plywood, label: 18 mm}\n  ply: {panel: hardwood plywood, label: 3/4}\nparts:\n  - {part: a, of: board, count: 2, length: 300, width: 200}\n");
    }

    public void Dispose() => _folder.Dispose();

    private string Tray => _folder.Of("tray.yaml");

    private string Box => _folder.Of("box.yaml");

    private static async Task<(int Code, string Out, string Error)> RunAsync(params string[] words)
    {
        var terminal = new TestTerminal();
        int code = await terminal.RunAsync(words);
        return (code, terminal.Out, terminal.Error);
    }

    // As it is installed, in a process of its own.
    private static async Task<(int Code, string Out, string Error)> StartAsync(params string[] words)
    {
        string program = Path.Combine(AppContext.BaseDirectory, OperatingSystem.IsWindows() ? "setout.exe" : "setout");
        var start = new ProcessStartInfo(program, words) { UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true };
        using Process process = Process.Start(start)!;
        Task<string> said = process.StandardOutput.ReadToEndAsync(), error = process.StandardError.ReadToEndAsync();
        await process.WaitForExitAsync();
        return (process.ExitCode, await said, await error);
    }

    private async Task CutAllAsync(string piece, string plan, Func<string[], Task<(int Code, string Out, string Error)>>? run = null)
    {
        run ??= RunAsync;
        bool isLast = false;
        for (int number = 1; !isLast; number++)
        {
            (int code, string said, string error) = await run(["mark", piece, "cut", "--run", $"{number}", "--plan", _folder.Of(plan)]);
            Assert.True(code == ExitCode.Fine, error);
            isLast = said.Contains("last run", StringComparison.Ordinal);
        }
    }

    private Log LogOf(string name) => LogText.Read(File.ReadAllText(_folder.Of(name + ".log.yaml"))).Value!;

    private string Buying(string plan) => File.ReadAllText(_folder.Of(plan, "buying.csv"));

    [Fact]
    public async Task TwoPiecesOfOneRack_SeeWhatTheOtherTookAndLeft()
    {
        Assert.Equal(ExitCode.Fine, (await StartAsync("plan", Tray, "--out", _folder.Of("tray"))).Code);
        Assert.Equal(ExitCode.Fine, (await StartAsync("plan", Box, "--out", _folder.Of("box"))).Code);
        // Both count on the one sheet.
        Assert.Contains("leaf", Buying("tray"), StringComparison.Ordinal);
        Assert.Contains("leaf", Buying("box"), StringComparison.Ordinal);
        await CutAllAsync(Tray, "tray", StartAsync);
        MarkEntry taken = LogOf("tray").Entries.OfType<MarkEntry>().First(e => e.Took.Any(t => t.Name == "leaf"));
        (int code, string said, string error) = await StartAsync("mark", Box, "cut", "--run", "1", "--plan", _folder.Of("box"));
        Assert.Equal((ExitCode.Findings, ""), (code, said));
        Assert.Contains("stop run.wood-gone: Run 1 cuts leaf of board, which is gone by the log: the mark of " + EntryTime.Say(taken.At) + " for Tray took it.", error, StringComparison.Ordinal);
        Assert.False(File.Exists(_folder.Of("box.log.yaml")));

        // Planned anew, the box is cut from what the tray left.
        LeftWood kept = Assert.Single(LogOf("tray").Entries.OfType<MarkEntry>().SelectMany(e => e.Left), l => l.Use == Setout.Cutting.Runs.BlankUse.Keep);
        (code, said, error) = await StartAsync("plan", Box, "--out", _folder.Of("box"));
        Assert.True(code == ExitCode.Fine, error);
        Assert.Contains(kept.Name, Buying("box"), StringComparison.Ordinal);
        Assert.Contains("kept from Tray", Buying("box"), StringComparison.Ordinal);
        await CutAllAsync(Box, "box", StartAsync);
        MarkEntry went = LogOf("box").Entries.OfType<MarkEntry>().First(e => e.Took.Any(t => t.Name == kept.Name));
        Assert.Equal("board", went.Took.First(t => t.Name == kept.Name).Of);

        // Nothing of it is there for the tray, and the run that left it is held.
        (code, _, error) = await StartAsync("mark", Tray, "gone", kept.Name);
        Assert.Equal(ExitCode.Usage, code);
        Assert.Contains($"The blank '{kept.Name}' is gone: 'run {went.Run} of a plan cut", error, StringComparison.Ordinal);
        Assert.Contains($"' ({went.Id}) of Box took it.", error, StringComparison.Ordinal);
        MarkEntry left = LogOf("tray").Entries.OfType<MarkEntry>().First(e => e.Left.Contains(kept) || e.Left.Any(l => l.Name == kept.Name));
        (code, _, error) = await StartAsync("void", Tray, left.Id);
        Assert.Equal(ExitCode.Usage, code);
        Assert.Contains($"' ({went.Id}) of Box goes on with wood that 'run {left.Run} of a plan cut", error, StringComparison.Ordinal);
        Assert.Contains($"' ({left.Id}) left; nothing was written.", error, StringComparison.Ordinal);
        string first = Regex.Match(error, "Void that one first: setout void (.*)\\.").Groups[1].Value;
        Assert.Equal($"{Box} {went.Id}", first);
        foreach (MarkEntry entry in LogOf("box").Entries.OfType<MarkEntry>().Reverse()) Assert.Equal(ExitCode.Fine, (await StartAsync("void", Box, entry.Id)).Code);
        string again = LogOf("box").Entries.OfType<VoidEntry>().First(v => v.Entry == went.Id).Id;

        // The box says that the blank is spoiled; then its run does not count again.
        (code, said, error) = await StartAsync("mark", Box, "gone", kept.Name);
        Assert.True(code == ExitCode.Fine, error);
        (code, _, error) = await StartAsync("void", Box, again);
        Assert.Equal(ExitCode.Usage, code);
        Assert.Contains($"has taken '{kept.Name}' since", error, StringComparison.Ordinal);
        (code, _, error) = await StartAsync("plan", Box, "--out", _folder.Of("box"));
        Assert.True(code == ExitCode.Fine, error);
        Assert.DoesNotContain(kept.Name, Buying("box"), StringComparison.Ordinal);
        string gone = LogOf("box").Entries.OfType<MarkEntry>().Last().Id;
        Assert.Equal(ExitCode.Fine, (await StartAsync("void", Box, gone)).Code);
        Assert.Equal(ExitCode.Fine, (await StartAsync("void", Tray, left.Id)).Code);
    }

    [Fact]
    public async Task Plan_BesideAPieceThatTookFromTheRack_SaysWhatIsMissedAndWhatIsNotKnown()
    {
        File.Delete(Box);
        _folder.Write("box.yaml", "setout: 1\nname: Box\nunit: mm\nmaterials:\n  board: {panel: birch plywood, label: 18 mm}\nparts:\n  - {part: a, of: board, length: 900, width: 400}\n");
        await RunAsync("plan", Tray, "--out", _folder.Of("tray"));
        await CutAllAsync(Tray, "tray");
        (int code, string said, string error) = await RunAsync("check", Box);
        Assert.Equal((ExitCode.Fine, ""), (code, error));
        Assert.Contains("note rack.taken: board of the rack: leaf (1000 x 500 mm): taken for Tray. Wood has to be bought here that this could have saved.", said, StringComparison.Ordinal);
        string hash = Regex.Match(said, "inputs ([0-9a-f]{8})").Groups[1].Value;

        File.AppendAllText(_folder.Of("tray.log.yaml"), "  - {id: x, took: [\n");
        (code, said, error) = await RunAsync("check", Box);
        Assert.Equal((ExitCode.Fine, ""), (code, error));
        Assert.Contains("warn rack.piece-unread: 'tray.log.yaml' beside this piece cannot be read: line ", said, StringComparison.Ordinal);
        Assert.Contains("What tray took from the rack, and what it left, is not known.", said, StringComparison.Ordinal);
        Assert.DoesNotContain(hash, said, StringComparison.Ordinal);
        Assert.Equal(ExitCode.Fine, (await RunAsync("plan", Box, "--out", _folder.Of("box"))).Code);
        (code, _, error) = await RunAsync("mark", Box, "cut", "--run", "1", "--plan", _folder.Of("box"));
        Assert.Equal(ExitCode.Fine, code);
        Assert.Contains("warn rack.piece-unread", error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Gone_ABlankThatIsStillCutOnForAnother_IsSaidThere()
    {
        await RunAsync("plan", Tray, "--out", _folder.Of("tray"));
        Assert.Equal(ExitCode.Fine, (await RunAsync("mark", Tray, "cut", "--run", "1", "--plan", _folder.Of("tray"))).Code);
        LeftWood work = LogOf("tray").Entries.OfType<MarkEntry>().SelectMany(e => e.Left).First(l => l.Use == Setout.Cutting.Runs.BlankUse.Work);
        (int code, _, string error) = await RunAsync("mark", Box, "gone", work.Name);
        Assert.Equal(ExitCode.Usage, code);
        Assert.Contains($"is still to be cut on for Tray. Say it there: setout mark {Tray} gone {work.Name}.", error, StringComparison.Ordinal);
        (code, _, error) = await RunAsync("mark", Box, "cut", "a#1", "--blank", work.Name);
        Assert.Equal(ExitCode.Usage, code);
        Assert.False(File.Exists(_folder.Of("box.log.yaml")));
        Assert.Equal(ExitCode.Fine, (await RunAsync("mark", Tray, "gone", work.Name)).Code);
    }

    [Fact]
    public async Task Mark_PartOfABlankThatAnotherKeeps_TakesItUnderItsOwnNameOfTheWood()
    {
        await RunAsync("plan", Tray, "--out", _folder.Of("tray"));
        await CutAllAsync(Tray, "tray");
        string kept = LogOf("tray").Entries.OfType<MarkEntry>().SelectMany(e => e.Left).First(l => l.Use == Setout.Cutting.Runs.BlankUse.Keep).Name;
        Assert.Equal(ExitCode.Usage, (await RunAsync("mark", Box, "cut", "a#1", "--blank", kept + "x")).Code);
        (int code, _, string error) = await RunAsync("mark", Box, "cut", "a#1", "--blank", kept);
        Assert.True(code == ExitCode.Fine, error);
        Assert.Equal(new TakenWood("board", WoodSource.Blank, kept, null), Assert.Single(Assert.IsType<MarkEntry>(Assert.Single(LogOf("box").Entries)).Took));
        Assert.Equal(ExitCode.Usage, (await RunAsync("mark", Tray, "gone", kept)).Code);
    }
}
