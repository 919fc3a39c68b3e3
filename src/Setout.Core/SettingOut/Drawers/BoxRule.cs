using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.Workings;
using static Setout.Core.Measures.ExactLength;

namespace Setout.Core.SettingOut.Drawers;

/// <summary>
/// A drawer box: its width from the opening and what it runs on, its length from the slide or the depth, its height from what lies behind its front.
/// Every figure names the rule it comes from.
/// </summary>
internal static class BoxRule
{
    public static void Write(Book book, Space space, DrawerKind kind, Drawer drawer, DrawerSlot slot)
    {
        string key = drawer.Key, name = $"drawer {key}";
        if (book.PanelOf(kind.Sides, key) is not { } sides || book.PanelOf(kind.Bottom, key) is not { } bottom) return;
        Stick? runner = kind.Slides == SlideWay.Runners ? RunnerRule.StickOf(book, kind, key) : null;
        if (kind.Slides == SlideWay.Runners && runner is null) return;
        var box = new Box(book, space, kind, drawer, sides, bottom, slot);
        if ((runner is not null ? RunnerRule.Length(box) : SlideRule.Pick(book, space, kind, drawer)) is not { } slide) return;

        SlideRoom window = SlideRoom.Of(kind);
        QuantityKey kept = SlideRule.PlayKept(book, kind, window);
        QuantityKey opening = book.DefineSame(key, "opening", $"{name}, clear width along its slides", "of the opening", space.Width, Combining.Narrowest);
        ImmutableArray<Term> room = SlideRule.Room(box, opening);
        // What was packed behind slides after the box was made is no reason to want another box.
        bool isMade = book.IsRead(QuantityKey.Of(key, "end.length").ToCut) || book.IsRead(QuantityKey.Of(key, "end.length").AsCut) || book.IsRead(QuantityKey.Of(key, "box.as-built"));
        ImmutableArray<Term> packing = runner is null ? Packing(book, key, name) : [];
        QuantityKey width = book.Define(key, "box.width", $"{name}, box width to aim for", drawer.BoxWidth?.Stated ?? (Working)new Sum([.. room, .. isMade ? [] : packing, Term.From("play kept", -1, kept)]));
        BoxCorners corners = BoxCornerRule.Define(box);
        PartSize length = book.DefineSize(key, "side.length", $"{name} side, length", new Sum([Term.From(runner is null ? "slide" : "box length", 1, slide), .. corners.LapTerm(-1)]), PartRole.BoxSide);
        Term above = RoomAbove(box);
        PartSize height = book.DefineSize(key, "side.width", $"{name} side, height", Height(box, above, runner), PartRole.BoxSide);
        (Rounding way, string why) = window.Landing(book.Grid);
        PartSize end = book.DefineSize(key, "end.length", $"{name} {box.EndWord}, length", new Sum([Term.From("box width", 1, width), .. corners.EndLess]), way, why);
        PartSize endHeight = book.DefineSize(key, "end.width", $"{name} {box.EndWord}, height", new Sum(Term.From("side height, to cut", 1, height.ToCut)), PartRole.BoxEnd);

        // As built: the ends as they came off the saw, and two sides of the sheet as read.
        QuantityKey built = book.Define(key, "box.as-built", $"{name}, box width as built",
            new Sum([Term.From($"{box.EndWord}, as cut", 1, end.AsCut), .. corners.BuiltMore]), Combining.Widest);
        // Planing is a fact beside the reading of the box, which goes on to tell how it was cut; a box read after it was planed needs no more of it.
        QuantityKey planed = book.Define(key, "planed", $"{name}, planed off its sides, both together", new Stated(Zero, new(OriginKind.Rule, "nothing until it is done")));
        ImmutableArray<Term> off = book.IsRead(planed) && !book.IsReadLater(built, planed) ? [Term.From("planed off its sides", 1, planed)] : [];
        string beside = runner is null ? "side play beside both slides" : "side play on its runners, both sides together";
        QuantityKey side = book.Define(key, "play", $"{name}, {beside}", new Sum([.. room, .. packing, Term.From("box, as built", -1, built), .. off]));
        book.Gaps.Add(new(side, $"{name}, {(runner is null ? "slide play" : "side play")}", window.Least, window.Most, window.Words) { Group = space.Owner, Allowance = kept });

        var sizes = new BoxSizes(length, height, end, endHeight);
        BottomSizes flat = BottomRule.Write(corners, sizes, built);
        ExactLength tall = book.Value(height.AsCut) + (kind.BottomFit == BottomFit.Applied ? book.Value(box.BottomThickness) : Zero);
        ExactLength least = above.Figure!.Value;
        // Half of the room above and below, or half of what there is where the height was given; on its runners where it has some.
        ExactLength low = slot.IsOnRails ? Zero : runner is not null ? book.Value(Book.ThicknessOf(runner.Name)) : Max(Zero, Min(least / 2, (book.Value(slot.Height) - tall) / 2));
        ExactLength ground = runner is not null ? RunnerRule.Ground(box) : slot.Z;
        BoxPlaces.Write(corners, sizes, flat, ground + low);
        if (runner is not null && slot.IsOnRails) BedRule.Write(box, runner);
        else if (runner is not null) RunnerRule.Write(box, runner);
        if (window.IsFinerThan(book.Grid))
        {
            // More than a step off is no fault of the grid.
            if (book.Value(side) < window.Least - book.Grid.Step) BoxChecks.Width(box, (opening, built, side), end, window);
            else if (!BoxChecks.NoWidth(box, book.Value(built))) BoxChecks.Grid(box, window);
        }
        else BoxChecks.Width(box, (opening, built, side), end, window);
        BoxChecks.NoLength(box, length, corners);
        BoxChecks.Height(box, height, tall, least, runner);
        BoxChecks.Bottom(box, book.Value(built));
        BoxChecks.Under(box);
        SlideHold.Look(box);
        BoxCornerRule.Check(corners);
        BoxWork.Write(corners, sizes, built, slide, ground + low - space.Z);
    }

    /// <summary>What is put behind the slides to take up room; a term of the sums only once there is some.</summary>
    private static ImmutableArray<Term> Packing(Book book, string key, string name)
    {
        QuantityKey packing = book.Define(key, "packing", $"{name}, packing behind its slides, both sides together", new Stated(Zero, new(OriginKind.Rule, "none until it is put in")));
        return book.IsRead(packing) ? [Term.From("packing behind the slides", -1, packing)] : [];
    }

    /// <summary>How much lower a box is than what lies behind its front.</summary>
    internal static Term RoomAbove(Box box)
    {
        if (box.Kind.Sheet.Room is { } given) return Term.From("room above and below", -1, given.Value, Origin.Given(given.Place));
        TradeRule rule = TradeRules.Get(box.Kind.Slides switch { SlideWay.Under => "US4", SlideWay.Runners => "WR2", _ => "SS8" });
        return Term.From(box.Kind.Slides == SlideWay.Runners ? "room above" : "room above and below", -1, rule.Length, new(OriginKind.Rule, "at least", rule.Cited));
    }

    /// <summary>The height of the sides: the box less a bottom that is applied below them.</summary>
    internal static Working Height(Box box, Term room, Stick? runner)
    {
        ImmutableArray<Term> below = box.Kind.BottomFit == BottomFit.Applied ? [Term.From("bottom, applied", -1, box.BottomThickness)] : [];
        if (box.Drawer.BoxHeight is { } given) return below.IsEmpty ? given.Stated : new Sum([Term.From("box height", 1, given.Value, Origin.Given(given.Place)), .. below]);
        if (runner is not null && !box.Slot.IsOnRails) below = [Term.From(RunnerRule.WantsKicker(box) ? "runner and kicker" : "runner", RunnerRule.WantsKicker(box) ? -2 : -1, Book.ThicknessOf(runner.Name)), .. below];
        return new Sum([Term.From("height behind the front", 1, box.Slot.Height), room, .. below]);
    }

    /// <summary>Boxes wait for their own slide line, or for the whole opening, to be read.</summary>
    internal static ImmutableArray<QuantityKey> Held(Space space, string drawer) => [QuantityKey.Of(drawer, "opening"), space.Width];
}
