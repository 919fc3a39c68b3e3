using System.Collections.Immutable;
using System.Globalization;
using Setout.Core.Pieces;

namespace Setout.Shop.Texts;

/// <summary>Reads kinds of drawer, and the banks that use them.</summary>
internal static class DrawerText
{
    // More than this is a slip of the pen.
    private const int MostShare = 1000;

    /// <summary>A kind of drawer.</summary>
    public static DrawerKind Kind(TextContext context, Named kind, MapReader map)
    {
        Named sides = map.Required("sides", "box"), bottom = map.Required("bottom", "bottoms"), front = map.Required("front", "fronts");
        Given? gap = map.Length("gap", mayBeZero: true), overlay = map.Length("overlay", mayBeZero: true), play = map.Length("play", mayBeZero: true);
        // A front that is the front of the box goes into the opening, and its bottom slides in from behind.
        bool isFalse = map.YesNo("false front", true);
        // A slide is said by its length alone, or by what its leaflet says.
        bool hasSheet = map.Node("slide") is YamlMap;
        Given? slide = hasSheet ? null : map.Length("slide");
        SlideSheet sheet = hasSheet && map.Map("slide", "slide") is { } leaflet ? Sheet(context, leaflet, kind.Text) : SlideSheet.Rules;
        DrawerKind read = new(kind.Text, sides, bottom, front, gap, overlay, play, slide, kind.Place,
            map.OneOf("window", SlideWindow.Usual, ("usual", SlideWindow.Usual), ("narrow", SlideWindow.Narrow)))
        {
            Corners = map.OneOf("corners", CornerJoint.Pocket, ("pocket", CornerJoint.Pocket), ("butt", CornerJoint.Butt), ("rabbet", CornerJoint.Rabbet), ("dado", CornerJoint.Dado),
                ("lock rabbet", CornerJoint.LockRabbet), ("box joint", CornerJoint.BoxJoint), ("half-blind dovetail", CornerJoint.HalfBlindDovetail), ("through dovetail", CornerJoint.ThroughDovetail)),
            CornerDepth = map.Length("corner depth"),
            Finger = map.Length("finger"),
            BottomFit = map.OneOf("bottom fit", isFalse ? BottomFit.Grooved : BottomFit.SlidIn, ("grooved", BottomFit.Grooved), ("slid in", BottomFit.SlidIn), ("applied", BottomFit.Applied), ("let in", BottomFit.LetIn), ("between", BottomFit.Between)),
            GrooveDepth = map.Length("groove depth"),
            GrooveUp = map.Length("groove up"),
            Slides = map.OneOf("slides", SlideWay.Side, ("side", SlideWay.Side), ("under", SlideWay.Under), ("runners", SlideWay.Runners)),
            Sheet = sheet,
            Runner = map.Text("runner"),
            Fronts = map.OneOf("fronts", isFalse ? FrontWay.Overlay : FrontWay.Inset, ("overlay", FrontWay.Overlay), ("half overlay", FrontWay.HalfOverlay), ("inset", FrontWay.Inset)),
            HasFalseFront = isFalse,
            Handles = map.Map("handles", "handles") is { } handles ? Handles(context, handles, kind.Text) : null,
        };
        if (read.Slides == SlideWay.Runners && !map.IsThere("runner")) map.Missing("runner", "strips");
        Idle(context, map, read);
        return read;
    }

    /// <summary>What is said for nothing is a slip, or another word was meant.</summary>
    private static void Idle(TextContext context, MapReader map, DrawerKind kind)
    {
        bool isDeep = kind.Corners is CornerJoint.Rabbet or CornerJoint.Dado or CornerJoint.LockRabbet or CornerJoint.HalfBlindDovetail;
        bool hasGroove = kind.BottomFit is BottomFit.Grooved or BottomFit.SlidIn;
        (string Key, bool Idle, string Words)[] keys =
        [
            ("corner depth", !isDeep, "nothing goes into anything at these corners"),
            ("finger", kind.Corners != CornerJoint.BoxJoint, "only a box joint has fingers"),
            ("groove depth", kind.BottomFit is BottomFit.Applied or BottomFit.Between, "this bottom has no groove"),
            ("groove up", !hasGroove, "this bottom has no groove"),
            ("overlay", kind.Fronts != FrontWay.Overlay, "these fronts do not go by it"),
            ("window", kind.Slides != SlideWay.Side, "it is of side-mounted slides"),
            ("runner", kind.Slides != SlideWay.Runners, "these drawers run on slides"),
            ("play", !kind.HasFalseFront, "a box whose front is its face is as wide as that, which goes by 'gap'"),
        ];
        foreach ((string key, bool idle, string words) in keys)
            if (idle && map.IsThere(key)) context.Stop("drawer.idle", map.KeyPlaceOf(key), $"'{key}' has nothing to say here: {words}.", $"Leave '{key}' out, or put the word right that it belongs to.", kind.Name);
        if (kind.Slides == SlideWay.Runners && (kind.SlideLength is not null || kind.Sheet.Clearance is not null || kind.Sheet.Length is not null || kind.Sheet.Setback is not null || !kind.Sheet.Series.IsEmpty))
            context.Stop("drawer.idle", map.KeyPlaceOf("slide"), "Drawers on runners have no slides.", "Leave 'slide' out; what is kept behind and above may stand there as 'rear' and 'room'.", kind.Name);
    }

    private static SlideSheet Sheet(TextContext context, MapReader map, string kind)
    {
        var read = new SlideSheet(map.Length("clearance"), map.Length("length"), map.Length("setback", mayBeZero: true), map.Length("rear", mayBeZero: true), map.Length("room", mayBeZero: true)) { Series = map.Lengths("series") };
        if (read.Length is not null && !read.Series.IsEmpty)
            context.Stop("drawer.idle", map.KeyPlaceOf("series"), "'series' has nothing to say here: 'length' says which slide to use.", "Leave 'length' out to have the longest of the series that fits, or 'series'.", kind);
        return read;
    }

    private static Handles Handles(TextContext context, MapReader map, string kind)
    {
        var read = new Handles(map.Required("of", "knob").Text, map.OneOf("place", false, ("centred", false), ("in line", true)), map.Length("from top"), map.Length("apart"), map.Length("hole"), map.Place);
        if (read is { FromTop: not null, IsInLine: false } && map.IsThere("place"))
            context.Stop("drawer.idle", map.KeyPlaceOf("place"), "'from top' says where the handles are, as far below the upper edge of every front: they are not centred.", "Leave 'place: centred' out, or 'from top'.", kind);
        return read;
    }

    /// <summary>A bank of drawers.</summary>
    public static DrawerBank? Bank(TextContext context, KeyBook keys, MapReader map)
    {
        Named like = map.Required("like", "standard");
        string figure = map.OneOf("figure", "any", ("through", "through"), ("in rows", "in rows"), ("any", "any"));
        Graduation? graduated = Graduated(context, map);
        Named? packing = map.Text("packing");
        var drawers = ImmutableArray.CreateBuilder<Drawer>();
        foreach (MapReader item in map.Maps("down", "drawer", "drawer: A1"))
        {
            string key = item.Key("drawer");
            keys.Take(key, item.PlaceOf("drawer"));
            drawers.Add(new(key, item.Share("front"), item.Length("box width"), item.Length("box height"), item.PlaceOf("drawer")));
        }
        if (map.IsEmpty("down")) map.Missing("down", "[{drawer: A1}, {drawer: A2}]", "drawers.none", "There are no drawers in this bank.");
        return drawers.Count > 0 ? new(like, drawers.ToImmutable(), figure == "through") { FigureInRows = figure == "in rows", FigurePlace = map.IsThere("figure") ? map.KeyPlaceOf("figure") : default, Graduated = graduated, Packing = packing } : null;
    }

    /// <summary>A ratio such as <c>4:5:6</c>, or the step as a length.</summary>
    private static Graduation? Graduated(TextContext context, MapReader map)
    {
        if (map.Node("graduated") is not YamlScalar { Text: var text } || !text.Contains(':', StringComparison.Ordinal))
            return map.Length("graduated") is { } step ? new([], step, map.PlaceOf("graduated")) : null;
        var ratio = ImmutableArray.CreateBuilder<int>();
        foreach (string share in text.Split(':'))
        {
            if (int.TryParse(share.Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out int part) && part is > 0 and <= MostShare) ratio.Add(part);
            else
            {
                context.Stop("text.wanted-ratio", map.PlaceOf("graduated"), $"'{TextContext.Shown(text)}' is not a ratio of whole numbers from 1 to {MostShare}.", "Write for example 'graduated: 4:5:6', from the top, or the step as a length.");
                return null;
            }
        }
        return new(ratio.ToImmutable(), null, map.PlaceOf("graduated"));
    }
}
