using Setout.Shop.Facts;

namespace Setout.Store;

/// <summary>The kinds of system that have a place of their own for data.</summary>
public enum DataSystem
{
    /// <summary>Linux and the like: the XDG base directories.</summary>
    Linux,

    /// <summary>macOS: Application Support.</summary>
    MacOS,

    /// <summary>Windows: local application data, which does not roam.</summary>
    Windows,
}

/// <summary>Where the data folder is.</summary>
public static class DataPlace
{
    /// <summary>The variable of the environment that names it.</summary>
    public const string Variable = "SETOUT_DATA";

    /// <summary>The data folder: the one named, else that of the variable, else the usual place of this system.</summary>
    /// <param name="named">By whoever started the program; null or empty when not.</param>
    /// <exception cref="FactStoreException">This system does not say where the user's files are.</exception>
    public static string Find(string? named) => Find(named, Environment.GetEnvironmentVariable,
        OperatingSystem.IsWindows() ? DataSystem.Windows : OperatingSystem.IsMacOS() ? DataSystem.MacOS : DataSystem.Linux,
        Environment.GetFolderPath(Environment.SpecialFolder.UserProfile, Environment.SpecialFolderOption.DoNotVerify),
        Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData, Environment.SpecialFolderOption.DoNotVerify));

    /// <summary>The same, with all that it depends on.</summary>
    /// <param name="named">By whoever started the program.</param>
    /// <param name="variable">The environment.</param>
    /// <param name="system">The kind of system.</param>
    /// <param name="home">The user's folder.</param>
    /// <param name="localData">Windows' folder for local application data.</param>
    internal static string Find(string? named, Func<string, string?> variable, DataSystem system, string home, string localData)
    {
        if (!string.IsNullOrWhiteSpace(named)) return Path.GetFullPath(named);
        if (variable(Variable) is { } told && !string.IsNullOrWhiteSpace(told)) return Path.GetFullPath(told);
        if (system == DataSystem.Windows && localData.Length > 0) return Path.Combine(localData, "setout");
        // A relative path there is to be passed over. Source: XDG Base Directory Specification, section 2.
        if (system == DataSystem.Linux && variable("XDG_DATA_HOME") is { } data && data.StartsWith('/')) return Path.Combine(data, "setout");
        if (home.Length == 0 || system == DataSystem.Windows)
            throw FactStoreException.Of("store.no-place", "This system does not say where your files are.", $"Name a folder with --data, or in {Variable}.");
        return system == DataSystem.MacOS ? Path.Combine(home, "Library", "Application Support", "setout") : Path.Combine(home, ".local", "share", "setout");
    }
}
