using System.Diagnostics;
using System.Globalization;
using Microsoft.Playwright;

namespace Setout.Speed;

/// <summary>Times what a person sees who types into a dimension: from the key to the redrawn elevation, while the layouts of the key before are being worked out.</summary>
internal static class BrowserSpeed
{
    // Longer than it takes until a trial's layouts begin, shorter than they take.
    private const int BetweenKeys = 520, WarmUp = 20, ShortPiece = 4, ShortBank = 6;

    private const string Watch = """
        () => {
          window.times = [];
          let pressed = 0, painted = 0;
          document.addEventListener('keydown', () => { pressed = performance.now(); }, true);
          document.addEventListener('setout:drawn', () => {
            if (!pressed) return;
            const from = pressed, drawn = performance.now();
            pressed = 0;
            requestAnimationFrame(() => { const channel = new MessageChannel(); channel.port1.onmessage = () => window.times.push([drawn - from, performance.now() - from]); channel.port2.postMessage(0); });
          });
        }
        """;

    /// <summary>Runs the program on a new store and types.</summary>
    /// <param name="program">The built program.</param>
    /// <param name="keys">How many keys are timed.</param>
    public static async Task RunAsync(string program, int keys)
    {
        string folder = Directory.CreateTempSubdirectory("setout-speed-").FullName;
        using var server = Process.Start(new ProcessStartInfo(program, ["serve", "--data", folder, "--port", "0"]) { RedirectStandardOutput = true, UseShellExecute = false })!;
        try
        {
            string address = (await server.StandardOutput.ReadLineAsync())!.Split(' ')[^1];
            using IPlaywright playwright = await Playwright.CreateAsync();
            await using IBrowser browser = await playwright.Chromium.LaunchAsync(new() { ExecutablePath = "/usr/bin/chromium", Args = ["--no-sandbox", "--disable-gpu", "--no-first-run", "--disable-background-networking"] });
            IPage page = await browser.NewPageAsync(new() { ViewportSize = new() { Width = 1440, Height = 900 } });
            foreach ((int bays, int drawers) in new[] { (ShortPiece, ShortBank), (8, 11) }) await TypeAsync(page, address, bays, drawers, keys);
        }
        finally
        {
            server.Kill();
            await server.WaitForExitAsync();
            Directory.Delete(folder, true);
        }
    }

    /// <summary>The program's own share: the same trials asked for without a browser and without layouts.</summary>
    private static async Task AskAsync(string piece, int parts, int keys)
    {
        var address = new Uri(piece);
        using var client = new HttpClient();
        client.DefaultRequestHeaders.Add("Origin", address.GetLeftPart(UriPartial.Authority));
        var times = new double[keys];
        for (int i = -WarmUp; i < keys; i++)
        {
            using var fields = new FormUrlEncodedContent(new Dictionary<string, string> { ["key"] = "C.width", ["choice"] = "width", ["field-size"] = $"160.{i + WarmUp + 1}", ["part"] = "drawing", ["paper"] = "wide", ["size"] = "C.width" });
            long start = Stopwatch.GetTimestamp();
            using HttpResponseMessage answer = await client.PostAsync(new Uri(piece + "/trial"), fields);
            _ = await answer.Content.ReadAsByteArrayAsync();
            if (i >= 0) times[i] = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
        }
        Array.Sort(times);
        Console.WriteLine($"{parts} parts, {keys} trials asked for without a browser: p50 {times[keys / 2]:0} ms, p95 {times[(int)(0.95 * keys)]:0} ms");
    }

    private static async Task TypeAsync(IPage page, string address, int bays, int drawers, int keys)
    {
        await page.GotoAsync(address);
        await page.GetByLabel("Its name", new() { Exact = true }).FillAsync($"Seed store {bays}");
        foreach (string side in new[] { "Width", "Height", "Depth" }) await page.GetByLabel($"{side} outside", new() { Exact = true }).FillAsync("30");
        await page.GetByRole(AriaRole.Button, new() { Name = "Begin", Exact = true }).ClickAsync();
        await page.WaitForURLAsync("**/piece/**");
        string piece = page.Url.Split('?', '#')[0];
        await page.GotoAsync(piece + "/text");
        await page.Locator("#text").FillAsync(LargePiece.Text(bays, drawers));
        await page.Locator("[data-text-form] button[type=submit]").ClickAsync();
        await page.GotoAsync(piece);
        int parts = await page.EvaluateAsync<int>("() => [...document.querySelectorAll('#parts .count')].reduce((sum, c) => sum + parseInt(c.textContent), 0)");
        await AskAsync(piece, parts, keys);
        await page.Locator(".for-desk [data-key='C.width'] text").First.ClickAsync();
        ILocator field = page.Locator("#sizing-size");
        await field.FillAsync("160.5");
        await page.EvaluateAsync(Watch);
        for (int i = 0; i < keys + WarmUp; i++)
        {
            if (i == WarmUp) await page.EvaluateAsync("() => { window.times = []; }");
            await field.PressAsync(i % 2 == 0 ? ((i / 2 % 9) + 1).ToString(CultureInfo.InvariantCulture) : "Backspace");
            await page.WaitForTimeoutAsync(BetweenKeys);
        }
        double[][] times = await page.EvaluateAsync<double[][]>("() => window.times");
        string Of(int which)
        {
            double[] sorted = [.. times.Select(t => t[which]).Order()];
            double At(double share) => sorted[Math.Min(sorted.Length - 1, (int)(share * sorted.Length))];
            return $"p50 {At(0.5):0} ms, p95 {At(0.95):0} ms, max {sorted[^1]:0} ms";
        }
        Console.WriteLine($"{parts} parts, {times.Length} of {keys} keys redrawn, {Environment.ProcessorCount} cores: drawn {Of(0)}; painted {Of(1)}");
    }
}
