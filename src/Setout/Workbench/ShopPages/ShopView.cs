using System.Collections.Immutable;
using Setout.Core.Measures.Text;
using Setout.Drawing.Scenes;
using Setout.Shop.Drawings;
using Setout.Shop.Outputs;
using Setout.Shop.Rack;
using Setout.Shop.ShopEdits;
using Setout.Workbench.Changing;
using Setout.Workbench.PieceTexts;
using Setout.Workbench.Shell;
using Setout.Workbench.Viewing;

namespace Setout.Workbench.ShopPages;

/// <summary>A thing in the rack.</summary>
/// <param name="Href">The page with it chosen.</param>
/// <param name="Drawing">It, drawn.</param>
/// <param name="Words">How many, and how large.</param>
/// <param name="Name">Its own name; empty for none.</param>
/// <param name="Soft">Who left it, for whom it is kept, what one costs.</param>
/// <param name="Fault">What cannot be so; empty for nothing.</param>
/// <param name="IsChosen">Whether it is chosen.</param>
public sealed record RackItem(string Href, string Drawing, Phrase Words, string Name, Phrase Soft, string Fault, bool IsChosen);

/// <summary>All things of one wood.</summary>
/// <param name="Wood">The wood.</param>
/// <param name="IsSheet">Sheets, or boards.</param>
/// <param name="Items">The larger first.</param>
public sealed record RackBay(Phrase Wood, bool IsSheet, ImmutableArray<RackItem> Items);

/// <summary>Something of the shop in a line.</summary>
/// <param name="Href">The page with it chosen.</param>
/// <param name="Words">What it is.</param>
/// <param name="Figures">What it takes, in words.</param>
/// <param name="IsUsual">True where nobody has said it: it is taken as in a usual shop.</param>
/// <param name="IsChosen">Whether it is chosen.</param>
public sealed record ShopLine(string Href, Phrase Words, Phrase Figures, bool IsUsual, bool IsChosen);

/// <summary>Lines that belong together.</summary>
/// <param name="Name">Their name.</param>
/// <param name="About">What they are for.</param>
/// <param name="Lines">In order.</param>
/// <param name="Add">The page with a form that adds one; null where none can be added.</param>
/// <param name="AddWords">What that is called.</param>
public sealed record ShopGroup(string Name, string About, ImmutableArray<ShopLine> Lines, string? Add = null, string AddWords = "");

/// <summary>The shop: what stands in its rack, what it costs, its saws, instruments and habits.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="Notes">What is wrong with its text.</param>
/// <param name="Bays">The rack.</param>
/// <param name="Worth">What the wood in hand costs.</param>
/// <param name="Groups">All else.</param>
/// <param name="Chosen">What can be done with what is chosen.</param>
/// <param name="Blank">The blank that is chosen; null for none.</param>
/// <param name="History">What was done, and what can be taken back.</param>
public sealed record ShopView(
    string Name, ImmutableArray<Note> Notes, ImmutableArray<RackBay> Bays, string Worth, ImmutableArray<ShopGroup> Groups, ChoiceForms Chosen, ChosenBlank? Blank, HistoryView History)
{
    /// <summary>What has to be known of figures that are not shown in the unit of the text; empty where they are.</summary>
    public string Caution { get; init; } = "";

    internal static ShopView Of(ShopFile shop, string item, string now)
    {
        RackThings rack = RackThings.Of(shop.Shop, ShopTree.Count(shop.Document.Text, "stock"), shop.Ledger);
        string back = item.Length == 0 ? ShopLinks.Shop : ShopLinks.Item(item);
        FormHead Form(string word) => new(ShopLinks.Of(word), ChangeForm.NewId(), shop.Document.Revision, back);
        ChosenBlank? blank = ChosenBlank.Of(rack, item, shop, Form("gone") with { Back = ShopLinks.Shop });
        string words = ShopChoices.Words(shop.Document.Text, item);
        var groups = new ShopGroups(shop, rack, item);
        return new(shop.Shop.Name, [.. shop.Read.Findings.Select(f => Note.Of(f, ShopFile.FileName))],
            [.. rack.InHand.GroupBy(t => (t.Wood, t.IsSheet)).Select(g => new RackBay(Figures.Phrase(g.Key.Wood), g.Key.IsSheet, [.. g.Select(t => Item(t, shop, item))]))],
            WorthOf(rack, shop.Shop.Currency), [.. groups.All()],
            new(item, words.Length > 0 ? char.ToUpperInvariant(words[0]) + words[1..] : "", blank is not null ? [] : [.. ShopChoices.For(shop.Document.Text, item, shop.Bench(now)).Select(c => new ChoiceForm(Form("edit"), c.For(shop.Unit, shop.Shown)))]) { Open = "set" },
            blank, HistoryView.Of(shop.Document, Form, ShopLinks.Text))
        { Caution = ViewingView.Caution(shop.Unit, shop.Shown) };
    }

    internal static TextView Text(ShopFile shop) => new(shop.Shop.Name, ShopLinks.Shop, shop.Document.Text, new(ShopLinks.Text, ChangeForm.NewId(), shop.Document.Revision, ShopLinks.Text), [.. shop.Read.Findings.Select(f => Note.Of(f, ShopFile.FileName))])
    {
        BackWords = "Back to the shop",
        About = "The page of the shop and this text are two ways to one thing: whatever is changed here is changed there. Remarks after a # are kept.",
        Label = "The shop file",
    };

    private static RackItem Item(RackThing thing, ShopFile shop, string chosen)
    {
        string key = thing.Blank is { } blank ? ChosenBlank.KeyOf(blank) : $"stock.{thing.Stock.Item}";
        string[] soft =
        [
            .. thing.Stock.Reads is { } reads ? [$"reads {LengthFormat.For(shop.Shown).Format(reads).ByTheRule}"] : Array.Empty<string>(),
            .. thing.Stock.Lot.Length > 0 ? [$"lot {thing.Stock.Lot}"] : Array.Empty<string>(),
            thing.LeftBy, thing.For,
            .. thing.Stock.Size.Flaws.Length switch { 0 => Array.Empty<string>(), 1 => ["1 flaw"], int n => [$"{n} flaws"] },
            .. thing.Stock.Board is not null && thing.Blank is null ? ["may be ripped"] : Array.Empty<string>(),
            thing.Stock.Size.Price is { } price ? $"{price} {shop.Shop.Currency}{(thing.Count > 1 ? " each" : "")}" : "",
        ];
        string fault = thing.TooMany.Length > 0 ? $"{thing.TooMany.Length} more {(thing.TooMany.Length == 1 ? "was" : "were")} cut than the count says: count again." : "";
        return new(ShopLinks.Item(key), RackSvg.Of(RackPicture.Of(thing)), Figures.Phrase($"{(thing.Count > 1 ? $"{thing.Count} of " : "")}{SizeOf(thing, shop)}"), PageWords.Blanks(thing.Stock.Size.Name),
            Figures.Phrase(string.Join("; ", soft.Where(s => s.Length > 0))), fault, key == chosen);
    }

    // As it is written where that has units of its own, so that 1525 mm stays that in a shop of inches.
    internal static string SizeOf(RackThing thing, ShopFile shop)
    {
        string key = thing.IsSheet ? "size" : "length", said = thing.Blank is null ? ShopTree.Said(shop.Document.Text, $"stock.{thing.Stock.Item}", key) : "";
        if (said.Any(char.IsLetter) && said.Contains(shop.Unit.Other.Mark, StringComparison.Ordinal)) return said;
        LengthFormat format = LengthFormat.For(shop.Shown);
        return thing.Stock.Size.Across is { } across ? $"{format.Bare.Text(thing.Stock.Size.Along)} x {format.Text(across)}" : format.Text(thing.Stock.Size.Along);
    }

    private static string WorthOf(RackThings rack, string currency)
    {
        (Core.Measures.Money sum, int unpriced) = rack.Worth;
        if (rack.InHand.Length == 0 || unpriced == rack.InHand.Length) return "";
        return $"The wood in hand cost {sum} {currency}{(unpriced switch { 0 => "", 1 => "; 1 thing has no price", int n => $"; {n} things have no price" })}.";
    }
}

/// <summary>A blank that is chosen: it stands on no line of the shop.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Words">What it is.</param>
/// <param name="Piece">The file of the piece whose run left it.</param>
/// <param name="From">Who left it and for whom it is.</param>
/// <param name="When">When.</param>
/// <param name="Form">What goes along when it is gone.</param>
public sealed record ChosenBlank(string Name, Phrase Words, string Piece, string From, string When, FormHead Form)
{
    internal static string KeyOf(LeftBlank blank) => $"blank {blank.By.Name} {blank.Name}";

    internal static ChosenBlank? Of(RackThings rack, string key, ShopFile shop, FormHead form) =>
        rack.InHand.FirstOrDefault(t => t.Blank is { } b && KeyOf(b) == key) is { Blank: { } blank } thing
            ? new(blank.Name, Figures.Phrase($"{thing.Wood}, {ShopView.SizeOf(thing, shop)}"), blank.By.Name, string.Join("; ", new[] { thing.LeftBy, thing.For }.Where(w => w.Length > 0)), blank.Entry.At, form) : null;
}
