using Setout.Drawing.Scenes;

namespace Setout.Drawing.Tests.Scenes;

/// <summary>What is left of a rectangle, against a count of small squares.</summary>
public class RegionTests
{
    private const int Side = 12;

    [Fact]
    public void Region_AnyCuts_CellsAndEdgesAreThoseOfTheSquaresLeft()
    {
        var random = new Random(7);
        for (int run = 0; run < 300; run++)
        {
            Box[] cuts = [.. Enumerable.Range(0, random.Next(0, 5)).Select(_ => Box.At(random.Next(-2, Side), random.Next(-2, Side), random.Next(1, Side), random.Next(1, Side)))];
            var region = new Region(new(0, 0, Side, Side), cuts);
            bool Left(int x, int y) => x >= 0 && y >= 0 && x < Side && y < Side && !cuts.Any(c => c.Left <= x && x + 1 <= c.Right && c.Top <= y && y + 1 <= c.Bottom);
            int squares = Enumerable.Range(0, Side * Side).Count(i => Left(i % Side, i / Side));

            Assert.Equal(squares == 0, region.IsEmpty);
            Assert.Equal(squares, region.Cells.Sum(c => c.Width * c.Height));
            foreach (Box cell in region.Cells) Assert.All(region.Cells.Where(o => o != cell), o => Assert.False(o.Overlaps(cell)));
            // Each square side that parts what is left from what is not is drawn once.
            int sides = Enumerable.Range(0, (Side + 1) * Side).Count(i => Left((i / Side) - 1, i % Side) != Left(i / Side, i % Side)) + Enumerable.Range(0, (Side + 1) * Side).Count(i => Left(i % Side, (i / Side) - 1) != Left(i % Side, i / Side));
            Assert.Equal(sides, region.Edges.Sum(e => Math.Abs(e.To.X - e.From.X) + Math.Abs(e.To.Y - e.From.Y)));
        }
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Hatch_EitherWay_StaysInsideAndMeetsItsNeighbour(bool isFalling)
    {
        HatchItem Of(double x, double width) => new(new(x, 3), width, 9) { IsFalling = isFalling };
        (Point From, Point To)[] whole = [.. Strokes.Hatch(Of(2, 20))], parts = [.. Strokes.Hatch(Of(2, 8)), .. Strokes.Hatch(Of(10, 12))];

        Assert.All(whole, l => Assert.True(l.From.X >= 2 - 1e-9 && l.To.X <= 22 + 1e-9 && Math.Min(l.From.Y, l.To.Y) >= 3 - 1e-9 && Math.Max(l.From.Y, l.To.Y) <= 12 + 1e-9));
        Assert.All(whole, l => Assert.Equal(isFalling ? 1 : -1, (l.To.Y - l.From.Y) / (l.To.X - l.From.X), 9));
        static double Long((Point From, Point To)[] lines) => lines.Sum(l => l.To.X - l.From.X);
        // Together as long as the whole, but for ends too short to draw.
        Assert.InRange(Long(whole) - Long(parts), -1e-9, 0.2);
    }
}
