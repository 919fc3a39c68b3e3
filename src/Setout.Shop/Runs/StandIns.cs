using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Cutting.Runs;
using Setout.Shop.Plans;

namespace Setout.Shop.Runs;

/// <summary>Materials whose thickness nobody has read: a figure stands in for it, and other figures rest on that.</summary>
internal sealed class StandIns(Plan plan)
{
    /// <summary>Their names.</summary>
    public string[] Things { get; } = [.. plan.Findings.Where(f => f.Code == "material.not-read").Select(f => f.Key)];

    /// <summary>Those that a size cut in a run was worked from.</summary>
    public IEnumerable<string> Behind(Run run, CutLines lines)
    {
        if (run.Kind != RunKind.Size) return [];
        HashSet<string> cut = [.. run.Cuts.Where(c => c.Off is not null).SelectMany(c => lines.PartsIn(c.Off!.Value))];
        return Things.Where(u => plan.Set.Parts.Any(p => cut.Contains(p.Key) && new[] { p.Length, p.Width }.Any(s => plan.Set.Worked.Values.TryGetValue(s.ToCut, out Worked? worked) && worked.Value == run.Figure && RestsOn(s.ToCut, QuantityKey.Of(u, "thickness")))));
    }

    private bool RestsOn(QuantityKey key, QuantityKey on) =>
        key == on || (plan.Set.Worked.Values.TryGetValue(key, out Worked? worked) && worked.Pin is null && worked.Quantity.Working.WorkedFrom.Any(k => RestsOn(k, on)));
}
