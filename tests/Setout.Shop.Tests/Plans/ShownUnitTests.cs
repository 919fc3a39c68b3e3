using Setout.Core.Fit;
using Setout.Core.Measures.Text;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Shop.Plans;
using Setout.Shop.Runs;
using Setout.Shop.Texts;

namespace Setout.Shop.Tests.Plans;

/// <summary>One piece shown in two units is one piece: only words differ.</summary>
public sealed class ShownUnitTests
{
    private static LengthUnit Other(PieceSource source) => source.Piece.Unit == LengthUnit.Inch ? LengthUnit.Millimetre : LengthUnit.Inch;

    [Theory]
    [MemberData(nameof(Sample.Data), MemberType = typeof(Sample))]
    public void SetOut_InTheOtherUnit_EverySizeAndEverythingBoughtIsTheSame(string name)
    {
        PieceSource own = Sample.Source(name), shown = own.ShownIn(Other(own));
        SetPiece one = own.SetOut(), two = shown.SetOut();

        Assert.Equal(own.Hash, shown.Hash);
        Assert.Equal(one.Worked.Order, two.Worked.Order);
        Assert.All(one.Worked.Values, v => Assert.Equal(v.Value.Value, two.Worked[v.Key]));
        Assert.Equal(one.Parts.Select(p => (p.Key, p.Count)), two.Parts.Select(p => (p.Key, p.Count)));
        Assert.Equal(one.Hardware, two.Hardware);
        Assert.Equal(one.Findings.Select(f => (f.Code, f.Key, f.Severity)), two.Findings.Select(f => (f.Code, f.Key, f.Severity)));
        Assert.Same(own, own.ShownIn(null));
        Assert.Equal(own.Piece.Unit, shown.ShownIn(null).Piece.Shown);
    }

    /// <summary>What is cut at the saws is told by the same id, so that two people in two units mark the runs of one plan.</summary>
    [Theory]
    [MemberData(nameof(Sample.Data), MemberType = typeof(Sample))]
    public void Told_InTheOtherUnit_IsThePlanThatWasMade(string name)
    {
        Plan plan = Sample.Plan(name), told = plan.Told(plan.Source.ShownIn(Other(plan.Source)));

        Assert.Equal(SawnPlan.Of(plan).Id, SawnPlan.Of(told).Id);
        Assert.Equal(plan.Buying, told.Buying);
        Assert.Equal(plan.Findings.Select(f => (f.Code, f.Key, f.Severity)), told.Findings.Select(f => (f.Code, f.Key, f.Severity)));
        Assert.NotEqual(plan.Set.Piece.Shown, told.Set.Piece.Shown);
        Assert.Same(plan, plan.Told(plan.Source));
    }

    [Fact]
    public void WhatIsLetStand_InTheOtherUnit_StandsToo()
    {
        // A reading far off what is usual is told with its figure; it is let stand in the words of inches.
        const string Read = "setout-log: 1\nentries:\n  - id: e1\n    at: 2026-05-02T09:00:00+00:00\n    read: carcase.thickness\n    values: [25/32 in]\n";
        string text = Sample.Text("luthiers-bench");
        PieceSource before = Sample.Source(text, Read);
        Finding far = before.SetOut().Findings.First(f => f.Severity == Severity.Warn && f.Words.Contains(" in", StringComparison.Ordinal));
        var allow = new AllowEntry("e2", "2026-05-02T09:10:00+00:00", far.Code, far.Key, "it is what there is") { Said = LettingStand.Kept(far.Words) };
        PieceSource own = before with { Log = new(before.Log.Entries.Add(allow)) }, shown = own.ShownIn(LengthUnit.Millimetre);

        Finding one = own.SetOut().Findings.First(f => f.Code == far.Code && f.Key == far.Key), two = shown.SetOut().Findings.First(f => f.Code == far.Code && f.Key == far.Key);
        Assert.Equal("it is what there is", one.LetStand);
        Assert.Equal("it is what there is", two.LetStand);
        Assert.NotEqual(one.Words, two.Words);
        Assert.Contains(" mm", two.Words, StringComparison.Ordinal);
    }
}
