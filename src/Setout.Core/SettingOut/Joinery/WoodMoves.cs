using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut.Joinery;

/// <summary>
/// How much solid wood moves across its grain between dry and damp: its width times the change a unit of width and per cent of moisture that is published for
/// its wood (Wood Handbook, equation 13-2, from 6 to 14 % of moisture). Along the grain it does not move: 0.1 to 0.2 % from green to dry (Wood Handbook).
/// </summary>
internal static class WoodMoves
{
    /// <summary>The wood of a material that is solid; null for sheet goods and for what is not on record.</summary>
    public static WoodFact? Solid(Material? material) => material switch
    {
        Panel panel when PanelTable.Kinds.Contains(panel.Kind) || panel.Kind.Contains("ply", StringComparison.OrdinalIgnoreCase) || panel.Kind.Contains("veneer", StringComparison.OrdinalIgnoreCase) => null,
        Panel panel => Woods.Find(panel.Kind),
        Stick stick => Woods.Find(stick.Kind),
        _ => null,
    };

    /// <summary>What it moves, as a share of its width, over a change of moisture; zero where it is not solid.</summary>
    /// <param name="material">The material.</param>
    /// <param name="change">In per cent of moisture.</param>
    public static Rational Share(Material? material, int change) => Solid(material) is { } wood ? (IsQuartered(material) ? wood.Radial : wood.Tangential) * Rational.Of(change, 1) : Rational.Zero;

    /// <summary>What moves a width, as a term.</summary>
    public static Term Term(Material material, WoodFact wood, int change, QuantityKey width) =>
        Workings.Term.From($"{wood.Name}, {(IsQuartered(material) ? "quarter-sawn" : "flat-sawn")}, a change of {change} % of moisture ({wood.MovementSource})", Share(material, change), width);

    /// <summary>What a part moves across its grain; written once. Null where it is not of solid wood.</summary>
    public static QuantityKey? Of(Book book, Part part)
    {
        Material material = book.Piece.Materials[part.Material];
        return Of(book, part.Key, part.Name, material, part.Width.Made);
    }

    /// <summary>What a part of a width moves across its grain; written once. Null where it is not of solid wood.</summary>
    public static QuantityKey? Of(Book book, string part, string name, Material material, QuantityKey width)
    {
        if (Solid(material) is not { } wood) return null;
        var key = QuantityKey.Of(part, "moves");
        return book.Knows(key) ? key : book.Define(part, "moves", $"{name}, movement across its grain", new Sum(Term(material, wood, book.Piece.MoistureChange, width)));
    }

    private static bool IsQuartered(Material? material) => Kind(material).Contains("quarter", StringComparison.OrdinalIgnoreCase);

    private static string Kind(Material? material) => material switch { Panel panel => panel.Kind, Stick stick => stick.Kind, _ => "" };
}
