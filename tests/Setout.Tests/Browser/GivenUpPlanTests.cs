using System.Net;

namespace Setout.Tests.Browser;

/// <summary>Forms that wait for a plan, while the texts it is made from are changed.</summary>
public sealed class GivenUpPlanTests
{
    [Theory]
    [InlineData("bought", "item=none", HttpStatusCode.UnprocessableEntity)]
    [InlineData("cut", "plan=none&run=1", HttpStatusCode.Conflict)]
    public async Task Form_WaitingForAPlanThatIsGivenUp_IsAnsweredByTheNewTexts(string word, string fields, HttpStatusCode wanted)
    {
        await using KeptShop shop = await KeptShop.OpenAsync(isLaidOut: false);
        using var body = new StringContent($"change=w1&revision=1&back=/piece/luthiers-bench&{fields}", null, "application/x-www-form-urlencoded");
        Task<HttpResponseMessage> waiting = shop.Client.PostAsync($"/piece/luthiers-bench/{word}", body);
        await UnderWayAsync(shop, waiting, "luthiers-bench");
        shop.Change("luthiers-bench", t => t + "# another remark\n");
        // Whoever looks at the new texts gives up what was made of the old ones.
        await shop.Client.GetStringAsync("/piece/luthiers-bench");
        using HttpResponseMessage answer = await waiting;
        Assert.Equal("", shop.Terminal.Error);
        Assert.Equal(wanted, answer.StatusCode);
    }

    [Theory]
    [InlineData("luthiers-bench")]
    [InlineData("jar-cabinet")]
    public async Task RunOfSeveralPieces_WaitingForAPlanThatIsGivenUp_IsAnsweredByTheNewTexts(string changed)
    {
        await using KeptShop shop = await KeptShop.OpenAsync(isLaidOut: false);
        const string both = "piece=jar-cabinet&piece=luthiers-bench";
        using var body = new StringContent($"change=w1&revision=1&back=/together&plan=none&run=1&{both}", null, "application/x-www-form-urlencoded");
        Task<HttpResponseMessage> waiting = shop.Client.PostAsync("/together/cut", body);
        await UnderWayAsync(shop, waiting, "/jar-cabinet/luthiers-bench");
        shop.Change(changed, t => t + "# another remark\n");
        // Whoever looks at the new texts as a browser does is not kept waiting, and gives up what was made of the old ones.
        using var look = new HttpRequestMessage(HttpMethod.Get, $"/together?{both}") { Headers = { Accept = { new("text/html") } } };
        using (HttpResponseMessage page = await shop.Client.SendAsync(look)) Assert.Equal(HttpStatusCode.OK, page.StatusCode);
        using HttpResponseMessage answer = await waiting;
        Assert.Equal("", shop.Terminal.Error);
        Assert.Equal(HttpStatusCode.Conflict, answer.StatusCode);
    }

    // It waits as soon as the layouts are under way.
    private static async Task UnderWayAsync(KeptShop shop, Task waiting, string name)
    {
        using var news = new StreamReader(await shop.Client.GetStreamAsync("/changes"));
        while (!waiting.IsCompleted && await news.ReadLineAsync() is { } line && !line.Contains(name, StringComparison.Ordinal))
        {
        }
    }
}
