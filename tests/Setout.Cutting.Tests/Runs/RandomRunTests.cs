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

    /// <summary>Wherever something may be cut the other way round, whether that saves a setting or not: the layout stays one, with as many cuts, and can be sawn.</summary>
    [Fact]
    public void Plan_RandomJobsTurned_CanBeSawn()
    {
        int turned = 0, unsound = 0;
        RandomJobs.Jobs.Holds(job =>
        {
            foreach (WayRound place in WaysRound.Places(job.Materials).Take(4))
            {
                ImmutableArray<RunMaterial> materials = WaysRound.Turned(job.Materials, place);
                Assert.Equal(job.Materials.OfType<RunSheets>().Select(Cuts), materials.OfType<RunSheets>().Select(Cuts));
                // Fewer stages, or a slack at the far edge, may forbid it; the planner looks too.
                if (!WaysRound.IsSound(materials, job.Materials))
                {
                    Interlocked.Increment(ref unsound);
                    continue;
                }
                if (!materials.SequenceEqual(job.Materials)) Interlocked.Increment(ref turned);
                ImmutableArray<SawViolation> found = SawSimulator.Check(materials, job.Limits, s_planner.Plan(materials, job.Limits));
                Assert.True(found.IsEmpty, $"{place}: {string.Join('\n', found.Take(5))}");
            }
        }, iter: 400);
        Assert.True(turned > 40 && unsound < turned / 4, $"{turned} layouts were turned, {unsound} could not be");
    }

    private static int Cuts(RunSheets sheets) => sheets.Layout.Sheets.Sum(s => Cuts(s.Root));

    private static int Cuts(CutNode node) => node is Division division ? division.Cuts + division.Slices.Sum(s => Cuts(s.Content)) : 0;

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
