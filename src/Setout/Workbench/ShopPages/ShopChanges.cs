using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Workings;
using Setout.Shop.Documents;
using Setout.Shop.Edits;
using Setout.Shop.Rack;
using Setout.Shop.ShopEdits;
using Setout.Shop.Texts;
using Setout.Workbench.Changing;
using Setout.Workbench.Pieces;

namespace Setout.Workbench.ShopPages;

/// <summary>Makes the changes of the shop that forms ask for: of its text, and of the wood in its rack. A change that cannot be made says why, and nothing is changed.</summary>
/// <param name="store">Where the texts are kept.</param>
/// <param name="pieces">The pieces as they stand.</param>
/// <param name="maker">Makes changes.</param>
/// <param name="time">The clock.</param>
internal sealed class ShopChanges(IDocumentStore store, KeptPieces pieces, ChangeMaker maker, TimeProvider time)
{
    private const string Name = DocumentName.Shop;

    /// <summary>The time here with its offset, as counts and entries of logs are dated.</summary>
    public string Now => time.GetLocalNow().ToString("yyyy-MM-ddTHH:mm:sszzz", System.Globalization.CultureInfo.InvariantCulture);

    /// <summary>Makes an edit that the page offers for what is chosen.</summary>
    /// <param name="form">What every form sends along.</param>
    /// <param name="key">What was chosen.</param>
    /// <param name="choice">Which of its edits.</param>
    /// <param name="values">What was typed, by the names of the fields.</param>
    public ChangeOutcome Edit(ChangeForm form, string key, string choice, IReadOnlyDictionary<string, string> values)
    {
        if (ShopFile.Of(store, pieces) is not { } shop) return Gone;
        if (maker.IsMade(form)) return ChangeMaker.Done;
        string text = shop.Document.Text;
        if (ShopChoices.For(text, key, shop.Bench(Now)).FirstOrDefault(c => c.Id == choice) is not { } offered)
            return ChangeMaker.Refuse("edit.not-offered", "That is not there to be changed any more.", "Look at the shop as it stands now.");
        (ShopEdit edit, Edited edited) = offered.For(shop.Unit, shop.Shown).ApplyTo(values, text);
        return Edit(shop, form, edit, edited, []);
    }

    /// <summary>Keeps an edit as it came out, with what is a fact of a piece by it.</summary>
    public ChangeOutcome Edit(ShopFile shop, ChangeForm form, ShopEdit edit, Edited edited, ImmutableArray<LogAddition> facts)
    {
        if (edited.Text is not { } text) return ChangeOutcome.Refused(edited.Findings);
        string chosen = edit switch
        {
            AddItem { List: var list } when !list.Contains('.', StringComparison.Ordinal) => $"{list}.{ShopTree.Count(text, list) - 1}",
            AddItem { List: var list } => list[..list.LastIndexOf('.')],
            FillIn fill => fill.Key,
            TakeOutOfShop { Key: var key } when key.Split('.').Length > 2 => string.Join('.', key.Split('.')[..2]),
            _ => "",
        };
        return maker.Make(Name, new Change(form.Id, maker.At, edited.Name) { Documents = [new EditText(shop.Document.Id, form.Revision, edited.Name, text)], Facts = facts }) with { Chosen = chosen };
    }

    /// <summary>The whole text anew.</summary>
    public ChangeOutcome Text(ChangeForm form, string text) => With(shop => maker.Make(Name, form, new EditText(shop.Id, form.Revision, "text edited by hand", text.ReplaceLineEndings("\n"))));

    /// <summary>Takes the last step back.</summary>
    public ChangeOutcome Undo(ChangeForm form) => With(shop => maker.Make(Name, form, new UndoStep(shop.Id, form.Revision)));

    /// <summary>Makes a step again that was taken back.</summary>
    public ChangeOutcome Redo(ChangeForm form) => With(shop => maker.Make(Name, form, new RedoStep(shop.Id, form.Revision)));

    /// <summary>A shop where there was none; one that was put away is taken back with the new text.</summary>
    public ChangeOutcome Begin(ChangeForm form, NewShop begun)
    {
        if (maker.IsMade(form)) return ChangeMaker.Done;
        Edited made = begun.Text();
        if (made.Text is not { } text) return ChangeOutcome.Refused(made.Findings);
        if (store.Find(Name) is not { } there) return maker.Make(Name, form, new NewDocument(DocumentKind.Shop, Name, text, made.Name));
        if (!there.Line.IsPutAway) return ChangeMaker.Refuse("shop.there", "A shop was begun already, perhaps in another window.", "Look at it and change it there.");
        return maker.Make(Name, new Change(form.Id, maker.At, made.Name) { Documents = [new TakeBack(there.Id, there.Revision), new EditText(there.Id, there.Revision, made.Name, text)] });
    }

    /// <summary>Says of a blank that it is no longer there: spoiled, used otherwise or given away.</summary>
    /// <param name="form">What every form sends along.</param>
    /// <param name="piece">The piece whose run left it: the name of its file.</param>
    /// <param name="name">The name of the blank.</param>
    public ChangeOutcome Spoiled(ChangeForm form, string piece, string name)
    {
        if (maker.IsMade(form)) return ChangeMaker.Done;
        WoodLedger ledger = WoodLedger.Of(pieces.ReadAll().Select(p => p.InShop));
        if (ledger.Blanks.FirstOrDefault(b => b.By.Name == piece && b.Name == name) is not { } blank || pieces.ReadAll().FirstOrDefault(p => p.FileName == piece) is not { } file)
            return ChangeMaker.Refuse("rack.no-blank", $"The blank '{(name.Length > 60 ? name[..60] : name)}' is not in hand any more.", "Look at the rack as it stands now.");
        var entry = new MarkEntry(EntryIds.Of(form.Id), Now, Progress.Cut, [], ImmutableDictionary<QuantityKey, ExactLength>.Empty) { Took = [new(blank.Wood.Of, WoodSource.Blank, name, null)] };
        return maker.Make(file.Name, new Change(form.Id, maker.At, $"{name} is gone") { Facts = [LogAddition.To(file.Document.Id, entry)] });
    }

    private static ChangeOutcome Gone => ChangeMaker.Refuse("shop.gone", "There is no shop any more.", "It may have been put away in another window; begin one.");

    private ChangeOutcome With(Func<Document, ChangeOutcome> make) => ShopFile.Of(store, pieces) is { } shop ? make(shop.Document) : Gone;
}
