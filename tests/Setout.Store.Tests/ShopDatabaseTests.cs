using Microsoft.Data.Sqlite;
using Setout.Shop.Facts;
using Setout.Shop.Texts;
using Setout.Store.Tests.Contract;

namespace Setout.Store.Tests;

/// <summary>What the database promises beyond the contract.</summary>
public sealed class ShopDatabaseTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("setout-facts-").FullName;

    private string Database => Path.Combine(_folder, "facts.db");

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void FactsOf_SeveralPieces_ArePartedAndInOrder()
    {
        using var database = ShopDatabase.Open(Database);
        string[] names = ["chest", "Chest", "jar cabinet", "Größe 板", "'; DROP TABLE facts; --"];
        for (int i = 0; i < names.Length; i++) database.FactsOf(names[i]).Append(FactSamples.ReadAt("same", i), FactSamples.ReadAt($"e{i}", i));
        Assert.Equal(names.Order(StringComparer.Ordinal), database.Pieces());
        for (int i = 0; i < names.Length; i++) Assert.Equal(["same", $"e{i}"], database.FactsOf(names[i]).Read().Entries.Select(e => e.Id));
    }

    [Fact]
    public void Append_Refused_MakesNoPiece()
    {
        using var database = ShopDatabase.Open(Database);
        Assert.Throws<FactStoreException>(() => database.FactsOf("chest").Append(FactSamples.ReadAt("x", 1), new VoidEntry("", "", "")));
        Assert.Empty(database.FactsOf("chest").Read().Entries);
        Assert.Empty(database.Pieces());
    }

    [Theory]
    [InlineData("")]
    [InlineData(" \t")]
    public void FactsOf_BlankName_IsRefused(string name)
    {
        using var database = ShopDatabase.Open(Database);
        Assert.Throws<ArgumentException>(() => database.FactsOf(name));
    }

    [Theory]
    [InlineData("UPDATE facts SET text = 'x'")]
    [InlineData("UPDATE facts SET place = place + 10")]
    [InlineData("UPDATE OR REPLACE facts SET id = 'a1'")]
    [InlineData("DELETE FROM facts")]
    [InlineData("DELETE FROM facts WHERE id = 'a2'")]
    [InlineData("INSERT OR REPLACE INTO facts (piece, id, text) VALUES (1, 'a1', 'x')")]
    [InlineData("INSERT OR REPLACE INTO facts (place, piece, id, text) VALUES (1, 1, 'new', 'x')")]
    [InlineData("REPLACE INTO facts (piece, id, text) VALUES (1, 'a1', 'x')")]
    [InlineData("INSERT INTO facts (piece, id, text) VALUES (1, 'a1', 'x') ON CONFLICT DO UPDATE SET text = 'x'")]
    [InlineData("INSERT INTO facts (piece, id, text) VALUES (2, 'z', 'x')")]
    [InlineData("INSERT INTO facts (piece, id, text) VALUES ('one', 'z', 'x')")]
    [InlineData("UPDATE pieces SET name = 'other'")]
    [InlineData("UPDATE pieces SET number = 7")]
    [InlineData("DELETE FROM pieces")]
    [InlineData("INSERT OR REPLACE INTO pieces (name) VALUES ('chest')")]
    [InlineData("REPLACE INTO pieces (number, name) VALUES (1, 'other')")]
    public void Tables_AskedToChangeOrDropFacts_Refuse(string sql)
    {
        using var database = ShopDatabase.Open(Database);
        database.FactsOf("chest").Append(FactSamples.EachKind);
        using (SqliteConnection connection = Raw())
        {
            connection.Run("PRAGMA foreign_keys = ON");
            // 19: a constraint or a trigger.
            Assert.Equal(19, Assert.Throws<SqliteException>(() => connection.Run(sql)).SqliteErrorCode);
        }
        Assert.Equal(FactSamples.EachKind.Select(FactSamples.Words), FactSamples.Words(database.FactsOf("chest").Read()));
        Assert.Equal(["chest"], database.Pieces());
    }

    [Fact]
    public void Connections_OfTheDatabase_FlushBeforeTheyAcknowledge()
    {
        using var database = ShopDatabase.Open(Database);
        // 2 is FULL: see https://www.sqlite.org/pragma.html#pragma_synchronous
        Assert.Equal(2, database.With(c => c.Number("PRAGMA synchronous")));
        Assert.Equal(1, database.With(c => c.Number("PRAGMA foreign_keys")));
        Assert.Equal((long)ShopDatabase.Patience.TotalMilliseconds, database.With(c => c.Number("PRAGMA busy_timeout")));
        using SqliteConnection connection = Raw();
        Assert.Equal(ShopDatabase.Version, connection.Number("PRAGMA user_version"));
        using SqliteCommand mode = connection.Command("PRAGMA journal_mode");
        Assert.Equal("wal", mode.ExecuteScalar());
        Assert.Equal(2, connection.Number("SELECT count(*) FROM pragma_table_list WHERE name IN ('facts', 'pieces') AND strict = 1"));
    }

    [Fact]
    public void Transaction_Dropped_LeavesACleanStore()
    {
        using var database = ShopDatabase.Open(Database);
        IFactStore chest = database.FactsOf("chest");
        chest.Append(FactSamples.ReadAt("x", 1));
        using (SqliteConnection connection = Raw())
        {
            using SqliteTransaction turn = connection.BeginTransaction(deferred: false);
            connection.Run("INSERT INTO facts (piece, id, text) VALUES (1, 'half', 'x')");
            Assert.Equal(["x"], chest.Read().Entries.Select(e => e.Id));
        }
        Assert.Equal(["x"], chest.Read().Entries.Select(e => e.Id));
        Assert.Equal(1, chest.Append(FactSamples.ReadAt("y", 2)));
    }

    [Fact]
    public void Append_WhileAnotherHoldsOn_GivesUpAndSaysSo()
    {
        using var database = ShopDatabase.Open(Database, Schema.Steps, TimeSpan.FromMilliseconds(20));
        using (SqliteConnection connection = Raw())
        using (connection.BeginTransaction(deferred: false))
            Refused("store.busy", () => database.FactsOf("chest").Append(FactSamples.ReadAt("x", 1)));
        Assert.Equal(1, database.FactsOf("chest").Append(FactSamples.ReadAt("x", 1)));
    }

    [Fact]
    public void Append_SameEntryKeptInOtherWords_ChangesNothing()
    {
        using var database = ShopDatabase.Open(Database);
        database.FactsOf("chest").Append(FactSamples.ReadAt("x", 1));
        var entry = new VoidEntry("y", "2026-05-04T09:40:00Z", "x");
        // As another version might have written it.
        using (SqliteConnection connection = Raw())
            connection.Run("INSERT INTO facts (piece, id, text) VALUES (1, 'y', $text)", ("$text", "  - {id: y, at: 2026-05-04T09:40:00Z, void: \"x\"}\n"));
        Assert.Equal(0, database.FactsOf("chest").Append(entry));
        Assert.Equal(entry, database.FactsOf("chest").Read().Entries[1]);
    }

    [Theory]
    [InlineData("  - {id: other, at: 2026-05-04T09:40:00Z, void: x}\n")]
    [InlineData("  - {id: y, at: 2026-05-04T09:40:00Z, voi")]
    [InlineData("  - {id: y, at: 2026-05-04T09:40:00Z, void: x}\n  - {id: z, at: 2026-05-04T09:40:00Z, void: x}\n")]
    [InlineData("nothing")]
    public void Read_ARowThatIsNoEntry_SaysThatTheDatabaseIsDamaged(string text)
    {
        using var database = ShopDatabase.Open(Database);
        database.FactsOf("chest").Append(FactSamples.ReadAt("x", 1));
        using (SqliteConnection connection = Raw()) connection.Run("INSERT INTO facts (piece, id, text) VALUES (1, 'y', $text)", ("$text", text));
        Refused("store.damaged", () => database.FactsOf("chest").Read());
        Refused("store.damaged", () => database.FactsOf("chest").Append(new VoidEntry("y", "2026-05-04T09:40:00Z", "x")));
    }

    private void Refused(string code, Action action)
    {
        FactStoreException refused = Assert.Throws<FactStoreException>(action);
        Assert.Equal(code, refused.Fault.Code);
        Assert.Contains(Database, refused.Fault.Words, StringComparison.Ordinal);
        Assert.NotEmpty(refused.Fault.Remedy);
    }

    private SqliteConnection Raw()
    {
        var connection = new SqliteConnection(new SqliteConnectionStringBuilder { DataSource = Database, Pooling = false }.ToString());
        connection.Open();
        return connection;
    }
}
