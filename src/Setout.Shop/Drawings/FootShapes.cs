using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Drawing.Elevations;

namespace Setout.Shop.Drawings;

/// <summary>
/// Bought feet, castors and levellers under a case, in front and side elevation. How high they are is known; how wide they are, and how far they stand from the edges, is the drawing's own, as
/// no rule says it.
/// </summary>
internal static class FootShapes
{
    private const int WheelCorners = 24;

    /// <summary>The feet of all cases.</summary>
    public static IEnumerable<ElevationPart> Of(SetPiece set, Whereabouts where, Views from)
    {
        if (from == Views.Above) yield break;
        foreach (Case described in set.Piece.Members.OfType<Case>())
        {
            QuantityKey lift = QuantityKey.Of(described.Key, "lift");
            if (described.Feet is not { } feet || where.Box(described) is not { } box || !set.Worked.Values.TryGetValue(lift, out Worked? high) || high.Value.Sign <= 0) continue;
            bool isFront = from == Views.Front;
            // From the right those of the last case stand before the others.
            if (!isFront && !where.Ends(described).IsLast) continue;
            (ExactLength start, ExactLength whole) = isFront ? (box.X, box.SizeX) : (box.Y, box.SizeY);
            int count = isFront ? Rows(set, box.SizeX) : 2;
            ExactLength wide = ExactLength.Min(high.Value * Rational.Of(3, 4), ExactLength.Min(whole / 6, ExactLength.FromMillimetres(70)));
            string title = $"{Word(feet.Kind)} of {(described.Name.Length > 0 ? described.Name : described.Key)}, bought, {LengthFormat.For(set.Piece.Shown).Text(high.Value)} high";
            for (int i = 0; i < count; i++)
            {
                // The outer ones under the sides, the others evenly between them.
                ExactLength middle = start + (wide / 2) + ((whole - wide) * Rational.Of(i, count - 1));
                foreach (ElevationPart part in Shape(feet.Kind, lift.Text, title, middle, box.Z - high.Value, wide, high.Value)) yield return part with { Order = int.MaxValue };
            }
        }
    }

    /// <summary>How many pairs are bought: one for each of the usual spaces of a base, and one more.</summary>
    private static int Rows(SetPiece set, ExactLength width) =>
        1 + Math.Max(1, (int)(width / TradeRules.Get("BS1").Series[set.Piece.Unit == LengthUnit.Inch ? 0 : ^1]).Round(Rounding.Up));

    private static string Word(FootKind kind) => kind switch { FootKind.Castors => "Castor", FootKind.Levellers => "Leveller", _ => "Foot" };

    private static IEnumerable<ElevationPart> Shape(FootKind kind, string key, string title, ExactLength middle, ExactLength low, ExactLength wide, ExactLength high)
    {
        ExactLength half = wide / 2, top = low + high;
        switch (kind)
        {
            case FootKind.Castors:
                // A plate, the fork, and the wheel before it.
                ExactLength plate = high / 10, radius = ExactLength.Min(high * Rational.Of(2, 5), half);
                yield return Box(middle - half, middle + half, top - plate, top);
                yield return Polygon([(middle - (half * Rational.Of(1, 2)), top - plate), (middle + (half * Rational.Of(1, 2)), top - plate), (middle + (half / 4), low + radius), (middle - (half / 4), low + radius)]);
                yield return Wheel(middle, low + radius, radius);
                break;
            case FootKind.Levellers:
                // A pad on the floor and a screw.
                yield return Box(middle - (half / 4), middle + (half / 4), low + (high / 5), top);
                yield return Box(middle - (half * Rational.Of(3, 4)), middle + (half * Rational.Of(3, 4)), low, low + (high / 5));
                break;
            default:
                yield return Polygon([(middle - half, top), (middle + half, top), (middle + (half * Rational.Of(2, 3)), low), (middle - (half * Rational.Of(2, 3)), low)]);
                break;
        }

        ElevationPart Box(ExactLength left, ExactLength right, ExactLength bottom, ExactLength over) => Polygon([(left, bottom), (right, bottom), (right, over), (left, over)]);

        ElevationPart Polygon((ExactLength X, ExactLength Z)[] corners)
        {
            ImmutableArray<ModelPoint> points = [.. corners.Select(c => new ModelPoint(c.X.ToNearestTick(), c.Z.ToNearestTick()))];
            Length left = points.Min(p => p.X), bottom = points.Min(p => p.Y);
            return new(key, title, PartKind.Fitting, new(left, bottom, points.Max(p => p.X) - left, points.Max(p => p.Y) - bottom)) { Outline = points };
        }

        ElevationPart Wheel(ExactLength x, ExactLength z, ExactLength radius) => Polygon([.. Enumerable.Range(0, WheelCorners).Select(i =>
        {
            double angle = i * 2 * Math.PI / WheelCorners;
            return (x + Part(radius, Math.Cos(angle)), z + Part(radius, Math.Sin(angle)));
        })]);
    }

    private static ExactLength Part(ExactLength of, double share) => of * Rational.Of((long)Math.Round(share * 100_000), 100_000);
}
