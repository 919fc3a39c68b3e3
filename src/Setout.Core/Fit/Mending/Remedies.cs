using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Core.Workings;

namespace Setout.Core.Fit.Mending;

/// <summary>
/// What to do when a reading or a fact at the bench upsets something that is cut, assembled or bought. Only what the part's state still
/// allows, with all that must follow it; each remedy is put back into the sums and offered only if it lands. Pure: the same facts give the
/// same advice in the same order.
/// </summary>
public static class Remedies
{
    /// <summary>
    /// The remedies for all that is upset; empty while nothing is. Each is proven by itself, and says which others it stands instead of: carry one out, record it, and ask again before the next.
    /// </summary>
    /// <param name="set">The piece set out with all that is known from the bench.</param>
    /// <param name="shims">What the shop keeps for packing; may be empty.</param>
    /// <param name="blanks">Wood to cut parts anew from, each once; may be empty.</param>
    /// <param name="only">Which upsets remedies are wanted for; null for all.</param>
    /// <param name="most">For so many of them at most: each is proven by setting the piece out several times.</param>
    public static ImmutableArray<MendingAdvice> For(SetPiece set, ImmutableArray<Shim> shims, ImmutableArray<Blank> blanks, Func<Upset, bool>? only = null, int most = int.MaxValue)
    {
        if (set.Facts.Pins.Count == 0 && set.Facts.States.Count == 0) return [];
        var bench = new Bench(set);
        return InsteadOf.Into(bench, [.. Upsets.Of(bench).Where(only ?? (_ => true)).Take(most).Select(u => Advice(u, WithoutUndoing(set, u, Ranked(Offered(bench, u, shims, blanks)))))]);
    }

    /// <summary>All that is upset, without remedies; empty while nothing is.</summary>
    /// <param name="set">The piece set out with all that is known from the bench.</param>
    public static ImmutableArray<Upset> UpsetsOf(SetPiece set) =>
        set.Facts.Pins.Count == 0 && set.Facts.States.Count == 0 ? [] : [.. Upsets.Of(new Bench(set))];

    private static IEnumerable<Remedy> Offered(Bench bench, Upset upset, ImmutableArray<Shim> shims, ImmutableArray<Blank> blanks)
    {
        switch (upset.Kind)
        {
            case UpsetKind.GapOut:
                Gap gap = bench.Set.Gaps.First(g => g.Key == upset.Key);
                Remedy[] shim = (Shimming.For(bench, gap, shims) ?? Levelling.For(bench, gap, shims)) is { } packed ? [packed] : [];
                return [.. shim, .. Planing.For(bench, gap), .. Changing.For(bench, gap), .. Remaking.For(bench, gap, blanks)];
            case UpsetKind.PartDiffers:
                Part part = bench.Set.Parts.First(p => p.Key == upset.Frozen[0]);
                return Standing(bench, part, Bench.Sizes(part).First(s => s.ToCut == upset.Key), blanks);
            default:
                bool Fits(SetPiece set) => set.Choices.FirstOrDefault(c => c.Key == upset.Key) is { Decides: { } room } && set.Worked[upset.Key] <= set.Worked[room];
                return Remaking.Exchange(bench, upset.Key, Fits, blanks) is { } other ? [other] : [];
        }
    }

    /// <summary>A part that differs but is in no gap's way stands, unless it stops the plan in some other way.</summary>
    private static IEnumerable<Remedy> Standing(Bench bench, Part part, PartSize size, ImmutableArray<Blank> blanks)
    {
        (string Code, string Key)[] stops = [.. bench.Set.Findings.Where(f => f.Severity == Severity.Stop && (f.Key == part.Key || f.Key == new QuantityKey(part.Key).Owner)).Select(f => (f.Code, f.Key))];
        if (stops.Length > 0)
        {
            bool IsQuiet(SetPiece set) => !set.Findings.Any(f => stops.Contains((f.Code, f.Key)));
            return Remaking.Of(bench, part, size, null, IsQuiet, blanks) is { } remade ? [remade] : [];
        }
        string words = bench.GapsOf(part, size).MinBy(g => Proof.ToLimit(bench.Set, g)) is { } nearest
            ? $"Let the {part.Name} stand: {nearest.Name} comes to {bench.Say(bench.Set.Worked[nearest.Key])}, inside {bench.Say(nearest.Least)} to {bench.Say(nearest.Most)} by {bench.Say(Proof.ToLimit(bench.Set, nearest))}."
            : $"Let the {part.Name} stand: no gap of the plan moves with this size, and what is not cut yet follows the part as it is. Look whether it shows or weakens anything.";
        return [new(RemedyKind.Accept, words, 0, StockUse.None, [words], [], [], "", [part.Key], [])];
    }

    private static ImmutableArray<Remedy> Ranked(IEnumerable<Remedy> offered) =>
    [
        .. offered.DistinctBy(r => r.Words, StringComparer.Ordinal).OrderBy(r => r.Minutes)
            .ThenBy(r => r.Stock.MustBuy).ThenBy(r => r.Stock.Cost).ThenBy(r => r.Stock.Area).ThenBy(r => r.Kind).ThenBy(r => r.Words, StringComparer.Ordinal),
    ];

    /// <summary>What was cut anew to mend another upset is not cut once more to mend this one, where there is another way.</summary>
    private static ImmutableArray<Remedy> WithoutUndoing(SetPiece set, Upset upset, ImmutableArray<Remedy> remedies)
    {
        if (set.Facts.AnewAt.IsEmpty) return remedies;
        bool IsAnew(string part) => set.Facts.AnewAt.Keys.Any(k => k.Split('#')[0] == part);
        ImmutableArray<Remedy> left = [.. remedies.Where(r => !r.Parts.Any(p => IsAnew(p) && !upset.Frozen.Contains(p)))];
        return left.IsEmpty ? remedies : left;
    }

    private static MendingAdvice Advice(Upset upset, ImmutableArray<Remedy> remedies) => new(upset, remedies, remedies.Length > 0 ? "" : upset.Kind switch
    {
        UpsetKind.BoughtTooLong => "No other slide of the series is sure to fit with what is made already. Gain the room behind, by a thinner back or one let in, and set the piece out again.",
        _ => "Nothing that can be done to these parts as they stand is sure to put it right without putting something else out. Make what is joined there anew, or change the piece file.",
    });
}
