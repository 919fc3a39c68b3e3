using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut.Joinery;

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
        book.Steps.Add(new(stage, $"Clamp {shape.Name} to {neighbour}, level with it and {line} in line, and screw the two sides together: {screws} screws, clear of hinges, pins and slides.", [], null, "screws"));
    }
}
