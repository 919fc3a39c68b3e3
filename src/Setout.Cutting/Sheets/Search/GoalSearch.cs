using Setout.Cutting.Programs;
using Setout.Cutting.Sheets.Model;

namespace Setout.Cutting.Sheets.Search;

/// <summary>
/// Ruin and recreate under a goal. The search holds a layout that may spend strictly less than the best one known, so some
/// parts do not fit and wait in a pool. A round takes some slices off a few sheets (a part, or a division with all that is
/// in it, so that larger free rectangles come back), lays the pool again in one of several orders with an occasional blink, and
/// is kept when the area in the pool is not larger than it was some rounds ago (late acceptance). When the pool is empty the
/// layout is the new best, and the goal moves below it. With a library of integer programs, sheets are chosen anew now and then among all
/// that were met, see <see cref="SheetMaster"/>.
/// Sources: Gardeyn and Wauters, "A goal-driven ruin and recreate heuristic for the 2D variable-sized bin packing
/// problem with guillotine constraints", European Journal of Operational Research 301, 2022; blinks: Christiaens and Vanden Berghe,
/// "Slack induction by string removals for vehicle routing problems", Transportation Science 54, 2020; late acceptance: Burke and Bykov, "The late
/// acceptance hill-climbing heuristic", European Journal of Operational Research 258, 2017. (Titles from memory.)
/// What it cannot find: it proves nothing; layouts whose every improvement must pass through many changed sheets at once
/// are out of reach; it puts parts into corners of free rectangles only, which loses nothing for edge-to-edge cuts.
/// </summary>
internal sealed class GoalSearch
{
    // Measured on the orders of the tests and on 40 made-up kitchens; smaller ruins found clearly fewer improvements.
    private const int History = 20;
    private const int MostSheets = 5;
    private const int MostParts = 8;
    private static readonly int[] s_blinks = [8, 100, 1000, 1000, 1000, 1000];

    private const int MostSeen = 2000;
    private const long FirstChoice = 5_000_000;
    private const double ChoiceEffort = 0.15;

    private readonly SheetModel _model;
    private readonly SeededRandom _random;
    private readonly IPrograms? _programs;
    private readonly int[][] _orders;
    private readonly double _allParts;
    private readonly double[] _history = new double[History];
    private readonly SeenSheets? _seen;

    // Where there is a choice of stock, whole sheets must go more often to make room for another kind.
    private readonly int _closeOnceIn;

    private WorkLayout _current;
    private Goal _goal;
    private double _least;
    private long _round;
    private long _betweenChoices = FirstChoice;
    private long _untilChoice = FirstChoice;

    /// <summary>A search that starts from a layout; parts in its pool could not be laid.</summary>
    public GoalSearch(SheetModel model, WorkLayout start, SeededRandom random, IPrograms? programs)
    {
        _model = model;
        _random = random;
        _programs = programs;
        _orders = PartOrders.Of(model);
        _allParts = model.Types.Sum(t => t.Area * t.Count);
        _seen = programs is null ? null : new(model, MostSeen);
        _closeOnceIn = model.Stock.Length > 1 ? 6 : 24;
        _current = start;
        Best = start;
        Aim(start);
    }

    /// <summary>The best layout so far.</summary>
    public WorkLayout Best { get; private set; }

    /// <summary>Sheets worth choosing from, whoever found them.</summary>
    public void Offer(WorkSheet sheet) => _seen?.Offer(sheet);

    /// <summary>Goes on from a better layout found elsewhere.</summary>
    public void Aim(WorkLayout better)
    {
        Best = better.Clone();
        _current = better.Clone();
        _goal = Tighten(Best, _current);
        _least = _current.PoolArea;
        Array.Fill(_history, _least);
    }

    /// <summary>Searches until the share is spent, the caller ends it, or the best layout is proven.</summary>
    /// <param name="proven">True when a layout of this cost and count cannot be beaten.</param>
    /// <param name="meter">The work to spend.</param>
    public void Run(Func<WorkLayout, bool> proven, SearchMeter meter)
    {
        for (; !meter.Over && !(Best.PoolCount == 0 && proven(Best)); _round++)
        {
            meter.Round();
            meter.Report(new(Best.Cost), Best.Sheets.Count);
            long work = meter.Work;
            double before = _current.PoolArea;
            _current.Mark();
            Ruin(_current);
            Recreate(_current, meter);
            // Copies and lists take time too: counted so that a step stays about as long whatever the order looks like.
            meter.Add((_model.Types.Length / 4) + _current.TakeCopied() + 20);
            Remember();
            int slot = (int)(_round % History);
            if (_current.PoolCount == 0 || (Best.PoolCount > 0 && _current.PoolArea < _least)) Improved(meter);
            else if (_current.PoolArea > before && _current.PoolArea > _history[slot]) _current.Undo();
            _history[slot] = Math.Min(_history[slot], _current.PoolArea);
            if (_seen is not null && (_untilChoice -= meter.Work - work) <= 0 && Best.PoolCount == 0) Choose(meter);
        }
    }

    private void Improved(SearchMeter meter)
    {
        _least = _current.PoolArea;
        _current.CloseEmpty();
        Best = _current.Clone();
        if (_current.PoolCount == 0)
        {
            _goal = Tighten(Best, _current);
            Array.Fill(_history, _current.PoolArea);
        }
        meter.Improved();
    }

    private void Choose(SearchMeter meter)
    {
        WorkLayout? chosen = new SheetMaster(_model, _programs!, meter).Choose(_seen!, _current, _goal, ChoiceEffort);
        if (chosen is not null && chosen.PoolArea < _current.PoolArea)
        {
            _current = chosen;
            Array.Fill(_history, _current.PoolArea);
            if (_current.PoolCount == 0) Improved(meter);
        }
        _betweenChoices += _betweenChoices / 2;
        _untilChoice = _betweenChoices;
    }

    // Sheets that hold nearly what sheets must hold on average in a better layout.
    private void Remember()
    {
        if (_seen is null || _current.PoolArea > _least * 1.5) return;
        double stock = Best.Sheets.Sum(s => _model.Stock[s.Stock].Area);
        foreach (WorkSheet sheet in _current.Changed)
        {
            double area = _model.Stock[sheet.Stock].Area;
            if (sheet.UsedArea >= area * Math.Min(0.98, 0.94 * _allParts / Math.Max(1, stock - area))) _seen.Offer(sheet);
        }
    }

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
                decimal cost = _model.Stock[sheet.Stock].Cost;
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
        int sheets = Math.Min(layout.Sheets.Count, 1 + _random.Below(MostSheets));
        for (int i = 0; i < sheets && layout.Sheets.Count > 0; i++)
        {
            int at = _random.Below(layout.Sheets.Count);
            WorkSheet sheet = layout.Sheets[at];
            if (sheet.PartCount == 0 || _random.OnceIn(_closeOnceIn))
            {
                layout.Close(at);
                continue;
            }
            int wanted = 1 + _random.Below(MostParts);
            for (int taken = 0; taken < wanted && sheet.PartCount > 0;)
                taken += layout.Take(sheet, sheet.Pick(_random, divisions: _random.OnceIn(2)));
        }
        layout.CountPool();
    }

    private void Recreate(WorkLayout layout, SearchMeter meter)
    {
        int which = _random.Below(_orders.Length + 3);
        int[] order = which < _orders.Length ? _orders[which]
            : which == _orders.Length ? PartOrders.Shuffled(_model.Types.Length, _random) : _orders[2];
        layout.BlinkOnceIn = s_blinks[_random.Below(s_blinks.Length)];
        layout.Fill(order, FirstCut.Either, _goal, useBlanks: true, -1, _random, meter);
    }
}
