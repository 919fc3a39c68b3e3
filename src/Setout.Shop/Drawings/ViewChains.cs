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

/// <summary>The dimensions round a view.</summary>
internal static class ViewChains
{
    /// <summary>The chains, nearest first on each side.</summary>
    public static ImmutableArray<ElevationChain> Of(SetPiece set, Views from)
    {
        LengthFormat bare = LengthFormat.For(set.Piece.Unit).Bare;
        SetDimension[] outside = [.. set.Dimensions.Where(d => d.IsAcross && d.Row == 1)];
        // From the side one sees the last structure: small sizes of those behind it would stand for it.
        ExactLength last = outside.Where(d => d.To == outside.Max(o => o.To)).Select(d => d.From).DefaultIfEmpty(ExactLength.Zero).Max();
        ImmutableArray<SetDimension> shown = [.. set.Dimensions.Where(d => d.In.HasFlag(from) && d.To > d.From && (from != Views.Right || d.Row > 0 || d.At >= last))];
        ExactLength middle = set.Dimensions.Where(d => d.IsAcross).Select(d => d.To).DefaultIfEmpty(ExactLength.Zero).Max() / 2;
        ImmutableArray<(Side Side, int Row, ElevationSpan Span)> spans =
        [
            .. shown.Select(d => (SideOf(d, from, middle), d.Row, Span(set, d, bare))),
            .. from == Views.Front ? [] : Overhangs(set, from, shown, bare),
        ];
        var chains = ImmutableArray.CreateBuilder<ElevationChain>();
        foreach (var group in spans.GroupBy(s => (s.Side, s.Row)).OrderBy(g => g.Key.Row))
        {
            // Spans of one chain must not overlap: what does goes into a further chain outside it. What is alike is drawn once.
            var open = new List<List<ElevationSpan>>();
            foreach (ElevationSpan span in group.Select(g => g.Span).DistinctBy(s => (s.From, s.To, s.Figure.PlainText)).OrderBy(s => s.From).ThenBy(s => s.To))
            {
                List<ElevationSpan>? row = open.FirstOrDefault(r => r[^1].To <= span.From);
                if (row is null) open.Add([span]);
                else row.Add(span);
            }
            foreach (List<ElevationSpan> row in open) chains.Add(new(group.Key.Side, [.. row]));
        }
        return chains.ToImmutable();
    }

    private static Side SideOf(SetDimension d, Views from, ExactLength middle) => from switch
    {
        Views.Front or Views.Above => d.IsAcross ? (d.Row == 0 ? Side.Below : Side.Above) : d.At > middle ? Side.Right : Side.Left,
        _ => d.IsDeep ? (d.Row == 0 ? Side.Below : Side.Above) : d.Row == 0 ? Side.Right : Side.Left,
    };

    private static ElevationSpan Span(SetPiece set, SetDimension d, LengthFormat bare)
    {
        Worked worked = set.Worked.Values[d.Key];
        return new(d.From.ToNearestTick(), d.To.ToNearestTick(), Phrase.Of(bare.Format(worked.Value)), d.Key.Text,
            $"{worked.Quantity.Name}, {LengthFormat.For(set.Piece.Unit).Text(worked.Value)}", worked.Pin is not null && worked.Over.Sign != 0);
    }

    /// <summary>How far each top stands over what it lies on, beside the sizes of that.</summary>
    private static IEnumerable<(Side, int, ElevationSpan)> Overhangs(SetPiece set, Views from, ImmutableArray<SetDimension> shown, LengthFormat bare)
    {
        foreach (Top top in set.Piece.Members.OfType<Top>())
        {
            Placement[] boxes = [.. set.Parts.Where(p => p.Role is PartRole.Top or PartRole.EdgeStrip && new QuantityKey(p.Key).Owner == top.Key).SelectMany(p => p.Placements)];
            if (boxes.Length == 0) continue;
            ImmutableArray<(Side, int, ElevationSpan)> across = from != Views.Above ? [] :
                [.. Over(true, TopSide.Left, boxes.Min(b => b.X)), .. Over(true, TopSide.Right, boxes.Max(b => b.X + b.SizeX))];
            foreach (var over in across.Concat(Over(false, TopSide.Front, boxes.Min(b => b.Y))).Concat(Over(false, TopSide.Back, boxes.Max(b => b.Y + b.SizeY)))) yield return over;

            IEnumerable<(Side, int, ElevationSpan)> Over(bool isAcross, TopSide side, ExactLength edge)
            {
                ExactLength given = top.Overhang(side).Value;
                SetDimension[] under = [.. shown.Where(d => d.Row == 1 && d.IsAcross == isAcross && d.IsDeep == !isAcross)];
                if (under.Length == 0 || given.Sign <= 0) yield break;
                bool isLow = side is TopSide.Left or TopSide.Front;
                ExactLength end = isLow ? under.Min(d => d.From) : under.Max(d => d.To);
                if (isLow ? edge >= end : edge <= end) yield break;
                (ExactLength start, ExactLength stop) = isLow ? (edge, end) : (end, edge);
                yield return (SideOf(under[0], from, ExactLength.Zero), 1, new(start.ToNearestTick(), stop.ToNearestTick(), Phrase.Of(bare.Format(given)), "",
                    $"{(top.Name.Length > 0 ? top.Name : $"top {top.Key}")}, overhang at the {side.ToString().ToLowerInvariant()}, {LengthFormat.For(set.Piece.Unit).Text(given)}"));
            }
        }
    }
}
