// Over 200 lines: a text with every key of each kind, which all tests of the schemas go by.
using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;
using Setout.Shop.Texts;

namespace Setout.Shop.Tests.Texts;

public class SchemaTests
{
    // Every kind of map once, so that the readers ask for all they know.
    private const string WholePiece = """
        setout: 1
        name: Everything
        about: One of each.
        unit: in
        grid: 1/32
        way in: {width: 30, height: 78}
        moisture: 7
        materials:
          ply: {panel: hardwood plywood, label: 3/4, thickness: 23/32, grain: keep, edges: banded, band: 1/32, sizes: [{size: 96 x 48, price: 60, have: 1, name: a, trim: 0}]}
          stud: {lumber: 2x4, section: 1 1/2 x 3 1/2, lengths: [{length: 96, price: 4.2, have: 1, name: b, trim: 0, flaws: [{from: 0, to: 4}], width: 5 1/2}]}
          edged: {panel: mdf, thickness: 3/4, label: 3/4, edges: lipped, lip: oak}
          oak: {stick: oak, section: 2 x 2}
        drawers:
          kind: {sides: ply, bottom: ply, front: ply, gap: 1/8, overlay: 0, play: 0, slide: 20, window: narrow}
          other: {sides: ply, bottom: ply, front: ply, corners: pocket, bottom fit: slid in, groove depth: 1/4, groove up: 1/4, slides: under, fronts: inset, false front: yes, slide: {clearance: 1/2, length: 18, setback: 0, rear: 1/4, room: 1/2}, handles: {of: knob, place: in line, from top: 2, apart: 3, hole: 1/4}}
          third: {sides: ply, bottom: ply, front: ply, slide: {series: [16, 18 in]}}
        doors:
          plain: {of: ply, lies: half overlay, overlay: 0, gap: 0, hinge: cup, clear: 0, catch: magnetic catch, handles: {of: knob, place: in line, from edge: 2, from top: 3, apart: 3, hole: 1/4}}
          framed: {frame: {of: oak, rails: oak, bottom rail: oak}, panel: ply, groove: 3/8, tenon: 1, play: 0, moisture: 6, lies: inset, gap: 1/16, hinge: butt, clear: 1, catch: ball catch, handles: {of: knob, from bottom: 3}}
        finishes:
          oil: {finish: hard oil, coats: 2, covers: 125 sq ft per quart, can: 1 quart, on: [oak, T]}
          paint: {finish: milk paint, coats: 1, covers: 7 1/2 m2/0.375 l, can: 3/4 l, on: C}
        assembly:
          - frame: F
            name: frame
            of: stud
            width: 60
            height: 30
            depth: 24
            toe: 0
            rails: oak
            corners: tenon
            tenon: 1/2
            above: 1/2
            panels: {of: ply, groove: 1/4, play: 0, moisture: 8, ends: yes, back: no}
            bottom rails: yes
            rails run: between
            lap: 1/4
            stretchers: [{stretcher: SA, of: oak, at: middle, up: 0, laid: flat, short: 0}]
            top rails: on edge
            across:
              - {opening: A, width: 20, slide panels: ply, drawers: {like: kind, figure: through, graduated: 1:2, packing: oak, down: [{drawer: D1, front: rest, box width: 18, box height: 5}]}}
              - {posts: P, of: stud}
              - {opening: B, width: rest, bearers: oak, setback: 0, down: [{opening: BA}, {rail: R, of: oak, laid: flat, setback: 0, covered: no}, {opening: BC}]}
              - {posts: N, of: stud}
              - {opening: BD, slats: {of: oak, count: 2, at: both}, from behind: {opening: BE, shelves: {down: [S2]}}, shelves: {grain: front to back, lowest: at the bottom, past posts: 1, down: [S3]}}
          - case: C
            name: case
            of: ply
            width: 60
            height: 30
            depth: 24
            back: ply
            beside: F
            on: [F]
            flush: front
            hung: no
            across:
              - {opening: E, width: 20, doors: {like: plain, keys: [W1], hinges: right}, shelves: {of: ply, setback: 0, fit: adjustable, strip: {of: ply, height: 2}, down: [S1]}}
              - {partition: Q, of: ply, grain: upright, doubled: yes}
              - {opening: G, width: rest, down: [{opening: H, height: 5}, {deck: K, of: ply}, {opening: L, height: rest}]}
          - top: T
            name: top
            of: ply
            on: F
            held: slots
            overhang: {front: 1, back: 0, left: 0, right: 0}
            layers: [ply, {of: ply, seams: [20, 40]}]
            edging: {of: oak, corners: pinwheel, raised: 1/8, sides: [front, left]}
            laminate: {of: HGS, thickness: 0.05, faces: top, backer: 0.05, edges: right, oversize: 1/4}
            slots: [{slot: K1, along: front, from: 4, width: 3/4, depth: 3/8, short: 2, bit: 1/2, pass: 1/8}]
            wells:
              - well: W
                machine: drum sander
                from left: 20
                from front: 4
                width: 12
                depth: 10
                footprint: 10 x 8
                table height: 5
                set low: 0
                platform: ply
                bearers: oak
                sides: ply
                swing: {front: 0, back: 0, left: 0, right: 0}
                feed: {front: 1, back: 1, left: 1, right: 1}
                load: 40
                bolt size: 3/8
                bolts: [{from left: 1, from front: 1}]
                exits: [{for: cable, size: 1, from left: 4, from front: 4}]
          - case: D
            of: ply
            width: 40
            height: 30
            depth: 24
            beside: C
            corners: rabbet
            corner depth: 3/8
            dividers: dado
            divider depth: 1/4
            back: {of: ply, fit: grooved, depth: 1/4, inset: 3/4, play: 1/16}
            hanging rail: {of: ply, width: 4}
            toe: {height: 4, setback: 3, of: ply}
            base: {of: ply, height: 4, setback: 0}
            feet: {kind: castors, height: 4}
            face frame: {of: oak, stiles: oak, rails: oak, mullions: oak, joint: tenon, tenon: 1, overhang: 1/4, packing: oak}
            filler: [{of: ply, width: 2, scribe: 1/2, at: right}]
          - {case: NN, of: ply, width: 40, height: 30, depth: 24, beside: D, across: {openings: 3, key: NA, of: ply, grain: upright, doubled: no, down: {openings: 2, key: NB, of: ply, shelves: {down: [S4]}}}}
        parts:
          - {part: X, name: x, of: ply, count: 2, length: 3, width: 4}
        """;

    private const string WholeShop = """
        setout-shop: 1
        name: all
        currency: USD
        unit: in
        grid: {in: 1/32, mm: 0.5}
        kerf: {sheets: 1/8, boards: 1/8, rips: 0}
        saws: {fence: {widest: 30, room: 100, narrowest: 1, carrier: 1/4}, sled: {deepest: 24, longest: 48}, guided: {kerf: 3/32, shoe: 5 1/8, longest: 100, rough: 0}, boards: {widest: 8}}
        lift: 51 lb
        trim: {sheets: 1/4, boards: 0}
        keep: {sheets: 12 x 6, boards: 12}
        slack: 1/16
        most stages: 3
        instruments: {tape: 1/32, rule: 1/64, calliper: 0.001}
        spread: {setting: 1/16, repeat: 0, sheet: 1/100, spot: 0.1 mm, section: 1/8, placing: 1/128, slides: 0.2 mm}
        shims: [{name: card, thickness: 0.3 mm}, {name: washer, thickness: 1/16}]
        stock:
          - {panel: hardwood plywood, label: 3/4, thickness: 0.71, grain: free, size: 96 x 48, price: 60, have: 1, name: a, trim: {near edge: 0, far edge: 1/4, near end: 0, far end: 1/4}, read: 0.706, lot: May, for: all, counted: 2026-11-27}
          - {lumber: 2x4, section: 1 1/2 x 3 1/2, length: 96, price: 4.2, have: 1, name: b, trim: {near end: 0, far end: 1}, lot: May, for: all, counted: 2026-11-27, rip: no, flaws: [{from: 1, to: 2}]}
          - {stick: oak, section: 2 x 2, length: 60, price: 9, have: 1, name: c, trim: 0, lot: May, for: all, counted: 2026-11-27T17:30:00+01:00, rip: yes, flaws: [{from: 20, to: 24}, {from: 0, to: 60}]}
        counted: 2026-11-20
        prices: [{name: Screw, price: 0.07, pack: 100}]
        """;

    private const string WholeLog = """
        setout-log: 1
        entries:
          - {id: a, at: 2026-05-04T09:40:00Z, read: L.width, values: [20 3/4 in, 527 mm], with: tape, spot: top}
          - {id: b, at: 2026-05-04T09:40:00+02:00, cut: [C.side], from: boxes.sheet-1, figures: [{of: C.side.length, is: 30 in}], chosen: []}
          - {id: c, at: 2026-05-04T09:40:00.25Z, assembled: [C.side], figures: [], chosen: []}
          - {id: d, at: 2026-05-04T09:40:00Z, fitted: [D1], figures: [], chosen: [{of: D1.slide.length, is: 18 in}]}
          - {id: i, at: 2026-05-04T09:40:00Z, finished: [D1], figures: [], chosen: []}
          - {id: e, at: 2026-05-04T09:40:00Z, bought: [Screw], figures: [], chosen: [{of: D2.slide.length, is: 450 mm}]}
          - {id: f, at: 2026-05-04T09:40:00Z, void: a}
          - id: h
            at: 2026-05-04T09:40:00Z
            cut: [C.side]
            run: 3
            plan: 1a2b3c4d
            took:
              - {of: ply, stock: rack, name: offcut 7, size: 48 in x 24 in, trim: {near edge: 0, far edge: 1/4 in, near end: 0, far end: 1/4 in}}
              - {of: oak, stock: bought, name: c, length: 96 in, section: 120 mm x 20 mm, trim: {near end: 1/2 in}, flaws: [{from: 640 mm, to: 710 mm}]}
              - {of: ply, blank: ply-4}
            left:
              - {of: ply, name: ply-5, size: 24 in x 11 1/4 in, trim: {far end: 1/4 in}, use: work}
              - {of: oak, name: oak-6, length: 40 in, section: 20 mm x 60 mm, trim: {far end: 1/2 in}, flaws: [{from: 0, to: 10 mm}], use: waiting}
          - {id: g, at: 2026-05-04T09:40:00Z, allow: material.not-read, on: ply, because: read it twice}
        """;

    public static TheoryData<string, string> Whole => new() { { "piece", WholePiece }, { "shop", WholeShop }, { "log", WholeLog } };

    /// <summary>A text that holds every kind of map with every key.</summary>
    internal static string WholeText(string name) => name switch { "piece" => WholePiece, "shop" => WholeShop, _ => WholeLog };

    /// <summary>The keys that the reader of a text knows, by the kind of map.</summary>
    internal static SortedDictionary<string, SortedSet<string>> KnownKeys(string name) => Read(name, WholeText(name)).Known;

    [Theory, MemberData(nameof(Whole))]
    public void Schema_PropertiesOfEveryMap_AreTheKeysThatTheReaderKnows(string name, string text)
    {
        var known = Read(name, text).Known;
        JsonObject schema = Node(name).AsObject();
        string root = name == "piece" ? "setout" : $"setout-{name}";
        foreach ((string kind, SortedSet<string> keys) in known)
        {
            JsonObject definition = kind == root ? schema : schema["$defs"]![kind]!.AsObject();
            Assert.Equal(keys, definition["properties"]!.AsObject().Select(p => p.Key).Order(StringComparer.Ordinal));
            Assert.False(definition["additionalProperties"]!.GetValue<bool>());
        }
        // No map of the schema is one that no reader reads.
        var maps = schema["$defs"]!.AsObject().Where(d => d.Value!["properties"] is not null).Select(d => d.Key).Append(root);
        Assert.Equal(known.Keys.Order(StringComparer.Ordinal), maps.Order(StringComparer.Ordinal));
    }

    [Theory, MemberData(nameof(Whole))]
    public void Schema_EveryKeyThatIsWanted_IsWantedByTheReaderToo(string name, string text)
    {
        JsonObject schema = Node(name).AsObject();
        foreach ((string path, JsonNode document) in Without(Json(text)))
        {
            bool isValid = Evaluate(name, document);
            int findings = Read(name, document.ToJsonString(s_plain)).Findings;
            Assert.True(isValid == (findings == 0), $"{name} without {path}: the schema says {isValid}, the reader has {findings} findings.");
        }
    }

    [Fact]
    public void Schema_Samples_Validate()
    {
        foreach (string file in Repository.PieceSamples) Assert.True(Evaluate("piece", Json(File.ReadAllText(file))), file);
        Assert.True(Evaluate("shop", Json(Repository.Read("samples", "shop.yaml"))));
        foreach (object[] row in Whole.Select(r => new object[] { r.Data.Item1, r.Data.Item2 })) Assert.True(Evaluate((string)row[0], Json((string)row[1])), (string)row[0]);
    }

    [Theory]
    [InlineData("piece", "piece-file.md")]
    [InlineData("shop", "shop-file.md")]
    [InlineData("log", "log.md")]
    public void Schema_ExamplesOfThePages_Validate(string name, string page)
    {
        string[] examples = DocumentationTests.Examples(page);
        Assert.NotEmpty(examples);
        Assert.All(examples, e => Assert.True(Evaluate(name, Json(e)), e));
    }

    // What a reader refuses as the wrong kind of thing, an editor marks too.
    [Theory]
    [InlineData("piece", "window: narrow", "window: wide")]
    [InlineData("piece", "window: narrow", "window: [narrow]")]
    [InlineData("piece", "lies: half overlay", "lies: beside")]
    [InlineData("piece", "moisture: 6", "moisture: 0")]
    [InlineData("piece", "fit: adjustable", "fit: loose")]
    [InlineData("piece", "keys: [W1]", "keys: [W1, W2, W3]")]
    [InlineData("shop", "repeat: 0,", "repeat: -1,")]
    [InlineData("shop", "rip: yes", "rip: perhaps")]
    [InlineData("shop", "flaws: [{from: 1, to: 2}]", "flaws: {from: 1, to: 2}")]
    [InlineData("shop", "flaws: [{from: 1, to: 2}]", "flaws: [1]")]
    [InlineData("shop", "{from: 1, to: 2}", "{from: -1, to: 2}")]
    [InlineData("piece", "width: 5 1/2}", "width: 0}")]
    [InlineData("shop", "repeat: 0,", "repeat: [1/64],")]
    [InlineData("shop", "shims: [{name: card, thickness: 0.3 mm}, {name: washer, thickness: 1/16}]", "shims: {card: 0.3 mm}")]
    [InlineData("shop", "thickness: 0.3 mm", "thickness: 0")]
    [InlineData("shop", "counted: 2026-11-20", "counted: last week")]
    [InlineData("shop", "counted: 2026-11-20", "counted: 2026-11-20T12:00:00")]
    [InlineData("shop", "trim: {near end: 0, far end: 1}", "trim: [0, 1]")]
    [InlineData("shop", "{near end: 0, far end: 1}", "{near end: 0, far end: -1}")]
    [InlineData("shop", "read: 0.706", "read: 0")]
    [InlineData("piece", "covers: 125 sq ft per quart", "covers: 125 per quart")]
    [InlineData("piece", "covers: 125 sq ft per quart", "covers: 125-150 sq ft per quart")]
    [InlineData("piece", "can: 1 quart", "can: 1")]
    [InlineData("piece", "can: 1 quart", "can: [1 quart]")]
    [InlineData("piece", "coats: 2", "coats: 0")]
    [InlineData("piece", "coats: 2", "coats: twice")]
    [InlineData("log", "run: 3", "run: 0")]
    [InlineData("log", "run: 3", "run: third")]
    [InlineData("log", "stock: rack", "stock: wall")]
    [InlineData("log", "use: work", "use: part")]
    [InlineData("log", "size: 48 in x 24 in", "size: 48 in")]
    [InlineData("log", "size: 48 in x 24 in", "size: 48 in x 24")]
    [InlineData("log", "length: 40 in", "length: 40")]
    [InlineData("log", "{far end: 1/2 in}, flaws: [{from: 0", "{far end: 1/2}, flaws: [{from: 0")]
    [InlineData("log", "{of: ply, blank: ply-4}", "ply-4")]
    [InlineData("log", "{of: ply, blank: ply-4}", "{of: ply, blank: [ply-4]}")]
    [InlineData("shop", "lift: 51 lb", "lift: 51")]
    [InlineData("shop", "lift: 51 lb", "lift: 51 stone")]
    [InlineData("shop", "boards: {widest: 8}", "boards: [8]")]
    [InlineData("shop", "boards: {widest: 8}", "boards: none")]
    [InlineData("shop", "sled: {deepest: 24, longest: 48}", "sled: {deepest: 0, longest: 48}")]
    [InlineData("shop", "shoe: 5 1/8", "shoe: -1")]
    [InlineData("log", "from: boxes.sheet-1", "from: [boxes.sheet-1]")]
    [InlineData("log", "fitted: [D1]", "fitted: [D1], from: boxes.sheet-1")]
    [InlineData("log", "is: 18 in", "is: 18")]
    [InlineData("log", "chosen: [{of: D1.slide.length, is: 18 in}]", "chosen: [D1.slide.length]")]
    public void Schema_WrongKindOfThing_FailsAsTheReaderDoes(string name, string from, string to)
    {
        string text = WholeText(name), wrong = text.Replace(from, to, StringComparison.Ordinal);
        Assert.NotEqual(text, wrong);
        Assert.Equal((true, 0), (Evaluate(name, Json(text)), Read(name, text).Findings));
        Assert.Equal((false, 1), (Evaluate(name, Json(wrong)), Read(name, wrong).Findings));
    }

    [Theory, MemberData(nameof(Whole))]
    public void Schema_AnyKeyMistyped_Fails(string name, string text)
    {
        int tried = 0;
        foreach (JsonNode document in Mistyped(Json(text)))
        {
            Assert.False(Evaluate(name, document), document.ToJsonString());
            tried++;
        }
        Assert.True(tried > 10);
    }

    [Theory]
    [InlineData("piece")]
    [InlineData("shop")]
    [InlineData("log")]
    public void Schema_Itself_IsOfTheDraftItNamesAndDescribesEverything(string name)
    {
        Assert.True(MetaSchemas.Draft202012.Evaluate(JsonDocument.Parse(Text(name)).RootElement).IsValid);
        foreach ((string key, JsonNode? definition) in Node(name)["$defs"]!.AsObject()) Assert.True(definition!["description"] is not null, key);
    }

    private static readonly JsonSerializerOptions s_plain = new() { Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    private static string Text(string name) => Repository.Read("docs", "schemas", $"{name}.schema.json");

    private static JsonNode Node(string name) => JsonNode.Parse(Text(name))!;

    private static readonly Dictionary<string, JsonSchema> s_schemas = new[] { "piece", "shop", "log" }.ToDictionary(n => n, n => JsonSchema.FromText(Text(n)));

    private static bool Evaluate(string name, JsonNode document) => s_schemas[name].Evaluate(JsonSerializer.SerializeToElement(document)).IsValid;

    private static (SortedDictionary<string, SortedSet<string>> Known, int Findings) Read(string name, string text)
    {
        var context = new TextContext() { MustNameUnit = name == "log" };
        int findings = name switch
        {
            "piece" => PieceText.Read(text, null, context).Findings.Length,
            "shop" => ShopText.Read(text, null, context).Findings.Length,
            _ => LogText.Read(text, null, context).Findings.Count(f => f.Code != "log.void-unknown"),
        };
        return (context.Known, findings);
    }

    internal static JsonNode Json(string yaml) => Json(YamlTree.Read(yaml).Value!)!;

    // As a reader of YAML sees it: what is plain and looks like a number is one.
    private static JsonNode? Json(YamlNode node) => node switch
    {
        YamlMap map => new JsonObject(map.Entries.Select(e => KeyValuePair.Create(e.Key.Text, Json(e.Value)))),
        YamlList list => new JsonArray([.. list.Items.Select(Json)]),
        YamlScalar { Text: "" } => null,
        YamlScalar scalar when decimal.TryParse(scalar.Text, NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out decimal number) => JsonValue.Create(number),
        YamlScalar scalar => JsonValue.Create(scalar.Text),
        _ => throw new ArgumentOutOfRangeException(nameof(node)),
    };

    private static IEnumerable<JsonObject> Maps(JsonNode? node) => node switch
    {
        JsonObject map => map.SelectMany(p => Maps(p.Value)).Prepend(map),
        JsonArray list => list.SelectMany(Maps),
        _ => [],
    };

    // The document once without each key. Materials and kinds of drawer are used by name, which neither looks at.
    private static IEnumerable<(string Path, JsonNode Document)> Without(JsonNode whole)
    {
        int maps = Maps(whole).Count();
        for (int i = 0; i < maps; i++)
        {
            foreach (string key in Maps(whole).ElementAt(i).Select(p => p.Key).ToList())
            {
                JsonNode copy = whole.DeepClone();
                JsonObject map = Maps(copy).ElementAt(i);
                map.Remove(key);
                yield return ($"{map.GetPath()}.{key}", copy);
            }
        }
    }

    private static IEnumerable<JsonNode> Mistyped(JsonNode whole)
    {
        int maps = Maps(whole).Count();
        for (int i = 0; i < maps; i++)
        {
            if (Maps(whole).ElementAt(i).GetPath() is "$.materials" or "$.drawers" or "$.doors" or "$.finishes") continue;
            foreach (string key in Maps(whole).ElementAt(i).Select(p => p.Key).ToList())
            {
                JsonNode copy = whole.DeepClone();
                JsonObject map = Maps(copy).ElementAt(i);
                JsonNode? value = map[key];
                map.Remove(key);
                map[key + "x"] = value?.DeepClone();
                yield return copy;
            }
        }
    }
}
