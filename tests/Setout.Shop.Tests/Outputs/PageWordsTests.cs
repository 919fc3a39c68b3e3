using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Shop.Outputs;
using Setout.Shop.Tests.Plans;
using Setout.Shop.Texts;

namespace Setout.Shop.Tests.Outputs;

/// <summary>What is made for pages leads to what it names; in brackets what leads, and where. Nothing else is changed.</summary>
public class PageWordsTests
{
    private static readonly SetPiece s_bench = Sample.Source("luthiers-bench").SetOut();

    private static string Shown(string words, bool hasSayings) =>
        string.Concat(PageWords.Of(words, s_bench, hasSayings).Select(s => s.Place == SaidPlace.None ? s.Words : $"[{s.Words}|{s.Place}{(s.Key.Length > 0 ? " " + s.Key : "")}]"));

    public static TheoryData<string, string> Made => new()
    {
        { $"Measure the offset, and enter it at {ShopHands.SawOnPage("guided")}.", "Measure the offset, and enter it at [“the hand-held saw”|Shop saws.guided]." },
        { $"It takes a straight edge of at least 100 in {Hand.Pages.Saw("guided", "longest")}, in {Hand.Pages.Shop}; or have it cut.", "It takes a straight edge of at least 100 in ([“the hand-held saw”|Shop saws.guided]), in [“the shop”|Shop]; or have it cut." },
        { $"Where yours is another, say so among {ShopHands.SawsOfPage} before you cut.", "Where yours is another, say so among [“the saws of the shop”|Shop saws.guided] before you cut." },
        { $"Void that one first{Hand.Pages.Void("e12")}.", "Void that one first, under [“What was read and marked”|Facts]." },
        { $"Read its width{Hand.Pages.Enter(new("L.width"), "bay L, clear width between slide panels", "WIDTH")}. Then it follows.", "Read its width, and enter it at [“bay L, clear width between slide panels”|Working L.width]. Then it follows." },
        { $"Measure {Hand.Pages.Named(new("carcase.thickness"), "carcase, thickness")} next, not “bay Z, clear width”.", "Measure [“carcase, thickness”|Working carcase.thickness] next, not “bay Z, clear width”." },
        { $"It is 1/8 in too wide; {Hand.Pages.Fit} lists what can be done.", "It is 1/8 in too wide; the stage [“Fit”|Fit] lists what can be done." },
        { $"It wants 1/32 in more: {Hand.Pages.Working(new("L.width"), "bay L, clear width between slide panels")} shows what takes it.", "It wants 1/32 in more: the working of [“bay L, clear width between slide panels”|Working L.width] shows what takes it." },
        { "Tick “take it all the same” if it is so.", "Tick “take it all the same” if it is so." },
        { "The piece “Mr. Hill” is new, and “ this is open.", "The piece “Mr. Hill” is new, and “ this is open." },
    };

    [Theory, MemberData(nameof(Made))]
    public void Of_WhatIsMadeForPages_LeadsToWhatItNames(string words, string shown)
    {
        Assert.Equal(shown, Shown(words, false));
        Assert.Equal(words, string.Concat(PageWords.Of(words, s_bench).Select(s => s.Words)));
    }

    [Theory]
    [InlineData("Set “most stages” to 2 for ply.", "Set [“most stages”|Sayings] to 2 for ply.")]
    [InlineData("Set “backer” to 1/32 in or “faces” to both.", "Set [“backer”|Sayings] to 1/32 in or [“faces”|Sayings] to both.")]
    [InlineData("Enter it at “bay L, clear width between slide panels” to be sure.", "Enter it at [“bay L, clear width between slide panels”|Working L.width] to be sure.")]
    public void Of_WhatIsToBeSet_LeadsToWhereAllCanBeSaidWhereThereIsSuchAPage(string words, string shown) => Assert.Equal(shown, Shown(words, true));

    [Fact]
    public void Of_WhatIsToBeSet_WithoutSuchAPage_LeadsNowhere() => Assert.Equal("Set “most stages” to 2 for ply.", Shown("Set “most stages” to 2 for ply.", false));

    [Theory]
    [InlineData("run 1 is cut, left G-r1-821f and A.1-r12-00ff00ff", "run 1 is cut, left G of run 1 and A.1 of run 12")]
    [InlineData("oak-r2 and x-ray-r7 stay", "oak-r2 and x-ray-r7 stay")]
    public void Blanks_AreCalledByWhatIsChalkedAndTheirRun(string words, string shown) => Assert.Equal(shown, PageWords.Blanks(words));
}
