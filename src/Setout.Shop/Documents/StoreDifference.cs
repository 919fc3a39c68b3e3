using System.Collections.Immutable;

namespace Setout.Shop.Documents;

/// <summary>What happens with a document or a log when one store takes the place of another.</summary>
public enum DifferenceAct
{
    /// <summary>It is in the other one alone.</summary>
    Comes,

    /// <summary>It is in both and differs.</summary>
    Changes,

    /// <summary>It is in both alike.</summary>
    Stays,

    /// <summary>It is in this one alone.</summary>
    Goes,
}

/// <summary>A document or a log.</summary>
/// <param name="Name">Of the document.</param>
/// <param name="Act">What happens with it.</param>
/// <param name="Words">For people.</param>
public sealed record DifferenceLine(string Name, DifferenceAct Act, string Words);

/// <summary>What would change if one store took the place of another, such as a backup that of the present one.</summary>
public static class StoreDifference
{
    /// <summary>Document by document, by name.</summary>
    /// <param name="now">What is there.</param>
    /// <param name="then">What would take its place.</param>
    public static ImmutableArray<DifferenceLine> Of(IDocumentStore now, IDocumentStore then)
    {
        var here = now.Documents().ToDictionary(d => d.Id);
        var there = then.Documents().ToDictionary(d => d.Id);
        IEnumerable<DifferenceLine> documents = here.Keys.Union(there.Keys).Select(id => (here.GetValueOrDefault(id), there.GetValueOrDefault(id)) switch
        {
            ({ } old, null) => new(old.Name, DifferenceAct.Goes, "is not in it"),
            (null, { } coming) => new(coming.Name, DifferenceAct.Comes, coming.IsPutAway ? "comes back, put away" : "comes back"),
            ({ } old, { } coming) => Both(now, old, then, coming),
            _ => throw new InvalidOperationException("A document is in one of them."),
        });
        HashSet<string> names = [.. here.Values.Select(d => d.Name), .. there.Values.Select(d => d.Name)];
        // Logs without a document.
        IEnumerable<DifferenceLine> logs = now.Pieces().Union(then.Pieces()).Where(p => !names.Contains(p)).Select(p => (Name: p, Words: Log(now.FactsOf(p).Read(), then.FactsOf(p).Read())))
            .Select(l => new DifferenceLine(l.Name, l.Words.Length == 0 ? DifferenceAct.Stays : DifferenceAct.Changes, l.Words.Length == 0 ? "its log is the same" : l.Words));
        return [.. documents.Concat(logs).OrderBy(l => l.Name, StringComparer.Ordinal)];
    }

    private static DifferenceLine Both(IDocumentStore now, DocumentLine old, IDocumentStore then, DocumentLine coming)
    {
        string[] words =
        [
            .. old.Name != coming.Name ? [$"is called '{coming.Name}' again"] : Array.Empty<string>(),
            .. old.IsPutAway == coming.IsPutAway ? Array.Empty<string>() : [coming.IsPutAway ? "is put away again" : "is taken back"],
            .. now.Find(old.Id)!.Text == then.Find(coming.Id)!.Text ? Array.Empty<string>() : [$"gets the text after: {coming.Head.Step}"],
            .. Log(now.FactsOf(old.Id).Read(), then.FactsOf(coming.Id).Read()) is { Length: > 0 } log ? [log] : Array.Empty<string>(),
        ];
        return words.Length > 0 ? new(old.Name, DifferenceAct.Changes, string.Join("; ", words)) : new(old.Name, DifferenceAct.Stays, "is the same");
    }

    private static string Log(Texts.Log now, Texts.Log then)
    {
        HashSet<string> here = [.. now.Entries.Select(e => e.Id)], there = [.. then.Entries.Select(e => e.Id)];
        int goes = here.Except(there).Count(), comes = there.Except(here).Count();
        return string.Join(" and ", (string[])[.. goes > 0 ? [$"{goes} {(goes == 1 ? "entry" : "entries")} of its log {(goes == 1 ? "is" : "are")} not in it"] : Array.Empty<string>(),
            .. comes > 0 ? [$"{comes} {(comes == 1 ? "entry" : "entries")} of its log {(comes == 1 ? "comes" : "come")} back"] : Array.Empty<string>()]);
    }
}
