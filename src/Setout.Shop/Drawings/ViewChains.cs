// Over 200 lines: which dimensions stand round a view, and on which side and tier, is one rule for all views.
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

/// <summary>
/// The dimensions round a view. On the front the widths of what stands on the floor are below, those of what stands on it above; what is seen of doors and drawers has a chain of its own, and
/// sizes that would lie over one another are named.
/// </summary>
internal sealed class ViewChains
{
    /// <summary>Rows from the drawing outwards: parts and openings, structures, tops, all.</summary>
    private const int Parts = 0, Structures = 1, All = 3;

    private readonly record struct Figured(Side Side, int Tier, int Row, bool IsFront, string Owner, ElevationSpan Span);

    private sealed record Shared(ElevationSpan Span, ImmutableArray<string> Owners);

    private readonly SetPiece _set;
    private readonly Views _from;
    private readonly Whereabouts _where;
    private readonly LengthFormat _format;
    private readonly ExactLength _middle;
    private readonly ImmutableArray<SetDimension> _shown;
    private readonly ImmutableHashSet<string> _fronts;

    private ViewChains(SetPiece set, Views from, Whereabouts where)
    {
        (_set, _from, _where, _format) = (set, from, where, LengthFormat.For(set.Piece.Shown));
        SetDimension[] outside = [.. set.Dimensions.Where(d => d.IsAcross && d.Row == Structures)];
        // From the side one sees the last structure: small sizes of those behind it would stand for it.
        ExactLength last = outside.Where(d => d.To == outside.Max(o => o.To)).Select(d => d.From).DefaultIfEmpty(ExactLength.Zero).Max();
        _shown =
        [
            .. set.Dimensions.Where(d => d.In.HasFlag(from) && d.To > d.From && (from != Views.Right || d.Row > Parts || d.At >= last)
                && (from != Views.Front || d.Row > Parts || !FaceSizes.Hides(where, d.Key.Owner))),
        ];
        _middle = set.Dimensions.Where(d => d.IsAcross).Select(d => d.To).DefaultIfEmpty(ExactLength.Zero).Max() / 2;
        _fronts = [.. where.Doors.SelectMany(d => d.Doors.Keys).Select(k => k.Text), .. set.Parts.Where(p => p.Role is PartRole.FalseFront).Select(p => new QuantityKey(p.Key).Owner)];
    }

    /// <summary>The chains, nearest first on each side.</summary>
    /// <param name="set">The piece.</param>
    /// <param name="from">The view.</param>
    /// <param name="where">Where its structures stand.</param>
    /// <param name="few">Null for all sizes.</param>
    public static ImmutableArray<ElevationChain> Of(SetPiece set, Views from, Whereabouts where, FewSizes? few = null) => new ViewChains(set, from, where).Make(few);

    private ImmutableArray<ElevationChain> Make(FewSizes? few)
    {
        List<Figured> figured = [.. _shown.Select(Shown), .. _from == Views.Front ? Face() : Overhangs(), .. _from == Views.Right ? [] : Fillers(), .. Lifts()];
        figured.AddRange(Wholes(figured));
        if (few is not null) figured = [.. Few(figured, few)];
        var chains = ImmutableArray.CreateBuilder<ElevationChain>();
        var dealt = figured.GroupBy(f => (f.Side, f.Tier, f.Row, f.IsFront)).OrderBy(g => g.Key.Row == All).ThenByDescending(g => g.Key.Tier).ThenBy(g => g.Key.Row).ThenBy(g => g.Key.IsFront).Select(g => (g.Key, Rows: Deal(g))).ToList();
        // Where sizes of parts lie beside one another on a side, none can be told from the others by its place.
        var named = dealt.Where(d => d.Key.Row == Parts && (d.Rows.Count > 1 || (d.Key.Tier > 0 && d.Rows[0].Any(s => _where.In(s.Owners.FirstOrDefault("")) is { } structure && _where.Carries(structure))))).Select(d => (d.Key.Side, d.Key.Tier)).ToHashSet();
        foreach (var (key, rows) in dealt)
        {
            bool isNamed = few is null && _from == Views.Front && key.Row == Parts && named.Contains((key.Side, key.Tier));
            foreach (var row in rows) chains.Add(new(key.Side, [.. row.Select(s => isNamed ? NamedBy(s) : key.Row == Structures && row.Count > 1 ? AsBuilt(s.Span) : s.Span)]));
        }
        return chains.ToImmutable();
    }

    /// <summary>The whole, the structures and the bays; upright only the highest.</summary>
    private IEnumerable<Figured> Few(List<Figured> all, FewSizes few)
    {
        ImmutableHashSet<string> bays = [.. _shown.Where(d => d.IsAcross && !_fronts.Contains(d.Key.Owner)).Select(d => d.Key.Text)];
        Length highest = all.Where(f => IsUpright(f.Side)).Select(f => f.Span.To - f.Span.From).DefaultIfEmpty(Length.Zero).Max();
        Figured? whole = all.Where(f => IsUpright(f.Side) && f.Span.To - f.Span.From == highest).Select(f => (Figured?)f).FirstOrDefault();
        return all.Where(f => few.IsOfChosen(f.Span.Key, f.Owner)
            || (IsUpright(f.Side) ? f == whole : f.Row == All || (f.Row > Parts && f.Span.Key.Length > 0) || (few.HasBays && f.Tier == 0 && bays.Contains(f.Span.Key))));

        static bool IsUpright(Side side) => side is Side.Left or Side.Right;
    }

    /// <summary>Spans of one chain must not overlap: what does goes into a further chain outside it. What is alike is drawn once, for all that have it.</summary>
    private static List<List<Shared>> Deal(IEnumerable<Figured> group)
    {
        var rows = new List<List<Shared>>();
        foreach (Shared next in group.GroupBy(f => (f.Span.From, f.Span.To, f.Span.Figure.PlainText))
            .Select(g => new Shared(g.First().Span, [.. g.Select(f => f.Owner).Where(o => o.Length > 0).Distinct()])).OrderBy(s => s.Span.From).ThenBy(s => s.Span.To))
        {
            List<Shared>? row = rows.FirstOrDefault(r => r[^1].Span.To <= next.Span.From);
            if (row is null) rows.Add([next]);
            else row.Add(next);
        }
        return rows;
    }

    private Figured Shown(SetDimension d)
    {
        Worked worked = _set.Worked.Values[d.Key];
        var span = new ElevationSpan(d.From.ToNearestTick(), d.To.ToNearestTick(), Phrase.Of(_format.Bare.Format(worked.Value)), d.Key.Text,
            $"{worked.Quantity.Name}, {_format.Text(worked.Value)}", worked.Pin is not null && worked.Over.Sign != 0);
        return new(SideOf(d), d.IsAcross ? TierOf(d.Key.Owner) : 0, d.Row, _fronts.Contains(d.Key.Owner), d.Key.Owner, span);
    }

    // A level chain of what stands on something belongs above it.
    private int TierOf(string owner) => _from == Views.Front ? _where.Tier(owner) : 0;

    private Side SideOf(SetDimension d) => _from switch
    {
        Views.Front or Views.Above => !d.IsAcross ? Beside(d.Key.Owner, d.At) : d.Row == Parts && TierOf(d.Key.Owner) == 0 ? Side.Below : Side.Above,
        _ => d.IsDeep ? (d.Row == Parts ? Side.Below : Side.Above) : d.Row == Parts ? Side.Right : Side.Left,
    };

    /// <summary>Heights stand on the side that their structure is the nearest to; in one that stands alone, or in the middle of a row, on that which they themselves are.</summary>
    private Side Beside(string owner, ExactLength at)
    {
        if (_from == Views.Front && _where.In(owner) is { } structure && _where.Box(structure) is not null)
        {
            (bool isFirst, bool isLast) = _where.Ends(structure);
            if (isFirst != isLast) return isFirst ? Side.Left : Side.Right;
        }
        return at > _middle ? Side.Right : Side.Left;
    }

    private static ElevationSpan NamedBy(Shared s) => s.Owners.IsEmpty || s.Owners[0].Contains('.', StringComparison.Ordinal) ? s.Span
        : s.Span with { Figure = Phrase.Of($"{string.Join(", ", s.Owners.Take(3))}{(s.Owners.Length > 3 ? $" and {s.Owners.Length - 3} more" : "")}: ").Add(s.Span.Figure) };

    /// <summary>In a chain of several the sizes are those that came out, not those that were asked for: only they add up to the whole.</summary>
    private ElevationSpan AsBuilt(ElevationSpan span)
    {
        var given = new QuantityKey(span.Key);
        if (_where.In(given.Owner) is not { } structure || structure.Key != given.Owner) return span;
        QuantityKey built = given == QuantityKey.Of(structure.Key, "width") ? QuantityKey.Of(structure.Key, "outside")
            : given == QuantityKey.Of(structure.Key, "height") ? QuantityKey.Of(structure.Key, structure is Frame ? "post.length" : "side.length").AsCut : given;
        if (built == given || !_set.Worked.Values.TryGetValue(built, out Worked? worked)) return span;
        string figure = _format.Text(worked.Value);
        return figure == _format.Text(_set.Worked[given]) ? span : span with { Figure = Phrase.Of(_format.Bare.Format(worked.Value)), Key = built.Text, Title = $"{worked.Quantity.Name}, {figure}; wanted {_format.Text(_set.Worked[given])}" };
    }

    private IEnumerable<Figured> Face() => FaceSizes.Of(_set, _where).Select(f => f.IsAcross
        ? new Figured(TierOf(f.Owner) == 0 ? Side.Below : Side.Above, TierOf(f.Owner), Parts, false, f.Owner, f.Span)
        : new Figured(Beside(f.Owner, f.At), 0, Parts, false, f.Owner, f.Span));

    /// <summary>Spaces that fillers close, beside the cases.</summary>
    private IEnumerable<Figured> Fillers()
    {
        foreach (Case described in _set.Piece.Members.OfType<Case>())
        {
            foreach (string word in described.Fillers.Select(f => f.IsAtRight ? "filler-right" : "filler-left").Distinct())
            {
                if (_where.Box(described) is not { } box || !_set.Worked.Values.TryGetValue(QuantityKey.Of(described.Key, $"{word}.space"), out Worked? space)) continue;
                ExactLength start = word == "filler-left" ? box.X - space.Value : box.X + box.SizeX;
                yield return new(Side.Above, TierOf(described.Key), Structures, false, described.Key, Span(start, start + space.Value, space));
            }
        }
    }

    /// <summary>What a base or feet lift a case by, under its height. From the side a base shows its own.</summary>
    private IEnumerable<Figured> Lifts()
    {
        if (_from == Views.Above) yield break;
        foreach (Case described in _set.Piece.Members.OfType<Case>().Where(c => _from == Views.Front || c.Feet is not null))
            if (_where.Box(described) is { } box && _set.Worked.Values.TryGetValue(QuantityKey.Of(described.Key, "lift"), out Worked? lift) && lift.Value.Sign > 0)
                yield return new(_from == Views.Right ? Side.Left : Beside(described.Key, box.X), 0, Structures, false, described.Key, Span(box.Z - lift.Value, box.Z, lift));
    }

    private ElevationSpan Span(ExactLength from, ExactLength to, Worked worked) =>
        new(from.ToNearestTick(), to.ToNearestTick(), Phrase.Of(_format.Bare.Format(worked.Value)), worked.Quantity.Key.Text, $"{worked.Quantity.Name}, {_format.Text(worked.Value)}");

    /// <summary>The whole of a row of structures and the whole height, where no size says them already.</summary>
    private IEnumerable<Figured> Wholes(List<Figured> figured)
    {
        if (_from != Views.Right && _where.Standing.Count > 1)
        {
            ImmutableArray<ElevationSpan> row = [.. figured.Where(f => f.Side == Side.Above && f.Tier == 0 && f.Row == Structures).Select(f => f.Span)];
            if (row.Length > 1 && Whole(Side.Above, row.Min(s => s.From), row.Max(s => s.To), "whole width") is { } wide) yield return wide;
        }
        Placement[] high = [.. _set.Parts.Where(p => p.Role is PartRole.Side or PartRole.Post or PartRole.Top or PartRole.EdgeStrip).SelectMany(p => p.Placements)];
        if (_from == Views.Above || high.Length == 0) yield break;
        Length bottom = high.Min(b => b.Z).ToNearestTick(), top = high.Max(b => b.Z + b.SizeZ).ToNearestTick();
        if (!_set.Piece.Members.OfType<Case>().Any(c => c.IsHung) || _where.Standing.Count > 1) bottom = Length.Min(bottom, Length.Zero);
        if (Whole(Side.Left, bottom, top, "whole height") is { } whole) yield return whole;

        Figured? Whole(Side side, Length from, Length to, string name) => figured.Any(f => (side == Side.Above ? f.Side == Side.Above : f.Side is Side.Left or Side.Right) && f.Span.From == from && f.Span.To == to) ? null
            : new(side, 0, All, false, "", new(from, to, Phrase.Of(_format.Bare.Format((to - from).ToExact())), "", $"{name}, {_format.Text((to - from).ToExact())}"));
    }

    /// <summary>How far each top stands over what it lies on, beside the sizes of that.</summary>
    private IEnumerable<Figured> Overhangs()
    {
        foreach (Top top in _set.Piece.Members.OfType<Top>())
        {
            Placement[] boxes = [.. _set.Parts.Where(p => p.Role is PartRole.Top or PartRole.EdgeStrip && new QuantityKey(p.Key).Owner == top.Key).SelectMany(p => p.Placements)];
            if (boxes.Length == 0) continue;
            ImmutableArray<Figured> across = _from != Views.Above ? [] :
                [.. Over(true, TopSide.Left, boxes.Min(b => b.X)), .. Over(true, TopSide.Right, boxes.Max(b => b.X + b.SizeX))];
            foreach (Figured over in across.Concat(Over(false, TopSide.Front, boxes.Min(b => b.Y))).Concat(Over(false, TopSide.Back, boxes.Max(b => b.Y + b.SizeY)))) yield return over;

            IEnumerable<Figured> Over(bool isAcross, TopSide side, ExactLength edge)
            {
                ExactLength given = top.Overhang(side).Value;
                SetDimension[] under = [.. _shown.Where(d => d.Row == Structures && d.IsAcross == isAcross && d.IsDeep == !isAcross)];
                if (under.Length == 0 || given.Sign <= 0) yield break;
                bool isLow = side is TopSide.Left or TopSide.Front;
                ExactLength end = isLow ? under.Min(d => d.From) : under.Max(d => d.To);
                if (isLow ? edge >= end : edge <= end) yield break;
                (ExactLength start, ExactLength stop) = isLow ? (edge, end) : (end, edge);
                yield return new(SideOf(under[0]), 0, Structures, false, "", new(start.ToNearestTick(), stop.ToNearestTick(), Phrase.Of(_format.Bare.Format(given)), "",
                    $"{(top.Name.Length > 0 ? top.Name : $"top {top.Key}")}, overhang at the {side.ToString().ToLowerInvariant()}, {_format.Text(given)}"));
            }
        }
    }
}
