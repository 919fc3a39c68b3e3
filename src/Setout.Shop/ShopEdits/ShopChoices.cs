using System.Collections.Immutable;
using System.Globalization;
using Setout.Core.Measures.Text;
using Setout.Core.Workings;
using Setout.Shop.Edits;
using Setout.Shop.Texts;

namespace Setout.Shop.ShopEdits;

/// <summary>An edit of the shop that makes sense for what is chosen.</summary>
public sealed record ShopChoice : Offer
{
    private readonly Func<FieldValues, ShopEdit> _maker;

    internal ShopChoice(string id, string words, ImmutableArray<EditField> fields, Func<FieldValues, ShopEdit> maker) : base(id, words, fields) => _maker = maker;

    /// <summary>The same for a person who is shown figures in a unit of his own: see <see cref="EditChoice.For"/>.</summary>
    /// <param name="own">The unit of the text.</param>
    /// <param name="shown">The unit of the person.</param>
    public ShopChoice For(LengthUnit own, LengthUnit shown) => own == shown ? this : this with { Fields = FieldUnits.Named(Fields, own), Bare = shown };

    /// <summary>The edit, by what was typed; or what is wrong with that.</summary>
    /// <param name="values">By the names of the fields; what is missing has its default.</param>
    public TextRead<ShopEdit> Make(IReadOnlyDictionary<string, string> values)
    {
        var read = new FieldValues(Fields, values, Bare);
        ShopEdit edit = _maker(read);
        return read.Findings.Count > 0 ? new(null, [.. read.Findings]) : new(edit, []);
    }

    /// <summary>Does the edit to a text: see <see cref="EditChoice.ApplyTo"/>.</summary>
    /// <param name="values">By the names of the fields; what is missing has its default.</param>
    /// <param name="text">A shop file.</param>
    /// <returns>What came of it, with the edit that was made of the fields.</returns>
    public (ShopEdit Edit, Edited Edited) ApplyTo(IReadOnlyDictionary<string, string> values, string text)
    {
        var read = new FieldValues(Fields, values, Bare);
        ShopEdit edit = _maker(read);
        return (edit, read.Told(edit.ApplyTo(text)));
    }
}

/// <summary>What is known beside the text of a shop.</summary>
/// <param name="Now">The time of day with its offset, as a count is dated.</param>
/// <param name="InHand">How many are left of an item of the stock, by its place in the text; null where it has no count.</param>
/// <param name="Usual">The figure that goes for a key of a map where the text says nothing, in words; empty where there is none.</param>
public sealed record ShopBench(string Now, Func<int, int?> InHand, Func<string, string, string> Usual)
{
    /// <summary>Nothing.</summary>
    public static ShopBench Empty { get; } = new("2026-01-01", _ => null, (_, _) => "");
}

/// <summary>
/// What can be done to each thing of a shop file. It goes by the published schema, so that all that the text can say can be said in a form.
/// Things are named by where they stand: <c>saws.fence</c>, <c>stock.3</c> (from 0), <c>stock.3.flaws.0</c>; <c>whole</c> for what holds for all of it.
/// </summary>
public static class ShopChoices
{
    /// <summary>What can be done to a thing; empty where there is none, or the text cannot be read.</summary>
    /// <param name="text">A shop file.</param>
    /// <param name="key">Which thing.</param>
    /// <param name="bench">What is known beside the text; none given: nothing.</param>
    public static ImmutableArray<ShopChoice> For(string text, string key, ShopBench? bench = null) =>
        YamlTree.Read(text) is not { IsSound: true, Value: YamlMap root } || ShopPlace.Find(root, key) is not { } place ? []
        : place.List is { } list ? [.. InList(place, key, list, bench ?? ShopBench.Empty)] : [.. Of(place, bench ?? ShopBench.Empty)];

    /// <summary>What a thing is called; empty where there is none.</summary>
    /// <param name="text">A shop file.</param>
    /// <param name="key">Which thing.</param>
    public static string Words(string text, string key) => YamlTree.Read(text) is { IsSound: true, Value: YamlMap root } && ShopPlace.Find(root, key) is { IsList: false } place ? place.Words : "";

    private static IEnumerable<ShopChoice> Of(ShopPlace place, ShopBench bench)
    {
        bool isNo = place.Node is YamlScalar;
        if (place.Holder?.MayBeNo == true && isNo)
        {
            yield return Button("there", "There is one, as in a usual shop", new TakeOutOfShop(place.Key));
            yield break;
        }
        if (place.Key.StartsWith("stock.", StringComparison.Ordinal) && place.Path.Steps.Length == 2 && place.Text("have").Length > 0) yield return CountedAgain(place, bench);
        if (Fields(place, place.Keys, bench) is { IsEmpty: false } fields)
            yield return new("set", place.IsItem ? "Change what it is" : "Change", fields, v => new FillIn(place.Key.Length == 0 ? ShopPlace.Whole : place.Key, Values(fields, v))) { MoreWords = ShopWords.More(place.Keys.Kind) };
        // What the outermost map holds is chosen by itself.
        foreach (ShopKey key in place.Key.Length == 0 ? [] : place.Keys.Keys.Where(k => k.Kinds.Length > 0))
        {
            if (key.Value != ShopValue.List)
            {
                foreach (ShopChoice choice in Within(place, key, bench)) yield return choice;
                continue;
            }
            string list = $"{place.Key}.{key.Name}";
            var inner = new ShopPlace(list, place.Path.To(key.Name), place.Keys, place.Map?[key.Name]);
            foreach (ShopChoice choice in InList(inner, list, key, bench).Concat(Items(inner, list, key, bench))) yield return choice;
        }
        if (place.Holder?.MayBeNo == true) yield return Button("none", "There is none in this shop", new HasNone(place.Key));
        if (place.IsItem) yield return Button("take-out", "Take it off the list", new TakeOutOfShop(place.Key));
    }

    private static ShopChoice Button(string id, string words, ShopEdit edit) => new(id, words, [], _ => edit);

    // A new count holds from now on: what was taken before is in it.
    private static ShopChoice CountedAgain(ShopPlace place, ShopBench bench)
    {
        string there = bench.InHand(place.Path.Steps[^1].Index)?.ToString(CultureInfo.InvariantCulture) ?? place.Text("have");
        return new("count", "Counted again", [new("have", "how many there are", FieldKind.Count, there) { Usual = "The count holds from now on; what was cut before is in it." }],
            v => new FillIn(place.Key, [("have", v.Count("have").ToString(CultureInfo.InvariantCulture)), ("counted", bench.Now)]));
    }

    private static IEnumerable<ShopChoice> Within(ShopPlace place, ShopKey key, ShopBench bench)
    {
        ShopKeys keys = ShopKeys.Of(key.Kinds[0]);
        var inner = new ShopPlace($"{place.Key}.{key.Name}", place.Path.To(key.Name), keys, place.Map?[key.Name]);
        if (Fields(inner, keys, bench) is not { IsEmpty: false } fields) yield break;
        yield return new(key.Name, key.Value == ShopValue.Length ? $"{Upper(key.Name)} side by side" : Upper(key.Name), fields, v => new FillIn(inner.Key, Values(fields, v)));
    }

    private static IEnumerable<ShopChoice> InList(ShopPlace place, string list, ShopKey key, ShopBench bench)
    {
        foreach (string kind in key.Kinds)
        {
            ShopKeys keys = ShopKeys.Of(kind);
            ImmutableArray<EditField> fields = Fields(new ShopPlace(list, place.Path, keys, null), keys, bench);
            yield return new($"add-{kind}", $"Add {Called(kind)}", fields, v => new AddItem(list, kind, Values(fields, v))) { MoreWords = ShopWords.More(kind) };
        }
    }

    private static IEnumerable<ShopChoice> Items(ShopPlace place, string list, ShopKey key, ShopBench bench)
    {
        if (place.Node is not YamlList items) yield break;
        ShopKeys keys = ShopKeys.Of(key.Kinds[0]);
        foreach ((int i, YamlMap map) in items.Items.Index().Where(n => n.Item is YamlMap).Select(n => (n.Index, (YamlMap)n.Item)))
        {
            var item = new ShopPlace($"{list}.{i}", place.Path.To(i), keys, map);
            ImmutableArray<EditField> fields = Fields(item, keys, bench);
            yield return new($"{key.Name}-{i}", $"Change the {item.Words}", fields, v => new FillIn(item.Key, Values(fields, v)));
            yield return Button($"{key.Name}-{i}-out", $"Take out the {item.Words}", new TakeOutOfShop(item.Key));
        }
    }

    private static ImmutableArray<EditField> Fields(ShopPlace place, ShopKeys keys, ShopBench bench) =>
    [
        // The version is not for people, and one value that is told by parts is told there.
        .. keys.Keys.Where(k => k.IsField && k.Name != "setout-shop" && place.Map?[k.Name] is null or YamlScalar).Select(k => new EditField(k.Name, ShopWords.Label(keys.Kind, k.Name), FieldOf(keys.Kind, k), place.Text(k.Name))
        {
            Options = k.Options,
            MayBeEmpty = !k.IsNeeded,
            Usual = Help(keys.Kind, k, bench.Usual(keys.Kind, k.Name)),
            IsMore = ShopWords.IsMore(keys.Kind, k.Name) && place.Text(k.Name).Length == 0,
        }),
    ];

    private static string Help(string kind, ShopKey key, string usual)
    {
        string about = ShopWords.About(kind, key.Name, key.About);
        return usual.Length == 0 ? about : $"{about} Left empty: {usual}.".TrimStart();
    }

    // The steps of the grid have units of their own, whatever that of the text: theirs is said beside the field.
    internal static FieldKind FieldOf(string kind, ShopKey key) => key.Value switch { ShopValue.Length when kind != "grid" => FieldKind.Length, ShopValue.Size => FieldKind.Size, ShopValue.Count => FieldKind.Count, ShopValue.OneOf => FieldKind.OneOf, _ => FieldKind.Words };

    private static ImmutableArray<(string, string?)> Values(ImmutableArray<EditField> fields, FieldValues values) => [.. fields.Select(f => (f.Name, values.Text(f.Name)))];

    private static string Called(string kind) => kind switch
    {
        "stock-panel" => "a sheet",
        "stock-lumber" => "lumber of the yard",
        "stock-stick" => "a stick or a board",
        "price-of" => "a price of hardware",
        var other => $"a {other}",
    };

    private static string Upper(string words) => char.ToUpperInvariant(words[0]) + words[1..];
}
