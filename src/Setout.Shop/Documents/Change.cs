using System.Collections.Immutable;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Setout.Core.Workings;
using Setout.Shop.Facts;
using Setout.Shop.Texts;

namespace Setout.Shop.Documents;

/// <summary>A change of documents and logs, made whole or not at all.</summary>
/// <param name="Id">Its own, for ever: a change sent twice is made once.</param>
/// <param name="At">When, as an ISO 8601 time with its offset; taken from whoever has a clock.</param>
/// <param name="Words">What it is, for people; where it is one edit, the name of its step.</param>
public sealed record Change(string Id, string At, string Words)
{
    /// <summary>The longest id and the longest name of a step or save point, in signs.</summary>
    public const int LongestId = 100, LongestWords = 500;

    /// <summary>What happens to documents, in order; each sees what those before it did.</summary>
    public ImmutableArray<DocumentChange> Documents { get; init; } = [];

    /// <summary>What is appended to logs, after the documents have been changed.</summary>
    public ImmutableArray<LogAddition> Facts { get; init; } = [];

    /// <summary>A change of one document.</summary>
    public static Change Of(string id, string at, DocumentChange change) => new(id, at, WordsOf(change)) { Documents = [change] };

    /// <summary>Why no store can take this change, whatever it holds; null when it can.</summary>
    public Finding? Fault()
    {
        if (Id.Length is 0 or > LongestId || !IsWhole(Id)) return Refuse("change.id", $"A change needs an id of its own, of at most {LongestId} signs.", "Send the form again.");
        if (!DateTimeOffset.TryParse(At, CultureInfo.InvariantCulture, DateTimeStyles.RoundtripKind, out _)) return Refuse("change.time", $"'{TextContext.Shown(At)}' is not a time.", "Write it as 2026-05-04T09:40:00Z.");
        return Documents.Select(Fault).Append(Named(Words)).FirstOrDefault(f => f is not null);
    }

    /// <summary>
    /// Tells whether two changes of one id ask for the same. The time does not count: whoever sends a change again may do so later.
    /// </summary>
    /// <exception cref="FactStoreException">An entry of a log would not read back.</exception>
    public string Fingerprint()
    {
        var all = new StringBuilder();
        Add(all, Words);
        foreach (DocumentChange change in Documents)
        {
            Add(all, change.GetType().Name);
            if (change is ChangeOfDocument of) Add(all, of.Document.Text, of.Revision.ToString(CultureInfo.InvariantCulture));
            switch (change)
            {
                case NewDocument made: Add(all, made.Kind.ToString(), made.Name, made.Text, made.Step); break;
                case EditText edit: Add(all, edit.Step, edit.Text); break;
                case GoBack back: Add(all, back.State.ToString(CultureInfo.InvariantCulture)); break;
                case SavePoint point: Add(all, point.Name); break;
                case Rename rename: Add(all, rename.Name); break;
            }
        }
        foreach (LogAddition log in Facts)
        {
            Add(all, log.Document?.Text ?? "", log.Piece);
            foreach (LogEntry entry in log.Entries) Add(all, FactText.Of(entry));
        }
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(all.ToString())));
    }

    /// <summary>The id of a document that a change makes: the same whenever and wherever it is made.</summary>
    /// <param name="at">The place of the part in <see cref="Documents"/>.</param>
    public DocumentId NewId(int at) => new("d" + Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes($"{at} {Id}")))[..15]);

    private static string WordsOf(DocumentChange change) => change switch
    {
        NewDocument made => made.Step,
        EditText edit => edit.Step,
        UndoStep => "undo",
        RedoStep => "redo",
        GoBack => "back to an earlier state",
        SavePoint point => $"save point '{point.Name}'",
        Rename rename => $"renamed to '{rename.Name}'",
        PutAway => "put away",
        _ => "taken back",
    };

    private static Finding? Fault(DocumentChange change) => change switch
    {
        NewDocument made => DocumentName.Fault(made.Kind, made.Name) ?? Named(made.Step) ?? Fit(made.Text),
        EditText edit => Named(edit.Step) ?? Fit(edit.Text),
        SavePoint point => string.IsNullOrWhiteSpace(point.Name) ? Refuse("document.save-point", "A save point needs a name.", "Say what it stands for, such as 'before the doors'.") : Named(point.Name),
        // Which kind it is, the store knows.
        Rename rename => DocumentName.Fault(DocumentKind.Shop, rename.Name),
        _ => null,
    };

    private static Finding? Named(string words) => words.Length <= LongestWords && IsWhole(words) && !words.Any(char.IsControl) ? null :
        Refuse("change.words", $"The name of a step or a save point has at most {LongestWords} signs, all of them to be seen.", "Give it a shorter one.");

    private static Finding? Fit(string text)
    {
        if (!IsWhole(text)) return Refuse("text.half-letter", "The text holds half a letter, which no file can hold.", "Take it out, or type it anew.");
        return Encoding.UTF8.GetByteCount(text) > TextLimits.Usual.Bytes ? TextLimits.Usual.TooLarge with { Place = Place.None } : null;
    }

    private static Finding Refuse(string code, string words, string remedy) => new(code, Severity.Stop, "", words, remedy);

    // A letter beyond the first 65 536 is two signs that belong together; a nought sign ends a text in some programs.
    private static bool IsWhole(string text)
    {
        for (int i = 0; i < text.Length; i++)
        {
            if (text[i] == '\0' || char.IsLowSurrogate(text[i])) return false;
            if (char.IsHighSurrogate(text[i]) && (++i == text.Length || !char.IsLowSurrogate(text[i]))) return false;
        }
        return true;
    }

    private static void Add(StringBuilder all, params ReadOnlySpan<string> parts)
    {
        foreach (string part in parts) all.Append(part.Length).Append(':').Append(part);
    }
}

/// <summary>Entries for the log of one piece.</summary>
public sealed record LogAddition
{
    private LogAddition(DocumentId? document, string piece, ImmutableArray<LogEntry> entries) => (Document, Piece, Entries) = (document, piece, entries);

    /// <summary>The document of the piece; null where the piece is told by its name.</summary>
    public DocumentId? Document { get; }

    /// <summary>The name of the piece; empty where its document is told.</summary>
    public string Piece { get; }

    /// <summary>In the order in which they are to stand; those that are there already are passed over.</summary>
    public ImmutableArray<LogEntry> Entries { get; }

    /// <summary>To the log of a document, however it may be called meanwhile.</summary>
    public static LogAddition To(DocumentId document, params ImmutableArray<LogEntry> entries) => new(document, "", entries.IsDefault ? [] : entries);

    /// <summary>To the log of a piece that has this name.</summary>
    /// <exception cref="ArgumentException">The name is blank.</exception>
    public static LogAddition To(string piece, params ImmutableArray<LogEntry> entries)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(piece);
        return new(null, piece, entries.IsDefault ? [] : entries);
    }
}
