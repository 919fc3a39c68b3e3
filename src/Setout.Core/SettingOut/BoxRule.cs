// Over 200 lines: one drawer box from slide to screws, every figure beside the rule it comes from.
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.Workings;
using static Setout.Core.Measures.ExactLength;

namespace Setout.Core.SettingOut;

/// <summary>
/// A drawer box on side-mounted slides of the 1/2 in class: ends between the sides with pocket screws, bottom grooved all round.
/// Every figure names the rule it comes from.
/// </summary>
internal static class BoxRule
{
    public static void Write(Book book, Space space, DrawerKind kind, Drawer drawer, QuantityKey slot, ExactLength slotZ)
    {
        string key = drawer.Key, name = $"drawer {key}";
        if (book.PanelOf(kind.Sides, key) is not { } sides || book.PanelOf(kind.Bottom, key) is not { } bottom) return;
        QuantityKey ts = Book.ThicknessOf(sides.Name), tb = Book.ThicknessOf(bottom.Name);
        if (PickSlide(book, space, kind, drawer) is not { } slide) return;

        TradeRule space1 = TradeRules.Get("SS1"), tolerance = TradeRules.Get("SS2"), lower = TradeRules.Get("SS8");
        // The window is 0 to +1/32 in a side; the middle of it is half of that on each of two sides.
        Term play = kind.Play is { } given
            ? Term.From("play kept", -1, given.Value, Origin.Given(given.Place))
            : Term.From("play kept", -1, tolerance.Length, new(OriginKind.Rule, "the middle of 0 to 1/32 in a side, two sides", tolerance.Cited));
        Origin slides = new(OriginKind.Rule, "side-mounted, 1/2 in class", space1.Cited);
        QuantityKey width = book.Define(key, "box.width", $"{name}, box width to aim for", drawer.BoxWidth?.Stated ?? (Working)new Sum(
            Term.From("opening, clear width", 1, space.Width), Term.From("slide, left and right", -2, space1.Length, slides), play));
        PartSize length = book.DefineSize(key, "side.length", $"{name} side, length", new Sum(Term.From("slide", 1, slide)), PartRole.BoxSide);
        Working heightWorking = drawer.BoxHeight?.Stated ?? (Working)new Sum(Term.From("height behind the front", 1, slot),
            Term.From("room above and below", -1, lower.Length, new(OriginKind.Rule, "at least", lower.Cited)));
        PartSize height = book.DefineSize(key, "side.width", $"{name} side, height", heightWorking, PartRole.BoxSide);
        PartSize end = book.DefineSize(key, "end.length", $"{name} end, length", new Sum(Term.From("box width", 1, width), Term.From("sides", -2, ts)), PartRole.BoxEnd);
        PartSize endHeight = book.DefineSize(key, "end.width", $"{name} end, height", new Sum(Term.From("side height, to cut", 1, height.ToCut)), PartRole.BoxEnd);

        // As built: the ends as they came off the saw, and two sides of the sheet as read.
        QuantityKey built = book.Define(key, "box.as-built", $"{name}, box width as built",
            new Sum(Term.From("end, as cut", 1, end.AsCut), Term.From("sides", 2, ts)), Combining.Widest);
        QuantityKey side = book.Define(key, "play", $"{name}, side play beside both slides",
            new Sum(Term.From("opening, clear width", 1, space.Width), Term.From("slide, left and right", -2, space1.Length, slides), Term.From("box, as built", -1, built)));
        ExactLength most = tolerance.Length * 2;
        book.Gaps.Add(new(side, $"{name}, slide play", Zero, most, $"0 to 1/32 in a side: {tolerance.Cited}"));

        (PartSize bottomWidth, PartSize bottomLength) = Bottom(book, drawer, ts, tb, end, length);
        // Half of the room above and below, or half of what there is where the height was given.
        ExactLength half = lower.Length / 2, low = Max(Zero, Min(half, (book.Value(slot) - book.Value(height.AsCut)) / 2));
        Place(book, space, drawer, sides, bottom, (length, height, end, endHeight, bottomWidth, bottomLength), (ts, tb), slotZ + low);
        CheckWidth(book, space, drawer, name, built, side, end, most);
        CheckHeight(book, drawer, name, slot, height, lower);
        CheckBottom(book, kind, drawer, name, bottom, book.Value(built));
        Finish(book, kind, drawer, name, sides, slide, length, height, built, slotZ + low - space.Z);
    }

    /// <summary>The longest slide of the series that leaves the setback and the rear clearance.</summary>
    private static QuantityKey? PickSlide(Book book, Space space, DrawerKind kind, Drawer drawer)
    {
        TradeRule setback = TradeRules.Get("SS7"), rear = TradeRules.Get("SS10"), series = TradeRules.Get(book.Piece.Unit == Measures.Text.LengthUnit.Inch ? "SS5" : "SS5M");
        string key = drawer.Key, name = $"drawer {key}";
        QuantityKey usable = book.Define(key, "slide.usable", $"{name}, depth usable for a slide",
            new Sum(Term.From("clear depth", 1, space.Depth),
                Term.From("setback from the face", -1, setback.Length, new(OriginKind.Rule, "overlay front", setback.Cited)),
                Term.From("clearance behind", -1, rear.Length, new(OriginKind.Rule, "at least", rear.Cited))));
        ExactLength depth = book.Value(usable);
        if (kind.SlideLength is { } given)
        {
            if (given.Value > depth)
                book.NoteOnce("slide.too-long", Severity.Stop, key, $"The slide of {book.Say(given.Value)} does not fit: {book.Say(depth)} is usable.", "Give a shorter one, or leave it to be picked.", given.Place);
            return book.Define(key, "slide.length", $"{name}, slide length", given.Stated);
        }
        var fits = series.Series.Where(s => s <= depth).ToList();
        if (fits.Count == 0)
        {
            book.NoteOnce("slide.none-fits", Severity.Stop, key, $"No slide of the series fits {name}: {book.Say(depth)} is usable, the shortest is {book.Say(series.Series.Min())}.",
                "Make the piece deeper.", space.Place);
            return null;
        }
        ExactLength chosen = fits.Max();
        var longer = series.Series.Where(s => s > chosen).ToList();
        QuantityKey choice = book.Define(key, "slide.length", $"{name}, slide length",
            new Stated(chosen, new(OriginKind.Choice, $"longest of the series within {book.Say(depth)}", series.Cited)));
        book.Choices.Add(new(choice, $"{name}, slide", $"side-mounted slides, {book.Say(chosen)}", chosen, $"the longest of the series within the usable depth of {book.Say(depth)}",
            usable, longer.Count > 0 ? longer.Min() : null, chosen));
        return choice;
    }

    private static (PartSize Width, PartSize Length) Bottom(
        Book book, Drawer drawer, QuantityKey ts, QuantityKey tb, PartSize end, PartSize side)
    {
        string key = drawer.Key, name = $"drawer {key}";
        TradeRule depthRule = TradeRules.Get("BX6"), limit = TradeRules.Get("BX7"), slackRule = TradeRules.Get("BX9"), up = TradeRules.Get("BX8");
        QuantityKey half = book.Define(key, "groove.limit", $"{name}, deepest groove", new Sum([Term.From("side", 1, ts)], Rational.Of(1, 2)));
        PartSize groove = book.DefineSize(key, "groove.depth", $"{name}, groove depth", new Extreme(
        [
            Term.From("usual depth", 1, depthRule.Length, new(OriginKind.Rule, "for a thin bottom", depthRule.Cited)),
            Term.From("half the side", 1, half),
        ], IsLeast: true), Rounding.Down, $"down: never past half the side ({limit.Cited})");
        QuantityKey grooveWidth = book.DefineSame(key, "groove.width", $"{name}, groove width", "bottom, as read", tb);
        QuantityKey grooveUp = book.Define(key, "groove.up", $"{name}, groove above the lower edge", new Stated(up.Length, new(OriginKind.Rule, "middle of 1/4 to 1/2 in", up.Cited)));
        QuantityKey slack = book.Define(key, "bottom.slack", $"{name}, slack of the bottom", new Stated(slackRule.Length, new(OriginKind.Rule, "in all, in each direction", slackRule.Cited)));
        PartSize width = book.DefineSize(key, "bottom.width", $"{name} bottom, across", new Sum(
            Term.From("end, as cut", 1, end.AsCut), Term.From("grooves in the sides", 2, groove.ToCut), Term.From("slack", -1, slack)), PartRole.BoxBottom);
        PartSize length = book.DefineSize(key, "bottom.length", $"{name} bottom, front to back", new Sum(
            Term.From("side, as cut", 1, side.AsCut), Term.From("ends", -2, ts), Term.From("grooves in the ends", 2, groove.ToCut), Term.From("slack", -1, slack)), PartRole.BoxBottom);
        foreach (string part in new[] { "side", "end" })
        {
            book.Machinings.Add(new($"{key}.{part}", "Groove along the inside for the bottom, whole length",
                [("depth", groove.ToCut), ("width", grooveWidth), ("above the lower edge", grooveUp)]));
            book.Joints.Add(new("groove", $"{key}.bottom", Face.AllEdges, $"{key}.{part}", Face.Inside, "no glue"));
        }
        return (width, length);
    }

    private static void Place(
        Book book, Space space, Drawer drawer, Panel sides, Panel bottom,
        (PartSize SideLength, PartSize SideHeight, PartSize EndLength, PartSize EndHeight, PartSize BottomWidth, PartSize BottomLength) sizes,
        (QuantityKey Side, QuantityKey Bottom) thickness, ExactLength z)
    {
        string key = drawer.Key, name = $"drawer {key}";
        ExactLength ts = book.Value(thickness.Side), tb = book.Value(thickness.Bottom);
        ExactLength length = book.Value(sizes.SideLength.AsCut), height = book.Value(sizes.SideHeight.AsCut), end = book.Value(sizes.EndLength.AsCut);
        ExactLength x = space.X + ((book.Value(space.Width) - end - (ts * 2)) / 2), y = space.Y;
        book.Add(new($"{key}.side", $"{key}s", $"{name} side", PartRole.BoxSide, sides.Name, sizes.SideLength, sizes.SideHeight, thickness.Side, 2, sides.Grain,
            [new(x, y, z, ts, length, height), new(x + ts + end, y, z, ts, length, height)], drawer.Place, space.Width));
        book.Add(new($"{key}.end", $"{key}e", $"{name} front and back of the box", PartRole.BoxEnd, sides.Name, sizes.EndLength, sizes.EndHeight, thickness.Side, 2, sides.Grain,
            [new(x + ts, y, z, end, ts, height), new(x + ts, y + length - ts, z, end, ts, height)], drawer.Place, space.Width));
        ExactLength into = (book.Value(sizes.BottomWidth.AsCut) - end) / 2, deep = book.Value(sizes.BottomLength.AsCut);
        // The bottom may lie either way in its groove: the longer side is taken along the grain.
        bool alongWidth = book.Value(sizes.BottomWidth.Exact) >= book.Value(sizes.BottomLength.Exact);
        book.Add(new($"{key}.bottom", $"{key}b", $"{name} bottom", PartRole.BoxBottom, bottom.Name,
            alongWidth ? sizes.BottomWidth : sizes.BottomLength, alongWidth ? sizes.BottomLength : sizes.BottomWidth, thickness.Bottom, 1, bottom.Grain,
            [new(x + ts - into, y + ((length - deep) / 2), z + TradeRules.Get("BX8").Length, end + (into * 2), deep, tb)], drawer.Place, space.Width));
    }

    private static void CheckWidth(Book book, Space space, Drawer drawer, string name, QuantityKey built, QuantityKey play, PartSize end, ExactLength most)
    {
        string key = drawer.Key;
        ExactLength room = book.Value(space.Width), box = book.Value(built), over = book.Value(play), fits = room - (TradeRules.Get("SS1").Length * 2);
        if (over < Zero)
        {
            string words = box >= room
                ? $"{name} is {book.Say(box)} wide, wider than its opening of {book.Say(room)}."
                : $"{name} is {book.Say(box)} wide; with its slides it is {book.Say(-over)} too wide for the opening of {book.Say(room)}.";
            // A box that stands on the bench is a fact to deal with; it does not stop the plan of all the rest.
            if (!book.IsRead(built) && book.IsRead(end.ToCut))
                book.Note("drawer.too-wide", Severity.Warn, key, words, $"Its ends are cut: trim {book.Say(-over)} off their length before the box is glued up.", drawer.Place);
            else if (book.IsRead(built))
                book.Note("drawer.too-wide", Severity.Warn, key, words, $"Plane {book.Say(-over / 2)} or a little more off each side, or cut its ends {book.Say(-over)} shorter and glue it up again.", drawer.Place);
            else
                book.Note("drawer.too-wide", Severity.Stop, key, words, $"The box may be {book.Say(fits)} at most. Leave its width out to have it worked out.", drawer.BoxWidth?.Place ?? drawer.Place);
        }
        else if (book.Value(end.ToCut).Sign <= 0)
        {
            book.Note("drawer.no-width", Severity.Stop, key, $"The opening of {book.Say(room)} leaves no room for {name} between its slides.", "Make the opening wider.", drawer.BoxWidth?.Place ?? drawer.Place);
        }
        else if (over > most)
        {
            book.Note("drawer.too-narrow", Severity.Warn, key, $"{name} leaves {book.Say(over)} of side play; the slides take {book.Say(most)} at most.",
                $"Shim each slide by {book.Say((over - (most / 2)) / 2)}, or leave the width out to have it worked out.", drawer.BoxWidth?.Place ?? drawer.Place);
        }
    }

    private static void CheckHeight(Book book, Drawer drawer, string name, QuantityKey slot, PartSize height, TradeRule room)
    {
        string key = drawer.Key;
        ExactLength least = TradeRules.Get("SS11").Length, tall = book.Value(height.ToCut), space = book.Value(slot);
        if (tall > space)
        {
            book.Note("drawer.too-tall", Severity.Stop, key, $"{name} is {book.Say(tall)} tall in a space of {book.Say(space)}.",
                "Make the box lower or its front taller.", drawer.BoxHeight?.Place ?? drawer.Place);
        }
        else if (tall <= book.Value(QuantityKey.Of(key, "groove.up")) + book.Value(QuantityKey.Of(key, "groove.width")))
        {
            book.Note("drawer.no-height", Severity.Stop, key, $"{name} comes out {book.Say(tall)} tall in a space of {book.Say(space)}: too low for sides that hold its bottom.",
                "Make its front taller, or its box if its height is given.", drawer.BoxHeight?.Place ?? (drawer.Front.Place.IsKnown ? drawer.Front.Place : drawer.Place));
        }
        else if (tall < least)
        {
            book.Note("drawer.too-low", Severity.Warn, key, $"The box of {name} is {book.Say(tall)} tall, lower than a slide of {book.Say(least)}.",
                $"Make its front taller, or use a lower slide. ({TradeRules.Get("SS11").Cited})", drawer.Place);
        }
        else if (space - tall < room.Length)
        {
            book.Note("drawer.tight-height", Severity.Warn, key, $"{name} leaves {book.Say(space - tall)} above and below in all; {book.Say(room.Length)} is usual.",
                $"Make the box lower, or be sure that the slide can be hooked in with so little. ({room.Cited})", drawer.BoxHeight?.Place ?? drawer.Place);
        }
    }

    private static void CheckBottom(Book book, DrawerKind kind, Drawer drawer, string name, Panel bottom, ExactLength box)
    {
        (string rule, ExactLength from) = box > FromInches(36) ? ("BX5", FromInches(36)) : ("BX4", FromInches(24));
        // The label decides, not the reading: a 3/8 in sheet reads under 3/8.
        ExactLength wanted = TradeRules.Get(rule).Length - FromInches(Rational.Of(1, 16)), thick = book.Value(Book.ThicknessOf(bottom.Name));
        if (box <= from || thick >= wanted || book.IsUnknown(bottom.Name)) return;
        book.NoteOnce("drawer.thin-bottom", Severity.Note, drawer.Key, $"{name} is {book.Say(box)} wide on a bottom of {book.Say(thick)}.",
            $"Over {book.Say(from)} a bottom of {book.Say(TradeRules.Get(rule).Length)} is usual. ({TradeRules.Get(rule).Cited})", kind.Bottom.Place);
    }

    private static void Finish(
        Book book, DrawerKind kind, Drawer drawer, string name, Panel sides, QuantityKey slide, PartSize length, PartSize height, QuantityKey built, ExactLength low)
    {
        string key = drawer.Key;
        QuantityKey up = book.Define(key, "slide.up", $"{name}, middle of the slide above the bottom of the opening", new Sum(
            Term.From("box above the bottom of the opening", 1, low, new(OriginKind.Worked, "from the fronts below it, and half the room")),
            Term.From("half the box height", Rational.Of(1, 2), height.AsCut)));
        (string screw, string source) = Fastening.PocketScrew(book, book.Value(Book.ThicknessOf(sides.Name)));
        int screws = 4 * Math.Max(2, (int)(book.Value(height.ToCut).Inches / 3).Round(Rounding.Down));
        book.Joints.Add(new("butt", $"{key}.end", Face.Ends, $"{key}.side", Face.Inside, "glue and pocket screws"));
        book.Hardware.Add(new(key, screw, screws, "piece", $"4 corners; {source}"));
        book.Hardware.Add(new(key, $"Side-mounted slides, {book.Say(book.Value(slide))}", 1, "pair", "one pair a drawer; full extension, 1/2 in class"));
        ExactLength behind = book.Value(Book.ThicknessOf(sides.Name)), front = book.Value(Book.ThicknessOf(kind.Front.Text));
        if (Fastening.IntoFace(book.Piece.Unit, behind, front) is { } through)
            book.Hardware.Add(new(key, $"Pan-head screw for false fronts, {book.Say(through)}", 4, "piece", "four a front, stopping inside it; common practice, no source"));
        else if (!book.IsUnknown(kind.Front.Text) && !book.IsUnknown(sides.Name))
            book.NoteOnce("front.no-screw", Severity.Warn, key, $"No usual screw holds a front of {book.Say(front)} through a box of {book.Say(behind)} without coming out.", "Use a thicker front, or glue it on.", kind.Front.Place);
        string back = book.Say(TradeRules.Get("SS7").Length);
        book.Steps.Add(new(Stage.Drawers, $"Box {key}: groove sides and ends, put the bottom in dry, glue and screw ends between the sides. Measure both diagonals before the glue sets. Then read its width: setout record FILE {built} WIDTH.",
            [$"{key}.side", $"{key}.end", $"{key}.bottom"], Diagonals.Of(book.Grid, book.Value(built), book.Value(length.AsCut)), "screws"));
        book.Steps.Add(new(Stage.Drawers, $"Slides for {key}: on the carcase with their middle {book.Say(book.Value(up))} above the bottom of the opening, front ends {back} behind the face, on spacers alike left and right; on the box along the middle of its sides, front ends {back} behind its front. So the box comes flush with the face when it is home.", [], null, ""));
    }
}
