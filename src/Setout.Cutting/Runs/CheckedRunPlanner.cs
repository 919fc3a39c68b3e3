using System.Collections.Immutable;
using Setout.Cutting.Boards;
using Setout.Cutting.Sheets;

namespace Setout.Cutting.Runs;

/// <summary>Lets no layout out that putting its cuts in order has broken: each is judged by the checker again, and any violation is thrown as our own bug.</summary>
/// <param name="inner">The planner whose layouts are checked.</param>
public sealed class CheckedRunPlanner(IRunPlanner inner) : IRunPlanner
{
    /// <inheritdoc/>
    /// <exception cref="BrokenLayoutException">A layout given back breaks a rule.</exception>
    public OrderedRuns Plan(ImmutableArray<RunMaterial> materials, SawLimits limits, CancellationToken cancel = default)
    {
        OrderedRuns given = inner.Plan(materials, limits, cancel);
        ImmutableArray<Violation> broken =
        [
            .. given.Sheets.OrderBy(s => s.Key).SelectMany(s => SheetChecker.Check(((RunSheets)materials[s.Key]).Instance, s.Value)),
            .. given.Boards.OrderBy(b => b.Key).SelectMany(b => BoardChecker.Check(((RunBoards)materials[b.Key]).Instance, b.Value)),
        ];
        return broken.IsEmpty ? given : throw new BrokenLayoutException(broken);
    }
}
