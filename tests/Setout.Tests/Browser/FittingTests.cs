using System.Text.RegularExpressions;
using Microsoft.Playwright;
using Setout.Core.Fit;
using Setout.Core.SettingOut;
using Setout.Files;
using Setout.Shop.Plans;

namespace Setout.Tests.Browser;

public sealed class FittingTests(Room room)
{
    private const string Bench = "/piece/luthiers-bench/fit";

    [Fact]
    public async Task Page_OfTheBench_SaysTheChancesOfTheReportAndLinksEveryGap()
    {
        PieceSource source = PieceFiles.Of(Samples.File("luthiers-bench"), null).Read().Source!;
        SetPiece set = source.SetOut();
        FitReport report = FitCheck.Of(set, source.Shop.Accuracy);
        await using Sheet sheet = await room.OpenAsync(hasScript: false);
        await sheet.Page.GotoAsync(Bench);
        string whole = (await sheet.Page.Locator(".chances .whole").InnerTextAsync()).Replace('\u00A0', ' ');
        // What a person can reckon with comes first; that all of so many gaps come right at once is never likely, and stands behind it.
        Assert.Contains(FitLines.Right(report.Whole.Right, report.Whole), whole, StringComparison.Ordinal);
        Assert.Contains($"then {FitLines.Right(report.Whole.RightMeasured, report.Whole)}", whole, StringComparison.Ordinal);
        Assert.Contains($"at once: {FitLines.AllAtOnce(report.Whole)}.", (await sheet.Page.Locator(".chances > .soft").InnerTextAsync()).Replace('\u00A0', ' '), StringComparison.Ordinal);
        // Each leads to the working of what is to be read; its key is for the command line and is not said.
        string[] read = await sheet.Page.Locator(".measure li > p:first-of-type > a").LookAtAllAsync<string[]>("all => all.map(a => new URL(a.href).searchParams.get('size'))");
        Assert.Equal(report.Measure.Select(m => m.Key.Text), read);
        string[] linked = await sheet.Page.Locator("[data-gap]").LookAtAllAsync<string[]>("all => all.map(a => a.dataset.gap)");
        Assert.Equal(report.Gaps.Select(g => g.Gap.Key.Text).Order(StringComparer.Ordinal), linked.Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task Gap_WhenClickedOnTheDrawing_LeadsToItsWorking()
    {
        await using Sheet sheet = await room.OpenAsync();
        await sheet.Page.GotoAsync(Bench);
        await sheet.Page.Locator("html.has-script").WaitForAsync(new() { State = WaitForSelectorState.Attached });
        await sheet.Page.Locator("#gaps .for-desk [data-key='L1.play']").ClickAsync();
        await sheet.Page.WaitForURLAsync(new Regex(@"/piece/luthiers-bench\?size=L1\.play"));
        await Assertions.Expect(sheet.Page.Locator("[data-working='L1.play']")).ToBeVisibleAsync();
    }

    [Fact]
    public async Task Outline_OfEverySample_HasALineForEachGapDrawn()
    {
        await using Sheet sheet = await room.OpenAsync(390);
        foreach (string piece in Samples.Names)
        {
            await sheet.Page.GotoAsync($"/piece/{piece}/fit");
            await Assertions.Expect(sheet.Page.Locator(".stage", new() { HasText = "Fit" })).ToHaveAttributeAsync("aria-current", "page");
            string[] drawn = await sheet.Page.Locator("#gaps .for-phone [data-key]").LookAtAllAsync<string[]>("all => all.map(g => g.dataset.key)");
            string[] written = await sheet.Page.Locator("#outline > ol > li").LookAtAllAsync<string[]>("all => all.map(l => l.querySelector('[data-gap]').dataset.gap)");
            Assert.Equal(drawn, written);
        }
    }
}
