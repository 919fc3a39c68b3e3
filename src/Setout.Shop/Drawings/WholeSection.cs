using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Drawing.Elevations;
using Setout.Drawing.Scenes;
using Setout.Drawing.Sections;

namespace Setout.Shop.Drawings;

/// <summary>A section across a whole piece, looked at from the right: what an upright plane from front to back cuts of it, each member less what is cut out of it, and in thin lines what is seen beyond.</summary>
public static class WholeSection
{
    /// <summary>True when there is anything to cut.</summary>
    public static bool Has(SetPiece set) => PieceView.Has(set) && set.Piece.Members.Any(m => m is Structure);

    /// <summary>Draws it.</summary>
    /// <param name="set">The piece; <see cref="Has"/> must be true.</param>
    /// <param name="chosen">What is chosen: the plane goes through the middle of the opening it is in, or of itself. Null or unknown: of the opening with most in it.</param>
    /// <param name="paper">The room.</param>
    public static Scene Draw(SetPiece set, string? chosen, PaperBox paper)
    {
        (ExactLength plane, string where) = Plane(set, chosen);
        ImmutableArray<MemberShape> shapes = MemberShape.Of(set);
        MemberShape[] cut = [.. shapes.Where(s => Holds(s.Box, plane))];
        var parts = ImmutableArray.CreateBuilder<SectionPart>();
        ImmutableArray<SectionPart> beyond = [.. Beyond(shapes, cut, plane)];
        void Add(string key, string title, ModelRect area, ImmutableArray<ModelRect> taken) => parts.Add(new(key, title, Phrase.Empty, area, taken) { IsFalling = Sight.IsFalling(parts, area) });
        foreach (MemberShape shape in cut)
        {
            ImmutableArray<ModelRect> taken = [.. shape.Recesses.Where(r => Holds(r.Space, plane)).Select(r => Area(r.Space))];
            Add(shape.Name, shape.Part.Name, Area(shape.Box), taken);
            foreach ((string word, Placement space) in shape.Covers(set).Where(c => Holds(c.Space, plane))) Add($"{shape.Name}.{word}", $"{shape.Part.Name}, {word}", Area(space), taken);
        }
        ModelRect window = Round(parts.Concat(beyond).Select(p => p.Area));
        bool hasFloor = PieceView.StandsOnTheFloor(set);
        if (hasFloor && window.Bottom > Length.Zero) window = window with { Bottom = Length.Zero, Height = window.Top };
        string caption = $"from the right, cut {where}";
        return SectionSheet.Draw($"{set.Piece.Name}, section", $"Section of {set.Piece.Name}, {caption}: {string.Join(", ", cut.Select(c => c.Part.Name).Distinct())}.",
            [new(caption, window, [.. beyond, .. parts], [.. Sizes(set, window, [.. cut, .. shapes.Where(s => IsBeyond(s.Box, plane))])]) { HasFloor = hasFloor }], paper);
    }

    // From the farthest to the nearest: each covers what stands behind it. What is covered whole is not drawn.
    private static IEnumerable<SectionPart> Beyond(ImmutableArray<MemberShape> shapes, MemberShape[] cut, ExactLength plane)
    {
        List<ModelRect> covers = [.. cut.Select(c => Area(c.Box))];
        var seen = new List<SectionPart>();
        foreach (MemberShape shape in shapes.Where(s => IsBeyond(s.Box, plane)).OrderByDescending(s => Sight.Near(Views.Right, s.Box)))
        {
            ModelRect area = Area(shape.Box);
            if (Sight.Left(area, covers).IsEmpty) continue;
            covers.Add(area);
            seen.Add(new(shape.Name, $"{shape.Part.Name}, beyond", Phrase.Empty, area, []) { IsBeyond = true });
        }
        return Enumerable.Reverse(seen);
    }

    private static (ExactLength Plane, string Where) Plane(SetPiece set, string? chosen)
    {
        string key = new QuantityKey((chosen ?? "").Split('#')[0]).Exact.Text;
        (ExactLength, string) Middle(Placement box, string name) => (box.X + (box.SizeX / 2), $"through the middle of {name}");
        foreach (string one in new[] { key, new QuantityKey(key).Owner }.Where(k => k.Length > 0))
        {
            if (set.Openings.Where(o => o.Key == one).OrderBy(o => o.Content == "divided").FirstOrDefault() is { } opening) return Middle(opening.Space, opening.Name);
            // A part is best seen where the opening is that it stands in; a thin upright one has little to show of itself.
            (string Name, Placement Box)[] own = [.. set.Parts.Where(p => p.Key == one || new QuantityKey(p.Key).Owner == one).SelectMany(p => p.Placements.Select(a => (p.Name, a)))];
            if (own.Length == 0) continue;
            if (set.Openings.Where(o => o.Content != "divided").Select(o => (Opening: o, Shared: own.Max(p => o.Space.Within(p.Box)))).Where(o => o.Shared.Sign > 0).OrderByDescending(o => o.Shared).FirstOrDefault().Opening is { } around) return Middle(around.Space, around.Name);
            return Middle(own[0].Box, own[0].Name);
        }
        // Where most is cut a section tells most; an empty bay has nothing to show but what goes past it.
        Placement[] all = [.. set.Parts.SelectMany(p => p.Placements)];
        SetOpening? fullest = set.Openings.Where(o => o.Content != "divided").OrderByDescending(o => all.Count(b => Holds(b, o.Space.X + (o.Space.SizeX / 2)))).ThenByDescending(o => o.Space.SizeX).FirstOrDefault() ?? set.Openings.FirstOrDefault();
        if (fullest is not null) return Middle(fullest.Space, fullest.Name);
        Part first = set.Parts.First(p => p.Placements.Length > 0);
        return Middle(first.Placements[0], first.Name);
    }

    // Height and depth of what is seen, where it stands by itself there.
    private static IEnumerable<SectionFigure> Sizes(SetPiece set, ModelRect window, MemberShape[] seen)
    {
        LengthFormat format = LengthFormat.For(set.Piece.Shown);
        foreach (Structure structure in set.Piece.Members.OfType<Structure>())
        {
            ModelRect[] own = [.. seen.Where(c => new QuantityKey(c.Part.Key).Owner == structure.Key).Select(c => Area(c.Box))];
            if (own.Length == 0) continue;
            ModelRect all = Round(own);
            foreach ((string what, bool isUpright, Length low, Length high) in new[] { ("height", true, all.Bottom, all.Top), ("depth", false, all.Left, all.Right) })
            {
                // A dimension says what it spans: where the plane misses the outermost member, none is drawn.
                if (!set.Worked.Values.TryGetValue(QuantityKey.Of(structure.Key, what), out Worked? worked) || worked.Value.ToNearestTick() != high - low) continue;
                yield return new(new(low, high, Phrase.Of(format.Bare.Format(worked.Value)), worked.Quantity.Key.Text, $"{worked.Quantity.Name}, {format.Text(worked.Value)}"), isUpright, isUpright ? window.Left : window.Bottom);
            }
        }
    }

    private static ModelRect Round(IEnumerable<ModelRect> areas)
    {
        ModelRect[] all = [.. areas];
        Length left = all.Min(a => a.Left), bottom = all.Min(a => a.Bottom);
        return new(left, bottom, all.Max(a => a.Right) - left, all.Max(a => a.Top) - bottom);
    }

    private static ModelRect Area(Placement place) => Sight.Area(Views.Right, place);

    private static bool IsBeyond(Placement box, ExactLength plane) => box.X + box.SizeX <= plane;

    private static bool Holds(Placement box, ExactLength plane) => box.X < plane && plane < box.X + box.SizeX;
}
