using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Shop.Plans;
using Setout.Shop.Rack;
using Setout.Shop.Texts;

namespace Setout.Shop.Noting;

/// <summary>Says an entry of the log in a sentence.</summary>
public static class FactSentences
{
    // Where an entry is only named, a few of its parts say which it is.
    private const int MostNames = 10, MostInAName = 3;

    /// <summary>The entry in words, with figures in the unit of the piece, such as <c>read bay L, clear width: 19 17/32 in (tape)</c>.</summary>
    /// <param name="entry">The entry.</param>
    /// <param name="log">The log it stands in.</param>
    /// <param name="set">The piece set out with that log.</param>
    public static string Of(LogEntry entry, Log log, SetPiece set) => entry switch
    {
        ReadingEntry reading => $"read {NameOf(set, reading.Key)}: {string.Join(", ", reading.Values.Select(v => Say(set, v)))}{Beside(reading)}",
        MarkEntry mark => Of(mark, set, MostNames),
        VoidEntry voided => NotedVoid.RootOf(log, voided) is var (of, isPutBack) ? $"{(isPutBack ? "put back" : "taken back")}: {Of(of, log, set)}" : $"taken back: an entry {voided.Entry} that is not in this log",
        AllowEntry allow => $"let stand{(allow.Key.Length > 0 ? $" on {allow.Key}" : "")}: {allow.Code}, because {allow.Because}",
        _ => entry.Id,
    };

    /// <summary>
    /// An entry by what it says, where a sentence speaks of it: nobody knows an entry by its id. Whoever types a command needs the id too, so there it stands behind: <c>'cut: drawer L1 side' (e3f2a1b04)</c>.
    /// </summary>
    /// <param name="entry">The entry.</param>
    /// <param name="log">The log it stands in.</param>
    /// <param name="set">The piece set out with that log.</param>
    public static string Named(LogEntry entry, Log log, SetPiece set) => Named(entry.Id, entry is MarkEntry mark ? Of(mark, set, MostInAName) : Of(entry, log, set), set.Piece);

    /// <summary>A mark by what it says; one of another piece with the keys of that, whose names are not at hand.</summary>
    /// <param name="mark">The mark, of this piece or another of its shop.</param>
    /// <param name="source">This piece.</param>
    /// <param name="set">The same set out.</param>
    public static string Named(LoggedMark mark, PieceSource source, SetPiece set)
    {
        bool isOwn = mark.By.Name == source.FileName;
        return $"{Named(mark.Entry.Id, Of(mark.Entry, isOwn ? set : null, MostInAName), source.Piece)}{(isOwn ? "" : $" of {mark.By.Spoken(source.Piece)}")}";
    }

    private static string Named(string id, string sentence, Piece piece) => $"'{sentence}'{piece.Hand.Say($" ({TextContext.Shown(id)})", "")}";

    /// <summary>The name of a quantity for people; its key where the piece has none of that key now.</summary>
    public static string NameOf(SetPiece set, QuantityKey key) => set.Worked.Values.TryGetValue(key, out Worked? worked) ? worked.Quantity.Name : key.Text;

    private static string Beside(ReadingEntry reading)
    {
        string[] beside = [.. new[] { reading.With, reading.Spot.Length > 0 ? $"at {reading.Spot}" : "" }.Where(w => w.Length > 0)];
        return beside.Length == 0 ? "" : $" ({string.Join(", ", beside)})";
    }

    private static string Of(MarkEntry mark, SetPiece? set, int most)
    {
        string what = mark.Progress.ToString().ToLowerInvariant(), from = mark.From.Length > 0 ? $", from {mark.From}" : "";
        if (mark.Run is { } run) return $"run {run} of a plan cut{(mark.Keys.Length > 0 ? $": {Names(set, mark.Keys, most)}" : "")}";
        if (mark.Keys.Length == 0) return $"gone: {string.Join(", ", mark.Took.Select(t => t.Name))}";
        return $"{what}: {Names(set, mark.Keys, most)}{from}";
    }

    private static string Names(SetPiece? set, ImmutableArray<string> keys, int most)
    {
        string[] names = [.. keys.Select(k => PartOf(set, k))];
        return names.Length <= most ? string.Join(", ", names) : $"{string.Join(", ", names[..most])} and {names.Length - most} more";
    }

    private static string PartOf(SetPiece? set, string key)
    {
        string[] halves = key.Split('#');
        return set?.Parts.FirstOrDefault(p => p.Key == halves[0]) is { } part ? $"{part.Name}{(halves.Length == 2 ? $" #{halves[1]}" : "")}" : key;
    }

    private static string Say(SetPiece set, ExactLength value) => $"{SumFigure.Of(value, set.Piece.Shown)} {set.Piece.Shown.Mark}";
}
