using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;
using Setout.Drawing.Elevations;
using Setout.Drawing.Scenes;

namespace Setout.Shop.Drawings;

/// <summary>The clear spaces between shelves, as dimensions inside the front, where they are: one structure may have several rows of shelves of other heights.</summary>
internal static class ShelfSpaces
{
    /// <summary>A line of figures in each opening with shelves that is reached from the front.</summary>
    /// <param name="set">The piece.</param>
    /// <param name="where">Where its shelves are.</param>
    /// <param name="few">Null for all; else only those of what is chosen.</param>
    public static ImmutableArray<InnerDimension> Of(SetPiece set, Whereabouts where, FewSizes? few = null) =>
        [.. where.Shelves.Where(s => !s.IsFromBehind && (few is null || s.Shelves.Keys.Select(k => k.Text).Append(s.Opening).Any(k => few.IsOfChosen("", k)))).SelectMany(s => Spaces(set, s))];

    /// <summary>The keys of shelves behind doors: they are drawn broken.</summary>
    public static ImmutableHashSet<string> Hidden(Whereabouts where) => [.. where.Shelves.Where(s => s.Doors is not null && !s.IsFromBehind).SelectMany(s => s.Shelves.Keys).Select(k => k.Text)];

    private static IEnumerable<InnerDimension> Spaces(SetPiece set, ShelvesAt at)
    {
        Placement[] shelves = [.. at.Shelves.Keys.SelectMany(k => set.Parts.FirstOrDefault(p => p.Key == k.Text)?.Placements ?? []).OrderBy(p => p.Z)];
        if (shelves.Length == 0 || set.Openings.FirstOrDefault(o => o.Key == at.Opening)?.Space is not { } space) yield break;
        LengthFormat format = LengthFormat.For(set.Piece.Shown);
        // Before a pair of doors in the middle of the left one, else clear of what stands in the middle.
        Rational share = at.Doors switch { null => Rational.Of(5, 6), { Keys.Length: > 1 } => Rational.Of(1, 4), _ => Rational.Of(1, 2) };
        Length x = (space.X + (space.SizeX * share)).ToNearestTick();
        // The opening of a case is given by its face; with a raised bottom its shelves stand above that.
        (ExactLength low, string from) = (space.Z, "the bottom");
        foreach ((ExactLength to, ExactLength next, string name) in shelves.Select((s, i) => (s.Z, s.Z + s.SizeZ, $"shelf {at.Shelves.Keys[^(i + 1)].Text}")).Append((space.Z + space.SizeZ, ExactLength.Zero, "the top")))
        {
            if (to > low)
                yield return new(new(low.ToNearestTick(), to.ToNearestTick(), Phrase.Of(format.Bare.Format(to - low)), "", $"clear from {from} to {name} of opening {at.Opening}{(at.Shelves.Fit == ShelfFit.Adjustable ? ", as drawn on its pins" : "")}, {format.Text(to - low)}"), x, true);
            (low, from) = (next, name);
        }
    }
}
