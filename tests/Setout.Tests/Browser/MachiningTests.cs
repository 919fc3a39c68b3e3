using System.Text.RegularExpressions;
using Setout.Core.Craft;

namespace Setout.Tests.Browser;

/// <summary>The stage of cuts and holes.</summary>
public sealed class MachiningTests
{
    [Fact]
    public async Task Opening_ForAWell_HasItsOwnCautionBesideIt_AndAGrooveTheOneAbove()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        shop.Change("luthiers-bench", t => t.Replace("left: 1, right: 1}", "left: 1, right: 1}\n    wells:\n      - {well: W, machine: planer, bay: K, from front: 4, footprint: 14 x 10, table height: 5 1/4, bearers: studs}", StringComparison.Ordinal));
        string page = await shop.Client.GetStringAsync("/piece/luthiers-bench/machine");
        Assert.Contains("cut-groups", page, StringComparison.Ordinal);
        string[] cuts = [.. Regex.Matches(page, "<li>.*?</li>", RegexOptions.Singleline).Select(m => System.Net.WebUtility.HtmlDecode(m.Value))];
        Assert.Contains(Cautions.Of("cut-out").Words, Assert.Single(cuts, c => c.Contains("Opening of well W", StringComparison.Ordinal)), StringComparison.Ordinal);
        Assert.All(cuts.Where(c => c.Contains("Groove", StringComparison.Ordinal)), c => Assert.DoesNotContain("Caution", c, StringComparison.Ordinal));
        Assert.Contains("Groove a scrap first", page, StringComparison.Ordinal);
        Assert.Contains(Cautions.Deference, System.Net.WebUtility.HtmlDecode(page), StringComparison.Ordinal);
    }
}
