using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using Setout.Core.Fit;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;
using Setout.Core.SettingOut.Whole;
using Setout.Core.Workings;
using Setout.Shop.Rack;
using Setout.Shop.Texts;

namespace Setout.Shop.Plans;

/// <summary>Which of the three texts a finding is about.</summary>
public enum SourceText
{
    /// <summary>The piece file.</summary>
    Piece,

    /// <summary>The log.</summary>
    Log,

    /// <summary>The shop file.</summary>
    Shop,
}

/// <summary>A finding in one of the three texts.</summary>
/// <param name="Text">Which text.</param>
/// <param name="Finding">What is wrong.</param>
public sealed record SourceFinding(SourceText Text, Finding Finding);

/// <summary>The three texts of a piece, read.</summary>
/// <param name="Piece">As described.</param>
/// <param name="Log">Facts from the bench.</param>
/// <param name="Shop">The shop.</param>
/// <param name="Hash">Eight hexadecimal digits that change when any of the texts, the wood that the other pieces of the shop took and left, the layouts kept to or the rule set changes.</param>
public sealed record PieceSource(Piece Piece, Log Log, Texts.Shop Shop, string Hash)
{
    private string OwnHash { get; init; } = Hash;

    /// <summary>Of the piece file, without the folder; empty, the default, where nobody said it.</summary>
    public string FileName { get; private init; } = "";

    /// <summary>The other pieces of the shop whose logs tell of wood, by name; none by default.</summary>
    public ImmutableArray<ShopPiece> Others { get; private init; } = [];

    /// <summary>What cannot be known of the others, because a file of theirs cannot be read; empty by default.</summary>
    public ImmutableArray<Finding> Unread { get; private init; } = [];

    /// <summary>The same beside the other pieces of its shop, in place of those it stood beside before. Their order does not matter; what they say of wood counts as one more text.</summary>
    /// <param name="fileName">Of the piece file, without the folder; none of the others has it.</param>
    /// <param name="others">The others.</param>
    /// <param name="unread">What cannot be known of them.</param>
    public PieceSource Beside(string fileName, IEnumerable<ShopPiece> others, IEnumerable<Finding>? unread = null)
    {
        PieceSource beside = this with
        {
            FileName = fileName,
            Others = [.. others.OrderBy(o => o.Name, StringComparer.Ordinal)],
            Unread = [.. (unread ?? []).OrderBy(f => f.Words, StringComparer.Ordinal)],
        };
        string wood = WoodOfOthers.Fingerprint(fileName, beside.Ledger, Shop) + string.Concat(beside.Unread.Select(f => "\n" + f.Words));
        return beside with { Hash = wood.Length == 0 ? OwnHash : HashOf(OwnHash, wood, "") };
    }

    /// <summary>The piece as the rack knows it.</summary>
    public ShopPiece InShop => new(FileName, Piece, Log);

    /// <summary>What the logs of all pieces of the shop say of wood.</summary>
    public WoodLedger Ledger => WoodLedger.Of([InShop, .. Others]);

    /// <summary>Eight hexadecimal digits that change when the piece file, what of the shop file a plan stands on (<see cref="ShopFooting"/>) or the rule set changes, whatever the log says.</summary>
    public string TextHash { get; init; } = "";

    /// <summary>Where several pieces are broken down together: those; null, the default, for one piece.</summary>
    public PiecesTogether? Together { get; private init; }

    /// <summary>The texts of several pieces as those of one: materials and wood of all, in one shop, beside those that are of none of them.</summary>
    internal static PieceSource Of(PiecesTogether together)
    {
        HashSet<string> own = [.. together.Members.Select(m => m.File)];
        var all = new PieceSource(together.Set.Piece, together.Log, together.Shop, HashOf([.. together.Members.Select(m => m.Source.OwnHash)]))
        {
            TextHash = HashOf([.. together.Members.Select(m => m.Source.TextHash)]),
            Together = together,
        };
        return all.Beside("", together.Members.SelectMany(m => m.Source.Others).Where(o => !own.Contains(o.Name)).DistinctBy(o => o.Name), together.Members.SelectMany(m => m.Source.Unread).Distinct());
    }

    /// <summary>The layouts that are kept to where that costs nothing; none by default.</summary>
    public EarlierLayouts Before { get; private init; } = EarlierLayouts.None;

    /// <summary>The same, keeping to the layouts of an earlier plan; they count as one more text.</summary>
    public PieceSource KeepingTo(EarlierLayouts before)
    {
        PieceSource keeping = this with { Before = before, OwnHash = before.IsEmpty ? OwnHash : HashOf(OwnHash, before.Fingerprint, "") };
        return keeping.Beside(FileName, Others, Unread);
    }

    /// <summary>The grid the piece is set out on.</summary>
    public Grid Grid => Piece.Grid ?? (Piece.Unit == LengthUnit.Inch ? Shop.InchGrid : Shop.MetricGrid);

    /// <summary>Reads the three texts; null with findings when one of them cannot be used.</summary>
    /// <param name="pieceText">The piece file.</param>
    /// <param name="logText">The log; null for none.</param>
    /// <param name="shopText">The shop file; null for the usual shop.</param>
    public static (PieceSource? Source, ImmutableArray<SourceFinding> Findings) Read(string pieceText, string? logText, string? shopText) =>
        Read(pieceText, logText is null ? new(Log.Empty, []) : LogText.Read(logText), shopText, HashOf(pieceText, logText ?? "", shopText ?? ""));

    /// <summary>The same with a log that is read already.</summary>
    /// <param name="pieceText">The piece file.</param>
    /// <param name="log">The log.</param>
    /// <param name="shopText">The shop file; null for the usual shop.</param>
    public static (PieceSource? Source, ImmutableArray<SourceFinding> Findings) ReadWith(string pieceText, Log log, string? shopText) =>
        Read(pieceText, new TextRead<Log>(log, []), shopText, HashOf(pieceText, log.Entries.IsEmpty ? "" : LogText.Head + string.Concat(log.Entries.Select(LogText.Write)), shopText ?? ""));

    private static (PieceSource? Source, ImmutableArray<SourceFinding> Findings) Read(string pieceText, TextRead<Log> log, string? shopText, string hash)
    {
        TextRead<Piece> piece = PieceText.Read(pieceText);
        TextRead<Texts.Shop> shop = shopText is null ? new(Texts.Shop.Usual, []) : ShopText.Read(shopText);
        ImmutableArray<SourceFinding> findings =
        [
            .. piece.Findings.Select(f => new SourceFinding(SourceText.Piece, f)),
            .. log.Findings.Select(f => new SourceFinding(SourceText.Log, f)),
            .. shop.Findings.Select(f => new SourceFinding(SourceText.Shop, f)),
        ];
        if (!piece.IsSound || !log.IsSound || !shop.IsSound) return (null, findings);
        return (new(piece.Value!, log.Value!, shop.Value!, hash) { TextHash = HashOf(pieceText, "", ShopFooting.Of(shop.Value!)) }, findings);
    }

    /// <summary>The shop with its rack as it stands for this piece: what the logs took is off it; what its own log left, and what others keep, is in it.</summary>
    public Texts.Shop ShopInHand => StockInHand.Of(InShop, Ledger, Shop);

    /// <summary>The same with figures in a unit that a person asked for. Sizes, names of what is bought, the hash and all that is kept stay as they are; words change alone.</summary>
    /// <param name="unit">The unit; null for that of the text.</param>
    public PieceSource ShownIn(LengthUnit? unit) => (unit ?? Piece.Unit) == Piece.Shown ? this : Together is { } together
        ? this with { Piece = Piece with { Shown = unit ?? Piece.Unit }, Together = PiecesTogether.Of(together.Members.Select(m => (m.File, m.Source.ShownIn(unit)))).Source!.Together }
        : this with { Piece = Piece with { Shown = unit ?? Piece.Unit } };

    /// <summary>The same in words for another hand; all else stays.</summary>
    /// <param name="hand">By what whoever reads it enters what is read and done.</param>
    public PieceSource For(Hand hand) => hand == Piece.Hand ? this : Together is { } together
        ? this with { Piece = Piece with { Hand = hand }, Together = PiecesTogether.Of(together.Members.Select(m => (m.File, m.Source.For(hand)))).Source!.Together }
        : this with { Piece = Piece with { Hand = hand } };

    /// <summary>Sets the piece out with what has been read, and says what the readings tell.</summary>
    public SetPiece SetOut()
    {
        if (Together is { } together) return together.Set;
        SetPiece set = WithReadings();
        if (Piece.Shown == Piece.Unit) return LettingStand.Into(set, Log);
        // What is bought is asked for by the name that the shop file prices, and what is let stand was said in the unit of the text.
        SetPiece own = ShownIn(null).WithReadings();
        return LettingStand.Into(set, Log, own) with { Hardware = own.Hardware };
    }

    private SetPiece WithReadings() => ReadingChecks.Into(PieceSetOut.Of(StockInHand.Of(Piece, Log), Grid, Log.Facts()), Shop.Accuracy);

    private static string HashOf(params ReadOnlySpan<string> texts)
    {
        // Line ends do not count, so that the same file on another system is the same.
        string all = string.Join('\u0001', [.. texts, PieceSetOut.RuleSet]).Replace("\r\n", "\n", StringComparison.Ordinal);
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(all)))[..8];
    }
}
