using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Cutting.Boards;
using Setout.Cutting.Runs;
using Setout.Cutting.Sheets;
using Setout.Shop.Runs;

namespace Setout.Shop.Plans;

/// <summary>The pipeline: texts read, piece set out, parts laid on stock, list of what to buy. Pure; the same inputs give the same plan.</summary>
/// <param name="sheets">Lays out sheets.</param>
/// <param name="boards">Lays out boards.</param>
public sealed class PlanMaker(ISheetSolver sheets, IBoardSolver boards)
{
    /// <summary>Makes the plan. When setting out stops, there are no layouts and the findings say why.</summary>
    /// <param name="source">The texts.</param>
    /// <param name="effort">How much search the layouts get.</param>
    /// <param name="progress">Told which material is being laid out.</param>
    /// <param name="cancel">Gives up; nothing half made is returned.</param>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public Plan Make(PieceSource source, LayoutEffort effort, IProgress<string>? progress = null, CancellationToken cancel = default)
    {
        // The rack as it stands takes the place of the rack as it was counted.
        Texts.Shop shop = source.ShopInHand;
        SetPiece set = source.SetOut();
        var findings = new List<Finding>(set.Findings);
        ImmutableArray<MaterialLaying> layings = set.IsStopped ? [] : Layings(source, shop, set, findings);
        effort.Spend(layings, progress, cancel);
        // Told in the order of the parts, whichever was served first.
        List<string> order = [.. set.Parts.Select(p => p.Material).Distinct()];
        layings = [.. layings.OrderBy(l => order.IndexOf(l.Material.Name))];
        ImmutableArray<SheetPlan> sheetPlans = [.. layings.OfType<SheetLaying>().Select(l => l.Plan)];
        ImmutableArray<BoardPlan> boardPlans = [.. layings.OfType<BoardLaying>().Select(l => l.Plan)];
        (sheetPlans, ImmutableArray<Finding> offers) = new FewerSettings(set, source.Shop, sheets, effort).Of(sheetPlans, boardPlans, progress, cancel);
        if (!layings.IsEmpty) progress?.Report("the order of the runs at the saws");
        using var ends = CancellationTokenSource.CreateLinkedTokenSource(cancel, effort.Enough);
        (sheetPlans, boardPlans, RunPlan runs) = Sawing.Of(set, sheetPlans, boardPlans, source.Shop, ends.Token);
        foreach (SheetPlan plan in sheetPlans) Report(source, set, plan, findings);
        foreach (BoardPlan plan in boardPlans) Report(source, set, plan, findings);
        findings.AddRange(RackFindings.Of(source, set, sheetPlans, boardPlans));
        ImmutableArray<BuyingLine> buying = BuyingList.Of(set, source.Shop, sheetPlans, boardPlans, runs);
        var made = new Plan(set, source, sheetPlans, boardPlans, buying, []) { Runs = runs };
        findings.AddRange([.. RunFindings.Of(made), .. offers]);
        return made with { Findings = [.. LettingStand.Of(findings, source.Log).OrderByDescending(f => f.Severity)] };
    }

    private ImmutableArray<MaterialLaying> Layings(PieceSource source, Texts.Shop shop, SetPiece set, List<Finding> findings)
    {
        ImmutableArray<MaterialLaying>.Builder layings = ImmutableArray.CreateBuilder<MaterialLaying>();
        // What is cut needs no stock any more.
        ILookup<string, Part> uncut = set.Parts.Select(p => p with { Count = p.Count - set.Facts.CutOf(p) }).Where(p => p.Count > 0).ToLookup(p => p.Material);
        var rack = new RackAccount();
        foreach (Material material in RackAccount.InTurn(uncut.Select(g => set.Piece.Materials[g.Key]), shop))
        {
            MaterialLaying? laying = material switch
            {
                Panel panel => Asked(source, shop, set, panel, uncut[panel.Name], rack, findings),
                Stick stick => Asked(shop, set, stick, uncut[stick.Name], rack, findings),
                _ => null,
            };
            if (laying is not null) layings.Add(laying);
        }
        return layings.ToImmutable();
    }

    private SheetLaying? Asked(PieceSource source, Texts.Shop shop, SetPiece set, Panel panel, IEnumerable<Part> parts, RackAccount rack, List<Finding> findings)
    {
        ImmutableArray<StockLine> stock = StockOffers.For(panel, shop, set);
        if (LayoutFindings.NoStock(ref stock, set.Piece.Hand, panel, shop.SheetTrim, shop.SheetSlack, LengthFormat.For(set.Piece.Shown), findings)) return null;
        bool priced = StockOffers.ArePriced(stock);
        ImmutableArray<FigureGroup> groups = source.Together is { } together ? together.Figures(panel, parts, findings) : FigureGroups.Of(set, panel, parts, findings);
        SheetInstance Ask(ImmutableArray<StockLine> lines) => new(
            [.. parts.Select(p => new SheetPart(p.Key, set.ToCut(p.Length), set.ToCut(p.Width), p.Count, p.Grain == Grain.Keep ? GrainRule.Keep : GrainRule.Free))],
            StockOffers.Sheets(lines, priced, shop.SheetTrim), shop.SheetKerf,
            new(Length.Min(shop.KeepAlong, shop.KeepAcross), Length.Max(shop.KeepAlong, shop.KeepAcross)))
        {
            Slack = shop.SheetSlack,
            MostStages = panel.MostStages ?? shop.MostStages,
            Groups = groups,
        };
        return new(panel, Ask, source.Before.Of(panel.Name), stock, priced, sheets, rack);
    }

    private BoardLaying? Asked(Texts.Shop shop, SetPiece set, Stick stick, IEnumerable<Part> parts, RackAccount rack, List<Finding> findings)
    {
        ImmutableArray<StockLine> stock = StockOffers.For(stick, shop, set);
        if (LayoutFindings.NoStock(ref stock, set.Piece.Hand, stick, shop.BoardTrim, Length.Zero, LengthFormat.For(set.Piece.Shown), findings)) return null;
        bool priced = StockOffers.ArePriced(stock);
        BoardInstance Ask(ImmutableArray<StockLine> lines) => new([.. parts.Select(p => new BoardPart(p.Key, set.ToCut(p.Length), p.Count))],
            StockOffers.Boards(lines, priced, shop.BoardTrim), shop.BoardKerf, shop.KeepBoard);
        return new(stick, Ask, stock, priced, boards, rack);
    }

    private static void Report(PieceSource source, SetPiece set, SheetPlan plan, List<Finding> findings)
    {
        IEnumerable<Cutting.CuttingReason> reasons = FigureGroups.Report(set, plan.Material, plan.Stock, plan.Instance, plan.Outcome.Reasons, findings);
        LayoutFindings.Report(set, plan.Material, plan.Stock, reasons, findings, source.Shop.SheetTrim, plan.Instance.Slack);
        LayoutFindings.NotPriced(plan.IsPriced, set.Piece.Hand, plan.Material, findings);
    }

    private static void Report(PieceSource source, SetPiece set, BoardPlan plan, List<Finding> findings)
    {
        LayoutFindings.Report(set, plan.Material, plan.Stock, plan.Outcome.Reasons, findings, source.Shop.BoardTrim, Length.Zero);
        LayoutFindings.NotPriced(plan.IsPriced, set.Piece.Hand, plan.Material, findings);
    }
}
