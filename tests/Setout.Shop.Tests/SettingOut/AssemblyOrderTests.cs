using System.Collections.Immutable;
using CsCheck;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Testing;

namespace Setout.Shop.Tests.SettingOut;

/// <summary>Each part goes straight into its place past what is there already, in the order of the steps.</summary>
public class AssemblyOrderTests
{
    public static TheoryData<string> Pieces
    {
        get
        {
            var names = new TheoryData<string>();
            foreach (string folder in new[] { "samples", "tests/Setout.Shop.Tests/SettingOut/Pieces" })
                foreach (string file in Directory.GetFiles(Repository.PathOf(folder), "*.yaml").Where(f => !f.EndsWith("shop.yaml", StringComparison.Ordinal)).Order(StringComparer.Ordinal))
                    names.Add($"{folder}/{Path.GetFileName(file)}");
            return names;
        }
    }

    private static Gen<string> One(params string[] words) => Gen.Int[0, words.Length - 1].Select(i => words[i]);

    private static readonly Gen<string> s_kind =
        from corners in One("pocket", "butt", "rabbet", "dado", "lock rabbet", "box joint", "half-blind dovetail", "through dovetail")
        from fit in One("grooved", "slid in", "applied", "let in")
        from runs in One("side", "under", "runners, runner: strips")
        from front in One("overlay", "half overlay", "inset")
        select $"{{sides: thin, bottom: back, front: ply, corners: {corners}, bottom fit: {fit}, slides: {runs}, fronts: {front}}}";

    private static Gen<string> Filled(string key) => Gen.OneOf(
        Gen.Int[1, 3].Select(n => $"drawers: {{like: box, down: [{string.Join(", ", Enumerable.Range(1, n).Select(i => $"{{drawer: {key}d{i}}}"))}]}}"),
        from fit in One("fixed", "dado", "adjustable")
        from strip in One("", ", strip: {of: strips}")
        select $"shelves: {{fit: {fit}{strip}, down: [{key}s1, {key}s2]}}",
        from fit in One("fixed", "dado", "adjustable")
        from kind in One("slab", "framed")
        from keys in One($"{key}h1", $"{key}h1, {key}h2")
        select $"doors: {{like: {kind}, keys: [{keys}]}}, shelves: {{fit: {fit}, down: [{key}s1]}}");

    private static Gen<string> Divided(string key) =>
        from a in Filled(key + "a")
        from b in Filled(key + "b")
        from c in Filled(key + "c")
        from d in Filled(key + "d")
        from way in One(
            $"across: [{{opening: {key}1, {a}}}, {{partition: {key}p}}, {{opening: {key}2, {b}}}]",
            $"down: [{{opening: {key}1, {a}}}, {{deck: {key}e}}, {{opening: {key}2, {b}}}]",
            $"across: [{{opening: {key}1, down: [{{opening: {key}3, {a}}}, {{deck: {key}e}}, {{opening: {key}4, {b}}}]}}, {{partition: {key}p}}, {{opening: {key}2, down: [{{opening: {key}5, {c}}}, {{deck: {key}f}}, {{opening: {key}6, {d}}}]}}]",
            $"down: [{{opening: {key}1, across: [{{opening: {key}3, {a}}}, {{partition: {key}p}}, {{opening: {key}4, {b}}}]}}, {{deck: {key}e}}, {{opening: {key}2, {c}}}]")
        select way;

    private static Gen<string> Case(string key, string stand) =>
        from corners in One("butt", "pocket", "dowels", "rabbet", "dado")
        from dividers in One("butt", "pocket", "dowels", "dado")
        from back in One("", ", back: back", ", back: {of: thin, fit: inset}", ", back: {of: back, fit: rabbeted}", ", back: {of: back, fit: grooved}", ", back: {of: back, fit: grooved}, hanging rail: {of: ply}")
        from foot in One("", ", toe: {}", ", base: {of: ply}", ", feet: {height: 3, kind: levellers}")
        from frame in One("", "", ", face frame: {of: strips, packing: posts}", ", face frame: {of: strips, joint: tenon, packing: posts}")
        from content in Divided(key)
        select $"  - {{case: {key}, of: ply, width: 44, height: 40, depth: 22, corners: {corners}, dividers: {dividers}{back}{foot}{frame}{stand}, {content}}}\n";

    private static readonly Gen<string> s_top = One("", "  - {top: T, of: ply}\n", "  - {top: T, of: ply, overhang: {front: 1, left: 1}, edging: {of: strips}}\n",
        "  - {top: T, of: ply, layers: [{of: ply, seams: [20]}, ply], edging: {of: strips, corners: butted}}\n", "  - {top: T, of: ply, laminate: {of: HGS, edges: [front, left]}}\n");

    private static readonly Gen<string> s_text =
        from kind in s_kind
        from lie in One("overlay", "inset", "half overlay")
        from first in Case("P", "")
        from second in Gen.Frequency((2, Gen.Const("")), (1, Case("Q", ", beside: P")))
        from top in s_top
        from third in Gen.Frequency((2, Gen.Const("")), (1, Case("R", top.Length > 0 ? ", on: T" : ", on: P")))
        select $$$"""
            setout: 1
            name: Random
            unit: in
            materials:
              ply: {panel: hardwood plywood, thickness: 3/4, grain: free}
              thin: {panel: hardwood plywood, thickness: 1/2, grain: free}
              back: {panel: hardwood plywood, thickness: 1/4, grain: free}
              strips: {stick: oak, section: 3/4 x 1 1/2}
              posts: {stick: pine, section: 1 1/2 x 3 1/2}
            drawers:
              box: {{{kind}}}
            doors:
              slab: {of: ply, lies: {{{lie}}}}
              framed: {frame: {of: strips}, panel: back, lies: {{{lie}}}}
            assembly:

            """ + first + second + top + third;

    [Theory]
    [MemberData(nameof(Pieces))]
    public void Steps_OfEachPieceInFiles_CanBeDone(string file) =>
        Assert.Empty(AssemblyChecker.Violations(Sample.SetOut(File.ReadAllText(Repository.PathOf(file)))));

    [Fact]
    public void Steps_OfAnyPiece_CanBeDone() => AssertDone(RandomPiece.Text, 200);

    [Fact]
    public void Steps_OfAnyCaseWithAnyWords_CanBeDone() => AssertDone(s_text, 300);

    [Fact]
    public void CasesOfARow_AreSetByOneAnotherAndLevelledBeforeTheirTop()
    {
        SetPiece set = Sample.SetOut(Row("toe: {}"));
        string[] words = [.. set.Steps.Where(s => s.Stage == Stage.Top).Select(s => s.Words)];
        Assert.StartsWith("Stand case P in its place: level it", words[0], StringComparison.Ordinal);
        Assert.StartsWith("Set case Q beside P, fronts in line and level with it. Stand case Q", words[1], StringComparison.Ordinal);
        Assert.StartsWith("Clamp case Q to case P, level with it", words[2], StringComparison.Ordinal);
        Assert.StartsWith("Two people lay the top on", words[3], StringComparison.Ordinal);
        Assert.StartsWith("Set case R on T, backs in line, and screw it down through its bottom near each corner, 4 screws.", words[4], StringComparison.Ordinal);
        Assert.Equal(5, words.Length);
        Assert.Empty(AssemblyChecker.Violations(set));
    }

    [Fact]
    public void CasesOfARow_WithoutFeet_AreSetByOneAnother() => Assert.Equal(
        ["Set case Q beside P, fronts in line and level with it.", "Clamp case Q to case P, level with it and fronts in line, and screw the two sides together: 4 screws, clear of hinges, pins and slides.", "Two people lay the top on", "Set case R on T, backs in line, and screw it down through its bottom near each corner, 4 screws."],
        Sample.SetOut(Row("dividers: butt")).Steps.Where(s => s.Stage == Stage.Top).Select(s => s.Words.Split(" with its", StringSplitOptions.None)[0]));

    private static string Row(string words) => $$"""
        setout: 1
        name: Row
        unit: in
        materials:
          ply: {panel: hardwood plywood, thickness: 3/4}
        assembly:
          - {case: P, of: ply, width: 30, height: 30, depth: 20, {{words}}}
          - {case: Q, of: ply, width: 30, height: 30, depth: 20, beside: P, {{words}}}
          - {top: T, of: ply, on: [P, Q]}
          - {case: R, of: ply, width: 60, height: 30, depth: 10, on: T}
        """;

    [Fact]
    public void ShelvesOnPins_LongerThanTheWayPastAFaceFrame_GoInBeforeItAndAreTold()
    {
        // Sides of 3/4 in, stiles 1 1/2 wide: the frame stands 3/4 in inside of each side, 1 1/2 in both; play 1/8 in: 1 3/8 in too long.
        string text = """
            setout: 1
            name: Behind
            unit: in
            materials:
              ply: {panel: hardwood plywood, thickness: 3/4}
              oak: {stick: oak, section: 3/4 x 1 1/2}
            assembly:
              - {case: C, of: ply, width: 30, height: 40, depth: 14, face frame: {of: oak}, shelves: {fit: adjustable, down: [S]}}
            """;
        SetPiece set = Sample.SetOut(text);
        Finding found = Assert.Single(set.Findings, f => f.Code == "shelf.behind-frame");
        Assert.Contains("are 1 3/8 in longer than the way", found.Words, StringComparison.Ordinal);
        Assert.Equal("Write 'play: 1 1/2 in' or more for shelves that go in and out past it.", found.Remedy);
        int At(SetPiece of, string part) => of.Steps.Select((s, i) => (s, i)).Single(s => s.s.Parts.Contains(part)).i;
        Assert.True(At(set, "S") < At(set, "C.stile"));
        SetPiece loose = Sample.SetOut(text.Replace("adjustable,", "adjustable, play: 1 1/2,", StringComparison.Ordinal));
        Assert.DoesNotContain(loose.Findings, f => f.Code == "shelf.behind-frame");
        Assert.True(At(loose, "S") > At(loose, "C.stile"));
        Assert.Empty(AssemblyChecker.Violations(loose));
        // A tick shorter of play is a tick too long.
        Assert.Single(Sample.SetOut(text.Replace("adjustable,", "adjustable, play: 1.49999,", StringComparison.Ordinal)).Findings, f => f.Code == "shelf.behind-frame");
    }

    private static void AssertDone(Gen<string> texts, int count)
    {
        int whole = 0, all = 0;
        texts.Holds(text =>
        {
            SetPiece set = Sample.SetOut(text);
            Interlocked.Increment(ref all);
            if (set.IsStopped) return;
            Interlocked.Increment(ref whole);
            string wrong = string.Join("\n", AssemblyChecker.Violations(set));
            Assert.True(wrong.Length == 0, $"{wrong}\n{text}");
        }, iter: count, print: t => t);
        Assert.True(whole * 4 > all, $"Only {whole} of {all} pieces could be set out: the others tell little.");
    }
}
