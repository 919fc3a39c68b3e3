using System.Collections.Immutable;
using Setout.Drawing.Readings;
using Setout.Drawing.Scenes;
using Setout.Testing;
using static Setout.Drawing.Tests.Figures;

namespace Setout.Drawing.Tests.Readings;

public sealed class ReadingDrawingTests
{
    private static readonly ImmutableDictionary<string, Func<ReadingPaper, Scene>> s_drawings = ImmutableDictionary.CreateRange(new KeyValuePair<string, Func<ReadingPaper, Scene>>[]
    {
        new("readings-sheet", p => SheetReadings.Draw(ReadingsPage.Sheet, p)),
        new("readings-opening", p => WidthReadings.Draw(ReadingsPage.Opening, p)),
        new("readings-box", p => WidthReadings.Draw(ReadingsPage.Box, p)),
    });

    public static TheoryData<string> Names => [.. s_drawings.Keys.Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Names))]
    public void Draw_PictureOfThePage_IsTheCommittedOne(string name) =>
        Snapshots.MatchFile(SvgWriter.Write(s_drawings[name](ReadingsPage.Paper), SvgOptions.Standalone), $"docs/pictures/{name}.svg");

    [Theory]
    [MemberData(nameof(Names))]
    public void Draw_AnyPaper_NoTextClashesOrSpills(string name)
    {
        foreach (double width in new[] { 120.0, 158, 220 })
        {
            Scene scene = s_drawings[name](new(width, 70));
            Assert.Empty(Clashes(scene));
            Assert.Empty(Spilled(scene));
            Assert.NotNull(Xml(scene).Root);
        }
    }

    [Fact]
    public void Counts_OfAnOpening_IsTheNarrowest_OfABoxTheWidest_TheFrontOneOfEquals()
    {
        Assert.Equal("front", ReadingsPage.Opening.Counts.Spot);
        Assert.Equal("middle", ReadingsPage.Box.Counts.Spot);
        Assert.Equal("front", (ReadingsPage.Box with { Seen = SeenFromAbove.Opening }).Counts.Spot);
    }

    [Fact]
    public void Draw_ReadingThatCounts_IsInPencilAndHeavyAndSaidInWords_AndNoOtherIs()
    {
        foreach ((WidthsInput input, string words) in new[] { (ReadingsPage.Opening, "front: the narrowest counts"), (ReadingsPage.Box, "middle: the widest counts") })
        {
            Scene scene = WidthReadings.Draw(input, ReadingsPage.Paper);
            TextItem[] pencil = [.. Texts(scene.Items).Where(t => t.Ink == Ink.Pencil)];
            Assert.Equal([input.Counts.Figure.PlainText, words], pencil.Select(t => t.Text.PlainText));
            Assert.All(pencil, t => Assert.True(t.Text.Runs[0].IsBold));
        }
    }

    [Fact]
    public void Draw_Taper_IsAsManyTimesLargerAsItSays()
    {
        // 19 9/16 is 1/32 more than 19 17/32; drawn 60 times that, 60/32 in, at the scale of the width that counts.
        Scene scene = WidthReadings.Draw(ReadingsPage.Opening, ReadingsPage.Paper);
        double front = Across(scene, Ink.Pencil), back = Across(scene, Ink.Dimension);
        Assert.Equal(60 / 32.0 / (19 + (17 / 32.0)), (back - front) / front, 6);
        Assert.Contains("60 times", string.Join(' ', Texts(scene.Items).Select(t => t.Text.PlainText)), StringComparison.Ordinal);
        Scene plain = WidthReadings.Draw(ReadingsPage.Opening with { Exaggerated = 1 }, ReadingsPage.Paper);
        Assert.DoesNotContain("times as large", string.Join(' ', Texts(plain.Items).Select(t => t.Text.PlainText)), StringComparison.Ordinal);
    }

    [Fact]
    public void Draw_SpotsOfASheet_StayInsideItsBorder_AndAreAllThere()
    {
        Scene scene = SheetReadings.Draw(ReadingsPage.Sheet, ReadingsPage.Paper);
        ShapeItem sheet = scene.Items.OfType<ShapeItem>().First();
        ShapeItem[] rings = [.. Groups(scene.Items).SelectMany(g => g.Items).OfType<ShapeItem>()];
        Assert.Equal(4, rings.Length);
        Assert.All(rings.SelectMany(r => r.Corners), c =>
        {
            Assert.InRange(c.X, sheet.Corners[0].X + 1, sheet.Corners[2].X - 1);
            Assert.InRange(c.Y, sheet.Corners[0].Y + 1, sheet.Corners[2].Y - 1);
        });
    }

    [Fact]
    public void Draw_WhatCannotBeRead_IsRefused()
    {
        SheetInput sheet = ReadingsPage.Sheet;
        Assert.Throws<ArgumentException>(() => SheetReadings.Draw(sheet with { Spots = [] }, ReadingsPage.Paper));
        Assert.Throws<ArgumentException>(() => SheetReadings.Draw(sheet with { Spots = [new(In("1"), In("20"), Phrase.Empty)] }, ReadingsPage.Paper));
        WidthsInput box = ReadingsPage.Box;
        Assert.Throws<ArgumentException>(() => WidthReadings.Draw(box with { Reads = [box.Reads[0]] }, ReadingsPage.Paper));
        Assert.Throws<ArgumentException>(() => WidthReadings.Draw(box with { Reads = [box.Reads[1], box.Reads[0]] }, ReadingsPage.Paper));
        Assert.Throws<ArgumentException>(() => WidthReadings.Draw(box with { Depth = In("12") }, ReadingsPage.Paper));
        Assert.Throws<ArgumentOutOfRangeException>(() => WidthReadings.Draw(box with { Exaggerated = 0 }, ReadingsPage.Paper));
    }

    private static double Across(Scene scene, Ink ink)
    {
        LineItem line = Groups(scene.Items).SelectMany(g => g.Items).OfType<LineItem>().Single(l => l.Ink == ink);
        return line.To.X - line.From.X;
    }
}
