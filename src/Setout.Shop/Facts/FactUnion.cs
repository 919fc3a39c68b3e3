using System.Collections.Immutable;
using Setout.Shop.Texts;

namespace Setout.Shop.Facts;

/// <summary>What a log lacks of another: appending it carries the other log over, and doing so twice changes nothing.</summary>
/// <param name="Entries">To be appended, in order of their times as far as these tell.</param>
/// <param name="Late">
/// Those of them that are older than something that is there already. Appended they stand last all the same, since nothing is ever put in between, and
/// where order decides (which reading of a quantity is the last) they win; who carries them over should say so.
/// </param>
public sealed record FactUnion(ImmutableArray<LogEntry> Entries, ImmutableArray<LogEntry> Late)
{
    /// <summary>What <paramref name="there"/> lacks of <paramref name="other"/>.</summary>
    /// <exception cref="FactStoreException">Both hold an id and say different things under it.</exception>
    public static FactUnion Of(Log there, Log other)
    {
        var byId = there.Entries.ToDictionary(e => e.Id, StringComparer.Ordinal);
        var lacking = FactText.New(id => byId.TryGetValue(id, out LogEntry? entry) ? FactText.Of(entry) : null, other.Entries).Select(n => n.Entry.Id).ToHashSet(StringComparer.Ordinal);
        ImmutableArray<LogEntry> union = there.Union(other).Entries;
        int last = there.Entries.IsEmpty ? -1 : union.LastIndexOf(there.Entries[^1]);
        return new([.. union.Where(e => lacking.Contains(e.Id))], [.. union.Take(last + 1).Where(e => lacking.Contains(e.Id))]);
    }
}
