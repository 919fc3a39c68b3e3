using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut.Drawers;

/// <summary>The gaps that the eye sees in a bank: between fronts as they are fixed, above the top one, and beside them.</summary>
internal static class FrontGaps
{
    public static void Write(Book book, Space space, DrawerBank bank, QuantityKey cover, QuantityKey gap, Sum across, ImmutableArray<PartSize> heights, ImmutableArray<PartSize> widths)
    {
        TradeRule seen = TradeRules.Get("FR1");
        string limits = $"within 1/16 in of what was meant: {seen.Cited}";
        var stack = ImmutableArray.CreateBuilder<Term>();
        stack.Add(Term.From("height the fronts cover", 1, cover));
        for (int i = 0; i < bank.Drawers.Length; i++)
        {
            Drawer drawer = bank.Drawers[i];
            string name = $"drawer {drawer.Key}";
            stack.Add(Term.From($"front of {drawer.Key}, as cut", -1, heights[i].Made));
            if (i > 0)
            {
                QuantityKey fixedGap = book.DefineSame(drawer.Key, "front.gap", $"{name}, gap above its front as fixed", "on spacers", gap, scatter: Scatter.Placed);
                stack.Add(Term.From($"gap above {drawer.Key}", -1, fixedGap));
                ExactLength meant = book.Value(gap);
                book.Gaps.Add(new(fixedGap, $"{name}, gap above its front", ExactLength.Max(ExactLength.Zero, meant - seen.Length), meant + seen.Length, limits) { Group = space.Owner });
            }
            QuantityKey beside = book.Define(drawer.Key, "front.beside", $"{name}, front narrower than what it covers, both sides together",
                new Sum([.. across.Terms, Term.From("front, as cut", -1, widths[i].Made)]));
            book.Gaps.Add(new(beside, $"{name}, front beside what it covers", -seen.Length, seen.Length, limits) { Group = space.Owner });
        }
        QuantityKey above = book.Define(space.Prefix, "fronts-short", $"{space.Name}, fronts short of the height they cover", new Sum(stack.ToImmutable()));
        book.Gaps.Add(new(above, $"{space.Name}, reveal above the top front", -seen.Length, seen.Length, limits) { Group = space.Owner });
    }
}
