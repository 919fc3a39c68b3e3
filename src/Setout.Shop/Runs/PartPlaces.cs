using System.Collections.Immutable;
using Setout.Shop.Plans;

namespace Setout.Shop.Runs;

/// <summary>Where a part comes from.</summary>
/// <param name="Stock">The sheet or board, as it is called at the saw.</param>
/// <param name="Run">The run that cuts it to its last size; null where it needs no cut, or where no run makes it.</param>
/// <param name="Count">How many of it.</param>
public sealed record PartPlace(string Stock, int? Run, int Count);

/// <summary>Finds parts on the sheets and boards of a plan.</summary>
public static class PartPlaces
{
    /// <summary>The places of a part, in the order of the runs; empty where it is not laid.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="part">The key of the part.</param>
    public static ImmutableArray<PartPlace> Of(Plan plan, string part)
    {
        // Waste that could give such a part is none.
        int[] blanks = [.. plan.Runs.Blanks.Where(b => b.Use == Cutting.Runs.BlankUse.Part && b.PartId.Split('#')[0] == part).Select(b => b.Id)];
        if (blanks.Length == 0) return [];
        Dictionary<int, int> made = plan.Runs.Runs.SelectMany(r => r.Cuts.SelectMany(c => new[] { c.Off, c.Rest }).OfType<int>().Select(id => (id, r.Number))).ToDictionary(m => m.id, m => m.Number);
        var names = SawnSheets.Of(plan).Names;
        return
        [
            .. blanks.Select(id => plan.Runs.Blanks[id]).GroupBy(b => (b.Material, b.Stock, Run: made.TryGetValue(b.Id, out int run) ? run : (int?)null))
                .OrderBy(g => g.Key.Run ?? 0).ThenBy(g => g.Key.Material).ThenBy(g => g.Key.Stock).Select(g => new PartPlace(names.SpokenStock(g.Key.Material, g.Key.Stock), g.Key.Run, g.Count())),
        ];
    }
}
