using Setout.Core.Workings;
using Setout.Cutting.Runs;
using Setout.Shop.Plans;
using Setout.Shop.Rack;
using Setout.Shop.Runs;
using Setout.Shop.Tests.Plans;
using Setout.Shop.Texts;

namespace Setout.Shop.Tests.Rack;

/// <summary>Runs of a plan that was made before another piece of the shop took its wood, and names that another piece has given already.</summary>
public sealed class MarkBesideOthersTests
{
    private const string Bought = "{panel: mdf, label: 3/4, size: 1000 x 500, price: 20}";

    private static PieceSource Here(string stock, string material = "one: {panel: mdf, label: 3/4}", string part = "{part: p, of: one, count: 2, length: 390, width: 290}")
    {
        string lines = string.Concat(stock.Split('\n').Select(l => $"  - {l}\n"));
        (PieceSource? source, var findings) = PieceSource.Read($"setout: 1\nname: Chest\nunit: mm\nmaterials:\n  {material}\nparts:\n  - {part}\n", null, $"setout-shop: 1\nunit: mm\nkerf: {{sheets: 3}}\ntrim: {{sheets: 5, boards: 5}}\nstock:\n{lines}");
        return source?.Beside("chest.yaml", []) ?? throw new InvalidOperationException(string.Join("; ", findings));
    }

    private static ShopPiece Tray(PieceSource here, string name, params string[] entries) =>
        new("tray.yaml", here.Piece with { Name = name }, LogText.Read("setout-log: 1\nentries:\n" + string.Concat(entries.Select(e => $"  - {e}\n"))).Value!);

    private static string Took(string took, string left = "") => $"{{id: t1, at: 2026-11-26T10:00:00Z, cut: [], took: [{took}], left: [{left}]}}";

    // All runs in turn, until one is refused.
    private static Finding? MarkAll(PieceSource source, SawnPlan plan)
    {
        foreach (Run run in plan.Runs.Runs)
        {
            (MarkEntry? entry, Finding? refusal) = RunMarking.Of(source, source.SetOut(), plan, run.Number, $"e{run.Number}", "2026-11-26T12:00:00Z");
            if (refusal is not null) return refusal;
            source = source with { Log = new(source.Log.Entries.Add(entry!)) };
        }
        return null;
    }

    [Theory]
    [InlineData(2, 0, false)]
    // Both are begun in one run: one that is left does not do.
    [InlineData(2, 1, true)]
    [InlineData(2, 2, true)]
    [InlineData(3, 1, false)]
    public void Of_LineThatANeighbourTookFrom_IsRefusedWithWhoTookIt(int have, int taken, bool isGone)
    {
        PieceSource source = Here($"{{panel: mdf, label: 3/4, size: 410 x 310, have: {have}}}\n{Bought}");
        var plan = SawnPlan.Of(Sample.Make(source));
        Assert.Null(MarkAll(source, plan));
        Finding? refusal = MarkAll(source.Beside("chest.yaml", [Tray(source, "Tray", [.. Enumerable.Range(1, taken).Select(i => Took("{of: one, stock: rack, size: 410 mm x 310 mm}").Replace("t1", $"t{i}", StringComparison.Ordinal))])]), plan);
        Assert.Equal(isGone ? "run.wood-gone" : null, refusal?.Code);
        if (!isGone) return;
        Assert.Contains(taken == 1 ? "the mark of 26 November 2026, 10:00 for Tray took it" : "the mark of 26 November 2026, 10:00 for Tray and the mark of 26 November 2026, 10:00 for Tray took it", refusal!.Words, StringComparison.Ordinal);
        Assert.Contains($"setout void tray.yaml t{taken}", refusal.Remedy, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("", "", false)]
    [InlineData("{of: one, blank: x}", "", true)]
    public void Of_BlankThatANeighbourTook_IsRefusedWithWhoTookIt(string took, string left, bool isGone)
    {
        PieceSource source = Here(Bought, part: "{part: p, of: one, length: 390, width: 290}");
        LogEntry own = LogText.Read("setout-log: 1\nentries:\n  - {id: a, at: 2026-11-26T09:00:00Z, cut: [], took: [{of: one, stock: bought, size: 1000 mm x 500 mm}], left: [{of: one, name: x, size: 410 mm x 310 mm}]}\n").Value!.Entries[0];
        source = source with { Log = new([own]) };
        var plan = SawnPlan.Of(Sample.Make(source));
        Assert.Contains(plan.Materials[0].Stock, s => s is { Source: WoodSource.Blank, Name: "x" });
        Finding? refusal = MarkAll(source.Beside("chest.yaml", took.Length == 0 ? [] : [Tray(source, "Chest", Took(took, left))]), plan);
        Assert.Equal(isGone ? "run.wood-gone" : null, refusal?.Code);
        // It has the name of this piece, so its file is named.
        if (isGone) Assert.Contains("x of one, which is gone by the log: the mark of 26 November 2026, 10:00 for tray.yaml took it.", refusal!.Words, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("", true)]
    [InlineData(", flaws: [{from: 950 mm, to: 960 mm}]", false)]
    public void Of_BoardsThatDifferByAFlaw_AreNotTakenForEachOther(string flaws, bool isRefused)
    {
        // The sound one gives the long part, and the other lies beside it.
        PieceSource source = Here("{stick: ash, section: 45 x 20, length: 1000, have: 1, flaws: [{from: 950, to: 960}]}\n{stick: ash, section: 45 x 20, length: 1000, have: 1}\n{stick: ash, section: 45 x 20, length: 3000, price: 9}",
            "one: {stick: ash, section: 45 x 20}", "{part: p, of: one, length: 980}");
        var plan = SawnPlan.Of(Sample.Make(source));
        Assert.Equal("have 1000", Assert.Single(plan.Materials[0].Stock).Id[..9]);
        Finding? refusal = MarkAll(source.Beside("chest.yaml", [Tray(source, "Tray", Took($"{{of: one, stock: rack, length: 1000 mm{flaws}}}"))]), plan);
        Assert.Equal(isRefused ? "run.wood-gone" : null, refusal?.Code);
    }

    [Fact]
    public void Of_TwoPiecesOfOneText_LeaveBlanksWithNamesOfTheirOwn()
    {
        PieceSource source = Here(Bought, part: "{part: p, of: one, length: 300, width: 200}");
        var plan = SawnPlan.Of(Sample.Make(source));
        var pieces = new List<PieceSource>();
        // Four copies, planned before any is cut: their plans are the same to the last sign.
        for (int i = 0; i < 4; i++)
        {
            PieceSource one = source.Beside($"chest-{i}.yaml", pieces.Select(p => p.InShop));
            foreach (Run run in plan.Runs.Runs)
            {
                (MarkEntry? entry, Finding? refusal) = RunMarking.Of(one, one.SetOut(), plan, run.Number, $"c{i}-{run.Number}", "2026-11-26T12:00:00Z");
                Assert.Null(refusal);
                one = one with { Log = new(one.Log.Entries.Add(entry!)) };
            }
            pieces.Add(one);
        }
        var ledger = WoodLedger.Of(pieces.Select(p => p.InShop));
        string[] names = [.. ledger.Blanks.Concat(ledger.Gone.Select(g => g.Blank)).Select(b => b.Name)];
        Assert.Equal(names.Length, names.Distinct().Count());
        Assert.Equal(names.Length, 4 * pieces[0].Log.Entries.OfType<MarkEntry>().Sum(e => e.Left.Length));
        Assert.Empty(ledger.Unknown);
        // What is chalked on them is what stands before run and plan.
        Assert.All(names, n => Assert.Matches("^.+-r[0-9]+-[0-9a-f]{4,8}$", n));
    }

    [Fact]
    public void Of_NameThatANeighbourComesToHaveLater_StaysThatOfItsOwnWood()
    {
        PieceSource source = Here(Bought, part: "{part: p, of: one, length: 300, width: 200}");
        var plan = SawnPlan.Of(Sample.Make(source));
        (MarkEntry? first, _) = RunMarking.Of(source, source.SetOut(), plan, 1, "e1", "2026-11-26T12:00:00Z");
        string name = first!.Left[0].Name;
        // A log that was kept apart turns up, with the same name in it.
        PieceSource after = (source with { Log = new([first]) }).Beside("chest.yaml", [Tray(source, "Tray", Took("{of: one, stock: bought, size: 1000 mm x 500 mm}", $"{{of: one, name: {name}, size: 700 mm x 400 mm, use: work}}"))]);
        (MarkEntry? second, Finding? refusal) = RunMarking.Of(after, after.SetOut(), plan, 2, "e2", "2026-11-26T13:00:00Z");
        Assert.Null(refusal);
        Assert.Contains(second!.Took, t => t.Name == name);
        var ledger = WoodLedger.Of([(after with { Log = new([first, second]) }).InShop, .. after.Others]);
        // Its own is gone, the other's is not.
        Assert.Equal("tray.yaml", Assert.Single(ledger.Blanks, b => b.Name == name).By.Name);
    }
}
