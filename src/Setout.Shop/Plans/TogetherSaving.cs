using System.Collections.Immutable;
using Setout.Core.Measures;

namespace Setout.Shop.Plans;

/// <summary>A figure of several pieces, each broken down by itself, against the same broken down together.</summary>
/// <param name="What">Such as <c>sheets</c>.</param>
/// <param name="Alone">The sum of those by themselves, each as if the others took nothing from the rack.</param>
/// <param name="Together">The figure together.</param>
public sealed record SavedFigure(string What, string Alone, string Together)
{
    /// <summary>True where it is the same either way.</summary>
    public bool IsSame => Alone == Together;
}

/// <summary>What breaking several pieces down together saves.</summary>
public static class TogetherSaving
{
    /// <summary>The figures: money for sheets and boards, how many of them, settings at the saws.</summary>
    /// <param name="alone">The plan of each piece by itself; none is stopped.</param>
    /// <param name="together">The plan of all; not stopped.</param>
    public static ImmutableArray<SavedFigure> Of(ImmutableArray<Plan> alone, Plan together)
    {
        var figures = ImmutableArray.CreateBuilder<SavedFigure>();
        string currency = together.Source.Shop.Currency;
        Money cost = Wood(together), sum = alone.Aggregate(Money.Zero, (all, plan) => all + Wood(plan));
        if (sum > Money.Zero || cost > Money.Zero) figures.Add(new(alone.Append(together).Any(IsPartly) ? "wood to buy, of what has a price" : "wood to buy", $"{sum} {currency}".TrimEnd(), $"{cost} {currency}".TrimEnd()));
        void Count(string what, Func<Plan, int> of)
        {
            int each = alone.Sum(of), all = of(together);
            if (each > 0 || all > 0) figures.Add(new(what, each.ToString(System.Globalization.CultureInfo.InvariantCulture), all.ToString(System.Globalization.CultureInfo.InvariantCulture)));
        }
        Count("sheets", Sheets);
        Count("boards", Boards);
        Count("settings at the saws", p => p.Runs.Settings);
        return figures.ToImmutable();
    }

    /// <summary>Why the saws are set more often together than for each by itself, in a sentence or two; empty where they are not. Money comes first: fewer sheets hold more parts each, and are divided more often.</summary>
    /// <param name="alone">The plan of each piece by itself; none is stopped.</param>
    /// <param name="together">The plan of all; not stopped.</param>
    public static string Price(ImmutableArray<Plan> alone, Plan together)
    {
        int more = together.Runs.Settings - alone.Sum(p => p.Runs.Settings);
        if (more <= 0) return "";
        string set = $"Together the saws are set {(more == 1 ? "once" : $"{more} times")} more than for each by itself";
        Money saved = alone.Aggregate(Money.Zero, (all, plan) => all + Wood(plan)) - Wood(together);
        string[] less =
        [
            .. new[] { (alone.Sum(Sheets) - Sheets(together), "sheet"), (alone.Sum(Boards) - Boards(together), "board") }.Where(c => c.Item1 > 0).Select(c => $"{c.Item1} {c.Item2}{(c.Item1 == 1 ? "" : "s")}"),
            .. saved > Money.Zero ? [$"{saved} {together.Source.Shop.Currency}".TrimEnd()] : Array.Empty<string>(),
        ];
        return less.Length == 0 ? $"{set}, and nothing is saved for it: break them down each by itself."
            : $"{set}, and that saves {Runs.CutLines.List(less)}: wood that holds more parts is divided more often. Where the time at the saws is worth more to you than that, break them down each by itself.";
    }

    private static int Sheets(Plan plan) => plan.Sheets.Sum(s => s.Outcome.Score.Sheets);

    private static int Boards(Plan plan) => plan.Boards.Sum(b => b.Outcome.Layout.Boards.Length);

    // A sum that leaves something out says so.
    private static bool IsPartly(Plan plan) => plan.Buying.Any(l => l.Kind is BuyingKind.Sheet or BuyingKind.Board && l.Total is null);

    private static Money Wood(Plan plan) => plan.Buying.Where(l => l.Kind is BuyingKind.Sheet or BuyingKind.Board).Aggregate(Money.Zero, (sum, line) => sum + (line.Total ?? Money.Zero));
}
