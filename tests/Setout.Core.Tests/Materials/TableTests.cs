using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Testing;

namespace Setout.Core.Tests.Materials;

public class TableTests
{
    [Fact]
    public void Panels_EveryRow_HasADefaultWithinItsLimitsAndASource() => Assert.All(PanelTable.All, p =>
    {
        Assert.True(p.Default.Sign > 0);
        Assert.NotEmpty(p.DefaultSource);
        Assert.NotEmpty(p.LimitsSource);
        Assert.Contains(p.Basis, new[] { "S", "T", "C", "M", "D" });
        Assert.Equal(p.Least is null, p.Most is null);
        if (p.Least is { } least && p.Most is { } most) Assert.True(least <= p.Default && p.Default <= most, $"{p.Kind} {p.Label}");
    });

    [Fact]
    public void Panels_KindAndLabel_AreUnique() => Assert.Equal(PanelTable.All.Length, PanelTable.All.Select(p => (p.Kind, p.Label)).Distinct().Count());

    [Fact]
    public void Sheets_EveryKindOnRecord_HasAUsualSize() => Assert.All(PanelTable.Kinds, k => Assert.NotEmpty(PanelTable.SizesOf(k)));

    [Theory]
    [InlineData("3/4")]
    [InlineData("3/4 in")]
    [InlineData("3/4\"")]
    public void Find_SameLabelInAnotherForm_IsTheSameRow(string label) => Assert.Equal(Described.Of("23/32"), PanelTable.Find("hardwood plywood", label)!.Default);

    [Theory]
    [InlineData("hardwood plywood", "7/8")]
    [InlineData("plank", "3/4")]
    [InlineData("birch plywood", "18 in")]
    public void Find_NotOnRecord_IsNull(string kind, string label) => Assert.Null(PanelTable.Find(kind, label));

    [Fact]
    public void Lumber_EveryRow_IsUnderItsNominalSize() => Assert.All(LumberTable.All, l =>
    {
        string[] nominal = l.Nominal.Split('x');
        Assert.True(l.Thickness < Described.Of(nominal[0]) && l.Width < Described.Of(nominal[1]), l.Nominal);
        Assert.True(l.Thickness <= l.Width, l.Nominal);
    });

    [Theory]
    [InlineData("2 x 4")]
    [InlineData("2x4")]
    public void Lumber_NameWithOrWithoutSpaces_IsFound(string name) => Assert.Equal((Described.Of("1 1/2"), Described.Of("3 1/2")), (LumberTable.Find(name)!.Thickness, LumberTable.Find(name)!.Width));

    [Theory]
    [InlineData("15/32", "1")]
    [InlineData("23/32", "1 1/4")]
    [InlineData("9/16", "1")] // as near to 1/2 as to 5/8: both take the same screw
    [InlineData("13/16", "1 1/4")] // as near to 3/4 as to 7/8: the thinner decides, so that no point comes through
    [InlineData("1 1/2", "2 1/2")]
    public void PocketScrew_StockBetweenRows_TakesTheNearestRowThinnerAtATie(string stock, string screw) =>
        Assert.Equal(Described.Of(screw), TradeRules.PocketScrewFor(Described.Of(stock))!.Value.Screw);

    [Theory]
    [InlineData("1/4")]
    [InlineData("2")]
    public void PocketScrew_StockFarFromAnyRow_IsNone(string stock) => Assert.Null(TradeRules.PocketScrewFor(Described.Of(stock)));

    [Fact]
    public void Rules_CommonPractice_IsCitedAsSuchAndOthersByTheirId()
    {
        Assert.Equal("common practice, no source", TradeRules.Get("SS7").Cited);
        Assert.EndsWith("(SS1)", TradeRules.Get("SS1").Cited, StringComparison.Ordinal);
        Assert.Throws<KeyNotFoundException>(() => TradeRules.Get("XX"));
    }

    [Fact]
    public void SlideSeries_BothUnits_RiseByEqualSteps()
    {
        foreach (string id in new[] { "SS5", "SS5M" })
        {
            ExactLength[] series = [.. TradeRules.Get(id).Series];
            Assert.Single(series.Zip(series.Skip(1), (a, b) => b - a).Distinct());
        }
    }

    [Fact]
    public void RemedyMinutes_EveryWork_TakesSomeTimeAndLessThanADay()
    {
        Assert.NotEmpty(RemedyMinutes.Works);
        Assert.All(RemedyMinutes.Works, w => Assert.InRange(RemedyMinutes.Of(w), 1, 480));
        Assert.Throws<KeyNotFoundException>(() => RemedyMinutes.Of("no such work"));
    }
}
