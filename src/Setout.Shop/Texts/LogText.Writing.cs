using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Workings;

namespace Setout.Shop.Texts;

/// <content>Writing. What is written reads back as itself, or is not written.</content>
public static partial class LogText
{
    /// <summary>The text of one entry, to be appended to a log.</summary>
    /// <exception cref="ArgumentException">The entry would not read back as itself; ask <see cref="Fault"/> first.</exception>
    public static string Write(LogEntry entry) =>
        Fault(entry) is { } fault ? throw new ArgumentException($"This entry cannot be written: {fault.Words} {fault.Remedy}", nameof(entry)) : Body(entry);

    /// <summary>What keeps an entry from being written, such as a reason of more than 500 letters or one with signs that cannot be seen; null for nothing.</summary>
    public static Finding? Fault(LogEntry entry)
    {
        string body = Body(entry);
        TextRead<Log> back = Read(Head + body);
        // Its place in a text that nobody has seen would only mislead.
        if (back.Findings.FirstOrDefault(f => f.Severity == Severity.Stop) is { } fault) return fault with { Place = Place.None };
        return back.Value!.Entries is [var same] && Body(same) == body ? null : new("log.not-written", Severity.Stop, "", "It would read back as something else.", "Use plain words.");
    }

    /// <summary>A log with an entry more: everything that stands in it stays as it is.</summary>
    /// <param name="log">The text of the log; null or empty for a new one.</param>
    /// <param name="entry">To be appended.</param>
    /// <exception cref="ArgumentException">The log or the entry cannot be used: read the one, and ask <see cref="Fault"/> about the other, first.</exception>
    public static string Append(string? log, LogEntry entry)
    {
        if (string.IsNullOrWhiteSpace(log)) return Head + Write(entry);
        string body = Write(entry), text = log.EndsWith('\n') ? log : log + "\n";
        TextRead<YamlNode> tree = YamlTree.Read(text);
        if (tree.Value is not YamlMap root || (root["entries"] is not (YamlList or YamlScalar { Text: "" }) and not null))
            throw new ArgumentException("This log cannot be read.", nameof(log));
        if (root["entries"] is null) text += "entries:\n";
        // Entries line up under those that are there; the place of a list is that of its first dash.
        if (root["entries"] is YamlList { Items.Length: > 0 } list)
            body = string.Concat(body.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(l => new string(' ', list.Place.Column - 1) + l[2..] + "\n"));
        TextRead<Log> before = Read(log), after = Read(text + body);
        int added = before.Value?.Entries.Any(e => e.Id == entry.Id) == true ? 0 : 1;
        return before.IsSound && after.IsSound && after.Value!.Entries.Length == before.Value!.Entries.Length + added
            ? text + body
            : throw new ArgumentException("Nothing can be appended to this log: 'entries' has to be its last key, with one entry below the other.", nameof(log));
    }

    /// <summary>True when two entries are the same word for word, so that one is a copy of the other.</summary>
    internal static bool SaysTheSame(LogEntry one, LogEntry other) => one.Id == other.Id && Body(one) == Body(other);

    private static string Body(LogEntry entry)
    {
        var text = new StringBuilder();
        text.Append("  - id: ").Append(Word(entry.Id)).Append('\n');
        text.Append("    at: ").Append(Quoted(entry.At)).Append('\n');
        switch (entry)
        {
            case ReadingEntry reading:
                text.Append("    read: ").Append(Word(reading.Key.Text)).Append('\n');
                text.Append("    values: [").AppendJoin(", ", reading.Values.Select(NamedLength.Exactly)).Append("]\n");
                if (reading.With.Length > 0) text.Append("    with: ").Append(Quoted(reading.With)).Append('\n');
                if (reading.Spot.Length > 0) text.Append("    spot: ").Append(Quoted(reading.Spot)).Append('\n');
                break;
            case MarkEntry mark:
                text.Append("    ").Append(s_marks.First(m => m.Progress == mark.Progress).Word).Append(": [").AppendJoin(", ", mark.Keys.Select(Word)).Append("]\n");
                if (mark.From.Length > 0) text.Append("    from: ").Append(Word(mark.From)).Append('\n');
                Figures(text, "figures", mark.Figures);
                Figures(text, "chosen", mark.Chosen);
                WriteWood(text, mark);
                break;
            case VoidEntry voided:
                text.Append("    void: ").Append(Word(voided.Entry)).Append('\n');
                break;
            case AllowEntry allow:
                text.Append("    allow: ").Append(Word(allow.Code)).Append('\n');
                if (allow.Key.Length > 0) text.Append("    on: ").Append(Word(allow.Key)).Append('\n');
                text.Append("    because: ").Append(Quoted(allow.Because)).Append('\n');
                if (allow.Said.Length > 0) text.Append("    said: ").Append(Quoted(allow.Said)).Append('\n');
                if (allow.Off is { } off) text.Append("    off: ").Append(NamedLength.Exactly(off)).Append('\n');
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(entry), entry.GetType().Name, "No such entry.");
        }
        return text.ToString();
    }

    private static void Figures(StringBuilder text, string key, ImmutableDictionary<QuantityKey, ExactLength> figures)
    {
        if (figures.Count > 0) text.Append("    ").Append(key).Append(":\n");
        foreach ((QuantityKey of, ExactLength value) in figures.OrderBy(f => f.Key))
            text.Append("      - {of: ").Append(Word(of.Text)).Append(", is: ").Append(NamedLength.Exactly(value)).Append("}\n");
    }

    private static string Word(string text) => PlainPattern().IsMatch(text) ? text : Quoted(text);

    /// <summary>A text in double quotes; what an editor would not show is written as its number.</summary>
    internal static string Quoted(string text)
    {
        var quoted = new StringBuilder("\"");
        foreach (char c in text)
        {
            switch (c)
            {
                case '\\': quoted.Append("\\\\"); break;
                case '"': quoted.Append("\\\""); break;
                case '\n': quoted.Append("\\n"); break;
                case '\r': quoted.Append("\\r"); break;
                case '\t': quoted.Append("\\t"); break;
                case var _ when NeedsNumber(c): quoted.Append("\\u").Append(((int)c).ToString("X4", CultureInfo.InvariantCulture)); break;
                default: quoted.Append(c); break;
            }
        }
        return quoted.Append('"').ToString();
    }

    private static bool NeedsNumber(char c) => char.IsControl(c) || c is '\uFFFD' or '\uFFFE' or '\uFFFF'
        || char.GetUnicodeCategory(c) is UnicodeCategory.Format or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator;

    // Begins with a letter or a digit and is no number: nothing that YAML or a reader could take for something else.
    [GeneratedRegex(@"^[A-Za-z0-9][A-Za-z0-9._\-]*\z")]
    private static partial Regex PlainPattern();
}
