using System.Collections.Immutable;
using Setout.Core.Workings;
using Setout.Shop.Plans;
using Setout.Workbench.Shell;

namespace Setout.Workbench.Pieces;

/// <summary>The findings that stop a plan, for pages that have little to show without one.</summary>
internal static class StoppedNotes
{
    public static ImmutableArray<Note> Of(OpenPiece piece, Plan plan) =>
        Note.Of(plan.Findings.Where(f => f.Severity == Severity.Stop), plan.Set, piece.Name, piece.File.FileName);
}
