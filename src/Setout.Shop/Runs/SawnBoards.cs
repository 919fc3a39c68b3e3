using Setout.Core.Measures;
using Setout.Cutting.Runs;
using Setout.Cutting.Sheets;
using Setout.Shop.Plans;

namespace Setout.Shop.Runs;

/// <summary>Where a blank lies on its board.</summary>
/// <param name="Lane">In which lane, from 1 at the reference edge; for what is not ripped yet, the first that it holds.</param>
/// <param name="From">Its near end, from the trued end of the board; below zero where that is still raw.</param>
public readonly record struct BoardPlace(int Lane, Length From);

/// <summary>Follows the runs along the boards, so that drawings say what the runs say.</summary>
public sealed class SawnBoards
{
    private readonly Plan _plan;
    private readonly BoardPlace?[] _places;

    private SawnBoards(Plan plan)
    {
        _plan = plan;
        Names = BlankNames.Of(plan);
        _places = new BoardPlace?[plan.Runs.Blanks.Length];
        foreach (RunBlank stock in plan.Runs.Blanks.DistinctBy(b => (b.Material, b.Stock)).Where(b => !Names.IsSheet(b.Material)))
        {
            BoardPlan boards = plan.Boards[stock.Material - plan.Sheets.Length];
            _places[stock.Id] = new(1, -boards.StockOf(boards.Outcome.Layout.Boards[stock.Stock]).Trim.Start);
        }
        foreach (RunCut cut in plan.Runs.Runs.SelectMany(r => r.Cuts))
        {
            if (_places[cut.Blank] is not { } place) continue;
            bool isNear = cut.From is BlankSide.NearEdge or BlankSide.NearEnd;
            if (cut.Off is { } off) _places[off] = Within(cut, place, off, isNear);
            if (cut.Rest is { } rest) _places[rest] = Within(cut, place, rest, !isNear);
        }
    }

    /// <summary>What blanks are called.</summary>
    public BlankNames Names { get; }

    /// <summary>Follows the runs of a plan.</summary>
    public static SawnBoards Of(Plan plan) => new(plan);

    /// <summary>Where a blank of a board lies; null for one of a sheet.</summary>
    public BoardPlace? PlaceOf(int blank) => _places[blank];

    /// <summary>The cuts on one board with the lane that each is made in, in the order of work.</summary>
    public IEnumerable<(Run Run, RunCut Cut, BoardPlace Place)> Cuts(int material, int board) =>
        _plan.Runs.Runs.SelectMany(r => r.Cuts.Select(c => (r, c))).Where(p => _plan.Runs.Blanks[p.c.Blank] is var b && b.Material == material && b.Stock == board && _places[b.Id] is not null)
            .Select(p => (p.r, p.c, _places[p.c.Blank]!.Value));

    private BoardPlace Within(RunCut cut, BoardPlace place, int blank, bool isNear)
    {
        if (isNear) return place;
        // What remains beside a lane is the next one.
        return cut.Axis == GrainAxis.Across ? place with { Lane = place.Lane + 1 } : place with { From = place.From + _plan.Runs.Blanks[cut.Blank].Along - _plan.Runs.Blanks[blank].Along };
    }
}
