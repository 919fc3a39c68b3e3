// Over 200 lines: one document with every kind of block in it, in its order.
using System.Collections.Immutable;
using Setout.Drawing.Documents;
using Setout.Drawing.Scenes;

namespace Setout.Drawing.Tests.Documents;

/// <summary>A scenario of our own: a chest for prints in a print studio. Sizes are made up for the test and are not a design.</summary>
internal static class PlanChest
{
    public static BenchDocument Document(Paper paper) => new("Plan chest for the print studio", "en", PrintRoom.Stamp, paper,
    [
        Cover(), Buying(), Parts(), Front(), Assembly(),
    ]);

    private static Phrase F(int whole, int numerator = 0, int denominator = 1) => PrintRoom.Figure(whole, numerator, denominator);

    private static Phrase P(string words) => Phrase.Of(words);

    private static Phrase Join(params object[] parts) => new([.. parts.SelectMany(p => p is Phrase phrase ? phrase.Runs : P((string)p).Runs)]);

    private static Section Cover() => new("What this is",
    [
        new ParagraphBlock(Join("A chest of five shallow drawers for sheets up to 22 by 30 in, on a base with levelling feet. Overall ", F(38), " wide, ", F(27, 1, 2), " deep, ", F(21, 3, 4), " high.")),
        new ParagraphBlock(Join("Everything here is to cut on a grid of ", F(0, 1, 32), ". Cut the case first. Read its opening at three places, write the readings in, and print the drawer pages again: the drawers follow the opening that is there, not the one that was planned.")),
        new CautionBlock(
        [
            P("Stand the chest against a wall and anchor it before the drawers are loaded: with two drawers of paper open it can tip."),
            P("Read the saw maker's manual and keep its guards on. Eye and ear protection at every cut, a mask or extraction at every cut in sheet goods. Where local codes or licensed practice ask for more, they come first."),
        ]),
        new HeadingBlock("Measure first"),
        new ParagraphBlock(Join("Thickness of sheet C at two spots (it is taken as ", F(0, 23, 32), "), then the opening at the front, the middle and the back.")),
        new ParagraphBlock(Join("Opening ", F(35, 15, 16)), TextSize.Large),
        new ParagraphBlock("narrowest of three, tape, 13 March", TextSize.Small),
    ]);

    private static Section Buying() => new("Buying list",
    [
        new ParagraphBlock("Tick what is in the car. Prices are what the shop file says; they are not a quote."),
        new TableBlock(
            [
                new("what", ColumnWidth.Share(5)), new("size", ColumnWidth.Share(4)), new("for", ColumnWidth.Share(4)),
                new("count", ColumnWidth.Fit, ColumnAlign.Right, TextSize.Figure), new("about", ColumnWidth.Fit, ColumnAlign.Right),
            ],
            [
                new GroupRow(P("Sheets and boards")),
                Row("birch plywood, two good faces", Join(F(0, 3, 4), " nominal, 48 by 96 in"), "case, drawer sides", "2", "168.00"),
                Row("birch plywood", Join(F(0, 1, 4), " nominal, 48 by 96 in"), "bottoms, back", "2", "92.00"),
                Row("ash, planed", Join(F(0, 13, 16), " by 6 in, 8 ft"), "fronts, top edge, base", "4", "139.20"),
                new GroupRow(P("Hardware")),
                Row("full extension slide, side mounted, pair", Join("24 in, ", F(0, 1, 2), " class, at least 75 lb"), "drawers", "5", "145.00"),
                Row("label frame with pull, blackened steel", P("3 by 1 in"), "fronts", "10", "64.50"),
                Row("levelling foot with plate", Join(F(0, 5, 16), " thread"), "base", "4", "18.40"),
                Row("wall anchor with strap", P("as the wall asks for"), "back", "2", "9.90"),
                new GroupRow(P("Fixings, glue and finish")),
                Row("wood screw, flat head", Join("No. 8 by ", F(1, 1, 4)), "case, base", "60", "8.10"),
                Row("wood screw, pan head", Join("No. 6 by ", F(0, 5, 8)), "slides", "80", "7.60"),
                Row("wood glue", P("16 oz"), "all", "1", "7.50"),
                Row("water-borne varnish, satin, low odour because the chest stands in a room where people work all day", P("1 quart"), "outside", "2", "43.00"),
                Row("abrasive paper", P("120, 180 and 240 grit"), "all", "12", "11.00"),
            ],
            TickBoxes.EachRow),
        new ParagraphBlock("About 714.20 without tax.", TextSize.Body),
    ]);

    private static CellRow Row(string what, Phrase size, string use, string count, string price) =>
        CellRow.Of(Cell.Of(what), Cell.Of(size), Cell.Of(use), Cell.Of(count), Cell.Of(price));

    private static Section Parts() => new("Parts",
    [
        new TableBlock(
            [
                new("mark", ColumnWidth.Fit), new("part", ColumnWidth.Share(1)), new("count", ColumnWidth.Fit, ColumnAlign.Right),
                new("length", ColumnWidth.Fit, ColumnAlign.Right, TextSize.Figure), new("width", ColumnWidth.Fit, ColumnAlign.Right, TextSize.Figure),
                new("thick", ColumnWidth.Fit, ColumnAlign.Right, TextSize.Figure), new("note", ColumnWidth.Share(1)),
            ],
            [.. PartRows()], TickBoxes.EachRow),
        new HeadingBlock("Workings"),
        new WorkingBlock(P("Box width, drawers 1 to 5"), F(34, 29, 32),
            [
                new(P("opening, narrowest of 3"), P("reading, tape, 13 March"), TermSign.None, F(35, 15, 16)),
                new(P("slide, left and right"), Join("hardware sheet, ", F(0, 1, 2), " class"), TermSign.Minus, Join("2 \u00D7 ", F(0, 1, 2))),
                new(P("play kept"), Join("rule, middle of 0 and ", F(0, 1, 16)), TermSign.Minus, F(0, 1, 32)),
            ],
            P("sum"), F(34, 29, 32)),
        new WorkingBlock(P("Box end, length"), F(33, 31, 32),
            [
                new(P("box width"), P("above"), TermSign.None, F(34, 29, 32)),
                new(P("two box sides"), Join("reading, calliper, sheet D: ", F(0, 15, 32), " each"), TermSign.Minus, Join("2 \u00D7 ", F(0, 15, 32))),
            ],
            P("sum"), F(33, 31, 32)),
    ]);

    private static IEnumerable<TableRow> PartRows()
    {
        yield return new GroupRow(P("Case"));
        yield return Part("S1, S2", "side", 2, F(18, 1, 4), F(26, 3, 4), F(0, 23, 32), "grain up; groove at the back, 3/8 in");
        yield return Part("D1", "deck", 1, F(35, 15, 16), F(26, 3, 4), F(0, 23, 32), "");
        yield return Part("T1", "top", 1, F(38), F(27, 1, 2), F(0, 23, 32), "edged on three sides after glueing");
        yield return new GroupRow(P("Drawers"));
        for (int i = 1; i <= 5; i++)
        {
            yield return Part($"L{i}, R{i}", $"box side, drawer {i}", 2, F(24), F(2, 1, 4), F(0, 15, 32), i == 3 ? "held until the opening is read" : "");
            yield return Part($"E{i}, B{i}", $"box end, drawer {i}", 2, F(33, 31, 32), F(2, 1, 4), F(0, 15, 32), "");
            yield return Part($"N{i}", $"bottom, drawer {i}", 1, F(34, 7, 16), F(23, 17, 32), F(0, 7, 32), "grooved in all round");
            yield return Part($"F{i}", $"front, drawer {i}", 1, F(37, 3, 8), F(3, 3, 16), F(0, 13, 16), "grain runs through, in order");
        }
    }

    private static CellRow Part(string mark, string part, int count, Phrase length, Phrase width, Phrase thick, string note) =>
        new([Cell.Of(P(mark).Bold()), Cell.Of(part), Cell.Of($"{count}"), Cell.Of(length), Cell.Of(width), Cell.Of(thick), Cell.Of(note)]);

    private static Section Front() => new("Front",
    [
        new SceneBlock(FrontScene()),
        new HeadingBlock("Sheet A, marking out"),
        new SceneBlock(SheetScene(), ScenePlace.WholePage),
    ]);

    /// <summary>The front at 1 to 8, with a chain of sizes.</summary>
    public static Scene FrontScene()
    {
        var items = ImmutableArray.CreateBuilder<SceneItem>();
        const double S = 25.4 / 8, left = 28, top = 14;
        double width = 38 * S;
        items.Add(ShapeItem.Rectangle(left, top, width, 2.4, Ink.Outline, Wash.Wood));
        items.Add(ShapeItem.Rectangle(left + 1, top + 2.4, width - 2, 18.25 * S, Ink.Outline, Wash.Wood));
        for (int i = 0; i < 5; i++)
        {
            double y = top + 3.4 + (i * 11.2);
            items.Add(new GroupItem($"f{i + 1}", $"front of drawer {i + 1}",
            [
                ShapeItem.Rectangle(left + 2, y, width - 4, 10.2, Ink.Part, Wash.Panel),
                new LineItem(new(left + 6, y + 3), new(left + width - 6, y + 3.2), Ink.Grain),
                new LineItem(new(left + 6, y + 7), new(left + width - 6, y + 6.6), Ink.Grain),
                ShapeItem.Rectangle(left + 24, y + 3.5, 9, 3, Ink.Part, Wash.Metal),
                ShapeItem.Rectangle(left + width - 33, y + 3.5, 9, 3, Ink.Part, Wash.Metal),
                new TextItem(new(left + (width / 2), y + 6.4), P($"F{i + 1}").Bold(), 4, Anchor.Middle, Ink.Part, 0, true),
            ]));
        }
        items.Add(new LineItem(new(left - 8, top + 65), new(left + width + 8, top + 65), Ink.Outline));
        items.Add(new LineItem(new(left, top - 8), new(left + width, top - 8), Ink.Dimension));
        items.Add(new LineItem(new(left, top - 10), new(left, top - 1), Ink.Dimension));
        items.Add(new LineItem(new(left + width, top - 10), new(left + width, top - 1), Ink.Dimension));
        items.Add(new TextItem(new(left + (width / 2), top - 7), F(38), 5, Anchor.Middle, Ink.Dimension, 0, true));
        items.Add(new LineItem(new(left - 14, top), new(left - 14, top + 65), Ink.Dimension));
        items.Add(new TextItem(new(left - 12.4, top + 32), F(21, 3, 4), 5, Anchor.Middle, Ink.Dimension, 90, true));
        Phrase[] chain = [F(1, 1, 32), F(35, 15, 16), F(1, 1, 32)];
        double[] at = [0, 14, width - 14, width];
        for (int i = 0; i < 3; i++)
        {
            items.Add(new LineItem(new(left + at[i], top + 72), new(left + at[i + 1], top + 72), Ink.Dimension));
            items.Add(new LineItem(new(left + at[i], top + 70), new(left + at[i], top + 74), Ink.Dimension));
            items.Add(new TextItem(new(left + ((at[i] + at[i + 1]) / 2), top + 79), chain[i], 5, Anchor.Middle, Ink.Dimension));
        }
        items.Add(new LineItem(new(left + width, top + 70), new(left + width, top + 74), Ink.Dimension));
        return new(170, 96, "Front of the plan chest", "Five fronts of equal height between two sides, 38 wide and 21 3/4 high.", items.ToImmutable());
    }

    /// <summary>A marking-out drawing of one sheet.</summary>
    public static Scene SheetScene()
    {
        var items = ImmutableArray.CreateBuilder<SceneItem>();
        const double x = 24, y = 14, w = 210, h = 105;
        items.Add(ShapeItem.Rectangle(x, y, w, h, Ink.Outline, Wash.Wood));
        for (int i = 0; i < 14; i++) items.Add(new LineItem(new(x + 3, y + 5 + (i * 7.2)), new(x + w - 3, y + 5.6 + (i * 7.2)), Ink.Grain));
        items.Add(new HatchItem(new(x + 180, y), 30, 40));
        items.Add(new HatchItem(new(x + 192, y + 40), 18, 40));
        double[] cuts = [40, 80];
        Phrase[] runs = [F(18, 1, 4), F(36, 9, 16)];
        for (int i = 0; i < cuts.Length; i++)
        {
            items.Add(new LineItem(new(x - 4, y + cuts[i]), new(x + w + 4, y + cuts[i]), Ink.Pencil));
            items.Add(new TextItem(new(x + w + 6, y + cuts[i] + 2), P(i == 0 ? "a" : "b").Bold(), 6.5, Anchor.Start, Ink.Pencil));
            items.Add(new TextItem(new(x - 6, y + cuts[i] + 1.6), runs[i], 5, Anchor.End, Ink.Dimension));
        }
        items.Add(new TextItem(new(x - 6, y + 1.6), P("0"), 5, Anchor.End, Ink.Dimension));
        double[] cross = [60, 120, 180];
        Phrase[] across = [F(26, 3, 4), F(53, 5, 8), F(80, 1, 2)];
        for (int i = 0; i < cross.Length; i++)
        {
            items.Add(new LineItem(new(x + cross[i], y), new(x + cross[i], y + 40), Ink.Part));
            items.Add(new TextItem(new(x + cross[i] - 1.5, y + 38), across[i], 4, Anchor.End, Ink.Soft, 0, true));
            items.Add(new TextItem(new(x + cross[i] - 30, y + 21), P($"S{i + 1}").Bold(), 6, Anchor.Middle, Ink.Part, 0, true));
        }
        items.Add(new LineItem(new(x + 192, y + 40), new(x + 192, y + 80), Ink.Part));
        items.Add(new TextItem(new(x + 96, y + 62), P("D1").Bold(), 6, Anchor.Middle, Ink.Part, 0, true));
        items.Add(new TextItem(new(x + 105, y + 95), Join("keep, ", F(11, 1, 8), " wide, whole length"), 4.5, Anchor.Middle, Ink.Soft, 0, true));
        items.Add(new TextItem(new(x, y - 4), P("reference edge 0: trued, against the fence for a"), 4, Anchor.Start, Ink.Soft));
        return new(250, 130, "Sheet A, marking out", "Two rips, a and b, from the trued edge; three sides in the first strip, the deck in the second; the rest is kept.", items.ToImmutable());
    }

    private static Section Assembly() => new("Assembly",
    [
        new ParagraphBlock("On the bench: both sides, the deck, the top, twenty screws, the square, two long clamps. Dry first, then with glue."),
        new StepsBlock(
        [
            new(Join("Lay side S1 on the bench, inside up. Draw the lines of the slides at ", F(2, 3, 32), ", ", F(5, 9, 32), ", ", F(8, 15, 32), ", ", F(11, 21, 32), " and ", F(14, 27, 32), " from the lower edge.")),
            new(P("Do the same on S2 as its mirror image, and lay both edge to edge: the lines must meet."), P("If they do not, find out which side was marked from the wrong edge before a hole is drilled."), Phrase.Empty),
            new(Join("Bore ", F(0, 3, 32), " pilot holes for the slides, ", F(1, 15, 32), " and ", F(22, 1, 2), " behind the front edge."), Phrase.Empty, P("Clamp the work. A hand that holds a panel under the drill is the usual way to be hurt here.")),
            new(P("Glue and screw the deck between the sides. Compare the diagonals before the glue grips.")),
            new(P("Screw on the base with its four feet; stand the case up with someone to help."), P("The case weighs about 70 lb without drawers (worked out from the sheet weights, not weighed)."), Phrase.Empty),
            new(Join("Read the opening at the front, middle and back with the same tape. Expected ", F(35, 15, 16), ". Write the readings here and record them before the drawers are cut: ________  ________  ________")),
        ]),
    ]);
}
