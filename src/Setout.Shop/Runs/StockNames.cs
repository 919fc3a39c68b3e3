using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using Setout.Shop.Plans;
using Setout.Shop.Texts;

namespace Setout.Shop.Runs;

/// <summary>
/// What sheets and boards are called before anything comes off them. Wood in hand that bears a short name keeps it. All else has letters, or numbers for boards, in order through all
/// materials; a letter that a mark of a part or the name of wood in hand begins with is left out, and so is a number: on chalk a point is nothing.
/// </summary>
internal sealed partial class StockNames
{
    private readonly ImmutableArray<ImmutableArray<(string Name, bool IsOwn)>> _names;
    private readonly HashSet<string> _marks, _used;

    private StockNames(Plan plan)
    {
        _marks = [.. plan.Set.Parts.Select(p => Plain(p.Mark))];
        // What other pieces are cutting on stands about in the same shop.
        string[] left = [.. plan.Source.Log.Entries.OfType<MarkEntry>().SelectMany(e => e.Left).Select(l => l.Name).Concat(plan.Source.Ledger.Blanks.Select(b => b.Name)).Distinct().Select(Chalked)];
        string[] inHand = [.. plan.Source.ShopInHand.Stock.Select(s => s.Size).Concat(plan.Set.Piece.Materials.Values.SelectMany(m => m.Sizes)).Where(s => s.InHand > 0).Select(s => Chalked(s.Name))];
        _used = [.. left.Concat(inHand).Where(n => n.Length > 0).Select(Plain)];
        StockLine[][] laid =
        [
            .. plan.Sheets.Select(s => s.Outcome.Layout.Sheets.Select(l => s.Stock.First(k => k.Id == l.StockId)).ToArray()),
            .. plan.Boards.Select(b => b.Outcome.Layout.Boards.Select(l => b.Stock.First(k => k.Id == l.StockId)).ToArray()),
        ];
        // Two that bear one name need another each.
        Dictionary<string, int> times = laid.SelectMany(l => l).Select(Own).OfType<string>().GroupBy(Plain).ToDictionary(g => g.Key, g => g.Count());
        string[] begun = [.. _marks.Concat(left).Concat(inHand)];
        HashSet<string> letters = [.. begun.Select(n => Letter().Match(n).Value)], numbers = [.. begun.Select(n => Number().Match(n).Value)];
        bool IsFree(string name) => !letters.Contains(name) && !numbers.Contains(name) && !_marks.Any(m => name.Length == 1 && char.IsAsciiLetterUpper(name[0]) && m.StartsWith(name, StringComparison.Ordinal));
        int sheets = 0, boards = 0;
        string Next(bool isSheet)
        {
            while (true)
            {
                string name = isSheet ? Letters.Upper(sheets++) : (++boards).ToString(CultureInfo.InvariantCulture);
                if (IsFree(name)) return name;
            }
        }
        _names = [.. laid.Select((lines, m) => lines.Select(l => Own(l) is { } own && times[Plain(own)] == 1 ? (own, true) : (Next(m < plan.Sheets.Length), false)).ToImmutableArray())];
    }

    public static StockNames Of(Plan plan) => new(plan);

    /// <summary>The name of a sheet or board of a layout.</summary>
    public string this[int material, int stock] => _names[material][stock].Name;

    /// <summary>True where the wood bore that name before this plan.</summary>
    public bool IsOwn(int material, int stock) => _names[material][stock].IsOwn;

    /// <summary>True for a name that no mark of a part is, and that no other piece of wood ever had by the log.</summary>
    public bool IsFree(string name) => !_marks.Contains(Plain(name)) && !_used.Contains(Plain(name));

    /// <summary>What stands on wood that the log calls by a name, the run that left it and the plan.</summary>
    public static string Chalked(string name) => LeftByRun().Match(name) is { Success: true } match ? match.Groups[1].Value : name;

    private string? Own(StockLine line) => (line.IsBlank || line.Size.InHand > 0) && Chalked(line.Size.Name) is var name && Short().IsMatch(name) && !_marks.Contains(Plain(name)) ? name : null;

    private static string Plain(string name) => name.Replace(".", "", StringComparison.Ordinal);

    [GeneratedRegex("^(.+)-r[0-9]+-[0-9a-f]{4,8}$")]
    private static partial Regex LeftByRun();

    // Eight signs at most, so that it is chalked in one go.
    [GeneratedRegex("^[A-Za-z0-9](?:[A-Za-z0-9.-]{0,6}[A-Za-z0-9])?$")]
    private static partial Regex Short();

    [GeneratedRegex("^[A-Z]+(?![a-z]{2})")]
    private static partial Regex Letter();

    [GeneratedRegex("^[0-9]+")]
    private static partial Regex Number();
}
