using Setout.Core.Workings;
using Setout.Shop.Texts;
using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace Setout.Shop.Tests.Texts;

public class MistypedKeyTests
{
    [Theory]
    [InlineData("piece", 118)]
    [InlineData("shop", 75)]
    [InlineData("log", 39)]
    public void Read_AnyKeyMistyped_GuessesItAndSaysNothingElse(string name, int atLeast)
    {
        string text = SchemaTests.WholeText(name);
        var keys = Keys(text).Where(k => !IsName(text, k)).ToList();
        Assert.True(keys.Count >= atLeast, $"Only {keys.Count} keys were tried.");
        foreach ((string key, int at) in keys)
        {
            string typed = Mistype(key), changed = text.Remove(at, key.Length).Insert(at, typed);
            Finding finding = Assert.Single(Read(name, changed), f => f.Severity == Severity.Stop);
            Assert.True(finding.Code == "text.unknown-key", $"'{typed}' for '{key}': {finding}");
            Assert.Contains($"Did you mean '{key}'?", finding.Remedy, StringComparison.Ordinal);
            Assert.Equal(TextPlace.Of(changed, at), finding.Place);
        }
    }

    [Theory]
    [InlineData("piece")]
    [InlineData("shop")]
    [InlineData("log")]
    public void Read_AnyKeyMistyped_TheKnownOnesAreNamedWhole(string name)
    {
        string text = SchemaTests.WholeText(name);
        int tried = 0;
        foreach ((string key, int at) in Keys(text).Where(k => !IsName(text, k)))
        {
            foreach (Finding finding in Read(name, text.Remove(at, key.Length).Insert(at, "zzzzzzzz")).Where(f => f.Code == "text.unknown-key"))
            {
                string list = finding.Remedy[(finding.Remedy.IndexOf("Known here: ", StringComparison.Ordinal) + 12)..].TrimEnd('.');
                Assert.True(SchemaTests.KnownKeys(name).Values.Any(keys => keys.SetEquals(list.Split(", "))), $"'{key}': {finding}");
                tried++;
            }
        }
        Assert.True(tried > 20, $"Only {tried} were tried.");
    }

    private static IEnumerable<Finding> Read(string name, string text) => name switch
    {
        "piece" => PieceText.Read(text).Findings,
        "shop" => ShopText.Read(text).Findings,
        _ => LogText.Read(text).Findings,
    };

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
        return new[] { "materials", "drawers", "doors", "finishes" }.Select(n => root[n]).OfType<YamlMap>().SelectMany(m => m.Entries).Any(e => e.Key.Start == key.At);
    }
}
