using System.Collections.Immutable;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Shop.Documents;
using Setout.Workbench.Beginning;
using Setout.Workbench.Changing;
using Setout.Workbench.Keeping;
using Setout.Workbench.Pieces;
using Setout.Workbench.Shell;

namespace Setout.Workbench.Shelf;

/// <summary>A piece on the shelf.</summary>
/// <param name="Name">Its own name, or its file's where it cannot be read.</param>
/// <param name="Href">Its first page.</param>
/// <param name="About">What it is.</param>
/// <param name="Drawing">Its front, small; empty where there is none.</param>
/// <param name="State">How many parts and findings, in words.</param>
/// <param name="IsRed">Whether something stops it or wants a look.</param>
/// <param name="Notes">For a file that cannot be read: what is wrong, each with its place.</param>
public sealed record ShelfPiece(string Name, string Href, string About, string Drawing, string State, bool IsRed, ImmutableArray<Note> Notes)
{
    /// <summary>The name of its document: that in addresses and commands.</summary>
    public required string Document { get; init; }

    /// <summary>When it was last changed, by its text or at the bench, in words.</summary>
    public required string Changed { get; init; }

    /// <summary>Whether it can be broken down with others.</summary>
    public required bool CanBeTogether { get; init; }

    /// <summary>What goes along with a new name.</summary>
    public required FormHead Rename { get; init; }

    /// <summary>What goes along when another is begun from it.</summary>
    public required FormHead BeginFrom { get; init; }

    /// <summary>What goes along when it is put away.</summary>
    public required FormHead PutAway { get; init; }

    /// <summary>Whether its name in addresses is another than its own with hyphens: then it is told.</summary>
    public bool IsCalledOtherwise => DocumentName.Fold(Document.Replace('-', ' ')) != DocumentName.Fold(Name);

    /// <summary>The page of its states.</summary>
    public string History => Links.Stage(Document, "history");
}

/// <summary>A piece that was put away.</summary>
/// <param name="Name">Of its document.</param>
/// <param name="Changed">When, in words.</param>
/// <param name="Href">Its history.</param>
/// <param name="TakeBack">What goes along when it is taken back.</param>
public sealed record PutAwayPiece(string Name, string Changed, string Href, FormHead TakeBack);

/// <summary>The shelf of pieces.</summary>
/// <param name="Folder">Where they are kept.</param>
/// <param name="Pieces">In order of their names.</param>
public sealed record ShelfView(string Folder, ImmutableArray<ShelfPiece> Pieces)
{
    /// <summary>The form that begins a piece.</summary>
    public required BeginView Begin { get; init; }

    /// <summary>Those that were put away.</summary>
    public required ImmutableArray<PutAwayPiece> PutAway { get; init; }

    /// <summary>When the last backup was made, in words.</summary>
    public required string Backup { get; init; }

    /// <summary>Whether that is too long ago.</summary>
    public required bool IsBackupOld { get; init; }

    /// <summary>How many there are, in words: spoken after a change.</summary>
    public string Counted => $"{Pieces.Length} {(Pieces.Length == 1 ? "piece" : "pieces")} on the shelf{(PutAway.Length > 0 ? $", {PutAway.Length} put away" : "")}";

    internal static ShelfView Of(KeptPieces folder, PlanDesk desk, BeginView begin, IDocumentStore store, DataKeeping keeping)
    {
        (string backup, bool isOld) = keeping.Age();
        ImmutableArray<PieceFile> pieces = folder.ReadAll();
        return new(folder.Place, [.. pieces.Select(f => Piece(f, desk, keeping.Time))])
        {
            Begin = begin,
            PutAway = [.. store.Documents().Where(d => d is { Kind: DocumentKind.Piece, IsPutAway: true }).Select(d => new PutAwayPiece(d.Name, When.Of(d.ChangedAt, keeping.Time), Links.Stage(d.Name, "history"), Form(d, "take-back")))],
            Backup = backup,
            // A shelf with nothing on it has nothing to lose.
            IsBackupOld = isOld && !pieces.IsEmpty,
        };
    }

    private static FormHead Form(DocumentLine line, string word) => new(Links.Stage(line.Name, word), ChangeForm.NewId(), line.Revision, Links.Shelf);

    private static ShelfPiece Piece(PieceFile file, PlanDesk desk, TimeProvider time)
    {
        DocumentLine line = file.Document.Line;
        SetPiece? set = file.Source is { } read ? desk.SetOut(file.Name, read) : null;
        ImmutableArray<Finding> findings = file.Source is { } source ? desk.PlanIfReady(file.Name, source)?.Findings ?? set!.Findings : [];
        return new(set?.Piece.Name ?? file.Name + ".yaml", Links.Stage(file.Name, ""), set?.Piece.About ?? "", set is null ? "" : SmallFront.Draw(set), set is null ? "cannot be read" : State(set, findings),
            set is null || findings.Any(f => f.Severity > Severity.Note), set is null ? [.. file.Findings.Select(f => Note.Of(f.Finding, file.FileOf(f.Text)))] : [])
        {
            Document = file.Name,
            Changed = When.Of(file.ChangedAt, time),
            CanBeTogether = set is { IsStopped: false },
            Rename = Form(line, "rename"),
            BeginFrom = Form(line, "begin-from"),
            PutAway = Form(line, "put-away"),
        };
    }

    private static string State(SetPiece set, ImmutableArray<Finding> findings)
    {
        int parts = set.Parts.Sum(p => p.Count);
        string Count(Severity severity, string one, string many)
        {
            int count = findings.Count(f => f.Severity == severity);
            return count == 0 ? "" : $" · {count} {(count == 1 ? one : many)}";
        }
        string found = Count(Severity.Stop, "stops the plan", "stop the plan") + Count(Severity.Warn, "wants a look", "want a look") + Count(Severity.Note, "note", "notes");
        return $"{parts} {(parts == 1 ? "part" : "parts")}{(found.Length == 0 ? " · no findings" : found)}";
    }
}
