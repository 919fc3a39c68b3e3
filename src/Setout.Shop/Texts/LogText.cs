using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Shop.Texts;

/// <summary>Reads a log, and writes entries for appending. Lengths in a log always carry their unit.</summary>
public static class LogText
{
    /// <summary>The version of the log that this program reads and writes.</summary>
    public const int Version = 1;

    /// <summary>What a new log begins with.</summary>
    public const string Head = "# Facts from the bench. Entries are appended and never edited; an error is voided by a later entry.\nsetout-log: 1\nentries:\n";

    private static readonly (string Word, Progress Progress)[] s_marks =
        [("cut", Progress.Cut), ("assembled", Progress.Assembled), ("fitted", Progress.Fitted), ("bought", Progress.Bought)];

    /// <summary>Reads a text.</summary>
    public static TextRead<Log> Read(string text, TextLimits? limits = null)
    {
        TextRead<YamlNode> tree = YamlTree.Read(text, limits);
        if (tree.Value is null) return new(null, tree.Findings);
        var context = new TextContext();
        if (tree.Value is not YamlMap root)
        {
            context.Stop("text.wanted-map", tree.Value.Place, "A log is made of keys with values.", "Begin with 'setout-log: 1'.");
            return new(null, [.. context.Findings]);
        }
        var top = new MapReader(context, root);
        if (!TextVersion.Check(context, top, "setout-log", Version)) return new(null, [.. context.Findings]);
        var entries = ImmutableArray.CreateBuilder<LogEntry>();
        var ids = new HashSet<string>(StringComparer.Ordinal);
        foreach (MapReader map in top.Maps("entries"))
        {
            if (Entry(context, map) is not { } entry) continue;
            // The same entry twice is what a merge by union gives: it counts once.
            if (ids.Add(entry.Id)) entries.Add(entry);
        }
        top.Done();
        return new(new(entries.ToImmutable()), [.. context.Findings]);
    }

    private static LogEntry? Entry(TextContext context, MapReader map)
    {
        string id = map.Required("id", "f3a1").Text, at = map.Required("at", "2026-05-04T09:40:00Z").Text;
        if (at.Length > 0 && !DateTimeOffset.TryParse(at, CultureInfo.InvariantCulture, DateTimeStyles.RoundtripKind, out _))
            context.Stop("log.bad-time", map.PlaceOf("at"), $"'{at}' is not a time.", "Write it as 2026-05-04T09:40:00Z.");
        LogEntry? entry = null;
        if (map.Text("read") is { } key)
        {
            var values = map.Words("values").Select(v => Length(context, v)).OfType<ExactLength>().ToImmutableArray();
            if (values.Length == 0 && context.Findings.Count == 0) map.Missing("values", "[23/32 in]");
            entry = values.Length == 0 ? null : new ReadingEntry(id, at, new(key.Text), values, map.Text("with")?.Text ?? "", map.Text("spot")?.Text ?? "");
        }
        else if (map.Text("void") is { } voided) entry = new VoidEntry(id, at, voided.Text);
        else if (map.Text("allow") is { } code) entry = new AllowEntry(id, at, code.Text, map.Text("on")?.Text ?? "", map.Required("because", "the wall is bowed").Text);
        else if (s_marks.FirstOrDefault(m => map.Has(m.Word)) is { Word: not null } mark)
        {
            ImmutableArray<Named> keys = map.Words(mark.Word);
            var figures = ImmutableDictionary.CreateBuilder<QuantityKey, ExactLength>();
            foreach (MapReader figure in map.Maps("figures"))
            {
                Named of = figure.Required("of", "L1.side.length");
                if (figure.Length("is") is { } given) figures[new(of.Text)] = given.Value;
                figure.Done();
            }
            entry = new MarkEntry(id, at, mark.Progress, [.. keys.Select(k => k.Text)], figures.ToImmutable());
        }
        else context.Stop("log.unknown-entry", map.Place, "This entry does not say what happened.", "Begin it with read, cut, assembled, fitted, bought, void or allow.");
        if (entry is not null) map.Done();
        return entry;
    }

    private static ExactLength? Length(TextContext context, Named text)
    {
        ParseResult<ExactLength> read = LengthText.Parse(text.Text, LengthUnit.Inch);
        bool hasUnit = text.Text.Any(char.IsAsciiLetter) || text.Text.Contains('"') || text.Text.Contains('\'');
        if (read.IsRead && hasUnit && read.Value.Sign > 0 && read.Value <= TextContext.LongestSize) return read.Value;
        context.Stop("log.bad-value", text.Place, read.IsRead ? $"'{text.Text}' needs a unit and a believable size." : read.Fault!.Words, "Write a length with its unit, such as 23/32 in.");
        return null;
    }

    /// <summary>The text of one entry, to be appended to a log.</summary>
    public static string Write(LogEntry entry)
    {
        var text = new StringBuilder();
        text.Append("  - id: ").Append(entry.Id).Append('\n');
        text.Append("    at: ").Append(Quoted(entry.At)).Append('\n');
        switch (entry)
        {
            case ReadingEntry reading:
                text.Append("    read: ").Append(reading.Key).Append('\n');
                text.Append("    values: [").AppendJoin(", ", reading.Values.Select(Exactly)).Append("]\n");
                if (reading.With.Length > 0) text.Append("    with: ").Append(Quoted(reading.With)).Append('\n');
                if (reading.Spot.Length > 0) text.Append("    spot: ").Append(Quoted(reading.Spot)).Append('\n');
                break;
            case MarkEntry mark:
                text.Append("    ").Append(s_marks.First(m => m.Progress == mark.Progress).Word).Append(": [").AppendJoin(", ", mark.Keys).Append("]\n");
                if (mark.Figures.Count > 0) text.Append("    figures:\n");
                foreach ((QuantityKey key, ExactLength value) in mark.Figures.OrderBy(f => f.Key))
                    text.Append("      - {of: ").Append(key).Append(", is: ").Append(Exactly(value)).Append("}\n");
                break;
            case VoidEntry voided:
                text.Append("    void: ").Append(voided.Entry).Append('\n');
                break;
            case AllowEntry allow:
                text.Append("    allow: ").Append(allow.Code).Append('\n');
                text.Append("    on: ").Append(allow.Key).Append('\n');
                text.Append("    because: ").Append(Quoted(allow.Because)).Append('\n');
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(entry), entry.GetType().Name, "No such entry.");
        }
        return text.ToString();
    }

    /// <summary>A length that reads back as itself: a fraction of an inch where that is exact, else millimetres, else a fraction of a millimetre.</summary>
    public static string Exactly(ExactLength length)
    {
        Figure inches = LengthFormat.Inches(256).Format(length);
        if (inches.IsExact) return inches.ToString();
        Figure metric = LengthFormat.Millimetres(6).Format(length);
        return metric.IsExact ? metric.ToString() : $"{length.Millimetres} mm";
    }

    private static string Quoted(string text) =>
        "\"" + text.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\"", "\\\"", StringComparison.Ordinal)
            .Replace("\n", "\\n", StringComparison.Ordinal).Replace("\r", "\\r", StringComparison.Ordinal).Replace("\t", "\\t", StringComparison.Ordinal) + "\"";
}
