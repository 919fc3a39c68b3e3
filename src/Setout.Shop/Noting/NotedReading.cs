using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Setout.Core.Fit;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Shop.Texts;

namespace Setout.Shop.Noting;

/// <summary>A reading as a person gives it.</summary>
/// <param name="Key">What was measured, such as <c>L.width</c>, <c>L3.side.length</c> or the name of a material.</param>
/// <param name="Value">The words of the value, in any usual form; several spots apart by commas.</param>
public sealed record ReadingWords(string Key, string Value)
{
    /// <summary><c>tape</c>, <c>rule</c> or <c>calliper</c>; empty where it is not said.</summary>
    public string With { get; init; } = "";

    /// <summary>Where on the thing; empty where it is not said.</summary>
    public string Spot { get; init; } = "";

    /// <summary>For a thickness: the one sheet that was read; null for the lot.</summary>
    public string? Sheet { get; init; }

    /// <summary>True to take a value that looks like a slip or lies far off.</summary>
    public bool IsForced { get; init; }
}

/// <summary>Makes a reading out of what a person typed. Pure.</summary>
public static partial class NotedReading
{
    /// <summary>The instruments that a reading may name.</summary>
    public static ImmutableArray<string> Instruments { get; } = ["tape", "rule", "calliper"];

    /// <summary>The fields of a reading, as refusals name them.</summary>
    public const string ValueField = "value", SheetField = "sheet", WithField = "with";

    /// <summary>Those that are typed into, with what they are called, in the order in which one does it.</summary>
    public static ImmutableArray<(string Name, string Words)> Typed { get; } = [(SheetField, "which sheet"), ("spot", "at which spot"), (ValueField, "what was read")];

    /// <summary>The entry, or why it is none: not a length, nothing of that name, a likely slip, far off what is expected.</summary>
    /// <param name="set">The piece without the reading.</param>
    /// <param name="accuracy">How closely the shop works.</param>
    /// <param name="typed">What was typed.</param>
    /// <param name="id">The id of the entry.</param>
    /// <param name="at">Its time.</param>
    public static Noted<ReadingEntry> Of(SetPiece set, Accuracy accuracy, ReadingWords typed, string id, string at)
    {
        QuantityKey key;
        Finding? unknown;
        if (typed.Sheet is { } sheet)
        {
            (string of, unknown) = NotedKeys.Sheet(set, typed.Key.EndsWith(".thickness", StringComparison.Ordinal) ? typed.Key[..^".thickness".Length] : typed.Key, sheet);
            if (unknown is not null) unknown = unknown with { Field = SheetField };
            key = QuantityKey.Of(of, "thickness");
        }
        else (key, unknown) = NotedKeys.Pinned(set, typed.Key);
        (ImmutableArray<ExactLength> values, Finding? unread) = Values(typed.Value, set.Piece.Shown);
        Finding[] faults = [.. new[] { unknown, unread is null ? null : unread with { Field = ValueField }, Instrument(typed.With) }.OfType<Finding>()];
        if (faults.Length > 0) return Noted<ReadingEntry>.Refuse(faults[0], faults.AsSpan(1));
        var entry = new ReadingEntry(id, at, key, values, typed.With, typed.Spot);
        return !typed.IsForced && Doubt(set, accuracy, entry) is { } doubt ? Noted<ReadingEntry>.Refuse(doubt with { Field = ValueField }) : new(entry, null);
    }

    /// <summary>The refusal of an instrument that is not known; null where it is, or none is named.</summary>
    public static Finding? Instrument(string with) => with.Length == 0 || Instruments.Contains(with) ? null
        : new("note.instrument", Severity.Stop, "", $"There is no instrument '{TextContext.Shown(with)}'.", "Use tape, rule or calliper.") { Field = WithField };

    /// <summary>A slip, or a value too far off, is asked about before it becomes a fact.</summary>
    private static Finding? Doubt(SetPiece set, Accuracy accuracy, ReadingEntry entry)
    {
        // A bay that has slide panels is read between those: a page says which of the two it means.
        string of = set.Worked.Values.TryGetValue(entry.Key, out Worked? asked) ? set.Piece.Hand.Say(entry.Key.Text, Hands.Place(asked.Quantity.Name)) : entry.Key.Text;
        if (ReadingChecks.SlipOf(set, accuracy, entry.Key, entry.Values, entry.With) is { } slip)
            return new(Noted<ReadingEntry>.Slip, Severity.Stop, entry.Key.Owner, $"{slip.Words(set.Piece.Shown)} of {of}; nothing was written.", $"{set.Piece.Hand.Record} {slip.LikelyText(set.Piece.Shown)} if that is what it was; {set.Piece.Hand.Force} if it is so as you wrote it.");
        LengthFormat format = LengthFormat.For(set.Piece.Shown);
        return ReadingChecks.FarOf(set, accuracy, entry.Key, entry.Values, entry.With) is var (value, expected)
            ? new(Noted<ReadingEntry>.Far, Severity.Stop, entry.Key.Owner, $"{format.Text(value)} is far from the {format.Text(expected)} expected of {of}; nothing was written.", $"Measure again, look at the unit, or {set.Piece.Hand.Force} if it is so.")
            : null;
    }

    /// <summary>What was read, in figures; or why it is none.</summary>
    internal static (ImmutableArray<ExactLength> Values, Finding? Fault) Values(string text, LengthUnit unit)
    {
        static Finding Refuse(string words, string remedy) => new("note.value", Severity.Stop, "", words, remedy);
        // In inches a comma parts two spots; in millimetres one between two digits is a decimal comma, unless a fraction stands beside it.
        bool decimals = unit == LengthUnit.Millimetre && !text.Contains('/', StringComparison.Ordinal);
        string[] spots = [.. (decimals ? MetricComma().Split(text) : text.Split(',')).Select(s => s.Trim()).Where(s => s.Length > 0)];
        if (spots.Length == 0) return ([], Refuse("There is no value.", "Give what was read, such as 23 7/32."));
        var values = ImmutableArray.CreateBuilder<ExactLength>();
        foreach (string spot in spots)
        {
            ParseResult<ExactLength> read = LengthText.Parse(spot, unit);
            if (!read.IsRead) return ([], Refuse($"'{TextContext.Shown(spot)}' is not a length: {read.Fault!.Words}", read.Fault.Remedy));
            if (read.Value.Sign <= 0) return ([], Refuse($"'{TextContext.Shown(spot)}' cannot be a reading.", "Give a length above 0."));
            values.Add(read.Value);
        }
        return (values.ToImmutable(), null);
    }

    [GeneratedRegex(@",(?!\d)|(?<!\d),")]
    private static partial Regex MetricComma();
}
