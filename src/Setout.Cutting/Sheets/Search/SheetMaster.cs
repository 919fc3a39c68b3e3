using Setout.Cutting.Programs;
using Setout.Cutting.Sheets.Model;

namespace Setout.Cutting.Sheets.Search;

/// <summary>
/// Chooses anew among all sheets a search has met: an integer program takes sheets within the goal such that the parts they do not hold have
/// the least area. Parts that lie on two of the sheets are taken off one. So good sheets of different layouts come together.
/// Source (title from memory): Monaci and Toth, "A set-covering-based heuristic approach for bin-packing problems", INFORMS Journal on Computing 18, 2006.
/// What it cannot find: a sheet that the search has not met.
/// </summary>
internal sealed class SheetMaster(SheetModel model, IPrograms programs, SearchMeter meter)
{
    /// <summary>
    /// Steps of search that one unit of effort of the library is counted as. By processor time a unit is worth 63 to 91 million (the 50 of bench/data/subset_A50.txt, at 40 and
    /// at 100 million steps), yet counted at 87 million the same steps gave a sheet or two more (721 for 720 kept, 693 for 691 turned), so the library is favoured.
    /// </summary>
    private const double StepsAnEffort = 40_000_000;

    /// <summary>A layout within the goal, or null when none was found. Parts that no sheet holds are in its pool.</summary>
    /// <param name="seen">The sheets to choose from.</param>
    /// <param name="current">A layout within the goal, to start from.</param>
    /// <param name="goal">What may be spent.</param>
    /// <param name="effort">How long to look.</param>
    public WorkLayout? Choose(SeenSheets seen, WorkLayout current, Goal goal, double effort)
    {
        foreach (WorkSheet sheet in current.Sheets) seen.Offer(sheet);
        SeenSheet[] sheets = [.. seen.All];
        var rows = new List<ProgramRow>();
        var columns = new List<ProgramColumn>();
        rows.AddRange(model.Types.Select(t => new ProgramRow(t.Count, long.MaxValue / 4)));
        int limits = rows.Count;
        rows.AddRange(model.Stock.Select(s => new ProgramRow(0, s.Limit == int.MaxValue ? int.MaxValue / 2 : s.Limit)));
        // Strictly less money, or the same money and fewer sheets: money counts in units in which that is whole.
        int money = rows.Count;
        rows.Add(new(0, Whole(goal.Cost, goal.Sheets) - 1));
        foreach (SeenSheet sheet in sheets)
        {
            StockType stock = model.Stock[sheet.Sheet.Stock];
            int most = Math.Min(stock.Limit, sheet.Parts.Min(p => Math.Max(1, model.Types[p.Type].Count / p.Count)));
            columns.Add(new(0, most, [.. sheet.Parts.Select(p => (p.Type, (long)p.Count)), (limits + sheet.Sheet.Stock, 1), (money, Whole(stock.Cost, 1))]));
        }
        double largest = model.Types.Max(t => t.Area);
        for (int t = 0; t < model.Types.Length; t++)
            columns.Add(new(1 + (long)(10_000 * model.Types[t].Area / largest), model.Types[t].Count, [(t, 1)]));
        IntegerAnswer answer = programs.Choose(new(rows, columns), new(effort, meter.Seed), meter.Ending);
        meter.Add((long)(answer.Effort * StepsAnEffort) + (20L * columns.Count));
        return answer.Counts is null ? null : Build(sheets, answer.Counts);
    }

    private static long Whole(decimal cost, int sheets) => cost > 1_000_000_000m ? long.MaxValue / 4 : checked((long)(cost * 1_000_000m)) + sheets;

    private WorkLayout Build(SeenSheet[] sheets, int[] counts)
    {
        var layout = new WorkLayout(model);
        for (int i = 0; i < sheets.Length; i++)
            for (int n = 0; n < counts[i]; n++) layout.AddLaid(sheets[i].Sheet.Clone());
        layout.TakeSurplus();
        return layout;
    }
}
