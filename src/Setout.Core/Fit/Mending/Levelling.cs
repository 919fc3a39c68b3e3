using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Core.Workings;

namespace Setout.Core.Fit.Mending;

/// <summary>Shims under the feet of a machine in its well, alike under each, of what the shop keeps: at most three pieces a foot.</summary>
internal static class Levelling
{
    /// <summary>The platform that a machine stands on, once it is read or shims are under it; none for another gap.</summary>
    public static IEnumerable<string> Standing(Bench bench, Gap gap)
    {
        string well = gap.Key.Owner;
        return gap.Key == QuantityKey.Of(well, "flush") && (bench.PinOf(QuantityKey.Of(well, "drop")) ?? bench.PinOf(QuantityKey.Of(well, "packing"))) is not null ? [$"{well}.platform"] : [];
    }

    public static Remedy? For(Bench bench, Gap gap, ImmutableArray<Shim> shims)
    {
        string well = gap.Key.Owner;
        QuantityKey packing = QuantityKey.Of(well, "packing");
        if (gap.Key != QuantityKey.Of(well, "flush") || !bench.Set.Worked.Values.TryGetValue(packing, out Worked? has)) return null;
        // What is there comes out: what goes in takes its place.
        ExactLength bare = bench.Set.Worked[gap.Key] + has.Value, middle = (gap.Least + gap.Most) / 2;
        var fits = Shimming.Sides(shims).Select(s => (Foot: s, Low: bare - s.Thick)).Where(f => f.Foot.Thick != has.Value && f.Low >= gap.Least && f.Low <= gap.Most)
            .OrderBy(f => (f.Low - middle).Abs()).ThenBy(f => f.Foot.Pieces).ThenBy(f => f.Foot.Words, StringComparer.Ordinal).ToList();
        foreach (var fit in fits.Take(2))
        {
            ImmutableArray<Amendment> amendments = [new(packing, fit.Foot.Thick, AmendmentKind.Reads)];
            SetPiece after = bench.Proof.With(amendments);
            if (!bench.Proof.Holds(after, s => Proof.IsInside(s, gap.Key))) continue;
            string what = fit.Foot.Thick.Sign == 0 ? $"Take the shims out from under the machine in well {well}" : $"Put {fit.Foot.Words} ({bench.Say(fit.Foot.Thick)}) under each foot of the machine in well {well}";
            if (has.Value.Sign > 0 && fit.Foot.Thick.Sign > 0) what += $" in place of what is there ({bench.Say(has.Value)})";
            ExactLength low = after.Worked[gap.Key];
            string comes = low.Sign == 0 ? "its table comes flush with the top" : $"its table comes {bench.Say(low.Abs())} {(low.Sign > 0 ? "below" : "above")} the top";
            return new(RemedyKind.Shim, $"{what}: {comes}, of {bench.Say(gap.Most)} either way.", RemedyMinutes.Of("shim"), StockUse.None,
                ["Unplug the machine and loosen its bolts.", what + ".", "Draw the bolts up, and look again with a straightedge from the top over its table."],
                amendments, [fit.Foot.Thick.Sign == 0 && bench.PinOf(packing) is { EntryId.Length: > 0 } there ? Bench.Void(there.EntryId) : bench.Record(packing, fit.Foot.Thick)], "", [], bench.Proof.Moves(after));
        }
        return null;
    }
}
