namespace Setout.Tests.Architecture;

/// <summary>Which project of the solution may name which; a project that stands nowhere here may name and be named by nothing.</summary>
public static class ProjectOrder
{
    // The line of the design; each may see all before it.
    private static readonly string[] s_line = ["Setout.Core", "Setout.Cutting", "Setout.Drawing", "Setout.Shop"];

    // Adapters, by the last of the line that each may see. Only the host, the benches and their own tests may see an adapter.
    private static readonly Dictionary<string, string> s_adapters = new() { ["Setout.Solvers"] = "Setout.Cutting", ["Setout.Store"] = "Setout.Shop" };

    private const string Host = "Setout";
    private const string Testing = "Setout.Testing";
    private static readonly string[] s_benches = ["Setout.Speed", "Setout.Quality", "Setout.Soak"];

    /// <summary>Every project that has a place, tests left out.</summary>
    public static IReadOnlyList<string> Projects => [.. s_line, .. s_adapters.Keys, Host, Testing, .. s_benches];

    /// <summary>The projects that <paramref name="project"/> may name, or null when it has no place in the order.</summary>
    public static IReadOnlyList<string>? MayName(string project)
    {
        if (project.EndsWith(".Tests", StringComparison.Ordinal))
        {
            string tested = project[..^".Tests".Length];
            return tested != Testing && MayName(tested) is { } below ? [.. below, tested, Testing] : null;
        }
        if (Array.IndexOf(s_line, project) is >= 0 and int place) return s_line[..place];
        if (s_adapters.TryGetValue(project, out string? last)) return s_line[..(Array.IndexOf(s_line, last) + 1)];
        if (project == Host) return [.. s_line, .. s_adapters.Keys];
        if (project == Testing) return s_line;
        return s_benches.Contains(project) ? [.. s_line, .. s_adapters.Keys, Host, Testing] : null;
    }

    /// <summary>What is wrong with the references of a project, in words; empty when nothing is.</summary>
    public static IReadOnlyList<string> Breaches(string project, IEnumerable<string> names) => MayName(project) is not { } allowed
        ? [$"{project} has no place in the order of projects"]
        : [.. names.Where(name => !allowed.Contains(name)).Select(name => $"{project} may not name {name}")];
}
