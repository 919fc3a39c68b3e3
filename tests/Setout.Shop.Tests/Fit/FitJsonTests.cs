using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;
using Setout.Core.Fit;
using Setout.Core.SettingOut;
using Setout.Shop.Outputs;
using Setout.Shop.Plans;
using Setout.Shop.Tests.Plans;
using Setout.Testing;

namespace Setout.Shop.Tests.Fit;

/// <summary>What will fit as data: by its schema, and the same each time.</summary>
public class FitJsonTests
{
    private static readonly JsonSchema s_schema = JsonSchema.FromText(File.ReadAllText(Repository.PathOf("docs/schemas/fit.schema.json")));

    private static byte[] Written(string name, int seed = FitCheck.UsualSeed)
    {
        PieceSource source = Sample.Source(name);
        SetPiece set = source.SetOut();
        return FitJson.Write(set, FitCheck.Of(set, source.Shop.Accuracy, seed));
    }

    [Theory, MemberData(nameof(Sample.Data), MemberType = typeof(Sample))]
    public void FitJson_OfSample_MatchesThePublishedSchema(string name)
    {
        using JsonDocument fit = JsonDocument.Parse(Written(name));
        EvaluationResults results = s_schema.Evaluate(fit.RootElement, new EvaluationOptions { OutputFormat = OutputFormat.List });
        Assert.True(results.IsValid, string.Join("; ", (results.Details ?? []).Where(d => d.Errors is { Count: > 0 }).Select(d => $"{d.InstanceLocation}: {string.Join(", ", d.Errors!.Values)}").Take(5)));
    }

    [Fact]
    public void FitSchema_AnyFieldMistyped_Fails()
    {
        JsonNode whole = JsonNode.Parse(Written("jar-cabinet"))!;
        // The first of each list stands for all: what is spoiled in one is spoiled.
        int tried = 0;
        foreach (string path in new[] { "", "whole", "groups/0", "gaps/0", "gaps/0/now", "gaps/0/now/causes/0", "gaps/0/measured", "gaps/0/now/chance", "gaps/0/least", "measure_first/0", "allowances/0" })
        {
            foreach (string key in At(whole, path).Select(p => p.Key).ToList())
            {
                JsonNode copy = whole.DeepClone();
                JsonObject map = At(copy, path);
                JsonNode? value = map[key];
                map.Remove(key);
                map[key + "x"] = value?.DeepClone();
                Assert.False(s_schema.Evaluate(JsonSerializer.SerializeToElement(copy)).IsValid, $"{path}/{key}");
                tried++;
            }
        }
        Assert.True(tried > 40, $"{tried} were tried.");
    }

    [Fact]
    public void FitSchema_Itself_IsOfTheDraftItNames() =>
        Assert.True(MetaSchemas.Draft202012.Evaluate(JsonDocument.Parse(File.ReadAllText(Repository.PathOf("docs/schemas/fit.schema.json"))).RootElement).IsValid);

    [Theory, MemberData(nameof(Sample.Data), MemberType = typeof(Sample))]
    public void FitJson_Twice_IsTheSameToTheByteForOneSeed(string name) => Assert.Equal(Written(name), Written(name));

    [Fact]
    public void FitJson_OfAnotherSeed_DiffersInNoMoreThanWhatIsDrawn()
    {
        JsonNode one = JsonNode.Parse(Written("jar-cabinet"))!, other = JsonNode.Parse(Written("jar-cabinet", 2))!;
        Assert.False(JsonNode.DeepEquals(one["whole"], other["whole"]));
        // A gap by itself is worked out, not drawn.
        Assert.True(JsonNode.DeepEquals(one["gaps"], other["gaps"]));
    }

    [Fact]
    public void FitJson_AfterAReadingIsVoided_IsAsIfItHadNeverBeenTaken()
    {
        const string read = "  - {id: a, at: \"2026-05-04T09:40:00Z\", read: boxes.thickness, values: [0.46 in], with: calliper}\n  - {id: b, at: \"2026-05-04T09:45:00Z\", read: L.width, values: [19 17/32 in], with: rule}\n";
        const string voided = "  - {id: c, at: \"2026-05-04T09:50:00Z\", void: a}\n  - {id: d, at: \"2026-05-04T09:51:00Z\", void: b}\n";
        string Fit(string? log)
        {
            PieceSource source = Sample.Source(Sample.Text("luthiers-bench"), log is null ? null : "setout-log: 1\nentries:\n" + log);
            SetPiece set = source.SetOut();
            return Encoding.UTF8.GetString(FitJson.Write(set, FitCheck.Of(set, source.Shop.Accuracy)));
        }
        string never = Fit(null);
        Assert.NotEqual(never, Fit(read));
        Assert.Equal(never, Fit(read + voided));
    }

    private static JsonObject At(JsonNode node, string path)
    {
        foreach (string step in path.Split('/', StringSplitOptions.RemoveEmptyEntries)) node = int.TryParse(step, out int index) ? node[index]! : node[step]!;
        return node.AsObject();
    }
}
