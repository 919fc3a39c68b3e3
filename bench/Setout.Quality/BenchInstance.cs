using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Cutting.Boards;
using Setout.Cutting.Sheets;

namespace Setout.Quality;

/// <summary>A stock sheet of a published instance, in its whole numbers.</summary>
internal sealed record PlainStock(int Width, int Height, int? Limit, decimal Cost);

/// <summary>A part of a published instance; for boards the height is 1. No demand (max_value problems) is any number.</summary>
internal sealed record PlainPart(int Width, int Height, int? Demand, decimal Value)
{
    public int Count => Demand ?? throw new InvalidOperationException("A part of any number has no count.");
}

/// <summary>A published instance as its file gives it.</summary>
internal sealed record BenchInstance(string Id, string Family, string Problem, ImmutableArray<PlainStock> Stock, ImmutableArray<PlainPart> Parts)
{
    public bool IsBoards => Problem == "min_bars";

    /// <summary>The same with the area of each sheet as its cost; problems that count sheets stay as they are.</summary>
    public BenchInstance CostByArea() => Problem != "min_cost" ? this
        : this with { Stock = [.. Stock.Select(s => s with { Cost = (decimal)s.Width * s.Height })] };

    /// <summary>Width lies along the grain and height across; a whole number is a millimetre.</summary>
    /// <param name="mayTurn">Whether parts may be turned.</param>
    /// <param name="scale">Every size is multiplied by this.</param>
    /// <param name="kerf">Taken off every part and every sheet (each still stands for its own size), and set as the kerf of the saw.</param>
    public SheetInstance Sheets(bool mayTurn, int scale = 1, int kerf = 0) => new(
        [.. Parts.Select((p, i) => new SheetPart($"p{i}", Size(p.Width, scale, kerf), Size(p.Height, scale, kerf), p.Count, mayTurn ? GrainRule.Free : GrainRule.Keep))],
        [.. Stock.Select((s, i) => new SheetStock($"s{i}", Size(s.Width, scale, kerf), Size(s.Height, scale, kerf), EdgeTrim.None, new(s.Cost), s.Limit))],
        Length.FromMillimetres(kerf),
        KeepRule.Nothing);

    public BoardInstance Boards(int scale = 1, int kerf = 0) => new(
        [.. Parts.Select((p, i) => new BoardPart($"p{i}", Size(p.Width, scale, kerf), p.Count))],
        [.. Stock.Select((s, i) => new BoardStock($"s{i}", Size(s.Width, scale, kerf), EndTrim.None, new(s.Cost), s.Limit))],
        Length.FromMillimetres(kerf),
        Length.FromTicks(long.MaxValue));

    private static Length Size(int size, int scale, int kerf) => Length.FromMillimetres(size * scale - kerf);
}
