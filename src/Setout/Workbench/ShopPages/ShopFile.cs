using System.Collections.Immutable;
using Setout.Core.Measures.Text;
using Setout.Core.Workings;
using Setout.Shop.Documents;
using Setout.Shop.Rack;
using Setout.Shop.ShopEdits;
using Setout.Shop.Texts;
using Setout.Workbench.Pieces;

namespace Setout.Workbench.ShopPages;

/// <summary>The shop as it is kept, with what the logs of all pieces say of its wood.</summary>
/// <param name="Document">Its text and where that stands among its states.</param>
/// <param name="Read">The text read.</param>
/// <param name="Pieces">All pieces that are kept.</param>
internal sealed record ShopFile(Document Document, TextRead<Shop.Texts.Shop> Read, ImmutableArray<PieceFile> Pieces)
{
    /// <summary>How its text is called where a place in it is told.</summary>
    public const string FileName = DocumentName.Shop + ".yaml";

    /// <summary>The shop; the usual one where its text has mistakes.</summary>
    public Shop.Texts.Shop Shop => Read is { IsSound: true, Value: { } shop } ? shop : Setout.Shop.Texts.Shop.Usual;

    /// <summary>The unit of its bare figures.</summary>
    public LengthUnit Unit => ShopTree.Unit(Document.Text);

    /// <summary>The unit that the person who asks is shown figures in.</summary>
    public LengthUnit Shown { get; init; } = ShopTree.Unit(Document.Text);

    /// <summary>What the logs say of wood.</summary>
    public WoodLedger Ledger => WoodLedger.Of(Pieces.Select(p => p.InShop));

    /// <summary>The shop of a store; null where none was begun.</summary>
    public static ShopFile? Of(IDocumentStore store, KeptPieces pieces) => store.Find(DocumentName.Shop) is { Kind: DocumentKind.Shop, Line.IsPutAway: false } there
        ? new(there, ShopText.Read(there.Text), pieces.ReadAll()) { Shown = pieces.ShownIn ?? ShopTree.Unit(there.Text) } : null;

    /// <summary>What is known beside the text when it is edited.</summary>
    /// <param name="now">The time, as a count is dated.</param>
    public ShopBench Bench(string now)
    {
        Dictionary<int, int> inHand = StockInHand.Lines(Ledger, Shop).Where(l => l.Stock.Size.InHand is not null).ToDictionary(l => l.Stock.Item, l => l.Stock.Size.InHand!.Value);
        return new(now, i => inHand.TryGetValue(i, out int have) ? have : null, (kind, key) => ShopFigures.Of(Setout.Shop.Texts.Shop.Usual, Unit, kind, key));
    }
}
