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

    /// <summary>Whether few people need a field of the stock.</summary>
    /// <param name="kind">The kind of map.</param>
    /// <param name="key">The key.</param>
    public static bool IsMore(string kind, string key) => kind switch
    {
        "stock-panel" => key is not ("panel" or "label" or "size" or "price" or "have" or "read"),
        "stock-lumber" => key is not ("lumber" or "length" or "price" or "have"),
        "stock-stick" => key is not ("stick" or "section" or "length" or "price" or "have"),
        _ => false,
    };

    /// <summary>What the fields are called that few people need.</summary>
    /// <param name="kind">The kind of map.</param>
    public static string More(string kind) => kind switch
    {
        "stock-panel" => "More about this sheet",
        "stock-lumber" => "More about this lumber",
        "stock-stick" => "More about this stick",
        _ => "More",
    };

    /// <summary>What is said under a field; nothing where its label says it.</summary>
    /// <param name="kind">The kind of map.</param>
    /// <param name="key">The key.</param>
    /// <param name="about">What the schema says.</param>
    public static string About(string kind, string key, string about)
    {
        if (key == "read") return "The thickness measured on this very sheet, at most 4 in; say also how many there are.";
        string bare = about.TrimEnd('.').ToLowerInvariant(), label = Label(kind, key);
        return label.Contains(bare, StringComparison.OrdinalIgnoreCase) || bare == $"its {label}" ? "" : about;
    }
}
