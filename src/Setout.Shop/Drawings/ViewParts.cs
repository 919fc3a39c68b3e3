using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;
using Setout.Drawing.Elevations;

namespace Setout.Shop.Drawings;

/// <summary>
/// The members of a piece on one view, painted from the farthest to the nearest. On plan and side what is hidden is left out, but for what is worth
/// knowing there, which is drawn broken: on the plan what carries the top, on the side what stands inside, on the front shelves behind doors.
/// </summary>
internal static class ViewParts
{
    private static readonly ImmutableHashSet<PartRole> s_underTop =
        [PartRole.Post, PartRole.Rail, PartRole.Tie, PartRole.SlidePanel, PartRole.Side, PartRole.Partition, PartRole.Back, PartRole.FramePanel, PartRole.WellSide];

    private static readonly ImmutableHashSet<PartRole> s_inside =
    [
        PartRole.Deck, PartRole.Shelf, PartRole.Back, PartRole.BoxSide, PartRole.Kick, PartRole.HangingRail, PartRole.Runner, PartRole.Kicker,
        PartRole.WellPlatform, PartRole.WellBearer, PartRole.WellSide,
    ];

    // What closes a space at the side: what is behind the second one seen is another space.
    private static readonly ImmutableHashSet<PartRole> s_walls = [PartRole.Side, PartRole.Partition, PartRole.SlidePanel, PartRole.Filler];

    private sealed record Seen(Part Part, int Number, Placement Place, PartKind Kind, ModelRect Area);

    /// <summary>The members, in the order they are painted.</summary>
    public static ImmutableArray<ElevationPart> Of(SetPiece set, Views from, Whereabouts where)
    {
        ILookup<string, ModelHole> pulls = DoorPulls.Of(set, where);
        ImmutableHashSet<string> behindDoors = from == Views.Front ? ShelfSpaces.Hidden(where) : [];
        Seen[] members =
        [
            .. set.Parts.SelectMany(p => p.Placements.Select((place, i) => (Part: p, Place: place, Number: i + 1)))
                .Select(m => (Member: m, Kind: PartKinds.Of(set, m.Part, m.Place, from), Area: Sight.Area(from, m.Place)))
                .Where(m => m.Kind is not null && m.Area.Width.Sign > 0 && m.Area.Height.Sign > 0)
                .Select(m => new Seen(m.Member.Part, m.Member.Number, m.Member.Place, m.Kind!.Value, m.Area))
                // Stiles lie over the tenons that go into them; of strips that meet in a mitre the longer face is seen.
                .OrderBy(m => Sight.Near(from, m.Place)).ThenBy(m => m.Part.Role == PartRole.DoorStile).ThenBy(m => Covers(set, m.Part.Key)).ThenBy(m => m.Place.Z)
                .ThenBy(m => m.Part.Role == PartRole.EdgeStrip ? m.Area.Width : Length.Zero),
        ];
        // A member wholly behind an equal one nearer the eye (back posts, back rails) is not drawn.
        var alike = new HashSet<ModelRect>();
        var nearer = new List<ModelRect>();
        var walls = new List<ModelRect>();
        var broken = new List<Seen>();
        var drawn = ImmutableArray.CreateBuilder<ElevationPart>();
        for (int i = members.Length - 1; i >= 0; i--)
        {
            Seen member = members[i];
            if (!alike.Add(member.Area))
            {
                if (s_walls.Contains(member.Part.Role)) walls.Add(member.Area);
                continue;
            }
            ImmutableArray<(CutOut Cut, ModelRect Area, bool IsThrough)> cuts = [.. Cuts(set, member, from)];
            ImmutableArray<ModelRect> taken = [.. cuts.Where(c => c.IsThrough).Select(c => c.Area)];
            bool isFront = from == Views.Front;
            ImmutableArray<ModelRect> shown = isFront ? [member.Area] : Sight.Left(member.Area, nearer);
            if (!isFront && (shown.Length != 1 || shown[0] != member.Area) && IsWorth(member, from, broken, walls)) broken.Add(member);
            if (behindDoors.Contains(member.Part.Key)) broken.Add(member);
            if (s_walls.Contains(member.Part.Role)) walls.Add(member.Area);
            if (shown.IsEmpty) continue;
            string title = Title(set, member.Part);
            drawn.Add(new(Member(member.Part, member.Number), title, member.Kind, member.Area, 2 * i) { Taken = taken, Holes = [.. Holes(set, member, from), .. from == Views.Front ? pulls[Member(member.Part, member.Number)] : []], Outline = Outline(member, members, from), Grain = PartKinds.Grain(set, member.Part, member.Kind, member.Area, from) });
            drawn.AddRange(cuts.Where(c => !c.IsThrough).Select(c => new ElevationPart(c.Cut.Key, Upper(c.Cut.Name), PartKind.Recess, c.Area, (2 * i) + 1)));
            if (!isFront) nearer.AddRange(Sight.Left(member.Area, taken));
        }
        drawn.AddRange(broken.Select((b, i) => new ElevationPart(Member(b.Part, b.Number), $"{Title(set, b.Part)}, hidden", b.Kind, b.Area, (2 * members.Length) + i) { IsHidden = true }));
        drawn.AddRange(FootShapes.Of(set, where, from));
        return drawn.ToImmutable();
    }

    /// <summary>Of hidden members of one kind that lie behind one another only the nearest is drawn; on the side what stands in the space next to the eye.</summary>
    private static bool IsWorth(Seen member, Views from, List<Seen> broken, List<ModelRect> walls) =>
        (from == Views.Above ? s_underTop : s_inside).Contains(member.Part.Role) && (from == Views.Above || walls.Count(w => Sight.Meet(w, member.Area)) < 2)
        && !broken.Any(b => b.Part.Role == member.Part.Role && Sight.Meet(b.Area, member.Area));

    /// <summary>A tenon is not seen: what it stands in is drawn over it. How many such parts are below one another.</summary>
    private static int Covers(SetPiece set, string part) =>
        set.Joints.Where(j => j.Kind == JointKind.MortiseAndTenon && j.Against == part).Select(j => j.Part).Distinct().Select(p => 1 + Covers(set, p)).DefaultIfEmpty(0).Max();

    /// <summary>What is cut out of a member as it is seen: right through, or into its near face.</summary>
    private static IEnumerable<(CutOut Cut, ModelRect Area, bool IsThrough)> Cuts(SetPiece set, Seen member, Views from)
    {
        foreach (CutOut cut in set.CutOuts.Where(c => c.Part == member.Part.Key && Sight.Meet(c.Space, member.Place)))
        {
            ModelRect area = Within(Sight.Area(from, cut.Space), member.Area);
            bool isNear = Sight.Near(from, cut.Space) >= Sight.Near(from, member.Place), isThrough = isNear && Sight.Far(from, cut.Space) <= Sight.Far(from, member.Place);
            if (isNear && area != member.Area) yield return (cut, area, isThrough);
        }
    }

    /// <summary>Holes along the line of sight: on the side those bored from the inside too, elsewhere only what opens to the eye.</summary>
    private static IEnumerable<ModelHole> Holes(SetPiece set, Seen member, Views from)
    {
        Along sight = from switch { Views.Above => Along.Z, Views.Right => Along.X, _ => Along.Y };
        foreach (Bore bore in set.Bores.Where(b => b.Part == member.Part.Key && b.Number == member.Number && b.Along == sight))
        {
            ModelRect at = Sight.Area(from, new(bore.X, bore.Y, bore.Z, ExactLength.Zero, ExactLength.Zero, ExactLength.Zero));
            bool isHidden = Sight.Near(from, new(bore.X, bore.Y, bore.Z, ExactLength.Zero, ExactLength.Zero, ExactLength.Zero)) < Sight.Near(from, member.Place);
            if (!isHidden || from == Views.Right) yield return new(at.Left, at.Bottom, bore.Diameter.ToNearestTick(), isHidden);
        }
    }

    private static ModelRect Within(ModelRect area, ModelRect whole)
    {
        Length left = Length.Max(area.Left, whole.Left), bottom = Length.Max(area.Bottom, whole.Bottom);
        return new(left, bottom, Length.Min(area.Right, whole.Right) - left, Length.Min(area.Top, whole.Top) - bottom);
    }

    /// <summary>Two strips that share their corner are mitred there: on the plan each is as long outside as it is, and shorter inside.</summary>
    private static ImmutableArray<ModelPoint> Outline(Seen strip, Seen[] members, Views from)
    {
        if (from != Views.Above || strip.Part.Role != PartRole.EdgeStrip) return [];
        ModelRect a = strip.Area;
        (Length, Length) front = (a.Left, a.Right), back = (a.Left, a.Right), left = (a.Bottom, a.Top), right = (a.Bottom, a.Top);
        bool isMitred = false;
        foreach (ModelRect b in members.Where(m => m != strip && m.Part.Role == PartRole.EdgeStrip && Sight.Meet(m.Place, strip.Place)).Select(m => m.Area))
        {
            isMitred = true;
            bool isLow = a.Width > a.Height ? b.Left <= a.Left : b.Bottom <= a.Bottom;
            if (a.Width > a.Height)
            {
                // The inner side is that to which the other strip goes on.
                ref (Length From, Length To) inner = ref b.Top > a.Top ? ref back : ref front;
                inner = isLow ? (b.Right, inner.To) : (inner.From, b.Left);
            }
            else
            {
                ref (Length From, Length To) inner = ref b.Right > a.Right ? ref right : ref left;
                inner = isLow ? (b.Top, inner.To) : (inner.From, b.Bottom);
            }
        }
        if (!isMitred) return [];
        return a.Width > a.Height
            ? [new(front.Item1, a.Bottom), new(front.Item2, a.Bottom), new(back.Item2, a.Top), new(back.Item1, a.Top)]
            : [new(a.Left, left.Item1), new(a.Right, right.Item1), new(a.Right, right.Item2), new(a.Left, left.Item2)];
    }

    private static string Title(SetPiece set, Part part)
    {
        LengthFormat format = LengthFormat.For(set.Piece.Shown);
        return $"{part.Name}, {format.Bare.Text(set.ToCut(part.Length))} x {format.Text(set.ToCut(part.Width))}";
    }

    private static string Member(Part part, int number) => part.Count > 1 ? $"{part.Key}#{number}" : part.Key;

    private static string Upper(string words) => words.Length == 0 ? words : char.ToUpperInvariant(words[0]) + words[1..];
}
