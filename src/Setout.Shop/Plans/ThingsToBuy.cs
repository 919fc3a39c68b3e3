using System.Collections.Immutable;
using Setout.Core.SettingOut;

namespace Setout.Shop.Plans;

/// <summary>What a piece needs besides wood.</summary>
public static class ThingsToBuy
{
    /// <summary>What glue is called on the buying list and in prices.</summary>
    public const string Glue = "Wood glue";

    /// <summary>The hardware of the piece, and glue where a joint is glued; that belongs to no one thing, so its key is empty.</summary>
    public static IEnumerable<HardwareItem> Of(SetPiece set) => set.Joints.Any(j => j.Held.Contains("glue", StringComparison.Ordinal) && j.Held != "no glue")
        ? set.Hardware.Append(new("", Glue, 1, "bottle", "read the label for its open time"))
        : set.Hardware;

    /// <summary>Whether something has this name, or is marked by it.</summary>
    public static bool Has(SetPiece set, string name) => Of(set).Any(h => h.Name == name || h.MarkedBy == name);

    /// <summary>Whether all that is marked by this is marked bought: wood by its material, a thing by its name or with each thing that it belongs to.</summary>
    public static bool IsBought(SetPiece set, string mark) =>
        set.Facts.Bought.Contains(mark) || (Of(set).Where(h => h.MarkedBy == mark).ToArray() is { Length: > 0 } of && of.All(h => MarksOf(set, h).Any(set.Facts.Bought.Contains)));

    /// <summary>What a mark may name that says that something is bought. A material that is bought has its wood, and not yet the band for its edges.</summary>
    public static IEnumerable<string> MarksOf(SetPiece set, HardwareItem item) => set.Piece.Materials.ContainsKey(item.Key) ? [item.Name] : [item.Name, item.Key];
}
