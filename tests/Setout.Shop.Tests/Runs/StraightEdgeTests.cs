using Setout.Core.Measures;
using Setout.Cutting.Runs;
using Setout.Shop.Runs;

namespace Setout.Shop.Tests.Runs;

/// <summary>Where the straight edge is clamped, against a saw that is slid along it.</summary>
public class StraightEdgeTests
{
    private static readonly RunKind[] s_kinds = [RunKind.True, RunKind.Size, RunKind.Break, RunKind.Rough, RunKind.Clear];

    private static Length In(long n, long d = 1) => Length.FromInches(n, d);

    // Worked by hand: shoe 5 1/8, kerf 1/8.
    [Theory]
    [InlineData(RunKind.Size, 94, 53, true)]      // 11 3/4 - 5 1/8
    [InlineData(RunKind.Break, 41, 0, true)]      // as wide as the shoe: flush with the reference side
    [InlineData(RunKind.Size, 40, 82, false)]     // 5 + 1/8 + 5 1/8: too narrow for the shoe
    [InlineData(RunKind.True, 2, 43, false)]      // 1/4 + 5 1/8 beyond the raw side
    public void For_AShoeOfFiveAndAnEighth_AsByHand(RunKind kind, long figureInEighths, long atInEighths, bool isNear) =>
        Assert.Equal(new(In(atInEighths, 8), isNear), StraightEdge.For(kind, In(figureInEighths, 8), In(1, 8), In(41, 8)));

    // The shoe's edge against the straight edge, the blade one offset away from it on the side where the shoe lies.
    [Fact]
    public void For_AnyFigure_TheBladeTakesJustItsKerfBesideTheFigure()
    {
        var random = new Random(7);
        for (int i = 0; i < 2000; i++)
        {
            RunKind kind = s_kinds[random.Next(s_kinds.Length)];
            Length shoe = Length.FromTicks(random.NextInt64(0, In(8).Ticks)), kerf = Length.FromTicks(random.NextInt64(0, In(1, 4).Ticks)), figure = Length.FromTicks(random.NextInt64(1, In(40).Ticks));
            var edge = StraightEdge.For(kind, figure, kerf, shoe);
            (Length from, Length to) = edge.IsOnNearSide ? (edge.At + shoe, edge.At + shoe + kerf) : (edge.At - shoe - kerf, edge.At - shoe);
            bool isTrued = kind is RunKind.True or RunKind.Clear;
            Assert.Equal(isTrued ? (figure - kerf, figure) : (figure, figure + kerf), (from, to));
            // It lies on the wood that is wanted wherever that is wide enough for the shoe.
            Assert.Equal(!isTrued && figure >= shoe, edge.IsOnNearSide);
            Assert.True(edge.At >= Length.Zero);
        }
    }
}
