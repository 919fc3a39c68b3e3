using Setout.Shop.Edits;
using Setout.Shop.Edits.Saying;
using Setout.Shop.Texts;
using Setout.Shop.Tests.SettingOut;
using Setout.Testing;

namespace Setout.Shop.Tests.Edits;

/// <summary>All that the piece file can say is offered for the thing it is said of.</summary>
public class SayingsTests
{
    private const string Pieces = "tests/Setout.Shop.Tests/SettingOut/Pieces";

    // Begun, divided and filled on the drawing; what a thing is called by is never edited.
    private static readonly string[] s_drawn = ["across", "down", "keys", "assembly"];
    private static readonly string[] s_identity = ["frame", "case", "top", "opening", "partition", "deck", "posts", "rail", "stretcher", "drawer", "slot", "well", "part"];

    private static string[] Texts => [.. Repository.FilesIn(Pieces, "*.yaml").Concat(Repository.FilesIn("samples", "*.yaml")).Where(f => !f.EndsWith("shop.yaml", StringComparison.Ordinal)).Select(f => File.ReadAllText(Repository.PathOf(f)))];

    private static IEnumerable<(string Key, Sayings Said)> All(string text) => Thing.In(YamlTree.Read(text).Value!).Where(t => t.Node is YamlMap).Select(t => t.Key).Prepend("").Distinct().Select(k => (k, Sayings.Of(text, k)!));

    /// <summary>Every word that stands in a text stands in a field of the thing it belongs to.</summary>
    [Fact]
    public void EachWordOfEachText_StandsInAField()
    {
        int words = 0;
        foreach (string text in Texts)
        {
            YamlNode root = YamlTree.Read(text).Value!;
            Dictionary<string, Said[]> said = All(text).ToDictionary(s => s.Key, s => s.Said.All.ToArray());
            foreach ((string owner, string path, string value) in Leaves(root, "", ""))
            {
                words++;
                Assert.True(said[owner].Any(s => s.Choice.Id == "say" + path && s.IsSaid && s.Choice.Fields.Single().Default == value), $"{owner}{path}: {value}");
            }
        }
        Assert.True(words > 1500, $"{words}");
    }

    // What belongs to a thing of its own is told there.
    private static IEnumerable<(string Owner, string Path, string Value)> Leaves(YamlNode node, string owner, string path)
    {
        switch (node)
        {
            case YamlMap map:
                string? word = map.Entries.Where(e => e.Value is YamlScalar { Text.Length: > 0 } && s_identity.Contains(e.Key.Text)).Select(e => e.Key.Text).FirstOrDefault();
                if (word is not null) (owner, path) = (((YamlScalar)map[word]!).Text, "");
                foreach ((YamlScalar key, YamlNode value) in map.Entries)
                {
                    if (key.Text == word || (owner.Length == 0 && path.Length == 0 && key.Text == "setout") || value is YamlScalar { Text: "" } or YamlList { Items.Length: 0 }) continue;
                    if (owner.Length == 0 && path.Length == 0 && key.Text is "materials" or "drawers" or "doors" or "finishes" && value is YamlMap named && map["setout"] is not null)
                    {
                        foreach ((YamlScalar name, YamlNode of) in named.Entries)
                            foreach (var leaf in Leaves(of, name.Text, "")) yield return leaf;
                        continue;
                    }
                    if (value is YamlList list && list.Items.All(i => i is YamlScalar))
                    {
                        if (!s_drawn.Contains(key.Text)) yield return (owner, $"{path}.{key.Text.Replace(' ', '_')}", string.Join(", ", list.Items.Cast<YamlScalar>().Select(s => s.Text)));
                        continue;
                    }
                    foreach (var leaf in Leaves(value, owner, $"{path}.{key.Text.Replace(' ', '_')}")) yield return leaf;
                }
                break;
            case YamlList items:
                for (int i = 0; i < items.Items.Length; i++)
                    foreach (var leaf in Leaves(items.Items[i], owner, $"{path}.{i}")) yield return leaf;
                break;
            case YamlScalar scalar:
                yield return (owner, path, scalar.Text);
                break;
        }
    }

    /// <summary>What stands there already, said again, changes nothing; every other answer is a text that can be read or a finding, and remarks stay.</summary>
    [Fact]
    public void EachSaying_SaidAgain_ChangesNothing()
    {
        foreach (string text in Texts)
        {
            foreach ((string key, Sayings said) in All(text))
            {
                Assert.Equal(said.All.Length, said.All.Select(s => s.Choice.Id).Distinct().Count());
                foreach (Said one in said.All.Where(s => s.IsSaid && s.Choice.Fields.Length == 1))
                {
                    TextRead<Edit> made = one.Choice.Make(new Dictionary<string, string>());
                    Assert.True(made.Value is not null, $"{key}: {one.Choice.Id} {one.Choice.Fields[0].Default}");
                    Edited edited = made.Value!.ApplyTo(text);
                    Assert.True((edited.Text is null && edited.Findings[0].Code == "edit.nothing") || (edited.Text is not null && Same(text, edited.Text)), $"{key}: {one.Choice.Id} {edited.Findings.FirstOrDefault()?.Words}\n{edited.Text}");
                }
            }
        }
    }

    private static bool Same(string one, string other) => Plain(YamlTree.Read(one).Value!) == Plain(YamlTree.Read(other).Value!);

    private static string Plain(YamlNode node) => node switch
    {
        YamlMap map => "{" + string.Join(";", map.Entries.Select(e => $"{e.Key.Text}={Plain(e.Value)}").Order(StringComparer.Ordinal)) + "}",
        YamlList list => "[" + string.Join(";", list.Items.Select(Plain)) + "]",
        _ => ((YamlScalar)node).Text,
    };

    /// <summary>What a bench does not have yet is said of it: each form that begins something gives a text that can be read, or says what is missing.</summary>
    [Theory]
    [InlineData("T", "say.slots.more0", "slot")]
    [InlineData("T", "say.edging.full0", "edging")]
    [InlineData("T", "say.laminate.full0", "laminate")]
    [InlineData("F", "say.stretchers.more0", "stretcher")]
    [InlineData("F", "say.panels.full0", "panels")]
    [InlineData("", "say.way_in.full0", "way in")]
    [InlineData("", "say.parts.more0", "part")]
    [InlineData("", "say.materials.new2", "stick")]
    [InlineData("", "say.drawers.new0", "sides")]
    [InlineData("", "say.doors.new1", "panel")]
    [InlineData("studs", "say.lengths.more0", "length")]
    [InlineData("bench", "say.handles.full0", "handles")]
    [InlineData("bench", "say.slide.full0", "slide")]
    public void Begun_WhatIsNotThereYet_StandsInTheText(string owner, string id, string word)
    {
        string text = Sample.Text(Sample.Bench);
        Said one = Sayings.Of(text, owner)!.All.Single(s => s.Choice.Id == id);
        Assert.False(one.IsSaid);
        Dictionary<string, string> values = one.Choice.Fields.Where(f => !f.MayBeEmpty || f.Name == "clearance" || (f.Name == "from front" && id.Contains("slots", StringComparison.Ordinal))).ToDictionary(f => f.Name, f => f switch
        {
            { Kind: FieldKind.OneOf } => f.Options[0],
            { Kind: FieldKind.Length or FieldKind.Share } => "3/4",
            { Name: "section" } => "3/4 x 1",
            { Name: "name-of-it" } => "newone",
            { Name: "of" } when id.Contains("laminate", StringComparison.Ordinal) => "HGS",
            { Name: "of" } when id.Contains("edging", StringComparison.Ordinal) || id.Contains("stretcher", StringComparison.Ordinal) => "studs",
            { Name: "frame/of" } => "studs",
            { Name: "stick" } => "oak",
            _ => "carcase",
        });
        TextRead<Edit> made = one.Choice.Make(values);
        Assert.True(made.Value is not null, made.Findings.FirstOrDefault()?.Words);
        Edited edited = made.Value!.ApplyTo(text);
        Assert.True(edited.Text is not null, $"{string.Join("; ", edited.Findings.Select(f => f.Words + " " + f.Remedy))} {string.Join(", ", values)}");
        Assert.Contains($"{word}:", edited.Text, StringComparison.Ordinal);
        Assert.All(text.Split('\n').Where(l => l.Contains('#', StringComparison.Ordinal)), l => Assert.Contains(l, edited.Text, StringComparison.Ordinal));
    }
}
