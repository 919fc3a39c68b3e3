using Setout.Core.SettingOut;
using Setout.Cutting.Runs;
using Setout.Shop.Plans;
using Setout.Shop.Runs;
using Setout.Shop.Tests.Plans;

namespace Setout.Shop.Tests.Runs;

/// <summary>Grooves and rabbets that are cut in long strips.</summary>
public class StripGroovesTests
{
    [Fact]
    public void Of_DoorsOfTheSewingCorner_StilesAndRailsAreGroovedInTheBoard()
    {
        Plan plan = Sample.Plan("sewing-corner");
        StripGroove groove = Assert.Single(StripGrooves.Of(plan), g => g.Parts.Any(p => p.Part == "D1.stile"));
        Assert.Equal(["D1.rail", "D1.stile", "D2.rail", "D2.stile"], groove.Parts.Select(p => p.Part).Order(StringComparer.Ordinal));
        string words = Assert.Single(RunWords.Of(plan).Runs.Single(r => r.Run.Number == groove.Before).Before);
        Assert.Contains("depth 3/8, width 1/4", words, StringComparison.Ordinal);
    }

    /// <summary>Followed from the parts: whatever came off a strip that was grooved has that groove from end to end, and none came off before it was.</summary>
    [Theory]
    [MemberData(nameof(Sample.Data), MemberType = typeof(Sample))]
    public void Of_ASample_AllThatComesOffAStripHasItsGroove(string sample)
    {
        Plan plan = Sample.Plan(sample);
        foreach (StripGroove groove in StripGrooves.Of(plan))
        {
            Assert.True(groove.After < groove.Before);
            var off = new HashSet<int>(groove.Strips);
            foreach (Run run in plan.Runs.Runs)
            {
                foreach (RunCut cut in run.Cuts.Where(c => off.Contains(c.Blank)))
                {
                    Assert.True(run.Number >= groove.Before);
                    off.UnionWith(new[] { cut.Off, cut.Rest }.OfType<int>());
                }
            }
            Machining[] whole = [.. plan.Set.Machinings.Where(m => m.IsWholeLength)];
            Assert.All(off.Select(id => plan.Runs.Blanks[id]).Where(b => b.Use == BlankUse.Part), b => Assert.Contains(whole, m => m.Part == b.PartId));
        }
    }

    [Fact]
    public void Of_GroovesThatStopShort_AreCutIntoTheParts()
    {
        Plan plan = Sample.Plan("sewing-corner");
        Assert.DoesNotContain(StripGrooves.Of(plan).SelectMany(g => g.Parts), m => m.Words.Contains("stopped", StringComparison.Ordinal));
        Assert.Contains(plan.Set.Machinings, m => m.Words.Contains("stopped", StringComparison.Ordinal));
    }
}
