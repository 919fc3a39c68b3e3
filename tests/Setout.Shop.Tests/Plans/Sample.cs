using System.Collections.Concurrent;
using Setout.Cutting.Boards;
using Setout.Cutting.Sheets;
using Setout.Shop.Plans;
using Setout.Testing;

namespace Setout.Shop.Tests.Plans;

/// <summary>The sample pieces of the project with their plans; each plan is made once for all tests, and never changed.</summary>
public static class Sample
{
    private static readonly ConcurrentDictionary<string, Lazy<Plan>> s_plans = new(StringComparer.Ordinal);

    /// <summary>The names of all samples.</summary>
    public static IReadOnlyList<string> Names { get; } =
        [.. Repository.FilesIn("samples", "*.yaml").Select(f => Path.GetFileNameWithoutExtension(f)).Where(n => n != "shop" && !n.EndsWith(".log", StringComparison.Ordinal))];

    /// <summary>The same as theory data.</summary>
    public static TheoryData<string> Data => [.. Names];

    /// <summary>The text of a sample.</summary>
    public static string Text(string name) => File.ReadAllText(Repository.PathOf($"samples/{name}.yaml"));

    /// <summary>The texts of a sample, read.</summary>
    public static PieceSource Source(string name) => Source(Text(name), null);

    /// <summary>A piece text with the samples' shop.</summary>
    public static PieceSource Source(string piece, string? log)
    {
        (PieceSource? source, var findings) = PieceSource.Read(piece, log, Text("shop"));
        return source ?? throw new InvalidOperationException(string.Join("; ", findings.Select(f => f.Finding.Words)));
    }

    /// <summary>The plan of a sample.</summary>
    public static Plan Plan(string name) => s_plans.GetOrAdd(name, n => new(() => Make(Source(n)))).Value;

    /// <summary>Makes a plan with the program's own solvers.</summary>
    public static Plan Make(PieceSource source) => new PlanMaker(SheetSolvers.Default, BoardSolvers.Default).Make(source, LayoutEffort.Usual);
}
