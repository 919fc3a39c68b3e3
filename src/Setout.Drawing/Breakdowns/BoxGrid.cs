using Setout.Drawing.Scenes;

namespace Setout.Drawing.Breakdowns;

/// <summary>
/// Boxes on the paper, found by where they lie: a sheet of thousands of small parts asks thousands of times what is near a spot. A plain grid of
/// squares serves, since labels and small parts are all of about one size.
/// </summary>
internal sealed class BoxGrid
{
    /// <summary>The side of a square, in millimetres: about a label.</summary>
    private const double Square = 8;

    /// <summary>Boxes over more squares than this are kept aside and looked at each time: there are few of them.</summary>
    private const int Many = 64;

    private readonly Dictionary<(int, int), List<int>> _squares = [];
    private readonly List<Box> _boxes = [];
    private readonly List<int> _large = [];

    /// <summary>All of them, in the order they came.</summary>
    public IReadOnlyList<Box> All => _boxes;

    /// <summary>Adds one more.</summary>
    public void Add(Box box)
    {
        int index = _boxes.Count;
        _boxes.Add(box);
        (int left, int top, int right, int bottom) = Squares(box);
        if ((right - left + 1L) * (bottom - top + 1L) > Many)
        {
            _large.Add(index);
            return;
        }
        for (int x = left; x <= right; x++)
        {
            for (int y = top; y <= bottom; y++)
            {
                if (!_squares.TryGetValue((x, y), out List<int>? here)) _squares[(x, y)] = here = [];
                here.Add(index);
            }
        }
    }

    /// <summary>The places in <see cref="All"/> of the boxes that share an edge or more with a box, in the order they came, each once.</summary>
    public IEnumerable<int> Near(Box box)
    {
        (int left, int top, int right, int bottom) = Squares(box);
        var found = new SortedSet<int>(_large.Where(i => Meet(_boxes[i], box)));
        for (int x = left; x <= right; x++)
        {
            for (int y = top; y <= bottom; y++)
            {
                if (!_squares.TryGetValue((x, y), out List<int>? here)) continue;
                foreach (int i in here) if (Meet(_boxes[i], box)) found.Add(i);
            }
        }
        return found;
    }

    private static bool Meet(Box a, Box b) => a.Left <= b.Right && b.Left <= a.Right && a.Top <= b.Bottom && b.Top <= a.Bottom;

    private static (int, int, int, int) Squares(Box box) =>
        ((int)Math.Floor(box.Left / Square), (int)Math.Floor(box.Top / Square), (int)Math.Floor(box.Right / Square), (int)Math.Floor(box.Bottom / Square));
}
