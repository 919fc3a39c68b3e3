using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Shop.Edits;
using Setout.Shop.Tests.SettingOut;

namespace Setout.Shop.Tests.Edits;

/// <summary>An edit on the drawing never leaves a piece that cannot be built.</summary>
public class EditTrialTests
{
    private static EditTrial Try(string text, string key, string choice, params (string Field, string Typed)[] typed)
    {
        SetPiece set = RandomEditsTests.SetOut(text);
        return EditTrial.Of(Choices.For(set, key).First(c => c.Id == choice), typed.ToDictionary(t => t.Field, t => t.Typed), text, EditBench.Empty, set, RandomEditsTests.SetOut);
    }

    // The bench is 78 wide: 21 + rest + 21 between four posts of 3 1/2, so that 300 for one of them is 300 + 21 + 14 - 78 = 257 too much, and less than 43 goes. Of the height of the
    // fronts 5, 6 and three gaps are given, and the last keeps what its box wants.
    [Theory]
    [InlineData("L.width", "size", "size", "300", "257 in too much")]
    [InlineData("L.width", "size", "size", "300", "There is room for 42 15/16 here.")]
    [InlineData("L1", "front", "front", "55", "There is room for 12 1/4 here.")]
    [InlineData("K", "well", "footprint", "40 x 14", "There is room for")]
    [InlineData("F.width", "width", "size", "20", "36 in too much")]
    [InlineData("F.height", "height", "size", "3", "Make it 8 in higher")]
    [InlineData("L1", "front", "front", "55", "too much")]
    [InlineData("K", "posts", "at", "300", "too much")]
    public void Edit_ThatLeavesNoRoom_IsRefusedForTheFieldWithHowMuchItIsTooMuch(string key, string choice, string field, string typed, string words)
    {
        EditTrial trial = choice == "well" ? Try(Sample.Text(Sample.Bench), key, choice, ("machine", "saw"), (field, typed), ("table", "5 1/2"), ("front", "3")) : Try(Sample.Text(Sample.Bench), key, choice, (field, typed));
        Assert.False(trial.Edited.IsDone);
        Assert.Null(trial.Edited.Text);
        Assert.Equal(field, trial.Edited.Findings[0].Field);
        Assert.Contains(words, $"{trial.Edited.Findings[0].Words} {trial.Edited.Findings[0].Remedy}", StringComparison.Ordinal);
        Assert.False(trial.Edited.Findings[0].Place.IsKnown, "a line of a text that is not kept");
    }

    [Theory]
    [InlineData("K", "across-equal", "count", "999", "2 to 50")]
    [InlineData("K", "drawers", "count", "0", "1 to 30")]
    [InlineData("L", "posts", "at", "999", "nothing of the 21")]
    [InlineData("", "drawer-kind", "name", "3 1/", "cannot be")]
    public void Edit_RefusedForNoOtherReason_IsRefusedForTheOneFieldThatWasFilledIn(string key, string choice, string field, string typed, string words)
    {
        Finding fault = Try(Sample.Text(Sample.Bench), key, choice, (field, typed)).Edited.Findings[0];
        Assert.Contains(words, fault.Words, StringComparison.Ordinal);
        Assert.Equal(field, fault.Field);
    }

    [Theory]
    [InlineData("carcase", "thickness", "size", "")]
    [InlineData("", "grid", "size", "")]
    public void Field_LeftEmptyWhereNothingWasSaid_ChangesNothing(string key, string choice, string field, string typed)
    {
        Finding fault = Try(Sample.Text(Sample.Bench), key, choice, (field, typed)).Edited.Findings[0];
        Assert.Equal("edit.nothing", fault.Code);
        Assert.DoesNotContain("called", fault.Words, StringComparison.Ordinal);
    }

    // The bench is 78 wide, and its top 80 over all: see the sample.
    [Theory]
    [InlineData("T", "overhang-front", "size", "900")]
    [InlineData("T", "overhang-left", "size", "900")]
    [InlineData("", "top", "over", "900")]
    public void Size_LargerThanTheWholePiece_IsRefusedAtItsField(string key, string choice, string field, string typed)
    {
        string text = Sample.Text(Sample.Bench);
        if (key.Length == 0) text = Choices.For(RandomEditsTests.SetOut(text), "T").First(c => c.Id == "take-out").ApplyTo(new Dictionary<string, string>(), text, EditBench.Empty).Text!;
        EditTrial trial = Try(text, key, choice, (field, typed));
        Assert.Null(trial.Set);
        Finding fault = Assert.Single(trial.Edited.Findings);
        Assert.Equal(field, fault.Field);
        Assert.Contains("larger than the whole piece", fault.Words, StringComparison.Ordinal);
        Assert.Contains("There is room for", fault.Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void Sizes_LargerThanTheWholePiece_AreRefusedAtEachField()
    {
        EditTrial trial = Try(Sample.Text(Sample.Bench), "K", "well", ("machine", "saw"), ("footprint", "400 x 14"), ("table", "500"), ("front", "3"));
        Assert.Equal(["footprint", "table"], trial.Edited.Findings.Select(f => f.Field));
    }

    /// <summary>What is merely unwise is told among the findings; what makes the outside of a piece may be any size; and what is no part of the piece is not held against it.</summary>
    [Theory]
    [InlineData("T", "overhang-front", "size", "20")]
    [InlineData("F", "width", "size", "300")]
    [InlineData("F", "case-beside", "width", "200")]
    public void Size_ThatSomebodyMayMean_IsTaken(string key, string choice, string field, string typed) => Assert.True(Try(Sample.Text(Sample.Bench), key, choice, (field, typed)).Edited.IsDone);

    [Fact]
    public void Size_OfWhatIsNoPartOfThePiece_MayBeLarger()
    {
        string text = new NewPiece("Box", Core.Measures.Text.LengthUnit.Inch, NewKind.Case, "12", "8", "8").Text().Text!;
        SetPiece set = RandomEditsTests.SetOut(text);
        foreach ((string key, string id, (string, string)[] typed) in new[]
        {
            ("", "say.way_in.full0", new[] { ("width", "30"), ("height", "78") }), ("sheet", "say.sizes.more0", [("size", "96 x 48")]),
        })
        {
            EditChoice offer = Setout.Shop.Edits.Saying.Sayings.Of(text, key)!.All.Select(s => s.Choice).First(c => c.Id == id);
            EditTrial trial = EditTrial.Of(offer, typed.ToDictionary(t => t.Item1, t => t.Item2), text, EditBench.Empty, set, RandomEditsTests.SetOut);
            Assert.True(trial.Edited.IsDone, $"{id}: {string.Join(' ', trial.Edited.Findings.Select(f => f.Words))}");
        }
    }

    /// <summary>No field for a length on the drawing takes what is ten times as large as all of the piece, but one that makes its outside.</summary>
    [Theory]
    [InlineData(Sample.Bench), InlineData(Sample.Cabinet), InlineData(Sample.Chest)]
    public void Length_TenTimesAsLargeAsThePiece_IsTakenForNoSizeWithinIt(string sample)
    {
        string text = Sample.Text(sample);
        SetPiece set = RandomEditsTests.SetOut(text);
        string[] outside = ["width", "height", "depth", "length"], own = [.. set.Piece.Members.Where(m => m is not Core.Pieces.Top).Select(m => m.Key)];
        var taken = new List<string>();
        foreach (string key in set.Piece.Keys.Keys.Concat(set.Piece.DrawerKinds.Keys).Concat(set.Piece.DoorKinds.Keys))
        {
            foreach (EditChoice offer in Choices.For(set, key).Concat(Setout.Shop.Edits.Saying.Sayings.Of(text, key)?.All.Select(s => s.Choice).Where(c => c.Fields.Length == 1) ?? []))
            {
                foreach (EditField field in offer.Fields.Where(f => f.Kind == FieldKind.Length))
                {
                    bool isOutside = offer.Id.EndsWith("-beside", StringComparison.Ordinal) || offer.Id == "case-on" || (own.Contains(key) && outside.Contains(offer.Id.Split('.')[^1]));
                    if (isOutside) continue;
                    if (EditTrial.Of(offer, new Dictionary<string, string> { [field.Name] = "20000 mm" }, text, EditBench.Empty, set, RandomEditsTests.SetOut).Edited.IsDone) taken.Add($"{key} {offer.Id} {field.Name}");
                }
            }
        }
        Assert.Empty(taken);
    }

    /// <summary>What there is said to be room for goes, and a step more does not.</summary>
    [Theory]
    [InlineData("L.width", "size", "size", "300", "42 15/16", "43")]
    [InlineData("K", "across-at", "at", "99", "21 1/4", "21 9/32")]
    public void Room_IsWhatGoesAndNoMore(string key, string choice, string field, string typed, string room, string more)
    {
        string text = Sample.Text(Sample.Bench);
        Assert.Contains($"room for {room} ", Try(text, key, choice, (field, typed)).Edited.Findings[0].Remedy, StringComparison.Ordinal);
        Assert.True(Try(text, key, choice, (field, room)).Edited.IsDone);
        Assert.False(Try(text, key, choice, (field, more)).Edited.IsDone);
    }

    [Fact]
    public void OfSeveralFields_TheOneWithoutWhichItWouldGoIsToBlame()
    {
        EditTrial trial = Try(Sample.Text(Sample.Bench), "K", "across-at", ("at", "300"), ("from", "right"));
        Assert.Equal("at", trial.Edited.Findings[0].Field);
    }

    [Fact]
    public void Piece_ThatCannotBeBuilt_IsMendedStepByStep()
    {
        string broken = Sample.Text(Sample.Bench).Replace("width: 21", "width: 300", StringComparison.Ordinal);
        EditTrial step = Try(broken, "L.width", "size", ("size", "21"));
        Assert.True(step.Edited.IsDone);
        Assert.True(step.Set!.IsStopped);
        EditTrial last = Try(step.Edited.Text!, "R.width", "size", ("size", "21"));
        Assert.False(last.Set!.IsStopped);
    }

    [Fact]
    public void Edit_ThatGoes_GivesThePieceAsItWouldBe()
    {
        EditTrial trial = Try(Sample.Text(Sample.Bench), "L.width", "size", ("size", "22"));
        Assert.True(trial.Edited.IsDone);
        Assert.Contains("width: 22", trial.Edited.Text, StringComparison.Ordinal);
        Assert.False(trial.Set!.IsStopped);
    }
}
