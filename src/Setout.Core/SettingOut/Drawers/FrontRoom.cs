using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut.Joinery;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut.Drawers;

/// <summary>Fronts of solid wood: their grain runs across, so they grow higher in damp air. The gaps between them must hold it, and so must the screws from the box.</summary>
internal static class FrontRoom
{
    /// <summary>Says where the gaps of a bank do not hold what its fronts move.</summary>
    public static void Check(Book book, Space space, DrawerKind kind, DrawerBank bank, Panel front, QuantityKey gap, ImmutableArray<PartSize> heights)
    {
        if (WoodMoves.Solid(front) is not { } wood) return;
        ImmutableArray<ExactLength> moves = [.. bank.Drawers.Select((d, i) => book.Value(WoodMoves.Of(book, $"{d.Key}.front", $"drawer {d.Key} front", front, heights[i].Made)!.Value))];
        // Each is held in its middle and grows by half of it up and down.
        IEnumerable<ExactLength> between = moves.Zip(moves.Skip(1), (a, b) => (a + b) / 2), ends = kind.Fronts == FrontWay.Inset ? [moves[0] / 2, moves[^1] / 2] : [];
        ExactLength has = book.Value(gap), needs = between.Concat(ends).DefaultIfEmpty(ExactLength.Zero).Max();
        if (has < needs)
            book.NoteOnce("wood.no-room", Severity.Warn, space.Owner, $"Fronts of {wood.Name} in {space.Name} move up to {book.Say(moves.Max())} across their grain; gaps of {book.Say(has)} close in damp air, and the drawers bind.",
                $"{book.Hand.Write("gap", book.SayAtLeast(needs))} or more into the kind of drawer, use lower fronts, or fronts of plywood.", kind.Gap?.Place ?? kind.Place);
    }

    /// <summary>Where a false front moves more than its box, the screws stand in upright slots.</summary>
    public static void Slots(Box box)
    {
        (Book book, string key) = (box.Book, box.Key);
        if (book.Piece.Materials.GetValueOrDefault(box.Kind.Front.Text) is not Panel front || WoodMoves.Solid(front) is not { } wood) return;
        Rational follows = WoodMoves.Share(box.Sides, book.Piece.MoistureChange);
        if ((WoodMoves.Share(front, book.Piece.MoistureChange) - follows).Sign <= 0) return;
        QuantityKey high = QuantityKey.Of(key, "end.width").AsCut;
        QuantityKey moves = book.Define(key, "front.moves-on-box", $"{box.Name}, movement of its front on its box", new Sum([WoodMoves.Term(front, wood, book.Piece.MoistureChange, high),
            .. follows.Sign == 0 ? ImmutableArray<Term>.Empty : [Term.From("the box moves too", -follows, high)]]));
        if (book.Value(moves) <= Usual.Length(book, "WD1")) return;
        QuantityKey slot = book.Define(key, "front.slot", $"{box.Name}, length of the slots for the screws of its front", new Sum(
            Term.From("screw", 1, Usual.Length(book, "WD2"), new(OriginKind.Rule, "its shank", TradeRules.Get("WD2").Cited)), Term.From("what the front moves", 1, moves)));
        book.Machinings.Add(new($"{key}.end", "Upright slots for the screws of the false front, in the front of the box; with washers", [("length", slot)]) { By = [$"{key}.front"] });
    }
}
