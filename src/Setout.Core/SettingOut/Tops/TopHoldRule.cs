using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut.Joinery;
using Setout.Core.Workings;
using static Setout.Core.Measures.ExactLength;

namespace Setout.Core.SettingOut.Tops;

/// <summary>
/// What holds a top down. One of sheet goods is screwed from below; one of solid wood moves across its grain, from front to back, and is held so that it can:
/// by screws in slots, by buttons in a groove, or by clips. Screwed hard it splits, and a finding says so.
/// </summary>
internal static class TopHoldRule
{
    /// <summary>What a top moves more than what carries it, and how long slots are for that.</summary>
    private sealed record SlotLength(QuantityKey Moves, QuantityKey Slot);

    /// <summary>What holds it down; no screw reaches what is cut into it from above.</summary>
    public static void Write(Book book, LaidTop laid, ImmutableArray<Structure> under, ExactLength deepest)
    {
        (Top top, string name) = (laid.Top, laid.Name);
        string lowest = laid.Parts[^1];
        (TopHold hold, SlotLength? slot) = Held(book, laid, under);
        foreach (Structure carrier in under) book.Joints.Add(new(JointKind.Butt, lowest, Face.Bottom, carrier.Key, Face.Top, HeldWords(hold)) { IsLoose = hold != TopHold.Screws });
        ExactLength thick = book.Value(laid.Made.Thickness) - deepest;
        string shorter = deepest.Sign > 0 ? $"what its slots leave, {book.Say(thick)}" : "the top", below = deepest.Sign > 0 ? "below its slots" : "inside the top";
        var ways = new List<string>();
        // Each way of carrying it has screws of its own: those for a thick rail would come out above a thin one.
        foreach (IGrouping<Carrying, Structure> alike in under.GroupBy(s => CarryingOf(book, s)))
        {
            (string what, ExactLength? through) = alike.Key;
            string where = under.Length == alike.Count() ? what : $"{what} of {string.Join(" and ", alike.Select(s => s.Key))}";
            int screws = under.Length == 1 ? 2 * Fastening.ScrewsAlong(book.Value(laid.Length.AsCut)) : alike.Sum(s => 2 * Fastening.ScrewsAlong(book.Value(Built.Width(s.Key))));
            // Rails on edge are too high to screw through: plates take their place.
            ExactLength? screw = through is { } wood && wood <= ExactLength.FromInches(2) ? Fastening.IntoFace(book.Piece.Unit, wood, thick) : null;
            if (through is null) screws = alike.Sum(s => book.Parts.Where(p => p.Role == PartRole.Post && new QuantityKey(p.Key).Owner == s.Key).Sum(p => p.Count));
            if (hold is TopHold.Buttons or TopHold.Clips)
            {
                ways.Add(Loosely(book, laid, hold, alike, where, screws, slot));
                continue;
            }
            string slotted = hold == TopHold.Slots ? " with slots across the grain of the top," : "";
            if (screw is { } right) book.Hardware.Add(new(top.Key, $"Wood screw no. 10 (5 mm), {book.Say(right)}", screws, "piece", $"through {where} from below, stopping {below}: {Fastening.SpacingWords}"));
            else book.Hardware.Add(new(top.Key, $"Top fixing plate{slotted} with its screws", screws, "piece", through is null ? $"one at each of {where}" : $"along {where}: {Fastening.SpacingWords}"));
            ways.Add(screw is { } s ? $"screw it from below through {where}, {book.Say(s)} screws and no longer, or they come out of the top{InSlots(book, slot)}"
                : $"fix it from below with plates {(through is null ? "at" : "along")} {where}; choose their screws shorter than {shorter}{(hold == TopHold.Slots ? $"; a screw in the middle of each slot lets the top move{Of(book, slot)} across its grain" : "")}");
            if (screw is not null && slot is { } longer) Slots(book, laid, alike, longer);
        }
        book.Steps.Add(new(Stage.Top, $"Two people lay the {name} on with its overhangs; {string.Join(". Then ", ways)}.", laid.Top.Layers.IsEmpty ? laid.Parts : [], null, "lift")
        { Whole = laid.Top.Layers.IsEmpty ? [] : [top.Key] });
        book.Units.Add(new(top.Key, name, UnitKind.Top));
    }

    /// <summary>What carries a top and what a screw from below passes; null where it lies on posts that stand over their rails.</summary>
    private sealed record Carrying(string What, ExactLength? Through);

    private static Carrying CarryingOf(Book book, Structure structure) => structure switch
    {
        Frame { Above: { } above } when above.Value.Sign > 0 => new("the posts", null),
        Frame frame => new("the top rails", book.Value(frame.TopRail == Laid.Flat ? Book.ThicknessOf((frame.Rails ?? frame.Of).Text) : Book.SectionWidthOf((frame.Rails ?? frame.Of).Text))),
        _ => new("the top of the case", book.Value(Book.ThicknessOf(structure.Of.Text))),
    };

    /// <summary>How it is held, and the length of slots where it moves on what carries it.</summary>
    private static (TopHold Hold, SlotLength? Slot) Held(Book book, LaidTop laid, ImmutableArray<Structure> under)
    {
        Top top = laid.Top;
        Part lowest = book.Parts.First(p => p.Key == laid.Parts[^1]);
        Material material = book.Piece.Materials[lowest.Material];
        // What carries it with its grain from end to end as well, such as the top of a case, moves with it.
        Rational follows = under.Select(s => s is Case ? WoodMoves.Share(book.Piece.Materials.GetValueOrDefault(s.Of.Text), book.Piece.MoistureChange) : Rational.Zero).Min(), more = WoodMoves.Share(material, book.Piece.MoistureChange) - follows;
        if (WoodMoves.Of(book, lowest) is not { } whole || more.Sign <= 0) return (top.Held ?? TopHold.Screws, null);
        TopHold hold = top.Held ?? TopHold.Slots;
        QuantityKey moves = follows.Sign == 0 ? whole : book.Define(top.Key, "moves-more", $"{laid.Name}, movement across its grain that what carries it does not follow", new Sum(
            Term.From("what it moves", 1, whole), Term.From("what carries it moves, of the same width", -follows, lowest.Width.Made)));
        if (hold == TopHold.Screws)
        {
            ExactLength by = book.Value(moves), most = Usual.Length(book, "WD1");
            if (by > most)
                book.Note("wood.cross-grain", Severity.Warn, top.Key, $"The {laid.Name} of {WoodMoves.Solid(material)!.Name} moves {book.Say(by)} across its {book.Say(book.Value(lowest.Width.Made))}; screwed hard from below it splits, or pulls what carries it out of square.",
                    $"{book.Hand.Write("held", "slots")} for slots {book.SayAtLeast(by + Usual.Length(book, "WD2"))} long, {book.Hand.Key("held", "buttons")} or {book.Hand.Key("held", "clips")}, or leave {book.Hand.Key("held")} out. (a joint takes about {book.Say(most)}: {TradeRules.Get("WD1").Cited})", top.HeldPlace);
            return (hold, null);
        }
        QuantityKey slot = book.Define(top.Key, "slot-length", $"{laid.Name}, length of what its screws or buttons move in", new Sum(
            Term.From("screw", 1, Usual.Length(book, "WD2"), new(OriginKind.Rule, "its shank", TradeRules.Get("WD2").Cited)), Term.From("what it moves", 1, moves)));
        return (hold, new(moves, slot));
    }

    private static string HeldWords(TopHold hold) => hold switch
    {
        TopHold.Slots => "screws from below in slots across its grain",
        TopHold.Buttons => "buttons in a groove",
        TopHold.Clips => "clips that turn",
        _ => "screws from below",
    };

    private static string InSlots(Book book, SlotLength? slot) => slot is null ? "" : $"; each through the middle of a slot {book.Say(book.Value(slot.Slot))} long across the grain of the top, with a washer";

    private static string Of(Book book, SlotLength? slot) => slot is null ? "" : $" {book.Say(book.Value(slot.Moves))}";

    private static string Loosely(Book book, LaidTop laid, TopHold hold, IGrouping<Carrying, Structure> alike, string where, int count, SlotLength? slot)
    {
        bool isButtons = hold == TopHold.Buttons;
        book.Hardware.Add(new(laid.Top.Key, isButtons ? "Wooden button with its screw" : "Clip for a top with its screws", count, "piece", $"along {where}: {Fastening.SpacingWords}"));
        string room = slot is null ? "" : isButtons ? $", each {book.Say(book.Value(slot.Moves) / 2)} short of the bottom of its groove at the middle of the year" : $", each free to turn by {book.Say(book.Value(slot.Moves) / 2)} either way";
        return isButtons ? $"fix it from below with buttons in a groove along {where}{room}; screw them to the top only, without glue" : $"fix it from below with clips along {where}{room}; without glue";
    }

    /// <summary>The slots in what carries it: the top of a case, or the top rails.</summary>
    private static void Slots(Book book, LaidTop laid, IGrouping<Carrying, Structure> alike, SlotLength slot)
    {
        ExactLength face = book.Parts.First(p => p.Key == laid.Parts[^1]).Placements[0].Z, near = book.Grid.Step.ToExact() + (laid.Made.Under is { } film ? book.Value(film) : Zero);
        HashSet<string> decks = [.. alike.OfType<Case>().Select(c => $"{c.Key}.deck")];
        bool isRail = alike.Any(s => s is Frame);
        foreach (Part part in book.Parts.Where(p => decks.Contains(p.Key) || (isRail && p.Role == PartRole.Rail && p.Placements.Any(b => (face - b.Z - b.SizeZ).Abs() <= near))).ToList())
            book.Machinings.Add(new(part.Key, $"Slots for the screws of the {laid.Name}, across its grain", [("length", slot.Slot)]) { By = [laid.Parts[^1]] });
    }
}
