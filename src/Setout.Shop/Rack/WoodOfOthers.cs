using System.Globalization;
using System.Text;
using Setout.Cutting.Sheets;
using Setout.Shop.Texts;

namespace Setout.Shop.Rack;

/// <summary>What a piece sees of the wood of the others, as one text: equal texts give equal plans.</summary>
internal static class WoodOfOthers
{
    /// <summary>Empty where the others took nothing from the rack, have no blank, and had none that this piece took or left.</summary>
    /// <param name="piece">The name of its file.</param>
    /// <param name="ledger">Of all pieces of the shop.</param>
    /// <param name="shop">As written.</param>
    public static string Fingerprint(string piece, WoodLedger ledger, Texts.Shop shop)
    {
        var text = new StringBuilder();
        foreach ((int place, RackLine line) in StockInHand.Lines(ledger, shop).Index())
        {
            string[] by = [.. line.TakenBy.Select(t => t.By).Concat(line.TooMany.Select(t => t.By)).Where(b => b.Name != piece).Select(Called).Order(StringComparer.Ordinal)];
            if (by.Length > 0) text.Append(CultureInfo.InvariantCulture, $"\nline {place}: {string.Join("; ", by)}");
        }
        foreach (LeftBlank blank in ledger.Blanks.Where(b => b.By.Name != piece)) text.Append(CultureInfo.InvariantCulture, $"\n{Called(blank.By)} has {Words(blank)}");
        foreach ((LeftBlank blank, var by) in ledger.Gone)
        {
            bool isOwn = blank.By.Name == piece;
            if (by.All(t => t.By.Name == piece == isOwn)) continue;
            string[] others = [.. by.Where(t => t.By.Name != piece).Select(t => Called(t.By)).Distinct().Order(StringComparer.Ordinal)];
            text.Append(CultureInfo.InvariantCulture, $"\n{(isOwn ? "" : Called(blank.By))} left {Words(blank)}, taken by {string.Join("; ", others)}");
        }
        return text.ToString();
    }

    private static string Called(ShopPiece piece) => $"{piece.Name} ({piece.Piece.Name})";

    private static string Words(LeftBlank blank)
    {
        LoggedSize size = blank.Wood.Size;
        EdgeTrim trim = size.Trim;
        string wood = StockInHand.Line(blank.By.Piece, blank.Wood)?.Identity ?? "";
        string flaws = string.Join(", ", size.Flaws.Select(f => $"{f.From.Ticks} {f.To.Ticks}"));
        return $"{blank.Name}: {wood}, {size.Along.Ticks} {size.Across?.Ticks} {size.Section} {trim.AlongStart.Ticks} {trim.AlongEnd.Ticks} {trim.AcrossStart.Ticks} {trim.AcrossEnd.Ticks}, {flaws}, {blank.Wood.Use}";
    }
}
