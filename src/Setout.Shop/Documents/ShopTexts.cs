using System.Collections.Immutable;
using Setout.Shop.Facts;
using Setout.Shop.Texts;

namespace Setout.Shop.Documents;

/// <summary>A text as a file of a folder.</summary>
/// <param name="Path">Its path in the folder, with forward slashes.</param>
/// <param name="Text">What it holds.</param>
public sealed record TextFile(string Path, string Text);

/// <summary>All texts of a shop as the files of one folder: what any version, and any editor, can read.</summary>
/// <param name="Files">In order of their paths.</param>
/// <param name="Pieces">How many are piece files.</param>
/// <param name="Shops">How many are shop files.</param>
/// <param name="Logs">How many are logs.</param>
/// <param name="Entries">How many entries the logs hold.</param>
/// <param name="PutAway">How many of them lie in the folder <see cref="PutAwayFolder"/>.</param>
public sealed record ShopTexts(ImmutableArray<TextFile> Files, int Pieces, int Shops, int Logs, int Entries, int PutAway)
{
    /// <summary>The folder inside it for the texts of documents that were put away.</summary>
    public const string PutAwayFolder = "put-away";

    /// <summary>How many of each, in words.</summary>
    public override string ToString() =>
        $"{Pieces} piece files, {Shops} shop files, {Logs} logs with {Entries} entries{(PutAway > 0 ? $"; {PutAway} of these files are in {PutAwayFolder}" : "")}";

    /// <summary>The texts of a store as they stand.</summary>
    /// <exception cref="FactStoreException">The store cannot be read.</exception>
    public static ShopTexts Of(IDocumentStore store) => Of(
        [.. store.Documents().Select(d => (d, store.Find(d.Id)!.Text))],
        [.. store.Pieces().Select(p => (p, store.FactsOf(p).Read().Entries))]);

    /// <summary>The texts of documents and logs.</summary>
    /// <param name="documents">Each with its text.</param>
    /// <param name="logs">The entries of each piece that has some, by the name of the piece.</param>
    public static ShopTexts Of(ImmutableArray<(DocumentLine Line, string Text)> documents, ImmutableArray<(string Piece, ImmutableArray<LogEntry> Entries)> logs)
    {
        var files = ImmutableArray.CreateBuilder<TextFile>();
        HashSet<string> taken = [.. documents.Select(d => DocumentName.Fold(d.Line.Name))];
        foreach ((DocumentLine line, string text) in documents) files.Add(new($"{Folder(line)}{line.Name}.yaml", text));
        foreach ((string piece, ImmutableArray<LogEntry> entries) in logs)
        {
            DocumentLine? owner = documents.Select(d => d.Line).FirstOrDefault(d => d.Name == piece && d.Kind == DocumentKind.Piece);
            files.Add(new($"{(owner is null ? "" : Folder(owner))}{(owner is null ? Free(taken, piece) : piece)}.log.yaml", LogText.Head + string.Concat(entries.Select(FactText.Of))));
        }
        return new([.. files.OrderBy(f => f.Path, StringComparer.Ordinal)], documents.Count(d => d.Line.Kind == DocumentKind.Piece), documents.Count(d => d.Line.Kind == DocumentKind.Shop),
            logs.Length, logs.Sum(l => l.Entries.Length), files.Count(f => f.Path.Contains('/')));
    }

    private static string Folder(DocumentLine line) => line.IsPutAway ? PutAwayFolder + "/" : "";

    // A log without a document may have a name that no file can have, or that another has but for large and small letters.
    private static string Free(HashSet<string> taken, string piece)
    {
        string fit = DocumentName.AsFile(piece), name = fit;
        for (int i = 2; !taken.Add(DocumentName.Fold(name)); i++) name = $"{fit}-{i}";
        return name;
    }
}
