using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Testing;
using static Setout.Shop.Tests.SettingOut.Sample;

namespace Setout.Shop.Tests.SettingOut;

/// <summary>
/// One drawer of each sample worked with pencil and paper from the rules in words. Rules: side-mounted slides take 1/2 in a side and up to
/// 1/32 in more, aim for the middle (trade pages; the window is common practice, no source); slide setback 2 mm and 1/8 in behind (common
/// practice, no source); box at least 1/2 in lower than its space (a supplier's page); groove 1/4 in deep, never past half the side; bottom
/// inside + two grooves - 1/16 in (common practice, no source).
/// </summary>
public class HandWorkedDrawerTests
{
    [Fact]
    public void Bench_DrawerL1_AsWorkedByHand()
    {
        SetPiece set = Of(Bench);
        // Bay 21 between the posts. Slide panels 23/32 each: 21 - 2 x 23/32 = 21 - 1 14/32 = 19 18/32.
        AssertValues(set, ("L.width", "19 9/16"));
        // Box: 19 18/32 - 1 (two slides) - 1/32 (middle of 0 to 1/16) = 18 17/32.
        AssertValues(set, ("L1.box.width", "18 17/32"));
        // Ends between sides of 15/32: 18 17/32 - 30/32 = 17 19/32, on the grid of 1/32. As built 17 19/32 + 30/32 = 18 17/32.
        AssertValues(set, ("L1.end.length", "17 19/32"), ("L1.end.length.to-cut", "17 19/32"), ("L1.box.as-built", "18 17/32"));
        // Play: 19 18/32 - 1 - 18 17/32 = 1/32 in all.
        AssertValues(set, ("L1.play", "1/32"));
        // Depth 24 in = 609.6 mm, less 2 mm, less 3.175 mm = 604.425 mm = 23.796 in: the 22 in slide; 24 in would need 24 in, under 22 in it is the next shorter.
        AssertValues(set, ("L1.slide.usable", "604.425 mm"), ("L1.slide.length", "22"), ("L1.side.length.to-cut", "22"));
        AssertFlips(set, "L1", "24", "22");
        // Fronts cover 24 1/4 + 2 x 1/2 = 25 1/4; less three gaps of 1/8: 24 7/8; less 4, 5, 6: 9 7/8 for the lowest.
        AssertValues(set, ("L.cover-height", "25 1/4"), ("L1.front.height.to-cut", "4"), ("L4.front.height.to-cut", "9 7/8"));
        // Front width: 19 9/16 + 2 x (23/32 panel + 1/2 over the post) = 19 9/16 + 2 7/16 = 22.
        AssertValues(set, ("L1.front.width.to-cut", "22"));
        // Space behind the front: 4 - 1/2 over the top rail = 3 1/2; box 3 1/2 - 1/2 = 3. The lowest: 9 7/8 - 1/2 - 1/2 = 8 7/8.
        AssertValues(set, ("L1.slot", "3 1/2"), ("L1.side.width.to-cut", "3"), ("L1.end.width.to-cut", "3"), ("L2.side.width.to-cut", "4 1/2"), ("L4.side.width.to-cut", "8 7/8"));
        // Groove: the lesser of 1/4 = 16/64 and half of 15/32 = 15/64; down to the grid: 14/64 = 7/32. Width as the bottom: 7/32.
        AssertValues(set, ("L1.groove.depth", "15/64"), ("L1.groove.depth.to-cut", "7/32"), ("L1.groove.width", "7/32"), ("L1.groove.up", "3/8"));
        // Bottom across: 17 19/32 + 14/32 - 2/32 = 17 31/32. Front to back: 22 - 30/32 = 21 2/32; + 14/32 - 2/32 = 21 14/32.
        AssertValues(set, ("L1.bottom.width.to-cut", "17 31/32"), ("L1.bottom.length.to-cut", "21 7/16"));
        // Middle of the slide: fronts from below 9 7/8, 6, 5 and three gaps of 1/8 from 1/2 under the opening: 20 3/4; + 1/4 + half of 3 = 22 1/2.
        AssertValues(set, ("L1.slide.up", "22 1/2"));
    }

    [Fact]
    public void Chest_DrawerD1_AsWorkedByHand()
    {
        SetPiece set = Of(Chest);
        // Sides 17.7: 1000 - 35.4 = 964.6, to the nearest half millimetre 964.5: that is the opening.
        AssertValues(set, ("C.deck.length", "964.6 mm"), ("C.deck.length.to-cut", "964.5 mm"), ("C.opening.width", "964.5 mm"));
        // Box: 964.5 - 25.4 - 0.79375 (1/32 in) = 938.30625. Ends between sides of 14.9: 938.30625 - 29.8 = 908.50625, down to 908.5.
        AssertValues(set, ("D1.box.width", "938.30625 mm"), ("D1.end.length", "908.50625 mm"), ("D1.end.length.to-cut", "908.5 mm"));
        // As built 908.5 + 29.8 = 938.3; play 964.5 - 25.4 - 938.3 = 0.8.
        AssertValues(set, ("D1.box.as-built", "938.3 mm"), ("D1.play", "0.8 mm"));
        // Side of the case 740 - 6.4 = 733.6, cut 733.5; usable 733.5 - 2 - 3.175 = 728.325: the 700 slide, the longest there is.
        AssertValues(set, ("C.side.width.to-cut", "733.5 mm"), ("D1.slide.usable", "728.325 mm"), ("D1.side.length.to-cut", "700 mm"));
        AssertFlips(set, "D1", null, "700 mm");
        // Fronts: clear height 920 - 35.4 = 884.6; over each edge 17.7 - 1.5 = 16.2; cover 917; less nine gaps of 3: 890; a tenth: 89.
        AssertValues(set, ("C.opening.cover-height", "917 mm"), ("D1.front.height.to-cut", "89 mm"), ("D10.front.height.to-cut", "89 mm"));
        // Front width 964.5 + 32.4 = 996.9, to the nearest 997.
        AssertValues(set, ("D1.front.width", "996.9 mm"), ("D1.front.width.to-cut", "997 mm"));
        // Space behind the first front 89 - 16.2 = 72.8; box 72.8 - 12.7 = 60.1, down to 60. In the middle: 89 - 12.7 = 76.3, down to 76.
        AssertValues(set, ("D1.slot", "72.8 mm"), ("D1.side.width.to-cut", "60 mm"), ("D2.side.width.to-cut", "76 mm"), ("D10.side.width.to-cut", "60 mm"));
        // Groove: the lesser of 6.35 and 14.9 / 2 = 7.45; down to 6. Width as the bottom: 12.
        AssertValues(set, ("D1.groove.depth", "6.35 mm"), ("D1.groove.depth.to-cut", "6 mm"), ("D1.groove.width", "12 mm"));
        // Bottom across 908.5 + 12 - 1.5875 = 918.9125, down to 918.5. Front to back 700 - 29.8 + 12 - 1.5875 = 680.6125, down to 680.5.
        AssertValues(set, ("D1.bottom.width.to-cut", "918.5 mm"), ("D1.bottom.length.to-cut", "680.5 mm"));
        // Middle of the slide: top of the cover 884.6 + 16.2 = 900.8 above the bottom of the opening, less 89 = 811.8; + 6.35 + half of 60 = 848.15.
        AssertValues(set, ("D1.slide.up", "848.15 mm"));
        // The prints of 860 x 620 mm that it is for lie flat inside: 908.5 across, 700 - 29.8 = 670.2 front to back.
        Assert.True(set.Value("D1.end.length.to-cut") > Described.Of("860 mm") && set.Value("D1.side.length.to-cut") - Described.Of("29.8 mm") > Described.Of("620 mm"));
    }

    [Fact]
    public void Cabinet_DrawerG1_AsWorkedByHand()
    {
        SetPiece set = Of(Cabinet);
        // Inside 38 - 2 x 23/32 = 36 18/32; less 20 and a partition of 23/32: 15 27/32.
        AssertValues(set, ("B2.width", "15 27/32"));
        // Box 15 27/32 - 1 - 1/32 = 14 26/32; ends less 30/32: 13 28/32; as built 14 26/32; play 1/32.
        AssertValues(set, ("G1.box.width", "14 13/16"), ("G1.end.length.to-cut", "13 7/8"), ("G1.box.as-built", "14 13/16"), ("G1.play", "1/32"));
        // Depth 13 - 15/32 (the back carries, so it is 1/2 in ply) = 12 17/32; less 1/8: 12 13/32 = 315.11875 mm; less 2 mm: 313.11875 mm = 12.33 in: the 12 in slide.
        AssertValues(set, ("G1.slide.usable", "313.11875 mm"), ("G1.side.length.to-cut", "12"));
        AssertFlips(set, "G1", "14", "12");
        // Over the deck half of it less half the gap: (23/32 - 4/32) / 2 = 19/64. Over the bottom 23/32 - 1.5 mm = 16.75625 mm.
        AssertValues(set, ("B2.overlay-top", "19/64"), ("B2.overlay-bottom", "16.75625 mm"), ("B2.overlay-left", "19/64"), ("B2.overlay-right", "16.75625 mm"));
        // Cover 228.6 + 7.540625 + 16.75625 = 252.896875 mm; less the gap of 3.175: 249.721875; half 124.8609375 mm = 157.3 / 32 in, so 4 29/32.
        AssertValues(set, ("B2.cover-height", "252.896875 mm"), ("G1.front.height", "124.8609375 mm"), ("G1.front.height.to-cut", "4 29/32"));
        // The lower takes the rest: 249.721875 - 124.61875 = 125.103125 mm = 157.6 / 32 in, so 4 30/32.
        AssertValues(set, ("G2.front.height", "125.103125 mm"), ("G2.front.height.to-cut", "4 15/16"));
        // Front width 402.43125 + 7.540625 + 16.75625 = 426.728125 mm = 537.6 / 32 in, so 16 26/32.
        AssertValues(set, ("G1.front.width.to-cut", "16 13/16"));
        // Space behind the front 4 58/64 - 19/64 = 4 39/64; box 4 7/64, down to 4 3/32.
        AssertValues(set, ("G1.slot", "4 39/64"), ("G1.side.width", "4 7/64"), ("G1.side.width.to-cut", "4 3/32"));
        // Groove 7/32 as in the bench. Bottom across 13 28/32 + 14/32 - 2/32 = 14 8/32; front to back 12 - 30/32 + 12/32 = 11 14/32.
        AssertValues(set, ("G1.groove.depth.to-cut", "7/32"), ("G1.bottom.width.to-cut", "14 1/4"), ("G1.bottom.length.to-cut", "11 7/16"));
        // Middle of the slide: 9 + 19/64 - 4 58/64 = 4 25/64 to the foot of the front; + 1/4 + half of 4 3/32: 4 25/64 + 16/64 + 2 3/64 = 6 44/64.
        AssertValues(set, ("G1.slide.up", "6 11/16"));
    }

    private static void AssertFlips(SetPiece set, string drawer, string? up, string down)
    {
        Choice choice = set.Choices.Single(c => c.Key == new QuantityKey($"{drawer}.slide.length"));
        Assert.Equal(new QuantityKey($"{drawer}.slide.usable"), choice.Decides);
        Assert.Equal(up is null ? null : Described.Of(up), choice.FlipsUpAt);
        Assert.Equal(Described.Of(down), choice.FlipsDownBelow);
        Assert.Equal(set.Worked[choice.Key], choice.Value);
    }

    [Fact]
    public void Bench_DeeperToTheFlip_TakesTheLongerSlideAndATickLessDoesNot()
    {
        // The margin that the choice names is the true one: at 24 in usable, and not a tick before.
        string at = (Described.Of("24") + Described.Of("2 mm") + Described.Of("1/8")).Millimetres.ToString() + " mm";
        string under = (Described.Of("24") + Described.Of("2 mm") + Described.Of("1/8") - Length.FromTicks(1)).Millimetres.ToString() + " mm";
        Assert.Equal(Described.Of("24"), Of(Bench, $"L1.slide.usable: 24 in").Value("L1.slide.length"));
        Assert.Equal(Described.Of("24"), Of(Bench, $"L.depth: {at}").Value("L1.slide.length"));
        Assert.Equal(Described.Of("22"), Of(Bench, $"L.depth: {under}").Value("L1.slide.length"));
    }
}
