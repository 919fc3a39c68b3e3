using System.Collections.Immutable;
using System.Globalization;
using Setout.Core.Fit.Mending;
using Setout.Core.Measures.Text;
using Setout.Core.SettingOut;
using Setout.Shop.Documents;
using Setout.Shop.Noting;
using Setout.Shop.Plans;
using Setout.Shop.Texts;

namespace Setout.Workbench.Pieces;

/// <summary>The last thing that happened to a piece.</summary>
/// <param name="Words">What it was: the sentence of a fact, or the name of an edit.</param>
/// <param name="IsFact">True for facts from the bench.</param>
/// <param name="At">When.</param>
/// <param name="Account">What came of it.</param>
internal sealed record LastChange(string Words, bool IsFact, DateTimeOffset At, FactAccount Account)
{
    /// <summary>What it ended of what was upset and of what was offered for it, a sentence each.</summary>
    public ImmutableArray<string> Ended { get; init; } = [];

    /// <summary>Openings that it reads, or cuts something by, while what bounds them is not marked cut.</summary>
    public ImmutableArray<EarlyOpening> Early { get; init; } = [];
}

/// <summary>A piece as it was when it could last be drawn.</summary>
/// <param name="Set">Set out.</param>
/// <param name="Step">The step that made it so.</param>
/// <param name="At">When that was.</param>
internal sealed record DrawnBefore(SetPiece Set, string Step, string At);

/// <summary>How a piece stands on the bench. Each part is worked out when it is first asked for.</summary>
internal sealed class OnBench(Func<LastChange?> last, Func<(ImmutableArray<Upset> Open, ImmutableArray<(Upset Upset, string Because)> Stand)> upset, Func<ImmutableArray<Upset>, ImmutableArray<MendingAdvice>> advice, Func<ImmutableArray<Upset>, BenchStand> stand, Func<DrawnBefore?> drawn)
{
    private readonly Lazy<DrawnBefore?> _drawn = new(drawn);
    private readonly Lazy<LastChange?> _last = new(last);
    private readonly Lazy<(ImmutableArray<Upset> Open, ImmutableArray<(Upset Upset, string Because)> Stand)> _upset = new(upset);
    private ImmutableArray<MendingAdvice>? _advice;
    private BenchStand? _stand;

    /// <summary>The last fact or edit and what moved by it; null where nothing has happened yet.</summary>
    public LastChange? Last => _last.Value;

    /// <summary>How it was when it could last be drawn, of one that cannot be now; null for any other.</summary>
    public DrawnBefore? Drawn => _drawn.Value;

    /// <summary>What is upset and not let stand.</summary>
    public ImmutableArray<Upset> Upset => _upset.Value.Open;

    /// <summary>What is let stand of what is upset, with the reasons.</summary>
    public ImmutableArray<(Upset Upset, string Because)> LetStand => _upset.Value.Stand;

    /// <summary>The first of it, with remedies.</summary>
    public ImmutableArray<MendingAdvice> Advice => _advice ??= advice(Upset);

    /// <summary>Per stage and per batch what is settled, due, held and upset.</summary>
    public BenchStand Stand => _stand ??= stand(Upset);
}

/// <summary>
/// Keeps how each piece stands on the bench. It follows from what is kept alone, the log and the states of the text, so every window and every start of the program says the same.
/// </summary>
internal sealed class BenchDesk(IDocumentStore store, KeptPieces pieces)
{
    // Renames and save points are changes too, and move nothing.
    private const int MostBack = 8;

    // Each is set out to be looked at.
    private const int MostSetOut = 16;

    private readonly Lock _lock = new();
    private readonly Dictionary<string, (string Hash, int Revision, LengthUnit Shown, OnBench Bench)> _known = new(StringComparer.Ordinal);

    /// <summary>How a piece stands.</summary>
    public OnBench Of(PieceFile file, PieceSource source, SetPiece set)
    {
        lock (_lock)
        {
            if (_known.TryGetValue(file.Name, out var known) && known.Hash == source.Hash && known.Revision == file.Document.Revision && known.Shown == source.Piece.Shown) return known.Bench;
            var bench = new OnBench(() => Last(file, source, set), () => set.IsStopped ? ([], []) : LettingStand.Of(Remedies.UpsetsOf(set), source.Log),
                upset => upset.IsEmpty ? [] : Remedies.For(set, source.ShopInHand.Shims, Blanks.Of(set, source.ShopInHand), u => upset.Any(w => w.Words == u.Words), FactAccount.MostUpsets), upset => BenchStand.Of(set, upset),
                () => Drawn(file, source, set));
            _known[file.Name] = (source.Hash, file.Document.Revision, source.Piece.Shown, bench);
            return bench;
        }
    }

    /// <summary>What was read or marked last, where that came after the last edit of the text; empty where it did not.</summary>
    public ImmutableArray<LogEntry> FactsSinceTheLastEdit(PieceFile file, Log log) => [.. FactsAfter(Edited(file.Document), log)];

    private static LogEntry[] FactsAfter(Document? edited, Log log) =>
        LastFacts(log) is { Length: > 0 } facts && At(facts[^1].At) >= (edited is null ? DateTimeOffset.MinValue : At(edited.Line.ChangedAt)) ? facts : [];

    private LastChange? Last(PieceFile file, PieceSource source, SetPiece set)
    {
        if (set.IsStopped) return null;
        Document? edited = Edited(file.Document), before = edited is null ? null : store.Find(file.Document.Id, edited.Revision - 1);
        LogEntry[] facts = FactsAfter(edited, source.Log);
        if (facts.Length > 0)
        {
            PieceSource was = source with { Log = new(source.Log.Entries[..^facts.Length]) };
            SetPiece old = was.SetOut();
            return new(string.Join("; ", facts.Select(f => Told(f, source.Log, set))), true, At(facts[^1].At), Account(old, set, source))
            {
                Ended = OffersGone.Of(old, set, source.ShopInHand),
                Early = [.. facts.SelectMany(f => EarlyOpening.Of(set, f)).DistinctBy(e => e.Key)],
            };
        }
        if (before is null || pieces.With(file.Name, before.Text)?.Source?.SetOut() is not { IsStopped: false } unedited) return null;
        return new(Step(before.Line.Head, edited!.Line.Head), false, At(edited.Line.ChangedAt), Account(unedited, set, source));
    }

    // A reading may have stopped it, or its text.
    private DrawnBefore? Drawn(PieceFile file, PieceSource source, SetPiece set)
    {
        if (!set.IsStopped) return null;
        Document at = file.Document;
        if (!source.Log.Entries.IsEmpty && (source with { Log = new(source.Log.Entries[..^LastFacts(source.Log).Length]) }).SetOut() is { IsStopped: false } unread) return new(unread, at.Line.Head.Step, at.Line.ChangedAt);
        for (int i = 0; i < MostSetOut && at.Revision > 1; i++)
        {
            if (store.Find(at.Id, at.Revision - 1) is not { } before) return null;
            if (before.Text != at.Text && pieces.With(file.Name, before.Text)?.Source?.SetOut() is { IsStopped: false } old) return new(old, before.Line.Head.Step, before.Line.ChangedAt);
            at = before;
        }
        return null;
    }

    // What was taken back is told by what it was, not by the step that one came back to.
    private static string Step(DocumentState before, DocumentState after) => before.Parent == after.Number ? $"taken back: {before.Step}" : after.Parent == before.Number ? after.Step : $"gone back to: {after.Step}";

    private static FactAccount Account(SetPiece before, SetPiece after, PieceSource source) => FactAccount.Of(before, after, source.ShopInHand, most: 0);

    // A reading is told back with how far it is off, so that a slip is seen at once.
    private static string Told(LogEntry entry, Log log, SetPiece set) => Shop.Outputs.PageWords.Blanks(FactSentences.Of(entry, log, set))
        + (entry is ReadingEntry reading && set.Worked.Values.TryGetValue(reading.Key, out var read) ? $", {WorkingLines.Over(read.Over, set.Piece.Shown)}" : "");

    // What one change appended stands last and has one time.
    private static LogEntry[] LastFacts(Log log) => log.Entries.IsEmpty ? [] : [.. log.Entries.Reverse().TakeWhile(e => e.At == log.Entries[^1].At).Reverse()];

    private Document? Edited(Document now)
    {
        Document at = now;
        for (int i = 0; i < MostBack && at.Revision > 1; i++)
        {
            if (store.Find(now.Id, at.Revision - 1) is not { } before) return null;
            if (before.Text != at.Text) return at;
            at = before;
        }
        return null;
    }

    private static DateTimeOffset At(string time) => DateTimeOffset.TryParse(time, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out DateTimeOffset at) ? at : DateTimeOffset.MinValue;
}
