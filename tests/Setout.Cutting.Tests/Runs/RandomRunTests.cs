using System.Collections.Immutable;
using Setout.Cutting.Boards;
using Setout.Cutting.Runs;
using Setout.Cutting.Sheets;
using Setout.Testing;
using Setout.Testing.Runs;

namespace Setout.Cutting.Tests.Runs;

/// <summary>Random jobs through the planner and the simulator.</summary>
public class RandomRunTests
{
    private static readonly CheckedRunPlanner s_planner = new(new RunPlanner(2_000));

    [Fact]
    public void Plan_RandomJobs_CanBeSawn() => RandomJobs.Jobs.Holds(job =>
    {
        ImmutableArray<SawViolation> found = SawSimulator.Check(job.Materials, job.Limits, s_planner.Plan(job.Materials, job.Limits));
        Assert.True(found.IsEmpty, string.Join('\n', found.Take(5)));
    }, iter: 500);

    [Fact]
    public void Plan_RandomJobs_KeepsTheLayouts() => RandomJobs.Jobs.Holds(job =>
    {
        OrderedRuns ordered = s_planner.Plan(job.Materials, job.Limits);
        for (int i = 0; i < job.Materials.Length; i++)
        {
            if (job.Materials[i] is RunSheets sheets)
            {
                SheetLayout after = ordered.Sheets[i];
                Assert.Equal(sheets.Layout.LeftOut, after.LeftOut);
                Assert.Equal(sheets.Layout.Sheets.Select(s => (s.StockId, Parts(s.Root))), after.Sheets.Select(s => (s.StockId, Parts(s.Root))));
            }
            if (job.Materials[i] is not RunBoards boards) continue;
            Assert.Equal(boards.Layout.LeftOut, ordered.Boards[i].LeftOut);
            Assert.Equal(boards.Layout.Boards.Select(Stretches), ordered.Boards[i].Boards.Select(Stretches));
        }
    }, iter: 200);

    private static string Parts(CutNode node) => string.Join(' ', All(node).Order(StringComparer.Ordinal));

    private static IEnumerable<string> All(CutNode node) => node switch
    {
        PartNode part => [$"{part.PartId}/{part.Turn}"],
        Division division => division.Slices.SelectMany(s => All(s.Content)),
        _ => [],
    };

    // Lanes may change places, as a whole.
    private static string Stretches(LaidBoard board) =>
        board.StockId + string.Join(" | ", board.Stretches.GroupBy(s => s.Lane).Select(lane => string.Join(';', lane.OrderBy(s => s.Place)
            .Select(s => $"{s.Place},{s.LeftOver},{s.Use}:{string.Join(' ', s.PartIds.Order(StringComparer.Ordinal))}"))).Order(StringComparer.Ordinal));
}
