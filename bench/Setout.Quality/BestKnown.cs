using System.Globalization;
using System.Text;

namespace Setout.Quality;

/// <summary>A published best value and bound for one instance, and the variant it was given for.</summary>
internal sealed record Known(decimal? Best, decimal? Bound, string Variant);

/// <summary>Reads best_known.csv.</summary>
internal sealed class BestKnown
{
    private readonly Dictionary<(string Id, string Variant), Known> _rows = [];
    private readonly Dictionary<(string Group, string Variant), decimal> _uses = [];

    public static BestKnown None { get; } = new();

    /// <param name="path">The file.</param>
    /// <param name="costIsArea">
    /// Whether sheets were laid out with their area as cost. The published values of pisinger are sums of sheet areas, not of the costs that
    /// its files give (see the doubts in bench/data/README.md), so they say nothing about layouts at the given costs.
    /// </param>
    public static BestKnown Read(string path, bool costIsArea)
    {
        var known = new BestKnown();
        foreach (string line in File.ReadLines(path).Skip(1))
        {
            string[] cells = [.. Cells(line)];
            if (cells.Length >= 7 && cells[0] == "group" && cells[3] == "utilisation_percent" && Value(cells[6]) is { } use) known._uses[(cells[1], cells[2])] = use;
            if (cells.Length < 7 || cells[0] != "instance") continue;
            if (!costIsArea && cells[1].StartsWith("B-pisinger", StringComparison.Ordinal)) continue;
            known._rows[(cells[1], cells[2])] = new(Value(cells[6]), Value(cells[4]), cells[2]);
        }
        return known;
    }

    /// <summary>
    /// The value for a variant. Where there is none, the value of the nearest variant that could be found stands in and says so: fewer
    /// stages (any of our layouts may do as well or better) or free cutting (no saw need reach it).
    /// </summary>
    public Known? Of(string id, string variant)
    {
        string[] order = variant switch
        {
            "OG" => ["OG", "OG2nx-H", "OF"],
            "RG" => ["RG", "RG2nx-H", "RF"],
            _ => [variant],
        };
        return order.Select(v => _rows.GetValueOrDefault((id, v))).FirstOrDefault(k => k?.Best is not null);
    }

    /// <summary>The published share of the sheets' area that parts take, in per cent, as a mean over a group; null where there is none.</summary>
    public decimal? Use(string group, string variant) => _uses.TryGetValue((group, variant), out decimal use) ? use : null;

    private static decimal? Value(string cell) => decimal.TryParse(cell, NumberStyles.Number, CultureInfo.InvariantCulture, out decimal value) ? value : null;

    // Commas within quotes belong to the cell; a doubled quote is one.
    private static IEnumerable<string> Cells(string line)
    {
        var cell = new StringBuilder();
        bool quoted = false;
        foreach (char c in line)
        {
            if (c == '"') quoted = !quoted;
            else if (c == ',' && !quoted)
            {
                yield return cell.ToString();
                cell.Clear();
            }
            else cell.Append(c);
        }
        yield return cell.ToString();
    }
}
