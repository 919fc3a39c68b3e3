using System.Collections.Immutable;
using Setout.Commands;
using Setout.Shop.Outputs;

namespace Setout.Files;

/// <summary>
/// Writes a folder whole or not at all: into a folder of its own beside the target, then renamed. An existing folder is replaced only if it holds
/// nothing but our own earlier output, which its list of files tells.
/// </summary>
internal static class OutputFolder
{
    /// <summary>The list of files that we wrote, one path a line.</summary>
    public const string Manifest = "setout-files.txt";

    /// <summary>Whether the target may be written, before any work is done for it; gives its full path.</summary>
    /// <exception cref="UsageException">The target holds something that is not ours, or is a file.</exception>
    public static string Check(string target)
    {
        string full = Path.TrimEndingDirectorySeparator(Path.GetFullPath(target));
        if (File.Exists(full)) throw new UsageException($"'{target}' is a file.", "Name a folder.");
        if (new DirectoryInfo(full).LinkTarget is { } linked) throw new UsageException($"'{target}' is a link to '{linked}'; it would be replaced.", "Name the folder itself.");
        string here = Path.TrimEndingDirectorySeparator(Directory.GetCurrentDirectory());
        if (here == full || here.StartsWith(full + Path.DirectorySeparatorChar, StringComparison.Ordinal))
            throw new UsageException($"'{target}' is the folder you stand in, or one above it.", "Name a folder inside it, such as plan.");
        if (Directory.Exists(full) && Foreign(full) is { } foreign)
            throw new UsageException($"'{target}' holds '{foreign}', which is not of our making; nothing was written.", "Name a new folder, or empty this one yourself.");
        if (Path.GetDirectoryName(full) is null) throw new UsageException($"'{target}' cannot be replaced.", "Name a folder inside another.");
        return full;
    }

    /// <summary>Writes the files, then removes what writers of the same target left beside it when they were killed.</summary>
    /// <returns>The names of folders of our naming beside the target that stay, because nobody can say whether a living process writes them.</returns>
    /// <exception cref="UsageException">The target holds something that is not ours, or is a file.</exception>
    public static ImmutableArray<string> Write(string target, ImmutableArray<PlanFile> files)
    {
        string full = Check(target), parent = Path.GetDirectoryName(full)!;
        Directory.CreateDirectory(parent);
        string name = Path.GetFileName(full);
        using (var passing = PassingFolders.Take(parent, name)) Write(full, passing, files);
        return PassingFolders.Sweep(parent, name);
    }

    private static void Write(string full, PassingFolders passing, ImmutableArray<PlanFile> files)
    {
        foreach (PlanFile file in files)
        {
            string path = Path.Combine(passing.New, file.Path);
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            File.WriteAllBytes(path, file.Content);
        }
        File.WriteAllLines(Path.Combine(passing.New, Manifest), files.Select(f => f.Path).Append(Manifest).Order(StringComparer.Ordinal));
        bool replaces = Directory.Exists(full);
        if (replaces) Directory.Move(full, passing.Old);
        try
        {
            Directory.Move(passing.New, full);
        }
        catch (IOException) when (replaces)
        {
            Directory.Move(passing.Old, full);
            throw;
        }
        if (replaces) Directory.Delete(passing.Old, recursive: true);
    }

    /// <summary>The first thing in a folder that we did not write, or null.</summary>
    private static string? Foreign(string folder)
    {
        string manifest = Path.Combine(folder, Manifest);
        HashSet<string> ours = File.Exists(manifest) ? new(File.ReadLines(manifest).Take(100_000), StringComparer.Ordinal) : [];
        // An empty folder is somebody's too: ours are those that our files lie in.
        return Directory.EnumerateFileSystemEntries(folder, "*", SearchOption.AllDirectories)
            .Select(f => (Path: Path.GetRelativePath(folder, f).Replace('\\', '/'), IsFolder: Directory.Exists(f)))
            .OrderBy(f => f.Path, StringComparer.Ordinal)
            .FirstOrDefault(f => f.IsFolder ? !ours.Any(o => o.StartsWith(f.Path + "/", StringComparison.Ordinal)) : !ours.Contains(f.Path)).Path;
    }
}
