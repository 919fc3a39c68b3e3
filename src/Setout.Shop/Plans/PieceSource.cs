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
/// <param name="Hash">Eight hexadecimal digits that change when any of the texts, the layouts kept to or the rule set changes.</param>
public sealed record PieceSource(Piece Piece, Log Log, Texts.Shop Shop, string Hash)
{
    /// <summary>Eight hexadecimal digits that change when the piece file, the shop file or the rule set changes, whatever the log says.</summary>
    public string TextHash { get; init; } = "";

    /// <summary>The layouts that are kept to where that costs nothing; none by default.</summary>
    public EarlierLayouts Before { get; private init; } = EarlierLayouts.None;

    /// <summary>The same, keeping to the layouts of an earlier plan; they count as one more text.</summary>
    public PieceSource KeepingTo(EarlierLayouts before) =>
        this with { Before = before, Hash = before.IsEmpty ? Hash : HashOf(Hash, before.Fingerprint, null) };

    /// <summary>The grid the piece is set out on.</summary>
    public Grid Grid => Piece.Grid ?? (Piece.Unit == LengthUnit.Inch ? Shop.InchGrid : Shop.MetricGrid);

    /// <summary>Reads the three texts; null with findings when one of them cannot be used.</summary>
    /// <param name="pieceText">The piece file.</param>
    /// <param name="logText">The log; null for none.</param>
    /// <param name="shopText">The shop file; null for the usual shop.</param>
    public static (PieceSource? Source, ImmutableArray<SourceFinding> Findings) Read(string pieceText, string? logText, string? shopText)
    {
        TextRead<Piece> piece = PieceText.Read(pieceText);
        TextRead<Log> log = logText is null ? new(Log.Empty, []) : LogText.Read(logText);
        TextRead<Texts.Shop> shop = shopText is null ? new(Texts.Shop.Usual, []) : ShopText.Read(shopText);
        ImmutableArray<SourceFinding> findings =
        [
            .. piece.Findings.Select(f => new SourceFinding(SourceText.Piece, f)),
            .. log.Findings.Select(f => new SourceFinding(SourceText.Log, f)),
            .. shop.Findings.Select(f => new SourceFinding(SourceText.Shop, f)),
        ];
        if (!piece.IsSound || !log.IsSound || !shop.IsSound) return (null, findings);
        return (new(piece.Value!, log.Value!, shop.Value!, HashOf(pieceText, logText, shopText)) { TextHash = HashOf(pieceText, null, shopText) }, findings);
    }

    /// <summary>The shop with its rack as it stands for this piece: what the log took is off it, what the log left is in it.</summary>
    public Texts.Shop ShopInHand => StockInHand.Of(Piece, Log, Shop);

    /// <summary>Sets the piece out with what has been read, and says what the readings tell.</summary>
    public SetPiece SetOut() => ReadingChecks.Into(PieceSetOut.Of(StockInHand.Of(Piece, Log), Grid, Log.Facts()), Shop.Accuracy);

    private static string HashOf(string piece, string? log, string? shop)
    {
        // Line ends do not count, so that the same file on another system is the same.
        string all = string.Join('\u0001', piece, log ?? "", shop ?? "", PieceSetOut.RuleSet).Replace("\r\n", "\n", StringComparison.Ordinal);
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(all)))[..8];
    }
}
