using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Pieces;
using Setout.Cutting.Boards;

namespace Setout.Shop.Texts;

/// <summary>Reads one length of board: what every stock says, its flaws, and in the piece file the width of a board that is ripped.</summary>
internal static class BoardText
{
    // Each flaw may part one clear stretch into two.
    private const int MostFlaws = BoardInstance.MostStretches - 1;

    /// <summary>A board of the shop file: its section stands beside it.</summary>
    /// <param name="context">Of the text.</param>
    /// <param name="map">To be read.</param>
    /// <param name="isShop">True in a shop file, where a trim may be told by side.</param>
    public static StockSize? OfShop(TextContext context, MapReader map, bool isShop = false)
    {
        Given? length = map.Length("length");
        if (!map.IsThere("length")) map.Missing("length", "96");
        StockSize? size = MaterialText.Stock(map, length, null, isShop ? "board-trim" : "");
        ImmutableArray<Flaw> flaws = Flaws(context, map, length, isCounted: true);
        return size is null ? null : size with { Flaws = flaws };
    }

    /// <summary>A board of the piece file: it has the section of its material, or is wider where a width is given.</summary>
    /// <param name="context">Of the text.</param>
    /// <param name="map">To be read.</param>
    /// <param name="section">Of the material; null where that is wrong already.</param>
    public static StockSize? OfPiece(TextContext context, MapReader map, StickSection? section)
    {
        StockSize? size = OfShop(context, map);
        Given? width = map.Length("width");
        if (width is { } wide && section is { } own && wide.Value <= own.Width)
        {
            LengthFormat format = LengthFormat.For(context.Unit);
            context.Stop("stock.not-wider", wide.Place, $"A board {format.Text(wide.Value)} wide is not wider than the section of {format.Bare.Text(own.Thickness)} x {format.Text(own.Width)}.",
                "Leave 'width' out for a board that has the section already; for one to rip, give its width between the true edges.");
        }
        return size is null ? null : size with { Width = width is { } w ? Length.FromTicks((long)w.Value.Ticks.Floor()) : null };
    }

    /// <summary>The flaws of a board that is there.</summary>
    public static ImmutableArray<Flaw> Flaws(TextContext context, MapReader map, Given? length, bool isCounted = false)
    {
        // All are read before anything is said of them together, so that their keys are known.
        List<(Given From, Given To)> written = [.. map.Maps("flaws", "flaw", "from: 20, to: 24").Select(Ends).OfType<(Given, Given)>()];
        if (map.IsEmpty("flaws")) return [];
        if (isCounted && !map.IsThere("have"))
        {
            map.Missing("have", "1", "stock.flaws-to-buy", "Flaws are told here of a board that has to be bought; they are of one in the rack.");
            return [];
        }
        if (written.Count > MostFlaws)
        {
            context.Stop("stock.too-many-flaws", map.KeyPlaceOf("flaws"), $"{written.Count} flaws are told of one board; {MostFlaws} are the most.", "Tell flaws that lie close together as one, or take the board out.");
            return [];
        }
        LengthFormat format = LengthFormat.For(context.Unit);
        var flaws = ImmutableArray.CreateBuilder<Flaw>();
        foreach ((Given from, Given to) in written)
        {
            if (to.Value <= from.Value)
                context.Stop("stock.flaw-empty", to.Place, $"The flaw ends at {format.Text(to.Value)}, which is not beyond its beginning at {format.Text(from.Value)}.", "Measure both from the same end of the board and write the nearer one as 'from'.");
            else if (length is { } long_ && to.Value > long_.Value)
                context.Stop("stock.flaw-beyond", to.Place, $"The flaw reaches to {format.Text(to.Value)}, beyond the board's length of {format.Text(long_.Value)}.", "Measure it along the board from one end, as the board lies before trimming.");
            else if (length is { } board && Landed(from, to, board) is { } flaw) flaws.Add(flaw);
        }
        return flaws.ToImmutable();
    }

    private static (Given From, Given To)? Ends(MapReader map)
    {
        Given? from = map.Length("from", mayBeZero: true), to = map.Length("to");
        if (!map.IsThere("from")) map.Missing("from", "20");
        if (!map.IsThere("to")) map.Missing("to", "24");
        return from is { } a && to is { } b ? (a, b) : null;
    }

    // A flaw between ticks is taken from the tick below to the tick above, the board itself ends on the tick below.
    private static Flaw? Landed(Given from, Given to, Given length)
    {
        Length begin = Length.FromTicks((long)from.Value.Ticks.Floor()), end = Length.FromTicks((long)-(-to.Value).Ticks.Floor());
        end = Length.Min(end, Length.FromTicks((long)length.Value.Ticks.Floor()));
        return end > begin ? new(begin, end) : null;
    }
}
