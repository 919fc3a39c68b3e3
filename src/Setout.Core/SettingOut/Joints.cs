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
    public static void Between(Book book, string owner, string name, QuantityKey clear, PartSize length)
    {
        QuantityKey gap = book.Define(owner, "joint-gap", $"{name}, gap at its ends, both together",
            new Sum(Term.From("clear between", 1, clear), Term.From("as cut", -1, length.AsCut)));
        (TradeRule spring, TradeRule open) = (TradeRules.Get("JT1"), TradeRules.Get("JT2"));
        book.Gaps.Add(new(gap, $"{name}, gap at its ends", -spring.Length, open.Length, $"too long: {spring.Cited}; open: {open.Cited}"));
    }
}
