using System.Globalization;
using Setout.Cutting.Runs;
using Setout.Shop.Plans;
using Setout.Shop.Runs;
using Setout.Shop.Tests.Plans;
using Setout.Shop.Texts;

namespace Setout.Shop.Tests.Rack;

/// <summary>What the log calls the wood that a run left: the name that stands on the page, the run, and four signs of the plan.</summary>
public class LeftNameTests
{
    [Theory]
    [MemberData(nameof(Sample.Data), MemberType = typeof(Sample))]
    public void Of_EachRunOfASample_WoodIsCalledAsOnThePage(string sample)
    {
        var shop = new SawnShop(Sample.Source(sample));
        Plan plan = shop.Plan();
        var sawn = SawnPlan.Of(plan);
        foreach (Run run in sawn.Runs.Runs) Assert.Null(shop.Mark(plan, sawn, run.Number));
        LeftWood[] left = [.. shop.Source.Log.Entries.OfType<MarkEntry>().SelectMany(e => e.Left)];
        string[] onPages = [.. sawn.Runs.Runs.SelectMany(r => sawn.LeftBy(r).Where(b => b.Use is BlankUse.Keep or BlankUse.Work or BlankUse.Waiting)
            .Select(b => string.Create(CultureInfo.InvariantCulture, $"{sawn.Names[b.Id]}-r{r.Number}-{sawn.Id[..4]}")))];
        Assert.NotEmpty(left);
        Assert.Equal(onPages, left.Select(l => l.Name));
    }
}
