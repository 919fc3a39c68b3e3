namespace Setout.Testing;

/// <summary>The checked-out project, for tests that read its files.</summary>
public static class Repository
{
    private static readonly string[] s_built = ["artifacts", "bin", "obj", ".git", "out"];

    /// <summary>The folder that holds <c>Setout.slnx</c>, found upwards from the test's own folder.</summary>
    public static string Root { get; } = FindRoot();

    /// <summary>The full path of a file or folder in the project.</summary>
    public static string PathOf(string relative) => Path.Combine(Root, relative);

    /// <summary>Project-relative paths (with forward slashes, in order) of the files below a folder, built output left out.</summary>
    /// <param name="folder">Project-relative; missing folders hold nothing.</param>
    /// <param name="pattern">Such as <c>*.cs</c>.</param>
    public static IReadOnlyList<string> FilesIn(string folder, string pattern)
    {
        string start = PathOf(folder);
        if (!Directory.Exists(start)) return [];
        return [.. Directory.EnumerateFiles(start, pattern, SearchOption.AllDirectories)
            .Select(path => Path.GetRelativePath(Root, path).Replace('\\', '/'))
            .Where(path => !path.Split('/').Any(part => s_built.Contains(part)))
            .Order(StringComparer.Ordinal)];
    }

    private static string FindRoot()
    {
        for (DirectoryInfo? folder = new(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
            if (File.Exists(Path.Combine(folder.FullName, "Setout.slnx"))) return folder.FullName;
        throw new DirectoryNotFoundException($"No Setout.slnx above {AppContext.BaseDirectory}.");
    }
}
