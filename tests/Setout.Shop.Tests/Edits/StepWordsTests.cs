using Setout.Shop.Edits;
using Setout.Shop.Edits.Saying;
using Setout.Shop.Tests.SettingOut;
using Setout.Shop.Texts;

namespace Setout.Shop.Tests.Edits;

/// <summary>Steps and refusals of forms are told to whoever looks at a page: by names, not by what stands in the text.</summary>
public sealed class StepWordsTests
{
    private static readonly (string, string)[] s_oil = [("finish", "oil"), ("coats", "2"), ("on", "C")];

    private static Edited Say(string text, string owner, Func<EditChoice, bool> which, params (string Field, string Typed)[] typed)
    {
        EditChoice choice = Sayings.Of(text, owner)!.All.Select(s => s.Choice).First(which);
        Dictionary<string, string> values = typed.ToDictionary(t => t.Field, t => t.Typed);
        return choice.ApplyTo(values, text, EditBench.Empty);
    }

    private static Edited Finish(string name, params (string Field, string Typed)[] typed) =>
        Say(Sample.Text(Sample.Cabinet), "", c => c.Id == "say.finishes.new0", [("name-of-it", name), .. typed]);

    [Fact]
    public void Finish_ThatIsAdded_IsAStepInWords()
    {
        Edited made = Finish("oil", s_oil);
        Assert.Equal("finish oil: finish oil, coats 2, on C", made.Name);
        Assert.True(PieceText.Read(made.Text!).IsSound);
    }

    [Theory]
    [InlineData("Danish oil 1", "Danish-oil-1"), InlineData(" hard wax/oil ", "hard-wax-oil")]
    public void Name_ThatCannotStandInAText_IsMadeOneThatCan(string typed, string name)
    {
        Edited made = Finish(typed, s_oil);
        Assert.Equal(name, made.Chosen);
        Assert.Contains($"\n  {name}:", made.Text!, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("1 coat"), InlineData("Öl"), InlineData("???"), InlineData("the oil that goes on the inside of it")]
    public void Name_OfWhichNoneCanBeMade_IsToldBesideItsFieldWithWhatToType(string typed)
    {
        Edited refused = Finish(typed, s_oil);
        Assert.Equal(("name-of-it", false), (refused.Findings[0].Field, refused.Findings[0].Place.IsKnown));
        Assert.Equal(($"'{typed}' cannot be its name.", "Begin it with a letter and type 24 letters from a to z, figures and hyphens at most, such as oil-1."), (refused.Findings[0].Words, refused.Findings[0].Remedy));
    }

    [Theory]
    [InlineData("hard oil", "hard-oil"), InlineData("Öl", "finish"), InlineData("2K lacquer", "finish"), InlineData("a clear varnish for outside, satin", "a-clear-varnish-for")]
    public void Name_OfAFinish_LeftEmpty_IsMadeOfTheFinish_AndFreshEachTime(string product, string name)
    {
        (string, string)[] typed = [("finish", product), ("coats", "2"), ("on", "C")];
        Edited made = Finish("", typed);
        Assert.Equal(name, made.Chosen);
        Assert.Equal(name + "1", Say(made.Text!, "", c => c.Id == "say.finishes.new0", typed).Chosen);
    }

    [Theory]
    [InlineData("everything"), InlineData("C, everything"), InlineData("everything , C")]
    public void Finish_OnAWordThatNamesNothing_IsRefusedAtItsField_WithWhatCanBeNamed(string typed)
    {
        Edited refused = Finish("oil", ("finish", "oil"), ("coats", "2"), ("on", typed));
        Assert.Equal((false, "on", "No part or material is 'everything'."), (refused.IsDone, refused.Findings[0].Field, refused.Findings[0].Words));
        Assert.Matches("^Name some of .*, C, .*left empty it goes on all that no other finish names", refused.Findings[0].Remedy);
        // So where it is said of one that is there; and what was there before stands in no other edit's way.
        string said = Finish("oil", s_oil).Text!;
        Edited later = Say(said, "oil", c => c.Id == "say.on", ("value", typed));
        Assert.Equal((false, "value"), (later.IsDone, later.Findings[0].Field));
        string byHand = said.Replace("on: C", "on: everything", StringComparison.Ordinal);
        Assert.NotEqual(said, byHand);
        Assert.True(Say(byHand, "oil", c => c.Id == "say.coats", ("value", "3")).IsDone);
        Assert.Contains(Sample.SetOut(byHand).Findings, f => f.Code == "finish.unknown");
    }

    [Fact]
    public void Kind_OfDrawersOrDoors_GetsANameThatCanStand()
    {
        Assert.Equal("deep-drawer", new AddDrawerKind("deep drawer").ApplyTo(Sample.Text(Sample.Cabinet)).Chosen);
        Assert.Equal("tall-door", new AddDoorKind("tall door").ApplyTo(Sample.Text(Sample.Cabinet)).Chosen);
        Assert.Equal("text.bad-key", new AddDoorKind("2").ApplyTo(Sample.Text(Sample.Cabinet)).Findings[0].Code);
    }

    [Theory]
    [InlineData("coats", "many", "'many' is not a whole number from 1 to 30.", "Type one, such as 1.")]
    [InlineData("covers", "a lot", null, null)]
    public void Value_ThatCannotBeTaken_IsToldWithoutThePunctuationOfTheText(string field, string typed, string? words, string? remedy)
    {
        Edited refused = Finish("oil", [.. s_oil.Where(f => f.Item1 != field), (field, typed)]);
        Assert.Equal((field, false), (refused.Findings[0].Field, refused.Findings[0].Place.IsKnown));
        if (words is not null) Assert.Equal((words, remedy), (refused.Findings[0].Words, refused.Findings[0].Remedy));
        Assert.DoesNotContain("': ", refused.Findings[0].Remedy, StringComparison.Ordinal);
        Assert.DoesNotContain($"{field}:", refused.Findings[0].Words + refused.Findings[0].Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void Key_ThatWantsAnother_IsToldAsPagesCallIt()
    {
        Edited refused = new SetAny(TextPath.Of("A", "shelves", "pitch"), "2").ApplyTo(Sample.Text(Sample.Cabinet));
        Assert.Equal("Set “fit” to adjustable, or leave 'pitch' out.", refused.Findings[0].Remedy);
        Assert.StartsWith("Fill in “width”, such as ", new ClearAny(TextPath.Of("C", "width")).ApplyTo(Sample.Text(Sample.Cabinet)).Findings[0].Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void Text_WithTheSameSlip_IsToldInTheWordsOfTheText()
    {
        string text = Sample.Text(Sample.Cabinet) + "\nfinishes:\n  oil: {finish: oil, coats: many, on: C}\n";
        Assert.Equal("Write 'coats: 1'.", PieceText.Read(text).Findings.Single().Remedy);
    }

    [Fact]
    public void Feet_OfAMachineThatAreNoSize_AreToldInTheirOwnOrder()
    {
        string text = Sample.Text(Sample.Bench);
        Edited refused = new AddWell("T", "sander", "12", "4", "18", "5").ApplyTo(text);
        Assert.Equal("Write two lengths such as 18 x 14, left to right first.", refused.Findings[0].Remedy);
    }

    [Fact]
    public void Path_OfAValue_IsSaidFromWithin()
    {
        Assert.Equal("fit of back of case C", TextPath.Of("C", "back", "fit").Words("case C"));
        Assert.Equal("seams of layers 2 of T", TextPath.Of("T", "layers", 1, "seams").Words());
        Assert.Equal("finish oil", TextPath.Of("", "finishes", "oil").Words());
        Assert.Equal("coats of finish oil", TextPath.Of("", "finishes", "oil", "coats").Words());
        Assert.Equal("name of the piece", TextPath.Of("", "name").Words());
        Assert.Equal("take out back of case C", new ClearAny(TextPath.Of("C", "back")).ApplyTo(Sample.Text(Sample.Cabinet)).Name);
    }
}
