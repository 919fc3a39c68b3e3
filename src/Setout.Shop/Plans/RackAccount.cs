using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Shop.Texts;

namespace Setout.Shop.Plans;

/// <summary>
/// Who took what from the shop's rack while one plan is made: a board or a sheet that two materials may use is handed out once. Materials are
/// served in the turn of their first search. Later searches of one may use no more of what is shared than it took then, so that what the others
/// count on stays theirs, and so that a layout and a bound found before still stand.
/// </summary>
internal sealed class RackAccount
{
    private readonly HashSet<int> _offered = [], _shared = [];
    private readonly SortedDictionary<int, List<(string By, int Count)>> _taken = [];
    private readonly HashSet<string> _served = new(StringComparer.Ordinal);

    /// <summary>Notes what one material is offered; all materials are noted before the first is served.</summary>
    public void Offer(ImmutableArray<StockLine> lines)
    {
        foreach (int place in lines.Select(l => l.RackPlace).OfType<int>())
            if (!_offered.Add(place)) _shared.Add(place);
    }

    /// <summary>What a material may use of its lines. One of which nothing is left stays, with none in hand and words that say who has it.</summary>
    public ImmutableArray<StockLine> Left(string material, ImmutableArray<StockLine> lines) => [.. lines.Select(l => Left(material, l))];

    private StockLine Left(string material, StockLine line)
    {
        if (line is not { RackPlace: { } place, Size.InHand: { } there } || !_shared.Contains(place)) return line;
        List<(string By, int Count)> taken = _taken.GetValueOrDefault(place, []);
        if (_served.Contains(material)) return line with { Size = line.Size with { InHand = taken.Where(t => t.By == material).Sum(t => t.Count) } };
        int left = Math.Max(0, there - taken.Sum(t => t.Count));
        return line with { Size = line.Size with { InHand = left }, Words = left > 0 ? line.Words : $"{line.Words}, taken for {string.Join(", ", taken.Select(t => t.By))}" };
    }

    /// <summary>Notes what a material took with its first layout; later ones change nothing.</summary>
    /// <param name="material">Its name.</param>
    /// <param name="lines">What it was offered.</param>
    /// <param name="used">The id of each sheet or board of its layout.</param>
    public void Take(string material, ImmutableArray<StockLine> lines, IEnumerable<string> used)
    {
        if (!_served.Add(material)) return;
        foreach ((string id, int count) in used.CountBy(id => id))
        {
            if (lines.First(l => l.Id == id).RackPlace is not { } place) continue;
            if (!_taken.TryGetValue(place, out var taken)) _taken[place] = taken = [];
            taken.Add((material, count));
        }
    }

    /// <summary>
    /// The turn in which materials are served: as the piece has them, but those that wider boards may be ripped for come last, the widest first,
    /// so that a board is not ripped for one material while another needs it whole.
    /// </summary>
    public static IEnumerable<Material> InTurn(IEnumerable<Material> materials, Texts.Shop shop) => materials
        .Select(m => (Material: m, Width: m is Stick stick && Ripping.Boards(stick, shop).Any() ? StickSection.Of(stick)?.Width : null))
        .OrderBy(m => m.Width is not null).ThenByDescending(m => m.Width ?? ExactLength.Zero).Select(m => m.Material);
}
