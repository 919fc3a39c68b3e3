using System.Collections.Immutable;
using Setout.Workbench.Pieces;
using Setout.Workbench.SetOut;
using Setout.Workbench.Shell;

namespace Setout.Workbench.Noting;

/// <summary>The bench in the margin of a drawing.</summary>
/// <param name="Forms">What can be read and marked of what is chosen.</param>
/// <param name="Moved">What the last change moved.</param>
/// <param name="Upsets">What is upset.</param>
/// <param name="Facts">The page of all facts.</param>
public sealed record BenchNotes(NoteForms Forms, MovedView? Moved, ImmutableArray<UpsetView> Upsets, string Facts)
{
    /// <summary>Nothing.</summary>
    public static BenchNotes None { get; } = new(NoteForms.None, null, [], "");

    internal static BenchNotes Of(OpenPiece piece, string? asked, string back) => new(
        NoteForms.Of(piece, asked, ChosenSize.Resolve(piece.Set, asked ?? "").Select(s => s.Exact), back), MovedView.Of(piece, back), UpsetView.Of(piece, back), Links.Stage(piece.Name, "facts"));
}
