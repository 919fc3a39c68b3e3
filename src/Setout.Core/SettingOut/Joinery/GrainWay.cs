using Setout.Core.Measures;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut.Joinery;

/// <summary>Which way the grain of a member runs where it stands, and what it moves each way.</summary>
internal static class GrainWay
{
    /// <summary>What a part moves a way, as a share of its size that way; zero along the grain, through its thickness, and of sheet goods.</summary>
    public static Rational Moves(Book book, Part part, Placement box, Along way) =>
        Across(book, part, box) == way ? WoodMoves.Share(book.Piece.Materials[part.Material], book.Piece.MoistureChange) : Rational.Zero;

    /// <summary>What the part of a key moves a way; zero where there is none, or it has no place.</summary>
    public static Rational Moves(Book book, string key, Along way) =>
        book.Parts.Find(p => p.Key == key) is { Placements: [var box, ..] } part ? Moves(book, part, box, way) : Rational.Zero;

    /// <summary>Which way the width of a part lies, across its grain: the ways of its length and thickness are known by their sizes, of equal ones by what the part is.</summary>
    public static Along Across(Book book, Part part, Placement box)
    {
        ExactLength Off(Along a, QuantityKey size) => (Size(box, a) - book.Value(size)).Abs();
        Along[] all = Enum.GetValues<Along>();
        return all.SelectMany(l => all.Where(w => w != l).Select(w => (Length: l, Width: w)))
            .OrderBy(o => Off(o.Length, part.Length.Made) + Off(o.Width, part.Width.Made) + Off(all.First(t => t != o.Length && t != o.Width), part.Thickness))
            .ThenBy(o => o.Length == Usually(part.Role) ? 0 : 1).First().Width;
    }

    /// <summary>Which way the grain of a part runs where its sizes do not tell.</summary>
    private static Along Usually(PartRole role) => role switch
    {
        PartRole.Post or PartRole.Side or PartRole.Partition or PartRole.Back or PartRole.Door or PartRole.DoorPanel or PartRole.DoorStile or PartRole.FramePanel or PartRole.Slat or PartRole.SlidePanel => Along.Z,
        PartRole.BoxSide or PartRole.Tie or PartRole.Runner or PartRole.Kicker or PartRole.Bearer => Along.Y,
        _ => Along.X,
    };

    private static ExactLength Size(Placement box, Along axis) => axis switch { Along.X => box.SizeX, Along.Y => box.SizeY, _ => box.SizeZ };
}
