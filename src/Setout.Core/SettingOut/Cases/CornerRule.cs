using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut.Joinery;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut.Cases;

/// <summary>
/// The corners of a case. Butted, pocket-screwed or dowelled, top and bottom stand between the sides. In a rabbet they go into the sides by its depth;
/// with a dado it is a tongue of half their thickness that goes in, so that wood stays between it and the end of the side.
/// </summary>
internal static class CornerRule
{
    /// <summary>How far top and bottom go into each side; null where they only meet.</summary>
    public static PartSize? Depth(Book book, Case described, string name, Panel panel)
    {
        JointChoice corners = described.Corners;
        QuantityKey side = book.ThicknessOf($"{described.Key}.side", panel.Name, 2);
        PartSize? depth = LetInRule.Depth(book, described.Key, "corner", $"{name}, top and bottom let into the sides", corners, [side],
            book.ThicknessOf($"{described.Key}.deck", panel.Name, 2));
        if (depth is not null) LetInRule.Check(book, described.Key, $"the sides of {name}", corners, depth, side, book.ThicknessOf($"{described.Key}.deck", panel.Name, 2));
        return depth;
    }

    /// <summary>Joints, screws and cuts of the corners.</summary>
    public static void Write(Book book, CaseShape shape, PartSize deckWidth)
    {
        (string key, ExactLength thick) = (shape.Key, book.Value(shape.Thickness));
        int screws = Fastening.ScrewsAlong(book.Value(deckWidth.AsCut));
        switch (shape.Described.Corners.Joint)
        {
            case CaseJoint.Pocket:
                book.Joints.Add(new(JointKind.Butt, shape.Deck, Face.Ends, shape.Side, Face.Inside, "glue and pocket screws, pockets on the faces that are not seen"));
                (string pocket, string source) = Fastening.PocketScrew(book, thick);
                Fastening.CheckPocket(book, key, $"top and bottom of {shape.Name}", thick, Place(shape));
                book.Hardware.Add(new(key, pocket, 4 * screws, "piece", $"4 ends, {screws} each: {Fastening.SpacingWords}; {source}"));
                return;
            case CaseJoint.Dowels:
                book.Joints.Add(new(JointKind.Dowels, shape.Deck, Face.Ends, shape.Side, Face.Inside, "glue and dowels"));
                DowelRule.Write(book, new(key, $"{shape.Name}, top and bottom", shape.Deck, "both ends", 4, deckWidth.AsCut, shape.Thickness) { Place = shape.Described.Corners.Place }, [(shape.Side, shape.Thickness, "the inside, where top and bottom meet it")]);
                return;
            case CaseJoint.Rabbet or CaseJoint.Dado when shape.LetIn is { } depth:
                JointKind kind = shape.Described.Corners.Joint == CaseJoint.Rabbet ? JointKind.Rabbet : JointKind.Dado;
                book.Joints.Add(new(kind, shape.Deck, Face.Ends, shape.Side, Face.Inside, "glue and screws through the side") { Depth = depth.AsCut, Thick = kind == JointKind.Dado ? QuantityKey.Of(shape.Key, "tongue").AsCut : null, IsAtInside = true, IsFirstWhole = shape.Raise is not null });
                book.Hardware.Add(new(key, Fastening.PanelScrew(book, shape.Panel, thick - book.Value(depth.AsCut)), 4 * screws, "piece", $"4 ends, {screws} each: {Fastening.SpacingWords}"));
                Cut(book, shape, depth);
                return;
            default:
                Fastening.CheckEdge(book, key, $"top and bottom of {shape.Name}", thick, Place(shape));
                book.Joints.Add(new(JointKind.Butt, shape.Deck, Face.Ends, shape.Side, Face.Inside, "glue and screws through the side"));
                book.Hardware.Add(new(key, Fastening.PanelScrew(book, shape.Panel, thick), 4 * screws, "piece", $"4 ends, {screws} each: {Fastening.SpacingWords}"));
                return;
        }
    }

    private static Place Place(CaseShape shape) => shape.Described.Corners.Place is { IsKnown: true } said ? said : shape.Described.Of.Place;

    private static void Cut(Book book, CaseShape shape, PartSize depth)
    {
        (string key, string name) = (shape.Key, shape.Name);
        QuantityKey thick = book.DefineSame(key, "corner.width", $"{name}, width of the cut that takes top or bottom", "top and bottom, as read", book.ThicknessOf(shape.Deck, shape.Panel.Name, 2));
        ImmutableArray<(string, QuantityKey)> raised = shape.Raise is { } raise ? [("depth", depth.ToCut), ("width", thick), ("above the lower end", raise)] : [];
        if (shape.Raise is not null)
            book.Machinings.Add(new(shape.Side, "Dado across the inside for the bottom", raised) { By = [shape.Deck], On = Face.Inside });
        string ends = shape.Raise is null ? "at both ends, for top and bottom" : "at the upper end, for the top";
        if (shape.Described.Corners.Joint == CaseJoint.Rabbet)
        {
            book.Machinings.Add(new(shape.Side, $"Rabbet across the inside {ends}", [("depth", depth.ToCut), ("width", thick)]) { By = [shape.Deck], On = Face.Inside, Edge = Face.Ends });
            return;
        }
        PartSize tongue = book.DefineSize(key, "tongue", $"{name}, tongue of top and bottom, thickness", new Sum([Term.From("top or bottom", 1, thick)], TradeRules.Get("DJ8").Share), Rounding.Down, "down: half of it at most, so that wood stays beyond the dado");
        if (book.Value(tongue.AsCut).Sign <= 0 && !book.HasUnknown)
            book.NoteOnce("joint.no-tongue", Severity.Stop, key, $"The tongues of top and bottom of {name} come out {book.Say(book.Value(tongue.AsCut))} thick on a grid of {book.Say(book.Grid.Step)}.", $"Write a finer {book.Hand.Key("grid")}, or {book.Hand.Key("corners", "rabbet")}.", Place(shape));
        QuantityKey from = book.Define(key, "corner.from-end", $"{name}, dado from the end of the side", new Sum(Term.From("top or bottom", 1, thick), Term.From("tongue, as cut", -1, tongue.AsCut)));
        book.Machinings.Add(new(shape.Side, $"Dado across the inside {ends}", [("depth", depth.ToCut), ("width", tongue.ToCut), ("from the end", from)]) { By = [shape.Deck], On = Face.Inside });
        book.Machinings.Add(new(shape.Deck, shape.Raise is null ? "Tongue along both ends, at the inner face" : "Of the top only: tongue along both ends, at the inner face",
            [("length", depth.ToCut), ("thickness", tongue.ToCut), ("cut away from the outer face", from)])
        { Numbers = shape.Raise is null ? [] : [2], On = Face.Ends });
    }
}
