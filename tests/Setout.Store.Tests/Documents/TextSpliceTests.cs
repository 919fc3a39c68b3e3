using CsCheck;
using Setout.Testing;

namespace Setout.Store.Tests.Documents;

/// <summary>Texts told by the text before.</summary>
public sealed class TextSpliceTests
{
    private static readonly Gen<string> s_text = Gen.OneOf([Gen.Const("a"), Gen.Const("b"), Gen.Const("\n"), Gen.Const("\U0001FAB5"), Gen.Const("\U0001FAB6"), Gen.Const("\U0001F4B5"), Gen.Const("é")]).Array[0, 12].Select(string.Concat);

    [Fact]
    public void On_OfAnyTwoTexts_GivesTheSecondAndPartsNoLetter() => Gen.Select(s_text, s_text).Holds((old, text) =>
    {
        var splice = TextSplice.Between(old, text);
        Assert.Equal(text, splice.On(old));
        Assert.Equal(splice.Middle, System.Text.Encoding.UTF8.GetString(System.Text.Encoding.UTF8.GetBytes(splice.Middle)));
    }, iter: 3000);

    [Theory]
    [InlineData("abc", "abc", 3, 0, "")]
    [InlineData("abc", "abxc", 2, 1, "x")]
    [InlineData("aaa", "aa", 2, 0, "")]
    [InlineData("", "x", 0, 0, "x")]
    [InlineData("width: 21\ndepth: 9", "width: 22\ndepth: 9", 8, 9, "2")]
    public void Between_TwoTexts_KeepsWhatIsAlike(string old, string text, int head, int tail, string middle) => Assert.Equal(new TextSplice(head, tail, middle), TextSplice.Between(old, text));

    [Fact]
    public void On_ATextThatIsTooShort_IsRefused() => Assert.Throws<ArgumentOutOfRangeException>(() => new TextSplice(2, 2, "x").On("abc"));
}
