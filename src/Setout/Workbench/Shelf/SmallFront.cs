using System.Collections.Immutable;
using Setout.Core.SettingOut;
using Setout.Drawing.Elevations;
using Setout.Drawing.Scenes;
using Setout.Shop.Drawings;
using SetPiece = Setout.Core.SettingOut.SetPiece;

namespace Setout.Workbench.Shelf;

/// <summary>The front of a piece without dimensions and words, cropped to its members: small enough for the shelf.</summary>
internal static class SmallFront
{
    private const double Edge = 1.5;
    private static readonly PaperBox s_paper = new(420, 320);

    /// <summary>As SVG; empty when there is nothing to draw.</summary>
    public static string Draw(SetPiece set)
    {
        if (set.IsStopped || !PieceView.Has(set)) return "";
        Scene scene = PieceView.Draw(set, Views.Front, s_paper).Scene;
        ImmutableArray<SceneItem> members =
        [
            .. scene.Items.OfType<GroupItem>().Where(g => g.Key.Length > 0 && !set.Worked.Values.ContainsKey(new(g.Key)))
                .Select(g => g with { Key = "", Title = "", Items = [.. g.Items.Where(i => i is not TextItem)] }),
        ];
        ImmutableArray<Point> corners = [.. members.Cast<GroupItem>().SelectMany(g => g.Items.OfType<ShapeItem>()).SelectMany(s => s.Corners)];
        if (corners.IsEmpty) return "";
        double left = corners.Min(c => c.X) - Edge, top = corners.Min(c => c.Y) - Edge, width = corners.Max(c => c.X) + Edge - left, height = corners.Max(c => c.Y) + Edge - top;
        string svg = SvgWriter.Write(scene with { Items = members }, SvgOptions.Inline);
        string whole = $"viewBox=\"0 0 {SvgWriter.Number(scene.Width)} {SvgWriter.Number(scene.Height)}\"";
        return svg.Replace(whole, $"viewBox=\"{SvgWriter.Number(left)} {SvgWriter.Number(top)} {SvgWriter.Number(width)} {SvgWriter.Number(height)}\"", StringComparison.Ordinal);
    }
}
