using System.Collections.Immutable;
using System.Text.Json;
using Setout.Core.Measures.Text;
using Setout.Cutting.Runs;
using Setout.Cutting.Sheets;
using Setout.Shop.Plans;
using Setout.Shop.Runs;

namespace Setout.Shop.Outputs;

/// <summary>Writes the work at the saws: every rectangle of wood there ever is, the runs with their cuts, the same in words, and what cannot be cut.</summary>
internal static class RunsJson
{
    public static void Write(Utf8JsonWriter json, Plan plan)
    {
        LengthUnit unit = plan.Set.Piece.Unit;
        WordedRuns worded = RunWords.Of(plan);
        var names = BlankNames.Of(plan);
        json.WriteStartObject("runs");
        var sawn = SawnPlan.Of(plan);
        json.WriteString("plan", sawn.Id);
        json.WriteString("texts", sawn.Texts);
        json.WriteNumber("settings", plan.Runs.Settings);
        json.WriteNumber("least_settings", plan.Runs.LeastSettings);
        json.WriteString("summary", worded.Summary);
        Words(json, "first", worded.First);
        json.WriteStartArray("blanks");
        foreach (RunBlank blank in plan.Runs.Blanks) Blank(json, plan, sawn, names, blank, unit);
        json.WriteEndArray();
        json.WriteStartArray("in_order");
        foreach (WordedRun run in worded.Runs) Run(json, run, unit);
        json.WriteEndArray();
        json.WriteStartArray("refusals");
        foreach (RunRefusal refusal in plan.Runs.Refusals)
        {
            json.WriteStartObject();
            json.WriteString("kind", Word(refusal.Kind.ToString()));
            json.WriteNumber("blank", refusal.Blank);
            json.WriteString("axis", Axis(refusal.Axis));
            PlanJson.Length(json, "figure", refusal.Figure, unit);
            Words(json, "parts", refusal.PartIds);
            json.WriteEndObject();
        }
        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Blank(Utf8JsonWriter json, Plan plan, SawnPlan sawn, BlankNames names, RunBlank blank, LengthUnit unit)
    {
        json.WriteStartObject();
        json.WriteNumber("id", blank.Id);
        json.WriteString("name", names[blank.Id]);
        json.WriteString("material", names.IsSheet(blank.Material) ? plan.Sheets[blank.Material].Material.Name : plan.Boards[blank.Material - plan.Sheets.Length].Material.Name);
        json.WriteString("stock", names.OfStock(blank.Material, blank.Stock));
        PlanJson.Length(json, "along", blank.Along, unit);
        PlanJson.Length(json, "across", blank.Across, unit);
        json.WriteString("use", Word(blank.Use.ToString()));
        if (blank.PartId.Length > 0) json.WriteString("part", blank.PartId);
        if (blank.Spares > 0) json.WriteNumber("spares", blank.Spares);
        if (!blank.Waiting.IsEmpty) Words(json, "waiting", blank.Waiting);
        BlankSide[] raw = [.. Enum.GetValues<BlankSide>().Where(blank.IsRaw)];
        if (raw.Length > 0) Words(json, "raw", raw.Select(s => Word(s.ToString())));
        SawnPlanJson.Write(json, sawn, blank, unit);
        json.WriteEndObject();
    }

    private static void Run(Utf8JsonWriter json, WordedRun worded, LengthUnit unit)
    {
        Run run = worded.Run;
        json.WriteStartObject();
        json.WriteNumber("number", run.Number);
        json.WriteString("saw", Word(run.Way.ToString()));
        json.WriteString("kind", Word(run.Kind.ToString()));
        if (run.Figure.Sign > 0) PlanJson.Length(json, "figure", run.Figure, unit);
        if (run.Trial is { } trial) json.WriteNumber("trial", trial);
        json.WriteString("heading", worded.Heading);
        json.WriteString("words", worded.Saw);
        Words(json, "setting", worded.Setting);
        if (!worded.Before.IsEmpty) Words(json, "before", worded.Before);
        json.WriteStartArray("cuts");
        foreach (RunCut cut in run.Cuts) Cut(json, cut, unit);
        json.WriteEndArray();
        json.WriteStartArray("lines");
        foreach (WordedCuts line in worded.Cuts)
        {
            json.WriteStartObject();
            json.WriteString("material", line.Material);
            json.WriteString("from", line.From);
            json.WriteNumber("times", line.Times);
            json.WriteString("off", line.Off);
            json.WriteString("remains", line.Remains);
            json.WriteString("edge", line.Edge);
            json.WriteEndObject();
        }
        json.WriteEndArray();
        Words(json, "notes", worded.Notes);
        Words(json, "mind", worded.Mind.Select(c => c.Words));
        json.WriteEndObject();
    }

    private static void Cut(Utf8JsonWriter json, RunCut cut, LengthUnit unit)
    {
        json.WriteStartObject();
        json.WriteNumber("blank", cut.Blank);
        json.WriteString("axis", Axis(cut.Axis));
        json.WriteString("from", Word(cut.From.ToString()));
        if (cut.FromRun is { } from) json.WriteNumber("from_run", from);
        PlanJson.Length(json, "figure", cut.Figure, unit);
        PlanJson.Length(json, "kerf", cut.Kerf, unit);
        if (cut.Off is { } off) json.WriteNumber("off", off);
        if (cut.Rest is { } rest) json.WriteNumber("rest", rest);
        if (cut.Against is { } against) json.WriteString("against", Word(against.ToString()));
        if (cut.AgainstRun is { } by) json.WriteNumber("against_run", by);
        if (cut.Planed.Sign > 0) PlanJson.Length(json, "planed", cut.Planed, unit);
        if (cut.PlanedRest.Sign > 0) PlanJson.Length(json, "planed_rest", cut.PlanedRest, unit);
        if (cut.TakesTwo) json.WriteBoolean("takes_two", true);
        if (cut.NeedsCarrier) json.WriteBoolean("needs_carrier", true);
        json.WriteEndObject();
    }

    private static void Words(Utf8JsonWriter json, string name, IEnumerable<string> words)
    {
        json.WriteStartArray(name);
        foreach (string word in words) json.WriteStringValue(word);
        json.WriteEndArray();
    }

    private static string Axis(GrainAxis axis) => axis == GrainAxis.Along ? "along" : "across";

    // NearEdge is near_edge.
    internal static string Word(string name) => string.Concat(name.Select((c, i) => char.IsUpper(c) ? $"{(i > 0 ? "_" : "")}{char.ToLowerInvariant(c)}" : $"{c}"));
}
