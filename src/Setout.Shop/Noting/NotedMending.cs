using System.Collections.Immutable;
using System.Globalization;
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
    private const string FieldStart = "measures-";

    /// <summary>The field that a reading of a remedy is typed into, as refusals of it name it.</summary>
    /// <param name="reading">Which of its readings, from 0.</param>
    public static string Field(int reading) => FieldStart + reading.ToString(CultureInfo.InvariantCulture);

    /// <summary>What such a field is called; null for another.</summary>
    /// <param name="field">By its name.</param>
    public static string? Words(string field) => field.StartsWith(FieldStart, StringComparison.Ordinal) ? "what it measures then" : null;

    /// <summary>What its acts come to, one after another, each on the piece as those before left it; or why they are none: all that is wrong with what was typed.</summary>
    /// <param name="source">The piece.</param>
    /// <param name="remedy">The remedy, with at least one act.</param>
    /// <param name="readings">What was measured then, in words, for each act that is a reading, in order: a figure that nobody measured is no reading.</param>
    /// <param name="id">The id of the entry of an act, from 0.</param>
    /// <param name="at">Their time.</param>
    public static (ImmutableArray<LogEntry> Entries, ImmutableArray<Finding> Faults) Of(PieceSource source, Remedy remedy, ImmutableArray<string> readings, Func<int, string> id, string at)
    {
        string Reading(int of) => of < readings.Length ? readings[of] : "";
        SetPiece before = source.SetOut();
        ImmutableArray<Finding> slips = [.. remedy.Acts.OfType<ReadAnew>().Select((a, i) => Slip(before, a, Reading(i)) is { } slip ? slip with { Field = Field(i) } : null).OfType<Finding>()];
        if (!slips.IsEmpty) return ([], slips);
        var entries = ImmutableArray.CreateBuilder<LogEntry>();
        int read = 0;
        foreach (MendingAct act in remedy.Acts)
        {
            (LogEntry? entry, Finding? fault) = Entry(source, source.SetOut(), act, act is ReadAnew ? Reading(read) : "", id(entries.Count), at);
            if (entry is null) return ([], [act is ReadAnew && fault!.Field.Length > 0 ? fault with { Field = Field(read) } : fault!]);
            if (act is ReadAnew) read++;
            entries.Add(entry);
            source = source with { Log = new(source.Log.Entries.Add(entry)) };
        }
        return (entries.ToImmutable(), []);
    }

    private static Finding? Slip(SetPiece set, ReadAnew anew, string reading) => string.IsNullOrWhiteSpace(reading)
        ? new("note.value", Severity.Stop, "", $"Nothing is typed for what {FactSentences.NameOf(set, anew.Key)} measures now.", "Measure it and type that; nothing was written.") : NotedReading.Values(reading, set.Piece.Shown).Fault;

    private static (LogEntry? Entry, Finding? Fault) Entry(PieceSource source, SetPiece set, MendingAct act, string reading, string id, string at)
    {
        switch (act)
        {
            case ReadAnew anew:
                // It was asked for with what to expect before the eyes: a doubt would be about the old thing.
                Noted<ReadingEntry> noted = NotedReading.Of(set, source.Shop.Accuracy, new(anew.Key.Text, reading) { IsForced = true }, id, at);
                return (noted.Entry, noted.Fault);
            case CutTo cut:
                Noted<MarkEntry> mark = NotedMark.Of(set, new(Progress.Cut, [cut.Part]) { IsAgain = cut.IsAgain, To = [.. cut.Figures.Select(f => $"{f.Size}={NamedLength.Exactly(f.Figure)}")] }, id, at);
                return (mark.Entry, mark.Fault);
            case BoughtAnew bought:
                Noted<MarkEntry> other = NotedMark.Of(set, new(Progress.Bought, [bought.Owner]) { IsAgain = true }, id, at);
                return (other.Entry, other.Fault);
            case TakeBack back:
                var taken = NotedVoid.Of(source, back.Entry, "the log", id, at);
                return (taken.Entry, taken.Fault);
            default:
                throw new ArgumentOutOfRangeException(nameof(act), act.GetType().Name, "No such act.");
        }
    }
}
