using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;

namespace Setout.Shop.Plans;

/// <summary>How large a blank one person lifts.</summary>
public static class OneLift
{
    /// <summary>The largest face of a blank of a wood that one person of the shop lifts, by the most it may weigh; null where its density is not on record.</summary>
    /// <param name="set">The piece, for the thickness.</param>
    /// <param name="wood">The panel or the stick.</param>
    /// <param name="lift">The heaviest that one person lifts.</param>
    public static Area? MostArea(SetPiece set, Material wood, Mass lift)
    {
        // The weight of one square metre; a density that is heavier than the best value makes the face smaller.
        Length metre = Length.FromMillimetres(1000);
        if (Weights.OfStock(set, wood, metre, metre) is not { } mass || mass.Kilograms.Value + mass.Kilograms.Error <= 0) return null;
        double squareMetres = (lift.Kilograms.Value - lift.Kilograms.Error) / (mass.Kilograms.Value + mass.Kilograms.Error);
        // Nothing in a shop is larger than the longest size squared; beyond it the figure says no more.
        return squareMetres >= 900 ? (Length.FromMillimetres(30_000) * Length.FromMillimetres(30_000)) : Area.FromSquareTicks((Int128)(squareMetres * 1e6 * Length.TicksPerMillimetre * Length.TicksPerMillimetre));
    }
}
