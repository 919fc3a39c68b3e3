using System.Collections.Immutable;
using System.Globalization;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Shop.Texts;

namespace Setout.Shop.Plans;

/// <summary>
/// Ids of stock that follow from what the stock is (in millimetres, exact), not from where it stands in a list: another line beside it changes no id.
/// They are never shown to people, who read <see cref="StockLine.Words"/>.
/// </summary>
internal static class StockIds
{
    /// <summary>An id for each line, in order. Lines that are equal in all that counts are told apart by their turn.</summary>
    /// <param name="lines">The size and, where a board is ripped, the section of the whole board.</param>
    public static ImmutableArray<string> Of(IEnumerable<(StockSize Size, StickSection? Board)> lines)
    {
        var seen = new Dictionary<(string, string), int>();
        var ids = ImmutableArray.CreateBuilder<string>();
        foreach ((StockSize size, StickSection? board) in lines)
        {
            string what = What(size, board);
            int turn = seen[(what, size.Name)] = seen.GetValueOrDefault((what, size.Name)) + 1;
            // The name, which may be anything, stands last, so that no two ids can meet.
            ids.Add($"{what}{(turn > 1 ? $" no. {turn}" : "")}{(size.Name.Length > 0 ? $" named {size.Name}" : "")}");
        }
        return ids.ToImmutable();
    }

    private static string What(StockSize size, StickSection? board)
    {
        string what = $"{(size.InHand is null ? "buy" : "have")} {Mm(size.Along)}";
        if (size.Across is { } across) what += $" x {Mm(across)}";
        if (board is { } section) what += $" of {section.Thickness.Ticks} x {section.Width.Ticks}";
        if (size.Trim is { } trim) what += $" trim {Mm(trim)}";
        if (size.Sides is { } s) what += $" trim {Mm(s.NearEdge)} {Mm(s.FarEdge)} {Mm(s.NearEnd)} {Mm(s.FarEnd)}";
        if (size.Flaws.Length > 0) what += $" flaws {string.Join(", ", size.Flaws.OrderBy(f => f.From).ThenBy(f => f.To).Select(f => $"{Mm(f.From)} to {Mm(f.To)}"))}";
        return what;
    }

    private static string Mm(Length? length) => length is { } given ? Mm(given) : "usual";

    private static string Mm(Length length) => length.ToMillimetres().ToString(CultureInfo.InvariantCulture);
}
