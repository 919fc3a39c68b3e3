using Setout.Shop.Outputs;

namespace Setout.Shop.Tests.Outputs;

/// <summary>What the command line says as texts and commands is said on a page in plain words that lead to where it is done; in brackets what leads, and where.</summary>
public class PageWordsTests
{
    private static string Shown(string words, bool hasSayings) =>
        string.Concat(PageWords.Of(words, hasSayings).Select(s => s.Place == SaidPlace.None ? s.Words : $"[{s.Words}|{s.Place}{(s.Key.Length > 0 ? " " + s.Key : "")}]"));

    [Theory]
    [InlineData("Measure the offset from the shoe's edge to the blade, and write it as saws: guided: shoe.", "Measure the offset from the shoe's edge to the blade, and write it at [the hand-held saw|Shop saws.guided].")]
    [InlineData("It takes a straight edge of at least 100 in for the hand-held saw (saws: guided: longest), in the shop file; or have it cut.", "It takes a straight edge of at least 100 in for the hand-held saw ([the hand-held saw|Shop saws.guided]), in [the shop|Shop]; or have it cut.")]
    [InlineData("Put prices into the shop file.", "Put prices into [the shop|Shop].")]
    [InlineData("Where yours is another, write it under saws in the shop file before you cut.", "Where yours is another, say so among [the saws of the shop|Shop saws.guided] before you cut.")]
    [InlineData("Mark the run that you cut; or void that one first: setout void FILE e12.", "Mark the run that you cut; or void that one first, on the page of [what was read and marked|Facts].")]
    [InlineData("First read the thickness of birch with a calliper at two spots: setout record FILE birch.thickness READING.", "First read the thickness of birch with a calliper at two spots.")]
    [InlineData("Read the sheets first; setout record bench.yaml birch.thickness READING; setout record chest.yaml ply.thickness READING.", "Read the sheets first.")]
    [InlineData("It is 1/8 in too wide; 'setout fit FILE' lists what can be done about it.", "It is 1/8 in too wide; [the stage “Fit”|Fit] lists what can be done about it.")]
    [InlineData("It wants 1/32 in more: setout why FILE C.width shows what takes it.", "It wants 1/32 in more: [its working|Working C.width] shows what takes it.")]
    [InlineData("If it is cut already: setout mark FILE cut C.side --to \"C.side.length=30\" --blank NAME, with the blank it came from.", "If it is cut already, with the blank it came from.")]
    public void Of_WordsOfTheCommandLine_LeadToTheirPages(string words, string shown) => Assert.Equal(shown, Shown(words, false));

    [Theory]
    [InlineData("Write 'grain: free' for ply if the grain does not matter.", "Set [“grain” to free|Sayings] for ply if the grain does not matter.")]
    [InlineData("Write 'backer: 1/32 in' or 'faces: both', or let this stand.", "Set [“backer” to 1/32 in|Sayings] or “faces” to both, or let this stand.")]
    [InlineData("Write 'back: {of: SHEET, fit: rabbeted}' for one.", "Write 'back: {of: SHEET, fit: rabbeted}' for one.")]
    public void Of_WhatIsToBeWritten_IsSetWhereAllCanBeSaid(string words, string shown)
    {
        Assert.Equal(shown, Shown(words, true));
        Assert.Equal(words, Shown(words, false));
    }

    [Fact]
    public void Plain_HasNoCommandLeft() => Assert.DoesNotContain("setout", PageWords.Plain("Read it: setout record FILE birch.thickness READING. Then void it: setout void FILE e3."), StringComparison.Ordinal);

    [Theory]
    [InlineData("run 1 is cut, left G-r1-821f and A.1-r12-00ff00ff", "run 1 is cut, left G of run 1 and A.1 of run 12")]
    [InlineData("oak-r2 and x-ray-r7 stay", "oak-r2 and x-ray-r7 stay")]
    public void Blanks_AreCalledByWhatIsChalkedAndTheirRun(string words, string shown) => Assert.Equal(shown, PageWords.Blanks(words));
}
