using System.Collections.Immutable;
using Setout.Core.Fit.Mending;
using Setout.Core.Measures.Text;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Shop.Plans;
using Setout.Shop.Texts;

namespace Setout.Shop.Noting;

/// <summary>Makes entries out of a remedy that was carried out. Pure.</summary>
public static class NotedMending
{
    /// <summary>What its acts come to, one after another, each on the piece as those before left it; or why one of them is none.</summary>
    /// <param name="source">The piece.</param>
    /// <param name="remedy">The remedy, with at least one act.</param>
    /// <param name="readings">What was measured then, in words, for each act that is a reading, in order: a figure that nobody measured is no reading.</param>
    /// <param name="id">The id of the entry of an act, from 0.</param>
    /// <param name="at">Their time.</param>
    public static (ImmutableArray<LogEntry> Entries, Finding? Fault) Of(PieceSource source, Remedy remedy, ImmutableArray<string> readings, Func<int, string> id, string at)
    {
        var entries = ImmutableArray.CreateBuilder<LogEntry>();
        int read = 0;
        foreach (MendingAct act in remedy.Acts)
        {
            SetPiece set = source.SetOut();
            (LogEntry? entry, Finding? fault) = Entry(source, set, act, act is ReadAnew && read < readings.Length ? readings[read] : "", id(entries.Count), at);
            if (act is ReadAnew) read++;
            if (entry is null) return ([], fault);
            entries.Add(entry);
            source = source with { Log = new(source.Log.Entries.Add(entry)) };
        }
        return (entries.ToImmutable(), null);
    }

    private static (LogEntry? Entry, Finding? Fault) Entry(PieceSource source, SetPiece set, MendingAct act, string reading, string id, string at)
    {
        switch (act)
        {
            case ReadAnew anew when string.IsNullOrWhiteSpace(reading):
                return (null, new("note.value", Severity.Stop, "", $"Nothing is typed for what {FactSentences.NameOf(set, anew.Key)} measures now.", "Measure it and type that; nothing was written.") { Field = NotedReading.ValueField });
            case ReadAnew anew:
                // It was asked for with what to expect before the eyes: a doubt would be about the old thing.
                Noted<ReadingEntry> noted = NotedReading.Of(set, source.Shop.Accuracy, new(anew.Key.Text, reading) { IsForced = true }, id, at, NoteWords.Page);
                return (noted.Entry, noted.Fault);
            case CutTo cut:
                Noted<MarkEntry> mark = NotedMark.Of(set, new(Progress.Cut, [cut.Part]) { IsAgain = cut.IsAgain, To = [.. cut.Figures.Select(f => $"{f.Size}={NamedLength.Exactly(f.Figure)}")] }, id, at, NoteWords.Page);
                return (mark.Entry, mark.Fault);
            case BoughtAnew bought:
                Noted<MarkEntry> other = NotedMark.Of(set, new(Progress.Bought, [bought.Owner]) { IsAgain = true }, id, at, NoteWords.Page);
                return (other.Entry, other.Fault);
            case TakeBack back:
                var taken = NotedVoid.Of(source, back.Entry, "the log", id, at);
                return (taken.Entry, taken.Fault);
            default:
                throw new ArgumentOutOfRangeException(nameof(act), act.GetType().Name, "No such act.");
        }
    }
}
