using Setout.Core.Measures;

namespace Setout.Cutting;

/// <summary>What a search is entitled to say about its layout.</summary>
public enum OutcomeStatus
{
    /// <summary>
    /// Every part is laid and no layout costs less: the recomputed cost equals the proven bound. Where no money is at
    /// stake (every stock used is free) the count of sheets or boards equals its bound as well.
    /// </summary>
    Proven,

    /// <summary>Every part is laid and the checker agrees; a cheaper layout may exist.</summary>
    Feasible,

    /// <summary>No layout of all parts exists: the reasons name each part that fits no stock, or the stock that is too little. What can be laid is laid.</summary>
    Infeasible,

    /// <summary>
    /// The search ended early: it was cancelled, or stock in hand ran out without a proof that it must. The best layout so
    /// far is given; parts may be left out, and the reasons say so.
    /// </summary>
    Stopped,
}

/// <summary>Why parts are left out of a layout, or why a search stopped.</summary>
public enum ReasonKind
{
    /// <summary>The part is larger than every stock, whichever way it lies.</summary>
    PartTooLarge,

    /// <summary>The part would fit some stock only if it were turned, which its grain forbids.</summary>
    PartNeedsTurning,

    /// <summary>The part belongs to a figure group that fits no stock when its parts are cut beside each other.</summary>
    FigureTooLarge,

    /// <summary>The part would fit some stock, but takes more divisions there than are allowed.</summary>
    StagesTooFew,

    /// <summary>All stock together is proven too little.</summary>
    StockTooLittle,

    /// <summary>The stock ran out in this search; there is no proof that it must.</summary>
    StockRanOut,

    /// <summary>The caller cancelled.</summary>
    Cancelled,
}

/// <summary>One reason as data: its kind, the id of the part or stock it is about (empty when it is about the whole), and plain words with figures.</summary>
/// <param name="Kind">The kind.</param>
/// <param name="Subject">The id of the part or stock, or empty.</param>
/// <param name="Words">The reason in words, with figures in millimetres.</param>
public sealed record CuttingReason(ReasonKind Kind, string Subject, string Words);

/// <summary>So many of a part.</summary>
/// <param name="PartId">The part.</param>
/// <param name="Count">One or more.</param>
public sealed record PartCount(string PartId, int Count);

/// <summary>One broken rule of a layout, found by a checker. A violation in a solver's own layout is a bug of ours.</summary>
/// <param name="Rule">The name of the rule.</param>
/// <param name="Place">Which sheet or board, counted from 1, or 0 for the whole layout.</param>
/// <param name="Words">What is wrong, with the figures.</param>
public sealed record Violation(string Rule, int Place, string Words);

/// <summary>Thrown when a solver's layout breaks a rule of the checker: always our bug, never the caller's.</summary>
/// <param name="violations">What was found; one or more.</param>
public sealed class BrokenLayoutException(IReadOnlyList<Violation> violations)
    : InvalidOperationException("A layout of ours breaks its own rules: "
        + string.Join("; ", violations.Take(5).Select(v => $"{v.Rule} at {v.Place}: {v.Words}")))
{
    /// <summary>What was found.</summary>
    public IReadOnlyList<Violation> Violations { get; } = violations;
}

/// <summary>How long and from what seed a solver searches. Same instance, budget and seed: the same layout, on any machine.</summary>
/// <param name="WorkBudget">Steps of search, zero or more; a step is one place tried for one part, never a time. Zero gives the first quick layout.</param>
/// <param name="Seed">Any whole number.</param>
public sealed record SolverOptions(long WorkBudget, int Seed)
{
    /// <summary>
    /// Ends the search in good order when it is signalled: what was found is the answer, as if the budget were spent. For those who
    /// would rather wait for a time than for a budget; the answer then depends on the machine. Unlike a cancel it is no reason to doubt it.
    /// </summary>
    public CancellationToken Enough { get; init; }

    /// <summary>
    /// Signalled no later than <see cref="Enough"/>: a search that does one thing after another goes on to what comes last, so that there is time for it. Others do not
    /// look at it. Never, by default.
    /// </summary>
    public CancellationToken MostlyEnough { get; init; }

    /// <summary>No budget: the search runs until it is told that it is enough, or its layout is proven.</summary>
    public static SolverOptions Until(CancellationToken enough, int seed = 1) => new(long.MaxValue, seed) { Enough = enough };

    /// <summary>The budget of an everyday job and seed 1.</summary>
    public static SolverOptions Default { get; } = new(DefaultWorkBudget, 1);

    /// <summary>Steps that keep an everyday job (150 parts) well under 0.3 s on a small machine; measured, see docs/cutting.md.</summary>
    public const long DefaultWorkBudget = 3_000_000;
}

/// <summary>How far a search has come; reported now and then, not at every step.</summary>
/// <param name="Work">Steps used.</param>
/// <param name="Budget">Steps allowed.</param>
/// <param name="BestCost">Cost of the best layout so far.</param>
/// <param name="BestCount">Its sheets or boards.</param>
public sealed record SolverProgress(long Work, long Budget, Money BestCost, int BestCount);

/// <summary>What the search did; for reports and comparisons, never for decisions.</summary>
/// <param name="Work">Steps used.</param>
/// <param name="Rounds">Rounds of improvement tried.</param>
/// <param name="Improvements">How often the best layout was replaced.</param>
/// <param name="FoundBy">Which method found the layout that is given.</param>
public sealed record SolverStatistics(long Work, long Rounds, int Improvements, string FoundBy);

/// <summary>A proven lower bound: no layout of the parts it covers costs less, and none uses fewer sheets or boards.</summary>
/// <param name="Cost">The least money any layout can cost.</param>
/// <param name="Count">The fewest sheets or boards (blanks in hand counted too) any layout can use.</param>
/// <param name="Method">Which bound gave the cost, by name.</param>
public sealed record LayoutBound(Money Cost, int Count, string Method);
