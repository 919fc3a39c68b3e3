using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut.Joinery;
using Setout.Core.Workings;
using static Setout.Core.Measures.ExactLength;

namespace Setout.Core.SettingOut.Drawers;

/// <summary>
/// A drawer whose front is the front of its box: as wide as the front, which goes into the opening; the sides go into the front, the back stands between them or is
/// dovetailed, the bottom lies between or in grooves under a lower back.
/// </summary>
internal static class FrontedBoxRule
{
    /// <summary>False where the kind of drawer wants a false front, with a finding.</summary>
    public static bool IsPossible(Book book, DrawerKind kind)
    {
        string? wrong = kind switch
        {
            { HasFalseFront: true, BottomFit: BottomFit.Between } => "a bottom between the sides is of a box whose front is its face",
            { HasFalseFront: true } => null,
            { Fronts: not FrontWay.Inset } => "its front goes into the opening: 'fronts: inset'",
            { Slides: not SlideWay.Runners } => "it runs on wood: 'slides: runners'",
            { Corners: not (CornerJoint.Pocket or CornerJoint.Rabbet or CornerJoint.HalfBlindDovetail) } => "its corners are pocket, rabbet or half-blind dovetail",
            { BottomFit: not (BottomFit.SlidIn or BottomFit.Between) } => "its bottom is slid in or lies between the sides",
            _ => null,
        };
        if (wrong is null) return true;
        book.NoteOnce("drawer.front-and-box", Severity.Stop, kind.Name, $"Drawers like {kind.Name} cannot be made as described: {wrong}.", kind.HasFalseFront ? $"{book.Hand.Write("false front", "no")}, or another {book.Hand.Key("bottom fit")}." : "Change that word, or leave 'false front: no' out.", kind.Place);
        return false;
    }

    /// <summary>Writes the box behind one front.</summary>
    public static void Write(Book book, Space space, DrawerKind kind, Drawer drawer, Panel front, PartSize frontWidth, DrawerSlot slot)
    {
        string key = drawer.Key, name = $"drawer {key}";
        if (book.PanelOf(kind.Sides, key) is not { } sides || book.PanelOf(kind.Bottom, key) is not { } bottom || RunnerRule.StickOf(book, kind, key) is not { } runner) return;
        var box = new Box(book, space, kind, drawer, sides, bottom, slot) { IsFronted = true };
        QuantityKey tf = Book.ThicknessOf(front.Name);
        QuantityKey opening = book.DefineSame(key, "opening", $"{name}, clear width along its runners", "of the opening", space.Width, Combining.Narrowest);
        QuantityKey width = book.Define(key, "box.width", $"{name}, box width to aim for", drawer.BoxWidth?.Stated ?? (Working)new Sum(Term.From("front, as cut", 1, frontWidth.Made)));
        PartSize? deep = Depth(box, tf);
        QuantityKey behind = RunnerRule.Length(box);
        PartSize length = book.DefineSize(key, "side.length", $"{name} side, length", new Sum([Term.From("behind the front", 1, behind), .. deep is null ? ImmutableArray<Term>.Empty : [Term.From("into the front", 1, deep.ToCut)]]), PartRole.BoxSide);
        Term above = BoxRule.RoomAbove(box);
        PartSize height = book.DefineSize(key, "side.width", $"{name} side, height", BoxRule.Height(box, above, runner), PartRole.BoxSide);
        bool isTailed = kind.Corners == CornerJoint.HalfBlindDovetail, isBetween = kind.BottomFit == BottomFit.Between;
        PartSize back = book.DefineSize(key, "back.length", $"{name} back of the box, length", new Sum([Term.From("box width", 1, width), .. isTailed ? [] : box.BothSides(-1)]), PartRole.BoxEnd);
        QuantityKey built = book.Define(key, "box.as-built", $"{name}, box width as built", new Sum([Term.From("back, as cut", 1, back.AsCut), .. isTailed ? [] : box.BothSides(1)]), Combining.Widest);
        SlideRoom window = SlideRoom.Of(kind);
        QuantityKey play = book.Define(key, "play", $"{name}, side play on its runners, both sides together", new Sum(Term.From("clear width along its runners", 1, opening), Term.From("box, as built", -1, built)));
        book.Gaps.Add(new(play, $"{name}, side play", window.Least, window.Most, window.Words) { Group = space.Owner });

        ImmutableArray<Term> inside = [Term.From("back, as cut", 1, back.AsCut), .. isTailed ? box.BothSides(-1) : []], along = [Term.From("side, as cut", 1, length.AsCut), .. deep is null ? ImmutableArray<Term>.Empty : [Term.From("into the front", -1, deep.AsCut)]];
        (PartSize across, PartSize fore, PartSize backHeight) = isBetween ? Between(box, inside, along, height) : FrontedBottom.SlidIn(box, inside, along, height);
        ExactLength tall = book.Value(height.AsCut), low = slot.IsOnRails ? Zero : book.Value(Book.ThicknessOf(runner.Name));
        Place(box, (length, height, back, backHeight, across, fore), built, deep, RunnerRule.Ground(box) + low, tf);
        if (slot.IsOnRails) BedRule.Write(box, runner);
        else RunnerRule.Write(box, runner);
        BoxChecks.Width(box, (opening, built, play), back, window);
        BoxChecks.Height(box, height, tall, above.Figure!.Value, runner);
        BoxChecks.Bottom(box, book.Value(built));
        Work(box, deep, tf, built, isBetween);
    }

    /// <summary>How far the sides go into the front; null where they only meet it.</summary>
    private static PartSize? Depth(Box box, QuantityKey front)
    {
        if (box.Kind.Corners == CornerJoint.Pocket) return null;
        bool isTailed = box.Kind.Corners == CornerJoint.HalfBlindDovetail;
        TradeRule rule = TradeRules.Get(isTailed ? "DJ2" : "DJ1");
        (Rational share, string cited) = (isTailed ? rule.Shares[^1] : rule.Shares[0], rule.Cited);
        PartSize depth = box.Book.DefineSize(box.Key, "corner.depth", $"{box.Name}, how far its sides go into its front", box.Kind.CornerDepth?.Stated ?? (Working)new Sum([Term.From("front", 1, front)], share),
            Rounding.Down, $"down: {share} of the front ({cited})");
        ExactLength deep = box.Book.Value(depth.ToCut), thick = box.Book.Value(front), most = thick * rule.Shares[^1];
        if (deep > most)
            box.Book.NoteOnce("corner.too-deep", deep >= thick ? Severity.Stop : Severity.Warn, box.Key, $"Sides that go {box.Book.Say(deep)} into a front of {box.Book.Say(thick)} leave {(deep >= thick ? "nothing" : box.Book.Say(thick - deep))} of it.", $"Make {box.Book.Hand.Key("corner depth")} {box.Book.Say(most)} at most. ({cited})", box.Kind.CornerDepth?.Place ?? box.Kind.Place);
        return depth;
    }

    private static (PartSize Across, PartSize Fore, PartSize Back) Between(Box box, ImmutableArray<Term> inside, ImmutableArray<Term> along, PartSize height)
    {
        (Book book, string key, string name) = (box.Book, box.Key, box.Name);
        PartSize across = book.DefineSize(key, "bottom.width", $"{name} bottom, across", new Sum(inside), PartRole.BoxBottom);
        PartSize fore = book.DefineSize(key, "bottom.length", $"{name} bottom, front to back", new Sum(along), PartRole.BoxBottom);
        PartSize back = book.DefineSize(key, "back.width", $"{name} back of the box, height", new Sum(Term.From("side height, to cut", 1, height.ToCut), Term.From("bottom, as read", -1, box.BottomThickness)), PartRole.BoxEnd);
        book.Define(key, "inside.height", $"{name}, height inside, bottom to upper edge", new Sum(Term.From("side height, as cut", 1, height.AsCut), Term.From("bottom, as read", -1, box.BottomThickness)));
        foreach (string part in new[] { "side", "back", "front" }) book.Joints.Add(new(JointKind.Butt, $"{key}.bottom", part == "back" ? Face.Top : Face.AllEdges, $"{key}.{part}", part == "back" ? Face.Bottom : Face.Inside, "glue and pins"));
        book.Hardware.Add(new(key, $"Pin or brad, {book.Say(Fastening.IntoEdge(book.Piece.Unit, book.Value(box.SideThickness)))}", 2 * (Fastening.ScrewsAlong(book.Value(across.AsCut)) + Fastening.ScrewsAlong(book.Value(fore.AsCut))), "piece", $"bottom all round: {Fastening.SpacingWords}"));
        return (across, fore, back);
    }

    private static void Place(Box box, (PartSize Length, PartSize Height, PartSize Back, PartSize BackHeight, PartSize Across, PartSize Fore) s, QuantityKey built, PartSize? deep, ExactLength low, QuantityKey front)
    {
        (Book book, Space space, string key, string name) = (box.Book, box.Space, box.Key, box.Name);
        ExactLength ts = book.Value(box.SideThickness), tk = book.Value(box.BackThickness), tb = book.Value(box.BottomThickness), wide = book.Value(built), long_ = book.Value(s.Length.AsCut), high = book.Value(s.Height.AsCut);
        ExactLength x = space.X + ((book.Value(space.Width) - wide) / 2), y = box.Y - (deep is null ? Zero : book.Value(deep.AsCut)), rear = y + long_;
        ImmutableArray<QuantityKey> held = BoxRule.Held(space, key);
        book.Add(new($"{key}.side", $"{key}s", $"{name} side", PartRole.BoxSide, box.Sides.Name, s.Length, s.Height, box.SideThickness, 2, box.Sides.Grain,
            [new(x, y, low, ts, long_, high), new(x + wide - ts, y, low, ts, long_, high)], box.Drawer.Place, held));
        ExactLength back = book.Value(s.Back.AsCut), backHigh = book.Value(s.BackHeight.AsCut), across = book.Value(s.Across.AsCut), fore = book.Value(s.Fore.AsCut);
        book.Add(new($"{key}.back", $"{key}k", $"{name} back of the box", PartRole.BoxEnd, box.Sides.Name, s.Back, s.BackHeight, box.BackThickness, 1, box.Sides.Grain,
            [new(x + ((wide - back) / 2), rear - tk, low + high - backHigh, back, tk, backHigh)], box.Drawer.Place, held));
        ExactLength up = box.Kind.BottomFit == BottomFit.SlidIn ? book.Value(QuantityKey.Of(key, "groove.up")) : Zero;
        bool alongWidth = book.Value(s.Across.Exact) >= book.Value(s.Fore.Exact);
        book.Add(new($"{key}.bottom", $"{key}b", $"{name} bottom", PartRole.BoxBottom, box.Bottom.Name, alongWidth ? s.Across : s.Fore, alongWidth ? s.Fore : s.Across, box.BottomThickness, 1, box.Bottom.Grain,
            [new(x + ((wide - across) / 2), rear - fore, low + up, across, fore, tb)], box.Drawer.Place, held));
    }

    private static void Work(Box box, PartSize? deep, QuantityKey front, QuantityKey built, bool isBetween)
    {
        (Book book, string key) = (box.Book, box.Key);
        (string front_, string side, string back) = ($"{key}.front", $"{key}.side", $"{key}.back");
        string how;
        switch (box.Kind.Corners)
        {
            case CornerJoint.Rabbet:
                book.Machinings.Add(new(front_, "Rabbet across both ends, on the inside, as wide as a side reads", [("depth", deep!.ToCut), ("width", box.SideThickness)]) { On = Face.Inside, Edge = Face.Ends });
                book.Joints.Add(new(JointKind.Rabbet, side, Face.Ends, front_, Face.Inside, "glue and pins through the side") { Depth = deep.AsCut });
                book.Joints.Add(new(JointKind.Butt, back, Face.Ends, side, Face.Inside, "glue and pins through the side"));
                book.Hardware.Add(new(key, $"Pin or brad, {book.Say(Fastening.IntoEdge(book.Piece.Unit, book.Value(box.SideThickness)))}", 4 * Math.Max(2, (int)(book.Value(QuantityKey.Of(key, "side.width")).Inches / 3).Round(Rounding.Down)), "piece", $"4 corners, through the sides; {TradeRules.Get("DJ1").Source}"));
                how = "rabbet the ends of the front, glue and pin the sides into it and the back between them";
                break;
            case CornerJoint.HalfBlindDovetail:
                book.Machinings.Add(new(side, "Tails on both ends: the front ones enter the front, the back ones go through the back", [("front tails", deep!.ToCut), ("back tails", box.BackThickness)]) { On = Face.Ends });
                book.Machinings.Add(new(front_, "Sockets for the tails, stopped by the lap", [("depth", deep.ToCut), ("from the end", box.SideThickness)]) { On = Face.Inside, Edge = Face.Ends });
                book.Joints.Add(new(JointKind.HalfBlindDovetail, side, Face.Ends, front_, Face.Inside, "glue") { Depth = deep.AsCut });
                book.Joints.Add(new(JointKind.ThroughDovetail, back, Face.Ends, side, Face.Inside, "glue") { Depth = box.SideThickness });
                how = "cut the tails, then sockets and pins to them, and glue the corners together";
                break;
            default:
                book.Joints.Add(new(JointKind.Butt, side, Face.Ends, front_, Face.Inside, "glue and pocket screws"));
                book.Joints.Add(new(JointKind.Butt, back, Face.Ends, side, Face.Inside, "glue and pocket screws"));
                (string screw, string source) = Fastening.PocketScrew(book, book.Value(box.SideThickness));
                Fastening.CheckPocket(book, key, $"the sides of {box.Name}", book.Value(box.SideThickness), box.Kind.Sides.Place);
                book.Hardware.Add(new(key, screw, 4 * Math.Max(2, (int)(book.Value(QuantityKey.Of(key, "side.width")).Inches / 3).Round(Rounding.Down)), "piece", $"4 corners; {source}"));
                how = "glue and screw the sides to the front and the back between them";
                break;
        }
        // Over all: the sides stand behind the front, or in it.
        ExactLength deepOverAll = book.Value(QuantityKey.Of(key, "side.length").AsCut) + book.Value(Book.ThicknessOf(box.Kind.Front.Text)) - (deep is null ? Zero : book.Value(deep.AsCut));
        string last = isBetween ? "Glue and pin the bottom between the sides, up against the back" : "Last of all slide the bottom in from behind, without glue, and screw it up into the back";
        book.Steps.Add(new(Stage.Drawers, $"Box {key}: try its front in the opening and plane it to even gaps; {how}. Measure both diagonals before the glue sets. {last}. Then read its width{book.Enter(built, "WIDTH")}.",
            [front_, side, back, $"{key}.bottom"], Diagonals.Of(book.Grid, book.Value(built), deepOverAll), "saw"));
    }
}
