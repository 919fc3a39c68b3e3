using System.Collections.Immutable;
using Microsoft.Data.Sqlite;

namespace Setout.Store;

/// <summary>Short ways to ask a connection.</summary>
internal static class Commands
{
    /// <summary>A command with its values.</summary>
    /// <param name="connection">Where it runs.</param>
    /// <param name="sql">Our own text, with names for the values; never made of what somebody typed.</param>
    /// <param name="values">By name.</param>
    public static SqliteCommand Command(this SqliteConnection connection, string sql, params ReadOnlySpan<(string Name, object Value)> values)
    {
        SqliteCommand command = connection.CreateCommand();
#pragma warning disable CA2100 // all texts are constants of this project
        command.CommandText = sql;
#pragma warning restore CA2100
        foreach ((string name, object value) in values) command.Parameters.AddWithValue(name, value);
        return command;
    }

    /// <summary>Runs statements.</summary>
    public static void Run(this SqliteConnection connection, string sql, params ReadOnlySpan<(string Name, object Value)> values)
    {
        using SqliteCommand command = connection.Command(sql, values);
        command.ExecuteNonQuery();
    }

    /// <summary>Runs a statement that answers a whole number.</summary>
    public static long Number(this SqliteConnection connection, string sql, params ReadOnlySpan<(string Name, object Value)> values)
    {
        using SqliteCommand command = connection.Command(sql, values);
        return (long)command.ExecuteScalar()!;
    }

    /// <summary>All rows.</summary>
    public static ImmutableArray<T> Rows<T>(this SqliteCommand command, Func<SqliteDataReader, T> read)
    {
        var rows = ImmutableArray.CreateBuilder<T>();
        using SqliteDataReader reader = command.ExecuteReader();
        while (reader.Read()) rows.Add(read(reader));
        return rows.ToImmutable();
    }
}
