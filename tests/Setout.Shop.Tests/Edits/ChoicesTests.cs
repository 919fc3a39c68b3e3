using Setout.Core.SettingOut;
using Setout.Shop.Edits;
using Setout.Shop.Texts;
using Setout.Shop.Tests.SettingOut;

namespace Setout.Shop.Tests.Edits;

/// <summary>What is offered for what is chosen.</summary>
public class ChoicesTests
{
    private static readonly Shop.Texts.Shop s_shop = ShopText.Read(Sample.Text("shop.yaml")).Value!;

    private static string Ids(string sample, string key) => string.Join(' ', Choices.For(RandomEditsTests.SetOut(Sample.Text(sample)), key, s_shop).Select(c => c.Id));

    [Theory]
    [InlineData(Sample.Bench, "K", "size posts across-equal across-at down-equal down-at rails drawers well shelves doors opening-before opening-after take-out")]
    [InlineData(Sample.Bench, "L", "size posts drawer kind empty opening-before opening-after take-out")]
    [InlineData(Sample.Bench, "L2", "front drawer-above drawer-below up down kind take-out")]
    [InlineData(Sample.Bench, "L1.front", "front drawer-above drawer-below down kind take-out")]
    [InlineData(Sample.Bench, "M1", "move take-out")]
    [InlineData(Sample.Bench, "F", "name width height depth of of-new toe rails case-beside frame-beside take-out")]
    [InlineData(Sample.Bench, "T", "name of of-new overhang-front overhang-back overhang-left overhang-right edging-new well take-out")]
    [InlineData(Sample.Bench, "carcase", "thickness label grain edges take-out")]
    [InlineData(Sample.Bench, "carcase.thickness", "thickness label grain edges take-out")]
    [InlineData(Sample.Bench, "bench", "sides bottom front gap fronts take-out")]
    [InlineData(Sample.Bench, "", "name about grid case-beside frame-beside sheet sticks drawer-kind door-kind")]
    [InlineData(Sample.Bench, "K.width", "size")]
    [InlineData(Sample.Bench, "F.depth", "depth")]
    [InlineData(Sample.Bench, "L2.front.height", "front")]
    [InlineData(Sample.Bench, "T.overhang-front", "overhang-front")]
    [InlineData(Sample.Bench, "K.height", "")]
    [InlineData(Sample.Bench, "Z", "")]
    [InlineData(Sample.Cabinet, "P", "move of of-new take-out")]
    [InlineData(Sample.Cabinet, "A2", "shelf-above shelf-below take-out")]
    [InlineData("sewing-corner.yaml", "D1", "kind take-out")]
    [InlineData("bookbinders-bench.yaml", "P", "size posts down-equal down-at rails shelves doors opening-before opening-after take-out")]
    [InlineData("sewing-corner.yaml", "B1", "size doors-off kind shelf empty opening-before opening-after take-out")]
    [InlineData("sewing-corner.yaml", "A", "name width height depth of of-new hung drawer kind empty take-out")]
    [InlineData("herb-rack.yaml", "legs", "name length count take-out")]
    public void For_WhatIsChosen_OffersWhatMakesSense(string sample, string key, string ids) => Assert.Equal(ids, Ids(sample, key));

    [Fact]
    public void For_ADimension_HasTheFigureThatStandsThere()
    {
        SetPiece set = RandomEditsTests.SetOut(Sample.Text(Sample.Bench));
        EditField Field(string key) => Choices.For(set, key)[0].Fields[0];
        Assert.Equal(("78", "33 1/4", "rest", "22 as it is", "5"), (Field("F.width").Default, Field("F.height").Default, Field("K.width").Default, Field("K.width").Usual, Field("L2").Default));
        // A bay is given between its posts, whatever is clear in it: 19 9/16 between its slide panels.
        Assert.Equal(("width between posts", "21 as it is"), (Field("L.width").Words, Field("L.width").Usual));
        // The knee space is 22 between its posts: a post of 1 1/2 x 3 1/2 more, with its face to the front, leaves 18 1/2 for two.
        Assert.Equal("9 1/4", Choices.For(set, "K").First(c => c.Id == "posts").Fields[0].Default);
        Assert.Equal(("4", "1 1/2"), (Field("F.toe").Default, Field("T.overhang-front").Default));
    }

    /// <summary>Each size that the text gives and the drawing shows can be changed where it is shown.</summary>
    [Theory]
    [InlineData(Sample.Bench, 3)]
    [InlineData(Sample.Cabinet, 3)]
    [InlineData("sewing-corner.yaml", 6)]
    public void For_DimensionsThatAreGiven_AreSizesToType(string sample, int least)
    {
        SetPiece set = RandomEditsTests.SetOut(Sample.Text(sample));
        string[] typed = [.. set.Dimensions.Select(d => d.Key.Text).Distinct().Where(k => !Choices.For(set, k).IsEmpty)];
        Assert.True(typed.Length >= least, $"Typed: {string.Join(' ', typed)}; not: {string.Join(' ', set.Dimensions.Select(d => d.Key.Text).Except(typed))}");
        Assert.All(typed, k => Assert.Single(Choices.For(set, k)[0].Fields));
    }

    [Fact]
    public void Make_WhatCannotBeRead_IsAFinding()
    {
        SetPiece set = RandomEditsTests.SetOut(Sample.Text(Sample.Bench));
        TextRead<Edit> Make(string id, string field, string value) => Choices.For(set, "K").First(c => c.Id == id).Make(new Dictionary<string, string> { [field] = value });
        Assert.Equal("edit.field", Assert.Single(Make("drawers", "count", "three").Findings).Code);
        Assert.Equal("edit.field", Assert.Single(Make("drawers", "like", "oak").Findings).Code);
        Assert.Equal("edit.field", Assert.Single(Make("across-at", "at", " ").Findings).Code);
        Assert.Equal(new PutDrawers("K", 3, "bench"), Make("drawers", "count", "3").Value);
        Assert.Equal(new SetShare("K", null), Make("size", "size", "").Value);
    }

    [Fact]
    public void For_CountedOpenings_OffersToListThem()
    {
        SetPiece set = RandomEditsTests.SetOut(File.ReadAllText(Setout.Testing.Repository.PathOf("tests/Setout.Shop.Tests/SettingOut/Pieces/pigeon-holes.yaml")));
        Assert.Equal(new ListOpenings("A"), Assert.Single(Choices.For(set, "L2")).Make(new Dictionary<string, string>()).Value);
        Assert.Contains(Choices.For(set, "A"), c => c.Id == "list");
    }
}
