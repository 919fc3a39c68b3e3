using System.Globalization;
using Setout.Core.Measures;
using Setout.Core.SettingOut;

namespace Setout.Shop.Drawings;

/// <summary>Tells members apart that are alike, such as the posts of a frame, by where they stand.</summary>
public static class MemberPlaces
{
    private sealed record Axis(Func<Placement, ExactLength> Middle, string Low, string High, string From, int Said);

    // Where two tell as much, the first counts.
    private static readonly Axis[] s_axes =
    [
        new(p => p.X + p.X + p.SizeX, "left", "right", "from the left", 2), new(p => p.Z + p.Z + p.SizeZ, "lower", "upper", "from below", 1),
        new(p => p.Y + p.Y + p.SizeY, "front", "back", "from the front", 0),
    ];

    /// <summary>Where a member stands among those like it: <c>left</c>, <c>front lower</c>, <c>back, 2nd of 4 from the left</c>; empty for one that is alone.</summary>
    /// <param name="part">The part.</param>
    /// <param name="number">Which of it, from 1.</param>
    public static string Of(Part part, int number)
    {
        if (part.Placements.Length < 2 || number < 1 || number > part.Placements.Length) return "";
        Placement place = part.Placements[number - 1];
        List<Placement> left = [.. part.Placements];
        var words = new List<(int Said, string Word)>();
        var ordinals = new List<string>();
        // Two sides first, front and back, say; then the place in a row. No more is said than tells it from the others.
        while (left.Count > 1)
        {
            (Axis Axis, ExactLength[] Values)[] ways = [.. s_axes.Select(a => (a, left.Select(a.Middle).Distinct().Order().ToArray())).Where(a => a.Item2.Length > 1).OrderBy(a => a.Item2.Length)];
            if (ways.Length == 0) return $"number {number.ToString(CultureInfo.InvariantCulture)}";
            (Axis axis, ExactLength[] values) = ways[0];
            int at = Array.IndexOf(values, axis.Middle(place));
            if (values.Length == 2) words.Add((axis.Said, at == 0 ? axis.Low : axis.High));
            else ordinals.Add($"{Ordinal(at + 1)} of {values.Length} {axis.From}");
            left.RemoveAll(p => axis.Middle(p) != axis.Middle(place));
        }
        return string.Join(", ", ordinals.Prepend(string.Join(' ', words.OrderBy(w => w.Said).Select(w => w.Word))).Where(w => w.Length > 0));
    }

    private static string Ordinal(int number) => number.ToString(CultureInfo.InvariantCulture) + ((number % 100) is >= 11 and <= 13 ? "th" : (number % 10) switch { 1 => "st", 2 => "nd", 3 => "rd", _ => "th" });
}
