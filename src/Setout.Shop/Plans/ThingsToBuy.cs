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

    /// <summary>Whether something has this name.</summary>
    public static bool Has(SetPiece set, string name) => Of(set).Any(h => h.Name == name);

    /// <summary>Whether it is marked bought: by its name, or with each thing that it belongs to.</summary>
    public static bool IsBought(SetPiece set, string name) => set.Facts.Bought.Contains(name) || (Of(set).Where(h => h.Name == name).ToArray() is { Length: > 0 } of && of.All(h => set.Facts.Bought.Contains(h.Key)));
}
