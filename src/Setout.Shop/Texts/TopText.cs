using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Shop.Texts;

/// <summary>Reads tops: overhangs, layers, edging, laminate, slots and wells.</summary>
internal static class TopText
{
    private static readonly (string Word, TopSide Value)[] s_sides = [("front", TopSide.Front), ("back", TopSide.Back), ("left", TopSide.Left), ("right", TopSide.Right)];

    public static Top Top(KeyBook keys, MapReader map, string key, string name, Named of, Place place)
    {
        Given none = new(ExactLength.Zero, place);
        MapReader? over = map.Map("overhang", "overhang");
        Given Side(string side) => over?.Length(side, mayBeZero: true) ?? none;
        return new(key, name, of, Side("front"), Side("back"), Side("left"), Side("right"), place)
        {
            On = map.OneOrMore("on"),
            Held = map.OneOf<TopHold?>("held", null, ("screws", TopHold.Screws), ("slots", TopHold.Slots), ("buttons", TopHold.Buttons), ("clips", TopHold.Clips)),
            HeldPlace = map.IsThere("held") ? map.PlaceOf("held") : default,
            Layers = [.. map.WordsOrMaps("layers", "layer", "[slab, slab]").Select(l => l.Map is { } m ? new TopLayer(m.Text("of"), m.Givens("seams"), m.Place) : new(l.Word, [], l.Word!.Value.Place))],
            Edging = map.Map("edging", "edging") is { } edging ? Edging(edging) : null,
            Laminate = map.Map("laminate", "laminate") is { } laminate ? Laminate(laminate) : null,
            Slots = [.. map.Maps("slots", "slot", "slot: K1, along: front, from: 4, width: 3/4, depth: 3/8").Select(m => Slot(keys, m))],
            Wells = [.. map.Maps("wells", "well", "well: W1, machine: drum sander").Select(m => Well(keys, m))],
        };
    }

    private static Edging Edging(MapReader map) => new(map.Required("of", "lips"),
        map.OneOf("corners", EdgingCorners.Mitred, ("mitred", EdgingCorners.Mitred), ("butted", EdgingCorners.LongRunsPast), ("ends run past", EdgingCorners.EndsRunPast), ("pinwheel", EdgingCorners.Pinwheel)),
        map.Length("raised", mayBeZero: true), map.SomeOf("sides", s_sides), map.Place);

    private static Laminate Laminate(MapReader map) => new(map.Required("of", "HGS"), map.Length("thickness"),
        map.OneOf("faces", false, ("top", false), ("both", true)), map.Length("backer"), map.SomeOf("edges", s_sides), map.Length("oversize", mayBeZero: true), map.Place);

    private static Slot Slot(KeyBook keys, MapReader map)
    {
        string key = map.Key("slot");
        keys.Take(key, map.PlaceOf("slot"));
        if (!map.Has("along")) map.Missing("along", "front");
        return new(key, map.OneOf("along", TopSide.Front, s_sides), map.RequiredLength("from", "4", mayBeZero: true), map.RequiredLength("width", "3/4"), map.RequiredLength("depth", "3/8"),
            map.Length("short", mayBeZero: true), map.Length("bit"), map.Length("pass"), map.PlaceOf("slot"));
    }

    private static Well Well(KeyBook keys, MapReader map)
    {
        string key = map.Key("well");
        keys.Take(key, map.PlaceOf("well"));
        string machine = map.Required("machine", "drum sander").Text;
        // A well in the bay of a frame takes its place and width from that.
        Named? bay = map.Text("bay");
        Given left = bay is null ? map.RequiredLength("from left", "24", mayBeZero: true) : map.Length("from left", mayBeZero: true) ?? new(ExactLength.Zero, bay.Value.Place), front = map.RequiredLength("from front", "4", mayBeZero: true);
        (Given, Given)? feet = map.Size("footprint", "left to right first", "18 x 14");
        if (feet is null && !map.IsThere("footprint")) map.Missing("footprint", "18 x 14");
        Given hair = new(TextContext.ShortestSize, map.Place);
        return new(key, machine, left, front, map.Length("width"), map.Length("depth"), feet ?? (hair, hair),
            map.RequiredLength("table height", "5 1/4"), map.Length("set low", mayBeZero: true), map.PlaceOf("well"))
        {
            Bay = bay,
            Platform = map.Text("platform"),
            Bearers = map.Text("bearers"),
            Sides = map.Text("sides"),
            Swing = Reach(map, "swing") ?? new(null, null, null, null, map.Place),
            Feed = Reach(map, "feed"),
            Load = map.Whole("load", 0, 1, 10_000),
            BoltSize = map.Length("bolt size"),
            Bolts = [.. map.Maps("bolts", "bolt", "from left: 1, from front: 1").Select(Spot)],
            Exits = [.. map.Maps("exits", "exit", "for: cable, size: 1 1/2, from left: 3, from front: 3").Select(m => new Exit(m.Required("for", "cable").Text, m.RequiredLength("size", "1 1/2"), Spot(m)))],
        };
    }

    private static Reach? Reach(MapReader map, string word) => map.Map(word, "reach") is not { } sides ? null
        : new(sides.Length("front", mayBeZero: true), sides.Length("back", mayBeZero: true), sides.Length("left", mayBeZero: true), sides.Length("right", mayBeZero: true), sides.Place);

    private static Spot Spot(MapReader map) => new(map.RequiredLength("from left", "1", mayBeZero: true), map.RequiredLength("from front", "1", mayBeZero: true), map.Place);
}
