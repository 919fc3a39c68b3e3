using System.Collections.Immutable;
using Setout.Core.Measures;

namespace Setout.Core.Materials;

/// <summary>A grade of high-pressure laminate.</summary>
/// <param name="Grade">Its letters in the standard, such as <c>HGS</c>.</param>
/// <param name="Words">What it is for.</param>
/// <param name="Thickness">Nominal.</param>
/// <param name="Tolerance">How far it may be off, either way.</param>
/// <param name="Source">Where it comes from.</param>
public sealed record LaminateFact(string Grade, string Words, ExactLength Thickness, ExactLength Tolerance, string Source);

/// <summary>Grades of laminate on record.</summary>
public static class LaminateTable
{
    private static readonly Lazy<ImmutableArray<LaminateFact>> s_facts = new(() =>
        [.. CsvFacts.Read("laminates.csv").Select(r => new LaminateFact(r["grade"], r["words"], CsvFacts.Length(r["thickness"]), CsvFacts.Length(r["tolerance"]), r["source"]))]);

    /// <summary>The letters of all grades, in the order of the table.</summary>
    public static IEnumerable<string> Grades => s_facts.Value.Select(f => f.Grade);

    /// <summary>The grade of some letters; null where there is none on record.</summary>
    public static LaminateFact? Find(string grade) => s_facts.Value.FirstOrDefault(f => f.Grade == grade);
}
