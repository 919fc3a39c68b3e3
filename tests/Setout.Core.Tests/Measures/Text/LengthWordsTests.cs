using Setout.Core.Measures.Text;

namespace Setout.Core.Tests.Measures.Text;

public sealed class LengthWordsTests
{
    [Theory]
    [InlineData("about 22 1/2", "22 1/2 is understood; 'about' before it is not.", "Write 22 1/2 alone.")]
    [InlineData("seven", "'seven' is not a figure.", "Write figures, such as 23 1/4.")]
    [InlineData("12 by", "12 is understood; 'by' after it is not a unit.", "Write 12 alone, or with one of in, ft, mm, cm or m, such as 23 1/4 in.")]
    [InlineData("3 4 ells", "'ells' is not a unit.", "Use in, ft, mm, cm or m, such as 23 1/4 in.")]
    [InlineData("3 1/", "3 is understood; the fraction '1/' has no figure below its stroke.", "Write the figure below the stroke, as in 3 1/2.")]
    [InlineData("1/", "There is no figure below the stroke.", "Write the figure below the stroke, as in 3 1/2.")]
    [InlineData("/2", "There is no figure above the stroke.", "Write the figure above the stroke, as in 3 1/2.")]
    [InlineData("3 4", "3 is understood; '4' after it is left over.", "Write one length, such as 23 1/4, or join two by + or -.")]
    [InlineData("1 +", "A number is missing after '+'.", "Write a number there, such as 3/4.")]
    [InlineData("in", "The unit has no number before it.", "Write the number too, such as 23 1/4 in.")]
    [InlineData("", "There is no length here.", "Write one, such as 23 1/4.")]
    public void Parse_ASlip_SaysWhatWasUnderstoodAndGivesAnExample(string text, string words, string remedy)
    {
        TextFault fault = LengthText.Parse(text, LengthUnit.Inch).Fault!;
        Assert.Equal((words, remedy), (fault.Words, fault.Remedy));
    }

    [Theory]
    [InlineData("seven"), InlineData("12 by"), InlineData("3 4"), InlineData("1 +"), InlineData("mm"), InlineData(""), InlineData("5%")]
    public void Parse_ASlipInMillimetres_GivesAnExampleInMillimetres(string text)
    {
        string inches = LengthText.Parse(text, LengthUnit.Inch).Fault!.Remedy, millimetres = LengthText.Parse(text, LengthUnit.Millimetre).Fault!.Remedy;
        Assert.NotEqual(inches, millimetres);
        Assert.Matches("590|18", millimetres);
    }

    [Fact]
    public void Parse_ManyWordsThatAreNone_EndsAndSaysOnlyWhatIsSo()
    {
        // Whether the rest is a length is asked of each rest in turn.
        TextFault fault = LengthText.Parse(string.Concat(Enumerable.Repeat("a ", 100)), LengthUnit.Inch).Fault!;
        Assert.Equal(("length.unknown-word", 0, "'a' is not a figure."), (fault.Code, fault.Position, fault.Words));
    }
}
