using Setout.Core.Pieces;
using Setout.Core.SettingOut.Joinery;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut.Whole;

/// <summary>
/// What is written and has nothing to say, where only the whole piece shows it: a word is never passed over in silence. What the map itself shows is said by its reader.
/// </summary>
internal static class IdleRule
{
    /// <summary>Notes all of it; nothing about what no part uses where the piece cannot be set out for another reason.</summary>
    public static void Write(Book book)
    {
        foreach (Member member in book.Piece.Members)
        {
            if (member is Case @case)
            {
                Dividers(book, @case);
                FaceFrame(book, @case);
            }
            if (member is Frame frame) Frame(book, frame);
            if (member is Top top) Bolts(book, top);
        }
        foreach (DoorKind kind in book.Piece.DoorKinds.Values.OrderBy(k => k.Place.Line).ThenBy(k => k.Place.Column)) Kind(book, kind);
        Figure(book);
        Covered(book);
        if (book.Piece.WayIn is { } way && !book.Piece.Members.Any(m => m is Structure or Top))
            Idle(book, "way-in.idle", "way in", "this piece is a list of parts, none of which is too large to carry in", "Leave it out, or describe what is made of the parts.", way.Place);
        if (book.Findings.Any(f => f.Severity == Severity.Stop)) return;
        // Sticks are too narrow for it to count.
        if (book.Piece.MoisturePlace.IsKnown && !book.Parts.Any(p => book.Piece.Materials[p.Material] is Panel sheet && WoodMoves.Solid(sheet) is not null && !HasOwnMoisture(book, p)))
            Idle(book, "moisture.idle", "moisture", "no part that goes by it is cut from boards of a wood on record, and sheet goods hardly move", "Leave it out, or name a material whose kind is its wood, such as cherry.", book.Piece.MoisturePlace);
        Edges(book);
        Unused(book);
    }

    /// <summary>A tenon of a face frame that has none, and packing that it names while no drawer asks it for any.</summary>
    private static void FaceFrame(Book book, Case @case)
    {
        if (@case.FaceFrame is { Tenon: { } tenon, Joint: not FaceFrameJoint.Tenon })
            Idle(book, "face-frame.tenon-idle", "tenon", $"the face frame of case {@case.Key} has no tenons", $"{book.Hand.Write("joint", "tenon")}, or leave it out.", tenon.Place, @case.Key);
        // Looked up even where no drawer is packed from it.
        if (@case.FaceFrame?.Packing is { } named && book.Piece.Materials.GetValueOrDefault(named.Text) is not Panel) book.StickOf(named, @case.Key);
        if (@case.FaceFrame is not { } frame || (frame.Packing is null && frame.IsPacked)) return;
        if (@case.Content.Within().OfType<DrawerBank>().Any(b => b.Packing is null)) return;
        Idle(book, "face-frame.packing-idle", "packing", $"no drawers of case {@case.Key} are packed from it", "Leave it out.", frame.Packing?.Place ?? frame.Place, @case.Key);
    }

    /// <summary>Rails that an inset front is said to come down before, with no drawer above them.</summary>
    private static void Covered(Book book)
    {
        foreach (Division division in Contents(book).OfType<Division>().Where(d => !d.IsAcross))
        {
            foreach ((int i, DivisionItem item) in division.Items.Index())
            {
                if (item is Divider { Rail.IsCovered: true } rail && (i == 0 || division.Items[i - 1] is not Opening { Content: DrawerBank }))
                    Idle(book, "rail.covered-idle", "covered", $"no drawer stands right above rail {rail.Key}, whose front could come down before it", "Leave it out, or fill the opening above with drawers.", rail.Place, rail.Key);
            }
        }
    }

    private static void Figure(Book book)
    {
        foreach (DrawerBank bank in Contents(book).OfType<DrawerBank>().Where(b => b is { FigureThrough: true, Drawers.Length: 1 }))
            Idle(book, "figure.idle", "figure", $"drawer {bank.Drawers[0].Key} has no front below it to run on to", $"Leave it out, {book.Hand.OrWrite("figure", "in rows")} where banks stand side by side.", bank.FigurePlace, bank.Drawers[0].Key);
    }

    private static void Dividers(Book book, Case @case)
    {
        if (@case.Dividers == JointChoice.Butt || @case.Content.Within().Any(c => c is Shelves { Fit: ShelfFit.Fixed } || (c is Division d && d.Items.OfType<Divider>().Any()))) return;
        Idle(book, "case.dividers-idle", "dividers", $"nothing divides case {@case.Key}, and it has no fixed shelves", "Leave it out, or divide the case.", @case.Dividers.Place, @case.Key);
    }

    private static void Frame(Book book, Frame frame)
    {
        foreach (Opening bay in frame.Bays.Items.OfType<Opening>())
        {
            if (bay.Bearers is not { } bearers || new[] { bay.Content, bay.Behind?.Content }.SelectMany(c => c.Within(true)).OfType<DrawerBank>().Any()) continue;
            Idle(book, "frame.bearers-idle", "bearers", $"there are no drawers in bay {bay.Key} for them to carry or guide", "Leave it out, or fill the bay with drawers.", bearers.Place, bay.Key);
        }
        if (frame.Panels is { MoisturePlace.IsKnown: true } panels) Moisture(book, panels.Of, panels.MoisturePlace, frame.Key);
    }

    private static void Bolts(Book book, Top top)
    {
        foreach (Well well in top.Wells)
        {
            if (well.BoltSize is { } size && well.Bolts.IsEmpty)
                Idle(book, "well.bolt-size-idle", "bolt size", $"no bolts are placed in well {well.Key}", "Leave it out, or say where they go: 'bolts: [{from left: 1, from front: 1}]'.", size.Place, well.Key);
        }
    }

    private static void Kind(Book book, DoorKind kind)
    {
        if (kind.Clear is { } clear && !Contents(book).OfType<DoorFilling>().Any(d => d.Like.Text == kind.Name && d.Behind.Within().OfType<DrawerBank>().Any()))
            Idle(book, "doors.clear-idle", "clear", $"no drawers stand behind doors like {kind.Name}", "Leave it out.", clear.Place, kind.Name);
        if (kind.Make is FramedPanel { MoisturePlace.IsKnown: true } framed) Moisture(book, framed.Panel, framed.MoisturePlace, kind.Name);
    }

    private static void Moisture(Book book, Named panel, Place place, string owner)
    {
        if (book.Piece.Materials.GetValueOrDefault(panel.Text) is Panel sheet && WoodMoves.Solid(sheet) is null)
            Idle(book, "panel.moisture-idle", "moisture", $"{panel.Text} is no solid wood on record, and hardly moves", "Leave it out, or name a panel whose kind is its wood, such as cherry.", place, owner);
    }

    /// <summary>Whether a panel of a frame or of a door goes by a change of moisture that is said of it.</summary>
    private static bool HasOwnMoisture(Book book, Part part) => part.Role switch
    {
        PartRole.FramePanel => book.Piece.Members.OfType<Frame>().Select(f => f.Panels).OfType<FramePanels>().Where(p => p.Of.Text == part.Material).All(p => p.MoistureChange is not null),
        PartRole.DoorPanel => book.Piece.DoorKinds.Values.Select(k => k.Make).OfType<FramedPanel>().Where(m => m.Panel.Text == part.Material).All(m => m.MoistureChange is not null),
        _ => false,
    };

    /// <summary>Edges that nobody sees need no treatment.</summary>
    private static void Edges(Book book)
    {
        foreach (Panel panel in book.Piece.Materials.Values.OfType<Panel>().Where(p => p.Edges.Work != EdgeWork.Raw).OrderBy(p => p.Place.Line).ThenBy(p => p.Name, StringComparer.Ordinal))
        {
            if (book.Parts.Any(p => p.Material == panel.Name) && !book.Parts.Any(p => p.Material == panel.Name && p.Seen != default))
                Idle(book, "edge.unseen", "edges", $"no edge of a part of {panel.Name} is seen", "Leave it out.", panel.Edges.Place, panel.Name);
        }
    }

    private static void Unused(Book book)
    {
        foreach (Material material in book.Piece.Materials.Values.OrderBy(m => m.Place.Line).ThenBy(m => m.Name, StringComparer.Ordinal))
        {
            if (!book.Parts.Any(p => p.Material == material.Name))
                Spare(book, "material.unused", $"No part is of {material.Name}.", material.Name, material.Place);
        }
        foreach (DrawerKind kind in book.Piece.DrawerKinds.Values.OrderBy(k => k.Place.Line).ThenBy(k => k.Name, StringComparer.Ordinal))
        {
            if (!Contents(book).OfType<DrawerBank>().Any(b => b.Like.Text == kind.Name)) Spare(book, "drawer.unused-kind", $"No drawer is like {kind.Name}.", kind.Name, kind.Place);
        }
        foreach (DoorKind kind in book.Piece.DoorKinds.Values.OrderBy(k => k.Place.Line).ThenBy(k => k.Name, StringComparer.Ordinal))
        {
            if (!Contents(book).OfType<DoorFilling>().Any(d => d.Like.Text == kind.Name)) Spare(book, "door.unused-kind", $"No door is like {kind.Name}.", kind.Name, kind.Place);
        }
    }

    private static IEnumerable<OpeningContent> Contents(Book book) => book.Piece.Members.SelectMany(m => m switch
    {
        Case @case => @case.Content.Within(true),
        Frame frame => frame.Bays.Within(true),
        _ => [],
    });

    // What is described by a program, and written nowhere, needs no such word.
    private static void Spare(Book book, string code, string words, string owner, Place place)
    {
        if (place.IsKnown) book.Note(code, Severity.Note, owner, $"{words} It is read and looked at, but nothing comes of it.", "Leave it out, or name it where it is wanted.", place);
    }

    private static void Idle(Book book, string code, string key, string why, string remedy, Place place, string owner = "") =>
        book.Note(code, Severity.Warn, owner, $"'{key}' has nothing to say here: {why}.", remedy, place);
}
