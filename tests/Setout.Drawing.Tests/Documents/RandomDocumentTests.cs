using System.Collections.Immutable;
using CsCheck;
using Setout.Core.Measures.Text;
using Setout.Drawing.Documents;
using Setout.Drawing.Scenes;
using Setout.Testing;

namespace Setout.Drawing.Tests.Documents;

/// <summary>Documents of random content: nothing passes a margin, nothing is printed over something else, no word is lost.</summary>
public sealed class RandomDocumentTests
{
    private static readonly Gen<string> s_word = Gen.Frequency(
        (20, Gen.Char['a', 'z'].Array[1, 12].Select(c => new string(c))),
        (1, Gen.Char['a', 'z'].Array[60, 200].Select(c => new string(c))));

    private static readonly Gen<Run> s_run = Gen.Select(Gen.Int[0, 3], s_word.Array[1, 12], Gen.Int[-9000, 90000], Gen.Bool).Select((kind, words, figure, bold) => kind == 0
        ? new Run("", PrintRoom.Inches(figure) with { Unit = bold ? "in" : "" }, bold)
        : new Run(string.Join(' ', words) + (bold ? " " : ""), null, bold));

    private static readonly Gen<Phrase> s_phrase = s_run.Array[0, 6].Select(r => new Phrase([.. r]));

    private static readonly Gen<Cell> s_cell = s_phrase.Array[0, 3].Select(p => new Cell([.. p]));

    private static readonly Gen<ColumnWidth> s_width = Gen.OneOf(
        Gen.Const(ColumnWidth.Fit), Gen.Double[2, 300].Select(ColumnWidth.Millimetres), Gen.Double[0.1, 9].Select(ColumnWidth.Share));

    private static readonly Gen<Column> s_column = Gen.Select(s_word, s_width, Gen.Enum<ColumnAlign>(), Gen.Enum<TextSize>()).Select((title, width, align, size) => new Column(title, width, align, size));

    private static readonly Gen<Block> s_table = s_column.Array[1, 6].SelectMany(columns => Gen.Select(
        Gen.OneOf(s_cell.Array[columns.Length].Select(c => (TableRow)new CellRow([.. c])), s_phrase.Select(p => (TableRow)new GroupRow(p))).Array[0, 15], Gen.Enum<TickBoxes>())
        .Select((rows, ticks) => (Block)new TableBlock([.. columns], [.. rows], ticks)));

    private static readonly Gen<Block> s_block = Gen.OneOf(
        s_phrase.Select(p => (Block)new HeadingBlock(p)),
        Gen.Select(s_phrase, Gen.Enum<TextSize>()).Select((p, s) => (Block)new ParagraphBlock(p, s)),
        s_phrase.Array[0, 15].Select(p => (Block)new CautionBlock([.. p])),
        s_table,
        Gen.Select(s_phrase, s_phrase, s_phrase).Select((a, b, c) => new Step(a, b, c)).Array[0, 10].Select(s => (Block)new StepsBlock([.. s])),
        Gen.Select(s_phrase, s_phrase, Gen.Enum<TermSign>(), s_phrase).Select((a, b, s, f) => new WorkingTerm(a, b, s, f)).Array[0, 6]
            .Select(t => (Block)new WorkingBlock(Phrase.Of("size"), PrintRoom.Figure(3, 1, 4), [.. t], Phrase.Of("sum"), PrintRoom.Figure(3, 1, 4))),
        Gen.Select(Gen.Double[1, 600], Gen.Double[1, 600], Gen.Enum<ScenePlace>()).Select((w, h, p) => (Block)new SceneBlock(new Scene(w, h, "s", "", []), p)),
        Gen.Const((Block)new PageBreakBlock()));

    private static readonly Gen<BenchDocument> s_document = Gen.Select(s_block.Array[0, 7], s_block.Array[0, 3], Gen.Enum<Paper>(), Gen.Enum<SectionStart>(), s_word)
        .Select((first, second, paper, start, title) => new BenchDocument(title, "en", PrintRoom.Stamp, paper, [new(title, [.. first]), new("Second", [.. second], start)]));

    private readonly record struct Box(double Left, double Top, double Right, double Bottom, string What);

    private static Box BoxOf(LayoutPiece piece) => piece switch
    {
        // From the top of a raised numerator to the foot of a lowered denominator or a letter such as g.
        TextPiece t => new(t.X, t.Y - (0.84 * t.Size), t.X + t.Width, t.Y + (0.22 * t.Size), t.Text.PlainText),
        ScenePiece s => new(s.X, s.Y, s.X + (s.Scene.Width * s.Scale), s.Y + (s.Scene.Height * s.Scale), "scene"),
        BoxPiece b => new(b.X - (b.Weight / 2), b.Y - (b.Weight / 2), b.X + b.Width + (b.Weight / 2), b.Y + b.Height + (b.Weight / 2), "box"),
        RulePiece r => r.X1 == r.X2
            ? new(r.X1 - (r.Weight / 2), r.Y1, r.X1 + (r.Weight / 2), r.Y2, "bar")
            : new(r.X1, r.Y1 - (r.Weight / 2), r.X2, r.Y1 + (r.Weight / 2), "rule"),
        _ => throw new InvalidOperationException(),
    };

    [Fact]
    public void Compose_AnyContent_StaysInsideTheMargins() => s_document.Holds(document =>
    {
        foreach (PageLayout page in PageComposer.Compose(document).Pages)
        {
            foreach (Box box in page.Pieces.Select(BoxOf))
            {
                if (box.Left < 20 - 0.3 || box.Top < 22 - 0.3 || box.Right > page.Width - 15 + 0.3 || box.Bottom > page.Height - 9)
                    Assert.Fail($"page {page.Number}: {box}");
            }
        }
    }, iter: 100);

    [Fact]
    public void Compose_AnyContent_PrintsNothingOverText() => s_document.Holds(document =>
    {
        foreach (PageLayout page in PageComposer.Compose(document).Pages)
        {
            Box[] texts = [.. page.Pieces.Where(p => p is TextPiece { Width: > 0 } or ScenePiece).Select(BoxOf)];
            for (int i = 0; i < texts.Length; i++)
                for (int j = 0; j < i; j++)
                {
                    Box a = texts[i], b = texts[j];
                    const double Touch = 0.02;
                    if (a.Left < b.Right - Touch && b.Left < a.Right - Touch && a.Top < b.Bottom - Touch && b.Top < a.Bottom - Touch)
                        Assert.Fail($"page {page.Number}: {a} over {b}");
                }
        }
    }, iter: 100);

    [Fact]
    public void Compose_AnyContent_LosesNoCharacter() => s_document.Holds(document =>
    {
        DocumentLayout layout = PageComposer.Compose(document);
        IEnumerable<string> printed = layout.Pages.SelectMany(p => p.Texts).Where(t => t.Element >= 0).Select(t => t.Text.PlainText)
            .Where(t => !t.StartsWith("Printed at", StringComparison.Ordinal));
        IEnumerable<string> given = document.Sections.SelectMany(s => s.Blocks.SelectMany(Words).Append(s.Title)).Append(document.Title);
        Assert.Equal(Sorted(given), Sorted(printed));
    }, iter: 100);

    private static string Sorted(IEnumerable<string> texts) => new([.. string.Concat(texts).Where(c => c != ' ').Order()]);

    private static IEnumerable<string> Words(Block block) => block switch
    {
        HeadingBlock h => [h.Text.PlainText],
        ParagraphBlock p => [p.Text.PlainText],
        CautionBlock c => ["Caution", .. c.Lines.Select(l => l.PlainText)],
        TableBlock t => [.. t.Columns.Select(c => c.Title), .. t.Rows.SelectMany(r => r is GroupRow g ? [g.Title.PlainText] : ((CellRow)r).Cells.SelectMany(c => c.Phrases).Select(p => p.PlainText))],
        StepsBlock s => s.Steps.SelectMany((step, i) => (string[])[$"{i + 1}", step.Text.PlainText, step.Note.PlainText, step.Caution.PlainText, step.Caution.Runs.IsEmpty ? "" : "Caution"]),
        WorkingBlock w => ["size", "sum", "3 1/4", "3 1/4", .. w.Terms.SelectMany(t => (string[])[t.Label.PlainText, t.Origin.PlainText, t.Figure.PlainText, t.Sign switch { TermSign.Plus => "+", TermSign.Minus => "\u2212", _ => "" }])],
        _ => [],
    };

    [Fact]
    public void Compose_Twice_GivesTheSameLayout() => s_document.Holds(document =>
    {
        DocumentLayout a = PageComposer.Compose(document), b = PageComposer.Compose(document);
        Assert.Equal(a.Pages.SelectMany(p => p.Pieces).Select(BoxOf), b.Pages.SelectMany(p => p.Pieces).Select(BoxOf));
    }, iter: 20);
}
