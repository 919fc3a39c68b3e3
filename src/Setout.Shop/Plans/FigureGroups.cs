using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Cutting;
using Setout.Cutting.Sheets;

namespace Setout.Shop.Plans;

/// <summary>The fronts of a bank whose figure runs through, as figure groups of a layout.</summary>
internal static class FigureGroups
{
    /// <summary>
    /// A group for each bank of this material that asks for it. The figure of a front runs from side to side, so its fronts follow each other across
    /// the grain. A front that is cut already parts its bank: those above and those below it run through among themselves.
    /// </summary>
    /// <param name="set">The piece.</param>
    /// <param name="panel">The material that is laid out.</param>
    /// <param name="parts">What is to be laid out of it.</param>
    /// <param name="findings">Told where the material has no grain to keep.</param>
    public static ImmutableArray<FigureGroup> Of(SetPiece set, Panel panel, IEnumerable<Part> parts, List<Finding> findings)
    {
        Dictionary<string, Part> there = parts.ToDictionary(p => p.Key, StringComparer.Ordinal);
        ImmutableArray<FigureGroup>.Builder groups = ImmutableArray.CreateBuilder<FigureGroup>();
        foreach (DrawerBank bank in Banks(set.Piece).Where(b => b.FigureThrough))
        {
            Part[] fronts = [.. bank.Drawers.Select(d => there.GetValueOrDefault($"{d.Key}.front")).OfType<Part>()];
            if (fronts.FirstOrDefault(f => f.Grain != Grain.Keep) is { } free)
            {
                findings.Add(new("figure.no-grain", Severity.Warn, free.Key, $"The figure of {free.Name} and of those below it cannot be made to run through: {panel.Name} has no grain to keep.",
                    $"Take 'figure: through' off, or write 'grain: keep' for {panel.Name}.", free.Place));
                continue;
            }
            var run = new List<string>();
            foreach (Drawer drawer in bank.Drawers)
            {
                if (there.TryGetValue($"{drawer.Key}.front", out Part? front)) run.Add(front.Key);
                else Close(run, groups);
            }
            Close(run, groups);
        }
        return groups.ToImmutable();
    }

    /// <summary>Says of each group that fits no stock that it does not, once; gives the reasons that are left.</summary>
    public static IEnumerable<CuttingReason> Report(
        SetPiece set, Panel panel, ImmutableArray<StockLine> stock, SheetInstance instance, ImmutableArray<CuttingReason> reasons, List<Finding> findings)
    {
        foreach (FigureGroup group in instance.Groups.Where(g => reasons.Any(r => r.Kind == ReasonKind.FigureTooLarge && r.Subject == g.PartIds[0])))
        {
            Part[] parts = [.. group.PartIds.Select(id => set.Parts.First(p => p.Key == id))];
            findings.Add(new("figure.too-large", Severity.Stop, parts[0].Key,
                $"{string.Join(", ", parts.Select(p => p.Name))} cannot be cut below each other from one sheet of {panel.Name}: {string.Join("; ", stock.Select(s => s.Words))}.",
                "Offer a larger size in the shop file, or take 'figure: through' off the bank.", parts[0].Place));
        }
        return reasons.Where(r => r.Kind != ReasonKind.FigureTooLarge);
    }

    private static void Close(List<string> run, ImmutableArray<FigureGroup>.Builder groups)
    {
        if (run.Count > 1) groups.Add(new($"figure of {run[0]}", GrainAxis.Across, [.. run]));
        run.Clear();
    }

    private static IEnumerable<DrawerBank> Banks(Piece piece) => piece.Members.SelectMany(m => m switch
    {
        Frame frame => Banks(frame.Bays),
        Case box => Banks(box.Content),
        _ => [],
    });

    private static IEnumerable<DrawerBank> Banks(OpeningContent? content) => content switch
    {
        DrawerBank bank => [bank],
        Core.Pieces.Division division => division.Items.OfType<Opening>().SelectMany(o => Banks(o.Content)),
        _ => [],
    };
}
