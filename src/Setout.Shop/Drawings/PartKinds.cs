using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;
using Setout.Drawing.Elevations;

namespace Setout.Shop.Drawings;

/// <summary>What a member is on a view, and which way its grain runs there.</summary>
internal static class PartKinds
{
    /// <summary>A stick is drawn the way it lies: stiles and mullions of a face frame stand, its rails do not.</summary>
    public static PartKind? Of(SetPiece set, Part part, Placement place, Views from)
    {
        ModelRect area = Sight.Area(from, place);
        if (from == Views.Front && OnFront(part.Role) is not PartKind.Rail) return OnFront(part.Role);
        Length deep = Sight.Deep(from, place).ToNearestTick();
        if (from == Views.Front || set.Piece.Materials.GetValueOrDefault(part.Material) is Stick)
            return deep > area.Width && deep > area.Height ? PartKind.StickEnd : area.Height > area.Width ? PartKind.Post : PartKind.Rail;
        return deep < area.Width && deep < area.Height ? PartKind.PanelFace : PartKind.PanelEdge;
    }

    /// <summary>On the front the kind says how the grain runs; on the others a face shows it as its part was cut.</summary>
    public static GrainRun Grain(SetPiece set, Part part, PartKind kind, ModelRect area, Views from)
    {
        if (from == Views.Front || kind != PartKind.PanelFace) return GrainRun.ByKind;
        if (part.Grain == Core.Pieces.Grain.Free) return GrainRun.None;
        Length length = set.ToCut(part.Length);
        return (area.Width - length).Abs() <= (area.Height - length).Abs() ? GrainRun.Level : GrainRun.Upright;
    }

    private static PartKind? OnFront(PartRole role) => role switch
    {
        PartRole.Post or PartRole.Slat => PartKind.Post,
        PartRole.Rail or PartRole.Runner or PartRole.Kicker or PartRole.Bearer => PartKind.Rail,
        PartRole.SlidePanel or PartRole.Side or PartRole.Partition => PartKind.PanelEdge,
        PartRole.Deck or PartRole.Shelf => PartKind.Deck,
        PartRole.Back or PartRole.FramePanel => PartKind.Back,
        PartRole.FalseFront => PartKind.DrawerFront,
        PartRole.Top or PartRole.EdgeStrip => PartKind.Top,
        PartRole.WellPlatform or PartRole.Kick => PartKind.Deck,
        PartRole.WellBearer or PartRole.WellSide or PartRole.Filler => PartKind.PanelEdge,
        PartRole.Door => PartKind.Door,
        PartRole.DoorStile => PartKind.Post,
        PartRole.DoorRail or PartRole.ShelfStrip or PartRole.FaceFrame => PartKind.Rail,
        PartRole.DoorPanel => PartKind.PanelFace,
        _ => null,
    };
}
