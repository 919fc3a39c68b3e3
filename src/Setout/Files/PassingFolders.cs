using System.Collections.Immutable;
using System.Text.RegularExpressions;

namespace Setout.Files;

/// <summary>
/// The folders that stand beside a target for as long as it is written: <c>.NAME.ID.new</c> for what comes, <c>.NAME.ID.old</c> for what goes, and
/// <c>.NAME.ID.lock</c>, a file that whoever writes holds open. It is there before them and goes after them, and the system lets go of it when
/// its process ends, however that ends: one that can be opened has no living owner.
/// </summary>
internal sealed partial class PassingFolders : IDisposable
{
    // A writer beside us that looks for what may be removed can hold a lock in the moment in which it is made.
    private const int Tries = 5;

    private readonly string _stem;
    private readonly FileStream _lock;

    private PassingFolders(string stem, FileStream held) => (_stem, _lock) = (stem, held);

    /// <summary>Where what comes is written.</summary>
    public string New => _stem + ".new";

    /// <summary>Where what goes is put.</summary>
    public string Old => _stem + ".old";

    /// <summary>Takes names that nobody has.</summary>
    /// <param name="parent">The folder above the target; there.</param>
    /// <param name="name">The target's own name.</param>
    public static PassingFolders Take(string parent, string name)
    {
        for (int i = 1; ; i++)
        {
            string stem = Path.Combine(parent, $".{name}.{Guid.NewGuid():n}");
            try
            {
                return new(stem, new(stem + ".lock", FileMode.CreateNew, FileAccess.ReadWrite, FileShare.None));
            }
            catch (IOException) when (i < Tries)
            {
                // Another name, then.
            }
        }
    }

    /// <summary>Removes what comes if it is still there, and lets go.</summary>
    public void Dispose()
    {
        if (Directory.Exists(New)) Directory.Delete(New, recursive: true);
        // What goes is the only copy of a plan where it could not be put back: it stays, and so does what says that it is ours.
        bool isDone = !Directory.Exists(Old);
        _lock.Dispose();
        if (isDone) Remove(_lock.Name);
    }

    /// <summary>Removes what writers of the same target left behind when they were killed. Nothing that a living one holds, or that has no lock, is touched.</summary>
    /// <param name="parent">The folder above the target.</param>
    /// <param name="name">The target's own name; the target itself is whole.</param>
    /// <returns>The names of folders of our naming that stay, because nobody can say whose they are or because they could not be removed.</returns>
    public static ImmutableArray<string> Sweep(string parent, string name)
    {
        string begin = $".{name}.";
        return
        [
            .. Directory.EnumerateFileSystemEntries(parent).Select(p => Path.GetFileName(p)).Where(n => n.StartsWith(begin, StringComparison.Ordinal))
                .Select(n => OurEnding().Match(n[begin.Length..])).Where(m => m.Success).Select(m => m.Groups[1].Value)
                .Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).ToList()
                .SelectMany(id => Sweep(Path.Combine(parent, begin + id))),
        ];
    }

    private static IEnumerable<string> Sweep(string stem)
    {
        FileStream free;
        try
        {
            free = new(stem + ".lock", FileMode.Open, FileAccess.ReadWrite, FileShare.None);
        }
        catch (Exception unknown) when (unknown is FileNotFoundException or UnauthorizedAccessException)
        {
            return Standing(stem);
        }
        catch (IOException)
        {
            // Held: a living process writes there.
            return [];
        }
        using (free)
        {
            try
            {
                foreach (string folder in (string[])[stem + ".new", stem + ".old"])
                    if (Directory.Exists(folder)) Directory.Delete(folder, recursive: true);
            }
            catch (Exception refused) when (refused is IOException or UnauthorizedAccessException)
            {
                return Standing(stem);
            }
        }
        Remove(stem + ".lock");
        return [];
    }

    private static IEnumerable<string> Standing(string stem) => ((string[])[stem + ".new", stem + ".old"]).Where(Directory.Exists).Select(f => Path.GetFileName(f));

    private static void Remove(string file)
    {
        try
        {
            File.Delete(file);
        }
        catch (IOException)
        {
            // Another writer looks at it in this moment, and removes it.
        }
    }

    [GeneratedRegex("^([0-9a-f]{32})\\.(?:new|old|lock)$", RegexOptions.CultureInvariant)]
    private static partial Regex OurEnding();
}
