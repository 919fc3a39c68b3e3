using System.Collections.Immutable;
using System.Globalization;
using Setout.Commands;
using Setout.Core.Workings;
using Setout.Shop.Documents;
using Setout.Shop.Plans;
using Setout.Shop.Texts;
using Setout.Store;
using Setout.Workbench.Pieces;

namespace Setout.Files;

/// <summary>
/// The texts of a piece that the workbench keeps, read as its pages read them. Reading waits for nobody. Facts are appended beside a workbench that is open: the store lets writers take turns, and
/// windows hear of it.
/// </summary>
internal sealed record KeptFiles : PieceFiles
{
    private readonly string _folder;
    private readonly PieceFile _file;

    private KeptFiles(string folder, PieceFile file, bool hasShop) => (_folder, _file, Shop) = (folder, file, hasShop ? Kept + DocumentName.Shop : null);

    /// <summary>Finds a piece.</summary>
    /// <param name="name">Its name without the sign before it.</param>
    /// <param name="shop">A shop file that was named; the workbench has its own.</param>
    /// <param name="data">The data folder named; null for the usual one.</param>
    public static KeptFiles Find(string name, string? shop, string? data) => StoreRefusal.Of(() =>
    {
        if (shop is not null) throw new UsageException("A piece of the workbench stands on the workbench's own shop file.", "Leave --shop out.");
        string folder = DataPlace.Find(data), database = Path.Combine(folder, DataFolder.DatabaseName);
        if (!File.Exists(database)) throw new UsageException($"Nothing is kept in '{folder}' yet.", "Name the data folder with --data.");
        using ShopDatabase store = ShopDatabase.OpenToRead(database);
        var pieces = new KeptPieces(store, folder, Hand.Commands, () => null);
        if (pieces.Read(name) is { } file) return new KeptFiles(folder, file, store.Find(DocumentName.Shop) is { Line.IsPutAway: false });
        bool isAway = store.Find(name) is { Kind: DocumentKind.Piece };
        throw new UsageException($"{(isAway ? $"'{Kept}{name}' was put away" : $"The workbench keeps no piece '{Kept}{name}'")} in '{folder}'.",
            isAway ? "Take it back on the shelf of the workbench." : NearestWord.Of(name, pieces.Names()) is { } guess ? $"Did you mean '{Kept}{guess}'?" : $"It keeps {(pieces.Names() is { IsEmpty: false } names ? string.Join(", ", names.Select(n => Kept + n)) : "none")}.");
    });

    /// <inheritdoc/>
    public override string Piece => Kept + _file.Name;

    /// <inheritdoc/>
    public override string FileName => _file.FileName;

    /// <inheritdoc/>
    public override string Place => Path.Combine(_folder, DataFolder.DatabaseName);

    /// <inheritdoc/>
    public override string LogName => $"{Piece} (its log)";

    /// <inheritdoc/>
    public override string? Shop { get; }

    /// <inheritdoc/>
    public override (PieceSource? Source, ImmutableArray<SourceFinding> Findings) Read() => (_file.Source, _file.Findings);

    /// <inheritdoc/>
    public override Log ReadLog() => StoreRefusal.Of(() =>
    {
        using ShopDatabase store = ShopDatabase.OpenToRead(Place);
        return store.FactsOf(_file.Document.Id).Read();
    });

    /// <inheritdoc/>
    public override void Append(LogEntry entry) => Append([(this, entry)]);

    /// <summary>Appends to the logs of several pieces of one data folder, as one change.</summary>
    public static void Append(ImmutableArray<(KeptFiles Files, LogEntry Entry)> entries)
    {
        var change = new Change("c" + Guid.NewGuid().ToString("n", CultureInfo.InvariantCulture)[..16], entries[0].Entry.At, "facts from the command line")
        {
            Facts = [.. entries.Select(e => LogAddition.To(e.Files._file.Document.Id, e.Entry))],
        };
        ChangeAnswer answer = StoreRefusal.Of(() => DataFolder.Share(entries[0].Files._folder, TimeProvider.System, store => store.Make(change)));
        if (answer is ChangeRefused refused) throw new UsageException(refused.Fault.Words, refused.Fault.Remedy);
    }

    /// <inheritdoc/>
    public override string Beside(string name) => Kept + Path.GetFileNameWithoutExtension(name);

    /// <inheritdoc/>
    public override PieceFiles Other(string name, string? shop) => Find(Path.GetFileNameWithoutExtension(name), shop, _folder);

    /// <inheritdoc/>
    public override string Stand() => _file.Stand();

    /// <inheritdoc/>
    public override DateTimeOffset ChangedAt => _file.ChangedAt;
}
