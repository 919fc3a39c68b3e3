using System.Text.RegularExpressions;
using System.Xml.Linq;
using CsCheck;
using Setout.Drawing.Breakdowns;
using Setout.Drawing.Elevations;
using Setout.Drawing.Scenes;
using Setout.Drawing.Tests.Breakdowns;
using Setout.Drawing.Tests.Elevations;
using Setout.Testing;
using static Setout.Drawing.Tests.Figures;

namespace Setout.Drawing.Tests.Scenes;

public sealed class SvgWriterTests
{
    private static readonly XNamespace s_svg = "http://www.w3.org/2000/svg";

    private static Scene With(params SceneItem[] items) => new(100, 50, "a drawing", "what it shows", [.. items]);

    private static TextItem Text(Phrase phrase, double turn = 0, bool ground = false) => new(new(10, 20), phrase, 4, Anchor.Middle, Ink.Dimension, turn, ground);

    [Theory]
    [InlineData("23 1/4")]
    [InlineData("5/8")]
    [InlineData("-1/16")]
    [InlineData("590")]
    public void Write_Figure_ReadsAsItIsSpoken(string figure)
    {
        XElement text = Xml(With(Text(Fig(figure)))).Descendants(s_svg + "text").Single();

        Assert.Equal(figure, text.Value);
    }

    [Fact]
    public void Write_AnyPhrase_TextIsThePlainText() => Gen.String.Holds(words =>
    {
        string clean = string.Concat(words.EnumerateRunes().Select(r => r.Value is >= ' ' and not 0x7F and not 0xFFFE and not 0xFFFF ? r.ToString() : r.Value is '\t' or '\n' or '\r' ? " " : "\uFFFD"));
        Phrase phrase = Phrase.Of("at ").Add(Fig("23 1/4")).Add(words);
        return Xml(With(Text(phrase))).Descendants(s_svg + "text").Single().Value == "at 23 1/4" + clean;
    });

    [Fact]
    public void Write_ScriptInEveryWord_IsOnlyText()
    {
        const string bad = "\"><script>alert(1)</script><a onload='x' ]]> &amp; --> ";
        var scene = new Scene(100, 50, bad, bad, [new GroupItem(bad, bad, [Text(Phrase.Of(bad)), Text(Phrase.Of(bad).Add(Fig("1/2")).Bold())])]);
        XDocument svg = Xml(scene);

        Assert.DoesNotContain(svg.Descendants(), e => e.Name.LocalName is "script" or "a");
        Assert.DoesNotContain(svg.Descendants().Attributes(), a => a.Name.LocalName.StartsWith("on", StringComparison.Ordinal));
        XElement group = svg.Descendants(s_svg + "g").Single();
        Assert.Equal(bad, group.Attribute("data-key")!.Value);
        Assert.Equal(bad, group.Attribute("aria-label")!.Value);
        Assert.Equal(bad, svg.Root!.Element(s_svg + "title")!.Value);
        Assert.DoesNotContain("<script", SvgWriter.Write(scene, SvgOptions.Inline), StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void Write_EveryDrawing_IsWellFormedAndNamed()
    {
        Scene[] scenes =
        [
            Elevation.Draw(PrintersBench.Input(), new(260, 150)).Scene,
            SheetDrawing.Draw(Samples.Birch(), new(260, 180)),
            SheetDrawing.Draw(Samples.SmallParts(), new(260, 180)),
            .. BoardDrawing.Draw(Samples.Poplar(), new(260, 60)),
        ];
        foreach (Scene scene in scenes)
        {
            foreach (SvgOptions options in new[] { SvgOptions.Standalone, SvgOptions.Inline })
                Assert.NotEqual("", Xml(scene, options).Root!.Element(s_svg + "title")!.Value);
        }
    }

    [Fact]
    public void Write_LoneHalfOfAPair_BecomesTheReplacementSign() =>
        Assert.Equal("a\uFFFDb\uFFFD", Xml(With(Text(Phrase.Of("a\uD800b\u0001")))).Descendants(s_svg + "text").Single().Value);

    [Fact]
    public void Write_Standalone_OpensByItself()
    {
        XElement root = Xml(With(new LineItem(new(0, 0), new(1, 1), Ink.Part))).Root!;

        Assert.Equal("100mm", root.Attribute("width")!.Value);
        Assert.Equal("50mm", root.Attribute("height")!.Value);
        Assert.Equal("0 0 100 50", root.Attribute("viewBox")!.Value);
        Assert.Equal("graphics-document document", root.Attribute("role")!.Value);
        Assert.Equal("a drawing", root.Element(s_svg + "title")!.Value);
        Assert.Equal("what it shows", root.Element(s_svg + "desc")!.Value);
        string style = Assert.Single(root.Elements(s_svg + "style")).Value;
        Assert.Contains("prefers-color-scheme:dark", style, StringComparison.Ordinal);
        Assert.Contains("@media print", style, StringComparison.Ordinal);
        Assert.Contains("forced-colors:active", style, StringComparison.Ordinal);
        Assert.Contains("IBM Plex Sans", style, StringComparison.Ordinal);
    }

    [Fact]
    public void Write_Inline_LeavesSizeAndStyleToThePage()
    {
        XElement root = Xml(With(Text(Phrase.Of("a"))), SvgOptions.Inline).Root!;

        Assert.Null(root.Attribute("width"));
        Assert.Empty(root.Descendants(s_svg + "style"));
        Assert.NotNull(root.Attribute("viewBox"));
    }

    [Fact]
    public void Write_NoItem_CarriesItsOwnColour() =>
        Assert.DoesNotMatch(new Regex("(fill|stroke|style)=", RegexOptions.NonBacktracking), SvgWriter.Write(With(
            Text(Fig("1 1/2"), 90, true), ShapeItem.Rectangle(1, 1, 5, 5, Ink.Part, Wash.Wood), new HatchItem(new(1, 1), 20, 10), new LineItem(new(0, 0), new(1, 1), Ink.Pencil)), SvgOptions.Inline));

    [Fact]
    public void Write_Group_HasRoleLabelAndKey()
    {
        XElement group = Xml(With(new GroupItem("p1", "post 1", [Text(Phrase.Of("a"))]), new GroupItem("", "", []))).Descendants(s_svg + "g").First();

        Assert.Equal("graphics-object", group.Attribute("role")!.Value);
        Assert.Equal("post 1", group.Attribute("aria-label")!.Value);
        Assert.Equal("p1", group.Attribute("data-key")!.Value);
    }

    [Fact]
    public void Write_LinesOfOneInk_AreOnePath()
    {
        XElement path = Assert.Single(Xml(With(
            new LineItem(new(0, 0), new(1, 0), Ink.Grain), new LineItem(new(1, 0), new(2, 0.5), Ink.Grain), new LineItem(new(5, 5), new(6, 6), Ink.Grain))).Descendants(s_svg + "path"));

        Assert.Equal("M0 0L1 0L2 0.5M5 5L6 6", path.Attribute("d")!.Value);
    }

    [Theory]
    [InlineData(1.23456, "1.235")]
    [InlineData(-0.0001, "0")]
    [InlineData(10, "10")]
    [InlineData(-2.5, "-2.5")]
    [InlineData(1234567.5, "1234567.5")]
    public void Number_HasAtMostThreeDecimals(double value, string text) => Assert.Equal(text, SvgWriter.Number(value));

    [Fact]
    public void Hatch_Lines_StayInsideTheRectangle() =>
        Gen.Select(Gen.Double[0, 200], Gen.Double[0, 200], Gen.Double[0, 80], Gen.Double[0, 80]).Holds((x, y, w, h) =>
            Strokes.Hatch(new(new(x, y), w, h)).All(l => new Box(x, y, x + w, y + h).Grown(1e-9) is var box
                && box.Holds(new(l.From.X, l.To.Y, l.To.X, l.From.Y))));

    [Fact]
    public void Grain_Lines_KeepOffTheTextsAndInsideTheWood() =>
        Gen.Select(Gen.Double[5, 120], Gen.Double[3, 60], Gen.Bool, Gen.String[Gen.Char.AlphaNumeric, 1, 6]).Holds((w, h, upright, key) =>
        {
            var wood = new Box(10, 10, 10 + w, 10 + h);
            Box text = Box.At(10 + (w / 3), 10 + (h / 3), w / 4, h / 4);
            return Strokes.Grain(wood, upright, key, 3, [text]).Cast<LineItem>().All(l =>
                wood.Holds(Around(l)) && !text.Overlaps(Around(l)));
        });

    private static Box Around(LineItem l) => new(Math.Min(l.From.X, l.To.X), Math.Min(l.From.Y, l.To.Y), Math.Max(l.From.X, l.To.X), Math.Max(l.From.Y, l.To.Y));
}
