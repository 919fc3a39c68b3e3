using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Pieces;

namespace Setout.Core.SettingOut;

/// <summary>What parts weigh, from their sizes and the density of their wood.</summary>
public static class Weights
{
    /// <summary>One member of a part; null where nothing is on record for its material. Grooves and the like are not taken off.</summary>
    public static Mass? OfOne(SetPiece set, Part part)
    {
        ExactLength length = set.Worked[part.Length.AsCut], width = set.Worked[part.Width.AsCut], thickness = set.Worked[part.Thickness];
        return DensityOf(set.Piece.Materials[part.Material]) is { } density ? Of(density, length, width, thickness) : null;
    }

    /// <summary>What is written so far of one owner, such as a door; null where nothing is on record for a material.</summary>
    internal static Mass? OfOwner(Book book, string owner)
    {
        double total = 0, give = 0;
        foreach (Part part in book.Parts.Where(p => new Workings.QuantityKey(p.Key).Owner == owner))
        {
            if (DensityOf(book.Piece.Materials[part.Material]) is not { } density) return null;
            Mass one = Of(density, book.Value(part.Length.Made), book.Value(part.Width.Made), book.Value(part.Thickness));
            total += one.Kilograms.Value * part.Count;
            give += one.Kilograms.Error * part.Count;
        }
        return new Mass(new Estimate(total, give));
    }

    /// <summary>All parts together, hardware left out; null where one of them is not known.</summary>
    public static Mass? OfAll(SetPiece set)
    {
        double total = 0, give = 0;
        foreach (Part part in set.Parts)
        {
            if (OfOne(set, part) is not { } one) return null;
            // What a wood is heavier than the table it is in all parts of it: errors add up.
            total += one.Kilograms.Value * part.Count;
            give += one.Kilograms.Error * part.Count;
        }
        return new Mass(new Estimate(total, give));
    }

    /// <summary>Kilograms a cubic metre; null where nothing is on record.</summary>
    public static Estimate? DensityOf(Material material) => material switch
    {
        Panel panel => PanelTable.DensityOf(panel.Kind) ?? Woods.Find(panel.Kind)?.Density,
        Stick stick => Woods.Find(stick.Kind)?.Density,
        _ => null,
    };

    private static Mass Of(Estimate density, ExactLength length, ExactLength width, ExactLength thickness)
    {
        double cubicMetres = length.ApproximateMillimetres * width.ApproximateMillimetres * thickness.ApproximateMillimetres * 1e-9;
        return new(new Estimate(cubicMetres * density.Value, cubicMetres * density.Error));
    }
}
