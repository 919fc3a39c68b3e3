using CsCheck;
using Setout.Drawing.Breakdowns;
using Setout.Drawing.Scenes;
using Setout.Testing;
using static Setout.Drawing.Tests.Figures;

namespace Setout.Drawing.Tests.Breakdowns;

public sealed class SheetDrawingTests
{
    private static readonly BreakdownPaper s_page = new(260, 180);

    [Fact]
    public void Draw_Birch_IsTheCommittedDrawing() =>
        Snapshots.Match(SvgWriter.Write(SheetDrawing.Draw(Samples.Birch(), s_page), SvgOptions.Standalone), "birch", "svg");

    [Fact]
    public void Draw_SmallParts_IsTheCommittedDrawing() =>
        Snapshots.Match(SvgWriter.Write(SheetDrawing.Draw(Samples.SmallParts(), s_page), SvgOptions.Standalone), "small-parts", "svg");

    [Fact]
    public void Draw_BirchOnAPhone_IsTheCommittedDrawing() =>
        Snapshots.Match(SvgWriter.Write(SheetDrawing.Draw(Samples.Birch(), new(100, 160) { FigureSize = 3.2, MarkSize = 3.6, SmallSize = 2.6 }), SvgOptions.Inline), "birch-phone", "svg");

    [Theory]
    [InlineData(260, 180)]
    [InlineData(180, 240)]
    [InlineData(100, 200)]
    public void Draw_AnyPaper_NoTextClashesOrSpills(double width, double height)
    {
        foreach (SheetInput input in new[] { Samples.Birch(), Samples.SmallParts() })
        {
            Scene scene = SheetDrawing.Draw(input, new(width, height));

            Assert.Empty(Clashes(scene));
            Assert.Empty(Spilled(scene));
        }
    }

    [Fact]
    public void Draw_SmallParts_EveryMarkAndRunningFigureIsSomewhere()
    {
        SheetInput input = Samples.SmallParts();
        Scene scene = SheetDrawing.Draw(input, s_page);
        string[] texts = [.. Texts(scene.Items).Select(t => t.Text.PlainText)];
        string all = string.Join('\n', texts);

        foreach (SheetPart part in input.Parts) Assert.Contains(part.Mark, texts);
        foreach (InnerCut cut in input.InnerCuts) Assert.Contains(cut.Figure.PlainText, all, StringComparison.Ordinal);
    }

    [Fact]
    public void Draw_ThousandsOfTinyAlikeParts_OneIsMarkedAndEqualFiguresAreSaidOnce()
    {
        SheetInput input = Samples.Tiles(40, 80);
        Scene scene = SheetDrawing.Draw(input, s_page);
        string[] texts = [.. Texts(scene.Items).Select(t => t.Text.PlainText)];

        Assert.Equal(1, texts.Count(t => t == "T"));
        string all = string.Join(' ', texts);
        Assert.Contains("T on 3199 more of its parts", all, StringComparison.Ordinal);
        Assert.Contains("more: plan.json has every cut", all, StringComparison.Ordinal);
        Assert.True(scene.Height < 180, $"The drawing is {scene.Height} mm high.");
    }

    /// <summary>Any ripped sheet: strips from 3/8 in to 14 in, parts from 1/2 in to 40 in.</summary>
    private static readonly Gen<SheetInput> s_sheets =
        from strips in (
            from sixteenths in Gen.OneOf(Gen.Int[6, 224], Gen.Int[6, 40])
            from lengths in Gen.Int[8, 640].Array[1, 14]
            select (sixteenths, lengths)).Array[1, 24]
        select Sheet(strips);

    private static SheetInput Sheet((int Width, int[] Lengths)[] strips)
    {
        int down = 0, n = 0;
        var made = new List<Samples.Strip>();
        foreach ((int width, int[] lengths) in strips)
        {
            if ((down += width + 2) > 48 * 16 - 16) break;
            int along = 0;
            (string, string)[] parts = [.. lengths.TakeWhile(l => (along += l + 2) <= 96 * 16).Select(l => ($"P{++n}", $"{l}/16"))];
            made.Add(new(((char)('a' + made.Count)).ToString(), $"{width}/16", parts));
        }
        return Samples.Ripped("any sheet", "96", "48", "1/8", [.. made], "1");
    }

    [Fact]
    public void Draw_AnySheet_NoTextClashesOrSpills() => s_sheets.Holds(input =>
    {
        Scene scene = SheetDrawing.Draw(input, s_page);
        Assert.Empty(Clashes(scene));
        Assert.Empty(Spilled(scene));
    }, iter: 600);

    [Fact]
    public void Draw_AnySheet_EveryMarkIsThereOnceAndEveryFigureSomewhere() => s_sheets.Holds(input =>
    {
        string[] texts = [.. Texts(SheetDrawing.Draw(input, s_page).Items).Select(t => t.Text.PlainText)];
        string all = string.Join('\n', texts);
        Assert.All(input.Parts, p => Assert.Single(texts, t => t == p.Mark));
        Assert.All(input.InnerCuts, c => Assert.Contains(c.Figure.PlainText, all, StringComparison.Ordinal));
    }, iter: 600);

    [Fact]
    public void Draw_AnyText_IsNeverUnderSevenPoint()
    {
        foreach (TextItem text in Texts(SheetDrawing.Draw(Samples.SmallParts(), new(100, 200)).Items)) Assert.True(text.Size >= 7 * 25.4 / 72 - 0.001, text.Text.PlainText);
    }

    [Fact]
    public void Draw_Parts_NeverShowTheirOwnSize()
    {
        // The part E4 is 12 in long; a layout shows running figures only, so no text is the bare size.
        string[] texts = [.. Texts(SheetDrawing.Draw(Samples.Birch(), s_page).Items).Select(t => t.Text.PlainText)];

        Assert.DoesNotContain("12", texts);
        Assert.DoesNotContain(texts, t => t.Contains(" x ", StringComparison.Ordinal) || t.Contains('×', StringComparison.Ordinal));
    }

    [Fact]
    public void Draw_FirstCuts_AreLetteredWithRunningFiguresAtTheEdge()
    {
        Scene scene = SheetDrawing.Draw(Samples.Birch(), s_page);
        GroupItem[] cuts = [.. Groups(scene.Items).Where(g => g.Title.StartsWith("cut ", StringComparison.Ordinal))];

        // Running: 11 3/4; 21 3/8; 31; 37; 38 5/8, each strip and kerf added (own sum).
        Assert.Equal(["cut a at 11 3/4", "cut b at 21 3/8", "cut c at 31", "cut d at 37", "cut e at 38 5/8"], cuts.Select(c => c.Title));
        Assert.All(cuts, c => Assert.Contains(c.Items.OfType<TextItem>(), t => t.Ink == Ink.Pencil && t.Text.Runs[0].IsBold));
    }

    [Fact]
    public void Draw_FigureOnWaste_HasPaperUnderIt()
    {
        // Below the part p lies waste; the cut that ends both is figured at its foot, on the waste.
        SheetInput input = new("t", "d", In("96"), In("24"))
        {
            Parts = [new("p", "p", "P", new(In("70"), In("0"), In("20"), In("18")))],
            InnerCuts = [new(In("90"), SheetAxis.Across, In("0"), In("24"), Fig("90")), new(In("18"), SheetAxis.Along, In("70"), In("90"), Fig("18"))],
            Waste = [new(In("70"), In("18 1/8"), In("20"), In("5 7/8"))],
        };
        Scene scene = SheetDrawing.Draw(input, s_page);
        HatchItem hatch = Groups(scene.Items).Where(g => g.Title == "waste").SelectMany(g => g.Items).OfType<HatchItem>().Single();
        Box waste = new(hatch.Corner.X, hatch.Corner.Y, hatch.Corner.X + hatch.Width, hatch.Corner.Y + hatch.Height);
        TextItem[] on = [.. Texts(scene.Items).Where(t => Box.Of(t).Overlaps(waste))];
        Assert.Equal(["90"], on.Select(t => t.Text.PlainText));
        Assert.True(on[0].HasGround);
        Assert.False(Texts(scene.Items).Single(t => t.Text.PlainText == "18").HasGround);
    }

    [Fact]
    public void Draw_CutsAcross_AreLetteredOverTheSheet()
    {
        SheetInput input = new("t", "d", In("96"), In("48"))
        {
            PrimaryCuts =
            [
                new("a", In("40"), SheetAxis.Across, Fig("40")),
                new("b", In("10"), SheetAxis.Along, Fig("10")) { To = In("40") },
                new("c", In("20"), SheetAxis.Along, Fig("20")) { From = In("40 1/8") },
            ],
            Parts = [new("p", "p", "P", new(In("0"), In("0"), In("40"), In("10"))), new("q", "q", "Q", new(In("40 1/8"), In("0"), In("55"), In("20")))],
            InnerCuts = [new(In("18"), SheetAxis.Along, In("0"), In("40"), Fig("18"))],
            Grain = SheetAxis.Across,
        };
        Scene scene = SheetDrawing.Draw(input, s_page);
        TextItem letter = Texts(scene.Items).Single(t => t.Text.PlainText == "a"), figure = Texts(scene.Items).Single(t => t.Text.PlainText == "40");

        Assert.True(letter.At.Y < figure.At.Y);
        // Cut c begins at a, inside the sheet: its figure stands there, not at the edge; so does the letter of b, which ends there.
        Assert.True(Texts(scene.Items).Single(t => t.Text.PlainText == "20").At.X > figure.At.X);
        Assert.True(Texts(scene.Items).Single(t => t.Text.PlainText == "b").At.X < figure.At.X);
        Assert.Empty(Clashes(scene));
        Assert.Empty(Spilled(scene));
    }

    [Fact]
    public void Draw_NoExtent_Throws() => Assert.Throws<ArgumentException>(() => SheetDrawing.Draw(new("t", "d", In("0"), In("48")), s_page));
}
