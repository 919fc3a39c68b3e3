using System.Collections.Immutable;
using CsCheck;
using Setout.Shop.Edits;
using Setout.Shop.Texts;
using Setout.Testing;

namespace Setout.Shop.Tests.Edits;

/// <summary>Any splice, anywhere: the tree is the one an independent walk gives, and no remark is lost but those of what is taken out.</summary>
public class SpliceTests
{
    private static readonly YamlNode[] s_values =
    [
        Written.Word("23 1/4"), Written.Word("a: b # c"), Written.Words("A1", "A2"), Written.Fields(("opening", "Z"), ("width", "2 parts")),
        Written.Map(("opening", Written.Word("Z")), ("drawers", Written.Map(("like", Written.Word("d")), ("down", Written.List(Written.Fields(("drawer", "Z1")), Written.Fields(("drawer", "Z2"))))))),
        Written.List(), Written.Map(),
    ];

    private sealed record Trial(string Text, Splice Splice, ImmutableArray<PathStep> Steps, string? Behind, YamlNode? Gone, int FirstLost, int LastLost);

    private static readonly Gen<Trial> s_trial = Gen.Select(RemarkedText.Text, Gen.Int[0, 100_000], Gen.Int[0, 5], Gen.Int[0, 1000], Gen.OneOf(s_values), Trialed);

    private static Trial Trialed(string text, int place, int kind, int index, YamlNode value)
    {
        YamlNode root = YamlTree.Read(text).Value!;
        (ImmutableArray<PathStep> Steps, YamlNode Node)[] all = [.. Places(root, [])];
        (ImmutableArray<PathStep> steps, YamlNode node) = all[place % all.Length];
        var path = new TextPath("", steps);
        switch (node)
        {
            case YamlList list when kind < 2: return new(text, Splice.Add(path, index % (list.Items.Length + 1), value), steps, null, null, 0, 0);
            case YamlList { Items.Length: > 0 } list when kind < 4: return new(text, Splice.Move(path, index % list.Items.Length, index / 7 % list.Items.Length), steps, null, null, 0, 0);
            case YamlMap map when kind < 3:
                string? after = map.Entries.IsEmpty ? null : map.Entries[index % map.Entries.Length].Key.Text;
                return new(text, Splice.Set(path.To("added"), value, after is null ? [] : [after]), steps.Add("added"), after, null, 0, 0);
        }
        if (steps.IsEmpty) return new(text, Splice.Set(path.To("name"), "Other"), ["name"], null, null, 0, 0);
        YamlNode parent = TextPath.At(root, steps.AsSpan()[..^1])!;
        YamlNode[] siblings = parent is YamlMap m ? [.. m.Entries.Select(e => e.Value)] : [.. ((YamlList)parent).Items];
        int at = steps[^1].Key is { } key ? ((YamlMap)parent).Entries.Select(e => e.Key.Text).ToList().IndexOf(key) : steps[^1].Index;
        // What is taken out may take along what stands between the things on both sides of it.
        int first = at == 0 ? Line(text, parent is YamlMap { Entries: var e0 } ? e0[0].Key.Start : parent.Start) - 1000 : Line(text, siblings[at - 1].End);
        int last = at + 1 < siblings.Length ? Line(text, parent is YamlMap { Entries: var e1 } ? e1[at + 1].Key.Start : siblings[at + 1].Start) : int.MaxValue;
        if (at == 0) first = Math.Max(1, Line(text, parent.Start) - 6);
        Splice splice = kind % 2 == 0 ? Splice.TakeOut(path) : Splice.Set(path, value);
        return new(text, splice, steps, null, node, first, last);
    }

    private static int Line(string text, int at) => text.AsSpan(0, at).Count('\n') + 1;

    private static IEnumerable<(ImmutableArray<PathStep>, YamlNode)> Places(YamlNode node, ImmutableArray<PathStep> steps) => node switch
    {
        YamlMap map => map.Entries.SelectMany(e => Places(e.Value, steps.Add(e.Key.Text))).Prepend((steps, node)),
        YamlList list => list.Items.SelectMany((i, n) => Places(i, steps.Add(n))).Prepend((steps, node)),
        _ => [(steps, node)],
    };

    [Fact]
    public void Apply_AnySpliceAnywhere_GivesTheTreeOfTheOracleAndKeepsRemarks()
    {
        int all = 0, refused = 0;
        s_trial.Holds(trial =>
        {
            Interlocked.Increment(ref all);
            TextRead<string> result = TextSplice.Apply(trial.Text, trial.Splice);
            if (result.Value is not { } after)
            {
                Assert.True(result.Findings[0].Code is "splice.no-room" || (result.Findings[0].Code == "splice.no-such-place" && trial.Splice is Addition), $"{trial.Splice} {result.Findings[0]}");
                Interlocked.Increment(ref refused);
                return;
            }
            YamlNode before = YamlTree.Read(trial.Text).Value!;
            Assert.Equal(TreeOracle.After(before, trial.Steps, trial.Splice, trial.Behind), TreeOracle.Of(YamlTree.Read(after).Value!)!.ToJsonString());
            Dictionary<string, int> there = RemarkedText.Remarks(trial.Text), left = RemarkedText.Remarks(after);
            string[] lost = [.. there.Keys.Where(r => !left.ContainsKey(r))];
            if (trial.Gone is null or YamlScalar && trial.Splice is not Removal) Assert.True(lost.Length == 0, $"Lost {string.Join(' ', lost)}\n{after}");
            Assert.All(lost, r => Assert.True(there[r] >= trial.FirstLost && there[r] <= trial.LastLost, $"Lost {r} of line {there[r]}, outside {trial.FirstLost} to {trial.LastLost}\n{after}"));
            if (trial.Text.Contains("\r\n", StringComparison.Ordinal)) Assert.DoesNotContain('\n', after.Replace("\r\n", "", StringComparison.Ordinal));
            Assert.Equal(trial.Text.StartsWith('\uFEFF'), after.StartsWith('\uFEFF'));
        }, iter: 3000, print: t => $"{t.Splice}\n{t.Text}\n=>\n{TextSplice.Apply(t.Text, t.Splice).Value}");
        Assert.True(refused * 50 < all, $"{refused} of {all} splices had no room.");
    }
}
