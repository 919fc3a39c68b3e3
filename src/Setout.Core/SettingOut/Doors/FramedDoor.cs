using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut.Joinery;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut.Doors;

/// <summary>
/// A door of stiles and rails with a panel in a groove all round. Stiles run through; rails are tenoned between them; the panel is loose, with
/// play for what it moves where it is solid.
/// </summary>
internal static class FramedDoor
{
    /// <summary>What is alike in all doors of a kind: one setting of the saw or the plane.</summary>
    /// <param name="Groove">Depth of the groove.</param>
    /// <param name="Tenon">Length of the tenons.</param>
    private sealed record Setting(PartSize Groove, PartSize Tenon);

    public static MadeDoor? Write(Book book, DoorKind kind, FramedPanel framed, DoorSpot spot)
    {
        (string key, string name) = (spot.Key, spot.Name);
        Named top = framed.Rails ?? framed.Stiles, bottom = framed.BottomRail ?? top;
        if (book.StickOf(framed.Stiles, key) is not { } stiles || book.StickOf(top, key) is not { } rails || book.StickOf(bottom, key) is not { } lower || book.PanelOf(framed.Panel, key) is not { } panel) return null;
        QuantityKey stileWidth = Book.SectionWidthOf(stiles.Name), railWidth = Book.SectionWidthOf(rails.Name), lowerWidth = Book.SectionWidthOf(lower.Name), t = Book.ThicknessOf(stiles.Name);
        Setting setting = SettingOf(book, kind, framed);
        (Rounding way, string why) = spot.Landing;
        PartSize stile = book.DefineSize($"{key}.stile", "length", $"{name} stile, length", spot.Height, way, why);
        (Rounding acrossWay, string acrossWhy) = spot.AcrossLanding;
        QuantityKey aim = book.Define(key, "width", $"{name}, width to aim for", spot.Width);
        var railSum = new Sum(Term.From("door width", 1, aim), Term.From("stiles", -2, stileWidth), Term.From("tenons", 2, setting.Tenon.ToCut));
        PartSize rail = book.DefineSize($"{key}.rail", "length", $"{name} rail, length with its tenons", railSum, acrossWay, acrossWhy);
        QuantityKey shoulders = book.Define(key, "shoulders", $"{name}, rail between its shoulders", new Sum(Term.From("rail, as cut", 1, rail.AsCut), Term.From("tenons, as cut", -2, setting.Tenon.AsCut)));
        QuantityKey clear = book.Define(key, "between-rails", $"{name}, clear height between its rails",
            new Sum(Term.From("stile, as cut", 1, stile.AsCut), Term.From("top rail", -1, railWidth), Term.From("bottom rail", -1, lowerWidth)));
        QuantityKey built = book.Define(key, "built-width", $"{name}, width as made", new Sum(Term.From("between the shoulders", 1, shoulders), Term.From("stiles", 2, stileWidth)), Combining.Widest);
        if (book.Value(shoulders).Sign <= 0 || book.Value(clear).Sign <= 0)
        {
            bool isAcross = book.Value(shoulders).Sign <= 0;
            book.Note("door.no-panel", Severity.Stop, key, $"{(isAcross ? "The stiles" : "The rails")} of {name} leave nothing between them: {book.Say(book.Value(isAcross ? shoulders : clear))}.",
                $"Use narrower sticks, {(isAcross ? "one door instead of a pair" : "a higher opening")}, or a door of one sheet.", spot.Place);
            return null;
        }
        (PartSize long_, PartSize across, QuantityKey tp) = DoorPanels.Size(book, kind, framed, panel, spot, setting.Groove, clear, shoulders);

        ExactLength ws = book.Value(stileWidth), wr = book.Value(railWidth), wl = book.Value(lowerWidth), thick = book.Value(t), high = book.Value(stile.AsCut), tenon = book.Value(setting.Tenon.AsCut);
        ExactLength wide = book.Value(shoulders), length = book.Value(rail.AsCut), x = spot.X, y = spot.Y, z = spot.Z;
        book.Add(new($"{key}.stile", $"{key}s", $"{name} stile", PartRole.DoorStile, stiles.Name, stile, Book.Uncut(stileWidth), t, 2, Grain.Keep,
            [new(x, y, z, ws, thick, high), new(x + ws + wide, y, z, ws, thick, high)], spot.Place, spot.Held));
        Placement above = new(x + ws - tenon, y, z + high - wr, length, book.Value(Book.ThicknessOf(rails.Name)), wr), below = new(x + ws - tenon, y, z, length, book.Value(Book.ThicknessOf(lower.Name)), wl);
        bool alike = rails.Name == lower.Name;
        book.Add(new($"{key}.rail", $"{key}r", alike ? $"{name} rail" : $"{name} top rail", PartRole.DoorRail, rails.Name, rail, Book.Uncut(railWidth), Book.ThicknessOf(rails.Name), alike ? 2 : 1, Grain.Keep,
            alike ? [above, below] : [above], spot.Place, spot.Held));
        ImmutableArray<string> railKeys = alike ? [$"{key}.rail"] : [$"{key}.rail", $"{key}.bottom-rail"];
        if (!alike)
        {
            PartSize low = book.DefineSize($"{key}.bottom-rail", "length", $"{name} bottom rail, length with its tenons", railSum, acrossWay, acrossWhy);
            book.Add(new($"{key}.bottom-rail", $"{key}b", $"{name} bottom rail", PartRole.DoorRail, lower.Name, low, Book.Uncut(lowerWidth), Book.ThicknessOf(lower.Name), 1, Grain.Keep,
                [below with { SizeX = book.Value(low.AsCut) }], spot.Place, spot.Held));
        }
        ExactLength pw = book.Value(across.AsCut), ph = book.Value(long_.AsCut), thin = book.Value(tp);
        book.Add(new($"{key}.panel", $"{key}p", $"{name} panel", PartRole.DoorPanel, panel.Name, long_, across, tp, 1, panel.Grain,
            [new(x + ws + ((wide - pw) / 2), y + ((thick - thin) / 2), z + wl + ((book.Value(clear) - ph) / 2), pw, thin, ph)], spot.Place, spot.Held));
        book.Show(new(stile.AsCut, false, z, z + high, 0, x));
        Work(book, kind, spot, setting, railKeys, tp, [("top", railWidth), ("bottom", lowerWidth)]);
        Check(book, kind, framed, spot, [stiles, rails, lower], setting, tp);
        book.Steps.Add(new(Stage.Doors, $"Door {key}: groove the inner edges of stiles and rails, cut the tenons{(HasMortises(book, setting) ? " and chop their mortises" : "")}, and put it together dry with the panel in. Glue the rails into one stile, slide the panel in without glue and close the frame with the other stile: it cannot go in later. Clamp, measure both diagonals and pull it square by the longer one before the glue sets.",
            [$"{key}.stile", .. railKeys, $"{key}.panel"], Diagonals.Of(book.Grid, book.Value(built), high), "narrow")
        { On = key });
        book.Units.Add(new(key, name, UnitKind.Door));
        return new(built, stile.AsCut, t, $"{key}.stile", new(Term.From("stile", 1, stileWidth), Term.From("groove", -1, setting.Groove.ToCut))) { Stile = stileWidth };
    }

    private static Setting SettingOf(Book book, DoorKind kind, FramedPanel framed)
    {
        QuantityKey groove = QuantityKey.Of(kind.Name, "groove.depth"), tenon = QuantityKey.Of(kind.Name, "tenon.length");
        if (book.Knows(groove)) return new(new(groove, groove.ToCut, groove.AsCut), new(tenon, tenon.ToCut, tenon.AsCut));
        TradeRule usual = TradeRules.Get("DO2");
        PartSize depth = book.DefineSize(kind.Name, "groove.depth", $"doors of {kind.Name}, groove depth", framed.Groove?.Stated ?? new Stated(usual.Length, new(OriginKind.Rule, "usual in a door", usual.Cited)), Rounding.Nearest, "to the nearest step");
        Working length = framed.Tenon?.Stated ?? (Working)new Sum(Term.From("groove, to cut: a stub tenon fills it", 1, depth.ToCut));
        return new(depth, book.DefineSize(kind.Name, "tenon.length", $"doors of {kind.Name}, tenon length", length, Rounding.Nearest, "to the nearest step"));
    }

    private static bool HasMortises(Book book, Setting setting) => book.Value(setting.Tenon.ToCut) > book.Value(setting.Groove.ToCut);

    private static void Work(Book book, DoorKind kind, DoorSpot spot, Setting setting, ImmutableArray<string> rails, QuantityKey panelThickness, ImmutableArray<(string Where, QuantityKey Width)> ends)
    {
        string key = spot.Key;
        QuantityKey wide = book.DefineSame(key, "groove.width", $"{spot.Name}, groove width", "panel, as read", panelThickness);
        foreach (string part in rails.Prepend($"{key}.stile"))
        {
            book.Machinings.Add(new(part, $"Groove along the inner edge for the panel, in the middle of the thickness, whole length", [("depth", setting.Groove.ToCut), ("width", wide)]) { By = [$"{key}.panel"], IsWholeLength = true });
            book.Joints.Add(new(JointKind.Groove, $"{key}.panel", Face.AllEdges, part, Face.Inside, "no glue") { Depth = setting.Groove.ToCut, IsLoose = true });
        }
        foreach (string rail in rails)
        {
            book.Machinings.Add(new(rail, "Tenon on both ends, in line with the groove and as thick", [("length", setting.Tenon.ToCut), ("thickness", wide), ("between shoulders", QuantityKey.Of(key, "shoulders"))]) { On = Face.Ends });
            book.Joints.Add(new(JointKind.Tenon, rail, Face.Ends, $"{key}.stile", Face.Inside, "glue") { Depth = setting.Tenon.ToCut, Thick = wide });
        }
        if (!HasMortises(book, setting)) return;
        TenonSet set = TenonRule.Of(book, kind.Name, "tenon.", $"doors of {kind.Name}", setting.Tenon, wide, fillsGroove: true);
        foreach (string rail in rails)
            book.Machinings.Add(new(rail, "Cut the tenons away at the outer edge, down to a haunch that fills the groove", [("from the outer edge", set.Shoulder), ("haunch", setting.Groove.ToCut)]) { On = Face.Ends });
        foreach ((string where, QuantityKey width) in ends)
        {
            // Each tenon loses the groove at its inner edge, and at the outer one what stays of the stile, where a haunch fills the groove.
            QuantityKey length = TenonRule.MortiseLength(book, key, $"mortise-{where}", $"{spot.Name} {where} rail", set, width, [Term.From("groove", -1, setting.Groove.ToCut), Term.From("end of the stile", -1, set.Shoulder)], spot.Place);
            book.Machinings.Add(new($"{key}.stile", $"Mortise in the groove for the {where} rail", [("depth from the edge", set.Mortise), ("width", wide), ("length", length), ("from the end", set.Shoulder)]) { By = rails });
        }
    }

    private static void Check(Book book, DoorKind kind, FramedPanel framed, DoorSpot spot, Stick[] sticks, Setting setting, QuantityKey panel)
    {
        ExactLength thick = book.Value(Book.ThicknessOf(sticks[0].Name)), stile = book.Value(Book.SectionWidthOf(sticks[0].Name)), tenon = book.Value(setting.Tenon.ToCut), groove = book.Value(setting.Groove.ToCut), thin = book.Value(panel);
        if (sticks.FirstOrDefault(s => book.Value(Book.ThicknessOf(s.Name)) != thick && !book.IsRead(Book.ThicknessOf(s.Name)) && !book.IsRead(Book.ThicknessOf(sticks[0].Name))) is { } other)
            book.NoteOnce("door.frame-two-thicknesses", Severity.Warn, spot.Key, $"{sticks[0].Name} is {book.Say(thick)} thick and {other.Name} {book.Say(book.Value(Book.ThicknessOf(other.Name)))}: the frame does not come out flush.", "Use sticks of one thickness for stiles and rails.", framed.Rails?.Place ?? framed.Stiles.Place);
        TenonRule.Check(book, spot.Key, setting.Tenon.ToCut, framed.Tenon?.Place ?? kind.Place, new TenonLimit("door.tenon-too-long", Severity.Stop, stile, $"comes out of stiles {book.Say(stile)} wide"));
        if (tenon < groove)
            book.NoteOnce("door.tenon-short", Severity.Warn, spot.Key, $"Tenons of {book.Say(tenon)} leave {book.Say(groove - tenon)} of the groove open at the ends of the stiles.", $"Make them {book.Say(groove)} or longer.", framed.Tenon?.Place ?? kind.Place);
        ExactLength narrow = sticks.Min(s => book.Value(Book.SectionWidthOf(s.Name)));
        if (groove * 2 > narrow)
            book.NoteOnce("door.groove-too-deep", groove >= narrow ? Severity.Stop : Severity.Warn, spot.Key, $"A groove of {book.Say(groove)} {(groove >= narrow ? "goes through" : $"leaves {book.Say(narrow - groove)} of")} sticks {book.Say(narrow)} wide.",
                $"Make it {book.SayAtMost(narrow / 2)} deep or less. (common practice, no source)", framed.Groove?.Place ?? kind.Place);
        TradeRule cheek = TradeRules.Get("DO4");
        ExactLength beside = (thick - thin) / 2;
        if (beside < cheek.Length && !book.IsUnknown(framed.Panel.Text))
            book.NoteOnce("door.groove-too-wide", Severity.Warn, spot.Key, $"A groove of {book.Say(thin)} in a frame {book.Say(thick)} thick leaves {book.Say(beside)} on each side.",
                $"Leave {book.Say(cheek.Length)} or more: use a thinner panel, rabbet its edges to a tongue and name a sheet of that thickness, or use thicker sticks. ({cheek.Cited})", framed.Panel.Place);
    }
}
