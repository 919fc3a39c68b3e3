using System.Collections.Immutable;

namespace Setout.Drawing.Breakdowns;

/// <summary>Which bars stand on one drawing.</summary>
internal static class BoardPages
{
    /// <summary>Deals bars to drawings in their order. The lanes of a board stay together unless no drawing holds them all.</summary>
    /// <param name="bars">Height of each, and the board that it is a lane of; empty for a bar by itself.</param>
    /// <param name="first">Height for bars on the first drawing. Where the first board needs more and <paramref name="full"/> holds it, that counts instead.</param>
    /// <param name="full">Height for bars on every other.</param>
    /// <returns>How many bars each drawing has; none has less than one.</returns>
    public static ImmutableArray<int> Split(ImmutableArray<(double Height, string Board)> bars, double first, double full)
    {
        var counts = ImmutableArray.CreateBuilder<int>();
        double room = first, used = 0;
        int count = 0, next = 0;
        while (next < bars.Length)
        {
            string board = bars[next].Board;
            int lanes = board.Length == 0 ? 1 : bars.Skip(next).TakeWhile(b => b.Board == board).Count();
            double together = bars.Skip(next).Take(lanes).Sum(b => b.Height);
            if (used + together > room)
            {
                // Higher than any drawing: its lanes are dealt one by one.
                if (together > full) (lanes, together) = (1, bars[next].Height);
                if (used + together > room)
                {
                    if (count > 0) counts.Add(count);
                    (room, used, count) = (full, 0, 0);
                }
            }
            used += together;
            count += lanes;
            next += lanes;
        }
        if (count > 0) counts.Add(count);
        return counts.ToImmutable();
    }
}
