using Setout.Core.SettingOut;
using Setout.Core.Workings;

namespace Setout.Shop.Runs;

/// <summary>What a part waits for, in words that a person at the bench can follow.</summary>
internal static class HeldWords
{
    /// <summary>Such as <c>opening B2, clear width, once it stands (B2.width)</c>; without the key for whoever enters it where it is asked by name.</summary>
    public static string Of(SetPiece set, QuantityKey key) =>
        set.Worked.Values.TryGetValue(key, out Worked? worked) && worked.Quantity.Name is { Length: > 0 } name
            ? $"{name}{(name.Contains("clear", StringComparison.Ordinal) ? ", once it stands" : "")}{set.Piece.Hand.Say($" ({key})", "")}"
            : key.Text;
}
