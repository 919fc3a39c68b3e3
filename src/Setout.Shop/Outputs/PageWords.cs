using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Shop.Texts;

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
public sealed record SaidStretch(string Words, SaidPlace Place = SaidPlace.None, string Key = "")
{
    /// <summary>The piece where that is, by its name in addresses; empty, the default, for the one that is spoken of.</summary>
    public string Piece { get; init; } = "";
}

/// <summary>
/// The words of findings, runs and steps as a page says them. They are made for pages where they are made (<see cref="Hand.Pages"/>): what stands in curly quotes is called so on the workbench, and here it leads there. Nothing is
/// said otherwise than it was made, but for the names of blanks.
/// </summary>
public static partial class PageWords
{
    /// <summary>A sentence in stretches, of which some lead to where it can be done.</summary>
    /// <param name="words">As they were made for pages.</param>
    /// <param name="set">The piece whose sizes they may name; null, the default, for none.</param>
    /// <param name="hasSayings">Whether there is a page where all can be said of what the words are about.</param>
    public static ImmutableArray<SaidStretch> Of(string words, SetPiece? set = null, bool hasSayings = false) => [.. Split(Blanks(words), set, hasSayings)];

    /// <summary>The same words with each blank called by what is chalked on it and the run that left it; logs tell blanks of several plans apart by more, which nobody needs at the wood.</summary>
    /// <param name="words">Such as <c>left G-r1-821f</c>: <c>left G of run 1</c>.</param>
    public static string Blanks(string words) => Blank().Replace(words, "$1 of run $2");

    private static IEnumerable<SaidStretch> Split(string words, SetPiece? set, bool hasSayings)
    {
        int from = 0;
        foreach (Match match in Quoted().Matches(words))
        {
            if (Led(match.Groups[1].Value, set, hasSayings && match.Groups[2].Success) is not { } said) continue;
            if (match.Index > from) yield return new(words[from..match.Index]);
            yield return said;
            from = match.Index + said.Words.Length;
        }
        if (from < words.Length) yield return new(words[from..]);
    }

    // What stands before "to" is a key to be set, where it is no size.
    private static SaidStretch? Led(string quoted, SetPiece? set, bool isSet) => quoted switch
    {
        Hands.FitStage => new(quoted, SaidPlace.Fit),
        Hands.FactsPage => new(quoted, SaidPlace.Facts),
        ShopHands.ShopPage => new(quoted, SaidPlace.Shop),
        ShopHands.SawsOfPage => new(quoted, SaidPlace.Shop, "saws.guided"),
        ShopHands.WoodOfPage => new(quoted, SaidPlace.Shop, "stock"),
        _ when ShopHands.SawOf(quoted) is { } key => new(quoted, SaidPlace.Shop, $"saws.{key}"),
        _ when SizeOf(quoted[1..^1], set) is { } key => new(quoted, SaidPlace.Working, key),
        _ => isSet ? new(quoted, SaidPlace.Sayings) : null,
    };

    private static string? SizeOf(string name, SetPiece? set) =>
        set?.Worked.Order.Where(k => set.Worked.Values.TryGetValue(k, out Worked? worked) && worked.Quantity.Name == name).Select(k => k.Text).FirstOrDefault();

    [GeneratedRegex("(“[^“”]+”)( to )?")]
    private static partial Regex Quoted();

    [GeneratedRegex(@"(?<![\w.-])([A-Za-z0-9][A-Za-z0-9.-]*?)-r([0-9]+)-[0-9a-f]{4,8}\b")]
    private static partial Regex Blank();
}
