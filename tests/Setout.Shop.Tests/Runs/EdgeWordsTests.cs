using Setout.Core.Measures;
using Setout.Cutting.Runs;
using Setout.Cutting.Sheets;
using Setout.Shop.Runs;
using static Setout.Shop.Tests.Runs.HandPlan;

namespace Setout.Shop.Tests.Runs;

/// <summary>Which edge or end is said to lie at fence and stop.</summary>
public class EdgeWordsTests
{
    // Two strips ripped off a sheet whose near sides are true, then one of them cut to length: from near and far edges raw as asked, in eighths of an inch.
    private static string[] Edges(bool isLeft, int farEdge, int farEnd)
    {
        var hand = new HandPlan();
        if (isLeft) hand.IsLeftByAnEarlierPlan();
        int sheet = hand.Blank(768, 384, BlankUse.Stock), strip = hand.Blank(768, 47, BlankUse.Work), left = hand.Blank(768, 336, BlankUse.Keep), part = hand.Blank(94, 47, BlankUse.Work), waste = hand.Blank(673, 47, BlankUse.Waste);
        EdgeTrim end = EdgeTrim.None with { AlongEnd = In(farEnd, 8) };
        hand.Raw(sheet, end with { AcrossEnd = In(farEdge, 8) });
        hand.Raw(left, end with { AcrossEnd = In(farEdge, 8) });
        hand.Raw(strip, end);
        hand.Raw(waste, end);
        hand.Run(SawWay.Fence, RunKind.Size, 47, null, Cut(sheet, GrainAxis.Across, BlankSide.NearEdge, 47, strip, left, 0));
        hand.Run(SawWay.Sled, RunKind.Size, 94, null, Cut(strip, GrainAxis.Along, BlankSide.NearEnd, 94, part, waste, 0, BlankSide.NearEdge, 0));
        return [.. RunWords.Of(hand.Plan()).Runs.Select(r => r.Edge)];
    }

    [Theory]
    [InlineData(false, 0, 0, "at the fence: the edge as bought at 0", "at the stop: the end as bought at 0; against the sled's fence: the edge as bought at 0")]
    // Only one side of stock is true: it was hardly bought like that, and nobody says so.
    [InlineData(false, 2, 2, "at the fence: the true edge at 0 (the other is raw)", "at the stop: the true end at 0 (the other is raw); against the sled's fence: the edge as bought at 0")]
    [InlineData(true, 2, 2, "at the fence: the edge sawn before, at 0 (the other is raw)",
        "at the stop: the end sawn before, at 0 (the other is raw); against the sled's fence: the edge sawn before, at 0")]
    [InlineData(true, 0, 2, "at the fence: the true edge at 0", "at the stop: the end sawn before, at 0 (the other is raw); against the sled's fence: the true edge at 0")]
    public void Of_SidesThatAreTrueFromTheStart_SaysWhichIsWhich(bool isLeft, int farEdge, int farEnd, string fence, string stop) => Assert.Equal([fence, stop], Edges(isLeft, farEdge, farEnd));
}
