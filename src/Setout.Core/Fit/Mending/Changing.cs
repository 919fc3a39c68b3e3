using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Core.Workings;

namespace Setout.Core.Fit.Mending;

/// <summary>What is not made yet gives way: another figure for an uncut part, or for a place that is not fixed; a front set again on its spacers.</summary>
internal static class Changing
{
    /// <summary>More than this is another design, not a remedy. Common practice, no source.</summary>
    public static ExactLength Most { get; } = ExactLength.FromInches(Rational.Of(1, 4));

    public static IEnumerable<Remedy> For(Bench bench, Gap gap)
    {
        IReadOnlyDictionary<QuantityKey, Rational> reach = bench.Reach(gap.Key);
        // What comes earlier in the work stands already when a later part is made, marked or not: nobody cuts the frame to suit a drawer.
        Stage from = bench.MadeIn(gap.Key).Select(m => bench.StageOf(m.Part.Key)).DefaultIfEmpty(Stage.Carcase).Max();
        foreach (Part part in bench.Set.Parts.Where(p => !bench.IsMade(p) && bench.StageOf(p.Key) >= from))
            foreach (PartSize size in Bench.Sizes(part).Where(s => Bench.Moves(reach, s.AsCut) && !bench.GoesByBought(s)))
                if (Uncut(bench, gap, part, size) is { } remedy) yield return remedy;
        foreach (Fixing fixing in bench.Set.Fixings.Where(f => f.Bounds.Any(b => bench.StageOf(b) >= from)))
            if (Placed(bench, gap, fixing) is { } remedy) yield return remedy;
        if (Front(bench, gap) is { } front) yield return front;
    }

    private static Remedy? Uncut(Bench bench, Gap gap, Part part, PartSize size) => Changed(bench, gap, size.AsCut, size.ToCut,
        (figure, way) => $"Cut the {part.Name} to a {bench.Word(part, size)} of {bench.Say(figure)}, {way}", [part.Key],
        f => [bench.Cut(part, [size], _ => f)]);

    private static Remedy? Placed(Bench bench, Gap gap, Fixing fixing)
    {
        var exact = new QuantityKey(fixing.Size.Text[..^QuantityKey.ToCutSuffix.Length]);
        if (!Bench.Moves(bench.Reach(gap.Key), exact.AsCut) || bench.PinOf(fixing.Size) is not null || bench.PinOf(exact.AsCut) is not null) return null;
        if (bench.Set.Parts.Any(p => fixing.Bounds.Contains(p.Key) && bench.IsTogether(p))) return null;
        string name = bench.Set.Worked.Values[exact].Quantity.Name;
        return Changed(bench, gap, exact.AsCut, fixing.Size, (figure, way) => $"Set the {name} to {bench.Say(figure)}, {way}", fixing.Bounds, f => [bench.Record(exact.AsCut, f)]);
    }

    private static Remedy? Changed(
        Bench bench, Gap gap, QuantityKey asCut, QuantityKey toCut, Func<ExactLength, string, string> what, ImmutableArray<string> parts, Func<ExactLength, ImmutableArray<MendingAct>> acts)
    {
        ExactLength now = bench.Set.Worked[asCut];
        foreach (ExactLength figure in bench.Figures(gap, asCut, bench.Set.Grid.Step).Where(f => f.Sign > 0 && (f - now).Abs() <= Most))
        {
            ImmutableArray<Amendment> amendments = [new(toCut, figure, AmendmentKind.CutTo)];
            SetPiece after = bench.Proof.With(amendments);
            if (!bench.Proof.Holds(after, s => Proof.IsInside(s, gap.Key))) continue;
            string words = what(figure, $"{bench.Say((figure - now).Abs())} {(figure < now ? "less" : "more")} than planned");
            return new(RemedyKind.ChangeUncut, $"{words}: {gap.Name} comes to {bench.Say(after.Worked[gap.Key])}.", RemedyMinutes.Of("change"), StockUse.None,
                [words + "."], amendments, acts(figure), "", parts, bench.Proof.Moves(after));
        }
        return null;
    }

    /// <summary>A gap between fronts that was read as they are fixed: the front comes off and goes on again where it was meant to be.</summary>
    private static Remedy? Front(Bench bench, Gap gap)
    {
        if (bench.Set.Worked.Values[gap.Key] is not { Pin: { IsFact: false }, Quantity.Scatter: Scatter.Placed } read || FrontOf(bench, gap) is not { } front || bench.IsFast(front)) return null;
        ImmutableArray<Amendment> amendments = [new(gap.Key, read.Expected, AmendmentKind.Reads)];
        SetPiece after = bench.Proof.With(amendments);
        if (!bench.Proof.Holds(after, s => Proof.IsInside(s, gap.Key))) return null;
        string what = $"Loosen the {front.Name} and fix it again on spacers of {bench.Say(read.Expected)}";
        return new(RemedyKind.TakeApart, $"{what}.", RemedyMinutes.Of("take-off"), StockUse.None,
            [what + ", screwed from inside; new holes where the old ones would pull it back."], amendments, [bench.Record(gap.Key, read.Expected)], "screws", [front.Key], bench.Proof.Moves(after));
    }

    /// <summary>The front whose gap, as fixed, has been read.</summary>
    public static Part? FrontOf(Bench bench, Gap gap) => bench.PinOf(gap.Key) is null ? null
        : bench.Set.Parts.FirstOrDefault(p => p.Role == PartRole.FalseFront && QuantityKey.Of(new QuantityKey(p.Key).Owner, "front.gap") == gap.Key);
}
