using System.Collections.Immutable;
using System.Net;
using System.Text.RegularExpressions;
using Setout.Core.Measures;
using Setout.Core.Workings;
using Setout.Cutting.Boards;
using Setout.Cutting.Sheets;
using Setout.Shop.Plans;
using Setout.Shop.Texts;

namespace Setout.Tests.Browser;

/// <summary>What the list says to be bought, and what can be said of it from there.</summary>
public sealed class BuyingTests
{
    private static string[] Rows(string page, string word) =>
        [.. Regex.Matches(page, "<li>.*?</li>", RegexOptions.Singleline).Select(m => m.Value).Where(r => r.Contains("class=\"tick\"", StringComparison.Ordinal) && r.Contains(word, StringComparison.OrdinalIgnoreCase))];

    /// <summary>The slides are marked drawer by drawer: with the last they are bought, at the head of the page and in the list.</summary>
    [Fact]
    public async Task Slides_BoughtDrawerByDrawer_AreBoughtOnTheListToo()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        string[] drawers = [.. PieceSource.Read(shop.Text("luthiers-bench"), null, null).Source!.SetOut().Hardware.Where(h => h.Unit == "pair").Select(h => h.Key).Distinct()];
        Assert.True(drawers.Length > 2);
        async Task<string> SlidesAsync(string id, params string[] keys)
        {
            shop.Log("luthiers-bench", new MarkEntry(id, "2026-05-02T09:00:00Z", Progress.Bought, [.. keys], ImmutableDictionary<QuantityKey, ExactLength>.Empty));
            return Assert.Single(Rows(await shop.Client.GetStringAsync("/piece/luthiers-bench/buy"), "slide"));
        }
        Assert.Contains("<form", await SlidesAsync("b1", drawers[1..]), StringComparison.Ordinal);
        string all = await SlidesAsync("b2", drawers[0]);
        Assert.DoesNotContain("<form", all, StringComparison.Ordinal);
        Assert.Matches("bought 2 May 2026, [0-9]+:00", all);
        Assert.DoesNotContain("entry b2", all, StringComparison.Ordinal);
    }

    /// <summary>No line of a rack is told by the board that is ripped: the list offers no press for it, and a form that is sent all the same writes down nothing.</summary>
    [Fact]
    public async Task Board_ToBeRipped_IsNotSaidToBeBoughtFromTheList()
    {
        await using KeptShop shop = await KeptShop.OpenAsync(hasSamples: false);
        shop.Keep("try", "setout: 1\nname: Try\nunit: mm\nmaterials:\n  rail: {stick: ash, section: 45 x 20}\nparts:\n  - {part: a, of: rail, length: 900}\n");
        shop.Keep("shop", "setout-shop: 1\nunit: mm\nstock:\n  - {stick: ash, section: 120 x 20, length: 1000, price: 5, rip: yes}\n");
        Plan plan = new PlanMaker(SheetSolvers.Default, BoardSolvers.Default).Make(PieceSource.Read(shop.Text("try"), null, shop.Text("shop")).Source!, LayoutEffort.Steps(new(2000, 1)));
        BuyingLine line = Assert.Single(plan.Buying);
        Assert.Equal((BuyingKind.Board, (ShopStock?)null), (line.Kind, line.Wood));
        Assert.DoesNotContain("<form", Assert.Single(Rows(await shop.Client.GetStringAsync("/piece/try/buy"), "ash")), StringComparison.Ordinal);
        using var form = new FormUrlEncodedContent([new("change", "c1"), new("revision", "1"), new("back", "/piece/try/buy"), new("item", line.Item), new("field-count", "1")]);
        using HttpResponseMessage answer = await shop.Client.PostAsync("/piece/try/bought", form);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Contains("Boards that are ripped", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        Assert.Empty(shop.Database.FactsOf(shop.Database.Find("try")!.Id).Read().Entries);
    }
}
