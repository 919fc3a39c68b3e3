using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut;

/// <summary>Where structures stand that were written, for what stands by them.</summary>
internal static class Standing
{
    /// <summary>What a structure is called: its own name, the word for it, or that with its key where there are several.</summary>
    public static string NameOf(Book book, Structure structure, string word) =>
        structure.Name.Length > 0 ? structure.Name : book.Piece.Members.Count(m => m is Structure) > 1 ? $"{word} {structure.Key}" : word;

    /// <summary>Whether the piece has more than one structure.</summary>
    public static bool IsOneOfSeveral(Book book) => book.Piece.Members.OfType<Structure>().Skip(1).Any();

    /// <summary>How a sentence speaks of it: <c>case A</c> by its key, else <c>the</c> and its name.</summary>
    public static string The(Structure structure, string name) => structure.Name.Length == 0 && name.EndsWith($" {structure.Key}", StringComparison.Ordinal) ? name : $"the {name}";

    /// <summary>Where a structure that was written stands.</summary>
    public static Corner Of(Book book, string key) => new(Value(book, key, "left"), Value(book, key, "forward"), Value(book, key, "up"));

    /// <summary>The place of another as a term, where it has one.</summary>
    public static IEnumerable<Term> Start(Book book, string key, string what, string words) =>
        book.Knows(QuantityKey.Of(key, what)) ? [Term.From($"{key}, {words}", 1, QuantityKey.Of(key, what))] : [];

    public static ExactLength Value(Book book, string key, string what) => book.Knows(QuantityKey.Of(key, what)) ? book.Value(QuantityKey.Of(key, what)) : ExactLength.Zero;

    /// <summary>The space at the left of a structure that a strip closes, as a term.</summary>
    public static IEnumerable<Term> FillerLeft(Book book, string key) => Space(book, key, "filler-left", "filler at its left");

    /// <summary>The space between two neighbours that strips of either close.</summary>
    public static IEnumerable<Term> Fillers(Book book, string left, string right) =>
        [.. Space(book, left, "filler-right", $"filler at the right of {left}"), .. Space(book, right, "filler-left", $"filler at the left of {right}")];

    private static IEnumerable<Term> Space(Book book, string key, string what, string words) =>
        book.Knows(QuantityKey.Of(key, $"{what}.space")) ? [Term.From(words, 1, QuantityKey.Of(key, $"{what}.space"))] : [];
}

/// <summary>The outside sizes of a structure as it comes out.</summary>
internal static class Built
{
    public static QuantityKey Width(string structure) => QuantityKey.Of(structure, "outside");

    public static QuantityKey Height(Structure structure) => QuantityKey.Of(structure.Key, structure is Frame ? "post.length" : "side.length").AsCut;

    public static QuantityKey Depth(string structure) => QuantityKey.Of(structure, "depth");
}
