using System.Collections.Immutable;
using System.Text.Json;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Workings;
using Setout.Cutting.Boards;
using Setout.Cutting.Runs;
using Setout.Cutting.Sheets;
using Setout.Shop.Runs;
using Setout.Shop.Texts;

namespace Setout.Shop.Outputs;

/// <summary>Takes out of a plan.json what marking a run needs, and writes what only that needs: what stock is, how blanks lie, what goes off their sides.</summary>
public static class SawnPlanJson
{
    private static readonly (string Name, Func<EdgeTrim, Length> Of)[] s_sides =
        [("near_edge", t => t.AcrossStart), ("far_edge", t => t.AcrossEnd), ("near_end", t => t.AlongStart), ("far_end", t => t.AlongEnd)];

    internal static void Write(Utf8JsonWriter json, SawnPlan plan, RunBlank blank, LengthUnit unit)
    {
        if (blank.Trim != EdgeTrim.None)
        {
            json.WriteStartObject("trim");
            foreach ((string name, Func<EdgeTrim, Length> of) in s_sides.Where(s => s.Of(blank.Trim).Sign > 0)) PlanJson.Length(json, name, of(blank.Trim), unit);
            json.WriteEndObject();
        }
        if (blank.Turn == Turn.Quarter) json.WriteBoolean("turned", true);
        if (!blank.Flaws.IsEmpty)
        {
            json.WriteStartArray("flaws");
            foreach (BoardStretch flaw in blank.Flaws)
            {
                json.WriteStartObject();
                PlanJson.Length(json, "from", flaw.From, unit);
                PlanJson.Length(json, "to", flaw.To, unit);
                json.WriteEndObject();
            }
            json.WriteEndArray();
        }
        if (plan.MadeBy(blank.Id) is null) Stock(json, plan.Materials[blank.Material], plan.Materials[blank.Material].Stock[blank.Stock], unit);
    }

    private static void Stock(Utf8JsonWriter json, SawnMaterial material, SawnStock stock, LengthUnit unit)
    {
        json.WriteStartObject("of");
        json.WriteString("kind", material.IsSheet ? "sheet" : "board");
        json.WriteString("stock_id", stock.Id);
        json.WriteString("from", RunsJson.Word(stock.Source.ToString()));
        if (stock.Name.Length > 0) json.WriteString("name", stock.Name);
        if (stock.Section is { } section)
        {
            json.WriteStartArray("section");
            json.WriteStringValue(NamedLength.Exactly(section.Thickness));
            json.WriteStringValue(NamedLength.Exactly(section.Width));
            json.WriteEndArray();
        }
        if (stock.Lane is { } lane) PlanJson.Length(json, "lane", lane, unit);
        json.WriteEndObject();
    }

    /// <summary>Takes it out of the text of a plan.json. What is told of each run beyond its cuts and their blanks is not looked at.</summary>
    public static TextRead<SawnPlan> Read(string text)
    {
        try
        {
            using var document = JsonDocument.Parse(text, new() { MaxDepth = EarlierPlan.MostDepth });
            if (!Has(document.RootElement, "runs")) return Refuse(default, "it does not tell the runs");
            ImmutableArray<string> pieces = Has(document.RootElement, "pieces") ? [.. CutTreeJson.Items(document.RootElement, "pieces").Select(p => CutTreeJson.Text(p, "file"))] : [];
            return new(Plan(CutTreeJson.Member(document.RootElement, "runs")) with { Pieces = pieces }, []);
        }
        catch (JsonException broken)
        {
            return Refuse(new((int)Math.Min(int.MaxValue, (broken.LineNumber ?? 0) + 1), (int)Math.Min(int.MaxValue, (broken.BytePositionInLine ?? 0) + 1)), "it is not JSON, or nested too deeply");
        }
        catch (FormatException wrong)
        {
            return Refuse(default, wrong.Message);
        }
    }

    private static TextRead<SawnPlan> Refuse(Place place, string words) => new(null, [new("plan.unreadable", Severity.Stop, "", $"The plan cannot be read: {words}.", "Make it anew: setout plan FILE --out DIR.", place)]);

    // Materials and their stock are told where the stock stands, first of all blanks.
    private static SawnPlan Plan(JsonElement runs)
    {
        JsonElement[] written = [.. CutTreeJson.Items(runs, "blanks")];
        var materials = new List<(string Name, bool IsSheet, List<string> Letters, ImmutableArray<SawnStock>.Builder Stock)>();
        foreach (JsonElement stock in written.Where(b => Has(b, "of")))
        {
            string name = CutTreeJson.Text(stock, "material");
            JsonElement of = CutTreeJson.Member(stock, "of");
            if (materials.All(m => m.Name != name)) materials.Add((name, CutTreeJson.Text(of, "kind") == "sheet", [], ImmutableArray.CreateBuilder<SawnStock>()));
            var material = materials.First(m => m.Name == name);
            material.Letters.Add(CutTreeJson.Text(stock, "stock"));
            material.Stock.Add(new(CutTreeJson.Text(of, "stock_id"), Word<WoodSource>(of, "from"), Has(of, "name") ? CutTreeJson.Text(of, "name") : "")
            {
                Section = Has(of, "section") && CutTreeJson.Items(of, "section").ToArray() is [var thin, var wide] ? StickSection.Of(Exact(thin), Exact(wide)) : null,
                Lane = Has(of, "lane") ? Size(of, "lane") : null,
            });
        }
        var blanks = ImmutableArray.CreateBuilder<RunBlank>();
        foreach (JsonElement blank in written)
        {
            int material = materials.FindIndex(m => m.Name == CutTreeJson.Text(blank, "material")), stock = material < 0 ? -1 : materials[material].Letters.IndexOf(CutTreeJson.Text(blank, "stock"));
            if (stock < 0 || Whole(blank, "id") != blanks.Count) throw new FormatException($"blank {blanks.Count} is of no stock");
            blanks.Add(new(blanks.Count, material, stock, Size(blank, "along"), Size(blank, "across"), Word<BlankUse>(blank, "use"))
            {
                PartId = Has(blank, "part") ? CutTreeJson.Text(blank, "part") : "",
                Turn = Has(blank, "turned") ? Turn.Quarter : Turn.None,
                Trim = Has(blank, "trim") ? Trim(CutTreeJson.Member(blank, "trim")) : EdgeTrim.None,
                Flaws = Has(blank, "flaws") ? [.. CutTreeJson.Items(blank, "flaws").Select(f => new BoardStretch(Size(f, "from"), Size(f, "to")))] : [],
            });
        }
        var plan = new RunPlan(blanks.ToImmutable(), [.. CutTreeJson.Items(runs, "in_order").Select(r => Run(r, blanks.Count))], [], Whole(runs, "least_settings"));
        return new(CutTreeJson.Text(runs, "plan"), CutTreeJson.Text(runs, "texts"), plan, [.. materials.Select(m => new SawnMaterial(m.Name, m.IsSheet, m.Stock.ToImmutable()))], [.. written.Select(b => CutTreeJson.Text(b, "name"))]);
    }

    private static Run Run(JsonElement json, int blanks) => new(Whole(json, "number"), Word<SawWay>(json, "saw"), Word<RunKind>(json, "kind"), Has(json, "figure") ? Size(json, "figure") : Length.Zero,
    [
        .. CutTreeJson.Items(json, "cuts").Select(c => new RunCut(Id(c, "blank", blanks)!.Value, Word<GrainAxis>(c, "axis"), Word<BlankSide>(c, "from"), Size(c, "figure"), Size(c, "kerf"), Id(c, "off", blanks), Id(c, "rest", blanks))),
    ]);

    private static EdgeTrim Trim(JsonElement json)
    {
        Length[] off = [.. s_sides.Select(s => Has(json, s.Name) ? Size(json, s.Name) : Length.Zero)];
        return new(off[2], off[3], off[0], off[1]);
    }

    private static bool Has(JsonElement json, string name) => json.ValueKind == JsonValueKind.Object && json.TryGetProperty(name, out _);

    private static Length Size(JsonElement json, string name) => CutTreeJson.Size(CutTreeJson.Member(json, name), "mm");

    private static ExactLength Exact(JsonElement text) => text.ValueKind == JsonValueKind.String && LengthText.Parse(text.GetString()!, LengthUnit.Millimetre) is { IsRead: true } read ? read.Value : throw new FormatException("a section has no size");

    private static int Whole(JsonElement json, string name) =>
        CutTreeJson.Member(json, name) is { ValueKind: JsonValueKind.Number } number && number.TryGetInt32(out int value) && value >= 0 ? value : throw new FormatException($"'{name}' is no whole number");

    private static int? Id(JsonElement json, string name, int blanks) =>
        name != "blank" && !Has(json, name) ? null : Whole(json, name) is var id && id < blanks ? id : throw new FormatException($"there is no blank {id}");

    private static T Word<T>(JsonElement json, string name) where T : struct, Enum
    {
        string word = CutTreeJson.Text(json, name);
        foreach (T value in Enum.GetValues<T>())
            if (RunsJson.Word(value.ToString()) == word) return value;
        throw new FormatException($"'{word}' is not known for '{name}'");
    }
}
