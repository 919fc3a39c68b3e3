using System.Collections.Immutable;
using Setout.Drawing.Documents.Setting;
using Setout.Drawing.Scenes;

namespace Setout.Drawing.Documents;

/// <summary>Measures a document and puts everything in its place. Pure: the same document gives the same layout.</summary>
public static class PageComposer
{
    /// <summary>Lays out with the built-in fonts.</summary>
    /// <exception cref="ArgumentException">A row has the wrong number of cells, or a drawing has no size.</exception>
    public static DocumentLayout Compose(BenchDocument document)
    {
        (double width, double height) = SheetStyle.SizeOf(document.Paper);
        Setter setter = SetterOf(document.Paper);
        var strips = new List<Strip>();
        for (int i = 0; i < document.Sections.Length; i++)
            AddSection(setter, document, i, strips);

        List<FillingPage> filled = Paginator.Fill(strips, setter.Height, setter.LyingHeight);
        var pages = ImmutableArray.CreateBuilder<PageLayout>();
        var bookmarks = ImmutableArray.CreateBuilder<Bookmark>();
        string section = "";
        for (int i = 0; i < filled.Count; i++)
        {
            FillingPage page = filled[i];
            if (page.Section.Length > 0) section = page.Section;
            (double w, double h) = page.LiesDown ? (height, width) : (width, height);
            pages.Add(new(i + 1, w, h, section,
            [
                .. page.Pieces.Select(p => p.Moved(SheetStyle.MarginLeft, SheetStyle.MarginTop)),
                .. Foot(setter, document.Stamp, section, i + 1, filled.Count, w, h),
            ]));
            foreach (string title in page.Bookmarks) bookmarks.Add(new(title, i + 1));
        }
        return new(pages.ToImmutable(), [.. setter.Elements], bookmarks.ToImmutable(), [.. setter.Remarks]);
    }

    internal static Setter SetterOf(Paper paper)
    {
        (double width, double height) = SheetStyle.SizeOf(paper);
        return new(Across(width), Down(height), Across(height), Down(width));
    }

    private static double Across(double width) => width - SheetStyle.MarginLeft - SheetStyle.MarginRight;

    private static double Down(double height) => height - SheetStyle.MarginTop - SheetStyle.MarginBottom;

    private static void AddSection(Setter setter, BenchDocument document, int index, List<Strip> strips)
    {
        Section section = document.Sections[index];
        int first = strips.Count;
        if (index == 0) strips.AddRange(BlockSetter.Title(setter, document.Title));
        setter.Parent = setter.Element(ElementKind.Section, 0);
        strips.AddRange(BlockSetter.SectionTitle(setter, section.Title));
        foreach (Block block in section.Blocks)
        {
            if (block is SceneBlock scene) AddScene(setter, scene, strips, first);
            else strips.AddRange(BlockSetter.Set(setter, block));
        }
        for (int i = first; i < strips.Count; i++) strips[i] = strips[i] with { Section = section.Title };
        strips[first] = strips[first] with { Bookmark = section.Title, BreaksBefore = strips[first].BreaksBefore || (index > 0 && section.Start == SectionStart.NewPage) };
    }

    /// <summary>A drawing leaves room for the headings that stand directly above it, and takes them along to a page of its own.</summary>
    private static void AddScene(Setter setter, SceneBlock block, List<Strip> strips, int first)
    {
        int begin = strips.Count;
        double taken = 0;
        while (begin > first && strips[begin - 1].KeepsWithNext)
        {
            begin--;
            taken += strips[begin].Height + strips[begin].Gap;
        }
        // The space above the first falls away at the top of a page.
        if (begin < strips.Count) taken -= strips[begin].Gap;
        strips.Add(SceneSetter.Set(setter, block, taken));
        if (block.Place != ScenePlace.WholePage) return;
        for (int i = begin; i < strips.Count; i++)
            strips[i] = (strips[^1].LiesDown ? Widened(setter, strips[i]) : strips[i]) with { LiesDown = strips[^1].LiesDown, BreaksBefore = i == begin };
    }

    /// <summary>Rules across the column of a standing page made as long as those of a page lying down.</summary>
    private static Strip Widened(Setter setter, Strip strip) => strip with
    {
        Pieces = [.. strip.Pieces.Select(p => p is RulePiece rule && rule.X2 == setter.Width ? rule with { X2 = setter.LyingWidth } : p)],
    };

    private static IEnumerable<LayoutPiece> Foot(Setter setter, Stamp stamp, string section, int number, int count, double width, double height)
    {
        double left = SheetStyle.MarginLeft, right = width - SheetStyle.MarginRight;
        double second = height - SheetStyle.FootFromEdge, first = second - (SheetStyle.Foot * SheetStyle.Leading);
        double rule = first - (SheetStyle.Foot * 1.35);
        yield return new RulePiece(left, rule, right, rule, SheetStyle.RuleThin, Shade.Ink);

        Phrase page = Phrase.Of($"page {number} of {count}").Bold();
        double pageWidth = TextMeasure.Width(page, SheetStyle.Foot);
        const double Apart = 6;
        yield return Text(setter.OneLine($"{stamp.Piece} \u00B7 {section}", right - left - pageWidth - Apart, SheetStyle.Foot), left, first);
        yield return new TextPiece(right - pageWidth, first, pageWidth, SheetStyle.Foot, page, Shade.Ink, LayoutElement.Decoration);
        yield return Text(setter.OneLine($"made {stamp.MadeText} \u00B7 rule set {stamp.RuleSet} \u00B7 {stamp.Hash}", right - left, SheetStyle.Foot), left, second);
    }

    private static TextPiece Text((string Text, double Width) line, double x, double y) =>
        new(x, y, line.Width, SheetStyle.Foot, Phrase.Of(line.Text), Shade.Ink, LayoutElement.Decoration);
}
