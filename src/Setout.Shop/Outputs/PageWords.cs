using System.Collections.Immutable;
using System.Text.RegularExpressions;

namespace Setout.Shop.Outputs;

/// <summary>Where a page sends somebody for a remedy.</summary>
public enum SaidPlace
{
    /// <summary>Nowhere: words alone.</summary>
    None,

    /// <summary>The page of the shop; the key is the thing to choose there, empty for the whole of it.</summary>
    Shop,

    /// <summary>The page of what was read and marked.</summary>
    Facts,

    /// <summary>The stage of fitting.</summary>
    Fit,

    /// <summary>The working of a size; the key is that of the size.</summary>
    Working,

    /// <summary>All that can be said of what the words are about.</summary>
    Sayings,
}

/// <summary>A stretch of a sentence.</summary>
/// <param name="Words">As they are read.</param>
/// <param name="Place">Where they lead.</param>
/// <param name="Key">What is chosen there; empty for nothing.</param>
public sealed record SaidStretch(string Words, SaidPlace Place = SaidPlace.None, string Key = "");

/// <summary>
/// The words of findings and runs as a page says them. They are made for the command line, where a remedy is a text to write or a command to type;
/// on a page it is a field to fill in, and the words lead to it.
/// </summary>
public static partial class PageWords
{
    private static readonly ImmutableArray<(Regex Like, Func<Match, IEnumerable<SaidStretch>> Says)> s_ways =
    [
        (Fit(), _ => [new("the stage “Fit”", SaidPlace.Fit)]),
        (SawWritten(), m => [new("write it at "), Saw(m.Groups[1].Value)]),
        (SawNamed(), m => [new(" ("), Saw(m.Groups[1].Value), new(")")]),
        (UnderSaws(), _ => [new("say so among "), new("the saws of the shop", SaidPlace.Shop, "saws.guided")]),
        (StockLine(), m => [new($"{m.Groups[1].Value} at its line among "), new("the wood of the shop", SaidPlace.Shop, "stock")]),
        (ShopFile(), m => [new(m.Groups[1].Value), new("the shop", SaidPlace.Shop)]),
        (Void(), _ => [new(", on the page of "), new("what was read and marked", SaidPlace.Facts)]),
        (Why(), m => [new("its working", SaidPlace.Working, m.Groups[1].Value)]),
        (Written(), m => [new("Set "), new($"“{m.Groups[1].Value}” to {m.Groups[2].Value}", SaidPlace.Sayings)]),
        (WrittenToo(), m => [new($" or “{m.Groups[1].Value}” to {m.Groups[2].Value}")]),
    ];

    /// <summary>A sentence in stretches, of which some lead to where it can be done.</summary>
    /// <param name="words">As they are said on the command line, with FILE for the piece.</param>
    /// <param name="hasSayings">Whether there is a page where all can be said of what the words are about; without one, what is to be written stays a text.</param>
    public static ImmutableArray<SaidStretch> Of(string words, bool hasSayings = false)
    {
        ImmutableArray<SaidStretch> said = [new(Blanks(Commands().Replace(CommandWords.OnAPage(words), "")))];
        foreach ((Regex like, Func<Match, IEnumerable<SaidStretch>> says) in hasSayings ? s_ways : s_ways[..^2]) said = [.. said.SelectMany(s => s.Place == SaidPlace.None ? Split(s.Words, like, says) : [s])];
        return said;
    }

    /// <summary>The same in one line, for where nothing can lead anywhere.</summary>
    /// <param name="words">As they are said on the command line, with FILE for the piece.</param>
    public static string Plain(string words) => string.Concat(Of(words).Select(s => s.Words));

    /// <summary>The same words with each blank called by what is chalked on it and the run that left it; logs tell blanks of several plans apart by more, which nobody needs at the wood.</summary>
    /// <param name="words">Such as <c>left G-r1-821f</c>: <c>left G of run 1</c>.</param>
    public static string Blanks(string words) => Blank().Replace(words, "$1 of run $2");

    private static IEnumerable<SaidStretch> Split(string words, Regex like, Func<Match, IEnumerable<SaidStretch>> says)
    {
        int from = 0;
        foreach (Match match in like.Matches(words))
        {
            if (match.Index > from) yield return new(words[from..match.Index]);
            foreach (SaidStretch said in says(match)) yield return said;
            from = match.Index + match.Length;
        }
        if (from < words.Length) yield return new(words[from..]);
    }

    private static SaidStretch Saw(string key) => new(key switch { "fence" => "the table saw", "sled" => "the sled", "boards" => "the crosscut saw", _ => "the hand-held saw" }, SaidPlace.Shop, $"saws.{key}");

    [GeneratedRegex("the stage “Fit”|'setout fit FILE'")]
    private static partial Regex Fit();

    [GeneratedRegex(@"write it as saws: (\w+): [a-z]+")]
    private static partial Regex SawWritten();

    [GeneratedRegex(@" \(saws: (\w+): [a-z]+\)")]
    private static partial Regex SawNamed();

    [GeneratedRegex("write it under saws in the shop file")]
    private static partial Regex UnderSaws();

    [GeneratedRegex("write ('[a-z ]+: [^']+') at its line of stock, in the file where that stands")]
    private static partial Regex StockLine();

    [GeneratedRegex("((?:in|into|of|off) )?the shop file\\b")]
    private static partial Regex ShopFile();

    [GeneratedRegex(@": setout void \S+ e\w+(?=[.;]|$)")]
    private static partial Regex Void();

    [GeneratedRegex(@"setout why FILE (\S+)")]
    private static partial Regex Why();

    // What is a command and nothing else is told by what stands before it.
    [GeneratedRegex(@"[:;] setout (?:mark|record) (?:FILE|@?\S+) [^;]*?(?=\.(?:$|\s)|;|, with the blank|$)")]
    private static partial Regex Commands();

    [GeneratedRegex(@"\bWrite '([a-z ]+): ([^'{}\[\]]+)'(?! (?:and|with) )")]
    private static partial Regex Written();

    [GeneratedRegex(@"(?:,)? or (?:write )?'([a-z ]+): ([^'{}\[\]]+)'")]
    private static partial Regex WrittenToo();

    [GeneratedRegex(@"(?<![\w.-])([A-Za-z0-9][A-Za-z0-9.-]*?)-r([0-9]+)-[0-9a-f]{4,8}\b")]
    private static partial Regex Blank();
}
