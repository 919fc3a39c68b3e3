using System.Collections.Immutable;

namespace Setout.Drawing.Scenes;

/// <summary>What is left of a rectangle when others are taken out of it: cells that fill it, and the lines round it.</summary>
public sealed class Region
{
    private readonly double[] _x, _y;
    private readonly bool[,] _filled;

    /// <summary>Takes rectangles out of one.</summary>
    /// <param name="whole">The rectangle.</param>
    /// <param name="taken">What goes; parts of it outside do not matter.</param>
    public Region(Box whole, IReadOnlyCollection<Box> taken)
    {
        Box[] cut = [.. taken.Where(whole.Overlaps).Select(t => new Box(Math.Max(t.Left, whole.Left), Math.Max(t.Top, whole.Top), Math.Min(t.Right, whole.Right), Math.Min(t.Bottom, whole.Bottom)))];
        _x = [.. cut.SelectMany(c => new[] { c.Left, c.Right }).Append(whole.Left).Append(whole.Right).Distinct().Order()];
        _y = [.. cut.SelectMany(c => new[] { c.Top, c.Bottom }).Append(whole.Top).Append(whole.Bottom).Distinct().Order()];
        _filled = new bool[_x.Length - 1, _y.Length - 1];
        for (int i = 0; i < _x.Length - 1; i++)
            for (int j = 0; j < _y.Length - 1; j++)
                _filled[i, j] = !cut.Any(c => c.Left <= _x[i] && _x[i + 1] <= c.Right && c.Top <= _y[j] && _y[j + 1] <= c.Bottom);
    }

    /// <summary>Whether nothing is left.</summary>
    public bool IsEmpty => !_filled.Cast<bool>().Any(f => f);

    /// <summary>Rectangles that fill it and do not overlap, as wide as they can be.</summary>
    public ImmutableArray<Box> Cells
    {
        get
        {
            var cells = ImmutableArray.CreateBuilder<Box>();
            for (int j = 0; j < _y.Length - 1; j++)
            {
                for (int i = 0; i < _x.Length - 1; i++)
                {
                    if (!_filled[i, j]) continue;
                    int from = i;
                    while (i + 1 < _x.Length - 1 && _filled[i + 1, j]) i++;
                    // A row like the one above makes that one higher.
                    Box? above = cells.Count == 0 ? null : cells.Where(c => c.Left == _x[from] && c.Right == _x[i + 1] && c.Bottom == _y[j]).Cast<Box?>().FirstOrDefault();
                    Box cell = new(_x[from], above?.Top ?? _y[j], _x[i + 1], _y[j + 1]);
                    if (above is { } joined) cells[cells.IndexOf(joined)] = cell;
                    else cells.Add(cell);
                }
            }
            return cells.ToImmutable();
        }
    }

    /// <summary>The lines between what is left and what is not, each as long as it can be.</summary>
    public ImmutableArray<(Point From, Point To)> Edges =>
    [
        .. Runs(_x.Length, _y.Length - 1, (i, j) => Filled(i - 1, j) != Filled(i, j)).Select(r => (new Point(_x[r.Line], _y[r.From]), new Point(_x[r.Line], _y[r.To]))),
        .. Runs(_y.Length, _x.Length - 1, (j, i) => Filled(i, j - 1) != Filled(i, j)).Select(r => (new Point(_x[r.From], _y[r.Line]), new Point(_x[r.To], _y[r.Line]))),
    ];

    private bool Filled(int i, int j) => i >= 0 && j >= 0 && i < _x.Length - 1 && j < _y.Length - 1 && _filled[i, j];

    private static IEnumerable<(int Line, int From, int To)> Runs(int lines, int steps, Func<int, int, bool> isEdge)
    {
        for (int line = 0; line < lines; line++)
        {
            for (int step = 0; step < steps; step++)
            {
                if (!isEdge(line, step)) continue;
                int from = step;
                while (step + 1 < steps && isEdge(line, step + 1)) step++;
                yield return (line, from, step + 1);
            }
        }
    }
}
