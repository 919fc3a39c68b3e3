// Over 200 lines: one drawer box from slide to screws, every figure beside the rule it comes from.
using System.Collections.Immutable;
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
        QuantityKey ts = book.ThicknessOf($"{key}.side", sides.Name, 2), tb = book.ThicknessOf($"{key}.bottom", bottom.Name);
        if (SlideRule.Pick(book, space, kind, drawer) is not { } slide) return;

        TradeRule lower = TradeRules.Get("SS8");
        SlideRoom window = SlideRoom.Of(kind.Window);
        QuantityKey kept = SlideRule.PlayKept(book, kind, window);
        QuantityKey opening = book.DefineSame(key, "opening", $"{name}, clear width along its slides", "of the opening", space.Width, Combining.Narrowest);
        ImmutableArray<Term> room = [Term.From("clear width along its slides", 1, opening), Term.From("slide, left and right", -2, SlideRule.Thickness(book, kind))];
        // What was packed behind slides after the box was made is no reason to want another box.
        bool isMade = book.IsRead(QuantityKey.Of(key, "end.length").ToCut) || book.IsRead(QuantityKey.Of(key, "end.length").AsCut) || book.IsRead(QuantityKey.Of(key, "box.as-built"));
        ImmutableArray<Term> packing = Packing(book, key, name);
        QuantityKey width = book.Define(key, "box.width", $"{name}, box width to aim for", drawer.BoxWidth?.Stated ?? (Working)new Sum([.. room, .. isMade ? [] : packing, Term.From("play kept", -1, kept)]));
        PartSize length = book.DefineSize(key, "side.length", $"{name} side, length", new Sum(Term.From("slide", 1, slide)), PartRole.BoxSide);
        Working heightWorking = drawer.BoxHeight?.Stated ?? (Working)new Sum(Term.From("height behind the front", 1, slot),
            Term.From("room above and below", -1, lower.Length, new(OriginKind.Rule, "at least", lower.Cited)));
        PartSize height = book.DefineSize(key, "side.width", $"{name} side, height", heightWorking, PartRole.BoxSide);
        (Rounding way, string why) = window.Landing(book.Grid);
        PartSize end = book.DefineSize(key, "end.length", $"{name} end, length", new Sum([Term.From("box width", 1, width), .. book.Thicknesses("sides", -1, $"{key}.side", sides.Name, 2)]), way, why);
        PartSize endHeight = book.DefineSize(key, "end.width", $"{name} end, height", new Sum(Term.From("side height, to cut", 1, height.ToCut)), PartRole.BoxEnd);

        // As built: the ends as they came off the saw, and two sides of the sheet as read.
        QuantityKey built = book.Define(key, "box.as-built", $"{name}, box width as built",
            new Sum([Term.From("end, as cut", 1, end.AsCut), .. book.Thicknesses("sides", 1, $"{key}.side", sides.Name, 2)]), Combining.Widest);
        // Planing is a fact beside the reading of the box, which goes on to tell how it was cut; a box read after it was planed needs no more of it.
        QuantityKey planed = book.Define(key, "planed", $"{name}, planed off its sides, both together", new Stated(Zero, new(OriginKind.Rule, "nothing until it is done")));
        ImmutableArray<Term> off = book.IsRead(planed) && !book.IsReadLater(built, planed) ? [Term.From("planed off its sides", 1, planed)] : [];
        QuantityKey side = book.Define(key, "play", $"{name}, side play beside both slides", new Sum([.. room, .. packing, Term.From("box, as built", -1, built), .. off]));
        book.Gaps.Add(new(side, $"{name}, slide play", window.Least, window.Most, window.Words) { Group = space.Owner, Allowance = kept });

        (PartSize bottomWidth, PartSize bottomLength) = Bottom(book, space, drawer, sides.Name, ts, tb, end, length);
        // Half of the room above and below, or half of what there is where the height was given.
        ExactLength half = lower.Length / 2, low = Max(Zero, Min(half, (book.Value(slot) - book.Value(height.AsCut)) / 2));
        Place(book, space, drawer, sides, bottom, (length, height, end, endHeight, bottomWidth, bottomLength), (ts, tb), slotZ + low);
        if (window.IsFinerThan(book.Grid))
            book.NoteOnce("drawer.grid-too-coarse", Severity.Warn, key, $"{name} wants its play within {book.Say(window.Least)} to {book.Say(window.Most)}; a step of {book.Say(book.Grid.Step)} is wider than that.",
                "Give the shop or the piece a finer grid, or write 'window: usual' if these slides allow it.", kind.Place);
        else CheckWidth(book, space, drawer, name, opening, built, side, end, window);
        CheckHeight(book, drawer, name, slot, height, lower);
        CheckBottom(book, kind, drawer, name, bottom, book.Value(built));
        Finish(book, kind, drawer, name, sides, slide, length, height, built, slotZ + low - space.Z);
    }

    /// <summary>What is put behind the slides to take up room; a term of the sums only once there is some.</summary>
    private static ImmutableArray<Term> Packing(Book book, string key, string name)
    {
        QuantityKey packing = book.Define(key, "packing", $"{name}, packing behind its slides, both sides together", new Stated(Zero, new(OriginKind.Rule, "none until it is put in")));
        return book.IsRead(packing) ? [Term.From("packing behind the slides", -1, packing)] : [];
    }

    private static (PartSize Width, PartSize Length) Bottom(
        Book book, Space space, Drawer drawer, string sides, QuantityKey ts, QuantityKey tb, PartSize end, PartSize side)
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
            [Term.From("side, as cut", 1, side.AsCut), .. book.Thicknesses("ends", -1, $"{key}.end", sides, 2), Term.From("grooves in the ends", 2, groove.ToCut), Term.From("slack", -1, slack)]), PartRole.BoxBottom);
        Groove(book, space, key, name, "across", "in the grooves of the sides", new Sum(
            Term.From("end, as cut", 1, end.AsCut), Term.From("grooves in the sides, as cut", 2, groove.AsCut), Term.From("bottom, as cut", -1, width.AsCut)));
        Groove(book, space, key, name, "along", "in the grooves of the ends", new Sum([
            Term.From("side, as cut", 1, side.AsCut), .. book.Thicknesses("ends", -1, $"{key}.end", sides, 2),
            Term.From("grooves in the ends, as cut", 2, groove.AsCut), Term.From("bottom, as cut", -1, length.AsCut)]));
        foreach (string part in new[] { "side", "end" })
        {
            book.Machinings.Add(new($"{key}.{part}", "Groove along the inside for the bottom, whole length",
                [("depth", groove.ToCut), ("width", grooveWidth), ("above the lower edge", grooveUp)]));
            book.Joints.Add(new("groove", $"{key}.bottom", Face.AllEdges, $"{key}.{part}", Face.Inside, "no glue"));
        }
        return (width, length);
    }

    /// <summary>The bottom must go in, and stay in.</summary>
    private static void Groove(Book book, Space space, string key, string name, string way, string words, Sum slack)
    {
        QuantityKey gap = book.Define(key, $"bottom.play-{way}", $"{name}, slack of the bottom {words}", slack);
        TradeRule most = TradeRules.Get("GV1");
        book.Gaps.Add(new(gap, $"{name}, bottom {words}", Zero, most.Length, $"goes in, and stays in both grooves: {most.Cited}") { Group = space.Owner });
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
            [new(x, y, z, ts, length, height), new(x + ts + end, y, z, ts, length, height)], drawer.Place, Held(space, key)));
        book.Add(new($"{key}.end", $"{key}e", $"{name} front and back of the box", PartRole.BoxEnd, sides.Name, sizes.EndLength, sizes.EndHeight, book.ThicknessOf($"{key}.end", sides.Name, 2), 2, sides.Grain,
            [new(x + ts, y, z, end, ts, height), new(x + ts, y + length - ts, z, end, ts, height)], drawer.Place, Held(space, key)));
        ExactLength into = (book.Value(sizes.BottomWidth.AsCut) - end) / 2, deep = book.Value(sizes.BottomLength.AsCut);
        // The bottom may lie either way in its groove: the longer side is taken along the grain.
        bool alongWidth = book.Value(sizes.BottomWidth.Exact) >= book.Value(sizes.BottomLength.Exact);
        book.Add(new($"{key}.bottom", $"{key}b", $"{name} bottom", PartRole.BoxBottom, bottom.Name,
            alongWidth ? sizes.BottomWidth : sizes.BottomLength, alongWidth ? sizes.BottomLength : sizes.BottomWidth, thickness.Bottom, 1, bottom.Grain,
            [new(x + ts - into, y + ((length - deep) / 2), z + TradeRules.Get("BX8").Length, end + (into * 2), deep, tb)], drawer.Place, Held(space, key)));
    }

    /// <summary>Boxes wait for their own slide line, or for the whole opening, to be read.</summary>
    internal static ImmutableArray<QuantityKey> Held(Space space, string drawer) => [QuantityKey.Of(drawer, "opening"), space.Width];

    private static void CheckWidth(Book book, Space space, Drawer drawer, string name, QuantityKey opening, QuantityKey built, QuantityKey play, PartSize end, SlideRoom window)
    {
        string key = drawer.Key;
        ExactLength room = book.Value(opening), box = book.Value(built), over = book.Value(play), fits = over + box - window.Least, tight = window.Least - over;
        if (over < window.Least)
        {
            string words = box >= room
                ? $"{name} is {book.Say(box)} wide, wider than its opening of {book.Say(room)}."
                : $"{name} is {book.Say(box)} wide; with its slides it is {book.Say(tight)} too wide for the opening of {book.Say(room)}.";
            // A box that stands on the bench is a fact to deal with; it does not stop the plan of all the rest.
            if (!book.IsRead(built) && (book.IsRead(end.ToCut) || book.IsRead(end.AsCut)))
                book.Note("drawer.too-wide", Severity.Warn, key, words, $"It is {book.Say(tight)} too wide; 'setout fit FILE' lists what can be done about it.", drawer.Place);
            else if (book.IsRead(built))
                book.Note("drawer.too-wide", Severity.Warn, key, words, $"It is {book.Say(tight)} too wide, {book.Say(tight / 2)} a side; 'setout fit FILE' lists what can be done about it.", drawer.Place);
            else
                book.Note("drawer.too-wide", Severity.Stop, key, words, $"The box may be {book.Say(fits)} at most. Leave its width out to have it worked out.", drawer.BoxWidth?.Place ?? drawer.Place);
        }
        else if (book.Value(end.ToCut).Sign <= 0)
        {
            book.Note("drawer.no-width", Severity.Stop, key, $"The opening of {book.Say(room)} leaves no room for {name} between its slides.", "Make the opening wider.", drawer.BoxWidth?.Place ?? drawer.Place);
        }
        else if (over > window.Most)
        {
            book.Note("drawer.too-narrow", Severity.Warn, key, $"{name} leaves {book.Say(over)} of side play; the slides take {book.Say(window.Most)} at most.",
                book.IsRead(built) || book.IsRead(end.ToCut) || book.IsRead(end.AsCut) ? $"To the middle it is {book.Say((over - window.Middle) / 2)} a side; 'setout fit FILE' lists what can be done about it." : $"Shim each slide by {book.Say((over - window.Middle) / 2)}, or leave the width out to have it worked out.", drawer.BoxWidth?.Place ?? drawer.Place);
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
