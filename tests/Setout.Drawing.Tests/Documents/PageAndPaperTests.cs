using System.Xml.Linq;
using CsCheck;
using Setout.Drawing.Scenes;
using Setout.Testing;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;
using UglyToad.PdfPig.Core;
using UglyToad.PdfPig.Graphics.Operations.SpecialGraphicsState;
using static Setout.Drawing.Tests.Figures;

namespace Setout.Drawing.Tests.Documents;

/// <summary>A text looks the same on the page and on paper: both files are read back and every sign stands at the same place.</summary>
public sealed class PageAndPaperTests
{
    private const double PointsPerMillimetre = 72 / 25.4, Left = 20, Baseline = 30, Size = 6;

    private readonly record struct Sign(double X, double Rise, double Size);

    private static readonly Gen<Run> s_run = Gen.Select(
        Gen.OneOf(
            Gen.String[Gen.Char["abc xyz,;"], 1, 8].Select(words => new Run(words, null, false)),
            Gen.Int[0, 64 * 90].Select(n => new Run("", PrintRoom.Inches(n), false)),
            Gen.Int[0, 64 * 90].Select(n => new Run("", PrintRoom.Inches(n) with { Unit = "in" }, false))),
        Gen.Bool, Gen.Bool).Select((run, bold, italic) => run with { IsBold = bold, IsItalic = italic });

    private static Scene Of(Phrase phrase) => new(400, 60, "line", "", [new TextItem(new(Left, Baseline), phrase, Size, Anchor.Start, Ink.Part)]);

    /// <summary>Follows the pen of the SVG: moves by dx and dy, then by each sign's own width.</summary>
    private static List<Sign> OnPage(Phrase phrase)
    {
        XElement text = Xml(Of(phrase)).Descendants().Single(e => e.Name.LocalName == "text");
        double x = (double)text.Attribute("x")!, y = (double)text.Attribute("y")!;
        var signs = new List<Sign>();
        foreach (XElement span in text.Elements().DefaultIfEmpty(text))
        {
            x += (double?)span.Attribute("dx") ?? 0;
            y += (double?)span.Attribute("dy") ?? 0;
            double size = (double?)span.Attribute("font-size") ?? Size;
            string classes = (string?)span.Attribute("class") ?? "";
            Face face = classes.Contains("so-bold", StringComparison.Ordinal) ? Face.SemiBold : classes.Contains("so-italic", StringComparison.Ordinal) ? Face.Italic : Face.Regular;
            foreach (char c in span.Value)
            {
                if (c != ' ') signs.Add(new(x, Baseline - y, size));
                x += Typeface.Font(face).Width(c.ToString(), size);
            }
        }
        return signs;
    }

    /// <summary>Letters that are seen, and shapes by the matrix that each is drawn with.</summary>
    private static List<Sign> OnPaper(Phrase phrase)
    {
        using PdfDocument pdf = PdfDocument.Open(PrintRoom.Bytes(Of(phrase)));
        Page page = pdf.GetPage(1);
        Sign At(double x, double y, double points) => new(x / PointsPerMillimetre, Baseline - ((page.Height - y) / PointsPerMillimetre), points / PointsPerMillimetre);
        IEnumerable<Sign> letters = page.Letters.Where(l => l.RenderingMode != TextRenderingMode.Neither && l.Value != " ").Select(l => At(l.StartBaseLine.X, l.StartBaseLine.Y, l.PointSize));
        IEnumerable<Sign> shapes = page.Operations.OfType<ModifyCurrentTransformationMatrix>().Select(m => At((double)m.Value[4], (double)m.Value[5], (double)m.Value[0] * Typeface.Font(Face.Regular).UnitsPerEm));
        return [.. letters.Concat(shapes).OrderBy(s => s.X)];
    }

    private static void Agree(Phrase phrase)
    {
        List<Sign> page = [.. OnPage(phrase).OrderBy(s => s.X)], paper = OnPaper(phrase);
        Assert.Equal(page.Count, paper.Count);
        for (int i = 0; i < page.Count; i++)
        {
            // The SVG rounds each of its moves to thousandths.
            Assert.Equal(page[i].X, paper[i].X, 0.02);
            Assert.Equal(page[i].Rise, paper[i].Rise, 0.02);
            Assert.Equal(page[i].Size, paper[i].Size, 0.002);
        }
    }

    [Theory]
    [InlineData("23 1/4")]
    [InlineData("7/8")]
    [InlineData("590")]
    [InlineData("110 63/64")]
    public void Figure_OnPageAndPaper_StandsAtTheSamePlaces(string figure)
    {
        Agree(Fig(figure));
        Agree(Phrase.Of("cut ").Add(Fig(figure)).Add(" and ").Add(Fig("1/2").Bold()).Add(" more"));
    }

    [Fact]
    public void AnyPhrase_OnPageAndPaper_StandsAtTheSamePlaces() =>
        s_run.Array[1, 6].Holds(runs => Agree(new([.. runs])), iter: 100);
}
