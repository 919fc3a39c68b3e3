using System.Collections.Immutable;
using Setout.Core.Craft;
using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Drawing.Scenes;
using Setout.Shop.Drawings;
using Setout.Shop.Plans;
using Setout.Shop.Texts;
using Setout.Workbench.Changing;
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
public sealed record BuyingRow(string Count, Phrase Item, string Each, string Total, bool HasPrice, Phrase Spare)
{
    /// <summary>What goes along when it is bought; null where that is not told here.</summary>
    public BoughtForm? Bought { get; init; }

    /// <summary>That it is bought, with the entry; empty where it is not.</summary>
    public string Done { get; init; } = "";
}

/// <summary>A form that says that a line is bought.</summary>
/// <param name="Head">What goes along.</param>
/// <param name="Item">The line, by its words.</param>
/// <param name="Count">How many are wanted; empty where that is not asked.</param>
/// <param name="Price">What one costs, as far as is known.</param>
public sealed record BoughtForm(FormHead Head, string Item, string Count, string Price);

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
    /// <summary>What is waited for; null where nothing is. What is shown then is out of date.</summary>
    public WaitingView? WaitsFor { get; init; }

    internal static BuyingView Of(OpenPiece piece, Plan plan, int? shopRevision)
    {
        string page = Links.Stage(piece.Name, "buy");
        return new(
            PieceHead.Of(piece, "buy"), StoppedNotes.Of(piece, plan),
            GroupsOf(plan, l => Row(l, piece, shopRevision, page)),
            plan.Cost > Money.Zero ? $"{plan.Cost} {plan.Source.Shop.Currency}" : "",
            plan.Unpriced switch { 0 => "", 1 => "1 line has no price", int n => $"{n} lines have no price" },
            plan.Sheets.Length > 0 ? Cautions.Of("panels").Words : "");
    }

    /// <summary>The last list there was, while one is waited for.</summary>
    internal static BuyingView Waiting(OpenPiece piece, Plan? last, WaitingView waiting) =>
        (last is not null ? Of(piece, last, null) : new(PieceHead.Of(piece, "buy"), [], [], "", "", "")) with { WaitsFor = waiting };

    /// <summary>What a plan asks to buy, as suppliers sell it.</summary>
    internal static ImmutableArray<BuyingGroup> GroupsOf(Plan plan) => GroupsOf(plan, Row);

    private static ImmutableArray<BuyingGroup> GroupsOf(Plan plan, Func<BuyingLine, BuyingRow> row) => [.. plan.Buying.GroupBy(l => l.Kind).Select(g => new BuyingGroup(Name(g.Key), [.. g.Select(row)]))];

    private static BuyingRow Row(BuyingLine line)
    {
        bool isTaken = line.Kind == BuyingKind.FromTheRack;
        return new($"{line.Count} {line.Units}", Figures.Phrase(line.Item),
            line.Count == 1 || isTaken ? "" : line.Price?.ToString() ?? "", isTaken ? "in hand" : line.Total?.ToString() ?? "no price", isTaken || line.Total is not null, Figures.Phrase(line.Beside));
    }

    private static BuyingRow Row(BuyingLine line, OpenPiece piece, int? shopRevision, string page)
    {
        // Marked by itself, or thing by thing with what it belongs to: the last of these marks made it whole.
        HardwareItem[] of = line.Kind == BuyingKind.Hardware ? [.. ThingsToBuy.Of(piece.Set).Where(h => h.MarkedBy == line.Thing)] : [];
        MarkEntry? bought = of.Length > 0 && ThingsToBuy.IsBought(piece.Set, line.Thing)
            ? piece.Source.Log.Standing.OfType<MarkEntry>().LastOrDefault(e => e.Progress == Progress.Bought && of.SelectMany(h => ThingsToBuy.MarksOf(piece.Set, h)).Any(m => e.Keys.Contains(m))) : null;
        FormHead Head(int revision) => new(Links.Stage(piece.Name, "bought"), ChangeForm.NewId(), revision, page);
        return Row(line) with
        {
            Done = bought is not null ? $"bought {When.Of(bought.At, TimeProvider.System)}" : "",
            Bought = line.Wood is not null && shopRevision is { } revision ? new(Head(revision), line.Item, line.Count.ToString(System.Globalization.CultureInfo.InvariantCulture), line.Price?.ToString() ?? "")
                : of.Length > 0 && bought is null ? new(Head(piece.File.Document.Revision), line.Item, "", "") : null,
        };
    }

    private static string Name(BuyingKind kind) => kind switch
    {
        BuyingKind.Sheet => "Sheet goods",
        BuyingKind.Board => "Lumber",
        BuyingKind.Hardware => "Hardware",
        _ => "From the rack",
    };
}
