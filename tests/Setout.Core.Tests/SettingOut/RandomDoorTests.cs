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

/// <summary>What must hold for doors and shelves of any size off the grid: they can be built, and all closes.</summary>
public class RandomDoorTests
{
    private static readonly Gen<int> s_seeds = Gen.Int[0, 1_000_000];

    private static ExactLength Size(Random random, double least, double most) => ExactLength.FromMillimetres(Rational.Of((long)((least + (random.NextDouble() * (most - least))) * 254), 10));

    private static (Piece Piece, Grid Grid) Of(int seed)
    {
        var random = new Random(seed);
        bool isPair = random.Next(2) == 0;
        // Solid cherry as wide as a case moves 0.66 in: two grooves of 0.36 still hold it.
        bool isSolid = random.Next(2) == 0;
        DoorMake make = random.Next(2) == 0
            ? new Slab(Described.Named("wood"))
            : new FramedPanel(Described.Named("flat"), random.Next(2) == 0 ? Described.Named("wide") : null, random.Next(2) == 0 ? Described.Named("wide") : null, Described.Named(isSolid ? "cherry" : "bottom"),
                random.Next(2) == 0 ? null : Described.Given(Size(random, isSolid ? 0.36 : 0.3, 0.45)), random.Next(2) == 0 ? null : Described.Given(Size(random, 0.5, 1.2)), null, random.Next(1, 8));
        var kind = new DoorKind("kind", make, Place.None) { Lie = (DoorLie)random.Next(3), Gap = random.Next(2) == 0 ? null : Described.Given(Size(random, 0.07, 0.15)), Hinge = random.Next(3) == 0 ? HingeKind.Butt : null };
        var shelves = new Shelves(Described.Named("wood"), null, [Described.Named("S1"), Described.Named("S2")])
        {
            Fit = (ShelfFit)random.Next(3),
            Strip = random.Next(2) == 0 ? null : new(Described.Named("flat"), null, Place.None),
        };
        Material[] materials =
        [
            Described.Sheet("wood", Size(random, 0.69, 0.76)), Described.Sheet("bottom", Size(random, 0.19, 0.26)), Described.Sheet("cherry", Size(random, 0.22, 0.28)) with { Kind = "cherry" },
            Described.Sticks("flat", ExactLength.FromInches(Rational.Of(3, 4)), Size(random, 1.9, 2.4)), Described.Sticks("wide", ExactLength.FromInches(Rational.Of(3, 4)), Size(random, 2.5, 3.4)),
        ];
        var doors = new DoorFilling(Described.Named("kind"), isPair ? [Described.Named("D1"), Described.Named("D2")] : [Described.Named("D1")], random.Next(2) == 0, shelves);
        OpeningContent content = random.Next(2) == 0
            ? doors
            : new Division(true, [Described.Opening("A", content: doors), new Divider("P", null, Place.None), Described.Opening("B", content: new Shelves(null, null, [Described.Named("S3")]) { Fit = ShelfFit.Dado })]);
        Case with = Described.Case(Size(random, 24, 44), Size(random, 24, 40), Size(random, 10, 20), content, random.Next(2) == 0 ? "bottom" : null);
        if (random.Next(3) == 0)
            with = with with { Width = Described.Given(ExactLength.Max(with.Width.Value, Described.Of("34"))), FaceFrame = new(Described.Named("flat"), null, null, Described.Named("wide"), (FaceFrameJoint)random.Next(3), null, null, null, true, Place.None) };
        Piece piece = Described.Piece(random.Next(2) == 0 ? LengthUnit.Inch : LengthUnit.Millimetre, materials, [], with);
        return (piece with { DoorKinds = ImmutableDictionary<string, DoorKind>.Empty.Add("kind", kind) }, random.Next(3) switch { 0 => Grid.ThirtySecond, 1 => Grid.SixtyFourth, _ => Grid.HalfMillimetre });
    }

    private static SetPiece SetOut(Piece piece, Grid grid, params (string Key, ExactLength Read)[] readings) =>
        PieceSetOut.Of(piece, grid, readings.ToImmutableDictionary(r => new QuantityKey(r.Key), r => new Pin([r.Read], new(OriginKind.Reading, "read"), "e")));

    [Fact]
    public void SetOut_AnyDoors_CanBeBuilt() => s_seeds.Holds(seed =>
    {
        (Piece piece, Grid grid) = Of(seed);
        Assert.Empty(SetPieceChecker.Violations(SetOut(piece, grid)));
    }, iter: 400);

    [Fact]
    public void SetOut_AnyDoorsWithTheWoodRead_CanStillBeBuilt() => Gen.Select(s_seeds, Gen.Int[-20, 20], Gen.Int[-20, 20]).Holds((seed, sheet, stick) =>
    {
        (Piece piece, Grid grid) = Of(seed);
        SetPiece before = SetOut(piece, grid);
        (string, ExactLength) Off(string key, int steps) => (key, before.Worked[new QuantityKey(key)] + ExactLength.FromMillimetres(Rational.Of(steps, 20)));
        Assert.Empty(SetPieceChecker.Violations(SetOut(piece, grid, Off("wood.thickness", sheet), Off("cherry.thickness", sheet), Off("flat.width", stick), Off("wide.width", sheet))));
    }, iter: 200);

    [Fact]
    public void SetOut_AnyDoors_AreWhatTheirSumsSay() => s_seeds.Holds(seed =>
    {
        (Piece piece, Grid grid) = Of(seed);
        SetPiece set = SetOut(piece, grid);
        ExactLength V(string key) => set.Worked[new QuantityKey(key)];
        // Doors and what is left between and beside them fill what they cover.
        ClosedChain chain = Assert.Single(set.Chains, c => c.Name.EndsWith("doors and gaps in the width", StringComparison.Ordinal));
        Assert.Equal(ExactLength.Zero, chain.Misfit(set.Worked));
        if (piece.DoorKinds["kind"].Make is FramedPanel framed)
        {
            ExactLength lower = V($"{(framed.BottomRail ?? framed.Rails ?? framed.Stiles).Text}.width"), upper = V($"{(framed.Rails ?? framed.Stiles).Text}.width");
            Assert.Equal(V("D1.built-width"), V("D1.rail.length.as-cut") - (V("kind.tenon.length.as-cut") * 2) + (V("flat.width") * 2));
            Assert.Equal(V("D1.stile.length.as-cut"), V("D1.between-rails") + lower + upper);
            // The panel is in both grooves by more than a hair, and never fills them; one too wide for them stops the plan.
            Assert.True(V("D1.panel.slack-across").Sign >= 0 && (set.IsStopped || V("D1.panel.slack-across") < V("kind.groove.depth.to-cut") * 2));
            Assert.True(V("D1.panel.slack-along").Sign >= 0 && V("D1.panel.slack-along") < V("kind.groove.depth.to-cut") * 2);
        }
        Assert.All(set.Parts.Where(p => p.Role is PartRole.Door or PartRole.DoorStile or PartRole.DoorPanel), p => Assert.Contains(p.Placements[0].SizeZ, new[] { set.Worked[p.Length.Made] }));
        // Hinges stand within the door, from its lower end up, and as far from both ends.
        QuantityKey[] hinges = [.. set.Worked.Order.Where(k => k.Text.StartsWith("D1.hinge-", StringComparison.Ordinal) && k.Text.EndsWith("to-cut", StringComparison.Ordinal))];
        Assert.True(hinges.Length >= 2);
        Assert.Equal(hinges, hinges.OrderBy(k => set.Worked[k]));
    }, iter: 200);

    [Fact]
    public void SetOut_EveryReference_LeadsSomewhere() => s_seeds.Holds(seed =>
    {
        (Piece piece, Grid grid) = Of(seed);
        SetPiece set = SetOut(piece, grid);
        var parts = set.Parts.Select(p => p.Key).ToHashSet();
        Assert.Equal(set.Parts.Length, set.Parts.Select(p => p.Mark).Distinct().Count());
        Assert.All(set.Machinings, m => Assert.Contains(m.Part, parts));
        Assert.All(set.Machinings.SelectMany(m => m.Figures), f => Assert.True(set.Worked.Values.ContainsKey(f.Key)));
        Assert.All(set.Joints, j => Assert.Contains(j.Against, parts));
        Assert.All(set.Parts, p => Assert.Contains(set.Steps, s => s.Parts.Contains(p.Key)));
    }, iter: 100);
}
