namespace Setout.Shop.ShopEdits;

/// <summary>What the keys of a shop file are called on a page, where the key alone would not tell.</summary>
internal static class ShopWords
{
    /// <summary>The label of a field.</summary>
    /// <param name="kind">The kind of map.</param>
    /// <param name="key">The key.</param>
    public static string Label(string kind, string key) => (kind, key) switch
    {
        ("", "name") => "name of the shop",
        ("", "currency") => "currency of the prices",
        ("", "unit") => "unit of bare figures",
        ("", "lift") => "heaviest blank for one person",
        ("", "slack") => "slack at the far edges of sheets",
        ("", "most stages") => "most divisions between sheet and part",
        ("", "counted") => "the whole rack was counted",
        ("grid", "in") => "for pieces in inches",
        ("grid", "mm") => "for pieces in millimetres",
        ("kerf", "sheets") => "kerf in sheets",
        ("kerf", "boards") => "kerf across boards",
        ("kerf", "rips") => "kerf along boards, planing included",
        ("stock-panel", "panel") => "kind of sheet",
        ("stock-panel", "label") => "label, such as 3/4 or 18 mm",
        ("stock-panel", "size") => "size, along the grain first",
        ("stock-lumber", "lumber") => "its name in the yard, such as 2x4",
        ("stock-stick", "stick") => "kind of wood",
        (_, "price") when kind.StartsWith("stock-", StringComparison.Ordinal) => "price of one",
        (_, "have") => "how many in the rack",
        (_, "name") when kind.StartsWith("stock-", StringComparison.Ordinal) => "your own name for it",
        (_, "trim") => "trued off each edge or end",
        (_, "read") => "thickness read of it",
        (_, "for") => "kept for the piece",
        (_, "counted") => "counted on",
        (_, "rip") => "may be ripped",
        (_, "pack") => "how many in a pack",
        _ => key,
    };
}
