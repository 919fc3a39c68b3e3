using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Pieces;

namespace Setout.Core.SettingOut.Drawers;

/// <summary>The side play that a pair of slides takes, both sides together; or that a box on runners wants.</summary>
/// <param name="Least">The least.</param>
/// <param name="Most">The most.</param>
/// <param name="Words">Both in words, with their source.</param>
/// <param name="MiddleWords">What the middle is the middle of.</param>
/// <param name="Source">Where the limits come from.</param>
internal sealed record SlideRoom(ExactLength Least, ExactLength Most, string Words, string MiddleWords, string Source)
{
    /// <summary>
    /// Which way the ends of a box are landed: down, so that the box goes in, where the window has room for a step below its middle; else to the nearest
    /// step, which is at most half a step off.
    /// </summary>
    public (Rounding Way, string Why) Landing(Grid grid) => Middle + grid.Step <= Most && Least.Sign >= 0
        ? (Rounding.Down, "down: it must go inside")
        : (Rounding.Nearest, Least.Sign < 0 ? "to the nearest step: the slides under it take as much either way" : "to the nearest step: the play these slides take has no room for a whole one");

    /// <summary>True when no figure on the grid is sure to land inside.</summary>
    public bool IsFinerThan(Grid grid) => Landing(grid).Way == Rounding.Nearest && grid.Step > Most - Least;

    /// <summary>What to aim for.</summary>
    public ExactLength Middle => (Least + Most) / 2;

    public static SlideRoom Of(DrawerKind kind)
    {
        if (kind.Slides == SlideWay.Runners)
        {
            TradeRule run = TradeRules.Get("WR1"), most = TradeRules.Get("WR1M");
            return new(ExactLength.Zero, most.Length, $"0 to 1/8 in in all: {most.Cited}", "side play on runners, both sides", run.Cited);
        }
        if (kind.Slides == SlideWay.Under)
        {
            TradeRule off = TradeRules.Get("US8");
            return new(-off.Length, off.Length, $"1/32 in either way: {off.Cited}", "none: the figure of the slides is the width", off.Cited);
        }
        if (kind.Window == SlideWindow.Narrow)
        {
            TradeRule narrow = TradeRules.Get("SS3");
            return new(narrow.Series[0] * 2, narrow.Series[1] * 2, $"0.4 to 1.0 mm in all: {narrow.Cited}", "the middle of 0.4 to 1.0 mm, two sides", narrow.Cited);
        }
        TradeRule habit = TradeRules.Get("SS2");
        return new(ExactLength.Zero, habit.Length * 2, $"0 to 1/32 in a side: {habit.Cited}", "the middle of 0 to 1/32 in a side, two sides", habit.Cited);
    }
}
