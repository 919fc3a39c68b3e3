using System.Collections.Immutable;
using Setout.Core.Pieces;

namespace Setout.Core.SettingOut.Whole;

/// <summary>What stands and holds drawers is kept from tipping, after it stands level and is joined to its neighbours; what hangs is fixed already.</summary>
internal static class AnchorRule
{
    public static void Write(Book book, IEnumerable<Structure> standing)
    {
        ImmutableArray<Structure> all = [.. standing], loaded = [.. all.Where(s => s is not Case { IsHung: true } && HoldsDrawers(s))];
        if (loaded.IsEmpty) return;
        string what = all.Any(s => s is Case { IsHung: true }) ? string.Join(" and ", loaded.Select(s => s.Name.Length > 0 ? s.Name : $"{(s is Frame ? "frame" : "case")} {s.Key}")) : "the piece";
        book.Steps.Add(new(Stage.Fixing, $"Anchor {what} to the wall, or weight {(loaded.Length > 1 && what != "the piece" ? "their feet" : "its foot")}, before drawers are loaded.", [], null, "tip"));
    }

    private static bool HoldsDrawers(Structure structure) => Contents(structure).Any(c => c.Within(alsoFromBehind: true).OfType<DrawerBank>().Any());

    private static IEnumerable<OpeningContent?> Contents(Structure structure) => structure switch
    {
        Case c => [c.Content],
        Frame f => [f.Bays],
        _ => [],
    };
}
