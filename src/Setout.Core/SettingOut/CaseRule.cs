using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.Workings;
using static Setout.Core.Measures.ExactLength;

namespace Setout.Core.SettingOut;

/// <summary>A plywood case: top and bottom between the sides, butted and screwed, with an applied back.</summary>
internal static class CaseRule
{
    public static void Write(Book book, Case described)
    {
        string key = described.Key;
        string name = described.Name.Length > 0 ? described.Name : "case";
        if (book.PanelOf(described.Of, key) is not { } panel) return;
        QuantityKey t = Book.ThicknessOf(panel.Name);
        QuantityKey width = book.Define(key, "width", $"{name}, outside width", described.Width.Stated);
        QuantityKey height = book.Define(key, "height", $"{name}, outside height", described.Height.Stated);
        QuantityKey depth = book.Define(key, "depth", $"{name}, outside depth", described.Depth.Stated);
        Panel? back = described.Back is { } b ? book.PanelOf(b, key) : null;
        if (described.Back is not null && back is null) return;

        // Sides: full height; the applied back lies behind them, so they are narrower by its thickness.
        PartSize sideLength = book.DefineSize(key, "side.length", $"{name} side, length", new Sum(Term.From("outside height", 1, height)), PartRole.Side);
        Sum sideWidthSum = back is null
            ? new Sum(Term.From("outside depth", 1, depth))
            : new Sum(Term.From("outside depth", 1, depth), Term.From("back, applied", -1, book.ThicknessOf($"{key}.back", back.Name)));
        PartSize sideWidth = book.DefineSize(key, "side.width", $"{name} side, width", sideWidthSum, PartRole.Side);
        PartSize deckLength = book.DefineSize(key, "deck.length", $"{name} top and bottom, length",
            new Sum([Term.From("outside width", 1, width), .. book.Thicknesses("sides", -1, $"{key}.side", panel.Name, 2)]), PartRole.Deck);
        PartSize deckWidth = book.DefineSize(key, "deck.width", $"{name} top and bottom, width",
            new Sum(Term.From("side, as cut", 1, sideWidth.AsCut)), PartRole.Deck);

        ExactLength tv = book.Value(t), w = book.Value(deckLength.AsCut) + (tv * 2), h = book.Value(sideLength.AsCut), d = book.Value(sideWidth.AsCut);
        book.Add(new($"{key}.side", $"{key}s", $"{name} side", PartRole.Side, panel.Name, sideLength, sideWidth, t, 2, panel.Grain,
            [new(Zero, Zero, Zero, tv, d, h), new(w - tv, Zero, Zero, tv, d, h)], described.Place));
        book.Add(new($"{key}.deck", $"{key}d", $"{name} top and bottom", PartRole.Deck, panel.Name, deckLength, deckWidth, t, 2, panel.Grain,
            [new(tv, Zero, Zero, w - (tv * 2), d, tv), new(tv, Zero, h - tv, w - (tv * 2), d, tv)], described.Place));
        book.Joints.Add(new("butt", $"{key}.deck", Face.Ends, $"{key}.side", Face.Inside, "glue and screws through the side"));
        int deckScrews = Fastening.ScrewsAlong(book.Value(deckWidth.AsCut));
        book.Hardware.Add(new(key, Fastening.PanelScrew(book, panel, tv), 4 * deckScrews, "piece", $"4 ends, {deckScrews} each: {Fastening.SpacingWords}"));

        if (back is not null) WriteBack(book, described, name, back, sideLength, deckLength, t, w, h, d);

        QuantityKey openWidth = book.DefineSame(key, "opening.width", $"{name}, clear width inside", "top and bottom, as cut", deckLength.AsCut, Combining.Narrowest, Scatter.Placed);
        QuantityKey faceHeight = book.Define(key, "face-height", $"{name}, height between top and bottom",
            new Sum([Term.From("side, as cut", 1, sideLength.AsCut), .. book.Thicknesses("top and bottom", -1, $"{key}.deck", panel.Name, 2)]));
        QuantityKey openHeight = book.DefineSame(key, "opening.height", $"{name}, clear height inside", "between top and bottom", faceHeight, Combining.Narrowest, Scatter.Placed);
        QuantityKey openDepth = book.DefineSame(key, "opening.depth", $"{name}, clear depth inside", "side width, as cut", sideWidth.AsCut, Combining.Narrowest);
        QuantityKey outside = book.Define(key, "outside", $"{name}, outside width as built",
            new Sum([Term.From("top and bottom, as cut", 1, deckLength.AsCut), .. book.Thicknesses("sides", 1, $"{key}.side", panel.Name, 2)]));
        book.Chains.Add(new($"{name}, width", outside, [.. book.Thicknesses("sides", 1, $"{key}.side", panel.Name, 2), Term.From("clear width inside", 1, openWidth)], openWidth));

        book.Dimensions.Add(new(width, true, Zero, w, 1));
        book.Dimensions.Add(new(height, false, Zero, h, 1));
        book.Steps.Add(new(Stage.Carcase, $"Drill and screw the {name}: top and bottom between the sides, front edges flush. Clamp, measure both diagonals and pull it square before the last screws.",
            [$"{key}.side", $"{key}.deck"], Diagonals.Of(book.Grid, w, h), "screws"));

        Edge side = new(t, EdgeKind.CaseOutside, Part: $"{key}.side"), level = new(t, EdgeKind.CaseOutside, Part: $"{key}.deck");
        var space = new Space(key, $"{key}.opening", name, openWidth, openHeight, openDepth, tv, Zero, tv, new(side, side, level, level), described.Of, $"{key}.side", described.Place, new(deckLength.AsCut, faceHeight));
        OpeningRule.Fill(book, space, described.Content);

        if (back is not null)
        {
            book.Steps.Add(new(Stage.Back, "Lay the back on with its grain upright, flush with one long edge; check the diagonals once more, then glue and screw it all round and trim what stands over. It keeps the case square from here on.",
                [$"{key}.back"], Diagonals.Of(book.Grid, w, h), ""));
        }
        if (described.IsHung) WriteHanging(book, described, back, w);
    }

    /// <summary>A case hangs by its back, so the back must carry: at least what is sold as 1/2 in (12 mm). Common practice, no source.</summary>
    private static void WriteHanging(Book book, Case described, Panel? back, ExactLength width)
    {
        ExactLength least = ExactLength.FromInches(Rational.Of(7, 16));
        if (back is null || book.Value(Book.ThicknessOf(back.Name)) < least)
        {
            book.Note("case.back-cannot-carry", Severity.Stop, described.Key,
                back is null ? "A case that hangs on a wall needs a back to hang by." : $"The back of {book.Say(book.Value(Book.ThicknessOf(back.Name)))} is too thin to hang a case by.",
                "Give it a back of 1/2 in (12 mm) plywood or more. What the wall bears, and with which fixing, is for local codes and licensed practice.", described.Back?.Place ?? described.Place);
            return;
        }
        int fixings = 2 * Math.Max(2, (int)(width.Inches / 16).Round(Rounding.Up));
        book.Hardware.Add(new(described.Key, "Wall fixing to suit the wall and the load", fixings, "piece", "two rows, one about every 16 in; common practice, no source"));
        book.Steps.Add(new(Stage.Fixing, $"Hang it empty, with a helper: {fixings} fixings through the back, near the top and near the bottom, into studs or solid masonry and never into board alone.", [], null, "hang"));
    }

    private static void WriteBack(Book book, Case described, string name, Panel back, PartSize side, PartSize deck, QuantityKey sheet, ExactLength w, ExactLength h, ExactLength d)
    {
        string key = described.Key;
        QuantityKey t = book.ThicknessOf($"{key}.back", back.Name);
        // It must cover the case as it comes out, which rounding may leave a little wider than given. The grain stands upright as that of the sides.
        PartSize length = book.DefineSize(key, "back.length", $"{name} back, length", new Sum(Term.From("side, as cut", 1, side.AsCut)), PartRole.Back);
        PartSize across = book.DefineSize(key, "back.width", $"{name} back, width",
            new Sum(Term.From("top and bottom, as cut", 1, deck.AsCut), Term.From("sides", 2, sheet)), PartRole.Back);
        book.Add(new($"{key}.back", $"{key}b", $"{name} back", PartRole.Back, back.Name, length, across, t, 1, back.Grain,
            [new(Zero, d, Zero, w, book.Value(t), h)], described.Place));
        book.Joints.Add(new("butt", $"{key}.back", Face.Inside, $"{key}.side", Face.BackEdge, "glue and screws all round"));
        int screws = (2 * Fastening.ScrewsAlong(w)) + (2 * Fastening.ScrewsAlong(h));
        book.Hardware.Add(new(key, Fastening.PanelScrew(book, back, book.Value(t)), screws, "piece", $"all round: {Fastening.SpacingWords}"));
    }
}
