using System.Collections.Immutable;
using System.Globalization;
using Setout.Core.Craft;
using Setout.Core.Fit;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;
using Setout.Core.SettingOut.Whole;
using Setout.Core.Workings;
using Setout.Drawing.Breakdowns;
using Setout.Drawing.Documents;
using Setout.Drawing.Elevations;
using Setout.Drawing.Scenes;
using Setout.Shop.Drawings;
using Setout.Shop.Plans;
using Setout.Shop.Runs;
using Setout.Shop.Texts;

namespace Setout.Shop.BenchSheets;

/// <summary>
/// Composes the printed bench sheets of a plan: cover with cautions, buying list, marking-out drawings, runs, parts, workings, cuts and holes, assembly, fit, finishing.
/// Pure; what is written on paper is the same for the same plan.
/// </summary>
public static class BenchSheetWriter
{
    /// <summary>The document.</summary>
    /// <param name="plan">A plan that is not stopped.</param>
    /// <param name="made">When the plan was made, in words; it does not count as a difference between two plans.</param>
    /// <param name="paper">The paper.</param>
    /// <param name="fit">What will fit, where it is known already; else it is worked out.</param>
    /// <param name="only">The stage whose sheets are wanted; null for all. What is cautioned against stands there too.</param>
    /// <param name="cancel">Gives up working that out.</param>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public static BenchDocument Compose(Plan plan, string made, Paper paper, FitReport? fit = null, SheetStage? only = null, CancellationToken cancel = default)
    {
        SetPiece set = plan.Set;
        ImmutableArray<Section> sections =
        [
            .. For(() => [Cover(plan, paper)], SheetStage.SetOut),
            .. For(() => [new("Buying list", ListPages.Buying(plan))], SheetStage.Buy),
            // With all sheets it stands on the cover.
            .. only == SheetStage.BreakDown ? [new Section("Before you cut", [.. Steps(plan), Warnings(plan)])] : ImmutableArray<Section>.Empty,
            .. For(() => [.. BreakdownPages.Of(plan, paper), .. RunPages.Of(plan)], SheetStage.BreakDown),
            .. For(() => [new("Parts", ListPages.Parts(plan))], SheetStage.SetOut, SheetStage.BreakDown),
            // Of several pieces together, what follows the saw stands in the plan of each.
            .. plan.Source.Together is null ? AfterTheSaw() : [],
        ];
        return new(set.Piece.Name, "en", new(set.Piece.Name, made, s_fixed, PieceSetOut.RuleSet, plan.Source.Hash), paper, sections);

        ImmutableArray<Section> AfterTheSaw() =>
        [
            .. For(() => [.. WorkingPages.Of(set)], SheetStage.SetOut),
            .. For(() => [.. CutPages.Of(plan, paper)], SheetStage.Machine),
            .. For(() => set.Steps.Length > 0 ? [new("Assembly", Assembly(set))] : [], SheetStage.Assemble),
            .. For(() => [.. FitPages.Of(set, fit ?? FitCheck.Of(set, plan.Source.Shop.Accuracy, cancel: cancel), paper)], SheetStage.Fit),
            .. For(() => [.. FinishPages.Of(set)], SheetStage.Finish),
        ];

        ImmutableArray<Section> For(Func<ImmutableArray<Section>> make, params ReadOnlySpan<SheetStage> stages) => only is { } one && !stages.Contains(one) ? [] : make();
    }

    // The file's own dates are fixed so that the same plan is the same file; when it was made stands on the page where the caller says so.
    private static readonly DateTimeOffset s_fixed = new(2000, 1, 1, 0, 0, 0, TimeSpan.Zero);

    private static Section Cover(Plan plan, Paper paper)
    {
        const string title = "Cover";
        SetPiece set = plan.Set;
        ImmutableArray<Block> above = plan.Source.Together is { } together ? [.. PiecesIn(together)] : set.Piece.About.Length > 0 ? [new ParagraphBlock(set.Piece.About)] : [];
        string money = plan.Cost > Money.Zero ? $" Cost of what has a price: {ListPages.Amount(plan)}{(plan.Unpriced > 0 ? $"; {plan.Unpriced} lines have none" : "")}." : "";
        string sheet = WeightWords.HeaviestStock(plan) is { } heaviest ? $" Heaviest sheet: {heaviest.Words}, {WeightWords.Of(heaviest.Mass, set.Piece.Shown)}." : "";
        ImmutableArray<Block> before = [.. Steps(plan)];
        ImmutableArray<Block> below =
        [
            new ParagraphBlock($"{set.Parts.Sum(p => p.Count)} parts from {plan.Sheets.Sum(s => s.Outcome.Layout.Sheets.Length)} sheets and {plan.Boards.Sum(b => b.Outcome.Layout.Boards.Length)} boards.{money}"),
            new ParagraphBlock($"{WeightWords.Whole(set, plan.Source.Together is null)}{sheet}"),
            .. before.Length > 0 ? [new HeadingBlock("Before you cut"), .. before] : ImmutableArray<Block>.Empty,
            Warnings(plan),
        ];
        return new(title, [.. above, .. PieceView.Has(set) ? ViewPages.Of(set, paper, title, above, below) : [], .. below]);
    }

    private static CautionBlock Warnings(Plan plan) => new([.. CautionKeys(plan).Select(k => Phrase.Of(Cautions.Of(k).Words)), Phrase.Of(Cautions.Deference)]);

    private static IEnumerable<Block> Steps(Plan plan)
    {
        ImmutableArray<Step> before = [.. BeforeCutting(plan)];
        return before.IsEmpty ? [] : [new StepsBlock(before), .. WhereToEnter(plan)];
    }

    // Who prints from the workbench has pages before him, and no command line.
    private static IEnumerable<Block> WhereToEnter(Plan plan)
    {
        if (plan.Set.Piece.Hand != Hand.Pages) yield break;
        yield return new ParagraphBlock($"What is read is entered on the workbench: what helps most under {Hands.FitStage}, any size under “Set out”, where it is chosen on the drawing or in the list of parts: “Read it”. What stands in such marks on these sheets is the name of a size or a page there.", TextSize.Small);
    }

    private static IEnumerable<Block> PiecesIn(PiecesTogether together)
    {
        yield return new ParagraphBlock("These pieces are broken down together, from the same sheets and boards and at the same settings. Marks begin with the letters of their piece: chalk them whole.");
        yield return new TableBlock([new("Letters", ColumnWidth.Fit, Size: TextSize.Figure), new("Piece", ColumnWidth.Share(1)), new(together.Set.Piece.Hand.Say("File", "Kept as"), ColumnWidth.Fit), new("Parts", ColumnWidth.Fit, ColumnAlign.Right)],
            [.. together.Members.Select(m => CellRow.Of(Cell.Of(m.Code), Cell.Of(m.Source.Piece.Name), Cell.Of(together.Set.Piece.Hand.Say(m.File, Path.GetFileNameWithoutExtension(m.File))), Cell.Of($"{m.Set.Parts.Sum(p => p.Count)}")))], TickBoxes.None);
        yield return new ParagraphBlock("Joints, holes, assembly and fit stand in the plan of each piece by itself; its own breakdown and its own runs are not for use then.");
    }

    private static IEnumerable<Step> BeforeCutting(Plan plan)
    {
        // The same for every sheet: said once, with all the figures that stand in.
        var unread = plan.Findings.Where(f => f.Code == "material.not-read").ToList();
        LengthFormat format = LengthFormat.For(plan.Set.Piece.Shown);
        if (unread.Count > 0)
        {
            Phrase list = Phrase.Of("Read every sheet with a calliper at two spots before anything that meets it is cut. Until then these stand in: ");
            for (int i = 0; i < unread.Count; i++)
                list = list.Add($"{(i > 0 ? ", " : "")}{unread[i].Key} ").Add(format.Format(plan.Set.Worked[QuantityKey.Of(unread[i].Key, "thickness")]));
            yield return new(list.Add("."), Phrase.Of(Enter(plan, unread)), Phrase.Empty);
        }
        foreach (Finding finding in plan.Findings.Except(unread)) yield return new(Figures.Phrase(finding.Words), Figures.Phrase(finding.LetStand.Length > 0 ? $"Let stand: {finding.LetStand}" : finding.Remedy), Phrase.Empty);
    }

    // The command of one of them, which is that of all; on the workbench each has its own place.
    private static string Enter(Plan plan, List<Finding> unread)
    {
        Hand hand = plan.Set.Piece.Hand;
        return plan.Source.Together is { } together
            ? hand.Say(together.Commands(unread[0].Key), $"Enter {string.Join("; ", unread.Select(f => $"{f.Key} {together.Places(f.Key)}"))}.")
            : hand.Say($"setout record FILE {unread[0].Key}.thickness READING", $"Enter {(unread.Count == 1 ? "it" : "them")} at {CutLines.List(unread.Select(f => Hands.Place(plan.Set.Worked.Values[QuantityKey.Of(f.Key, "thickness")].Quantity.Name)))}.");
    }

    private static IEnumerable<string> CautionKeys(Plan plan)
    {
        yield return "saw";
        yield return "crosscut";
        if (plan.Sheets.Length > 0) yield return "sheet";
        yield return "lift";
        yield return "dust";
        yield return "ears";
        if (plan.Sheets.Length > 0) yield return "panels";
        if (plan.Set.Openings.Any(o => o.Content == "drawers")) yield return "tip";
        if (plan.Set.Piece.Members.OfType<Case>().Any(c => c.IsHung)) yield return "hang";
    }

    private static ImmutableArray<Block> Assembly(SetPiece set)
    {
        LengthFormat format = LengthFormat.For(set.Piece.Shown);
        Step Of(AssemblyStep step)
        {
            Phrase note = step.Parts.Length == 0 ? Phrase.Empty : Phrase.Of("Parts: " + string.Join(", ", step.Parts.Select(k => set.Parts.FirstOrDefault(p => p.Key == k)?.Mark ?? k)) + ".");
            if (step.Diagonal is { } diagonal) note = note.Add(" Both diagonals read ").Add(format.Format(diagonal)).Add(" when it is square.");
            (string lift, string advice) = WeightWords.Lift(set, step);
            if (lift.Length > 0) note = note.Add(note.IsEmpty ? lift : $" {lift}");
            string mind = WeightWords.Mind(set, step, advice);
            return new(Figures.Phrase(step.Words), note, mind.Length > 0 ? Phrase.Of(mind) : Phrase.Empty);
        }
        return [new StepsBlock([.. set.Steps.Select(Of)]), new ParagraphBlock(Cautions.Deference, TextSize.Small)];
    }
}
