using System.Collections.Immutable;
using System.Net;
using System.Text.RegularExpressions;

namespace Setout.Soak;

/// <summary>Forms with anything in their fields, sent to a workbench: it answers with a page, a refusal or a redirect, and never with a fault of its own.</summary>
/// <param name="client">With the workbench's address and its own origin.</param>
/// <param name="pieces">Names of its pieces.</param>
/// <param name="keys">Keys that may be chosen.</param>
internal sealed partial class FormCases(HttpClient client, ImmutableArray<string> pieces, ImmutableArray<string> keys)
{
    private static readonly string[] s_words = ["edit", "text", "undo", "redo", "rename", "put-away", "take-back", "save-point", "go-back", "begin-from", "nothing"];
    private static readonly string[] s_choices = ["width", "height", "depth", "shelves", "drawers", "doors", "divide", "empty", "take-out", "move", "top", "kind", "name"];
    private static readonly string[] s_fields = ["size", "count", "of", "at", "kind", "width", "name", "front", "way", "height"];
    private static readonly string[] s_pages = ["", "/buy", "/text", "/history", "/fit", "?view=plan", "?view=apart"];

    /// <summary>Sends one.</summary>
    /// <returns>What kind it was and how it was answered.</returns>
    /// <exception cref="SoakException">It was answered with a fault.</exception>
    public async Task<string> RunAsync(Random random, Action<string> input)
    {
        string piece = random.Next(12) == 0 ? Spoiling.Typed(random) : pieces[random.Next(pieces.Length)], word = s_words[random.Next(s_words.Length)];
        string path = $"/piece/{Uri.EscapeDataString(piece)}";
        bool isPage = random.Next(8) == 0, isNew = !isPage && random.Next(20) == 0;
        if (isPage)
        {
            string page = path + s_pages[random.Next(s_pages.Length)];
            if (random.Next(3) == 0) page += (page.Contains('?') ? "&" : "?") + "size=" + Uri.EscapeDataString(Key(random));
            input("GET " + page);
            using HttpResponseMessage shown = await client.GetAsync(page);
            return Answered("page", shown, page);
        }
        Dictionary<string, string> fields = isNew ? New(random) : await FieldsAsync(random, path, word);
        string to = isNew ? "/new" : $"{path}/{word}";
        input($"POST {to}\n{string.Join('\n', fields.Select(f => $"{f.Key}={f.Value}"))}");
        using HttpResponseMessage answer = await client.PostAsync(to, new FormUrlEncodedContent(fields));
        return Answered(isNew ? "new" : word, answer, to);
    }

    private string Key(Random random) => random.Next(10) == 0 ? Spoiling.Typed(random) : keys[random.Next(keys.Length)];

    private static string Answered(string kind, HttpResponseMessage answer, string to) => answer.StatusCode >= HttpStatusCode.InternalServerError
        ? throw new SoakException($"{to} was answered with {(int)answer.StatusCode}.") : $"form {kind}: {(int)answer.StatusCode}";

    private static Dictionary<string, string> New(Random random) => new()
    {
        ["change"] = $"n{random.Next()}",
        ["name"] = random.Next(2) == 0 ? "one more" : Spoiling.Typed(random),
        ["kind"] = random.Next(2) == 0 ? "case" : "frame",
        ["unit"] = random.Next(2) == 0 ? "in" : "mm",
        // So odd that few are made: the shelf would grow beyond all measure.
        ["width"] = Spoiling.Typed(random),
        ["height"] = Spoiling.Typed(random),
        ["depth"] = "none",
    };

    private async Task<Dictionary<string, string>> FieldsAsync(Random random, string path, string word)
    {
        // As a rule what the page shows now; sometimes an old one or nothing at all.
        string revision = random.Next(6) == 0 ? Spoiling.Typed(random) : await RevisionAsync(path);
        var fields = new Dictionary<string, string>
        {
            ["change"] = random.Next(30) == 0 ? "again" : $"c{random.Next()}",
            ["revision"] = revision,
            ["back"] = random.Next(5) == 0 ? Spoiling.Typed(random) : path,
        };
        switch (word)
        {
            case "edit":
                fields["key"] = Key(random);
                fields["choice"] = random.Next(10) == 0 ? Spoiling.Typed(random) : s_choices[random.Next(s_choices.Length)];
                foreach (string field in s_fields) fields["field-" + field] = Spoiling.Typed(random);
                break;
            case "text":
                fields["text"] = Spoiling.Typed(random);
                break;
            case "rename" or "begin-from":
                // Names stay what they are, or the next case finds nothing.
                fields["to"] = random.Next(2) == 0 ? "shop" : "a/b" + Spoiling.Typed(random);
                break;
            case "save-point":
                fields["point"] = Spoiling.Typed(random);
                break;
            case "go-back":
                fields["state"] = $"{random.Next(1, 60)}";
                break;
        }
        if (random.Next(20) == 0) fields.Remove(fields.Keys.ElementAt(random.Next(fields.Count)));
        return fields;
    }

    private async Task<string> RevisionAsync(string path)
    {
        using HttpResponseMessage page = await client.GetAsync(path + "/history");
        return Revision().Match(await page.Content.ReadAsStringAsync()) is { Success: true } found ? found.Groups[1].Value : "1";
    }

    [GeneratedRegex("name=\"revision\" value=\"([0-9]+)\"", RegexOptions.CultureInvariant)]
    private static partial Regex Revision();
}
