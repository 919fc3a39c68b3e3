using Setout.Core.Measures;
using Setout.Cutting.Boards;

namespace Setout.Cutting.Tests.Boards;

/// <summary>What is cut from one stretch lies where it leaves least, and in the first of lanes that are alike.</summary>
public class LanesInUseTests
{
    private static Length Mm(long millimetres) => Length.FromMillimetres(millimetres);

    [Fact]
    public void Solve_BoardsOfLanesAndStretches_NothingFitsAShorterOrAnEarlierEmptyStretch()
    {
        int empty = 0;
        for (int seed = 1; seed <= 200; seed++)
        {
            var random = new Random(seed);
            int length = random.Next(900, 2400), flaw = random.Next(100, 700);
            var stock = new BoardStock("board", Mm(length), new(Mm(10), Mm(10)), new Money(5), null)
            {
                Defects = random.Next(4) == 0 ? [] : [new(Mm(flaw), Mm(flaw + random.Next(5, 100)))],
                Rip = new(Mm(random.Next(100, 300)), Mm(40), Mm(3)),
            };
            var instance = new BoardInstance([new("a", Mm(random.Next(80, 400)), random.Next(1, 6)), new("b", Mm(random.Next(50, 200)), random.Next(1, 4))], [stock], Mm(3), Mm(300));
            foreach (LaidBoard board in BoardSolvers.Default.Solve(instance, SolverOptions.Default).Layout.Boards)
            {
                Length Extent(LaidStretch s) => stock.ClearStretches()[s.Place - 1].Extent;
                foreach (LaidStretch full in board.Stretches.Where(s => !s.PartIds.IsEmpty))
                {
                    Length needs = full.PartIds.Aggregate(Length.Zero, (sum, id) => sum + instance.Parts.First(p => p.Id == id).Length) + (instance.Kerf * (full.PartIds.Length - 1));
                    foreach (LaidStretch free in board.Stretches.Where(s => s.PartIds.IsEmpty && Extent(s) >= needs))
                    {
                        empty++;
                        Assert.True(Extent(free) > Extent(full) || (Extent(free) == Extent(full) && (free.Lane, free.Place).CompareTo((full.Lane, full.Place)) > 0),
                            $"seed {seed}: lane {full.Lane}, place {full.Place} would go into lane {free.Lane}, place {free.Place}.");
                    }
                }
            }
        }
        Assert.True(empty > 100, $"{empty} empty stretches were compared.");
    }
}
