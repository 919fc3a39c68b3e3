using System.Globalization;
using Setout.Shop.Documents;
using Setout.Shop.Edits;
using Setout.Shop.Plans;
using Setout.Shop.ShopEdits;
using Setout.Shop.Texts;
using Setout.Workbench.Changing;
using Setout.Workbench.Pieces;
using Setout.Workbench.ShopPages;

namespace Setout.Workbench.Buying;

/// <summary>What is bought: sheets and boards go into the rack of the shop with what was paid, hardware is a fact of the piece.</summary>
/// <param name="store">Where the texts are kept.</param>
/// <param name="pieces">The pieces as they stand.</param>
/// <param name="shops">Makes changes of the shop.</param>
/// <param name="maker">Makes changes.</param>
internal sealed class BoughtChanges(IDocumentStore store, KeptPieces pieces, ShopChanges shops, ChangeMaker maker)
{
    /// <summary>Says that a line of the buying list is bought.</summary>
    /// <param name="form">What every form sends along.</param>
    /// <param name="file">The piece.</param>
    /// <param name="plan">Its plan.</param>
    /// <param name="item">The line, by its words.</param>
    /// <param name="typed">How many and for how much, for sheets and boards.</param>
    public ChangeOutcome Bought(ChangeForm form, PieceFile file, Plan plan, string item, IReadOnlyDictionary<string, string> typed)
    {
        if (maker.IsMade(form)) return ChangeMaker.Done;
        BuyingLine[] lines = [.. plan.Buying.Where(l => l.Item == item && l.Kind != BuyingKind.FromTheRack)];
        // Two things may bear one name and be marked one by one.
        if ((lines.FirstOrDefault(l => l.Thing.Length == 0 || !ThingsToBuy.IsBought(plan.Set, l.Thing)) ?? lines.FirstOrDefault()) is not { } line)
            return ChangeMaker.Refuse("buy.no-line", "That is not on the list any more.", "Look at the list as it stands now.");
        if (line.Wood is { } wood) return Wood(form, file, plan, line, wood, typed);
        if (line.Thing.Length == 0) return ChangeMaker.Refuse("buy.no-wood", "Boards that are ripped cannot be told in the rack from here.", "Put them there by their section, and mark the material bought.");
        return maker.Make(file.Name, new Change(form.Id, maker.At, "bought") { Facts = [Mark(form, file, plan, [line.Thing])] });
    }

    private LogAddition Mark(ChangeForm form, PieceFile file, Plan plan, string[] keys) => LogAddition.To(file.Document.Id,
        new MarkEntry(EntryIds.Of(form.Id), maker.Here, Progress.Bought, [.. keys], Marking.Figures(plan.Set, Progress.Bought, keys, false)) { Chosen = Marking.Chosen(plan.Set, Progress.Bought, keys) });

    private ChangeOutcome Wood(ChangeForm form, PieceFile file, Plan plan, BuyingLine line, ShopStock wood, IReadOnlyDictionary<string, string> typed)
    {
        if (ShopFile.Of(store, pieces) is not { } shop) return ChangeMaker.Refuse("shop.gone", "There is no shop with a rack yet.", "Begin one on the page of the shop.");
        if (BoughtWood.Of(shop.Document.Text, wood) is not { } choice) return ChangeMaker.Refuse("buy.no-wood", "This wood cannot be told in the rack.", "Put it there by its thickness or section.");
        (ShopEdit edit, Edited edited) = choice.ApplyTo(typed, shop.Document.Text);
        if (!edited.IsDone) return ChangeOutcome.Refused(edited.Findings);
        int many = int.Parse(typed["count"], CultureInfo.InvariantCulture);
        // A material is bought when no line of the list asks for more of it.
        string[] got = many < line.Count ? [] : [.. line.Of.Distinct().Where(m => !plan.Set.Facts.Bought.Contains(m) && plan.Buying.All(l => l == line || !l.Of.Contains(m)))];
        return shops.Edit(shop, form, edit, edited, got.Length == 0 ? [] : [Mark(form, file, plan, got)]);
    }
}
