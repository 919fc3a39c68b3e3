using CsCheck;
using Setout.Shop.Edits;
using Setout.Shop.Texts;
using Setout.Testing;
using Repository = Setout.Shop.Tests.Texts.Repository;

namespace Setout.Shop.Tests.Edits;

public class SetTests
{
    private const string Piece = """
        setout: 1   # the version
        name: Box
        unit: in

        materials:
          ply: {panel: hardwood plywood, label: 3/4}   # from the rack
          thin:
            panel: hardwood plywood # half
            label: '1/2'
        assembly:
          # the case
          - case: C    # stands by the door
            of: ply
            width: 30  # over all
            height:   # not known yet
            depth: "12"
            across:
              - opening: L

                width: 12
              - partition: P
              - {opening: R}
          - top: T
            of: ply
            overhang: {front: 1, left: 2}
        """;

    [Theory]
    [InlineData("C", "width", "31 1/2", "    width: 30  # over all", "    width: 31 1/2  # over all")]
    [InlineData("C", "height", "20", "    height:   # not known yet", "    height: 20   # not known yet")]
    [InlineData("C", "depth", "1' 3\"", "    depth: \"12\"", "    depth: 1' 3\"")]
    [InlineData("L", "width", "rest", "        width: 12", "        width: rest")]
    [InlineData("ply", "label", "1/2", "  ply: {panel: hardwood plywood, label: 3/4}   # from the rack", "  ply: {panel: hardwood plywood, label: 1/2}   # from the rack")]
    [InlineData("thin", "label", "1/4", "    label: '1/2'", "    label: 1/4")]
    [InlineData("", "name", "A: b # c", "name: Box", "name: \"A: b # c\"")]
    public void Set_ValueThatIsThere_ChangesItAlone(string owner, string key, string value, string before, string after) =>
        Assert.Equal(Piece.Replace(before, after, StringComparison.Ordinal), TextSplice.Set(Piece, TextPath.Of(owner, key), value).Value);

    [Theory]
    [InlineData("C", "hung", "yes", "  - case: C    # stands by the door\n", "    hung: yes\n")]
    [InlineData("P", "of", "thin", "      - partition: P\n", "        of: thin\n")]
    [InlineData("thin", "grain", "free", "    panel: hardwood plywood # half\n", "    grain: free\n")]
    [InlineData("", "grid", "1/16", "setout: 1   # the version\n", "grid: 1/16\n")]
    public void Set_KeyThatIsMissing_IsAddedAfterTheFirstLine(string owner, string key, string value, string after, string added) =>
        Assert.Equal(Piece.Replace(after, after + added, StringComparison.Ordinal), TextSplice.Set(Piece, TextPath.Of(owner, key), value).Value);

    [Fact]
    public void Set_KeyThatIsMissingInBraces_IsAddedAfterTheFirst() =>
        Assert.Equal(Piece.Replace("{opening: R}", "{opening: R, width: rest}", StringComparison.Ordinal), TextSplice.Set(Piece, TextPath.Of("R", "width"), "rest").Value);

    [Fact]
    public void Set_PathInwards_ReachesInnerMaps()
    {
        Assert.Equal(Piece.Replace("front: 1,", "front: 1 1/2,", StringComparison.Ordinal), TextSplice.Set(Piece, TextPath.Of("T", "overhang", "front"), "1 1/2").Value);
        Assert.Equal(Piece.Replace("front: 1,", "front: 1, right: 2,", StringComparison.Ordinal), TextSplice.Set(Piece, TextPath.Of("T", "overhang", "right"), "2").Value);
    }

    [Theory]
    [InlineData("X", "width", "3", "splice.no-such-place")]
    [InlineData("C", "across", "3", "splice.no-room")]
    [InlineData("C", "width", "", "splice.bad-value")]
    [InlineData("C", "width", "3\n4", "splice.bad-value")]
    [InlineData("C", "width", " 3", "splice.bad-value")]
    public void Set_WhatCannotBeSet_IsAFinding(string owner, string key, string value, string code)
    {
        TextRead<string> set = TextSplice.Set(Piece, TextPath.Of(owner, key), value);
        Assert.Null(set.Value);
        Assert.Equal(code, Assert.Single(set.Findings).Code);
    }

    [Fact]
    public void Set_LastLineWithoutEnd_IsEndedFirst() =>
        Assert.Equal("a: 1\nb:\n  - part: P\n    of: x\n", TextSplice.Set("a: 1\nb:\n  - part: P", TextPath.Of("P", "of"), "x").Value);

    private static readonly string[] s_values = ["1", "23 1/4", "1' 11 1/4\"", "rest", "590 mm", "96/3 - 3/4", "yes", "a: b", "#x", "- y", "it's", "\"q\"", "{", "[a]", "é ½", "&a", "*b", "!c", "%", "@", "~", "null", "a,b", "\\", "x #y", "?"];

    // Any scalar that belongs to a map with an owner, in any sample, with either line end.
    [Fact]
    public void Set_AnyValueOfAnySample_ChangesOneLineAndOneValue()
    {
        var places = Repository.PieceSamples.SelectMany(f => new[] { File.ReadAllText(f), File.ReadAllText(f).ReplaceLineEndings("\r\n"), "\uFEFF" + File.ReadAllText(f) })
            .SelectMany(t => Scalars(YamlTree.Read(t).Value!, "").Select(s => (Text: t, s.Owner, s.Key))).Where(p => p.Owner != p.Key).ToArray();
        Gen.Select(Gen.OneOf(places), Gen.OneOf(s_values), Gen.Bool).Holds((place, value, isNew) =>
        {
            string key = isNew ? "added" : place.Key;
            TextRead<string> set = TextSplice.Set(place.Text, TextPath.Of(place.Owner, key), value);
            Assert.True(set.IsSound, $"{place.Owner} / {key}: {set.Findings.FirstOrDefault()}");
            string[] before = place.Text.Split('\n'), after = set.Value!.Split('\n');
            int first = before.Zip(after).TakeWhile(p => p.First == p.Second).Count();
            // Either one line reads differently, or one line is new, or one that grew too long is written in lines; all others are the same byte for byte.
            bool isBroken = after.Length > before.Length + 1;
            int gone = isBroken || (before.Length == after.Length && first < before.Length) ? 1 : 0, come = gone + after.Length - before.Length;
            if (isBroken) Assert.True(before[first].Length + key.Length + (2 * value.Length) + ", : ''".Length > Written.Longest, before[first]);
            else Assert.InRange(come, 0, 1);
            Assert.Equal(before[(first + gone)..], after[(first + come)..]);
            Assert.Contains(Scalars(YamlTree.Read(set.Value!).Value!, ""), s => s.Owner == place.Owner && s.Key == key && s.Value == value);
        }, iter: 500);
    }

    private static IEnumerable<(string Owner, string Key, string Value)> Scalars(YamlNode node, string owner)
    {
        if (node is YamlList list) return list.Items.SelectMany(i => Scalars(i, ""));
        if (node is not YamlMap map) return [];
        string? key = map.Entries.Where(e => e.Key.Text is "frame" or "case" or "top" or "opening" or "partition" or "deck" or "posts" or "drawer" or "part" or "slot")
            .Select(e => (e.Value as YamlScalar)?.Text).FirstOrDefault(t => t is not null);
        IEnumerable<(string, string, string)> own = key is null ? [] : map.Entries.Where(e => e.Value is YamlScalar s && s.Text != key).Select(e => (key, e.Key.Text, ((YamlScalar)e.Value).Text));
        return own.Concat(map.Entries.SelectMany(e => Scalars(e.Value, "")));
    }
}
