using CsCheck;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Testing;
using static Setout.Shop.Tests.SettingOut.RandomWords;
using static Setout.Shop.Tests.SettingOut.Sample;

namespace Setout.Shop.Tests.SettingOut;

/// <summary>
/// Frames of every kind with what may stand in their bays, of sticks that go together: each can be set out, nothing is in another's place, and what is said to
/// run on, hang on or stand between something touches it.
/// </summary>
public class RandomFrameTests
{
    private static Gen<string> Drawer(string key, string kind) => Gen.Const($", drawers: {{like: {kind}, down: [{{drawer: {key}d}}]}}");

    /// <summary>What an opening between rails holds.</summary>
    private static Gen<string> Filling(string key) =>
        from what in Gen.Frequency((1, Gen.Const("")), (1, Gen.Const($", shelves: {{of: ply, down: [{key}s]}}")), (2, Drawer(key, "run")), (1, Drawer(key, "own")))
        from behind in Gen.Frequency((3, Gen.Const("")), (1, Gen.OneOf(Drawer(key + "b", "run"), Drawer(key + "b", "own")).Select(d => $", from behind: {{opening: {key}b{d}}}")))
        select what + behind;

    private static Gen<string> Bay(string key) =>
        from bearers in One("", ", bearers: slim")
        from setback in One("", "", ", setback: 1/4")
        from rails in Gen.Int[0, 2]
        from way in One("", ", laid: flat", ", of: slim", ", setback: 1/2")
        from filled in Filling(key + "x").Array[rails + 1]
        from ends in One("", ", shelves: {of: ply, past posts: 1, lowest: at the bottom, down: [KEYe1, KEYe2]}, slats: {of: slats, count: 3, at: both}", ", shelves: {of: ply, grain: front to back, down: [KEYe1]}")
            // Fronts on the face lie on posts and rails: nothing stands back behind these.
        select ends.Length > 0 && rails == 0 ? bearers + setback + ends.Replace("KEY", key, StringComparison.Ordinal)
            : $"{bearers}{(filled.Any(f => f.Contains("like: run", StringComparison.Ordinal)) ? "" : setback)}, down: [{string.Join(", ", filled.Select((f, i) => (i > 0 ? $"{{rail: {key}r{i}{way}}}, " : "") + $"{{opening: {key}{i}{Named(f, $"{key}{i}", key + "x")}}}"))}]";

    private static string Named(string text, string key, string from) => text.Replace(from, key, StringComparison.Ordinal);

    private static readonly Gen<string> s_frame =
        from width in Length(320, 640)
        from height in Length(240, 320)
        from depth in Length(160, 240)
        from kind in One("", ", rails run: lapped", ", rails run: outside", ", rails run: inside", ", top rails: flat", ", corners: tenon", ", corners: dowels", ", corners: tenon, panels: {of: thin, back: yes}", ", rails run: outside, corners: tenon", ", corners: dowels, panels: {of: thin}")
        from bottom in One("", "", ", bottom rails: no")
        from above in Some(3, ", above: 1")
        from stretchers in Some(2, ", stretchers: [{stretcher: SE, of: slim, up: 1}, {stretcher: SM, of: slim, at: middle, up: 1}]", ", stretchers: [{stretcher: SF, of: slim, at: front, up: 1}, {stretcher: SB, of: slim, at: back, up: 1}]")
        from bays in Gen.Int[1, 2]
        from first in Bay("A")
        from second in Bay("B")
        select $$"""
            setout: 1
            name: Random frame
            unit: in
            materials:
              posts: {stick: pine, section: 2 x 3}
              rails: {stick: pine, section: 3/4 x 2 1/2}
              slim: {stick: pine, section: 3/4 x 1 3/4}
              low: {stick: pine, section: 1/2 x 3/4}
              slats: {stick: pine, section: 1/4 x 1}
              ply: {panel: hardwood plywood, thickness: 1/2, grain: free}
              thin: {panel: hardwood plywood, thickness: 1/4, grain: free}
            drawers:
              run: {sides: ply, bottom: thin, front: ply, slides: runners, runner: low}
              own: {sides: ply, bottom: thin, front: ply, slides: runners, runner: low, fronts: inset, false front: no, corners: rabbet}
            assembly:
              - {frame: F, of: posts, rails: rails, width: {{width}}, height: {{height}}, depth: {{depth}}, toe: 6{{kind}}{{bottom}}{{above}}{{stretchers}}, across: [{opening: A{{first}}}{{(bays == 2 ? $", {{posts: M}}, {{opening: B{second}}}" : "")}}]}

            """;

    // What a person would be told of such a frame, and rightly.
    private static readonly string[] s_rightly = ["frame.panels-want-rails", "opening.no-behind", "frame.nothing-to-screw-to", "rail.misses-the-posts", "slats.behind-panel"];

    [Fact]
    public void AnyFrame_SetOut_HoldsTogether()
    {
        int whole = 0, all = 0;
        s_frame.Holds(text =>
        {
            SetPiece set = SetOut(text);
            Interlocked.Increment(ref all);
            string[] stops = [.. set.Findings.Where(f => f.Severity == Severity.Stop && !s_rightly.Contains(f.Code)).Select(f => $"{f.Code} {f.Key}: {f.Words}")];
            Assert.True(stops.Length == 0, $"{string.Join("\n", stops)}\n{text}");
            if (set.IsStopped) return;
            Interlocked.Increment(ref whole);
            string[] wrong = [.. RandomPieceTests.Wrong(set), .. Loose(set)];
            Assert.True(wrong.Length == 0, $"{string.Join("\n", wrong)}\n{text}");
        }, iter: 300, print: t => t);
        Assert.True(whole * 2 > all, $"Only {whole} of {all} frames could be set out: the others tell little.");
    }

    /// <summary>Sticks that touch nothing at one of their ends.</summary>
    private static IEnumerable<string> Loose(SetPiece set)
    {
        List<(Part Part, Placement Box)> solid = [.. set.Parts.Where(p => p.Role is PartRole.Post or PartRole.Rail or PartRole.Tie or PartRole.Partition or PartRole.SlidePanel).SelectMany(p => p.Placements.Select(b => (p, b)))];
        foreach (Part part in set.Parts.Where(p => p.Role is PartRole.Rail or PartRole.Tie or PartRole.Runner or PartRole.Kicker or PartRole.Bearer))
        {
            foreach (Placement box in part.Placements)
            {
                bool isAlong = box.SizeX > box.SizeY;
                // Touching, or going in: nothing between its end and the other.
                bool At(Core.Measures.ExactLength end) => solid.Any(o => o.Part != part && (isAlong ? o.Box.X <= end && end <= o.Box.X + o.Box.SizeX && Meet(o.Box.Y, o.Box.SizeY, box.Y, box.SizeY) : o.Box.Y <= end && end <= o.Box.Y + o.Box.SizeY && Meet(o.Box.X, o.Box.SizeX, box.X, box.SizeX)) && Meet(o.Box.Z, o.Box.SizeZ, box.Z, box.SizeZ));
                if (!At(isAlong ? box.X : box.Y) || !At(isAlong ? box.X + box.SizeX : box.Y + box.SizeY)) yield return $"{part.Key} touches nothing at one end";
            }
        }
    }

    // Rails on the faces of the posts touch them face to face.
    private static bool Meet(Core.Measures.ExactLength a, Core.Measures.ExactLength aSize, Core.Measures.ExactLength b, Core.Measures.ExactLength bSize) => Core.Measures.ExactLength.Min(a + aSize, b + bSize) >= Core.Measures.ExactLength.Max(a, b);
}
