using System.Collections.Immutable;
using System.Globalization;
using Setout.Core.Craft;
using Setout.Core.Fit;
using Setout.Core.Fit.Mending;
using Setout.Core.Measures.Text;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Drawing.Scenes;
using Setout.Shop.Drawings;
using Setout.Shop.Noting;
using Setout.Shop.Plans;
using Setout.Shop.Texts;
using Setout.Workbench.Changing;
using Setout.Workbench.Pieces;
using Setout.Workbench.Shell;

namespace Setout.Workbench.Noting;

/// <summary>A line of what moved.</summary>
/// <param name="What">Which parts and which size.</param>
/// <param name="Href">Its working.</param>
/// <param name="Was">The figure before.</param>
/// <param name="Is">The figure now.</param>
/// <param name="By">By how much.</param>
public sealed record MovedRow(Phrase What, string Href, Phrase Was, Phrase Is, Phrase By);

/// <summary>An opening that was read, or cut by, while what bounds it is not marked cut.</summary>
/// <param name="Words">Which, and what is not marked.</param>
/// <param name="Head">Marks it cut.</param>
/// <param name="Keys">What is marked then, apart by blanks.</param>
/// <param name="Names">That for people.</param>
public sealed record EarlyNote(Phrase Words, FormHead Head, string Keys, string Names);

/// <summary>What the last fact or edit moved.</summary>
/// <param name="Words">What it was.</param>
/// <param name="When">When.</param>
/// <param name="Rows">What moved, like ones together.</param>
/// <param name="More">How many more lines there are, in words; empty for none.</param>
/// <param name="Besides">What may be cut now, must wait, came and went.</param>
/// <param name="Spoken">All of it in one sentence.</param>
public sealed record MovedView(Phrase Words, string When, ImmutableArray<MovedRow> Rows, string More, ImmutableArray<Phrase> Besides, string Spoken)
{
    /// <summary>Takes it back, all of it in one, or puts back what it took back; null where it is an edit, which is undone where edits are.</summary>
    public FormHead? Back { get; init; }

    /// <summary>What that is called, so that it is not mistaken for undoing an edit.</summary>
    public string BackWords { get; init; } = "";

    /// <summary>The last entry of it; empty where it cannot be taken back here.</summary>
    public string Entry { get; init; } = "";

    /// <summary>What wants a second look before anything is cut or trimmed by it: a reading that nothing explains, sizes that do not add up any more.</summary>
    public ImmutableArray<Note> Looks { get; init; } = [];

    /// <summary>Openings read, or cut by, while what bounds them is not marked cut, each with a mark for that.</summary>
    public ImmutableArray<EarlyNote> Early { get; init; } = [];

    private const int MostRows = 8;

    /// <summary>Null where nothing has happened yet.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="back">The page it is shown on.</param>
    internal static MovedView? Of(OpenPiece piece, string back)
    {
        if (piece.Bench?.Last is not { } last) return null;
        Ripple ripple = last.Account.Ripple;
        RippleRow[] rows = [.. RippleLines.Rows(piece.Set, ripple)];
        string figures = ripple.Figures switch { 0 => "no length or width of a part moved", 1 => "1 figure to cut moved", var n => $"{n} figures to cut moved" };
        int upset = last.Account.Upset.Length + last.Account.MoreUpset;
        string words = char.ToUpperInvariant(last.Words[0]) + last.Words[1..];
        ImmutableArray<LogEntry> facts = last.IsFact ? NotedVoid.WrittenWith(piece.Source.Log, piece.Source.Log.Entries[^1].Id) : [];
        bool isUndone = !facts.IsEmpty;
        Finding[] looks = [.. last.Account.Told.Where(f => f.Severity > Severity.Note && f.Code != BeforeBuilt.Code && (f.Code.StartsWith("reading.", StringComparison.Ordinal) || f.Code.StartsWith("chain.", StringComparison.Ordinal)))];
        ImmutableArray<EarlyNote> early = [.. last.Early.Select(e => new EarlyNote(Figures.Phrase($"{e.Words} Mark them if they are cut; if they are not, this pins what is not there yet."), FormHead.Of(piece, "mark", back), string.Join(' ', e.Keys(piece.Set)), e.Names))];
        string released = ripple.Released.Length > 0 ? $"; {ripple.Released.Sum(p => p.Count)} parts may be cut now" : "", upsets = upset > 0 ? $"; {upset} upset" : "";
        return new(Figures.Phrase(words), Shell.When.Of(last.At, TimeProvider.System),
            [.. rows.Take(MostRows).Select(r => new MovedRow(Figures.Phrase($"{r.Marks}: {r.What}"), Links.Size(piece.Name, r.Size.Text), Figures.Phrase(r.Before), Figures.Phrase(r.After), Figures.Phrase(r.By)))],
            rows.Length > MostRows ? $"and {rows.Length - MostRows} more lines like these" : "",
            [.. Anew(piece, ripple).Prepend(figures).Concat(RippleLines.Besides(ripple, k => Shop.Noting.FactSentences.NameOf(piece.Set, k))).Concat(last.Ended).Select(l => Figures.Phrase(char.ToUpperInvariant(l[0]) + l[1..]))],
            $"{words}. {char.ToUpperInvariant(figures[0]) + figures[1..]}{(RippleLines.Counted(ripple) is { Length: > 0 } counted ? $"; {counted}" : "")}{released}{upsets}{(looks.Length > 0 ? $"; look again: {looks[0].Words.TrimEnd('.')}" : "")}{(last.Early.Length > 0 ? $"; not marked cut: {last.Early[0].Names}" : "")}.")
        {
            Early = early,
            Looks = Note.Of(looks, piece.Set, piece.Name, piece.File.FileName),
            Back = isUndone ? FormHead.Of(piece, "void", back) : null,
            BackWords = BackOf(piece.Source.Log, facts),
            Entry = isUndone ? piece.Source.Log.Entries[^1].Id : "",
        };
    }

    private static string BackOf(Log log, ImmutableArray<LogEntry> facts) =>
        facts.All(f => f is VoidEntry voiding && NotedVoid.RootOf(log, voiding) is (_, false)) ? "Put it back"
        : facts is [ReadingEntry] ? "Take back what was read" : facts is [MarkEntry] ? "Take back this mark" : "Take back what was noted";

    private static IEnumerable<string> Anew(OpenPiece piece, Ripple ripple)
    {
        string[] lines = [.. RippleLines.Anew(piece.Set, ripple)];
        return lines.Length <= MostRows ? lines : [.. lines[..MostRows], $"and {lines.Length - MostRows} more like these"];
    }
}

/// <summary>A value to be read once a remedy is done.</summary>
/// <param name="Name">What.</param>
/// <param name="Planned">What it should come to.</param>
public sealed record MendValue(string Name, Phrase Planned);

/// <summary>A remedy that can be chosen.</summary>
/// <param name="Head">What goes along.</param>
/// <param name="Id">What the ids of its fields begin with.</param>
/// <param name="Words">All of it in a sentence; how it is told from others.</param>
/// <param name="Shown">The same with its figures.</param>
/// <param name="Cost">Minutes and stock.</param>
/// <param name="Steps">What to do, in order.</param>
/// <param name="Caution">What to mind; empty for nothing.</param>
/// <param name="Values">What is read when it is done.</param>
/// <param name="IsAct">False where there is nothing to do but to let it stand.</param>
public sealed record MendForm(
    FormHead Head, string Id, string Words, Phrase Shown, Phrase Cost, ImmutableArray<Phrase> Steps, string Caution, ImmutableArray<MendValue> Values, bool IsAct);

/// <summary>Something upset with its remedies.</summary>
/// <param name="Key">The key of what is out.</param>
/// <param name="Words">What is out.</param>
/// <param name="Href">Its working.</param>
/// <param name="Remedies">The quickest first.</param>
/// <param name="NoRemedy">Said where there is none; else empty.</param>
public sealed record UpsetView(string Key, Phrase Words, string Href, ImmutableArray<MendForm> Remedies, Phrase NoRemedy)
{
    /// <summary>To let it stand; null where it does already.</summary>
    public AllowForm? Allow { get; init; }

    /// <summary>Why it is let stand; empty where nobody lets it.</summary>
    public Phrase LetStand { get; init; } = Phrase.Empty;

    private const int MostRemedies = 4;

    /// <summary>All that is upset.</summary>
    internal static ImmutableArray<UpsetView> Of(OpenPiece piece, string back) =>
        piece.Bench is { } bench ? All(piece, bench, back) : [];

    private static ImmutableArray<UpsetView> All(OpenPiece piece, OnBench bench, string back) =>
    [
        .. bench.Advice.Select((a, i) => Of(piece, a, i, back)),
        .. bench.LetStand.Select(s => new UpsetView(s.Upset.Key.Text, Figures.Phrase(s.Upset.Words), Links.Size(piece.Name, s.Upset.Key.Text), [], Phrase.Empty) { LetStand = Figures.Phrase(s.Because) }),
    ];

    private static UpsetView Of(OpenPiece piece, MendingAdvice advice, int index, string back) => new(advice.Upset.Key.Text, Figures.Phrase(advice.Upset.Words),
        Links.Size(piece.Name, advice.Upset.Key.Text), [.. advice.Remedies.Take(MostRemedies).Select((r, i) => Form(piece, r, $"mend-{index}-{i}", back))], Figures.Phrase(advice.Words))
    {
        Allow = new(FormHead.Of(piece, "allow", back), $"allow-upset-{index}", LettingStand.CodeOf(advice.Upset), advice.Upset.Key.Text,
            advice.Remedies.FirstOrDefault(r => r.Kind == RemedyKind.Accept) is null ? "" : "every gap it takes part in is inside its limits", advice.Upset.Name),
    };

    private static MendForm Form(OpenPiece piece, Remedy remedy, string id, string back)
    {
        string stock = remedy.Stock.Words.Length > 0 ? $"; {remedy.Stock.Words}" : "";
        return new(FormHead.Of(piece, "mend", back), id, remedy.Words, Figures.Phrase(remedy.Words), Figures.Phrase((remedy.Minutes == 0 ? "no work" : $"about {remedy.Minutes} min") + stock + (remedy.InsteadWords.Length > 0 ? $"; {remedy.InsteadWords}" : "")),
            [.. remedy.Steps.Where(s => s != remedy.Words).Select(Figures.Phrase)], remedy.Caution.Length > 0 ? Cautions.Of(remedy.Caution).Words : "",
            [.. remedy.Acts.OfType<ReadAnew>().Select(a => new MendValue(Shop.Noting.FactSentences.NameOf(piece.Set, a.Key), Figures.Phrase(LengthFormat.For(piece.Set.Piece.Shown).Text(a.Value))))], remedy.Acts.Length > 0);
    }
}
