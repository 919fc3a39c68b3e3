using CsCheck;

namespace Setout.Shop.Tests.SettingOut;

/// <summary>Random pieces over the grammar, as the text a person would write.</summary>
internal static class RandomPiece
{
    private static readonly Gen<string> s_edges = Gen.Frequency((3, Gen.Const("")), (1, One(", edges: chamfered", ", edges: banded", ", edges: banded, band: 1/8", ", edges: lipped, lip: strips")));

    private static Gen<string> One(params string[] words) => Gen.Int[0, words.Length - 1].Select(i => words[i]);

    private static Gen<string> Length(int leastEighths, int mostEighths) => Gen.Int[leastEighths, mostEighths].Select(e => e % 8 == 0 ? $"{e / 8}" : $"{e / 8} {e % 8}/8");

    /// <summary>What an opening holds, with keys that begin with a word of its own; nothing once the depth is used up.</summary>
    private static Gen<string> Content(string key, int depth)
    {
        Gen<string> open = Gen.Const("");
        Gen<string> shelves = Gen.Int[1, 4].Select(n => $", shelves: {{down: [{string.Join(", ", Enumerable.Range(1, n).Select(i => $"{key}s{i}"))}]}}");
        Gen<string> drawers = Gen.Int[1, 5].Select(n => $", drawers: {{like: box, down: [{string.Join(", ", Enumerable.Range(1, n).Select(i => $"{{drawer: {key}d{i}}}"))}]}}");
        if (depth == 0) return Gen.Frequency((1, open), (2, shelves), (2, drawers));
        Gen<string> divided =
            from across in Gen.Bool
            from first in Content(key + "a", depth - 1)
            from second in Content(key + "b", depth - 1)
            from size in Gen.Frequency((2, Gen.Const("")), (1, Length(60, 120).Select(l => $", {(across ? "width" : "height")}: {l}")))
            select $", {(across ? "across" : "down")}: [{{opening: {key}a{size}{first}}}, {{{(across ? "partition" : "deck")}: {key}m}}, {{opening: {key}b{second}}}]";
        return Gen.Frequency((1, open), (2, shelves), (2, drawers), (3, divided));
    }

    private static Gen<string> Case(string key, string stand) =>
        from width in Length(96, 400)
        from height in Length(120, 320)
        from depth in Length(80, 200)
        from back in One(", back: thin", "")
        from content in Content(key, 2)
        select $"  - {{case: {key}, of: ply, width: {width}, height: {height}, depth: {depth}{back}{stand}{content}}}\n";

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
        from filled in Content(key + "x", 1)
        select $"  - {{frame: {key}, of: posts, width: {width}, height: {height}, depth: {depth}, toe: {toe}{flat}{corners}{above}{panels}{stand}, across: [{string.Join(", ", Enumerable.Range(1, bays).Select(i =>
            $"{(i > 1 ? $"{{posts: {key}m{i}}}, " : "")}{{opening: {key}{i}{(i == 1 && filled.Length > 0 ? ", slide panels: ply" + filled : "")}}}"))}]}}\n";

    private static Gen<string> Structure(string key, string stand) => Gen.Frequency((3, Case(key, stand)), (1, Frame(key, stand)));

    /// <summary>A piece of one to three structures, often with a top.</summary>
    public static readonly Gen<string> Text =
        from ply in s_edges
        from face in s_edges
        from first in Structure("P", "")
        from second in Gen.Frequency((1, Gen.Const("")), (1, Structure("Q", ", beside: P")))
        from third in Gen.Frequency((2, Gen.Const("")), (1, Case("R", ", on: P")))
        from top in Gen.Frequency((1, Gen.Const("")), (1, Length(0, 16).Select(l => $"  - {{top: T, of: ply, on: P, overhang: {{front: {l}, left: {l}}}}}\n")))
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
            drawers:
              box: {sides: ply, bottom: thin, front: face}
            assembly:

            """ + first + second + (third.Length > 0 ? third : top);
}
