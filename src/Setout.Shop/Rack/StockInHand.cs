using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Cutting.Runs;
using Setout.Cutting.Sheets;
using Setout.Shop.Texts;

namespace Setout.Shop.Rack;

/// <summary>A line of the shop file that says how many there are, as it stands.</summary>
/// <param name="Stock">The line, with what is left of its count; as written where it has none.</param>
/// <param name="TakenBy">What was taken from it since it was counted.</param>
/// <param name="TooMany">What was taken beyond its count, which cannot be so.</param>
public sealed record RackLine(ShopStock Stock, ImmutableArray<TakenByPiece> TakenBy, ImmutableArray<TakenByPiece> TooMany);

/// <summary>
/// The rack as it stands for one piece of the shop: what the logs of all pieces took is taken off the count, lines kept for another are hidden, and blanks that the logs left stand beside the
/// lines of the shop file: those of its own log, and those that others keep. Each line of the shop keeps its place in the list; one of which nothing is left has a count of 0. The same is done
/// for what the piece file says is in hand.
/// </summary>
public static class StockInHand
{
    /// <summary>The shop with its stock as it is for a piece.</summary>
    /// <param name="piece">For which.</param>
    /// <param name="ledger">Of all pieces of the shop.</param>
    /// <param name="shop">As written.</param>
    public static Texts.Shop Of(ShopPiece piece, WoodLedger ledger, Texts.Shop shop) => shop with
    {
        Stock =
        [
            .. Lines(ledger, shop).Select(l => IsFor(l.Stock, piece.Piece) ? l.Stock : With(l.Stock, 0)),
            .. ledger.For(piece.Name).Select(b => Line(b.By.Piece, b.Wood) is { } line ? line with { LeftBy = b.By.Name == piece.Name ? "" : b.By.Spoken(piece.Piece) } : null).OfType<ShopStock>().Where(b => !StandsInRack(b, shop)),
        ],
    };

    /// <summary>The lines of the shop file, in their order, less what was taken from them; for whomever they are kept.</summary>
    /// <param name="ledger">Of all pieces of the shop.</param>
    /// <param name="shop">As written.</param>
    public static ImmutableArray<RackLine> Lines(WoodLedger ledger, Texts.Shop shop)
    {
        RackLine[] lines = [.. shop.Stock.Select(s => new RackLine(s, [], []))];
        foreach (TakenByPiece taken in ledger.Taken.Where(t => t.Wood.Source == WoodSource.Rack)) TakeOff(lines, Suiting(shop, taken), shop, taken);
        // A blank that was given a line of its own is off that line too.
        foreach ((LeftBlank blank, ImmutableArray<TakenByPiece> by) in ledger.Gone.Where(g => g.By.Any(t => t.Wood.Source == WoodSource.Blank)))
        {
            if (Line(blank.By.Piece, blank.Wood) is not { } was) continue;
            TakeOff(lines, [.. Enumerable.Range(0, shop.Stock.Length).Where(i => IsSame(shop.Stock[i], was))], shop, by.First(t => t.Wood.Source == WoodSource.Blank));
        }
        return [.. lines];
    }

    /// <summary>The piece with what its own file says is in hand, less what the log took of that.</summary>
    /// <param name="piece">As described.</param>
    /// <param name="log">What was taken.</param>
    public static Piece Of(Piece piece, Log log)
    {
        if (!piece.Materials.Values.Any(m => m.Sizes.Any(s => s.InHand is not null))) return piece;
        foreach (TakenWood wood in WoodLedger.Of(log).Taken.Select(t => t.Wood).Where(w => w.Source == WoodSource.Piece))
        {
            if (piece.Materials.GetValueOrDefault(wood.Of) is not { } material) continue;
            LoggedSize size = wood.Size!;
            int[] suiting =
            [
                .. Enumerable.Range(0, material.Sizes.Length).Where(i => material.Sizes[i] is { InHand: > 0 } s && (s.Along, s.Across, s.Name) == (size.Along, size.Across, wood.Name))
                    .OrderBy(i => SameFlaws(material.Sizes[i], size) ? 0 : 1).Take(1),
            ];
            foreach (int i in suiting)
                piece = piece with { Materials = piece.Materials.SetItem(material.Name, material with { Sizes = material.Sizes.SetItem(i, material.Sizes[i] with { InHand = material.Sizes[i].InHand - 1 }) }) };
        }
        return piece;
    }

    /// <summary>True when a piece may use a line.</summary>
    public static bool IsFor(ShopStock line, Piece piece) => line.For.Length == 0 || line.For == piece.Name;

    /// <summary>What the wood of a piece is called among all woods; null when the piece has none of that name.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="of">The piece's own name for it.</param>
    /// <param name="section">Of a board that is wider than its material; null for one that is not.</param>
    public static string? IdentityOf(Piece piece, string of, StickSection? section) => piece.Materials.GetValueOrDefault(of) is not { } material ? null
        : section is { } two && material is Stick stick ? MaterialIdentity.Of(Board(stick, two)) : MaterialIdentity.Of(material);

    /// <summary>What a piece calls the wood of a blank that another left: a material of the same wood, else a stick that such a board may be ripped for; null when it has neither.</summary>
    public static string? MaterialOf(Piece piece, LeftBlank blank)
    {
        if (Line(blank.By.Piece, blank.Wood) is not { } was) return null;
        return piece.Materials.Values.Where(m => MaterialIdentity.Of(m) == was.Identity || (was.Board is { } board && m is Stick stick && stick.Kind == board.Kind))
            .OrderBy(m => MaterialIdentity.Of(m) == was.Identity ? 0 : 1).ThenBy(m => m.Name, StringComparer.Ordinal).FirstOrDefault()?.Name;
    }

    private static void TakeOff(RackLine[] lines, int[] suiting, Texts.Shop shop, TakenByPiece taken)
    {
        foreach (int i in suiting)
        {
            ShopStock line = lines[i].Stock;
            if ((line.Counted ?? shop.Counted)?.IsAfter(taken.Entry.At) == true) return;
            if (line.Size.InHand is not > 0) continue;
            lines[i] = lines[i] with { Stock = With(line, line.Size.InHand!.Value - 1), TakenBy = lines[i].TakenBy.Add(taken) };
            return;
        }
        foreach (int i in suiting.Where(i => shop.Stock[i].Size.InHand > 0).Take(1)) lines[i] = lines[i] with { TooMany = lines[i].TooMany.Add(taken) };
    }

    private static int[] Suiting(Texts.Shop shop, TakenByPiece taken)
    {
        Piece piece = taken.By.Piece;
        LoggedSize size = taken.Wood.Size!;
        bool Is(ShopStock line) => line.Size is { InHand: not null } s && (s.Along, s.Across, s.Name) == (size.Along, size.Across, taken.Wood.Name) && IsWood(piece, taken.Wood, line);
        // Alike lines are told apart by whom they are kept for, then by what else was said of them when they were taken; what was written anew since makes it no other wood.
        return
        [
            .. Enumerable.Range(0, shop.Stock.Length).Where(i => Is(shop.Stock[i]))
                .OrderBy(i => IsFor(shop.Stock[i], piece) ? 0 : 1).ThenBy(i => Likeness(shop, shop.Stock[i], size)).ThenBy(i => shop.Stock[i].For.Length > 0 ? 0 : 1),
        ];
    }

    private static bool IsWood(Piece piece, TakenWood wood, ShopStock line)
    {
        if (wood.Size!.Section is not { } section) return line.Identity == IdentityOf(piece, wood.Of, null);
        return line.Board is { } board && piece.Materials.GetValueOrDefault(wood.Of) is Stick stick && board.Kind == stick.Kind && StickSection.Of(board) == section;
    }

    private static int Likeness(Texts.Shop shop, ShopStock line, LoggedSize size)
    {
        (Length nearEdge, Length farEdge, Length nearEnd, Length farEnd) = line.Size.Trims(size.Across is null ? shop.BoardTrim : shop.SheetTrim);
        var trim = new EdgeTrim(nearEnd, farEnd, size.Across is null ? size.Trim.AcrossStart : nearEdge, size.Across is null ? size.Trim.AcrossEnd : farEdge);
        return (trim == size.Trim ? 0 : 1) + (SameFlaws(line.Size, size) ? 0 : 2);
    }

    private static bool SameFlaws(StockSize line, LoggedSize size) => line.Flaws.Order(s_byPlace).SequenceEqual(size.Flaws.Order(s_byPlace));

    private static readonly Comparer<Flaw> s_byPlace = Comparer<Flaw>.Create((a, b) => (a.From, a.To).CompareTo((b.From, b.To)));

    private static ShopStock With(ShopStock line, int have) => line with { Size = line.Size with { InHand = have } };

    internal static bool StandsInRack(ShopStock blank, Texts.Shop shop) => shop.Stock.Any(s => IsSame(s, blank));

    private static bool IsSame(ShopStock line, ShopStock blank) => line.Identity == blank.Identity && line.Size.InHand is not null && line.Size.Name == blank.Size.Name;

    /// <summary>A blank as a line of stock; null where its piece has no such wood.</summary>
    internal static ShopStock? Line(Piece piece, LeftWood left)
    {
        LoggedSize was = left.Size;
        if (piece.Materials.GetValueOrDefault(left.Of) is not { } material || (material is Panel) == (was.Across is null)) return null;
        EdgeTrim trim = was.Trim;
        StickSection? section = was.Section;
        // The raw edge of a board is no part of the width between its true edges.
        if (section is { } two) section = StickSection.Of(two.Thickness, two.Width - (trim.AcrossStart + trim.AcrossEnd).ToExact());
        var size = new StockSize(was.Along, was.Across, null, 1, left.Name, null)
        {
            Sides = new(trim.AcrossStart, trim.AcrossEnd, trim.AlongStart, trim.AlongEnd),
            Flaws = was.Flaws,
        };
        return new(IdentityOf(piece, left.Of, section)!, size)
        {
            Board = section is { } wide && material is Stick stick ? Board(stick, wide) : null,
            IsBlank = true,
            IsKept = left.Use == BlankUse.Keep,
        };
    }

    private static Stick Board(Stick stick, StickSection section) =>
        new("", "", new Given(section.Thickness, stick.Place), new Given(section.Width, stick.Place), stick.Kind, [], stick.Place);
}
