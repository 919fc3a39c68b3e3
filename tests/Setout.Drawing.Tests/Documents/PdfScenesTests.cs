using Setout.Drawing.Documents;
using Setout.Drawing.Scenes;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;
using UglyToad.PdfPig.Core;
using UglyToad.PdfPig.Graphics;

namespace Setout.Drawing.Tests.Documents;

public sealed class PdfScenesTests
{
    private const double PointsPerMillimetre = 72 / 25.4;

    private static Scene Scene(params SceneItem[] items) => new(180, 120, "test", "A test.", [.. items]);

    /// <summary>Stroked and filled paths as corners in millimetres from the top left.</summary>
    private static List<(PdfPath Path, Point[] Corners)> Paths(byte[] pdf)
    {
        using PdfDocument read = PdfDocument.Open(pdf);
        Page page = read.GetPage(1);
        return [.. page.Paths.Where(p => !p.IsClipping).Select(p => (p, p.SelectMany(s => s.Commands).SelectMany(Ends)
            .Select(e => new Point(e.X / PointsPerMillimetre, (page.Height - e.Y) / PointsPerMillimetre)).ToArray()))];
    }

    private static IEnumerable<PdfPoint> Ends(PdfSubpath.IPathCommand command) => command switch
    {
        PdfSubpath.Move move => [move.Location],
        PdfSubpath.Line line => [line.To],
        _ => [],
    };

    private static void Near(Point expected, Point actual)
    {
        Assert.Equal(expected.X, actual.X, 0.001);
        Assert.Equal(expected.Y, actual.Y, 0.001);
    }

    [Fact]
    public void Save_LineOf100Millimetres_Is100MillimetresOnPaper()
    {
        byte[] pdf = PrintRoom.Bytes(Scene(new LineItem(new(12.5, 20), new(112.5, 20), Ink.Part)));
        (_, Point[] corners) = Assert.Single(Paths(pdf));

        Near(new(12.5, 20), corners[0]);
        Near(new(112.5, 20), corners[1]);
        using PdfDocument read = PdfDocument.Open(pdf);
        Assert.Equal(180 * PointsPerMillimetre, read.GetPage(1).Width, 0.01);
    }

    [Fact]
    public void Save_SceneInADocumentThatFits_IsTrueToSize()
    {
        byte[] pdf = PrintRoom.Bytes(PrintRoom.Document(new SceneBlock(Scene(new LineItem(new(0, 0), new(123, 45), Ink.Hidden)))));
        (_, Point[] c) = Assert.Single(Paths(pdf), p => p.Path.LineDashPattern is { Array.Count: > 0 });

        Assert.Equal(123, c[1].X - c[0].X, 0.001);
        Assert.Equal(45, c[1].Y - c[0].Y, 0.001);
    }

    [Fact]
    public void Save_EachInk_HasItsWeight()
    {
        foreach (Ink ink in Enum.GetValues<Ink>())
        {
            (PdfPath path, _) = Assert.Single(Paths(PrintRoom.Bytes(Scene(new LineItem(new(10, 10), new(20, 10), ink)))));
            Assert.Equal(Inks.InPrint(ink).Weight * PointsPerMillimetre, path.LineWidth, 0.001);
            Assert.Equal(Inks.InPrint(ink).Dash.Length, path.LineDashPattern?.Array.Count ?? 0);
        }
    }

    [Fact]
    public void InPrint_Pencil_IsHeaviestAndTheOnlyHeavyDashedLine()
    {
        Ink[] others = [.. Enum.GetValues<Ink>().Where(i => i != Ink.Pencil)];

        Assert.All(others, i => Assert.True(Inks.InPrint(i).Weight < Inks.InPrint(Ink.Pencil).Weight));
        Assert.DoesNotContain(others, i => Inks.InPrint(i).Dash.Length > 0 && Inks.InPrint(i).Weight > 0.3);
    }

    [Fact]
    public void Save_Shape_HasItsCornersAndCoversWhatIsBehind()
    {
        byte[] pdf = PrintRoom.Bytes(Scene(
            new LineItem(new(0, 30), new(100, 30), Ink.Outline), ShapeItem.Rectangle(40, 20, 30, 20, Ink.Part, Wash.Paper)));
        (PdfPath path, Point[] corners) = Paths(pdf)[1];

        Assert.True(path.IsFilled && path.IsStroked);
        Near(new(40, 20), corners[0]);
        Near(new(70, 40), corners[2]);
        Raster page = Raster.Of(pdf, 254);
        Assert.Equal(0, page.Dark(42, 22, 26, 16));
        Assert.True(page.Dark(10, 29.5, 20, 1) > 0.3);
    }

    [Fact]
    public void Save_Hatch_StaysInItsRectangleAndFillsIt()
    {
        byte[] pdf = PrintRoom.Bytes(Scene(new HatchItem(new(40, 30), 60, 40)));
        Raster page = Raster.Of(pdf, 508);

        Assert.Equal(0, page.Dark(0, 0, 39.5, 120));
        Assert.Equal(0, page.Dark(100.5, 0, 79, 120));
        Assert.Equal(0, page.Dark(0, 0, 180, 29.5));
        Assert.Equal(0, page.Dark(0, 70.5, 180, 49));
        for (int x = 40; x < 100; x += 10)
            for (int y = 30; y < 70; y += 10)
                Assert.True(page.Dark(x, y, 10, 10) > 0.02, $"no hatching at {x}, {y}");
    }

    [Theory]
    [InlineData(Anchor.Start, 0)]
    [InlineData(Anchor.Middle, 0)]
    [InlineData(Anchor.End, 0)]
    [InlineData(Anchor.Middle, 90)]
    [InlineData(Anchor.End, 30)]
    public void Save_Text_StandsAtItsAnchorTurned(Anchor anchor, double turn)
    {
        using PdfDocument read = PdfDocument.Open(PrintRoom.Bytes(Scene(new TextItem(new(90, 60), Phrase.Of("HHHHH"), 6, anchor, Ink.Part, turn))));
        Page page = read.GetPage(1);
        Letter[] seen = [.. page.Letters.Where(l => l.Value == "H")];
        PdfPoint first = seen[0].StartBaseLine, last = seen[4].EndBaseLine;
        (double x, double y) = anchor switch
        {
            Anchor.Start => (first.X, first.Y),
            Anchor.End => (last.X, last.Y),
            _ => ((first.X + last.X) / 2, (first.Y + last.Y) / 2),
        };

        Assert.Equal(90, x / PointsPerMillimetre, 0.01);
        Assert.Equal(60, (page.Height - y) / PointsPerMillimetre, 0.01);
        Assert.Equal(turn, Math.Atan2(last.Y - first.Y, last.X - first.X) * 180 / Math.PI, 0.01);
    }

    [Fact]
    public void Save_TextWithGround_IsNotCrossedByALine()
    {
        var line = new LineItem(new(0, 58), new(180, 58), Ink.Outline);
        Raster bare = Raster.Of(PrintRoom.Bytes(Scene(line)), 254);
        Raster ground = Raster.Of(PrintRoom.Bytes(Scene(line, new TextItem(new(90, 60), Phrase.Of("l   l"), 8, Anchor.Middle, Ink.Part, 0, true))), 254);

        Assert.True(bare.Dark(89, 57, 2, 2) > 0.1);
        Assert.Equal(0, ground.Dark(89, 57, 2, 2));
        Assert.True(ground.Dark(10, 57, 20, 2) > 0.1);
    }

    [Fact]
    public void Save_ItemsBeyondTheSheet_AreCutOff()
    {
        byte[] pdf = PrintRoom.Bytes(PrintRoom.Document(new SceneBlock(new Scene(60, 30, "t", "", [new LineItem(new(-500, 15), new(500, 15), Ink.Pencil)]))));
        Raster page = Raster.Of(pdf, 127);

        Assert.Equal(0, page.Dark(0, 0, 19, 279));
        Assert.Equal(0, page.Dark(202, 0, 13, 279));
    }

    [Fact]
    public void Save_GroupsAndUnknownCharacters_AreDrawnAndReported()
    {
        using var stream = new MemoryStream();
        Scene scene = Scene(new GroupItem("k", "part", [new TextItem(new(10, 10), Phrase.Of("A\u2603B"), 5, Anchor.Start, Ink.Part)]));

        Assert.Contains(PdfScenes.Save(scene, "en", PrintRoom.Stamp, stream), r => r.Code == "page.missing-glyph");
        using PdfDocument read = PdfDocument.Open(stream.ToArray());
        Assert.Equal("A?B ", read.GetPage(1).Text);
    }
}
