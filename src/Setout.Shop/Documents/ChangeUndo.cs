using System.Collections.Immutable;

namespace Setout.Shop.Documents;

/// <summary>Takes a change back by another one. Facts are not taken back: that is what voiding is for.</summary>
public static class ChangeUndo
{
    /// <summary>The change that sets documents to what they were before; null when there is nothing to set.</summary>
    /// <param name="made">The change, such as an import. Where a document has gone on since, the store refuses to take it back.</param>
    /// <param name="id">Of the new change.</param>
    /// <param name="at">When.</param>
    public static Change? Of(ChangeRecord made, string id, string at)
    {
        ImmutableArray<DocumentChange> back = [.. made.Documents.SelectMany(Back)];
        return back.IsEmpty ? null : new(id, at, $"taken back: {made.Words}"[..Math.Min(Change.LongestWords, made.Words.Length + 12)]) { Documents = back };
    }

    private static IEnumerable<DocumentChange> Back(ChangedDocument changed)
    {
        (DocumentLine? before, DocumentLine after) = (changed.Before, changed.After);
        (DocumentId id, int revision) = (after.Id, after.Revision);
        // What was made is put away: nothing is ever taken out.
        if (before is null) yield return new PutAway(id, revision);
        if (before is null) yield break;
        if (after.IsPutAway && !before.IsPutAway) yield return new TakeBack(id, revision);
        if (after.Head.Number != before.Head.Number)
            yield return after.Head.Parent == before.Head.Number ? new UndoStep(id, revision) : new GoBack(id, revision, before.Head.Number);
        if (after.Name != before.Name) yield return new Rename(id, revision, before.Name);
        if (!after.IsPutAway && before.IsPutAway) yield return new PutAway(id, revision);
    }
}
