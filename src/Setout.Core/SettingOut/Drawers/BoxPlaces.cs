using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.Workings;
using static Setout.Core.Measures.ExactLength;

namespace Setout.Core.SettingOut.Drawers;

/// <summary>The parts of a drawer box in their places: in the middle of its opening, flush with the face or with the back of an inset front.</summary>
internal static class BoxPlaces
{
    public static void Write(BoxCorners corners, BoxSizes sizes, BottomSizes flat, ExactLength low)
    {
        Box box = corners.Box;
        (Book book, Space space, Drawer drawer, string key, string name) = (box.Book, box.Space, box.Drawer, box.Key, box.Name);
        (Panel sides, Panel bottom) = (box.Sides, box.Bottom);
        bool isApplied = box.Kind.BottomFit == BottomFit.Applied;
        ExactLength ts = book.Value(box.SideThickness), te = book.Value(box.EndThickness), tk = book.Value(box.BackThickness), tb = book.Value(box.BottomThickness);
        ExactLength side = book.Value(sizes.SideLength.AsCut), height = book.Value(sizes.SideHeight.AsCut), end = book.Value(sizes.EndLength.AsCut);
        ExactLength letIn = corners.IsThrough ? ts : corners.IsLetIn ? book.Value(corners.Depth!.AsCut) : Zero;
        ExactLength lap = corners.Lap is { } l ? book.Value(l) : Zero, behind = corners.Behind is { } b ? book.Value(b) : Zero;
        ExactLength outside = end + ((ts - letIn) * 2), rear = side + lap - behind;
        ExactLength x = space.X + ((book.Value(space.Width) - outside) / 2), y = box.Y, z = isApplied ? low + tb : low;
        ImmutableArray<QuantityKey> held = BoxRule.Held(space, key);
        book.Add(new($"{key}.side", $"{key}s", $"{name} side", PartRole.BoxSide, sides.Name, sizes.SideLength, sizes.SideHeight, box.SideThickness, 2, sides.Grain,
            [new(x, y + lap, z, ts, side, height), new(x + outside - ts, y + lap, z, ts, side, height)], drawer.Place, held));
        Placement front = new(x + ts - letIn, y, z, end, te, height);
        if (flat is { BackLength: { } backLength, BackHeight: { } backHeight })
        {
            ExactLength back = book.Value(backLength.AsCut), high = book.Value(backHeight.AsCut);
            book.Add(new($"{key}.end", $"{key}e", $"{name} front of the box", PartRole.BoxEnd, sides.Name, sizes.EndLength, sizes.EndHeight, box.EndThickness, 1, sides.Grain, [front], drawer.Place, held));
            book.Add(new($"{key}.back", $"{key}k", $"{name} back of the box", PartRole.BoxEnd, sides.Name, backLength, backHeight, box.BackThickness, 1, sides.Grain,
                [new(x + ((outside - back) / 2), y + rear - tk, z + height - high, back, tk, high)], drawer.Place, held));
        }
        else
        {
            book.Add(new($"{key}.end", $"{key}e", $"{name} front and back of the box", PartRole.BoxEnd, sides.Name, sizes.EndLength, sizes.EndHeight, box.EndThickness, 2, sides.Grain,
                [front, front with { Y = y + rear - tk }], drawer.Place, held));
        }
        ExactLength wide = book.Value(flat.Width.AsCut), deep = book.Value(flat.Length.AsCut);
        ExactLength at = flat.BackLength is not null ? rear - deep : (isApplied ? side + lap - deep : rear - deep) / 2;
        ExactLength up = box.Kind.BottomFit is BottomFit.Grooved or BottomFit.SlidIn ? book.Value(QuantityKey.Of(key, "groove.up")) : Zero;
        // The bottom may lie either way in its groove: the longer side is taken along the grain.
        bool alongWidth = book.Value(flat.Width.Exact) >= book.Value(flat.Length.Exact);
        book.Add(new($"{key}.bottom", $"{key}b", $"{name} bottom", PartRole.BoxBottom, bottom.Name,
            alongWidth ? flat.Width : flat.Length, alongWidth ? flat.Length : flat.Width, box.BottomThickness, 1, bottom.Grain,
            [new(x + ((outside - wide) / 2), y + at, low + up, wide, deep, tb)], drawer.Place, held));
    }
}
