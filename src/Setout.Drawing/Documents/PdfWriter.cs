using System.Collections.Immutable;
using PdfSharp.Drawing;
using PdfSharp.Pdf;
using Setout.Drawing.Documents.Pdf;
using Setout.Drawing.Scenes;

namespace Setout.Drawing.Documents;

/// <summary>Writes laid out pages as PDF.</summary>
public static class PdfWriter
{
    /// <summary>Lays a document out and writes it.</summary>
    /// <param name="document">The document.</param>
    /// <param name="stream">Takes the file; left open.</param>
    /// <returns>What could not be set as asked; empty when all is well.</returns>
    public static ImmutableArray<LayoutRemark> Save(BenchDocument document, Stream stream)
    {
        DocumentLayout layout = PageComposer.Compose(document);
        Write(layout, document.Title, document.Language, document.Stamp, stream);
        return layout.Remarks;
    }

    /// <summary>Writes a layout. The same layout, title, language and stamp give the same bytes.</summary>
    /// <param name="layout">What <see cref="PageComposer"/> made with the built-in fonts.</param>
    /// <param name="title">Title in the file's properties.</param>
    /// <param name="language">Language tag.</param>
    /// <param name="stamp">What the file says of its making.</param>
    /// <param name="stream">Takes the file; left open.</param>
    public static void Write(DocumentLayout layout, string title, string language, Stamp stamp, Stream stream)
    {
        using var pdf = new PdfDocument();
        Describe(pdf, title, language, stamp);
        var order = new ReadingOrder(pdf, layout.Elements);
        var fonts = new PdfFonts();
        var pages = new List<PdfPage>();
        foreach (PageLayout page in layout.Pages)
        {
            PdfPage sheet = pdf.AddPage();
            sheet.Width = XUnit.FromMillimeter(page.Width);
            sheet.Height = XUnit.FromMillimeter(page.Height);
            order.Page(sheet);
            var content = new ContentWriter(page.Height, fonts);
            foreach (LayoutPiece piece in page.Pieces) Draw(content, piece, order);
            sheet.Elements.SetReference("/Contents", PdfObjects.Stream(pdf, content.ToBytes()));
            pages.Add(sheet);
        }
        PdfDictionary resources = fonts.Resources(pdf);
        foreach (PdfPage sheet in pages) sheet.Elements.SetReference("/Resources", resources);
        foreach (Bookmark bookmark in layout.Bookmarks) pdf.Outlines.Add(bookmark.Title, pages[bookmark.Page - 1], true);
        using var file = new MemoryStream();
        pdf.Save(file, false);
        FixedIds.Set(file.GetBuffer().AsSpan(0, (int)file.Length));
        file.WriteTo(stream);
    }

    private static void Describe(PdfDocument pdf, string title, string language, Stamp stamp)
    {
        pdf.Info.Title = title;
        pdf.Info.Author = "Setout";
        pdf.Info.Creator = "Setout";
        pdf.Info.Subject = $"{stamp.Piece}, rule set {stamp.RuleSet}, {stamp.Hash}";
        pdf.Info.CreationDate = stamp.Made.UtcDateTime;
        pdf.Info.ModificationDate = stamp.Made.UtcDateTime;
        pdf.Language = language;
        pdf.ViewerPreferences.DisplayDocTitle = true;
    }

    private static void Draw(ContentWriter content, LayoutPiece piece, ReadingOrder order)
    {
        if (piece.Element == LayoutElement.Decoration) content.BeginDecoration();
        else
        {
            (string role, int mark) = order.Mark(piece.Element);
            content.Begin(role, mark);
        }
        switch (piece)
        {
            case TextPiece text:
                content.Text(text.Text, new(text.X, text.Y), text.Size, 0, GreyOf(text.Shade));
                break;
            case RulePiece rule:
                // Square ends: a bar of some weight must not grow beyond its place.
                content.Rule(new(rule.X1, rule.Y1), new(rule.X2, rule.Y2), new(rule.Weight, GreyOf(rule.Shade), []));
                break;
            case BoxPiece box:
                content.Shape([.. ShapeItem.Rectangle(box.X, box.Y, box.Width, box.Height, null, Wash.None).Corners], new(box.Weight, 0, []), null);
                break;
            case ScenePiece scene:
                PdfScenes.Draw(content, scene);
                break;
            default:
                throw new ArgumentException($"No way to print {piece.GetType().Name}.", nameof(piece));
        }
        content.End();
    }

    private static double GreyOf(Shade shade) => shade switch { Shade.Soft => Inks.Soft, Shade.Faint => Inks.Faint, _ => 0 };
}
