using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut;

/// <summary>
/// Thickness and section of each material. A label is not a size: until somebody reads the sheet, a default stands in and says so.
/// </summary>
internal static class MaterialRule
{
    public static void Write(Book book)
    {
        foreach (Material material in book.Piece.Materials.Values.OrderBy(m => m.Place.Line).ThenBy(m => m.Name, StringComparer.Ordinal))
        {
            if (material is Panel panel) Write(book, panel);
            else if (material is Stick stick) Write(book, stick);
        }
        // Once all sticks are there: lips are cut from them.
        foreach (Panel panel in book.Piece.Materials.Values.OfType<Panel>().OrderBy(p => p.Place.Line).ThenBy(p => p.Name, StringComparer.Ordinal)) EdgeRule.Define(book, panel);
    }

    private static void Write(Book book, Panel panel)
    {
        PanelFact? fact = PanelTable.Find(panel.Kind, panel.Label);
        Working working;
        if (panel.Thickness is { } given) working = given.Stated;
        else if (fact is not null)
        {
            working = new Stated(fact.Default, new(OriginKind.Default, $"default for {panel.Kind} {panel.Label} until read", fact.DefaultSource));
        }
        else
        {
            // Who has read it needs no table.
            if (!book.IsMeasured(panel.Name)) book.Note("material.unknown", Severity.Stop, panel.Name, $"There is no thickness on record for {panel.Kind} '{panel.Label}'.",
                PanelTable.Kinds.Contains(panel.Kind)
                    ? $"Give its thickness, read it, or use one of the labels {string.Join(", ", PanelTable.LabelsOf(panel.Kind))}."
                    : "Give its thickness, or read it.", panel.Place);
            working = new Stated(ExactLength.FromMillimetres(1), Origin.Unknown);
        }
        // One sheet of a lot tells of itself; the sheets read so far together tell of the lot.
        string[] read = [.. book.SheetsOf(panel.Name).Where(s => book.IsRead(Book.ThicknessOf(s)))];
        foreach (string sheet in book.SheetsOf(panel.Name))
        {
            string name = $"{panel.Name}, thickness of sheet {sheet[(panel.Name.Length + BenchFacts.SheetWord.Length)..]}";
            book.Define(sheet, "thickness", name, read.Contains(sheet) ? working : new Sum(Term.From("of the lot", 1, Book.ThicknessOf(panel.Name))), scatter: Scatter.Sheet);
        }
        Working lot = read.Length == 0 ? working : new Sum([.. read.Select(s => Term.From($"sheet {s[(panel.Name.Length + BenchFacts.SheetWord.Length)..]}", 1, Book.ThicknessOf(s)))], Rational.Of(1, read.Length));
        QuantityKey key = book.Define(panel.Name, "thickness", $"{panel.Name}, thickness", lot, scatter: Scatter.Sheet);
        ExactLength value = book.Value(key);
        if (fact is { Least: { } least, Most: { } most } && panel.Thickness is null && (value < least || value > most))
        {
            book.Note("material.outside-limits", Severity.Warn, panel.Name,
                $"{panel.Name} reads {book.SayByTheRule(value)}; {panel.Kind} {panel.Label} is published as {book.Say(least)} to {book.Say(most)}.",
                $"Measure again at another spot, away from the edge. ({fact.LimitsSource})", panel.Place);
        }
    }

    private static void Write(Book book, Stick stick)
    {
        LumberFact? fact = stick.Nominal.Length > 0 ? LumberTable.Find(stick.Nominal) : null;
        if (fact is null && stick.Thickness is null && !(book.IsRead(Book.ThicknessOf(stick.Name)) && book.IsRead(Book.SectionWidthOf(stick.Name))))
        {
            book.Note("material.unknown", Severity.Stop, stick.Name, $"There is no dressed size on record for '{stick.Nominal}'.",
                "Use a size of the yard such as 2x4, give the section, or read both sizes.", stick.Place);
        }
        Origin source = fact is null ? Origin.Unknown : new(OriginKind.Default, $"dry dressed size of a {stick.Nominal} until read", fact.Source);
        book.Define(stick.Name, "thickness", $"{stick.Name}, thickness",
            stick.Thickness?.Stated ?? new Stated(fact?.Thickness ?? ExactLength.FromMillimetres(1), source), scatter: Scatter.Section);
        book.Define(stick.Name, "width", $"{stick.Name}, width",
            stick.Width?.Stated ?? new Stated(fact?.Width ?? ExactLength.FromMillimetres(1), source), scatter: Scatter.Section);
    }
}
