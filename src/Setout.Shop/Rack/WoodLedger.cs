using System.Collections.Immutable;
using Setout.Shop.Texts;

namespace Setout.Shop.Rack;

/// <summary>
/// What a log says of wood: the blanks that are in hand, and what was taken from the rack. It goes by the entries that stand and by names alone, never by their order, so
/// that logs kept apart give the same ledger whichever is merged into the other. Of the same run of the same plan one entry counts.
/// </summary>
/// <param name="Blanks">What entries left and none took, in the order of the log.</param>
/// <param name="Taken">What was taken from lines of the rack, in the shop file or in the piece file, each with the entry that says so.</param>
/// <param name="Twice">Entries that mark a run which another entry has marked already: their wood does not count.</param>
/// <param name="Unknown">Blanks that were taken and that no entry left.</param>
public sealed record WoodLedger(
    ImmutableArray<LeftWood> Blanks, ImmutableArray<(TakenWood Wood, MarkEntry Entry)> Taken, ImmutableArray<MarkEntry> Twice, ImmutableArray<(TakenWood Wood, MarkEntry Entry)> Unknown)
{
    /// <summary>Of a log.</summary>
    public static WoodLedger Of(Log log)
    {
        var counted = new List<MarkEntry>();
        var twice = ImmutableArray.CreateBuilder<MarkEntry>();
        var runs = new HashSet<(string, int)>();
        foreach (MarkEntry entry in log.Standing.OfType<MarkEntry>().Where(e => !e.Took.IsEmpty))
        {
            if (entry.Run is { } run && !runs.Add((entry.Plan, run))) twice.Add(entry);
            else counted.Add(entry);
        }
        (TakenWood Wood, MarkEntry Entry)[] all = [.. counted.SelectMany(e => e.Took.Select(w => (w, e)))];
        // A blank may stand in the rack under its own name: whoever takes it there takes it here.
        HashSet<string> gone = [.. all.Where(t => t.Wood.Source == WoodSource.Blank || (t.Wood.Source != WoodSource.Bought && t.Wood.Name.Length > 0)).Select(t => t.Wood.Name)];
        LeftWood[] left = [.. counted.SelectMany(e => e.Left).DistinctBy(l => l.Name)];
        HashSet<string> names = [.. left.Select(l => l.Name)];
        return new(
            [.. left.Where(l => !gone.Contains(l.Name))],
            [.. all.Where(t => t.Wood.Source is WoodSource.Rack or WoodSource.Piece)],
            twice.ToImmutable(),
            [.. all.Where(t => t.Wood.Source == WoodSource.Blank && !names.Contains(t.Wood.Name))]);
    }

    /// <summary>The entry that marks a run of a plan; null when none that stands does.</summary>
    /// <param name="log">The log.</param>
    /// <param name="plan">The plan's figure of inputs.</param>
    /// <param name="run">The number, from 1.</param>
    public static MarkEntry? EntryOf(Log log, string plan, int run) => log.Standing.OfType<MarkEntry>().FirstOrDefault(e => e.Plan == plan && e.Run == run);

    /// <summary>Standing entries that took what an entry left: they have to be voided before it.</summary>
    public static ImmutableArray<MarkEntry> Built(Log log, MarkEntry on)
    {
        HashSet<string> names = [.. on.Left.Select(l => l.Name)];
        bool isAlone = on.Run is null || log.Standing.OfType<MarkEntry>().Count(e => e.Plan == on.Plan && e.Run == on.Run) < 2;
        return isAlone ? [.. log.Standing.OfType<MarkEntry>().Where(e => e.Id != on.Id && e.Took.Any(t => t.Source != WoodSource.Bought && names.Contains(t.Name)))] : [];
    }
}
