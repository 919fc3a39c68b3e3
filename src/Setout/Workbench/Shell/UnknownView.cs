using System.Collections.Immutable;
using Setout.Shop.Texts;
using Setout.Workbench.Pieces;

namespace Setout.Workbench.Shell;

/// <summary>Nothing lies at an address.</summary>
/// <param name="Words">What was not found.</param>
/// <param name="Guess">A piece that may have been meant.</param>
/// <param name="GuessHref">Its page.</param>
public sealed record UnknownView(string Words, string? Guess, string? GuessHref)
{
    internal static UnknownView Piece(string name, ImmutableArray<string> known)
    {
        string? guess = NearestWord.Of(name, known);
        return new($"There is no piece “{Short(name)}”.", guess, guess is null ? null : Links.Stage(guess, ""));
    }

    internal static UnknownView Page(string path) => new($"There is no page “{Short(path)}”.", null, null);

    private static string Short(string text) => text.Length <= 60 ? text : text[..60] + "…";
}

/// <summary>A piece whose texts cannot be used.</summary>
/// <param name="Name">Its name in addresses.</param>
/// <param name="Notes">What is wrong, each with its place.</param>
public sealed record UnreadableView(string Name, ImmutableArray<Note> Notes)
{
    internal static UnreadableView Of(PieceFile file) =>
        new(file.Name, [.. file.Findings.Select(f => Note.Of(f.Finding, file.FileOf(f.Text)))]);
}
