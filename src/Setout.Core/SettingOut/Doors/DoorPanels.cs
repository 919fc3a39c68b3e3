using Setout.Core.Materials;
using Setout.Core.Pieces;
using Setout.Core.SettingOut.Joinery;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut.Doors;

/// <summary>The panel in a framed door: its grain stands upright, and it has play for what it moves where it is solid.</summary>
internal static class DoorPanels
{
    /// <summary>Writes the sizes of the panel: along its grain, across it, and its thickness.</summary>
    public static (PartSize Length, PartSize Width, QuantityKey Thickness) Size(
        Book book, DoorKind kind, FramedPanel framed, Panel panel, DoorSpot spot, PartSize groove, QuantityKey clearHeight, QuantityKey shoulders)
    {
        (string key, string name) = (spot.Key, spot.Name);
        TradeRule hair = TradeRules.Get("DO3");
        QuantityKey room = book.Define(key, "panel.room", $"{name}, between the bottoms of the grooves in its stiles",
            new Sum(Term.From("between the stiles", 1, shoulders), Term.From("grooves", 2, groove.ToCut)));
        var usual = new Stated(hair.Length, new(OriginKind.Rule, "in all, in each direction", hair.Cited));
        PanelPlay play = PanelPlayRule.Of(book, (key, "panel", name, $"the panel of {name}"), panel, framed.MoistureChange ?? book.Piece.MoistureChange, room, framed.Play, usual);
        QuantityKey along = book.Define(key, "panel.play-along", $"{name}, play kept along its panel", play.Wood is null && framed.Play is { } given ? given.Stated : usual);
        PartSize width = book.DefineSize($"{key}.panel", "width", $"{name} panel, width",
            new Sum(Term.From("between the stiles", 1, shoulders), Term.From("grooves", 2, groove.ToCut), Term.From("play", -1, play.Across)), PartRole.DoorPanel);
        PartSize length = book.DefineSize($"{key}.panel", "length", $"{name} panel, length",
            new Sum(Term.From("between the rails", 1, clearHeight), Term.From("grooves", 2, groove.ToCut), Term.From("play", -1, along)), PartRole.DoorPanel);
        PanelPlayRule.Slack(book, play, "across", width, shoulders, groove.AsCut, play.Across);
        PanelPlayRule.Slack(book, play, "along", length, clearHeight, groove.AsCut, along);
        PanelPlayRule.Hold(book, play, "door", groove.AsCut, framed.Groove, framed.Panel.Place);
        PanelPlayRule.Check(book, play, "door", groove.ToCut, framed.Groove?.Place ?? framed.Panel.Place);
        return (length, width, book.ThicknessOf($"{key}.panel", panel.Name));
    }
}
