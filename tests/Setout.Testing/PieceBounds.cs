using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Core.Workings;

namespace Setout.Testing;

/// <summary>Looks at sizes alone: nothing is cut to nothing, no cut is deeper than what it is cut in, and no hole lies off its part or goes through it.</summary>
public static class PieceBounds
{
    // What is cut into the thickness of a part, by the word its machining begins with.
    private static readonly string[] s_fromTheFace = ["Dado", "Groove along the inside", "Rabbet along the inside of the rear edge", "Rabbet across the inside", "Rabbet across both ends, on the inside"];

    /// <summary>All that is out of bounds, in words; empty when nothing is.</summary>
    public static IEnumerable<string> Violations(SetPiece set)
    {
        foreach (Part part in set.Parts)
            foreach (PartSize size in new[] { part.Length, part.Width })
                if (set.Worked[size.ToCut].Sign <= 0) yield return $"{size.ToCut} is {set.Worked[size.ToCut]}";
        foreach (SetOpening opening in set.Openings)
            if (opening.Space.SizeX.Sign <= 0 || opening.Space.SizeY.Sign <= 0 || opening.Space.SizeZ.Sign <= 0) yield return $"{opening.Key} has no room";
        foreach (Machining cut in set.Machinings)
        {
            Part part = set.Parts.First(p => p.Key == cut.Part);
            ExactLength thick = set.Worked[part.Thickness];
            foreach ((string name, QuantityKey key) in cut.Figures)
            {
                ExactLength value = set.Worked[key];
                if (name is "depth" or "width" or "length" or "thickness" or "diameter" or "high" or "deep" && value.Sign <= 0 && !cut.Words.StartsWith("Gains", StringComparison.Ordinal)) yield return $"{cut.Words} in {cut.Part}: {name} is {value}";
                if (name == "depth" && s_fromTheFace.Any(w => cut.Words.StartsWith(w, StringComparison.Ordinal)) && value >= thick) yield return $"{cut.Words} in {cut.Part}: {value} deep in {thick}";
                if (name.Contains("from", StringComparison.Ordinal) && value.Sign < 0) yield return $"{cut.Words} in {cut.Part}: {name} is {value}";
            }
        }
        foreach (Bore hole in set.Bores)
        {
            Placement box = set.Parts.First(p => p.Key == hole.Part).Placements[hole.Number - 1];
            // A stile too narrow for a cup has its own warning, for the cup may lie over the rail or the panel.
            if (hole.Name == "cup" && set.Findings.Any(f => f.Code == "door.stile-narrow-for-cup")) continue;
            ExactLength half = hole.Diameter / 2;
            (Along Axis, ExactLength At, ExactLength From, ExactLength Size)[] axes = [(Along.X, hole.X, box.X, box.SizeX), (Along.Y, hole.Y, box.Y, box.SizeY), (Along.Z, hole.Z, box.Z, box.SizeZ)];
            foreach ((Along axis, ExactLength at, ExactLength from, ExactLength size) in axes)
            {
                if (axis != hole.Along && (at - half < from || at + half > from + size)) yield return $"{hole.Name} of {hole.Key} lies off {hole.Part} along {axis}";
                if (axis == hole.Along && hole.Depth.Sign > 0 && hole.Depth >= size) yield return $"{hole.Name} of {hole.Key} goes through {hole.Part}";
                if (hole.Depth.Sign < 0) yield return $"{hole.Name} of {hole.Key} has no depth in {hole.Part}";
            }
        }
    }
}
