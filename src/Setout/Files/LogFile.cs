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
        var text = new StringBuilder();
        if (stream.Length == 0) text.Append(LogText.Head);
        else
        {
            stream.Seek(-1, SeekOrigin.End);
            if (stream.ReadByte() != '\n') text.Append('\n');
        }
        text.Append(LogText.Write(entry));
        stream.Seek(0, SeekOrigin.End);
        stream.Write(Encoding.UTF8.GetBytes(text.ToString()));
        stream.Flush(flushToDisk: true);
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
