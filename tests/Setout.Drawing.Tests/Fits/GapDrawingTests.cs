using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Drawing.Fits;
using Setout.Drawing.Scenes;
using Setout.Testing;
using static Setout.Drawing.Tests.Figures;

namespace Setout.Drawing.Tests.Fits;

public sealed class GapDrawingTests
{
    private static readonly GapPaper s_page = new(190, 400);

    [Fact]
    public void Draw_Trays_IsTheCommittedDrawing() =>
        Snapshots.Match(SvgWriter.Write(Assert.Single(GapDrawing.Draw(Trays.Gaps, s_page)), SvgOptions.Standalone), "trays", "svg");

    [Theory]
    [InlineData(220)]
    [InlineData(174)]
    [InlineData(131)]
    [InlineData(92)]
    [InlineData(80)]
    public void Draw_AnyPaper_NoTextClashesOrSpills(double width)
    {
        Scene scene = Assert.Single(GapDrawing.Draw(Trays.Gaps, new(width, 600)));
        Assert.Empty(Clashes(scene));
        Assert.Empty(Spilled(scene));
    }

    [Fact]
    public void Draw_LowPaper_GoesOnToFurtherDrawingsAndLosesNoRow()
    {
        ImmutableArray<Scene> scenes = GapDrawing.Draw(Trays.Gaps, new(190, 60));

        Assert.True(scenes.Length > 1);
        Assert.Equal(Trays.Gaps.Rows.Select(r => r.Key), scenes.SelectMany(s => Groups(s.Items)).Select(g => g.Key));
        Assert.All(scenes, s => Assert.True(s.Height <= 60, $"{s.Height}"));
    }

    [Fact]
    public void Draw_Windows_AreCentredAndAtOneScale()
    {
        Scene scene = GapDrawing.Draw(Trays.Gaps, s_page)[0];
        (double Least, double Most)[] windows = [.. Groups(scene.Items).Select(Window)];

        // 4/64 against 8/64.
        Assert.Equal(windows[2].Most - windows[2].Least, 2 * (windows[0].Most - windows[0].Least), 6);
        Assert.All(windows, w => Assert.Equal(windows[0].Least + windows[0].Most, w.Least + w.Most, 6));
    }

    [Theory]
    [InlineData("T1.play", true)]
    [InlineData("T2.gap", false)]
    public void Draw_WhatLikelyLiesOutside_IsAZigzagInPencilAndNothingElseIs(string key, bool isOutside)
    {
        GroupItem row = Groups(GapDrawing.Draw(Trays.Gaps, s_page)[0].Items).Single(g => g.Key == key);
        (double least, double most) = Window(row);
        LineItem[] pencil = [.. row.Items.OfType<LineItem>().Where(l => l.Ink == Ink.Pencil)];

        Assert.Equal(isOutside, pencil.Length > 1);
        Assert.All(pencil, l => Assert.True(Math.Max(l.From.X, l.To.X) <= least + 1e-6 || Math.Min(l.From.X, l.To.X) >= most - 1e-6));
        // Told by its shape: no stroke of a zigzag is level, and the thick line is.
        Assert.All(pencil, l => Assert.NotEqual(l.From.Y, l.To.Y));
    }

    [Fact]
    public void Draw_ThickLine_LiesWithinTheWindowAndIsAsLongAsTheLikelyRange()
    {
        GroupItem row = Groups(GapDrawing.Draw(Trays.Gaps, s_page)[0].Items).Single(g => g.Key == "T2.gap");
        (double least, double most) = Window(row);
        LineItem[] thick = [.. row.Items.OfType<LineItem>().Where(l => l.Ink == Ink.Outline && l.From.Y == l.To.Y)];

        // 0.6/64 to either side, of a window of 8/64.
        Assert.All(thick, l => Assert.Equal(1.2 / 8, (l.To.X - l.From.X) / (most - least), 6));
        Assert.Equal(3, thick.Length);
    }

    [Fact]
    public void Draw_GapThatStandsOutside_IsRingedAndSaidInWords()
    {
        GroupItem row = Groups(GapDrawing.Draw(Trays.Gaps, s_page)[0].Items).Single(g => g.Key == "T4.play");

        TextItem said = Assert.Single(Texts(row.Items), t => t.Ink == Ink.Pencil);
        Assert.Equal("out by 1/32", said.Text.PlainText);
        ShapeItem ring = Assert.Single(row.Items.OfType<ShapeItem>(), s => s.Edge == Ink.Pencil);
        Assert.Contains(row.Items.OfType<LineItem>(), l => l.Ink == Ink.Outline && l.From.X == l.To.X && Math.Abs(l.From.X - ring.Corners.Average(c => c.X)) < 1e-6);
        Assert.True(ring.Corners.Average(c => c.X) < Window(row).Least);
        Assert.DoesNotContain(Groups(GapDrawing.Draw(Trays.Gaps, s_page)[0].Items).Where(g => g.Key != "T4.play").SelectMany(g => g.Items).OfType<ShapeItem>(), s => s.Edge == Ink.Pencil);
    }

    [Fact]
    public void Draw_WindowWithoutWidth_IsRefused()
    {
        GapRow row = Trays.Row("x", "x", (4, 4), 4, (3, 5, 4, 1), "50 %", null, "");
        Assert.Throws<ArgumentException>(() => GapDrawing.Draw(Trays.Gaps with { Rows = [row] }, s_page));
        Assert.Throws<ArgumentException>(() => GapDrawing.Draw(Trays.Gaps with { Rows = [] }, s_page));
    }

    [Theory]
    [InlineData(LengthUnit.Inch, 8, "1/64 in")]
    [InlineData(LengthUnit.Inch, 2, "1/32 in")]
    [InlineData(LengthUnit.Millimetre, 8, "0.5 mm")]
    [InlineData(LengthUnit.Millimetre, 20, "0.1 mm")]
    [InlineData(LengthUnit.Millimetre, 0.001, "100 mm")]
    public void RuleEdge_ForAScale_IsTheFinestThatCanBeToldApart(LengthUnit unit, double scale, string expected)
    {
        ExactLength step = RuleEdge.For(unit, scale).Step;
        Assert.Equal(expected, (unit == LengthUnit.Inch ? LengthFormat.Inches(64) : LengthFormat.Millimetres(1)).Text(step));
    }

    private static (double Least, double Most) Window(GroupItem row)
    {
        // The uprights are the longest upright strokes in the heaviest ink.
        var uprights = row.Items.OfType<LineItem>().Where(l => l.Ink == Ink.Outline && l.From.X == l.To.X).OrderByDescending(l => Math.Abs(l.To.Y - l.From.Y)).Take(2).Select(l => l.From.X).Order().ToList();
        return (uprights[0], uprights[1]);
    }
}
