using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Cutting.Sheets;

namespace Setout.Quality.Everyday;

/// <summary>The parts of a job as they are thought of, in sixteenths of an inch; equal ones become one part with a count.</summary>
internal sealed class JobParts
{
    private readonly List<(string Material, int Along, int Across, GrainRule Grain)> _parts = [];

    public int Count => _parts.Count;

    public void Add(string material, int along, int across, int count, GrainRule grain)
    {
        for (int i = 0; i < count; i++) _parts.Add((material, along, across, grain));
    }

    /// <summary>Takes the last ones away until so many are left.</summary>
    public void TrimTo(int most)
    {
        if (_parts.Count > most) _parts.RemoveRange(most, _parts.Count - most);
    }

    public ImmutableArray<SheetPart> Of(string material) =>
    [
        .. _parts.Where(p => p.Material == material).GroupBy(p => p)
            .Select((g, i) => new SheetPart($"p{i}", Length.FromInches(g.Key.Along, 16), Length.FromInches(g.Key.Across, 16), g.Count(), g.Key.Grain)),
    ];
}
