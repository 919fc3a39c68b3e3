using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut.Joinery;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut.Cases;

/// <summary>
/// Two cases side by side stand on sides of their own, which are screwed together: the doubled partition of a row. Two rows of screws, one near the front and
/// one near the back, about 16 in apart (common practice, no source).
/// </summary>
internal static class NeighbourRule
{
    /// <summary>Screws a case to the one on its left, where their sides touch.</summary>
    public static void Write(Book book, CaseShape shape)
    {
        if (shape.Described.Stand.Beside is not { } left || book.Piece.Members.OfType<Case>().FirstOrDefault(c => c.Key == left.Text) is not { } other) return;
        string neighbour = Standing.NameOf(book, other, "case"), line = shape.Described.Stand.IsFlushAtBack ? "backs" : "fronts";
        // What hangs is joined once it hangs.
        Stage stage = shape.Described.IsHung ? Stage.Fixing : Stage.Top;
        if (Standing.Fillers(book, left.Text, shape.Key).Any())
        {
            string from = string.Join(" and ", new[] { (other.Fillers.Any(f => f.IsAtRight), shape.Name), (shape.Described.Fillers.Any(f => !f.IsAtRight), neighbour) }.Where(f => f.Item1).Select(f => f.Item2));
            book.Steps.Add(new(stage, $"Bring {shape.Name} up to {neighbour} with the filler between them, level with it and {line} in line, clamp, and fix the filler from inside {from} too.", [], null, "screws"));
            return;
        }
        if (book.Parts.Find(p => p.Key == $"{left.Text}.side") is not { } side) return;
        // What stands over the sides keeps them apart; a finding says so already.
        if (FaceFrameRule.OverLeft(book, shape.Key, left.Text).Any(t => book.Value(t.Of!.Value).Sign > 0)) return;
        ExactLength own = book.Value(shape.Thickness), far = book.Value(side.Thickness);
        ExactLength high = ExactLength.Min(side.Placements[0].SizeZ, book.Parts.First(p => p.Key == shape.Side).Placements[0].SizeZ);
        int screws = 2 * Math.Max(2, (int)(high.Inches / 16).Round(Rounding.Up));
        string name = Fastening.IntoFace(book.Piece.Unit, own, far) is { } screw
            ? $"Wood screw no. 8 (4 mm), {book.Say(screw)}"
            : $"Connecting bolt for {book.Say(own + far)}";
        book.Hardware.Add(new(shape.Key, name, screws, "piece", $"to {neighbour}, one row near the front and one near the back, about every 16 in; common practice, no source"));
        book.Steps.Add(new(stage, $"Clamp {shape.Name} to {neighbour}, level with it and {line} in line, and screw the two sides together: {screws} screws, clear of hinges, pins and slides.{InSlots(book, shape, side)}", [], null, "screws"));
    }

    /// <summary>Where one side moves and the other does not, or not as much, the rear row stands in slots; in words, or nothing.</summary>
    private static string InSlots(Book book, CaseShape shape, Part beside)
    {
        Part own = book.Parts.First(p => p.Key == shape.Side);
        Rational a = WoodMoves.Share(book.Piece.Materials[own.Material], book.Piece.MoistureChange), b = WoodMoves.Share(book.Piece.Materials[beside.Material], book.Piece.MoistureChange);
        Rational more = a > b ? a - b : b - a;
        if (more.Sign == 0) return "";
        QuantityKey slot = book.Define(shape.Key, "beside-slot", $"{shape.Name}, length of the slots for its rear screws to {beside.Name}", new Sum(
            Term.From("screw", 1, Usual.Length(book, "WD2"), new(OriginKind.Rule, "its shank", Materials.TradeRules.Get("WD2").Cited)),
            Term.From("what one side moves more than the other, of its width", more, own.Width.Made)));
        book.Machinings.Add(new(own.Key, $"Slots from front to back for the rear screws to {beside.Name}", [("length", slot)]) { By = [beside.Key] });
        return $" The rear ones stand in slots {book.Say(book.Value(slot))} long, for one side moves and the other does not follow.";
    }
}
