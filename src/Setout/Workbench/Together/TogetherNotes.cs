using System.Collections.Immutable;
using Setout.Core.Workings;
using Setout.Shop.Edits.Saying;
using Setout.Shop.Outputs;
using Setout.Shop.Plans;
using Setout.Workbench.Pieces;
using Setout.Workbench.Shell;

namespace Setout.Workbench.Together;

/// <summary>The notes on several pieces: each leads into its own piece, as on the pages of that.</summary>
internal static class TogetherNotes
{
    /// <summary>A finding of several pieces.</summary>
    /// <param name="finding">As it was told of all of them.</param>
    /// <param name="pieces">The pieces.</param>
    /// <param name="files">Their texts.</param>
    public static Note Of(Finding finding, PiecesTogether pieces, ImmutableArray<PieceFile> files)
    {
        // What is told of one of them begins with its name; of names that begin alike the longest is meant.
        if (pieces.Members.Where(m => finding.Words.StartsWith($"{m.Source.Piece.Name}: ", StringComparison.Ordinal)).MaxBy(m => m.Source.Piece.Name.Length) is not { } member)
            return Note.Of(finding, "") with { Remedy = ForEach(finding.Remedy, pieces) };
        Finding own = finding with { Key = member.Own(finding.Key) ?? finding.Key };
        string owner = own.Key.Split('.')[0];
        return Note.Of(own, member.File, Note.HrefOf(own, member.Set, NameOf(member)), member.Set, hasSayings: true) with
        {
            Owner = files.FirstOrDefault(f => f.FileName == member.File) is { } file && Sayings.Of(file.Document.Text, owner) is not null ? owner : "",
        };
    }

    // What is told of a wood that several have names the size of each behind the name of its piece.
    private static ImmutableArray<SaidStretch> ForEach(string words, PiecesTogether pieces)
    {
        (int At, MemberPiece Member)[] from = [.. pieces.Members.Select(m => (At: words.IndexOf($"for {m.Source.Piece.Name} at ", StringComparison.Ordinal), m)).Where(f => f.At >= 0).OrderBy(f => f.At)];
        if (from.Length == 0) return PageWords.Of(words);
        return
        [
            .. from[0].At > 0 ? PageWords.Of(words[..from[0].At]) : [],
            .. from.SelectMany((f, i) => PageWords.Of(words[f.At..(i + 1 < from.Length ? from[i + 1].At : words.Length)], f.Member.Set).Select(s => s with { Piece = NameOf(f.Member) })),
        ];
    }

    private static string NameOf(MemberPiece member) => Path.GetFileNameWithoutExtension(member.File);
}
