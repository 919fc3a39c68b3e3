using System.Collections.Immutable;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Shop.Texts;

/// <summary>Reads kinds of door, and the doors of an opening.</summary>
internal static class DoorText
{
    private static readonly string[] s_sides = ["left", "right"];

    /// <summary>The kinds of door of a piece, by name.</summary>
    public static ImmutableDictionary<string, DoorKind> Kinds(TextContext context, KeyBook keys, MapReader top)
    {
        var kinds = ImmutableDictionary.CreateBuilder<string, DoorKind>();
        foreach ((Named kind, MapReader map) in top.NamedMaps("doors", "door-kind"))
        {
            keys.Take(kind.Text, kind.Place);
            if (Kind(context, kind, map) is { } read) kinds[kind.Text] = read;
        }
        return kinds.ToImmutable();
    }

    /// <summary>The doors of an opening with what stands behind them; null where there are none, or none that can be used.</summary>
    public static DoorFilling? Read(TextContext context, KeyBook keys, MapReader opening, OpeningContent? behind)
    {
        if (opening.Map("doors", "doors") is not { } map) return null;
        Named like = map.Required("like", "plain");
        ImmutableArray<Named> doors = map.Keys("keys");
        bool right = map.OneOf("hinges", false, (s_sides[0], false), (s_sides[1], true));
        foreach (Named door in doors) keys.Take(door.Text, door.Place);
        if (map.IsEmpty("keys")) map.Missing("keys", "[D1]", "doors.none", "There are no doors here.");
        if (doors.Length > 2)
            context.Stop("doors.too-many", doors[2].Place, "An opening takes one door or a pair.", "Divide it first, or leave out the others.", doors[2].Text);
        else if (doors.Length == 2 && map.IsThere("hinges"))
            context.Stop("doors.hinges-of-a-pair", map.KeyPlaceOf("hinges"), "A pair hangs on both sides.", "Leave 'hinges' out.", doors[0].Text);
        if (behind is DrawerBank)
            context.Stop("opening.two-contents", opening.KeyPlaceOf("doors"), "An opening holds one thing: this one has 'drawers' and 'doors'.", "Give the drawers an opening of their own behind the doors: 'down: [{opening: KEY, drawers: ...}]'.");
        return doors.Length is 1 or 2 ? new(like, doors, right, behind) : null;
    }

    private static DoorKind? Kind(TextContext context, Named name, MapReader map)
    {
        map.Expect("lies", "overlay", "gap", "hinge", "clear", "handles", "catch");
        string? word = map.Which("This does not say how the door is made.", "Begin it with 'of: SHEET' or 'frame: {of: STICK}'.", ("of", "slab-door"), ("frame", "frame-door"));
        if (word is null) return null;
        DoorLie lie = map.OneOf("lies", DoorLie.Overlay, ("overlay", DoorLie.Overlay), ("half overlay", DoorLie.HalfOverlay), ("inset", DoorLie.Inset));
        Given? overlay = map.Length("overlay", mayBeZero: true), gap = map.Length("gap", mayBeZero: true), clear = map.Length("clear", mayBeZero: true);
        if (lie == DoorLie.Inset && overlay is not null)
            context.Stop("doors.idle-overlay", map.KeyPlaceOf("overlay"), "An inset door lies over nothing.", "Leave 'overlay' out, or take 'lies: inset' off.", name.Text);
        DoorHandles? handles = map.Map("handles", "door-handles") is { } set ? Handles(context, set, name) : null;
        HingeKind? hinge = map.OneOf<HingeKind?>("hinge", null, ("cup", HingeKind.Cup), ("butt", HingeKind.Butt));
        DoorMake? make = word == "of" ? new Slab(map.Required("of", "birch")) : Framed(map);
        return make is null ? null : new(name.Text, make, name.Place) { Lie = lie, Overlay = overlay, Gap = gap, Clear = clear, Handles = handles, Catch = map.Text("catch")?.Text, Hinge = hinge, HingePlace = hinge is null ? default : map.PlaceOf("hinge") };
    }

    private static DoorHandles Handles(TextContext context, MapReader map, Named name)
    {
        var read = new DoorHandles(map.Required("of", "knob").Text, map.OneOf("place", false, ("centred", false), ("in line", true)), map.Length("from edge"), map.Length("from top"), map.Length("from bottom"),
            map.Length("apart"), map.Length("hole"), map.Place);
        if (read is { FromTop: not null, FromBottom: not null })
            context.Stop("doors.handle-twice", map.KeyPlaceOf("from bottom"), "A handle is set out from one end of the door.", "Keep 'from top' or 'from bottom'.", name.Text);
        if (read is { IsInLine: false } && (read.FromTop ?? read.FromBottom) is not null && map.IsThere("place"))
            context.Stop("doors.handle-twice", map.KeyPlaceOf("place"), "A length from the end of the door says where the handles are: they are not centred.", "Leave 'place: centred' out, or the length.", name.Text);
        return read;
    }

    private static FramedPanel? Framed(MapReader map)
    {
        MapReader? frame = map.Map("frame", "door-frame");
        Named panel = map.Required("panel", "thin");
        Given? groove = map.Length("groove"), tenon = map.Length("tenon"), play = map.Length("play", mayBeZero: true);
        int? change = map.Has("moisture") ? map.Whole("moisture", Piece.UsualChange, 1, 20) : null;
        if (frame is null) return null;
        Named stiles = frame.Required("of", "oak");
        return new(stiles, frame.Text("rails"), frame.Text("bottom rail"), panel, groove, tenon, play, change) { MoisturePlace = map.IsThere("moisture") ? map.KeyPlaceOf("moisture") : default };
    }
}
