using System.Collections.Immutable;
using CsCheck;
using Setout.Core.Measures.Text;
using Setout.Drawing.Documents;
using Setout.Drawing.Documents.Pdf;
using Setout.Drawing.Scenes;
using Setout.Testing;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Core;

namespace Setout.Drawing.Tests.Documents;

/// <summary>Fractions are drawn stacked and read back as 23 1/4, by two readers that have nothing in common.</summary>
public sealed class FractionTests
{
    private static readonly (Figure Figure, string Text)[] s_cases =
    [
        (PrintRoom.Inches(23, 1, 4), "23 1/4"), (PrintRoom.Inches(1, 1, 2), "1 1/2"), (PrintRoom.Inches(0, 3, 4), "3/4"),
        (PrintRoom.Inches(11, 11, 16), "11 11/16"), (PrintRoom.Inches(7, 63, 64), "7 63/64"), (PrintRoom.Inches(120, 1, 32), "120 1/32"),
        (PrintRoom.Inches(-(23 * 64) - 16), "-23 1/4"), (PrintRoom.Inches(-16), "-1/4"), (PrintRoom.Inches(23, 1, 4) with { Unit = "in" }, "23 1/4 in"),
        (PrintRoom.Inches(64), "1"), (LengthFormat.Millimetre.Format(Core.Measures.ExactLength.FromMillimetres(Core.Measures.Rational.Of(3612, 10))), "361.2 mm"),
    ];

    private static string Squeezed(string text) => string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    private static BenchDocument InSentences() => PrintRoom.Document([.. s_cases.SelectMany(c => new Block[]
    {
        new ParagraphBlock(Phrase.Of("cut to ").Add(c.Figure).Add(", then stop")),
        new ParagraphBlock(Phrase.Of("heavy ").Add(c.Figure).Add(" end").Bold(), TextSize.Figure),
        new ParagraphBlock(Phrase.Of("touching(").Add(c.Figure).Add(")after"), TextSize.Small),
    })]);

    [Theory]
    [InlineData]
    [InlineData("-layout")]
    [InlineData("-raw")]
    public void PdfToText_FiguresInSentences_ReadAsTyped(params string[] options)
    {
        string text = Squeezed(PrintRoom.PdfToText(PrintRoom.Bytes(InSentences()), options));

        foreach ((_, string figure) in s_cases)
        {
            Assert.Contains($"cut to {figure}, then stop", text);
            Assert.Contains($"heavy {figure} end", text);
            Assert.Contains($"touching({figure})after", text);
        }
    }

    [Fact]
    public void PdfPig_FiguresInSentences_ReadAsTyped()
    {
        using PdfDocument pdf = PdfDocument.Open(PrintRoom.Bytes(InSentences()));
        string text = string.Concat(pdf.GetPages().Select(p => p.Text));
        string words = string.Join(' ', pdf.GetPages().SelectMany(p => p.GetWords()).Select(w => w.Text));

        foreach ((_, string figure) in s_cases)
        {
            Assert.Contains($"cut to {figure}, then stop", text);
            Assert.Contains($"cut to {figure}, then stop", words);
            Assert.Contains($"heavy {figure} end", words);
            Assert.Contains($"touching({figure})after", words);
        }
    }

    [Fact]
    public void BothReaders_FiguresInATable_ReadAsTyped()
    {
        byte[] pdf = PrintRoom.Bytes(PrintRoom.Document(new TableBlock(
            [new("a", ColumnWidth.Fit, ColumnAlign.Right, TextSize.Figure), new("b", ColumnWidth.Fit, ColumnAlign.Right, TextSize.Figure), new("c", ColumnWidth.Share(1))],
            [.. s_cases.Select(c => CellRow.Of(Cell.Of(Phrase.Of(c.Figure)), Cell.Of(Phrase.Of(c.Figure)), Cell.Of("end")))])));
        string text = Squeezed(PrintRoom.PdfToText(pdf, "-layout"));
        using PdfDocument read = PdfDocument.Open(pdf);
        string words = string.Join(' ', read.GetPage(1).GetWords().Select(w => w.Text));

        foreach ((_, string figure) in s_cases)
        {
            Assert.Contains($"{figure} {figure} end", text);
            Assert.Contains($"{figure} {figure} end", words);
        }
    }

    private static Scene Chain(double turn)
    {
        Phrase[] figures = [PrintRoom.Figure(26, 15, 16), PrintRoom.Figure(16, 1, 2), PrintRoom.Figure(0, 3, 4), PrintRoom.Figure(27, 1, 8)];
        return new(150, 150, "chain", "", [.. figures.Select((f, i) => (SceneItem)new TextItem(
            turn == 0 ? new(20 + (i * 30), 75) : new(75, 130 - (i * 30)), f, 5, Anchor.Middle, Ink.Dimension, turn, true))]);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(90)]
    public void BothReaders_DimensionChain_ReadsInOrder(double turn)
    {
        byte[] pdf = PrintRoom.Bytes(Chain(turn));
        using PdfDocument read = PdfDocument.Open(pdf);

        Assert.Equal("26 15/16 16 1/2 3/4 27 1/8", Squeezed(PrintRoom.PdfToText(pdf)));
        Assert.Equal("26 15/16 16 1/2 3/4 27 1/8", Squeezed(PrintRoom.PdfToText(pdf, "-raw")));
        Assert.Equal("26 15/16 16 1/2 3/4 27 1/8 ", read.GetPage(1).Text);
    }

    [Fact]
    public void Set_AnyFigure_SpokenTextCoversWhatIsDrawn() => Gen.Int[-10000, 100000].Holds(sixtyFourths =>
    {
        Figure figure = PrintRoom.Inches(sixtyFourths);
        SetLine line = TextMeasure.Set(Phrase.Of(figure), 5);
        TextStretch[] read = [.. ReadText.Of(line, 5).Select(r => r.Stretch)];

        Assert.Equal(figure + " ", string.Concat(read.Select(p => p.Text)));
        double x = 0;
        foreach (TextStretch stretch in read[..^1])
        {
            Assert.Equal(x, stretch.X, 9);
            x += stretch.Width;
        }
        Assert.Equal(line.Width, x, 9);
        Assert.All(line.Stretches, p => Assert.InRange(p.X + p.Width, 0, line.Width + 1e-9));
    }, iter: 500);

    [Fact]
    public void Page_Fraction_IsSeenWhereItStandsAndItsTextIsNot()
    {
        byte[] pdf = PrintRoom.Bytes(new Scene(60, 30, "f", "", [new TextItem(new(10, 20), PrintRoom.Figure(23, 3, 8), 12, Anchor.Start, Ink.Dimension)]));
        using PdfDocument read = PdfDocument.Open(pdf);
        Assert.Equal("23", string.Concat(read.GetPage(1).Letters.Where(l => l.RenderingMode != TextRenderingMode.Neither).Select(l => l.Value)));

        ImmutableArray<TextStretch> stretches = TextMeasure.Set(PrintRoom.Figure(23, 3, 8), 12).Stretches;
        Raster page = Raster.Of(pdf, 254);
        foreach (TextStretch stretch in stretches.Where(p => p.Kind != StretchKind.Gap))
            Assert.InRange(page.Dark(10 + stretch.X, 20 - stretch.Rise - (0.698 * stretch.Size), stretch.Width, 0.698 * stretch.Size), 0.12, 0.75);
        // The gap before the fraction and the sheet below it are clean: nothing is drawn that should only be read.
        double gap = stretches[0].Width, numerator = stretches.Single(p => p.Kind == StretchKind.Numerator).X;
        Assert.Equal(0, page.Dark(10 + gap + 0.1, 8, numerator - gap - 0.1, 15));
        Assert.Equal(0, page.Dark(0, 23, 60, 6));
    }
}
