using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Cutting.Runs;
using Setout.Cutting.Sheets;
using Setout.Shop.Plans;

namespace Setout.Shop.Runs;

/// <summary>A groove or rabbet that is cut into strips before they are cut to length.</summary>
/// <param name="Before">The run that must come after it.</param>
/// <param name="After">The run that leaves the last of the strips.</param>
/// <param name="Cut">What is cut, as it is said of one of the parts; the same figures hold for all.</param>
/// <param name="Strips">Ids of the strips, in the order in which they come off.</param>
/// <param name="Parts">What is cut into which part: each part of the strips that has it.</param>
public sealed record StripGroove(int Before, int After, Machining Cut, ImmutableArray<int> Strips, ImmutableArray<Machining> Parts);

/// <summary>
/// Finds grooves and rabbets that may be cut in long strips. Each part that a strip is cut to length into must have the very same one from end to end, along the strip and at one
/// distance from its edge; a long strip is held and fed better than short parts, and all come out alike. What stops short, and what only some parts of a strip have, is cut into the parts.
/// </summary>
public static class StripGrooves
{
    /// <summary>All of a plan, in the order of the runs before which they are cut.</summary>
    public static ImmutableArray<StripGroove> Of(Plan plan)
    {
        RunPlan runs = plan.Runs;
        Dictionary<int, (Run Run, RunCut Cut)> cutIn = runs.Runs.SelectMany(r => r.Cuts.Select(c => (r, c))).ToDictionary(p => p.c.Blank);
        Dictionary<int, int> madeIn = runs.Runs.SelectMany(r => r.Cuts.SelectMany(c => new[] { c.Off, c.Rest }.OfType<int>().Select(id => (id, r.Number)))).ToDictionary(p => p.id, p => p.Number);
        var found = new List<(int Before, int After, int Strip, Machining[] Cuts)>();
        foreach (RunBlank strip in runs.Blanks.Where(b => b.Use == BlankUse.Work || b.Use == BlankUse.Stock))
        {
            if (!IsFirst(strip, cutIn, runs)) continue;
            (int first, List<string> parts) = Lengths(strip.Id, cutIn, runs);
            if (parts.Count < 2) continue;
            string[] kinds = [.. parts.Distinct()];
            foreach (Machining cut in plan.Set.Machinings.Where(m => m.Part == kinds[0] && IsInAll(m)))
            {
                Machining?[] same = [.. kinds.Select(k => plan.Set.Machinings.FirstOrDefault(m => m.Part == k && IsInAll(m) && Figures(plan.Set, m) == Figures(plan.Set, cut) && m.On == cut.On && m.Edge == cut.Edge))];
                if (Array.TrueForAll(same, m => m is not null)) found.Add((first, madeIn.GetValueOrDefault(strip.Id), strip.Id, [.. same.Select(m => m!)]));
            }
        }
        // One setting for all strips that take the same; it is set before the first of them is cut to length.
        return
        [
            .. found.GroupBy(f => (runs.Blanks[f.Strip].Material, Figures(plan.Set, f.Cuts[0]), f.Cuts[0].On, f.Cuts[0].Edge))
                .Select(g => new StripGroove(g.Min(f => f.Before), g.Max(f => f.After), g.First().Cuts[0], [.. g.Select(f => f.Strip)], [.. g.SelectMany(f => f.Cuts).DistinctBy(c => c.Part)]))
                .Where(g => g.After < g.Before).OrderBy(g => g.Before),
        ];
    }

    // Not in some members of its part alone.
    private static bool IsInAll(Machining cut) => cut.IsWholeLength && cut.Numbers.IsEmpty;

    // A strip is nothing that is left of another strip: it was ripped, squared, or stands in the rack like that, and is next cut to length.
    private static bool IsFirst(RunBlank blank, Dictionary<int, (Run Run, RunCut Cut)> cutIn, RunPlan runs) =>
        cutIn.TryGetValue(blank.Id, out var next) && IsLength(next.Run, next.Cut)
        && !runs.Runs.Any(r => r.Kind == RunKind.Size && r.Cuts.Any(c => c.Axis == GrainAxis.Along && c.Rest == blank.Id));

    private static bool IsLength(Run run, RunCut cut) => cut.Axis == GrainAxis.Along && run.Kind == RunKind.Size;

    // The run that first cuts a strip to length, and what comes off it; nothing where anything but parts and what is left comes off.
    private static (int First, List<string> Parts) Lengths(int strip, Dictionary<int, (Run Run, RunCut Cut)> cutIn, RunPlan runs)
    {
        var parts = new List<string>();
        int first = cutIn[strip].Run.Number;
        for (int? at = strip; at is { } id;)
        {
            RunBlank blank = runs.Blanks[id];
            if (!cutIn.TryGetValue(id, out var cut))
            {
                if (blank.Use == BlankUse.Part) parts.Add(blank.Turn == Turn.None ? blank.PartId : "");
                else if (blank.Use == BlankUse.Waiting) parts.Add("");
                break;
            }
            if (!IsLength(cut.Run, cut.Cut) || runs.Blanks[cut.Cut.Off!.Value] is not { Use: BlankUse.Part, Turn: Turn.None } part) return (first, []);
            parts.Add(part.PartId);
            at = cut.Cut.Rest;
        }
        return parts.Contains("") ? (first, []) : (first, parts);
    }

    private static string Figures(SetPiece set, Machining cut) => string.Join('|', cut.Figures.Select(f => $"{f.Name} {set.Worked[f.Key]}"));
}
