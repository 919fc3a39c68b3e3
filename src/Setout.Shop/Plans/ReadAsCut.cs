using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Core.Workings;

namespace Setout.Shop.Plans;

/// <summary>What a size that is cut was read as, beside its figure to cut: lists have room for both, and say which is which.</summary>
public static class ReadAsCut
{
    /// <summary>The reading of a size as it came off the saw; null where it was not read.</summary>
    /// <param name="worked">All quantities.</param>
    /// <param name="exact">The exact size.</param>
    public static ExactLength? Of(WorkedPiece worked, QuantityKey exact) =>
        worked.Values.TryGetValue(exact.AsCut, out Worked? read) && read.Pin is { IsFact: false } ? read.Value : null;

    /// <summary>The sizes of a part that were read, by what each is called.</summary>
    /// <param name="set">The piece.</param>
    /// <param name="part">The part.</param>
    public static IEnumerable<(string Word, ExactLength Read)> Of(SetPiece set, Part part)
    {
        foreach (PartSize size in new[] { part.Length, part.Width }.Distinct())
            if (Of(set.Worked, size.Exact) is { } read) yield return (SizeWords.Of(set, size.Exact, size == part.Length), read);
    }
}
