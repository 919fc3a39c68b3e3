using System.Net;

namespace Setout.Tests.Browser;

/// <summary>Pages of a piece that cannot be built as it stands, and of what is chosen and gone: none is a dead end.</summary>
public sealed class StoppedTests
{
    private const string Bench = "/piece/luthiers-bench";

    [Fact]
    public async Task Piece_ThatCannotBeDrawn_IsShownAsItWas_WithWhy()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        shop.Change("luthiers-bench", t => t.Replace("width: 78", "width: 20", StringComparison.Ordinal));
        string page = await shop.Client.GetStringAsync(Bench + "?size=L");
        Assert.Matches("It cannot be drawn as it stands: </strong>.*36", Line(page));
        Assert.Matches("is-before[^>]*><svg", page);
        Assert.Contains("Nothing is worked out", page, StringComparison.Ordinal);
        // What is chosen can be edited all the same.
        Assert.Contains("Width of L", page, StringComparison.Ordinal);
        Assert.Matches("class=\"stopped\".*36.*too much", Line(await shop.Client.GetStringAsync(Bench + "/says?of=L")));
        // Stopped by the text twice over, it is shown as before both.
        shop.Change("luthiers-bench", t => t.Replace("width: 20", "width: 19", StringComparison.Ordinal));
        Assert.Matches("is-before[^>]*><svg", await shop.Client.GetStringAsync(Bench));
        shop.Change("luthiers-bench", t => t.Replace("width: 19", "width: 78", StringComparison.Ordinal));
        page = await shop.Client.GetStringAsync(Bench);
        Assert.DoesNotContain("is-before", page, StringComparison.Ordinal);
        Assert.DoesNotContain("It cannot be drawn", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task EditTooBigForThePiece_IsNotKept()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        string before = shop.Text("luthiers-bench");
        using HttpResponseMessage refused = await shop.Client.PostAsync(Bench + "/edit", Form(("key", "L.width"), ("choice", "size"), ("field-size", "300")));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
        Assert.Matches("data-field=\"field-size\">[^<]*too much", await refused.Content.ReadAsStringAsync());
        Assert.Equal(before, shop.Text("luthiers-bench"));
    }

    [Theory]
    [InlineData("?size=K1", "?size=K")]
    [InlineData("?view=plan&size=K2.width", "?view=plan&size=K")]
    [InlineData("?size=L", "?size=L")]
    [InlineData("?view=plan", "?view=plan")]
    public async Task Undo_OfWhatWasChosen_ShowsWhatItStoodIn(string chosen, string then)
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await shop.Client.PostAsync(Bench + "/edit", Form(("key", "K"), ("choice", "across-equal"), ("field-count", "2")));
        Assert.Contains("opening: K1", shop.Text("luthiers-bench"), StringComparison.Ordinal);
        using HttpResponseMessage undone = await shop.Client.PostAsync(Bench + "/undo", Form(("change", "undo-it"), ("revision", "2"), ("back", Bench + chosen)));
        Assert.DoesNotContain("opening: K1", shop.Text("luthiers-bench"), StringComparison.Ordinal);
        Assert.Equal(Bench + then, Led(undone));
        Assert.DoesNotContain("No such size", await shop.Client.GetStringAsync(Led(undone)), StringComparison.Ordinal);
    }

    [Fact]
    public async Task TakingOut_WhatStandsInNothing_ShowsTheWholePiece()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        using HttpResponseMessage done = await shop.Client.PostAsync(Bench + "/edit", Form(("key", "T"), ("choice", "take-out"), ("back", Bench + "?size=T")));
        Assert.Equal(Bench, Led(done));
    }

    [Fact]
    public async Task Size_ThatIsNotThere_LeadsToTheWholePiece()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        Assert.Matches($"No such size.*<a href=\"{Bench}\">Show the whole piece</a>", Line(await shop.Client.GetStringAsync(Bench + "?size=Q7")));
    }

    private static string Led(HttpResponseMessage made) => made.Headers.Location!.ToString().Split('#')[0];

    private static string Line(string page) => page.ReplaceLineEndings(" ");

    private static FormUrlEncodedContent Form(params (string Name, string Value)[] fields)
    {
        var all = new Dictionary<string, string> { ["change"] = "change-it", ["revision"] = "1", ["back"] = Bench };
        foreach ((string name, string value) in fields) all[name] = value;
        return new(all);
    }
}
