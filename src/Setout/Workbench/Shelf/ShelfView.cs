using System.Collections.Immutable;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
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
/// <param name="Refusal">For a file that cannot be read at all: why.</param>
public sealed record ShelfPiece(string Name, string Href, string About, string Drawing, string State, bool IsRed, ImmutableArray<Note> Notes, string Refusal);

/// <summary>The shelf of pieces.</summary>
/// <param name="Folder">Where they lie; empty when there is no folder.</param>
/// <param name="Pieces">In order of their names.</param>
public sealed record ShelfView(string Folder, ImmutableArray<ShelfPiece> Pieces)
{
    /// <summary>A piece to begin with, shown on an empty shelf. A test reads it.</summary>
    public const string Example = """
        setout: 1
        name: Small shelf
        unit: in
        materials:
          ply: {panel: hardwood plywood, label: 3/4}
        assembly:
          - case: C
            of: ply
            width: 30
            height: 36
            depth: 11
            shelves: {down: [S1, S2]}
        """;

    internal static ShelfView Of(PieceFolder folder, PlanDesk desk) =>
        new(folder.Path ?? "", [.. folder.Names().Select(folder.Read).OfType<PieceFile>().Select(f => Piece(f, desk))]);

    private static ShelfPiece Piece(PieceFile file, PlanDesk desk)
    {
        string href = Links.Stage(file.Name, "");
        if (file.Source is not { } source)
            return new(file.Name + ".yaml", href, "", "", "cannot be read", true, [.. file.Findings.Select(f => Note.Of(f.Finding, file.Files!.FileOf(f.Text)))], file.Refusal);
        SetPiece set = desk.SetOut(file.Name, source);
        ImmutableArray<Finding> findings = desk.PlanIfReady(file.Name, source)?.Findings ?? set.Findings;
        return new(set.Piece.Name, href, set.Piece.About, SmallFront.Draw(set), State(set, findings), findings.Any(f => f.Severity > Severity.Note), [], "");
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
