// Over 200 lines: areas, times and amounts of one rule, each by hand.
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.SettingOut;
using Setout.Core.SettingOut.Finishes;
using Setout.Core.Workings;
using Setout.Shop.Plans;
using Setout.Shop.Tests.Plans;
using Setout.Shop.Texts;
using Setout.Testing;
using static Setout.Shop.Tests.SettingOut.Sample;

namespace Setout.Shop.Tests.SettingOut;

/// <summary>What is finished, when, and how much that takes. Sums are worked by hand from the sizes; no published figure was found to hold them against.</summary>
public class FinishTests
{
    private static string Loose(string finish, string materials = "oak: {panel: oak boards, thickness: 3/4}", string parts = "{part: P, of: oak, count: 2, length: 24, width: 12}") => $$"""
        setout: 1
        name: Boards
        unit: in
        materials:
          {{materials}}
        finishes:
          {{finish}}
        parts:
          - {{parts}}

        """;

    private static string Dyes => File.ReadAllText(Repository.PathOf("tests/Setout.Shop.Tests/SettingOut/Pieces/finishes.yaml"));

    private static FinishWork Work(SetPiece set, string name) => FinishWork.Of(set).Single(w => w.Finish.Name == name);

    private static FinishedPart Part(SetPiece set, string key) => FinishWork.Of(set).SelectMany(w => w.Parts).First(p => p.Part.Key == key);

    private static ExactArea SquareInches(string count) => ExactArea.FromSquareFeet(Rational.Of(decimal.Parse(count, System.Globalization.CultureInfo.InvariantCulture)) / 144);

    [Fact]
    public void Board_ByHand_HasSixSides()
    {
        // 2 x 24 x 12 = 576, 2 x 24 x 3/4 = 36, 2 x 12 x 3/4 = 18: 630 sq in each, 1260 both = 8.75 sq ft.
        SetPiece set = SetOut(Loose("oil: {finish: hard oil, coats: 3, covers: 125 sq ft per quart, can: 1/2 pint}"));
        FinishWork work = Work(set, "oil");
        Assert.Equal(SquareInches("1260"), work.Area);
        // 26.25 sq ft at 125 to a quart: 0.21 quarts; in half pints, of which four make a quart, 0.84: one.
        Assert.Equal(Rational.Of(21, 100), work.Needed!.Value.Amount);
        Assert.Equal(1, work.Cans);
        HardwareItem can = Assert.Single(set.Hardware);
        Assert.Equal(("hard oil, can of 0.5 pints", 1, "can"), (can.Name, can.Count, can.Unit));
        Assert.Equal("8.75 sq ft x 3 coats = 26.25 sq ft; 125 sq ft per quart, as its label says: 0.21 quarts", can.Source);
    }

    /// <summary>Glue holds on no finish: what is coated before it is glued says that those places are left out, so that nobody reads all six sides.</summary>
    [Fact]
    public void Line_OfAPartThatIsStillToBeGlued_SaysSo_AndOfOneThatStandsNot()
    {
        SetPiece set = SetOut(Dyes);
        FinishLine[] before = [.. FinishLines.Of(set).SelectMany(s => s.Groups).Where(g => g.Title.StartsWith("Before", StringComparison.Ordinal)).SelectMany(g => g.Lines)];
        bool IsGlued(Part part) => set.Joints.Any(j => (j.Part == part.Key || j.Against == part.Key) && j.Held.Contains("glue", StringComparison.Ordinal) && !j.Held.StartsWith("no glue", StringComparison.Ordinal));
        Assert.Contains(before, l => IsGlued(l.Part));
        Assert.Contains(before, l => !IsGlued(l.Part));
        Assert.All(before, l => Assert.Equal(IsGlued(l.Part), l.Sum.EndsWith(" but for where it is glued", StringComparison.Ordinal)));
        Assert.DoesNotContain(FinishLines.Of(set).SelectMany(s => s.Groups).Where(g => g.Title.StartsWith("Once", StringComparison.Ordinal)).SelectMany(g => g.Lines), l => l.Sum.Contains("glued", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("0.21 quart", 1)]
    [InlineData("0.105 quarts", 2)]
    [InlineData("0.2 quarts", 2)]
    [InlineData("0.209 quarts", 2)]
    public void Cans_AreRoundedUpFromWhatIsExact(string can, int count) =>
        Assert.Equal(count, Work(SetOut(Loose($"oil: {{finish: oil, coats: 3, covers: 125 sq ft per quart, can: {can}}}")), "oil").Cans);

    [Fact]
    public void Coverage_NotSaid_IsAskedForAndNeverAssumed()
    {
        SetPiece set = SetOut(Loose("oil: {finish: hard oil, coats: 2, can: 1 quart}"));
        Finding asked = Assert.Single(set.Findings, f => f.Code == "finish.no-coverage");
        Assert.Equal(Severity.Note, asked.Severity);
        Assert.Contains("Read it on the can", asked.Remedy, StringComparison.Ordinal);
        Assert.Equal((null, null), (Work(set, "oil").Needed, Work(set, "oil").Cans));
        Assert.Equal("hard oil, to coat 17.5 sq ft", Assert.Single(set.Hardware).Name);
        Assert.Contains("read it on the can", FinishLines.Of(set)[0].Sum, StringComparison.Ordinal);
    }

    /// <summary>A slip in a figure of the label is told, whatever comes out by it.</summary>
    [Theory]
    [InlineData("covers: 0.000001 sq ft per 1000000 gallons, can: 0.000001 ml")]
    [InlineData("covers: 125 sq ft per quart, can: 0.001 ml")]
    public void Cans_MoreThanAnybodyBuys_AreAFinding(string label)
    {
        SetPiece set = SetOut(Loose($"oil: {{finish: hard oil, coats: 30, {label}}}"));
        Assert.Equal(Severity.Warn, Assert.Single(set.Findings, f => f.Code == "finish.too-many-cans").Severity);
        Assert.Null(Work(set, "oil").Cans);
        Assert.Contains("more than anybody buys", FinishLines.Of(set)[0].Sum, StringComparison.Ordinal);
        Assert.Equal(1, Assert.Single(set.Hardware).Count);
    }

    [Fact]
    public void Reading_OfASheet_MovesTheAreaOfItsEdges()
    {
        // An eighth of an inch more in 72 in of edge, twice: 18 sq in more.
        string text = Loose("oil: {finish: oil, coats: 1}", "ply: {panel: hardwood plywood, label: 3/4, thickness: 3/4}", "{part: P, of: ply, count: 2, length: 24, width: 12}");
        Assert.Equal(SquareInches("1260") + SquareInches("18"), Work(SetOut(text, "ply.thickness: 7/8 in"), "oil").Area);
    }

    /// <summary>The same piece told in the other unit, and its text given the other unit, has the same areas to the last digit.</summary>
    [Fact]
    public void Unit_OfAPersonOrOfTheText_ChangesNoArea()
    {
        foreach (string text in new[] { Dyes, Text("sewing-corner.yaml") })
        {
            PieceSource source = AtTheBench.OfText(text).Source;
            SetPiece own = source.SetOut(), other = source.ShownIn(source.Piece.Unit == LengthUnit.Inch ? LengthUnit.Millimetre : LengthUnit.Inch).SetOut();
            Assert.Equal(FinishWork.Of(own).Select(w => (w.Area, w.Needed, w.Cans)), FinishWork.Of(other).Select(w => (w.Area, w.Needed, w.Cans)));
            Assert.Equal(own.Hardware, other.Hardware);
            Assert.NotEqual(FinishLines.Of(own)[0].Sum, FinishLines.Of(other)[0].Sum);
        }
    }

    /// <summary>Of each part without a cover the six sides are those of the box that stands in its place, a figure that comes another way.</summary>
    [Fact]
    public void Parts_OfEveryPiece_HaveTheSidesOfTheirBox()
    {
        int seen = 0;
        foreach (string file in Setout.Testing.Repository.FilesIn("samples", "*.yaml").Concat(Setout.Testing.Repository.FilesIn("tests/Setout.Shop.Tests/SettingOut/Pieces", "*.yaml")).Where(f => !f.EndsWith("shop.yaml", StringComparison.Ordinal)))
        {
            SetPiece set = SetOut(File.ReadAllText(Repository.PathOf(file)));
            foreach (Part part in set.Parts.Where(p => p.Placements.Length == p.Count))
            {
                Surface surface = Surface.Of(set, part);
                // A few stand in a place that is a hair off what is cut, such as a back that is rounded down.
                ExactLength[] sizes = [.. new[] { set.Worked[part.Length.AsCut], set.Worked[part.Width.AsCut], set.Worked[part.Thickness] }.Order()];
                if (surface.Without.Length > 0 || part.Placements.Any(b => !new[] { b.SizeX, b.SizeY, b.SizeZ }.Order().SequenceEqual(sizes))) continue;
                ExactArea boxes = part.Placements.Aggregate(ExactArea.Zero, (sum, b) => sum + ((ExactArea.Of(b.SizeX, b.SizeY) + ExactArea.Of(b.SizeY, b.SizeZ) + ExactArea.Of(b.SizeX, b.SizeZ)) * 2));
                Assert.True(boxes == surface.OfAll, $"{file} {part.Key}: {AmountText.Of(boxes, LengthUnit.Inch)}, {AmountText.Of(surface.OfAll, LengthUnit.Inch)}");
                seen++;
            }
        }
        Assert.True(seen > 200, $"{seen}");
    }

    [Fact]
    public void Covers_ByHand_AreLeftOut()
    {
        SetPiece set = SetOut(Dyes);
        // The top of the case is banded at its front: one long edge of two. Its width is that of the side.
        Assert.Equal(["face 2", "long edge 1", "end 2"], Part(set, "C.deck").Surface.Flats.Select(f => $"{f.Name} {f.Count}"));
        Assert.Contains("under bands", Part(set, "C.deck").Surface.Without, StringComparison.Ordinal);
        // Laminate on the face, a backer below, a film on the front edge: the back edge and two ends are left.
        Assert.Equal(["long edge 1", "end 2"], Part(set, "T").Surface.Flats.Select(f => $"{f.Name} {f.Count}"));
        Assert.Equal("lined: it comes with finished faces", Assert.Single(FinishLines.None(set)));
        Assert.DoesNotContain(FinishWork.Of(set).SelectMany(w => w.Parts), p => p.Part.Material == "lined");

        // Two layers with a mitred strip at the front and at both ends: each layer has one face, its back edge, and no end; strips have one face.
        SetPiece sewing = Of("sewing-corner.yaml");
        foreach (string layer in new[] { "T.layer-1", "T.layer-2" }) Assert.Equal(["face 1", "long edge 1"], Part(sewing, layer).Surface.Flats.Select(f => $"{f.Name} {f.Count}"));
        Assert.Equal(["face 1", "long edge 2", "end 2"], Part(sewing, "T.edging-front").Surface.Flats.Select(f => $"{f.Name} {f.Count}"));
        Assert.Equal(["face 1", "long edge 2", "end 2"], Part(sewing, "A1.front.lip").Surface.Flats.Select(f => $"{f.Name} {f.Count}"));
        Assert.Equal(["face 2"], Part(sewing, "A1.front").Surface.Flats.Select(f => $"{f.Name} {f.Count}"));
    }

    [Fact]
    public void On_NamesPartsOwnersAndMaterials_AndWithoutItAllThatIsNotNamed()
    {
        SetPiece set = SetOut(Dyes);
        Assert.Equal(["C.back"], Work(set, "primer").Parts.Select(p => p.Part.Key));
        Assert.Equal(["C.back", .. set.Parts.Where(p => p.Key.StartsWith("D.", StringComparison.Ordinal)).Select(p => p.Key)], Work(set, "paint").Parts.Select(p => p.Part.Key));
        HashSet<string> waxed = [.. Work(set, "wax").Parts.Select(p => p.Part.Key)];
        Assert.Equal(set.Parts.Select(p => p.Key).Where(k => k != "C.back" && k is not "S" && !k.StartsWith("D.", StringComparison.Ordinal) && !k.StartsWith("S.", StringComparison.Ordinal)).ToHashSet(), waxed);
        Assert.Empty(FinishWork.Bare(set));
        Assert.Equal(["box"], FinishWork.Bare(Of("sewing-corner.yaml")).Select(s => s.Part.Material).Distinct());
    }

    [Theory]
    [InlineData("on: oaks", "finish.unknown")]
    [InlineData("on: [P, K9]", "finish.unknown")]
    [InlineData("on: lined", "finish.idle")]
    public void On_WhatIsNotThereOrTakesNone_IsTold(string on, string code)
    {
        string text = Loose($"oil: {{finish: oil, coats: 1, covers: 9 m2 per l, {on}}}", "oak: {panel: oak boards, thickness: 3/4}\n  lined: {panel: melamine-faced board, thickness: 3/4}",
            "{part: P, of: oak, length: 24, width: 12}\n  - {part: Q, of: lined, length: 24, width: 12}");
        Finding told = Assert.Single(SetOut(text).Findings, f => f.Code.StartsWith("finish.", StringComparison.Ordinal));
        Assert.Equal((code, Severity.Warn), (told.Code, told.Severity));
    }

    [Fact]
    public void Time_OfWhatStandsInAGrooveAndOfDrawers_IsBeforeItsStep()
    {
        SetPiece set = SetOut(Dyes);
        FinishedPart panel = Part(set, "D.panel"), side = Part(set, "A1.side"), front = Part(set, "A1.front"), deck = Part(set, "C.deck"), stile = Part(set, "D.stile");
        Assert.Equal((FinishTime.Before, PartState.Cut), (panel.Time, panel.From));
        Assert.Contains("raw line", panel.Why, StringComparison.Ordinal);
        Assert.Equal((FinishTime.Before, PartState.Cut), (side.Time, side.From));
        Assert.Contains("A1.side", set.Steps[side.Step!.Value - 1].Parts);
        Assert.Equal((FinishTime.After, PartState.Fitted), (front.Time, front.From));
        Assert.Equal((FinishTime.After, PartState.Fitted), (stile.Time, stile.From));
        Assert.Equal((FinishTime.After, PartState.Assembled), (deck.Time, deck.From));
        // A loose part is in no step: it is ready when it is cut.
        Assert.Equal((FinishTime.After, (int?)null, PartState.Cut), (Part(SetOut(Loose("oil: {finish: oil, coats: 1}")), "P") is var p ? (p.Time, p.Step, p.From) : default));
    }

    [Fact]
    public void Finished_IsAFactOfItsOwn_AndGoesWithWhatIsCutAnew()
    {
        var bench = AtTheBench.OfText(Dyes);
        bench.Mark(Progress.Cut, "A1.side").Mark(Progress.Finished, "A1");
        SetPiece set = bench.Set;
        Assert.Equal((2, 2), (set.Facts.FinishedOf(set.Parts.First(p => p.Key == "A1.side")), set.Facts.CutOf(set.Parts.First(p => p.Key == "A1.side"))));
        // A coat says nothing of being cut or together, and fixes no size.
        Assert.Equal(PartState.Planned, set.Facts.StateOf("A1.end", 1));
        Assert.True(set.Facts.IsFinished("A1.front", 1));
        Assert.Equal(PartState.Cut, set.Facts.StateOf("A1.side", 1));
        string finished = bench.LastId;
        bench.Mark(Progress.Cut, "A1.side#2", again: true);
        Assert.Equal((true, false), (bench.Set.Facts.IsFinished("A1.side", 1), bench.Set.Facts.IsFinished("A1.side", 2)));
        bench.Mark(Progress.Finished, "A1.side#2");
        Assert.True(bench.Set.Facts.IsFinished("A1.side", 2));
        bench.Void(finished);
        Assert.Equal((false, true), (bench.Set.Facts.IsFinished("A1.side", 1), bench.Set.Facts.IsFinished("A1.side", 2)));
    }

    [Fact]
    public void Price_OfTheCan_CountsInTheCost()
    {
        const string price = "setout-shop: 1\nname: s\nunit: in\nprices: [{name: 'hard oil, can of 1 pint', price: 11.50}]\n";
        PieceSource source = PieceSource.Read(Loose("oil: {finish: hard oil, coats: 3, covers: 15 sq ft per pint, can: 1 pint}"), null, price).Source!;
        Plan plan = new PlanMaker(Cutting.Sheets.SheetSolvers.Default, Cutting.Boards.BoardSolvers.Default).Make(source, LayoutEffort.Steps(new(2000, 1)));
        // 26.25 sq ft at 15 to a pint: 1.75, two cans.
        BuyingLine line = Assert.Single(plan.Buying, l => l.Kind == BuyingKind.Hardware);
        Assert.Equal((2, "can", new Money(23m)), (line.Count, line.Unit, line.Total));
    }
}
