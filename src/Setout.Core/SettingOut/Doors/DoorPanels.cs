using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut.Doors;

/// <summary>
/// The panel in a framed door. Sheet goods have a hair of play; a solid panel has as much across its grain as it moves between dry and damp:
/// its width times the change a unit of width and per cent of moisture that is published for its wood.
/// </summary>
internal static class DoorPanels
{
    /// <summary>The wood of a panel that is solid; null for sheet goods and for what is not on record.</summary>
    public static WoodFact? Solid(Panel panel) =>
        PanelTable.Kinds.Contains(panel.Kind) || panel.Kind.Contains("ply", StringComparison.OrdinalIgnoreCase) || panel.Kind.Contains("veneer", StringComparison.OrdinalIgnoreCase) ? null : Woods.Find(panel.Kind);

    /// <summary>Writes the sizes of the panel: along its grain, which stands upright, across it, and its thickness.</summary>
    public static (PartSize Length, PartSize Width, QuantityKey Thickness) Size(
        Book book, DoorKind kind, FramedPanel framed, Panel panel, DoorSpot spot, PartSize groove, QuantityKey clearHeight, QuantityKey shoulders)
    {
        (string key, string name) = (spot.Key, spot.Name);
        TradeRule hair = TradeRules.Get("DO3");
        WoodFact? wood = Solid(panel);
        QuantityKey room = book.Define(key, "panel.room", $"{name}, between the bottoms of the grooves in its stiles",
            new Sum(Term.From("between the stiles", 1, shoulders), Term.From("grooves", 2, groove.ToCut)));
        var usual = new Stated(hair.Length, new(OriginKind.Rule, "in all, in each direction", hair.Cited));
        QuantityKey? moves = wood is null ? null : book.Define(key, "panel.moves", $"{name}, movement of its panel across the grain", new Sum(
            Term.From(MovesWords(panel, wood, framed.MoistureChange), Coefficient(panel, wood) * Rational.Of(framed.MoistureChange, 1), room)));
        QuantityKey play = book.Define(key, "panel.play-kept", $"{name}, play kept across its panel",
            framed.Play?.Stated ?? (moves is { } m ? new Sum(Term.From("what it moves", 1, m)) : (Working)usual));
        QuantityKey along = book.Define(key, "panel.play-along", $"{name}, play kept along its panel", wood is null && framed.Play is { } given ? given.Stated : usual);
        PartSize width = book.DefineSize($"{key}.panel", "width", $"{name} panel, width",
            new Sum(Term.From("between the stiles", 1, shoulders), Term.From("grooves", 2, groove.ToCut), Term.From("play", -1, play)), PartRole.DoorPanel);
        PartSize length = book.DefineSize($"{key}.panel", "length", $"{name} panel, length",
            new Sum(Term.From("between the rails", 1, clearHeight), Term.From("grooves", 2, groove.ToCut), Term.From("play", -1, along)), PartRole.DoorPanel);
        TradeRule most = TradeRules.Get("GV1");
        Slack(book, spot, "across", width, shoulders, groove, play, most);
        Slack(book, spot, "along", length, clearHeight, groove, along, most);
        if (moves is { } moving) Check(book, framed, spot, wood!, room, moving, play, groove);
        return (length, width, book.ThicknessOf($"{key}.panel", panel.Name));
    }

    private static Rational Coefficient(Panel panel, WoodFact wood) => IsQuartered(panel) ? wood.Radial : wood.Tangential;

    private static bool IsQuartered(Panel panel) => panel.Kind.Contains("quarter", StringComparison.OrdinalIgnoreCase);

    private static string MovesWords(Panel panel, WoodFact wood, int change) =>
        $"{wood.Name}, {(IsQuartered(panel) ? "quarter-sawn" : "flat-sawn")}, a change of {change} % of moisture ({wood.MovementSource})";

    private static void Slack(Book book, DoorSpot spot, string way, PartSize size, QuantityKey clear, PartSize groove, QuantityKey play, TradeRule most)
    {
        QuantityKey slack = book.Define(spot.Key, $"panel.slack-{way}", $"{spot.Name}, play of its panel {way}",
            new Sum(Term.From("between", 1, clear), Term.From("grooves, as cut", 2, groove.AsCut), Term.From("panel, as cut", -1, size.AsCut)));
        ExactLength meant = book.Value(play), half = most.Length / 2;
        book.Gaps.Add(new(slack, $"{spot.Name}, panel {way} in its grooves", ExactLength.Max(ExactLength.Zero, meant - half), meant + half, "goes in, and within 1/16 in of the play meant: common practice, no source"));
    }

    private static void Check(Book book, FramedPanel framed, DoorSpot spot, WoodFact wood, QuantityKey room, QuantityKey moves, QuantityKey play, PartSize groove)
    {
        ExactLength needs = book.Value(moves), has = book.Value(play), wide = book.Value(room), depth = book.Value(groove.ToCut);
        if (framed.Play is { } given && has < needs)
            book.NoteOnce("door.panel-captured", Severity.Warn, spot.Key, $"A panel of {wood.Name} {book.Say(wide)} wide moves {book.Say(needs)} across its grain; {book.Say(has)} of play splits it or bursts the frame.",
                $"Leave {book.Say(needs)} or more, or leave 'play' out to have it worked out; sheet goods need hardly any.", given.Place);
        // Cut damp, it shrinks by all it moves: what is left in each groove is the groove less half the play and half the movement.
        if (depth * 2 <= has + needs)
            book.NoteOnce("door.panel-leaves-groove", Severity.Warn, spot.Key, $"When it is dry, the panel of {spot.Name} may come out of its grooves: they are {book.Say(depth)} deep, its play is {book.Say(has)}, and it shrinks by up to {book.Say(needs)}.",
                $"Make the grooves deeper than {book.Say((has + needs) / 2)}, or divide the panel.", framed.Groove?.Place ?? framed.Panel.Place);
    }
}
