using System.Collections.Immutable;
using CsCheck;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Drawing.Dimensioning;
using Setout.Drawing.Scenes;
using Setout.Testing;
using static Setout.Drawing.Tests.Figures;

namespace Setout.Drawing.Tests.Dimensioning;

public sealed class DimensionPlacerTests
{
    private static readonly Box s_outline = new(0, 0, 120, 80);
    private static readonly DimensionStyle s_style = new();

    /// <summary>Any number of chains on any sides, with spans from far too short to plenty.</summary>
    private static readonly Gen<ImmutableArray<DimensionChain>> s_chains =
        from chains in (
            from side in Gen.Enum<Side>()
            from stations in Gen.Double[0, side is Side.Above or Side.Below ? 120 : 80].Array[2, 12]
            from ticks in Gen.Long[63_500, 4_064_000L * 130].Array[stations.Length - 1]
            from marked in Gen.Int[-1, stations.Length - 2]
            from skipped in Gen.Int[-1, 4]
            let sorted = stations.Order().ToArray()
            select new DimensionChain(side, [.. ticks.Select((t, i) => new DimensionSpan(sorted[i], sorted[i + 1],
                i == skipped ? Phrase.Empty : Phrase.Of(LengthFormat.Inch.Bare.Format(Length.FromTicks(t))), i == marked))])).Array[0, 7]
        select chains.ToImmutableArray();

    [Fact]
    public void Place_AnyChains_NoTwoFiguresOverlap() => s_chains.Holds(chains =>
    {
        PlacedFigure[] figures = [.. DimensionPlacer.Place(s_outline, chains, s_style).Figures];
        for (int i = 0; i < figures.Length; i++)
            for (int j = i + 1; j < figures.Length; j++)
                if (figures[i].Ink.Grown(-1e-9).Overlaps(figures[j].Ink)) return false;
        return true;
    }, iter: 2000);

    [Fact]
    public void Place_AnyChains_NoFigureTouchesTheDrawing() => s_chains.Holds(chains =>
        DimensionPlacer.Place(s_outline, chains, s_style).Figures.All(f => !f.Ink.Overlaps(s_outline)), iter: 2000);

    /// <summary>The strokes at the ends of a dimension never run through a figure, nor touch it.</summary>
    [Fact]
    public void Place_AnyChains_NoFigureLiesOnAnEndStroke() => s_chains.Holds(chains =>
    {
        DimensionLayout layout = DimensionPlacer.Place(s_outline, chains, s_style);
        Box[] strokes = [.. ((GroupItem)layout.Items[0]).Items.OfType<LineItem>().Where(l => l.Ink == Ink.Part).Select(l => new Box(l.From.X, l.To.Y, l.To.X, l.From.Y))];
        return layout.Figures.All(f => !strokes.Any(f.Ink.Grown(0.3).Overlaps));
    }, iter: 2000);

    /// <summary>A figure with no room along its upright line stands level on it, and so do all of its chain; one with no room at all stands beside, level too.</summary>
    [Fact]
    public void Place_UprightChainWithAShortSpan_StandsLevel()
    {
        PlacedFigure[] figures = [.. Layout(Side.Right, (0, 30, "6"), (30, 40, "4 15/16"), (40, 43, "1/2"), (43, 70, "11")).Figures];

        Assert.All(figures, f => Assert.Equal(0, f.Text.Turn));
        Assert.Equal([false, false, true, false], figures.Select(f => f.IsAside));
        Assert.Equal(35, (figures[1].Ink.Top + figures[1].Ink.Bottom) / 2, 0);
        Assert.True(figures[2].Ink.Left > figures[1].Ink.Right);
    }

    [Fact]
    public void Place_AnyChains_EveryFigureIsDrawnOnceAndInsideTheBounds() => s_chains.Holds(chains =>
    {
        DimensionLayout layout = DimensionPlacer.Place(s_outline, chains, s_style);
        return layout.Figures.Length == chains.Sum(c => c.Spans.Count(s => !s.Figure.IsEmpty))
            && layout.Figures.All(f => layout.Bounds.Holds(f.Ink)) && Texts(layout.Items).Count() == layout.Figures.Length;
    });

    [Fact]
    public void Place_LongSpan_PutsTheFigureOnTheMiddleOfItsLine()
    {
        PlacedFigure figure = One(Side.Above, 20, 100, "26 15/16");

        Assert.False(figure.IsAside);
        Assert.Equal(60, figure.Text.At.X);
        Assert.Equal(0, figure.Text.Turn);
        Assert.True(figure.Text.HasGround);
        Assert.True(figure.Ink.Bottom < 0);
    }

    [Fact]
    public void Place_ShortSpan_PutsTheFigureAsideWithALeader()
    {
        DimensionLayout layout = Layout(Side.Below, (20, 22, "26 15/16"));
        PlacedFigure figure = Assert.Single(layout.Figures);

        Assert.True(figure.IsAside);
        Assert.Equal(21, figure.Text.At.X);
        // A leader goes out from the middle of the span.
        Assert.Contains(((GroupItem)layout.Items[0]).Items.OfType<LineItem>(), l => l.From.X == 21 && l.To.X == 21);
    }

    [Theory]
    [InlineData(Side.Left)]
    [InlineData(Side.Right)]
    public void Place_UprightChain_ReadsFromTheRight(Side side)
    {
        PlacedFigure figure = One(side, 10, 70, "33 1/2");

        Assert.Equal(90, figure.Text.Turn);
        Assert.Equal(40, figure.Text.At.Y);
        Assert.True(side == Side.Left ? figure.Ink.Right < 0 : figure.Ink.Left > 120);
    }

    [Fact]
    public void Place_TwoChainsOfOneSide_StackOutwards()
    {
        DimensionLayout layout = DimensionPlacer.Place(s_outline,
            [new(Side.Above, [new(0, 120, Fig("10"))]), new(Side.Above, [new(0, 120, Fig("20"))])], s_style);

        Assert.True(layout.Figures[1].Ink.Bottom < layout.Figures[0].Ink.Top);
    }

    [Fact]
    public void Place_SpanWithNoFigure_HasNoLine()
    {
        DimensionLayout layout = DimensionPlacer.Place(s_outline, [new(Side.Above, [new(0, 50, Fig("10")), new(50, 60, Phrase.Empty), new(60, 120, Fig("12"))])], s_style);

        Assert.DoesNotContain(((GroupItem)layout.Items[0]).Items.OfType<LineItem>(), l => l.From.X == 50 && l.To.X == 60);
        Assert.Equal(2, layout.Figures.Length);
    }

    [Fact]
    public void Place_Foot_BeginsTheExtensionLineAtTheEdge()
    {
        DimensionLayout layout = DimensionPlacer.Place(s_outline, [new(Side.Above, [new(0, 50, Fig("10")) { FromFoot = 30 }])], s_style);

        Assert.Contains(((GroupItem)layout.Items[0]).Items.OfType<LineItem>(), l => l.From == new Point(0, 29.2));
    }

    [Fact]
    public void Place_OverlappingSpans_Throws() =>
        Assert.Throws<ArgumentException>(() => Layout(Side.Above, (0, 50, "1"), (40, 60, "2")));

    private static PlacedFigure One(Side side, double from, double to, string figure) => Assert.Single(Layout(side, (from, to, figure)).Figures);

    private static DimensionLayout Layout(Side side, params (double From, double To, string Figure)[] spans) =>
        DimensionPlacer.Place(s_outline, [new(side, [.. spans.Select(s => new DimensionSpan(s.From, s.To, Fig(s.Figure)))])], s_style);
}
