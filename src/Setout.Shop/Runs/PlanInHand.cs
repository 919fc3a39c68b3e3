using System.Collections.Immutable;
using System.Globalization;
using Setout.Shop.Plans;
using Setout.Shop.Rack;
using Setout.Shop.Texts;

namespace Setout.Shop.Runs;

/// <summary>What was known of one piece when a plan was made.</summary>
/// <param name="Log">Its log as it stood.</param>
/// <param name="Others">The other pieces of the shop as they stood.</param>
public sealed record KnownThen(Log Log, ImmutableArray<ShopPiece> Others);

/// <summary>
/// The plan that a piece, or several together, are being cut by. It is not kept anywhere: the same texts give the same plan, so it is made again from the logs as they stood before its first run
/// was marked. Where that gives another one, as after a change of the piece file, there is none in hand any more.
/// </summary>
/// <param name="Plan">What its runs are told by in the log: see <see cref="SawnPlan.Id"/>.</param>
/// <param name="Pieces">What was known of each piece, in the order of the pieces.</param>
public sealed record PlanInHand(string Plan, ImmutableArray<KnownThen> Pieces)
{
    /// <summary>When its first run was marked: it is made again with the shop file as that stood then.</summary>
    public DateTimeOffset At { get; private init; }

    /// <summary>Of a piece, or of several together; null where no run is marked, or the last one was cut with others than these.</summary>
    public static PlanInHand? Of(PieceSource source)
    {
        ImmutableArray<PieceSource> pieces = source.Together is { } together ? [.. together.Members.Select(m => m.Source)] : [source];
        (PieceSource Piece, MarkEntry Entry)[] marks = [.. pieces.SelectMany(p => p.Log.Standing.OfType<MarkEntry>().Where(e => e.Run is not null).Select(e => (p, e)))];
        if (marks.Length == 0) return null;
        (PieceSource piece, MarkEntry last) = marks.OrderBy(m => Time(m.Entry)).Last();
        HashSet<string> files = [.. pieces.Where(p => p != piece).Select(p => p.FileName)];
        if (!files.SetEquals(last.With)) return null;
        // The first that was ever marked of it, though it may be void by now.
        DateTimeOffset then = pieces.SelectMany(p => p.Log.Entries.OfType<MarkEntry>()).Where(e => e.Plan == last.Plan && e.Run is not null).Min(Time);
        return new(last.Plan, [.. pieces.Select(p => Then(p, last.Plan, then))]) { At = then };
    }

    private static KnownThen Then(PieceSource piece, string plan, DateTimeOffset then)
    {
        ImmutableArray<LogEntry> entries = piece.Log.Entries;
        // In its own log the order tells more than the clock.
        int first = entries.IndexOf(entries.OfType<MarkEntry>().FirstOrDefault(e => e.Plan == plan && e.Run is not null)!);
        return new(new(first >= 0 ? entries[..first] : [.. entries.Where(e => Time(e) < then)]),
            [.. piece.Others.Select(o => o with { Log = new([.. o.Log.Entries.Where(e => Time(e) < then)]) }).Where(o => o.Log.Standing.OfType<MarkEntry>().Any(e => !e.Took.IsEmpty))]);
    }

    private static DateTimeOffset Time(LogEntry entry) =>
        DateTimeOffset.TryParse(entry.At, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out DateTimeOffset time) ? time : DateTimeOffset.MinValue;
}
