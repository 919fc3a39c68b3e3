using CsCheck;
using static Setout.Shop.Tests.SettingOut.RandomWords;

namespace Setout.Shop.Tests.SettingOut;

/// <summary>Random pieces over the grammar, as the text a person would write.</summary>
internal static class RandomPiece
{
    /// <summary>What an opening holds, with keys that begin with a word of its own; nothing once the depth is used up.</summary>
    private static Gen<string> Content(string key, int depth)
    {
        Gen<string> open = Gen.Const("");
        Gen<string> shelves = Gen.Int[1, 4].Select(n => $"down: [{string.Join(", ", Enumerable.Range(1, n).Select(i => $"{key}s{i}"))}]").SelectMany(_ => RandomWords.Shelves, (down, how) => $", shelves: {{{how}{down}}}");
        Gen<string> drawers =
            from n in Gen.Int[1, 5]
            from how in RandomWords.Bank(n)
            select $", drawers: {{{how}, down: [{string.Join(", ", Enumerable.Range(1, n).Select(i => $"{{drawer: {key}d{i}}}"))}]}}";
        Gen<string> doors =
            from like in One("plain", "framed")
            from isPair in Gen.Bool
            from right in One("", ", hinges: right")
            from packing in One("", ", packing: posts")
            from inner in One("inner", "pulled")
            from behind in Gen.Frequency((2, open), (2, shelves), (1, Gen.Const($", down: [{{opening: {key}i, drawers: {{like: {inner}{packing}, down: [{{drawer: {key}j}}, {{drawer: {key}k}}]}}}}]")),
                (1, Gen.Const($", across: [{{opening: {key}i, shelves: {{fit: dado, down: [{key}j]}}}}, {{partition: {key}m}}, {{opening: {key}n, drawers: {{like: {inner}{packing}, down: [{{drawer: {key}o}}]}}}}]")))
            select $", doors: {{like: {like}, keys: [{key}l{(isPair ? $", {key}r" : "")}]{(isPair ? "" : right)}}}{behind}";
        if (depth == 0) return Gen.Frequency((1, open), (2, shelves), (2, drawers), (1, doors));
        Gen<string> divided =
            from across in Gen.Bool
            from first in Content(key + "a", depth - 1)
            from second in Content(key + "b", depth - 1)
            from size in Gen.Frequency((2, Gen.Const("")), (1, Length(60, 120).Select(l => $", {(across ? "width" : "height")}: {l}")))
            select $", {(across ? "across" : "down")}: [{{opening: {key}a{size}{first}}}, {{{(across ? "partition" : "deck")}: {key}m}}, {{opening: {key}b{second}}}]";
        return Gen.Frequency((1, open), (2, shelves), (2, drawers), (1, doors), (3, divided));
    }

    private static Gen<string> Case(string key, string stand) =>
        from width in Length(96, 400)
        from height in Length(120, 320)
        from depth in Length(80, 200)
        from words in RandomWords.Case
        from content in Content(key, 2)
        select $"  - {{case: {key}, of: ply, width: {width}, height: {height}, depth: {depth}{words}{stand}{content}}}\n";

    /// <summary>A bay between bare posts, divided by one pair of rails or two, with a drawer on runners above each, or something else.</summary>
    private static Gen<string> Railed(string key) =>
        from bearers in One("", ", bearers: strips")
        from rails in Gen.Int[1, 2]
        from way in One("", ", laid: flat", ", of: strips", ", setback: 1/2", ", laid: flat, setback: 1")
        from filled in Gen.Int[0, 2].Array[rails + 1]
        select $"{bearers}, down: [{string.Join(", ", filled.Select((f, i) => (i > 0 ? $"{{rail: {key}r{i}{way}}}, " : "") + $"{{opening: {key}{i}{(f == 0 ? "" : f == 1 ? $", shelves: {{of: ply, down: [{key}s{i}]}}" : $", drawers: {{like: run, down: [{{drawer: {key}d{i}}}]}}")}}}"))}]";

    private static Gen<string> Frame(string key, string stand) =>
        from width in Length(160, 600)
        from height in Length(200, 320)
        from depth in Length(120, 240)
        from toe in Length(0, 48)
        from flat in One("", ", top rails: flat")
        from corners in One("", ", corners: dowels", ", corners: tenon", ", corners: tenon, tenon: 3/4")
        from above in Gen.Frequency((3, Gen.Const("")), (1, Length(1, 8).Select(l => $", above: {l}")))
        from panels in Gen.Frequency((2, Gen.Const("")), (1, One(", panels: {of: thin}", ", panels: {of: thin, back: yes}", ", panels: {of: thin, ends: no, back: yes, groove: 3/8}")))
        from bays in Gen.Int[1, 3]
        from filled in Gen.Frequency((2, Content(key + "x", 1).Select(c => c.Length > 0 ? ", slide panels: ply" + c : "")), (1, Railed(key + "y")))
        select $"  - {{frame: {key}, of: posts, width: {width}, height: {height}, depth: {depth}, toe: {toe}{flat}{corners}{above}{panels}{stand}, across: [{string.Join(", ", Enumerable.Range(1, bays).Select(i =>
            $"{(i > 1 ? $"{{posts: {key}m{i}}}, " : "")}{{opening: {key}{i}{(i == 1 ? filled : "")}}}"))}]}}\n";

    private static Gen<string> Structure(string key, string stand) => Gen.Frequency((3, Case(key, stand)), (1, Frame(key, stand)));

    /// <summary>A piece of one to three structures, often with a top.</summary>
    public static readonly Gen<string> Text = Piece(
        from first in Structure("P", "")
        from second in Gen.Frequency((1, Gen.Const("")), (1, Structure("Q", ", beside: P")))
        from third in Gen.Frequency((2, Gen.Const("")), (1, Case("R", ", on: P")))
        from top in Gen.Frequency((1, Gen.Const("")), (1, Length(0, 16).SelectMany(_ => RandomWords.Top, (l, words) => $"  - {{top: T, of: ply, on: P, overhang: {{front: {l}, left: {l}}}{words}}}\n")))
        select first + second + (third.Length > 0 ? third : top));

    /// <summary>A piece of one case.</summary>
    public static readonly Gen<string> OneCase = Piece(Case("P", ""));

    private static Gen<string> Piece(Gen<string> assembly) =>
        from ply in Edges
        from face in Edges
        from drawers in Drawers
        from doors in Doors
        from structures in assembly
        select $$$"""
            setout: 1
            name: Random
            unit: in
            materials:
              ply: {panel: hardwood plywood, thickness: 23/32, grain: free{{{ply}}}}
              face: {panel: hardwood plywood, thickness: 3/4, grain: free{{{face}}}}
              thin: {panel: hardwood plywood, thickness: 1/4, grain: free}
              posts: {stick: pine, section: 1 1/2 x 3 1/2}
              strips: {stick: oak, section: 1/4 x 7/8}
              members: {stick: oak, section: 3/4 x 1 1/2}
              wide: {stick: oak, section: 3/4 x 2 1/4}
              slips: {stick: oak, section: 3/4 x 1}
              solid: {panel: cherry, thickness: 1/4}
            drawers:

            """ + drawers + "doors:\n" + doors + "assembly:\n" + structures;
}
