using Microsoft.Playwright;

namespace Setout.Tests.Browser;

/// <summary>Fingers on the glass: touch events as the browser has them from a screen, so that its own scrolling, tapping and zooming take part.</summary>
internal sealed class Fingers
{
    private const int Steps = 8;

    private readonly ICDPSession _screen;

    private Fingers(ICDPSession screen) => _screen = screen;

    public static async Task<Fingers> OnAsync(IPage page) => new(await page.Context.NewCDPSessionAsync(page));

    /// <summary>Puts a finger down and takes it away.</summary>
    public async Task TapAsync(float x, float y)
    {
        await SendAsync("touchStart", (x, y));
        await SendAsync("touchEnd");
    }

    /// <summary>Moves one finger from a place to another and takes it away there.</summary>
    public Task SwipeAsync((float X, float Y) from, (float X, float Y) to) => MoveAsync([(from, to)]);

    /// <summary>Moves fingers together, each from a place to another, in equal steps.</summary>
    /// <param name="ways">One for each finger; the first comes down first.</param>
    /// <param name="isLifted">Whether they are taken away at the end.</param>
    public async Task MoveAsync(((float X, float Y) From, (float X, float Y) To)[] ways, bool isLifted = true)
    {
        for (int i = 1; i <= ways.Length; i++) await SendAsync("touchStart", [.. ways[..i].Select(w => w.From)]);
        for (int step = 1; step <= Steps; step++)
        {
            float share = step / (float)Steps;
            await SendAsync("touchMove", [.. ways.Select(w => (w.From.X + ((w.To.X - w.From.X) * share), w.From.Y + ((w.To.Y - w.From.Y) * share)))]);
        }
        if (isLifted) await LiftAsync();
    }

    /// <summary>Takes the second of two fingers away, moves the first on and takes it away too.</summary>
    public async Task LeaveAsync((float X, float Y) from, (float X, float Y) to)
    {
        await SendAsync("touchEnd", 1, from);
        for (int step = 1; step <= Steps; step++) await SendAsync("touchMove", (from.X + ((to.X - from.X) * step / Steps), from.Y + ((to.Y - from.Y) * step / Steps)));
        await LiftAsync();
    }

    /// <summary>Takes all fingers away.</summary>
    public Task LiftAsync() => SendAsync("touchEnd");

    private Task SendAsync(string kind, params (float X, float Y)[] fingers) => SendAsync(kind, 0, fingers);

    private Task SendAsync(string kind, int first, params (float X, float Y)[] fingers) => _screen.SendAsync("Input.dispatchTouchEvent", new()
    {
        ["type"] = kind,
        ["touchPoints"] = fingers.Select((f, i) => new Dictionary<string, object> { ["x"] = f.X, ["y"] = f.Y, ["id"] = first + i }).ToArray(),
    });
}
