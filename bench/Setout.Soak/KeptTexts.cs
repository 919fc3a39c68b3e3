using System.Collections.Immutable;
using Setout.Shop.Documents;
using Setout.Shop.Plans;
using Setout.Shop.Texts;
using Setout.Store;

namespace Setout.Soak;

/// <summary>What a data folder holds, looked at after all that was done to it.</summary>
internal static class KeptTexts
{
    /// <summary>Texts and logs that cannot be read as what they are, histories that do not hang together, a database that no backup can be made of.</summary>
    /// <returns>What is wrong; none when all is well.</returns>
    public static ImmutableArray<string> Broken(string data)
    {
        (DataFolder? folder, _) = DataFolder.Open(data, TimeProvider.System);
        if (folder is null) return ["the data folder is still used by another"];
        using (folder)
        {
            ShopDatabase store = folder.Database;
            folder.Backups.Make(BackupReason.Asked);
            return [.. Texts(store), .. store.Documents().SelectMany(d => States(store, store.Find(d.Id)!))];
        }
    }

    // Written out and read back, as an export is.
    private static IEnumerable<string> Texts(ShopDatabase store)
    {
        foreach (TextFile file in ShopTexts.Of(store).Files.Where(f => f.Path.EndsWith(".log.yaml", StringComparison.Ordinal)))
        {
            TextRead<Log> read = LogText.Read(file.Text);
            if (read.Value is null) yield return $"{file.Path} cannot be read: {read.Findings[0].Words}";
        }
    }

    // A text may hold mistakes, for people write it; each is a finding, in every state.
    private static IEnumerable<string> States(ShopDatabase store, Document document)
    {
        ImmutableArray<HistoryLine> history = store.History(document.Id);
        if (history.Count(h => h.IsHead) != 1) yield return $"{document.Name} points at {history.Count(h => h.IsHead)} states";
        HashSet<string> seen = [];
        foreach (string? text in history.Select(h => store.TextOf(document.Id, h.State.Number)))
        {
            if (text is null) yield return $"{document.Name} has a state without a text";
            else if (seen.Add(text) && document.Kind == DocumentKind.Piece && PieceSource.Read(text, null, null) is { Source: null, Findings.IsEmpty: true }) yield return $"{document.Name} has a state that cannot be read and does not say why";
        }
    }
}
