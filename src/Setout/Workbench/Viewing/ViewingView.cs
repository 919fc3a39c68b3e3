using Setout.Core.Measures.Text;
using Setout.Shop.Plans;
using Setout.Workbench.Pieces;

namespace Setout.Workbench.Viewing;

/// <summary>How pages are shown, to be changed.</summary>
/// <param name="Unit"><c>own</c>, <c>in</c> or <c>mm</c>.</param>
/// <param name="HasKeys">Whether single letters and signs do something.</param>
/// <param name="Moves">Whether things may move.</param>
/// <param name="Back">The page to go back to.</param>
public sealed record ViewingView(string Unit, bool HasKeys, bool Moves, string Back)
{
    internal static ViewingView Of(Viewer viewer, string back) => new(Viewer.WordOf(viewer.Unit), viewer.HasKeys, viewer.Moves, back);

    /// <summary>What has to be known of figures that are not shown in the unit of their piece; empty where they are.</summary>
    internal static string Caution(OpenPiece piece)
    {
        (LengthUnit own, LengthUnit shown) = (piece.Set.Piece.Unit, piece.Set.Piece.Shown);
        return own == shown ? "" : $"Figures are shown to you in {shown.Words}, to the nearest {(shown == LengthUnit.Inch ? "1/64" : "0.1 mm")}. The piece is set out and cut in {own.Words}, on a grid of {LengthFormat.For(own).Text(piece.Set.Grid.Step)}. What you type without a unit is read in {shown.Words}.";
    }

    /// <summary>The same of a text that is not set out.</summary>
    internal static string Caution(LengthUnit own, LengthUnit shown) => own == shown ? ""
        : $"Figures are shown to you in {shown.Words}; the text is in {own.Words}, and what stands in a field names its unit. What you type without a unit is read in {shown.Words}.";
}
