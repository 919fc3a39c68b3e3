using System.Collections.Immutable;
using System.Globalization;

namespace Setout.Core.Materials;

/// <summary>How long small works of putting right take, in minutes. Common practice, no source: good for an order, not for a bill.</summary>
public static class RemedyMinutes
{
    private static readonly Lazy<ImmutableDictionary<string, int>> s_rows = new(() =>
        CsvFacts.Read("remedy-minutes.csv").ToImmutableDictionary(r => r["work"], r => int.Parse(r["minutes"], NumberStyles.None, CultureInfo.InvariantCulture), StringComparer.Ordinal));

    /// <summary>The minutes of one such work.</summary>
    /// <param name="work">As the table names it: <c>trim</c>, <c>setting</c>.</param>
    /// <exception cref="KeyNotFoundException">There is none: a fault in the code.</exception>
    public static int Of(string work) => s_rows.Value[work];

    /// <summary>All works of the table.</summary>
    public static IEnumerable<string> Works => s_rows.Value.Keys.Order(StringComparer.Ordinal);
}
