using Setout.Core.Craft;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;
using Setout.Shop.Plans;

namespace Setout.Shop.Tests.SettingOut;

/// <summary>What parts, units and pieces weigh, worked by hand from published densities, and what is to be lifted.</summary>
public class WeightTests
{
    private const string Head = """
        setout: 1
        name: Heavy
        unit: mm
        materials:
          slab: {panel: mdf, thickness: 20}
          core: {panel: mdf, thickness: 40}
          odd: {panel: wattle board, thickness: 20}
          oak: {stick: white oak, section: 40 x 40}
          edged: {panel: mdf, thickness: 20, edges: lipped, lip: oak}
          box: {panel: birch plywood, thickness: 12}
          bottom: {panel: hardboard, thickness: 4}
        drawers:
          kind: {sides: box, bottom: bottom, front: slab}
        assembly:

        """;

    private static SetPiece Out(string assembly) => Sample.SetOut(Head + assembly);

    private static void Near(double kilograms, double give, Mass? mass)
    {
        Assert.NotNull(mass);
        Assert.Equal(kilograms, mass.Value.Kilograms.Value, 3);
        Assert.Equal(give, mass.Value.Kilograms.Error, 3);
    }

    [Fact]
    public void Parts_OfSheetAndStick_WeighVolumeTimesDensity()
    {
        // MDF: 700 to 900 kg/m3 (Wood Handbook 2010, table 12-1), so 800 give or take 100. Side 1 x 0.5 x 0.02 m = 0.01 m3: 8 kg, give or take 1.
        SetPiece set = Out("  - {case: C, of: slab, width: 800, height: 1000, depth: 500}\n");
        Near(8, 1, Weights.OfOne(set, set.Parts.Single(p => p.Key == "C.side")));
        // Top and bottom 0.76 x 0.5 x 0.02 = 0.0076 m3: 6.08 kg each, give or take 0.76. All four: 28.16 kg, give or take 3.52.
        Weight all = Weights.OfAll(set);
        Near(28.16, 3.52, all.Known);
        Assert.True(all.IsWhole);
        Assert.Equal("about 28 kg (25 to 32)", WeightWords.Of(all, LengthUnit.Millimetre));
        // 28.16 / 0.45359237 = 62.08 lb; 24.64 and 31.68 kg are 54.3 and 69.8 lb.
        Assert.Equal("about 62 lb (54 to 70)", WeightWords.Of(all, LengthUnit.Inch));

        // White oak: specific gravity 0.68 at 12 % (Wood Handbook 2021, table 5-3b): 0.68 x 1.12 = 761.6 kg/m3, give or take a tenth. Post 0.7 x 0.04 x 0.04 m = 0.00112 m3: 0.853 kg.
        SetPiece frame = Out("  - {frame: F, of: oak, width: 900, height: 700, depth: 500, toe: 100, across: [{opening: A}]}\n");
        Near(0.853, 0.085, Weights.OfOne(frame, frame.Parts.Single(p => p.Key == "F.post")));
    }

    [Fact]
    public void Material_WithoutADensity_IsNamedAndLeftOut()
    {
        SetPiece set = Out("  - {case: C, of: slab, width: 800, height: 1000, depth: 500}\n  - {top: T, of: odd}\n");
        Assert.Null(Weights.OfOne(set, set.Parts.Single(p => p.Key == "T")));
        Weight all = Weights.OfAll(set);
        Near(28.16, 3.52, all.Known);
        Assert.Equal(["odd"], all.Without);
        Assert.Equal("about 28 kg (25 to 32) without odd: no density on record for odd", WeightWords.Of(all, LengthUnit.Millimetre));
        Assert.Null(Lifting.Of(set, set.Steps.Single(s => s.Parts.Contains("T"))));
        Assert.Equal("not known: no density on record for odd", WeightWords.Of(Weights.Of(set, set.Parts.Where(p => p.Key == "T")), LengthUnit.Millimetre));
    }

    [Fact]
    public void Lift_OfATop_IsItsWeightWithWhatIsOnIt()
    {
        // Core 0.8 x 0.5 x 0.02 = 0.008 m3 = 6.4 kg; strips of 40 x 40 oak mitred: 0.88 + 2 x 0.54 m, front and ends. (0.88 + 1.08) x 0.0016 = 0.003136 m3 x 761.6 = 2.388 kg.
        SetPiece set = Out("  - {case: C, of: slab, width: 800, height: 1000, depth: 500}\n  - {top: T, of: slab, overhang: {front: 40, left: 40, right: 40}, edging: {of: oak}}\n");
        Lift lift = Lifting.Of(set, set.Steps.Single(s => s.Parts.Contains("T")))!;
        Near(6.4 + 2.388, 0.8 + 0.239, lift.Weight.Known);
        Assert.False(lift.IsForTwo);
        Assert.Equal("", lift.Advice);
    }

    [Fact]
    public void Lift_OfLippedParts_CountsTheirLips()
    {
        SetPiece set = Out("  - {case: C, of: edged, width: 800, height: 1000, depth: 500}\n");
        Part side = set.Parts.Single(p => p.Key == "C.side"), lip = set.Parts.Single(p => p.Key == "C.side.lip");
        Lift lift = Lifting.Of(set, set.Steps.Single(s => s.Parts.Contains("C.side")))!;
        Assert.Equal(Weights.OfOne(set, side)!.Value.Kilograms.Value + Weights.OfOne(set, lip)!.Value.Kilograms.Value, lift.Weight.Known.Kilograms.Value, 9);
        // All parts are in the case: lips and sheets add up to the piece.
        Assert.Equal(Weights.OfAll(set).Known.Kilograms.Value, Weights.Of(set, Lifting.PartsOf(set, "C")).Known.Kilograms.Value, 9);
    }

    [Theory]
    // A top w x 1 m of 40 mm MDF weighs w x 36 kg at most (900 kg/m3): 23 kg at 638 mm and 8/9, 46 kg at 1277 mm and 7/9.
    [InlineData("638", "")]
    [InlineData("639", "Two people")]
    [InlineData("1277", "Two people")]
    [InlineData("1278", "Do not lift it with two")]
    public void Lift_AtTheLimitAndAMillimetrePastIt_AsksForMoreHands(string width, string advice)
    {
        SetPiece set = Out($"  - {{case: C, of: slab, width: {width}, height: 300, depth: 1000}}\n  - {{top: T, of: core}}\n");
        AssemblyStep step = set.Steps.Single(s => s.Parts.Contains("T"));
        Lift lift = Lifting.Of(set, step)!;
        Assert.StartsWith(advice, lift.Advice, StringComparison.Ordinal);
        Assert.Equal(advice.Length > 0, lift.IsForTwo);
        Assert.Equal(advice.Length > 0, lift.Advice.EndsWith("(NIOSH lifting equation).", StringComparison.Ordinal));
        // What the weight asks for stands in the place of the general caution; of what is light, nothing.
        Assert.Equal(advice.Length > 0 ? 1 : 0, WeightWords.Mind(set, step, lift.Advice).Split("NIOSH").Length - 1);
    }

    [Fact]
    public void Lift_OfTheCase_IsWithoutWhatIsNotInItYet()
    {
        SetPiece set = Out("  - {case: C, of: slab, width: 800, height: 1000, depth: 500, toe: {}, drawers: {like: kind, down: [{drawer: D1}, {drawer: D2}]}}\n  - {top: T, of: slab}\n");
        AssemblyStep stand = set.Steps.Single(s => s.Whole.Contains("C"));
        double carcase = set.Parts.Where(p => p.Key.StartsWith("C.", StringComparison.Ordinal)).Sum(p => Weights.OfOne(set, p)!.Value.Kilograms.Value * p.Count);
        double top = Weights.OfOne(set, set.Parts.Single(p => p.Key == "T"))!.Value.Kilograms.Value;
        // It is stood level before its top is laid on.
        Assert.Equal(carcase, Lifting.Of(set, stand)!.Weight.Known.Kilograms.Value, 9);
        Assert.Equal(top, Lifting.Of(set, set.Steps.Single(s => s.Parts.Contains("T")))!.Weight.Known.Kilograms.Value, 9);
        // A drawer is lifted whole; its front comes later.
        double box = set.Parts.Where(p => p.Key is "D1.side" or "D1.end" or "D1.bottom").Sum(p => Weights.OfOne(set, p)!.Value.Kilograms.Value * p.Count);
        Assert.Equal(box, Lifting.Of(set, set.Steps.Single(s => s.Whole.Contains("D1")))!.Weight.Known.Kilograms.Value, 9);
        Assert.Equal(carcase, Lifting.Largest(set)!.Weight.Known.Kilograms.Value, 9);
    }

    [Fact]
    public void Pieces_InInches_WeighAsInMillimetres()
    {
        SetPiece metric = Out("  - {case: C, of: slab, width: 762, height: 1016, depth: 508}\n");
        SetPiece inch = Sample.SetOut("setout: 1\nname: Heavy\nunit: in\nmaterials:\n  slab: {panel: mdf, thickness: 20 mm}\nassembly:\n  - {case: C, of: slab, width: 30, height: 40, depth: 20}\n");
        // Within what landing on the two grids moves: 1/64 in and 1/4 mm of 20 in and more.
        double one = Weights.OfAll(metric).Known.Kilograms.Value, other = Weights.OfAll(inch).Known.Kilograms.Value;
        Assert.InRange(other / one, 0.999, 1.001);
    }

    [Fact]
    public void Movement_OfSolidWood_IsThatOfItsTable()
    {
        SetPiece set = Out("  - {frame: F, of: oak, width: 900, height: 700, depth: 500, toe: 100, across: [{opening: A}]}\n");
        // White oak: 0.00180 radially, 0.00365 tangentially a unit and per cent (Wood Handbook 2010, table 13-5).
        var wood = Weights.WoodOf(set.Piece.Materials["oak"])!;
        Assert.Equal((Rational.Of(180, 100_000), Rational.Of(365, 100_000)), (wood.Radial, wood.Tangential));
        Assert.Null(Weights.WoodOf(set.Piece.Materials["slab"]));
    }
}
