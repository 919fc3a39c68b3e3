using System.Runtime.CompilerServices;
using Xunit;

namespace Setout.Testing;

/// <summary>Compares a text with a committed file. On a difference the text is written beside it as <c>.received</c>, for a person to look at and take over.</summary>
public static class Snapshots
{
    /// <summary>Fails unless <paramref name="received"/> equals the committed file <c>NAME.verified.EXTENSION</c> beside the test's source.</summary>
    /// <param name="received">What was made now.</param>
    /// <param name="name">Name of the case; part of the file name.</param>
    /// <param name="extension">Such as <c>svg</c>.</param>
    /// <param name="source">Filled in by the compiler.</param>
    public static void Match(string received, string name, string extension, [CallerFilePath] string source = "")
    {
        string stem = Path.Combine(FolderOf(source), name);
        string verified = $"{stem}.verified.{extension}", rejected = $"{stem}.received.{extension}";
        if (File.Exists(verified) && File.ReadAllText(verified) == received)
        {
            File.Delete(rejected);
            return;
        }
        File.WriteAllText(rejected, received);
        Assert.Fail(File.Exists(verified)
            ? $"{name} differs from {Path.GetFileName(verified)}. Look at {Path.GetFileName(rejected)} beside it; if it is right, rename it."
            : $"There is no {Path.GetFileName(verified)} yet. Look at {Path.GetFileName(rejected)}; if it is right, rename it.");
    }

    /// <summary>Fails unless <paramref name="received"/> equals a committed file of the project, such as a picture of a page.</summary>
    /// <param name="received">What was made now.</param>
    /// <param name="path">Project-relative; what differs is written beside it with <c>.received</c> before its extension.</param>
    public static void MatchFile(string received, string path)
    {
        string verified = Repository.PathOf(path), rejected = Path.ChangeExtension(verified, ".received" + Path.GetExtension(verified));
        if (File.Exists(verified) && File.ReadAllText(verified) == received)
        {
            File.Delete(rejected);
            return;
        }
        File.WriteAllText(rejected, received);
        string differs = File.Exists(verified) ? Differences(File.ReadAllText(verified).Split('\n'), received.Split('\n')) : "";
        Assert.Fail($"{path} is not what is made now. Look at {Path.GetFileName(rejected)} beside it; if it is right, rename it.{differs}");
    }

    /// <summary>The lines that changed, or those between what is alike at the head and at the foot: as they were, then as they are.</summary>
    private static string Differences(string[] was, string[] now)
    {
        const int Most = 30, Longest = 300;
        string Line(string line, char sign) => $"\n{sign} {(line.Length > Longest ? line[..Longest] + "..." : line)}";
        // Where no line came or went, only those that changed.
        if (was.Length == now.Length) return string.Concat(was.Zip(now).Where(l => l.First != l.Second).Take(Most).Select(l => Line(l.First, '-') + Line(l.Second, '+')));
        int head = was.Zip(now).TakeWhile(l => l.First == l.Second).Count();
        int foot = was.Skip(head).Reverse().Zip(now.Skip(head).Reverse()).TakeWhile(l => l.First == l.Second).Count();
        IEnumerable<string> Said(string[] lines, char sign) => lines[head..^foot].Take(Most).Select(l => Line(l, sign));
        return $"\nFrom line {head + 1}:{string.Concat(Said(was, '-'))}{string.Concat(Said(now, '+'))}";
    }

    /// <summary>The source folder; a build for release may have mapped the root of the tree to <c>/_/</c>.</summary>
    private static string FolderOf(string source)
    {
        string folder = Path.GetDirectoryName(source)!;
        if (Directory.Exists(folder)) return folder;
        DirectoryInfo? root = new(AppContext.BaseDirectory);
        while (root is not null && !File.Exists(Path.Combine(root.FullName, "Setout.slnx"))) root = root.Parent;
        if (root is null) throw new DirectoryNotFoundException("The tree with Setout.slnx was not found above the tests.");
        return Path.Combine(root.FullName, folder.Replace('\\', '/').TrimStart('/', '_'));
    }
}
