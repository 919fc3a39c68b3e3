using System.Collections.Immutable;
using System.Globalization;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Shop.Edits;
using Setout.Shop.Texts;

namespace Setout.Shop.ShopEdits;

/// <summary>Puts wood that was bought into the rack: on the line of such wood where there is one that is counted and has no name, else on a line of its own.</summary>
public static class BoughtWood
{
    /// <summary>The most of one thing that are believed to be bought at once.</summary>
    public const int Most = 10_000;

    /// <summary>The form that puts it there, with what one asks: how many, and what one cost. Null where the wood cannot be told in a shop file.</summary>
    /// <param name="text">The shop file.</param>
    /// <param name="wood">What was bought.</param>
    public static ShopChoice? Of(string text, ShopStock wood) => Edit(text, wood, 1, "") is null ? null : new("bought", "Bought",
        [new("count", "how many", FieldKind.Count, ""), new("price", "paid for one", FieldKind.Words, "") { MayBeEmpty = true }], v => Edit(text, wood, v.Count("count", 1, Most), v.Text("price") ?? "")!);

    private static ShopEdit? Edit(string text, ShopStock wood, int count, string price)
    {
        LengthUnit unit = ShopTree.Unit(text);
        string Say(Length length) => LengthFormat.For(unit).Bare.Format(length) is { IsExact: true } figure ? figure.ToString() : NamedLength.Exactly(length.ToExact());
        Texts.Shop shop = ShopText.Read(text).Value ?? Texts.Shop.Usual;
        string paid = price.Trim();
        if (shop.Stock.FirstOrDefault(s => s.Identity == wood.Identity && s.Size is { InHand: not null, Name.Length: 0, Flaws.IsEmpty: true } && s.Reads is null && (s.Size.Along, s.Size.Across) == (wood.Size.Along, wood.Size.Across) && s.For.Length == 0) is { } there)
        {
            string have = (there.Size.InHand!.Value + count).ToString(CultureInfo.InvariantCulture);
            return new FillIn($"stock.{there.Item}", paid.Length > 0 ? [("have", have), ("price", paid)] : [("have", have)]);
        }
        if (Wood.Of(wood) is not { } kind) return null;
        ImmutableArray<(string, string?)> of = [(kind.Word, kind.Kind), .. kind.Word == "panel" ? new (string, string?)[] { ("label", kind.Label), ("thickness", kind.Size) } : [("section", kind.Size)]];
        ImmutableArray<(string, string?)> size = wood.Size.Across is { } across ? [("size", $"{Say(wood.Size.Along)} x {Say(across)}")] : [("length", Say(wood.Size.Along))];
        return new AddItem("stock", "stock-" + kind.Word, [.. of, .. size, ("price", paid.Length > 0 ? paid : null), ("have", count.ToString(CultureInfo.InvariantCulture))]);
    }
}
