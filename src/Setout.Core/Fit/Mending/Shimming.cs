using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Core.Workings;

namespace Setout.Core.Fit.Mending;

/// <summary>
/// Packing behind the slides of a drawer that has too much play, or less of it where it has too little: of what the shop keeps, at most
/// three pieces a side, alike on both sides where that can be.
/// </summary>
internal static class Shimming
{
    private const int MostPieces = 3;

    public static Remedy? For(Bench bench, Gap gap, ImmutableArray<Shim> shims)
    {
        QuantityKey packing = QuantityKey.Of(gap.Key.Owner, "packing");
        if (gap.Key != QuantityKey.Of(gap.Key.Owner, "play") || !bench.Set.Worked.Values.TryGetValue(packing, out Worked? has)) return null;
        // What is there comes out: what goes in takes its place.
        ExactLength bare = bench.Set.Worked[gap.Key] + has.Value, middle = (gap.Least + gap.Most) / 2;
        ImmutableArray<Side> sides = Sides(shims);
        (Side Left, Side Right)[] even = [.. sides.Select(s => (s, s))];
        (Side Left, Side Right)[] uneven = [.. from s in sides where s.Pieces < MostPieces from extra in sides where extra.Pieces == 1 select (s, s.With(extra))];
        foreach ((Side Left, Side Right)[] ways in new[] { even, uneven })
        {
            var fits = ways.Select(w => (Way: w, Total: w.Left.Thick + w.Right.Thick, Play: bare - w.Left.Thick - w.Right.Thick))
                .Where(w => w.Total != has.Value && w.Play >= gap.Least && w.Play <= gap.Most)
                .OrderBy(w => (w.Play - middle).Abs()).ThenBy(w => w.Way.Left.Pieces + w.Way.Right.Pieces).ThenBy(w => w.Way.Right.Words, StringComparer.Ordinal).ToList();
            foreach (var fit in fits.Take(2))
                if (Proven(bench, gap, packing, has.Value, fit.Way, fit.Total) is { } remedy) return remedy;
        }
        return null;
    }

    private static Remedy? Proven(Bench bench, Gap gap, QuantityKey packing, ExactLength had, (Side Left, Side Right) way, ExactLength total)
    {
        ImmutableArray<Amendment> amendments = [new(packing, total, AmendmentKind.Reads)];
        SetPiece after = bench.Proof.With(amendments);
        if (!bench.Proof.Holds(after, s => Proof.IsInside(s, gap.Key))) return null;
        string drawer = $"drawer {gap.Key.Owner}", what = total.Sign == 0 ? $"Take the packing out from behind both slides of {drawer}"
            : way.Left == way.Right ? $"Put {way.Left.Words} ({bench.Say(way.Left.Thick)}) behind each slide of {drawer}"
            : $"Put {(way.Left.Pieces > 0 ? way.Left.Words : "nothing")} ({bench.Say(way.Left.Thick)}) behind one slide of {drawer} and {way.Right.Words} ({bench.Say(way.Right.Thick)}) behind the other";
        if (had.Sign > 0 && total.Sign > 0) what += $" in place of what is there ({bench.Say(had)} in all)";
        string words = $"{what}: its play comes to {bench.Say(after.Worked[gap.Key])}, of {bench.Say(gap.Least)} to {bench.Say(gap.Most)}.";
        return new(RemedyKind.Shim, words, RemedyMinutes.Of("shim"), StockUse.None,
            ["Take the drawer out and loosen the screws of its slides in the carcase.", what + ".", "Drive the screws again, hang the drawer in and try it over its whole run."],
            amendments, [total.Sign == 0 && bench.PinOf(packing) is { EntryId.Length: > 0 } there ? Bench.Void(there.EntryId) : bench.Record(packing, total)], "", [], bench.Proof.Moves(after));
    }

    /// <summary>What can lie behind one slide, or under one foot: every choice of up to three pieces, none among them.</summary>
    internal static ImmutableArray<Side> Sides(ImmutableArray<Shim> shims)
    {
        Shim[] kept = [.. shims.Where(s => s.Thickness.Sign > 0).OrderByDescending(s => s.Thickness).ThenBy(s => s.Name, StringComparer.Ordinal)];
        var sides = new List<ImmutableArray<int>> { ImmutableArray.CreateRange(new int[kept.Length]) };
        for (int piece = 0, from = 0; piece < MostPieces; piece++)
        {
            int to = sides.Count;
            for (; from < to; from++)
                // Each choice once: pieces are added in the order of the list.
                for (int kind = Math.Max(0, sides[from].AsSpan().LastIndexOfAnyExcept(0)); kind < kept.Length; kind++)
                    sides.Add(sides[from].SetItem(kind, sides[from][kind] + 1));
        }
        return [.. sides.Select(s => new Side(kept, s))];
    }

    internal sealed record Side(Shim[] Kept, ImmutableArray<int> Counts)
    {
        public int Pieces => Counts.Sum();

        public ExactLength Thick { get; } = Kept.Zip(Counts).Aggregate(ExactLength.Zero, (sum, s) => sum + (s.First.Thickness.ToExact() * s.Second));

        public string Words { get; } = string.Join(" and ", Kept.Zip(Counts).Where(s => s.Second > 0).Select(s => $"{s.Second} x {s.First.Name}"));

        public Side With(Side other) => new(Kept, [.. Counts.Zip(other.Counts).Select(c => c.First + c.Second)]);
    }
}
