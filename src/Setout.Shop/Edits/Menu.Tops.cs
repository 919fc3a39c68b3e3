using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Shop.Edits;

/// <content>What a top makes of a height.</content>
internal sealed partial class Menu
{
    // More sheets than these are not gone through one by one: the first is that which is taken.
    private const int MostSheetsTold = 3;

    /// <summary>The height outside that a top comes on, and what it comes to with each sheet; empty where what it would lie on has several heights.</summary>
    /// <param name="on">What it is to lie on; null for all that nothing lies on yet.</param>
    private string HeightUnderATop(string? on)
    {
        Structure[] under = [.. _piece.Members.OfType<Structure>().Where(s => on is null ? !IsCovered(s.Key) : s.Key == on)];
        if (under.Select(s => s.Height.Value).Distinct().ToArray() is not [var height]) return "";
        LengthFormat format = LengthFormat.For(_piece.Shown);
        string with = string.Join(", ", SheetsOfATop.Take(MostSheetsTold).Select(s => $"{format.Text(height + s.Thickness)} with a top of {s.Name}"));
        return with.Length == 0 ? "" : $"the height outside of {string.Join(" and ", under.Select(s => s.Key))} is {format.Text(height)} without it; {with}";
    }

    private IEnumerable<(string Name, ExactLength Thickness)> SheetsOfATop => Panels.Any()
        ? Panels.Select(p => (Name: p, Key: QuantityKey.Of(p, "thickness"))).Where(p => set.Worked.Values.ContainsKey(p.Key)).Select(p => (p.Name, set.Worked[p.Key]))
        : Sheets.ThreeQuarters(IsInch) is var usual && PanelTable.Find(usual.Kind, usual.Label ?? "") is { } fact ? [(usual.Words, fact.Default)] : [];
}
