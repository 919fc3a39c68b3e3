using System.Diagnostics;
using Setout.Shop.Documents;

namespace Setout.Store.Tests;

/// <summary>A program that edits and is killed in the middle of it.</summary>
public sealed class KilledEditsTests : IDisposable
{
    private const int Edits = 300;

    private readonly string _folder = Directory.CreateTempSubdirectory("setout-store-").FullName;

    private string Database => Path.Combine(_folder, "setout.db");

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Theory]
    [InlineData(1)]
    [InlineData(37)]
    [InlineData(150)]
    [InlineData(299)]
    public async Task Edits_OfAProgramThatIsKilled_AreThereAsFarAsTheyWereAcknowledged(int heard)
    {
        using Process program = OtherProgram.Start("edit", Database, "", Edits);
        Assert.Equal("ready", await program.StandardOutput.ReadLineAsync());
        await program.StandardInput.WriteLineAsync();
        await program.StandardInput.FlushAsync();
        int acknowledged = 0;
        while (acknowledged < heard && await program.StandardOutput.ReadLineAsync() is not null) acknowledged++;
        // SIGKILL where there are signals.
        program.Kill();
        acknowledged += (await program.StandardOutput.ReadToEndAsync()).Count(c => c == '\n');
        await program.WaitForExitAsync();
        Assert.InRange(acknowledged, heard, Edits);

        using var store = ShopDatabase.Open(Database);
        Assert.Null(store.With(Health.Fault));
        Document chest = store.Find("chest")!;
        // One more may be in whose answer was lost on the way.
        int made = chest.Revision - 1;
        Assert.InRange(made, acknowledged, acknowledged + 1);
        Assert.Equal(OtherProgram.TextAfter(made), chest.Text);
        HistoryLine[] history = [.. store.History(chest.Id)];
        Assert.Equal(Enumerable.Range(0, made + 1).Select(OtherProgram.TextAfter), history.Select(h => store.TextOf(chest.Id, h.State.Number)));
        // Whoever lost the answer sends it again, and goes on.
        var again = Change.Of($"edit {made + 1}", "2026-05-04T09:40:00Z", new EditText(chest.Id, chest.Revision, $"edit {made + 1}", OtherProgram.TextAfter(made + 1)));
        Assert.Equal(chest.Revision + 1, Assert.Single(Assert.IsType<ChangeTaken>(store.Make(again)).Documents).Revision);
    }
}
