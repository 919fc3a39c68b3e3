using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut.Joinery;
using Setout.Core.Workings;
using static Setout.Core.Measures.ExactLength;

namespace Setout.Core.SettingOut.Openings;

/// <summary>
/// Partitions and decks: their sizes, their places, how they are set. A doubled partition is two panels, each a part of its own with the cuts and holes of its own face, screwed
/// together and set as one.
/// </summary>
internal static class DividingPanelRule
{
    // Two rows, as the sides of two cases: about 16 in apart, common practice, no source.
    private const int ScrewsApart = 16;

    /// <summary>Writes it.</summary>
    /// <param name="book">Where to write.</param>
    /// <param name="space">What it divides.</param>
    /// <param name="member">As looked up.</param>
    /// <param name="panel">Its sheet.</param>
    /// <param name="isAcross">True for a partition.</param>
    /// <param name="at">Its left face, or its upper one.</param>
    /// <param name="from">From where its space begins to its left or lower face.</param>
    /// <param name="holdsDadoes">True where shelves go into dadoes of it: it is there before the case is closed.</param>
    public static void Write(Book book, Space space, DividingMember member, Panel panel, bool isAcross, ExactLength at, ImmutableArray<Term> from, bool holdsDadoes)
    {
        Divider divider = member.Divider;
        string name = $"{(isAcross ? "partition" : "deck")} {divider.Key}";
        foreach ((int i, string part) in member.Parts.Index())
        {
            QuantityKey t = book.ThicknessOf(part, panel.Name);
            ImmutableArray<Term> own = i == 0 ? from : [.. from, Term.From("left panel", 1, book.ThicknessOf(member.Parts[0], panel.Name)) with { Part = member.Parts[0] }];
            One(book, space, divider, panel, (part, divider.IsDoubled ? $"{name}, {(i == 0 ? "left" : "right")} panel" : name, t), isAcross, i == 0 ? at : at + book.Value(book.ThicknessOf(member.Parts[0], panel.Name)), own);
        }
        if (divider.IsDoubled) Together(book, name, member, panel);
        if (!isAcross) ShelfStripRule.Span(book, space, divider, panel);
        if (space is { FaceFrame: { } frame, Doors: null }) FaceFrameMembers.Member(book, space, frame, member, isAcross, at, from);
        string first = divider.IsDoubled ? $"Screw the two panels of {name} together face to face, front edges and ends flush, clear of hinges, pins and slides. " : "";
        string words = space.Dividers switch
        {
            { Depth: not null } => $"Put the {name} into its dadoes, dry at first.",
            { Choice.Joint: CaseJoint.Dowels } => $"Put the {name} on its dowels, dry at first; check the clear {(isAcross ? "widths" : "heights")} beside it, top and bottom alike.",
            _ when holdsDadoes => $"Stand the {name} in its place with the shelves in its dadoes, dry at first; it is screwed as the case is closed.",
            _ => $"Set the {name} with spacers cut to the clear {(isAcross ? "widths" : "heights")} beside it, top and bottom alike, and screw it.",
        };
        bool isClosedIn = space.Dividers.IsClosedIn || holdsDadoes;
        book.Steps.Add(new(isClosedIn ? Stage.Carcase : space.Dividers.Stage, $"{first}{words}", member.Parts, null, divider.IsDoubled ? "screws" : "") { IsDry = isClosedIn, IsMadeFirst = divider.IsDoubled });
    }

    private static void One(Book book, Space space, Divider divider, Panel panel, (string Key, string Name, QuantityKey Thickness) part, bool isAcross, ExactLength at, ImmutableArray<Term> from)
    {
        (string key, string name, QuantityKey t) = part;
        PartRole role = isAcross ? PartRole.Partition : PartRole.Deck;
        // Never to the nearest step: half a step too long would spread the case.
        const string why = "down: it must go between";
        PartSize length = book.DefineSize(key, "length", $"{name}, length",
            new Sum([Term.From(isAcross ? "clear height" : "clear width", 1, isAcross ? space.Height : space.Width), .. space.Dividers.AtBothEnds]), Rounding.Down, why);
        PartSize width = book.DefineSize(key, "width", $"{name}, width", new Sum(Term.From("clear depth", 1, space.Depth)), role, panel, 1, (Rounding.Down, why));
        Joints.Between(book, key, name, isAcross ? space.Height : space.Width, length, space.Dividers.AtBothEnds, space.Dividers.Depth is not null);
        ExactLength long_ = book.Value(length.AsCut), deep = book.Value(width.Made), thick = book.Value(t), into = book.ValueOr0(space.Dividers.Depth?.AsCut);
        ImmutableArray<Placement> places = isAcross
            ? [new(at, space.Y, space.Z - into, thick, deep, long_)]
            : [new(space.X - into, space.Y, at - thick, long_, deep, thick)];
        string mark = divider.IsDoubled ? $"{divider.Key}{key[divider.Key.Length + 1]}" : key;
        book.Add(divider.IsGrainDeep ? new(key, mark, name, role, panel.Name, width, length, t, 1, panel.Grain, places, divider.Place) { Seen = new(0, 1) }
            : new(key, mark, name, role, panel.Name, length, width, t, 1, panel.Grain, places, divider.Place) { Seen = new(1, 0) });
        DividerRule.Join(book, space, new(key, name, panel, t, width, isAcross, from), "glue and screws from outside, or pocket screws where there is no outside");
    }

    private static void Together(Book book, string name, DividingMember member, Panel panel)
    {
        ExactLength thick = book.Value(Book.ThicknessOf(panel.Name)), high = book.Value(QuantityKey.Of(member.Parts[0], "length").AsCut);
        book.Joints.Add(new(JointKind.Butt, member.Parts[1], Face.Outside, member.Parts[0], Face.Outside, "screws, face to face"));
        int screws = 2 * Math.Max(2, (int)(high.Inches / ScrewsApart).Round(Rounding.Up));
        string what = Fastening.IntoFace(book.Piece.Unit, thick, thick) is { } screw ? $"Wood screw no. 8 (4 mm), {book.Say(screw)}" : $"Connecting bolt for {book.Say(thick * 2)}";
        book.Hardware.Add(new(member.Divider.Key, what, screws, "piece", $"{name}: one row near the front and one near the back, about every 16 in; common practice, no source"));
    }
}
