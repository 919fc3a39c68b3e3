using System.Net;
using System.Text.RegularExpressions;
using Setout.Shop.Documents;

namespace Setout.Tests.Browser;

/// <summary>What may be sent to the workbench, and what becomes of it.</summary>
public sealed class PostTests
{
    private static FormUrlEncodedContent Form(params (string Name, string Value)[] fields) => new(fields.Select(f => KeyValuePair.Create(f.Name, f.Value)));

    private static FormUrlEncodedContent Width(string change, int revision, string width) =>
        Form(("change", change), ("revision", $"{revision}"), ("back", "/piece/jar-cabinet?size=C.width"), ("key", "C.width"), ("choice", "width"), ("field-size", width));

    [Theory]
    [InlineData(null)]
    [InlineData("http://evil.example")]
    [InlineData("null")]
    [InlineData("http://localhost")]
    public async Task Post_FromElsewhere_ChangesNothing(string? origin)
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        shop.Client.DefaultRequestHeaders.Remove("Origin");
        if (origin is not null) shop.Client.DefaultRequestHeaders.Add("Origin", origin);
        string before = shop.Text("jar-cabinet");
        using HttpResponseMessage answer = await shop.Client.PostAsync("/piece/jar-cabinet/edit", Width("w1", 1, "40"));
        Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
        Assert.Equal(before, shop.Text("jar-cabinet"));
    }

    [Fact]
    public async Task Post_TooLargeOrNoForm_GetsNothing()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        using var large = new ByteArrayContent(new byte[17 * 1024 * 1024]);
        large.Headers.ContentType = new("application/x-www-form-urlencoded");
        using HttpResponseMessage tooLarge = await shop.Client.PostAsync("/piece/jar-cabinet/text", large);
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, tooLarge.StatusCode);
        using HttpResponseMessage json = await shop.Client.PostAsync("/piece/jar-cabinet/text", new StringContent("{}", null, "application/json"));
        Assert.Equal(HttpStatusCode.UnsupportedMediaType, json.StatusCode);
        using HttpResponseMessage empty = await shop.Client.PostAsync("/piece/jar-cabinet/edit", Form(("key", "C.width")));
        Assert.Equal(HttpStatusCode.BadRequest, empty.StatusCode);
        using var put = new HttpRequestMessage(HttpMethod.Put, "/piece/jar-cabinet/text") { Content = Form(("text", "")) };
        using HttpResponseMessage other = await shop.Client.SendAsync(put);
        Assert.Equal(HttpStatusCode.MethodNotAllowed, other.StatusCode);
    }

    [Fact]
    public async Task Edit_SentTwice_IsMadeOnce_AndOnAnOldRevisionIsRefused()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        using HttpResponseMessage first = await shop.Client.PostAsync("/piece/jar-cabinet/edit", Width("w1", 1, "40"));
        Assert.Equal(HttpStatusCode.Redirect, first.StatusCode);
        Assert.Contains("width: 40", shop.Text("jar-cabinet"), StringComparison.Ordinal);
        // The answer was lost and the form is sent again.
        using HttpResponseMessage again = await shop.Client.PostAsync("/piece/jar-cabinet/edit", Width("w1", 1, "40"));
        Assert.Equal(HttpStatusCode.Redirect, again.StatusCode);
        Assert.Equal(2, shop.Database.Find("jar-cabinet")!.Revision);
        using HttpResponseMessage late = await shop.Client.PostAsync("/piece/jar-cabinet/edit", Width("w2", 1, "41"));
        Assert.Equal(HttpStatusCode.Conflict, late.StatusCode);
        Assert.Contains("41", await late.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        Assert.Contains("width: 40", shop.Text("jar-cabinet"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("wide")]
    [InlineData("")]
    [InlineData("1/0")]
    [InlineData("<script>alert(1)</script>")]
    public async Task Edit_ThatCannotBeRead_SaysWhyWithWhatWasTypedAndKeepsTheText(string width)
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        string before = shop.Text("jar-cabinet");
        using HttpResponseMessage answer = await shop.Client.PostAsync("/piece/jar-cabinet/edit", Width("w1", 1, width));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        string page = await answer.Content.ReadAsStringAsync();
        Assert.Contains("data-fault", page, StringComparison.Ordinal);
        Assert.DoesNotContain("<script>alert", page, StringComparison.Ordinal);
        Assert.Equal(before, shop.Text("jar-cabinet"));
    }

    [Fact]
    public async Task Text_WithMistakes_IsKeptAndShownWithItsLine()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        string broken = shop.Text("jar-cabinet").Replace("unit: in", "unit: ells", StringComparison.Ordinal);
        using HttpResponseMessage kept = await shop.Client.PostAsync("/piece/jar-cabinet/text", Form(("change", "w1"), ("revision", "1"), ("back", "/piece/jar-cabinet/text"), ("text", broken.ReplaceLineEndings("\r\n"))));
        Assert.Equal(HttpStatusCode.Redirect, kept.StatusCode);
        Assert.Equal("/piece/jar-cabinet/text", kept.Headers.Location?.ToString());
        Assert.Equal(broken, shop.Text("jar-cabinet"));
        string page = await shop.Client.GetStringAsync("/piece/jar-cabinet/text");
        Assert.Matches(new Regex("line 6 of the text of jar-cabinet"), page);
        // The last step can be taken back from there.
        using HttpResponseMessage undone = await shop.Client.PostAsync("/piece/jar-cabinet/undo", Form(("change", "w2"), ("revision", "2"), ("back", "/piece/jar-cabinet")));
        Assert.Equal(HttpStatusCode.Redirect, undone.StatusCode);
        Assert.Contains("unit: in", shop.Text("jar-cabinet"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("https://evil.example/")]
    [InlineData("//evil.example")]
    [InlineData("/piece/jar-cabinet-evil")]
    public async Task Edit_NeverLeadsAwayFromItsPiece(string back)
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        using HttpResponseMessage answer = await shop.Client.PostAsync("/piece/jar-cabinet/undo", Form(("change", "w1"), ("revision", "1"), ("back", back)));
        Assert.DoesNotContain("evil", answer.Headers.Location?.ToString() ?? "", StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/piece/jar-cabinet?size=\u0014")]
    [InlineData("/piece/jar-cabinet?size=\r\nSet-Cookie: a=b")]
    [InlineData("/piece/jar-cabinet?size=\u00e9")]
    public async Task Form_LeadingBackToWhatIsNoAddress_IsMadeAndLeadsToItsPiece(string back)
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        using HttpResponseMessage answer = await shop.Client.PostAsync("/piece/jar-cabinet/save-point", Form(("change", "w1"), ("revision", "1"), ("back", back), ("point", "here")));
        Assert.Equal((HttpStatusCode.Redirect, "/piece/jar-cabinet"), (answer.StatusCode, answer.Headers.Location?.ToString()));
        using HttpResponseMessage viewing = await shop.Client.PostAsync("/viewing", Form(("unit", "mm"), ("back", back)));
        Assert.Equal((HttpStatusCode.Redirect, "/"), (viewing.StatusCode, viewing.Headers.Location?.ToString()));
        Assert.Equal("", shop.Terminal.Error);
    }

    [Fact]
    public async Task New_FromNothingAndFromASample_MakesPiecesWithNamesOfTheirOwn()
    {
        await using KeptShop shop = await KeptShop.OpenAsync(hasSamples: false);
        using HttpResponseMessage made = await shop.Client.PostAsync("/new", Form(("change", "n1"), ("name", "Tool chest"), ("kind", "case"), ("unit", "in"), ("width", "36"), ("height", "30 1/2"), ("depth", "18")));
        Assert.Equal("/piece/tool-chest", made.Headers.Location?.ToString());
        Assert.Contains("height: 30 1/2", shop.Text("tool-chest"), StringComparison.Ordinal);
        for (int i = 0; i < 2; i++)
        {
            using HttpResponseMessage copied = await shop.Client.PostAsync("/new", Form(("change", $"n{i + 2}"), ("sample", "jar-cabinet")));
            Assert.Equal(i == 0 ? "/piece/jar-cabinet" : "/piece/jar-cabinet-2", copied.Headers.Location?.ToString());
        }
        using HttpResponseMessage again = await shop.Client.PostAsync("/new", Form(("change", "n3"), ("sample", "jar-cabinet")));
        Assert.Equal("/piece/jar-cabinet-2", again.Headers.Location?.ToString());
        using HttpResponseMessage none = await shop.Client.PostAsync("/new", Form(("change", "n9"), ("sample", "../shop")));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, none.StatusCode);
        using HttpResponseMessage wrong = await shop.Client.PostAsync("/new", Form(("change", "n10"), ("name", "Chest"), ("kind", "case"), ("unit", "in"), ("width", "wide"), ("height", "30"), ("depth", "18")));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, wrong.StatusCode);
        Assert.Equal(3, shop.Database.Documents().Count(d => d.Kind == DocumentKind.Piece));
    }
}
