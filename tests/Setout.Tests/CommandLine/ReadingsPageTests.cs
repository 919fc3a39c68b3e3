using System.Text;
using System.Text.RegularExpressions;
using Setout.Commands;
using Setout.Testing;

namespace Setout.Tests.CommandLine;

/// <summary>
/// The page on readings cannot lie: each of its commands is run in the order of the page, on copies of the samples, and what it shows must be
/// what is answered. A line <c>...</c> stands for lines left out. Ids of entries are new each time and compared by their order.
/// </summary>
public sealed partial class ReadingsPageTests : IDisposable
{
    private const string Page = "docs/readings.md", Prompt = "$ setout ", Cut = "...";

    private readonly TestFolder _folder = new TestFolder().WithSamples();

    // From an id on the page to the id of this run.
    private readonly Dictionary<string, string> _ids = new(StringComparer.Ordinal);

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task Page_ConsoleBlocks_ShowWhatIsAnswered()
    {
        string page = File.ReadAllText(Repository.PathOf(Page));
        string now = await RunAsync(page);
        Assert.Contains(Prompt, page, StringComparison.Ordinal);
        Snapshots.MatchFile(now, Page);
    }

    [Fact]
    public async Task Page_Keys_AreThereAfterTheDay()
    {
        string page = File.ReadAllText(Repository.PathOf(Page));
        await RunAsync(page);
        string[] keys = [.. Dotted().Matches(Prose(page)).Select(m => m.Groups[1].Value).Distinct().Where(k => !k.EndsWith(".yaml", StringComparison.Ordinal) && !IsCode(k))];
        Assert.Contains("L3.opening", keys);
        Assert.Contains("bench.slide.thickness", keys);
        Assert.True(keys.Length >= 14, $"only {string.Join(", ", keys)}");
        foreach (string key in keys)
        {
            var terminal = new TestTerminal();
            Assert.True(await terminal.RunAsync("why", _folder.Of("luthiers-bench.yaml"), key) == ExitCode.Fine, $"{key}: {terminal.Error}");
        }
    }

    [Fact]
    public void Page_Findings_AreThoseOfTheProgram()
    {
        string[] codes = [.. FindingRow().Matches(File.ReadAllText(Repository.PathOf(Page))).Select(m => m.Groups[1].Value)];
        Assert.True(codes.Length >= 6, $"only {string.Join(", ", codes)}");
        Assert.All(codes, code => Assert.True(IsCode(code), code));
    }

    [Fact]
    public async Task Page_CommandsInItsTables_AreTaken()
    {
        string page = File.ReadAllText(Repository.PathOf(Page));
        await RunAsync(page);
        string[] typed = [.. Typed().Matches(Prose(page)).Select(m => m.Groups[1].Value)];
        Assert.True(typed.Length >= 9, $"only {string.Join(", ", typed)}");
        foreach (string command in typed)
        {
            var terminal = new TestTerminal();
            string[] words = [.. command.Split(' ').Select(w => w == "FILE" ? _folder.Of("luthiers-bench.yaml") : w), "--dry-run"];
            int code = await terminal.RunAsync(words);
            // What the day has cut already is refused with the words that say so.
            Assert.True(code == ExitCode.Fine || terminal.Error.Contains("is cut already", StringComparison.Ordinal), $"{command}: {terminal.Error}");
        }
    }

    [Fact]
    public void Page_Pictures_AreThere() =>
        Assert.All(Picture().Matches(File.ReadAllText(Repository.PathOf(Page))), m =>
        {
            Assert.True(m.Groups[1].Length > 20, $"{m.Groups[2].Value} is not described");
            Assert.True(File.Exists(Repository.PathOf("docs/" + m.Groups[2].Value)), m.Groups[2].Value);
        });

    [Theory]
    [InlineData("a|b|c", "a|b|c", true)]
    [InlineData("a|...|c", "a|b1|b2|c", true)]
    [InlineData("a|...|c", "a|c", true)]
    [InlineData("a|...", "a|b", true)]
    [InlineData("...|c|...", "a|c|d", true)]
    [InlineData("a|c", "a|b|c", false)]
    [InlineData("a|...|c", "a|b", false)]
    [InlineData("a|...|c", "a|c|d", false)]
    [InlineData("...|x|...|x", "x", false)]
    public void Shows_OnlyWhatIsAnswered(string shown, string answered, bool expected) => Assert.Equal(expected, Shows(shown.Split('|'), answered.Split('|')));

    /// <summary>Runs the commands and gives the page with what they answer now, cut where it was cut.</summary>
    private async Task<string> RunAsync(string page)
    {
        string[] lines = page.Split('\n');
        var now = new StringBuilder();
        bool isConsole = false;
        for (int i = 0; i < lines.Length; i++)
        {
            if (lines[i].StartsWith("```", StringComparison.Ordinal)) isConsole = lines[i] == "```console";
            now.Append(lines[i]).Append(i + 1 < lines.Length ? "\n" : "");
            if (!isConsole || !lines[i].StartsWith(Prompt, StringComparison.Ordinal)) continue;
            int end = i + 1;
            while (!lines[end].StartsWith("```", StringComparison.Ordinal) && !lines[end].StartsWith(Prompt, StringComparison.Ordinal)) end++;
            string[] shown = lines[(i + 1)..end];
            string[] answered = await AnswerAsync(lines[i][Prompt.Length..], shown);
            foreach (string line in Shows(shown, answered) ? shown : CutAlike(shown, answered)) now.Append(line).Append('\n');
            i = end - 1;
        }
        return now.ToString();
    }

    private async Task<string[]> AnswerAsync(string command, string[] shown)
    {
        string[] words = [.. Word().Matches(command).Select(m => m.Value.Trim('"')).Select(w => _ids.GetValueOrDefault(w, w)).Select(w => w.EndsWith(".yaml", StringComparison.Ordinal) ? _folder.Of(w) : w)];
        var terminal = new TestTerminal();
        await terminal.RunAsync(words);
        string text = (terminal.Out + terminal.Error).Replace(_folder.Path + Path.DirectorySeparatorChar, "", StringComparison.Ordinal).TrimEnd('\n');
        // The entry that a command makes is named at the end of its first line, here and on the page.
        if (NewEntry().Match(text.Split('\n')[0]) is { Success: true } made && NewEntry().Match(shown.FirstOrDefault() ?? "") is { Success: true } known) _ids[known.Groups[1].Value] = made.Groups[1].Value;
        foreach ((string page, string real) in _ids) text = text.Replace(real, page, StringComparison.Ordinal);
        return text.Split('\n');
    }

    /// <summary>Whether the lines shown are those answered, in order, where a cut stands for any number of lines.</summary>
    private static bool Shows(ReadOnlySpan<string> shown, ReadOnlySpan<string> answered)
    {
        if (shown.Length == 0) return answered.Length == 0;
        if (shown[0].Trim() != Cut) return answered.Length > 0 && shown[0] == answered[0] && Shows(shown[1..], answered[1..]);
        for (int skip = 0; skip <= answered.Length; skip++)
            if (Shows(shown[1..], answered[skip..])) return true;
        return false;
    }

    /// <summary>The answer cut where the page cut it: a line is taken over as the next one with the same words, whatever its figures.</summary>
    private static IEnumerable<string> CutAlike(string[] shown, string[] answered)
    {
        if (!shown.Any(s => s.Trim() == Cut)) return answered;
        var kept = new List<string>();
        int at = 0;
        foreach (string line in shown)
        {
            if (line.Trim() == Cut)
            {
                kept.Add(line);
                continue;
            }
            int next = Array.FindIndex(answered, at, a => a == line);
            if (next < 0) next = Array.FindIndex(answered, at, a => WordsOf(a) == WordsOf(line));
            if (next < 0) return answered;
            kept.Add(answered[next]);
            at = next + 1;
        }
        return kept;
    }

    private static string WordsOf(string line) => new([.. line.Where(char.IsLetter).Take(24)]);

    /// <summary>The page without its blocks.</summary>
    private static string Prose(string page) => Block().Replace(page, "");

    private static bool IsCode(string word) => s_sources.Value.Contains($"\"{word}\"", StringComparison.Ordinal);

    private static readonly Lazy<string> s_sources = new(() => string.Concat(new[] { "src/Setout.Core", "src/Setout.Shop", "src/Setout" }.SelectMany(room => Repository.FilesIn(room, "*.cs")).Select(f => File.ReadAllText(Repository.PathOf(f)))));

    [GeneratedRegex("\"[^\"]*\"|\\S+")]
    private static partial Regex Word();

    [GeneratedRegex(@"entry (e[0-9a-f]{8})$")]
    private static partial Regex NewEntry();

    [GeneratedRegex(@"`([A-Za-z][A-Za-z0-9-]*(?:\.[a-z0-9-]+)+)`")]
    private static partial Regex Dotted();

    [GeneratedRegex(@"`((?:mark|record) FILE [^`]+)`")]
    private static partial Regex Typed();

    [GeneratedRegex(@"^\| `([a-z]+\.[a-z-]+)` \|", RegexOptions.Multiline)]
    private static partial Regex FindingRow();

    [GeneratedRegex(@"!\[([^\]]*)\]\((pictures/[^)]+)\)")]
    private static partial Regex Picture();

    [GeneratedRegex(@"^```.*?^```", RegexOptions.Multiline | RegexOptions.Singleline)]
    private static partial Regex Block();
}
