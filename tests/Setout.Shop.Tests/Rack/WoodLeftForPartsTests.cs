using Setout.Shop.Plans;
using Setout.Shop.Tests.Plans;

namespace Setout.Shop.Tests.Rack;

/// <summary>Wood that a run left for parts of the piece is used for them before what it kept, and before what else stands in the rack, where that costs no more money.</summary>
public sealed class WoodLeftForPartsTests
{
    private const string Rack = "{panel: mdf, label: 3/4, size: 1000 x 500, price: 20}\n{stick: ash, section: 45 x 20, length: 3000, price: 9}\n";

    private static string Sheets(string kept, string use, string left) => Log($"{{of: one, name: kept, size: {kept}, use: keep}}, {{of: one, name: left, size: {left}, use: {use}}}");

    private static string Log(string left) => $"setout-log: 1\nentries:\n  - {{id: a, at: 2026-11-26T10:00:00Z, cut: [], took: [{{of: one, stock: bought, size: 1000 mm x 500 mm}}], left: [{left}]}}\n";

    private static string[] Names(Plan plan) =>
    [
        .. plan.Sheets.SelectMany(s => s.Outcome.Layout.Sheets.Select(l => s.Stock.First(k => k.Id == l.StockId).Size.Name)),
        .. plan.Boards.SelectMany(b => b.Outcome.Layout.Boards.Select(l => b.Stock.First(k => k.Id == l.StockId).Size.Name)),
    ];

    private static Plan One(string log, string rack = "", int count = 1) =>
        RippedBoardTests.Make("one: {panel: mdf, label: 3/4}", $"- {{part: a, of: one, count: {count}, length: 300, width: 200}}", Rack + rack, "kerf: {sheets: 3}\ntrim: {sheets: 0}\n", log: log);

    [Theory]
    [InlineData("waiting", "300 mm x 200 mm", "900 mm x 400 mm")]
    [InlineData("waiting", "900 mm x 400 mm", "300 mm x 200 mm")]
    [InlineData("work", "300 mm x 200 mm", "900 mm x 400 mm")]
    [InlineData("work", "310 mm x 210 mm", "310 mm x 210 mm")]
    public void Make_WoodLeftForPartsAndKeptWood_UsesWhatWasLeftForThem(string use, string kept, string left) => Assert.Equal(["left"], Names(One(Sheets(kept, use, left))));

    [Theory]
    [InlineData("{panel: mdf, label: 3/4, size: 300 x 200, have: 1, name: offcut}")]
    [InlineData("{panel: mdf, label: 3/4, size: 1000 x 500, have: 1, name: whole}")]
    public void Make_WoodLeftForPartsAndARack_UsesWhatWasLeftForThem(string line) => Assert.Equal(["left"], Names(One(Sheets("250 mm x 100 mm", "waiting", "900 mm x 400 mm"), line)));

    /// <summary>Where one of two parts finds room on it, the other goes on the kept piece: nothing is bought for it.</summary>
    [Fact]
    public void Make_WoodLeftForPartsThatDoesNotSuffice_UsesKeptWoodBesideIt() =>
        Assert.Equal(["kept", "left"], Names(One(Sheets("620 mm x 210 mm", "waiting", "310 mm x 210 mm"), "", 3)).Order(StringComparer.Ordinal));

    /// <summary>Two kept pieces would hold all; the wood that waits takes what one of them would have.</summary>
    [Fact]
    public void Make_TwoKeptPieces_WoodLeftForPartsStandsInForOne()
    {
        string log = Log("{of: one, name: kept, size: 310 mm x 210 mm, use: keep}, {of: one, name: other, size: 311 mm x 211 mm, use: keep}, {of: one, name: left, size: 900 mm x 205 mm, use: waiting}");
        string[] used = Names(One(log, "", 3));
        Assert.Contains("left", used);
        Assert.True(used.Length <= 2, string.Join(' ', used));
    }

    [Fact]
    public void Make_Boards_UseWhatWasLeftForThem()
    {
        string log = Log("{of: one, name: kept, length: 905 mm, use: keep}, {of: one, name: left, length: 2000 mm, use: waiting}").Replace("size: 1000 mm x 500 mm", "length: 3000 mm", StringComparison.Ordinal);
        Plan plan = RippedBoardTests.Make("one: {stick: ash, section: 45 x 20}", "- {part: a, of: one, length: 900}", Rack, log: log);
        Assert.Equal(["left"], Names(plan));
    }
}
