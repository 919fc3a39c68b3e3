using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.Workings;
using static Setout.Core.Measures.ExactLength;

namespace Setout.Core.SettingOut;

/// <summary>A plain top of one sheet over the structure, and parts given by their sizes alone.</summary>
internal static class TopRule
{
    /// <summary>Writes a top over the structure.</summary>
    public static void Write(Book book, Top top, Member structure)
    {
        if (book.PanelOf(top.Of, top.Key) is not { } panel) return;
        string name = top.Name.Length > 0 ? top.Name : "top";
        QuantityKey t = Book.ThicknessOf(panel.Name), width = QuantityKey.Of(structure.Key, "width"), depth = QuantityKey.Of(structure.Key, "depth");
        if (!book.Knows(width)) return;
        Origin Said(Given given) => Origin.Given(given.Place);
        PartSize length = book.DefineSize(top.Key, "length", $"{name}, length",
            new Sum(Term.From("outside width", 1, width), Term.From("overhang, left", 1, top.Left.Value, Said(top.Left)), Term.From("overhang, right", 1, top.Right.Value, Said(top.Right))), PartRole.Top);
        PartSize across = book.DefineSize(top.Key, "width", $"{name}, width",
            new Sum(Term.From("outside depth", 1, depth), Term.From("overhang, front", 1, top.Front.Value, Said(top.Front)), Term.From("overhang, back", 1, top.Back.Value, Said(top.Back))), PartRole.Top);
        // It lies on what was cut, not on what was given.
        ExactLength z = book.Value(QuantityKey.Of(structure.Key, structure is Frame ? "post.length" : "side.length").AsCut);
        book.Add(new(top.Key, top.Key, name, PartRole.Top, panel.Name, length, across, t, 1, panel.Grain,
            [new(-top.Left.Value, -top.Front.Value, z, book.Value(length.AsCut), book.Value(across.AsCut), book.Value(t))], top.Place));
        QuantityKey total = book.Define(top.Key, "height", $"{name}, height above the floor",
            new Sum(Term.From("structure", 1, QuantityKey.Of(structure.Key, "height")), Term.From("top", 1, t)));
        book.Dimensions.Add(new(total, false, Zero, book.Value(total), 2));
        book.Joints.Add(new("butt", top.Key, Face.Bottom, structure.Key, Face.Top, "screws from below"));
        int screws = 2 * Fastening.ScrewsAlong(book.Value(length.AsCut));
        string under = structure is Frame ? "the top rails" : "the top of the case";
        ExactLength through = book.Value(structure is Frame frame
            ? frame.TopRail == Laid.Flat ? Book.ThicknessOf(structure.Of.Text) : Book.SectionWidthOf(structure.Of.Text)
            : Book.ThicknessOf(structure.Of.Text));
        // Rails on edge are too high to screw through: plates take their place.
        ExactLength? screw = through <= ExactLength.FromInches(2) ? Fastening.IntoFace(book.Piece.Unit, through, book.Value(t)) : null;
        if (screw is { } right) book.Hardware.Add(new(top.Key, $"Wood screw no. 10 (5 mm), {book.Say(right)}", screws, "piece", $"through {under} from below, stopping inside the top: {Fastening.SpacingWords}"));
        else book.Hardware.Add(new(top.Key, "Top fixing plate with its screws", screws, "piece", $"along {under}: {Fastening.SpacingWords}"));
        book.Steps.Add(new(Stage.Top, screw is { } s
            ? $"Two people lay the {name} on with its overhangs. Screw it from below through {under}, {book.Say(s)} screws and no longer, or they come out of the top."
            : $"Two people lay the {name} on with its overhangs and fix it from below with plates along {under}; choose their screws shorter than the top.", [top.Key], null, "lift"));
    }

    /// <summary>Writes a part that is given by its sizes alone.</summary>
    public static void Write(Book book, LoosePart part)
    {
        string name = part.Name.Length > 0 ? part.Name : part.Key;
        Material? material = part.Width is null ? book.StickOf(part.Of, part.Key) : book.PanelOf(part.Of, part.Key);
        if (material is null) return;
        PartSize length = book.DefineSize(part.Key, "length", $"{name}, length", part.Length.Stated, PartRole.Loose);
        PartSize width = part.Width is { } w
            ? book.DefineSize(part.Key, "width", $"{name}, width", w.Stated, PartRole.Loose)
            : Book.Uncut(Book.SectionWidthOf(material.Name));
        // Keys of loose parts are words; the mark to pencil on them is their number in the list, which no key can be.
        string mark = $"{book.Parts.Count(p => p.Role == PartRole.Loose) + 1}";
        book.Add(new(part.Key, mark, name, PartRole.Loose, material.Name, length, width, Book.ThicknessOf(material.Name), part.Count,
            material is Panel panel ? panel.Grain : Grain.Keep, [], part.Place));
    }
}
