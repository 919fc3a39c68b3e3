using System.Text;
using System.Text.Json;
using Json.Schema;
using Setout.Core.Measures;
using Setout.Core.Workings;
using Setout.Cutting.Boards;
using Setout.Shop.Outputs;
using Setout.Shop.Plans;
using Setout.Testing;

namespace Setout.Shop.Tests.Plans;

/// <summary>Boards with flaws and boards to rip, from the texts to the layout and what is told of it. Figures are worked by hand beside each.</summary>
public sealed class RippedBoardTests
{
    internal static Plan Make(string materials, string parts, string stock, string shop = "kerf: {boards: 3, rips: 3}\ntrim: {boards: 0}\n", string unit = "mm", string? log = null)
    {
        string piece = $"setout: 1\nname: Try\nunit: {unit}\nmaterials:\n{Lines(materials)}parts:\n{Lines(parts)}";
        (PieceSource? source, var findings) = PieceSource.Read(piece, log, $"setout-shop: 1\nunit: {unit}\n{shop}stock:\n{Lines(stock, "- ")}");
        return Sample.Make(source ?? throw new InvalidOperationException(string.Join("; ", findings.Select(f => f.Finding.Words))));
    }

    private static string Lines(string all, string mark = "") => string.Concat(all.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(l => $"  {mark}{l.Trim()}\n"));

    private static Length Mm(int mm) => Length.FromMillimetres(mm);

    private const string Stick = "rail: {stick: ash, section: 45 x 20}";
    private const string Bought = "{stick: ash, section: 45 x 20, length: 3000, price: 9}\n";

    [Theory]
    // 400 up to the flaw, 500 beyond it.
    [InlineData(400, 500, "")]
    [InlineData(401, 500, "stock.too-little")]
    [InlineData(400, 501, "part.too-long")]
    public void Make_FlawedBoard_PartsLieOnEitherSideOfTheFlaw(int one, int other, string code)
    {
        Plan plan = Make(Stick, $"- {{part: a, of: rail, length: {one}}}\n- {{part: b, of: rail, length: {other}}}", "{stick: ash, section: 45 x 20, length: 1000, have: 1, flaws: [{from: 420, to: 500}, {from: 400, to: 430}]}");
        Assert.Equal(code, string.Join(' ', plan.Findings.Where(f => f.Severity == Severity.Stop).Select(f => f.Code)));
        if (code.Length > 0) return;
        LaidBoard board = Assert.Single(Assert.Single(plan.Boards).Outcome.Layout.Boards);
        Assert.Equal([(1, 1, "a"), (1, 2, "b")], board.Stretches.Select(s => (s.Lane, s.Place, string.Join(' ', s.PartIds))));
        Assert.Equal("Ash, rail, 1000 mm, 2 flaws", Assert.Single(plan.Buying).Item);
    }

    [Theory]
    // The board keeps its thickness; the saw makes the other size of the stick.
    [InlineData("ash", "120 x 20", "yes", 2, 45)]      // 45 + 3 + 45 = 93; a third would end at 141
    [InlineData("ash", "20 x 141", "yes", 3, 45)]
    [InlineData("ash", "120 x 45", "yes", 5, 20)]      // 5 x 20 + 4 x 3 = 112; a sixth would end at 135
    [InlineData("ash", "46 x 20", "yes", 1, 45)]
    [InlineData("ash", "45 x 30", "yes", 0, 0)]        // sawn through its thickness
    [InlineData("ash", "120 x 22", "yes", 0, 0)]
    [InlineData("ash", "120 x 20", "no", 0, 0)]
    [InlineData("oak", "120 x 20", "yes", 0, 0)]
    [InlineData("ash", "40 x 20", "yes", 0, 0)]
    public void Make_BoardToRip_ServesWhereThicknessAndWoodAgree(string wood, string section, string rip, int lanes, int lane)
    {
        Plan plan = Make(Stick, "- {part: a, of: rail, length: 900}", Bought + $"{{stick: {wood}, section: {section}, length: 1000, have: 1, name: wide one, rip: {rip}}}");
        BoardPlan boards = Assert.Single(plan.Boards);
        StockLine? wide = boards.Stock.SingleOrDefault(l => l.Size.Name == "wide one");
        Assert.Equal((lanes, Mm(lane)), (wide?.Rip?.Lanes ?? 0, wide?.Rip?.LaneWidth ?? Length.Zero));
        Assert.Equal(lanes > 0, boards.IsRipped);
        Assert.Empty(BoardChecker.Check(boards.Instance, boards.Outcome.Layout));
    }

    [Theory]
    // PS 20, dry: 2x4 is 1 1/2 x 3 1/2 in, 2x6 5 1/2, 2x8 7 1/4 wide; 1x6 is 3/4 thick.
    [InlineData("2x6", "yes", "1/8", 1)]
    [InlineData("2x8", "yes", "1/4", 2)]               // 3 1/2 + 1/4 + 3 1/2 = 7 1/4
    [InlineData("2x8", "yes", "9/32", 1)]
    [InlineData("2x8", "no", "1/8", 0)]
    [InlineData("1x8", "yes", "1/8", 0)]
    public void Make_LumberToRip_ServesByItsDressedSizes(string wide, string rip, string kerf, int lanes)
    {
        Plan plan = Make("studs: {lumber: 2x4}", "- {part: a, of: studs, length: 40}", $"{{lumber: {wide}, length: 50, have: 1, rip: {rip}}}", $"kerf: {{rips: {kerf}}}\n", "in");
        BoardPlan boards = Assert.Single(plan.Boards);
        Assert.Equal(lanes, boards.Stock.SingleOrDefault(l => l.Rip is not null)?.Rip!.Lanes ?? 0);
        // What the yard keeps is on offer beside it, as ever.
        Assert.Equal(3, boards.Stock.Count(l => l.Size.InHand is null));
        if (lanes > 0) Assert.Equal($"Construction lumber, {wide}, 50 in, to rip", Assert.Single(plan.Buying).Item);
    }

    [Fact]
    public void Make_WidthInThePieceFile_IsRippedIntoLanesOfTheSection()
    {
        Plan plan = Make("rail: {stick: ash, section: 45 x 20, lengths: [{length: 1000, width: 93, price: 12}]}", "- {part: a, of: rail, count: 3, length: 480}", "");
        BoardPlan boards = Assert.Single(plan.Boards);
        LaidBoard board = Assert.Single(boards.Outcome.Layout.Boards);
        Assert.Equal(2, board.Stretches.Length);
        Assert.Equal((12m, "Ash, 20 x 93 mm, 1000 mm, to rip"), (plan.Cost.Amount, Assert.Single(plan.Buying).Item));
        Assert.True(boards.Outcome.NoFewerBoards);
    }

    [Fact]
    public void Make_StickReadWider_LanesAreAsWideAsItReads()
    {
        const string Log = "setout-log: 1\nentries:\n  - {id: a, at: 2026-05-04T09:40:00Z, read: rail.width, values: [45.5 mm], with: calliper}\n";
        BoardPlan boards = Assert.Single(Make(Stick, "- {part: a, of: rail, length: 900}", Bought + "{stick: ash, section: 120 x 20, length: 1000, have: 1, rip: yes}", log: Log).Boards);
        Assert.Equal(Length.FromTicks(45 * Length.TicksPerMillimetre + (Length.TicksPerMillimetre / 2)), boards.Stock[0].Rip!.LaneWidth);
    }

    [Fact]
    public void Make_NoPrices_AWideBoardCountsAsManyTimesAsItIsWider()
    {
        // One lane of two: 2.67 times the wood for a part that a stick holds.
        BoardPlan boards = Assert.Single(Make(Stick, "- {part: a, of: rail, length: 900}", "{stick: ash, section: 45 x 20, length: 1000}\n{stick: ash, section: 120 x 20, length: 1000, rip: yes}").Boards);
        Assert.False(boards.IsRipped);
        Assert.Equal([3.2808m, 8.7489m], boards.Instance.Stock.Select(s => s.Cost.Amount));
    }

    [Theory]
    [InlineData("{stick: ash, section: 45 x 20, length: 1000, have: 1, trim: 10, flaws: [{from: 10, to: 600}, {from: 600, to: 990}]}", "stock.nothing-clear")]
    [InlineData("{stick: ash, section: 45 x 20, length: 1000, have: 1, trim: 500, flaws: [{from: 10, to: 20}]}", "stock.trim-too-large")]
    [InlineData("{stick: ash, section: 30000 x 20, length: 1000, rip: yes, have: 1, flaws: [{from: 1, to: 2}]}", "stock.too-many-lanes")]
    public void Make_BoardThatGivesNothing_IsLeftOutAndSaysWhy(string board, string code)
    {
        Plan plan = Make(Stick, "- {part: a, of: rail, length: 300}", Bought + board);
        Finding warning = Assert.Single(plan.Findings, f => f.Code.StartsWith("stock.", StringComparison.Ordinal));
        Assert.Equal((code, Severity.Warn, "rail", 5), (warning.Code, warning.Severity, warning.Key, warning.Place.Line));
        Assert.EndsWith("It is left out of the layouts.", warning.Words, StringComparison.Ordinal);
        Assert.NotEmpty(warning.Remedy);
        Assert.False(plan.IsStopped);
        Assert.Equal("Ash, rail, 3000 mm", Assert.Single(plan.Buying).Item);
    }

    [Fact]
    public void Make_NothingButBoardsThatGiveNothing_StopsAndSaysWhyOfEach()
    {
        // With a size to buy that is too short too, so that no usual size stands in.
        Plan plan = Make(Stick, "- {part: a, of: rail, length: 300}",
            "{stick: ash, section: 45 x 20, length: 900, price: 9, trim: 450}\n{stick: ash, section: 45 x 20, length: 1000, have: 1, flaws: [{from: 0, to: 1000}]}");
        Assert.True(plan.IsStopped);
        Assert.Equal(["stock.nothing-clear", "stock.trim-too-large"], plan.Findings.Where(f => f.Severity == Severity.Stop).Select(f => f.Code).Order(StringComparer.Ordinal));
        Assert.All(plan.Findings, f => Assert.DoesNotContain("left out", f.Words, StringComparison.Ordinal));
    }

    [Fact]
    public void Make_WidthNarrowerThanTheStickReads_IsLeftOutAndSaysWhy()
    {
        const string Log = "setout-log: 1\nentries:\n  - {id: a, at: 2026-05-04T09:40:00Z, read: rail.width, values: [45.5 mm], with: calliper}\n";
        Plan plan = Make("rail: {stick: ash, section: 45 x 20, lengths: [{length: 1000, width: 45.2}]}", "- {part: a, of: rail, length: 300}", Bought, log: Log);
        Assert.Equal("stock.too-narrow", Assert.Single(plan.Findings, f => f.Severity == Severity.Warn).Code);
        Assert.Equal("Ash, rail, 3000 mm", Assert.Single(plan.Buying).Item);
    }

    // Trim 10, kerf 3. Lanes 45 of 93; clear 10 to 300 (290) and 340 to 990 (650).
    private static Plan Flawed() => Make(Stick, "- {part: a, of: rail, count: 2, length: 290}\n- {part: b, of: rail, length: 400}", Bought
        + "{stick: ash, section: 93 x 20, length: 1000, trim: 10, have: 1, name: board 3, rip: yes, flaws: [{from: 300, to: 340}]}");

    [Fact]
    public void PlanJson_RippedAndFlawedBoard_TellsLanesFlawsAndStretchesAndKeepsTheSchema()
    {
        byte[] bytes = PlanJson.Write(Flawed());
        using JsonDocument json = JsonDocument.Parse(bytes);
        JsonElement board = json.RootElement.GetProperty("boards")[0].GetProperty("layout")[0];
        decimal Figure(JsonElement of, string name) => of.GetProperty(name).GetProperty("mm").GetDecimal();
        JsonElement rip = board.GetProperty("rip"), flaw = Assert.Single(board.GetProperty("flaws").EnumerateArray());
        Assert.Equal((2, 93m, 45m, 3m), (rip.GetProperty("lanes").GetInt32(), Figure(rip, "width"), Figure(rip, "lane_width"), Figure(rip, "kerf")));
        Assert.Equal((300m, 340m), (Figure(flaw, "from"), Figure(flaw, "to")));
        JsonElement[] stretches = [.. board.GetProperty("stretches").EnumerateArray()];
        Assert.Equal([(1, 1, 10m, 300m), (1, 2, 340m, 990m), (2, 1, 10m, 300m), (2, 2, 340m, 990m)],
            stretches.Select(s => (s.GetProperty("lane").GetInt32(), s.GetProperty("place").GetInt32(), Figure(s, "from"), Figure(s, "to"))));
        Assert.Equal(["a", "a", "b"], stretches.SelectMany(s => s.GetProperty("parts").EnumerateArray().Select(p => p.GetString())).Order());
        JsonSchema schema = JsonSchema.FromText(File.ReadAllText(Repository.PathOf("docs/schemas/plan.schema.json")));
        Assert.True(schema.Evaluate(json.RootElement).IsValid);
        using JsonDocument spoiled = JsonDocument.Parse(Encoding.UTF8.GetString(bytes).Replace("\"lane_width\"", "\"lanes_width\"", StringComparison.Ordinal));
        Assert.False(schema.Evaluate(spoiled.RootElement).IsValid);
    }

    [Fact]
    public void PlanJson_PlainBoard_HasNoneOfThese()
    {
        string json = Encoding.UTF8.GetString(PlanJson.Write(Make(Stick, "- {part: a, of: rail, length: 900}", Bought)));
        Assert.All(new[] { "\"rip\"", "\"flaws\"", "\"stretches\"" }, w => Assert.DoesNotContain(w, json, StringComparison.Ordinal));
    }

    [Fact]
    public void Blanks_OfARippedAndFlawedBoard_AreItsClearLengthsOncePerLane()
    {
        Plan plan = Flawed();
        Assert.Equal([650m, 650m, 290m, 290m], Blanks.Of(plan.Set, plan.Source.Shop).Where(b => b.Price is null).Select(b => b.Length.ToMillimetres()));
    }
}
