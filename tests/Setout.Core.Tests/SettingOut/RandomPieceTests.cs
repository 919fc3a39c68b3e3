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

/// <summary>What must hold for any small case or frame. A failing seed is a test case by itself.</summary>
public class RandomPieceTests
{
    private static readonly Gen<int> s_seeds = Gen.Int[0, 1_000_000];

    private static SetPiece SetOut(Piece piece, Grid grid, params (string Key, ExactLength Read)[] readings) =>
        PieceSetOut.Of(piece, grid, readings.ToImmutableDictionary(r => new QuantityKey(r.Key), r => new Pin([r.Read], new(OriginKind.Reading, "read"), "e")));

    private static void AssertSound(SetPiece set) => Assert.Empty(SetPieceChecker.Violations(set));

    [Fact]
    public void SetOut_AnyPiece_CanBeBuilt() => s_seeds.Holds(seed =>
    {
        (Piece piece, Grid grid) = RandomPieces.Of(seed);
        AssertSound(SetOut(piece, grid));
    }, iter: 400);

    [Fact]
    public void SetOut_AnyPieceWithTheWoodRead_CanStillBeBuilt() => Gen.Select(s_seeds, Gen.Int[-20, 20], Gen.Int[-20, 20]).Holds((seed, sheet, stick) =>
    {
        // Readings to 0.05 mm: sheets and sticks never lie on the grid.
        (Piece piece, Grid grid) = RandomPieces.Of(seed);
        ExactLength Off(QuantityKey key, int steps) => SetOut(piece, grid).Worked[key] + ExactLength.FromMillimetres(Rational.Of(steps, 20));
        AssertSound(SetOut(piece, grid, ("wood.thickness", Off(new("wood.thickness"), sheet)), ("thin.thickness", Off(new("thin.thickness"), stick)),
            ("stick.thickness", Off(new("stick.thickness"), sheet)), ("stick.width", Off(new("stick.width"), stick))));
    }, iter: 200);

    [Fact]
    public void SetOut_FrameWithTheToeRead_CarriesItToAllThatStandsOnIt() => Gen.Select(s_seeds, Gen.Int[-20, 20]).Holds((seed, steps) =>
    {
        (Piece piece, Grid grid) = RandomPieces.Of(seed);
        if (piece.Members[0] is not Frame frame) return;
        AssertSound(SetOut(piece, grid, ("F.toe", frame.Toe.Value + ExactLength.FromMillimetres(Rational.Of(steps, 4)))));
    }, iter: 400);

    [Fact]
    public void SetOut_Twice_IsTheSame() => s_seeds.Holds(seed =>
    {
        (Piece piece, Grid grid) = RandomPieces.Of(seed);
        SetPiece one = SetOut(piece, grid), two = SetOut(piece, grid);
        Assert.Equal(one.Worked.Order, two.Worked.Order);
        Assert.All(one.Worked.Order, k => Assert.Equal(one.Worked[k], two.Worked[k]));
    }, iter: 50);

    [Fact]
    public void SetOut_KeysOfQuantitiesAndParts_AreUnique() => s_seeds.Holds(seed =>
    {
        (Piece piece, Grid grid) = RandomPieces.Of(seed);
        SetPiece set = SetOut(piece, grid);
        Assert.Equal(set.Parts.Length, set.Parts.Select(p => p.Key).Distinct().Count());
        Assert.Equal(set.Parts.Length, set.Parts.Select(p => p.Mark).Distinct().Count());
        Assert.Equal(set.Worked.Order.Length, set.Worked.Order.Distinct().Count());
    }, iter: 100);

    [Fact]
    public void SetOut_EveryReference_LeadsSomewhere() => s_seeds.Holds(seed =>
    {
        (Piece piece, Grid grid) = RandomPieces.Of(seed);
        SetPiece set = SetOut(piece, grid);
        var parts = set.Parts.Select(p => p.Key).ToHashSet();
        Assert.All(set.Steps.SelectMany(s => s.Parts), k => Assert.Contains(k, parts));
        Assert.All(set.Machinings, m => Assert.Contains(m.Part, parts));
        Assert.All(set.Machinings.SelectMany(m => m.Figures), f => Assert.True(set.Worked.Values.ContainsKey(f.Key)));
        Assert.All(set.Dimensions, d => Assert.True(set.Worked.Values.ContainsKey(d.Key)));
        Assert.All(set.Joints, j => Assert.Contains(j.Part, parts));
        Assert.All(set.Joints, j => Assert.Contains(parts, p => p == j.Against || p.StartsWith(j.Against + ".", StringComparison.Ordinal)));
        // Every part comes in at some step of the assembly.
        Assert.All(set.Parts.Where(p => p.Role is not PartRole.Loose), p => Assert.Contains(set.Steps, s => s.Parts.Contains(p.Key)));
    }, iter: 100);

    [Fact]
    public void SetOut_ReadingEqualToWhatWasExpected_MovesNothing() => Gen.Select(s_seeds, Gen.Int[0, 100_000]).Holds((seed, pick) =>
    {
        (Piece piece, Grid grid) = RandomPieces.Of(seed);
        SetPiece before = SetOut(piece, grid);
        QuantityKey read = before.Worked.Order[pick % before.Worked.Order.Length];
        SetPiece after = SetOut(piece, grid, (read.Text, before.Worked[read]));
        Assert.All(before.Worked.Order, k => Assert.Equal(before.Worked[k], after.Worked[k]));
    }, iter: 100);

    [Fact]
    public void SetOut_SameLengthsInOtherUnit_GivesTheSameSizes() => s_seeds.Holds(seed =>
    {
        // What the rules differ in between the trades is said: gap and slide.
        (Piece piece, Grid grid) = RandomPieces.Of(seed);
        DrawerKind kind = Described.Kind("box", gap: Described.Given("3 mm"), play: Described.Given("0.8 mm"), slide: Described.Given("10 in"));
        piece = piece with { DrawerKinds = piece.DrawerKinds.SetItem("box", kind) };
        SetPiece inch = SetOut(piece with { Unit = LengthUnit.Inch }, grid), metric = SetOut(piece with { Unit = LengthUnit.Millimetre }, grid);
        Assert.Equal(inch.Worked.Order, metric.Worked.Order);
        Assert.All(inch.Worked.Order, k => Assert.Equal(inch.Worked[k], metric.Worked[k]));
        Assert.Equal(inch.Parts.SelectMany(p => p.Placements), metric.Parts.SelectMany(p => p.Placements));
    }, iter: 100);

    [Fact]
    public void SetOut_WiderOrHigherBySome_SharesGrowByExactlyThat() => Gen.Select(s_seeds, Gen.Int[1, 200]).Holds((seed, steps) =>
    {
        (Piece piece, Grid grid) = RandomPieces.Of(seed);
        ExactLength more = grid.Step.ToExact() * steps;
        Member grown = piece.Members[0] switch
        {
            Case c => c with { Width = Described.Given(c.Width.Value + more), Height = Described.Given(c.Height.Value + more) },
            Frame f => f with { Width = Described.Given(f.Width.Value + more), Height = Described.Given(f.Height.Value + more) },
            _ => throw new InvalidOperationException(),
        };
        SetPiece before = SetOut(piece, grid), after = SetOut(piece with { Members = piece.Members.SetItem(0, grown) }, grid);
        // Every chain's whole grows by as much as its shares do; members, gaps and shelves keep their thickness.
        foreach ((ClosedChain one, ClosedChain other) in before.Chains.Zip(after.Chains))
        {
            Assert.Equal(one.Whole, other.Whole);
            ExactLength whole = after.Worked[one.Whole] - before.Worked[one.Whole];
            ExactLength shares = one.Terms.Aggregate(ExactLength.Zero, (sum, t) => sum + ((after.Worked[t.Of!.Value] - before.Worked[t.Of!.Value]) * t.Times));
            Assert.Equal(whole, shares);
        }
        string key = piece.Members[0].Key;
        if (piece.Members[0] is Case) Assert.Equal((more, more), (Grown($"{key}.opening.width"), Grown($"{key}.opening.height")));
        else Assert.Equal(more, ((Frame)piece.Members[0]).Bays.Items.OfType<Opening>().Aggregate(ExactLength.Zero, (sum, b) => sum + Grown($"{b.Key}.rail.length.to-cut")));

        ExactLength Grown(string quantity) => after.Worked[new(quantity)] - before.Worked[new(quantity)];
    }, iter: 200);

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void SetOut_DivisionMirrored_GivesMirroredSizesAndPlaces(bool isAcross) =>
        Gen.Select(Gen.Int[2, 5], Gen.Int[0, 4], Gen.Int[1, 60].Array[5], Gen.Int[0, 1]).Holds((count, rest, sixtyFourths, structure) =>
        {
            ImmutableArray<DivisionItem> items = [.. Enumerable.Range(0, (2 * count) - 1).Select(i => i % 2 == 1
                ? (DivisionItem)new Divider($"P{i}", null, Place.None)
                : Described.Opening($"O{i}", i / 2 == rest % count ? Described.Rest : Described.Share(Described.Of("4") + ExactLength.FromInches(Rational.Of(sixtyFourths[i / 2], 64)))))];
            SetPiece Of(ImmutableArray<DivisionItem> order) => SetOut(Described.Piece(LengthUnit.Inch, Described.UsualMaterials, [], isAcross && structure == 1
                ? Described.Frame(Described.Of("60"), Described.Of("34"), Described.Of("24"), Described.Of("4"), Laid.Flat, order)
                : Described.Case(Described.Of("36 5/64"), Described.Of("36 5/64"), Described.Of("14"), new Division(isAcross, order))), Grid.ThirtySecond);
            SetPiece one = Of(items), other = Of([.. items.Reverse()]);
            AssertSound(one);
            string size = isAcross ? "width" : "height";
            Assert.All(items.OfType<Opening>(), o => Assert.Equal(one.Worked[new($"{o.Key}.{size}")], other.Worked[new($"{o.Key}.{size}")]));
            // Mirrored places: what is so far from one end is so far from the other.
            Placement Room(SetPiece set, string key) => set.Openings.Single(o => o.Key == key).Space;
            ExactLength over = isAcross ? one.Parts.SelectMany(p => p.Placements).Max(p => p.X + p.SizeX) : one.Parts.SelectMany(p => p.Placements).Max(p => p.Z + p.SizeZ);
            Assert.All(items.OfType<Opening>(), o =>
            {
                (Placement a, Placement b) = (Room(one, o.Key), Room(other, o.Key));
                Assert.Equal(isAcross ? a.X : a.Z, over - (isAcross ? b.X + b.SizeX : b.Z + b.SizeZ));
            });
        }, iter: 60);

    [Fact]
    public void SetOut_EqualShares_DifferByOneStepAtMostAndFillTheWhole() => Gen.Select(Gen.Int[2, 9], Gen.Int[0, 400]).Holds((count, off) =>
    {
        Piece piece = Described.Piece(LengthUnit.Inch, Described.UsualMaterials, [Described.Kind("box")], Described.Case(Described.Of("24"), Described.Of("40") + ExactLength.FromMillimetres(Rational.Of(off, 10)), Described.Of("20"),
            new DrawerBank(Described.Named("box"), [.. Enumerable.Range(1, count).Select(i => Described.Drawer($"D{i}"))])));
        SetPiece set = SetOut(piece, Grid.ThirtySecond);
        ExactLength[] heights = [.. Enumerable.Range(1, count).Select(i => set.Worked[new($"D{i}.front.height.to-cut")])];
        // Never more than one step between any two, the smaller ones first, and together within half a step of the whole.
        Assert.True(heights[^1] - heights[0] <= Grid.ThirtySecond.Step.ToExact(), string.Join(", ", heights.Select(h => h.Inches)));
        Assert.Equal(heights.Order(), heights);
        ExactLength left = set.Worked[new("C.opening.cover-height")] - (set.Worked[new("C.opening.front-gap")] * (count - 1)) - heights.Aggregate(ExactLength.Zero, (a, b) => a + b);
        Assert.True(left.Abs() <= Grid.ThirtySecond.Step.ToExact() / 2, $"{left.Inches} is left");
    }, iter: 60);
}
