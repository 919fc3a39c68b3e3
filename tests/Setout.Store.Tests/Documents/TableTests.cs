using System.Collections.Immutable;
using Microsoft.Data.Sqlite;
using Setout.Shop.Documents;
using Setout.Shop.Facts;
using Setout.Store.Tests.Contract;

namespace Setout.Store.Tests.Documents;

/// <summary>What the tables keep by themselves, and what is told when they do not hold what they should.</summary>
public sealed class TableTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("setout-store-").FullName;

    private string Database => Path.Combine(_folder, "setout.db");

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private string Fill()
    {
        using var store = ShopDatabase.Open(Database);
        Document chest = store.New("chest", string.Concat(Enumerable.Range(0, 400).Select(i => $"# line {i}\n")));
        string text = chest.Text;
        // In one change, which is flushed once.
        ImmutableArray<DocumentChange> edits = [.. Enumerable.Range(0, 100).Select(i => new EditText(chest.Id, i + 1, $"edit {i}", text = text.Replace($"# line {i}\n", $"# line {i}, touched\n", StringComparison.Ordinal)))];
        chest = Assert.IsType<ChangeTaken>(store.Make(new("edits", Changes.At, "edits") { Documents = edits })).Documents[^1];
        store.Do(new UndoStep(chest.Id, chest.Revision));
        store.Do(new SavePoint(chest.Id, 3, "early"));
        store.New("box");
        store.FactsOf("chest").Append(FactSamples.EachKind);
        return store.Words();
    }

    [Theory]
    [InlineData("UPDATE states SET text = 'x'")]
    [InlineData("UPDATE OR REPLACE states SET number = 1 WHERE number = 2")]
    [InlineData("DELETE FROM states")]
    [InlineData("REPLACE INTO states (number, document, step, at, depth, head_kept, tail_kept, text, sum) SELECT 1, document, step, at, depth, head_kept, tail_kept, text, sum FROM states WHERE number = 1")]
    [InlineData("INSERT INTO states (document, step, at, depth, head_kept, tail_kept, text, sum) SELECT 77, step, at, depth, head_kept, tail_kept, text, sum FROM states WHERE number = 1")]
    [InlineData("UPDATE changes SET words = 'x'")]
    [InlineData("DELETE FROM changes")]
    [InlineData("REPLACE INTO changes (id, at, words, asked) SELECT id, at, 'x', asked FROM changes")]
    [InlineData("UPDATE moves SET state = 1")]
    [InlineData("DELETE FROM moves")]
    [InlineData("REPLACE INTO moves SELECT document, revision, change, kind, from_state, 1, name, put_away, head_since, shelf_since FROM moves")]
    [InlineData("UPDATE answers SET revision = 1")]
    [InlineData("DELETE FROM answers")]
    [InlineData("REPLACE INTO answers SELECT change, nr, document, 1, facts FROM answers WHERE facts IS NULL")]
    [InlineData("UPDATE save_points SET name = 'x'")]
    [InlineData("DELETE FROM save_points")]
    [InlineData("REPLACE INTO save_points (place, state, name) VALUES (1, 1, 'x')")]
    [InlineData("DELETE FROM documents")]
    [InlineData("UPDATE documents SET id = 'x'")]
    [InlineData("UPDATE documents SET kind = 'shop'")]
    [InlineData("UPDATE documents SET piece = NULL WHERE name = 'chest'")]
    [InlineData("UPDATE OR REPLACE documents SET name = 'chest' WHERE name = 'box'")]
    [InlineData("UPDATE OR REPLACE documents SET piece = 1 WHERE name = 'box'")]
    [InlineData("REPLACE INTO documents (id, kind, name, fold) VALUES ('x', 'piece', 'chest', 'x')")]
    [InlineData("INSERT INTO documents (id, kind, name, fold) VALUES ('x', 'poem', 'x', 'x')")]
    public void Tables_AskedToChangeOrDropAnything_Refuse(string sql)
    {
        string before = Fill();
        using (SqliteConnection connection = Plain.Open(Database, SqliteOpenMode.ReadWrite, TimeSpan.FromSeconds(1)))
        {
            // 19: a constraint or a trigger.
            Assert.Equal(19, Assert.Throws<SqliteException>(() => connection.Run(sql)).SqliteErrorCode);
        }
        using var store = ShopDatabase.Open(Database);
        Assert.Equal(before, store.Words());
    }

    /// <summary>Each page but the first in turn is written over: what is read is right, or the damage is told.</summary>
    [Fact]
    public void Read_AnyPageWrittenOver_IsRightOrRefused()
    {
        string right = Fill();
        byte[] sound = File.ReadAllBytes(Database);
        int refused = 0;
        for (int page = 1; page < sound.Length / 4096; page++)
        {
            byte[] bytes = [.. sound];
            bytes.AsSpan(page * 4096, 4096).Fill(0xA5);
            File.WriteAllBytes(Database, bytes);
            try
            {
                using var store = ShopDatabase.Open(Database);
                Assert.Equal(right, store.Words());
            }
            catch (FactStoreException told)
            {
                Assert.Equal("store.damaged", told.Fault.Code);
                refused++;
            }
        }
        Assert.InRange(refused, 5, sound.Length);
    }

    [Theory]
    [InlineData("UPDATE states SET text = replace(text, 'line', 'lime') WHERE number = 1")]
    [InlineData("UPDATE states SET text = text || 'x' WHERE number = 5")]
    [InlineData("UPDATE states SET head_kept = head_kept + 1 WHERE number = 90")]
    [InlineData("UPDATE states SET head_kept = 100000 WHERE number = 90")]
    [InlineData("UPDATE states SET parent = 1 WHERE number = 90")]
    [InlineData("UPDATE states SET sum = replace(sum, substr(sum, 1, 1), 'x') WHERE number = 20")]
    public void Read_ATextThatIsNotWhatWasKept_IsRefused(string sql)
    {
        Fill();
        using (SqliteConnection connection = Plain.Open(Database, SqliteOpenMode.ReadWrite, TimeSpan.FromSeconds(1))) connection.Run("DROP TRIGGER states_not_edited; " + sql);
        using var store = ShopDatabase.Open(Database);
        Assert.Equal("store.damaged", Assert.Throws<FactStoreException>(() => store.Words()).Fault.Code);
    }

    /// <summary>Counted, since it decides how long reading takes and how much room a history needs.</summary>
    [Fact]
    public void States_OfManySmallEdits_AreShortAndNeverFarFromAWholeText()
    {
        Fill();
        using var store = ShopDatabase.Open(Database);
        Assert.Equal(States.DeepestSplice, store.With(c => c.Number("SELECT max(depth) FROM states")));
        Assert.Equal(1 + (100 / (States.DeepestSplice + 1)), store.With(c => c.Number("SELECT count(*) FROM states WHERE depth = 0 AND document = 1")));
        Assert.Equal(9, store.With(c => c.Number("SELECT max(length(text)) FROM states WHERE depth > 0")));
        Assert.Equal(7, store.With(c => c.Number("SELECT count(*) FROM pragma_table_list WHERE name IN ('documents', 'states', 'changes', 'moves', 'answers', 'save_points', 'facts') AND strict = 1")));
    }
}
