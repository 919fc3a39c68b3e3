using System.Diagnostics;
using Setout.Cutting.Sheets;

namespace Setout.Quality.Peers;

/// <summary>
/// A general constraint solver to compare with, told only that rectangles may not lie over each other; no saw need be able to cut what it lays.
/// It starts from the plain packer. One model of all sheets finds nothing at size, so first it fills sheet by sheet, as much area as it can on
/// each, the largest part left always on it; what time is left it asks for all parts on one sheet fewer, and again. Two workers, one kind of sheet.
/// </summary>
internal static class ConstraintPacker
{
    public static Answer Lay(SheetInstance instance, SolveTime time)
    {
        var clock = Stopwatch.StartNew();
        double Left() => time.Seconds - clock.Elapsed.TotalSeconds;
        var model = new PeerModel(instance);
        PeerSheet sheet = model.Sheets[0];
        IReadOnlyList<PeerLaidSheet> best = PlainPacker.Lay(model, model.Pieces);
        int least = AreaBound(model.Pieces, sheet);
        if (best.Count > least && SheetBySheet(model, best.Count, () => Left() - (time.Seconds / 2)) is { } filled) best = filled;
        while (best.Count > least && Left() > 0.05)
        {
            if (OverlapModel.AllOn(sheet, best.Count - 1, best, Left()) is not { } fewer) break;
            best = fewer;
        }
        return model.Judge(best, clock.Elapsed.TotalSeconds);
    }

    // Null unless it ends with fewer sheets than the best so far.
    private static IReadOnlyList<PeerLaidSheet>? SheetBySheet(PeerModel model, int best, Func<double> left)
    {
        PeerSheet sheet = model.Sheets[0];
        List<PeerPiece> pieces = [.. model.Pieces.OrderByDescending(p => p.Area)];
        var laid = new List<PeerLaidSheet>();
        while (pieces.Count > 0)
        {
            IReadOnlyList<PeerLaidSheet> rest = PlainPacker.Lay(model, pieces);
            if (laid.Count + rest.Count < best) return [.. laid, .. rest];
            int to = AreaBound(pieces, sheet);
            if (laid.Count + to >= best || left() < 0.05) return null;
            PeerLaidSheet hint = rest.MaxBy(s => s.Laid.Where(l => l.Piece == pieces[0]).Take(1).Sum(_ => 1.0) + ((double)s.Laid.Sum(l => (double)l.Piece.Area) / (double)sheet.Area))!;
            PeerLaidSheet full = OverlapModel.MostOn(sheet, pieces, hint, left() / to) ?? hint;
            laid.Add(full);
            foreach (Laid l in full.Laid) pieces.Remove(l.Piece);
        }
        return laid.Count < best ? laid : null;
    }

    private static int AreaBound(IEnumerable<PeerPiece> pieces, PeerSheet sheet)
    {
        Int128 area = 0;
        foreach (PeerPiece piece in pieces) area += piece.Area;
        return (int)((area + sheet.Area - 1) / sheet.Area);
    }
}
