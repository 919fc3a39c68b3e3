using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Testing;
using static Setout.Shop.Tests.SettingOut.Sample;

namespace Setout.Shop.Tests.SettingOut;

/// <summary>Readings on the luthiers' bench: exactly which sizes move, by how much, and that no others do.</summary>
public class ReadingTests
{
    private static readonly string[] s_left = ["L1", "L2", "L3", "L4"], s_right = ["R1", "R2", "R3"];
    private static readonly string[] s_drawers = [.. s_left, .. s_right];

    /// <summary>A cut size moves in its three figures.</summary>
    private static IEnumerable<string> Cut(string key) => [key, key + ".to-cut", key + ".as-cut"];

    private static void AssertMoved(SetPiece after, params (IEnumerable<string> Keys, string By)[] expected)
    {
        Dictionary<string, ExactLength> moved = Moved(Of(Bench), after);
        Dictionary<string, ExactLength> wanted = expected.SelectMany(e => e.Keys.Select(k => (k, e.By)))
            .ToDictionary(e => e.k, e => e.By.StartsWith('-') ? -Described.Of(e.By[1..]) : Described.Of(e.By));
        Assert.Equal(wanted.Keys.Order(), moved.Keys.Order());
        Assert.All(wanted, w => Assert.True(moved[w.Key] == w.Value, $"{w.Key} moved by {moved[w.Key].Inches} in"));
    }

    [Fact]
    public void Carcase_ReadA64thUnderAtTwoSpots_WidensBaysAndBoxesByA32ndAndKeepsTheFronts()
    {
        // The spots 89/128 and 91/128 have the mean 90/128 = 45/64, a 64th under the 23/32 it stands for.
        SetPiece after = Of(Bench, "carcase.thickness: 89/128 in, 91/128 in");
        AssertMoved(after,
            (["carcase.thickness", "L.overlay-left", "L.overlay-right", "R.overlay-left", "R.overlay-right"], "-1/64"),
            (["L.face-width", "L.width", "R.face-width", "R.width"], "1/32"),
            (s_drawers.SelectMany(d => Cut($"{d}.end.length").Concat(Cut($"{d}.bottom.width")).Concat([$"{d}.opening", $"{d}.box.width", $"{d}.box.as-built"])), "1/32"));
        Worked read = after.Worked.Values[new("carcase.thickness")];
        Assert.Equal((Described.Of("45/64"), Described.Of("23/32"), -Described.Of("1/64")), (read.Value, read.Expected, read.Over));
        Assert.Empty(SetPieceChecker.Violations(after));
    }

    [Fact]
    public void Studs_ReadA32ndNarrow_GivesItToTheMiddleBayAndToTheHeights()
    {
        // Four posts a 32nd narrower leave 1/8 to the knee space, which takes the rest; a bottom rail a 32nd lower leaves that to every height.
        SetPiece after = Of(Bench, "studs.width: 3 15/32 in");
        AssertMoved(after,
            (["studs.width"], "-1/32"),
            (Cut("K.rail.length").Append("K.width"), "1/8"),
            (["L.face-height", "K.face-height", "R.face-height", "L.height", "K.height", "R.height", "L.cover-height", "R.cover-height"], "1/32"),
            (Cut("L.panel.length").Concat(Cut("R.panel.length")), "1/32"),
            // The lowest drawer takes the rest of the fronts; those above it only stand higher.
            (Cut("L4.front.height").Concat(Cut("R3.front.height")).Concat(["L4.slot", "R3.slot"]), "1/32"),
            (Cut("L4.side.width").Concat(Cut("L4.end.width")).Concat(Cut("R3.side.width")).Concat(Cut("R3.end.width")), "1/32"),
            (["L1.slide.up", "L2.slide.up", "L3.slide.up", "R1.slide.up", "R2.slide.up"], "1/32"),
            (["L4.slide.up", "R3.slide.up"], "1/64"));
        Assert.Empty(SetPieceChecker.Violations(after));
    }

    [Fact]
    public void Opening_ReadAtThreeSpots_TakesTheNarrowestForItsBoxesAndLeavesFrontsAndTheOtherBayAlone()
    {
        // A front is as wide as the face it lies over; what is read along the slides is the boxes' affair.
        SetPiece after = Of(Bench, "L.width: 19 9/16 in, 19 17/32 in, 19 19/32 in");
        AssertMoved(after,
            (["L.width"], "-1/32"),
            (s_left.SelectMany(d => Cut($"{d}.end.length").Concat(Cut($"{d}.bottom.width")).Concat([$"{d}.opening", $"{d}.box.width", $"{d}.box.as-built"])), "-1/32"));
        Assert.Equal(Described.Of("19 9/16"), after.Worked.Values[new("L.width")].Expected);
    }

    [Fact]
    public void FinishedBox_ReadA32ndOver_TakesAllThePlayOfThatDrawerOnly()
    {
        SetPiece after = Of(Bench, "L2.box.as-built: 18 9/16 in");
        AssertMoved(after, (["L2.box.as-built"], "1/32"), (["L2.play"], "-1/32"));
        Assert.DoesNotContain(after.Findings, f => f.Key == "L2");
    }

    [Fact]
    public void FinishedBox_ReadTooWide_SaysWhatToDoAndDoesNotStopThePlan()
    {
        // 18 19/32 with two slides is 19 19/32 in an opening of 19 18/32: 1/32 too wide, 1/64 to plane off each side.
        SetPiece after = Of(Bench, "L2.box.as-built: 18 19/32 in");
        Finding finding = Assert.Single(after.Findings, f => f.Key == "L2");
        Assert.Equal(("drawer.too-wide", Severity.Warn), (finding.Code, finding.Severity));
        Assert.Contains("1/64 in", finding.Remedy, StringComparison.Ordinal);
        Assert.False(after.IsStopped);
    }

    [Fact]
    public void FinishedBox_ReadTooNarrow_SaysByHowMuchToShim()
    {
        // Play 19 9/16 - 1 - 18 7/16 = 1/8; to bring it back to the middle of 1/32 takes 3/32 of shims, 3/64 a side.
        Finding finding = Assert.Single(Of(Bench, "L2.box.as-built: 18 7/16 in").Findings, f => f.Key == "L2");
        Assert.Equal(("drawer.too-narrow", Severity.Warn), (finding.Code, finding.Severity));
        Assert.Contains("3/64 in", finding.Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void Bays_ReadSoThatTheyNoLongerAddUp_IsAFindingThatNamesWhatToMeasure()
    {
        // The left opening of the cabinet reads 1/16 over its 20: with partition and right opening the sizes are 1/16 longer than the inside.
        SetPiece after = Of(Cabinet, "A.width: 20 1/16 in");
        Finding finding = Assert.Single(after.Findings, f => f.Code == "chain.open");
        Assert.Contains("1/16 in longer", finding.Words, StringComparison.Ordinal);
        Assert.Contains("B.width", finding.Remedy, StringComparison.Ordinal);
        Assert.DoesNotContain(Of(Cabinet, "A.width: 20 1/16 in", "B.width: 15 25/32 in").Findings, f => f.Code == "chain.open");
    }

    [Fact]
    public void Sheet_ReadOutsideItsPublishedLimits_IsAFinding()
    {
        // HP-1 from memory: 3/4 is +0 -3/64, so 45/64 is the least.
        Assert.DoesNotContain(Of(Bench, "carcase.thickness: 45/64 in").Findings, f => f.Code == "material.outside-limits");
        Assert.Contains(Of(Bench, "carcase.thickness: 44/64 in").Findings, f => f.Code == "material.outside-limits" && f.Key == "carcase");
        // 17.7 mm are 44.6 of 1/64: told as 45/64 it would be within.
        Assert.Contains("reads just under 45/64 in;", Assert.Single(Of(Bench, "carcase.thickness: 17.7 mm").Findings, f => f.Code == "material.outside-limits").Words, StringComparison.Ordinal);
    }

    [Fact]
    public void Drawer_InsertedIntoTheText_LeavesEveryReadingOnItsOwnPart()
    {
        string[] readings = ["L2.box.as-built: 18 9/16 in", "L3.box.as-built: 18 1/2 in", "L4.front.height.as-cut: 6 7/8 in", "R2.box.as-built: 18 33/64 in", "carcase.thickness: 45/64 in"];
        string inserted = Changed(Bench, "            - {drawer: L3, front: 6}\n", "            - {drawer: L7, front: 3}\n            - {drawer: L3, front: 6}\n");
        SetPiece before = Of(Bench, readings), after = SetOut(inserted, readings);
        Assert.DoesNotContain(after.Findings, f => f.Code == "reading.no-quantity");
        string[] Read(SetPiece set) => [.. set.Worked.Values.Values.Where(w => w.Pin is not null).Select(w => $"{w.Quantity.Key} {w.Value}").Order()];
        Assert.Equal(5, Read(before).Length);
        Assert.Equal(Read(before), Read(after));
        Assert.Null(after.Worked.Values[new("L7.box.as-built")].Pin);
        // What belongs to the other bay does not move at all.
        Assert.All(before.Worked.Order.Where(k => k.Owner is "R" or "R1" or "R2" or "R3"), k => Assert.Equal(before.Worked[k], after.Worked[k]));
    }

    private const string L1 = "            - {drawer: L1, front: 4}\n", L2 = "            - {drawer: L2, front: 5}\n", L3 = "            - {drawer: L3, front: 6}\n";

    [Theory]
    [InlineData(L2 + L3, L3 + L2)] // moved past its neighbour
    [InlineData(L1 + L2 + L3, L2 + L3 + L1)] // moved from the top
    [InlineData(L1, "")] // one without a reading taken out
    public void Drawer_MovedOrTakenOut_LeavesEveryReadingOnItsOwnPart(string from, string to)
    {
        string[] readings = ["L2.box.as-built: 18 9/16 in", "L3.opening: 19 35/64 in", "L3.front.height.as-cut: 6 1/64 in", "R2.box.as-built: 18 33/64 in", "carcase.thickness: 45/64 in"];
        SetPiece before = Of(Bench, readings), after = SetOut(Changed(Bench, from, to), readings);
        Assert.DoesNotContain(after.Findings, f => f.Code == "reading.no-quantity");
        string[] Read(SetPiece set) => [.. set.Worked.Values.Values.Where(w => w.Pin is not null).Select(w => $"{w.Quantity.Key} {w.Value}").Order()];
        Assert.Equal(5, Read(before).Length);
        Assert.Equal(Read(before), Read(after));
        // The box of the drawer whose slide line was read is a 64th narrower wherever it stands.
        Assert.Equal(before.Value("L3.end.length"), after.Value("L3.end.length"));
        Assert.All(before.Worked.Order.Where(k => k.Owner is "R" or "R1" or "R2" or "R3"), k => Assert.Equal(before.Worked[k], after.Worked[k]));
    }

    [Fact]
    public void Drawer_TakenOutOfTheText_ItsReadingIsAFinding()
    {
        string without = Changed(Bench, "            - {drawer: L3, front: 6}\n", "");
        Finding finding = Assert.Single(SetOut(without, "L3.box.as-built: 18 1/2 in").Findings, f => f.Code == "reading.no-quantity");
        Assert.Equal("L3", finding.Key);
    }

    /// <summary>A slip in a width takes parts away that come back when it is mended: nobody is told to void what was read of them.</summary>
    [Fact]
    public void Piece_StoppedByASlip_AsksForNoReadingToBeVoided()
    {
        SetPiece stopped = SetOut(Changed(Bench, "width: 78", "width: 20"), "L3.box.as-built: 18 1/2 in");
        Assert.True(stopped.IsStopped);
        Assert.DoesNotContain(stopped.Findings, f => f.Code == "reading.no-quantity");
    }

    [Fact]
    public void Front_CutUnderItsFigure_IsTakenUpByTheLowestFront()
    {
        // The top front came out 1/16 under: the fronts below it move up, and the lowest, which takes the rest, grows by as much.
        SetPiece before = Of(Bench), after = Of(Bench, "L1.front.height.as-cut: 3 15/16 in");
        Assert.Equal(before.Value("L4.front.height.to-cut") + Described.Of("1/16"), after.Value("L4.front.height.to-cut"));
        Assert.DoesNotContain(after.Findings, f => f.Code == "chain.open");
        Assert.Empty(SetPieceChecker.Violations(after));
    }
}
