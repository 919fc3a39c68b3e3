using Setout.Cutting.Programs;

namespace Setout.Cutting.Sheets.Search;

/// <summary>
/// Ruin and recreate under a goal. The search holds a layout that may spend strictly less than the best one known, so some
/// parts do not fit and wait in a pool. A round takes some slices off a few sheets (a part, or a division with all that is
/// in it, so that larger free rectangles come back), lays the pool again in one of several orders with an occasional blink, and
/// is kept when the area in the pool is not larger than it was some rounds ago (late acceptance). When the pool is empty the
/// layout is the new best, and the goal moves below it.
/// Sources: Gardeyn and Wauters, "A goal-driven ruin and recreate heuristic for the 2D variable-sized bin packing
/// problem with guillotine constraints", European Journal of Operational Research 301, 2022; blinks: Christiaens and Vanden Berghe,
/// "Slack induction by string removals for vehicle routing problems", Transportation Science 54, 2020; late acceptance: Burke and Bykov, "The late
/// acceptance hill-climbing heuristic", European Journal of Operational Research 258, 2017. (Titles from memory.)
/// What it cannot find: it proves nothing; layouts whose every improvement must pass through many changed sheets at once
/// are out of reach; it puts parts into corners of free rectangles only, which loses nothing for edge-to-edge cuts.
/// </summary>
internal sealed class GoalSearch(SheetModel model, SeededRandom random, SearchMeter meter, IPrograms? programs)
{
    // Measured on the orders of the tests and on 40 made-up kitchens; smaller ruins found clearly fewer improvements.
    private const int History = 20;
    private const int MostSeen = 2000;
    private const long FirstChoice = 5_000_000;
    private const double ChoiceEffort = 0.15;

    public int Choices { get; private set; }

    public int Chosen { get; private set; }
    private const int MostSheets = 5;
    private const int MostParts = 8;
    private static readonly int[] s_blinks = [8, 100, 1000, 1000, 1000, 1000];

    private readonly double _allParts = model.Types.Sum(t => t.Area * t.Count);
    private readonly int[][] _orders = PartOrders.Of(model);

    // Where there is a choice of stock, whole sheets must go more often to make room for another kind.
    private readonly int _closeOnceIn = model.Stock.Length > 1 ? 6 : 24;

    /// <summary>Improves on <paramref name="best"/> until the goal is met, the budget is spent or the caller cancels.</summary>
    /// <param name="best">A layout; parts in its pool could not be laid.</param>
    /// <param name="proven">True when a layout of this cost and count cannot be beaten.</param>
    public WorkLayout Improve(WorkLayout best, Func<WorkLayout, bool> proven)
    {
        WorkLayout current = best.Clone();
        Goal goal = Tighten(best, current);
        var history = new double[History];
        Array.Fill(history, current.PoolArea);
        double least = current.PoolArea;
        SeenSheets? seen = programs is null ? null : new(model, MostSeen);
        long nextChoice = meter.Work + FirstChoice, betweenChoices = FirstChoice;
        for (long round = 0; !meter.Over && !(best.PoolCount == 0 && proven(best)); round++)
        {
            meter.Rounds++;
            meter.Report(new(best.Cost), best.Sheets.Count);
            double before = current.PoolArea;
            current.Mark();
            Ruin(current);
            Recreate(current, goal);
            // Copies and lists take time too: counted so that a step stays about as long whatever the order looks like.
            meter.Add((model.Types.Length / 4) + current.TakeCopied() + 20);
            int slot = (int)(round % History);
            if (seen is not null && current.PoolArea <= least * 1.5)
                foreach (WorkSheet sheet in current.Changed)
                    if (sheet.UsedArea >= WorthSeeing(best, sheet)) seen.Offer(sheet);
            if (current.PoolCount == 0 || (best.PoolCount > 0 && current.PoolArea < least))
            {
                least = current.PoolArea;
                current.CloseEmpty();
                if (current.PoolCount > 0) best = current.Clone();
                else
                {
                    best = current.Clone();
                    goal = Tighten(best, current);
                    Array.Fill(history, current.PoolArea);
                }
                meter.Improvements++;
            }
            else if (current.PoolArea > before && current.PoolArea > history[slot])
            {
                current.Undo();
            }
            history[slot] = Math.Min(history[slot], current.PoolArea);
            if (seen is not null && meter.Work >= nextChoice && best.PoolCount == 0)
            {
                long before2 = meter.Work;
                WorkLayout? chosen = new SheetMaster(model, programs!, meter).Choose(seen, current, goal, ChoiceEffort);
                if (chosen is not null && chosen.PoolArea < current.PoolArea)
                {
                    current = chosen;
                    Choices++;
                    if (current.PoolCount == 0)
                    {
                        current.CloseEmpty();
                        best = current.Clone();
                        goal = Tighten(best, current);
                        meter.Improvements++;
                        Chosen++;
                    }
                    least = Math.Min(least, current.PoolArea);
                    if (current.PoolCount > 0 && best.PoolCount == 0) { }
                    Array.Fill(history, current.PoolArea);
                }
                betweenChoices += betweenChoices / 2;
                nextChoice = meter.Work + betweenChoices;
            }
        }
        return best;
    }

    // What a sheet must hold to be worth remembering: nearly what sheets must hold on average in a better layout.
    private double WorthSeeing(WorkLayout best, WorkSheet sheet) =>
        model.Stock[sheet.Stock].Area * Math.Min(0.98, 0.94 * _allParts / Math.Max(1, best.Sheets.Sum(s => model.Stock[s.Stock].Area) - model.Stock[sheet.Stock].Area));

    // Takes sheets away until less is spent than the best layout does: those that give least for their money.
    private Goal Tighten(WorkLayout best, WorkLayout current)
    {
        if (best.PoolCount > 0) return Goal.None;
        var goal = new Goal(best.Cost, best.Sheets.Count);
        while (current.Sheets.Count > 0 && !goal.Allows(current.Cost, current.Sheets.Count))
        {
            int worst = 0;
            double most = double.MinValue;
            for (int s = 0; s < current.Sheets.Count; s++)
            {
                WorkSheet sheet = current.Sheets[s];
                decimal cost = model.Stock[sheet.Stock].Cost;
                // Taking away a free blank saves a sheet but no money, so it is the last resort.
                double price = (cost > 0 ? 1 + (double)cost : goal.Cost > 0 ? 1e-6 : 1) / (1 + sheet.UsedArea);
                if (price > most) (most, worst) = (price, s);
            }
            current.Close(worst);
        }
        return goal;
    }

    private void Ruin(WorkLayout layout)
    {
        if (layout.Sheets.Count == 0) return;
        int sheets = Math.Min(layout.Sheets.Count, 1 + random.Below(MostSheets));
        for (int i = 0; i < sheets && layout.Sheets.Count > 0; i++)
        {
            int at = random.Below(layout.Sheets.Count);
            WorkSheet sheet = layout.Sheets[at];
            if (sheet.PartCount == 0 || random.OnceIn(_closeOnceIn))
            {
                layout.Close(at);
                continue;
            }
            int wanted = 1 + random.Below(MostParts);
            for (int taken = 0; taken < wanted && sheet.PartCount > 0;)
            {
                taken += layout.Take(sheet, sheet.Pick(random, divisions: random.OnceIn(2)));
            }
        }
        layout.CountPool();
    }

    private void Recreate(WorkLayout layout, Goal goal)
    {
        int which = random.Below(_orders.Length + 3);
        int[] order = which < _orders.Length ? _orders[which]
            : which == _orders.Length ? PartOrders.Shuffled(model.Types.Length, random) : _orders[2];
        layout.BlinkOnceIn = s_blinks[random.Below(s_blinks.Length)];
        layout.Fill(order, FirstCut.Either, goal, useBlanks: true, -1, random, meter);
    }
}
