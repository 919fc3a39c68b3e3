using System.Collections.Immutable;
using Setout.Core.Measures;

namespace Setout.Core.Materials;

/// <summary>Construction lumber: the name in the yard and the dry dressed size behind it.</summary>
/// <param name="Nominal">Such as <c>2x4</c>: a name, not a size.</param>
/// <param name="Thickness">The smaller dressed size.</param>
/// <param name="Width">The larger dressed size.</param>
/// <param name="Source">Where it comes from.</param>
public sealed record LumberFact(string Nominal, ExactLength Thickness, ExactLength Width, string Source);

/// <summary>Dressed sizes of construction lumber (PS 20, dry).</summary>
public static class LumberTable
{
    private static readonly Lazy<ImmutableArray<LumberFact>> s_rows = new(() =>
    [
        .. CsvFacts.Read("lumber.csv").Select(r => new LumberFact(r["nominal"],
            CsvFacts.Length(r["thickness_in"] + " in"), CsvFacts.Length(r["width_in"] + " in"), r["source"])),
    ]);

    /// <summary>All rows.</summary>
    public static ImmutableArray<LumberFact> All => s_rows.Value;

    /// <summary>The row of a nominal size, or null.</summary>
    public static LumberFact? Find(string nominal) => All.FirstOrDefault(l => l.Nominal == nominal.Replace(" ", "", StringComparison.Ordinal));
}
