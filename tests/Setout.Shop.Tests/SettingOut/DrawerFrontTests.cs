using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Testing;
using static Setout.Shop.Tests.SettingOut.DrawerPiece;
using static Setout.Shop.Tests.SettingOut.Sample;

namespace Setout.Shop.Tests.SettingOut;

/// <summary>Fronts over and in their opening of 16 x 10, graduated heights, and handles.</summary>
public class DrawerFrontTests
{
    private const string Three = "{drawer: D1}, {drawer: D2}, {drawer: D3}";

    [Fact]
    public void Inset_FrontsAndBox_AsWorkedByHand()
    {
        // Gap 1/16 all round (common practice, no source): 16 - 1/8 by 10 - 1/8. Depth 21 - 3/4 = 514.35 mm, less 2 mm and 3.175 mm: 509.175 mm, the 20 in slide.
        SetPiece set = Sound("fronts: inset");
        AssertValues(set, ("D.front.width.to-cut", "15 7/8"), ("D.front.height.to-cut", "9 7/8"), ("D.slide.usable", "509.175 mm"), ("D.side.length.to-cut", "20"), ("D.slot", "9 7/8"));
        Placement front = set.Place("D.front"), side = set.Place("D.side");
        Assert.Equal((Described.Of("0"), Described.Of("13/16"), Described.Of("13/16")), (front.Y, front.X, front.Z));
        Assert.Equal(Described.Of("3/4"), side.Y);
        Assert.Contains(set.Steps, s => s.Stage == Stage.Fronts && s.Words.Contains("flush with the face", StringComparison.Ordinal));
    }

    [Fact]
    public void Inset_Metric_KeepsTwoMillimetres() => AssertValues(Sound("fronts: inset", "{drawer: D, box height: 140}", unit: "mm"), ("C.opening.front-gap", "2 mm"), ("D.front.width", "402.4 mm"));

    [Fact]
    public void Inset_OpeningReadNarrower_FrontsFollow()
    {
        // Inset fronts must go in where it is narrowest; those over the face go by the face.
        AssertValues(SetOut(Written("fronts: inset"), "C.opening.width: 15 15/16 in"), ("D.front.width.to-cut", "15 13/16"));
        SetPiece over = Out(""), read = SetOut(Written(""), "C.opening.width: 15 15/16 in");
        Assert.Equal(over.Value("D.front.width"), read.Value("D.front.width"));
    }

    [Theory]
    // The shortest slide is 10 in = 254 mm; with 19.05 + 2 + 3.175 mm it wants 278.225 mm, and without the front 259.175 mm.
    [InlineData("inset", "278.225 mm", null)]
    [InlineData("inset", "278.22499375 mm", "slide.none-fits")]
    [InlineData("overlay", "259.175 mm", null)]
    [InlineData("overlay", "259.17499375 mm", "slide.none-fits")]
    public void Inset_WithoutRoomBehindTheFront_IsFound(string fronts, string depth, string? code)
    {
        SetPiece set = SetOut(Written($"fronts: {fronts}", depth: fronts == "inset" ? "10 15/16 in" : "10 3/16 in"), $"C.opening.depth: {depth}");
        Assert.Equal(code is null ? null : (code, Severity.Stop), Only(set));
        if (code is not null && fronts == "inset") Assert.Contains("inset ones take their thickness", set.Findings.Single(f => f.Code == code).Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void HalfOverlay_LiesOverHalfTheEdgeLessHalfTheGap()
    {
        // (3/4 - 1/8) / 2 = 5/16 over each edge: 16 + 5/8 by 10 + 5/8.
        SetPiece set = Sound("fronts: half overlay");
        AssertValues(set, ("D.front.width.to-cut", "16 5/8"), ("D.front.height.to-cut", "10 5/8"));
    }

    [Theory]
    // Overlay 0, so the fronts cover 10; less two gaps of 1/8: 9 3/4. A ratio of 4:5:6: 2.6 = 166.4/64, to 166/64; 3.25; the lowest takes 9.75 - 2.59375 - 3.25.
    [InlineData("4:5:6", Three, "2 19/32", "3 1/4", "3 29/32")]
    // By a step of 1/2 round the equal share of 3 1/4.
    [InlineData("1/2", Three, "2 3/4", "3 1/4", "3 3/4")]
    // 7 parts: 1.392857 = 89.14/64; named, the middle one takes 9.75 - 4.171875 - 4.171875; 3/7 of 9.75 = 4.178571 = 267.4/64, to 267/64.
    [InlineData("3:1:3", "{drawer: D1}, {drawer: D2, front: rest}, {drawer: D3}", "4 11/64", "1 13/32", "4 11/64")]
    public void Graduated_Heights_CloseExactly(string by, string drawers, string first, string second, string third)
    {
        SetPiece set = Out("overlay: 0, slide: {room: 0}, groove up: 1/4", drawers, $"graduated: {by}");
        AssertValues(set, ("D1.front.height.to-cut", first), ("D2.front.height.to-cut", second), ("D3.front.height.to-cut", third));
        Assert.Equal(Described.Of("10"), set.Value("D1.front.height.to-cut") + set.Value("D2.front.height.to-cut") + set.Value("D3.front.height.to-cut") + Described.Of("1/4"));
        Assert.All(set.Chains, c => Assert.Equal(0, c.Misfit(set.Worked)!.Value.Sign));
    }

    [Theory]
    [InlineData("graduated: 4:5", Three, "front.ratio-count")]
    [InlineData("graduated: 4:5:6", "{drawer: D1, front: 3}, {drawer: D2}, {drawer: D3}", "front.height-and-graduated")]
    [InlineData("graduated: 4:5:6", "{drawer: D1, front: rest}, {drawer: D2, front: rest}, {drawer: D3}", "sharing.two-rests")]
    [InlineData("graduated: 4", Three, "sharing.too-much")] // 3 1/4 less 4 for the first
    public void Graduated_ThatCannotBe_IsOneFinding(string bank, string drawers, string code) => Assert.Equal((code, Severity.Stop), Only(Out("overlay: 0", drawers, bank)));

    [Theory]
    [InlineData("4:0:6")]
    [InlineData("4::6")]
    [InlineData("a:b:c")]
    [InlineData("1:1001:1")]
    public void Graduated_NoRatio_IsAMistakeOfTheText(string ratio) =>
        Assert.Equal("text.wanted-ratio", Assert.Single(Shop.Texts.PieceText.Read(Written("", Three, $"graduated: \"{ratio}\"")).Findings).Code);

    [Fact]
    public void Handles_Centred_AreInTheMiddleOfEachFront()
    {
        // Fronts 15 7/8 by 9 7/8: holes 3 apart begin (15 7/8 - 3) / 2 = 6 7/16 in, 4 15/16 down.
        SetPiece set = Sound("fronts: inset, handles: {of: bar of brass, apart: 3}");
        AssertValues(set, ("D.handle.across", "6 7/16"), ("D.handle.down", "4 15/16"), ("D.handle.apart", "3"), ("D.handle.hole", "5 mm"));
        Assert.Contains(set.Hardware, h => h is { Name: "bar of brass", Count: 1 });
        Assert.Contains("two holes", set.Cut("D.front", "Drill").Words, StringComparison.Ordinal);
    }

    [Fact]
    public void Handles_InLine_AreAsFarDownOnFrontsOfAnyHeight()
    {
        SetPiece set = Out("overlay: 0, handles: {of: knob, place: in line, from top: 1 1/4}", Three, "graduated: 4:5:6");
        Assert.Null(Only(set));
        AssertValues(set, ("D1.handle.down", "1 1/4"), ("D2.handle.down", "1 1/4"), ("D3.handle.down", "1 1/4"), ("D1.handle.across", "8"));
        AssertValues(Out("handles: {of: knob, place: in line}"), ("D.handle.down", "2"));
    }

    [Theory]
    // Half a hole of 1/4 from the edge of a front 9 7/8 high: 9 3/4 down at most, less a tick.
    [InlineData("from top: 9.7499", "handle.off-box", Severity.Warn)]
    [InlineData("from top: 9 3/4", "handle.off-front", Severity.Stop)]
    [InlineData("apart: 15 5/8", "handle.off-front", Severity.Stop)] // (15 7/8 - 15 5/8) / 2 = 1/8, half a hole
    [InlineData("apart: 15.6249", "handle.off-box", Severity.Warn)]
    [InlineData("apart: 4", null, Severity.Note)]
    public void Handles_OffTheirFront_AreFound(string where, string? code, Severity severity) =>
        Assert.Equal(code is null ? null : (code, severity), Only(Out($"fronts: inset, handles: {{of: knob, hole: 1/4, {where}}}")));
}
