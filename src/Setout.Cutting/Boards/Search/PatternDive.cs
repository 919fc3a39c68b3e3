using Setout.Cutting.Programs;

namespace Setout.Cutting.Boards.Search;

/// <summary>
/// Dives from the linear program to whole boards: the whole part of every share is taken, else the pattern used most, and the program of
/// what is left solved again with new patterns, until nothing waits or the program says that nothing cheaper can come of it. Sources:
/// Belov and Scheithauer, "A branch-and-cut-and-price algorithm for one-dimensional stock cutting and two-dimensional two-stage
/// cutting", European Journal of Operational Research 171, 2006; diving as in Sadykov, Vanderbeck, Pessoa, Tahiri and Uchoa,
/// "Primal heuristics for branch and price: the assets of diving methods", INFORMS Journal on Computing 31, 2019. (Titles from memory.)
/// What it cannot find: it never takes a step back; another dive with other choices may.
/// </summary>
internal sealed class PatternDive(
    PatternModel model, PatternPool pool, PatternPricer pricer, IPrograms programs, SearchMeter meter, SeededRandom random, CancellationToken stop)
{
    /// <summary>Dives once.</summary>
    /// <param name="work">Where from; changed.</param>
    /// <param name="below">A layout must cost less than this.</param>
    /// <param name="rounds">So many times new patterns are asked for at each step.</param>
    /// <param name="stray">Once in so many steps another pattern than the most used is taken; zero for never.</param>
    /// <param name="halfway">Told at each step what is taken so far; may be null.</param>
    /// <returns>True when every part is laid.</returns>
    public bool Run(PatternWork work, decimal below, int rounds, int stray, Func<PatternWork, bool>? halfway = null)
    {
        if (meter.Over) return false;
        using var master = new PatternMaster(model, pool, work, pricer, programs, meter, stop);
        while (work.Waiting > 0)
        {
            if (meter.Over) return false;
            master.MoveTo(work);
            for (int round = 0; ; round++)
            {
                if (!master.Solve()) return false;
                if (round >= rounds || meter.Over || !master.Generate(quickOnly: true)) break;
            }
            if (master.Missing > 1e-6 || !CanBeBelow(work.Price, master.Price, below)) return false;
            if (!Take(work, master.Shares(), stray)) return false;
            if (halfway is not null && halfway(work)) return true;
        }
        return true;
    }

    /// <summary>True when whole boards for this much may still cost less than the limit.</summary>
    public bool CanBeBelow(decimal taken, double rest, decimal below)
    {
        double step = (double)model.PriceStep;
        double least = Math.Ceiling(((double)taken + rest - (1e-6 * Math.Max(step, 1e-3))) / step - 1e-5) * step;
        return least < (double)below - (step / 2);
    }

    /// <summary>Takes the whole part of every share, else one pattern.</summary>
    public bool Take(PatternWork work, List<(Pattern Pattern, double Share)> shares, int stray)
    {
        bool any = false;
        foreach ((Pattern pattern, double share) in shares.OrderByDescending(s => s.Share))
        {
            int times = Math.Min((int)Math.Floor(share + 1e-6), pattern.MostWithin(work.Demand));
            for (int i = 0; i < times && work.CanTake(pattern.Slot); i++)
            {
                work.Take(pattern);
                any = true;
            }
        }
        if (any) return true;
        Pattern[] order = [.. shares.Where(s => s.Pattern.MostWithin(work.Demand) > 0 && work.CanTake(s.Pattern.Slot)).OrderByDescending(s => s.Share - Math.Floor(s.Share)).Select(s => s.Pattern)];
        if (order.Length == 0) return false;
        int pick = stray > 0 && random.OnceIn(stray) ? random.Below(Math.Min(order.Length, 6)) : 0;
        work.Take(order[pick]);
        return true;
    }
}
