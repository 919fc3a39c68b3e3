using Setout.Core.Measures.Text;
using Setout.Core.Workings;
using Setout.Shop.Edits;
using Setout.Shop.Plans;
using Setout.Shop.Texts;
using SetPiece = Setout.Core.SettingOut.SetPiece;

namespace Setout.Shop.Tests.Edits;

/// <summary>What is said of a piece that cannot be begun, and of what is put on or into it first.</summary>
public sealed class BeginningTests
{
    private static SetPiece SetOut(string text) => RandomEditsTests.SetOut(text);

    [Fact]
    public void NewPiece_WithSeveralSlips_TellsAllEachWithItsField()
    {
        Edited made = new NewPiece(" ", LengthUnit.Inch, NewKind.Frame, "seven", "", "99999").Text();
        Assert.Equal(["name", "width", "height", "depth"], made.Findings.Select(f => f.Field));
        Assert.All(made.Findings, f => Assert.Equal(0, f.Place.Line));
        Assert.Equal("Width outside: 'seven' is not a figure.", made.Findings[1].Words);
        Assert.Equal("Height outside: nothing is typed here.", made.Findings[2].Words);
    }

    [Theory]
    [InlineData(LengthUnit.Inch, "99999", "'99999' cannot be the width outside.", "Write a length above 0 to 1181 in.")]
    [InlineData(LengthUnit.Inch, "0", "'0' cannot be the width outside.", "Write a length above 0 to 1181 in.")]
    [InlineData(LengthUnit.Millimetre, "99999", "'99999' cannot be the width outside.", "Write a length above 0 to 30000 mm.")]
    public void NewPiece_BeyondALimit_TellsItInTheUnitOfTheForm(LengthUnit unit, string width, string words, string remedy)
    {
        Finding slip = Assert.Single(new NewPiece("Chest", unit, NewKind.Case, width, "30", "18").Text().Findings);
        Assert.Equal((words, remedy, "width"), (slip.Words, slip.Remedy, slip.Field));
        // What is named as the most is taken.
        Assert.True(new NewPiece("Chest", unit, NewKind.Case, remedy.Split(" to ")[1].TrimEnd('.'), "30", "18").Text().IsDone);
    }

    [Fact]
    public void NewPiece_OfATopAlone_AsksNoHeight() => Assert.True(new NewPiece("Slab", LengthUnit.Inch, NewKind.Top, "60", "nonsense", "25").Text().IsDone);

    [Theory]
    // 3/4 plywood is 23/32 until it is read; a frame of sticks alone gets such a sheet.
    [InlineData(NewKind.Frame, LengthUnit.Inch, "34", "the height outside of F is 34 in without it; 34 23/32 in with a top of hardwood plywood 3/4")]
    [InlineData(NewKind.Case, LengthUnit.Inch, "34", "the height outside of C is 34 in without it; 34 23/32 in with a top of sheet")]
    [InlineData(NewKind.Frame, LengthUnit.Millimetre, "860", "the height outside of F is 860 mm without it; ")]
    public void TopOverAFrameOrACase_SaysWhatItsHeightComesTo(NewKind kind, LengthUnit unit, string height, string hint)
    {
        bool isInch = unit == LengthUnit.Inch;
        string text = new NewPiece("Bench", unit, kind, isInch ? "60" : "1500", height, isInch ? "24" : "600").Text().Text!;
        string key = kind == NewKind.Frame ? "F" : "C";
        EditChoice top = Choices.For(SetOut(text), key, Setout.Shop.Texts.Shop.Usual).First(c => c.Id == "top");
        Assert.StartsWith(hint, top.Fields.First(f => f.Name == "of").Usual, StringComparison.Ordinal);
        // What the hint says is what it comes to.
        string after = new AddTop(On: key).ApplyTo(text).Text!;
        SetPiece set = SetOut(after);
        string sheet = set.Piece.Members.OfType<Core.Pieces.Top>().Single().Of.Text;
        string whole = LengthFormat.For(unit).Text(set.Piece.Members.OfType<Core.Pieces.Structure>().Single().Height.Value + set.Worked[QuantityKey.Of(sheet, "thickness")]);
        Assert.Contains($"; {whole} with", top.Fields.First(f => f.Name == "of").Usual, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("12 by", "12 is understood; 'by' after it is not a unit.")]
    [InlineData("0", "'0' cannot be the clear width of a bay.")]
    public void DivideByPosts_AtWhatIsNoWidth_SaysWhichWidth(string at, string words)
    {
        string text = new NewPiece("Bench", LengthUnit.Inch, NewKind.Frame, "60", "34", "24").Text().Text!;
        EditChoice posts = Choices.For(SetOut(text), "A", Setout.Shop.Texts.Shop.Usual).First(c => c.Id == "posts");
        Assert.Contains("clear width", posts.Fields[0].Usual, StringComparison.Ordinal);
        var values = new Dictionary<string, string> { ["at"] = at };
        Edited refused = posts.ApplyTo(values, text, EditBench.Empty);
        Assert.Equal((words, "at"), (refused.Findings[0].Words, refused.Findings[0].Field));
    }
}
