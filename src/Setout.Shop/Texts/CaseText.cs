using System.Collections.Immutable;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Shop.Texts;

/// <summary>Reads what a case has beside its panels: joints, back, foot, hanging rail, face frame, fillers.</summary>
internal static class CaseText
{
    private static readonly (string Word, CaseJoint Value)[] s_dividers =
        [("butt", CaseJoint.Butt), ("pocket", CaseJoint.Pocket), ("dowels", CaseJoint.Dowels), ("dado", CaseJoint.Dado)];

    /// <summary>The sheet of the back: a word, or the first of what is said about it.</summary>
    public static Named? BackOf(MapReader map) => map.Node("back") is YamlMap ? null : map.Text("back");

    /// <summary>A case with all that its text says.</summary>
    public static Case Read(MapReader map, Case plain)
    {
        Case read = plain with
        {
            Corners = Joint(map, "corners", "corner depth", [.. s_dividers, ("rabbet", CaseJoint.Rabbet)]),
            Dividers = Joint(map, "dividers", "divider depth", s_dividers),
            HangingRail = map.Map("hanging rail", "hanging-rail") is { } rail ? new(rail.Required("of", "carcase"), rail.Length("width"), map.PlaceOf("hanging rail")) : null,
            Toe = map.Map("toe", "toe") is { } toe ? new(toe.Length("height"), toe.Length("setback", mayBeZero: true), toe.Text("of"), map.PlaceOf("toe")) : null,
            Base = map.Map("base", "base") is { } bottom ? new(bottom.Required("of", "carcase"), bottom.Length("height"), bottom.Length("setback", mayBeZero: true), map.PlaceOf("base")) : null,
            Feet = map.Map("feet", "feet") is { } feet ? Feet(feet, map.PlaceOf("feet")) : null,
            FaceFrame = map.Map("face frame", "face-frame") is { } frame ? FaceFrame(frame, map.PlaceOf("face frame")) : null,
            Fillers = Fillers(map),
        };
        return map.Node("back") is YamlMap && map.Map("back", "back") is { } back ? Back(back, map.PlaceOf("back"), read) : read;
    }

    private static JointChoice Joint(MapReader map, string word, string depth, (string Word, CaseJoint Value)[] words)
    {
        CaseJoint joint = map.OneOf(word, CaseJoint.Butt, words);
        Given? given = map.Length(depth);
        return map.IsThere(word) || given is not null ? new(joint, given, map.PlaceOf(map.IsThere(word) ? word : depth)) : JointChoice.Butt;
    }

    private static Case Back(MapReader back, Place place, Case read)
    {
        Named of = back.Required("of", "backs");
        BackHold hold = back.OneOf("fit", BackHold.Applied, ("applied", BackHold.Applied), ("inset", BackHold.Inset), ("rabbeted", BackHold.Rabbeted), ("grooved", BackHold.Grooved));
        Given? depth = back.Length("depth"), inset = back.Length("inset", mayBeZero: true), play = back.Length("play", mayBeZero: true);
        return read with { Back = of, BackFit = new(hold, depth, inset, play, place) };
    }

    private static Feet Feet(MapReader feet, Place place) =>
        new(feet.OneOf("kind", FootKind.Feet, ("feet", FootKind.Feet), ("castors", FootKind.Castors), ("levellers", FootKind.Levellers)), feet.RequiredLength("height", "4"), place);

    private static FaceFrame FaceFrame(MapReader frame, Place place)
    {
        // What packing is made of, or 'no' for none.
        Named? packing = frame.Text("packing");
        bool isPacked = packing is not { Text: "no" or "false" };
        FaceFrameJoint joint = frame.OneOf("joint", FaceFrameJoint.Pocket, ("tenon", FaceFrameJoint.Tenon), ("pocket", FaceFrameJoint.Pocket), ("dowels", FaceFrameJoint.Dowels));
        return new(frame.Required("of", "frames"), frame.Text("stiles"), frame.Text("rails"), frame.Text("mullions"), joint,
            frame.Length("tenon"), frame.Length("overhang", mayBeZero: true), isPacked ? packing : null, isPacked, place);
    }

    /// <summary>One filler, or a list of two.</summary>
    private static ImmutableArray<Filler> Fillers(MapReader map)
    {
        IEnumerable<MapReader> written = map.Node("filler") is YamlMap ? map.Map("filler", "filler") is { } one ? [one] : [] : map.Maps("filler", "filler", "of: carcase, width: 2");
        return [.. written.Select(f => new Filler(f.Required("of", "carcase"), f.RequiredLength("width", "2"), f.Length("scribe", mayBeZero: true),
            f.OneOf("at", false, ("left", false), ("right", true)), f.Place))];
    }
}
