using Setout.Core.SettingOut;
using Setout.Core.Workings;
using static Setout.Shop.Tests.SettingOut.Sample;

namespace Setout.Shop.Tests.SettingOut;

/// <summary>The whole of a bench in one piece: framed, two banks of drawers with false fronts, a platform for a machine between them, a laminated top with edging and a slot.</summary>
public class BookbindersBenchTests
{
    private static SetPiece Set() => Of("bookbinders-bench.yaml");

    [Fact]
    public void Piece_SetOut_HoldsTogether()
    {
        SetPiece set = Set();

        Assert.DoesNotContain(set.Findings, f => f.Severity != Severity.Note);
        Assert.Equal(82, set.Parts.Sum(p => p.Count));
        // Strips that are mitred share their corner.
        Assert.DoesNotContain(RandomPieceTests.Wrong(set), w => !w.StartsWith("T.edging-front#1 and T.edging-", StringComparison.Ordinal));
    }

    [Fact]
    public void Piece_ByHand_MatchesItsSums() =>
        // Between the posts: 84 - 4 x 3 1/2 - 2 x 22 = 26, the platform 1/16 less; the press is 14 deep, 1/2 more before and behind it: 15.
        // The top is 84 + 2 x 1 = 86 by 26 + 1 1/2 = 27 1/2 outside, its layers less by strips of 3/4 at three sides: 84 1/2 by 26 3/4.
        // Upwards: 33 + 2 x 3/4 + 2 x 0.048 = 34.596 to the face; less table 4, set low 1/16 and a platform of 17.7 mm = 0.697: 29.837, down to 29 13/16.
        AssertValues(Set(), ("P.rail.length.to-cut", "26"), ("W.platform.length.to-cut", "25 15/16"), ("W.platform.width.to-cut", "15"),
            ("T.length.to-cut", "84 1/2"), ("T.width.to-cut", "26 3/4"), ("W.bearers.up.to-cut", "29 13/16"));
}
