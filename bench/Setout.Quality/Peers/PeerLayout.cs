using System.Collections.Immutable;
using Setout.Cutting.Sheets;

namespace Setout.Quality.Peers;

/// <summary>One piece to lay, one kerf added to both sides, in ticks.</summary>
internal sealed record PeerPiece(int Part, long Width, long Height, bool MayTurn)
{
    public Int128 Area => (Int128)Width * Height;
}

/// <summary>One kind of sheet, trued, one kerf added to both sides, in ticks.</summary>
internal sealed record PeerSheet(long Width, long Height, decimal Cost, int Limit)
{
    public Int128 Area => (Int128)Width * Height;
}

/// <summary>A piece where it lies.</summary>
internal readonly record struct Laid(PeerPiece Piece, long X, long Y, bool Turned)
{
    public long Width => Turned ? Piece.Height : Piece.Width;

    public long Height => Turned ? Piece.Width : Piece.Height;
}

/// <summary>One sheet with what lies on it.</summary>
internal sealed record PeerLaidSheet(int Kind, IReadOnlyList<Laid> Laid);

/// <summary>An instance as the peers see it: rectangles on rectangles, in any places.</summary>
internal sealed class PeerModel
{
    public PeerModel(SheetInstance instance)
    {
        long kerf = instance.Kerf.Ticks;
        Pieces = [.. instance.Parts.SelectMany((p, i) => Enumerable.Repeat(
            new PeerPiece(i, p.Along.Ticks + kerf, p.Across.Ticks + kerf, p.Grain == GrainRule.Free && p.Along != p.Across), p.Count))];
        Sheets = [.. instance.Stock.Select(s => new PeerSheet(s.TruedAlong.Ticks + kerf, s.TruedAcross.Ticks + kerf, s.Cost.Amount, s.Limit ?? int.MaxValue))];
        Counts = [.. instance.Parts.Select(p => p.Count)];
    }

    public ImmutableArray<PeerPiece> Pieces { get; }

    public ImmutableArray<PeerSheet> Sheets { get; }

    public ImmutableArray<int> Counts { get; }

    /// <summary>Judges a layout: inside the sheet, nothing over anything else, grain kept, every piece once, limits of stock held.</summary>
    public Answer Judge(IReadOnlyList<PeerLaidSheet> sheets, double seconds)
    {
        ImmutableArray<string>.Builder wrong = ImmutableArray.CreateBuilder<string>();
        var laid = new int[Counts.Length];
        for (int i = 0; i < sheets.Count; i++)
        {
            PeerSheet sheet = Sheets[sheets[i].Kind];
            IReadOnlyList<Laid> here = sheets[i].Laid;
            for (int a = 0; a < here.Count; a++)
            {
                Laid one = here[a];
                laid[one.Piece.Part]++;
                if (one.X < 0 || one.Y < 0 || one.X + one.Width > sheet.Width || one.Y + one.Height > sheet.Height) wrong.Add($"a part {one.Piece.Part} lies beyond sheet {i + 1}");
                if (one.Turned && !one.Piece.MayTurn) wrong.Add($"a part {one.Piece.Part} is turned on sheet {i + 1}");
                for (int b = 0; b < a; b++)
                    if (Over(one, here[b])) wrong.Add($"parts {one.Piece.Part} and {here[b].Piece.Part} lie over each other on sheet {i + 1}");
            }
        }
        int left = 0;
        for (int p = 0; p < laid.Length; p++)
        {
            if (laid[p] > Counts[p]) wrong.Add($"part {p} is laid {laid[p]} times, {Counts[p]} are wanted");
            left += Math.Max(0, Counts[p] - laid[p]);
        }
        for (int k = 0; k < Sheets.Length; k++)
            if (sheets.Count(s => s.Kind == k) > Sheets[k].Limit) wrong.Add($"more sheets of kind {k} are used than there are");
        return new(sheets.Count, sheets.Sum(s => Sheets[s.Kind].Cost), null, false, left, wrong.ToImmutable(), seconds);
    }

    private static bool Over(Laid a, Laid b) =>
        a.X < b.X + b.Width && b.X < a.X + a.Width && a.Y < b.Y + b.Height && b.Y < a.Y + a.Height;
}
