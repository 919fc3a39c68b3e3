using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.SettingOut;
using Setout.Cutting.Boards;
using Setout.Drawing.Breakdowns;
using Setout.Drawing.Scenes;
using Setout.Shop.Plans;

namespace Setout.Shop.Drawings;

/// <summary>Turns layouts of boards into drawings: each lane of a board a bar with running dimensions from its trued end.</summary>
public static class BoardBars
{
    /// <summary>All boards of a material; more than one drawing when they do not fit on one.</summary>
    public static ImmutableArray<Scene> Of(SetPiece set, BoardPlan plan, BreakdownPaper paper)
    {
        var bars = plan.Outcome.Layout.Boards.SelectMany((b, i) => b.Stretches.GroupBy(s => s.Lane).Select(lane => Bar(set, plan, b, i, lane.Key))).ToImmutableArray();
        return bars.Length == 0 ? [] : BoardDrawing.Draw(new BoardsInput($"{plan.Material.Name}, boards", $"{plan.Outcome.Layout.Boards.Length} boards of {plan.Material.Name} with running dimensions from the trued end.", bars)
        {
            HeaderLeft = Phrase.Of(plan.Material.Name),
            HeaderNote = Phrase.Of(BuyingList.Words(plan.Material)),
            HeaderRight = Phrase.Of(Verdict(plan)),
            Footer = Phrase.Of("square one end first; figures run from it; cut equal parts against one stop that the work leaves before the blade"),
        }, paper);
    }

    /// <summary>What may be said about the count: proven or not.</summary>
    public static string Verdict(BoardPlan plan)
    {
        int boards = plan.Outcome.Layout.Boards.Length;
        string many = boards == 1 ? "1 board" : $"{boards} boards";
        if (plan.Outcome.NoFewerBoards) return $"{many}; no layout can use fewer";
        return plan.Outcome.NoLessMoney ? $"{many}; no layout can cost less" : $"{many}; at least {plan.Outcome.Bound.Count} in any layout";
    }

    private static BoardBar Bar(SetPiece set, BoardPlan plan, LaidBoard board, int index, int lane)
    {
        LengthFormat bare = LengthFormat.For(set.Piece.Unit).Bare, format = LengthFormat.For(set.Piece.Unit);
        BoardStock stock = plan.Instance.Stock.First(s => s.Id == board.StockId);
        string words = plan.Stock.First(s => s.Id == board.StockId).Words;
        var parts = ImmutableArray.CreateBuilder<Drawing.Breakdowns.BoardPart>();
        var cuts = ImmutableArray.CreateBuilder<BoardCut>();
        var waste = ImmutableArray.CreateBuilder<BoardSpan>();
        var kept = ImmutableArray.CreateBuilder<BoardNote>();
        ImmutableArray<BoardStretch> clear = stock.ClearStretches();
        foreach (LaidStretch stretch in board.Stretches.Where(s => s.Lane == lane))
        {
            Length at = clear[stretch.Place - 1].From - stock.Trim.Start, end = clear[stretch.Place - 1].To - stock.Trim.Start;
            // Beyond a defect the first figure is where the clear stretch begins.
            if (at.Sign > 0 && !stretch.PartIds.IsEmpty) cuts.Add(new(at, Phrase.Of(bare.Format(at))));
            foreach (string id in stretch.PartIds)
            {
                Part part = set.Parts.First(p => p.Key == id);
                Length long_ = set.ToCut(part.Length);
                parts.Add(new(part.Key, $"{part.Name}, {format.Text(long_)}", part.Mark, new(at, at + long_)));
                if (at + long_ < stock.Trued) cuts.Add(new(at + long_, Phrase.Of(bare.Format(at + long_))));
                at += long_ + plan.Instance.Kerf;
            }
            var rest = new BoardSpan(end - stretch.LeftOver, end);
            if (stretch.Use == LeftOverUse.Waste) waste.Add(rest);
            if (stretch.Use == LeftOverUse.Keep) kept.Add(new(rest, Phrase.Of("keep ").Add(bare.Format(stretch.LeftOver))));
        }
        string of = stock.Lanes == 1 ? "" : $", lane {lane} of {stock.Lanes}";
        return new($"{plan.Material.Name}-{index + 1}{(stock.Lanes == 1 ? "" : $"-{lane}")}", Phrase.Of($"board {index + 1}, {words}{of}"), stock.Trued)
        {
            Parts = parts.ToImmutable(),
            Cuts = cuts.ToImmutable(),
            Waste = waste.ToImmutable(),
            Kept = kept.ToImmutable(),
            Defects = [.. Defects(stock)],
        };
    }

    // As far as they lie between the trims.
    private static IEnumerable<BoardNote> Defects(BoardStock stock) =>
        from defect in stock.Defects
        let span = new BoardSpan(Length.Max(Length.Zero, defect.From - stock.Trim.Start), Length.Min(stock.Trued, defect.To - stock.Trim.Start))
        where span.From < span.To
        select new BoardNote(span, Phrase.Of("cut out"));
}
