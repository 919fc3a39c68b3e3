namespace Setout.Cutting.Boards.Search;

/// <summary>
/// Sequential value correction: board after board takes the most valuable filling of the parts that wait, then the worth of what lies on
/// it is corrected: parts that lie on boards with waste were too cheap. Layout after layout the awkward parts are so dealt with sooner.
/// Source: Mukhacheva, Belov, Kartack and Mukhacheva, "Linear one-dimensional cutting-packing problems: numerical experiments with the
/// sequential value correction method and a modified branch-and-bound method", Pesquisa Operacional 20, 2000. (Title from memory.)
/// What it cannot find: layouts in which most boards must be full to the end.
/// </summary>
internal sealed class ValueCorrection(PatternModel model, PatternPricer pricer, SearchMeter meter, SeededRandom random)
{
    private readonly int[] _values = new int[model.Demand.Length];

    /// <summary>Makes layouts from what is taken already until one is good enough, the rounds are used up or the search is over.</summary>
    /// <param name="start">What is taken already.</param>
    /// <param name="rounds">How many layouts.</param>
    /// <param name="offer">Told each layout; true ends it.</param>
    /// <param name="below">A layout that cannot become cheaper than this, or as cheap on fewer boards, is given up.</param>
    /// <param name="full">Whether the fine grid is used where there is a coarse one.</param>
    public bool Run(PatternWork start, int rounds, Func<PatternWork, bool> offer, Func<(decimal Price, int Boards)> below, bool full)
    {
        double[] worth = [.. model.Lengths.Select(l => (double)l)];
        for (int round = 0; round < rounds && !(round > 0 && meter.Over) && !meter.Cancelled; round++)
        {
            PatternWork work = start.Copy();
            (decimal price, int boards) = below();
            while (work.Waiting > 0 && !meter.Cancelled)
            {
                if (round > 0 && (work.Price > price || (work.Price == price && work.Boards >= boards))) break;
                if (!FillOne(work, worth, full)) break;
            }
            if ((round == 0 || work.Waiting == 0) && offer(work)) return true;
        }
        return false;
    }

    private bool FillOne(PatternWork work, double[] worth, bool full)
    {
        pricer.Round(worth, _values);
        pricer.Run(_values, work.Demand, quick: !full);
        int slot = Choose(work);
        if (slot < 0) return false;
        Pattern pattern = pricer.Take(slot);
        if (pattern.Parts.Length == 0) return false;
        double used = pattern.Parts.Sum(p => (double)p.Count * model.Lengths[p.Type]), share = model.Slots[slot].Length / used;
        foreach ((int type, int count) in pattern.Parts)
        {
            double weight = (double)count / (count + work.Demand[type]) * (0.7 + (random.Below(100) * 0.006));
            worth[type] = ((1 - weight) * worth[type]) + (weight * Math.Pow(model.Lengths[type], 1.02) * share);
        }
        work.Take(pattern);
        return true;
    }

    // A bin that is there already, else the board that gives most for its price; among free ones the one filled best.
    private int Choose(PatternWork work)
    {
        int chosen = -1;
        double best = -1;
        for (int k = 0; k < model.Slots.Length; k++)
        {
            if (!work.CanTake(k) || pricer.Best(k) <= 0) continue;
            int stock = model.Slots[k].Stock;
            double gives = work.Open[k] > 0 ? double.MaxValue / 4
                : model.Prices[stock] == 0 ? 1e100 * pricer.Best(k) / model.Slots[k].Length
                : model.SlotsOf[stock].Sum(s => (double)pricer.Best(s) * model.Slots[s].Bins.Length) / (double)model.Prices[stock];
            if (gives > best) (best, chosen) = (gives, k);
        }
        return chosen;
    }
}
