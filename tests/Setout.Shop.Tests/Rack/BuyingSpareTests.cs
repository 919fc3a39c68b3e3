using System.Text;
using Setout.Cutting.Runs;
using Setout.Shop.Outputs;
using Setout.Shop.Plans;
using Setout.Shop.Tests.Plans;

namespace Setout.Shop.Tests.Rack;

/// <summary>What the buying list says is over. Figures are worked by hand beside each.</summary>
public sealed class BuyingSpareTests
{
    [Fact]
    public void Buying_Sheet_SaysWhatIsKept()
    {
        // 1000 x 500, 5 off each side: 990 x 490. Two parts of 300 x 200 beside each other, and what the runs keep is what the list says, with the raw sides that nobody trued.
        Plan plan = RippedBoardTests.Make("one: {panel: mdf, label: 3/4}", "- {part: a, of: one, count: 2, length: 300, width: 200}", "{panel: mdf, label: 3/4, size: 1000 x 500, price: 20}", "kerf: {sheets: 3}\ntrim: {sheets: 5}\nkeep: {sheets: 300 x 100}\n");
        BuyingLine line = Assert.Single(plan.Buying, l => l.Kind == BuyingKind.Sheet);
        Assert.Matches(@"^leaves \d.* x .* mm \(raw at .*\) to keep$", line.Spare);
        string[] sizes = [.. plan.Runs.Blanks.Where(b => b.Use == BlankUse.Keep).Select(b => $"{b.Along.ToMillimetres():0.#} x {b.Across.ToMillimetres():0.#} mm (raw at the ")];
        Assert.NotEmpty(sizes);
        Assert.All(sizes.Take(3), s => Assert.Contains(s, line.Spare, StringComparison.Ordinal));
        Assert.Contains($",{line.Spare}\r\n", Encoding.UTF8.GetString(PlanCsv.Buying(plan)).Replace("\"", "", StringComparison.Ordinal), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(1, "sheet", "sheet")]
    [InlineData(2, "sheet", "sheets")]
    [InlineData(3, "foot", "feet")]
    [InlineData(2, "box", "boxes")]
    [InlineData(12, "square foot", "square feet")]
    [InlineData(12, "square decimetre", "square decimetres")]
    [InlineData(2, "", "")]
    public void Units_OfSoMany_AreSaidAsOneSpeaks(int count, string unit, string said) => Assert.Equal(said, new BuyingLine(BuyingKind.Hardware, "it", count, unit, null, "").Units);

    [Fact]
    public void Buying_Boards_SaysEachLengthKeptAndHowOften()
    {
        // 1000 less 400 and a blade of 3, on each of two boards: 597 each. With a third part on one, 597 - 400 - 3 = 194, too short to keep.
        Plan plan = RippedBoardTests.Make("rail: {stick: ash, section: 45 x 20}", "- {part: a, of: rail, count: 2, length: 900}\n- {part: b, of: rail, length: 400}", "{stick: ash, section: 45 x 20, length: 1000, price: 9}", "kerf: {boards: 3}\ntrim: {boards: 0}\nkeep: {boards: 90}\n");
        // 1000 - 900 - 3 = 97 twice, 1000 - 400 - 3 = 597 once.
        Assert.Equal("leaves 597 mm, 2 of 97 mm to keep", Assert.Single(plan.Buying, l => l.Kind == BuyingKind.Board).Spare);
    }

    [Fact]
    public void Buying_BoardsOfWhichAnEndIsNotTrued_SaysWithTheRawEnd()
    {
        // 1000, 10 off one end, 400 and a blade of 3: 587 remain, of which 10 at the far end are raw.
        Plan plan = RippedBoardTests.Make("rail: {stick: ash, section: 45 x 20}", "- {part: b, of: rail, length: 400}", "{stick: ash, section: 45 x 20, length: 1000, price: 9}", "kerf: {boards: 3}\ntrim: {boards: 10}\nkeep: {boards: 90}\n");
        Assert.Equal("leaves 587 mm (raw at the far end) to keep", Assert.Single(plan.Buying, l => l.Kind == BuyingKind.Board).Spare);
    }

    [Theory]
    [InlineData(1, 48, "")]
    [InlineData(48, 1, "")]
    [InlineData(47, 2, "48 needed, 46 spare")]
    [InlineData(100, 1, "48 needed, 52 spare")]
    public void Buying_HardwareInPacks_CountsWholeOnesAndSaysWhatIsSpare(int pack, int packs, string spare)
    {
        const string Screw = "Wood screw no. 8 (4 mm), 1 1/2 in";
        (PieceSource? source, _) = PieceSource.Read(Sample.Text("jar-cabinet"), null, $"setout-shop: 1\nunit: in\nprices: [{{name: \"{Screw}\", price: 3, pack: {pack}}}]\n");
        BuyingLine line = Assert.Single(Sample.Make(source!).Buying, l => l.Item.Replace('\u00a0', ' ').StartsWith(Screw, StringComparison.Ordinal));
        Assert.Equal((packs, spare, 3m * packs), (line.Count, line.Spare, line.Total!.Value.Amount));
        Assert.Equal(pack > 1 ? "pack" : "piece", line.Unit);
    }
}
