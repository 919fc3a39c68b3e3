using System.Collections.Immutable;
using CsCheck;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;
using Setout.Core.SettingOut.Whole;
using Setout.Core.Workings;
using Setout.Testing;

namespace Setout.Core.Tests.SettingOut;

/// <summary>
/// Any corner with any bottom, slide and front, in a case or between slide panels: it goes together, and the outside is the inside with its walls.
/// A failing seed is a test case by itself.
/// </summary>
public class DrawerWayTests
{
    private static readonly Gen<int> s_seeds = Gen.Int[0, 1_000_000];

    private static ExactLength Size(Random random, int least, int most) => ExactLength.FromInches(Rational.Of(random.Next(least * 112, (most * 112) + 1), 112));

    private static T Any<T>(Random random) where T : struct, Enum => Enum.GetValues<T>()[random.Next(Enum.GetValues<T>().Length)];

    private static (Piece Piece, Grid Grid, DrawerKind Kind) Of(int seed)
    {
        var random = new Random(seed);
        // A bottom between the sides is of boxes without a false front.
        BottomFit fit = Any<BottomFit>(random) is var any && any == BottomFit.Between ? BottomFit.Grooved : any;
        SlideWay slides = Any<SlideWay>(random);
        // Slides under the box need a bottom that lies up in it.
        if (slides == SlideWay.Under && fit is BottomFit.Applied or BottomFit.LetIn) fit = BottomFit.SlidIn;
        DrawerKind kind = Described.Kind("box") with { Corners = Any<CornerJoint>(random), BottomFit = fit, Slides = slides, Fronts = Any<FrontWay>(random), Runner = Described.Named("strip") };
        Material[] materials =
        [
            Described.Sheet("wood", Thick(0.67, 0.76)), Described.Sheet("thin", Thick(0.44, 0.62)), Described.Sheet("bottom", Thick(0.19, 0.26)),
            Described.Sticks("stick", Thick(1.4, 1.6), Thick(2.4, 3.6)), Described.Sticks("strip", Thick(0.4, 0.6), Thick(0.8, 1.1)),
        ];
        int count = random.Next(1, 4);
        ImmutableArray<Drawer> drawers = [.. Enumerable.Range(1, count).Select(i => Described.Drawer($"D{i}"))];
        var bank = new DrawerBank(Described.Named("box"), drawers) { Graduated = random.Next(2) == 0 ? new([.. Enumerable.Range(3, count)], null, Place.None) : null };
        ExactLength width = Size(random, 14, 34), depth = Size(random, 13, 28);
        Member structure = random.Next(3) == 0
            ? Described.Frame(width + Described.Of("8"), Size(random, 30, 40), depth + Described.Of("4"), Described.Of("4"), Laid.Flat, Described.Opening("B", default, bank, "wood"))
            : Described.Case(width, (Described.Of("5") * count) + Size(random, 3, 12), depth, bank);
        return (Described.Piece(random.Next(2) == 0 ? LengthUnit.Inch : LengthUnit.Millimetre, materials, [kind], structure),
            random.Next(2) == 0 ? Grid.ThirtySecond : Grid.HalfMillimetre, kind);

        ExactLength Thick(double least, double most) => ExactLength.FromMillimetres(Rational.Of(random.Next((int)(least * 254), (int)(most * 254)), 10));
    }

    [Fact]
    public void SetOut_AnyWayOfDrawer_CanBeBuilt() => s_seeds.Holds(seed =>
    {
        (Piece piece, Grid grid, _) = Of(seed);
        SetPiece set = PieceSetOut.Of(piece, grid, ImmutableDictionary<QuantityKey, Pin>.Empty);
        Assert.Empty(SetPieceChecker.Violations(set));
    }, iter: 600);

    [Fact]
    public void SetOut_AnyWayOfDrawer_InsideAndWallsAreTheOutside() => s_seeds.Holds(seed =>
    {
        (Piece piece, Grid grid, DrawerKind kind) = Of(seed);
        SetPiece set = PieceSetOut.Of(piece, grid, ImmutableDictionary<QuantityKey, Pin>.Empty);
        foreach (string drawer in set.Parts.Where(p => p.Role == PartRole.BoxSide).Select(p => new QuantityKey(p.Key).Owner))
        {
            Placement[] sides = [.. set.Parts.Single(p => p.Key == drawer + ".side").Placements];
            ExactLength wall = set.Worked[set.Parts.Single(p => p.Key == drawer + ".side").Thickness];
            ExactLength outside = sides[1].X + sides[1].SizeX - sides[0].X, inside = sides[1].X - sides[0].X - sides[0].SizeX;
            Assert.Equal(outside, set.Worked[new($"{drawer}.box.as-built")]);
            Assert.Equal(outside, inside + (wall * 2));
            if (kind.BottomFit == BottomFit.Applied) continue;
            // What the bottom's size was worked from is the same inside.
            Assert.Equal(inside, set.Worked[new($"{drawer}.bottom.width")] - (set.Worked[new QuantityKey($"{drawer}.groove.depth").ToCut] * 2) + set.Worked[new($"{drawer}.bottom.slack")]);
        }
    }, iter: 300);

    [Fact]
    public void SetOut_AnyWayOfDrawerWithTheSheetsRead_CanBeBuilt() => Gen.Select(s_seeds, Gen.Int[-8, 8]).Holds((seed, steps) =>
    {
        (Piece piece, Grid grid, _) = Of(seed);
        ExactLength by = ExactLength.FromMillimetres(Rational.Of(steps, 20));
        Pin Read(string sheet) => new([((Panel)piece.Materials[sheet]).Thickness!.Value.Value + by], new(OriginKind.Reading, "read"), "e");
        var pins = new[] { "wood", "thin", "bottom" }.ToImmutableDictionary(sheet => new QuantityKey(sheet + ".thickness"), Read);
        Assert.Empty(SetPieceChecker.Violations(PieceSetOut.Of(piece, grid, pins)));
    }, iter: 300);
}
