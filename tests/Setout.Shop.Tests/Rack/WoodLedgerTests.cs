using Setout.Core.Workings;
using Setout.Shop.Plans;
using Setout.Shop.Rack;
using Setout.Shop.Tests.Plans;
using Setout.Shop.Texts;

namespace Setout.Shop.Tests.Rack;

/// <summary>What entries took and left, and what is in hand after them.</summary>
public sealed class WoodLedgerTests
{
    private const string First = "{id: a, at: 2026-11-26T10:00:00Z, cut: [], run: 1, plan: 1a2b3c4d, took: [{of: one, stock: bought, size: 1000 mm x 500 mm}], left: [{of: one, name: one-4, size: 1000 mm x 250 mm, trim: {far end: 5 mm}, use: work}, {of: one, name: one-5, size: 400 mm x 240 mm}]}";
    private const string Second = "{id: b, at: 2026-11-26T11:00:00Z, cut: [a], run: 2, plan: 1a2b3c4d, took: [{of: one, blank: one-4}], left: [{of: one, name: one-6, size: 600 mm x 250 mm, use: waiting}]}";

    private static Log Log(params string[] entries)
    {
        TextRead<Log> read = LogText.Read("setout-log: 1\nentries:\n" + string.Concat(entries.Select(e => $"  - {e}\n")));
        Assert.True(read.IsSound, string.Join("; ", read.Findings));
        return read.Value!;
    }

    private static string Names(params string[] entries) => string.Join(' ', WoodLedger.Of(Log(entries)).Blanks.Select(b => b.Name));

    [Fact]
    public void Of_EntriesThatStand_GiveWhatWasLeftAndNotTaken()
    {
        Assert.Equal("one-4 one-5", Names(First));
        Assert.Equal("one-5 one-6", Names(First, Second));
        Assert.Equal("one-4 one-5", Names(First, Second, "{id: c, at: 2026-11-26T12:00:00Z, void: b}"));
        Assert.Equal("one-5 one-6", Names(First, Second, "{id: c, at: 2026-11-26T12:00:00Z, void: b}", "{id: d, at: 2026-11-26T12:00:00Z, void: c}"));
        Assert.Equal("", Names());
    }

    [Fact]
    public void Of_EntriesInAnyOrder_GiveTheSame() => Assert.Equal("one-6 one-5", Names(Second, First));

    [Fact]
    public void Of_OneRunMarkedTwice_CountsOnceAndIsTold()
    {
        WoodLedger ledger = WoodLedger.Of(Log(First, First.Replace("id: a", "id: z", StringComparison.Ordinal), Second));
        Assert.Equal(["one-5", "one-6"], ledger.Blanks.Select(b => b.Name));
        Assert.Equal("z", Assert.Single(ledger.Twice).Entry.Id);
        // The same run of another plan is another run.
        Assert.Empty(WoodLedger.Of(Log(First, First.Replace("id: a", "id: z", StringComparison.Ordinal).Replace("1a2b", "2b3c", StringComparison.Ordinal))).Twice);
    }

    [Fact]
    public void Of_BlankWhoseEntryIsVoid_IsUnknownWhereItWasTaken()
    {
        WoodLedger ledger = WoodLedger.Of(Log(First, Second, "{id: c, at: 2026-11-26T12:00:00Z, void: a}"));
        Assert.Equal("one-4", Assert.Single(ledger.Unknown).Wood.Name);
        var piece = ShopPiece.Of("", Log(First, Second));
        ledger = WoodLedger.Of([piece]);
        Assert.Equal(["b"], ledger.Built(piece, (MarkEntry)Log(First).Entries[0]).Select(e => e.Entry.Id));
        Assert.Empty(ledger.Built(piece, (MarkEntry)Log(Second).Entries[0]));
    }

    private const string Mdf = "one: {panel: mdf, label: 3/4}";
    private const string Part = "- {part: p, of: one, length: 590, width: 245}";
    private const string Bought = "{panel: mdf, label: 3/4, size: 1000 x 500, price: 20}";

    private static Plan Make(string stock, params string[] entries) => RippedBoardTests.Make(Mdf, Part, stock, "kerf: {sheets: 3}\ntrim: {sheets: 5}\n", log: "setout-log: 1\nentries:\n" + string.Concat(entries.Select(e => $"  - {e}\n")));

    private static string Used(Plan plan) => string.Join("; ", plan.Buying.Where(l => l.Kind == BuyingKind.FromTheRack).Select(l => $"{l.Count} {l.Item}"));

    [Fact]
    public void Make_BlanksInHand_AreOfferedToTheTickWithTheirTrims()
    {
        // 995 long once its far end is trued, true at all other sides: 590 x 245 comes out of it, as it does of the blank that waits.
        Assert.Equal("1 MDF 3/4 in, one-4 (1000 x 250 mm)", Used(Make(Bought, First)));
        Assert.Equal("1 MDF 3/4 in, one-6 (600 x 250 mm)", Used(Make(Bought, First, Second)));
        // One that is gone is never asked for.
        Assert.Equal("", Used(Make(Bought, First, Second, "{id: c, at: 2026-11-26T12:00:00Z, cut: [], took: [{of: one, blank: one-6}]}")));
    }

    [Fact]
    public void Make_BlankThatStandsInTheRackToo_CountsOnceAndGoesOnce()
    {
        const string Rack = Bought + "\n{panel: mdf, label: 3/4, size: 1000 x 250, have: 1, name: one-4, trim: 0}";
        Assert.Equal("1 MDF 3/4 in, one-4 (1000 x 250 mm)", Used(Make(Rack, First)));
        Assert.Equal("", Used(Make(Rack, First, "{id: c, at: 2026-11-26T12:00:00Z, cut: [], took: [{of: one, stock: rack, name: one-4, size: 1000 mm x 250 mm}]}")));
    }

    [Fact]
    public void Make_LedgerThatDoesNotAddUp_IsTold()
    {
        string[] Codes(params string[] entries) => [.. Make(Bought, entries).Findings.Where(f => f.Code.StartsWith("log.", StringComparison.Ordinal)).Select(f => $"{f.Severity} {f.Code}")];
        Assert.Empty(Codes(First, Second));
        Assert.Equal(["Warn log.run-twice"], Codes(First, First.Replace("id: a", "id: z", StringComparison.Ordinal)));
        Assert.Equal(["Warn log.blank-unknown"], Codes(Second));
        Assert.Equal(["Note log.wood-unknown"], Codes("{id: c, at: 2026-11-26T12:00:00Z, cut: [], took: [{of: gone, stock: bought, size: 9 mm x 9 mm}], left: [{of: gone, name: g-1, size: 8 mm x 8 mm}]}"));
    }

    [Fact]
    public void Make_WoodThatIsBegun_IsUsedBeforeAWholeSheetOfTheRack()
    {
        const string Rack = Bought + "\n{panel: mdf, label: 3/4, size: 1000 x 500, have: 3}";
        // Two parts: one whole sheet holds both, 240 + 3 + 240 = 483 of 490; two blanks hold one each.
        string[] used = [.. Make2(2, Rack, First, Second.Replace("one-4", "one-9", StringComparison.Ordinal)).Buying.Select(l => l.Item).Order(StringComparer.Ordinal)];
        Assert.Equal(["MDF 3/4 in, one-4 (1000 x 250 mm)", "MDF 3/4 in, one-6 (600 x 250 mm)"], used);
        // Three: no whole sheet more than it takes; nothing is bought.
        Plan three = Make2(3, Rack, First, Second.Replace("one-4", "one-9", StringComparison.Ordinal));
        Assert.All(three.Buying, l => Assert.Equal(BuyingKind.FromTheRack, l.Kind));
        // Where it would cost money, the whole sheet is taken.
        Assert.Equal(["MDF 3/4 in, 1000 x 500 mm"], Make2(2, Rack, First, "{id: c, at: 2026-11-26T12:00:00Z, cut: [], took: [{of: one, blank: one-5}]}").Buying.Select(l => l.Item));
        Assert.All(three.Sheets, p => Assert.Empty(Cutting.Sheets.SheetChecker.Check(p.Instance, p.Outcome.Layout)));
    }

    private static Plan Make2(int count, string stock, params string[] entries) =>
        RippedBoardTests.Make(Mdf, $"- {{part: p, of: one, count: {count}, length: 590, width: 240}}", stock, "kerf: {sheets: 3}\ntrim: {sheets: 5}\n", log: "setout-log: 1\nentries:\n" + string.Concat(entries.Select(e => $"  - {e}\n")));

    [Fact]
    public void Write_EntryOfARun_ReadsBackAsItself()
    {
        foreach (LogEntry entry in Log(First, Second, "{id: c, at: 2026-11-26T12:00:00Z, cut: [], took: [{of: rail, stock: rack, name: \"board, no. 3\", length: 1000 mm, section: 1/3 mm x 120 mm, trim: {near end: 5 mm}, flaws: [{from: 0, to: 5 mm}]}], left: [{of: rail, name: r-1, length: 7/9 in, section: 20 mm x 7 mm}]}").Entries)
        {
            Assert.Null(LogText.Fault(entry));
            Assert.Equal(LogText.Write(entry), LogText.Write(LogText.Read(LogText.Head + LogText.Write(entry)).Value!.Entries[0]));
        }
    }
}
