using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Testing;
using static Setout.Shop.Tests.SettingOut.Sample;

namespace Setout.Shop.Tests.SettingOut;

/// <summary>One piece with most of the words at once: cases side by side, backs let in, a toe kick, drawers, doors, shelves on pins, a doubled top with edging and a slot.</summary>
public class SewingCornerTests
{
    private static SetPiece Set() => Of("sewing-corner.yaml");

    [Fact]
    public void Piece_SetOut_HoldsTogether()
    {
        SetPiece set = Set();

        Assert.DoesNotContain(set.Findings, f => f.Severity == Severity.Stop);
        Assert.Equal(59, set.Parts.Sum(p => p.Count));
        // Strips that are mitred share their corner.
        Assert.DoesNotContain(RandomPieceTests.Wrong(set), w => !w.StartsWith("T.edging-front#1 and T.edging-", StringComparison.Ordinal));
    }

    [Fact]
    public void Piece_ByHand_MatchesItsSums() =>
        // Fronts cover 25 7/8: less 2 gaps of 1/8 = 25 5/8, shared 3 : 4 : 5, landed on 1/32; the lowest takes up the rest: 25 5/8 - 6 13/32 - 8 17/32 = 10 11/16.
        // Doors: 17 7/8 - 2 x 2 1/4 + 2 x 3/8 = 14 1/8. Box: the longest slide of the series is 20, its side shorter by the lap of 5/32.
        AssertValues(Set(), ("A1.front.height.to-cut", "6 13/32"), ("A2.front.height.to-cut", "8 17/32"), ("A3.front.height.to-cut", "10 11/16"),
            ("D1.rail.length.to-cut", "14 1/8"), ("A1.side.length.to-cut", "19 13/16"));
}
