using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut.Joinery;
using Setout.Core.SettingOut.Openings;
using Setout.Core.Workings;
using static Setout.Core.Measures.ExactLength;

namespace Setout.Core.SettingOut.Cases;

/// <summary>A case of sheet goods: its panels, and in their order all that belongs to it.</summary>
internal static class CaseRule
{
    public static void Write(Book book, Case described)
    {
        string key = described.Key;
        string name = Standing.NameOf(book, described, "case");
        if (book.PanelOf(described.Of, key) is not { } panel) return;
        QuantityKey t = Book.ThicknessOf(panel.Name);
        QuantityKey width = book.Define(key, "width", $"{name}, outside width", described.Width.Stated);
        QuantityKey height = book.Define(key, "height", $"{name}, outside height", described.Height.Stated);
        QuantityKey depth = book.Define(key, "depth", $"{name}, outside depth", described.Depth.Stated);
        Panel? back = described.Back is { } b ? book.PanelOf(b, key) : null;
        FaceFrameSetting? frame = FaceFrameRule.Of(book, described, name);
        StripStock? rail = HangingRule.Rail(book, described, name);
        if ((described.Back is not null && back is null) || (described.FaceFrame is not null && frame is null) || (described.HangingRail is not null && rail is null)) return;
        var shape = new CaseShape(described, name, panel, t, CornerRule.Depth(book, described, name, panel), FootRule.Raise(book, described, name), frame?.Thickness, BackRule.Of(book, described, name, back, t, rail?.Thickness));

        // Sides: full height. They are narrower by what lies behind and before them.
        PartSize sideLength = book.DefineSize(key, "side.length", $"{name} side, length", new Sum(Term.From("outside height", 1, height)), PartRole.Side);
        ImmutableArray<Term> off = [.. shape.Back is { Hold: BackHold.Applied } on ? [Term.From("back, applied", -1, on.Thickness)] : ImmutableArray<Term>.Empty,
            .. frame is null ? [] : ImmutableArray.Create(Term.From("face frame", -1, frame.Thickness))];
        PartSize sideWidth = book.DefineSize(key, "side.width", $"{name} side, width", new Sum([Term.From("outside depth", 1, depth), .. off]), PartRole.Side, panel, 1);
        PartSize deckLength = book.DefineSize(key, "deck.length", $"{name} top and bottom, length",
            new Sum([Term.From("outside width", 1, width), .. book.Thicknesses("sides", -1, shape.Side, panel.Name, 2), .. shape.InBothSides(1)]), PartRole.Deck);
        PartSize deckWidth = book.DefineSize(key, "deck.width", $"{name} top and bottom, width",
            new Sum([Term.From(EdgeRule.Covers(panel) ? "side, with its edge" : "side, as cut", 1, sideWidth.Made), .. BackRule.OffDecks(shape)]), PartRole.Deck, panel, 1,
            shape.Back is { Hold: BackHold.Rabbeted } ? (Rounding.Down, "down: the back must lie over it") : null);

        if (!CaseBounds.HasInside(book, shape, rail, sideWidth)) return;
        ExactLength tv = book.Value(t), into = book.ValueOr0(shape.LetIn?.AsCut), y = book.ValueOr0(shape.FrameThickness), low = book.ValueOr0(shape.Raise);
        ExactLength w = book.Value(deckLength.AsCut) + ((tv - into) * 2), h = book.Value(sideLength.AsCut), d = book.Value(sideWidth.Made), deep = book.Value(deckWidth.Made);
        book.Add(new(shape.Side, $"{key}s", $"{name} side", PartRole.Side, panel.Name, sideLength, sideWidth, t, 2, panel.Grain,
            [new(Zero, y, Zero, tv, d, h), new(w - tv, y, Zero, tv, d, h)], described.Place)
        { Seen = new(1, 0) });
        ExactLength x = tv - into, wide = book.Value(deckLength.AsCut);
        book.Add(new(shape.Deck, $"{key}d", $"{name} top and bottom", PartRole.Deck, panel.Name, deckLength, deckWidth, t, 2, panel.Grain,
            [new(x, y, low, wide, deep, tv), new(x, y, h - tv, wide, deep, tv)], described.Place)
        { Seen = new(1, 0) });
        CornerRule.Write(book, shape, deckWidth);

        if (shape.Back is { Hold: BackHold.Applied } applied) BackRule.WriteApplied(book, shape, applied, sideLength, deckLength, w, h, y + d);

        Sum between = new([Term.From("top and bottom, as cut", 1, deckLength.AsCut), .. shape.InBothSides(-1)]);
        QuantityKey openWidth = book.Define(key, "opening.width", $"{name}, clear width inside", between, Combining.Narrowest, Scatter.Placed);
        ImmutableArray<Term> raised = shape.Raise is { } raise ? [Term.From("floor to the underside of the bottom", -1, raise)] : [];
        QuantityKey faceHeight = book.Define(key, "face-height", $"{name}, height between top and bottom",
            new Sum([Term.From("side, as cut", 1, sideLength.AsCut), .. book.Thicknesses("top and bottom", -1, shape.Deck, panel.Name, 2), .. raised]));
        QuantityKey openHeight = book.DefineSame(key, "opening.height", $"{name}, clear height inside", "between top and bottom", faceHeight, Combining.Narrowest, Scatter.Placed);
        // Without a back what divides the case ends in front of the rail.
        ImmutableArray<Term> behind = [.. BackRule.OffClear(shape), .. rail is not null && shape.Back is null ? [Term.From("hanging rail", -1, rail.Thickness)] : ImmutableArray<Term>.Empty];
        QuantityKey openDepth = book.Define(key, "opening.depth", $"{name}, clear depth inside", new Sum([Term.From(EdgeRule.Covers(panel) ? "side width, with its edge" : "side width, as cut", 1, sideWidth.Made), .. behind]), Combining.Narrowest);
        QuantityKey outside = book.Define(key, "outside", $"{name}, outside width as built", new Sum(shape.Outside(book, deckLength)));
        book.Chains.Add(new($"{name}, width", outside, [.. book.Thicknesses("sides", 1, shape.Side, panel.Name, 2), Term.From("clear width inside", 1, openWidth)], openWidth));
        if (shape.Back is { Hold: not BackHold.Applied } let) BackRule.WriteLetIn(book, shape, let, sideLength, openWidth, faceHeight, w, h, y + d);
        if (rail is not null) HangingRule.WriteRail(book, shape, rail, openWidth, w, h, y + d);

        book.Show(new(width, true, Zero, w, 1));
        book.Show(new(height, false, Zero, h, 1));
        book.Show(new(depth, false, Zero, y + d + (shape.Back is { Hold: BackHold.Applied } behindIt ? book.Value(behindIt.Thickness) : Zero), 1) { IsDeep = true });
        DividerFit dividers = CaseDividers.Of(book, shape);
        // What stands in dadoes or grooves, or on dowels, is in before the case is closed.
        bool closesLast = CaseDividers.GoesInFirst(dividers, described.Content) || shape.Back is { Hold: BackHold.Grooved };
        if (!closesLast) Close(book, shape, w, h, "");

        Edge side = new(t, EdgeKind.CaseOutside, Part: shape.Side) { Start = [.. shape.Raise is { } up ? [Term.From("floor to the underside of the bottom", 1, up)] : ImmutableArray<Term>.Empty, Term.From("bottom", 1, t)] };
        Edge level = new(t, EdgeKind.CaseOutside, Part: shape.Deck) { Start = shape.LetIn is { } let2 ? [Term.From("top or bottom in the side", 1, let2.AsCut)] : [] };
        var edges = new Edges(side, side, level, level);
        int before = book.Parts.Count;
        if (frame is not null) edges = FaceFrameRule.Outer(book, shape, frame, sideLength, deckLength, edges);
        var space = new Space(key, $"{key}.opening", name, openWidth, openHeight, openDepth, tv, y, low + tv, edges, described.Of, shape.Side, described.Place, new(between.Terms.Length == 1 ? deckLength.AsCut : openFace(), faceHeight)) { Dividers = dividers, FaceFrame = frame };
        OpeningRule.Fill(book, space, described.Content);

        CaseSpan.Look(book, shape, openWidth);
        if (shape.Back is { } held) BackRule.Step(book, shape, held, w, h);
        if (rail is not null) HangingRule.RailStep(book, shape);
        if (closesLast) Close(book, shape, w, h, "Dry-fit all that goes inside first. ");
        if (frame is not null) FaceFrameRule.Step(book, frame, [.. book.Parts.Skip(before)], w, h);
        FootRule.Write(book, shape, deckLength, sideWidth, openWidth, w, d, y);
        NeighbourRule.Write(book, shape);
        FillerRule.Write(book, shape, sideLength, w, h);
        if (described.IsHung) HangingRule.Write(book, shape, w);

        QuantityKey openFace() => book.Define(key, "face-width", $"{name}, width between the sides", between);
    }

    private static void Close(Book book, CaseShape shape, ExactLength w, ExactLength h, string first)
    {
        string how = shape.Described.Corners.Joint switch
        {
            CaseJoint.Pocket => $"Pocket-screw {shape.The}: top and bottom between the sides, front edges flush.",
            CaseJoint.Dowels => $"Glue up {shape.The}: top and bottom between the sides on their dowels, front edges flush.",
            CaseJoint.Rabbet => $"Glue and screw {shape.The}: top and bottom in the rabbets of the sides, front edges flush.",
            CaseJoint.Dado => $"Glue and screw {shape.The}: tongues of top and bottom in the dadoes of the sides, front edges flush.",
            _ => $"Drill and screw {shape.The}: top and bottom between the sides, front edges flush.",
        };
        book.Steps.Add(new(Stage.Carcase, $"{first}{how} Clamp, measure both diagonals and pull it square before the last screws.", [shape.Side, shape.Deck], Diagonals.Of(book.Grid, w, h), "screws"));
    }
}
