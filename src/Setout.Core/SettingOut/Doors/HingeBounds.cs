using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut.Joinery;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut.Doors;

/// <summary>Whether the cups of a door lie on it, and their plates on what it hangs at, which holds their screws.</summary>
internal static class HingeBounds
{
    /// <summary>A door of one sheet that is narrower than its cups want has no room for them.</summary>
    public static void Cup(Book book, DoorSpot spot, MadeDoor door, ExactLength wants)
    {
        ExactLength wide = book.Value(door.Width);
        if (door.Solid is not null || wide >= wants || wide.Sign <= 0) return;
        book.NoteOnce("door.narrow-for-cup", Severity.Stop, spot.Key, $"{spot.Name} is {book.Say(wide)} wide: cups of 35 mm want {book.Say(wants)}.",
            $"Make the opening {book.SayAtLeast((wants - wide) * (spot.IsOfPair ? 2 : 1))} wider{(spot.IsOfPair ? ", or close it with one door" : "")}.", spot.Place);
    }

    /// <summary>Plates past an end of the panel or behind its rear edge, and a panel too thin for their screws.</summary>
    /// <param name="book">Where to write.</param>
    /// <param name="space">The opening.</param>
    /// <param name="kind">The kind of door.</param>
    /// <param name="spot">The door.</param>
    /// <param name="edge">What it hangs at.</param>
    /// <param name="panel">The place of that in the piece.</param>
    /// <param name="plates">The middles of the plates above the bottom of the opening.</param>
    /// <param name="half">From the middle of a plate to its screws.</param>
    public static void Plates(Book book, Space space, DoorKind kind, DoorSpot spot, Edge edge, Placement panel, ImmutableArray<ExactLength> plates, ExactLength half)
    {
        ExactLength from = book.Corner.Z + space.Z - panel.Z, past = ExactLength.Max(half - plates.Min() - from, plates.Max() + half + from - panel.SizeZ);
        ExactLength behind = book.Value(QuantityKey.Of(spot.Key, "plate-setback")), thick = book.Value(edge.Member);
        void Stop(string words, string remedy, Place place) => book.NoteOnce("door.plate-off", Severity.Stop, spot.Key, words, remedy, place);
        if (past.Sign > 0) Stop($"The plates of {spot.Name} would stand {book.Say(past)} past the end of {edge.Part}.", $"Let it lie {book.SayAtLeast(past)} less over the edges above and below, or make the opening {book.SayAtLeast(past * 2)} higher.", kind.Overlay?.Place ?? spot.Place);
        if (behind >= panel.SizeY) Stop($"The plates of {spot.Name} stand {book.Say(behind)} behind the front edge of {edge.Part}, which is {book.Say(panel.SizeY)} deep.", $"Make it {book.SayAtLeast(behind - panel.SizeY + book.Grid.Step)} deeper, {book.Hand.OrWrite("hinge", "butt")}.", spot.Place);
        if (thick < Fastening.HoldsInFace && !book.HasUnknown)
            book.NoteOnce("door.plate-no-screw", Severity.Warn, spot.Key, $"The plates of {spot.Name} are screwed to {edge.Part}, {book.Say(thick)} thick: screws that hold come out at its far face.", $"Use stock of {book.SayAtLeast(Fastening.HoldsInFace)} or more there, or bolt them through. (common practice, no source)", spot.Place);
    }
}
