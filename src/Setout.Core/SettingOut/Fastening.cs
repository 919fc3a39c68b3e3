using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Pieces;

namespace Setout.Core.SettingOut;

/// <summary>How many screws, and which: common practice, no source, unless said otherwise.</summary>
internal static class Fastening
{
    /// <summary>Said beside every count.</summary>
    public const string SpacingWords = "about every 6 to 8 in, no fewer than 2; common practice, no source";

    /// <summary>One near each end and one about every 8 in between.</summary>
    public static int ScrewsAlong(ExactLength length) =>
        Math.Max(2, (int)(length.Inches / 8).Round(Rounding.Up) + 1);

    /// <summary>A wood screw for fixing a panel on edge.</summary>
    public static string ScrewFor(Panel panel) =>
        panel.Kind == "mdf" || panel.Kind == "particleboard" ? "Screw for panel edges, straight shank, 2 in" : "Wood screw no. 8 x 1 1/2 in";

    /// <summary>The pocket screw for joining stock of a thickness, with its source.</summary>
    public static (string Name, string Source) PocketScrew(Book book, ExactLength stock) => TradeRules.PocketScrewFor(stock) is { } row
        ? ($"Pocket screw, coarse, {Measures.Text.LengthFormat.Inch.Text(row.Screw)}", row.Source)
        : ($"Pocket screw, coarse, to suit {book.Say(stock)} stock", "no row in the table; read the jig's own chart");
}

/// <summary>What diagonals should read.</summary>
internal static class Diagonals
{
    /// <summary>The diagonal of a rectangle on the shop's grid.</summary>
    public static Length Of(Grid grid, ExactLength width, ExactLength height) =>
        ApproximateLength.Diagonal(width, height).RoundTo(grid, Rounding.Nearest);
}
