using Setout.Shop.Outputs;

namespace Setout.Shop.Tests.Outputs;

/// <summary>On a page the field stands beside the words: no command is told there.</summary>
public class CommandWordsOnAPageTests
{
    [Theory]
    [InlineData("Read the sheet at two spots before anything that meets it is cut: setout record FILE ply-3-4.thickness READING.", "Read the sheet at two spots before anything that meets it is cut.")]
    [InlineData("A reading moved one of them. Measure bay C, clear width (setout record FILE C.width READING) next.", "A reading moved one of them. Measure bay C, clear width next.")]
    [InlineData("Measure it at three spots: setout record FILE L.width WIDTH, WIDTH, WIDTH. The narrowest counts.", "Measure it at three spots. The narrowest counts.")]
    [InlineData("It is 1/8 in too wide; 'setout fit FILE' lists what can be done about it.", "It is 1/8 in too wide; the stage “Fit” lists what can be done about it.")]
    [InlineData("Write an output: setout plan FILE --out DIR.", "Write an output: setout plan @low-bench --out DIR.")]
    [InlineData("Put prices into the shop file.", "Put prices into the shop file.")]
    public void Words_OnAPage_LeaveOutWhatStandsBesideThem(string words, string said) => Assert.Equal(said, CommandWords.Kept(CommandWords.OnAPage(words), "low-bench"));
}
