using Setout.Core.Measures.Text;
using Setout.Core.Workings;
using Setout.Drawing.Documents;
using Setout.Shop.BenchSheets;
using Setout.Shop.Plans;
using Setout.Shop.Texts;

namespace Setout.Shop.Tests.Plans;

/// <summary>What a mark says in the working of a figure that nobody read: told by <c>why</c>, and on paper. The figures are those of the worked example in README.md.</summary>
public class MarkedWorkingTests
{
    private static AtTheBench Marked() => new AtTheBench("luthiers-bench.yaml").Mark(Progress.Cut, "L3.end");

    private static string Why(AtTheBench bench, string key) => string.Join('\n', WorkingLines.Of(WrittenWorking.Of(bench.Set.Worked, new QuantityKey(key))!, LengthUnit.Inch));

    // The row of the length of the end of L3: its working, a line each, and its figure.
    private static string Printed(AtTheBench bench)
    {
        CellRow[] rows = [.. WorkingPages.Of(bench.Set).SelectMany(s => s.Blocks).OfType<TableBlock>().First().Rows.OfType<CellRow>()];
        string Text(Cell cell) => string.Join('\n', cell.Phrases.Select(p => p.PlainText));
        return string.Join('\n', Assert.Single(rows, r => Text(r.Cells[0]).Contains("L3e", StringComparison.Ordinal) && Text(r.Cells[0]).Contains("length", StringComparison.Ordinal)).Cells.Skip(1).Select(Text));
    }

    [Fact]
    public void Figure_MarkedCutAndNotRead_IsTakenAsPlanned()
    {
        AtTheBench bench = Marked();
        Assert.Contains("\n  17 19/32 in, cut, 4 May 2026, 9:00: marked cut; taken as planned", Why(bench, "L3.end.length.to-cut"), StringComparison.Ordinal);
        Assert.EndsWith("\n17 19/32, cut, 4 May 2026, 9:00: marked cut; taken as planned\n17 19/32", Printed(bench), StringComparison.Ordinal);
    }

    /// <summary>The opening reads 1/16 in under after the end is cut: by the plan it would be 17 17/32 now, and it stays 17 19/32.</summary>
    [Fact]
    public void Figure_MarkedCut_SaysHowFarItIsFromWhatIsPlannedNow()
    {
        AtTheBench bench = Marked().Record("L.width", "19 1/2");
        Assert.EndsWith("  17 19/32 in, cut, 4 May 2026, 9:00: marked cut; not read, 1/16 in over what is planned now", Why(bench, "L3.end.length.to-cut"), StringComparison.Ordinal);
        string printed = Printed(bench);
        Assert.EndsWith("17 19/32, cut, 4 May 2026, 9:00: marked cut; not read, 1/16 in over what is planned now\n17 19/32", printed, StringComparison.Ordinal);
        // What the sum comes to is what the grid would make of it, and not what was cut.
        Assert.DoesNotContain("on the 1/32", printed, StringComparison.Ordinal);
    }

    [Fact]
    public void Part_ReadAfterItsMark_TellsBoth()
    {
        string printed = Printed(Marked().Record("L3.end.length.as-cut", "17 9/16", "calliper"));
        Assert.Contains("\nread 17 9/16, calliper, 4 May 2026, 9:01: the reading counts", printed, StringComparison.Ordinal);
        Assert.Contains("marked cut; taken as planned", printed, StringComparison.Ordinal);
    }
}
