// Over 200 lines: the order in which the methods take turns, read best in one place.
using Setout.Core.Measures;
using Setout.Cutting.Programs;

namespace Setout.Cutting.Boards.Search;

/// <summary>
/// Boards by patterns: a quick layout by completion; the linear program over patterns, whose bound is proven in whole numbers; then, in turns
/// of growing length, dives from that program, value correction on what a dive leaves, a choice of whole boards among the
/// patterns met, and completion again, until the layout is proven or the search is over. Each method and its source: see its own file.
/// What it cannot find: a proof where the linear program's bound, rounded up, is below every layout.
/// </summary>
internal sealed class PatternBoardSolver(IPrograms programs) : IBoardSolver
{
    private const int MostTypes = 1_200, MostSlots = 2_000;
    private const long FirstSlice = 1_000_000;

    /// <inheritdoc/>
    public BoardOutcome Solve(BoardInstance instance, SolverOptions options, IProgress<SolverProgress>? progress = null, CancellationToken cancel = default)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(options.WorkBudget);
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(options.Enough, cancel);
        using var run = new PatternRun(programs, instance, options, progress, stop.Token, cancel);
        return run.Solve();
    }

    private sealed class PatternRun : IDisposable
    {
        private readonly IPrograms _programs;
        private readonly BoardInstance _instance;
        private readonly SolverOptions _options;
        private readonly SearchMeter _meter;
        private readonly CancellationToken _stop;
        private readonly BoardModel _model;
        private readonly BestBoards _best;
        private LayoutBound? _bound;
        private bool _all;

        public PatternRun(IPrograms programs, BoardInstance instance, SolverOptions options, IProgress<SolverProgress>? progress, CancellationToken stop, CancellationToken cancel)
        {
            (_programs, _instance, _options, _stop) = (programs, instance, options, stop);
            _meter = new(options, progress, cancel);
            _model = new(instance);
            _best = new(_model, _meter);
            _bound = BoardBounds.Of(instance);
        }

        private bool Proven => _best.IsWhole && _bound is not null && _best.Cost == _bound.Cost.Amount
            && (_best.Boards.Count == _bound.Count || (_best.Cost > 0 && !_model.Stock.Any(s => s.Cost == 0)));

        private bool Over => _meter.Over || Proven;

        // A quarter of the budget is kept for completion, which needs no linear program to come to its end.
        private bool Late => Over || _meter.Work >= _meter.Budget - (_meter.Budget / 4);

        public void Dispose() => _meter.Dispose();

        public BoardOutcome Solve()
        {
            Complete(Math.Min(FirstSlice, _meter.Budget / 3), _options.Seed);
            if (_model.Types.Length > 0 && !Over && !_all) Patterns();
            if (!Over && !_all) Complete(_meter.Budget - _meter.Work, _options.Seed + 1);
            List<Filling> boards = BoardWriter.Cheapest(_model, _best.Boards);
            BoardLayout layout = BoardWriter.Write(_model, boards);
            BoardScore score = BoardObjective.Score(_instance, layout);
            return BoardWriter.Conclude(_instance, layout, score, _bound, _meter, _best.FoundBy);
        }

        private void Complete(long slice, int seed)
        {
            using SearchMeter meter = _meter.Share(slice);
            var search = new CompletionSearch(_model, new SeededRandom(seed), meter,
                work => _bound is not null && work.Cost == _bound.Cost.Amount && work.Boards.Count == _bound.Count);
            search.Run();
            _best.Offer(search.Best, search.Exhausted ? "completion, all layouts" : "completion");
            _meter.Report(new(_best.Cost), _best.Boards.Count);
            if (!search.Exhausted || _bound is null || search.BestWaiting != 0) return;
            _all = true;
            if (search.BestCost > _bound.Cost.Amount)
                _bound = _bound with { Cost = new(search.BestCost), Method = "search of all layouts" };
            if (_model.Stock.Length == 1) _bound = _bound with { Count = Math.Max(_bound.Count, search.Best.Count) };
        }

        private void Patterns()
        {
            if (_model.Types.Length > MostTypes) return;
            var model = new PatternModel(_model);
            if (model.Slots.Length > MostSlots) return;
            var pricer = new PatternPricer(model, _meter);
            var pool = new PatternPool();
            Seed(model, pool);
            using var root = new PatternMaster(model, pool, new PatternWork(model), pricer, _programs, _meter, _stop);
            if (!Converge(model, root, pricer)) return;
            List<(Pattern Pattern, double Share)> shares = root.Shares();
            var random = new SeededRandom(_options.Seed);
            var dive = new PatternDive(model, pool, pricer, _programs, _meter, random, _stop);
            var correction = new ValueCorrection(model, pricer, _meter, random);
            var choice = new PatternChoice(model, _programs, _meter, _stop);
            var search = new PatternSearch(model, _programs, _meter, _stop);
            for (int turn = 0; !Late && _bound is not null; turn++)
            {
                _meter.Round();
                decimal below = Below(model);
                if (dive.CanBeBelow(0, root.Price, below)) Dive(model, dive, correction, turn);
                if (!Over) Search(model, root, search, turn);
                if (Over) break;
                PatternWork rounded = new(model);
                dive.Take(rounded, shares, 0);
                correction.Run(turn % 2 == 0 ? rounded : new PatternWork(model), 40 << Math.Min(turn, 4), w => Offer(w, "value correction"), () => (Below(model), _best.Boards.Count), turn > 0);
                if (Over) break;
                if (turn >= 2) Choose(model, pool, root, choice, turn - 2);
                if (!Over) Complete(Math.Min(FirstSlice << Math.Min(turn, 8), _meter.Budget - _meter.Work), _options.Seed + turn + 1);
            }
        }

        private void Seed(PatternModel model, PatternPool pool)
        {
            foreach (Filling board in _best.Boards)
            {
                BinFill[] bins = board.AllBins;
                foreach (int slot in model.SlotsOf[board.Stock])
                    foreach (int bin in model.Slots[slot].Bins) pool.Add(new(slot, bins[bin].Parts));
            }
        }

        // True when the linear program was solved to its end, or as far as it can raise the bound.
        private bool Converge(PatternModel model, PatternMaster root, PatternPricer pricer)
        {
            for (int round = 1; !Late; round++)
            {
                if (!root.Solve()) return false;
                if (round % 8 == 0)
                {
                    Prove(model, root);
                    if (Over || _bound is null) return false;
                    // On a fine grid the last rounds are dear, and the bound cannot rise any more.
                    if (pricer.HasQuick && root.IsAsHighAsItGets) return true;
                }
                if (!root.Generate()) break;
                _meter.Report(new(_best.Cost), _best.Boards.Count);
            }
            Prove(model, root);
            return root.Converged && _bound is not null;
        }

        private void Prove(PatternModel model, PatternMaster root)
        {
            root.Prove();
            if (root.TooLittle) _bound = null;
            if (_bound is null) return;
            if (!model.CountsBoards && root.BoundPrice > _bound.Cost.Amount) _bound = _bound with { Cost = new(root.BoundPrice), Method = "patterns" };
            int count = model.CountsBoards ? (int)root.BoundPrice : root.BoundBoards;
            if (count > _bound.Count) _bound = _bound with { Count = count, Method = "patterns" };
            RaiseCount();
        }

        // Where every stock has one price, money counts boards.
        private void RaiseCount()
        {
            decimal price = _model.Stock[0].Cost;
            if (_bound is null || price == 0 || _model.Stock.Any(s => s.Cost != price)) return;
            int count = (int)Math.Min(int.MaxValue, Math.Ceiling(_bound.Cost.Amount / price));
            if (count > _bound.Count) _bound = _bound with { Count = count };
        }

        // What a layout must stay under to be better, by the model's prices.
        private decimal Below(PatternModel model) => !_best.IsWhole ? decimal.MaxValue / 4 : model.CountsBoards ? _best.Boards.Count : _best.Cost;

        private void Dive(PatternModel model, PatternDive dive, ValueCorrection correction, int turn)
        {
            var work = new PatternWork(model);
            int next = 3;
            bool Halfway(PatternWork taken)
            {
                if (turn == 0 || taken.Waiting * (next + 1) > model.Demand.Sum(d => (long)d)) return false;
                next *= 2;
                return correction.Run(taken, 10 << Math.Min(turn, 3), w => Offer(w, "dive and value correction"), () => (Below(model), _best.Boards.Count), turn > 1);
            }
            if (dive.Run(work, Below(model), turn == 0 ? 12 : 6, turn == 0 ? 0 : 3, Halfway)) Offer(work, "dive");
        }

        private void Choose(PatternModel model, PatternPool pool, PatternMaster root, PatternChoice choice, int turn)
        {
            decimal below = Below(model);
            double gap = ((double)below - (double)model.PriceStep) / model.MostPrice - root.Value + 1e-6;
            List<Pattern> near = [.. pool.All.Where(p => root.Reduced(p) <= gap)];
            double left = (double)(_meter.Budget - _meter.Work) / PatternChoice.StepsForEffort;
            if (near.Count == 0 || near.Count > 20_000 || !_best.IsWhole) return;
            if (choice.Run(near, below, Math.Min(left, 0.25 * (1 << Math.Min(turn, 6))), _options.Seed + turn) is { } found) Offer(found, "choice of patterns");
        }

        // The one step below the best layout: searched to the end where the list of its patterns is short enough.
        private void Search(PatternModel model, PatternMaster root, PatternSearch search, int turn)
        {
            if (!_best.IsWhole || !PatternSearch.Fits(model)) return;
            long[] units = [.. model.Prices.Select(p => (long)(p / model.PriceStep))];
            long target = (long)(Below(model) / model.PriceStep) - 1;
            if (PatternList.Of(model, root.Values(), units, target, _meter) is not { } patterns) return;
            if (!search.Run(patterns, units, target, 150L << Math.Min(turn * 2, 30), out PatternWork? found)) return;
            if (found is not null) Offer(found, "search of all patterns");
            else if (model.CountsBoards) _bound = _bound! with { Count = _best.Boards.Count, Method = "search of all patterns" };
            else _bound = _bound! with { Cost = new(_best.Cost), Method = "search of all patterns" };
            RaiseCount();
        }

        private bool Offer(PatternWork work, string foundBy)
        {
            if (work.Waiting == 0 || !_best.IsWhole) _best.Offer(work.Fillings(), foundBy);
            return Over;
        }
    }
}
