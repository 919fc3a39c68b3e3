using System.Collections.Immutable;
using Setout.Core.Workings;
using Setout.Shop.Texts;

namespace Setout.Shop.Facts;

/// <summary>
/// The one text of an entry. Stores compare and keep entries as this text, so that whatever an entry comes to say is carried by every store
/// without its knowing.
/// </summary>
public static class FactText
{
    /// <summary>The text of an entry as a log holds it; two entries say the same exactly when their texts are equal.</summary>
    /// <exception cref="FactStoreException">The entry would not read back as itself.</exception>
    public static string Of(LogEntry entry) =>
        LogText.Fault(entry) is { } fault ? throw new FactStoreException(fault) : LogText.Write(entry);

    /// <summary>The entry of a text that <see cref="Of"/> gave.</summary>
    /// <exception cref="FactStoreException">The text is not that of one entry.</exception>
    public static LogEntry Read(string text)
    {
        TextRead<Log> read = LogText.Read(LogText.Head + text);
        if (read.Findings.FirstOrDefault(f => f.Severity == Severity.Stop) is { } fault) throw new FactStoreException(fault with { Place = Place.None });
        return read.Value is { Entries: [var entry] } ? entry : throw FactStoreException.Of("log.not-one-entry", "This is not the text of one entry.", "");
    }

    /// <summary>The entries offered that are not there yet, in their order, each with its text.</summary>
    /// <param name="textOf">The text of the entry that has an id; null when there is none. As it was written, which may have been by an earlier version.</param>
    /// <param name="offered">What is to be appended.</param>
    /// <exception cref="FactStoreException">An entry would not read back, or its id is taken by one that says something else.</exception>
    public static ImmutableArray<(LogEntry Entry, string Text)> New(Func<string, string?> textOf, ImmutableArray<LogEntry> offered)
    {
        var added = ImmutableArray.CreateBuilder<(LogEntry, string)>();
        var texts = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (LogEntry entry in offered.IsDefault ? [] : offered)
        {
            string text = Of(entry);
            if ((texts.GetValueOrDefault(entry.Id) ?? textOf(entry.Id)) is not { } there)
            {
                texts.Add(entry.Id, text);
                added.Add((entry, text));
            }
            else if (there != text && Of(Read(there)) != text)
            {
                throw FactStoreException.Of(FactStoreException.IdTaken, $"There is an entry '{TextContext.Shown(entry.Id)}' already, and it says something else.",
                    "Entries are never edited: void the one that is wrong and append a new one with an id of its own; nothing was appended.");
            }
        }
        return added.ToImmutable();
    }

    /// <summary>The text of a log with entries more. Everything that stands in it stays as it is.</summary>
    /// <param name="log">The text of the log; empty for a new one.</param>
    /// <param name="entries">To be appended; those that are there are passed over.</param>
    /// <param name="name">What the log is called where a message speaks of it.</param>
    /// <returns>The text, the same when nothing was new, and how many entries were.</returns>
    /// <exception cref="FactStoreException">An entry cannot be appended, or nothing can be appended to this log.</exception>
    public static (string Text, int Added) Append(string log, ImmutableArray<LogEntry> entries, string name = "This log")
    {
        // An empty file is a log that is still to be begun.
        Log there = string.IsNullOrWhiteSpace(log) ? Log.Empty : LogText.Read(log) is { IsSound: true } read ? read.Value! : throw Unusable(name, "It cannot be read.");
        var byId = there.Entries.ToDictionary(e => e.Id, StringComparer.Ordinal);
        ImmutableArray<(LogEntry Entry, string Text)> added = New(id => byId.TryGetValue(id, out LogEntry? entry) ? Of(entry) : null, entries);
        if (added.IsEmpty) return (log, 0);
        string text;
        try
        {
            text = LogText.Append(log, added[0].Entry);
        }
        catch (ArgumentException unusable)
        {
            throw Unusable(name, unusable.Message.Split(" (Parameter")[0]);
        }
        // The first settles how far entries are indented in this log; reading the whole log again for each would take its time.
        string[] lines = text.Split('\n');
        string first = lines[^(added[0].Text.Count(c => c == '\n') + 1)];
        string indent = new(' ', first.Length - first.TrimStart(' ').Length);
        text += string.Concat(added.Skip(1).SelectMany(a => a.Text.Split('\n', StringSplitOptions.RemoveEmptyEntries)).Select(l => indent + l[2..] + "\n"));
        // What would not read back is never written, whatever the log looked like before.
        return LogText.Read(text) is { IsSound: true } after && after.Value!.Entries.Skip(there.Entries.Length).Select(Of).SequenceEqual(added.Select(a => a.Text), StringComparer.Ordinal)
            ? (text, added.Length)
            : throw Unusable(name, "Put its entries below 'entries:' as a list, each begun with '- '.");
    }

    private static FactStoreException Unusable(string name, string why) => FactStoreException.Of("log.not-appendable", $"{name} cannot be appended to. {why}", "Nothing was written.");
}
