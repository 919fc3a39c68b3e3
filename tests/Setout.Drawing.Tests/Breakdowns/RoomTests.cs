using System.Collections.Immutable;
using CsCheck;
using Setout.Drawing.Breakdowns;
using Setout.Drawing.Scenes;
using Setout.Testing;
using static Setout.Drawing.Tests.Figures;

namespace Setout.Drawing.Tests.Breakdowns;

/// <summary>Drawings take the paper that their figures, words and lanes need.</summary>
public sealed class RoomTests
{
    private static bool LeavesOut(Scene scene) => Texts(scene.Items).Any(t => t.Text.PlainText.StartsWith("not drawn", StringComparison.Ordinal));

    [Fact]
    public void DrawOnBest_FiguresThatNeedMorePaper_GetIt()
    {
        SheetInput input = Samples.Birch();
        BreakdownPaper low = new(110, 60), high = new(110, 130), wide = new(260, 180);
        Assert.True(LeavesOut(SheetDrawing.Draw(input, low)) && LeavesOut(SheetDrawing.Draw(input, high)) && !LeavesOut(SheetDrawing.Draw(input, wide)), "The sample no longer tells the papers apart.");

        Assert.Equal(wide.Width, SheetDrawing.DrawOnBest(input, [low, high, wide]).Width);
        Assert.False(LeavesOut(SheetDrawing.DrawOnBest(input, [low, high, wide])));
    }

    [Fact]
    public void DrawOnBest_TheFirstPaperHasRoom_NoOtherIsUsed() =>
        Assert.Equal(SheetDrawing.Draw(Samples.Birch(), new(260, 180)).Height, SheetDrawing.DrawOnBest(Samples.Birch(), [new(260, 180), new(260, 400), new(400, 400)]).Height);

    [Fact]
    public void DrawOnBest_NoPaper_Throws() => Assert.Throws<ArgumentException>(() => SheetDrawing.DrawOnBest(Samples.Birch(), []));

    [Fact]
    public void Draw_KeptWordsTooLongForOneLine_StandOnMore()
    {
        // 25 by 18 mm of paper; the words are about 40 mm long on one line of 7 pt.
        SheetInput input = new("t", "d", In("96"), In("48")) { Kept = [new("k", new(In("0"), In("0"), In("10"), In("7")), Phrase.Of("keep for wedges and stops, ").Add(Fig("10")).Add(" x ").Add(Fig("7")))] };
        Scene scene = SheetDrawing.Draw(input, new(260, 180));
        TextItem[] words = [.. Groups(scene.Items).Single(g => g.Key == "k").Items.OfType<TextItem>()];

        Assert.False(LeavesOut(scene));
        Assert.InRange(words.Length, 2, 3);
        Assert.Equal("keep for wedges and stops, 10 x 7", string.Join(' ', words.Select(w => w.Text.PlainText.Trim())));
        Assert.Empty(Clashes(scene));
    }

    [Fact]
    public void Draw_LanesOfABoard_GoToTheNextDrawingTogether()
    {
        BoardsInput poplar = Samples.Poplar();
        BoardBar bar = poplar.Boards[0];
        BoardsInput lanes = poplar with { Boards = [bar with { Key = "b1-1", Board = "b1" }, bar with { Key = "b2-1", Board = "b2" }, bar with { Key = "b2-2", Board = "b2" }, bar with { Key = "b2-3", Board = "b2" }] };
        // Three bars of about 25 mm fit beside the head; four do not.
        string[][] drawings = [.. BoardDrawing.Draw(lanes, new(260, 115)).Select(s => Groups(s.Items).Select(g => g.Key).Where(k => k is ['b', _, '-', _]).ToArray())];
        Assert.Equal([["b1-1"], ["b2-1", "b2-2", "b2-3"]], drawings);
    }

    private static readonly Gen<(int[] Lanes, double First, double Full)> s_deals = Gen.Select(Gen.Int[1, 5].Array[1, 12], Gen.Double[5, 60], Gen.Double[30, 60]);

    [Fact]
    public void Split_AnyBoards_EachBarOnceNoneOverAndNoBoardPartedThatFits() => s_deals.Holds(deal =>
    {
        const double high = 10;
        ImmutableArray<(double Height, string Board)> bars = [.. deal.Lanes.SelectMany((n, i) => Enumerable.Repeat((high, $"b{i}"), n))];
        double first = Math.Min(deal.First, deal.Full);
        ImmutableArray<int> counts = BoardPages.Split(bars, first, deal.Full);
        Assert.Equal(bars.Length, counts.Sum());
        Assert.All(counts, c => Assert.InRange(c, 1, (int)(deal.Full / high)));
        int from = 0;
        for (int d = 0; d < counts.Length; d++)
        {
            // The first is over its own height only where its board needs a whole drawing.
            if (d == 0 && counts[0] * high > first) Assert.True(deal.Lanes[0] * high > first);
            string last = bars[from + counts[d] - 1].Board;
            from += counts[d];
            if (from < bars.Length && bars[from].Board == last) Assert.True(bars.Count(b => b.Board == last) * high > deal.Full, "A board that fits a drawing was parted.");
        }
    });
}
