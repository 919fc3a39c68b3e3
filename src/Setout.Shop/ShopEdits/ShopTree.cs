using Setout.Core.Measures.Text;
using Setout.Shop.Texts;

namespace Setout.Shop.ShopEdits;

/// <summary>What stands in the text of a shop, where the shop as it is read does not tell it.</summary>
public static class ShopTree
{
    /// <summary>The unit of bare figures; inches where the text does not say.</summary>
    public static LengthUnit Unit(string text) => Unit(Root(text));

    /// <summary>The same of a text that is read already.</summary>
    internal static LengthUnit Unit(YamlMap? root) => root?["unit"] is YamlScalar { Text: "mm" } ? LengthUnit.Millimetre : LengthUnit.Inch;

    /// <summary>How many items a list of the outermost map has.</summary>
    public static int Count(string text, string list) => (Root(text)?[list] as YamlList)?.Items.Length ?? 0;

    /// <summary>What a key of a thing says; empty where it says nothing, or is not told in one value.</summary>
    /// <param name="text">A shop file.</param>
    /// <param name="thing">Which thing: see <see cref="ShopChoices"/>.</param>
    /// <param name="key">The key.</param>
    public static string Said(string text, string thing, string key) => Root(text) is { } root && ShopPlace.Find(root, thing) is { IsList: false } place ? place.Text(key) : "";

    /// <summary>True where the text says that there is no such thing.</summary>
    public static bool SaysNo(string text, string thing) => Root(text) is { } root && ShopPlace.Find(root, thing)?.Node is YamlScalar { Text.Length: > 0 };

    private static YamlMap? Root(string text) => YamlTree.Read(text) is { IsSound: true, Value: YamlMap root } ? root : null;
}
