using CsCheck;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Workings;
using Setout.Drawing.Documents;
using Setout.Shop.BenchSheets;
using Setout.Shop.Plans;
using Setout.Testing;

namespace Setout.Shop.Tests.Plans;

/// <summary>Figures of sums: what is told as the value is the value, and what is told as near leads to the same mark of the rule.</summary>
public class SumFigureTests
{
    // Thirds, sevenths, metric wood in inches and the halves of calliper readings come up in sums; 4064 is what 0.1 mm and 1/32 in have in common.
    private static readonly Gen<Rational> s_inches = Gen.Select(Gen.Long[-2_000_000, 2_000_000], Gen.OneOf(1L, 3, 7, 21, 64, 96, 127, 128, 254, 256, 2000, 4064, 12192, 28448, 85344), (above, below) => Rational.Of(above, below));

    private static readonly Gen<ExactLength> s_value = Gen.OneOf(
        s_inches.Where(i => i < 4000 && i > -4000).Select(ExactLength.FromInches),
        Gen.Select(Gen.Long[-1_000_000, 1_000_000], Gen.OneOf(1L, 2, 3, 7, 10, 21, 1000), (above, below) => ExactLength.FromMillimetres(Rational.Of(above, below))),
        // Hardly off a mark of the rule.
        Gen.Select(Gen.Int[1, 4000], Gen.Long[1_000, 10_000_000], Gen.Bool, (mark, off, over) => ExactLength.FromInches(Rational.Of(mark, 64) + Rational.Of(over ? 1 : -1, (off * 3) + 1))));

    private static readonly Grid[] s_grids = [Grid.Sixteenth, Grid.ThirtySecond, Grid.SixtyFourth, Grid.HalfMillimetre, Grid.Millimetre, Grid.FromStep(Length.FromTicks(Length.TicksPerMillimetre * 7 / 10))];

    /// <summary>Source of every row: arithmetic, by hand.</summary>
    [Theory]
    // On the rule: the figure says it.
    [InlineData(24, 1, "24")]
    [InlineData(33, 16, "2 1/16")]
    [InlineData(-35, 2, "-17 1/2")]
    // Off it, and the decimal ends: the mean of 0.471 and 0.465; 18 1/2 less two of those; half of 1/64.
    [InlineData(468, 1000, "0.468")]
    [InlineData(17564, 1000, "17.564")]
    [InlineData(1, 128, "0.0078125")]
    // 18.63016...; 2617 / 127 = 20.60629...; a third; 12 mm / 25.4 = 0.472440...
    [InlineData(75713, 4064, "\u2248 18.6302")]
    [InlineData(2617, 127, "\u2248 20.6063")]
    [InlineData(-1, 3, "\u2248 -0.3333")]
    [InlineData(60, 127, "\u2248 0.4724")]
    // 1/1016 of 0.01 under 18 5/8: in four places it would be 18.625, and lie on the mark itself.
    [InlineData(1892299, 101600, "\u2248 18.62499")]
    public void Of_InInches_IsTheFractionOrTheDecimalOrSaysThatItIsNear(long above, long below, string words) =>
        Assert.Equal(words, SumFigure.Of(ExactLength.FromInches(Rational.Of(above, below)), LengthUnit.Inch).ToString());

    /// <summary>Source: arithmetic, by hand; 1/64 in is 0.396875 mm.</summary>
    [Theory]
    [InlineData(3612, 10, "361.2")]
    [InlineData(396875, 1000000, "0.396875")]
    [InlineData(1000, 3, "\u2248 333.333")]
    public void Of_InMillimetres_IsTheSame(long above, long below, string words) =>
        Assert.Equal(words, SumFigure.Of(ExactLength.FromMillimetres(Rational.Of(above, below)), LengthUnit.Millimetre).ToString());

    [Fact]
    public void Of_AnyValue_WhatIsToldAsExactReadsBackAsTheValue() => Gen.Select(s_value, Gen.Enum<LengthUnit>()).Holds((value, unit) =>
        SumFigure.Of(value, unit) is { IsNear: true } || Parsed(SumFigure.Of(value, unit).Number, unit) == value, iter: 1000);

    [Fact]
    public void Of_AnyValue_WhatIsToldAsNearIsItsLastPlaceAndLandsWhereTheValueDoes() => Gen.Select(s_value, Gen.Enum<LengthUnit>(), Gen.Int[0, s_grids.Length - 1], Gen.Enum<Rounding>()).Holds((value, unit, at, rounding) =>
    {
        Grid grid = s_grids[at];
        SumFigure told = SumFigure.Of(value, unit, grid);
        if (!told.IsNear) return true;
        ExactLength near = Parsed(told.Number, unit);
        int places = told.Number.Contains('.', StringComparison.Ordinal) ? told.Number.Length - told.Number.IndexOf('.', StringComparison.Ordinal) - 1 : 0;
        Rational last = Rational.Of(System.Numerics.BigInteger.One, System.Numerics.BigInteger.Pow(10, places));
        ExactLength off = (value - near).Abs() * 2;
        bool isLastPlace = (unit == LengthUnit.Inch ? off.Inches : off.Millimetres) <= last;
        // What is on the grid of the other unit, or midway, has no decimal that says so: there the figure to cut is the value, told alike, or a toss.
        return isLastPlace && ((value.Ticks / grid.Step.Ticks * 2).IsWhole || near.RoundTo(grid, rounding).Value == value.RoundTo(grid, rounding).Value);
    }, iter: 2000);

    [Theory]
    [InlineData(75713, 4064, "18 5/8")]
    [InlineData(17564, 1000, "")]
    [InlineData(33, 16, "")]
    public void OnTheRule_IsToldOfWhatIsNearAlone(long above, long below, string words) =>
        Assert.Equal(words, SumFigure.OnTheRule(ExactLength.FromInches(Rational.Of(above, below)), LengthUnit.Inch));

    /// <summary>Sides of 12 mm in a bench in inches. By hand: 18 17/32 - 24/25.4 = 17.58636..., and down to 1/32 that is 17 9/16.</summary>
    [Fact]
    public void Working_OfMetricWoodInInches_IsToldAlikeByTheCommandAndOnPaper()
    {
        AtTheBench bench = new AtTheBench("luthiers-bench.yaml").Record("boxes.thickness", "12 mm", "calliper");
        string why = string.Join('\n', new[] { "L3.end.length", "L3.end.length.to-cut" }.SelectMany(k => WorkingLines.Of(WrittenWorking.Of(bench.Set.Worked, new QuantityKey(k))!, LengthUnit.Inch)));
        Assert.Contains("  - 2 x \u2248 0.4724  sides", why, StringComparison.Ordinal);
        Assert.Contains("\n  \u2248      17.5864 in\n", why, StringComparison.Ordinal);
        Assert.Contains("  \u2248 17.5864  the sum; worked out", why, StringComparison.Ordinal);
        Assert.EndsWith("\n  =    17 9/16 in", why, StringComparison.Ordinal);
        CellRow row = WorkingPages.Of(bench.Set).SelectMany(s => s.Blocks).OfType<TableBlock>().First().Rows.OfType<CellRow>().First(r => Text(r.Cells[0]).Contains("L3e", StringComparison.Ordinal));
        Assert.Contains("\n\u2212 2 x \u2248 0.4724  sides", Text(row.Cells[1]), StringComparison.Ordinal);
        Assert.Contains("\n\u2248 17.5864, on the 1/32 in grid down", Text(row.Cells[1]), StringComparison.Ordinal);
        Assert.Equal("17 9/16", Text(row.Cells[2]));
        string all = string.Join('\n', WorkingPages.Of(bench.Set).SelectMany(s => s.Blocks).OfType<TableBlock>().SelectMany(t => t.Rows).OfType<CellRow>().SelectMany(r => r.Cells).Select(Text));
        // No fraction of a metric size: 60/127 in is 12 mm.
        Assert.DoesNotContain("/127", why + all, StringComparison.Ordinal);
        Assert.DoesNotContain("exactly", why + all, StringComparison.Ordinal);
    }

    /// <summary>A bay is not cut: beside its decimal stands where it lies on a rule. By hand: 500 mm / 25.4 = 19.68503..., and 19 11/16 is 19.6875.</summary>
    [Fact]
    public void Working_ThatIsNotCut_HasItsPlaceOnTheRule()
    {
        AtTheBench bench = new AtTheBench("luthiers-bench.yaml").Record("L.width", "500 mm", "tape");
        string[] why = [.. WorkingLines.Of(WrittenWorking.Of(bench.Set.Worked, new QuantityKey("L1.opening"))!, LengthUnit.Inch)];
        Assert.Equal("  \u2248     19.685 in, 19 11/16 to the nearest 1/64", why[^1]);
        Assert.Contains("  read \u2248 19.685 in, tape", WorkingLines.Of(WrittenWorking.Of(bench.Set.Worked, new QuantityKey("L.width"))!, LengthUnit.Inch).Last(), StringComparison.Ordinal);
        CellRow row = WorkingPages.Of(bench.Set).SelectMany(s => s.Blocks).OfType<TableBlock>().Last().Rows.OfType<CellRow>().First(r => Text(r.Cells[0]).StartsWith("L1 ", StringComparison.Ordinal) && Text(r.Cells[0]).Contains("along its slides", StringComparison.Ordinal));
        Assert.Equal("\u2248 19.685\n19 11/16", Text(row.Cells[2]));
    }

    private static string Text(Cell cell) => string.Join('\n', cell.Phrases.Select(p => p.PlainText));

    private static ExactLength Parsed(string number, LengthUnit unit)
    {
        bool isNegative = number.StartsWith('-');
        ParseResult<ExactLength> read = LengthText.Parse(isNegative ? number[1..] : number, unit);
        Assert.True(read.IsRead, number);
        return isNegative ? -read.Value : read.Value;
    }
}
