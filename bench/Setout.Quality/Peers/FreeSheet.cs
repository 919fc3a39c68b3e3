namespace Setout.Quality.Peers;

/// <summary>
/// A sheet with the largest free rectangles that are left on it; they may lie over each other (the maximal-rectangles idea as told by
/// Jylänki, "A thousand ways to pack the bin", 2010, from memory).
/// </summary>
internal sealed class FreeSheet(int kind, PeerSheet sheet)
{
    private readonly record struct Free(long X, long Y, long Width, long Height);

    private readonly List<Laid> _laid = [];
    private List<Free> _free = [new(0, 0, sheet.Width, sheet.Height)];

    public PeerLaidSheet Result => new(kind, _laid);

    /// <summary>The place with the least left over on one side, then on the other; null when the piece fits nowhere.</summary>
    public (long Short, long Long, Laid Place)? Best(PeerPiece piece)
    {
        (long Short, long Long, Laid Place)? best = null;
        foreach (Free free in _free)
            foreach (bool turned in piece.MayTurn ? (ReadOnlySpan<bool>)[false, true] : [false])
            {
                var laid = new Laid(piece, free.X, free.Y, turned);
                long across = free.Width - laid.Width, up = free.Height - laid.Height;
                if (across < 0 || up < 0) continue;
                (long least, long most) = (Math.Min(across, up), Math.Max(across, up));
                if (best is not { } b || (least, most).CompareTo((b.Short, b.Long)) < 0) best = (least, most, laid);
            }
        return best;
    }

    public void Lay(Laid laid)
    {
        _laid.Add(laid);
        var cut = new List<Free>();
        foreach (Free f in _free)
        {
            if (laid.X >= f.X + f.Width || laid.X + laid.Width <= f.X || laid.Y >= f.Y + f.Height || laid.Y + laid.Height <= f.Y)
            {
                cut.Add(f);
                continue;
            }
            if (laid.X > f.X) cut.Add(f with { Width = laid.X - f.X });
            if (laid.X + laid.Width < f.X + f.Width) cut.Add(new(laid.X + laid.Width, f.Y, f.X + f.Width - laid.X - laid.Width, f.Height));
            if (laid.Y > f.Y) cut.Add(f with { Height = laid.Y - f.Y });
            if (laid.Y + laid.Height < f.Y + f.Height) cut.Add(new(f.X, laid.Y + laid.Height, f.Width, f.Y + f.Height - laid.Y - laid.Height));
        }
        // Only those that lie in no other are kept; of equal ones the first.
        _free = [.. cut.Where((f, i) => !cut.Where((g, j) => j != i && Within(f, g) && (!Within(g, f) || j < i)).Any())];
    }

    private static bool Within(Free a, Free b) =>
        a.X >= b.X && a.Y >= b.Y && a.X + a.Width <= b.X + b.Width && a.Y + a.Height <= b.Y + b.Height;
}
