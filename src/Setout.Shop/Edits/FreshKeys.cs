using System.Globalization;
using System.Text.RegularExpressions;
using Setout.Core.Pieces;
using Setout.Shop.Texts;

namespace Setout.Shop.Edits;

/// <summary>Permanent keys for what is new: short, and never those of something else, be it long gone.</summary>
internal static partial class FreshKeys
{
    // I, O and Q are read as figures or as one another.
    private const string Letters = "ABCDEFGHJKLMNPRSTUVWXYZ";

    /// <summary>A name that can stand in a text, from one that was typed: <c>Danish-oil-1</c> of <c>Danish oil 1</c>. What no name can be made of stays as it is.</summary>
    public static string Name(string typed)
    {
        // A name that lost letters would be another word.
        if (typed.Any(c => char.IsLetter(c) && !char.IsAsciiLetter(c))) return typed;
        string name = NotOfNames().Replace(typed, "-").Trim('-');
        return IsName(name) ? name : typed;
    }

    /// <summary>A name after some words, short enough for a number behind it: their first words, as far as they go in; another where no name can be made of them.</summary>
    public static string StemAfter(string words, string other)
    {
        const int most = 20;
        string stem = Name(words);
        if (words.Length > most)
        {
            string begun = NotOfNames().Replace(words, "-").Trim('-');
            int end = begun.Length <= most ? begun.Length : begun.LastIndexOf('-', most);
            stem = Name(end > 0 ? begun[..end] : other);
        }
        return IsName(stem) ? stem : other;
    }

    /// <summary>Why a name cannot stand in a text; null where it can.</summary>
    /// <param name="draft">The text.</param>
    /// <param name="name">The name.</param>
    /// <param name="typed">What was typed for it.</param>
    public static RefusedException? Unfit(EditDraft draft, string name, string typed) => IsName(name) ? null
        : draft.Refused("text.bad-key", "", $"'{TextContext.Shown(name)}' cannot be its name.", "Begin it with a letter and type 24 letters from a to z, figures and hyphens at most, such as oil-1.", typed);

    private static bool IsName(string name) => MapReader.IsName(name);

    [GeneratedRegex("[^A-Za-z0-9]+")]
    private static partial Regex NotOfNames();

    /// <summary>All keys that may not be given again.</summary>
    public static IEnumerable<string> Taken(YamlNode root, Piece? piece, EditBench bench)
    {
        foreach (Thing thing in Thing.In(root)) yield return thing.Key;
        foreach (string key in piece?.Keys.Keys ?? []) yield return key;
        foreach (string key in bench.Taken) yield return key;
        foreach (LogEntry entry in bench.Log.Entries)
        {
            string[] keys = entry switch
            {
                ReadingEntry reading => [reading.Key.Text],
                MarkEntry mark => [.. mark.Keys, .. mark.Figures.Keys.Select(k => k.Text), .. mark.Chosen.Keys.Select(k => k.Text)],
                AllowEntry allow => [allow.Key],
                _ => [],
            };
            foreach (string key in keys) yield return key.Split('.', '#')[0];
        }
    }

    /// <summary>Keys of a stem and a number, the lowest that are free; the stem alone where it may be and is.</summary>
    public static string[] Next(HashSet<string> used, string stem, int count, bool mayBeBare)
    {
        var keys = new List<string>();
        if (mayBeBare && count == 1 && used.Add(stem)) keys.Add(stem);
        for (int i = 1; keys.Count < count; i++)
        {
            string key = stem + i.ToString(CultureInfo.InvariantCulture);
            if (used.Add(key)) keys.Add(key);
        }
        return [.. keys];
    }

    /// <summary>The key of an owner where that ends in a letter; else a letter, or two, that no key is or begins with before a number.</summary>
    public static string Stem(HashSet<string> used, string owner)
    {
        if (owner.Length is > 0 and <= 12 && char.IsAsciiLetter(owner[^1])) return owner;
        return Letters.Select(l => l.ToString()).Concat(Letters.SelectMany(a => Letters.Select(b => $"{a}{b}"))).FirstOrDefault(IsFree) ?? "K";

        bool IsFree(string stem) => !used.Any(k => k == stem || (k.StartsWith(stem, StringComparison.Ordinal) && k.AsSpan(stem.Length).IndexOfAnyExceptInRange('0', '9') < 0));
    }
}
