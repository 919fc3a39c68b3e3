using System.Text;
using Setout.Drawing.Documents;
using Setout.Drawing.Fonts;
using Setout.Drawing.Scenes;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;
using UglyToad.PdfPig.Outline;
using UglyToad.PdfPig.Tokens;

namespace Setout.Drawing.Tests.Documents;

public sealed class PdfWriterTests
{
    [Fact]
    public void Save_SameDocument_GivesTheSameBytes()
    {
        byte[] a = PrintRoom.Bytes(PlanChest.Document(Paper.A4)), b = PrintRoom.Bytes(PlanChest.Document(Paper.A4));

        Assert.True(a.AsSpan().SequenceEqual(b));
        Assert.False(a.AsSpan().SequenceEqual(PrintRoom.Bytes(PlanChest.Document(Paper.Letter))));
    }

    [Fact]
    public void Save_Texts_StandWhereTheLayoutPutThem()
    {
        BenchDocument document = PlanChest.Document(Paper.Letter);
        DocumentLayout layout = PageComposer.Compose(document);
        using PdfDocument pdf = PdfDocument.Open(PrintRoom.Bytes(document));

        Assert.Equal(layout.Pages.Length, pdf.NumberOfPages);
        foreach (PageLayout page in layout.Pages.Where(p => !p.Pieces.OfType<ScenePiece>().Any()))
        {
            IReadOnlyList<Letter> letters = pdf.GetPage(page.Number).Letters;
            int next = 0;
            foreach (TextPiece text in page.Texts.Where(t => t.Text.PlainText.Length > 0))
            {
                string words = text.Text.PlainText;
                Assert.Equal(words, string.Concat(letters.Skip(next).Take(words.Length).Select(l => l.Value)));
                Letter first = letters[next], last = letters[next + words.Length - 1];
                Assert.Equal(text.X, first.StartBaseLine.X * 25.4 / 72, 0.01);
                Assert.Equal(text.Y, page.Height - (first.StartBaseLine.Y * 25.4 / 72), 0.01);
                Assert.Equal(text.X + text.Width, last.EndBaseLine.X * 25.4 / 72, 0.05);
                Assert.Equal(" ", letters[next + words.Length].Value);
                next += words.Length + 1;
            }
            Assert.Equal(letters.Count, next);
        }
    }

    [Fact]
    public void Save_Properties_AreThoseGiven()
    {
        using PdfDocument pdf = PdfDocument.Open(PrintRoom.Bytes(PlanChest.Document(Paper.A4)));

        Assert.Equal("Plan chest for the print studio", pdf.Information.Title);
        Assert.Equal("Setout", pdf.Information.Author);
        Assert.StartsWith("D:20310314094000", pdf.Information.CreationDate, StringComparison.Ordinal);
        Assert.Equal("en", ((StringToken)pdf.Structure.Catalog.CatalogDictionary.Data["Lang"]).Data);
        Assert.True(pdf.TryGetBookmarks(out Bookmarks? bookmarks));
        Assert.Equal(["What this is", "Buying list", "Parts", "Front", "Assembly"], bookmarks!.Roots.Select(r => r.Title));
        Assert.Equal([1, 2, 3, 5, 7], bookmarks.Roots.Cast<DocumentBookmarkNode>().Select(r => r.PageNumber));
    }

    [Theory]
    [InlineData(Paper.Letter, 612, 792)]
    [InlineData(Paper.A4, 595.276, 841.89)]
    public void Save_Paper_HasItsSize(Paper paper, double width, double height)
    {
        using PdfDocument pdf = PdfDocument.Open(PrintRoom.Bytes(PlanChest.Document(paper)));

        Assert.Equal(width, pdf.GetPage(1).Width, 0.01);
        Assert.Equal(height, pdf.GetPage(1).Height, 0.01);
    }

    [Fact]
    public void Save_Everything_IsBlackOrGrey()
    {
        using PdfDocument pdf = PdfDocument.Open(PrintRoom.Bytes(PlanChest.Document(Paper.A4)));
        HashSet<string> operators = [.. pdf.GetPages().SelectMany(p => p.Operations).Select(o => o.Operator)];

        Assert.Contains("g", operators);
        Assert.Empty(operators.Intersect(["rg", "RG", "k", "K", "sc", "SC", "scn", "SCN", "cs", "CS"]));
    }

    [Fact]
    public void Save_ReadingOrder_NamesHeadsCellsAndDrawings()
    {
        byte[] bytes = PrintRoom.Bytes(PlanChest.Document(Paper.A4));
        using PdfDocument pdf = PdfDocument.Open(bytes);
        var roles = new List<string>();
        var words = new List<string>();
        Walk(pdf, pdf.Structure.Catalog.CatalogDictionary.Data["StructTreeRoot"], roles, words);

        Assert.Equal(["Document", "H1", "Sect", "H2", "P", "P", "P", "H3", "P", "P", "P", "Sect", "H2", "P", "Table", "TR", "TH", "TH", "TH", "TH", "TH", "TR", "TH", "TR", "TD"], roles.Take(25));
        Assert.Contains("LBody", roles);
        Assert.Contains("Front of the plan chest. Five fronts of equal height between two sides, 38 wide and 21 3/4 high.", words);
        IReadOnlyList<MarkedContentElement> marked = pdf.GetPage(1).GetMarkedContents();
        Assert.Contains(marked, m => m.IsArtifact);
        Assert.Equal("Plan chest for the print studio ", string.Concat(marked.First(m => m.MarkedContentIdentifier == 0).Letters.Select(l => l.Value)));
    }

    private static void Walk(PdfDocument pdf, IToken token, List<string> roles, List<string> words)
    {
        if (token is IndirectReferenceToken reference) token = pdf.Structure.GetObject(reference.Data).Data;
        if (token is ArrayToken array) foreach (IToken kid in array.Data) Walk(pdf, kid, roles, words);
        if (token is not DictionaryToken node) return;
        if (node.Data.TryGetValue("S", out IToken? role)) roles.Add(((NameToken)role).Data);
        if (node.Data.TryGetValue("Alt", out IToken? alt)) words.Add(((StringToken)alt).Data);
        if (node.Data.TryGetValue("K", out IToken? kids)) Walk(pdf, kids, roles, words);
    }

    [Fact]
    public void Save_Fonts_AreEmbeddedAsSmallSubsets()
    {
        byte[] pdf = PrintRoom.Bytes(PrintRoom.Document(new ParagraphBlock("ABC")));

        Assert.Contains("STOUTR+IBMPlexSans-Regular", Encoding.Latin1.GetString(pdf));
        Assert.InRange(pdf.Length, 5000, 40000);
    }

    [Fact]
    public void Save_LettersOutsideAscii_ReadBack()
    {
        const string Words = "Øre 5½ 3″ 2×4 ≥18 ±0.5 40µm – café über groß Łódź";
        byte[] pdf = PrintRoom.Bytes(PrintRoom.Document(new ParagraphBlock(Words)));
        using PdfDocument read = PdfDocument.Open(pdf);

        Assert.Contains(Words, read.GetPage(1).Text);
        Assert.Contains(Words, PrintRoom.PdfToText(pdf));
    }

    [Fact]
    public void Save_EmptyDocument_IsOnePage()
    {
        using PdfDocument read = PdfDocument.Open(PrintRoom.Bytes(PrintRoom.Document() with { Sections = [] }));

        Assert.Equal(1, read.NumberOfPages);
    }

    [Fact]
    public void Path_EachFigure_FillsTheBoxThatTheFontStates()
    {
        foreach (FontFile face in Enum.GetValues<Face>().Select(Typeface.Font))
            foreach (char c in "0123456789/\u2212")
            {
                int glyph = face.GlyphOf(new(c));
                ReadOnlySpan<byte> data = face.Outline(glyph);
                int[] stated = [I16(data, 2), I16(data, 4), I16(data, 6), I16(data, 8)];
                double[][] ends = [.. GlyphOutline.Path(face, glyph).Split('\n').Select(l => l.Split(' ')).Where(l => l.Length > 2).Select(l => new[] { double.Parse(l[^3]), double.Parse(l[^2]) })];
                Assert.Equal<int>(stated, (int[])[(int)ends.Min(e => e[0]), (int)ends.Min(e => e[1]), (int)ends.Max(e => e[0]), (int)ends.Max(e => e[1])]);
            }
    }

    private static short I16(ReadOnlySpan<byte> data, int at) => System.Buffers.Binary.BinaryPrimitives.ReadInt16BigEndian(data[at..]);
}
