using System.Collections.Immutable;
using System.Text;
using Setout.Commands;
using Setout.Core.Workings;
using Setout.Shop.Facts;
using Setout.Shop.Texts;

namespace Setout.Files;

/// <summary>The facts of a piece in a log on disk. One write a call, flushed before it is acknowledged; two writers at once wait for each other.
/// That a new log has a name in its folder is left to the file system.</summary>
/// <param name="path">The log; need not exist yet.</param>
internal sealed class LogFile(string path) : IFactStore
{
    // Some seconds: a writer holds a long log for as long as it takes to read it, and there may be several before us.
    private const int Tries = 500;

    /// <summary>Appends an entry; makes the log when there is none.</summary>
    /// <exception cref="UsageException">The entry holds something that would not read back, or the log cannot be appended to.</exception>
    public static void Append(string path, LogEntry entry)
    {
        try
        {
            new LogFile(path).Append([entry]);
        }
        catch (FactStoreException refused)
        {
            throw new UsageException(refused.Fault.Words, refused.Fault.Remedy);
        }
    }

    /// <inheritdoc/>
    public Log Read()
    {
        try
        {
            using FileStream stream = OpenRead(path);
            string text = TextOf(stream);
            TextRead<Log> read = LogText.Read(text);
            // Whoever makes a log opens it before the first entry is in.
            return string.IsNullOrWhiteSpace(text) ? Log.Empty : read.IsSound ? read.Value! : throw Unreadable(read.Findings);
        }
        catch (FileNotFoundException)
        {
            return Log.Empty;
        }
    }

    /// <inheritdoc/>
    public int Append(params ImmutableArray<LogEntry> entries)
    {
        if (entries.IsDefaultOrEmpty) return 0;
        // What cannot be written shall not leave an empty log behind.
        foreach (LogEntry entry in entries) FactText.Of(entry);
        using FileStream stream = Waiting(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
        string old = TextOf(stream);
        (string text, int added) = FactText.Append(old, entries, $"'{path}'");
        if (added == 0) return 0;
        // Only blanks can be in the way of appending: they are written over.
        bool onlyAppends = text.StartsWith(old, StringComparison.Ordinal);
        long length = stream.Length, from = onlyAppends ? length : 0;
        byte[] bytes = Encoding.UTF8.GetBytes(onlyAppends ? text[old.Length..] : text);
        try
        {
            stream.Seek(from, SeekOrigin.Begin);
            stream.Write(bytes);
            stream.SetLength(from + bytes.Length);
            stream.Flush(flushToDisk: true);
        }
        catch (IOException)
        {
            // A full disk takes half an entry: take it off again, so that the log stays what it was.
            stream.SetLength(from);
            throw;
        }
        return added;
    }

    private string TextOf(FileStream stream)
    {
        TextRead<string> there = TextBytes.Read(stream);
        return there.Value ?? throw Unreadable(there.Findings);
    }

    private FactStoreException Unreadable(ImmutableArray<Finding> findings)
    {
        Finding fault = findings.First(f => f.Severity == Severity.Stop);
        string place = fault.Place == Place.None ? "" : $"line {fault.Place.Line}: ";
        return new(fault with { Words = $"'{path}' cannot be read: {place}{fault.Words}" });
    }

    /// <summary>Opens a log, or any text that another program may just be writing, for reading.</summary>
    public static FileStream OpenRead(string path) => Waiting(path, FileMode.Open, FileAccess.Read, FileShare.Read);

    private static FileStream Waiting(string path, FileMode mode, FileAccess access, FileShare share)
    {
        for (int i = 1; ; i++)
        {
            try
            {
                return new(path, mode, access, share);
            }
            catch (IOException held) when (i < Tries && held is not (FileNotFoundException or DirectoryNotFoundException))
            {
                // Another writer holds it for the length of one write: give it the processor and try again.
                SpinWait.SpinUntil(() => false, 10);
            }
        }
    }
}
