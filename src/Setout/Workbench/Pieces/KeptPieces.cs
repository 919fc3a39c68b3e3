using System.Collections.Immutable;
using Setout.Core.Measures.Text;
using Setout.Core.Workings;
using Setout.Shop.Documents;
using Setout.Shop.Facts;
using Setout.Shop.Plans;
using Setout.Shop.Rack;
using Setout.Shop.Runs;
using Setout.Shop.Texts;

namespace Setout.Workbench.Pieces;

/// <summary>A piece as it is kept.</summary>
/// <param name="Name">Its name in addresses: that of its document.</param>
/// <param name="Document">Its text and where that stands among its states.</param>
/// <param name="Source">The texts read; null when they cannot be used.</param>
/// <param name="Findings">What is wrong with the texts.</param>
internal sealed record PieceFile(string Name, Document Document, PieceSource? Source, ImmutableArray<SourceFinding> Findings)
{
    /// <summary>How its text is called where a place in it is told.</summary>
    public string FileName => Name + ".yaml";

    /// <summary>The text that a finding is in.</summary>
    public string FileOf(SourceText text) => text switch { SourceText.Log => Name + ".log.yaml", SourceText.Shop => DocumentName.Shop + ".yaml", _ => FileName };

    /// <summary>The piece as the rack knows it; names of blanks alone where its text cannot be read.</summary>
    public required ShopPiece InShop { get; init; }

    /// <summary>What a page or a plan stands on: the revision of the text, and what was read and marked since.</summary>
    public string Stand() => NotedAt > TextAt ? $"from revision {Document.Revision}, read and marked until {EntryTime.Say(NotedAt.ToLocalTime().DateTime)}" : $"from revision {Document.Revision} of {EntryTime.Say(TextAt.ToLocalTime().DateTime)}";

    /// <summary>When it was last changed: its text, or what was read, marked or taken back of it.</summary>
    public DateTimeOffset ChangedAt => NotedAt > TextAt ? NotedAt : TextAt;

    private DateTimeOffset TextAt => DateTimeOffset.Parse(Document.Line.ChangedAt, System.Globalization.CultureInfo.InvariantCulture);

    // The latest of all: logs that were kept apart and put together need not stand in the order of their times.
    private DateTimeOffset NotedAt => InShop.Log.Entries.Select(e => At(e.At)).DefaultIfEmpty(DateTimeOffset.MinValue).Max();

    private static DateTimeOffset At(string time) =>
        DateTimeOffset.TryParse(time, System.Globalization.CultureInfo.InvariantCulture, System.Globalization.DateTimeStyles.AssumeUniversal, out DateTimeOffset at) ? at : DateTimeOffset.MinValue;
}

/// <summary>
/// The pieces of the store, each with its log and the one shop file. Read afresh whenever anything in the store has changed, by whatever window or program; a name from an address is only ever
/// compared with names that are kept.
/// </summary>
/// <param name="store">Where they are kept.</param>
/// <param name="place">Where that is, for people.</param>
/// <param name="hand">By what whoever asks enters what is read and done: commands reach what the workbench keeps too.</param>
/// <param name="shown">The unit that whoever asks wants to be shown figures in; null for that of each piece.</param>
internal sealed class KeptPieces(IDocumentStore store, string place, Hand hand, Func<LengthUnit?> shown)
{
    private readonly Lock _lock = new();
    private (StoreStand Stand, ImmutableDictionary<string, PieceFile?> Read) _known = (new(-1, -1), ImmutableDictionary<string, PieceFile?>.Empty);

    /// <summary>Where they are kept, for people.</summary>
    public string Place { get; } = place;

    /// <summary>The unit that whoever asks wants to be shown figures in; null for that of each text.</summary>
    public LengthUnit? ShownIn => shown();

    /// <summary>The names of all pieces, in order; those that were put away left out.</summary>
    public ImmutableArray<string> Names() => [.. store.Documents().Where(d => d is { Kind: DocumentKind.Piece, IsPutAway: false }).Select(d => d.Name)];

    /// <summary>Reads a piece; null when there is none of that name.</summary>
    public PieceFile? Read(string name) => Shown(ReadOwn(name));

    private PieceFile? Shown(PieceFile? file) => file?.Source is { } source && source.ShownIn(shown()) is var told && !ReferenceEquals(told, source) ? file with { Source = told } : file;

    private PieceFile? ReadOwn(string name)
    {
        StoreStand stand = store.Stand();
        lock (_lock)
        {
            if (_known.Stand != stand) _known = (stand, ImmutableDictionary<string, PieceFile?>.Empty);
            else if (_known.Read.TryGetValue(name, out PieceFile? there)) return there;
        }
        PieceFile? read = ReadNow(name);
        lock (_lock)
        {
            // What was read may be of a later stand than was asked for: then it is not kept.
            if (_known.Stand == stand && store.Stand() == stand) _known = (stand, _known.Read.SetItem(name, read));
        }
        return read;
    }

    /// <summary>A piece as it would be with another text; null when there is none of that name.</summary>
    public PieceFile? With(string name, string text) => store.Find(name) is { Kind: DocumentKind.Piece, Line.IsPutAway: false } document ? Shown(Read(document with { Text = text })) : null;

    /// <summary>The texts of pieces as they were when the plan in hand was made; null where they cannot be used.</summary>
    /// <param name="files">The pieces, in the order of the plan.</param>
    /// <param name="then">What was known then.</param>
    public PieceSource? AsOf(IReadOnlyList<PieceFile> files, PlanInHand then)
    {
        string? shop = ShopTextAt(then.At);
        (string File, PieceSource? Source)[] all = [.. files.Zip(then.Pieces, (f, t) => (f.FileName, PieceSource.ReadWith(f.Document.Text, t.Log, shop).Source?.Beside(f.FileName, t.Others).For(hand).ShownIn(shown())))];
        if (all.Any(s => s.Source is null)) return null;
        return all.Length == 1 ? all[0].Source : PiecesTogether.Of(all.Select(s => (s.File, s.Source!))).Source;
    }

    /// <summary>All pieces, in the order of their names.</summary>
    public ImmutableArray<PieceFile> ReadAll() => [.. Names().Select(Read).OfType<PieceFile>()];

    private PieceFile? ReadNow(string name) => store.Find(name) is { Kind: DocumentKind.Piece, Line.IsPutAway: false } document ? Read(document) : null;

    private PieceFile Read(Document document)
    {
        Log log = store.FactsOf(document.Id).Read();
        string file = document.Name + ".yaml";
        (PieceSource? source, ImmutableArray<SourceFinding> findings) = PieceSource.ReadWith(document.Text, log, ShopTextNow());
        return new(document.Name, document, source?.Beside(file, Others(document)).For(hand), findings) { InShop = source is null ? ShopPiece.Of(file, log) : new(file, source.Piece, log) };
    }

    // The shop file as it stood at a time. One whose earlier states are not there, as after a restore, is taken as it stands now.
    private string? ShopTextAt(DateTimeOffset time)
    {
        if (store.Find(DocumentName.Shop) is not { Kind: DocumentKind.Shop } now) return ShopTextNow();
        Document? at = now;
        while (at is not null && At(at.Line.ChangedAt) > time) at = at.Revision > 1 ? store.Find(now.Id, at.Revision - 1) : null;
        return at is null ? ShopTextNow() : at.Line.IsPutAway ? null : at.Text;
    }

    private static DateTimeOffset At(string time) =>
        DateTimeOffset.TryParse(time, System.Globalization.CultureInfo.InvariantCulture, System.Globalization.DateTimeStyles.AssumeUniversal, out DateTimeOffset at) ? at : DateTimeOffset.MinValue;

    private string? ShopTextNow() => store.Find(DocumentName.Shop) is { Kind: DocumentKind.Shop, Line.IsPutAway: false } kept ? kept.Text : null;

    // Only those whose log tells of wood; a piece whose text cannot be read is known by the names of its blanks alone.
    private IEnumerable<ShopPiece> Others(Document but)
    {
        foreach (DocumentLine line in store.Documents().Where(d => d is { Kind: DocumentKind.Piece, IsPutAway: false } && d.Id != but.Id))
        {
            Log log = store.FactsOf(line.Id).Read();
            if (!log.Standing.OfType<MarkEntry>().Any(e => !e.Took.IsEmpty)) continue;
            yield return PieceText.Read(store.Find(line.Id)!.Text) is { IsSound: true, Value: { } piece } ? new(line.Name + ".yaml", piece, log) : ShopPiece.Of(line.Name + ".yaml", log);
        }
    }
}
