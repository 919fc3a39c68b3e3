using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Workings;
using Setout.Cutting.Sheets;
using Setout.Shop.Plans;
using Setout.Shop.Rack;
using Setout.Shop.Tests.Plans;
using Setout.Shop.Texts;

namespace Setout.Shop.Tests.Rack;

/// <summary>What a line of the rack may say, and what comes of it in a plan. Figures are worked by hand beside each.</summary>
public sealed class StockLineTests
{
    private const string Mdf = "one: {panel: mdf, label: 3/4}";
    private const string Part = "- {part: a, of: one, length: 300, width: 200}";
    private const string Bought = "\n{panel: mdf, label: 3/4, size: 1000 x 500, price: 20}";
    private const string Taken = "setout-log: 1\nentries:\n  - {id: a, at: 2026-11-26T10:00:00Z, cut: [], took: [{of: one, stock: rack, size: 400 mm x 300 mm}]}\n";

    private static Plan Make(string line, string parts = Part, string? log = null, string shop = "") =>
        RippedBoardTests.Make(Mdf, parts, $"{{panel: mdf, label: 3/4, {line}}}{Bought}", $"kerf: {{sheets: 3}}\ntrim: {{sheets: 5}}\n{shop}", log: log);

    private static bool IsFromRack(Plan plan) => plan.Buying.Any(l => l.Kind == BuyingKind.FromTheRack);

    [Theory]
    // 305 less 5 at one end, 210 less 5 at each edge: the part of 300 x 200 just comes out.
    [InlineData("size: 305 x 210, have: 1, trim: {near edge: 5, far edge: 5, near end: 0, far end: 5}", true)]
    [InlineData("size: 304 x 210, have: 1, trim: {near edge: 5, far edge: 5, near end: 0, far end: 5}", false)]
    [InlineData("size: 305 x 209, have: 1, trim: {near edge: 5, far edge: 5, near end: 0, far end: 5}", false)]
    // A side that is left out is trued by the shop's habit.
    [InlineData("size: 310 x 200, have: 1, trim: {near edge: 0, far edge: 0}", true)]
    [InlineData("size: 309 x 200, have: 1, trim: {near edge: 0, far edge: 0}", false)]
    public void Make_TrimBySide_LeavesWhatItSays(string line, bool suffices) => Assert.Equal(suffices, IsFromRack(Make(line)));

    [Fact]
    public void Make_TrimBySide_ReachesTheLayoutSideBySide()
    {
        Plan plan = Make("size: 400 x 300, have: 1, trim: {near edge: 1, far edge: 2, near end: 3, far end: 4}");
        SheetStock stock = Assert.Single(plan.Sheets).Instance.Stock.First(s => s.Limit == 1);
        Assert.Equal((Mm(3), Mm(4), Mm(1), Mm(2)), (stock.Trim.AlongStart, stock.Trim.AlongEnd, stock.Trim.AcrossStart, stock.Trim.AcrossEnd));
    }

    [Fact]
    public void Make_BoardTrimByEnd_LeavesWhatItSays()
    {
        static bool Suffices(int length) => RippedBoardTests.Make("rail: {stick: ash, section: 45 x 20}", "- {part: a, of: rail, length: 900}",
            $"{{stick: ash, section: 45 x 20, length: {length}, have: 1, trim: {{near end: 0, far end: 12}}}}\n{{stick: ash, section: 45 x 20, length: 3000, price: 9}}", "trim: {boards: 20}\n").Buying.Any(l => l.Kind == BuyingKind.FromTheRack);
        Assert.True(Suffices(912));
        Assert.False(Suffices(911));
    }

    [Theory]
    [InlineData("for: Try", true, false)]
    [InlineData("for: Plan chest", false, true)]
    // It is kept, and would not have helped: the part is larger.
    [InlineData("for: Plan chest, trim: 60", false, false)]
    public void Make_LineKeptForAPiece_IsSeenByThatPieceAlone(string kept, bool isUsed, bool isTold)
    {
        Plan plan = Make($"size: 400 x 300, have: 1, name: offcut, {kept}");
        Assert.Equal((isUsed, isTold), (IsFromRack(plan), plan.Findings.Any(f => f is { Code: "rack.kept", Severity: Severity.Note, Key: "one" })));
        if (isTold) Assert.Contains("offcut (400 x 300 mm) of one is kept for Plan chest", Assert.Single(plan.Findings, f => f.Code == "rack.kept").Words, StringComparison.Ordinal);
    }

    [Fact]
    public void Make_NothingButAKeptLine_SaysSo()
    {
        Plan plan = RippedBoardTests.Make("rail: {stick: ash, section: 45 x 20}", "- {part: a, of: rail, length: 900}", "{stick: ash, section: 45 x 20, length: 1000, have: 1, for: other}");
        Assert.Equal(["stock.none", "rack.kept"], plan.Findings.Where(f => f.Key == "rail").Select(f => f.Code).Where(c => c is "stock.none" or "rack.kept"));
    }

    [Theory]
    // Sheets of one lot differ by 0.2 mm: a reading of 18.2 is no news where the plan has 18, one of 18.3 is.
    [InlineData("18.2", 0)]
    [InlineData("17.8", 0)]
    [InlineData("18.3", 1)]
    [InlineData("17.7", 1)]
    public void Make_SheetThatReadsOtherwise_IsToldBeyondTheSpreadOfItsLot(string reads, int told)
    {
        Plan plan = RippedBoardTests.Make("one: {panel: own sheet, thickness: 18}", Part, $"{{panel: own sheet, thickness: 18, size: 400 x 300, have: 1, name: o, read: {reads}, lot: May}}", "spread: {sheet: 0.2}\n");
        Assert.Equal(told, plan.Findings.Count(f => f.Code == "rack.reads-otherwise"));
        Assert.Contains(plan.Buying, l => l.Item == $"Own sheet, o (400 x 300 mm), reads {reads} mm, lot May");
        // Sizes go by the material all the same.
        Assert.Equal(ExactLength.FromMillimetres(18), plan.Set.Worked[new("one.thickness")]);
    }

    /// <summary>Told as near, since 17.7 mm have no end in inches; what is to be typed is the reading itself.</summary>
    [Fact]
    public void Make_SheetReadInTheOtherUnit_IsToldAsNear_AndTypedAsItIs()
    {
        Plan plan = RippedBoardTests.Make("one: {panel: own sheet, thickness: 3/4}", "- {part: a, of: one, length: 10, width: 5}", "{panel: own sheet, thickness: 3/4, size: 20 x 15, have: 1, name: o, read: 17.7 mm}", "spread: {sheet: 0.01}\n", "in");
        Finding finding = Assert.Single(plan.Findings, f => f.Code == "rack.reads-otherwise");
        Assert.Contains("\u2248", finding.Words, StringComparison.Ordinal);
        string typed = System.Text.RegularExpressions.Regex.Match(finding.Remedy, "one.thickness (.*) --with").Groups[1].Value;
        Assert.Equal(ExactLength.FromMillimetres(Rational.Of(177, 10)), LengthText.Parse(typed, LengthUnit.Inch).Value);
    }

    [Theory]
    [InlineData(1, "", "", false)]
    [InlineData(2, "", "", true)]
    // Counted since: what was taken before is not in the count any more.
    [InlineData(1, ", counted: 2026-11-27", "", true)]
    [InlineData(1, ", counted: 2026-11-26", "", false)]
    [InlineData(1, ", counted: 2026-11-26T10:00:01Z", "", true)]
    [InlineData(1, ", counted: 2026-11-26T11:00:00+01:00", "", false)]
    [InlineData(1, "", "counted: 2026-11-27\n", true)]
    // The line knows better than the whole.
    [InlineData(1, ", counted: 2026-11-25", "counted: 2026-11-27\n", false)]
    public void Make_WhatTheLogTook_IsOffTheCountUnlessItWasCountedSince(int have, string counted, string shop, bool isThere) =>
        Assert.Equal(isThere, IsFromRack(Make($"size: 400 x 300, have: {have}{counted}", log: Taken, shop: shop)));

    [Fact]
    public void Make_TakenWoodOfAnotherSizeOrName_IsNoneOfTheLine()
    {
        Assert.True(IsFromRack(Make("size: 400 x 301, have: 1", log: Taken)));
        Assert.True(IsFromRack(Make("size: 400 x 300, have: 1, name: offcut", log: Taken)));
        // More taken than there were is none there.
        Assert.False(IsFromRack(Make("size: 400 x 300, have: 1", log: Taken + Taken[Taken.IndexOf("  - ", StringComparison.Ordinal)..].Replace("id: a", "id: b", StringComparison.Ordinal))));
    }

    [Fact]
    public void Of_LinesAlikeInSize_ThatWithTheSameFlawsIsTaken()
    {
        const string Boards = "{stick: ash, section: 45 x 20, length: 1000, have: 1}\n{stick: ash, section: 45 x 20, length: 1000, have: 1, flaws: [{from: 10, to: 20}]}";
        static string Log(string flaws) => $"setout-log: 1\nentries:\n  - {{id: a, at: 2026-11-26T10:00:00Z, cut: [], took: [{{of: rail, stock: rack, length: 1000 mm{flaws}}}]}}\n";
        static IEnumerable<int?> Left(string flaws) => RippedBoardTests.Make("rail: {stick: ash, section: 45 x 20}", "- {part: a, of: rail, length: 900}", Boards, log: Log(flaws)).Source.ShopInHand.Stock.Select(s => s.Size.InHand);
        Assert.Equal([0, 1], Left(""));
        Assert.Equal([1, 0], Left(", flaws: [{from: 10 mm, to: 20 mm}]"));
        // Flaws that were measured again are of the same board.
        Assert.Equal([0, 1], Left(", flaws: [{from: 11 mm, to: 20 mm}]"));
    }

    [Fact]
    public void Make_BoardToRipThatWasTaken_IsGoneByItsSection()
    {
        const string Log = "setout-log: 1\nentries:\n  - {id: a, at: 2026-11-26T10:00:00Z, cut: [], took: [{of: rail, stock: rack, length: 1000 mm, section: 20 mm x 120 mm}]}\n";
        Plan Of(string? log) => RippedBoardTests.Make("rail: {stick: ash, section: 45 x 20}", "- {part: a, of: rail, length: 900}", "{stick: ash, section: 120 x 20, length: 1000, have: 1, rip: yes}\n{stick: ash, section: 45 x 20, length: 1000, price: 9}", log: log);
        Assert.True(IsFromRack(Of(null)));
        Assert.False(IsFromRack(Of(Log)));
    }

    [Fact]
    public void Make_WhatThePieceFileSaysIsInHand_IsTakenOffTheSame()
    {
        Plan Of(string? log) => RippedBoardTests.Make("one: {panel: mdf, label: 3/4, sizes: [{size: 400 x 300, have: 1, name: x}]}", Part, Bought[1..], log: log);
        Assert.True(IsFromRack(Of(null)));
        Assert.False(IsFromRack(Of("setout-log: 1\nentries:\n  - {id: a, at: 2026-11-26T10:00:00Z, cut: [], took: [{of: one, stock: piece, name: x, size: 400 mm x 300 mm}]}\n")));
    }

    private static Length Mm(int mm) => Length.FromMillimetres(mm);
}
