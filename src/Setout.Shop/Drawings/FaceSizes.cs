using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Drawing.Elevations;
using Setout.Drawing.Scenes;

namespace Setout.Shop.Drawings;

/// <summary>A size of a face frame.</summary>
/// <param name="Owner">The key of the opening, or of the part.</param>
/// <param name="IsAcross">True for a width.</param>
/// <param name="At">Of a height: the middle of the opening it belongs to, from the left.</param>
/// <param name="Span">Where it lies, and its figure.</param>
internal sealed record FaceSize(string Owner, bool IsAcross, ExactLength At, ElevationSpan Span);

/// <summary>
/// What is seen and set out at a face frame: the widths of its members, and the openings between them. Clear openings of the case lie behind it and are not shown.
/// </summary>
internal static class FaceSizes
{
    /// <summary>True for an opening of a case behind a face frame.</summary>
    public static bool Hides(Whereabouts where, string owner) => where.IsOpening(owner) && where.In(owner) is Case { FaceFrame: not null };

    /// <summary>The sizes of all face frames.</summary>
    public static IEnumerable<FaceSize> Of(SetPiece set, Whereabouts where)
    {
        LengthFormat format = LengthFormat.For(set.Piece.Shown);
        foreach (Case described in set.Piece.Members.OfType<Case>().Where(c => c.FaceFrame is not null))
        {
            (Part Part, Placement Box)[] members = [.. set.Parts.Where(p => p.Role == PartRole.FaceFrame && where.In(p.Key) == described).SelectMany(p => p.Placements.Select(b => (p, b)))];
            foreach (SetOpening opening in set.Openings.Where(o => o.Content != "divided" && where.In(o.Key) == described))
            {
                ExactLength x = opening.Space.X + (opening.Space.SizeX / 2), z = opening.Space.Z + (opening.Space.SizeZ / 2);
                var level = members.Where(m => m.Box.X < x && x < m.Box.X + m.Box.SizeX).ToList();
                var upright = members.Where(m => m.Box.Z < z && z < m.Box.Z + m.Box.SizeZ).ToList();
                if (!upright.Exists(m => m.Box.X < x) || !upright.Exists(m => m.Box.X > x) || !level.Exists(m => m.Box.Z < z) || !level.Exists(m => m.Box.Z > z)) continue;
                (Part Part, Placement Box) left = upright.Where(m => m.Box.X < x).MaxBy(m => m.Box.X), right = upright.Where(m => m.Box.X > x).MinBy(m => m.Box.X);
                (Part Part, Placement Box) below = level.Where(m => m.Box.Z < z).MaxBy(m => m.Box.Z), above = level.Where(m => m.Box.Z > z).MinBy(m => m.Box.Z);
                foreach ((Part part, Placement box) in new[] { left, right }) yield return new(part.Key, true, x, Member(part, box.X, box.SizeX));
                foreach ((Part part, Placement box) in new[] { below, above }) yield return new(part.Key, false, x, Member(part, box.Z, box.SizeZ));
                yield return new(opening.Key, true, x, Clear(left.Box.X + left.Box.SizeX, right.Box.X, $"{opening.Name}, clear width at the face"));
                yield return new(opening.Key, false, x, Clear(below.Box.Z + below.Box.SizeZ, above.Box.Z, $"{opening.Name}, clear height at the face"));
                if (set.Worked.Values.TryGetValue(QuantityKey.Of(described.Key, "toe.height"), out Worked? toe) && where.Box(described) is { } whole)
                    yield return new($"{described.Key}.toe", false, x, Span(whole.Z, whole.Z + toe.Value, toe.Quantity.Key.Text, toe.Quantity.Name));
            }
        }

        ElevationSpan Member(Part part, ExactLength from, ExactLength size) => Span(from, from + size, part.Width.ToCut.Text, $"{part.Name}, width");
        ElevationSpan Clear(ExactLength from, ExactLength to, string name) => Span(from, to, "", name);
        ElevationSpan Span(ExactLength from, ExactLength to, string key, string name) =>
            new(from.ToNearestTick(), to.ToNearestTick(), Phrase.Of(format.Bare.Format(to - from)), key, $"{name}, {format.Text(to - from)}");
    }
}
