using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using Setout.Commands;
using Setout.Cutting;
using Setout.Shop.Documents;
using Setout.Shop.Noting;
using Setout.Shop.Plans;
using Setout.Shop.Texts;
using Setout.Workbench.Pieces;

namespace Setout.Workbench.SetOut;

/// <summary>What a state came to against another.</summary>
/// <param name="With">What it is held against, in words; empty where there is nothing.</param>
/// <param name="Words">The difference, in one line.</param>
public sealed record CostLine(string With, string Words)
{
    /// <summary>Both in one line.</summary>
    public string Line => With.Length == 0 ? Words : $"Against {With}: {Words}.";
}

/// <summary>
/// Holds plans against a baseline: the state kept before, or one that was pinned. Both are laid out with the same small effort, so that a difference is one of the pieces and not of
/// the search.
/// </summary>
/// <param name="store">Where the states are kept.</param>
/// <param name="pieces">The pieces as they stand.</param>
/// <param name="bench">What was read and marked last.</param>
internal sealed class Comparing(IDocumentStore store, KeptPieces pieces, BenchDesk bench)
{
    // A tenth of the steps of an everyday job: an answer while one still looks at the figure.
    private const int PartOfUsual = 10, MostKnown = 200;

    // Renames and save points are changes too, and make no state.
    private const int MostBack = 32;
    private const string Step = "the step before";

    private static readonly LayoutEffort s_small = LayoutEffort.Steps(SolverOptions.Default with { WorkBudget = SolverOptions.DefaultWorkBudget / PartOfUsual });

    private readonly Lock _lock = new();
    private readonly Dictionary<string, PlanTally> _known = [];

    /// <summary>The plan of a source with small effort, and what it comes to. In the background; given up when it is cancelled.</summary>
    public Task<Plan> SmallPlanAsync(PieceSource source, CancellationToken cancel) => Task.Run(() =>
    {
        Plan plan = Planner.Maker.Make(source, s_small, null, cancel);
        Know(source.Hash, PlanTally.Of(plan));
        return plan;
    }, cancel);

    /// <summary>A piece that is kept, against the state before it or a pinned one.</summary>
    /// <param name="file">The piece.</param>
    /// <param name="pinned">The number of a state; null for that before.</param>
    /// <param name="cancel">Gives up.</param>
    public async Task<CostLine> OfKeptAsync(PieceFile file, long? pinned, CancellationToken cancel)
    {
        if (file.Source is not { } source) return new("", "Its text has mistakes; what it comes to is told when they are mended.");
        if (pinned is null && bench.FactsSinceTheLastEdit(file, source.Log) is { IsEmpty: false } facts)
        {
            // What is cut leaves the layouts, and what is bought the buying list: held against before, a mark would look like a saving.
            if (!facts.All(f => IsOfReading(f, source.Log))) return new("", "What was marked, or done otherwise at the bench, is no step that costs or saves; what is still to be bought stands under Buy.");
            return new(facts.Any(f => f is VoidEntry) ? "before that was taken back or put back" : "before it was read", await AgainstAsync(source, Without(source, facts), cancel));
        }
        if (Baseline(file, pinned, CameFrom(file.Document)) is not (var before, { } words)) return new("", "Nothing was changed yet: what a step costs is told here.");
        return new(words, await AgainstAsync(source, before, cancel));
    }

    /// <summary>A trial, against what is kept or a pinned state.</summary>
    /// <param name="trial">The piece as it would be.</param>
    /// <param name="pinned">The number of a state; null for what is kept.</param>
    /// <param name="cancel">Gives up.</param>
    public async Task<CostLine> OfTrialAsync(OpenPiece trial, long? pinned, CancellationToken cancel)
    {
        if (pieces.Read(trial.Name) is not { } file || Baseline(file, pinned, (file.Document.Line.Head.Number, "what is kept")) is not (var before, { } words)) return new("", "There is nothing to compare this with.");
        return new(words, await AgainstAsync(trial.Source, before, cancel));
    }

    private static bool IsOfReading(LogEntry fact, Log log) => fact is ReadingEntry || (fact is VoidEntry voiding && NotedVoid.RootOf(log, voiding) is ({ } of, _) && of is ReadingEntry);

    // The hash tells it from what is kept.
    private static PieceSource Without(PieceSource source, ImmutableArray<LogEntry> facts) => source with
    {
        Log = new(source.Log.Entries[..^facts.Length]),
        Hash = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes($"{source.Hash} without {string.Join(' ', facts.Select(f => f.Id))}")))[..8],
    };

    private async Task<string> AgainstAsync(PieceSource source, PieceSource? before, CancellationToken cancel)
    {
        if (before is null) return "that had mistakes in its text";
        PlanTally now = await TallyAsync(source, cancel), then = await TallyAsync(before, cancel);
        return now.Against(then);
    }

    // Where one stood before the last change of the text. After a step that was taken back, or a state that was gone to, that is not what the state was once made of.
    private (long State, string Words)? CameFrom(Document now)
    {
        Document at = now;
        for (int i = 0; i < MostBack && at.Revision > 1 && store.Find(now.Id, at.Revision - 1) is { } before; i++)
        {
            DocumentState from = before.Line.Head, to = at.Line.Head;
            if (from.Number != to.Number) return (from.Number, to.Parent == from.Number ? Step : from.Parent == to.Number ? "before that was taken back" : "before that was gone back to");
            at = before;
        }
        return now.Line.Head.Parent is { } parent ? (parent, Step) : null;
    }

    private (PieceSource? Source, string Words)? Baseline(PieceFile file, long? pinned, (long State, string Words)? usual)
    {
        Document document = file.Document;
        string Pinned(long number) => $"“{store.History(document.Id).FirstOrDefault(h => h.State.Number == number)?.State.Step ?? "a state"}”";
        foreach ((long? state, string? words) in new[] { (pinned, null), (usual?.State, usual?.Words) })
        {
            if (state is not { } number || store.TextOf(document.Id, number) is not { } text) continue;
            return (number == document.Line.Head.Number ? file.Source : pieces.With(file.Name, text)?.Source, words ?? Pinned(number));
        }
        return null;
    }

    private async Task<PlanTally> TallyAsync(PieceSource source, CancellationToken cancel)
    {
        lock (_lock)
            if (_known.TryGetValue(source.Hash, out PlanTally? known)) return known;
        return PlanTally.Of(await SmallPlanAsync(source, cancel));
    }

    private void Know(string hash, PlanTally tally)
    {
        lock (_lock)
        {
            if (_known.Count >= MostKnown) _known.Clear();
            _known[hash] = tally;
        }
    }
}
