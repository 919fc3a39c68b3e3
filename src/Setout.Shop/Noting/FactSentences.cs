using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Shop.Texts;

namespace Setout.Shop.Noting;

/// <summary>Says an entry of the log in a sentence.</summary>
public static class FactSentences
{
    private const int MostNames = 10;

    /// <summary>The entry in words, with figures in the unit of the piece, such as <c>read bay L, clear width: 19 17/32 in (tape)</c>.</summary>
    /// <param name="entry">The entry.</param>
    /// <param name="log">The log it stands in.</param>
    /// <param name="set">The piece set out with that log.</param>
    public static string Of(LogEntry entry, Log log, SetPiece set) => entry switch
    {
        ReadingEntry reading => $"read {NameOf(set, reading.Key)}: {string.Join(", ", reading.Values.Select(v => Say(set, v)))}{Beside(reading)}",
        MarkEntry mark => Of(mark, set),
        VoidEntry voided => NotedVoid.RootOf(log, voided) is var (of, isPutBack) ? $"{(isPutBack ? "put back" : "taken back")}: {Of(of, log, set)}" : $"taken back: an entry {voided.Entry} that is not in this log",
        AllowEntry allow => $"let stand{(allow.Key.Length > 0 ? $" on {allow.Key}" : "")}: {allow.Code}, because {allow.Because}",
        _ => entry.Id,
    };

    /// <summary>The name of a quantity for people; its key where the piece has none of that key now.</summary>
    public static string NameOf(SetPiece set, QuantityKey key) => set.Worked.Values.TryGetValue(key, out Worked? worked) ? worked.Quantity.Name : key.Text;

    private static string Beside(ReadingEntry reading)
    {
        string[] beside = [.. new[] { reading.With, reading.Spot.Length > 0 ? $"at {reading.Spot}" : "" }.Where(w => w.Length > 0)];
        return beside.Length == 0 ? "" : $" ({string.Join(", ", beside)})";
    }

    private static string Of(MarkEntry mark, SetPiece set)
    {
        string what = mark.Progress.ToString().ToLowerInvariant(), from = mark.From.Length > 0 ? $", from {mark.From}" : "";
        if (mark.Run is { } run) return $"run {run} of a plan cut{(mark.Keys.Length > 0 ? $": {Names(set, mark.Keys)}" : "")}";
        if (mark.Keys.Length == 0) return $"gone: {string.Join(", ", mark.Took.Select(t => t.Name))}";
        return $"{what}: {Names(set, mark.Keys)}{from}";
    }

    private static string Names(SetPiece set, ImmutableArray<string> keys)
    {
        string[] names = [.. keys.Select(k => Named(set, k))];
        return names.Length <= MostNames ? string.Join(", ", names) : $"{string.Join(", ", names[..MostNames])} and {names.Length - MostNames} more";
    }

    private static string Named(SetPiece set, string key)
    {
        string[] halves = key.Split('#');
        return set.Parts.FirstOrDefault(p => p.Key == halves[0]) is { } part ? $"{part.Name}{(halves.Length == 2 ? $" #{halves[1]}" : "")}" : key;
    }

    private static string Say(SetPiece set, ExactLength value)
    {
        LengthFormat format = LengthFormat.For(set.Piece.Shown);
        if (format.Format(value).Residue.Sign == 0 || set.Piece.Shown == LengthUnit.Millimetre) return format.Text(value);
        decimal tenThousandths = (decimal)(value.Inches * 10_000).Round(Rounding.Nearest);
        return FormattableString.Invariant($"{tenThousandths / 10_000:0.####} in");
    }
}
