using System.Collections.Immutable;
using Setout.Core.Fit;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Shop.Texts;

namespace Setout.Shop.Noting;

/// <summary>An opening that a fact reads, or that something was cut by, while what bounds it is not marked cut.</summary>
/// <param name="Key">The clear size.</param>
/// <param name="Name">For people.</param>
/// <param name="Missing">What bounds it and is not marked cut, one or more.</param>
public sealed record EarlyOpening(QuantityKey Key, string Name, ImmutableArray<Part> Missing)
{
    /// <summary>What is missing, as one mark names it.</summary>
    public ImmutableArray<string> Keys(SetPiece set) => BeforeBuilt.Keys(set, Missing);

    /// <summary>What is missing, in words.</summary>
    public string Names => BeforeBuilt.Names(Missing);

    /// <summary>An opening of that key; null where it is none, or nothing of it is missing.</summary>
    public static EarlyOpening? Of(SetPiece set, QuantityKey key) => BeforeBuilt.Missing(set, key) is { Length: > 0 } missing ? new(key, FactSentences.NameOf(set, key), missing) : null;

    /// <summary>Those that an entry reads, or cuts by. What is cut before its opening is read is told as waiting, and not here.</summary>
    /// <param name="set">The piece, with or without the entry.</param>
    /// <param name="entry">The entry.</param>
    public static IEnumerable<EarlyOpening> Of(SetPiece set, LogEntry entry) => entry switch
    {
        ReadingEntry reading => Of(set, reading.Key) is { } early ? [early] : [],
        MarkEntry { Progress: Progress.Cut } mark => CutBy(set, [.. set.Parts.Where(p => mark.Keys.Any(k => k.Split('#')[0] == p.Key))]),
        _ => [],
    };

    /// <summary>The openings that parts go by, that are read, and of which something is missing.</summary>
    public static IEnumerable<EarlyOpening> CutBy(SetPiece set, IReadOnlyCollection<Part> parts) =>
        parts.Where(p => !p.HeldUntil.IsDefaultOrEmpty).SelectMany(p => p.HeldUntil).Distinct()
            .Where(k => set.Worked.Values.GetValueOrDefault(k) is { Pin.IsFact: false }).Select(k => Of(set, k)).OfType<EarlyOpening>();

    /// <summary>What the program makes of it, as a sentence.</summary>
    public string Words => Edits.Fillings.Capital(BeforeBuilt.Words(Name, Missing));

    /// <summary>What is said where a part is to be marked cut, or was.</summary>
    public string OfCutting => $"{Edits.Fillings.Capital(Name)} was read and counts as the opening of the built piece, by which this is cut; not marked cut: {Names}.";

    /// <summary>What is said where it is to be read.</summary>
    public string OfReading => $"Not marked cut: {Names}. What is read now counts as the opening of the built piece, whether they stand or not.";
}
