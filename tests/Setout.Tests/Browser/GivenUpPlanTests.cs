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
        await using KeptShop shop = await KeptShop.OpenAsync();
        using var body = new StringContent($"change=w1&revision=1&back=/piece/luthiers-bench&{fields}", null, "application/x-www-form-urlencoded");
        Task<HttpResponseMessage> waiting = shop.Client.PostAsync($"/piece/luthiers-bench/{word}", body);
        // It waits as soon as the layouts are under way.
        using (var news = new StreamReader(await shop.Client.GetStreamAsync("/changes")))
        {
            while (!waiting.IsCompleted && await news.ReadLineAsync() is { } line && !line.Contains("luthiers-bench", StringComparison.Ordinal))
            {
            }
        }
        shop.Change("luthiers-bench", t => t + "# another remark\n");
        // Whoever looks at the new texts gives up what was made of the old ones.
        await shop.Client.GetStringAsync("/piece/luthiers-bench");
        using HttpResponseMessage answer = await waiting;
        Assert.Equal("", shop.Terminal.Error);
        Assert.Equal(wanted, answer.StatusCode);
    }
}
