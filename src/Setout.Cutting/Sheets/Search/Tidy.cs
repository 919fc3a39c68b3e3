using Setout.Cutting.Sheets.Model;

namespace Setout.Cutting.Sheets.Search;

/// <summary>
/// Lays the parts of each sheet anew on one sheet of its kind or of a cheaper one, in strips: rips first, crosscuts first, either, and
/// both in strips of equal parts, by several orders, with parts that may be turned lying either way, all one way and all the other. The best by the objective of that sheet alone stays. So layouts that the search has left
/// ragged become strips where they can, a last sheet becomes a cheaper one, and left-overs gather at one edge.
/// What it cannot find: anything that moves a part from one sheet to another.
/// </summary>
internal sealed class Tidy(SheetModel model, SearchMeter meter)
{
    private readonly int[][] _orders = PartOrders.Of(model);

    /// <summary>A tidier layout with the same parts on each sheet.</summary>
    public WorkLayout Apply(WorkLayout layout)
    {
        var tidy = new WorkLayout(model);
        Array.Copy(layout.Pool, tidy.Pool, tidy.Pool.Length);
        tidy.CountPool();
        var seen = new Dictionary<string, WorkSheet>(StringComparer.Ordinal);
        var cheaper = new int[model.Stock.Length];
        foreach (WorkSheet sheet in layout.Sheets.Where(s => s.PartCount > 0))
        {
            var parts = new int[model.Types.Length];
            sheet.Count(parts);
            string key = $"{sheet.Stock}:{string.Join(',', parts)}";
            if (!seen.TryGetValue(key, out WorkSheet? best) || (best.Stock != sheet.Stock && layout.Left(best.Stock) <= cheaper[best.Stock]))
            {
                best = Best(sheet, parts, stock => layout.Left(stock) > cheaper[stock]);
                seen[key] = best;
            }
            if (best.Stock != sheet.Stock) cheaper[best.Stock]++;
            tidy.AddSheet(best.Clone());
        }
        return tidy;
    }

    private WorkSheet Best(WorkSheet sheet, int[] parts, Func<int, bool> mayUse)
    {
        WorkSheet best = sheet;
        SheetScore bestScore = ScoreAlone(sheet);
        bool mayTurn = Enumerable.Range(0, parts.Length).Any(t => parts[t] > 0 && model.Types[t].MayTurn);
        (Lie Lie, FirstCut Cut, int[] Order)[] ways = [.. from lie in mayTurn ? Enum.GetValues<Lie>() : [Lie.Either] from cut in Enum.GetValues<FirstCut>() from order in _orders select (lie, cut, order)];
        foreach (int stock in Enumerable.Range(0, model.Stock.Length))
        {
            if (stock != sheet.Stock && (!mayUse(stock) || model.Stock[stock].Cost >= model.Stock[sheet.Stock].Cost)) continue;
            foreach ((Lie lie, FirstCut cut, int[] order) in ways)
            {
                if (meter.Cancelled) return best;
                var alone = new WorkLayout(model) { Lie = lie };
                parts.CopyTo(alone.Pool, 0);
                alone.CountPool();
                alone.Open(stock);
                alone.Fill(order, cut, new Goal(0, 0), useBlanks: false, -1, null, meter);
                if (alone.PoolCount > 0) continue;
                SheetScore score = ScoreAlone(alone.Sheets[0]);
                if (score < bestScore) (best, bestScore) = (alone.Sheets[0], score);
            }
        }
        return best;
    }

    private SheetScore ScoreAlone(WorkSheet sheet) =>
        SheetObjective.ScoreSheets([(model.Stock[sheet.Stock].Stock, new TreeWriter(model).Write(sheet).Root)]);
}
