using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut;

/// <summary>A strip that is ripped from a sheet, or cut from sticks.</summary>
/// <param name="Material">Its material.</param>
/// <param name="Width">Its width; of sticks the section, which is not cut.</param>
/// <param name="Thickness">Its thickness.</param>
internal sealed record StripStock(string Material, PartSize Width, QuantityKey Thickness);

/// <summary>Strips: what they are cut from decides whether their width is ripped or is that of the section.</summary>
internal static class StripRule
{
    /// <summary>The stock of a strip; null where its material is neither a sheet nor a stick, with a finding.</summary>
    public static StripStock? Of(Book book, string owner, string what, string name, Strip strip, string usual, string words)
    {
        if (book.Piece.Materials.GetValueOrDefault(strip.Of.Text) is Stick stick)
        {
            if (strip.Width is { } width && width.Value != book.Value(Book.SectionWidthOf(stick.Name)))
                book.NoteOnce("strip.section-decides", Severity.Warn, owner, $"{name}: {book.Say(width.Value)} is given, but sticks of {stick.Name} are {book.Say(book.Value(Book.SectionWidthOf(stick.Name)))} wide.",
                    "Leave the width out, name other sticks, or use a sheet, which is ripped to width.", width.Place);
            return new(stick.Name, Book.Uncut(Book.SectionWidthOf(stick.Name)), Book.ThicknessOf(stick.Name));
        }
        return book.PanelOf(strip.Of, owner) is { } panel
            ? new(panel.Name, book.DefineSize(owner, what, name, Usual.Or(book, strip.Width, usual, words), Rounding.Nearest, "to the nearest step"), Book.ThicknessOf(panel.Name))
            : null;
    }
}
