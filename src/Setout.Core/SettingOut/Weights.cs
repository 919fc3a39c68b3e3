using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut;

/// <summary>What some parts weigh together, hardware and glue left out.</summary>
/// <param name="Known">Of those whose material has a density on record, in kilograms; errors add up, for a wood heavier than the table is so in all parts of it.</param>
/// <param name="Without">Materials that have none, each once; their parts are not in it.</param>
public readonly record struct Weight(Mass Known, ImmutableArray<string> Without)
{
    /// <summary>True where nothing is left out for want of a density.</summary>
    public bool IsWhole => Without.IsEmpty;

    /// <summary>The most it may weigh, in kilograms.</summary>
    public double Most => Known.Kilograms.Value + Known.Kilograms.Error;
}

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
        Weight all = Total(book.Parts.Where(p => new QuantityKey(p.Key).Owner == owner), p =>
            DensityOf(book.Piece.Materials[p.Material]) is { } density ? Of(density, book.Value(p.Length.Made), book.Value(p.Width.Made), book.Value(p.Thickness)) : null);
        return all.IsWhole ? all.Known : null;
    }

    /// <summary>All members of some parts together.</summary>
    public static Weight Of(SetPiece set, IEnumerable<Part> parts) => Total(parts, p => OfOne(set, p));

    private static Weight Total(IEnumerable<Part> parts, Func<Part, Mass?> ofOne)
    {
        double total = 0, give = 0;
        var without = new SortedSet<string>(StringComparer.Ordinal);
        foreach (Part part in parts)
        {
            if (ofOne(part) is not { } one)
            {
                without.Add(part.Material);
                continue;
            }
            total += one.Kilograms.Value * part.Count;
            give += one.Kilograms.Error * part.Count;
        }
        return new(new(new Estimate(total, give)), [.. without]);
    }

    /// <summary>All parts together.</summary>
    public static Weight OfAll(SetPiece set) => Of(set, set.Parts);

    /// <summary>A whole sheet or board of stock; null where nothing is on record for its material.</summary>
    public static Mass? OfStock(SetPiece set, Material material, Length along, Length across)
    {
        if (DensityOf(material) is not { } density || !set.Worked.Values.TryGetValue(Book.ThicknessOf(material.Name), out Worked? thickness)) return null;
        return Of(density, along, across, thickness.Value);
    }

    /// <summary>Kilograms a cubic metre; null where nothing is on record.</summary>
    public static Estimate? DensityOf(Material material) => material switch
    {
        Panel panel => PanelTable.DensityOf(panel.Kind) ?? Woods.Find(panel.Kind)?.Density,
        Stick stick => Woods.Find(stick.Kind)?.Density,
        _ => null,
    };

    /// <summary>Where the density is from; null where nothing is on record.</summary>
    public static string? SourceOf(Material material) => material switch
    {
        Panel panel => PanelTable.DensitySourceOf(panel.Kind) ?? Woods.Find(panel.Kind)?.DensitySource,
        Stick stick => Woods.Find(stick.Kind)?.DensitySource,
        _ => null,
    };

    /// <summary>The solid wood of a material, with its movement across the grain; null for sheet goods and for what is not on record.</summary>
    public static WoodFact? WoodOf(Material material) => material switch
    {
        Panel panel => PanelTable.DensityOf(panel.Kind) is null ? Woods.Find(panel.Kind) : null,
        Stick stick => Woods.Find(stick.Kind),
        _ => null,
    };

    private static Mass Of(Estimate density, ExactLength length, ExactLength width, ExactLength thickness)
    {
        // A size that comes out at nothing or less has a finding of its own, and weighs nothing.
        if (length.Sign <= 0 || width.Sign <= 0 || thickness.Sign <= 0) return new(new Estimate(0, 0));
        double cubicMetres = length.ApproximateMillimetres * width.ApproximateMillimetres * thickness.ApproximateMillimetres * 1e-9;
        return new(new Estimate(cubicMetres * density.Value, cubicMetres * density.Error));
    }
}
