using System.Collections.Immutable;
using System.Diagnostics;
using System.Runtime.CompilerServices;
using Microsoft.Data.Sqlite;
using Setout.Shop.Facts;
using Setout.Shop.Texts;
using Setout.Store.Tests.Contract;

namespace Setout.Store.Tests;

/// <summary>
/// This test program, started once more as a real second program: told by a variable of its environment what to do, it does that instead of
/// running tests, says so on its output, and ends.
/// </summary>
internal static partial class OtherProgram
{
    private const string Variable = "SETOUT_OTHER_PROGRAM";

    /// <summary>Entries in a call.</summary>
    public const int InACall = 5;

    /// <summary>Starts it.</summary>
    /// <param name="task"><c>append</c> (calls until all are in), <c>stop-in-the-middle</c> (stands in an open transaction until its input ends), or one of those
    /// that <see cref="DoWithDocuments"/> does.</param>
    /// <param name="path">The database, or the folder.</param>
    /// <param name="writer">Begins the ids.</param>
    /// <param name="calls">How many calls.</param>
    /// <param name="by">A program that starts it, with what it is told before; none by default.</param>
    public static Process Start(string task, string path, string writer, int calls, params ReadOnlySpan<string> by)
    {
        var start = new ProcessStartInfo(by.IsEmpty ? Environment.ProcessPath! : by[0]) { UseShellExecute = false, RedirectStandardInput = true, RedirectStandardOutput = true, RedirectStandardError = true };
        if (!by.IsEmpty) foreach (string word in (string[])[.. by[1..], Environment.ProcessPath!]) start.ArgumentList.Add(word);
        start.Environment[Variable] = $"{task}\n{path}\n{writer}\n{calls}";
        return Process.Start(start)!;
    }

    /// <summary>The ids that a writer appends, in order.</summary>
    public static IEnumerable<string> IdsOf(string writer, int calls) => Enumerable.Range(0, calls).SelectMany(c => CallOf(writer, c)).Select(e => e.Id);

    private static ImmutableArray<LogEntry> CallOf(string writer, int call) =>
        [.. Enumerable.Range(0, InACall).Select(i => FactSamples.ReadAt($"{writer}{call:0000}-{i}", call % 1440, i + 1))];

    // Runs before the program's own start, so that no test is looked for.
    [ModuleInitializer]
    internal static void Begin()
    {
        if (Environment.GetEnvironmentVariable(Variable) is not { } told) return;
        int code = 1;
        try
        {
            string[] words = told.Split('\n');
            Do(words[0], words[1], words[2], int.Parse(words[3]));
            code = 0;
        }
        catch (Exception broken) when (broken is FactStoreException or SqliteException or IOException)
        {
            Console.Error.WriteLine(broken);
        }
        Environment.Exit(code);
    }

    private static void Do(string task, string path, string writer, int calls)
    {
        if (DoWithDocuments(task, path, writer, calls)) return;
        using var database = ShopDatabase.Open(path);
        IFactStore facts = database.FactsOf("chest");
        Console.WriteLine("ready");
        Console.In.ReadLine();
        if (task == "append")
        {
            for (int call = 0; call < calls; call++)
            {
                facts.Append(CallOf(writer, call));
                Console.WriteLine(call);
            }
            return;
        }
        database.With(connection =>
        {
            using SqliteTransaction turn = connection.BeginTransaction(deferred: false);
            for (int call = 0; call < calls; call++)
                foreach (LogEntry entry in CallOf(writer, call))
                    connection.Run("INSERT INTO facts (piece, id, text) SELECT number, $id, $text FROM pieces", ("$id", entry.Id), ("$text", FactText.Of(entry)));
            Console.WriteLine("in the middle");
            Console.In.ReadLine();
            turn.Commit();
            return 0;
        });
    }
}
