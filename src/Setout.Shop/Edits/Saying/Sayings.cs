// Over 200 lines: one walk along a text and its schema, each way to write a value in turn.
using System.Collections.Immutable;
using Setout.Core.Measures.Text;
using Setout.Shop.Texts;

namespace Setout.Shop.Edits.Saying;

/// <summary>Something that can be said of a thing.</summary>
/// <param name="Under">What it belongs to within the thing, such as <c>back</c> or <c>slots 2</c>; empty for the thing itself.</param>
/// <param name="Words">What it is, from the published schema.</param>
/// <param name="IsSaid">Whether something stands there now.</param>
/// <param name="Choice">The edit that says it.</param>
public sealed record Said(string Under, string Words, bool IsSaid, EditChoice Choice);

/// <summary>A thing within a thing, or around it, with sayings of its own.</summary>
/// <param name="Key">Its key or name.</param>
/// <param name="Words">What it is, with its key.</param>
public sealed record SaidOf(string Key, string Words);

/// <summary>
/// All that the piece file can say of one thing: each key of the published schema that may stand there, with what stands there now. So the page offers whatever the text can say,
/// and nothing of the text is out of reach of who does not write it.
/// </summary>
/// <param name="Key">The thing; empty for the whole piece.</param>
/// <param name="Words">What it is.</param>
/// <param name="All">In the order of the schema; what stands inside of what follows it.</param>
/// <param name="Around">What it stands in, from the outside.</param>
/// <param name="Within">What stands in it and has sayings of its own.</param>
public sealed record Sayings(string Key, string Words, ImmutableArray<Said> All, ImmutableArray<SaidOf> Around, ImmutableArray<SaidOf> Within)
{
    // Divisions and fillings are begun on the drawing; what a thing is called by and the version are never edited.
    private static readonly ImmutableArray<string> s_drawn = ["across", "down", "drawers", "shelves", "doors"];
    private static readonly ImmutableArray<string> s_listedOnTheDrawing = ["across", "down", "keys", "assembly"];

    /// <summary>What can be said of a thing; null where the text has no such thing, or cannot be read at all.</summary>
    /// <param name="text">A piece file.</param>
    /// <param name="key">A permanent key, or the name of a material or a kind; empty for the whole piece.</param>
    public static Sayings? Of(string text, string key)
    {
        if (YamlTree.Read(text) is not { IsSound: true, Value: YamlMap root }) return null;
        Thing[] things = [.. Thing.In(root)];
        Thing? thing = key.Length == 0 ? null : things.Where(t => t.Key == key && t.Node is YamlMap).OrderBy(t => t.Word == Thing.DrawerKind).FirstOrDefault();
        if (key.Length > 0 && thing is null) return null;
        PathStep[] steps = thing is null ? [] : [.. thing.Steps];
        if (SchemaNode.Beside(root, steps) is not { IsMap: true } way) return null;
        var walk = new Walk(root, thing);
        walk.Map(thing?.Map ?? root, way, TextPath.Of(key), "");
        bool Holds(Thing outer, Thing inner) => outer.Steps.Length < inner.Steps.Length && inner.Steps.AsSpan().StartsWith(outer.Steps.AsSpan());
        SaidOf Named(Thing t) => new(t.Key, t.Words);
        return new(key, thing?.Words ?? "the piece", [.. walk.All],
            thing is null ? [] : [.. things.Where(t => Holds(t, thing) && t.Node is YamlMap).Select(Named)],
            [.. things.Where(t => t.Node is YamlMap && (thing is null || Holds(thing, t)) && !things.Any(m => Holds(m, t) && (thing is null || Holds(thing, m)))).Select(Named)]);
    }

    /// <summary>The same for a person who is shown figures in a unit of his own: see <see cref="EditChoice.For"/>.</summary>
    public Sayings For(LengthUnit own, LengthUnit shown) => own == shown ? this : this with { All = [.. All.Select(s => s with { Choice = s.Choice.For(own, shown) })] };

    private static readonly EditField s_name = new("name-of-it", "its name", FieldKind.Words, "");
    private static readonly EditField s_nameAfter = s_name with { MayBeEmpty = true, IsMore = true, Usual = "What notes and the text call it. Left empty, it is called after the finish." };

    private sealed class Walk(YamlMap root, Thing? thing)
    {
        // The way that the whole is carried through, and what a wood is sold in, are no sizes of the piece.
        private bool IsElsewhere(int depth) => thing is null || (thing.Word == "material" && depth > 1);

        // The woods of the piece are named where the schema speaks of sheets or sticks.
        private ImmutableArray<string> Known(string about) =>
        [
            .. from e in (root["materials"] as YamlMap)?.Entries ?? []
               where e.Value is YamlMap of && (of["panel"] is not null ? about.Contains("sheet", StringComparison.OrdinalIgnoreCase) : about.Contains("stick", StringComparison.OrdinalIgnoreCase))
               select e.Key.Text,
        ];

        public List<Said> All { get; } = [];

        public void Map(YamlMap map, SchemaNode way, TextPath at, string under)
        {
            string? own = TextPath.WordOf(map);
            var inside = new List<Action>();
            foreach ((string name, SchemaNode node) in way.Keys)
            {
                if (name == own || (at.Steps.IsEmpty && at.Owner.Length == 0 && name == "setout")) continue;
                YamlNode? there = map[name] is YamlScalar { Text: "" } or YamlList { Items.Length: 0 } ? null : map[name];
                Value(name, node, there, at.To(name), under, way.Required.Contains(name), inside);
            }
            foreach (Action more in inside) more();
        }

        private void Value(string name, SchemaNode node, YamlNode? there, TextPath at, string under, bool isRequired, List<Action> inside)
        {
            string below = under.Length > 0 ? $"{under}, {name}" : name;
            if (node.Ways.FirstOrDefault(w => w.IsNamed) is { } named)
            {
                foreach ((SchemaNode way, int i) in named.Each.Ways.Select((w, i) => (w, i)))
                    Add(under, way.Words, false, Whole(at, $"new{i}", $"One more in {name}: {Bare(way.Words)}", way, null,
                        // A finish is called after what it is, where nobody cares.
                        name == "finishes" ? (v, map) => new AddNamed(at, v.Text("name-of-it"), v.Text("finish") ?? "", map) : (v, map) => Called(at, v.Needed("name-of-it"), map),
                        name == "finishes" ? s_nameAfter : s_name));
                return;
            }
            SchemaNode? list = node.Ways.FirstOrDefault(w => w.IsList);
            if (list is not null && list.Item.Ways.Any(w => w.IsMap) && there is null or YamlList)
            {
                Listed(name, list, there as YamlList, at, below, under, inside);
                if (there is YamlList { Items: var items } && (list.Item.Ways.All(w => w.IsMap) || items.Any(i => i is YamlMap))) return;
            }
            if (list is not null && (s_listedOnTheDrawing.Contains(name) || list.Item.Ways.All(w => w.IsKey))) list = null;
            SchemaNode? word = node.Ways.FirstOrDefault(w => w.IsWord), words = list?.Item.Ways.FirstOrDefault(w => w.IsWord);
            if (there is YamlMap map && node.WayOf(map) is { } of)
            {
                inside.Add(() =>
                {
                    if (!isRequired && !s_drawn.Contains(name)) Add(below, node.Words, true, Menu.Button(Id(at, "out"), $"Take out {name}", new ClearAny(at)));
                    Map(map, of, at, below);
                });
                return;
            }
            if (word is not null || words is not null) Add(under, node.Words, there is not null, Field(name, node.Words, word, words, there, at, isRequired));
            if (s_drawn.Contains(name)) return;
            foreach ((SchemaNode way, int i) in node.Ways.Where(w => w.IsMap).Select((w, i) => (w, i)))
                Add(under, way.Words, false, Whole(at, $"full{i}", word is null ? $"{Fillings.Capital(name)}" : $"{Fillings.Capital(name)} in full", way, there as YamlScalar, (_, made) => new SetNode(at, made)));
        }

        // A list of maps: what stands in it, and one more.
        private void Listed(string name, SchemaNode list, YamlList? there, TextPath at, string below, string under, List<Action> inside)
        {
            foreach ((YamlNode item, int i) in there?.Items.Select((n, i) => (n, i)) ?? [])
            {
                if (item is not YamlMap map || TextPath.WordOf(map) is not null || list.Item.WayOf(map) is not { } of) continue;
                inside.Add(() =>
                {
                    string here = $"{below} {i + 1}";
                    Add(here, of.Words, true, Menu.Button(Id(at.To(i), "out"), $"Take out {name} {i + 1}", new ClearAny(at.To(i))));
                    Map(map, of, at.To(i), here);
                });
            }
            if (s_listedOnTheDrawing.Contains(name)) return;
            foreach ((SchemaNode way, int i) in list.Item.Ways.Where(w => w.IsMap).Select((w, i) => (w, i)))
            {
                string? keyWord = way.Keys.Where(k => k.Node.IsKey && way.Required.Contains(k.Key)).Select(k => k.Key).FirstOrDefault();
                Add(under, way.Words, false, Whole(at, $"more{i}", $"One more in {name}", way, null, (_, made) => new AddItem(at, made, keyWord)));
            }
        }

        private EditChoice Field(string name, string about, SchemaNode? word, SchemaNode? words, YamlNode? there, TextPath at, bool isRequired)
        {
            SchemaNode kind = word ?? words!;
            string value = there switch { YamlScalar scalar => scalar.Text, YamlList list => string.Join(", ", list.Items.OfType<YamlScalar>().Select(s => s.Text)), _ => "" };
            EditField field = OfWord("value", name, about, kind, value, !isRequired, words is not null, at.Steps.Length);
            if (name == "unit" && at.Owner.Length == 0 && at.Steps.Length == 1)
                return new(Id(at, ""), Fillings.Capital(name), [field with { Usual = $"{about} Every size stays as it is: figures that stand there bare are given their unit first." }], v => new ChangeUnit(v.Text("value") ?? "in"));
            return new(Id(at, ""), Fillings.Capital(name), [field], v => v.Text("value") is not { } text ? new ClearAny(at)
                : words is not null && (word is null || there is YamlList || text.Contains(',', StringComparison.Ordinal)) ? new SetNode(at, Several(text)) : new SetAny(at, text));
        }

        private EditField OfWord(string name, string words, string about, SchemaNode kind, string value, bool mayBeEmpty, bool isSeveral, int depth) => isSeveral
            ? new(name, words, kind.Kind == FieldKind.Length ? FieldKind.Lengths : FieldKind.Words, value) { MayBeEmpty = mayBeEmpty, Options = Known(about), Usual = $"{about}{(kind.Options.IsEmpty ? "" : $" Of: {string.Join(", ", kind.Options)}.")} Several apart by commas." }
            : new(name, words, kind.Kind, value) { MayBeEmpty = mayBeEmpty, IsElsewhere = IsElsewhere(depth), Options = kind.Kind == FieldKind.Words ? Known(about) : kind.Options, Usual = about };

        // A form with all words of a map at once, maps that it must have written out within it.
        private EditChoice Whole(TextPath at, string id, string title, SchemaNode way, YamlScalar? there, Func<FieldValues, YamlMap, Edit> maker, EditField? named = null)
        {
            var fields = new List<(string[] Path, EditField Field, bool IsSeveral)>();
            void Within(SchemaNode of, string[] path, bool isNeeded)
            {
                foreach ((string key, SchemaNode node) in of.Keys)
                {
                    bool must = isNeeded && of.Required.Contains(key);
                    string[] here = [.. path, key];
                    SchemaNode? word = node.Ways.FirstOrDefault(w => w.IsWord), words = node.Ways.FirstOrDefault(w => w.IsList && w.Item.Ways.Any(i => i.IsWord && !i.IsKey))?.Item;
                    if (word is not null || words is not null)
                    {
                        // What stood there as one word is what the map is of.
                        string value = key == "of" && path.Length == 0 && there is not null ? there.Text : "";
                        fields.Add((here, OfWord(string.Join('/', here), string.Join(", ", here), node.Words, word ?? words!, value, !must || word?.IsKey == true, words is not null, at.Steps.Length + here.Length), words is not null));
                    }
                    else if (must && node.Ways.FirstOrDefault(w => w.IsMap) is { } inner) Within(inner, here, true);
                }
            }
            Within(way, [], true);
            EditField[] all = [.. named is null ? Array.Empty<EditField>() : [named], .. fields.OrderBy(f => f.Field.MayBeEmpty).Select(f => f.Field)];
            return new(Id(at, id), title, [.. all], v =>
            {
                YamlMap made = Build(0, fields.Select(f => (f.Path, v.Text(f.Field.Name) is { } text ? f.IsSeveral && text.Contains(',', StringComparison.Ordinal) ? Several(text) : (YamlNode)Written.Word(text) : null)).Where(f => f.Item2 is not null).Select(f => (f.Path, f.Item2!)));
                return maker(v, made);
            });
        }

        private static YamlMap Build(int depth, IEnumerable<(string[] Path, YamlNode Value)> values) =>
            Written.Map(values.GroupBy(f => f.Path[depth]).Select(g => (g.Key, (YamlNode?)(g.First().Path.Length == depth + 1 ? g.First().Value : Build(depth + 1, g)))));

        private static YamlList Several(string text) => Written.Words(text.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries));

        private static SetNode Called(TextPath at, string typed, YamlMap map) => new(at.To(FreshKeys.Name(typed)), map, typed);

        private static string Bare(string words) => words.TrimEnd('.').ToLowerInvariant();

        private static string Id(TextPath at, string what) =>
            string.Join('.', at.Steps.Select(s => s.Key?.Replace(' ', '_') ?? s.Index.ToString(System.Globalization.CultureInfo.InvariantCulture)).Prepend("say").Append(what).Where(s => s.Length > 0));

        private void Add(string under, string words, bool isSaid, EditChoice choice) => All.Add(new(under, words, isSaid, choice));
    }
}
