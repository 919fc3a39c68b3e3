using Setout.Core.Measures.Text;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Shop.Edits;
using Setout.Shop.ShopEdits;
using Setout.Shop.Texts;
using Setout.Shop.Tests.SettingOut;

namespace Setout.Shop.Tests.Edits;

/// <summary>Which field of a form a refusal is about.</summary>
public class TypedWordsTests
{
    [Theory]
    [InlineData("K", "drawers", "count", "many", "count")]
    [InlineData("K", "drawers", "count", "", "count")]
    [InlineData("K", "across-at", "at", "wide", "at")]
    [InlineData("K", "across-at", "at", "12 by", "at")]
    [InlineData("F", "width", "size", "wide", "size")]
    [InlineData("F", "case-beside", "width", "1/0", "width")]
    [InlineData("carcase", "thickness", "size", "thick", "size")]
    // It changes nothing: no field is to blame.
    [InlineData("L2", "front", "front", "5", "")]
    public void Refused_ForWhatWasTypedIntoOneField_NamesIt(string key, string choice, string field, string typed, string blamed)
    {
        string text = Sample.Text(Sample.Bench);
        SetPiece set = RandomEditsTests.SetOut(text);
        EditChoice offered = Choices.For(set, key, ShopText.Read(Sample.Text("shop.yaml")).Value!).First(c => c.Id == choice);
        var values = new Dictionary<string, string> { [offered.Fields.Any(f => f.Name == field) ? field : offered.Fields[0].Name] = typed };
        Assert.Equal(blamed, offered.ApplyTo(values, text, EditBench.Empty).Findings[0].Field);
    }

    /// <summary>What cannot be read is wrong in each field that it stands in.</summary>
    [Fact]
    public void Refused_ForTheSameSlipInTwoFields_NamesBoth()
    {
        string text = Sample.Text(Sample.Bench);
        EditChoice offered = Choices.For(RandomEditsTests.SetOut(text), "F", ShopText.Read(Sample.Text("shop.yaml")).Value!).First(c => c.Id == "case-beside");
        var values = new Dictionary<string, string> { ["height"] = "wide", ["depth"] = "wide" };
        Assert.Equal([("height", "'wide' is not a figure."), ("depth", "'wide' is not a figure.")], offered.ApplyTo(values, text, EditBench.Empty).Findings.Select(f => (f.Field, f.Words)));
    }

    [Theory]
    [InlineData("96 by", "12", "size")]
    [InlineData("96 x 48", "dear", "price")]
    [InlineData("12", "12", "size")]
    public void RefusedByTheShop_NamesTheField(string size, string price, string blamed)
    {
        string text = Sample.Text("shop.yaml");
        ShopChoice offered = ShopChoices.For(text, "stock").Single(c => c.Id == "add-stock-panel");
        var values = new Dictionary<string, string> { ["panel"] = "birch plywood", ["label"] = "1/2", ["size"] = size, ["price"] = price };
        Edited refused = offered.ApplyTo(values, text).Edited;
        Assert.False(refused.IsDone);
        // The same words in two fields are told apart by what they were typed for.
        Assert.Equal(blamed, Assert.Single(refused.Findings).Field);
    }

    [Fact]
    public void Refused_ForAFigureThatWasGivenItsUnit_NamesTheField()
    {
        string text = Sample.Text("shop.yaml");
        ShopChoice offered = ShopChoices.For(text, "stock").Single(c => c.Id == "add-stock-panel").For(LengthUnit.Inch, LengthUnit.Millimetre);
        var values = new Dictionary<string, string> { ["panel"] = "birch plywood", ["label"] = "12", ["size"] = "0 x 1220" };
        Edited refused = offered.ApplyTo(values, text).Edited;
        Assert.False(refused.IsDone);
        Assert.Equal("size", refused.Findings[0].Field);
    }
}
