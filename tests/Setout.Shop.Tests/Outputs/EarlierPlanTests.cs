using System.Collections.Immutable;
using System.Text;
using Setout.Core.Workings;
using Setout.Cutting.Sheets;
using Setout.Shop.Outputs;
using Setout.Shop.Plans;
using Setout.Shop.Tests.Plans;
using Setout.Shop.Texts;

namespace Setout.Shop.Tests.Outputs;

/// <summary>The layouts of an earlier plan: written, read back, and kept to.</summary>
public sealed class EarlierPlanTests
{
    private static string Json(Plan plan) => Encoding.UTF8.GetString(PlanJson.Write(plan));

    private static EarlierLayouts Layouts(Plan plan) => EarlierPlan.Read(Json(plan)).Value!;

    public static TheoryData<string> Names => Sample.Data;

    [Theory]
    [MemberData(nameof(Names))]
    public void Read_OfEachSample_GivesTheSameLayouts(string name)
    {
        Plan plan = Sample.Plan(name);
        EarlierLayouts read = Layouts(plan);
        Assert.Equal(plan.Sheets.Select(s => s.Material.Name).Order(StringComparer.Ordinal), read.ByMaterial.Keys);
        Assert.All(plan.Sheets, s => Assert.Equal(s.Outcome.Layout, read.Of(s.Material.Name)));
    }

    [Fact]
    public void KeepingTo_TheSamePlan_ChangesNothingHoweverOften()
    {
        Plan first = Sample.Plan("plan-chest");
        Plan second = Sample.Make(first.Source.KeepingTo(Layouts(first)));
        Assert.All(second.Sheets, s => Assert.Equal(0, s.Outcome.Score.Changed));
        Assert.NotEqual(first.Source.Hash, second.Source.Hash);
        Plan third = Sample.Make(first.Source.KeepingTo(Layouts(second)));
        Assert.Equal(Json(second), Json(third));
    }

    [Fact]
    public void KeepingTo_ALayoutOfTheSameCost_StaysWithIt()
    {
        // The same sheets in the reverse order with every division turned end for end are another layout of the same cost. A sheet that is parted beside the line first is
        // not: what the rough cut spares has its place. So nothing is too heavy here.
        (PieceSource? source, _) = PieceSource.Read(Sample.Text("plan-chest"), null, Sample.Text("shop").Replace("lift: 51 lb", "lift: 200 kg", StringComparison.Ordinal));
        Plan plan = Sample.Make(source!);
        EarlierLayouts usual = Layouts(plan);
        EarlierLayouts other = new(usual.ByMaterial.ToImmutableSortedDictionary(p => p.Key, p => Reversed(p.Value), StringComparer.Ordinal), "other");
        Plan kept = Sample.Make(plan.Source.KeepingTo(other));
        // What waits for a reading comes last in a sheet that is followed too, or it would hold back what does not: such a sheet does not stay turned end for end.
        SheetPlan[] ready = [.. kept.Sheets.Where(s => s.Outcome.Score.Changed == 0)];
        Assert.All(kept.Sheets.Except(ready), s => Assert.Contains(kept.Set.Parts, p => p.Material == s.Material.Name && kept.Set.IsHeld(p)));
        Assert.True(kept.Sheets.Sum(s => s.Outcome.Score.Changed) <= 1);
        Assert.All(ready, s => Assert.True(s.Outcome.Layout.Sheets.ToHashSet().SetEquals(other.Of(s.Material.Name)!.Sheets)));
        Assert.Equal(plan.Sheets.Select(s => s.Outcome.Score.Cost), kept.Sheets.Select(s => s.Outcome.Score.Cost));
    }

    [Theory]
    [InlineData("", "not JSON")]
    [InlineData("[]", "'version' is missing")]
    [InlineData("{\"version\": 99, \"sheets\": []}", "version is 99")]
    [InlineData("{\"version\": \"1\", \"sheets\": []}", "version is \"1\"")]
    [InlineData("{\"version\": 1}", "'sheets' is missing")]
    [InlineData("{\"version\": 1, \"sheets\": 3}", "'sheets' is no list")]
    [InlineData("{\"version\": 1, \"sheets\": [{\"material\": 4}]}", "'material' is no text")]
    [InlineData("{\"version\": 1, \"sheets\": [{\"material\": \"a\", \"layout\": []}, {\"material\": \"a\", \"layout\": []}]}", "'a' is there twice")]
    [InlineData("{\"version\": 1, \"sheets\": [{\"material\": \"a\", \"layout\": [{\"stock_id\": \"s\"}]}]}", "'cuts' is missing")]
    public void Read_OfSomethingElse_SaysWhatIsWrong(string text, string words) => Refused(text, words);

    [Theory]
    [InlineData("{\"kind\": \"hole\"}", "'hole' is no kind of place")]
    [InlineData("{\"kind\": \"part\", \"part\": \"p\", \"turned\": 1}", "'turned' is neither true nor false")]
    [InlineData("{\"kind\": \"rips\", \"dust\": 0, \"slices\": []}", "no slices")]
    [InlineData("{\"kind\": \"rips\", \"dust\": -1, \"slices\": [{\"size\": 3, \"holds\": {\"kind\": \"keep\"}}]}", "'dust' is no size")]
    [InlineData("{\"kind\": \"rips\", \"dust\": 0, \"slices\": [{\"size\": 1e30, \"holds\": {\"kind\": \"keep\"}}]}", "'size' is no size")]
    [InlineData("{\"kind\": \"rips\", \"dust\": 0, \"slices\": [{\"size\": 0.0000001, \"holds\": {\"kind\": \"keep\"}}]}", "'size' is no size")]
    public void Read_OfCutsThatAreNone_SaysWhatIsWrong(string cuts, string words) => Refused(WithCuts(cuts), words);

    [Fact]
    public void Read_NestedBeyondMeasure_IsRefusedAndNotOverrun()
    {
        string cuts = string.Concat(Enumerable.Repeat("{\"kind\":\"rips\",\"dust\":0,\"slices\":[{\"size\":1,\"holds\":", 100_000));
        Refused(WithCuts(cuts), "nested too deeply");
    }

    [Fact]
    public void KeepingTo_LayoutsOfPartsAndStockThatAreGone_PlansAsIfThereWereNone()
    {
        EarlierLayouts read = EarlierPlan.Read(WithCuts("{\"kind\": \"part\", \"part\": \"nobody\", \"turned\": true}").Replace("\"a\"", "\"birch\"", StringComparison.Ordinal)).Value!;
        Plan plan = Sample.Make(Sample.Source("jar-cabinet").KeepingTo(read));
        SheetPlan birch = plan.Sheets.Single(s => s.Material.Name == "birch");
        Assert.Equal(Sample.Plan("jar-cabinet").Sheets.Single(s => s.Material.Name == "birch").Outcome.Score.Cost, birch.Outcome.Score.Cost);
        Assert.Equal(birch.Outcome.Score.Sheets, birch.Outcome.Score.Changed);
    }

    // Five doors of which four fill a sheet, so that the second sheet has left-overs.
    private const string Doors = "setout: 1\nname: Try\nunit: mm\nmaterials:\n  ply: {panel: birch plywood, label: 18 mm}\nparts:\n  - {part: door, of: ply, count: 10, length: 600, width: 400}\n";

    private static PieceSource With(string shop) => PieceSource.Read(Doors, null, $"setout-shop: 1\nunit: mm\nkerf: {{sheets: 3}}\n{shop}").Source!;

    private const string Ply = "panel: birch plywood, label: 18 mm, size: 1213 x 813, trim: 5";

    private static string Stock(params string[] lines) => "stock:\n" + string.Concat(lines.Select(l => $"  - {{{Ply}, {l}}}\n"));

    [Theory]
    [InlineData("price: 60", "price: 60, name: Miller")]                     // a name is given
    [InlineData("price: 60", "have: 3")]                                     // bought
    [InlineData("price: 60", "have: 3, price: 60, name: birch")]
    [InlineData("price: 60, name: birch", "price: 60")]
    [InlineData("have: 3, name: a", "have: 3, name: b")]
    [InlineData("have: 3", "price: 60")]                                     // sold off the rack
    [InlineData("price: 60", "price: 60|have: 2")]                           // two are there, the third is still to buy
    [InlineData("price: 60", "have: 2|price: 60, name: Miller")]
    [InlineData("price: 60|have: 1, name: a", "price: 60|have: 1, name: a|have: 1, name: b")]
    public void KeepingTo_StockThatIsTheSameWoodUnderAnotherId_KeepsEverySheet(string then, string now)
    {
        Plan earlier = Sample.Make(With(Stock(then.Split('|'))));
        SheetPlan kept = Assert.Single(Sample.Make(With(Stock(now.Split('|'))).KeepingTo(Layouts(earlier))).Sheets);
        Assert.Equal((3, 0), (kept.Outcome.Score.Sheets, kept.Outcome.Score.Changed));
        Assert.Equal(earlier.Sheets[0].Outcome.Layout.Sheets.Select(s => s.Root).ToHashSet(), kept.Outcome.Layout.Sheets.Select(s => s.Root).ToHashSet());
        Assert.Empty(SheetChecker.Check(kept.Instance, kept.Outcome.Layout));
    }

    [Fact]
    public void KeepingTo_AnotherKeepRule_ChangesNoCut()
    {
        string stock = Stock("price: 60");
        SheetPlan earlier = Assert.Single(Sample.Make(With("keep: {sheets: 100 x 100}\n" + stock)).Sheets);
        SheetPlan kept = Assert.Single(Sample.Make(With("keep: {sheets: 1200 x 800}\n" + stock).KeepingTo(Layouts(Sample.Make(With("keep: {sheets: 100 x 100}\n" + stock))))).Sheets);
        Assert.Equal((3, 0), (kept.Outcome.Score.Sheets, kept.Outcome.Score.Changed));
        Assert.Contains(earlier.Outcome.Layout.Sheets, s => Holds(s.Root, n => n is KeepNode));
        Assert.DoesNotContain(kept.Outcome.Layout.Sheets, s => Holds(s.Root, n => n is KeepNode));
    }

    [Fact]
    public void KeepingTo_AnotherTrim_LaysAnew()
    {
        Plan earlier = Sample.Make(With(Stock("price: 60")));
        SheetPlan anew = Assert.Single(Sample.Make(With(Stock("price: 60").Replace("trim: 5", "trim: 4", StringComparison.Ordinal)).KeepingTo(Layouts(earlier))).Sheets);
        Assert.Equal(anew.Outcome.Score.Sheets, anew.Outcome.Score.Changed);
    }

    private static bool Holds(CutNode node, Func<CutNode, bool> what) => what(node) || (node is Division division && division.Slices.Any(s => Holds(s.Content, what)));

    private static string WithCuts(string cuts) =>
        "{\"version\": 1, \"sheets\": [{\"material\": \"a\", \"layout\": [{\"stock_id\": \"s\", \"cuts\": " + cuts + "}]}]}";

    private static void Refused(string text, string words)
    {
        TextRead<EarlierLayouts> read = EarlierPlan.Read(text);
        Assert.Null(read.Value);
        Finding stop = Assert.Single(read.Findings);
        Assert.Equal(("before.unreadable", Severity.Stop), (stop.Code, stop.Severity));
        Assert.Contains(words, stop.Words, StringComparison.Ordinal);
        Assert.NotEmpty(stop.Remedy);
    }

    private static SheetLayout Reversed(SheetLayout layout) => new([.. layout.Sheets.Reverse().Select(s => s with { Root = Reversed(s.Root) })], []);

    // What is cut off last must stay last: a left-over at the end of a division, and dust, keep their place.
    private static CutNode Reversed(CutNode node) => node is not Division division ? node : division with
    {
        Slices = [.. division.Slices.Where(s => s.Content is PartNode or Division).Reverse().Select(s => s with { Content = Reversed(s.Content) }), .. division.Slices.Where(s => s.Content is not (PartNode or Division))],
    };
}
