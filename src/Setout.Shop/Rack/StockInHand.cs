using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Cutting.Sheets;
using Setout.Shop.Texts;

namespace Setout.Shop.Rack;

/// <summary>
/// The rack as it stands for one piece: lines kept for another are hidden, what the log took is taken off the count, and blanks that the log left stand beside the
/// lines of the shop file. Each line of the shop keeps its place in the list; one of which nothing is left has a count of 0. The same is done for what the piece file says
/// is in hand.
/// </summary>
public static class StockInHand
{
    /// <summary>The shop with its stock as it is for a piece.</summary>
    /// <param name="piece">Whose materials the log names.</param>
    /// <param name="log">What was taken and left.</param>
    /// <param name="shop">As written.</param>
    public static Texts.Shop Of(Piece piece, Log log, Texts.Shop shop)
    {
        WoodLedger ledger = WoodLedger.Of(log);
        ShopStock[] lines = [.. shop.Stock.Select(s => IsFor(s, piece) ? s : With(s, 0))];
        foreach ((TakenWood wood, MarkEntry entry) in ledger.Taken.Where(t => t.Wood.Source == WoodSource.Rack)) TakeOff(piece, shop, lines, wood, entry.At);
        return shop with { Stock = [.. lines, .. ledger.Blanks.Select(b => Line(piece, b)).OfType<ShopStock>().Where(b => !StandsInRack(b, shop))] };
    }

    /// <summary>The piece with what its own file says is in hand, less what the log took of that.</summary>
    /// <param name="piece">As described.</param>
    /// <param name="log">What was taken.</param>
    public static Piece Of(Piece piece, Log log)
    {
        if (!piece.Materials.Values.Any(m => m.Sizes.Any(s => s.InHand is not null))) return piece;
        foreach ((TakenWood wood, _) in WoodLedger.Of(log).Taken.Where(t => t.Wood.Source == WoodSource.Piece))
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

    private static void TakeOff(Piece piece, Texts.Shop shop, ShopStock[] lines, TakenWood wood, string at)
    {
        LoggedSize size = wood.Size!;
        bool Is(ShopStock line) => line.Size is { InHand: not null } s && (s.Along, s.Across, s.Name) == (size.Along, size.Across, wood.Name) && IsWood(piece, wood, line);
        // Alike lines are told apart by what else was said of them when they were taken; a trim or a flaw that was mended since makes it no other wood.
        int[] suiting = [.. Enumerable.Range(0, shop.Stock.Length).Where(i => Is(shop.Stock[i])).OrderBy(i => Likeness(shop, shop.Stock[i], size))];
        foreach (int i in suiting)
        {
            if ((lines[i].Counted ?? shop.Counted)?.IsAfter(at) == true) return;
            if (lines[i].Size.InHand is not > 0) continue;
            lines[i] = With(lines[i], lines[i].Size.InHand!.Value - 1);
            return;
        }
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

    private static bool StandsInRack(ShopStock blank, Texts.Shop shop) => shop.Stock.Any(s => s.Identity == blank.Identity && s.Size.InHand is not null && s.Size.Name == blank.Size.Name);

    private static ShopStock? Line(Piece piece, LeftWood left)
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
        };
    }

    private static Stick Board(Stick stick, StickSection section) =>
        new("", "", new Given(section.Thickness, stick.Place), new Given(section.Width, stick.Place), stick.Kind, [], stick.Place);
}
