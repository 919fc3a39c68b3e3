using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Cutting;
using Setout.Cutting.Boards;
using Setout.Cutting.Sheets;

namespace Setout.Shop.Plans;

/// <summary>The pipeline: texts read, piece set out, parts laid on stock, list of what to buy. Pure; the same inputs give the same plan.</summary>
/// <param name="sheets">Lays out sheets.</param>
/// <param name="boards">Lays out boards.</param>
public sealed class PlanMaker(ISheetSolver sheets, IBoardSolver boards)
{
    /// <summary>Makes the plan. When setting out stops, there are no layouts and the findings say why.</summary>
    /// <param name="source">The texts.</param>
    /// <param name="options">How long the layouts are searched for.</param>
    /// <param name="progress">Told which material is being laid out.</param>
    /// <param name="cancel">Gives up; nothing half made is returned.</param>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public Plan Make(PieceSource source, SolverOptions options, IProgress<string>? progress = null, CancellationToken cancel = default)
    {
        SetPiece set = source.SetOut();
        var findings = new List<Finding>(set.Findings);
        var sheetPlans = ImmutableArray.CreateBuilder<SheetPlan>();
        var boardPlans = ImmutableArray.CreateBuilder<BoardPlan>();
        if (!set.IsStopped)
        {
            // What is cut needs no stock any more.
            IEnumerable<Part> uncut = set.Parts.Select(p => p with { Count = p.Count - set.Facts.CutOf(p) }).Where(p => p.Count > 0);
            foreach (IGrouping<string, Part> group in uncut.GroupBy(p => p.Material))
            {
                Material material = set.Piece.Materials[group.Key];
                progress?.Report(material.Name);
                if (material is Panel panel && LayOut(source, set, panel, group, options, findings, cancel) is { } sheetPlan) sheetPlans.Add(sheetPlan);
                else if (material is Stick stick && LayOut(source, set, stick, group, options, findings, cancel) is { } boardPlan) boardPlans.Add(boardPlan);
                cancel.ThrowIfCancellationRequested();
            }
        }
        ImmutableArray<BuyingLine> buying = BuyingList.Of(set, source.Shop, sheetPlans, boardPlans);
        return new(set, source, sheetPlans.ToImmutable(), boardPlans.ToImmutable(), buying, [.. findings.OrderByDescending(f => f.Severity)]);
    }

    private SheetPlan? LayOut(PieceSource source, SetPiece set, Panel panel, IEnumerable<Part> parts, SolverOptions options, List<Finding> findings, CancellationToken cancel)
    {
        ImmutableArray<StockLine> stock = StockOffers.For(panel, source.Shop, set.Piece.Unit);
        Length slack = source.Shop.SheetSlack;
        if (NoStock(ref stock, panel, source.Shop.SheetTrim, slack, LengthFormat.For(set.Piece.Unit), findings)) return null;
        bool priced = StockOffers.ArePriced(stock);
        var instance = new SheetInstance(
            [.. parts.Select(p => new SheetPart(p.Key, set.ToCut(p.Length), set.ToCut(p.Width), p.Count, p.Grain == Grain.Keep ? GrainRule.Keep : GrainRule.Free))],
            StockOffers.Sheets(stock, priced, source.Shop.SheetTrim), source.Shop.SheetKerf,
            new(Length.Min(source.Shop.KeepAlong, source.Shop.KeepAcross), Length.Max(source.Shop.KeepAlong, source.Shop.KeepAcross)))
        {
            Slack = slack,
            MostStages = source.Shop.MostStages,
            Groups = FigureGroups.Of(set, panel, parts, findings),
        };
        SheetOutcome outcome = sheets.Solve(instance, options, null, cancel);
        Report(set, panel, stock, FigureGroups.Report(set, panel, stock, instance, outcome.Reasons, findings), findings, source.Shop.SheetTrim, slack);
        NotPriced(priced, panel, findings);
        return new(panel, instance, outcome, stock, priced);
    }

    private BoardPlan? LayOut(PieceSource source, SetPiece set, Stick stick, IEnumerable<Part> parts, SolverOptions options, List<Finding> findings, CancellationToken cancel)
    {
        ImmutableArray<StockLine> stock = StockOffers.For(stick, source.Shop, set.Piece.Unit);
        if (NoStock(ref stock, stick, source.Shop.BoardTrim, Length.Zero, LengthFormat.For(set.Piece.Unit), findings)) return null;
        bool priced = StockOffers.ArePriced(stock);
        var instance = new BoardInstance([.. parts.Select(p => new BoardPart(p.Key, set.ToCut(p.Length), p.Count))],
            StockOffers.Boards(stock, priced, source.Shop.BoardTrim), source.Shop.BoardKerf, source.Shop.KeepBoard);
        BoardOutcome outcome = boards.Solve(instance, options, null, cancel);
        Report(set, stick, stock, outcome.Reasons, findings, source.Shop.BoardTrim, Length.Zero);
        NotPriced(priced, stick, findings);
        return new(stick, instance, outcome, stock, priced);
    }

    private static bool NoStock(ref ImmutableArray<StockLine> stock, Material material, Length trim, Length slack, LengthFormat format, List<Finding> findings)
    {
        foreach (StockLine line in stock.Where(l => !StockOffers.Survives(l, trim, slack)))
        {
            string free = slack.Sign > 0 ? $" and a slack of {format.Text(slack)} is left free" : "";
            findings.Add(new("stock.trim-too-large", Severity.Stop, material.Name, $"Nothing is left of {line.Words} of {material.Name} once {format.Text(line.Size.Trim ?? trim)} is trued off each side{free}.",
                "Make the trim smaller, or take the size out.", material.Place));
        }
        ImmutableArray<StockLine> offered = stock;
        stock = [.. stock.Where(l => StockOffers.Survives(l, trim, slack))];
        if (stock.Length < offered.Length) return true;
        if (stock.Length > 0) return false;
        findings.Add(new("stock.none", Severity.Stop, material.Name, $"No stock is known for {material.Name}.",
            material is Panel ? "Add 'sizes: [{size: 96 x 48, price: 60}]' to it, or put it in the shop file." : "Add 'lengths: [{length: 96, price: 6}]' to it, or put it in the shop file.", material.Place));
        return true;
    }

    private static void NotPriced(bool priced, Material material, List<Finding> findings)
    {
        if (priced) return;
        // Said once, with every material it is true of.
        int said = findings.FindIndex(f => f.Code == "stock.no-price");
        string names = said >= 0 ? $"{findings[said].Key}, {material.Name}" : material.Name;
        var note = new Finding("stock.no-price", Severity.Note, names, $"Not every size of {names} has a price; the least wood was laid out instead of the least money.", "Put prices into the shop file.", said >= 0 ? findings[said].Place : material.Place);
        if (said >= 0) findings[said] = note;
        else findings.Add(note);
    }

    private static void Report(SetPiece set, Material material, ImmutableArray<StockLine> stock, IEnumerable<CuttingReason> reasons, List<Finding> findings, Length trim, Length slack)
    {
        LengthFormat format = LengthFormat.For(set.Piece.Unit);
        foreach (CuttingReason reason in reasons)
        {
            Part? part = set.Parts.FirstOrDefault(p => p.Key == reason.Subject);
            string size = part is null ? "" : $"{part.Name} ({format.Bare.Text(set.ToCut(part.Length))} x {format.Text(set.ToCut(part.Width))})";
            string offered = string.Join("; ", stock.Select(s => s.Words));
            string trimmed = $"{format.Text(trim)} is trued off each {(material is Panel ? "edge" : "end")} unless the stock says otherwise{(slack.Sign > 0 ? $", and a slack of {format.Text(slack)} stays free" : "")}";
            Finding? finding = reason.Kind switch
            {
                ReasonKind.PartTooLarge => new("part.too-long", Severity.Stop, reason.Subject, $"{size} is larger than any stock of {material.Name}: {offered}; {trimmed}.",
                    "Offer a larger size in the shop file, make the part smaller, or join it.", part?.Place ?? default),
                ReasonKind.PartNeedsTurning => new("part.against-grain", Severity.Stop, reason.Subject, $"{size} fits the stock of {material.Name} only across its grain: {offered}.",
                    $"Write 'grain: free' for {material.Name} if the grain does not matter, or offer a longer size.", part?.Place ?? default),
                ReasonKind.StockTooLittle or ReasonKind.StockRanOut => new("stock.too-little", Severity.Stop, part?.Key ?? material.Name,
                    $"The stock of {material.Name} does not suffice: {offered}.", "Add a size that can be bought.", part?.Place ?? material.Place),
                _ => null,
            };
            if (finding is not null && !findings.Any(f => f.Code == finding.Code && f.Key == finding.Key)) findings.Add(finding);
        }
    }
}
