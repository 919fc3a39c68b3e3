using System.Collections.Immutable;
using Setout.Core.Workings;
using Setout.Shop.Facts;
using Setout.Shop.Texts;

namespace Setout.Shop.Documents;

/// <summary>
/// What an import would do, before it does it. Documents come under the names of their files; a text that differs becomes a new state below the one that
/// stands, after a save point. Logs are united: entries come by their ids and none is changed. Importing the same twice changes nothing.
/// </summary>
/// <param name="Lines">What happens with each file, in order of their names.</param>
public sealed record ImportPlan(ImmutableArray<ImportLine> Lines)
{
    private ImmutableArray<DocumentChange> _documents = [];
    private ImmutableArray<LogAddition> _facts = [];

    /// <summary>True when nothing would change.</summary>
    public bool IsEmpty => _documents.IsEmpty && _facts.IsEmpty;

    /// <summary>How many files are added, changed, left and refused, in words.</summary>
    public override string ToString() => string.Join(", ", Enum.GetValues<ImportAct>().Select(act => $"{Lines.Count(l => l.Act == act)} {act.ToString().ToLowerInvariant()}"));

    /// <summary>The import as one change. Where a document has changed since the plan was made, the store refuses it.</summary>
    /// <param name="id">Of the change.</param>
    /// <param name="at">When.</param>
    /// <param name="from">Where the files came from, for people.</param>
    public Change ToChange(string id, string at, string from) => new(id, at, $"import from {TextContext.Shown(from)}") { Documents = _documents, Facts = _facts };

    /// <summary>Plans an import.</summary>
    /// <param name="store">Into which.</param>
    /// <param name="texts">The files.</param>
    /// <exception cref="FactStoreException">The store cannot be read.</exception>
    public static ImportPlan Of(IDocumentStore store, ImmutableArray<IncomingText> texts)
    {
        var lines = ImmutableArray.CreateBuilder<ImportLine>();
        var documents = ImmutableArray.CreateBuilder<DocumentChange>();
        var facts = ImmutableArray.CreateBuilder<LogAddition>();
        var known = store.Documents().ToDictionary(d => DocumentName.Fold(d.Name));
        HashSet<string> coming = [];
        // Documents before logs, so that a log finds the piece that comes with it.
        foreach (IncomingText text in texts.OrderBy(t => IsLog(t)).ThenBy(t => t.File, StringComparer.Ordinal))
        {
            string name = NameOf(text.File), key = text.Text is null ? "" : IncomingText.KeyOf(text.Text);
            if (text.Text is null) lines.Add(Refuse(text, text.Fault ?? Fault("import.unreadable", "It cannot be read.", "")));
            else if (key.Length == 0) lines.Add(Refuse(text, Fault("import.not-ours", "It does not say what it is.", "A piece file begins with 'setout: 1', a shop file with 'setout-shop: 1', a log with 'setout-log: 1'.")));
            else if (!coming.Add((key == "setout-log" ? "log " : "") + DocumentName.Fold(name))) lines.Add(Refuse(text, Fault("import.twice", $"Another file gives '{name}' too.", "Leave one of them out.")));
            else if (key == "setout-log") lines.Add(Log(store, text, name, facts));
            else lines.Add(Document(store, text, new(key == "setout" ? DocumentKind.Piece : DocumentKind.Shop, name, text.Text, $"import of {text.File}"), known.GetValueOrDefault(DocumentName.Fold(name)), documents));
        }
        return new([.. lines.OrderBy(l => l.File, StringComparer.Ordinal)]) { _documents = documents.ToImmutable(), _facts = facts.ToImmutable() };
    }

    private static ImportLine Document(IDocumentStore store, IncomingText text, NewDocument made, DocumentLine? there, ImmutableArray<DocumentChange>.Builder changes)
    {
        if (Change.Of("import", "2026-01-01T00:00:00Z", made).Fault() is { } unfit) return Refuse(text, unfit);
        if (there is null)
        {
            changes.Add(made);
            return new(text.File, ImportAct.Added, $"'{made.Name}' is new");
        }
        if (there.Kind != made.Kind || there.Name != made.Name)
            return Refuse(text, Fault("import.name-taken", $"There is {(there.Kind == DocumentKind.Piece ? "a piece" : "a shop file")} '{there.Name}' already.", "Rename the file, or the document."));
        string old = store.Find(there.Id)!.Text;
        bool differs = Bare(old) != Bare(made.Text);
        if (!differs && !there.IsPutAway) return new(text.File, ImportAct.Left, $"'{made.Name}' is the same already");
        if (there.IsPutAway) changes.Add(new TakeBack(there.Id, there.Revision));
        if (differs) changes.AddRange(new SavePoint(there.Id, there.Revision, "before import"), new EditText(there.Id, there.Revision, made.Step, made.Text));
        return new(text.File, ImportAct.Changed, $"'{made.Name}' {(differs ? "gets another text" : "is the same")}{(there.IsPutAway ? " and is taken back" : "")}");
    }

    private static ImportLine Log(IDocumentStore store, IncomingText text, string name, ImmutableArray<LogAddition>.Builder facts)
    {
        TextRead<Log> read = string.IsNullOrWhiteSpace(text.Text) ? new(Texts.Log.Empty, []) : LogText.Read(text.Text!);
        if (!read.IsSound) return Refuse(text, read.Findings.First(f => f.Severity == Severity.Stop));
        if (string.IsNullOrWhiteSpace(name)) return Refuse(text, Fault("import.no-name", "The name of the file does not say of which piece it is the log.", "Call it NAME.log.yaml."));
        if (store.Find(name) is { Kind: DocumentKind.Shop }) return Refuse(text, Fault("import.name-taken", $"'{name}' is a shop file and has no log.", "Call the file as the piece is called."));
        try
        {
            Log there = store.FactsOf(name).Read(), other = read.Value!;
            var union = FactUnion.Of(there, other);
            if (union.Entries.IsEmpty) return new(text.File, ImportAct.Left, $"all {other.Entries.Length} entries are in the log of '{name}' already");
            facts.Add(store.Find(name) is { } document ? LogAddition.To(document.Id, union.Entries) : LogAddition.To(name, union.Entries));
            string late = union.Late.IsEmpty ? "" : $"; {union.Late.Length} of them are older than what stands there, and come after it all the same";
            return new(text.File, ImportAct.Added, $"{union.Entries.Length} of {other.Entries.Length} entries come to the log of '{name}'{late}");
        }
        catch (FactStoreException conflict) when (conflict.IsConflict)
        {
            return Refuse(text, conflict.Fault);
        }
    }

    private static bool IsLog(IncomingText text) => text.Text is { } held && IncomingText.KeyOf(held) == "setout-log";

    private static string NameOf(string file)
    {
        string name = Path.GetFileNameWithoutExtension(file);
        return name.EndsWith(".log", StringComparison.Ordinal) ? name[..^".log".Length] : name;
    }

    // A mark at the beginning is no part of a text, and no file gives it back.
    private static string Bare(string text) => text.TrimStart('\uFEFF');

    private static ImportLine Refuse(IncomingText text, Finding fault) => new(text.File, ImportAct.Refused, fault.Words, fault);

    private static Finding Fault(string code, string words, string remedy) => new(code, Severity.Stop, "", words, remedy);
}
