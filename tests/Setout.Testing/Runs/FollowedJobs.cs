using System.Collections.Immutable;
using Setout.Cutting;
using Setout.Cutting.Runs;
using Setout.Cutting.Sheets;

namespace Setout.Testing.Runs;

/// <summary>
/// Jobs that are followed already: planned once, then planned again with sheets that keep the order of their slices. Either the layouts stand as they were given back and other parts
/// wait, or some runs are made, and what they left is stock.
/// </summary>
internal static class FollowedJobs
{
    /// <summary>The same layouts once more, some or all sheets settled; readings may have been taken, or asked for.</summary>
    public static SawJob SameLayouts(SawJob job, int seed)
    {
        var random = new Random(seed);
        OrderedRuns ordered = new RunPlanner(200).Plan(job.Materials, job.Limits);
        return job with { Materials = [.. job.Materials.Select((m, i) => m is RunSheets sheets ? Settled(sheets, ordered.Sheets[i]) : m)] };

        RunMaterial Settled(RunSheets sheets, SheetLayout given) => sheets with
        {
            // Now and then the layout of a plan that was never put in order.
            Layout = random.Next(4) == 0 ? sheets.Layout : given,
            Settled = [.. Enumerable.Range(0, given.Sheets.Length).Where(_ => random.Next(4) > 0)],
            Held = random.Next(3) switch
            {
                0 => sheets.Held,
                1 => [.. sheets.Held.Where(_ => random.Next(2) == 0)],
                _ => [.. sheets.Instance.Parts.Select(p => p.Id).Where(_ => random.Next(4) == 0)],
            },
        };
    }

    /// <summary>Some runs are made. Their parts are wanted no more, what they left is in hand, and sheets that nobody has parted are followed.</summary>
    public static SawJob HalfCut(SawJob job, int seed, int budget)
    {
        var random = new Random(seed);
        OrderedRuns ordered = new RunPlanner(200).Plan(job.Materials, job.Limits);
        int made = random.Next(ordered.Plan.Runs.Length + 1);
        HashSet<int> there = [.. ordered.Plan.Blanks.Select(b => b.Id).Except(ordered.Plan.Runs.SelectMany(r => r.Cuts).SelectMany(c => new[] { c.Off, c.Rest }).OfType<int>())];
        HashSet<(int Material, int Stock)> cut = [], parted = [];
        foreach (Run run in ordered.Plan.Runs.Take(made))
            foreach (RunCut c in run.Cuts)
            {
                RunBlank blank = ordered.Plan.Blanks[c.Blank];
                cut.Add((blank.Material, blank.Stock));
                if (run.Kind != RunKind.True) parted.Add((blank.Material, blank.Stock));
                there.Remove(c.Blank);
                there.UnionWith(new[] { c.Off, c.Rest }.OfType<int>());
            }
        ILookup<int, RunBlank> left = there.Select(id => ordered.Plan.Blanks[id]).Where(b => cut.Contains((b.Material, b.Stock))).OrderBy(b => b.Id).ToLookup(b => b.Material);
        return job with { Materials = [.. job.Materials.Select((m, i) => m is RunSheets sheets ? GoesOn(sheets, i) : m)] };

        RunMaterial GoesOn(RunSheets sheets, int material)
        {
            LaidSheet[] laid = [.. ordered.Sheets[material].Sheets];
            Dictionary<string, int> done = left[material].Where(b => b.Use == BlankUse.Part).CountBy(b => b.PartId).ToDictionary(), gone = laid.Where((_, s) => cut.Contains((material, s))).CountBy(l => l.StockId).ToDictionary();
            ImmutableArray<SheetPart> parts = [.. sheets.Instance.Parts.Select(p => p with { Count = p.Count - done.GetValueOrDefault(p.Id) }).Where(p => p.Count > 0)];
            SheetStock[] inHand =
            [
                .. left[material].Where(b => b.Use is BlankUse.Work or BlankUse.Waiting or BlankUse.Keep).Select(b => SheetStock.InHand($"left {b.Id}", b.Along, b.Across, b.Trim))
                    .Where(s => s.TruedAlong > sheets.Instance.Slack && s.TruedAcross > sheets.Instance.Slack),
            ];
            ImmutableArray<SheetStock> stock = [.. sheets.Instance.Stock.Select(s => s with { Limit = s.Limit - gone.GetValueOrDefault(s.Id) }).Where(s => s.Limit is not 0), .. inHand];
            var instance = new SheetInstance(parts, stock, sheets.Instance.Kerf, sheets.Instance.Keep)
            {
                // A figure that is cut into by half is left alone.
                Groups = [.. sheets.Instance.Groups.Where(g => g.PartIds.All(id => !done.ContainsKey(id)))],
                Slack = sheets.Instance.Slack,
                MostStages = sheets.Instance.MostStages,
            };
            SheetLayout before = EarlierSheets.Today(instance, new([.. laid.Where((_, s) => !parted.Contains((material, s)))], []));
            instance = instance with { Before = before };
            SheetLayout layout = SheetSolvers.Default.Solve(instance, new(budget, 1)).Layout;
            // Readings were taken of some parts since.
            return sheets with
            {
                Instance = instance,
                Layout = layout,
                Settled = [.. Enumerable.Range(0, layout.Sheets.Length).Where(s => before.Sheets.Contains(layout.Sheets[s]))],
                Held = [.. sheets.Held.Where(_ => random.Next(3) > 0)],
            };
        }
    }
}
