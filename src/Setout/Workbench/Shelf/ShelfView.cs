using System.Collections.Immutable;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Workbench.Beginning;
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
public sealed record ShelfPiece(string Name, string Href, string About, string Drawing, string State, bool IsRed, ImmutableArray<Note> Notes);

/// <summary>The shelf of pieces.</summary>
/// <param name="Folder">Where they are kept.</param>
/// <param name="Pieces">In order of their names.</param>
public sealed record ShelfView(string Folder, ImmutableArray<ShelfPiece> Pieces)
{
    /// <summary>What can be begun with.</summary>
    public required ImmutableArray<SamplePiece> Samples { get; init; }

    internal static ShelfView Of(KeptPieces folder, PlanDesk desk, Samples samples) =>
        new(folder.Place, [.. folder.ReadAll().Select(f => Piece(f, desk))]) { Samples = samples.All };

    private static ShelfPiece Piece(PieceFile file, PlanDesk desk)
    {
        string href = Links.Stage(file.Name, "");
        if (file.Source is not { } source)
            return new(file.Name + ".yaml", href, "", "", "cannot be read", true, [.. file.Findings.Select(f => Note.Of(f.Finding, file.FileOf(f.Text)))]);
        SetPiece set = desk.SetOut(file.Name, source);
        ImmutableArray<Finding> findings = desk.PlanIfReady(file.Name, source)?.Findings ?? set.Findings;
        return new(set.Piece.Name, href, set.Piece.About, SmallFront.Draw(set), State(set, findings), findings.Any(f => f.Severity > Severity.Note), []);
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
