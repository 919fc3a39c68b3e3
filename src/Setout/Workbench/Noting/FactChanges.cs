using System.Collections.Immutable;
using Setout.Core.Fit.Mending;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Shop.Documents;
using Setout.Shop.Facts;
using Setout.Shop.Noting;
using Setout.Shop.Plans;
using Setout.Shop.Texts;
using Setout.Workbench.Changing;
using Setout.Workbench.Pieces;

namespace Setout.Workbench.Noting;

/// <summary>Writes down what forms say of the bench. A fact that cannot be taken says why, and nothing is written; one sent twice is written once.</summary>
internal sealed class FactChanges(IDocumentStore store, KeptPieces pieces, PlanDesk desk, BenchDesk bench, ChangeMaker maker)
{
    /// <summary>A reading.</summary>
    public ChangeOutcome Read(string piece, ChangeForm form, ReadingWords typed) => Make(piece, form, "reading", (source, set, at) =>
    {
        Noted<ReadingEntry> noted = NotedReading.Of(set, source.Shop.Accuracy, typed, Id(form, 0), at);
        return (noted.Entry is { } entry ? [entry] : [], noted.Faults);
    });

    /// <summary>A mark.</summary>
    public ChangeOutcome Mark(string piece, ChangeForm form, MarkWords typed) => Make(piece, form, "mark", (_, set, at) =>
    {
        Noted<MarkEntry> noted = NotedMark.Of(set, typed, Id(form, 0), at);
        return (noted.Entry is { } entry ? [entry] : [], noted.Faults);
    });

    /// <summary>A remedy that was carried out.</summary>
    /// <param name="upset">The key of what was upset.</param>
    /// <param name="words">The words of the remedy, as the page showed them.</param>
    /// <param name="readings">What was measured then, for each of its readings.</param>
    public ChangeOutcome Mend(string piece, ChangeForm form, string upset, string words, ImmutableArray<string> readings) => Make(piece, form, "remedy", (source, set, at) =>
    {
        OnBench stand = bench.Of(pieces.Read(piece)!, source, set);
        Remedy? chosen = stand.Advice.Where(a => a.Upset.Key.Text == upset).SelectMany(a => a.Remedies).FirstOrDefault(r => r.Words == words);
        return chosen is null ? ([], [new("mend.gone", Severity.Stop, "", "That is not a remedy for it any more: something else was read or done since.", "Look at what is offered now.")])
            : NotedMending.Of(source, chosen, readings, i => Id(form, i), at);
    });

    /// <summary>Takes an entry back, in the logs of all pieces that tell of it.</summary>
    public ChangeOutcome Void(string piece, ChangeForm form, string entry)
    {
        if (pieces.Read(piece) is not { Source: { } source } file) return Gone(piece);
        var made = NotedVoid.Of(source, entry, "this log", Id(form, 0), maker.Here);
        if (made.Entry is not { } voiding) return maker.IsMade(form) ? ChangeMaker.Done : new(made.Fault, false);
        IEnumerable<Document> with = made.With.Select(n => store.Find(Path.GetFileNameWithoutExtension(n))).OfType<Document>().Where(d => store.FactsOf(d.Id).Read().Entries.Any(e => e.Id == entry));
        return maker.Make(piece, new Change(form.Id, maker.At, $"void {entry}") { Facts = [.. with.Prepend(file.Document).Select(d => LogAddition.To(d.Id, voiding))] });
    }

    /// <summary>Takes back all that was written in one with an entry, such as a remedy, in one change.</summary>
    public ChangeOutcome VoidAll(string piece, ChangeForm form, string entry)
    {
        if (pieces.Read(piece) is not { Source: { } source } file) return Gone(piece);
        if (maker.IsMade(form)) return ChangeMaker.Done;
        return Taken(piece, form, file, NotedVoid.OfAll(source, entry, "this log", i => Id(form, i), maker.Here), $"void what was written with {entry}");
    }

    /// <summary>Puts an entry back that was taken back, in the logs of all pieces that tell of it.</summary>
    public ChangeOutcome PutBack(string piece, ChangeForm form, string entry)
    {
        if (pieces.Read(piece) is not { Source: { } source } file) return Gone(piece);
        return maker.IsMade(form) ? ChangeMaker.Done : Taken(piece, form, file, NotedVoid.BackOf(source, entry, "this log", i => Id(form, i), maker.Here), $"put back {entry}");
    }

    private ChangeOutcome Taken(string piece, ChangeForm form, PieceFile file, (ImmutableArray<NotedVoid> Made, Finding? Fault) noted, string words)
    {
        if (noted.Fault is { } fault) return new(fault, false);
        IEnumerable<LogAddition> Elsewhere(NotedVoid voided) => voided.With.Select(n => store.Find(Path.GetFileNameWithoutExtension(n))).OfType<Document>()
            .Where(d => store.FactsOf(d.Id).Read().Entries.Any(e => e.Id == voided.Entry!.Entry)).Select(d => LogAddition.To(d.Id, voided.Entry!));
        return maker.Make(piece, new Change(form.Id, maker.At, words) { Facts = [LogAddition.To(file.Document.Id, [.. noted.Made.Select(m => (LogEntry)m.Entry!)]), .. noted.Made.SelectMany(Elsewhere)] });
    }

    /// <summary>Lets a finding, or something upset, stand.</summary>
    public ChangeOutcome Allow(string piece, ChangeForm form, string code, string key, string because) => Make(piece, form, "let stand", (shown, _, at) =>
    {
        // It is kept in the words of the text's own unit, whoever lets it stand.
        PieceSource source = shown.ShownIn(null);
        SetPiece set = desk.SetOut(piece, source);
        Noted<AllowEntry> noted = NotedAllow.Of(set, desk.PlanIfReady(piece, source)?.Findings ?? set.Findings, code, key, because, Id(form, 0), at);
        return (noted.Entry is { } entry ? [entry] : [], noted.Faults);
    });

    private static ChangeOutcome Gone(string piece) => new(new("piece.gone", Severity.Stop, "", $"There is no piece '{piece}' that can be read.", "It may have been put away or renamed in another window, or its text has mistakes."), false);

    private static string Id(ChangeForm form, int at) => EntryIds.Of(form.Id, at);

    private ChangeOutcome Make(string piece, ChangeForm form, string words, Func<PieceSource, SetPiece, string, (ImmutableArray<LogEntry> Entries, ImmutableArray<Finding> Faults)> make)
    {
        if (pieces.Read(piece) is not { Source: { } source } file) return Gone(piece);
        if (maker.IsMade(form)) return ChangeMaker.Done;
        (ImmutableArray<LogEntry> entries, ImmutableArray<Finding> faults) = make(source, desk.SetOut(piece, source), maker.Here);
        return !faults.IsEmpty ? ChangeOutcome.Refused(faults) : maker.Make(piece, new Change(form.Id, maker.At, words) { Facts = [LogAddition.To(file.Document.Id, entries)] });
    }
}
