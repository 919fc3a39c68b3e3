using Setout.Cutting.Runs;

namespace Setout.Shop.Runs;

/// <summary>Which sides of a blank nobody has trued yet, in words: its size includes what goes off them.</summary>
internal static class RawSides
{
    /// <summary>Such as <c>raw at the far edge and the 0 end</c>; empty for a blank that is true all round.</summary>
    public static string Words(RunBlank blank)
    {
        string[] sides = [.. Enum.GetValues<BlankSide>().Where(blank.IsRaw).Select(Word)];
        return sides.Length switch { 0 => "", 4 => "raw all round", _ => $"raw at the {CutLines.List(sides)}" };
    }

    private static string Word(BlankSide side) => side switch
    {
        BlankSide.NearEdge => "reference edge",
        BlankSide.FarEdge => "far edge",
        BlankSide.NearEnd => "0 end",
        _ => "far end",
    };
}
