using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut.Joinery;
using Setout.Core.Workings;
using static Setout.Core.Measures.ExactLength;

namespace Setout.Core.SettingOut.Cases;

/// <summary>
/// What a case stands on: a toe kick inside it, a base of its own, or bought feet. A base and feet lift the case; a toe kick is within its height.
/// Heights and setbacks: common practice, no source.
/// </summary>
internal static class FootRule
{
    /// <summary>How far a base or feet lift the case; null for neither. Written before the case has its place.</summary>
    public static QuantityKey? Lift(Book book, Case described)
    {
        string key = described.Key, name = Standing.NameOf(book, described, "case");
        (Place Place, string Word)[] stands = [.. described.Toe is { } toe ? [(toe.Place, "a toe kick")] : Array.Empty<(Place, string)>(), .. described.Base is { } own ? [(own.Place, "a base")] : Array.Empty<(Place, string)>(),
            .. described.Feet is { } under ? [(under.Place, Word(under.Kind))] : Array.Empty<(Place, string)>()];
        if (stands.Length > 1)
            book.Note("case.two-feet", described is { Base: not null, Feet: not null } ? Severity.Stop : Severity.Warn, key, $"{name} has {string.Join(" and ", stands.Select(s => s.Word))}.", "Keep one of them.", stands[^1].Place);
        if (described.Base is { } bottom)
        {
            if (book.PanelOf(bottom.Of, key) is not { } panel) return null;
            PartSize board = book.DefineSize(key, "base.height", $"{name} base, height", Usual.Or(book, bottom.Height, "TK1", "usual height"), Rounding.Nearest, "to the nearest step");
            return book.DefineSame(key, "lift", $"{name}, lifted by its base", "base, as cut", board.AsCut);
        }
        return described.Feet is { } bought ? book.Define(key, "lift", $"{name}, lifted by its {Word(bought.Kind)}", bought.Height.Stated, scatter: Scatter.Bought) : null;
    }

    /// <summary>From the floor to the underside of the bottom of a case with a toe kick; null for none.</summary>
    public static QuantityKey? Raise(Book book, Case described, string name) =>
        described.Toe is { } toe ? book.Define(described.Key, "toe.height", $"{name}, floor to the underside of its bottom", Usual.Or(book, toe.Height, "TK1", "usual height")) : null;

    /// <summary>Writes what is under the case. Places are measured from its own lower corner.</summary>
    public static void Write(Book book, CaseShape shape, PartSize deckLength, PartSize sideWidth, QuantityKey clearWidth, ExactLength w, ExactLength d, ExactLength front)
    {
        Case described = shape.Described;
        if (described.Toe is { } toe && shape.Raise is { } raise) Kick(book, shape, toe, raise, clearWidth, w, d, front);
        if (described.Base is { } bottom && book.Piece.Materials.GetValueOrDefault(bottom.Of.Text) is Panel panel) Base(book, shape, bottom, panel, deckLength, sideWidth, d, front);
        if (described.Feet is { } feet) Feet(book, shape, feet, w);
    }

    private static void Kick(Book book, CaseShape shape, Toe toe, QuantityKey raise, QuantityKey clearWidth, ExactLength w, ExactLength d, ExactLength front)
    {
        string key = shape.Key, name = shape.Name;
        if (book.PanelOf(toe.Of ?? shape.Described.Of, key) is not { } panel) return;
        QuantityKey setback = book.Define(key, "toe.setback", $"{name}, toe kick behind the front edges of the sides", Usual.Or(book, toe.Setback, "TK2", "usual setback"));
        PartSize length = book.DefineSize(key, "kick.length", $"{name} kick board, length", new Sum(Term.From("clear between the sides", 1, clearWidth)), Rounding.Down, "down: it must go between");
        PartSize high = book.DefineSize(key, "kick.width", $"{name} kick board, height", new Sum(Term.From("floor to the underside of the bottom", 1, raise)), Rounding.Down, "down: it must not lift the bottom");
        ExactLength t = book.Value(Book.ThicknessOf(panel.Name)), back = book.Value(setback), long_ = book.Value(length.AsCut), up = book.Value(high.AsCut);
        book.Add(new($"{key}.kick", $"{key}k", $"{name} kick board", PartRole.Kick, panel.Name, length, high, Book.ThicknessOf(panel.Name), 1, panel.Grain,
            [new((w - long_) / 2, front + back, book.Value(raise) - up, long_, t, up)], shape.Described.Place));
        // A board flush with the sides leaves no room for toes, and takes no notch.
        if (back.Sign > 0) book.Machinings.Add(new(shape.Side, "Notch at the lower front corner for the toes", [("high", raise), ("deep", setback)]) { On = Face.FrontEdge });
        if (back.Sign > 0) book.CutOut(key, $"{name}, notch for the toes", [shape.Side], new(Zero, front, Zero, w, back, book.Value(raise)));
        book.Show(new(raise, false, Zero, book.Value(raise), 0) { In = Views.Right });
        book.Show(new(setback, false, front, front + back, 0) { IsDeep = true, In = Views.Right });
        book.Joints.Add(new(JointKind.Butt, $"{key}.kick", Face.Ends, shape.Side, Face.Inside, "glue and pocket screws from behind"));
        (string pocket, string source) = Fastening.PocketScrew(book, t);
        Fastening.CheckPocket(book, key, $"{name} kick board", t, (toe.Of ?? shape.Described.Of).Place);
        book.Hardware.Add(new(key, pocket, 4, "piece", $"kick board, 2 an end; {source}"));
        book.Steps.Add(new(Stage.Carcase, $"Glue and screw the kick board of {shape.The} between the sides, its face flush with the {(back.Sign > 0 ? "notches" : "front edges")}, tight under the bottom.", [$"{key}.kick"], null, "screws"));
        // A back in rabbets comes down before it.
        ExactLength room = d + book.Value(new Sum([Term.From("side", 1, Zero, new(OriginKind.Worked, "nothing")), .. BackRule.OffDecks(shape)]));
        if (back + t > room)
            book.Note("case.toe-too-deep", Severity.Stop, key, $"A toe kick {book.Say(back)} behind the front does not go under {name}, {book.Say(room)} deep.", room > t ? $"Set it back by {book.SayAtMost(room - t)} at most." : $"Make the case {book.SayAtLeast(back + t - room)} deeper.", toe.Setback?.Place ?? toe.Place);
        Level(book, shape, $"Stand {shape.The} in its place: level it with shims under the sides, beginning from the highest point of the floor, and cut them flush.");
    }

    private static void Base(Book book, CaseShape shape, Base bottom, Panel panel, PartSize deckLength, PartSize sideWidth, ExactLength d, ExactLength front)
    {
        string key = shape.Key, name = $"{shape.Name} base";
        QuantityKey t = Book.ThicknessOf(panel.Name), setback = book.Define(key, "base.setback", $"{name}, front behind the front edges of the sides", Usual.Or(book, bottom.Setback, "TK2", "usual setback"));
        QuantityKey height = QuantityKey.Of(key, "base.height");
        PartSize high = new(height, height.ToCut, height.AsCut);
        PartSize length = book.DefineSize(key, "base.length", $"{name} front and back, length", new Sum(shape.Outside(book, deckLength)), Rounding.Down, "down: it must stay under the case");
        PartSize cross = book.DefineSize(key, "base.cross", $"{name} ends, length", new Sum(Term.From("side, as cut", 1, sideWidth.Made), Term.From("front behind the edges", -1, setback),
            Term.From("front and back", -2, t)), Rounding.Down, "down: it must stay under the case");
        ExactLength tv = book.Value(t), up = book.Value(high.AsCut), wide = book.Value(length.AsCut), deep = book.Value(cross.AsCut), y = front + book.Value(setback);
        if (up.Sign <= 0)
        {
            book.Note("case.toe-too-low", Severity.Stop, key, $"The base of {shape.Name} comes out {book.Say(up)} high on a grid of {book.Say(book.Grid.Step)}.", $"Make it {book.Say(book.Grid.Step)} high or more, or leave it out.", bottom.Height?.Place ?? bottom.Place);
            return;
        }
        if (wide < tv * 2)
        {
            book.Note("case.base-no-width", Severity.Stop, key, $"Two ends of {book.Say(tv)} do not go under {shape.Name}, {book.Say(wide)} wide.", $"Use stock thinner than {book.Say(wide / 2)} for the base, or make the case {book.SayAtLeast((tv * 2) - wide)} wider.", bottom.Of.Place);
            return;
        }
        int ends = 2 + (int)((wide - tv) / Usual.Length(book, "BS1")).Round(Rounding.Up) - 1;
        if (deep.Sign <= 0)
        {
            book.Note("case.toe-too-deep", Severity.Stop, key, $"A base {book.Say(book.Value(setback))} behind the front has no depth left under {shape.Name}.", $"Set it back by less than {book.Say(d - (tv * 2))}.", bottom.Setback?.Place ?? bottom.Place);
            return;
        }
        book.Add(new($"{key}.base", $"{key}q", $"{name} front and back", PartRole.Kick, panel.Name, length, high, t, 2, panel.Grain,
            [new(Zero, y, -up, wide, tv, up), new(Zero, y + tv + deep, -up, wide, tv, up)], bottom.Place));
        book.Add(new($"{key}.base-end", $"{key}qe", $"{name} ends and cross pieces", PartRole.Kick, panel.Name, cross, high, t, ends, panel.Grain,
            [.. Enumerable.Range(0, ends).Select(i => new Placement((wide - tv) * Rational.Of(i, ends - 1), y + tv, -up, tv, deep, up))], bottom.Place));
        book.Show(new(height.AsCut, false, -up, Zero, 0) { In = Views.Right });
        book.Show(new(setback, false, front, y, 0) { IsDeep = true, In = Views.Right });
        book.Joints.Add(new(JointKind.Butt, $"{key}.base-end", Face.Ends, $"{key}.base", Face.Inside, "glue and screws through front and back"));
        book.Joints.Add(new(JointKind.Butt, $"{key}.base", Face.Top, shape.Deck, Face.Outside, "screws through the bottom"));
        int screws = 4 * ends;
        Fastening.CheckEdge(book, key, name, tv, bottom.Of.Place);
        book.Hardware.Add(new(key, Fastening.PanelScrew(book, panel, tv), screws, "piece", $"base: {ends} ends and cross pieces, 2 at each end; common practice, no source"));
        book.Hardware.Add(new(key, Fastening.PanelScrew(book, panel, book.Value(shape.Thickness)), 2 * ends, "piece", "through the bottom into the base; common practice, no source"));
        book.Steps.Add(new(Stage.Carcase, $"Screw up the base of {shape.The}: ends and cross pieces between front and back, upper edges flush. Measure both diagonals.", [$"{key}.base", $"{key}.base-end"], Diagonals.Of(book.Grid, wide, deep + (tv * 2)), "screws") { On = $"{key}.base" });
        book.Units.Add(new($"{key}.base", name, UnitKind.Base));
        Level(book, shape, $"Level the base of {shape.The} by itself in its place: shims under it from the highest point of the floor, then cut flush. Set {shape.The} on it, flush at the back, and screw it down through the bottom.", $"{key}.base");
    }

    private static void Feet(Book book, CaseShape shape, Feet feet, ExactLength w)
    {
        int rows = 1 + Math.Max(1, (int)(w / Usual.Length(book, "BS1")).Round(Rounding.Up));
        string word = Word(feet.Kind);
        book.Hardware.Add(new(shape.Key, feet.Kind switch
        {
            FootKind.Castors => $"Castor, {book.Say(feet.Height.Value)} high with its plate",
            FootKind.Levellers => $"Levelling foot, {book.Say(feet.Height.Value)} high",
            _ => $"Foot, {book.Say(feet.Height.Value)} high",
        }, 2 * rows, "piece", $"{rows} at the front and {rows} at the back; each carries its share of the loaded case; common practice, no source"));
        book.Steps.Add(new(Stage.Carcase, $"Fix the {word} under the bottom of {shape.The}, near the sides so that they carry straight down.", [], null, ""));
        if (feet.Kind == FootKind.Levellers) Level(book, shape, $"Stand {shape.The} in its place and turn its levellers, beginning from the highest point of the floor, until it is level both ways and none hangs free.");
        else if (feet.Kind == FootKind.Feet) Level(book, shape, $"Stand {shape.The} in its place and put shims under its feet, beginning from the highest point of the floor, until it is level both ways.");
    }

    // Levelled before a top holds it to its neighbours, and before it is anchored.
    private static void Level(Book book, CaseShape shape, string words, params ImmutableArray<string> under) =>
        book.Steps.Add(new(Stage.Top, words, [], null, "lift") { On = "", Whole = [.. under, shape.Key] });

    private static string Word(FootKind kind) => kind switch
    {
        FootKind.Castors => "castors",
        FootKind.Levellers => "levellers",
        _ => "feet",
    };
}
