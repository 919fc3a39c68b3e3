using System.Collections.Immutable;
using Setout.Core.Fit;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;
using Setout.Core.SettingOut.Whole;
using Setout.Testing;

namespace Setout.Core.Tests.Fit;

/// <summary>Which sheet the sides of a box come from decides how their errors add, from the mark at the saw to the width of the box.</summary>
public sealed class SharedSheetTests
{
    private static Spread Box(params (string Member, string Sheet)[] from)
    {
        Piece piece = Described.Piece(LengthUnit.Inch, Described.UsualMaterials, [Described.Kind("box")],
            Described.Case(Described.Of("20"), Described.Of("12"), Described.Of("18"), new DrawerBank(Described.Named("box"), [Described.Drawer("L3")])));
        BenchFacts facts = BenchFacts.Empty with { Sheets = from.ToImmutableDictionary(f => f.Member, f => f.Sheet) };
        SetPiece set = PieceSetOut.Of(piece, Grid.ThirtySecond, facts);
        Assert.False(set.IsStopped);
        Spread box = new Spreads(set, Accuracy.Usual).Of(new("L3.box.as-built"))!;
        return box with { Effects = [.. box.Effects.Where(e => e.Cause.Kind == CauseKind.Sheet)] };
    }

    /// <summary>Correlated errors add, independent ones add in squares (GUM 5.2.2, note 1, and 5.1.2): twice against root 2.</summary>
    [Fact]
    public void TwoSides_OfOneSheet_ShowTwiceTheSheetsErrorAndOfTwoSheetsRootTwo()
    {
        Spread one = Box(("L3.side#1", "thin.sheet-1"), ("L3.side#2", "thin.sheet-1")), two = Box(("L3.side#1", "thin.sheet-1"), ("L3.side#2", "thin.sheet-2"));
        Effect shared = Assert.Single(one.Effects);
        Assert.Equal((2, 1, 1), (shared.Times, two.Effects[0].Times, two.Effects[1].Times));
        Assert.Equal(2, two.Effects.Length);
        // One side by itself: 1/128 in either way, evenly: over root 3.
        double side = 25.4 / 128 / Math.Sqrt(3);
        Assert.Equal(2, one.StandardDeviation.Millimetres.Value / side, 12);
        Assert.Equal(Math.Sqrt(2), two.StandardDeviation.Millimetres.Value / side, 12);
        Assert.Equal(one.WorstHigh, two.WorstHigh);
    }

    /// <summary>Parts of one box are taken as of one sheet until somebody says otherwise.</summary>
    [Fact]
    public void TwoSides_OfSheetsNotKnown_AreTakenAsOfOne() => Assert.Equal(2, Assert.Single(Box().Effects).Times);
}
