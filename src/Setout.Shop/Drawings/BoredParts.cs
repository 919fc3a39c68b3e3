using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;
using Setout.Drawing.Dimensioning;
using Setout.Drawing.Elevations;
using Setout.Drawing.Scenes;

namespace Setout.Shop.Drawings;

/// <summary>A face of a part with its holes.</summary>
/// <param name="Parts">The parts that have it.</param>
/// <param name="Scene">The drawing.</param>
public sealed record BoredFace(ImmutableArray<Part> Parts, Scene Scene);

/// <summary>
/// The faces that holes are bored into, drawn alone: every hole from the lower or left end and from the front or lower edge of its part. Faces that are bored
/// alike are drawn once.
/// </summary>
public static class BoredParts
{
    private const string Runs = "the front or lower edge below, the lower or left end at the left";

    private const string Inner = "inner face of";

    private sealed record Hole(string Name, ExactLength U, ExactLength V, ExactLength Diameter, ExactLength Depth)
    {
        // Pins of one opening are bored as those of another.
        public string Kind => Name.Split(' ')[0];
    }

    private sealed record Bored(Part Part, ExactLength Long, ExactLength Wide, string Face, ImmutableArray<Hole> Holes)
    {
        public string Pattern => string.Join('|', Holes.Select(h => $"{h.Kind} {h.U} {h.V} {h.Diameter} {h.Depth}").Prepend($"{Long} {Wide}"));
    }

    /// <summary>The drawings, in the order of the parts.</summary>
    public static ImmutableArray<BoredFace> Of(SetPiece set, PaperBox paper) =>
    [
        .. set.Parts.SelectMany(p => Faces(set, p)).GroupBy(f => f.Pattern).Select(g => new BoredFace([.. g.Select(f => f.Part).Distinct()], Draw(set, [.. g], paper))),
    ];

    private static IEnumerable<Bored> Faces(SetPiece set, Part part)
    {
        foreach (var face in set.Bores.Where(b => b.Part == part.Key).GroupBy(b => (b.Number, b.Along, At: At(b, b.Along))))
        {
            Placement box = part.Placements[face.Key.Number - 1];
            Along[] rest = [.. Enum.GetValues<Along>().Where(a => a != face.Key.Along)];
            (Along u, Along v) = Size(box, rest[0]) >= Size(box, rest[1]) ? (rest[0], rest[1]) : (rest[1], rest[0]);
            bool isLow = face.Key.At == Low(box, face.Key.Along);
            string words = face.Key.Along switch { Along.X => OfPair(part, face.Key.Number, isLow) ?? (isLow ? "left face" : "right face"), Along.Y => isLow ? "front" : "back", _ => isLow ? "lower face" : "upper face" };
            yield return new(part, Size(box, u), Size(box, v), words, [.. face.Select(b => new Hole(b.Name, At(b, u) - Low(box, u), At(b, v) - Low(box, v), b.Diameter, b.Depth)).Distinct().OrderBy(h => h.Name, StringComparer.Ordinal).ThenBy(h => h.V).ThenBy(h => h.U)]);
        }
    }

    /// <summary>Of a left and a right member the face by its meaning: left and right change about where one is turned on the bench.</summary>
    private static string? OfPair(Part part, int number, bool isLeftFace)
    {
        if (part.Placements.Length != 2 || part.Placements[0].X == part.Placements[1].X) return null;
        bool isLeft = part.Placements[number - 1].X < part.Placements[2 - number].X;
        return $"{(isLeft == isLeftFace ? "outer face of" : Inner)} the {(isLeft ? "left" : "right")} {(part.Role == PartRole.Side ? "side" : "one")}";
    }

    private static Scene Draw(SetPiece set, ImmutableArray<Bored> alike, PaperBox paper)
    {
        Bored face = alike[0];
        LengthFormat bare = LengthFormat.For(set.Piece.Shown).Bare;
        string[] faces = [.. alike.Select(a => a.Face).Distinct()];
        string where = faces.Length > 1 && faces.All(f => f.StartsWith(Inner, StringComparison.Ordinal)) ? "inside" : string.Join(" and ", faces);
        Part[] parts = [.. alike.Select(a => a.Part).Distinct()];
        string name = $"{string.Join(" ", parts.Select(p => p.Mark))}: {face.Part.Name}{(parts.Length > 1 ? $" and {parts.Length - 1} alike" : "")}, {where}";
        ImmutableArray<ModelHole> holes = [.. face.Holes.Select(h => new ModelHole(h.U.ToNearestTick(), h.V.ToNearestTick(), h.Diameter.ToNearestTick()))];
        bool isStick = set.Piece.Materials.GetValueOrDefault(face.Part.Material) is Stick;
        var part = new ElevationPart(face.Part.Key, name, isStick ? PartKind.Rail : PartKind.PanelFace, new(Length.Zero, Length.Zero, face.Long.ToNearestTick(), face.Wide.ToNearestTick())) { Grain = GrainRun.None, Holes = holes };
        var chains = ImmutableArray.CreateBuilder<ElevationChain>();
        foreach (IGrouping<string, Hole> kind in face.Holes.GroupBy(h => h.Name))
        {
            chains.Add(new(Side.Below, Stations(kind.Select(h => h.U), face.Long, bare, false)));
            chains.Add(new(Side.Left, Stations(kind.Select(h => h.V), face.Wide, bare, true)));
        }
        string said = string.Join("; ", face.Holes.GroupBy(h => (h.Name, h.Diameter, h.Depth)).Select(g => Said(g.Key.Name, g.Key.Diameter, g.Key.Depth, g.Count(), bare)));
        return Elevation.Draw(new(name, $"Holes in {face.Part.Name}, {where}: {said}; {Runs}.", [part])
        {
            Caption = $"{name}; {said}",
            // What another chain of the same side says already is not said again.
            Chains = [.. chains.Where((c, i) => !chains.Take(i).Any(o => o.Side == c.Side && c.Spans.All(s => o.Spans.Any(t => (t.From, t.To) == (s.From, s.To)))))],
            HasFloor = false,
        }, paper).Scene;
    }

    private static string Said(string name, ExactLength diameter, ExactLength depth, int count, LengthFormat bare) =>
        $"{name}: {count} hole{(count > 1 ? "s" : "")}{(diameter.Sign > 0 ? $" of {bare.Text(diameter)}" : "")}{(depth.Sign > 0 ? $", {bare.Text(depth)} deep" : "")}";

    /// <summary>From the end to the first hole, then from hole to hole; equal steps are one span. Across, one row runs from the nearer edge, the last of two from the far one.</summary>
    private static ImmutableArray<ElevationSpan> Stations(IEnumerable<ExactLength> at, ExactLength whole, LengthFormat bare, bool fromFar)
    {
        ExactLength[] stations = [.. at.Distinct().Order()];
        var spans = ImmutableArray.CreateBuilder<ElevationSpan>();
        void Add(ExactLength from, ExactLength to, Phrase figure) => spans.Add(new(from.ToNearestTick(), to.ToNearestTick(), figure));
        Phrase Figure(ExactLength length) => Phrase.Of(bare.Format(length));
        if (fromFar && stations.Length == 1 && stations[0] > whole / 2)
        {
            Add(stations[0], whole, Figure(whole - stations[0]));
            return spans.ToImmutable();
        }
        Add(ExactLength.Zero, stations[0], Figure(stations[0]));
        for (int i = 0; i + 1 < stations.Length;)
        {
            ExactLength step = stations[i + 1] - stations[i];
            int last = i + 1;
            while (last + 1 < stations.Length && stations[last + 1] - stations[last] == step) last++;
            if (fromFar && last == stations.Length - 1 && last == i + 1)
            {
                Add(stations[last], whole, Figure(whole - stations[last]));
                break;
            }
            Add(stations[i], stations[last], last == i + 1 ? Figure(step) : Phrase.Of($"{last - i} x ").Add(Figure(step)));
            i = last;
        }
        return spans.ToImmutable();
    }

    private static ExactLength At(Bore bore, Along axis) => axis switch { Along.X => bore.X, Along.Y => bore.Y, _ => bore.Z };

    private static ExactLength Low(Placement box, Along axis) => axis switch { Along.X => box.X, Along.Y => box.Y, _ => box.Z };

    private static ExactLength Size(Placement box, Along axis) => axis switch { Along.X => box.SizeX, Along.Y => box.SizeY, _ => box.SizeZ };
}
