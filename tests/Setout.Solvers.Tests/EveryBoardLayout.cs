using Setout.Cutting.Boards;

namespace Setout.Solvers.Tests;

/// <summary>The least cost and, at that cost, the fewest boards of a tiny instance, by trying every way to lay every part.</summary>
internal sealed class EveryBoardLayout
{
    private readonly BoardInstance _instance;
    private readonly long[] _parts;
    private readonly long[][] _bins;
    private readonly int[] _left;
    private readonly List<long> _space = [];
    private (decimal Cost, int Boards)? _best;

    private EveryBoardLayout(BoardInstance instance)
    {
        _instance = instance;
        long kerf = instance.Kerf.Ticks;
        // One kerf more for each part and each stretch: then there is no kerf between parts.
        _parts = [.. instance.Parts.SelectMany(p => Enumerable.Repeat(p.Length.Ticks + kerf, p.Count)).OrderDescending()];
        _bins = [.. instance.Stock.Select(s => Stretches(s).SelectMany(c => Enumerable.Repeat(c + kerf, LanesOf(s))).ToArray())];
        _left = [.. instance.Stock.Select(s => s.Limit ?? int.MaxValue)];
    }

    /// <summary>Null when no layout holds every part.</summary>
    public static (decimal Cost, int Boards)? Least(BoardInstance instance)
    {
        var every = new EveryBoardLayout(instance);
        every.Lay(0, 0, 0);
        return every._best;
    }

    private static int LanesOf(BoardStock stock)
    {
        if (stock.Rip is not { } rip) return 1;
        int lanes = 0;
        while ((rip.LaneWidth * (lanes + 1)) + (rip.Kerf * lanes) <= rip.Width) lanes++;
        return lanes;
    }

    // Tests use defects that neither overlap nor pass the ends.
    private static IEnumerable<long> Stretches(BoardStock stock)
    {
        long at = stock.Trim.Start.Ticks;
        foreach (BoardStretch defect in stock.Defects.OrderBy(d => d.From))
        {
            if (defect.From.Ticks > at) yield return defect.From.Ticks - at;
            at = Math.Max(at, defect.To.Ticks);
        }
        if (stock.Length.Ticks - stock.Trim.End.Ticks > at) yield return stock.Length.Ticks - stock.Trim.End.Ticks - at;
    }

    private void Lay(int part, decimal cost, int boards)
    {
        if (_best is { } best && (cost, boards).CompareTo(best) >= 0) return;
        if (part == _parts.Length)
        {
            _best = (cost, boards);
            return;
        }
        HashSet<long> tried = [];
        for (int i = 0; i < _space.Count; i++)
        {
            if (_space[i] < _parts[part] || !tried.Add(_space[i])) continue;
            _space[i] -= _parts[part];
            Lay(part + 1, cost, boards);
            _space[i] += _parts[part];
        }
        for (int s = 0; s < _bins.Length; s++)
        {
            if (_left[s] == 0) continue;
            int first = _space.Count;
            _left[s]--;
            _space.AddRange(_bins[s]);
            for (int i = first; i < _space.Count; i++)
            {
                if (_space[i] < _parts[part]) continue;
                _space[i] -= _parts[part];
                Lay(part + 1, cost + _instance.Stock[s].Cost.Amount, boards + 1);
                _space[i] += _parts[part];
            }
            _space.RemoveRange(first, _bins[s].Length);
            _left[s]++;
        }
    }
}
