using System.Text.RegularExpressions;
using CsCheck;
using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Shop.Plans;
using Setout.Testing;

namespace Setout.Shop.Tests.SettingOut;

/// <summary>A piece described from the right gives the parts of the same piece described from the left, each where a mirror would show it.</summary>
public class MirroredPieceTests
{
    [Fact]
    public void AnyCase_Mirrored_GivesMirroredParts()
    {
        int whole = 0;
        RandomPiece.OneCase.Holds(text =>
        {
            (SetPiece set, SetPiece mirrored) = (Out(text), Out(Mirrored(text)));
            // Where rounding decides whether something just fits, the two may differ.
            if (set.IsStopped || mirrored.IsStopped) return;
            Interlocked.Increment(ref whole);
            string wrong = string.Join("\n", Differences(set, mirrored));
            Assert.True(wrong.Length == 0, $"{wrong}\n{Mirrored(text)}");
        }, iter: 200, print: t => t);
        Assert.True(whole > 60, $"{whole} pieces tell little.");
    }

    [Theory]
    [InlineData("{case: P, of: ply, across: [{opening: A, down: [{opening: B, across: [{opening: C}, {partition: M}, {opening: D}]}, {deck: K}, {opening: E}]}, {partition: N}, {opening: F, doors: {like: plain, keys: [G, H]}}]}",
        "{case: P, of: ply, across: [{opening: F, doors: {like: plain, keys: [H, G]}}, {partition: N}, {opening: A, down: [{opening: B, across: [{opening: D}, {partition: M}, {opening: C}]}, {deck: K}, {opening: E}]}]}")]
    [InlineData("{case: P, filler: {of: ply, width: 2}, doors: {like: plain, keys: [G]}}", "{case: P, filler: {of: ply, width: 2, at: right}, doors: {like: plain, keys: [G], hinges: right}}")]
    public void Mirror_TurnsTextRound(string text, string expected)
    {
        Assert.Equal(expected, Mirrored(text));
        Assert.Equal(text, Mirrored(expected).Replace(", at: left", "", StringComparison.Ordinal).Replace(", hinges: left", "", StringComparison.Ordinal));
    }

    [Fact]
    public void PieceThatIsNotTurnedRound_IsTold()
    {
        const string text = """
            setout: 1
            name: Uneven
            unit: in
            materials:
              ply: {panel: hardwood plywood, thickness: 3/4}
            assembly:
              - {case: P, of: ply, width: 30, height: 20, depth: 12, across: [{opening: A, width: 8}, {partition: M}, {opening: B, shelves: {down: [S]}}]}

            """;
        Assert.Equal(["M", "S"], Differences(Out(text), Out(text)).Select(d => d[..1]));
        Assert.Empty(Differences(Out(text), Out(Mirrored(text))));
    }

    private static SetPiece Out(string text)
    {
        (PieceSource? source, var findings) = PieceSource.Read(text, null, Sample.Text("shop.yaml"));
        Assert.True(source is not null, text + string.Join("; ", findings.Select(f => f.Finding.Words)));
        return source.SetOut();
    }

    private static string Mirrored(string text)
    {
        text = Reversed(Reversed(text, "across: ["), "keys: [");
        text = Regex.Replace(text, @"(keys: \[\w+\])(, hinges: (\w+))?", m => m.Groups[3].Value == "right" ? $"{m.Groups[1].Value}, hinges: left" : $"{m.Groups[1].Value}, hinges: right");
        return Regex.Replace(text, @"(\{of: \w+, width: [\d/ ]+)(, at: (\w+))?\}", m => m.Groups[3].Value == "right" ? $"{m.Groups[1].Value}, at: left}}" : $"{m.Groups[1].Value}, at: right}}");
    }

    /// <summary>Every list that begins with some words, its items in the opposite order, lists within lists too.</summary>
    private static string Reversed(string text, string start)
    {
        int at = text.IndexOf(start, StringComparison.Ordinal);
        if (at < 0) return text;
        int from = at + start.Length, depth = 0, last = from, i = from;
        var items = new List<string>();
        for (; depth > 0 || text[i] != ']'; i++)
        {
            if (text[i] is '[' or '{') depth++;
            else if (text[i] is ']' or '}') depth--;
            else if (text[i] == ',' && depth == 0)
            {
                items.Add(text[last..i]);
                last = i + 2;
            }
        }
        items.Add(text[last..i]);
        items.Reverse();
        return text[..from] + string.Join(", ", items.Select(item => Reversed(item, start))) + Reversed(text[i..], start);
    }

    private static IEnumerable<string> Differences(SetPiece set, SetPiece mirrored)
    {
        // Shares round the one way from the left and the other way from the right: a step or two of the grid, at each member they pass.
        ExactLength near = set.Grid.Step.ToExact() * 4;
        ExactLength right = set.Parts.SelectMany(p => p.Placements).Max(b => b.X + b.SizeX), left = mirrored.Parts.SelectMany(p => p.Placements).Min(b => b.X);
        if (set.Parts.Length != mirrored.Parts.Length) yield return $"{set.Parts.Length} and {mirrored.Parts.Length} parts";
        foreach (Part part in set.Parts)
        {
            // What has a side in its name changes its name.
            string key = Regex.Replace(part.Key, "left|right", m => m.Value == "left" ? "right" : "left");
            if (mirrored.Parts.FirstOrDefault(p => p.Key == key) is not { } other || other.Count != part.Count || other.Role != part.Role)
            {
                yield return $"{part.Key} has no like";
                continue;
            }
            ExactLength[][] there = [.. part.Placements.Select(b => new[] { right - b.X - b.SizeX, b.Y, b.Z, b.SizeX, b.SizeY, b.SizeZ })], seen = [.. other.Placements.Select(b => new[] { b.X - left, b.Y, b.Z, b.SizeX, b.SizeY, b.SizeZ })];
            foreach (ExactLength[] box in there)
                if (!seen.Any(s => s.Zip(box).All(p => (p.First - p.Second).Abs() <= near))) yield return $"{part.Key} is at {string.Join(" ", box.Select(l => l.Inches))}, mirrored at {string.Join(" | ", seen.Select(s => string.Join(" ", s.Select(l => l.Inches))))}";
        }
    }
}
