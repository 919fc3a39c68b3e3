using System.Collections.Immutable;
using System.Net;
using System.Text.RegularExpressions;
using Setout.Workbench.Changing;

namespace Setout.Soak;

/// <summary>
/// Forms with anything in their fields, sent to a workbench: half of them as its pages offer them, the others by what they ask for, whether it is offered now or not.
/// It answers with a page, a refusal or a redirect, and never with a fault of its own; what was written down can be read afterwards.
/// </summary>
/// <param name="client">With the workbench's address and its own origin.</param>
/// <param name="pieces">Names of its pieces.</param>
/// <param name="keys">Keys that may be chosen.</param>
/// <param name="texts">The sound texts of these pieces, in the same order.</param>
/// <param name="shop">A sound text of the shop.</param>
internal sealed partial class FormCases(HttpClient client, ImmutableArray<string> pieces, ImmutableArray<string> keys, ImmutableArray<string> texts, string shop)
{
    // What changes no piece.
    private static readonly string[] s_quiet = ["viewing", "import", "upload", "leave", "backup", "enough"];

    private static readonly string[] s_pages =
        ["", "", "", "?size=", "?size=", "?size=", "/buy", "/break-down", "/assemble", "/fit", "/facts", "/facts", "/machine", "/finish", "/text", "/history", "/history?state=1", "/says", "/says?of=", "?view=plan", "?view=apart", "/cost"];

    private static readonly string[] s_otherPages = ["/", "/shop", "/shop?item=stock", "/shop?item=stock.1", "/shop?item=saws.guided", "/shop?item=", "/shop/text", "/keeping", "/viewing", "/viewing?back=", "/nowhere", "/keeping/restore?backup="];

    /// <summary>Sends one.</summary>
    /// <returns>What kind it was and how it was answered.</returns>
    /// <exception cref="SoakException">It was answered with a fault, or what was written down cannot be read any more.</exception>
    public async Task<string> RunAsync(Random random, Action<string> input)
    {
        string piece = random.Next(16) == 0 ? Spoiling.Typed(random) : pieces[random.Next(pieces.Length)];
        return random.Next(16) switch
        {
            0 => await PageAsync(random, PageOf(random, piece), input),
            < 9 => await OfferedAsync(random, piece, input),
            _ => await ByWordAsync(random, piece, input),
        };
    }

    private async Task<string> PageAsync(Random random, string page, Action<string> input)
    {
        input("GET " + page);
        using HttpResponseMessage shown = await client.GetAsync(page);
        return Answered("page", shown, page);
    }

    // A form of a page, as it stands there or spoilt.
    private async Task<string> OfferedAsync(Random random, string piece, Action<string> input)
    {
        string page = PageOf(random, piece);
        input("GET " + page);
        using HttpResponseMessage shown = await client.GetAsync(page);
        Answered("page", shown, page);
        ImmutableArray<PageForm> forms = PageForm.Of(await shown.Content.ReadAsStringAsync());
        if (forms.IsEmpty) return "form: none offered";
        // Of each kind one: there are many edits for each mark.
        PageForm[] kinds = [.. forms.GroupBy(f => f.Word).Select(g => g.ElementAt(random.Next(g.Count())))];
        PageForm form = kinds[random.Next(kinds.Length)];
        var sent = SpoiltForm.Of(form, random, texts);
        if (random.Next(2) == 0) sent.Spoil(random);
        // A form of the shelf may be of any piece.
        string[] parts = form.Action.Split('/');
        return await SendAsync(form.Action, form.Word, parts is ["", "piece", var of, ..] ? Uri.UnescapeDataString(of) : piece, sent, input);
    }

    // A form of this program, whether a page offers it now or not.
    private async Task<string> ByWordAsync(Random random, string piece, Action<string> input)
    {
        string word = FormWords.Any(random);
        string to = FormWords.Address(word, piece, pieces[random.Next(pieces.Length)]);
        string path = to.StartsWith("/shop", StringComparison.Ordinal) ? "/shop" : At(piece);
        var sent = new SpoiltForm();
        sent.Add("change", random.Next(30) == 0 ? "again" : $"c{random.Next()}");
        // As a rule what the page shows now; sometimes an old one or nothing at all.
        sent.Add("revision", random.Next(8) == 0 ? Spoiling.Typed(random) : await RevisionAsync(path));
        sent.Add("back", random.Next(5) == 0 ? Spoiling.Typed(random) : path);
        FormWords.Fill(sent, word, random, Key, texts, pieces);
        if (random.Next(3) == 0) sent.Spoil(random);
        return await SendAsync(to, word, piece, sent, input);
    }

    private async Task<string> SendAsync(string to, string word, string piece, SpoiltForm form, Action<string> input)
    {
        input($"POST {to}\n{form}");
        using HttpContent content = form.Content();
        HttpResponseMessage answer;
        try
        {
            answer = await client.PostAsync(to, content);
        }
        catch (HttpRequestException) when (content.Headers.ContentLength > Posts.MostBytes)
        {
            // It is refused before all of it has come, and not listened to any further.
            return $"form {word}: too large";
        }
        using HttpResponseMessage disposed = answer;
        string outcome = Answered("form " + word, answer, to);
        if (answer.StatusCode is HttpStatusCode.Redirect or HttpStatusCode.OK) await AfterAsync(to, word, piece, form, answer);
        return outcome;
    }

    // What was made is looked at, and taken back where the next case would find nothing to do: a text that cannot be read, a piece that is gone.
    private async Task AfterAsync(string to, string word, string piece, SpoiltForm form, HttpResponseMessage answer)
    {
        string at = At(piece);
        switch (word)
        {
            case "new" or "begin-from":
                if (answer.Headers.Location?.ToString() is { } made && made.StartsWith("/piece/", StringComparison.Ordinal) && !pieces.Any(p => made == At(p))) await PlainAsync(made, "put-away");
                return;
            case "rename":
                await PlainAsync(At(form["to"].Trim()), "rename", ("to", piece));
                return;
            case "put-away":
                await PlainAsync(at, "take-back");
                return;
        }
        // What is not sent to a piece may do anything to any of them: all are looked at.
        foreach (string name in to.StartsWith("/piece/", StringComparison.Ordinal) ? [piece] : s_quiet.Contains(word) ? [] : pieces.AsEnumerable()) await LookAsync(name, to);
        if (!to.StartsWith("/shop/", StringComparison.Ordinal)) return;
        using HttpResponseMessage rack = await client.GetAsync("/shop");
        Answered("page", rack, "/shop");
    }

    // Whatever anybody typed, a log reads back; a text may hold mistakes, which is mended here so that the next case finds something to do.
    private async Task LookAsync(string piece, string after)
    {
        string at = At(piece);
        using HttpResponseMessage facts = await client.GetAsync(at + "/facts");
        Answered("page", facts, at + "/facts");
        if (facts.StatusCode == HttpStatusCode.NotFound && pieces.Contains(piece))
        {
            await PlainAsync(at, "take-back");
            return;
        }
        string page = await facts.Content.ReadAsStringAsync();
        if (!page.Contains(" cannot be read</h1>", StringComparison.Ordinal)) return;
        if (page.Contains(" of the log of ", StringComparison.Ordinal)) throw new SoakException($"After {after} the log of '{piece}' cannot be read.");
        if (page.Contains(" of the text of the shop", StringComparison.Ordinal)) await PlainAsync("/shop", "text", ("text", shop));
        if (pieces.IndexOf(piece) is var i and >= 0) await PlainAsync(at, "text", ("text", texts[i % texts.Length]));
    }

    private async Task PlainAsync(string at, string word, params (string Name, string Value)[] fields)
    {
        var form = new SpoiltForm();
        form.Add("change", $"p{Guid.NewGuid():N}");
        form.Add("revision", await RevisionAsync(at));
        form.Add("back", at);
        foreach ((string name, string value) in fields) form.Add(name, value);
        using HttpContent content = form.Content();
        using HttpResponseMessage answer = await client.PostAsync($"{at}/{word}", content);
        Answered(word, answer, $"{at}/{word}");
    }

    private static string At(string piece) => $"/piece/{Uri.EscapeDataString(piece)}";

    private string Key(Random random) => random.Next(10) == 0 ? Spoiling.Typed(random) : keys[random.Next(keys.Length)];

    private string PageOf(Random random, string piece)
    {
        if (random.Next(5) == 0)
        {
            string other = s_otherPages[random.Next(s_otherPages.Length)];
            return other.EndsWith('=') ? other + Uri.EscapeDataString(Spoiling.Typed(random)) : other;
        }
        string page = At(piece) + s_pages[random.Next(s_pages.Length)];
        if (page.EndsWith('=')) page += Uri.EscapeDataString(Key(random));
        else if (random.Next(8) == 0) page += $"{(page.Contains('?') ? '&' : '?')}{(random.Next(2) == 0 ? "size" : "run")}={Uri.EscapeDataString(Spoiling.Typed(random))}";
        return page;
    }

    private static string Answered(string kind, HttpResponseMessage answer, string to) => answer.StatusCode >= HttpStatusCode.InternalServerError
        ? throw new SoakException($"{to} was answered with {(int)answer.StatusCode}.") : $"{kind}: {(int)answer.StatusCode}";

    private async Task<string> RevisionAsync(string path)
    {
        using HttpResponseMessage page = await client.GetAsync(path == "/shop" ? "/shop/text" : path + "/history");
        return Revision().Match(await page.Content.ReadAsStringAsync()) is { Success: true } found ? found.Groups[1].Value : "1";
    }

    [GeneratedRegex("name=\"revision\" value=\"([0-9]+)\"", RegexOptions.CultureInvariant)]
    private static partial Regex Revision();
}
