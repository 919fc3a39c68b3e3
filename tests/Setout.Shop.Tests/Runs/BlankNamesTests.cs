using System.Collections.Immutable;
using Setout.Cutting.Runs;
using Setout.Cutting.Sheets;
using Setout.Drawing.Breakdowns;
using Setout.Shop.Drawings;
using Setout.Shop.Plans;
using Setout.Shop.Runs;
using Setout.Shop.Tests.Plans;
using Setout.Shop.Tests.Rack;

namespace Setout.Shop.Tests.Runs;

public class BlankNamesTests
{
    /// <summary>Whoever reads a name at the saw finds one piece of wood that bears it: at any time no two do, and no part is marked so.</summary>
    [Theory]
    [MemberData(nameof(Sample.Data), MemberType = typeof(Sample))]
    public void Of_ASample_AtAnyTimeEachNameIsOnePieceOfWood(string sample)
    {
        Plan plan = Sample.Plan(sample);
        var names = BlankNames.Of(plan);
        ImmutableArray<RunBlank> blanks = plan.Runs.Blanks;
        HashSet<string> marks = [.. plan.Set.Parts.Select(p => p.Mark)];
        var there = blanks.DistinctBy(b => (b.Material, b.Stock)).Select(b => b.Id).ToHashSet();
        Look();
        foreach (RunCut cut in plan.Runs.Runs.SelectMany(r => r.Cuts))
        {
            Assert.True(there.Remove(cut.Blank));
            foreach (int id in new[] { cut.Off, cut.Rest }.OfType<int>()) there.Add(id);
            Look();
        }

        void Look()
        {
            string[] named = [.. there.Where(id => blanks[id].Use is BlankUse.Stock or BlankUse.Work or BlankUse.Keep or BlankUse.Waiting).Select(names.Spoken)];
            Assert.DoesNotContain("", named);
            Assert.Equal(named.Length, named.Distinct().Count());
            Assert.DoesNotContain(named, marks.Contains);
        }
    }

    [Theory]
    [MemberData(nameof(Sample.Data), MemberType = typeof(Sample))]
    public void Of_ASample_PartsAreCalledByTheirMarks(string sample)
    {
        Plan plan = Sample.Plan(sample);
        var names = BlankNames.Of(plan);
        Assert.All(plan.Runs.Runs.SelectMany(r => r.Cuts).SelectMany(c => new[] { c.Off, c.Rest }).OfType<int>().Where(id => plan.Runs.Blanks[id].Use == BlankUse.Part),
            id => Assert.Equal(plan.Set.Parts.First(p => p.Key == plan.Runs.Blanks[id].PartId).Mark, names[id]));
    }

    /// <summary>The drawings say the same letters, counted through all materials.</summary>
    [Theory]
    [MemberData(nameof(Sample.Data), MemberType = typeof(Sample))]
    public void Of_ASample_SheetsHaveTheLettersOfTheirDrawings(string sample)
    {
        Plan plan = Sample.Plan(sample);
        string[] drawn = [.. plan.Sheets.SelectMany(s => MarkingOut.Of(plan, s, new BreakdownPaper(260, 180))).Select(m => m.Name.Split("sheet ")[1])];
        string begun = string.Concat(plan.Set.Parts.Select(p => p.Mark[0]));
        Assert.Equal(Enumerable.Range(0, 26).Select(i => $"{(char)('A' + i)}").Where(l => !begun.Contains(l, StringComparison.Ordinal)).Take(drawn.Length), drawn);
        var names = BlankNames.Of(plan);
        Assert.Equal(drawn, plan.Runs.Blanks.DistinctBy(b => (b.Material, b.Stock)).Where(b => names.IsSheet(b.Material)).Select(b => names[b.Id]));
    }

    /// <summary>On chalk a point is nothing, and numbers are all alike: no wood is called as a part is marked, nor as one without its point.</summary>
    [Theory]
    [MemberData(nameof(Sample.Data), MemberType = typeof(Sample))]
    public void Of_ASample_NoNameIsAMarkOrBeginsAsOne(string sample)
    {
        Plan plan = Sample.Plan(sample);
        var names = BlankNames.Of(plan);
        HashSet<string> marks = [.. plan.Set.Parts.Select(p => p.Mark)];
        HashSet<string> numbers = [.. marks.Where(m => m.All(char.IsAsciiDigit))], letters = [.. marks.Where(m => char.IsAsciiLetterUpper(m[0])).Select(m => m[..1])];
        int seen = 0;
        foreach (RunBlank blank in plan.Runs.Blanks.Where(b => b.Use != BlankUse.Part && names[b.Id].Length > 0))
        {
            string name = names[blank.Id], of = names.OfStock(blank.Material, blank.Stock);
            Assert.DoesNotContain(name.Replace(".", "", StringComparison.Ordinal), marks);
            Assert.DoesNotContain(of, numbers);
            Assert.DoesNotContain(of, letters);
            seen++;
        }
        Assert.True(seen > 0);
    }

    /// <summary>Some runs cut, then a plan anew: what is chalked on wood in hand stays true, and nothing new is called so.</summary>
    [Fact]
    public void Of_APlanAfterSomeRuns_WoodInHandKeepsItsNameAndNothingNewHasIt()
    {
        var shop = new SawnShop(Sample.Source("plan-chest"));
        Plan before = shop.Plan();
        var sawn = SawnPlan.Of(before);
        foreach (Run run in before.Runs.Runs.Take(4)) Assert.Null(shop.Mark(before, sawn, run.Number));
        // Off the log itself: what run and plan are called follows the chalked name.
        string[] chalked = [.. shop.Blanks.Select(b => b[..b.LastIndexOf("-r", StringComparison.Ordinal)])];
        Assert.Contains(chalked, c => c.Contains('.', StringComparison.Ordinal));
        Plan after = shop.Plan();
        var names = BlankNames.Of(after);
        int kept = 0;
        for (int m = 0; m < after.Sheets.Length; m++)
        {
            ImmutableArray<LaidSheet> laid = after.Sheets[m].Outcome.Layout.Sheets;
            for (int i = 0; i < laid.Length; i++)
            {
                StockLine line = after.Sheets[m].Stock.First(s => s.Id == laid[i].StockId);
                if (!line.IsBlank)
                {
                    Assert.DoesNotContain(chalked, c => c.StartsWith(names.OfStock(m, i), StringComparison.Ordinal));
                    continue;
                }
                Assert.Equal(line.Size.Name[..line.Size.Name.LastIndexOf("-r", StringComparison.Ordinal)], names.OfStock(m, i));
                kept++;
            }
        }
        Assert.True(kept > 0);
        // Pieces of it: none is called as any wood that stands about.
        Assert.All(after.Runs.Blanks.Where(b => b.Use is BlankUse.Work or BlankUse.Keep or BlankUse.Waiting && names[b.Id] != names.OfStock(b.Material, b.Stock)), b => Assert.DoesNotContain(names[b.Id], chalked));
    }

    /// <summary>A short name is chalked on the wood already; a long one is for the list of stock.</summary>
    [Theory]
    [InlineData("K7", "K7")]
    [InlineData("shelf end", "A")]
    [InlineData("1", "A")]
    public void Of_AnOffcutOfTheRack_KeepsAShortNameThatIsNoMark(string name, string expected)
    {
        (PieceSource? source, var findings) = PieceSource.Read(
            "setout: 1\nname: box\nunit: mm\nmaterials:\n  ply: {panel: birch plywood, label: 12 mm}\nparts:\n  - {part: lid, of: ply, length: 300, width: 200}\n", null,
            $"setout-shop: 1\nunit: mm\ntrim: {{sheets: 0}}\nstock:\n  - {{panel: birch plywood, label: 12 mm, size: 400 x 300, have: 1, name: {name}}}\n");
        Assert.Empty(findings);
        Plan plan = Sample.Make(source!);
        Assert.Equal(expected, BlankNames.Of(plan).OfStock(0, 0));
    }
}
