using Setout.Cutting.Runs;
using Setout.Cutting.Sheets;
using Setout.Shop.Plans;

namespace Setout.Shop.Runs;

/// <summary>Says how wood is named, with names of the plan itself: what is not in it is not spoken of.</summary>
internal static class NameWords
{
    /// <summary>A few sentences; empty where nothing is sawn.</summary>
    public static string Of(Plan plan, BlankNames names)
    {
        if (plan.Runs.Runs.IsEmpty) return "";
        RunCut[] cuts = [.. plan.Runs.Runs.SelectMany(r => r.Cuts)];
        string? sheet = Come(plan, names, cuts, true), lanes = Come(plan, names, cuts, false);
        string come = string.Join("; ", new[] { sheet, lanes }.OfType<string>());
        string lane = LastLane(plan, names) is { } last ? $": the last lane of {names.Spoken(last.Id)} is still {names[last.Id]}" : "";
        return $"Chalk its name on each sheet and board, and on what comes off. {(come.Length > 0 ? $"Off {come}. " : "")}What remains keeps the name, and so does the last piece when all else is waste{lane}. "
            + "Mark each edge and end that is trued or sawn: later runs ask for it. The sides at 0 are those where the figures of the drawing begin.";
    }

    // The first sheet or board from which something comes off that is cut again.
    private static string? Come(Plan plan, BlankNames names, RunCut[] cuts, bool isSheet)
    {
        var come = cuts.Select(c => c.Off).OfType<int>().Select(id => plan.Runs.Blanks[id]).Where(b => names.IsSheet(b.Material) == isSheet && b.Use is not (BlankUse.Part or BlankUse.Waste) && names[b.Id] != names.OfStock(b.Material, b.Stock))
            .GroupBy(b => (b.Material, b.Stock)).FirstOrDefault();
        if (come is null) return null;
        string[] first = [.. come.Select(b => names[b.Id]).Distinct().Take(2)];
        return $"{names.SpokenStock(come.Key.Material, come.Key.Stock)} {(first.Length > 1 ? "come" : "comes")} {CutLines.List(first)}";
    }

    // A lane that is called as its board is.
    private static RunBlank? LastLane(Plan plan, BlankNames names)
    {
        RunCut[] rips = [.. plan.Runs.Runs.SelectMany(r => r.Cuts).Where(c => c.Axis == GrainAxis.Across && !names.IsSheet(plan.Runs.Blanks[c.Blank].Material))];
        HashSet<int> ripped = [.. rips.Select(c => c.Blank)];
        return rips.SelectMany(c => new[] { c.Off, c.Rest }).OfType<int>().Where(id => !ripped.Contains(id)).Select(id => plan.Runs.Blanks[id])
            .FirstOrDefault(b => b.Use == BlankUse.Work && names[b.Id] == names.OfStock(b.Material, b.Stock));
    }
}
