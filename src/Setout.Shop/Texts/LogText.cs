using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Shop.Texts;

/// <summary>Reads a log, and writes entries for appending. Lengths in a log always carry their unit.</summary>
public static partial class LogText
{
    /// <summary>The version of the log that this program reads and writes.</summary>
    public const int Version = 1;

    /// <summary>What a new log begins with.</summary>
    public const string Head = "# Facts from the bench. Entries are appended and never edited; an error is voided by a later entry.\nsetout-log: 1\nentries:\n";

    private static readonly (string Word, Progress Progress)[] s_marks =
        [("cut", Progress.Cut), ("assembled", Progress.Assembled), ("fitted", Progress.Fitted), ("bought", Progress.Bought), ("finished", Progress.Finished)];

    /// <summary>Reads a text. Never throws for what is in it.</summary>
    public static TextRead<Log> Read(string text, TextLimits? limits = null) => Read(text, limits, new(limits) { MustNameUnit = true });

    internal static TextRead<Log> Read(string text, TextLimits? limits, TextContext context) =>
        TextKind.Log.Read(text, limits, context, top => Entries(context, top));

    private static Log Entries(TextContext context, MapReader top)
    {
        var entries = ImmutableArray.CreateBuilder<LogEntry>();
        var known = new Dictionary<string, LogEntry>(StringComparer.Ordinal);
        var voids = new List<(VoidEntry Entry, Place Place)>();
        foreach (MapReader map in top.Maps("entries", "entry", "id: f3a1, at: 2026-05-04T09:40:00Z, cut: [C.side]"))
        {
            if (Entry(context, map) is not { } entry) continue;
            // The same entry twice is what a merge by union gives: it counts once.
            if (known.TryAdd(entry.Id, entry)) entries.Add(entry);
            else if (Body(known[entry.Id]) != Body(entry))
            {
                context.Stop("log.id-taken", map.PlaceOf("id"), $"Two entries with the id '{TextContext.Shown(entry.Id)}' say different things.",
                    "Entries are never edited: take the one that was changed back to what it was, or give it an id of its own.");
            }
            if (entry is VoidEntry voided) voids.Add((voided, map.PlaceOf("void")));
        }
        foreach ((VoidEntry entry, Place place) in voids)
        {
            if (entry.Entry == entry.Id || !known.ContainsKey(entry.Entry))
                context.Add(new("log.void-unknown", Severity.Warn, "", $"There is no entry '{TextContext.Shown(entry.Entry)}' to be voided.", "Look at the id; or merge the log that holds it.", place));
        }
        return new(entries.ToImmutable());
    }

    private static LogEntry? Entry(TextContext context, MapReader map)
    {
        map.Expect("id", "at");
        string? word = map.Which("This entry does not say what happened.", "Begin it with read, cut, assembled, fitted, finished, bought, void or allow.",
            ("read", "reading"), ("cut", "cut"), ("assembled", "assembled"), ("fitted", "fitted"), ("finished", "finished"), ("bought", "bought"), ("void", "void"), ("allow", "allow"));
        if (word is null) return null;
        Named id = map.Required("id", "f3a1"), at = map.Required("at", "2026-05-04T09:40:00Z");
        if (at.Text.Length > 0 && !(TimePattern().IsMatch(at.Text) && DateTimeOffset.TryParse(at.Text, CultureInfo.InvariantCulture, DateTimeStyles.RoundtripKind, out _)))
            context.Stop("log.bad-time", at.Place, $"'{TextContext.Shown(at.Text)}' is not a time.", "Write it as 2026-05-04T09:40:00Z or 2026-05-04T11:40:00+02:00.");
        LogEntry? entry = word switch
        {
            "read" => Reading(map, id.Text, at.Text),
            "void" => new VoidEntry(id.Text, at.Text, map.Required("void", "f3a1").Text),
            "allow" => Allow(map, id.Text, at.Text),
            _ => Mark(context, map, word, id.Text, at.Text),
        };
        return id.Text.Length > 0 ? entry : null;
    }

    private static ReadingEntry? Reading(MapReader map, string id, string at)
    {
        Named key = map.Required("read", "L.width");
        ImmutableArray<ExactLength> values = map.Lengths("values");
        if (map.IsEmpty("values")) map.Missing("values", "[23/32 in]");
        string with = map.Text("with")?.Text ?? "", spot = map.Text("spot")?.Text ?? "";
        return values.Length == 0 ? null : new(id, at, new(key.Text), values, with, spot);
    }

    private static AllowEntry Allow(MapReader map, string id, string at)
    {
        Named code = map.Required("allow", "material.not-read");
        string key = map.Text("on")?.Text ?? "", because = map.Remark("because");
        if (map.IsEmpty("because")) map.Missing("because", "the wall is bowed");
        return new(id, at, code.Text, key, because) { Said = map.Remark("said"), Off = map.Length("off")?.Value };
    }

    private static MarkEntry Mark(TextContext context, MapReader map, string word, string id, string at)
    {
        ImmutableArray<Named> keys = map.Words(word);
        // Where a run only parts blanks, or wood is told to be gone, no part comes off.
        if (map.IsEmpty(word) && !(word == "cut" && map.IsThere("took") && !(map.IsEmpty("took") && map.IsEmpty("left")))) context.Stop("text.missing", map.KeyPlaceOf(word), $"'{word}' names nothing.", $"Write '{word}: [C.side]'.");
        Progress progress = s_marks.First(m => m.Word == word).Progress;
        // Only what is cut comes from a sheet: elsewhere the key is not known.
        string from = progress == Progress.Cut ? map.Text("from")?.Text ?? "" : "";
        MarkEntry entry = new(id, at, progress, [.. keys.Select(k => k.Text)], Figures(context, map, "figures", "figure", "C.side.length", "30 in"))
        {
            From = from,
            Chosen = Figures(context, map, "chosen", "choice", "L3.slide.length", "18 in"),
        };
        return progress == Progress.Cut ? Wood(context, map, entry) : entry;
    }

    private static ImmutableDictionary<QuantityKey, ExactLength> Figures(TextContext context, MapReader map, string key, string kind, string quantity, string length)
    {
        var figures = ImmutableDictionary.CreateBuilder<QuantityKey, ExactLength>();
        foreach (MapReader figure in map.Maps(key, kind, $"of: {quantity}, is: {length}"))
        {
            Named of = figure.Required("of", quantity);
            Given given = figure.RequiredLength("is", length);
            if (!figures.TryAdd(new(of.Text), given.Value) && of.Text.Length > 0)
                context.Stop("text.twice", of.Place, $"'{TextContext.Shown(of.Text)}' stands twice in '{key}'.", "Keep one of them.");
        }
        return figures.ToImmutable();
    }

    [GeneratedRegex(@"^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d{1,7})?(Z|[+-]\d\d:\d\d)\z", RegexOptions.CultureInvariant)]
    private static partial Regex TimePattern();
}
