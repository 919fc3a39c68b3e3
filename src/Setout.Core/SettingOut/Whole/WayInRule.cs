using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut.Whole;

/// <summary>
/// Whether what leaves the bench whole goes through the way in: a structure without drawers and doors, and each top. It may be tipped on any face and goes in along its
/// longest size, so its two smaller sizes are held against the opening; tipped to a diagonal it might still go, which is not counted, and no room is kept for hands. Geometry.
/// </summary>
internal static class WayInRule
{
    private const string Counted = "Tipped on any face, that is; a diagonal is not counted, and no room is kept for hands.";

    public static void Write(Book book)
    {
        if (book.Piece.WayIn is not { } way) return;
        var (low, high) = Order(way.Width.Value, way.Height.Value);
        foreach (Unit unit in book.Units.Where(u => u.Kind is UnitKind.Structure or UnitKind.Top))
        {
            if (Sizes(Boxes(book, unit.Key)) is not { } sizes || Goes(sizes, low, high)) continue;
            string remedy = unit.Kind == UnitKind.Top ? $"Make it in two, each {book.Say(high)} or less across, that meet over a seam in the room, or glue it up there."
                : book.Piece.Members.Any(m => m.Key == unit.Key && m is Case) ? $"Make two cases of it, one {book.Hand.Key("on")} or {book.Hand.Key("beside")} the other, each with two of its sizes within {book.Say(low)} and {book.Say(high)}; or close its last joints in the room."
                : $"Bring two of its sizes within {book.Say(low)} and {book.Say(high)}, or close its last joints in the room.";
            Tell(book, way, unit.Name, Severity.Warn, unit.Key, sizes, $"{remedy} {Counted}");
        }
        foreach (Top top in book.Piece.Members.OfType<Top>())
        {
            ImmutableArray<string> under = [.. book.Joints.Where(j => j.Against is { } a && book.Units.Any(u => u.Key == a && u.Kind == UnitKind.Structure) && j.Part.Split('.')[0] == top.Key).Select(j => j.Against).Distinct()];
            // Over several it is laid on in the room anyway.
            if (under is not [var only] || Sizes(Boxes(book, only)) is not { } alone || Sizes([.. Boxes(book, only), .. Boxes(book, top.Key)]) is not { } both) continue;
            if (Goes(alone, low, high) && !Goes(both, low, high))
                Tell(book, way, $"{book.Units.First(u => u.Key == only).Name} with its top on", Severity.Note, top.Key, both, $"Lay the top on in the room. {Counted}");
        }
    }

    /// <summary>Whether a box with these sizes, the least first, goes through an opening.</summary>
    private static bool Goes(ImmutableArray<ExactLength> sizes, ExactLength low, ExactLength high) => sizes[0] <= low && sizes[1] <= high;

    private static void Tell(Book book, WayIn way, string name, Severity severity, string key, ImmutableArray<ExactLength> sizes, string remedy) =>
        book.Note("way-in.too-small", severity, key, $"{char.ToUpperInvariant(name[0])}{name[1..]} is {book.Say(sizes[0])} x {book.Say(sizes[1])} x {book.Say(sizes[2])} and does not go through the way in, {book.Say(way.Width.Value)} wide and {book.Say(way.Height.Value)} high.", remedy, way.Place);

    private static ImmutableArray<Placement> Boxes(Book book, string unit)
    {
        HashSet<string> keys = [unit, .. book.Steps.Where(s => s.On == unit).SelectMany(s => s.Parts)];
        return [.. book.Parts.Where(p => keys.Contains(p.Key)).SelectMany(p => p.Placements)];
    }

    private static ImmutableArray<ExactLength>? Sizes(ImmutableArray<Placement> boxes) => boxes.IsEmpty ? null
        : [.. new[] { Span(boxes, b => b.X, b => b.SizeX), Span(boxes, b => b.Y, b => b.SizeY), Span(boxes, b => b.Z, b => b.SizeZ) }.Order()];

    private static ExactLength Span(ImmutableArray<Placement> boxes, Func<Placement, ExactLength> from, Func<Placement, ExactLength> size) =>
        boxes.Select(b => from(b) + size(b)).Max() - boxes.Select(from).Min();

    private static (ExactLength, ExactLength) Order(ExactLength a, ExactLength b) => a <= b ? (a, b) : (b, a);
}
