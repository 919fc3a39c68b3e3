using System.Collections.Immutable;
using Setout.Core.Workings;
using Setout.Shop.Edits;
using Setout.Shop.Texts;

namespace Setout.Shop.ShopEdits;

/// <summary>An edit of a shop file: splices, so that remarks, blank lines and order stay. Immutable; what it does depends on the text alone.</summary>
public abstract record ShopEdit
{
    /// <summary>The splices, and the name of the step.</summary>
    /// <exception cref="RefusedException">It cannot be done.</exception>
    private protected abstract (IEnumerable<Splice> Splices, string Name) Of(YamlMap root);

    /// <summary>Does the edit. The text is refused rather than broken: what could be read before can be read after. Never throws for what is in the text.</summary>
    /// <param name="text">A shop file.</param>
    public Edited ApplyTo(string text)
    {
        if (ShopText.Read(text) is { IsSound: false } broken) return new(null, "", [Mistakes, .. broken.Findings]);
        if (YamlTree.Read(text) is not { IsSound: true, Value: YamlMap root }) return new(null, "", [Mistakes]);
        try
        {
            (IEnumerable<Splice> splices, string name) = Of(root);
            TextRead<string> spliced = TextSplice.Apply(text, splices);
            if (spliced.Value is not { } after) return new(null, name, [.. spliced.Findings.Select(Placeless)]);
            if (after == text) return new(null, name, [new("edit.nothing", Severity.Stop, "", "This changes nothing.", "Choose another figure or another word.")]);
            TextRead<Texts.Shop> read = ShopText.Read(after, null, new(null) { IsTyped = true });
            // The places are those of a text that nobody will see.
            return read.IsSound ? new(after, name.Length <= Documents.Change.LongestWords ? name : name[..Documents.Change.LongestWords], [])
                : new(null, name, [.. read.Findings.Select(Placeless)]) { Typed = TypedWords.At(after, read.Findings) };
        }
        catch (RefusedException refused)
        {
            return new(null, "", [refused.Finding]) { Typed = [new(refused.Typed, "")] };
        }
    }

    private static Finding Mistakes { get; } = new("edit.mistakes", Severity.Stop, "", "The text of the shop has mistakes; it is not changed on its page until they are mended.", "Mend it in the text.");

    private static Finding Placeless(Finding finding) => finding with { Place = Place.None };

    private protected static RefusedException Gone => new(new("edit.not-offered", Severity.Stop, "", "That is not there to be changed any more.", "Look at the shop as it stands now."));

    // A map of which nothing is left goes with the last that it held.
    private protected static Splice TakeOut(YamlMap root, ShopPlace place)
    {
        TextPath path = place.Path;
        while (path.Steps.Length > 1 && path.Up.Steps[^1].Key is not null && TextPath.At(root, path.Up.Steps.AsSpan()) is YamlMap { Entries.Length: 1 }) path = path.Up;
        return Splice.TakeOut(path);
    }

    /// <summary>The keys that stand before one in its map, by the schema: a new one is put behind them.</summary>
    private protected static string[] Before(ShopKeys keys, string key) => [.. keys.Keys.Select(k => k.Name).TakeWhile(k => k != key)];
}

/// <summary>Fills a map in: sets some of its keys and takes others out. A map that is not there is made, and one that nothing is left of goes.</summary>
/// <param name="Key">Which map: see <see cref="ShopChoices"/>.</param>
/// <param name="Values">By keys; null takes one out.</param>
public sealed record FillIn(string Key, ImmutableArray<(string Key, string? Value)> Values) : ShopEdit
{
    /// <inheritdoc/>
    private protected override (IEnumerable<Splice> Splices, string Name) Of(YamlMap root)
    {
        if (ShopPlace.Find(root, Key) is not { IsList: false } place) throw Gone;
        (string Key, string? Value)[] changed = [.. Values.Where(v => (place.Text(v.Key) is { Length: > 0 } there ? there : null) != v.Value && (v.Value is not null || place.Map?[v.Key] is not null))];
        string name = changed.Length == 0 ? place.Words : $"{place.Words}: {string.Join(", ", changed.Select(c => Told(place, c)))}";
        if (place.Map is not { } map) return (Make(root, place, Written.Fields(changed)), name);
        bool isEmptied = place.Holder is not null && map.Entries.All(e => changed.Any(c => c.Key == e.Key.Text && c.Value is null));
        if (isEmptied && !changed.Any(c => c.Value is not null)) return ([TakeOut(root, place)], name);
        // Another unit for bare figures changes no size: those that stand there bare are given the one they were written in.
        IEnumerable<Splice> named = place.Key.Length == 0 && changed.Any(c => c.Key == "unit") ? Named(root) : [];
        // What is new is set first, so that a map is never empty in between.
        return (named.Concat(changed.OrderBy(c => c.Value is null).Select(c => c.Value is { } value ? Splice.Set(place.Path.To(c.Key), value, Before(place.Keys, c.Key)) : Splice.TakeOut(place.Path.To(c.Key)))), name);
    }

    private static IEnumerable<Splice> Named(YamlMap root) =>
        from place in ShopPlace.All(root)
        from key in place.Keys.Keys.Where(k => k.IsField)
        let text = place.Text(key.Name)
        let named = FieldUnits.Named(ShopChoices.FieldOf(place.Keys.Kind, key), text, ShopTree.Unit(root))
        where named != text
        select Splice.Set(place.Path.To(key.Name), named, []);

    // Maps that lead to it are made along with it.
    private static IEnumerable<Splice> Make(YamlMap root, ShopPlace place, YamlMap map)
    {
        if (map.Entries.IsEmpty) return [];
        TextPath path = place.Path;
        YamlNode value = map;
        while (path.Steps.Length > 1 && TextPath.At(root, path.Up.Steps.AsSpan()) is not YamlMap)
        {
            value = Written.Map((path.Steps[^1].Key!, value));
            path = path.Up;
        }
        string key = path.Steps[^1].Key!;
        ShopKeys keys = path.Steps.Length == 1 ? ShopKeys.Of("") : ShopPlace.Find(root, place.Key[..place.Key.LastIndexOf('.')])!.Keys;
        return [Splice.Set(path, value, Before(keys, key))];
    }

    private static string Told(ShopPlace place, (string Key, string? Value) change)
    {
        string before = place.Text(change.Key);
        return change.Value is not { } value ? $"{change.Key} taken out" : before.Length > 0 ? $"{change.Key} {before} to {value}" : $"{change.Key} {value}";
    }
}

/// <summary>Adds an item to a list of the shop file, at its end.</summary>
/// <param name="List">Which list, such as <c>stock</c>, or <c>stock.3.flaws</c>.</param>
/// <param name="Kind">Of which kind the item is, as the schema names it.</param>
/// <param name="Values">By keys; null for what is left out.</param>
public sealed record AddItem(string List, string Kind, ImmutableArray<(string Key, string? Value)> Values) : ShopEdit
{
    /// <inheritdoc/>
    private protected override (IEnumerable<Splice> Splices, string Name) Of(YamlMap root)
    {
        if (ShopPlace.Find(root, List) is not { IsList: true } place) throw Gone;
        YamlMap item = Written.Fields(Values.Select(v => (v.Key, v.Value)));
        string name = $"added: {new ShopPlace("", place.Path, ShopKeys.Of(Kind), item).Words}";
        if (place.Node is YamlList list) return ([Splice.Add(place.Path, list.Items.Length, item)], name);
        ShopKeys keys = place.Keys;
        return ([Splice.Set(place.Path, Written.List(item), Before(keys, place.Path.Steps[^1].Key!))], name);
    }
}

/// <summary>Takes an item out of its list, or a map out of the text.</summary>
/// <param name="Key">Which.</param>
public sealed record TakeOutOfShop(string Key) : ShopEdit
{
    /// <inheritdoc/>
    private protected override (IEnumerable<Splice> Splices, string Name) Of(YamlMap root) => ShopPlace.Find(root, Key) is { Node: not null, IsList: false } place && Key.Length > 0
        ? ([TakeOut(root, place)], place.IsItem ? $"taken out: {place.Words}" : $"{place.Words}: as usual") : throw Gone;
}

/// <summary>Says that the shop has no such saw.</summary>
/// <param name="Key">Which, such as <c>saws.sled</c>.</param>
public sealed record HasNone(string Key) : ShopEdit
{
    /// <inheritdoc/>
    private protected override (IEnumerable<Splice> Splices, string Name) Of(YamlMap root)
    {
        if (ShopPlace.Find(root, Key) is not { Holder.MayBeNo: true } place) throw Gone;
        string key = place.Path.Steps[^1].Key!;
        return root["saws"] is YamlMap ? ([Splice.Set(place.Path, "no", Before(ShopKeys.Of("saws"), key))], $"no {place.Words}")
            : ([Splice.Set(place.Path.Up, Written.Fields((key, "no")), Before(ShopKeys.Of(""), "saws"))], $"no {place.Words}");
    }
}
