using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using static Setout.Shop.Tests.SettingOut.Sample;

namespace Setout.Shop.Tests.SettingOut;

/// <summary>Several structures in a piece: where each stands, what lies on them, and what cannot be.</summary>
public class StandTests
{
    private const string Head = """
        setout: 1
        name: Row with an upper case
        unit: in
        materials:
          ply: {panel: hardwood plywood, thickness: 3/4, grain: free}
          sticks: {stick: pine, section: 1 1/2 x 1 1/2}
        assembly:
          - {case: A, of: ply, width: 24, height: 30, depth: 20}

        """;

    private static SetPiece Out(string rest) => SetOut(Head + rest);

    private static Placement[] Boxes(SetPiece set, string key) => [.. set.Parts.First(p => p.Key == key).Placements];

    private static ExactLength In(long whole, long above = 0, long below = 1) => ExactLength.FromInches(Rational.Of((whole * below) + above, below));

    [Fact]
    public void Row_WithTopAndUpperCase_StandsWhereTheSumsSay()
    {
        SetPiece set = Out("""
              - {case: B, of: ply, width: 36, height: 30, depth: 20, beside: A}
              - {top: T, of: ply, overhang: {front: 1, left: 1/2}}
              - {case: H, of: ply, width: 60, height: 18, depth: 12, on: T}
            """);

        Assert.DoesNotContain(set.Findings, f => f.Severity != Severity.Note);
        // By hand: B stands 24 from the left; the top is 24 + 36 + 1/2 long, from -1/2, over 30; H stands on 30 + 3/4, its back over theirs: 20 - 12 = 8.
        Assert.Equal((In(24), In(0), In(0)), (Boxes(set, "B.side")[0].X, Boxes(set, "B.side")[0].Y, Boxes(set, "B.side")[0].Z));
        Assert.Equal(In(24 + 36) - In(0, 3, 4), Boxes(set, "B.side")[1].X);
        Assert.Equal((In(0) - In(0, 1, 2), In(-1), In(30), In(60, 1, 2), In(21)), (Boxes(set, "T")[0].X, Boxes(set, "T")[0].Y, Boxes(set, "T")[0].Z, Boxes(set, "T")[0].SizeX, Boxes(set, "T")[0].SizeY));
        Assert.Equal((In(0), In(8), In(30, 3, 4)), (Boxes(set, "H.side")[0].X, Boxes(set, "H.side")[0].Y, Boxes(set, "H.side")[0].Z));
        Assert.Equal("case B side", set.Parts.First(p => p.Key == "B.side").Name);
    }

    [Fact]
    public void Row_NeighbourReadWider_MovesTheNextAndWidensTheTop()
    {
        string text = Head + "  - {case: B, of: ply, width: 36, height: 30, depth: 20, beside: A}\n  - {top: T, of: ply}\n";
        SetPiece set = SetOut(text, "A.deck.length.as-cut: 22 9/16 in");

        // The deck came out 1/16 longer than 24 - 1 1/2.
        Assert.Equal(In(24, 1, 16), Boxes(set, "B.side")[0].X);
        Assert.Equal(In(60, 1, 16), set.Worked[new("T.length")]);
    }

    [Fact]
    public void Frame_BesideACaseUpstairs_KeepsItsLevel()
    {
        SetPiece set = Out("""
              - {case: B, of: ply, width: 12, height: 20, depth: 20, on: A}
              - {frame: F, of: sticks, width: 20, height: 20, depth: 20, toe: 2, beside: B, across: [{opening: F1}]}
            """);

        Assert.Equal((In(12), In(30)), (Boxes(set, "F.post")[0].X, Boxes(set, "F.post")[0].Z));
    }

    [Theory]
    [InlineData("structure.no-place", Severity.Stop, "  - {case: B, of: ply, width: 36, height: 30, depth: 20}\n")]
    [InlineData("structure.unknown", Severity.Stop, "  - {case: B, of: ply, width: 36, height: 30, depth: 20, beside: X}\n")]
    [InlineData("structure.unknown", Severity.Stop, "  - {case: B, of: ply, width: 36, height: 30, depth: 20, on: [A, B]}\n")]
    [InlineData("structure.unknown", Severity.Stop, "  - {top: T, of: ply, on: X}\n")]
    [InlineData("structure.overhangs", Severity.Warn, "  - {case: B, of: ply, width: 24 1/16, height: 30, depth: 20, on: A}\n")]
    [InlineData("structure.not-level", Severity.Stop, "  - {case: B, of: ply, width: 24, height: 29, depth: 20, beside: A}\n  - {case: H, of: ply, width: 48, height: 20, depth: 12, on: [A, B]}\n")]
    [InlineData("structure.in-the-way", Severity.Stop, "  - {case: B, of: ply, width: 24, height: 40, depth: 20, beside: A}\n  - {case: H, of: ply, width: 24, height: 20, depth: 12, on: A}\n  - {case: I, of: ply, width: 10, height: 5, depth: 12, beside: H, back: ply, hung: yes}\n")]
    [InlineData("top.not-level", Severity.Stop, "  - {case: B, of: ply, width: 24, height: 29, depth: 20, beside: A}\n  - {top: T, of: ply}\n")]
    public void Stand_ThatCannotBe_IsOneFindingWithItsPlace(string code, Severity severity, string rest)
    {
        Finding finding = Assert.Single(Out(rest).Findings, f => f.Severity != Severity.Note);

        Assert.Equal((code, severity), (finding.Code, finding.Severity));
        Assert.True(finding.Place.IsKnown);
        Assert.NotEmpty(finding.Remedy);
    }

    [Fact]
    public void Stand_AsWideAsWhatCarriesIt_IsFine() =>
        Assert.DoesNotContain(Out("  - {case: B, of: ply, width: 24, height: 30, depth: 20, on: A}\n").Findings, f => f.Severity != Severity.Note);

    [Theory]
    [InlineData("height: 30", 4)] // two rows; 30 / 16 is two a row, no fewer
    [InlineData("height: 32", 4)]
    [InlineData("height: 33", 6)]
    public void Neighbours_AreScrewedTogetherThroughTheirSides(string height, int count)
    {
        SetPiece set = SetOut(Head.Replace("height: 30", height, StringComparison.Ordinal) + $"  - {{case: B, of: ply, width: 36, {height}, depth: 20, beside: A}}\n");
        // 3/4 and 3/4 less 1/8 in front of the far face: 1 3/8; the longest of the series that stays under it is 1 1/4.
        HardwareItem screws = Assert.Single(set.Hardware, h => h.Source.StartsWith("to case A", StringComparison.Ordinal));
        Assert.Equal(("Wood screw no. 8 (4 mm), 1 1/4 in", count), (screws.Name, screws.Count));
        Assert.Contains(set.Steps, s => s.Stage == Stage.Top && s.Words.StartsWith("Clamp case B to case A", StringComparison.Ordinal));
    }

    [Fact]
    public void CaseOnATopOfNoKnownSheet_IsToldOfTheSheetAlone() =>
        Assert.Equal("T", Assert.Single(Out("  - {top: T, of: nothing}\n  - {case: H, of: ply, width: 20, height: 18, depth: 12, on: T}\n").Findings, f => f.Severity == Severity.Stop).Key);

    [Fact]
    public void Neighbours_WithAFillerBetween_AreNotScrewedTogether() =>
        Assert.DoesNotContain(Out("  - {case: B, of: ply, width: 36, height: 30, depth: 20, beside: A, filler: {of: ply, width: 2}}\n").Steps, s => s.Words.StartsWith("Clamp case B to", StringComparison.Ordinal));
}
