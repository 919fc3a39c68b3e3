using System.Text.RegularExpressions;
using Setout.Core.Workings;
using Setout.Shop.Plans;
using Setout.Shop.Runs;
using Setout.Shop.Tests.Plans;

namespace Setout.Shop.Tests.Runs;

/// <summary>What no saw of a shop can make stops the plan, and what is said to help does.</summary>
public partial class RunFindingsTests
{
    private const string Sheets = "{panel: hardwood plywood, label: 18 mm, size: 2440 x 1220, price: 60}";
    private const string Ply = "ply: {panel: hardwood plywood, label: 18 mm, thickness: 18, grain: keep}";

    [GeneratedRegex(@"straight edge of at least ([0-9.]+ mm)")]
    private static partial Regex Edge();

    public static TheoryData<string, string, string> Cases => new()
    {
        // Nothing trues the raw edge.
        { "run.nothing-trues", "guided: no", "- {part: a, of: ply, count: 2, length: 600, width: 400}" },
        { "run.nothing-trues", "guided: {longest: 2000}", "- {part: a, of: ply, count: 2, length: 600, width: 400}" },
        // 5 mm between fence and blade, where a carrier needs 6.35.
        { "run.too-narrow", "guided: {longest: 2400}, sled: no", "- {part: a, of: ply, count: 2, length: 2420, width: 5}" },
        // A rip of 900 mm: further than the fence goes, longer than the straight edge.
        { "run.too-large", "guided: {longest: 2400}, sled: no", "- {part: a, of: ply, length: 2410, width: 900}" },
        // A strip of 100 x 50: its 50 mm would lie at the fence, 100 mm from the blade.
        { "run.against-fence", "guided: {longest: 40}, sled: no", "- {part: a, of: ply, count: 20, length: 100, width: 50}" },
    };

    private static Plan Make(string saws, string parts, string code)
    {
        // True stock, where the truing is not what is asked.
        string stock = code == "run.nothing-trues" ? Sheets : Sheets.Replace("price: 60", "price: 60, trim: 0", StringComparison.Ordinal);
        return RippedBoardTests.Make(Ply, parts, stock, $"kerf: {{sheets: 3}}\nlift: 200 kg\nsaws: {{{saws}}}\n");
    }

    [Theory, MemberData(nameof(Cases))]
    public void Of_AShopWithoutTheSaw_StopsWithARemedyThatWorks(string code, string saws, string parts)
    {
        Plan plan = Make(saws, parts, code);
        Finding[] told = [.. plan.Findings.Where(f => f.Code.StartsWith("run.", StringComparison.Ordinal))];
        Assert.NotEmpty(told);
        Assert.All(told, f => Assert.Equal((code, Severity.Stop, "a"), (f.Code, f.Severity, f.Key)));
        Assert.All(told, f => Assert.True(f.Place.IsKnown));
        Assert.Contains(code, RunFindings.Codes);
        Assert.True(plan.IsStopped);
        string longest = told.Select(f => Edge().Match(f.Remedy).Groups[1].Value).MaxBy(v => double.Parse(v[..^3], System.Globalization.CultureInfo.InvariantCulture))!;
        Plan mended = Make($"guided: {{longest: {longest}}}{(saws.Contains("sled", StringComparison.Ordinal) ? ", sled: no" : "")}", parts, code);
        Assert.DoesNotContain(mended.Findings, f => f.Code == code);
    }

    /// <summary>Stock that is true already is no way out where what follows needs the hand-held saw too: it is told at the first stop, with the files.</summary>
    [Fact]
    public void Of_SheetsWithoutAHandHeldSaw_TellsWhatIsStoppedNext()
    {
        Plan plan = Make("guided: no, fence: {widest: 700}, sled: {deepest: 500}", "- {part: a, of: ply, count: 2, length: 600, width: 400}", "run.nothing-trues");
        Finding told = plan.Findings.First(f => f.Code == "run.nothing-trues");
        Assert.Contains("in the shop file; or write 'trim: 0' at its line of stock, in the file where that stands", told.Remedy, StringComparison.Ordinal);
        Assert.EndsWith("Without a hand-held saw the rest of the sheet must do with rips up to 700 mm wide and 2540 mm long at the fence and cuts up to 500 mm long on the sled; larger cuts are stopped next.", told.Remedy, StringComparison.Ordinal);
    }

    /// <summary>What is stopped once the first stop is mended is told with it: nobody mends twice.</summary>
    [Theory]
    [InlineData("guided: no, sled: no", "run.nothing-trues run.against-fence")] // edges and ends, then lengths
    [InlineData("guided: no, sled: {deepest: 300}", "run.nothing-trues run.against-fence")]
    [InlineData("guided: no, sled: no, fence: {widest: 300}", "run.nothing-trues run.too-large")]
    public void Of_AShopWithoutAGuidedSaw_TellsAllStopsAtOnce(string saws, string codes)
    {
        const string Parts = "- {part: a, of: ply, count: 2, length: 600, width: 400}";
        Finding[] told = [.. Make(saws, Parts, "run.nothing-trues").Findings.Where(f => f.Code.StartsWith("run.", StringComparison.Ordinal))];
        Assert.All(codes.Split(' '), c => Assert.Contains(told, f => f.Code == c));
        Assert.All(told, f => Assert.True(f.Severity == Severity.Stop && f.Remedy.Contains("in the shop file", StringComparison.Ordinal) && f.Remedy.Contains("(saws: guided: longest)", StringComparison.Ordinal)));
        // With sheets that are true no stop comes up that was not told.
        Plan trued = Make(saws, Parts, "run.too-large");
        Assert.NotEmpty(trued.Runs.Refusals);
        Assert.All(trued.Findings.Where(f => f.Code.StartsWith("run.", StringComparison.Ordinal)), f => Assert.Contains(told, t => t.Code == f.Code));
        // The straight edge that all of them ask for mends all.
        string longest = told.Select(f => Edge().Match(f.Remedy).Groups[1].Value).Where(v => v.Length > 0).MaxBy(v => double.Parse(v[..^3], System.Globalization.CultureInfo.InvariantCulture))!;
        Assert.Empty(Make(saws.Replace("guided: no", $"guided: {{longest: {longest}}}", StringComparison.Ordinal), Parts, "run.nothing-trues").Runs.Refusals);
    }

    /// <summary>Which limit stands in the way, and what it would have to be.</summary>
    [Theory]
    [InlineData("fence: {room: 1524}", "there is room for 1524 mm along the fence, it would be 2400 mm (saws: fence: room)")]
    [InlineData("fence: {widest: 40}", "the fence goes 40 mm from the blade, it would be 45 mm (saws: fence: widest)")]
    public void Of_ABoardThatTheFenceCannotTake_NamesTheLimit(string saws, string limit)
    {
        Plan plan = RippedBoardTests.Make("rail: {stick: ash, section: 45 x 20}", "- {part: a, of: rail, length: 900, count: 2}",
            "{stick: ash, section: 120 x 20, length: 2400, price: 9, rip: yes}", $"kerf: {{boards: 3, rips: 3}}\ntrim: {{boards: 0}}\nsaws: {{{saws}}}\n");
        Finding told = Assert.Single(plan.Findings, f => f.Code == "run.too-large");
        Assert.EndsWith($": {limit}.", told.Words, StringComparison.Ordinal);
        Assert.Contains("widest at least 45 mm, room at least 2400 mm", told.Remedy, StringComparison.Ordinal);
        Plan mended = RippedBoardTests.Make("rail: {stick: ash, section: 45 x 20}", "- {part: a, of: rail, length: 900, count: 2}",
            "{stick: ash, section: 120 x 20, length: 2400, price: 9, rip: yes}", "kerf: {boards: 3, rips: 3}\ntrim: {boards: 0}\nsaws: {fence: {widest: 45, room: 2400}}\n");
        Assert.DoesNotContain(mended.Findings, f => f.Code == "run.too-large");
    }

    [Theory]
    [MemberData(nameof(Sample.Data), MemberType = typeof(Sample))]
    public void Of_ASampleInItsShop_NothingIsRefused(string sample) => Assert.Empty(RunFindings.Of(Sample.Plan(sample)));
}
