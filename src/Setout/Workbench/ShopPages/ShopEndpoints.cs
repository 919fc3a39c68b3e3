using Setout.Core.Measures.Text;
using Setout.Shop.Documents;
using Setout.Shop.ShopEdits;
using Setout.Workbench.Changing;
using Setout.Workbench.Pieces;
using Setout.Workbench.Shell;

namespace Setout.Workbench.ShopPages;

/// <summary>The page of the shop, its text, and where its forms are sent.</summary>
internal static class ShopEndpoints
{
    public static void MapShop(this IEndpointRouteBuilder routes)
    {
        routes.MapGet(ShopLinks.Shop, (string? item, IDocumentStore store, KeptPieces pieces, ShopChanges changes) => ShopFile.Of(store, pieces) is { } shop
            ? Pages.Show<ShopPage>(ShopView.Of(shop, item ?? "", changes.Now)) : Pages.Show<NoShopPage>(NoShopView.Of()));
        routes.MapGet(ShopLinks.Text, (IDocumentStore store, KeptPieces pieces) => ShopFile.Of(store, pieces) is { } shop ? Pages.Show<PieceTexts.TextPage>(ShopView.Text(shop)) : Results.Redirect(ShopLinks.Shop));
        routes.MapPost(ShopLinks.Of("edit"), (HttpRequest request, ShopChanges changes) => AnswerAsync(request, (form, fields) =>
            // After something is added one adds the next: the form of what was just added would look the same, and write over it.
            changes.Edit(form, fields["key"].ToString(), fields["choice"].ToString(), ChangeForm.Values(fields)) is var outcome && fields["choice"].ToString().StartsWith("add-", StringComparison.Ordinal) ? outcome with { Chosen = "" } : outcome));
        routes.MapPost(ShopLinks.Text, (HttpRequest request, ShopChanges changes) => AnswerAsync(request, (form, fields) => changes.Text(form, fields["text"].ToString())));
        routes.MapPost(ShopLinks.Of("undo"), (HttpRequest request, ShopChanges changes) => AnswerAsync(request, (form, _) => changes.Undo(form)));
        routes.MapPost(ShopLinks.Of("redo"), (HttpRequest request, ShopChanges changes) => AnswerAsync(request, (form, _) => changes.Redo(form)));
        routes.MapPost(ShopLinks.Of("gone"), (HttpRequest request, ShopChanges changes) => AnswerAsync(request, (form, fields) => changes.Spoiled(form, fields["piece"].ToString(), fields["blank"].ToString())));
        routes.MapPost(ShopLinks.Of("begin"), (HttpRequest request, ShopChanges changes) => AnswerAsync(request, (form, fields) => changes.Begin(form, Begun(fields))));
    }

    private static Task<IResult> AnswerAsync(HttpRequest request, Func<ChangeForm, IFormCollection, ChangeOutcome> make) =>
        ChangeEndpoints.AnswerAsync(request, ShopLinks.Shop, (form, outcome) => outcome.Chosen is { Length: > 0 } chosen ? ShopLinks.Item(chosen) : form.Back, make);

    private static NewShop Begun(IFormCollection fields)
    {
        IReadOnlyDictionary<string, string> typed = ChangeForm.Values(fields);
        string Of(string field) => typed.GetValueOrDefault(field, "");
        return new(Of("name"), Of("unit") == "mm" ? LengthUnit.Millimetre : LengthUnit.Inch, Of("grid"), Of("kerf"), Of("currency"));
    }
}

/// <summary>The addresses of the shop.</summary>
public static class ShopLinks
{
    /// <summary>The page of the shop.</summary>
    public const string Shop = "/shop";

    /// <summary>Its text.</summary>
    public const string Text = "/shop/text";

    /// <summary>Where a form of it is sent.</summary>
    public static string Of(string word) => $"{Shop}/{word}";

    /// <summary>The page with a thing chosen.</summary>
    public static string Item(string key) => $"{Shop}?item={Uri.EscapeDataString(key)}#chosen";
}
