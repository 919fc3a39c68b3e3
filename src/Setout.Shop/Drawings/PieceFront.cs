using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Drawing.Dimensioning;
using Setout.Drawing.Elevations;
using Setout.Drawing.Scenes;

namespace Setout.Shop.Drawings;

/// <summary>The front elevation of a piece set out, to scale, with its dimensions.</summary>
public static class PieceFront
{
    /// <summary>True when there is anything to draw: loose parts alone have no front.</summary>
    public static bool Has(SetPiece set) => set.Parts.Any(p => p.Placements.Length > 0);

    /// <summary>Draws it.</summary>
    public static ElevationDrawing Draw(SetPiece set, PaperBox paper) => FrontElevation.Draw(Input(set), paper);

    private static ElevationInput Input(SetPiece set)
    {
        LengthFormat bare = LengthFormat.For(set.Piece.Unit).Bare;
        var parts = set.Parts.Where(p => KindOf(p.Role) is not null)
            .SelectMany(p => p.Placements.Select((place, i) => (Part: p, Place: place, Index: i)))
            .OrderByDescending(m => m.Place.Y).ThenBy(m => m.Part.Role == PartRole.DoorStile).ThenBy(m => Covers(set, m.Part.Key)).ThenBy(m => m.Place.Z)
            .ToList();
        // Stiles lie over the tenons that go into them. A member wholly behind an equal one nearer the front (back posts, back rails) is not drawn.
        var seen = new HashSet<(Length, Length, Length, Length)>();
        var drawn = ImmutableArray.CreateBuilder<ElevationPart>();
        for (int i = parts.Count - 1; i >= 0; i--)
        {
            ModelRect area = Area(parts[i].Place);
            if (!seen.Add((area.Left, area.Bottom, area.Width, area.Height)) || area.Width.Sign <= 0 || area.Height.Sign <= 0) continue;
            drawn.Add(new(Member(parts[i].Part, parts[i].Index), Title(set, parts[i].Part, bare), KindOf(parts[i].Part.Role)!.Value, area, i));
        }
        string sizes = string.Join(", ", set.Piece.Members.OfType<Member>().Where(m => m is Frame or Case).Select(m => Over(set, m)));
        return new($"{set.Piece.Name}, front", $"Front elevation of {set.Piece.Name}: {sizes}. {Content(set)}", drawn.ToImmutable())
        {
            Openings =
            [
                .. set.Openings.Where(o => o.Content == "open").Select(o => new ElevationOpening(o.Key, $"{o.Name}, open", Area(o.Space), Phrase.Of("open"))),
            ],
            Chains = Chains(set, bare),
            HasFloor = !set.Piece.Members.OfType<Case>().Any(c => c.IsHung),
        };
    }

    /// <summary>A tenon is not seen: what it stands in is drawn over it. How many such parts are below one another.</summary>
    private static int Covers(SetPiece set, string part) =>
        set.Joints.Where(j => j.Kind == "mortise and tenon" && j.Against == part).Select(j => j.Part).Distinct().Select(p => 1 + Covers(set, p)).DefaultIfEmpty(0).Max();

    private static string Over(SetPiece set, Member member)
    {
        LengthFormat format = LengthFormat.For(set.Piece.Unit);
        string Say(string what) => set.Worked.Values.TryGetValue(QuantityKey.Of(member.Key, what), out Worked? w) ? format.Text(w.Value) : "?";
        return $"{Say("width")} wide, {Say("height")} high, {Say("depth")} deep";
    }

    private static string Content(SetPiece set) => string.Join(" ", set.Openings.Where(o => o.Content != "divided").Select(o => $"{o.Name}: {o.Content}."));

    private static string Title(SetPiece set, Part part, LengthFormat bare) =>
        $"{part.Name}, {bare.Text(set.ToCut(part.Length))} x {LengthFormat.For(set.Piece.Unit).Text(set.ToCut(part.Width))}";

    private static string Member(Part part, int index) => part.Count > 1 ? $"{part.Key}#{index + 1}" : part.Key;

    private static ModelRect Area(Placement place)
    {
        // Both edges land on ticks, so that neighbours that touch still touch.
        Length left = place.X.ToNearestTick(), bottom = place.Z.ToNearestTick();
        return new(left, bottom, (place.X + place.SizeX).ToNearestTick() - left, (place.Z + place.SizeZ).ToNearestTick() - bottom);
    }

    private static PartKind? KindOf(PartRole role) => role switch
    {
        PartRole.Post => PartKind.Post,
        PartRole.Rail or PartRole.Runner or PartRole.Kicker => PartKind.Rail,
        PartRole.SlidePanel or PartRole.Side or PartRole.Partition => PartKind.PanelEdge,
        PartRole.Deck or PartRole.Shelf => PartKind.Deck,
        PartRole.Back or PartRole.FramePanel => PartKind.Back,
        PartRole.FalseFront => PartKind.DrawerFront,
        PartRole.Top or PartRole.EdgeStrip => PartKind.Top,
        PartRole.WellPlatform or PartRole.Kick => PartKind.Deck,
        PartRole.WellBearer or PartRole.WellSide or PartRole.Filler => PartKind.PanelEdge,
        PartRole.Door => PartKind.Door,
        PartRole.DoorStile => PartKind.Post,
        PartRole.DoorRail or PartRole.ShelfStrip or PartRole.FaceFrame => PartKind.Rail,
        PartRole.DoorPanel => PartKind.PanelFace,
        _ => null,
    };

    private static ImmutableArray<ElevationChain> Chains(SetPiece set, LengthFormat bare)
    {
        var chains = ImmutableArray.CreateBuilder<ElevationChain>();
        ExactLength middle = set.Dimensions.Where(d => d.IsAcross).Select(d => d.To).DefaultIfEmpty(ExactLength.Zero).Max() / 2;
        foreach (var group in set.Dimensions.GroupBy(d => (Side: SideOf(d, middle), d.Row)).OrderBy(g => g.Key.Row))
        {
            // Spans of one chain must not overlap: what does goes into a further chain outside it.
            var open = new List<List<SetDimension>>();
            foreach (SetDimension span in group.OrderBy(d => d.From).ThenBy(d => d.To))
            {
                List<SetDimension>? row = open.FirstOrDefault(r => r[^1].To <= span.From);
                if (row is null) open.Add([span]);
                else row.Add(span);
            }
            foreach (List<SetDimension> row in open)
                chains.Add(new(group.Key.Side, [.. row.Select(d => Span(set, d, bare))]));
        }
        return chains.ToImmutable();
    }

    private static Side SideOf(SetDimension d, ExactLength middle) =>
        d.IsAcross ? (d.Row == 0 ? Side.Below : Side.Above) : (d.At > middle ? Side.Right : Side.Left);

    private static ElevationSpan Span(SetPiece set, SetDimension d, LengthFormat bare)
    {
        Worked worked = set.Worked.Values[d.Key];
        return new(d.From.ToNearestTick(), d.To.ToNearestTick(), Phrase.Of(bare.Format(worked.Value)), d.Key.Text,
            $"{worked.Quantity.Name}, {LengthFormat.For(set.Piece.Unit).Text(worked.Value)}", worked.Pin is not null && worked.Over.Sign != 0);
    }
}
