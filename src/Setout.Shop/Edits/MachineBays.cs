using Setout.Core.Measures;
using Setout.Core.Pieces;

namespace Setout.Shop.Edits;

/// <summary>Bays of a frame that a machine stands in.</summary>
internal static class MachineBays
{
    /// <summary>How wide the machine is that stands in a bay, which the bay must stay; null where none does.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="bay">The key of the bay.</param>
    public static ExactLength? WidthOf(Piece piece, string bay) =>
        piece.Members.OfType<Top>().SelectMany(t => t.Wells).FirstOrDefault(w => w.Bay?.Text == bay)?.Footprint.Across.Value;
}
