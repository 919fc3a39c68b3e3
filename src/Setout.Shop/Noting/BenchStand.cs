using System.Collections.Immutable;
using Setout.Core.Fit.Mending;
using Setout.Core.SettingOut;
using Setout.Core.SettingOut.Finishes;
using Setout.Core.Workings;
using Setout.Shop.Plans;

namespace Setout.Shop.Noting;

/// <summary>A stage of the work that is marked as it goes on.</summary>
public enum WorkStage
{
    /// <summary>Bought.</summary>
    Buy,

    /// <summary>Cut.</summary>
    BreakDown,

    /// <summary>Put together.</summary>
    Assemble,

    /// <summary>In its place, and found to go.</summary>
    Fit,

    /// <summary>Finished, all coats.</summary>
    Finish,
}

/// <summary>Parts, or things to buy, that come together at a stage.</summary>
/// <param name="Name">For people: the opening they go into, or what they are.</param>
/// <param name="All">How many there are.</param>
/// <param name="Settled">How many of them are done with at this stage.</param>
/// <param name="Due">How many can be done now.</param>
/// <param name="Held">How many wait for <paramref name="Until"/>, or to be cut or built first.</param>
/// <param name="Until">The reading they wait for, the one that releases most; null for none.</param>
/// <param name="Keys">The keys of those that are due, as a mark names them.</param>
public sealed record WorkBatch(string Name, int All, int Settled, int Due, int Held, QuantityKey? Until, ImmutableArray<string> Keys)
{
    /// <summary>The readings that parts of it waited for, that are taken, and that something not yet cut still goes by; to be read again. Empty at all stages but the saw.</summary>
    public ImmutableArray<QuantityKey> Read { get; init; } = [];
}

/// <summary>How a stage stands.</summary>
/// <param name="Stage">Which.</param>
/// <param name="Batches">In the order of the piece.</param>
/// <param name="Upset">What is upset there; in all, at the stage where it shows.</param>
public sealed record StageStand(WorkStage Stage, ImmutableArray<WorkBatch> Batches, ImmutableArray<Upset> Upset)
{
    /// <summary>How many can be done now.</summary>
    public int Due => Batches.Sum(b => b.Due);

    /// <summary>How many wait.</summary>
    public int Held => Batches.Sum(b => b.Held);

    /// <summary>How many are done with.</summary>
    public int Settled => Batches.Sum(b => b.Settled);
}

/// <summary>How far the work has come: per stage and per batch what is settled, due, held and upset.</summary>
/// <param name="Stages">In the order of the work.</param>
public sealed record BenchStand(ImmutableArray<StageStand> Stages)
{
    /// <summary>The batch of what is bought as wood.</summary>
    public const string Wood = "wood";

    /// <summary>One stage.</summary>
    public StageStand this[WorkStage stage] => Stages.First(s => s.Stage == stage);

    /// <summary>How a piece stands. Parts count each member; a batch is what one reading releases, or what needs none.</summary>
    /// <param name="set">The piece.</param>
    /// <param name="upset">What is upset and not let stand.</param>
    public static BenchStand Of(SetPiece set, ImmutableArray<Upset> upset)
    {
        if (set.IsStopped) return new([.. Enum.GetValues<WorkStage>().Select(s => new StageStand(s, [], []))]);
        var batches = set.Parts.GroupBy(p => BatchOf(set, p)).ToList();
        ImmutableArray<Upset> bought = [.. upset.Where(u => u.Kind == UpsetKind.BoughtTooLong)], fit = [.. upset.Where(u => u.Kind != UpsetKind.BoughtTooLong)];
        return new(
        [
            new(WorkStage.Buy, [.. Buying(set)], bought),
            new(WorkStage.BreakDown, [.. batches.Select(b => Of(set, b.Key, [.. b], PartState.Cut))], []),
            new(WorkStage.Assemble, [.. batches.Select(b => Of(set, b.Key, [.. b], PartState.Assembled))], []),
            new(WorkStage.Fit, [.. batches.Select(b => Of(set, b.Key, [.. b], PartState.Fitted))], fit),
            // What is planed or cut again loses its finish there: it is told at both stages.
            new(WorkStage.Finish, [.. Finishing(set)], [.. fit.Where(u => set.Parts.Any(p => u.Frozen.Contains(p.Key) && set.Facts.FinishedOf(p) > 0))]),
        ]);
    }

    private static IEnumerable<WorkBatch> Buying(SetPiece set)
    {
        string[] woods = [.. set.Parts.Select(p => p.Material).Distinct()];
        string[] things = [.. ThingsToBuy.Of(set).Select(h => h.MarkedBy).Distinct()];
        foreach ((string name, string[] all) in new[] { (Wood, woods), ("hardware", things) })
        {
            if (all.Length == 0) continue;
            ImmutableArray<string> due = [.. all.Where(a => !ThingsToBuy.IsBought(set, a))];
            yield return new(name, all.Length, all.Length - due.Length, due.Length, 0, null, due);
        }
    }

    // A batch is one finish on what is coated at one time.
    private static IEnumerable<WorkBatch> Finishing(SetPiece set)
    {
        foreach (FinishWork work in FinishWork.Of(set))
        {
            foreach (var time in work.Parts.GroupBy(p => p.Time).OrderBy(g => g.Key))
            {
                var from = time.ToDictionary(p => p.Part.Key, p => p.From, StringComparer.Ordinal);
                yield return Of($"{work.Finish.Name}, {(time.Key == FinishTime.Before ? "before it goes together" : "once it stands")}", time.Select(p => p.Part),
                    (part, number) => set.Facts.IsFinished(part.Key, number) ? Come.Settled : set.Facts.StateOf(part.Key, number) >= from[part.Key] ? Come.Due : Come.Held, null);
            }
        }
    }

    private enum Come
    {
        Later,
        Held,
        Due,
        Settled,
    }

    private static WorkBatch Of(SetPiece set, string name, ImmutableArray<Part> parts, PartState wanted)
    {
        QuantityKey? until = parts.Where(set.IsHeld).SelectMany(p => p.HeldUntil.Where(set.Worked.Values.ContainsKey)).GroupBy(k => k).MaxBy(g => g.Count())?.Key;
        return Of(name, parts, (part, number) => set.Facts.StateOf(part.Key, number) is var state && state >= wanted ? Come.Settled
            : state == wanted - 1 && !(wanted == PartState.Cut && set.IsHeld(part)) ? Come.Due
            : wanted == PartState.Cut ? Come.Held : Come.Later, until) with
        { Read = wanted == PartState.Cut ? ReadOf(set, parts) : [] };
    }

    private static ImmutableArray<QuantityKey> ReadOf(SetPiece set, ImmutableArray<Part> parts) =>
    [
        .. parts.Where(p => !p.HeldUntil.IsDefaultOrEmpty && set.Facts.CutOf(p) < p.Count).SelectMany(p => p.HeldUntil)
            .Where(k => set.Worked.Values.GetValueOrDefault(k) is { Pin.IsFact: false }).Distinct(),
    ];

    private static WorkBatch Of(string name, IEnumerable<Part> parts, Func<Part, int, Come> come, QuantityKey? until)
    {
        int all = 0, settled = 0, due = 0, held = 0;
        var keys = ImmutableArray.CreateBuilder<string>();
        foreach (Part part in parts)
        {
            int before = due;
            for (int number = 1; number <= part.Count; number++)
            {
                all++;
                switch (come(part, number))
                {
                    case Come.Settled: settled++; break;
                    case Come.Held: held++; break;
                    case Come.Due:
                        due++;
                        keys.Add(BenchFacts.Member(part.Key, number));
                        break;
                    default: break;
                }
            }
            // All of a part is said by its key.
            if (due - before == part.Count)
            {
                keys.RemoveRange(keys.Count - part.Count, part.Count);
                keys.Add(part.Key);
            }
        }
        return new(name, all, settled, due, held, held == 0 ? null : until, keys.ToImmutable());
    }

    // What waits, or waited, for one reading is a batch; the name is that of the opening.
    private static string BatchOf(SetPiece set, Part part)
    {
        if (part.HeldUntil.IsDefaultOrEmpty) return "carcase and what waits for nothing";
        QuantityKey until = part.HeldUntil.LastOrDefault(set.Worked.Values.ContainsKey, part.HeldUntil[^1]);
        return set.Openings.FirstOrDefault(o => o.Key == until.Owner)?.Name ?? until.Owner;
    }
}
