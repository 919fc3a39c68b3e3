using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Testing;
using static Setout.Shop.Tests.SettingOut.DrawerPiece;
using static Setout.Shop.Tests.SettingOut.Sample;

namespace Setout.Shop.Tests.SettingOut;

/// <summary>
/// The corner joints of a box. Lengths of sides and ends are geometry, with L the length and B the width outside, t the thickness: ends B - 2t butted,
/// B - 2(t - d) let in by d, B where fingers or tails go through; sides L, or L less the lap of half-blind dovetails.
/// </summary>
public class DrawerCornerTests
{
    // B = 14 31/32, L = 20, t = 1/2. d: rabbet half of t (furniture-building book); dado a third, 1/6, down to 10/64 (common practice, no source);
    // tails two thirds, 1/3, down to 21/64 (furniture-building book), so that the lap is 32/64 - 21/64 = 11/64.
    [Theory]
    [InlineData("pocket", "20", "13 31/32")] // 14 31/32 - 1
    [InlineData("butt", "20", "13 31/32")]
    [InlineData("rabbet", "20", "14 15/32")] // 14 31/32 - 2 (1/2 - 1/4)
    [InlineData("dado", "20", "14 9/32")] // 14 31/32 - 2 (16/32 - 5/32) = 14 31/32 - 22/32
    [InlineData("lock rabbet", "20", "14 9/32")]
    [InlineData("box joint", "20", "14 31/32")]
    [InlineData("half-blind dovetail", "19 53/64", "14 31/32")] // 20 - 11/64
    [InlineData("through dovetail", "20", "14 31/32")]
    public void Lengths_OfEachJoint_AreThoseOfTheTable(string joint, string side, string end)
    {
        SetPiece set = Sound($"corners: {joint}");
        AssertValues(set, ("D.side.length.to-cut", side), ("D.end.length.to-cut", end));
        // All come to the same box outside and inside: 14 31/32 over all, a bottom of 13 31/32 + 2 x 1/4 - 1/16.
        AssertValues(set, ("D.box.as-built", "14 31/32"), ("D.play", "1/32"), ("D.bottom.width.to-cut", "14 13/32"));
        // Front to back 20 - 1 + 7/16; before a dado the back stands 1/2 further in.
        AssertValues(set, ("D.bottom.length.to-cut", joint == "dado" ? "18 15/16" : "19 7/16"));
        Joint corner = set.Joints.Single(j => j.Part == "D.end" && j.Against == "D.side");
        Assert.Equal(joint is not ("pocket" or "butt"), corner.Depth is not null);
    }

    [Fact]
    public void Rabbet_ItsCuts_HaveTheFiguresOfTheirParts()
    {
        SetPiece set = Sound("corners: rabbet, corner depth: 5/16");
        Assert.Equal([("depth", Described.Of("5/16")), ("width", Described.Of("1/2"))], set.Cut("D.side", "Rabbet across both ends").Figures.Select(f => (f.Name, set.Worked[f.Key])));
        AssertValues(set, ("D.end.length.to-cut", "14 19/32")); // 14 31/32 - 2 (16/32 - 10/32)
        Assert.Contains(set.Hardware, h => h.Name == "Pin or brad, 1 in"); // 3/16 left and 3/4 of bite: 15/16
    }

    [Fact]
    public void Dado_LeavesWoodBehindTheBack()
    {
        SetPiece set = Sound("corners: dado");
        Assert.Contains(set.Cut("D.side", "Dado across").Figures, f => f.Name == "left behind it" && set.Worked[f.Key] == Described.Of("1/2"));
        Placement back = set.Place("D.end", 1), side = set.Place("D.side");
        Assert.Equal(Described.Of("1/2"), side.Y + side.SizeY - back.Y - back.SizeY);
        Assert.Equal(Described.Of("5/32"), side.X + side.SizeX - back.X);
    }

    [Fact]
    public void LockRabbet_TongueAndDado_AreOneFigure()
    {
        // Tongue half of the end, 1/4 (common practice, no source); the dado is as wide, and 1/2 - 1/4 from the end of the side.
        SetPiece set = Sound("corners: lock rabbet");
        Assert.Equal([Described.Of("5/32"), Described.Of("1/4"), Described.Of("1/4")], set.Cut("D.side", "Dado").Figures.Select(f => set.Worked[f.Key]));
        Assert.Equal([Described.Of("1/4"), Described.Of("5/32"), Described.Of("1/4")], set.Cut("D.end", "tongue").Figures.Select(f => set.Worked[f.Key]));
    }

    [Theory]
    // Height over the finger meant, nearest odd number: 5 3/4 over 1/2 is 11 1/2, so 11; over 1/4 23; over 3/4 7 2/3, so 7.
    [InlineData("", 11)]
    [InlineData(", finger: 1/4", 23)]
    [InlineData(", finger: 3/4", 7)]
    public void BoxJoint_Fingers_CloseOverTheHeightExactly(string finger, int count)
    {
        SetPiece set = Sound($"corners: box joint{finger}");
        ExactLength one = set.Value("D.finger.width");
        Assert.Equal(Described.Of("5 3/4"), one * count);
        Assert.Contains($"{count} fingers", set.Cut("D.side", "Fingers").Words, StringComparison.Ordinal);
        ClosedChain chain = set.Chains.Single(c => c.TakesUp == new QuantityKey("D.finger.width"));
        Assert.Equal(0, chain.Misfit(set.Worked)!.Value.Sign);
    }

    [Fact]
    public void HalfBlind_LapAndTail_AreTheFront()
    {
        SetPiece set = Sound("corners: half-blind dovetail");
        Assert.Equal(Described.Of("1/2"), set.Value("D.corner.lap") + set.Value("D.corner.depth.to-cut"));
        Placement front = set.Place("D.end"), side = set.Place("D.side");
        Assert.Equal(Described.Of("11/64"), side.Y - front.Y);
        Assert.Equal(Described.Of("20"), side.Y + side.SizeY - front.Y);
    }

    [Theory]
    // A tick is 0.00000625 mm. Of 18 mm: two thirds are 12, a half is 9; at 18 nothing is left. A tick less of wood is as a tick past it.
    [InlineData("rabbet", "12 mm", "18 mm", null)]
    [InlineData("rabbet", "12 mm", "17.99999375 mm", Severity.Warn)]
    [InlineData("rabbet", "18 mm", "18.00000625 mm", Severity.Warn)]
    [InlineData("rabbet", "18 mm", "18 mm", Severity.Stop)]
    [InlineData("dado", "9 mm", "18 mm", null)]
    [InlineData("dado", "9 mm", "17.99999375 mm", Severity.Warn)]
    [InlineData("lock rabbet", "9 mm", "18 mm", null)]
    [InlineData("lock rabbet", "9 mm", "17.99999375 mm", Severity.Warn)]
    [InlineData("half-blind dovetail", "12 mm", "18 mm", null)]
    [InlineData("half-blind dovetail", "12 mm", "17.99999375 mm", Severity.Warn)]
    [InlineData("half-blind dovetail", "18 mm", "18 mm", Severity.Stop)]
    public void Depth_PastWhatTheWoodAllows_IsFound(string joint, string depth, string side, Severity? expected)
    {
        SetPiece set = Out($"corners: {joint}, corner depth: {depth}", side: side, grid: "0.5 mm");
        Assert.Equal(expected is { } severity ? ("corner.too-deep", severity) : null, Only(set));
    }

    [Theory]
    [InlineData("1/8", null)] // 5 3/4 over 1/8 is 46: 45 or 47 fingers of about 1/8, a quarter of the side
    [InlineData("1/10", Severity.Warn)]
    public void BoxJoint_FingersTooThin_AreFound(string finger, Severity? expected)
    {
        // 45 fingers are 0.1278, over 1/8.
        SetPiece set = Out($"corners: box joint, finger: {finger}", drawers: "{drawer: D, box height: 5 5/8}");
        Assert.Equal(expected is { } severity ? ("corner.thin-fingers", severity) : null, Only(set));
    }

    [Theory]
    [InlineData("pocket")]
    [InlineData("rabbet")]
    [InlineData("dado")]
    [InlineData("lock rabbet")]
    [InlineData("box joint")]
    [InlineData("half-blind dovetail")]
    public void Lengths_InInchesAndInMillimetres_Agree(string joint)
    {
        string kind = $"corners: {joint}, slide: 20 in, gap: 1/8 in", drawers = "{drawer: D, box height: 5.75 in}";
        SetPiece inches = Sound(kind, drawers), metric = Sound(kind, drawers, unit: "mm");
        Assert.Equal(inches.Worked.Order.Select(k => (k, inches.Worked[k])), metric.Worked.Order.Select(k => (k, metric.Worked[k])));
    }

    [Fact]
    public void SideRead_RabbetedEnds_FollowIt()
    {
        // Read as 0.46 in: rabbet 0.23, down to 14/64 = 0.21875; ends 14.96875 - 2 (0.46 - 0.21875) = 14.48625, down to 14 31/64 = 14.484375.
        SetPiece set = SetOut(Written("corners: rabbet"), "thin.thickness: 0.46 in");
        AssertValues(set, ("D.corner.depth.to-cut", "7/32"), ("D.end.length", "14.48625"), ("D.end.length.to-cut", "14 31/64"));
        Assert.Equal(set.Value("D.box.as-built"), Described.Of("14 31/64") + (Described.Of("0.46") * 2) - Described.Of("7/16"));
    }
}
