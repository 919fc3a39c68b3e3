using CsCheck;
using Setout.Drawing.Scenes;
using Setout.Testing;

namespace Setout.Drawing.Tests.Scenes;

public sealed class SpreadTests
{
    private static readonly Gen<(double[] Wanted, double[] Sizes)> s_labels =
        from n in Gen.Int[1, 20]
        from wanted in Gen.Double[0, 100].Array[n]
        from sizes in Gen.Double[0.5, 12].Array[n]
        select (wanted.Order().ToArray(), sizes);

    [Fact]
    public void Along_AnyLabels_KeepClearAndInOrder() => s_labels.Holds(l =>
    {
        double[] at = Spread.Along(l.Wanted, l.Sizes, 1);
        return Enumerable.Range(1, at.Length - 1).All(i => at[i] - (l.Sizes[i] / 2) - at[i - 1] - (l.Sizes[i - 1] / 2) >= 1 - 1e-9);
    });

    [Fact]
    public void Along_LabelsWithRoom_StayWhereTheyAreWanted() =>
        Assert.Equal([10, 30, 60], Spread.Along([10, 30, 60], [5, 5, 5], 1));

    [Fact]
    public void Along_TwoOnOneSpot_GivesWayEqually() =>
        Assert.Equal([7, 13], Spread.Along([10, 10], [5, 5], 1));

    [Fact]
    public void Along_LabelsThatFit_StayBetweenTheLimits() => s_labels.Holds(l =>
    {
        double room = l.Sizes.Sum() + l.Sizes.Length - 1, high = Math.Max(100, room + 1);
        double[] at = Spread.Along(l.Wanted, l.Sizes, 1, 0, high);
        return at[0] - (l.Sizes[0] / 2) >= -1e-9 && at[^1] + (l.Sizes[^1] / 2) <= high + 1e-9;
    });

    [Fact]
    public void Along_Nothing_IsNothing() => Assert.Empty(Spread.Along([], [], 1));
}
