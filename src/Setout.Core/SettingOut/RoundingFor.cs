using Setout.Core.Measures;

namespace Setout.Core.SettingOut;

/// <summary>Which way each kind of part is rounded, once for all.</summary>
internal static class RoundingFor
{
    public static Rounding Role(PartRole role) => role switch
    {
        PartRole.Shelf or PartRole.SlidePanel or PartRole.BoxSide or PartRole.BoxEnd or PartRole.BoxBottom or PartRole.FramePanel or PartRole.DoorPanel or PartRole.WellPlatform or PartRole.WellBearer
            or PartRole.Runner or PartRole.Kicker or PartRole.Bearer => Rounding.Down,
        PartRole.Back or PartRole.Lip or PartRole.Filler or PartRole.EdgeStrip => Rounding.Up,
        _ => Rounding.Nearest,
    };

    public static string Reason(PartRole role) => Role(role) switch
    {
        Rounding.Down => "down: it must go inside",
        Rounding.Up => "up: it must cover",
        _ => "to the nearest step",
    };
}
