using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Shop.Plans;
using Setout.Shop.Rack;
using Setout.Shop.Texts;

namespace Setout.Shop.Noting;

/// <summary>What came of taking an entry back.</summary>
/// <param name="Entry">The voiding; null where it is refused.</param>
/// <param name="With">The files of the other pieces whose logs tell of the same act and take the same voiding, where they hold it.</param>
/// <param name="Fault">Why it is refused; null where it is not.</param>
public sealed record NotedVoid(VoidEntry? Entry, ImmutableArray<string> With, Finding? Fault)
{
    private const int MostLast = 3;

    /// <summary>The entry that has to be voided first; null where none has.</summary>
    public LoggedMark? First { get; init; }

    /// <summary>The piece with the voiding in its log.</summary>
    public PieceSource? After { get; init; }

    /// <summary>The voiding of an entry. Refused where it is not there, void already, or where another entry goes on with wood that it left, or took what it would take.</summary>
    /// <param name="source">The piece beside the others of its shop.</param>
    /// <param name="entry">The id of the entry.</param>
    /// <param name="log">What the log is called.</param>
    /// <param name="id">The id of the voiding.</param>
    /// <param name="at">Its time.</param>
    public static NotedVoid Of(PieceSource source, string entry, string log, string id, string at)
    {
        LogEntry? voided = source.Log.Entries.FirstOrDefault(e => e.Id == entry);
        if (voided is null) return Refuse($"There is no entry '{TextContext.Shown(entry)}' in {log}.", Near(source, entry));
        if (voided is not VoidEntry && !source.Log.Standing.Contains(voided)) return Refuse($"{Named(source, voided)} is void already.", "");
        // A run of several pieces together is taken back in each of their logs.
        ImmutableArray<string> with = ActOf(source.Log, voided).With;
        foreach (ShopPiece piece in with.Select(n => source.Others.FirstOrDefault(o => o.Name == n)).OfType<ShopPiece>().Prepend(source.InShop))
        {
            if (piece.Log.Standing.OfType<MarkEntry>().FirstOrDefault(e => e.Id == entry) is not { } mark || source.Ledger.Built(piece, mark).FirstOrDefault(b => b.Entry.Id != entry) is not { } built) continue;
            return Stands(source, built, $"goes on with wood that {FactSentences.Named(new LoggedMark(piece, mark), source, source.SetOut())} left");
        }
        var made = new VoidEntry(id, at, entry);
        PieceSource after = source with { Log = new(source.Log.Entries.Add(made)) };
        // An entry that counts again wants the wood that it took.
        if (voided is VoidEntry && after.Ledger.TakenTwice.FirstOrDefault(t => t.By.Length > source.Ledger.TakersOf(t.Blank.Name).Count()) is { Blank: { } blank, By: var takers })
        {
            TakenByPiece other = takers.First(t => t.By.Name != source.FileName || source.Log.Standing.Contains(t.Entry));
            return Stands(source, new(other.By, other.Entry), $"has taken '{blank.Name}' since, which would be taken twice");
        }
        return new(made, with, null) { After = after };
    }

    /// <summary>What was written in one with an entry and counts still, such as all that a remedy came to: they stand side by side and have one time.</summary>
    /// <param name="log">The log.</param>
    /// <param name="entry">The id of the entry.</param>
    public static ImmutableArray<LogEntry> WrittenWith(Log log, string entry)
    {
        int at = log.Entries.IndexOf(log.Entries.FirstOrDefault(e => e.Id == entry)!), first = at, last = at;
        if (at < 0) return [];
        while (first > 0 && log.Entries[first - 1].At == log.Entries[at].At) first--;
        while (last < log.Entries.Length - 1 && log.Entries[last + 1].At == log.Entries[at].At) last++;
        HashSet<string> standing = [.. log.Standing.Concat(log.Voidings).Select(e => e.Id)];
        return [.. log.Entries[first..(last + 1)].Where(e => standing.Contains(e.Id))];
    }

    /// <summary>The voidings of all that was written in one with an entry, the last first; or why one of them is refused, and then none is made.</summary>
    /// <param name="source">The piece beside the others of its shop.</param>
    /// <param name="entry">The id of one of them.</param>
    /// <param name="log">What the log is called.</param>
    /// <param name="id">The id of the voiding of each, from 0.</param>
    /// <param name="at">Their time.</param>
    public static (ImmutableArray<NotedVoid> Made, Finding? Fault) OfAll(PieceSource source, string entry, string log, Func<int, string> id, string at)
    {
        ImmutableArray<LogEntry> all = WrittenWith(source.Log, entry);
        return all.IsEmpty ? ([], Of(source, entry, log, id(0), at).Fault) : AllOf(source, all, log, id, at);
    }

    /// <summary>Puts back what was taken back: the voidings of all voidings of an entry that count, so that it counts again, with its own figure and where it stood; or why it cannot be.</summary>
    /// <param name="source">The piece beside the others of its shop.</param>
    /// <param name="entry">The id of what was taken back.</param>
    /// <param name="log">What the log is called.</param>
    /// <param name="id">The id of the voiding of each, from 0.</param>
    /// <param name="at">Their time.</param>
    public static (ImmutableArray<NotedVoid> Made, Finding? Fault) BackOf(PieceSource source, string entry, string log, Func<int, string> id, string at)
    {
        if (source.Log.Entries.All(e => e.Id != entry)) return ([], Of(source, entry, log, id(0), at).Fault);
        VoidEntry[] all = [.. source.Log.Voidings.Where(v => v.Entry == entry)];
        return all.Length == 0 ? ([], Refuse($"{Named(source, source.Log.Entries.First(e => e.Id == entry))} counts already.", "").Fault) : AllOf(source, all, log, id, at);
    }

    private static (ImmutableArray<NotedVoid> Made, Finding? Fault) AllOf(PieceSource source, IEnumerable<LogEntry> all, string log, Func<int, string> id, string at)
    {
        var made = ImmutableArray.CreateBuilder<NotedVoid>();
        foreach (LogEntry one in all.Reverse())
        {
            var noted = Of(source, one.Id, log, id(made.Count), at);
            if (noted.Fault is { } fault) return ([], fault);
            made.Add(noted);
            source = noted.After!;
        }
        return (made.ToImmutable(), null);
    }

    /// <summary>What a voiding is about in the end, and whether it puts that back, being the voiding of a voiding of it; null where that is not in the log.</summary>
    public static (LogEntry Of, bool IsPutBack)? RootOf(Log log, VoidEntry voiding)
    {
        LogEntry? at = voiding;
        bool isPutBack = true;
        // Entries of a log that a hand wrote may name each other in a ring.
        for (int i = 0; at is VoidEntry of && i <= log.Entries.Length; i++) (at, isPutBack) = (log.Entries.FirstOrDefault(e => e.Id == of.Entry), !isPutBack);
        return at is null or VoidEntry ? null : (at, isPutBack);
    }

    /// <summary>What was done, also where a voiding of it is voided; where nothing was, an empty act.</summary>
    public static MarkEntry ActOf(Log log, LogEntry voided)
    {
        LogEntry? at = voided is VoidEntry voiding ? RootOf(log, voiding)?.Of : voided;
        return at as MarkEntry ?? new("", "", Progress.Cut, [], ImmutableDictionary<QuantityKey, ExactLength>.Empty);
    }

    private static NotedVoid Refuse(string words, string remedy) => new(null, [], new("note.void", Severity.Stop, "", words, remedy));

    private static string Named(PieceSource source, LogEntry entry) => FactSentences.Named(entry, source.Log, source.SetOut());

    // The id that was meant is likely one letter off; else it is one of those that were made last.
    private static string Near(PieceSource source, string id)
    {
        if (source.Log.Entries.IsEmpty) return "";
        SetPiece set = source.SetOut();
        if (NearestWord.Of(id, source.Log.Entries.Select(e => e.Id)) is { } guess) return $"Did you mean {FactSentences.Named(source.Log.Entries.First(e => e.Id == guess), source.Log, set)}?";
        return $"The last that stand there: {string.Join(", ", source.Log.Entries.TakeLast(MostLast).Select(e => FactSentences.Named(e, source.Log, set)))}.";
    }

    // Of whichever piece: an entry that stands in the way is voided in its own log.
    private static NotedVoid Stands(PieceSource source, LoggedMark other, string why) =>
        new(null, [], new("note.void-first", Severity.Stop, "", $"{FactSentences.Named(other, source, source.SetOut())} {why}; nothing was written.", "Void that one first.")) { First = other };
}
