using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;
using Setout.Drawing.Elevations;
using Setout.Drawing.Scenes;
using Setout.Drawing.Turning;
using SetPiece = Setout.Core.SettingOut.SetPiece;

namespace Setout.Shop.Drawings;

/// <summary>The members of a piece as blocks that can be turned and moved apart.</summary>
public static class TurningPiece
{
    /// <summary>What is drawn; the piece has at least one member with a place. A tenon or a tongue is left out: it is never seen, and what it stands in would be painted wrongly beside it.</summary>
    public static TurningInput Input(SetPiece set)
    {
        LengthFormat format = LengthFormat.For(set.Piece.Unit);
        Placement[] places = [.. set.Parts.SelectMany(p => p.Placements)];
        ImmutableArray<Block> blocks =
        [
            .. set.Parts.SelectMany(p => p.Placements.Select((place, i) =>
        {
            Placement seen = Shoulders(place, places);
            return new Block(p.Count > 1 ? $"{p.Key}#{i + 1}" : p.Key, $"{p.Name}, {format.Bare.Text(set.ToCut(p.Length))} x {format.Text(set.ToCut(p.Width))}",
                set.Piece.Materials.GetValueOrDefault(p.Material) is Stick ? Wash.Wood : Wash.Panel,
                new(Mm(seen.X), Mm(seen.Y), Mm(seen.Z)), new(Mm(seen.X + seen.SizeX), Mm(seen.Y + seen.SizeY), Mm(seen.Z + seen.SizeZ)));
            })),
        ];
        return new($"{set.Piece.Name}, turned", $"{set.Piece.Name} from the front, right and above, in lines; its parts are listed beside it.", blocks);
    }

    // Where an end of a box goes into another with all of its section, as far as to the shoulder.
    private static Placement Shoulders(Placement box, Placement[] all)
    {
        foreach (Placement other in all)
        {
            if (ReferenceEquals(other, box) || box.Within(other).Sign <= 0) continue;
            (ExactLength x, ExactLength y, ExactLength z) = box.Shared(other);
            bool fillsX = x == box.SizeX, fillsY = y == box.SizeY, fillsZ = z == box.SizeZ;
            if (fillsY && fillsZ && !fillsX) box = box with { X = other.X > box.X ? box.X : box.X + x, SizeX = box.SizeX - x };
            else if (fillsX && fillsZ && !fillsY) box = box with { Y = other.Y > box.Y ? box.Y : box.Y + y, SizeY = box.SizeY - y };
            else if (fillsX && fillsY && !fillsZ) box = box with { Z = other.Z > box.Z ? box.Z : box.Z + z, SizeZ = box.SizeZ - z };
        }
        return box;
    }

    /// <summary>Draws it.</summary>
    public static Scene Draw(SetPiece set, Standpoint from, PaperBox paper) => TurningView.Draw(Input(set), from, paper);

    private static double Mm(ExactLength length) => (double)length.ToNearestTick().ToMillimetres();
}
