using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut.Drawers;

/// <summary>Where the holes of a handle are on its front: in its middle, or as far below the upper edge as those of its row.</summary>
internal static class HandleRule
{
    public static void Write(Book book, DrawerKind kind, Drawer drawer, PartSize width, PartSize height)
    {
        if (kind.Handles is not { } handles) return;
        string key = drawer.Key, name = $"drawer {key}";
        TradeRule line = TradeRules.Get("HD1"), drill = TradeRules.Get("HD2");
        QuantityKey? apart = handles.Apart is { } pitch ? book.Define(key, "handle.apart", $"{name}, holes of its handle apart", pitch.Stated) : null;
        QuantityKey across = book.Define(key, "handle.across", $"{name}, from the left edge of its front to the first hole of its handle",
            new Sum([Term.From("front", 1, width.Made), .. apart is { } a ? [Term.From("holes apart", -1, a)] : ImmutableArray<Term>.Empty], Rational.Of(1, 2)));
        QuantityKey down = book.Define(key, "handle.down", $"{name}, from the upper edge of its front to its handle",
            handles.FromTop?.Stated ?? (handles.IsInLine
                ? new Stated(line.Length, new(OriginKind.Rule, "in line across a row", line.Cited))
                : (Working)new Sum([Term.From("front", 1, height.Made)], Rational.Of(1, 2))));
        QuantityKey hole = book.Define(key, "handle.hole", $"{name}, holes of its handle", handles.Hole?.Stated ?? new Stated(drill.Length, new(OriginKind.Rule, "for its screws", drill.Cited)));
        book.Machinings.Add(new($"{key}.front", apart is null ? "Drill one hole through for the handle, with its box in place" : "Drill two holes through for the handle, level, with its box in place",
            [("from the left edge", across), ("from the upper edge", down), .. apart is { } between ? [("apart", between)] : ImmutableArray<(string, QuantityKey)>.Empty, ("hole", hole)])
        { On = Face.Outside, Caution = "drill" });
        book.Hardware.Add(new(key, handles.Of, 1, "piece", "one a drawer; its screws go through front and box"));
        foreach ((int number, Placement box) in Bored.Members(book, $"{key}.front"))
            foreach (ExactLength x in apart is { } second ? [book.Value(across), book.Value(across) + book.Value(second)] : new[] { book.Value(across) })
                book.Bores.Add(new(key, "handle", $"{key}.front", number, Along.Y, box.X + x, box.Y, box.Z + box.SizeZ - book.Value(down), book.Value(hole), ExactLength.Zero));
        ExactLength half = book.Value(hole) / 2, left = book.Value(across) - half, below = book.Value(height.Made) - book.Value(down) - half, above = book.Value(down) - half;
        if (left.Sign <= 0 || below.Sign <= 0 || above.Sign <= 0)
            book.NoteOnce("handle.off-front", Severity.Stop, key, $"The holes of the handle of {name} do not lie on its front of {book.Say(book.Value(width.Made))} by {book.Say(book.Value(height.Made))}.",
                below.Sign <= 0 || above.Sign <= 0 ? $"Make {book.Hand.Key("from top")} smaller, or leave it out." : "Use a handle with its holes nearer together.", handles.Place);
        else OffBox(book, handles, key, book.Value(across), book.Value(down), half);
    }

    /// <summary>Screws that pass beside the box, or through the thickness of its sides, hold the front only.</summary>
    private static void OffBox(Book book, Handles handles, string key, ExactLength across, ExactLength down, ExactLength half)
    {
        Part? side = book.Parts.FirstOrDefault(p => p.Key == $"{key}.side"), face = book.Parts.FirstOrDefault(p => p.Key == $"{key}.front");
        if (side is null || face is null) return;
        (Placement left, Placement right, Placement front) = (side.Placements[0], side.Placements[^1], face.Placements[0]);
        ExactLength x = front.X + across - half, z = front.Z + front.SizeZ - down;
        if (x >= left.X + left.SizeX && z - half >= left.Z && z + half <= left.Z + left.SizeZ && front.X + front.SizeX - across + half <= right.X) return;
        book.NoteOnce("handle.off-box", Severity.Warn, key, $"The holes of the handle of drawer {key} miss the inside of its box: its screws would hold the front only, or come out in a side.",
            "Use a handle with its holes nearer together, set it lower or higher, or screw it to the front before that is fixed.", handles.Place);
    }
}
