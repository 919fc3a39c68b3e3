using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Core.Workings;

namespace Setout.Core.Fit.Mending;

/// <summary>What a plane can take off where it stands: a box that is too wide, an edge of a front that is fixed.</summary>
internal static class Planing
{
    // More than this is no work for a plane, and a thinner side no longer holds a groove and screws. Common practice, no source.
    private static readonly ExactLength s_mostOff = ExactLength.FromInches(Rational.Of(1, 16)), s_thinnestSide = ExactLength.FromInches(Rational.Of(3, 8));

    public static IEnumerable<Remedy> For(Bench bench, Gap gap)
    {
        foreach (Part part in bench.Set.Parts.Where(bench.IsTogether))
        {
            if (part.Role == PartRole.BoxSide && Bench.Moves(bench.Reach(gap.Key), Bench.Built(part)) && Box(bench, gap, part) is { } box) yield return box;
            if (part.Role != PartRole.FalseFront) continue;
            foreach (PartSize size in Bench.Sizes(part))
                if (Bench.Moves(bench.Reach(gap.Key), size.AsCut) && Edge(bench, gap, part, size) is { } edge) yield return edge;
        }
    }

    private static Remedy? Box(Bench bench, Gap gap, Part side)
    {
        QuantityKey built = Bench.Built(side);
        // As it is now, what was planed off before included.
        ExactLength now = bench.Set.Worked[built] - bench.Set.Worked[QuantityKey.Of(built.Owner, "planed")], meant = bench.Set.Worked.Values[built].Expected;
        // Planed before, a side is thinner than its sheet: what the box measures against what its parts come to tells, however its corners are joined.
        ExactLength sheet = bench.Set.Worked[side.Thickness], thick = ExactLength.Min(sheet, sheet + ((now - meant) / 2));
        ExactLength most = ExactLength.Min(s_mostOff, thick - s_thinnestSide) * 2;
        if (most.Sign <= 0) return null;
        Length step = bench.Set.Grid.Step;
        foreach (ExactLength width in bench.Figures(gap, built, step).Select(w => w - bench.Set.Worked[QuantityKey.Of(built.Owner, "planed")]).Append(now - most).Where(w => w < now && now - w <= most))
        {
            QuantityKey planed = QuantityKey.Of(built.Owner, "planed");
            // As fine as a plane is set by: a 64th a side, or a tenth of a millimetre.
            var fine = bench.Set.Piece.Unit == Measures.Text.LengthUnit.Inch ? Grid.FromStep(Length.FromInches(1, 64)) : Grid.FromStep(Length.FromTicks(Length.TicksPerMillimetre / 10));
            ExactLength extra = (now - width).RoundTo(fine, Rounding.Nearest).Value;
            if (extra > most) extra = (now - width).RoundTo(fine, Rounding.Down).Value;
            ExactLength all = bench.Set.Worked[planed] + extra;
            ImmutableArray<Amendment> amendments = [new(planed, all, AmendmentKind.Reads)];
            SetPiece after = bench.Proof.With(amendments);
            if (!bench.Proof.Holds(after, s => Proof.IsInside(s, gap.Key))) continue;
            ExactLength off = extra / 2, least = (bench.Set.Worked[gap.Key] - gap.Least) / bench.Reach(gap.Key)[built] / 2;
            string drawer = $"drawer {built.Owner}", upTo = off > least ? $", {bench.Say(least)} at least" : "";
            string words = $"Plane {bench.Say(off)} off each side of the box of {drawer}{upTo}: it comes to {bench.Say(now - (off * 2))}, and its play to {bench.Say(after.Worked[gap.Key])}.";
            return new(RemedyKind.Plane, words, RemedyMinutes.Of("plane-box"), StockUse.None,
                [$"Take {drawer} out and its slide members off the box.", $"Plane {bench.Say(off)} off each side{upTo}; keep them flat, and stop to try.", "Screw the slides on again and try it.", "Plywood has a thin face: more than a shaving goes into the ply below, so keep the planed faces inside the carcase."],
                amendments, [bench.Record(planed, all)], "plane", [side.Key], bench.Proof.Moves(after));
        }
        return null;
    }

    private static Remedy? Edge(Bench bench, Gap gap, Part front, PartSize size)
    {
        ExactLength now = bench.Set.Worked[size.AsCut];
        foreach (ExactLength figure in bench.Figures(gap, size.AsCut, bench.Set.Grid.Step).Where(f => f < now && now - f <= s_mostOff))
        {
            bool isMarked = bench.PinOf(size.ToCut) is not null;
            ImmutableArray<Amendment> amendments = isMarked && bench.PinOf(size.AsCut) is null ? [new(size.ToCut, figure, AmendmentKind.CutTo)] : [new(size.AsCut, figure, AmendmentKind.Reads)];
            SetPiece after = bench.Proof.With(amendments);
            if (!bench.Proof.Holds(after, s => Proof.IsInside(s, gap.Key))) continue;
            string what = $"Plane {bench.Say(now - figure)} off an edge of the {front.Name}, to a {bench.Word(front, size)} of {bench.Say(figure)}";
            return new(RemedyKind.Plane, $"{what}: {gap.Name} comes to {bench.Say(after.Worked[gap.Key])}.", RemedyMinutes.Of("plane-edge"), StockUse.None,
                [what + ", from both ends inwards so that no corner breaks out.", "Break the edge again and look at the gaps all round."],
                amendments, [isMarked ? bench.Cut(front, [size], _ => figure) : bench.Record(size.AsCut, figure)], "plane", [front.Key], bench.Proof.Moves(after));
        }
        return null;
    }
}
