using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut;

/// <summary>
/// The way of a drawer: from where it stands closed straight out to the front. What hangs into an open box touches no part of it, and still it cannot be pulled.
/// Doors swing away, and other fronts move with drawers of their own.
/// </summary>
internal static class DrawerWay
{
    /// <summary>Notes what stands in the way of a drawer; nothing where the piece cannot be set out for another reason.</summary>
    public static void Look(Book book)
    {
        if (book.Findings.Any(f => f.Severity == Severity.Stop)) return;
        ExactLength step = book.Grid.Step.ToExact();
        Part[] fixed_ = [.. book.Parts.Where(p => p.Placements.Length > 0 && !Moves(p.Role))];
        foreach (Unit drawer in book.Units.Where(u => u.Kind == UnitKind.Drawer))
        {
            ImmutableArray<Placement> box = [.. book.Parts.Where(p => new QuantityKey(p.Key).Owner == drawer.Key && p.Role is PartRole.BoxSide or PartRole.BoxEnd or PartRole.BoxBottom).SelectMany(p => p.Placements)];
            if (box.IsEmpty || fixed_.Length == 0) continue;
            ExactLength left = box.Min(b => b.X), low = box.Min(b => b.Z), back = box.Max(b => b.Y + b.SizeY);
            ExactLength front = box.Min(b => b.Y);
            // One filled from behind is pulled out at the back.
            bool isPulledBack = book.Parts.FirstOrDefault(p => p.Role == PartRole.FalseFront && new QuantityKey(p.Key).Owner == drawer.Key) is { Placements: [var face, ..] } && face.Y > front;
            if (isPulledBack) back = ExactLength.Max(back, fixed_.Max(p => p.Placements.Max(b => b.Y + b.SizeY)));
            else front = ExactLength.Min(front, fixed_.Min(p => p.Placements.Min(b => b.Y)));
            var way = new Placement(left, front, low, box.Max(b => b.X + b.SizeX) - left, back - front, box.Max(b => b.Z + b.SizeZ) - low);
            // All that one thing has there counts together: the side of a well is thin, and still the whole well is in the way.
            foreach (IGrouping<string, Part> other in fixed_.GroupBy(p => new QuantityKey(p.Key).Owner).Where(g => g.Key != drawer.Key))
            {
                Part[] there = [.. other.Where(p => p.Placements.Any(b => b.Within(way) >= step))];
                if (there.Length == 0) continue;
                ImmutableArray<Placement> boxes = [.. there.SelectMany(p => p.Placements).Where(b => b.Within(way) >= step)];
                ExactLength across = Shared(boxes, way, b => b.X, b => b.SizeX), up = Shared(boxes, way, b => b.Z, b => b.SizeZ);
                book.NoteOnce("drawer.way-blocked", book.Facts.Pins.Count == 0 ? Severity.Stop : Severity.Warn, drawer.Key, $"{drawer.Name} cannot be pulled out: {there[0].Name} stands {book.Say(ExactLength.Min(across, up))} {(up <= across ? "down into" : "into the side of")} its way.",
                    $"Make the drawer {book.Say(ExactLength.Min(across, up))} {(up <= across ? "lower" : "narrower")}, give it up, or give the other another place.", there[0].Place);
                break;
            }
        }
    }

    private static ExactLength Shared(ImmutableArray<Placement> boxes, Placement way, Func<Placement, ExactLength> from, Func<Placement, ExactLength> size) =>
        ExactLength.Min(boxes.Max(b => from(b) + size(b)), from(way) + size(way)) - ExactLength.Max(boxes.Min(from), from(way));

    private static bool Moves(PartRole role) => role is PartRole.Door or PartRole.DoorStile or PartRole.DoorRail or PartRole.DoorPanel or PartRole.FalseFront or PartRole.BoxSide or PartRole.BoxEnd or PartRole.BoxBottom;
}
