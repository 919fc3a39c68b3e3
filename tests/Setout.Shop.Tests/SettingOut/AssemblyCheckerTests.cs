using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Testing;

namespace Setout.Shop.Tests.SettingOut;

/// <summary>The checker of the order itself: what cannot be done is refused, and the same in the right order is not.</summary>
public class AssemblyCheckerTests
{
    private const string Head = """
        setout: 1
        name: Spoilt
        unit: in
        materials:
          ply: {panel: hardwood plywood, thickness: 3/4}
          thin: {panel: hardwood plywood, thickness: 1/2}
          back: {panel: hardwood plywood, thickness: 1/4}
          oak: {stick: oak, section: 3/4 x 1 1/2}
          posts: {stick: pine, section: 1 1/2 x 3 1/2}
        drawers:
          box: {sides: thin, bottom: back, front: ply}
        doors:
          framed: {frame: {of: oak}, panel: back, lies: inset}
        assembly:

        """;

    private static SetPiece Out(string assembly)
    {
        SetPiece set = Sample.SetOut(Head + "  - {" + assembly + "}\n");
        Assert.False(set.IsStopped, string.Join("; ", set.Findings.Select(f => f.Words)));
        Assert.Empty(AssemblyChecker.Violations(set));
        return set;
    }

    /// <summary>Takes a part out of its step and puts it into one of its own after the last step of another part.</summary>
    private static SetPiece Later(SetPiece set, string part, string after)
    {
        AssemblyStep own = set.Steps.Single(s => s.Parts.Contains(part));
        List<AssemblyStep> steps = [.. set.Steps.Select(s => s == own ? s with { Parts = s.Parts.Remove(part) } : s)];
        int at = steps.FindIndex(s => s.Parts.Contains(after));
        steps.Insert(at + 1, own with { Words = $"{part} late", Parts = [part], Stage = steps[at].Stage, IsDry = false });
        return set with { Steps = [.. steps] };
    }

    private static void Refused(SetPiece set, string words) =>
        Assert.Contains(AssemblyChecker.Violations(set), v => v.Contains(words, StringComparison.Ordinal));

    private const string Case = "case: C, of: ply, width: 30, height: 30, depth: 20, back: back";

    [Fact]
    public void BottomInGrooves_AfterTheBoxIsClosed_IsRefused() =>
        Refused(Later(Out(Case + ", drawers: {like: box, down: [{drawer: D}]}"), "D.bottom", "D.end"), "D.bottom cannot go in");

    [Fact]
    public void BottomUnderAShortBack_AfterTheBoxIsClosed_GoesIn()
    {
        SetPiece set = Sample.SetOut((Head + "  - {" + Case + ", drawers: {like: box, down: [{drawer: D}]}}\n").Replace("front: ply}", "front: ply, bottom fit: slid in}", StringComparison.Ordinal));
        Assert.Empty(AssemblyChecker.Violations(Later(set, "D.bottom", "D.end")));
        // Under a back as high as the sides it does not.
        Part back = set.Parts.Single(p => p.Key == "D.back"), end = set.Parts.Single(p => p.Key == "D.end");
        Placement low = back.Placements[0] with { Z = end.Placements[0].Z, SizeZ = end.Placements[0].SizeZ };
        SetPiece spoilt = set with { Parts = set.Parts.Replace(back, back with { Placements = [low] }) };
        Refused(Later(spoilt, "D.bottom", "D.end"), "D.bottom cannot go in");
    }

    [Fact]
    public void PanelOfADoor_AfterItsFrameIsClosed_IsRefused() =>
        Refused(Later(Out(Case + ", doors: {like: framed, keys: [A]}"), "A.panel", "A.stile"), "A.panel cannot go in");

    [Fact]
    public void PanelOfAFrame_AfterItsPostsAreJoined_IsRefused()
    {
        SetPiece set = Out("frame: F, of: posts, width: 40, height: 34, depth: 24, toe: 4, corners: tenon, panels: {of: back, back: yes}, across: [{opening: A}]");
        Refused(Later(set, "F.end-panel", "F.post"), "F.end-panel#1");
        Refused(Later(set, "A.back-panel", "A.rail"), "A.back-panel cannot go in");
    }

    [Fact]
    public void TenonedRail_BetweenPostsThatStandFast_IsRefused()
    {
        SetPiece set = Out("frame: F, of: posts, width: 40, height: 34, depth: 24, toe: 4, corners: tenon, across: [{opening: A}]");
        // Once something holds both pairs of posts to one another, rails no longer go between their mortises: here in a stage after the carcase, where what stands is one body.
        AssemblyStep rails = set.Steps.Single(s => s.Parts.Contains("A.rail"));
        Refused(set with { Steps = set.Steps.Replace(rails, rails with { Stage = Stage.Inside }) }, "A.rail#1");
    }

    [Theory]
    [InlineData("", true)]
    [InlineData(", stopped before both edges", false)]
    public void ShelfInDadoes_AfterTheCaseIsClosed_GoesInOnlyWhereTheyRunThrough(string words, bool goes)
    {
        SetPiece set = Out(Case + ", shelves: {fit: dado, down: [S]}");
        set = Later(set with { Machinings = [.. set.Machinings.Select(m => m.Words.StartsWith("Dado", StringComparison.Ordinal) ? m with { Words = m.Words + words } : m)] }, "S", "C.side");
        Assert.Equal(goes, AssemblyChecker.Violations(set).Count == 0);
        if (!goes) Refused(set, "S cannot go in");
    }

    [Fact]
    public void BackInGrooves_AfterTheCaseIsClosed_IsRefused() =>
        Refused(Later(Out("case: C, of: ply, width: 30, height: 30, depth: 20, back: {of: back, fit: grooved}"), "C.back", "C.side"), "C.back cannot go in");

    [Fact]
    public void PartitionOnDowels_AfterTheCaseIsClosed_IsRefused() =>
        Refused(Later(Out(Case + ", dividers: dowels, across: [{opening: A}, {partition: P}, {opening: B}]"), "P", "C.side"), "P cannot go in");

    [Fact]
    public void Box_BehindAFrontThatIsThereAlready_IsRefused()
    {
        SetPiece set = Out(Case + ", drawers: {like: box, down: [{drawer: D}]}");
        AssemblyStep front = set.Steps.Single(s => s.Parts.Contains("D.front"));
        Refused(set with { Steps = [.. set.Steps.Where(s => s.Stage < Stage.Drawers), front, .. set.Steps.Where(s => s.Stage == Stage.Drawers)] }, "D cannot go in");
    }

    [Fact]
    public void PackingLongerThanTheWayIn_NotTipped_IsRefused()
    {
        SetPiece set = Out(Case + ", face frame: {of: oak, packing: posts}, drawers: {like: box, down: [{drawer: D}, {drawer: E}]}");
        AssemblyStep step = set.Steps.First(s => s.IsTipped);
        Refused(set with { Steps = set.Steps.Replace(step, step with { IsTipped = false }) }, "packing-");
        // Nor tipped, where what stands behind the frame is as shallow as the sticks are thick: the back brought forward to them.
        Part back = set.Parts.Single(p => p.Key == "C.back");
        ExactLength near = set.Parts.Single(p => p.Key == "C.opening.packing-left").Placements[0] is var upright ? upright.Y + upright.SizeY : ExactLength.Zero;
        SetPiece shallow = set with { Parts = set.Parts.Replace(back, back with { Placements = [back.Placements[0] with { Y = near }] }) };
        Assert.Empty(AssemblyChecker.Violations(set));
        Assert.NotEmpty(AssemblyChecker.Violations(shallow));
    }

    [Fact]
    public void Units_LeftOutTwiceOrTooEarly_AreRefused()
    {
        SetPiece set = Out(Case + ", drawers: {like: box, down: [{drawer: D}]}");
        AssemblyStep slides = set.Steps.Single(s => s.Whole.Contains("D")), box = set.Steps.Single(s => s.On == "D");
        Refused(set with { Steps = set.Steps.Remove(slides) }, "D is made and never comes in");
        Refused(set with { Steps = set.Steps.Remove(box) }, "D.side never comes in");
        Refused(set with { Steps = set.Steps.Remove(slides).Insert(set.Steps.IndexOf(box), slides) }, "D comes in before it is made");
        Refused(set with { Steps = set.Steps.Insert(0, box) }, "comes in twice");
    }
}
