using System.Text.RegularExpressions;
using CsCheck;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Shop.Plans;
using Setout.Testing;

namespace Setout.Shop.Tests.SettingOut;

/// <summary>What holds of every piece, whatever is written: no crash, every part in its place and in one step, no two in one place unless a joint says so.</summary>
public class RandomPieceTests
{
    private static SetPiece Out(string text)
    {
        (PieceSource? source, var findings) = PieceSource.Read(text, null, Sample.Text("shop.yaml"));
        Assert.True(source is not null, text + string.Join("; ", findings.Select(f => f.Finding.Words)));
        return source.SetOut();
    }

    [Fact]
    public void AnyPiece_SetOut_HoldsTogether()
    {
        int whole = 0, all = 0;
        RandomPiece.Text.Holds(text =>
        {
            SetPiece set = Out(text);
            Interlocked.Increment(ref all);
            Assert.All(set.Findings, f => Assert.False(string.IsNullOrEmpty(f.Remedy), f.Code));
            Assert.DoesNotContain(set.Findings, f => f.Code.StartsWith("working.", StringComparison.Ordinal));
            // Two structures may stand in each other's way; within one the rules see to it that nothing does.
            if (!text.Contains("beside: P", StringComparison.Ordinal) && !text.Contains("on: P", StringComparison.Ordinal)) Assert.DoesNotContain(set.Findings, f => f.Code is "part.in-the-way" or "part.no-size");
            if (set.IsStopped) return;
            Interlocked.Increment(ref whole);
            string wrong = string.Join("\n", Wrong(set));
            Assert.True(wrong.Length == 0, $"{wrong}\n{text}");
        }, iter: 400, print: t => t);
        Assert.True(whole * 4 > all, $"Only {whole} of {all} pieces could be set out: the others tell little.");
    }

    [Fact]
    public void RowOfEightCases_EveryIdentityHolds()
    {
        const string keys = "ABCDEFGH";
        string cases = string.Concat(keys.Select((k, i) =>
            $"  - {{case: {k}, of: ply, width: {20 + i} {i + 1}/16, height: 34 1/2, depth: 24, back: thin{(i > 0 ? $", beside: {keys[i - 1]}" : "")}, across: [{{opening: {k}a, drawers: {{like: box, down: [{string.Join(", ", Enumerable.Range(1, 7).Select(d => $"{{drawer: {k}d{d}}}"))}]}}}}, {{partition: {k}p}}, {{opening: {k}b, shelves: {{down: [{k}s1, {k}s2, {k}s3]}}}}]}}\n"));
        SetPiece set = Out("""
            setout: 1
            name: Row of eight
            unit: in
            materials:
              ply: {panel: hardwood plywood, label: 3/4, grain: free}
              thin: {panel: hardwood plywood, label: 1/4, grain: free}
            drawers:
              box: {sides: ply, bottom: thin, front: ply}
            assembly:

            """ + cases + "  - {top: T, of: ply, overhang: {front: 1, left: 1/2, right: 1/2}}\n");

        Assert.False(set.IsStopped, string.Join("; ", set.Findings.Select(f => f.Words)));
        Assert.InRange(set.Parts.Sum(p => p.Count), 400, 600);
        Assert.Empty(Wrong(set));
        // Outside = inside + thicknesses, case by case, and the row is as long as they are.
        ExactLength row = keys.Aggregate(ExactLength.Zero, (sum, k) => sum + set.Value($"{k}.outside"));
        Assert.All(keys, k => Assert.Equal(set.Value($"{k}.outside"), set.Value($"{k}.opening.width") + (set.Value("ply.thickness") * 2)));
        Assert.All(keys, k => Assert.Equal(set.Value($"{k}.side.length.as-cut"), set.Value($"{k}.face-height") + (set.Value("ply.thickness") * 2)));
        Assert.Equal(row + ExactLength.FromInches(1), set.Value("T.length"));
        Assert.Equal(row - set.Value("H.outside"), set.Value("H.left"));
    }

    internal static IEnumerable<string> Wrong(SetPiece set)
    {
        foreach (Part part in set.Parts)
        {
            int steps = set.Steps.Count(s => s.Parts.Contains(part.Key));
            if (steps != 1 && part.Role is not PartRole.Loose) yield return $"{part.Key} is in {steps} steps";
            if (part.Placements.Length > 0 && part.Placements.Length != part.Count) yield return $"{part.Key} has {part.Placements.Length} places for {part.Count}";
        }
        foreach (string key in set.Steps.SelectMany(s => s.Parts).Where(k => !set.Parts.Any(p => p.Key == k))) yield return $"a step names {key}, which is no part";
        foreach (ClosedChain chain in set.Chains)
        {
            if (chain.Misfit(set.Worked) is not { Sign: 0 }) yield return $"{chain.Name} does not close: {chain.Misfit(set.Worked)}";
        }
        List<(Part Part, int Number, Placement Box)> boxes = [.. set.Parts.SelectMany(p => p.Placements.Select((b, i) => (p, i + 1, b)))];
        for (int i = 0; i < boxes.Count; i++)
        {
            for (int j = i + 1; j < boxes.Count; j++)
            {
                if (Common(boxes[i].Box, boxes[j].Box) is { } depth && !Joined(set, boxes[i].Part.Key, boxes[j].Part.Key, depth))
                    yield return $"{boxes[i].Part.Key}#{boxes[i].Number} and {boxes[j].Part.Key}#{boxes[j].Number} are in one place, {depth} deep";
            }
        }
    }

    /// <summary>How deep two boxes go into each other the shortest way; null where they do not.</summary>
    private static ExactLength? Common(Placement a, Placement b)
    {
        ExactLength x = ExactLength.Min(a.X + a.SizeX, b.X + b.SizeX) - ExactLength.Max(a.X, b.X);
        ExactLength y = ExactLength.Min(a.Y + a.SizeY, b.Y + b.SizeY) - ExactLength.Max(a.Y, b.Y);
        ExactLength z = ExactLength.Min(a.Z + a.SizeZ, b.Z + b.SizeZ) - ExactLength.Max(a.Z, b.Z);
        return x.Sign > 0 && y.Sign > 0 && z.Sign > 0 ? ExactLength.Min(x, ExactLength.Min(y, z)) : null;
    }

    /// <summary>Whether a joint lets the two into each other as deep as that.</summary>
    private static bool Joined(SetPiece set, string a, string b, ExactLength depth) =>
        set.Joints.Any(j => ((j.Part == a && j.Against == b) || (j.Part == b && j.Against == a)) && j.Depth is { } let && set.Worked[let] >= depth);

    [Fact]
    public void AnyPiece_InMillimetres_ComesOutAlike()
    {
        RandomPiece.Text.Holds(text =>
        {
            SetPiece inch = Out(text), metric = Out(InMillimetres(text));
            Assert.Equal(Stops(inch), Stops(metric));
            if (inch.IsStopped || metric.IsStopped) return;
            // The rules of slides and gaps differ by the unit: what is worked from neither is the same.
            foreach (Part part in inch.Parts.Where(p => p.Role is PartRole.Side or PartRole.Post or PartRole.Tie))
            {
                Part other = metric.Parts.First(p => p.Key == part.Key);
                Assert.Equal(inch.Worked[part.Length.Exact], metric.Worked[other.Length.Exact]);
            }
        }, iter: 60, print: t => t);
    }

    // Slides are sold, and rows of holes stand, by the inch or by the millimetre: what fits the one need not fit the other.
    private static readonly string[] s_byUnit = ["slide.", "drawer.", "shelf.", "handle.", "packing."];

    private static string Stops(SetPiece set) => string.Join(' ', set.Findings.Where(f => f.Severity == Severity.Stop && !s_byUnit.Any(w => f.Code.StartsWith(w, StringComparison.Ordinal)))
        .Select(f => $"{f.Code} {f.Key}").Order(StringComparer.Ordinal));

    /// <summary>The same text with every length said to be in inches, in a file whose unit is the millimetre, on the same grid.</summary>
    private static string InMillimetres(string text)
    {
        const string length = @"\d+(?: \d+/\d+)?|\d+/\d+";
        text = Regex.Replace(text, $@"(width|height|depth|toe|thickness|band|tenon|above|groove|front|left|play|gap|overlay|setback|apart|raised|from|short|bit|backer|overhang): ({length})(?=[,}}])", "$1: $2 in");
        text = Regex.Replace(text, $@"section: ({length}) x ({length})", "section: $1 in x $2 in");
        return Regex.Replace(text, $@"seams: \[({length})\]", "seams: [$1 in]").Replace("unit: in\n", "unit: mm\ngrid: 1/32 in\n", StringComparison.Ordinal);
    }
}
