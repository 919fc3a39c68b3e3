using Setout.Core.SettingOut;
using Setout.Shop.Plans;

namespace Setout.Workbench.Pieces;

/// <summary>A piece that could be read, set out.</summary>
/// <param name="Name">Its name in addresses.</param>
/// <param name="File">Its texts as they are kept.</param>
/// <param name="Source">The texts read.</param>
/// <param name="Set">The piece set out.</param>
/// <param name="Plan">The whole plan, where it was waited for or is ready; else null.</param>
internal sealed record OpenPiece(string Name, PieceFile File, PieceSource Source, SetPiece Set, Plan? Plan)
{
    /// <summary>How it stands on the bench; null where nobody asked, as for a piece that is only tried.</summary>
    public OnBench? Bench { get; init; }
}
