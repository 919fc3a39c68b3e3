using System.Collections.Immutable;
using Setout.Core.SettingOut;
using Setout.Drawing.Documents;
using Setout.Drawing.Elevations;
using Setout.Drawing.Scenes;
using Setout.Shop.Drawings;

namespace Setout.Shop.BenchSheets;

/// <summary>The views of a piece on the cover: the front as large as ever, the plan at its scale on what is left of the page, the side on the next.</summary>
internal static class ViewPages
{
    // Lower than this a view says little.
    private const double FrontHeight = 110, SideHeight = 100, LeastHeight = 55;

    /// <summary>The drawings.</summary>
    /// <param name="set">The piece.</param>
    /// <param name="paper">The paper.</param>
    /// <param name="section">The section they stand in, on the first page.</param>
    /// <param name="above">What stands before them.</param>
    /// <param name="below">What stands after them, on one page with the side where there is room.</param>
    public static IEnumerable<Block> Of(SetPiece set, Paper paper, string section, ImmutableArray<Block> above, ImmutableArray<Block> below)
    {
        double width = PageRoom.Of(paper).Width;
        ElevationDrawing front = PieceView.Draw(set, Views.Front, new(width, FrontHeight));
        double underFront = PageRoom.Under(paper, section, above, set.Piece.Name) - front.Scene.Height - PageRoom.Gap, beside = PageRoom.Over(paper, below);
        Scene Drawn(Views from, double room, double most) => PieceView.Draw(set, from, new(width, room >= LeastHeight ? Math.Min(room, most) : most) { Scale = front.Scale }).Scene;
        return [new SceneBlock(front.Scene), new SceneBlock(Drawn(Views.Above, underFront, FrontHeight)), new SceneBlock(Drawn(Views.Right, beside, SideHeight))];
    }
}
