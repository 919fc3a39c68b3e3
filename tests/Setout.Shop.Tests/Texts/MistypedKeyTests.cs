using Setout.Core.Workings;
using Setout.Shop.Texts;
using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace Setout.Shop.Tests.Texts;

public class MistypedKeyTests
{
    [Fact]
    public void Read_EveryKeyOfEverySampleMistyped_GuessesItAndNothingElse()
    {
        int tried = 0;
        foreach (string file in Repository.PieceSamples.Append(Path.Combine(Repository.Root, "samples", "shop.yaml")))
        {
            string text = File.ReadAllText(file);
            bool isShop = text.Contains("\nsetout-shop:", StringComparison.Ordinal);
            foreach ((string key, int at) in Keys(text).Where(k => !IsName(text, k)))
            {
                string typed = Mistype(key);
                string changed = text.Remove(at, key.Length).Insert(at, typed);
                var findings = isShop ? ShopText.Read(changed).Findings : PieceText.Read(changed).Findings;
                Finding finding = Assert.Single(findings, f => f.Severity == Severity.Stop);
                Assert.True(finding.Code == "text.unknown-key", $"{Path.GetFileName(file)}, '{typed}' for '{key}': {finding}");
                Assert.Contains($"Did you mean '{key}'?", finding.Remedy, StringComparison.Ordinal);
                Assert.Equal(TextPlace.Of(changed, at), finding.Place);
                tried++;
            }
        }
        Assert.True(tried > 150, $"Only {tried} keys were tried.");
    }

    [Theory]
    [InlineData("width", "widht", true)]
    [InlineData("width", "Width", true)]
    [InlineData("mm", "cm", false)]
    [InlineData("mm", "MM", true)]
    [InlineData("of", "fo", true)]
    [InlineData("of", "off", true)]
    [InlineData("shelves", "drawers", false)]
    public void Of_WordsNearAndFar_GuessesOnlyTheNear(string word, string typed, bool isNear) =>
        Assert.Equal(isNear ? word : null, NearestWord.Of(typed, [word]));

    // Two neighbours changed about; a letter doubled where both are the same.
    private static string Mistype(string key)
    {
        int i = key.Length > 3 ? key.Length - 3 : 0;
        return key[i] == key[i + 1] ? key.Insert(i, key[i].ToString()) : key[..i] + key[i + 1] + key[i] + key[(i + 2)..];
    }

    private static IEnumerable<(string Key, int At)> Keys(string text)
    {
        var parser = new Parser(new StringReader(text));
        var open = new Stack<(bool IsMap, bool KeyNext)>();
        while (parser.MoveNext())
        {
            ParsingEvent here = parser.Current!;
            if (here is MappingEnd or SequenceEnd) open.Pop();
            bool isNode = here is Scalar or MappingStart or SequenceStart;
            if (isNode && open.TryPop(out (bool IsMap, bool KeyNext) top))
            {
                if (top is { IsMap: true, KeyNext: true }) yield return (((Scalar)here).Value, (int)here.Start.Index);
                open.Push(top with { KeyNext = !top.KeyNext });
            }
            if (here is MappingStart) open.Push((true, true));
            if (here is SequenceStart) open.Push((false, false));
        }
    }

    // Names of materials and of kinds of drawer are the person's own.
    private static bool IsName(string text, (string Key, int At) key)
    {
        TextRead<YamlNode> tree = YamlTree.Read(text);
        var root = (YamlMap)tree.Value!;
        return new[] { "materials", "drawers" }.Select(n => root[n]).OfType<YamlMap>().SelectMany(m => m.Entries).Any(e => e.Key.Start == key.At);
    }
}
