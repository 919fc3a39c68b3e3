using System.Collections.Immutable;
using System.Globalization;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.SettingOut;
using Setout.Core.SettingOut.Finishes;
using Setout.Core.Workings;
using Setout.Shop.Plans;
using Setout.Shop.Texts;

namespace Setout.Shop.Noting;

/// <summary>A mark as a person gives it.</summary>
/// <param name="Progress">How far it has come.</param>
/// <param name="Keys">Parts, one of several (<c>L3.side#1</c>), drawers, materials, things bought; one or more.</param>
public sealed record MarkWords(Progress Progress, ImmutableArray<string> Keys)
{
    /// <summary>For parts cut: the name of the sheet they came from, as it was read; null where it is not said.</summary>
    public string? Sheet { get; init; }

    /// <summary>True where parts were cut, or things bought, anew.</summary>
    public bool IsAgain { get; init; }

    /// <summary>Other figures than the plan's, each as <c>L1.end.length=17 17/32</c>.</summary>
    public ImmutableArray<string> To { get; init; } = [];
}

/// <summary>Makes a mark out of what a person named. Pure.</summary>
public static class NotedMark
{
    /// <summary>The entry, or why it is none: nothing of that name, cut already, a sheet that was never read, a figure that is no length.</summary>
    /// <param name="set">The piece without the mark.</param>
    /// <param name="typed">What was typed or chosen.</param>
    /// <param name="id">The id of the entry.</param>
    /// <param name="at">Its time.</param>
    /// <returns>With an aside where a part was still waiting for a reading.</returns>
    public static Noted<MarkEntry> Of(SetPiece set, MarkWords typed, string id, string at)
    {
        var keys = ImmutableArray.CreateBuilder<string>();
        foreach (string word in typed.Keys)
        {
            (ImmutableArray<string> some, Finding? unknown) = KeysOf(set, typed.Progress, word);
            if (unknown is not null) return Noted<MarkEntry>.Refuse(unknown);
            keys.AddRange(some.Where(k => !keys.Contains(k)));
        }
        ImmutableArray<string> all = keys.ToImmutable();
        if (all.IsEmpty) return Noted<MarkEntry>.Refuse("note.nothing", "This names nothing.", "Name parts, such as L3.side.");
        if (Again(set, typed, all) is { } already) return Noted<MarkEntry>.Refuse(already);
        (ImmutableDictionary<QuantityKey, ExactLength> figures, Finding? fault) = Given(set, typed, all, Marking.Figures(set, typed.Progress, all, typed.IsAgain));
        if (fault is not null) return Noted<MarkEntry>.Refuse(fault);
        string from = "";
        if (typed.Sheet is { } sheet)
        {
            (from, fault) = SheetOf(set, typed.Progress, all, sheet);
            if (fault is not null) return Noted<MarkEntry>.Refuse(fault);
        }
        return new(new(id, at, typed.Progress, all, figures) { Chosen = Marking.Chosen(set, typed.Progress, all, typed.IsAgain), From = from }, null);
    }

    /// <summary>The parts that are marked cut and were waiting for a reading, as findings.</summary>
    public static IEnumerable<Finding> Waited(SetPiece set, MarkEntry entry) =>
        from part in set.Parts
        where entry.Progress == Progress.Cut && set.IsHeld(part) && entry.Keys.Any(k => k.Split('#')[0] == part.Key)
        select new Finding("mark.waits", Severity.Warn, part.Key, $"{part.Name} was waiting for a reading of {part.HeldUntil[^1]}, and is marked cut without it; its figures stand as it was cut.", "If it is not cut, void the entry and take the reading first.", part.Place);

    /// <summary>The openings by which parts are marked cut, and of which what bounds them is not, as findings.</summary>
    /// <param name="marked">The piece with the mark: what was marked by it is not missing.</param>
    /// <param name="entry">The mark.</param>
    public static IEnumerable<Finding> Early(SetPiece marked, MarkEntry entry) =>
        from early in EarlyOpening.Of(marked, entry)
        select new Finding("mark.before-built", Severity.Warn, early.Key.Owner, early.OfCutting, $"Mark them if they are cut{marked.Piece.Hand.Say($": setout mark FILE cut {string.Join(' ', early.Keys(marked))}", "")}; if they are not, the reading pins what is not there yet.");

    /// <summary>The parts that are marked finished before a finish can go on them, as findings: what is glued, planed or cut afterwards would spoil it.</summary>
    public static IEnumerable<Finding> NotReady(SetPiece set, MarkEntry entry)
    {
        if (entry.Progress != Progress.Finished) yield break;
        foreach (FinishedPart finished in FinishWork.Of(set).SelectMany(w => w.Parts).DistinctBy(p => p.Part.Key))
        {
            Part part = finished.Part;
            IEnumerable<int> marked = Enumerable.Range(1, part.Count).Where(i => entry.Keys.Contains(part.Key) || entry.Keys.Contains(BenchFacts.Member(part.Key, i)));
            string state = finished.From.ToString().ToLowerInvariant();
            if (marked.Any(i => set.Facts.StateOf(part.Key, i) < finished.From))
                yield return new("mark.not-ready", Severity.Warn, part.Key, $"{part.Name} is marked finished, and by the log it is not {state} yet.", $"If it is {state}, mark that too; else void the entry.", part.Place);
        }
    }

    private static (ImmutableDictionary<QuantityKey, ExactLength> Figures, Finding? Fault) Given(
        SetPiece set, MarkWords typed, ImmutableArray<string> keys, ImmutableDictionary<QuantityKey, ExactLength> figures)
    {
        (ImmutableDictionary<QuantityKey, ExactLength>, Finding?) Refuse(string what, string remedy) => (figures, new("note.figure", Severity.Stop, "", what, remedy));
        if (typed.To.Length > 0 && typed.Progress != Progress.Cut) return Refuse("Only parts that are cut have figures they were cut to.", set.Piece.Hand.NoFigure);
        foreach (string given in typed.To)
        {
            int at = given.IndexOf('=', StringComparison.Ordinal);
            if (at <= 0) return Refuse($"'{TextContext.Shown(given)}' does not say which size was cut to what.", "Write it as L1.end.length=17 17/32, in quotes where it has blanks.");
            string key = given[..at].Trim(), value = given[(at + 1)..].Trim();
            if (!figures.ContainsKey(new(key)))
                return Refuse($"'{TextContext.Shown(key)}' is not a size of {string.Join(", ", keys)}.", $"Name one of {string.Join(", ", figures.Keys.Select(k => k.Text).Order(StringComparer.Ordinal))}.");
            ParseResult<ExactLength> read = LengthText.Parse(value, set.Piece.Shown);
            if (!read.IsRead) return Refuse($"'{TextContext.Shown(value)}' is not a length: {read.Fault!.Words}", read.Fault.Remedy);
            if (read.Value.Sign <= 0) return Refuse($"Nothing is cut to {TextContext.Shown(value)}.", "Give a length above 0.");
            figures = figures.SetItem(new(key), read.Value);
        }
        return (figures, null);
    }

    private static (ImmutableArray<string> Keys, Finding? Fault) KeysOf(SetPiece set, Progress progress, string word)
    {
        static (ImmutableArray<string>, Finding?) Refuse(string what, string remedy) => ([], new("note.key", Severity.Stop, "", what, remedy));
        string plain = word.Split('#')[0];
        if (Marking.Parts(set, progress, word) is { Length: > 0 } parts)
        {
            if (word.Contains('#') && set.Parts.First(p => p.Key == plain) is var part && !(int.TryParse(word[(word.IndexOf('#') + 1)..], out int n) && n >= 1 && n <= part.Count && word == BenchFacts.Member(plain, n)))
                return Refuse($"There is no '{TextContext.Shown(word)}': {part.Name} is {part.Count} off.", $"Use {plain}#1 to {plain}#{part.Count}.");
            return (progress == Progress.Bought ? [word] : parts, null);
        }
        if (progress == Progress.Bought && (set.Piece.Keys.ContainsKey(plain) || ThingsToBuy.Has(set, word) || set.Piece.Materials.ContainsKey(word))) return ([word], null);
        return set.Piece.Keys.ContainsKey(plain) || set.Piece.Materials.ContainsKey(plain)
            ? Refuse($"'{TextContext.Shown(word)}' has no parts of its own that could be {progress.ToString().ToLowerInvariant()}.", $"Name the part, such as L3.side; {set.Piece.Hand.PartsToo}")
            : ([], NotedKeys.Unknown(set, word));
    }

    private static Finding? Again(SetPiece set, MarkWords typed, ImmutableArray<string> keys)
    {
        if (typed.Progress != Progress.Cut || typed.IsAgain) return null;
        foreach (string key in keys)
        {
            string[] halves = key.Split('#');
            Part part = set.Parts.First(p => p.Key == halves[0]);
            bool isCut = halves.Length == 2 ? set.Facts.StateOf(part.Key, int.Parse(halves[1], CultureInfo.InvariantCulture)) > PartState.Planned : set.Facts.CutOf(part) == part.Count;
            if (isCut) return new(Noted<MarkEntry>.Already, Severity.Stop, part.Key, $"{part.Name} ({key}) is cut already; nothing was written.", $"{set.Piece.Hand.Again} if it was cut anew, or void the entry that says so.");
        }
        return null;
    }

    // A sheet is known by its reading: another name would be a letter of some plan, or a slip, and give the part no thickness.
    private static (string From, Finding? Fault) SheetOf(SetPiece set, Progress progress, ImmutableArray<string> keys, string sheet)
    {
        static (string, Finding?) Refuse(string what, string remedy) => ("", new("note.sheet", Severity.Stop, "", what, remedy));
        if (progress != Progress.Cut) return Refuse("Only parts that are cut come from a sheet.", $"{char.ToUpperInvariant(set.Piece.Hand.NoSheet[0])}{set.Piece.Hand.NoSheet[1..]}.");
        string[] materials = [.. keys.Select(k => set.Parts.First(p => p.Key == k.Split('#')[0]).Material).Distinct()];
        if (materials is not [var material]) return Refuse($"These parts are of {string.Join(" and ", materials)}: they cannot have come from one sheet.", "Mark them one material at a time.");
        (string key, Finding? fault) = NotedKeys.Sheet(set, material, sheet);
        if (fault is not null) return ("", fault);
        if (set.Worked.Values.ContainsKey(QuantityKey.Of(key, "thickness"))) return (key, null);
        ImmutableArray<string> known = NotedKeys.SheetsRead(set, material);
        return Refuse($"No sheet '{TextContext.Shown(sheet)}' of {material} has been read; nothing was written.",
            $"{(known.Length > 0 ? $"Read are: {string.Join(", ", known)}. " : "")}{set.Piece.Hand.ToReadSheet(material, sheet)}; or {set.Piece.Hand.NoSheet}.");
    }
}
