using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Cutting.Boards;
using Setout.Shop.Texts;

namespace Setout.Shop.Plans;

/// <summary>
/// Which boards may be ripped for a stick. A board keeps its thickness (the smaller size of its section), which has to be one of the two sizes of
/// the stick; the saw makes the other one across the width of the board, which has to be larger.
/// </summary>
internal static class Ripping
{
    /// <summary>Boards of the shop that the shop allows to be ripped, with their place in its list and the size that the saw makes.</summary>
    public static IEnumerable<(int Place, ShopStock Stock, StickSection Section, string Sawn)> Boards(Stick stick, Texts.Shop shop)
    {
        if (StickSection.Of(stick) is not { } own) yield break;
        for (int i = 0; i < shop.Stock.Length; i++)
        {
            if (shop.Stock[i].Size.InHand is 0 || shop.Stock[i].Board is not { } board || board.Kind != stick.Kind || StickSection.Of(board) is not { } section) continue;
            if (section.Thickness == own.Thickness && section.Width > own.Width) yield return (i, shop.Stock[i], section, "width");
            else if (section.Thickness == own.Width && section.Width > own.Thickness) yield return (i, shop.Stock[i], section, "thickness");
        }
    }

    /// <summary>How a board is ripped for a stick: lanes are as wide as the stick is, as read where it is read.</summary>
    /// <param name="board">Of the board between its true edges.</param>
    /// <param name="stick">The stick.</param>
    /// <param name="sawn">Which of its sizes the saw makes: <c>width</c> or <c>thickness</c>.</param>
    /// <param name="set">The piece.</param>
    /// <param name="kerf">Of the saw that rips.</param>
    public static BoardRip Of(Length board, Stick stick, string sawn, SetPiece set, Length kerf) =>
        new(board, Length.FromTicks((long)-(-set.Worked[QuantityKey.Of(stick.Name, sawn)]).Ticks.Floor()), kerf);
}
