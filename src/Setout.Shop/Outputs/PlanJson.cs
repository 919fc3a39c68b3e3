// Over 300 lines: the fields of one file in their order; what is worked out elsewhere is only written here.
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;
using Setout.Core.SettingOut.Whole;
using Setout.Core.Workings;
using Setout.Cutting;
using Setout.Cutting.Boards;
using Setout.Cutting.Sheets;
using Setout.Shop.Plans;
using Setout.Shop.Runs;

namespace Setout.Shop.Outputs;

/// <summary>
/// Writes plan.json: the whole plan as data, the same bytes for the same plan. Lengths are <c>{"mm": 361.15625, "text": "14 7/32 in"}</c> with mm
/// exact to the tick, and <c>residual_mm</c> where the text is rounded. The schema is docs/schemas/plan.schema.json.
/// </summary>
public static class PlanJson
{
    private static readonly JsonWriterOptions s_options = new() { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The plan as UTF-8 JSON with a final newline.</summary>
    public static byte[] Write(Plan plan) => Write(json => Plan(json, plan));

    /// <summary>The findings alone.</summary>
    public static byte[] WriteFindings(IEnumerable<Finding> findings) => Write(json => Findings(json, findings));

    /// <summary>The parts alone.</summary>
    public static byte[] WriteParts(SetPiece set) => Write(json => Parts(json, set));

    /// <summary>Workings alone.</summary>
    public static byte[] WriteWorkings(IEnumerable<WrittenWorking> workings, LengthUnit unit) => Write(json =>
    {
        json.WriteStartArray();
        foreach (WrittenWorking working in workings) Working(json, working, unit);
        json.WriteEndArray();
    });

    internal static byte[] Write(Action<Utf8JsonWriter> write)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, s_options)) write(json);
        stream.WriteByte((byte)'\n');
        return stream.ToArray();
    }

    private static void Plan(Utf8JsonWriter json, Plan plan)
    {
        SetPiece set = plan.Set;
        json.WriteStartObject();
        json.WriteNumber("version", Plans.Plan.Version);
        json.WriteString("rule_set", PieceSetOut.RuleSet);
        json.WriteString("inputs", plan.Source.Hash);
        json.WriteStartObject("piece");
        json.WriteString("name", set.Piece.Name);
        json.WriteString("unit", set.Piece.Unit.Mark);
        Length(json, "grid", set.Grid.Step, set.Piece.Unit);
        json.WriteEndObject();
        Together(json, plan);
        json.WritePropertyName("findings");
        Findings(json, plan.Findings);
        json.WritePropertyName("parts");
        Parts(json, set);
        Quantities(json, set);
        SetOutJson.Write(json, set);
        Layouts(json, plan);
        RunsJson.Write(json, plan);
        Buying(json, plan);
        Steps(json, set);
        FinishJson.Write(json, set);
        WeightJson.Whole(json, set);
        json.WriteEndObject();
    }

    private static void Together(Utf8JsonWriter json, Plan plan)
    {
        if (plan.Source.Together is not { } together) return;
        json.WriteStartArray("pieces");
        foreach (MemberPiece member in together.Members)
        {
            json.WriteStartObject();
            json.WriteString("letters", member.Code);
            json.WriteString("name", member.Source.Piece.Name);
            json.WriteString("file", member.File);
            json.WriteEndObject();
        }
        json.WriteEndArray();
    }

    private static void Findings(Utf8JsonWriter json, IEnumerable<Finding> findings)
    {
        json.WriteStartArray();
        foreach (Finding finding in findings)
        {
            json.WriteStartObject();
            json.WriteString("code", finding.Code);
            json.WriteString("severity", finding.Severity.ToString().ToLowerInvariant());
            json.WriteString("key", finding.Key);
            if (finding.Place.IsKnown)
            {
                json.WriteNumber("line", finding.Place.Line);
                json.WriteNumber("column", finding.Place.Column);
            }
            json.WriteString("words", finding.Words);
            json.WriteString("remedy", finding.Remedy);
            if (finding.LetStand.Length > 0) json.WriteString("let_stand", finding.LetStand);
            json.WriteEndObject();
        }
        json.WriteEndArray();
    }

    private static void Parts(Utf8JsonWriter json, SetPiece set)
    {
        json.WriteStartArray();
        foreach (Part part in set.Parts)
        {
            json.WriteStartObject();
            json.WriteString("key", part.Key);
            json.WriteString("mark", part.Mark);
            json.WriteString("name", part.Name);
            json.WriteString("material", part.Material);
            Size(json, "length", set, part.Length);
            Size(json, "width", set, part.Width);
            Length(json, "thickness", set.Worked[part.Thickness], set.Piece.Unit);
            json.WriteNumber("count", part.Count);
            json.WriteString("grain", part.Grain == Core.Pieces.Grain.Keep ? "keep" : "free");
            json.WriteString("edges", set.EdgesOf(part));
            WeightJson.Part(json, set, part);
            json.WriteEndObject();
        }
        json.WriteEndArray();
    }

    private static void Size(Utf8JsonWriter json, string name, SetPiece set, PartSize size)
    {
        json.WriteStartObject(name);
        json.WriteString("key", size.Exact.Text);
        Length(json, "exact", set.Worked[size.Exact], set.Piece.Unit);
        Length(json, "to_cut", set.Worked[size.ToCut], set.Piece.Unit);
        Length(json, "as_cut", set.Worked[size.AsCut], set.Piece.Unit);
        json.WriteEndObject();
    }

    private static void Quantities(Utf8JsonWriter json, SetPiece set)
    {
        json.WriteStartArray("quantities");
        foreach (QuantityKey key in set.Worked.Order)
            if (WrittenWorking.Of(set.Worked, key) is { } working) Working(json, working, set.Piece.Unit);
        json.WriteEndArray();
    }

    private static void Working(Utf8JsonWriter json, WrittenWorking working, LengthUnit unit)
    {
        json.WriteStartObject();
        json.WriteString("key", working.Key.Text);
        json.WriteString("name", working.Name);
        json.WriteString("how", working.How.ToString().ToLowerInvariant());
        Length(json, "value", working.Value, unit);
        if (working.Reading is { } reading)
        {
            Length(json, "expected", working.Expected, unit);
            json.WriteString("reading", reading.Origin.Words);
        }
        if (working.Rule.Length > 0) json.WriteString("rule", working.Rule);
        if (working.Share != Rational.One) json.WriteString("share", working.Share.ToString());
        json.WriteStartArray("terms");
        foreach (WrittenTerm term in working.Terms)
        {
            json.WriteStartObject();
            json.WriteString("words", term.Words);
            json.WriteString("times", term.Times.ToString());
            Length(json, "value", term.Value, unit);
            if (term.Key is { } of) json.WriteString("of", of.Text);
            json.WriteString("origin", term.Origin.Kind.ToString().ToLowerInvariant());
            json.WriteString("origin_words", term.Origin.Words);
            if (term.Origin.Source is { Length: > 0 } source) json.WriteString("source", source);
            json.WriteEndObject();
        }
        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Layouts(Utf8JsonWriter json, Plan plan)
    {
        LengthUnit unit = plan.Set.Piece.Unit;
        json.WriteStartArray("sheets");
        foreach (SheetPlan sheets in plan.Sheets)
        {
            json.WriteStartObject();
            LayoutHead(json, sheets.Material, sheets.Outcome.Status, sheets.Outcome.Layout.Sheets.Length, sheets.IsPriced ? sheets.Outcome.Score.Cost : null, sheets.Outcome.Bound, sheets.Instance.Kerf, unit);
            SheetRules(json, sheets.Instance, unit);
            json.WriteStartArray("layout");
            foreach (LaidSheet laid in sheets.Outcome.Layout.Sheets)
            {
                json.WriteStartObject();
                json.WriteString("stock", sheets.Stock.First(s => s.Id == laid.StockId).Words);
                json.WriteString("stock_id", laid.StockId);
                json.WritePropertyName("cuts");
                CutTreeJson.Write(json, laid.Root);
                json.WriteStartArray("places");
                foreach (PlacedRectangle place in SheetFace.Flatten(sheets.Instance, laid))
                {
                    json.WriteStartObject();
                    json.WriteString("kind", place.Kind.ToString().ToLowerInvariant());
                    if (place.Kind == FaceKind.Part) json.WriteString("part", place.PartId);
                    Length(json, "from_along", place.Place.FromAlong, unit);
                    Length(json, "from_across", place.Place.FromAcross, unit);
                    Length(json, "along", place.Place.Along, unit);
                    Length(json, "across", place.Place.Across, unit);
                    json.WriteEndObject();
                }
                json.WriteEndArray();
                json.WriteEndObject();
            }
            json.WriteEndArray();
            json.WriteEndObject();
        }
        json.WriteEndArray();
        json.WriteStartArray("boards");
        foreach (BoardPlan boards in plan.Boards)
        {
            json.WriteStartObject();
            LayoutHead(json, boards.Material, boards.Outcome.Status, boards.Outcome.Layout.Boards.Length, boards.IsPriced ? boards.Outcome.Score.Cost : null, boards.Outcome.Bound, boards.Instance.Kerf, unit);
            json.WriteStartArray("layout");
            foreach (LaidBoard laid in boards.Outcome.Layout.Boards)
            {
                json.WriteStartObject();
                json.WriteString("stock", boards.Stock.First(s => s.Id == laid.StockId).Words);
                json.WriteStartArray("parts");
                foreach (string part in laid.PartIds) json.WriteStringValue(part);
                json.WriteEndArray();
                Length(json, "left_over", laid.LeftOver, unit);
                json.WriteString("use", laid.Use.ToString().ToLowerInvariant());
                if (boards.StockOf(laid) is var stock && (stock.Rip is not null || !stock.Defects.IsEmpty)) Stretches(json, laid, stock, unit);
                json.WriteEndObject();
            }
            json.WriteEndArray();
            json.WriteEndObject();
        }
        json.WriteEndArray();
    }

    private static void Stretches(Utf8JsonWriter json, LaidBoard laid, BoardStock stock, LengthUnit unit)
    {
        if (stock.Rip is { } rip)
        {
            json.WriteStartObject("rip");
            json.WriteNumber("lanes", rip.Lanes);
            Length(json, "width", rip.Width, unit);
            Length(json, "lane_width", rip.LaneWidth, unit);
            Length(json, "kerf", rip.Kerf, unit);
            json.WriteEndObject();
        }
        if (!stock.Defects.IsEmpty)
        {
            json.WriteStartArray("flaws");
            foreach (BoardStretch flaw in stock.Defects.OrderBy(d => d.From))
            {
                json.WriteStartObject();
                Ends(json, flaw, unit);
                json.WriteEndObject();
            }
            json.WriteEndArray();
        }
        json.WriteStartArray("stretches");
        foreach (LaidStretch stretch in laid.Stretches)
        {
            json.WriteStartObject();
            json.WriteNumber("lane", stretch.Lane);
            json.WriteNumber("place", stretch.Place);
            Ends(json, stock.ClearStretches()[stretch.Place - 1], unit);
            json.WriteStartArray("parts");
            foreach (string part in stretch.PartIds) json.WriteStringValue(part);
            json.WriteEndArray();
            Length(json, "left_over", stretch.LeftOver, unit);
            json.WriteString("use", stretch.Use.ToString().ToLowerInvariant());
            json.WriteEndObject();
        }
        json.WriteEndArray();
    }

    // From the end of the board as it lies, before trimming.
    private static void Ends(Utf8JsonWriter json, BoardStretch stretch, LengthUnit unit)
    {
        Length(json, "from", stretch.From, unit);
        Length(json, "to", stretch.To, unit);
    }

    /// <summary>What stands before every layout.</summary>
    private static void LayoutHead(Utf8JsonWriter json, Material material, OutcomeStatus status, int count, Money? cost, LayoutBound bound, Length kerf, LengthUnit unit)
    {
        json.WriteString("material", material.Name);
        json.WriteString("status", status.ToString().ToLowerInvariant());
        json.WriteNumber("count", count);
        json.WriteNumber("bound", bound.Count);
        if (cost is { } money)
        {
            json.WriteNumber("cost", money.Amount);
            json.WriteNumber("cost_bound", bound.Cost.Amount);
        }
        Length(json, "kerf", kerf, unit);
    }

    // What the shop and the piece ask of a layout of sheets beyond the sizes.
    private static void SheetRules(Utf8JsonWriter json, SheetInstance instance, LengthUnit unit)
    {
        Length(json, "slack", instance.Slack, unit);
        if (instance.MostStages is { } most) json.WriteNumber("most_stages", most);
        json.WriteStartArray("figure_groups");
        foreach (FigureGroup group in instance.Groups)
        {
            json.WriteStartObject();
            json.WriteString("axis", group.Axis.ToString().ToLowerInvariant());
            json.WriteStartArray("parts");
            foreach (string part in group.PartIds) json.WriteStringValue(part);
            json.WriteEndArray();
            json.WriteEndObject();
        }
        json.WriteEndArray();
    }

    private static void Buying(Utf8JsonWriter json, Plan plan)
    {
        json.WriteStartObject("buying");
        json.WriteString("currency", plan.Source.Shop.Currency);
        json.WriteNumber("cost", plan.Cost.Amount);
        json.WriteNumber("without_price", plan.Unpriced);
        json.WriteStartArray("lines");
        foreach (BuyingLine line in plan.Buying)
        {
            json.WriteStartObject();
            json.WriteString("kind", line.Kind switch { BuyingKind.FromTheRack => "rack", var k => k.ToString().ToLowerInvariant() });
            json.WriteString("item", line.Item);
            json.WriteNumber("count", line.Count);
            json.WriteString("unit", line.Unit);
            if (line.Price is { } price) json.WriteNumber("price", price.Amount);
            if (line.Total is { } total) json.WriteNumber("total", total.Amount);
            if (line.More.Length > 0) json.WriteString("more", line.More);
            if (line.Spare.Length > 0) json.WriteString("spare", line.Spare);
            json.WriteEndObject();
        }
        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Steps(Utf8JsonWriter json, SetPiece set)
    {
        json.WriteStartArray("assembly");
        foreach (AssemblyStep step in set.Steps)
        {
            json.WriteStartObject();
            json.WriteString("words", step.Words);
            json.WriteStartArray("parts");
            foreach (string part in step.Parts) json.WriteStringValue(part);
            json.WriteEndArray();
            if (step.Diagonal is { } diagonal) Length(json, "diagonals", diagonal, set.Piece.Unit);
            if (!string.IsNullOrEmpty(step.On)) json.WriteString("on", step.On);
            if (step.Whole.Length > 0)
            {
                json.WriteStartArray("whole");
                foreach (string unit in step.Whole) json.WriteStringValue(unit);
                json.WriteEndArray();
            }
            WeightJson.Lift(json, set, step);
            json.WriteEndObject();
        }
        json.WriteEndArray();
    }

    /// <summary>Writes a length the way all our JSON does.</summary>
    public static void WriteLength(Utf8JsonWriter json, string name, ExactLength value, LengthUnit unit) => Length(json, name, value, unit);

    /// <summary>Writes a length as mm and text, with the residual where the text is rounded. A value between ticks lands on the nearest.</summary>
    internal static void Length(Utf8JsonWriter json, string name, ExactLength value, LengthUnit unit)
    {
        Figure figure = LengthFormat.For(unit).Format(value);
        json.WriteStartObject(name);
        json.WriteNumber("mm", value.ToNearestTick().ToMillimetres());
        json.WriteString("text", figure.ToString());
        if (!figure.IsExact) json.WriteNumber("residual_mm", figure.Residue.ToNearestTick().ToMillimetres());
        json.WriteEndObject();
    }
}
