using Microsoft.Playwright;

namespace Setout.Tests.Browser;

/// <summary>That the hand of the whole job notices what it is there to notice.</summary>
public sealed class HandTests(Room room)
{
    private async Task<Sheet> At(string html)
    {
        Sheet sheet = await room.OpenAsync();
        await sheet.Page.SetContentAsync($"<!DOCTYPE html><html><body>{html}</body></html>");
        return sheet;
    }

    [Theory, InlineData(false), InlineData(true)]
    public async Task Press_ThatChangesNothing_IsADeadEnd(bool isKeyboard)
    {
        await using Sheet sheet = await At("<button>To nowhere</button><p data-laying>1</p><button onclick=\"document.querySelector('b').textContent = 'there'\">Onwards</button><b></b>");
        // What goes on by itself did not come of the press.
        await sheet.Page.EvaluateAsync("() => { document.querySelector('button').onclick = () => { document.querySelector('[data-laying]').textContent += '1'; }; }");
        var hand = Hand.Of(isKeyboard, sheet.Page);
        await hand.PressAsync(sheet.Page.GetByText("Onwards"));
        Assert.Empty(hand.DeadEnds);
        await hand.PressAsync(sheet.Page.GetByText("To nowhere"), patience: 300);
        Assert.Single(hand.DeadEnds);
        Assert.Equal(2, hand.Acts);
    }

    [Fact]
    public async Task Press_ThatIsRefused_IsADeadEnd()
    {
        await using KeptShop shop = await KeptShop.OpenAsync();
        await using Sheet sheet = await room.OpenAsync(address: shop.Address);
        await sheet.Page.GotoAsync("/piece/jar-cabinet?size=C.width");
        var hand = Hand.Of(false, sheet.Page);
        await hand.TypeAsync("Outside width of C", "wide");
        Task<IResponse> answered = sheet.Page.WaitForResponseAsync(a => a.Url.EndsWith("/edit", StringComparison.Ordinal));
        await sheet.Page.GetByLabel("Outside width of C", new() { Exact = true }).PressAsync("Enter");
        await answered;
        Assert.Contains(hand.DeadEnds, d => d.Contains("422", StringComparison.Ordinal));
    }

    [Fact]
    public async Task ListOfKeys_Opened_IsCountedAsHelpOnce()
    {
        await using Sheet sheet = await room.OpenAsync();
        await sheet.Page.GotoAsync("/piece/jar-cabinet");
        var hand = Hand.Of(false, sheet.Page);
        await hand.PressAsync(AriaRole.Button, "Keys (?)");
        Assert.Equal(1, hand.Helped);
        await hand.PressAsync(AriaRole.Button, "Close");
        Assert.Equal(1, hand.Helped);
    }

    [Theory]
    [InlineData("outline: none; border: 2px solid black; box-shadow: 0 0 2px black", false)]
    [InlineData("outline: 3px solid transparent", false)]
    [InlineData("outline: 3px solid black", false)]
    [InlineData("", true)]
    public async Task Button_ThatLooksTheSameWithTheKeyboardOnIt_IsNotPressed(string style, bool isSeen)
    {
        await using Sheet sheet = await At($"<input autofocus><button style=\"{style}\" onclick=\"this.textContent = 'Pressed'\">Press it</button>");
        var hand = Hand.Of(true, sheet.Page);
        Exception? told = await Record.ExceptionAsync(() => hand.PressAsync(sheet.Page.Locator("button")));
        if (isSeen) Assert.Null(told);
        else Assert.Contains("does not show that it has the keyboard", told?.Message, StringComparison.Ordinal);
    }
}
