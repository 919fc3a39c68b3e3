using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut.Joinery;
using Setout.Core.Workings;
using static Setout.Core.Measures.ExactLength;

namespace Setout.Core.SettingOut.Tops;

/// <summary>
/// A well: an opening of a top with a platform below it, so low that the table of the machine on it comes flush with the top. The height of
/// the table is read at the machine; the platform is set a little low, and shims lift the machine. Its parts wait for that reading.
/// </summary>
internal static class WellRule
{
    /// <summary>The size of the opening: given, or what the machine and the room round it come to.</summary>
    public static (ExactLength Width, ExactLength Depth) OpeningOf(Well well)
    {
        ExactLength room = TradeRules.Get("WL3").Length * 2;
        static ExactLength Of(Given? given) => given?.Value ?? Zero;
        return (well.Width?.Value ?? (well.Footprint.Across.Value + Of(well.Swing.Left) + Of(well.Swing.Right) + room),
            well.Depth?.Value ?? (well.Footprint.Along.Value + Of(well.Swing.Front) + Of(well.Swing.Back) + room));
    }

    /// <summary>Writes the opening and how to cut it, before the top is laid on.</summary>
    public static void CutOut(Book book, LaidTop laid, Well well)
    {
        (string key, string name) = (well.Key, $"well {well.Key}");
        BayWell? bay = BayWell.Of(book, laid, well);
        QuantityKey left = book.Define(key, "from-left", $"{name}, from the left end of the top", bay is null ? well.FromLeft.Stated : bay.FromLeft(book, laid)), front = book.Define(key, "from-front", $"{name}, from the front edge of the top", well.FromFront.Stated);
        QuantityKey wantsWide = Wants("across", "left to right", well.Footprint.Across, well.Swing.Left, well.Swing.Right), wantsDeep = Wants("along", "front to back", well.Footprint.Along, well.Swing.Front, well.Swing.Back);
        QuantityKey width = bay is null ? Open("width", "left to right", well.Width, wantsWide)
            : book.DefineSame(key, "width", $"{name}, its opening left to right", $"bay {bay.Bay.Key}, clear width", QuantityKey.Of(bay.Bay.Key, "width"), Combining.Narrowest), depth = Open("depth", "front to back", well.Depth, wantsDeep);
        Room("across", "left to right", width, wantsWide, well.Width);
        Room("along", "front to back", depth, wantsDeep, well.Depth);
        QuantityKey right = book.Define(key, "from-right", $"{name}, from the right end of the top", new Sum(Term.From("top, over all", 1, laid.OutLength), Term.From("from the left", -1, left), Term.From("opening", -1, width)));
        QuantityKey back = book.Define(key, "from-back", $"{name}, from the back edge of the top", new Sum(Term.From("top, over all", 1, laid.OutWidth), Term.From("from the front", -1, front), Term.From("opening", -1, depth)));
        foreach ((QuantityKey far, string word, Given at) in new[] { (right, "right end", well.FromLeft), (back, "back edge", well.FromFront) })
            if (book.Value(far).Sign < 0)
                book.Note("well.outside", Severity.Stop, key, $"The opening of {name} runs {book.Say(-book.Value(far))} past the {word} of {laid.Name}.", "Move it, make it smaller or the top larger.", at.Place);
        WellChecks.Feed(book, well, name, [("left", left, well.Feed?.Left), ("right", right, well.Feed?.Right), ("front", front, well.Feed?.Front), ("back", back, well.Feed?.Back)]);
        WellChecks.Strips(book, well, name, [("left end", left), ("right end", right), ("front edge", front), ("back edge", back)]);
        book.Machinings.Add(new(laid.Parts[0], $"opening of {name} for the {well.Machine}, through the whole top", [("from the left", left), ("from the front", front), ("width", width), ("depth", depth)]) { On = Face.Top, Caution = "cut-out" });
        book.Steps.Add(new(Stage.Top, $"Cut the opening of {name} before the top is laid on: drill its corners, saw a hair inside the lines, trim to them with a router along a guide. Support what falls out.", [], null, "cut-out") { On = laid.Top.Key });
        ExactLength x = laid.X + book.Value(left), y = laid.Y + book.Value(front), wide = book.Value(width), deep = book.Value(depth);
        book.CutOut(key, name, laid.Solid(book), new(x, y, laid.Z, wide, deep, book.Value(laid.Made.Thickness)));
        book.Show(new(left, true, laid.X, x, 0) { In = Views.Above });
        book.Show(new(width, true, x, x + wide, 0) { In = Views.Above });
        book.Show(new(front, false, laid.Y, y, 0, x) { IsDeep = true, In = Views.Above });
        book.Show(new(depth, false, y, y + deep, 0, x) { IsDeep = true });

        QuantityKey Wants(string word, string way, Given feet, Given? one, Given? other) => book.Define(key, $"machine.{word}", $"{name}, what the {well.Machine} takes {way}", new Sum([
            Term.From("footprint", 1, feet.Value, Origin.Given(feet.Place)), .. Swing(one), .. Swing(other)]));
        static ImmutableArray<Term> Swing(Given? swing) => swing is { } s ? [Term.From("what turns or travels beyond it", 1, s.Value, Origin.Given(s.Place))] : [];
        QuantityKey Open(string what, string way, Given? given, QuantityKey wants)
        {
            TradeRule room = TradeRules.Get("WL3");
            return book.Define(key, what, $"{name}, its opening {way}", given?.Stated ?? (Working)new Sum(Term.From("machine", 1, wants), Term.From("room on both sides", 2, room.Length, new(OriginKind.Rule, "to lift it in and out", room.Cited))), Combining.Narrowest);
        }
        void Room(string word, string way, QuantityKey open, QuantityKey wants, Given? given)
        {
            QuantityKey room = book.Define(key, $"room.{word}", $"{name}, room beside the machine {way}, both sides together", new Sum(Term.From("opening", 1, open), Term.From("machine", -1, wants)));
            if (book.Value(room).Sign < 0)
                book.Note("well.too-small", Severity.Stop, key, $"The {well.Machine} takes {book.Say(book.Value(wants))} {way}; the opening of {name} is {book.Say(-book.Value(room))} too small.",
                    $"Make it {book.Say(book.Value(wants))} or more, or leave its size out.", (given ?? well.FromLeft).Place);
        }
    }

    /// <summary>Writes the heights, the platform, what carries it and what is drilled in it.</summary>
    public static void Write(Book book, LaidTop laid, Well well)
    {
        (string key, string name) = (well.Key, $"well {well.Key}");
        if (book.PanelOf(well.Platform ?? laid.Top.Of, key) is not { } sheet || book.PanelOf(well.Sides ?? well.Platform ?? laid.Top.Of, key) is not { } lining) return;
        Stick? bearer = well.Bearers is { } sticks ? book.StickOf(sticks, key) : null;
        if (well.Bearers is not null && bearer is null) return;
        (QuantityKey t, QuantityKey tl) = (Book.ThicknessOf(sheet.Name), Book.ThicknessOf(lining.Name));
        QuantityKey width = QuantityKey.Of(key, "width"), depth = QuantityKey.Of(key, "depth");
        (PartSize up, QuantityKey table, QuantityKey surface) = Heights(book, laid, well, name, t);
        TradeRule slip = TradeRules.Get("WL4");
        PartSize length = book.DefineSize(key, "platform.length", $"{name} platform, left to right", new Sum(Term.From("opening", 1, width),
            Term.From("room to go in", -1, slip.Length, new(OriginKind.Rule, "both sides together", slip.Cited))), PartRole.WellPlatform);
        PartSize across = book.DefineSize(key, "platform.width", $"{name} platform, front to back", new Sum(Term.From("opening", 1, depth)), PartRole.WellPlatform);
        if (BayWell.Of(book, laid, well) is { } bay)
        {
            Between(book, laid, well, bay, name, (sheet, length, across, up, table), bearer);
            return;
        }
        ImmutableArray<Term> low = bearer is null ? [Term.From("platform, underside", -1, up.AsCut)] : [Term.From("bearers, upper edge", -1, up.AsCut), Term.From("bearers, on edge", 1, Book.SectionWidthOf(bearer.Name))];
        PartSize sideLength = book.DefineSize(key, "side.length", $"{name} side, front to back", new Sum(Term.From("opening", 1, depth)), PartRole.WellSide);
        PartSize sideHigh = book.DefineSize(key, "side.width", $"{name} side, height", new Sum([Term.From("face of the top", 1, surface), Term.From("top", -1, laid.Made.Thickness), .. low]), PartRole.WellSide);

        ExactLength x = laid.X + book.Value(QuantityKey.Of(key, "from-left")), y = laid.Y + book.Value(QuantityKey.Of(key, "from-front")), z = book.Value(up.AsCut) - book.Corner.Z;
        ExactLength open = book.Value(width), deep = book.Value(across.AsCut), long_ = book.Value(length.AsCut), thick = book.Value(tl), high = book.Value(sideHigh.AsCut), side = book.Value(sideLength.AsCut);
        ImmutableArray<QuantityKey> held = [table];
        ExactLength foot = laid.Z - high;
        WellChecks.Interrupts(book, well, name, book.Corner.Place(new(x - thick, y, Min(foot, z), open + (thick * 2), book.Value(depth), laid.Z + book.Value(laid.Made.Thickness) - Min(foot, z))), laid);
        ImmutableArray<Placement> sides = [new(x - thick, y, foot, thick, side, high), new(x + open, y, foot, thick, side, high)];
        WellChecks.Load(book, well, name, bearer is not null, [.. sides.Select(book.Corner.Place)]);
        book.Add(new($"{key}.side", $"{key}s", $"{name} side", PartRole.WellSide, lining.Name, sideLength, sideHigh, tl, 2, lining.Grain, sides, well.Place, held));
        if (bearer is not null)
        {
            PartSize reach = book.DefineSize(key, "bearer.length", $"{name} bearer, length", new Sum(Term.From("platform, as cut", 1, across.AsCut)), PartRole.WellBearer);
            ExactLength b = book.Value(Book.ThicknessOf(bearer.Name)), bw = book.Value(Book.SectionWidthOf(bearer.Name)), bl = book.Value(reach.AsCut);
            book.Add(new($"{key}.bearer", $"{key}b", $"{name} bearer", PartRole.WellBearer, bearer.Name, reach, Book.Uncut(Book.SectionWidthOf(bearer.Name)), Book.ThicknessOf(bearer.Name), 2, Grain.Keep,
                [new(x, y, z - bw, b, bl, bw), new(x + open - b, y, z - bw, b, bl, bw)], well.Place, held));
            book.Joints.Add(new(JointKind.Butt, $"{key}.bearer", Face.Outside, $"{key}.side", Face.Inside, "glue and screws"));
            if (Fastening.IntoFace(book.Piece.Unit, thick, b) is { } screw)
                book.Hardware.Add(new(key, $"Structural wood screw, {book.Say(screw)}", 4 * Fastening.ScrewsAlong(bl), "piece", $"2 bearers, in pairs through the sides, stopping inside them: {Fastening.SpacingWords}"));
            else
                book.Note("well.no-screw", Severity.Warn, key, $"No usual screw goes through the sides of {name}, {book.Say(thick)}, and holds in bearers {book.Say(b)} thick.", "Use thicker bearers, or bolt them through.", well.Bearers!.Value.Place);
        }
        book.Add(new($"{key}.platform", $"{key}p", $"{name} platform", PartRole.WellPlatform, sheet.Name, length, across, t, 1, sheet.Grain,
            [new(x + ((open - long_) / 2), y, z, long_, deep, book.Value(t))], well.Place, held));
        book.Joints.Add(new(JointKind.Butt, $"{key}.side", Face.Top, laid.Parts[^1], Face.Bottom, "screws, and what stands beside it"));
        book.Joints.Add(new(JointKind.Butt, $"{key}.platform", Face.Bottom, bearer is null ? $"{key}.side" : $"{key}.bearer", Face.Top, "screws"));
        WellFittings.Write(book, well, name, length, across, bearer is null ? null : Book.ThicknessOf(bearer.Name));
        Step(book, well, name, up, table, bearer is not null);
    }

    /// <summary>A platform between the posts of a bay: no sides, bearers on the posts.</summary>
    private static void Between(Book book, LaidTop laid, Well well, BayWell bay, string name, (Panel Sheet, PartSize Length, PartSize Across, PartSize Up, QuantityKey Table) flat, Stick? bearer)
    {
        string key = well.Key;
        if (bearer is null)
        {
            book.Note("well.no-bearers", Severity.Stop, key, $"Nothing carries the platform of {name} in bay {bay.Bay.Key}.", "Name the sticks of its bearers, as in 'bearers: NAME'.", well.Place);
            return;
        }
        QuantityKey t = Book.ThicknessOf(flat.Sheet.Name);
        ExactLength x = laid.X + book.Value(QuantityKey.Of(key, "from-left")), y = laid.Y + book.Value(QuantityKey.Of(key, "from-front")), z = book.Value(flat.Up.AsCut) - book.Corner.Z;
        ExactLength open = book.Value(QuantityKey.Of(key, "width")), deep = book.Value(flat.Across.AsCut), long_ = book.Value(flat.Length.AsCut), low = z - book.Value(Book.SectionWidthOf(bearer.Name));
        WellChecks.Interrupts(book, well, name, book.Corner.Place(new(x, y, low, open, book.Value(QuantityKey.Of(key, "depth")), laid.Z + book.Value(laid.Made.Thickness) - low)), laid);
        ImmutableArray<QuantityKey> held = [flat.Table];
        WellChecks.Heavy(book, well, name);
        bay.Bearers(book, well, name, bearer, x, open, z, held);
        book.Add(new($"{key}.platform", $"{key}p", $"{name} platform", PartRole.WellPlatform, flat.Sheet.Name, flat.Length, flat.Across, t, 1, flat.Sheet.Grain,
            [new(x + ((open - long_) / 2), y, z, long_, deep, book.Value(t))], well.Place, held));
        book.Joints.Add(new(JointKind.Butt, $"{key}.platform", Face.Bottom, $"{key}.bearer", Face.Top, "screws"));
        WellFittings.Write(book, well, name, flat.Length, flat.Across, Book.ThicknessOf(bearer.Name));
        bay.Steps(book, well, Capital(name), flat.Up, flat.Table);
        LiftIn(book, well, name);
    }

    /// <summary>The sum of heights: face of the top, less the machine, less what it is set low; the bearers set out on the grid, downwards.</summary>
    private static (PartSize Up, QuantityKey Table, QuantityKey Surface) Heights(Book book, LaidTop laid, Well well, string name, QuantityKey t)
    {
        string key = well.Key;
        TradeRule low = TradeRules.Get("WL1"), flush = TradeRules.Get("WL2");
        QuantityKey table = book.Define(key, "table-height", $"{name}, height of the table of the {well.Machine} above its feet", well.TableHeight.Stated, scatter: Scatter.Bought);
        QuantityKey surface = book.Define(key, "surface", $"{name}, face of the top above the floor", new Sum([.. Standing.Start(book, laid.Structure.Key, "up", "from the floor"),
            Term.From("structure, as built", 1, Built.Height(laid.Structure)), Term.From("top", 1, laid.Made.Thickness)]));
        QuantityKey set = book.Define(key, "set-low", $"{name}, platform set lower than flush", well.SetLow?.Stated ?? new Stated(low.Length, new(OriginKind.Rule, "shims lift it, nothing lowers it", low.Cited)));
        QuantityKey high = book.Define(key, "platform.height", $"{name}, upper face of the platform above the floor",
            new Sum(Term.From("face of the top", 1, surface), Term.From("table of the machine above its feet", -1, table), Term.From("set low", -1, set)));
        PartSize up = book.DefineSize(key, "bearers.up", $"{name}, floor to the underside of the platform", new Sum(Term.From("upper face of the platform", 1, high), Term.From("platform", -1, t)), Rounding.Down, "down: shims lift it, nothing lowers it", Scatter.Placed);
        book.Fixings.Add(new(up.ToCut, [$"{key}.platform"]));
        // What is measured over the opening with a straightedge: it leaves the floor, and all below the top, out of account.
        QuantityKey drop = book.Define(key, "drop", $"{name}, from the face of the top down to the platform", new Sum(Term.From("face of the top", 1, surface), Term.From("underside of the platform, as set", -1, up.AsCut), Term.From("platform", -1, t)));
        QuantityKey packing = book.Define(key, "packing", $"{name}, shims under the machine", new Stated(Zero, new(OriginKind.Rule, "none until they are put in")));
        bool stands = book.IsRead(drop) || book.IsRead(packing);
        QuantityKey below = book.Define(key, "flush", $"{name}, table of the machine below the top", new Sum([Term.From("face of the top down to the platform", 1, drop), Term.From("table of the machine above its feet", -1, table), .. book.IsRead(packing) ? [Term.From("shims", -1, packing)] : ImmutableArray<Term>.Empty]));
        book.Gaps.Add(stands
            ? new(below, $"{name}, table flush with the top", -flush.Length, flush.Length, $"either way: {flush.Cited}")
            : new(below, $"{name}, table below the top before it is shimmed", Zero, book.Value(set) * 2, "not above it, and no lower than twice what it is set low: common practice, no source"));
        if (book.Value(high) - book.Value(t) <= Zero)
            book.Note("well.too-low", Severity.Stop, key, $"The platform of {name} would lie {book.Say(book.Value(t) - book.Value(high))} under the floor.", "Stand the machine on the floor, or make the structure higher.", well.TableHeight.Place);
        book.Show(new(high, false, -book.Corner.Z, book.Value(high) - book.Corner.Z, 1, laid.X + book.Value(QuantityKey.Of(key, "from-left"))));
        return (up, table, surface);
    }

    private static void Step(Book book, Well well, string name, PartSize up, QuantityKey table, bool hasBearers)
    {
        string key = well.Key;
        book.Steps.Add(new(Stage.Top, $"{Capital(name)}: stand the {well.Machine}{(well.Load == 0 ? "" : $"{WellChecks.WhichWeighs(book, well)},")} on a flat floor and measure from its feet to its table at four corners{book.Enter(table, "HEIGHT")}. Platform, sides{(hasBearers ? " and bearers" : "")} wait for it.", [], null, ""));
        book.Steps.Add(new(Stage.Top, $"{Capital(name)}: {(hasBearers ? $"glue and screw the bearers to the sides, lower edges flush; " : "")}hang the sides under the opening, flush with its edges, and screw them to whatever stands beside them. The underside of the platform comes {book.Say(book.Value(up.ToCut))} above the floor. Screw it down, then measure from a straightedge over the opening down to it, {book.Say(book.Value(QuantityKey.Of(key, "drop")))}{book.Enter(QuantityKey.Of(key, "drop"), "HEIGHT")}.",
            [$"{key}.side", .. hasBearers ? [$"{key}.bearer"] : ImmutableArray<string>.Empty, $"{key}.platform"], null, "screws"));
        LiftIn(book, well, name);
    }

    private static void LiftIn(Book book, Well well, string name)
    {
        string key = well.Key, hands = WellChecks.IsForOne(book, well) ? "lift it in"
            : WellChecks.IsForMore(book, well) ? $"it weighs {WellChecks.Weight(book, well)}: bring it in with a hoist, a lift table or as many hands as it takes, never with two" : "two people lift it in";
        book.Steps.Add(new(Stage.Top, $"{Capital(name)}: unplug the {well.Machine}, {hands}. Lay a straightedge from the top over its table and shim under its feet until it lies flush, about {book.Say(book.Value(QuantityKey.Of(key, "flush")))}; {book.Hand.Fit} picks the shims. Then bolt it down and look again.", [], null, "lift"));
    }

    private static string Capital(string words) => char.ToUpperInvariant(words[0]) + words[1..];
}
