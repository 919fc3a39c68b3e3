using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.SettingOut;
using Setout.Cutting.Boards;
using Setout.Cutting.Runs;
using Setout.Cutting.Sheets;
using Setout.Drawing.Breakdowns;
using Setout.Drawing.Scenes;
using Setout.Shop.Plans;
using Setout.Shop.Runs;

namespace Setout.Shop.Drawings;

/// <summary>Turns layouts of boards into drawings: each lane of a board a bar with running dimensions from its trued end, flaws hatched.</summary>
public static class BoardBars
{
    /// <summary>All boards of a material; more than one drawing when they do not fit on one.</summary>
    public static ImmutableArray<Scene> Of(Plan whole, BoardPlan plan, BreakdownPaper paper)
    {
        SetPiece set = whole.Set;
        int material = whole.Sheets.Length + whole.Boards.IndexOf(plan);
        var saw = new BoardAtTheSaw(whole, material);
        BlankNames names = saw.Names;
        var bars = ImmutableArray.CreateBuilder<BoardBar>();
        ImmutableArray<LaidBoard> boards = plan.Outcome.Layout.Boards;
        for (int i = 0; i < boards.Length; i++)
        {
            string[] lanes = Lanes(whole, names, material, i);
            for (int lane = 1; lane <= Used(boards[i]); lane++)
                bars.Add(Bar(set, plan, saw, i, names.OfStock(material, i), names.SpokenStock(material, i), lane, lane <= lanes.Length ? lanes[lane - 1] : ""));
        }
        return bars.Count == 0 ? [] : BoardDrawing.Draw(new BoardsInput($"{plan.Material.Name}, boards", Description(set, plan, names, material), bars.ToImmutable())
        {
            HeaderLeft = Phrase.Of(plan.Material.Name),
            HeaderNote = Phrase.Of(BuyingList.Words(plan.Material)),
            HeaderRight = Phrase.Of(Verdicts.Of(plan)),
            Footer = Footer(set, plan, saw, LengthFormat.For(set.Piece.Shown)),
        }, paper);
    }

    // What the runs call each lane, in the order in which they are ripped; the last is what remains.
    private static string[] Lanes(Plan whole, BlankNames names, int material, int board)
    {
        RunCut[] cuts = [.. whole.Runs.Runs.Where(r => r.Kind is RunKind.Lane or RunKind.Size).SelectMany(r => r.Cuts).Where(c => c.Axis == GrainAxis.Across && whole.Runs.Blanks[c.Blank] is var b && b.Material == material && b.Stock == board)];
        return [.. cuts.Select(c => c.Off).Append(cuts.LastOrDefault()?.Rest).OfType<int>().Select(id => names[id])];
    }

    private static bool IsWaiting(SetPiece set, string part) => set.IsHeld(set.Parts.First(p => p.Key == part));

    // Lanes beyond the last one that holds a part are not sawn off: they stay one strip.
    private static int Used(LaidBoard board) => board.Stretches.Where(s => !s.PartIds.IsEmpty).Select(s => s.Lane).DefaultIfEmpty(1).Max();

    // What goes off the end is told where one figure holds for all boards, else with each board: all other figures run from there.
    private static Phrase Footer(SetPiece set, BoardPlan plan, BoardAtTheSaw saw, LengthFormat format)
    {
        ImmutableArray<LaidBoard> boards = plan.Outcome.Layout.Boards;
        bool[] waits = [.. boards.SelectMany(b => b.PartIds).Select(p => IsWaiting(set, p))];
        if (waits.Length > 0 && Array.TrueForAll(waits, w => w)) return Phrase.Of("nothing is cut from these yet: marks that slant wait for a reading, and their wood stays whole until it is taken; figures run from the end that is trued then");
        bool hasFlaws = boards.Any(b => !plan.StockOf(b).Defects.IsEmpty);
        string square = hasFlaws ? $"the end at 0 is the one that flaws are measured from: chalk it, and square it first{saw.Squared}" : $"square one end first{saw.Squared}";
        Phrase footer = Phrase.Of((plan.IsRipped ? $"rip into lanes{saw.Ripped} before anything is cut to length, the true edge on the fence; " : "") + square);
        footer = OneTrim(plan) is not { } trim ? footer.Add(hasFlaws ? " where something goes off it" : "") : trim.Sign > 0 ? footer.Add(", ").Add(format.Format(trim)).Add(" off") : footer.Add(", unless it is true");
        footer = footer.Add("; figures run from the trued end; ");
        if (hasFlaws) footer = footer.Add("'from' is where the next part begins, blade on the flaw's side; ");
        footer = footer.Add("cut equal parts against one stop that the work leaves before the blade");
        return waits.Contains(true) ? footer.Add("; marks that slant and cuts drawn thin wait for a reading: leave their wood whole until it is taken") : footer;
    }

    private static Length? OneTrim(BoardPlan plan)
    {
        Length[] trims = [.. plan.Outcome.Layout.Boards.Select(b => plan.StockOf(b).Trim.Start).Distinct()];
        return trims.Length == 1 ? trims[0] : null;
    }

    private static string Description(SetPiece set, BoardPlan plan, BlankNames names, int material)
    {
        LengthFormat format = LengthFormat.For(set.Piece.Shown);
        ImmutableArray<LaidBoard> boards = plan.Outcome.Layout.Boards;
        var words = new List<string> { $"{boards.Length} boards of {plan.Material.Name} with running dimensions from the trued end." };
        for (int i = 0; i < boards.Length; i++)
        {
            BoardStock stock = plan.StockOf(boards[i]);
            string name = names.OfStock(material, i);
            if (stock.Rip is { } rip) words.Add($"Board {name} is ripped into lanes of {format.Text(rip.LaneWidth)}.");
            if (boards[i].PartIds.Length > 0 && boards[i].PartIds.All(p => IsWaiting(set, p))) words.Add($"Board {name} waits for a reading.");
            if (!stock.Defects.IsEmpty)
                words.Add($"Board {name} has flaws from the end as it lies: {string.Join("; ", stock.Defects.OrderBy(d => d.From).Select(d => $"{format.Bare.Text(d.From)} to {format.Text(d.To)}"))}.");
        }
        return string.Join(' ', words);
    }

    private static BoardBar Bar(SetPiece set, BoardPlan plan, BoardAtTheSaw saw, int index, string number, string spoken, int lane, string called)
    {
        LaidBoard board = plan.Outcome.Layout.Boards[index];
        LengthFormat bare = LengthFormat.For(set.Piece.Shown).Bare, format = LengthFormat.For(set.Piece.Shown);
        BoardStock stock = plan.StockOf(board);
        var parts = ImmutableArray.CreateBuilder<Drawing.Breakdowns.BoardPart>();
        var cuts = ImmutableArray.CreateBuilder<BoardCut>();
        var waste = ImmutableArray.CreateBuilder<BoardSpan>();
        var kept = ImmutableArray.CreateBuilder<BoardNote>();
        ImmutableArray<BoardStretch> clear = stock.ClearStretches();
        foreach (LaidStretch stretch in board.Stretches.Where(s => s.Lane == lane))
        {
            Length at = clear[stretch.Place - 1].From - stock.Trim.Start, end = clear[stretch.Place - 1].To - stock.Trim.Start;
            // Beyond a flaw the first figure is where the clear stretch begins.
            if (at.Sign > 0 && !stretch.PartIds.IsEmpty) cuts.Add(new(at, Phrase.Of("from ").Add(bare.Format(at))) { IsWaiting = stretch.PartIds.All(p => IsWaiting(set, p)) });
            foreach (string id in stretch.PartIds)
            {
                Part part = set.Parts.First(p => p.Key == id);
                Length long_ = set.ToCut(part.Length);
                bool waits = set.IsHeld(part);
                parts.Add(new(part.Key, $"{part.Name}, {format.Text(long_)}{(waits ? $", waits for a reading of {part.HeldUntil[^1]}" : "")}", part.Mark, new(at, at + long_)) { IsHeld = waits });
                if (at + long_ < stock.Trued) cuts.Add(new(at + long_, Phrase.Of(bare.Format(at + long_))) { IsWaiting = waits });
                at += long_ + plan.Instance.Kerf;
            }
            var rest = new BoardSpan(end - stretch.LeftOver, end);
            if (stretch.Use == LeftOverUse.Waste) waste.Add(rest);
            if (stretch.Use == LeftOverUse.Keep) kept.Add(saw.Kept(index, lane, rest));
        }
        return new($"{plan.Material.Name}-{number}{(stock.Rip is null ? "" : $"-{lane}")}", Name(set, plan, saw, index, spoken, lane, called, format), stock.Trued)
        {
            Board = $"{plan.Material.Name}-{number}",
            Parts = parts.ToImmutable(),
            Cuts = cuts.ToImmutable(),
            Waste = waste.ToImmutable(),
            Kept = kept.ToImmutable(),
            Defects = [.. Flaws(stock, bare)],
        };
    }

    private static Phrase Name(SetPiece set, BoardPlan plan, BoardAtTheSaw saw, int index, string spoken, int lane, string called, LengthFormat format)
    {
        LaidBoard board = plan.Outcome.Layout.Boards[index];
        string name = $"{spoken}, {plan.Stock.First(s => s.Id == board.StockId).Words}";
        Part[] parts = [.. board.Stretches.Where(s => s.Lane == lane).SelectMany(s => s.PartIds).Distinct().Select(id => set.Parts.First(p => p.Key == id))];
        string waits = parts.Length > 0 && Array.TrueForAll(parts, set.IsHeld) ? $"leave it whole: waits for a reading of {string.Join(", ", parts.Select(p => HeldWords.Of(set, p.HeldUntil[^1])).Distinct())}" : "";
        if (board.PartIds.All(p => IsWaiting(set, p)) && waits.Length > 0) return Figures.Phrase($"{name}: {waits}");
        name += saw.End(index, lane, plan.StockOf(board).Trim.Start, OneTrim(plan) is not null);
        if (plan.StockOf(board).Rip is not { } rip) return Figures.Phrase(name);
        int used = Used(board);
        string lanes = $"{(used > 1 ? $"lane {lane} of {used}" : "one lane")}{(called.Length > 0 ? $" ({called})" : "")}";
        name += waits.Length > 0 ? $": {lanes}, {waits}" : $": {lanes}, rip to {format.Text(rip.LaneWidth)}";
        Length beside = rip.Width - ((rip.LaneWidth + rip.Kerf) * used);
        return Figures.Phrase(lane == used && beside.Sign > 0 ? $"{name}; {format.Text(beside)} stays beside it" : name);
    }

    // As far as they lie between the trims; flaws that overlap are one.
    private static IEnumerable<BoardNote> Flaws(BoardStock stock, LengthFormat bare)
    {
        var spans = new List<BoardSpan>();
        foreach (BoardStretch flaw in stock.Defects.OrderBy(d => d.From))
        {
            var span = new BoardSpan(Length.Max(Length.Zero, flaw.From - stock.Trim.Start), Length.Min(stock.Trued, flaw.To - stock.Trim.Start));
            if (span.From >= span.To) continue;
            if (spans.Count > 0 && span.From <= spans[^1].To) spans[^1] = new(spans[^1].From, Length.Max(spans[^1].To, span.To));
            else spans.Add(span);
        }
        return spans.Select(s => new BoardNote(s, Words(s, stock.Trim.Start, bare)));
    }

    // As it was measured too, so that anyone can see that it is the same flaw.
    private static Phrase Words(BoardSpan flaw, Length trim, LengthFormat bare)
    {
        Phrase words = Phrase.Of("flaw ").Add(bare.Format(flaw.From)).Add(" to ").Add(bare.Format(flaw.To));
        return trim.Sign == 0 ? words : words.Add(", ").Add(bare.Format(flaw.From + trim)).Add(" to ").Add(bare.Format(flaw.To + trim)).Add(" on the board as it lies");
    }
}
