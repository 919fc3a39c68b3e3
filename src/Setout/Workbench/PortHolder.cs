using System.Globalization;

namespace Setout.Workbench;

/// <summary>Says which program holds a port, where the system tells (Linux does).</summary>
internal static class PortHolder
{
    private static readonly string[] s_tables = ["/proc/net/tcp", "/proc/net/tcp6"];

    /// <summary>Such as <c> by 'setout' (process 4711)</c>; empty where it cannot be told.</summary>
    public static string Of(int port)
    {
        if (!OperatingSystem.IsLinux()) return "";
        try
        {
            string wanted = ":" + port.ToString("X4", CultureInfo.InvariantCulture);
            const string listening = "0A";
            HashSet<string> sockets =
            [
                .. s_tables.Where(File.Exists).SelectMany(File.ReadLines).Select(l => l.Split(' ', StringSplitOptions.RemoveEmptyEntries))
                    .Where(f => f.Length > 9 && f[1].EndsWith(wanted, StringComparison.Ordinal) && f[3] == listening).Select(f => $"socket:[{f[9]}]"),
            ];
            foreach (string process in Directory.EnumerateDirectories("/proc").Where(d => Path.GetFileName(d).All(char.IsAsciiDigit)))
                if (Holds(process, sockets)) return $" by '{File.ReadAllText(Path.Combine(process, "comm")).Trim()}' (process {Path.GetFileName(process)})";
            return "";
        }
        catch (Exception silent) when (silent is IOException or UnauthorizedAccessException)
        {
            return "";
        }
    }

    private static bool Holds(string process, HashSet<string> sockets)
    {
        try
        {
            return Directory.EnumerateFileSystemEntries(Path.Combine(process, "fd")).Any(f => new FileInfo(f).LinkTarget is { } target && sockets.Contains(target));
        }
        catch (Exception silent) when (silent is IOException or UnauthorizedAccessException)
        {
            // Someone else's process, or one that has just ended.
            return false;
        }
    }
}
