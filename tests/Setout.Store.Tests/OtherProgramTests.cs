using System.Diagnostics;
using Setout.Shop.Facts;
using Setout.Store.Tests.Contract;

namespace Setout.Store.Tests;

/// <summary>Two real programs at one database.</summary>
public sealed class OtherProgramTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("setout-facts-").FullName;

    private string Database => Path.Combine(_folder, "facts.db");

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task Append_ByTwoPrograms_LosesNothingAndKeepsCallsWhole()
    {
        const int calls = 60;
        // Neither finds a database: they make it at the same time.
        using Process a = OtherProgram.Start("append", Database, "a", calls), b = OtherProgram.Start("append", Database, "b", calls);
        Assert.Equal("ready", await a.StandardOutput.ReadLineAsync());
        Assert.Equal("ready", await b.StandardOutput.ReadLineAsync());
        await Go(a);
        await Go(b);
        foreach (Process program in (Process[])[a, b])
        {
            string said = await program.StandardOutput.ReadToEndAsync(), wrong = await program.StandardError.ReadToEndAsync();
            await program.WaitForExitAsync();
            Assert.True(program.ExitCode == 0, wrong);
            Assert.Equal(calls, said.Split('\n', StringSplitOptions.RemoveEmptyEntries).Length);
        }
        string[] ids = Ids();
        Assert.Equal(2 * calls * OtherProgram.InACall, ids.Length);
        foreach (string writer in (string[])["a", "b"]) Assert.Equal(OtherProgram.IdsOf(writer, calls), ids.Where(id => id.StartsWith(writer, StringComparison.Ordinal)));
        Assert.All(ids.Chunk(OtherProgram.InACall), call => Assert.Single(call.Select(id => id[..^1]).Distinct()));
    }

    [Fact]
    public async Task Append_ByAProgramThatIsEnded_KeepsAllItAcknowledgedInWholeCalls()
    {
        const int calls = 100_000;
        using Process program = OtherProgram.Start("append", Database, "a", calls);
        Assert.Equal("ready", await program.StandardOutput.ReadLineAsync());
        await Go(program);
        int acknowledged = 0;
        while (acknowledged < 25 && await program.StandardOutput.ReadLineAsync() is not null) acknowledged++;
        program.Kill();
        acknowledged += (await program.StandardOutput.ReadToEndAsync()).Count(c => c == '\n');
        await program.WaitForExitAsync();
        string[] ids = Ids();
        Assert.InRange(acknowledged, 25, calls - 1);
        // One more may be in whose answer was lost on the way.
        Assert.InRange(ids.Length, acknowledged * OtherProgram.InACall, (acknowledged + 1) * OtherProgram.InACall);
        Assert.Equal(0, ids.Length % OtherProgram.InACall);
        Assert.Equal(OtherProgram.IdsOf("a", calls).Take(ids.Length), ids);
        // And the store goes on.
        using var database = ShopDatabase.Open(Database);
        Assert.Equal(1, database.FactsOf("chest").Append(FactSamples.ReadAt("later", 1)));
    }

    [Fact]
    public async Task Transaction_OfAProgramThatIsEnded_LeavesWhatWasThere()
    {
        using var database = ShopDatabase.Open(Database);
        IFactStore chest = database.FactsOf("chest");
        chest.Append(FactSamples.EachKind);
        string[] before = Ids();
        using Process program = OtherProgram.Start("stop-in-the-middle", Database, "a", 400);
        Assert.Equal("ready", await program.StandardOutput.ReadLineAsync());
        await Go(program);
        Assert.Equal("in the middle", await program.StandardOutput.ReadLineAsync());
        // Readers wait for nobody, and see nothing of it.
        Assert.Equal(before, Ids());
        program.Kill();
        await program.WaitForExitAsync();
        Assert.Equal(before, Ids());
        Assert.Equal(1, chest.Append(FactSamples.ReadAt("later", 1)));
        Assert.Equal([.. before, "later"], Ids());
    }

    private string[] Ids()
    {
        using var database = ShopDatabase.Open(Database);
        return [.. database.FactsOf("chest").Read().Entries.Select(e => e.Id)];
    }

    private static async Task Go(Process program)
    {
        await program.StandardInput.WriteLineAsync();
        await program.StandardInput.FlushAsync();
    }
}
