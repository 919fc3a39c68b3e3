// Over 200 lines: the entries of a log with what they come to when they are read together.
using System.Collections.Immutable;
using System.Globalization;
using Setout.Core.Measures;
using Setout.Core.SettingOut;
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

    /// <summary>Finished: oiled, varnished, painted, all its coats.</summary>
    Finished,
}

/// <summary>Parts marked cut, assembled, fitted or finished, or things bought.</summary>
/// <param name="Progress">Which.</param>
/// <param name="Keys">Keys of parts or hardware.</param>
/// <param name="Figures">For parts cut: the figures they were cut to.</param>
public sealed record MarkEntry(string Id, string At, Progress Progress, ImmutableArray<string> Keys, ImmutableDictionary<QuantityKey, ExactLength> Figures) : LogEntry(Id, At)
{
    /// <summary>What was picked for them, such as the length of a slide: frozen from here on.</summary>
    public ImmutableDictionary<QuantityKey, ExactLength> Chosen { get; init; } = ImmutableDictionary<QuantityKey, ExactLength>.Empty;

    /// <summary>For parts cut: the sheet they came from, such as <c>boxes.sheet-1</c>; empty when not said.</summary>
    public string From { get; init; } = "";

    /// <summary>For a run of a printed plan: its number, from 1; null for parts that were cut some other way.</summary>
    public int? Run { get; init; }

    /// <summary>Eight hexadecimal digits that tell the runs of that plan from those of any other; empty where there is no run.</summary>
    public string Plan { get; init; } = "";

    /// <summary>For a run of several pieces together: the names of the other piece files, whose logs tell of it under the same id; empty for a run of this piece alone.</summary>
    public ImmutableArray<string> With { get; init; } = [];

    /// <summary>For what is cut: the wood that is no longer there as it was; empty when not said.</summary>
    public ImmutableArray<TakenWood> Took { get; init; } = [];

    /// <summary>For what is cut: what is left of that wood beside the parts and what is thrown away.</summary>
    public ImmutableArray<LeftWood> Left { get; init; } = [];

    /// <summary>True where wood was taken or left. Of a run of several pieces one log may tell what was taken and another what was left.</summary>
    public bool TellsOfWood => !Took.IsEmpty || !Left.IsEmpty;
}

/// <summary>Takes an earlier entry back.</summary>
/// <param name="Entry">Its id.</param>
public sealed record VoidEntry(string Id, string At, string Entry) : LogEntry(Id, At);

/// <summary>Lets a finding stand, with a reason.</summary>
/// <param name="Code">The finding's code.</param>
/// <param name="Key">What it is about.</param>
/// <param name="Because">The reason.</param>
public sealed record AllowEntry(string Id, string At, string Code, string Key, string Because) : LogEntry(Id, At)
{
    /// <summary>What the finding said then; empty where it is not kept. Where it says something else it is told again.</summary>
    public string Said { get; init; } = "";

    /// <summary>By how much something was out then, above zero; null where that cannot be measured. Only where it is more out than that it is told again.</summary>
    public ExactLength? Off { get; init; }
}

/// <summary>All facts of a piece, in the order they were appended.</summary>
/// <param name="Entries">In order.</param>
public sealed record Log(ImmutableArray<LogEntry> Entries)
{
    /// <summary>No facts.</summary>
    public static Log Empty { get; } = new([]);

    /// <summary>
    /// The entries that have not been voided, in order; voiding entries themselves are left out. A voiding can itself be voided, and then
    /// counts no more. It does not matter in which order entry and voiding stand, since logs kept apart may be merged.
    /// </summary>
    public IEnumerable<LogEntry> Standing
    {
        get
        {
            HashSet<string> voided = Voided();
            return Entries.Where(e => e is not VoidEntry && !voided.Contains(e.Id));
        }
    }

    /// <summary>The voidings that count: those that no voiding that counts takes back.</summary>
    public IEnumerable<VoidEntry> Voidings
    {
        get
        {
            HashSet<string> voided = Voided();
            return Entries.OfType<VoidEntry>().Where(e => !voided.Contains(e.Id));
        }
    }

    // Whether a voiding stands is settled once every voiding of it is; the chain is followed from its last link.
    private HashSet<string> Voided()
    {
        var open = new Dictionary<string, int>(StringComparer.Ordinal);
        var voidings = new Dictionary<string, VoidEntry>(StringComparer.Ordinal);
        foreach (VoidEntry entry in Entries.OfType<VoidEntry>())
        {
            voidings[entry.Id] = entry;
            open[entry.Entry] = open.GetValueOrDefault(entry.Entry) + 1;
        }
        var settled = new Queue<VoidEntry>(voidings.Values.Where(v => !open.ContainsKey(v.Id)));
        var voided = new HashSet<string>(StringComparer.Ordinal);
        while (settled.TryDequeue(out VoidEntry? entry))
        {
            if (!voided.Contains(entry.Id)) voided.Add(entry.Entry);
            if (--open[entry.Entry] == 0 && voidings.TryGetValue(entry.Entry, out VoidEntry? next)) settled.Enqueue(next);
        }
        return voided;
    }

    /// <summary>
    /// Both logs as one: entries with the same id count once, and those of the other log stand where their time puts them. Merging the
    /// same log twice changes nothing.
    /// </summary>
    /// <param name="other">Whose entries are added; where both hold an id, the entry of this log stays.</param>
    public Log Union(Log other)
    {
        var ids = new HashSet<string>(Entries.Select(e => e.Id), StringComparer.Ordinal);
        LogEntry[] added = [.. other.Entries.Where(e => ids.Add(e.Id))];
        if (added.Length == 0) return this;
        var merged = ImmutableArray.CreateBuilder<LogEntry>(Entries.Length + added.Length);
        int next = 0;
        foreach (LogEntry entry in Entries)
        {
            while (next < added.Length && IsBefore(added[next], entry)) merged.Add(added[next++]);
            merged.Add(entry);
        }
        merged.AddRange(added.AsSpan(next));
        return new(merged.ToImmutable());
    }

    // At one time the id decides, so that both ways of merging give one order.
    private static bool IsBefore(LogEntry a, LogEntry b)
    {
        int times = TimeOf(a).CompareTo(TimeOf(b));
        return times < 0 || (times == 0 && string.CompareOrdinal(a.Id, b.Id) < 0);
    }

    private static DateTimeOffset TimeOf(LogEntry entry) =>
        DateTimeOffset.TryParse(entry.At, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out DateTimeOffset time) ? time : DateTimeOffset.MinValue;

    /// <summary>What the facts that stand come to: readings, what is cut and from which sheet, what is together, what is bought.</summary>
    public BenchFacts Facts()
    {
        LogEntry[] standing = [.. Standing];
        var pins = ImmutableDictionary.CreateBuilder<QuantityKey, Pin>();
        foreach (var readings in standing.Index().Where(e => e.Item is ReadingEntry).GroupBy(e => ((ReadingEntry)e.Item).Key))
            pins[readings.Key] = PinOf([.. readings.Select(r => (ReadingEntry)r.Item)]) with { Position = readings.Last().Index };
        ForgetOlderLots(standing, pins);
        var states = ImmutableDictionary.CreateBuilder<string, PartState>(StringComparer.Ordinal);
        var sheets = ImmutableDictionary.CreateBuilder<string, string>(StringComparer.Ordinal);
        var bought = ImmutableHashSet.CreateBuilder<string>(StringComparer.Ordinal);
        var finished = ImmutableDictionary.CreateBuilder<string, int>(StringComparer.Ordinal);
        var anew = ImmutableDictionary.CreateBuilder<string, int>(StringComparer.Ordinal);
        for (int at = 0; at < standing.Length; at++)
        {
            if (standing[at] is not MarkEntry mark) continue;
            // What is cut is a fact: the figure it was cut to stands, whatever the plan says since. A reading of the part itself says more.
            string words = $"{mark.Progress.ToString().ToLowerInvariant()}, {mark.At}";
            Pin Fact(ExactLength value) => new([value], new(OriginKind.Reading, words), mark.Id) { IsFact = true };
            foreach ((QuantityKey size, ExactLength value) in mark.Figures)
            {
                bool isAnew = mark.Progress == Progress.Cut && mark.Keys.Any(k => k.StartsWith(PartOf(size), StringComparison.Ordinal) && IsCutAlready(k, states));
                pins[size.ToCut] = Fact(value);
                // Cut anew: what was read of the old one is no more. A first mark may well come after the reading of what it marks.
                if (isAnew && pins.ContainsKey(size.AsCut) && !standing.Skip(at).OfType<ReadingEntry>().Any(r => r.Key == size.AsCut)) pins.Remove(size.AsCut);
            }
            foreach ((QuantityKey choice, ExactLength value) in mark.Chosen) pins[choice] = Fact(value);
            foreach (string key in mark.Keys)
            {
                if (mark.Progress == Progress.Cut && IsCutAlready(key, states)) anew[key] = at;
                if (mark.Progress == Progress.Bought) bought.Add(key);
                else if (mark.Progress == Progress.Finished) finished[key] = at;
                else if (StateOf(mark.Progress) is var state && state > states.GetValueOrDefault(key)) states[key] = state;
                if (mark.From.Length > 0) sheets[key] = mark.From;
            }
        }
        return new(pins.ToImmutable(), sheets.ToImmutable(), states.ToImmutable(), bought.ToImmutable())
        {
            FinishedAt = finished.ToImmutable(),
            AnewAt = anew.ToImmutable(),
        };
    }

    /// <summary>The readings and figures that count, by the quantity they pin.</summary>
    public IReadOnlyDictionary<QuantityKey, Pin> Pins() => Facts().Pins;

    // A later reading supersedes an earlier one; readings at named spots stand together with those of other spots taken since the last
    // reading without one.
    private static Pin PinOf(ReadingEntry[] readings)
    {
        ReadingEntry last = readings[^1];
        var bySpot = new SortedDictionary<string, ReadingEntry>(StringComparer.Ordinal);
        bool isReread = false;
        foreach (ReadingEntry reading in readings)
        {
            isReread |= bySpot.ContainsKey(reading.Spot) || (reading.Spot.Length == 0 && bySpot.Count > 0);
            if (reading.Spot.Length == 0) bySpot.Clear();
            bySpot[reading.Spot] = reading;
        }
        if (last.Spot.Length > 0) bySpot.Remove("");
        int spots = bySpot.Values.Sum(r => r.Values.Length);
        string words = $"{(last.With.Length > 0 ? last.With : "read")}, {last.At}{(spots > 1 ? $", {spots} spots" : "")}";
        return new([.. bySpot.Values.SelectMany(r => r.Values)], new(OriginKind.Reading, words), last.Id)
        {
            IsReread = isReread,
            With = [.. bySpot.Values.SelectMany(r => r.Values.Select(_ => r.With))],
            Spots = [.. bySpot.Values.SelectMany(r => r.Values.Select(_ => r.Spot))],
        };
    }

    // Sheets read later than the lot they belong to say more about it: its own reading is superseded by their mean.
    private static void ForgetOlderLots(LogEntry[] standing, ImmutableDictionary<QuantityKey, Pin>.Builder pins)
    {
        for (int i = 0; i < standing.Length; i++)
        {
            if (standing[i] is not ReadingEntry { Key.Text: var text } || text.IndexOf(BenchFacts.SheetWord, StringComparison.Ordinal) is not (> 0 and int at)) continue;
            QuantityKey lot = QuantityKey.Of(text[..at], "thickness");
            if (!standing.Skip(i).OfType<ReadingEntry>().Any(r => r.Key == lot)) pins.Remove(lot);
        }
    }

    // A size is that of its owner: L1.end.length of L1.end, F.post.length of F.post, A1.length of A1.
    private static string PartOf(QuantityKey size) => size.Text[..Math.Max(0, size.Text.LastIndexOf('.'))];

    // The other member of a part is not the same cut again.
    private static bool IsCutAlready(string key, ImmutableDictionary<string, PartState>.Builder states)
    {
        string part = key.Split('#')[0];
        return states.ContainsKey(key) || (key == part ? states.Keys.Any(s => s.StartsWith(part + "#", StringComparison.Ordinal)) : states.ContainsKey(part));
    }

    private static PartState StateOf(Progress progress) => progress switch
    {
        Progress.Assembled => PartState.Assembled,
        Progress.Fitted => PartState.Fitted,
        _ => PartState.Cut,
    };
}
