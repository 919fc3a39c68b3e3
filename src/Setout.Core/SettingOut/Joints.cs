using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut;

/// <summary>Gaps of parts that go between others, with what such a joint takes.</summary>
internal static class Joints
{
    /// <summary>
    /// A shelf or partition butted between two others. A hair too long is taken up by the spring of what it goes between; too short leaves
    /// a gap at the joint.
    /// </summary>
    /// <param name="book">Where to write.</param>
    /// <param name="owner">What it belongs to.</param>
    /// <param name="name">For people.</param>
    /// <param name="clear">Clear between the two.</param>
    /// <param name="length">Its length.</param>
    /// <param name="into">How far it goes into both; empty where it only meets them.</param>
    /// <param name="isHidden">True where its ends stand in dadoes, which hide a gap.</param>
    public static void Between(Book book, string owner, string name, QuantityKey clear, PartSize length, ImmutableArray<Term> into, bool isHidden = false)
    {
        QuantityKey gap = book.Define(owner, "joint-gap", $"{name}, gap at its ends, both together",
            new Sum([Term.From("clear between", 1, clear), .. into, Term.From("as cut", -1, length.AsCut)]));
        // In a dado a gap at the end is not seen.
        (TradeRule spring, TradeRule open) = (TradeRules.Get("JT1"), TradeRules.Get(isHidden ? "CJ5" : "JT2"));
        book.Gaps.Add(new(gap, $"{name}, gap at its ends", -spring.Length, open.Length, $"too long: {spring.Cited}; open: {open.Cited}"));
    }
}
