namespace Setout.Cutting.Boards.Search;

/// <summary>
/// Fillings of a board of several lanes or clear stretches around the longest part still waiting: it goes, with one of the fullest
/// fillings around it, into the shortest bin that holds it and into the longest; every other bin, longest first, is then filled around the
/// longest part that still waits and fits. What it cannot find: most of the ways to fill the other bins.
/// </summary>
internal sealed class BinSets(BoardModel model, SearchMeter meter)
{
    private readonly Completions _completions = new(model, meter);

    /// <summary>Adds up to so many fillings for each of the two bins tried.</summary>
    public void List(int[] pool, int longest, int stock, int most, List<Filling> into)
    {
        long[] bins = model.Stock[stock].Bins;
        int[] order = [.. Enumerable.Range(0, bins.Length).OrderByDescending(i => bins[i])];
        int large = order[0], small = order.Last(i => bins[i] >= model.Types[longest].Length);
        foreach (int first in bins[large] == bins[small] ? [large] : new[] { large, small })
        {
            var fills = new List<BinFill>();
            _completions.List(pool, longest, bins[first], 0, fills);
            foreach (BinFill fill in fills.OrderByDescending(f => f.Used).Take(most))
            {
                int[] rest = [.. pool];
                BinFill[] set = [.. bins.Select(_ => BinFill.Nothing)];
                Put(set, first, fill, rest);
                foreach (int other in order.Where(i => i != first)) Put(set, other, Fullest(rest, bins[other]), rest);
                into.Add(Filling.Of(stock, set));
            }
        }
    }

    private static void Put(BinFill[] set, int bin, BinFill fill, int[] rest)
    {
        set[bin] = fill;
        foreach ((int type, int count) in fill.Parts) rest[type] -= count;
    }

    private BinFill Fullest(int[] rest, long bin)
    {
        int longest = Array.FindIndex(model.Types, t => t.Length <= bin);
        while (longest >= 0 && longest < rest.Length && rest[longest] == 0) longest++;
        if (longest < 0 || longest >= rest.Length) return BinFill.Nothing;
        var fills = new List<BinFill>();
        _completions.List(rest, longest, bin, 0, fills);
        return fills.MaxBy(f => f.Used) ?? BinFill.Nothing;
    }
}
