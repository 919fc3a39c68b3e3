using CsCheck;

namespace Setout.Shop.Tests.SettingOut;

/// <summary>Random words of cases, frames, drawers, doors, shelves and tops, as a person would write them.</summary>
internal static class RandomWords
{
    /// <summary>One of several texts.</summary>
    public static Gen<string> One(params string[] words) => Gen.Int[0, words.Length - 1].Select(i => words[i]);

    /// <summary>Mostly nothing; else one of several texts.</summary>
    public static Gen<string> Some(int none, params string[] words) => Gen.Frequency((none, Gen.Const("")), (1, One(words)));

    /// <summary>A length in eighths of an inch.</summary>
    public static Gen<string> Length(int leastEighths, int mostEighths) => Gen.Int[leastEighths, mostEighths].Select(e => e % 8 == 0 ? $"{e / 8}" : $"{e / 8} {e % 8}/8");

    /// <summary>How edges of a sheet that are seen are treated.</summary>
    public static readonly Gen<string> Edges = Some(2, ", edges: chamfered", ", edges: banded", ", edges: banded, band: 1/8", ", edges: lipped, lip: strips");

    /// <summary>The joints, back, foot and front of a case.</summary>
    public static readonly Gen<string> Case =
        from corners in Some(1, ", corners: pocket", ", corners: dowels", ", corners: rabbet", ", corners: dado", ", corners: dado, corner depth: 1/4")
        from dividers in Some(1, ", dividers: pocket", ", dividers: dowels", ", dividers: dado", ", dividers: dado, divider depth: 3/16")
        from back in One("", ", back: thin", ", back: {of: thin, fit: inset}", ", back: {of: thin, fit: rabbeted}", ", back: {of: thin, fit: grooved}", ", back: {of: thin, fit: grooved}, hanging rail: {of: ply}")
        from foot in Some(2, ", toe: {height: 3 1/2}", ", toe: {height: 4, setback: 2}", ", base: {of: ply}", ", base: {of: ply, height: 3}", ", feet: {kind: levellers, height: 4}", ", feet: {kind: castors, height: 3}")
        from frame in Some(3, ", face frame: {of: members}", ", face frame: {of: members, joint: tenon}", ", face frame: {of: members, joint: dowels, overhang: 1/4}", ", face frame: {of: members, mullions: wide, packing: posts}")
        from filler in Some(4, ", filler: {of: ply, width: 2}", ", filler: {of: ply, width: 1 1/2, at: right}", ", filler: [{of: members, width: 1, at: left}, {of: ply, width: 2, at: right}]")
        select corners + dividers + back + foot + frame + filler;

    /// <summary>Kinds of drawer, one of them for rails.</summary>
    public static readonly Gen<string> Drawers =
        from corners in Some(1, ", corners: butt", ", corners: rabbet", ", corners: dado", ", corners: lock rabbet", ", corners: box joint", ", corners: half-blind dovetail", ", corners: through dovetail")
        from bottom in Some(1, ", bottom fit: slid in", ", bottom fit: applied", ", bottom fit: let in", ", bottom fit: grooved")
        from slides in Some(1, ", slides: under", ", slides: runners, runner: slips")
        from fronts in Some(1, ", fronts: inset", ", fronts: half overlay")
        from handles in Some(2, ", handles: {of: oak knob}", ", handles: {of: bar pull, place: in line, apart: 3}")
        from other in Some(1, ", fronts: inset", ", corners: rabbet, bottom fit: let in", ", overlay: 1/4, gap: 3/32")
        select $"  box: {{sides: ply, bottom: thin, front: face{corners}{bottom}{slides}{fronts}{handles}}}\n  tray: {{sides: ply, bottom: thin, front: face{other}}}\n  inner: {{sides: ply, bottom: thin, front: face, fronts: inset}}\n  pulled: {{sides: ply, bottom: thin, front: face, fronts: inset, slides: runners, runner: slips}}\n  run: {{sides: ply, bottom: thin, front: face, slides: runners, runner: strips}}\n";

    /// <summary>Two kinds of door.</summary>
    public static readonly Gen<string> Doors =
        from plain in Some(1, ", lies: inset", ", lies: half overlay", ", hinge: butt", ", gap: 3/32", ", clear: 1/2, catch: magnetic catch", ", handles: {of: oak knob}")
        from framed in Some(1, ", lies: inset", ", tenon: 1", ", groove: 1/4, play: 1/8", ", lies: half overlay", ", clear: 0", ", handles: {of: bar pull, place: in line, apart: 3}")
        from panel in One("thin", "solid")
        select $"  plain: {{of: face{plain}}}\n  framed: {{frame: {{of: members, rails: wide}}, panel: {panel}{framed}}}\n";

    /// <summary>How a bank is filled besides its drawers.</summary>
    public static Gen<string> Bank(int drawers) => Gen.Frequency((4, One("like: box", "like: tray")), (1, Gen.Const($"like: box, graduated: \"{string.Join(':', Enumerable.Range(3, drawers))}\"")));

    /// <summary>How shelves are held.</summary>
    public static readonly Gen<string> Shelves = Some(1, "fit: dado, ", "fit: adjustable, ", "fit: adjustable, strip: {of: members}, ", "setback: 1/4, ", "fit: dado, setback: 1/8, ", "strip: {of: ply, height: 1 1/2}, ");

    /// <summary>What a top is made up of.</summary>
    public static readonly Gen<string> Top =
        from layers in Some(1, ", layers: [ply, ply]", ", layers: [face, {of: ply, seams: [12]}]")
        from edging in Some(1, ", edging: {of: members}", ", edging: {of: strips, corners: butted}", ", edging: {of: members, corners: pinwheel, sides: [front, back, left, right]}",
            ", edging: {of: members, corners: ends run past, sides: [front, left, right], raised: 1/16}")
        from laminate in Some(2, ", laminate: {of: HGS}", ", laminate: {of: VGS, faces: both}", ", laminate: {of: HGS, backer: 1/32}")
        from slots in Some(2, ", slots: [{slot: K, along: front, from: 3, width: 3/4, depth: 3/8}]", ", slots: [{slot: K, along: left, from: 2 1/2, width: 1/2, depth: 1/4, short: 2, bit: 1/4}]")
        select layers + edging + laminate + slots;
}
