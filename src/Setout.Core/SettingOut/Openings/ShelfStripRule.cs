using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut.Openings;

/// <summary>The strip under the front edge of a shelf, and how far a shelf may span. How much one sags under a load is not worked out.</summary>
internal static class ShelfStripRule
{
    /// <summary>Writes the strip of one shelf.</summary>
    /// <param name="book">Where to write.</param>
    /// <param name="space">The opening.</param>
    /// <param name="shelves">Its shelves.</param>
    /// <param name="key">The shelf.</param>
    /// <param name="length">The length of the shelf.</param>
    /// <param name="dado">The depth of its dadoes, which the strip does not go into; null for none.</param>
    /// <param name="corner">The left, front, lower corner of what shows of the shelf.</param>
    /// <param name="clear">The clear height below the shelf.</param>
    public static void Write(Book book, Space space, Shelves shelves, Named key, PartSize length, PartSize? dado, Placement corner, ExactLength clear)
    {
        if (shelves.Strip is not { } strip) return;
        string part = $"{key.Text}.strip", name = $"shelf {key.Text} strip";
        Material? material = book.Piece.Materials.GetValueOrDefault(strip.Of.Text) is Stick ? book.StickOf(strip.Of, key.Text) : book.PanelOf(strip.Of, key.Text);
        if (material is null) return;
        if (material is Panel && strip.Height is null)
        {
            book.NoteOnce("shelf.strip-no-height", Severity.Stop, space.Owner, $"A strip of {material.Name} needs its height: a sheet has none of its own.", "Add 'height: 1 1/2' to the strip.", strip.Place);
            return;
        }
        if (material is Stick && strip.Height is { } idle)
            book.NoteOnce("shelf.strip-height-idle", Severity.Note, space.Owner, $"Strips of {material.Name} are as high as the sticks are wide; the height given is not used.", "Leave it out, or name a sheet.", idle.Place);
        PartSize long_ = book.DefineSize(part, "length", $"{name}, length", new Sum([Term.From("shelf, as cut", 1, length.AsCut), .. dado is null ? ImmutableArray<Term>.Empty : [Term.From("in the dadoes", -2, dado.AsCut)]]), Rounding.Down, "down: it must go between");
        PartSize high = material is Panel panel
            ? book.DefineSize(part, "width", $"{name}, height", new Sum(Term.From("height", 1, strip.Height!.Value.Value, Origin.Given(strip.Height.Value.Place))), PartRole.ShelfStrip, panel, 1)
            : Book.Uncut(Book.SectionWidthOf(material.Name));
        QuantityKey t = book.ThicknessOf(part, material.Name);
        ExactLength down = book.Value(high.Made);
        if (down.Sign <= 0 && !book.HasUnknown)
        {
            book.NoteOnce("shelf.strip-no-height", Severity.Stop, key.Text, $"The strip under shelf {key.Text} comes out {book.Say(down)} high.", $"Make its height {book.Say(book.Grid.Step)} or more, or leave it out.", strip.Height?.Place ?? strip.Place);
            return;
        }
        if (down >= clear)
            book.NoteOnce("shelf.strip-no-room", Severity.Stop, space.Owner, $"A strip {book.Say(down)} high under shelf {key.Text} closes the {book.Say(clear)} below it.", "Use a lower strip, or fewer shelves.", strip.Place);
        book.Add(new(part, $"{key.Text}t", name, PartRole.ShelfStrip, material.Name, long_, high, t, 1, material is Panel sheet ? sheet.Grain : Grain.Keep,
            [new(corner.X, corner.Y, corner.Z - down, book.Value(long_.AsCut), book.Value(t), down)], key.Place)
        { Seen = material is Panel ? new(1, 0) : default });
        book.Joints.Add(new(JointKind.Butt, part, Face.Top, key.Text, Face.Bottom, "glue and clamps"));
        book.Steps.Add(new(Stage.Edges, $"Glue the strip under the front edge of shelf {key.Text}, flush with it and midway between its ends.", [part], null, "") { On = key.Text });
    }

    /// <summary>Warns where shelves span further than is usual for their thickness and kind.</summary>
    public static void Span(Book book, Space space, Shelves shelves, Panel panel) =>
        Span(book, space, $"Shelves of {panel.Name} span", panel, shelves.Strip is not null, shelves.Strip is null ? "Add 'strip: {of: STICK}' under the front edge, divide the opening with a partition" : "Divide the opening with a partition", shelves.Keys[0].Place);

    /// <summary>Warns where a deck does: it carries what stands on it as a shelf does.</summary>
    public static void Span(Book book, Space space, Divider deck, Panel panel) =>
        Span(book, space, $"Deck {deck.Key} of {panel.Name} spans", panel, false, "Put a partition under it", deck.Place);

    private static void Span(Book book, Space space, string what, Panel panel, bool hasStrip, string remedy, Place place)
    {
        (ExactLength most, string cited) = MostSpan(book, panel, hasStrip);
        ExactLength span = book.Value(space.Width);
        if (span <= most || book.IsUnknown(panel.Name)) return;
        book.Note("shelf.long-span", Severity.Warn, space.Owner, $"{what} {book.Say(span)} in {space.Name}; about {book.Say(most.RoundTo(book.Grid, Rounding.Down).Value)} is usual for what they are.",
            $"{remedy}, or use a thicker sheet: what they carry decides, and is not worked out here. ({cited})", place);
    }

    /// <summary>How far a sheet may span as a shelf, with its source.</summary>
    /// <param name="book">Where its thickness stands.</param>
    /// <param name="panel">The sheet.</param>
    /// <param name="hasStrip">True with a strip under one edge.</param>
    public static (ExactLength Most, string Cited) MostSpan(Book book, Panel panel, bool hasStrip)
    {
        bool isBoard = panel.Kind is "mdf" or "particleboard" or "melamine-faced board" or "hardboard";
        TradeRule rule = TradeRules.Get(isBoard ? "SH2" : "SH1");
        // A 3/4 in sheet reads a little less; a strip counts for half as much again, no more than habit.
        ExactLength thick = book.Value(Book.ThicknessOf(panel.Name)) + ExactLength.FromInches(Rational.Of(1, 32));
        Rational times = thick / ExactLength.FromInches(Rational.Of(3, 4));
        return (rule.Length * times * (hasStrip ? Rational.Of(3, 2) : Rational.One), rule.Cited);
    }
}
