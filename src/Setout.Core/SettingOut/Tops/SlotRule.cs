using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut.Tops;

/// <summary>
/// Slots for track in a top: pass by pass down, and side by side where the bit is narrower than the slot. How much is left below, and what the
/// slot crosses. A pass is no deeper than half the bit, and no deeper than 1/4 in: common practice, no source.
/// </summary>
internal static class SlotRule
{
    // Nobody makes more: a slip of the pen or of the unit.
    private const int MostPasses = 24;

    /// <summary>Writes the slots of a top; gives the depth of the deepest back.</summary>
    public static ExactLength Write(Book book, LaidTop laid)
    {
        ExactLength deepest = ExactLength.Zero;
        var boxes = new List<(Slot Slot, Span Across, Span Along)>();
        foreach (Slot slot in laid.Top.Slots)
        {
            bool isAlong = slot.Along is TopSide.Front or TopSide.Back;
            (QuantityKey run, QuantityKey across) = isAlong ? (laid.OutLength, laid.OutWidth) : (laid.OutWidth, laid.OutLength);
            string key = slot.Key, name = $"slot {key}", edge = TopMakeUp.Word(slot.Along);
            QuantityKey from = book.Define(key, "from", $"{name}, from the {edge} to its nearer wall", slot.From.Stated);
            QuantityKey width = book.Define(key, "width", $"{name}, width", slot.Width.Stated), depth = book.Define(key, "depth", $"{name}, depth", slot.Depth.Stated);
            QuantityKey stop = book.Define(key, "short", $"{name}, short of each end", slot.Short?.Stated ?? new Stated(ExactLength.Zero, new(OriginKind.Rule, "runs through", "common practice, no source")));
            QuantityKey length = book.Define(key, "length", $"{name}, length", new Sum(Term.From("top, over all", 1, run), Term.From("short of both ends", -2, stop)));
            QuantityKey left = book.Define(key, "left", $"{name}, left below it", new Sum(Term.From("top", 1, laid.Made.Thickness), Term.From("slot", -1, depth)));
            QuantityKey behind = book.Define(key, "far", $"{name}, from its farther wall to the other edge", new Sum(Term.From("top, over all", 1, across), Term.From("to its nearer wall", -1, from), Term.From("width", -1, width)));
            deepest = ExactLength.Max(deepest, book.Value(depth));
            if (book.Value(behind).Sign < 0 || book.Value(length).Sign <= 0)
            {
                book.Note("slot.outside", Severity.Stop, key, book.Value(behind).Sign < 0 ? $"The {name} does not lie in {laid.Name}: it is {book.Say(-book.Value(behind))} out." : $"Nothing is left of the {name} between its ends: {book.Say(book.Value(length))}.", book.Value(behind).Sign < 0 ? "Set it nearer to its edge." : "Let it stop less short of the ends.", slot.Place);
                continue;
            }
            if (!laid.Made.Layers.Any(l => book.IsUnknown(l.Panel.Name))) CheckLeft(book, laid, slot, name, book.Value(left));
            Walls(book, slot, name, book.Value(from), book.Value(behind));
            CheckEdging(book, laid, slot, name, book.Value(behind), isAlong);
            ExactLength near = slot.Along is TopSide.Front or TopSide.Left ? book.Value(from) : book.Value(behind);
            Span wide = new(near, near + book.Value(width)), along = new(book.Value(stop), book.Value(stop) + book.Value(length));
            CheckOthers(book, laid, slot, isAlong ? new(along, wide) : new(wide, along), boxes);
            boxes.Add((slot, isAlong ? along : wide, isAlong ? wide : along));
            Show(book, laid, slot, name, isAlong, near, stop);
            if (Bit(book, slot, name, width, depth) is { } passes) Passes(book, laid, slot, name, (from, width, depth, stop), passes);
        }
        return deepest;
    }

    /// <summary>Where it lies: from its nearer wall, and from the end where it stops.</summary>
    private static void Show(Book book, LaidTop laid, Slot slot, string name, bool isAlong, ExactLength near, QuantityKey stop)
    {
        (QuantityKey from, QuantityKey width) = (QuantityKey.Of(slot.Key, "from"), QuantityKey.Of(slot.Key, "width"));
        ExactLength wide = book.Value(width), deep = book.Value(QuantityKey.Of(slot.Key, "depth")), along = book.Value(QuantityKey.Of(slot.Key, "length")), end = book.Value(stop);
        ExactLength x = laid.X + (isAlong ? end : near), y = laid.Y + (isAlong ? near : end), face = laid.Z + book.Value(laid.Made.Thickness);
        book.CutOut(slot.Key, name, laid.Solid(book), isAlong ? new(x, y, face - deep, along, wide, deep) : new(x, y, face - deep, wide, along, deep));
        (ExactLength start, ExactLength edge) = isAlong ? (y, laid.Y) : (x, laid.X);
        ExactLength across = book.Value(isAlong ? laid.OutWidth : laid.OutLength);
        bool isNear = slot.Along is TopSide.Front or TopSide.Left;
        book.Show(new(from, !isAlong, isNear ? edge : start + wide, isNear ? start : edge + across, 0, x) { IsDeep = isAlong, In = Views.Above });
        book.Show(new(width, !isAlong, start, start + wide, 0, x) { IsDeep = isAlong, In = Views.Above });
    }

    private readonly record struct Span(ExactLength From, ExactLength To)
    {
        public bool Meets(Span other) => From < other.To && other.From < To;
    }

    private readonly record struct Room(Span Across, Span Along);

    private static void CheckLeft(Book book, LaidTop laid, Slot slot, string name, ExactLength left)
    {
        TradeRule half = TradeRules.Get("TS3");
        ExactLength wanted = book.Value(laid.Made.Thickness) / 2;
        if (left.Sign <= 0)
            book.Note("slot.too-deep", Severity.Stop, slot.Key, $"The {name} is {book.Say(slot.Depth.Value)} deep in a top of {book.Say(book.Value(laid.Made.Thickness))}: it comes through.", $"Make it {book.Say(wanted)} deep or less, or give the top another layer.", slot.Depth.Place);
        else if (left < wanted)
            book.Note("slot.too-deep", Severity.Warn, slot.Key, $"The {name} leaves {book.Say(left)} of {laid.Name} below it; half of its thickness, {book.Say(wanted)}, is usual.",
                $"Make it {book.Say(wanted - left)} less deep, or give the top another layer. ({half.Cited})", slot.Depth.Place);
    }

    /// <summary>A thin wall along an edge breaks off. A slot right at the edge has none: it is a rabbet.</summary>
    private static void Walls(Book book, Slot slot, string name, ExactLength near, ExactLength far)
    {
        ExactLength least = TradeRules.Get("TS4").Length, thin = near.Sign > 0 && (far.Sign <= 0 || near < far) ? near : far;
        if (thin.Sign > 0 && thin < least)
            book.Note("slot.thin-wall", Severity.Warn, slot.Key, $"Only {book.Say(thin)} of wood stays between the {name} and the edge of the top.", $"Leave {book.Say(least)} or more, or begin at the edge. ({TradeRules.Get("TS4").Cited})", slot.From.Place);
    }

    private static void CheckEdging(Book book, LaidTop laid, Slot slot, string name, ExactLength behind, bool isAlong)
    {
        if (laid.Made.Strip is not { } strip) return;
        ExactLength t = book.Value(Book.ThicknessOf(strip.Name)), from = slot.From.Value;
        TopSide other = slot.Along switch { TopSide.Front => TopSide.Back, TopSide.Back => TopSide.Front, TopSide.Left => TopSide.Right, _ => TopSide.Left };
        if ((laid.Made.Edged.Contains(slot.Along) && from < t) || (laid.Made.Edged.Contains(other) && behind < t))
        {
            ExactLength by = from < t && laid.Made.Edged.Contains(slot.Along) ? t - from : t - behind;
            book.Note("slot.in-edging", Severity.Warn, slot.Key, $"The {name} runs {book.Say(by)} into the edging along it.", $"Move it {book.Say(by)} away from that edge, or leave the strip off there.", slot.From.Place);
        }
        TopSide[] ends = isAlong ? [TopSide.Left, TopSide.Right] : [TopSide.Front, TopSide.Back];
        TopSide[] crossed = [.. ends.Where(laid.Made.Edged.Contains)];
        if (crossed.Length == 0 || (slot.Short?.Value ?? ExactLength.Zero) >= t) return;
        string where = string.Join(" and the ", crossed.Select(TopMakeUp.Word));
        if (laid.Top.Edging!.Raised is { Value.Sign: > 0 } raised)
            book.Note("slot.crosses-edging", Severity.Warn, slot.Key, $"The {name} runs into the strip at the {where}, which stands {book.Say(raised.Value)} above the top: nothing slides in there.", $"{book.Hand.Write("short", book.Say(t))} or more, or leave the strip off there.", slot.Place);
        else
            book.Note("slot.crosses-edging", Severity.Note, slot.Key, $"The {name} runs through the strip at the {where}.", $"Cut it after the edging is on, with scrap clamped behind so that the strip does not break out; {book.Hand.OrWrite("short", book.Say(t))} to stop at the strip.", slot.Place);
    }

    private static void CheckOthers(Book book, LaidTop laid, Slot slot, Room area, List<(Slot Slot, Span Across, Span Along)> before)
    {
        foreach ((Slot other, Span across, Span along) in before)
        {
            if (!area.Across.Meets(across) || !area.Along.Meets(along)) continue;
            bool isSameWay = (other.Along is TopSide.Front or TopSide.Back) == (slot.Along is TopSide.Front or TopSide.Back);
            book.Note("slot.meets-slot", isSameWay ? Severity.Stop : Severity.Note, slot.Key, isSameWay ? $"Slots {other.Key} and {slot.Key} run into one another." : $"Slots {other.Key} and {slot.Key} cross.",
                isSameWay ? "Set one of them further from its edge." : "A track is cut through at the crossing: let one of them stop short, or butt the tracks there.", slot.Place);
        }
        foreach (Well well in laid.Top.Wells)
        {
            (ExactLength width, ExactLength depth) = WellRule.OpeningOf(well);
            if (area.Across.Meets(new(well.FromLeft.Value, well.FromLeft.Value + width)) && area.Along.Meets(new(well.FromFront.Value, well.FromFront.Value + depth)))
                book.Note("slot.meets-well", Severity.Warn, slot.Key, $"Slot {slot.Key} runs into the opening of well {well.Key}.", "Move one of them, or let the slot stop short of it.", slot.Place);
        }
    }

    /// <summary>The bit, and how many passes it takes down and beside one another; null where it cannot be, with a finding.</summary>
    private static (QuantityKey Bit, int Down, int Beside)? Bit(Book book, Slot slot, string name, QuantityKey width, QuantityKey depth)
    {
        TradeRule most = TradeRules.Get("TS1"), part = TradeRules.Get("TS2");
        QuantityKey bit = slot.Bit is { } given ? book.Define(slot.Key, "bit", $"{name}, diameter of the bit", given.Stated) : book.DefineSame(slot.Key, "bit", $"{name}, diameter of the bit", "as wide as the slot", width);
        QuantityKey half = book.Define(slot.Key, "bit.half", $"{name}, half the bit", new Sum([Term.From("bit", 1, bit)], Rational.Of(1, 2)));
        QuantityKey pass = book.Define(slot.Key, "pass", $"{name}, deepest pass", slot.Pass?.Stated ?? (Working)new Extreme(
            [Term.From("usual", 1, most.Length, new(OriginKind.Rule, "for a router", most.Cited)), Term.From($"half the bit ({part.Cited})", 1, half)], IsLeast: true));
        ExactLength over = book.Value(bit) - book.Value(width);
        if (over.Sign > 0)
        {
            book.Note("slot.bit-too-wide", Severity.Stop, slot.Key, $"A bit of {book.Say(book.Value(bit))} is {book.Say(over)} too wide for {name}.", $"Use one of {book.Say(book.Value(width))} or less.", (slot.Bit ?? slot.Width).Place);
            return null;
        }
        Rational down = book.Value(depth) / book.Value(pass), beside = book.Value(width) / book.Value(bit);
        if (down > MostPasses || beside > MostPasses)
        {
            book.Note("slot.too-many-passes", Severity.Stop, slot.Key, $"The {name} would take more than {MostPasses} passes.", "Look at its width and depth, at the bit and at the depth of a pass.", slot.Place);
            return null;
        }
        return (bit, (int)down.Round(Rounding.Up), (int)beside.Round(Rounding.Up));
    }

    private static void Passes(Book book, LaidTop laid, Slot slot, string name, (QuantityKey From, QuantityKey Width, QuantityKey Depth, QuantityKey Short) size, (QuantityKey Bit, int Down, int Beside) passes)
    {
        string part = laid.Parts[0], edge = TopMakeUp.Word(slot.Along);
        ImmutableArray<(string, QuantityKey)> stops = book.Value(size.Short).Sign > 0 ? [("short of each end", size.Short)] : [];
        book.Machinings.Add(new(part, $"{name} for track, along the {edge}{(stops.IsEmpty ? ", from end to end" : ", stopped at both ends")}", [($"from the {edge}", size.From), ("width", size.Width), ("depth", size.Depth), .. stops, ("bit", passes.Bit)]) { On = Face.Top, Caution = "router" });
        for (int i = 1; i <= passes.Down; i++)
        {
            // Equal bites: the last one takes no less than the others, and leaves the floor as smooth.
            QuantityKey at = i == passes.Down ? size.Depth : book.DefineSize(slot.Key, $"pass-{i}", $"{name}, depth of pass {i} of {passes.Down}", new Sum([Term.From("depth", i, size.Depth)], Rational.Of(1, passes.Down)), Rounding.Down, "down: the last pass takes what is left", Scatter.None).ToCut;
            book.Machinings.Add(new(part, $"{name}, pass {i} of {passes.Down}{(passes.Beside > 1 ? $", {passes.Beside} cuts side by side" : "")}", [("bit set to", at)]) { On = Face.Top, Caution = "router" });
        }
        for (int i = 1; i <= passes.Beside && passes.Beside > 1; i++)
        {
            QuantityKey at = book.Define(slot.Key, $"fence-{i}", $"{name}, from the {edge} to the bit at cut {i} of {passes.Beside}", new Sum(Term.From("to its nearer wall", 1, size.From),
                Term.From("width", Rational.Of(i - 1, passes.Beside - 1), size.Width), Term.From("bit", -Rational.Of(i - 1, passes.Beside - 1), passes.Bit)));
            book.Machinings.Add(new(part, $"{name}, cut {i} of {passes.Beside} side by side at each depth", [($"from the {edge} to the bit", at)]) { On = Face.Top, Caution = "router" });
        }
        string beside = passes.Beside > 1 ? $", {passes.Beside} cuts side by side at each depth, the wall nearest the {edge} first" : "";
        book.Steps.Add(new(Stage.Top, $"Rout {name} in {passes.Down} pass{(passes.Down > 1 ? "es" : "")}{beside}, along a straight guide clamped at both ends; the depths stand among the cuts and holes. Try the track in a scrap first.", [], null, "router") { On = laid.Top.Key });
    }
}
