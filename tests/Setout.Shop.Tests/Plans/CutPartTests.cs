using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Shop.Plans;

namespace Setout.Shop.Tests.Plans;

/// <summary>A part that is cut is a fact: its figure stands, what is not cut yet goes by it, and it needs no stock any more.</summary>
public sealed class CutPartTests
{
    private const string CutThenRead = """
        setout-log: 1
        entries:
          - {id: a, at: "2026-03-02T09:00:00Z", read: L.width, values: [19 1/2 in]}
          - id: b
            at: "2026-03-02T10:00:00Z"
            cut: [L3.end]
            figures:
              - {of: L3.end.length, is: 17 17/32 in}
              - {of: L3.end.width, is: 5 1/2 in}
          - {id: c, at: "2026-03-02T11:00:00Z", read: L.width, values: [19 7/16 in]}
        """;

    private static Plan Make(string log) => Sample.Make(Sample.Source(Sample.Text("luthiers-bench"), log));

    private static string ToCut(Plan plan, string key) =>
        Core.Measures.Text.LengthFormat.Inch.Text(plan.Set.Worked[new QuantityKey(key).ToCut]);

    [Fact]
    public void Make_OpeningReadNarrowerAfterThePartWasCut_ThePartStandsAndItsBottomGoesByIt()
    {
        Plan plan = Make(CutThenRead);
        Assert.Equal("17 17/32 in", ToCut(plan, "L3.end.length"));
        // 17 17/32 + 2 x 7/32 - 1/16: the bottom of the box that is there; the other drawers are 1/16 narrower.
        Assert.Equal("17 29/32 in", ToCut(plan, "L3.bottom.width"));
        Assert.Equal("17 27/32 in", ToCut(plan, "L2.bottom.width"));
        Finding differs = Assert.Single(plan.Findings, f => f.Code == "part.cut-differs");
        Assert.Equal(("L3.end", Severity.Warn), (differs.Key, differs.Severity));
        Assert.Contains("1/16 in more", differs.Remedy, StringComparison.Ordinal);
        Assert.False(plan.IsStopped);
    }

    [Fact]
    public void Make_PartMarkedCut_LeavesTheLayoutsAndComesBackWhenVoided()
    {
        static int Laid(Plan plan, string part) => plan.Sheets.SelectMany(s => s.Instance.Parts).Where(p => p.Id == part).Sum(p => p.Count);
        Assert.Equal(0, Laid(Make(CutThenRead), "L3.end"));
        Assert.Equal(2, Laid(Make(CutThenRead), "L3.side"));
        Assert.Equal(1, Laid(Make(CutThenRead.Replace("cut: [L3.end]", "cut: [\"L3.end#2\"]", StringComparison.Ordinal)), "L3.end"));
        string voided = CutThenRead + "\n  - {id: d, at: \"2026-03-02T12:00:00Z\", void: b}";
        Assert.Equal(2, Laid(Make(voided), "L3.end"));
        Assert.Equal("17 15/32 in", ToCut(Make(voided), "L3.end.length"));
    }

    [Fact]
    public void SetOut_DrawersOfAnOpeningNotRead_AreHeldAndReleasedByItsReading()
    {
        SetPiece unread = Sample.Plan("luthiers-bench").Set, read = Make(CutThenRead).Set;
        static IEnumerable<string> Held(SetPiece set) => set.Parts.Where(set.IsHeld).Select(p => p.Key[..1]).Distinct().Order();
        Assert.Equal(["L", "R"], Held(unread));
        Assert.Equal(["R"], Held(read));
        Assert.DoesNotContain(unread.Parts, p => unread.IsHeld(p) && p.Role is not (PartRole.BoxSide or PartRole.BoxEnd or PartRole.BoxBottom or PartRole.FalseFront));
    }

    [Fact]
    public void Steps_OfEverySample_StandInAnOrderThatCanBeBuilt()
    {
        foreach (string name in Sample.Names)
        {
            Stage[] stages = [.. Sample.Plan(name).Set.Steps.Select(s => s.Stage)];
            Assert.Equal(stages.Order(), stages);
        }
        SetPiece chest = Sample.Plan("plan-chest").Set;
        int Of(string word) => chest.Steps.Select(s => s.Words).ToList().FindIndex(w => w.Contains(word, StringComparison.Ordinal));
        Assert.True(Of("Lay the back on") < Of("lay the chest top on") && Of("lay the chest top on") < Of("Read the clear width") && Of("Read the clear width") < Of("Box D1"), "back, top, reading, boxes");
    }

    [Fact]
    public void Case_HungByAThinBack_IsStopped()
    {
        string text = Sample.Text("jar-cabinet").Replace("back: thin", "back: bottoms", StringComparison.Ordinal);
        Finding stop = Assert.Single(Sample.Source(text, null).SetOut().Findings, f => f.Severity == Severity.Stop);
        Assert.Equal(("case.back-cannot-carry", "C"), (stop.Code, stop.Key));
        Assert.True(stop.Place.IsKnown);
    }
}
