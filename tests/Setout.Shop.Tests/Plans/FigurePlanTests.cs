// Over 200 lines: one chest from text to layout, and what cannot be of it.
using System.Text.Json;
using Json.Schema;
using Setout.Core.Measures;
using Setout.Core.Workings;
using Setout.Cutting.Sheets;
using Setout.Shop.Outputs;
using Setout.Shop.Plans;
using Setout.Shop.Texts;
using Setout.Testing;

namespace Setout.Shop.Tests.Plans;

/// <summary>Slack of the shop and figure that runs through, from the texts to the layout.</summary>
public sealed class FigurePlanTests
{
    private static string Chest(string figure = "through", string grain = "keep", int width = 20, string size = "96 x 48") => $"""
        setout: 1
        name: Chest
        unit: in
        materials:
          ply:   {"{"}panel: hardwood plywood, label: 3/4{"}"}
          thin:  {"{"}panel: hardwood plywood, label: 1/2{"}"}
          fine:  {"{"}panel: walnut plywood, thickness: 3/4, grain: {grain}, sizes: [{"{"}size: {size}, price: 90{"}"}]{"}"}
        drawers:
          box: {"{"}sides: thin, bottom: thin, front: fine{"}"}
        assembly:
          - case: C
            of: ply
            width: {width}
            height: 24
            depth: 18
            drawers:
              like: box
              figure: {figure}
              down: [{"{"}drawer: D1, front: 5{"}"}, {"{"}drawer: D2, front: 7{"}"}, {"{"}drawer: D3, front: rest{"}"}]
        """;

    private static Plan Make(string piece, string? log = null, string shop = "")
    {
        (PieceSource? source, var findings) = PieceSource.Read(piece, log, "setout-shop: 1\nunit: in\n" + shop);
        return Sample.Make(source ?? throw new InvalidOperationException(string.Join("; ", findings.Select(f => f.Finding.Words))));
    }

    private static SheetPlan Fine(Plan plan) => plan.Sheets.Single(s => s.Material.Name == "fine");

    [Fact]
    public void Make_FigureThrough_FrontsLieBelowEachOtherInOrder()
    {
        SheetPlan sheets = Fine(Make(Chest()));
        FigureGroup group = Assert.Single(sheets.Instance.Groups);
        Assert.Equal((GrainAxis.Across, "D1.front D2.front D3.front"), (group.Axis, string.Join(' ', group.PartIds)));
        PlacedRectangle[] fronts = [.. SheetFace.Flatten(sheets.Instance, sheets.Outcome.Layout.Sheets[0]).Where(r => r.Kind == FaceKind.Part)];
        Assert.Equal(["D1.front", "D2.front", "D3.front"], fronts.Select(f => f.PartId));
        Assert.All(fronts.Zip(fronts.Skip(1)), p => Assert.Equal(p.First.Place.FromAcross + p.First.Place.Across + sheets.Instance.Kerf, p.Second.Place.FromAcross));
    }

    private static string Face(string second = "{drawer: E1}, {drawer: E2}", string figure = "in rows", string grain = "keep", string size = "96 x 48") => $$"""
        setout: 1
        name: Face
        unit: in
        materials:
          ply:   {panel: hardwood plywood, label: 3/4}
          thin:  {panel: hardwood plywood, label: 1/2}
          fine:  {panel: walnut plywood, thickness: 3/4, grain: {{grain}}, sizes: [{size: {{size}}, price: 90}]}
        drawers:
          box: {sides: thin, bottom: thin, front: fine}
        assembly:
          - case: C
            of: ply
            width: 40
            height: 20
            depth: 18
            across:
              - {opening: A, drawers: {like: box, figure: in rows, down: [{drawer: D1}, {drawer: D2}] } }
              - {partition: P}
              - {opening: B, drawers: {like: box, figure: {{figure}}, down: [{{second}}] } }
        """;

    [Fact]
    public void Make_FigureInRows_FrontsOfARowLieBehindEachOtherAlongTheGrain()
    {
        SheetPlan sheets = Fine(Make(Face()));
        Assert.Equal(["D1.front E1.front", "D2.front E2.front"], sheets.Instance.Groups.Select(g => string.Join(' ', g.PartIds)));
        Assert.All(sheets.Instance.Groups, g => Assert.Equal(GrainAxis.Along, g.Axis));
        PlacedRectangle Front(string key) => SheetFace.Flatten(sheets.Instance, sheets.Outcome.Layout.Sheets[0]).Single(r => r.Kind == FaceKind.Part && r.PartId == key);
        foreach ((PlacedRectangle left, PlacedRectangle right) in new[] { (Front("D1.front"), Front("E1.front")), (Front("D2.front"), Front("E2.front")) })
        {
            Assert.Equal(left.Place.FromAlong + left.Place.Along + sheets.Instance.Kerf, right.Place.FromAlong);
            Assert.Equal(left.Place.FromAcross, right.Place.FromAcross);
        }
    }

    /// <summary>A front that is turned cannot be put right, so the sheet says it before the saw runs.</summary>
    [Fact]
    public void BenchSheets_OfFigureInRows_SayWhatIsKeptInOrder()
    {
        string[] told = [.. BenchSheets.BenchSheetWriter.Compose(Make(Face()), "", Drawing.Documents.Paper.A4).Sections.SelectMany(s => s.Blocks).OfType<Drawing.Documents.ParagraphBlock>()
            .Select(b => b.Text.PlainText).Where(t => t.StartsWith("The figure runs on over", StringComparison.Ordinal))];
        Assert.Equal(["The figure runs on over D1f, E1f, from left to right", "The figure runs on over D2f, E2f, from left to right"], told.Select(t => t.Split('.')[0]));
    }

    [Theory]
    [InlineData("", "D1.front E1.front, D2.front E2.front")]
    // A filler parts the face; then neither bank has one beside it.
    [InlineData(", filler: {of: ply, width: 1}", "")]
    public void Make_FigureInRowsOverCasesSideBySide_RunsOn(string filler, string groups)
    {
        string text = Face();
        string first = text[..text.IndexOf("    across:", StringComparison.Ordinal)], drawers = "drawers: {like: box, figure: in rows, down: [{drawer: KEY1}, {drawer: KEY2}]}";
        Plan plan = Make($"{first}    {drawers.Replace("KEY", "D", StringComparison.Ordinal)}\n  - {{case: E, of: ply, width: 40, height: 20, depth: 18, beside: C{filler}, {drawers.Replace("KEY", "E", StringComparison.Ordinal)}}}\n");
        SheetPlan sheets = Fine(plan);
        Assert.Equal(groups, string.Join(", ", sheets.Instance.Groups.Select(g => string.Join(' ', g.PartIds))));
        Assert.Equal(groups.Length == 0 ? 2 : 0, plan.Findings.Count(f => f.Code == "figure.no-rows"));
    }

    [Theory]
    [InlineData("{drawer: E1}", "in rows", "keep", "figure.no-rows")] // 2 drawers beside 1
    [InlineData("{drawer: E1}, {drawer: E2}", "any", "keep", "figure.no-rows")] // nothing beside it
    [InlineData("{drawer: E1}, {drawer: E2}", "in rows", "free", "figure.no-grain")]
    public void Make_FigureInRowsThatCannotBe_WarnsOnce(string second, string figure, string grain, string code)
    {
        Plan plan = Make(Face(second, figure, grain));
        Assert.Equal(Severity.Warn, Assert.Single(plan.Findings, f => f.Code == code).Severity);
        Assert.Empty(Fine(plan).Instance.Groups);
    }

    [Fact]
    public void Make_RowLongerThanTheSheet_SaysBeside()
    {
        // Two fronts of about 19 3/4 on a sheet of 36.
        Finding[] stops = [.. Make(Face(size: "36 x 48")).Findings.Where(f => f.Severity == Severity.Stop)];
        Assert.Equal(["figure.too-large", "figure.too-large"], stops.Select(f => f.Code));
        Assert.All(stops, f => Assert.Contains("cannot be cut beside each other", f.Words, StringComparison.Ordinal));
    }

    [Fact]
    public void Make_AnyFigure_HasNoGroups() => Assert.Empty(Fine(Make(Chest("any"))).Instance.Groups);

    [Fact]
    public void Make_FigureThroughOfSheetWithoutGrain_WarnsOnce()
    {
        Plan plan = Make(Chest(grain: "free"));
        Finding warn = Assert.Single(plan.Findings, f => f.Code == "figure.no-grain");
        Assert.Equal((Severity.Warn, "D1.front"), (warn.Severity, warn.Key));
        Assert.Empty(Fine(plan).Instance.Groups);
    }

    [Fact]
    public void Make_BankTallerThanTheSheet_OneFindingForTheBank()
    {
        Plan plan = Make(Chest(size: "96 x 20"));
        Finding stop = Assert.Single(plan.Findings, f => f.Severity == Severity.Stop);
        Assert.Equal(("figure.too-large", "D1.front"), (stop.Code, stop.Key));
        Assert.Contains("drawer D1 false front, drawer D2 false front, drawer D3 false front cannot be cut below each other from one sheet of fine: 96 x 20 in", stop.Words, StringComparison.Ordinal);
        Assert.DoesNotContain(Make(Chest("any", size: "96 x 20")).Findings, f => f.Severity == Severity.Stop);
    }

    [Theory]
    [InlineData("D3", "D1.front D2.front")]
    [InlineData("D2", "")]
    public void Make_OneFrontIsCut_TheOthersRunThroughWhereTheyMeet(string cut, string left)
    {
        string log = $$"""
            setout-log: 1
            entries:
              - {id: a, at: 2026-05-04T09:40:00Z, cut: [{{cut}}.front], figures: [], chosen: []}
            """;
        SheetPlan sheets = Fine(Make(Chest(), log));
        Assert.Equal(left, string.Join(' ', sheets.Instance.Groups.SelectMany(g => g.PartIds)));
        Assert.Equal(2, sheets.Instance.PartsInAll);
    }

    [Fact]
    public void Make_SlackOfTheShop_IsLeftFreeAndSaidWhereItMatters()
    {
        Assert.Equal(Length.FromInches(1, 8), Fine(Make(Chest(), shop: "slack: 1/8\n")).Instance.Slack);
        // Trims of 1/4 in leave 95 1/2 in.
        const string Long = "setout: 1\nname: Try\nunit: in\nmaterials:\n  ply: {panel: hardwood plywood, label: 3/4}\nparts:\n  - {part: a, of: ply, length: 95 1/2, width: 10}\n";
        Assert.DoesNotContain(Make(Long).Findings, f => f.Severity == Severity.Stop);
        Finding stop = Assert.Single(Make(Long, shop: "slack: 1/8\n").Findings, f => f.Severity == Severity.Stop);
        Assert.Contains("a slack of 1/8 in stays free", stop.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void Make_SlackLeavesNothingOfAnOffcut_LeavesItOutAndSaysSo()
    {
        Plan plan = Make(Chest(), shop: "slack: 1\ntrim: {sheets: 0}\nstock: [{panel: hardwood plywood, label: 3/4, size: 20 x 1, have: 1}]\n");
        Finding warning = Assert.Single(plan.Findings, f => f.Code == "stock.trim-too-large");
        Assert.Contains("a slack of 1 in is left free", warning.Words, StringComparison.Ordinal);
        Assert.Equal(Severity.Warn, warning.Severity);
        Assert.Single(Fine(plan).Stock);
    }

    [Fact]
    public void Make_MostStagesOfTheShop_ReachTheLayout()
    {
        SheetPlan sheets = Fine(Make(Chest("any"), shop: "most stages: 3\n"));
        Assert.Equal(3, sheets.Instance.MostStages);
        Assert.NotEmpty(sheets.Outcome.Layout.Sheets);
    }

    [Fact]
    public void PlanJson_TellsSlackStagesAndFigureByTheSchema()
    {
        JsonElement asked = FineOf(Make(Chest(), shop: "slack: 1/8\nmost stages: 3\n"));
        Assert.Equal((3.175m, 3), (asked.GetProperty("slack").GetProperty("mm").GetDecimal(), asked.GetProperty("most_stages").GetInt32()));
        JsonElement group = Assert.Single(asked.GetProperty("figure_groups").EnumerateArray());
        Assert.Equal(("across", "D1.front D2.front D3.front"),
            (group.GetProperty("axis").GetString(), string.Join(' ', group.GetProperty("parts").EnumerateArray().Select(p => p.GetString()))));

        JsonElement plain = FineOf(Make(Chest("any")));
        Assert.Equal((0m, false, 0), (plain.GetProperty("slack").GetProperty("mm").GetDecimal(), plain.TryGetProperty("most_stages", out _), plain.GetProperty("figure_groups").GetArrayLength()));
    }

    private static JsonElement FineOf(Plan plan)
    {
        using JsonDocument json = JsonDocument.Parse(PlanJson.Write(plan));
        Assert.True(JsonSchema.FromText(File.ReadAllText(Repository.PathOf("docs/schemas/plan.schema.json"))).Evaluate(json.RootElement).IsValid);
        return json.RootElement.GetProperty("sheets").EnumerateArray().Single(s => s.GetProperty("material").GetString() == "fine").Clone();
    }
}
