using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.SettingOut.Joinery;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut.Drawers;

/// <summary>
/// A drawer bottom of solid wood in grooves. Its grain runs along its longer side, and it moves the other way: across, in the grooves of the sides; from front to
/// back, in those of the ends, or out behind a back that it slides in under, where its screws stand in slots.
/// </summary>
/// <param name="IsAcross">True where it moves from side to side.</param>
/// <param name="Slides">True where it is slid in under the back.</param>
/// <param name="Play">Its play, as that of any panel in grooves.</param>
internal sealed record SolidBottom(bool IsAcross, bool Slides, PanelPlay Play)
{
    /// <summary>How it is held to the back that it slides in under.</summary>
    public string HeldWords => IsAcross ? "one screw from below, in the middle" : "screws from below, in slots";

    /// <summary>The play of a bottom of solid wood; null for sheet goods.</summary>
    /// <param name="box">The box.</param>
    /// <param name="across">The room from side to side, grooves and all.</param>
    /// <param name="fore">The room from front to back, grooves and all.</param>
    /// <param name="slack">The play of sheet goods.</param>
    /// <param name="groove">How deep the grooves are.</param>
    public static SolidBottom? Define(Box box, ImmutableArray<Term> across, ImmutableArray<Term> fore, QuantityKey slack, QuantityKey groove)
    {
        if (WoodMoves.Solid(box.Bottom) is null) return null;
        (Book book, string key, string name) = (box.Book, box.Key, box.Name);
        // As it is laid: the longer side along the grain, which moves least across.
        bool isAcross = book.Value(new Sum(across)) < book.Value(new Sum(fore)), slides = box.Kind.BottomFit == Pieces.BottomFit.SlidIn;
        QuantityKey room = book.Define(key, "bottom.room", $"{name}, room for its bottom across its grain", new Sum(isAcross ? across : fore));
        PanelPlay play = PanelPlayRule.Of(book, (key, "bottom", name, $"the bottom of {name}"), box.Bottom, book.Piece.MoistureChange, room, null, new Sum(Term.From("slack", 1, slack)));
        // Slid in, only its front edge can leave a groove: it is screwed to the back.
        if (isAcross || !slides) PanelPlayRule.Check(book, play, "drawer", groove, box.Kind.GrooveDepth?.Place ?? box.Kind.Bottom.Place);
        return new(isAcross, slides, play);
    }

    /// <summary>The slots for the screws that hold it to the back.</summary>
    public void Screws(Book book, string key)
    {
        if (IsAcross) return;
        QuantityKey slot = book.Define(key, "bottom.slot", $"drawer {key}, length of the slots in its bottom", new Sum(
            Term.From("screw", 1, Usual.Length(book, "WD2"), new(OriginKind.Rule, "its shank", TradeRules.Get("WD2").Cited)), Term.From("what it moves", 1, Play.Across)));
        book.Machinings.Add(new($"{key}.bottom", "Slots from front to back for the screws into the back, near the rear edge", [("length", slot)]) { By = [$"{key}.back"] });
    }
}
