using System.Collections.Immutable;
using Setout.Core.Fit;
using Setout.Core.Measures.Text;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Drawing.Scenes;
using Setout.Shop.Drawings;
using Setout.Shop.Noting;
using Setout.Shop.Plans;
using Setout.Workbench.Changing;
using Setout.Workbench.Pieces;

namespace Setout.Workbench.Noting;

/// <summary>Something that can be read.</summary>
/// <param name="Key">Its key.</param>
/// <param name="Name">For people.</param>
public sealed record Readable(string Key, string Name);

/// <summary>A form for a reading.</summary>
/// <param name="Head">What goes along.</param>
/// <param name="Id">What the ids of its fields begin with.</param>
/// <param name="What">What can be read here, the likeliest first; one or more.</param>
/// <param name="With">The instrument it is usually read with.</param>
/// <param name="Expected">What is expected of the first.</param>
/// <param name="Sheets">For sheet goods: the sheets read already; null where none of this is a thickness of sheet goods.</param>
/// <param name="IsShort">True for a form of one line.</param>
public sealed record ReadForm(FormHead Head, string Id, ImmutableArray<Readable> What, string With, Phrase Expected, ImmutableArray<string>? Sheets, bool IsShort)
{
    /// <summary>True where it is read already: what is told beside the field is that reading.</summary>
    public bool IsRead { get; init; }

    /// <summary>What is to be minded before it is read: of an opening that what bounds it is not marked cut, of sheet goods how many spots are read; empty for nothing.</summary>
    public ImmutableArray<Phrase> Mind { get; init; } = [];

    // One spot is taken for a whole sheet: that is said before it is read, with how much is known so far.
    private static string Spots(OpenPiece piece, string goods)
    {
        string read = SpotWords.ReadSoFar(piece.Set, goods), differ = SpotWords.Differ(piece.Source.Shop.Accuracy, piece.Set.Piece.Shown);
        return $"Read so far: {(read.Length > 0 ? read : "no spot")}. One spot counts for a whole sheet, and {differ}. Read two or more, their mean counts; with each of them it is known closer, and what will fit goes by that.";
    }

    /// <summary>A form; null where nothing of this can be read.</summary>
    internal static ReadForm? Of(OpenPiece piece, IEnumerable<QuantityKey> keys, string back, string id, bool isShort = false, string? with = null)
    {
        SetPiece set = piece.Set;
        Worked[] readable = [.. keys.Distinct().Select(k => NotedKeys.Pinned(set, k.Text)).Where(k => k.Fault is null).Select(k => k.Key).Distinct().Select(k => set.Worked.Values.GetValueOrDefault(k)).OfType<Worked>()];
        if (readable.Length == 0) return null;
        LengthFormat format = LengthFormat.For(set.Piece.Shown);
        string[] goods = [.. readable.Select(r => r.Quantity.Key).Where(k => k.Text.EndsWith(".thickness", StringComparison.Ordinal) && !k.Text.Contains(BenchFacts.SheetWord, StringComparison.Ordinal) && set.Piece.Materials.GetValueOrDefault(k.Owner) is Panel).Select(k => k.Owner)];
        return new(FormHead.Of(piece, "read", back), id, [.. readable.Select(r => new Readable(r.Quantity.Key.Text, r.Quantity.Name))], with ?? Spreads.CarefulInstrument(readable[0].Quantity),
            Phrase.Of(format.Format(readable[0].Value)), goods.Length == 0 ? null : NotedKeys.SheetsRead(set, goods[0]), isShort)
        {
            Mind = [.. readable.Select(r => EarlyOpening.Of(set, r.Quantity.Key)).OfType<EarlyOpening>().Take(1).Select(e => Figures.Phrase(e.OfReading)), .. goods.Take(1).Select(g => Figures.Phrase(Spots(piece, g)))],
        };
    }
}

/// <summary>What a mark can be put on.</summary>
/// <param name="Value">Its keys, apart by blanks.</param>
/// <param name="Name">For people.</param>
public sealed record Markable(string Value, string Name);

/// <summary>A form for a mark.</summary>
/// <param name="Head">What goes along.</param>
/// <param name="Id">What the ids of its fields begin with.</param>
/// <param name="Words">What it does, such as <c>Mark it cut</c>.</param>
/// <param name="Progress">The word of the mark.</param>
/// <param name="What">What it can be put on, one or more.</param>
/// <param name="IsItem">True where the values are names of things bought, and not keys.</param>
/// <param name="Sheets">For parts of sheet goods that are cut: the sheets that were read; empty for none.</param>
/// <param name="IsAgain">True where all of it is cut already: it can only be said to be cut anew.</param>
/// <param name="Mind">What to mind before; empty for nothing.</param>
public sealed record MarkForm(FormHead Head, string Id, string Words, string Progress, ImmutableArray<Markable> What, bool IsItem, ImmutableArray<string> Sheets, bool IsAgain, string Mind)
{
    /// <summary>Which of them stands chosen at first: the next of the sort that was marked last; the first by default.</summary>
    public int Chosen { get; init; }

    /// <summary>What it is about, for whoever hears several of them on one page; empty where the one thing it can be put on says it.</summary>
    public string About { get; init; } = "";

    /// <summary>What it is about, in words.</summary>
    public string Heard => About.Length > 0 ? About : What.Length == 1 ? What[0].Name : "";
}

/// <summary>What can be said of what is chosen: read it, mark it.</summary>
/// <param name="Read">The reading; null where nothing of it can be read.</param>
/// <param name="Marks">The marks that make sense now.</param>
/// <param name="State">How far it has come, in words; empty where it is no part.</param>
public sealed record NoteForms(ReadForm? Read, ImmutableArray<MarkForm> Marks, string State)
{
    /// <summary>The drawer that the part belongs to, to be read or marked whole; empty for none.</summary>
    public string Whole { get; init; } = "";

    /// <summary>Where it is chosen.</summary>
    public string WholeHref { get; init; } = "";

    /// <summary>Nothing.</summary>
    public static NoteForms None { get; } = new(null, [], "");

    /// <summary>The forms for what is chosen.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="asked">The key that was chosen; null or empty for nothing.</param>
    /// <param name="sizes">The exact sizes it means.</param>
    /// <param name="back">The page to go back to.</param>
    internal static NoteForms Of(OpenPiece piece, string? asked, IEnumerable<QuantityKey> sizes, string back)
    {
        if (string.IsNullOrEmpty(asked) || piece.Set.IsStopped) return None;
        SetPiece set = piece.Set;
        ImmutableArray<Part> parts = NoteTargets.PartsOf(set, asked);
        Part? one = parts.Length == 1 ? parts[0] : null;
        string drawer = one?.Role is PartRole.FalseFront or PartRole.BoxSide or PartRole.BoxEnd or PartRole.BoxBottom ? new QuantityKey(one.Key).Owner : "";
        IEnumerable<QuantityKey> besides = one is null ? [] :
        [
            .. set.Piece.Materials.GetValueOrDefault(one.Material) is Panel ? [one.Thickness] : Array.Empty<QuantityKey>(),
            .. one.Role is PartRole.BoxSide or PartRole.BoxEnd ? [QuantityKey.Of(new QuantityKey(one.Key).Owner, "box.as-built")] : Array.Empty<QuantityKey>(),
        ];
        return new(ReadForm.Of(piece, sizes.Concat(besides), back, "read"), NoteTargets.Marks(piece, asked, parts, back), parts.IsEmpty ? "" : NoteTargets.State(set, parts))
        {
            Whole = drawer.Length > 0 ? $"drawer {drawer}, {set.Parts.Where(p => new QuantityKey(p.Key).Owner == drawer).Sum(p => p.Count)} parts" : "",
            WholeHref = drawer.Length > 0 ? Shell.Links.Size(piece.Name, drawer) : "",
        };
    }
}
