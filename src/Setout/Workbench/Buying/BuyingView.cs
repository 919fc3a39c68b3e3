using System.Collections.Immutable;
using Setout.Core.Craft;
using Setout.Core.Measures;
using Setout.Drawing.Scenes;
using Setout.Shop.Drawings;
using Setout.Shop.Plans;
using Setout.Workbench.Pieces;
using Setout.Workbench.Shell;

namespace Setout.Workbench.Buying;

/// <summary>A line of the buying list.</summary>
/// <param name="Count">How many of what, such as <c>2 sheets</c>.</param>
/// <param name="Item">What to ask for.</param>
/// <param name="Each">The price of one; empty where there is none or one alone.</param>
/// <param name="Total">The price of all; <c>no price</c> where it is not known.</param>
/// <param name="HasPrice">Whether it is known.</param>
/// <param name="Spare">What is over; empty where nothing worth telling is.</param>
public sealed record BuyingRow(string Count, Phrase Item, string Each, string Total, bool HasPrice, Phrase Spare);

/// <summary>What one supplier sells.</summary>
/// <param name="Name">Such as <c>Sheet goods</c>.</param>
/// <param name="Rows">In order.</param>
public sealed record BuyingGroup(string Name, ImmutableArray<BuyingRow> Rows);

/// <summary>The second stage: what to buy.</summary>
/// <param name="Head">The head of the piece.</param>
/// <param name="Notes">What stops the plan.</param>
/// <param name="Groups">As suppliers sell it.</param>
/// <param name="Sum">What all that has a price costs, with the currency; empty where nothing has one.</param>
/// <param name="Unpriced">What has no price, in words; empty where all has.</param>
/// <param name="Caution">What to mind with panels; empty where there are none.</param>
public sealed record BuyingView(PieceHead Head, ImmutableArray<Note> Notes, ImmutableArray<BuyingGroup> Groups, string Sum, string Unpriced, string Caution)
{
    internal static BuyingView Of(OpenPiece piece, Plan plan) => new(
        PieceHead.Of(piece, "buy"), StoppedNotes.Of(piece, plan),
        [.. plan.Buying.GroupBy(l => l.Kind).Select(g => new BuyingGroup(Name(g.Key), [.. g.Select(Row)]))],
        plan.Cost > Money.Zero ? $"{plan.Cost} {plan.Source.Shop.Currency}" : "",
        plan.Unpriced switch { 0 => "", 1 => "1 line has no price", int n => $"{n} lines have no price" },
        plan.Sheets.Length > 0 ? Cautions.Of("panels").Words : "");

    private static BuyingRow Row(BuyingLine line)
    {
        bool isTaken = line.Kind == BuyingKind.FromTheRack;
        return new($"{line.Count} {line.Unit}{(line.Count == 1 || line.Unit.Length == 0 ? "" : "s")}", Figures.Phrase(line.Item),
            line.Count == 1 || isTaken ? "" : line.Price?.ToString() ?? "", isTaken ? "in hand" : line.Total?.ToString() ?? "no price", isTaken || line.Total is not null, Figures.Phrase(line.Spare));
    }

    private static string Name(BuyingKind kind) => kind switch
    {
        BuyingKind.Sheet => "Sheet goods",
        BuyingKind.Board => "Lumber",
        BuyingKind.Hardware => "Hardware",
        _ => "From the rack",
    };
}
