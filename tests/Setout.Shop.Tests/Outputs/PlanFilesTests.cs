using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Xml.Linq;
using CsvHelper;
using CsvHelper.Configuration;
using Json.Schema;
using Setout.Core.Fit;
using Setout.Core.SettingOut;
using Setout.Drawing.Documents;
using Setout.Shop.BenchSheets;
using Setout.Shop.Outputs;
using Setout.Shop.Plans;
using Setout.Shop.Tests.Plans;
using Setout.Testing;
using UglyToad.PdfPig;

namespace Setout.Shop.Tests.Outputs;

/// <summary>The files of a plan: complete, the same each time, readable by others.</summary>
public sealed class PlanFilesTests
{
    private static ImmutableArray<PlanFile> Files(string name) => PlanFiles.Of(Sample.Plan(name), "a test", Paper.Letter);

    [Theory]
    [MemberData(nameof(Sample.Data), MemberType = typeof(Sample))]
    public void Of_SamePlanTwice_SameBytes(string name)
    {
        // The second is made from the texts again, not from the same values.
        ImmutableArray<PlanFile> first = Files(name), second = PlanFiles.Of(Sample.Make(Sample.Source(name)), "a test", Paper.Letter);
        Assert.Equal(first.Select(f => f.Path), second.Select(f => f.Path));
        foreach ((PlanFile a, PlanFile b) in first.Zip(second)) Assert.True(a.Content.AsSpan().SequenceEqual(b.Content), $"{a.Path} differs.");
    }

    [Theory]
    [MemberData(nameof(Sample.Data), MemberType = typeof(Sample))]
    public void PlanJson_OfSample_MatchesThePublishedSchema(string name)
    {
        JsonSchema schema = JsonSchema.FromText(File.ReadAllText(Repository.PathOf("docs/schemas/plan.schema.json")));
        using JsonDocument plan = JsonDocument.Parse(PlanJson.Write(Sample.Plan(name)));
        EvaluationResults results = schema.Evaluate(plan.RootElement, new EvaluationOptions { OutputFormat = OutputFormat.List });
        Assert.True(results.IsValid, string.Join("; ", (results.Details ?? []).Where(d => d.Errors is { Count: > 0 }).Select(d => $"{d.InstanceLocation}: {string.Join(", ", d.Errors!.Values)}").Take(5)));
        using JsonDocument spoiled = JsonDocument.Parse(Encoding.UTF8.GetString(PlanJson.Write(Sample.Plan(name))).Replace("\"rule_set\"", "\"ruleset\"", StringComparison.Ordinal));
        Assert.False(schema.Evaluate(spoiled.RootElement).IsValid);
    }

    [Theory]
    [MemberData(nameof(Sample.Data), MemberType = typeof(Sample))]
    public void PlanJson_Lengths_TextAndResidueGiveTheExactMillimetres(string name)
    {
        using JsonDocument plan = JsonDocument.Parse(PlanJson.Write(Sample.Plan(name)));
        int seen = 0;
        Visit(plan.RootElement);
        Assert.True(seen > 100, $"{seen} lengths were seen.");

        void Visit(JsonElement element)
        {
            if (element.ValueKind == JsonValueKind.Array) foreach (JsonElement item in element.EnumerateArray()) Visit(item);
            if (element.ValueKind != JsonValueKind.Object) return;
            if (element.TryGetProperty("mm", out JsonElement mm))
            {
                seen++;
                var text = Core.Measures.Text.LengthText.Parse(element.GetProperty("text").GetString()!, Core.Measures.Text.LengthUnit.Inch);
                decimal residue = element.TryGetProperty("residual_mm", out JsonElement r) ? r.GetDecimal() : 0;
                decimal shown = text.Value.ToNearestTick().ToMillimetres();
                Assert.True(Math.Abs(mm.GetDecimal() - shown - residue) <= 0.00001m, element.GetRawText());
            }
            foreach (JsonProperty property in element.EnumerateObject()) Visit(property.Value);
        }
    }

    [Theory]
    [MemberData(nameof(Sample.Data), MemberType = typeof(Sample))]
    public void Csv_OfSample_IsRectangularAndNoCellIsABareFraction(string name)
    {
        foreach (string path in new[] { "parts.csv", "buying.csv" })
        {
            byte[] bytes = Files(name).Single(f => f.Path == path).Content;
            Assert.Equal(new byte[] { 0xEF, 0xBB, 0xBF }, bytes[..3]);
            string text = Encoding.UTF8.GetString(bytes);
            Assert.Equal(text.Count(c => c == '\n'), text.Split("\r\n").Length - 1);
            using var csv = new CsvReader(new StringReader(text.TrimStart('\uFEFF')), new CsvConfiguration(CultureInfo.InvariantCulture));
            csv.Read();
            csv.ReadHeader();
            int columns = csv.HeaderRecord!.Length, rows = 0;
            while (csv.Read())
            {
                rows++;
                Assert.Equal(columns, csv.Parser.Count);
                for (int i = 0; i < columns; i++) Assert.DoesNotMatch(@"^\s*\d*\s*\d+/\d+\s*$", csv.GetField(i)!);
            }
            Assert.True(rows > 0);
        }
    }

    [Fact]
    public void Csv_CellThatASpreadsheetWouldRun_IsMadeHarmless()
    {
        string text = Sample.Text("cedar-chest").Replace("name: sides", "name: \"=cmd|' /C calc'!A0\"", StringComparison.Ordinal);
        string csv = Encoding.UTF8.GetString(PlanCsv.Parts(Sample.Source(text, null).SetOut()));
        Assert.Contains("'=cmd", csv, StringComparison.Ordinal);
        Assert.DoesNotContain(",=cmd", csv, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Sample.Data), MemberType = typeof(Sample))]
    public void Svg_OfSample_IsWellFormedAndNamesItsParts(string name)
    {
        Plan plan = Sample.Plan(name);
        ImmutableArray<PlanFile> svgs = [.. Files(name).Where(f => f.Path.EndsWith(".svg", StringComparison.Ordinal))];
        Assert.Equal(plan.Sheets.Sum(s => s.Outcome.Layout.Sheets.Length), svgs.Count(f => plan.Sheets.Any(s => f.Path.StartsWith($"breakdown/{s.Material.Name}-", StringComparison.Ordinal) && f.Path.Length == $"breakdown/{s.Material.Name}-A.svg".Length)));
        foreach (PlanFile svg in svgs) Assert.Equal("svg", XDocument.Parse(Encoding.UTF8.GetString(svg.Content)).Root!.Name.LocalName);
        string all = string.Concat(svgs.Select(f => Encoding.UTF8.GetString(f.Content)));
        foreach (Part part in plan.Set.Parts) Assert.Contains($"data-key=\"{part.Key}\"", all, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Sample.Data), MemberType = typeof(Sample))]
    public void Pdf_OfSample_SaysEveryMarkEveryLineToBuyAndTheCautions(string name)
    {
        Plan plan = Sample.Plan(name);
        using PdfDocument pdf = PdfDocument.Open(Files(name).Single(f => f.Path == "bench-sheets.pdf").Content);
        string text = string.Join(' ', pdf.GetPages().Select(p => p.Text));
        foreach (Part part in plan.Set.Parts) Assert.Contains(part.Mark, text, StringComparison.Ordinal);
        Assert.Contains("Caution", text, StringComparison.Ordinal);
        Assert.Contains("take precedence", text, StringComparison.Ordinal);
        Assert.Contains(plan.Source.Hash, text, StringComparison.Ordinal);
        Assert.Contains("Buying list", text, StringComparison.Ordinal);
        // Two runs or more stand on a page; each table of lines to write awaited readings on takes one page more at most.
        int lines = text.Split("Write it down here").Length - 1;
        int sawing = pdf.GetPages().Count(p => p.Text.Contains("\u00B7 Runs", StringComparison.Ordinal)), others = pdf.NumberOfPages - sawing;
        // Finishing takes four of the pages of the one sample that has a finish: a line for each part, some twenty on a page.
        Assert.True(others is > 3 and < 44, $"{others} pages");
        Assert.True(sawing > 0 && sawing <= (plan.Runs.Runs.Length / 2) + 2 + lines, $"{sawing} pages of {plan.Runs.Runs.Length} runs");
    }

    [Fact]
    public void Pdf_OfTheBench_SaysWhatWillFitAndWhatToMeasureFirst()
    {
        using PdfDocument pdf = PdfDocument.Open(Files("luthiers-bench").Single(f => f.Path == "bench-sheets.pdf").Content);
        Plan plan = Sample.Plan("luthiers-bench");
        FitReport report = FitCheck.Of(plan.Set, plan.Source.Shop.Accuracy);
        string[] pages = [.. pdf.GetPages().Select(p => p.Text).Where(t => t.Contains("\u00B7 Fit", StringComparison.Ordinal))];
        string text = string.Join(' ', pages);

        Assert.True(pages.Length is 2 or 3, $"{pages.Length} pages");
        Assert.Contains(FitLines.Right(report.Whole.Right, report.Whole), text, StringComparison.Ordinal);
        Assert.Contains(FitLines.AllAtOnce(report.Whole), text, StringComparison.Ordinal);
        foreach (MeasureFirst reading in report.Measure) Assert.Contains(reading.Key.Text, text, StringComparison.Ordinal);
        Assert.Contains("stands at 1/32", text, StringComparison.Ordinal);
        Assert.Contains("-17/64", text, StringComparison.Ordinal);
        Assert.Contains("bench.play-kept", text, StringComparison.Ordinal);
    }

    [Fact]
    public void FitSheet_OfManyGapsThatAreNotAlike_DrawsTwoPagesAndSaysHowManyMore()
    {
        Plan plan = Sample.Plan("luthiers-bench");
        FitReport report = FitCheck.Of(plan.Set, plan.Source.Shop.Accuracy);
        GapFit gap = report.Gaps[0];
        report = report with { Gaps = [.. Enumerable.Range(1, 60).Select(i => gap with { Gap = gap.Gap with { Name = $"panel, gap number {i}" } })] };

        ImmutableArray<Block> blocks = Assert.Single(FitPages.Of(plan.Set, report, Paper.A4)).Blocks;
        SceneBlock[] drawings = [.. blocks.OfType<SceneBlock>()];
        int drawn = drawings.Sum(d => d.Scene.Items.OfType<Drawing.Scenes.GroupItem>().Count());
        Assert.Equal(2, drawings.Length);
        Assert.InRange(drawn, 10, 59);
        Assert.Contains(blocks.OfType<ParagraphBlock>(), p => p.Text.PlainText.StartsWith($"{60 - drawn} more gaps", StringComparison.Ordinal));
    }

    [Fact]
    public void Files_OfAPieceWithoutGaps_HaveNoFitSheetAndNoDrawingOfIt()
    {
        ImmutableArray<PlanFile> files = Files("amateur-workbench");
        using PdfDocument pdf = PdfDocument.Open(files.Single(f => f.Path == "bench-sheets.pdf").Content);
        Assert.DoesNotContain(pdf.GetPages(), p => p.Text.Contains("\u00B7 Fit", StringComparison.Ordinal));
        Assert.DoesNotContain(files, f => f.Path.StartsWith("drawings/fit", StringComparison.Ordinal));
        Assert.Contains(Files("luthiers-bench"), f => f.Path == "drawings/fit.svg");
    }
}
