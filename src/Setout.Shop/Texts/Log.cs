using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Workings;

namespace Setout.Shop.Texts;

/// <summary>A fact in the log: appended, never edited.</summary>
/// <param name="Id">Its own, for ever: logs kept apart merge by it.</param>
/// <param name="At">When, as an ISO 8601 time with its offset.</param>
public abstract record LogEntry(string Id, string At);

/// <summary>A reading at the bench.</summary>
/// <param name="Key">The quantity.</param>
/// <param name="Values">One or more spots read at one time.</param>
/// <param name="With">The instrument; empty when not said.</param>
/// <param name="Spot">Where on the thing; empty when not said.</param>
public sealed record ReadingEntry(string Id, string At, QuantityKey Key, ImmutableArray<ExactLength> Values, string With, string Spot) : LogEntry(Id, At);

/// <summary>How far a part has come.</summary>
public enum Progress
{
    /// <summary>Cut, with the figures it was cut to.</summary>
    Cut,

    /// <summary>Assembled.</summary>
    Assembled,

    /// <summary>Fitted.</summary>
    Fitted,

    /// <summary>Bought.</summary>
    Bought,
}

/// <summary>Parts marked cut, assembled, fitted or bought.</summary>
/// <param name="Progress">Which.</param>
/// <param name="Keys">Keys of parts or hardware.</param>
/// <param name="Figures">For parts cut: the figures they were cut to.</param>
public sealed record MarkEntry(string Id, string At, Progress Progress, ImmutableArray<string> Keys, ImmutableDictionary<QuantityKey, ExactLength> Figures) : LogEntry(Id, At);

/// <summary>Takes an earlier entry back.</summary>
/// <param name="Entry">Its id.</param>
public sealed record VoidEntry(string Id, string At, string Entry) : LogEntry(Id, At);

/// <summary>Lets a finding stand, with a reason.</summary>
/// <param name="Code">The finding's code.</param>
/// <param name="Key">What it is about.</param>
/// <param name="Because">The reason.</param>
public sealed record AllowEntry(string Id, string At, string Code, string Key, string Because) : LogEntry(Id, At);

/// <summary>All facts of a piece, in the order they were appended.</summary>
/// <param name="Entries">In order.</param>
public sealed record Log(ImmutableArray<LogEntry> Entries)
{
    /// <summary>No facts.</summary>
    public static Log Empty { get; } = new([]);

    /// <summary>The entries that have not been voided; voiding entries themselves are left out.</summary>
    public IEnumerable<LogEntry> Standing
    {
        get
        {
            // A voiding can itself be voided: the last word counts.
            var voided = new HashSet<string>(StringComparer.Ordinal);
            foreach (VoidEntry entry in Entries.OfType<VoidEntry>().Reverse())
                if (!voided.Contains(entry.Id)) voided.Add(entry.Entry);
            return Entries.Where(e => e is not VoidEntry && !voided.Contains(e.Id));
        }
    }

    /// <summary>
    /// The readings that count, by the quantity they pin. A later reading supersedes an earlier one; readings at named spots stand together
    /// with those of other spots taken since the last reading without one.
    /// </summary>
    public ImmutableDictionary<QuantityKey, Pin> Pins()
    {
        var pins = ImmutableDictionary.CreateBuilder<QuantityKey, Pin>();
        foreach (IGrouping<QuantityKey, ReadingEntry> readings in Standing.OfType<ReadingEntry>().GroupBy(r => r.Key))
        {
            ReadingEntry last = readings.Last();
            var bySpot = new SortedDictionary<string, ReadingEntry>(StringComparer.Ordinal);
            foreach (ReadingEntry reading in readings)
            {
                if (reading.Spot.Length == 0) bySpot.Clear();
                bySpot[reading.Spot] = reading;
            }
            if (last.Spot.Length > 0) bySpot.Remove("");
            int spots = bySpot.Values.Sum(r => r.Values.Length);
            string words = $"{(last.With.Length > 0 ? last.With : "read")}, {last.At}{(spots > 1 ? $", {spots} spots" : "")}";
            pins[readings.Key] = new([.. bySpot.Values.SelectMany(r => r.Values)], new(OriginKind.Reading, words), last.Id);
        }
        return pins.ToImmutable();
    }
}
