using Setout.Cutting.Programs;

namespace Setout.Cutting.Boards.Search;

/// <summary>
/// Chooses whole boards among known patterns by an integer program. What comes back is counted again here; that nothing better was found
/// proves nothing, because patterns that were never met are missing.
/// Sources (titles from memory): the program is that of Gilmore and Gomory, "A linear programming approach to the cutting-stock problem", Operations Research 9, 1961, in whole
/// numbers; that it is asked over the columns met so far: Joncour, Michel, Sadykov, Sverdlov and Vanderbeck, "Column generation based primal heuristics", Electronic
/// Notes in Discrete Mathematics 36, 2010.
/// What it cannot find: a layout with a pattern that was not met.
/// </summary>
internal sealed class PatternChoice(PatternModel model, IPrograms programs, SearchMeter meter, CancellationToken stop)
{
    /// <summary>Steps of search that one unit of effort stands for: both take about a second on a small machine.</summary>
    public const long StepsForEffort = 20_000_000;

    /// <summary>The cheapest choice that costs less than the limit; null when none was found.</summary>
    public PatternWork? Run(List<Pattern> patterns, decimal below, double effort, int seed)
    {
        decimal step = model.PriceStep;
        long many = 1 + model.Demand.Sum(d => (long)d);
        if (step == 0 || model.Prices.Max() / step * many * many > 1e17m) return null;
        var rows = new List<ProgramRow>(model.Demand.Select(d => new ProgramRow(d, int.MaxValue)));
        var entries = new List<(int, long)>[model.Slots.Length];
        int[] slotRow = [.. model.Slots.Select(s => model.IsSingle(s.Stock) && model.Boards.Stock[s.Stock].Limit == int.MaxValue ? -1 : AddRow(rows, model.IsSingle(s.Stock) ? -model.Boards.Stock[s.Stock].Limit : 0))];
        var columns = new List<ProgramColumn>(patterns.Count);
        foreach (Pattern pattern in patterns)
        {
            int stock = model.Slots[pattern.Slot].Stock;
            List<(int, long)> parts = [.. pattern.Parts.Select(p => (p.Type, (long)p.Count))];
            if (slotRow[pattern.Slot] >= 0) parts.Add((slotRow[pattern.Slot], -1));
            int most = pattern.Parts.Max(p => (model.Demand[p.Type] + p.Count - 1) / p.Count);
            columns.Add(new(model.IsSingle(stock) ? Cost(stock, step, many) : 0, Math.Min(most, model.IsSingle(stock) ? model.Boards.Stock[stock].Limit : int.MaxValue), parts));
        }
        for (int s = 0; s < model.SlotsOf.Length; s++)
            if (!model.IsSingle(s) && model.SlotsOf[s].Length > 0)
                columns.Add(new(Cost(s, step, many), (int)Math.Min(many, model.Boards.Stock[s].Limit), [.. model.SlotsOf[s].Select(k => (slotRow[k], (long)model.Slots[k].Bins.Length))]));
        IntegerAnswer answer = programs.Choose(new(rows, columns, (long)(below / step) * many), new(effort, seed), stop);
        meter.Add(10_000 + (long)(answer.Effort * StepsForEffort));
        return answer.Counts is null ? null : Read(patterns, answer.Counts);
    }

    private static int AddRow(List<ProgramRow> rows, long low)
    {
        rows.Add(new(low, int.MaxValue));
        return rows.Count - 1;
    }

    private long Cost(int stock, decimal step, long many) => ((long)(model.Prices[stock] / step) * many) + 1;

    // A choice may make more parts than are wanted: what is too much is left off.
    private PatternWork? Read(List<Pattern> patterns, int[] counts)
    {
        var work = new PatternWork(model);
        for (int i = 0; i < patterns.Count; i++)
            for (int n = 0; n < counts[i]; n++)
                if (!work.TakeWithin(patterns[i])) return null;
        return work.Waiting == 0 ? work : null;
    }
}
