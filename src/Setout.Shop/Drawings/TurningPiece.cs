using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;
using Setout.Drawing.Elevations;
using Setout.Drawing.Scenes;
using Setout.Drawing.Turning;
using SetPiece = Setout.Core.SettingOut.SetPiece;
using Spot = Setout.Drawing.Turning.Spot;

namespace Setout.Shop.Drawings;

/// <summary>The members of a piece as blocks that can be turned and moved apart.</summary>
public static class TurningPiece
{
    // More blocks than this no hand could turn smoothly: each is held against each.
    private const int MostBlocks = 400;

    /// <summary>
    /// What is drawn; the piece has at least one member with a place. A member has its holes, grooves and notches, but no mortises and pins; in a piece of very many, only what is cut out of it. A tenon or a tongue
    /// is left out: in its groove it is never seen, and what it stands in would be painted wrongly beside it.
    /// </summary>
    public static TurningInput Input(SetPiece set)
    {
        ImmutableArray<MemberShape> shapes = MemberShape.Of(set);
        HashSet<string> cutOut = [.. set.CutOuts.Select(c => c.Key)];
        ImmutableArray<Block> blocks = Blocks(set, shapes);
        if (blocks.Length > MostBlocks) blocks = Blocks(set, [.. shapes.Select(s => s with { Recesses = [.. s.Recesses.Where(r => cutOut.Contains(r.For))] })]);
        return new($"{set.Piece.Name}, turned", $"{set.Piece.Name} from the front, right and above, in lines; its parts are listed beside it.", blocks);
    }

    private static ImmutableArray<Block> Blocks(SetPiece set, ImmutableArray<MemberShape> shapes)
    {
        LengthFormat format = LengthFormat.For(set.Piece.Shown);
        HashSet<(string, string)> locked = Locked(set);
        return
        [
            .. shapes.SelectMany(shape =>
            {
                (Part p, Placement seen) = (shape.Part, Shoulders(shape, shapes));
                var whole = new Block(p.Count > 1 ? shape.Name : p.Key, $"{p.Name}, {format.Bare.Text(set.ToCut(p.Length))} x {format.Text(set.ToCut(p.Width))}",
                    set.Piece.Materials.GetValueOrDefault(p.Material) is Stick ? Wash.Wood : Wash.Panel, Low(seen), High(seen));
                return Hollowed.Of(whole, shape.Recesses.Where(r => !locked.Contains((p.Key, r.For.Split('#')[0]))).Select(r => (Low(r.Space), High(r.Space))));
            }),
        ];
    }

    // What lock into one another cannot be painted one after the other: they are drawn without their mortises and pins.
    private static HashSet<(string, string)> Locked(SetPiece set) =>
    [
        .. set.Joints.Where(j => j.Kind is JointKind.Tenon or JointKind.MortiseAndTenon or JointKind.BoxJoint or JointKind.HalfBlindDovetail or JointKind.ThroughDovetail)
            .SelectMany(j => new[] { (j.Part, j.Against), (j.Against, j.Part) }),
    ];

    private static Spot Low(Placement box) => new(Mm(box.X), Mm(box.Y), Mm(box.Z));

    private static Spot High(Placement box) => new(Mm(box.X + box.SizeX), Mm(box.Y + box.SizeY), Mm(box.Z + box.SizeZ));

    // Where an end of a box goes into another with all of its section, as far as to the shoulder.
    private static Placement Shoulders(MemberShape shape, ImmutableArray<MemberShape> all)
    {
        Placement box = shape.Box;
        foreach (MemberShape against in all)
        {
            Placement other = against.Box;
            if (ReferenceEquals(against, shape) || box.Within(other).Sign <= 0) continue;
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
