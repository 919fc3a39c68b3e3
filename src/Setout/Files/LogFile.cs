using System.Text;
using Setout.Commands;
using Setout.Shop.Texts;

namespace Setout.Files;

/// <summary>Appends facts to a log on disk. One write a fact, flushed before it is acknowledged; two writers at once wait for each other.</summary>
internal static class LogFile
{
    private const int Tries = 200;

    /// <summary>Appends an entry; makes the log when there is none.</summary>
    /// <exception cref="UsageException">The entry holds something that would not read back.</exception>
    public static void Append(string path, LogEntry entry)
    {
        if (LogText.Fault(entry) is { } fault) throw new UsageException(fault.Words, fault.Remedy);
        using FileStream stream = Waiting(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
        TextRead<string> there = TextBytes.Read(stream);
        string old = there.Value ?? throw new UsageException($"'{path}' cannot be read: {there.Findings[0].Words}", there.Findings[0].Remedy);
        string text;
        try
        {
            text = LogText.Append(old, entry);
        }
        catch (ArgumentException unusable)
        {
            throw new UsageException($"'{path}' cannot be appended to. {unusable.Message.Split(" (Parameter")[0]}", "Nothing was written.");
        }
        // What would not read back is never written, whatever the log looked like before.
        if (!LogText.Read(text).IsSound) throw new UsageException($"'{path}' cannot be appended to as it is written.", "Put its entries below 'entries:' as a list, each begun with '- '; nothing was written.");
        long length = stream.Length;
        bool onlyAppends = text.StartsWith(old, StringComparison.Ordinal);
        byte[] bytes = Encoding.UTF8.GetBytes(onlyAppends ? text[old.Length..] : text);
        if (!onlyAppends)
        {
            ReplaceWhole(path, bytes);
            return;
        }
        try
        {
            stream.Seek(0, SeekOrigin.End);
            stream.Write(bytes);
            stream.Flush(flushToDisk: true);
        }
        catch (IOException)
        {
            // A full disk takes half an entry: take it off again, so that the log stays what it was.
            stream.SetLength(length);
            throw;
        }
    }

    private static void ReplaceWhole(string path, byte[] bytes)
    {
        string partial = path + ".new";
        File.WriteAllBytes(partial, bytes);
        File.Move(partial, path, overwrite: true);
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
