using System.Collections.Immutable;
using System.Globalization;
using Setout.Drawing.Scenes;
using Setout.Shop.Drawings;
using Setout.Shop.Noting;
using Setout.Shop.Texts;
using Setout.Workbench.Changing;
using Setout.Workbench.Pieces;
using Setout.Workbench.Shell;

namespace Setout.Workbench.Noting;

/// <summary>An entry of the log.</summary>
/// <param name="Id">Its id.</param>
/// <param name="When">When.</param>
/// <param name="Words">What it says.</param>
/// <param name="Void">When it was voided; null where it stands.</param>
/// <param name="Form">Voids it; null where that cannot be.</param>
/// <param name="Warns">What voiding it takes back beside the entry itself; empty for nothing.</param>
public sealed record FactLine(string Id, string When, Phrase Words, string? Void, FormHead? Form, string Warns)
{
    /// <summary>Takes back all that was written with it in one, where it is the last of several; else null.</summary>
    public FormHead? Whole { get; init; }

    /// <summary>How many that are.</summary>
    public int Many { get; init; }

    /// <summary>Whether they are put back by it: they took something back themselves.</summary>
    public bool IsBack { get; init; }

    /// <summary>Puts it back where it was taken back; else null.</summary>
    public FormHead? Back { get; init; }
}

/// <summary>What was read and marked.</summary>
/// <param name="Head">The head of the piece.</param>
/// <param name="Lines">All entries, the newest first.</param>
/// <param name="Moved">What the last change moved.</param>
/// <param name="Upsets">What is upset.</param>
public sealed record FactsView(PieceHead Head, ImmutableArray<FactLine> Lines, MovedView? Moved, ImmutableArray<UpsetView> Upsets)
{
    internal static FactsView Of(OpenPiece piece)
    {
        Log log = piece.Source.Log;
        string back = Links.Stage(piece.Name, "facts");
        HashSet<string> standing = [.. log.Standing.Concat(log.Voidings).Select(e => e.Id)];
        bool Stands(LogEntry entry) => standing.Contains(entry.Id);
        // What a voiding is about says by itself what can be done: it is voided, or put back, there.
        bool IsVoidedHere(LogEntry entry) => Stands(entry) && (entry is not VoidEntry voiding || NotedVoid.RootOf(log, voiding) is null);
        FactLine Line(LogEntry entry)
        {
            VoidEntry? by = log.Voidings.LastOrDefault(v => v.Entry == entry.Id);
            string wood = entry is MarkEntry { TellsOfWood: true } mark ? mark.With.IsEmpty ? "The wood it took is in the rack again." : $"It is taken back in {string.Join(" and ", mark.With.Select(w => Path.GetFileNameWithoutExtension(w)))} too." : "";
            return new(entry.Id, When.Of(entry.At, TimeProvider.System), Figures.Phrase(Shop.Outputs.PageWords.Blanks(FactSentences.Of(entry, log, piece.Set))), Stands(entry) ? null : by is null ? "void" : $"void since {When.Of(by.At, TimeProvider.System)}",
                IsVoidedHere(entry) ? FormHead.Of(piece, "void", back) : null, wood)
            {
                Back = by is not null && entry is not VoidEntry ? FormHead.Of(piece, "put-back", back) : null,
                IsBack = entry is VoidEntry voiding && NotedVoid.RootOf(log, voiding) is (_, false),
                Whole = NotedVoid.WrittenWith(log, entry.Id) is { Length: > 1 } all && all[^1].Id == entry.Id ? FormHead.Of(piece, "void", back) : null,
                Many = NotedVoid.WrittenWith(log, entry.Id).Length,
            };
        }
        return new(PieceHead.Of(piece, "facts"), [.. log.Entries.Reverse().Select(Line)], MovedView.Of(piece, back), UpsetView.Of(piece, back));
    }
}
