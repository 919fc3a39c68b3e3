using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Drawing.Elevations;
using Setout.Drawing.Sections;

namespace Setout.Shop.Drawings;

/// <summary>How a box of the piece lies on a view: the same boxes, other axes.</summary>
internal static class Sight
{
    /// <summary>Its rectangle. Both edges land on ticks, so that neighbours that touch still touch.</summary>
    public static ModelRect Area(Views from, Placement place) => from switch
    {
        Views.Above => Rect(place.X, place.SizeX, place.Y, place.SizeY),
        Views.Right => Rect(place.Y, place.SizeY, place.Z, place.SizeZ),
        _ => Rect(place.X, place.SizeX, place.Z, place.SizeZ),
    };

    /// <summary>How near its near face is to the eye: more is nearer.</summary>
    public static ExactLength Near(Views from, Placement place) => from switch
    {
        Views.Above => place.Z + place.SizeZ,
        Views.Right => place.X + place.SizeX,
        _ => -place.Y,
    };

    /// <summary>How far its far face is: less is farther.</summary>
    public static ExactLength Far(Views from, Placement place) => Near(from, place) - Deep(from, place);

    /// <summary>Its size along the line of sight.</summary>
    public static ExactLength Deep(Views from, Placement place) => from switch
    {
        Views.Above => place.SizeZ,
        Views.Right => place.SizeX,
        _ => place.SizeY,
    };

    /// <summary>Whether two boxes share room.</summary>
    public static bool Meet(Placement a, Placement b) => a.Within(b).Sign > 0;

    /// <summary>Whether two rectangles share area.</summary>
    public static bool Meet(ModelRect a, ModelRect b) => a.Left < b.Right && b.Left < a.Right && a.Bottom < b.Top && b.Bottom < a.Top;

    /// <summary>Whether two rectangles touch or share area.</summary>
    public static bool Touch(ModelRect a, ModelRect b) => a.Left <= b.Right && b.Left <= a.Right && a.Bottom <= b.Top && b.Bottom <= a.Top;

    /// <summary>Which way the hatching of one more part of a section runs: neighbours take turns.</summary>
    public static bool IsFalling(IEnumerable<SectionPart> there, ModelRect area) =>
        there.Where(p => Touch(p.Area, area)).Select(p => p.IsFalling).GroupBy(f => f).OrderByDescending(g => g.Count()).Select(g => !g.Key).FirstOrDefault();

    /// <summary>What others leave of a rectangle, as rectangles; none where they cover it.</summary>
    public static ImmutableArray<ModelRect> Left(ModelRect area, IEnumerable<ModelRect> covers)
    {
        List<ModelRect> left = [area];
        foreach (ModelRect cover in covers)
        {
            if (!left.Any(l => Meet(l, cover))) continue;
            left = [.. left.SelectMany(l => Meet(l, cover) ? Less(l, cover) : [l])];
            if (left.Count == 0) break;
        }
        return [.. left];
    }

    private static IEnumerable<ModelRect> Less(ModelRect area, ModelRect cover)
    {
        Length low = Length.Max(area.Bottom, cover.Bottom), high = Length.Min(area.Top, cover.Top);
        if (cover.Top < area.Top) yield return new(area.Left, cover.Top, area.Width, area.Top - cover.Top);
        if (cover.Bottom > area.Bottom) yield return new(area.Left, area.Bottom, area.Width, cover.Bottom - area.Bottom);
        if (cover.Left > area.Left) yield return new(area.Left, low, cover.Left - area.Left, high - low);
        if (cover.Right < area.Right) yield return new(cover.Right, low, area.Right - cover.Right, high - low);
    }

    private static ModelRect Rect(ExactLength u, ExactLength wide, ExactLength v, ExactLength high)
    {
        Length left = u.ToNearestTick(), bottom = v.ToNearestTick();
        return new(left, bottom, (u + wide).ToNearestTick() - left, (v + high).ToNearestTick() - bottom);
    }
}
