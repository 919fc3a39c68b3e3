using System.Collections.Immutable;
using CsCheck;
using Setout.Core.Measures;
using Setout.Core.Workings;
using Setout.Shop.Texts;

namespace Setout.Store.Tests.Contract;

/// <summary>Entries of every kind, chosen and by chance, and what they say in words, so that two can be compared to the last fraction.</summary>
internal static class FactSamples
{
    private const string At = "2026-05-04T09:40:00Z";

    // Three equal bays of 31 3/4 in, a reading of a calliper, a tick, a fraction that no tick holds.
    private static readonly ImmutableArray<ExactLength> s_lengths =
    [
        ExactLength.FromInches(Rational.Of(127, 12)), ExactLength.FromInches(Rational.Of(1423, 2000)), ExactLength.FromTicks(Rational.Of(1_000_001)),
        ExactLength.FromMillimetres(Rational.Of(22, 7)), ExactLength.FromInches(24),
    ];

    /// <summary>Every kind, with odd letters, thirds and sevenths; the voidings void entries before them, and one another.</summary>
    public static ImmutableArray<LogEntry> EachKind { get; } =
    [
        Reading("a1", "L.width", s_lengths),
        Reading("a2", "birch.thickness", [s_lengths[1]], "calliper", "by the \"knot\" \\ 3: # é, Größe, 板, \U0001FAB5"),
        new MarkEntry("a3", "2026-05-04T11:05:00.1234567+02:00", Progress.Cut, ["C.side#1", "C.deck"], Figures(("C.side.length", s_lengths[0]), ("C.deck.width", s_lengths[3]))),
        new MarkEntry("a4", At, Progress.Assembled, ["C"], Figures()),
        new MarkEntry("a5", At, Progress.Fitted, ["D1", "D2"], Figures()),
        new MarkEntry("a6", At, Progress.Bought, ["slide 18 in", "yes", "1e3", "~"], Figures()),
        new VoidEntry("a7", At, "a4"),
        new VoidEntry("a8", At, "a7"),
        new AllowEntry("a9", At, "material.not-read", "back", "it only lies in a groove; it's \"slack\""),
        new AllowEntry("no", At, "drawer.tight", "", "- no: [key], {here} & *there* !all"),
        new MarkEntry("1.0", At, Progress.Cut, ["B"], Figures(("B.height", s_lengths[2])))
        {
            Chosen = Figures(("B.slide", ExactLength.FromInches(18))),
            From = "boxes.sheet-1",
        },
    ];

    /// <summary>A reading.</summary>
    public static ReadingEntry Reading(string id, string key, ImmutableArray<ExactLength> values, string with = "", string spot = "") => new(id, At, new(key), values, with, spot);

    /// <summary>A reading at a minute of the day.</summary>
    public static ReadingEntry ReadAt(string id, int minute, int inches = 24) =>
        new(id, $"2026-05-04T{minute / 60:00}:{minute % 60:00}:00Z", new("L.width"), [ExactLength.FromInches(Rational.Of(inches, 3))], "tape", "");

    /// <summary>Entries by chance; now and then two of one id that say different things.</summary>
    public static Gen<LogEntry> Random { get; } = Entries();

    /// <summary>All that an entry says, fractions as fractions.</summary>
    public static string Words(LogEntry entry) => $"{entry.GetType().Name} '{entry.Id}' at '{entry.At}': " + entry switch
    {
        ReadingEntry reading => $"{reading.Key.Text} = {Fractions(reading.Values)} with '{reading.With}' at '{reading.Spot}'",
        MarkEntry mark => $"{mark.Progress} {string.Join('|', mark.Keys)}, figures {Fractions(mark.Figures)}, chosen {Fractions(mark.Chosen)}, from '{mark.From}'",
        VoidEntry voiding => voiding.Entry,
        AllowEntry allow => $"{allow.Code} on '{allow.Key}' because '{allow.Because}'",
        _ => throw new InvalidOperationException("No such entry."),
    };

    /// <summary>The same for a log.</summary>
    public static IEnumerable<string> Words(Log log) => log.Entries.Select(Words);

    private static string Fractions(IEnumerable<ExactLength> lengths) => string.Join(", ", lengths.Select(l => $"{l.Millimetres} mm"));

    private static string Fractions(ImmutableDictionary<QuantityKey, ExactLength> figures) =>
        string.Join(", ", figures.OrderBy(f => f.Key.Text, StringComparer.Ordinal).Select(f => $"{f.Key.Text}: {f.Value.Millimetres} mm"));

    private static ImmutableDictionary<QuantityKey, ExactLength> Figures(params (string Of, ExactLength Is)[] figures) =>
        figures.ToImmutableDictionary(f => new QuantityKey(f.Of), f => f.Is);

    private static Gen<LogEntry> Entries()
    {
        Gen<string> id = Gen.Int[0, 40].Select(n => $"e{n}"), word = Gen.Char["abcxyz.-#: é板'\"\\"].Array[1, 8].Select(c => $"k{new string(c)}k");
        Gen<ExactLength> length = Gen.Select(Gen.Int[1, 1000], Gen.Int[1, 129]).Select((n, d) => ExactLength.FromInches(Rational.Of(n, d)));
        Gen<string> at = Gen.Int[0, 1439].Select(m => $"2026-05-04T{m / 60:00}:{m % 60:00}:00Z");
        return Gen.OneOf<LogEntry>(
            Gen.Select(id, at, word, length.Array[1, 4], word).Select((i, t, k, v, s) => (LogEntry)new ReadingEntry(i, t, new(k), [.. v], "rule", s)),
            Gen.Select(id, at, Gen.Enum<Progress>(), word.Array[1, 3], Gen.Select(word, length).Array[0, 3])
                .Select((i, t, p, k, f) => (LogEntry)new MarkEntry(i, t, p, [.. k], Figures([.. f.DistinctBy(x => x.Item1)]))),
            Gen.Select(id, at, id).Select((i, t, v) => (LogEntry)new VoidEntry(i, t, v)),
            Gen.Select(id, at, word, word).Select((i, t, k, b) => (LogEntry)new AllowEntry(i, t, "drawer.tight", k, b)));
    }
}
