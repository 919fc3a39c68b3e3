using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Testing;
using static Setout.Shop.Tests.SettingOut.BenchLog;
using static Setout.Shop.Tests.SettingOut.Sample;

namespace Setout.Shop.Tests.SettingOut;

/// <summary>What a reading, its voiding or a mark comes to on the luthiers' bench.</summary>
public sealed class RippleTests
{
    private static string Way(FigureMoved figure) => string.Join(" -> ", figure.Through);

    private static string[] Keys(IEnumerable<Part> parts) => [.. parts.Select(p => p.Key)];

    private static readonly string[] s_left = ["L1", "L2", "L3", "L4"];

    [Fact]
    public void Opening_ReadA32ndUnder_MovesEndsAndBottomsOfItsBankThroughItsSlideLines()
    {
        Ripple ripple = Ripple.Of(After(Bench), After(Bench, Read("L.width", "19 17/32")));
        // Four ends and four bottoms, each kind on one line.
        Assert.Equal(8, ripple.Figures);
        Assert.Equal(2, ripple.Moved.Length);
        Assert.All(ripple.Moved, m => Assert.Equal((-Described.Of("1/32"), new QuantityKey("L.width"), 4), (m.By, m.From, m.Figures.Length)));
        MovedTogether ends = Assert.Single(ripple.Moved, m => m.Role == PartRole.BoxEnd);
        Assert.True(ends.IsLength);
        Assert.Equal(s_left.Select(l => $"L.width -> {l}.opening -> {l}.box.width -> {l}.end.length"), ends.Figures.Select(Way));
        // 19 9/16 - 1 - 1/32 - 2 x 15/32 = 17 19/32.
        Assert.Equal((Described.Of("17 19/32"), Described.Of("17 9/16")), (ends.Figures[2].Before, ends.Figures[2].After));
        FigureMoved bottom = ripple.Moved.Single(m => m.Role == PartRole.BoxBottom).Figures[0];
        Assert.Equal("L.width -> L1.opening -> L1.box.width -> L1.end.length -> L1.end.length.to-cut -> L1.end.length.as-cut -> L1.bottom.width", Way(bottom));
    }

    [Fact]
    public void Opening_Read_ReleasesItsBankAndNamesWhatStillWaits()
    {
        SetPiece before = After(Bench), after = After(Bench, Read("L.width", "19 9/16"));
        Ripple ripple = Ripple.Of(before, after);
        Assert.Empty(ripple.Moved);
        Assert.Equal(s_left.SelectMany(l => new[] { "side", "end", "bottom", "front" }.Select(p => $"{l}.{p}")).Order(), Keys(ripple.Released).Order());
        StillWaiting waits = Assert.Single(ripple.Waiting);
        Assert.Equal(("R.width", 12), (waits.Until.Text, waits.Parts.Length));
        Assert.All(waits.Parts, p => Assert.Equal('R', p.Key[0]));
        Assert.Equal(["L.width", "R.width"], Ripple.Of(before, before).Waiting.Select(w => w.Until.Text));
        // Taken back, they wait again.
        Assert.Equal(Keys(ripple.Released), Keys(Ripple.Of(after, After(Bench, Read("L.width", "19 9/16"), Void(0))).HeldAgain));
        // One slide line read releases its own drawer.
        Assert.Equal(["L2.bottom", "L2.end", "L2.front", "L2.side"], Keys(Ripple.Of(before, After(Bench, Read("L2.opening", "19 9/16"))).Released).Order());
    }

    [Fact]
    public void Depth_ReadShort_GoesThroughThePickOfTheSlides()
    {
        // 24 of depth takes a 22 in slide; 22 does not take it with setback and clearance: 20.
        Ripple ripple = Ripple.Of(After(Bench), After(Bench, Read("L.depth", "22")));
        MovedTogether sides = Assert.Single(ripple.Moved, m => m.Role == PartRole.BoxSide);
        Assert.Equal(-Described.Of("2"), sides.By);
        Assert.Equal("L.depth -> L1.slide.usable -> L1.slide.length -> L1.side.length", Way(sides.Figures[0]));
    }

    [Fact]
    public void Packing_PutInAndTakenOut_IsTheCauseBothTimes()
    {
        SetPiece before = After(Bench), after = After(Bench, Read("L2.packing", "1/16"));
        foreach ((Ripple ripple, int sign) in new[] { (Ripple.Of(before, after), -1), (Ripple.Of(after, before), 1) })
        {
            Assert.All(ripple.Moved, m => Assert.Equal((Described.Of("1/16") * sign, "L2.packing"), (m.By, m.From.Text)));
            Assert.Equal("L2.packing -> L2.box.width -> L2.end.length", Way(ripple.Moved.Single(m => m.Role == PartRole.BoxEnd).Figures[0]));
        }
    }

    [Fact]
    public void Part_CutToAnotherFigure_IsTheCauseOfWhatFollows()
    {
        // Ends cut 1/32 short: they and their bottom.
        Ripple ripple = Ripple.Of(After(Bench), After(Bench, Cut("L3.end", ("L3.end.length", "17 9/16"))));
        Assert.Equal(["L3.end.length.to-cut", "L3.end.length.to-cut -> L3.end.length.as-cut -> L3.bottom.width"], ripple.Moved.SelectMany(m => m.Figures).Select(Way));
        Assert.Contains(ripple.NewFindings, f => f.Code == "part.cut-differs");
        // What has just been cut is not to be cut once more.
        Assert.Empty(ripple.Released);
    }

    [Fact]
    public void Findings_NewAndGone_AreThoseOfTheReading()
    {
        SetPiece before = After(Bench), after = After(Bench, Read("carcase.thickness", "23/32"), Read("L2.box.as-built", "18 19/32"));
        Ripple ripple = Ripple.Of(before, after), back = Ripple.Of(after, before);
        // Both sheets and box as in the tests of readings: the sheet is read now, the box too wide.
        Assert.Equal("drawer.too-wide", Assert.Single(ripple.NewFindings).Code);
        Assert.Equal(("material.not-read", "carcase"), (Assert.Single(ripple.GoneFindings).Code, ripple.GoneFindings[0].Key));
        Assert.Equal((ripple.NewFindings.Length, ripple.GoneFindings.Length), (back.GoneFindings.Length, back.NewFindings.Length));
    }

    [Fact]
    public void Drawer_TakenOut_ItsPartsWent()
    {
        SetPiece before = After(Bench), after = Source(Changed(Bench, "            - {drawer: L3, front: 6}\n", "")).SetOut();
        Ripple ripple = Ripple.Of(before, after);
        Assert.Equal(["L3.front", "L3.side", "L3.end", "L3.bottom"], Keys(ripple.Went));
        Assert.Equal(Keys(ripple.Went), Keys(Ripple.Of(after, before).Came));
        // The lowest front, which takes the rest, grows by the 6 and a gap; nothing was read, so the way begins with what moved by itself.
        FigureMoved front = Assert.Single(ripple.Moved, m => m.Role == PartRole.FalseFront).Figures[0];
        Assert.Equal("L4.front.height", Way(front));
        // What stands on another line now is no new finding.
        Assert.Empty(ripple.NewFindings);
    }

    [Fact]
    public void Nothing_Changed_IsStill()
    {
        SetPiece set = After(Bench);
        Ripple ripple = Ripple.Of(set, After(Bench));
        Assert.Equal(0, ripple.Figures + ripple.Came.Length + ripple.Went.Length + ripple.Released.Length + ripple.HeldAgain.Length + ripple.NewFindings.Length + ripple.GoneFindings.Length);
    }
}
