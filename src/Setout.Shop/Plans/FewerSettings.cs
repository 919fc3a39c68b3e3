using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Cutting;
using Setout.Cutting.Boards;
using Setout.Cutting.Sheets;

namespace Setout.Shop.Plans;

/// <summary>
/// Looks for layouts that are sawn at fewer settings. Where a strip is divided more than once, the wood is laid out again in plain strips that are cut to length alone. If that
/// costs the same and all runs of the plan together are fewer, it is taken; if it costs a sheet more and saves settings, it is offered.
/// </summary>
/// <param name="set">The piece.</param>
/// <param name="shop">The shop.</param>
/// <param name="solver">Lays out sheets.</param>
/// <param name="effort">How much search each look gets.</param>
internal sealed class FewerSettings(SetPiece set, Texts.Shop shop, ISheetSolver solver, LayoutEffort effort)
{
    private const int PlainStages = 2;

    // What a sheet more has to save before it is worth a word: common practice, no source.
    private const int LeastSaved = 3;

    // Of more parts the search takes long, and nobody buys a sheet for a few settings in so many.
    private const int MostParts = 500;

    /// <summary>The layouts, some of them plainer, and what could be had for a sheet more.</summary>
    public (ImmutableArray<SheetPlan> Sheets, ImmutableArray<Finding> Offers) Of(ImmutableArray<SheetPlan> sheets, ImmutableArray<BoardPlan> boards, IProgress<string>? progress, CancellationToken cancel)
    {
        if (!sheets.Any(IsWorthALook) || effort.Enough.IsCancellationRequested) return (sheets, []);
        var dearer = new List<(int At, SheetPlan Plainer)>();
        int now = Settings(sheets, boards, cancel);
        for (int i = 0; i < sheets.Length; i++)
        {
            SheetPlan plan = sheets[i];
            if (!IsWorthALook(plan)) continue;
            progress?.Report($"{plan.Material.Name}, once more in plain strips");
            SheetLayout layout = effort.Again(sheets.Skip(i).Count(IsWorthALook), options => solver.Solve(plan.Instance with { MostStages = PlainStages }, options, null, cancel)).Layout;
            cancel.ThrowIfCancellationRequested();
            if (!layout.LeftOut.IsEmpty) continue;
            SheetPlan plainer = plan with { Outcome = plan.Outcome with { Layout = layout, Score = SheetObjective.Score(plan.Instance, layout) } };
            int then = Settings(sheets.SetItem(i, plainer), boards, cancel), more = layout.Sheets.Length - plan.Outcome.Layout.Sheets.Length;
            // Figures that were not looked for to the end are no reason to take another layout.
            if (effort.Enough.IsCancellationRequested) return (sheets, []);
            if (then < now && UsesTheSame(plan, plainer)) (sheets, now) = (sheets.SetItem(i, plainer), then);
            else if (more <= 1 && plainer.Outcome.Score.Cost > plan.Outcome.Score.Cost) dearer.Add((i, plainer));
        }
        if (effort.Enough.IsCancellationRequested) return (sheets, []);
        // Told against what is laid out in the end: a plainer layout of a later material changes what an earlier one saves.
        return (sheets, [.. dearer.Select(d => (d.At, d.Plainer, Then: Settings(sheets.SetItem(d.At, d.Plainer), boards, cancel))).Where(d => now - d.Then >= LeastSaved)
            .Select(d => Offer(sheets[d.At], d.Plainer, d.Plainer.Outcome.Layout.Sheets.Length - sheets[d.At].Outcome.Layout.Sheets.Length, d.Then, now))]);
    }

    private static bool IsWorthALook(SheetPlan plan) => plan.Outcome.Layout.LeftOut.IsEmpty && plan.Instance.Before is null && plan.Instance.PartsInAll <= MostParts
        && plan.Instance.MostStages is null or > PlainStages && plan.Outcome.Layout.Sheets.Any(s => Stages(s.Root) > PlainStages);

    private static int Stages(CutNode node) => node is Division division ? 1 + division.Slices.Max(s => Stages(s.Content)) : 0;

    private int Settings(ImmutableArray<SheetPlan> sheets, ImmutableArray<BoardPlan> boards, CancellationToken cancel)
    {
        using var ends = CancellationTokenSource.CreateLinkedTokenSource(cancel, effort.Enough);
        return Sawing.Of(set, sheets, boards, shop, ends.Token).Runs.Settings;
    }

    // What else of the rack other materials may count on.
    private static bool UsesTheSame(SheetPlan a, SheetPlan b) =>
        a.Outcome.Layout.Sheets.Select(s => s.StockId).Order(StringComparer.Ordinal).SequenceEqual(b.Outcome.Layout.Sheets.Select(s => s.StockId).Order(StringComparer.Ordinal));

    private Finding Offer(SheetPlan plan, SheetPlan plainer, int more, int then, int now)
    {
        Money price = plainer.Outcome.Score.Cost - plan.Outcome.Score.Cost;
        Hand hand = set.Piece.Hand;
        string cost = plan.IsPriced ? $"{price} {shop.Currency}".TrimEnd() : "", name = plan.Material.Name, saved = now - then == 1 ? "1 setting" : $"{now - then} settings";
        string words = more == 1 ? $"One sheet more of {name}{(cost.Length > 0 ? $", for {cost}," : "")} saves {saved} at the saws" : $"Other sheets of {name}{(cost.Length > 0 ? $", for {cost} more," : "")} save {saved} at the saws";
        return new("layout.plainer", Severity.Note, name, $"{words}: {then} in place of {now}.", $"{hand.Write("most stages", $"{PlainStages}")} {hand.Say($"with {name} in the piece file", $"for {name}")} to lay it out in plain strips.", plan.Material.Place);
    }
}
