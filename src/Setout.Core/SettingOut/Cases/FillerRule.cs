using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut.Joinery;
using Setout.Core.Workings;
using static Setout.Core.Measures.ExactLength;

namespace Setout.Core.SettingOut.Cases;

/// <summary>
/// Strips that close the space between a case and its neighbour, or a wall. The space is part of where the case stands; at a wall the strip is cut wider, to be
/// scribed (common practice, no source).
/// </summary>
internal static class FillerRule
{
    /// <summary>Writes the space that each strip closes, before the case has its place.</summary>
    public static void Spaces(Book book, Case described)
    {
        foreach (IGrouping<bool, Filler> side in described.Fillers.GroupBy(f => f.IsAtRight))
        {
            Filler filler = side.First();
            book.Define(described.Key, $"{Word(filler)}.space", $"{Standing.NameOf(book, described, "case")}, space for the filler at its {Side(filler)}", filler.Width.Stated);
            if (side.Skip(1).FirstOrDefault() is { } second)
                book.Note("filler.two", Severity.Stop, described.Key, $"{described.Key} has two fillers at its {Side(filler)}.", $"Keep one of them, {book.Hand.OrWrite("at", "left")} and {book.Hand.Key("at", "right")}.", second.Place);
        }
    }

    /// <summary>Writes the strips of a case.</summary>
    public static void Write(Book book, CaseShape shape, PartSize sideLength, ExactLength w, ExactLength h)
    {
        foreach (Filler filler in shape.Described.Fillers.DistinctBy(f => f.IsAtRight))
        {
            string key = $"{shape.Key}.{Word(filler)}", name = $"{shape.Name} filler, {Side(filler)}";
            bool isAtWall = filler.IsAtRight ? !IsNeighbour(book, shape.Key) : shape.Described.Stand.Beside is null;
            QuantityKey space = QuantityKey.Of(shape.Key, $"{Word(filler)}.space");
            QuantityKey scribe = book.Define(shape.Key, $"{Word(filler)}.scribe", $"{name}, to be scribed off", filler.Scribe?.Stated
                ?? (isAtWall ? Usual.Or(book, null, "FL1", "at a wall") : new Stated(Zero, new(OriginKind.Rule, "between two cases", "common practice, no source"))));
            PartSize length = book.DefineSize(shape.Key, $"{Word(filler)}.length", $"{name}, length", new Sum(Term.From("side, as cut", 1, sideLength.AsCut)), PartRole.Filler);
            ImmutableArray<Term> frames = filler.IsAtRight ? [.. FaceFrameRule.OverRight(book, shape.Key), .. FaceFrameRule.OfNeighbour(book, shape.Key)] : FaceFrameRule.OverLeft(book, shape.Key, shape.Described.Stand.Beside?.Text);
            if (Stock(book, shape, filler, name, [Term.From("space it closes", 1, space), .. frames.Select(f => f with { Times = -f.Times }), Term.From("to be scribed off", 1, scribe)]) is not { } stock) continue;
            ExactLength over = book.Value(new Sum(frames)), own = book.ValueOr0(shape.FrameThickness is null ? null : QuantityKey.Of(shape.Key, filler.IsAtRight ? "frame.over-right" : "frame.overhang"));
            ExactLength wide = book.Value(space) - over, thick = book.Value(stock.Thickness);
            if (thick > shape.Described.Depth.Value && !book.HasUnknown)
                book.NoteOnce("filler.thick", Severity.Warn, shape.Key, $"The filler is {book.Say(thick)} thick, {shape.Name} {book.Say(shape.Described.Depth.Value)} deep: it stands out behind.", $"Use stock of {book.SayAtMost(shape.Described.Depth.Value)} or less.", filler.Of.Place);
            book.Add(new(key, $"{shape.Key}f{Side(filler)[0]}", name, PartRole.Filler, stock.Material, length, stock.Width, stock.Thickness, 1, Grain.Keep,
                [new(filler.IsAtRight ? w + own : -own - wide, Zero, Zero, wide, thick, h)], filler.Place));
            Fix(book, shape, filler, key, book.Value(scribe), (wide, h), own.Sign > 0, isAtWall);
        }
    }

    /// <summary>How a strip is held: through the side into its edge, glued where it is too narrow for a screw, or on the stile of a face frame that stands out.</summary>
    private static void Fix(Book book, CaseShape shape, Filler filler, string key, ExactLength scribed, (ExactLength Wide, ExactLength High) size, bool isAtStile, bool isAtWall)
    {
        ExactLength side = book.Value(shape.Thickness), usual = Fastening.IntoEdge(book.Piece.Unit, side);
        // Along the edge of the strip a screw stops short of what is beyond it.
        ExactLength? screw = isAtStile ? null : Fastening.IntoFace(book.Piece.Unit, side, size.Wide) is { } longest ? Min(longest, usual) : null;
        if (!isAtStile && screw is null)
            book.NoteOnce("filler.no-screw", Severity.Warn, shape.Key, $"No usual screw goes through a side of {book.Say(side)} and stops inside a filler of {book.Say(size.Wide)}.", "Glue it, or make it wider.", filler.Width.Place);
        if (screw is { } length)
        {
            string name = length == usual && book.Piece.Materials.GetValueOrDefault(filler.Of.Text) is Panel panel ? Fastening.PanelScrew(book, panel, side) : $"Wood screw no. 8 (4 mm), {book.Say(length)}";
            book.Hardware.Add(new(shape.Key, name, (isAtWall ? 1 : 2) * Fastening.ScrewsAlong(size.High), "piece", $"filler{(isAtWall ? "" : ", from both cases")}: {Fastening.SpacingWords}"));
        }
        (string against, string held, string how) = isAtStile ? ($"{shape.Key}.stile", "glue, its face flush with the front", "Glue it to the edge of the stile.")
            : screw is null ? (shape.Side, "glue, its face flush with the front", "Glue it to the side.")
            : (shape.Side, "screws from inside through the side, its face flush with the front", "Screw it from inside through the side.");
        book.Joints.Add(new(JointKind.Butt, key, filler.IsAtRight ? Face.Inside : Face.Outside, against, Face.Outside, held));
        string scribe = scribed.Sign > 0 ? $"Hold it plumb, scribe it to the wall and plane to the line: it is cut {book.Say(scribed)} wider for that. " : "";
        // Between two cases it is on the one before the other is set beside it; at a wall it waits until the case stands there.
        book.Steps.Add(new(isAtWall ? Stage.Fixing : Stage.Inside, $"Fit the filler at the {Side(filler)} of {shape.Name}. {scribe}{how}", [key], null, scribe.Length > 0 ? "plane" : ""));
    }

    private static StripStock? Stock(Book book, CaseShape shape, Filler filler, string name, ImmutableArray<Term> terms)
    {
        var sum = new Sum(terms);
        if (book.Piece.Materials.GetValueOrDefault(filler.Of.Text) is Stick stick)
        {
            ExactLength wanted = book.Value(sum), section = book.Value(Book.SectionWidthOf(stick.Name));
            if (section < wanted)
                book.Note("filler.too-narrow", Severity.Stop, shape.Key, $"{name} wants {book.Say(wanted)}; sticks of {stick.Name} are {book.Say(section)} wide.", $"Name sticks {book.Say(wanted - section)} wider, or a sheet.", filler.Of.Place);
            // One that is wider than the space is ripped to it; one that is just as wide is not.
            return new(stick.Name, section <= wanted ? Book.Uncut(Book.SectionWidthOf(stick.Name)) : book.DefineSize(shape.Key, $"{Word(filler)}.width", $"{name}, width", sum, PartRole.Filler), Book.ThicknessOf(stick.Name));
        }
        return book.PanelOf(filler.Of, shape.Key) is { } panel
            ? new(panel.Name, book.DefineSize(shape.Key, $"{Word(filler)}.width", $"{name}, width", sum, PartRole.Filler), Book.ThicknessOf(panel.Name))
            : null;
    }

    private static bool IsNeighbour(Book book, string key) => book.Piece.Members.OfType<Structure>().Any(s => s.Stand.Beside?.Text == key);

    private static string Word(Filler filler) => filler.IsAtRight ? "filler-right" : "filler-left";

    private static string Side(Filler filler) => filler.IsAtRight ? "right" : "left";
}
