using System.Collections.Immutable;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut.Openings;

/// <summary>What stands between two openings: a sheet, or a pair of rails of sticks.</summary>
/// <param name="Divider">As described.</param>
/// <param name="Panel">Its sheet; null for rails.</param>
/// <param name="Stick">Its sticks; null for a sheet.</param>
/// <param name="Size">What it takes of the division.</param>
/// <param name="Step">The same of its lot, from which the next opening is placed; of a doubled partition one panel of it.</param>
internal sealed record DividingMember(Divider Divider, Panel? Panel, Stick? Stick, QuantityKey Size, QuantityKey Step)
{
    private static readonly string[] s_sides = ["left", "right"];

    /// <summary>Its parts: of a doubled partition both panels, from the left.</summary>
    public ImmutableArray<string> Parts => Divider.IsDoubled ? [.. s_sides.Select(s => $"{Divider.Key}.{s}")] : [Divider.Key];

    /// <summary>Its edge as the opening on one side of it has it: of a doubled partition by the panel that faces the opening.</summary>
    /// <param name="edge">As both have it.</param>
    /// <param name="isAfter">True for the opening on its right.</param>
    public Edge Facing(Edge edge, bool isAfter) => Divider.IsDoubled ? edge with { Part = Parts[isAfter ? 1 : 0], Single = Step } : edge;

    /// <summary>What it is called.</summary>
    public string Word(bool isAcross) => isAcross ? "partition" : Panel is null ? "rail" : "deck";

    /// <summary>Looks its material up; null where that will not do, with a finding.</summary>
    public static DividingMember? Of(Book book, Space space, Divider divider)
    {
        if (divider.IsDoubled)
        {
            if (book.PanelOf(divider.Of ?? space.Of, divider.Key) is not { } sheet) return null;
            QuantityKey both = book.Define(divider.Key, "both", $"partition {divider.Key}, both panels",
                new Sum([.. s_sides.Select(side => Term.From($"{side} panel", 1, book.ThicknessOf($"{divider.Key}.{side}", sheet.Name)) with { Part = $"{divider.Key}.{side}" })]));
            return new(divider, sheet, null, both, Book.ThicknessOf(sheet.Name));
        }
        if (divider.Rail is not { } rail)
            return book.PanelOf(divider.Of ?? space.Of, divider.Key) is { } panel ? new(divider, panel, null, book.ThicknessOf(divider.Key, panel.Name), Book.ThicknessOf(panel.Name)) : null;
        if (space.Railing is not { } railing)
        {
            book.Note("rail.not-in-a-frame", Severity.Stop, divider.Key, $"Rails divide the bays of frames; {space.Name} is none.", $"Write {book.Hand.Key("deck")} for a level panel, or use a frame.", divider.Place);
            return null;
        }
        if (book.StickOf(divider.Of ?? railing.Sticks, divider.Key) is not { } stick) return null;
        QuantityKey high = rail.Laid == Laid.Flat ? Book.ThicknessOf(stick.Name) : Book.SectionWidthOf(stick.Name);
        return new(divider, null, stick, high, high);
    }
}
