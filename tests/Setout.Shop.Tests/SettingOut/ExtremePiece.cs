using CsCheck;
using static Setout.Shop.Tests.SettingOut.RandomWords;

namespace Setout.Shop.Tests.SettingOut;

/// <summary>
/// Pieces with one to three lengths at an extreme: nothing, a hair, as large as the piece, or larger. All else is usual, so that what comes out at fault is the
/// fault of those.
/// </summary>
internal static class ExtremePiece
{
    // Keys of each thing with a length. One marked with * may be 0.
    private static readonly string[] s_case = ["width", "height", "depth"];
    private static readonly string[] s_extremes = ["1/64", "1/32", "1/16", "1/8", "1/4", "1/2", "3/4", "1", "1 1/2", "2", "3", "4", "5", "6", "8", "10", "12", "15", "15 1/2", "16", "20", "22 1/2", "24", "28 1/2", "30", "40", "96", "240"];

    /// <summary>One value that is far from usual.</summary>
    public static readonly Gen<string> Value = One(s_extremes);

    /// <summary>The same, or nothing.</summary>
    public static readonly Gen<string> OrNone = Gen.Frequency((1, Gen.Const("0")), (8, Value));

    private static Gen<string> Keyed(params string[] keys) =>
        from key in One(keys)
        from value in key.EndsWith('*') ? OrNone : Value
        select $", {key.TrimEnd('*')}: {value}";

    private static Gen<string> Words(string always, params string[] keys) => Gen.Frequency((3, Gen.Const("")), (2, Keyed(keys))).Select(w => always + w);

    private static readonly Gen<string> s_drawers =
        from corners in Some(2, ", corners: rabbet", ", corners: dado", ", corners: lock rabbet", ", corners: box joint", ", corners: half-blind dovetail", ", corners: through dovetail", ", corners: butt")
        from bottom in Some(2, ", bottom fit: slid in", ", bottom fit: applied", ", bottom fit: let in")
        from slides in Some(2, ", slides: under", ", slides: runners, runner: slips", ", fronts: inset", ", fronts: half overlay")
        from odd in Gen.Frequency((5, Gen.Const("")), (3, Keyed("gap*", "overlay*", "play*", "slide", "groove depth", "groove up")), (1, Keyed("clearance", "length", "setback*", "rear*", "room*").Select(k => $", slide: {{{k[2..]}}}")),
            (1, Keyed("from top", "apart", "hole").Select(k => $", handles: {{of: knob, place: in line{k}}}")), (1, Gen.Const("CORNER")), (1, Gen.Const("FINGER")))
        from value in Value
        select $"{corners}{bottom}{slides}" + odd switch
        {
            "CORNER" => corners.Contains("butt", StringComparison.Ordinal) || corners.Contains("through", StringComparison.Ordinal) || corners.Contains("box", StringComparison.Ordinal) || corners.Length == 0 ? "" : $", corner depth: {value}",
            "FINGER" => corners.Contains("box", StringComparison.Ordinal) ? $", finger: {value}" : "",
            _ when odd.Contains("groove depth", StringComparison.Ordinal) && bottom.Contains("applied", StringComparison.Ordinal) => "",
            _ when odd.Contains("groove up", StringComparison.Ordinal) && (bottom.Contains("applied", StringComparison.Ordinal) || bottom.Contains("let in", StringComparison.Ordinal)) => "",
            _ when odd.StartsWith(", overlay", StringComparison.Ordinal) && slides.Contains("fronts", StringComparison.Ordinal) => "",
            _ => odd,
        };

    private static readonly Gen<string> s_doors =
        from lies in Some(2, ", lies: inset", ", lies: half overlay", ", hinge: butt")
        from plain in Words("", "overlay*", "gap*", "clear*")
        from framed in Words("", "groove", "tenon", "play*", "gap*")
        select $"  plain: {{of: face{lies}{(lies.Contains("lies", StringComparison.Ordinal) && plain.Contains("overlay", StringComparison.Ordinal) ? "" : plain)}}}\n  framed: {{frame: {{of: members}}, panel: thin{lies}{framed}}}\n";

    private static Gen<string> Filling(string key) => Gen.Frequency(
        (1, Gen.Const("")),
        (3, from how in Gen.Frequency((1, Words("fit: fixed", "setback*")), (1, Words("fit: dado", "dado", "setback*")), (2, Words("fit: adjustable", "play*", "pitch", "setback*")))
            from strip in Gen.Frequency((3, Gen.Const("")), (1, Value.Select(v => $", strip: {{of: ply, height: {v}}}")))
            from two in Gen.Bool
            select $", shelves: {{{how}{strip}, down: [{key}s1{(two ? $", {key}s2" : "")}]}}"),
        (3, from first in Words($"drawer: {key}d1", "front", "box height", "box width")
            select $", drawers: {{like: box, down: [{{{first}}}, {{drawer: {key}d2{(first.Contains("front", StringComparison.Ordinal) ? ", front: rest" : "")}}}]}}"),
        (2, from pair in Gen.Bool
            from like in One("plain", "framed")
            select $", doors: {{like: {like}, keys: [{key}l{(pair ? $", {key}r" : "")}]}}"));

    private static Gen<string> Content(string key) => Gen.Frequency(
        (2, Filling(key)),
        (1, from first in Filling(key + "a")
            from second in Filling(key + "b")
            from across in Gen.Bool
            from size in Gen.Frequency((4, Gen.Const("")), (1, Value))
            select $", {(across ? "across" : "down")}: [{{opening: {key}a{(size.Length > 0 ? $", {(across ? "width" : "height")}: {size}" : "")}{first}}}, {{{(across ? "partition" : "deck")}: {key}m}}, {{opening: {key}b{(size.Length > 0 ? $", {(across ? "width" : "height")}: rest" : "")}{second}}}]"));

    private static Gen<string> Case(string key, string stand) =>
        from odd in Gen.Frequency((4, Gen.Const("")), (2, One(s_case)))
        from value in Value
        from of in Gen.Frequency((4, Gen.Const("ply")), (1, Gen.Const("thin")), (1, Gen.Const("half")))
        from corners in Gen.Frequency((6, Some(1, ", corners: pocket", ", corners: dowels", ", corners: rabbet", ", corners: dado")), (1, One("rabbet", "dado").SelectMany(_ => Value, (j, v) => $", corners: {j}, corner depth: {v}")))
        from dividers in Gen.Frequency((6, Some(1, ", dividers: pocket", ", dividers: dowels", ", dividers: dado")), (1, Value.Select(v => $", dividers: dado, divider depth: {v}")))
        from back in Gen.Frequency((2, Some(1, ", back: thin", ", back: {of: half, fit: inset}", ", back: {of: thin, fit: grooved}")), (1, Words(", back: {of: thin, fit: grooved", "depth", "inset*", "play*").Select(w => w + "}")),
            (1, Words(", back: {of: half, fit: rabbeted", "depth", "inset*", "play*").Select(w => w + "}")), (1, Words(", back: {of: half, fit: inset", "inset*", "play*").Select(w => w + "}")))
        from foot in Gen.Frequency((5, Gen.Const("")), (2, Words(", toe: {of: ply", "height", "setback*").Select(w => w + "}")), (1, Words(", base: {of: ply", "height", "setback*").Select(w => w + "}")), (1, Value.Select(v => $", feet: {{kind: levellers, height: {v}}}")))
        from frame in Gen.Frequency((4, Gen.Const("")), (1, One(", face frame: {of: members}", ", face frame: {of: slips, joint: dowels}", ", face frame: {of: wide, joint: tenon}")), (1, Words(", face frame: {of: members, joint: tenon", "tenon", "overhang*").Select(w => w + "}")))
        from hung in Gen.Frequency((5, Gen.Const("")), (1, Value.Select(v => $", hanging rail: {{of: ply, width: {v}}}")))
        from filler in Gen.Frequency((5, Gen.Const("")), (1, Words("", "scribe*").SelectMany(_ => Value, (w, v) => $", filler: {{of: ply, width: {v}{w}}}")))
        from content in Content(key)
        select $"  - {{case: {key}, of: {of}, width: {(odd == "width" ? value : "24")}, height: {(odd == "height" ? value : "30")}, depth: {(odd == "depth" ? value : "16")}{corners}{dividers}{back}{foot}{frame}{hung}{filler}{stand}{content}}}\n";

    private static Gen<string> Frame(string key) =>
        from odd in One("", "", "", "", "width", "height", "depth", "toe")
        from value in Value
        from corners in Gen.Frequency((2, Some(1, ", corners: dowels", ", corners: tenon")), (1, Value.Select(v => $", corners: tenon, tenon: {v}")))
        from above in Gen.Frequency((3, Gen.Const("")), (1, Value.Select(v => $", above: {v}")))
        from panels in Gen.Frequency((2, Gen.Const("")), (2, Words(", panels: {of: thin, back: yes", "groove", "play*").Select(w => w + "}")))
        from two in Gen.Bool
        from setback in Gen.Frequency((3, Gen.Const("")), (1, Value.Select(v => $", setback: {v}")))
        from filling in Gen.Frequency((1, Gen.Const("")), (2, Filling(key + "x").Select(f => $", slide panels: ply{f}")))
        select $"  - {{frame: {key}, of: posts, width: {(odd == "width" ? value : "48")}, height: {(odd == "height" ? value : "34")}, depth: {(odd == "depth" ? value : "24")}, toe: {(odd == "toe" ? value : "4")}{corners}{above}{panels}, across: [{{opening: {key}1{filling}{(filling.Length == 0 ? setback : "")}}}{(two ? $", {{posts: {key}m}}, {{opening: {key}2}}" : "")}]}}\n";

    private static Gen<string> Structure(string key, string stand) => stand.Length > 0 ? Case(key, stand) : Gen.Frequency((3, Case(key, "")), (1, Frame(key)));

    /// <summary>The text of a piece.</summary>
    public static readonly Gen<string> Text =
        from drawers in s_drawers
        from doors in s_doors
        from grid in Some(12, "grid: 1 in\n", "grid: 1/4\n", "grid: 1/64\n")
        from first in Structure("P", "")
        from second in Gen.Frequency((3, Gen.Const("")), (1, Case("Q", ", beside: P")), (1, Case("Q", ", on: P")))
        from top in Gen.Frequency((2, Gen.Const("")), (1, Words("", "front*", "left*", "back*").Select(w => $"  - {{top: T, of: ply, overhang: {{right: 1{w}}}}}\n")))
        select $$$"""
            setout: 1
            name: Extreme
            unit: in
            {{{grid}}}materials:
              ply: {panel: hardwood plywood, thickness: 3/4, grain: free}
              face: {panel: hardwood plywood, thickness: 3/4, grain: free}
              half: {panel: hardwood plywood, thickness: 1/2, grain: free}
              thin: {panel: hardwood plywood, thickness: 1/4, grain: free}
              posts: {stick: pine, section: 1 1/2 x 3 1/2}
              members: {stick: oak, section: 3/4 x 1 1/2}
              wide: {stick: oak, section: 3/4 x 6}
              slips: {stick: oak, section: 3/4 x 1}
            drawers:
              box: {sides: half, bottom: thin, front: face{{{drawers}}}}
            doors:

            """ + doors + "assembly:\n" + first + second + top;
}
