using System.Diagnostics;
using Setout.Cutting.Sheets;

namespace Setout.Quality.Peers;

/// <summary>
/// A plain packer to compare with: parts by falling area, each in the place where it leaves least on one side, on any open sheet; where it
/// fits none, a sheet is opened, of the kind that costs least for its area among those that hold the part. No saw need be able to cut it.
/// </summary>
internal static class PlainPacker
{
    public static Answer Lay(SheetInstance instance, SolveTime time)
    {
        long start = Stopwatch.GetTimestamp();
        var model = new PeerModel(instance);
        IReadOnlyList<PeerLaidSheet> sheets = Lay(model, model.Pieces);
        return model.Judge(sheets, Stopwatch.GetElapsedTime(start).TotalSeconds);
    }

    public static IReadOnlyList<PeerLaidSheet> Lay(PeerModel model, IEnumerable<PeerPiece> pieces)
    {
        var open = new List<FreeSheet>();
        var used = new int[model.Sheets.Length];
        foreach (PeerPiece piece in pieces.OrderByDescending(p => p.Area).ThenByDescending(p => Math.Max(p.Width, p.Height)))
        {
            (FreeSheet Sheet, (long Short, long Long, Laid Place) At)? best = null;
            foreach (FreeSheet sheet in open)
                if (sheet.Best(piece) is { } at && (best is not { } b || (at.Short, at.Long).CompareTo((b.At.Short, b.At.Long)) < 0)) best = (sheet, at);
            if (best is null && Open(model, piece, used) is { } fresh)
            {
                open.Add(fresh);
                best = (fresh, fresh.Best(piece)!.Value);
            }
            best?.Sheet.Lay(best.Value.At.Place);
        }
        return [.. open.Select(s => s.Result)];
    }

    private static FreeSheet? Open(PeerModel model, PeerPiece piece, int[] used)
    {
        int? kind = Enumerable.Range(0, model.Sheets.Length)
            .Where(k => used[k] < model.Sheets[k].Limit && new FreeSheet(k, model.Sheets[k]).Best(piece) is not null)
            .OrderBy(k => (double)model.Sheets[k].Cost / (double)model.Sheets[k].Area)
            .Cast<int?>().FirstOrDefault();
        if (kind is not { } found) return null;
        used[found]++;
        return new(found, model.Sheets[found]);
    }
}
