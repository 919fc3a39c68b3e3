using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Shop.Plans;
using Setout.Shop.Texts;
using Setout.Testing;

namespace Setout.Shop.Tests.Plans;

/// <summary>What marks make facts of.</summary>
public class MarkingTests
{
    [Theory]
    [InlineData(Progress.Cut, "L3", "L3.side L3.end L3.bottom")]
    [InlineData(Progress.Assembled, "L3", "L3.side L3.end L3.bottom")]
    [InlineData(Progress.Fitted, "L3", "L3.front L3.side L3.end L3.bottom")]
    [InlineData(Progress.Cut, "L3.side", "L3.side")]
    [InlineData(Progress.Cut, "L3.side#2", "L3.side#2")]
    [InlineData(Progress.Cut, "L3s", "L3.side")]
    [InlineData(Progress.Cut, "studs", "F.post F.tie L.rail K.rail R.rail")]
    [InlineData(Progress.Cut, "boxes", "")]
    [InlineData(Progress.Cut, "nothing", "")]
    public void Parts_OfAWord_AreThoseItStandsFor(Progress progress, string word, string parts) =>
        Assert.Equal(parts, string.Join(' ', Marking.Parts(new AtTheBench("luthiers-bench.yaml").Set, progress, word)));

    [Fact]
    public void CutSides_FreezeTheirSlide_WhateverTheDepthSays()
    {
        // 24 deep takes a slide of 22; read 21 3/4, only 20 would be picked. The sides are cut to 22.
        AtTheBench bench = new AtTheBench("luthiers-bench.yaml").Mark(Progress.Cut, "L1.side").Record("L.depth", "21 3/4");
        Assert.Equal(Described.Of("22"), bench["L1.slide.length"]);
        Assert.Equal(Described.Of("20"), bench["L2.slide.length"]);
        Assert.Contains(bench.Set.Findings, f => f is { Code: "choice.no-longer-fits", Key: "L1" });
        Assert.False(bench.Set.IsStopped);
    }

    [Fact]
    public void BoughtSlides_StayWhenALongerOneWouldBePicked()
    {
        AtTheBench bench = new AtTheBench("luthiers-bench.yaml");
        string slides = bench.Set.Hardware.First(h => h.Name.StartsWith("Side-mounted slides", StringComparison.Ordinal)).Name;
        bench.Mark(Progress.Bought, "L1");
        AtTheBench deeper = AtTheBench.OfText(File.ReadAllText(Repository.PathOf("samples/luthiers-bench.yaml")).Replace("depth: 24", "depth: 26 1/2", StringComparison.Ordinal));
        Assert.Equal(Described.Of("26"), deeper["L1.slide.length"]);
        deeper.Record("L.depth", "26 1/2").Mark(Progress.Bought, "L1");
        Assert.Equal(Described.Of("26"), deeper["L1.slide.length"]);
        // All slides of a name are bought at once; then a reading of the depth flips none of them.
        AtTheBench all = new AtTheBench("luthiers-bench.yaml").Mark(Progress.Bought, slides.Replace(' ', '\u00a0'));
        Assert.Empty(((MarkEntry)all.Source.Log.Entries[0]).Chosen);
        Assert.Equal(7, Marking.Chosen(all.Set, Progress.Bought, [slides]).Count);
    }

    [Fact]
    public void AssembledPartition_FixesTheOpeningBesideIt()
    {
        // Opening A was set out at 20 and its partition is fixed: a thinner case, read later, widens only B.
        AtTheBench cut = new AtTheBench("jar-cabinet.yaml").Mark(Progress.Cut, "C.side C.deck"), fixedFast = new AtTheBench("jar-cabinet.yaml").Mark(Progress.Cut, "C.side C.deck").Mark(Progress.Assembled, "C.side C.deck P");
        var mark = (MarkEntry)fixedFast.Source.Log.Entries[1];
        Assert.Contains(new QuantityKey("A.set-width"), mark.Figures.Keys);
        Assert.Equal(Described.Of("20"), mark.Figures[new("A.set-width")]);
        Assert.DoesNotContain(new QuantityKey("A.set-width"), ((MarkEntry)cut.Source.Log.Entries[0]).Figures.Keys);
    }

    [Fact]
    public void AssembledShelves_FixTheSpacesBelowThem()
    {
        // A3 is the lowest; A1 alone would hang on nothing.
        Assert.DoesNotContain(((MarkEntry)new AtTheBench("jar-cabinet.yaml").Mark(Progress.Assembled, "A1").Source.Log.Entries[0]).Figures.Keys, k => k.Text.Contains("clear", StringComparison.Ordinal));
        AtTheBench bench = new AtTheBench("jar-cabinet.yaml").Mark(Progress.Assembled, "A3");
        ExactLength below = bench["A3.clear-below.to-cut"], above = bench["A2.clear-below"];
        bench.Record("birch.thickness", "11/16");
        Assert.Equal(below, bench["A3.clear-below.to-cut"]);
        // The spaces above are still shared out of what is left.
        Assert.NotEqual(above, bench["A2.clear-below"]);
    }

    [Fact]
    public void CutAgain_TakesTheFigureOfNow_AndForgetsTheReadingOfTheOldPart()
    {
        AtTheBench bench = new AtTheBench("luthiers-bench.yaml").Mark(Progress.Cut, "L1.end").Record("L1.end.length.as-cut", "17 9/16").Record("L.width", "19 1/2");
        ExactLength asked = bench.Set.Worked.Values[new("L1.end.length.to-cut")].Expected;
        bench.Mark(Progress.Cut, "L1.end", again: true);
        Assert.Equal(asked, bench["L1.end.length.to-cut"]);
        Assert.Equal(asked, bench["L1.end.length.as-cut"]);
    }

    [Fact]
    public void CutMark_AfterTheReadingOfThePart_KeepsTheReading()
    {
        AtTheBench bench = new AtTheBench("luthiers-bench.yaml").Record("L1.end.length.as-cut", "17 37/64").Mark(Progress.Cut, "L1.end");
        Assert.Equal(Described.Of("17 37/64"), bench["L1.end.length.as-cut"]);
    }

    [Fact]
    public void SecondMemberMarked_KeepsTheReadingOfTheFirst()
    {
        AtTheBench bench = new AtTheBench("luthiers-bench.yaml").Mark(Progress.Cut, "L1.end#1").Record("L1.end.length.as-cut", "17 17/32").Mark(Progress.Cut, "L1.end#2");
        Assert.Equal(Described.Of("17 17/32"), bench["L1.end.length.as-cut"]);
    }

    [Fact]
    public void CutVoidedUnderAssembled_TheGluedPartStaysAsItIs()
    {
        AtTheBench bench = new AtTheBench("luthiers-bench.yaml").Mark(Progress.Cut, "L1");
        string cut = bench.LastId;
        ExactLength end = bench.Mark(Progress.Assembled, "L1")["L1.end.length.to-cut"];
        Assert.Equal(end, bench.Void(cut).Record("L.width", "19 7/16")["L1.end.length.to-cut"]);
    }

    [Fact]
    public void HalfCutPart_MarkedByItsMaterial_GetsItsOtherHalf() =>
        Assert.Contains("L1.side#2", Marking.Parts(new AtTheBench("luthiers-bench.yaml").Record("L.width", "19 9/16").Mark(Progress.Cut, "L1.side#1").Set, Progress.Cut, "boxes"));

    [Fact]
    public void Packing_AfterTheBoxIsMade_AsksForNoOtherBox()
    {
        AtTheBench bench = new AtTheBench("luthiers-bench.yaml").Mark(Progress.Cut, "L1").Mark(Progress.Assembled, "L1").Record("L1.packing", "1/16");
        Assert.DoesNotContain(bench.Set.Findings, f => f is { Code: "part.cut-differs", Key: "L1.end" });
        // Before it is made it makes the box narrower by as much.
        Assert.Equal(new AtTheBench("luthiers-bench.yaml")["L2.box.width"] - Described.Of("1/16"), new AtTheBench("luthiers-bench.yaml").Record("L2.packing", "1/16")["L2.box.width"]);
    }

    [Fact]
    public void BoxPlaned_StillTellsHowItWasCut()
    {
        // Read 1/16 over what the stop should give, then planed right: the stop still stands off for the others.
        AtTheBench bench = new AtTheBench("luthiers-bench.yaml").Record("boxes.thickness", "15/32", "calliper").Record("L.width", "19 9/16", "rule")
            .Mark(Progress.Cut, "L1").Mark(Progress.Assembled, "L1").Record("L1.box.as-built", "18 19/32", "rule");
        Assert.Contains(bench.Set.Findings, f => f.Code == "setting.stands-off");
        SetPiece planed = bench.Record("L1.planed", "1/16").Set;
        Assert.Contains(planed.Findings, f => f.Code == "setting.stands-off");
        Assert.Equal(Described.Of("1/32"), planed.Worked[new("L1.play")]);
        // Read once more after that, it is as it is read, and tells nothing of the stop any more.
        SetPiece reread = bench.Record("L1.box.as-built", "18 17/32", "rule").Set;
        Assert.Equal(Described.Of("1/32"), reread.Worked[new("L1.play")]);
        Assert.DoesNotContain(reread.Findings, f => f.Code == "setting.stands-off");
    }

    [Fact]
    public void PartRecutByItsRemedy_TeachesNothingOfTheStop()
    {
        AtTheBench bench = new AtTheBench("luthiers-bench.yaml").Record("boxes.thickness", "15/32", "calliper").Record("L.width", "19 9/16", "rule").Mark(Progress.Cut, "L1").Record("L.width", "19 7/16", "rule");
        bench.Mark(Progress.Cut, "L1.end", again: true);
        Assert.DoesNotContain(bench.Set.Findings, f => f.Code is "setting.stands-off" or "reading.unexplained");
    }

    [Fact]
    public void FrozenFigures_NeverMove_WhateverIsReadAfterwards()
    {
        // Everything that can be cut is; then everything is read anew, each a little off.
        foreach (string sample in new[] { "luthiers-bench.yaml", "plan-chest.yaml", "jar-cabinet.yaml" })
        {
            AtTheBench bench = new(sample);
            string[] parts = [.. bench.Set.Parts.Select(p => p.Key)];
            bench.Mark(Progress.Cut, string.Join(' ', parts));
            SetPiece before = bench.Set;
            foreach (QuantityKey key in before.Worked.Order.Where(k => before.Worked.Values[k].Quantity.Scatter is Scatter.Sheet or Scatter.Section or Scatter.Bought || k.Text.EndsWith(".width", StringComparison.Ordinal) && before.Worked.Values[k].Quantity.Combining == Combining.Narrowest).ToList())
                bench.Record(key.Text, before.Worked[key] + ExactLength.FromInches(Rational.Of(1, 50)));
            SetPiece after = bench.Set;
            Assert.All(before.Parts.SelectMany(p => new[] { p.Length, p.Width }), s => Assert.Equal(before.Worked[s.ToCut], s.ToCut == s.Exact ? before.Worked[s.ToCut] : after.Worked[s.ToCut]));
        }
    }

    [Fact]
    public void OneMemberCut_LeavesTheOtherToCut_AtTheSameFigure()
    {
        AtTheBench bench = new AtTheBench("luthiers-bench.yaml").Mark(Progress.Cut, "L1.side#1");
        Part side = bench.Set.Parts.Single(p => p.Key == "L1.side");
        Assert.Equal(1, bench.Set.Facts.CutOf(side));
        Assert.Equal(PartState.Cut, bench.Set.Facts.StateOf(side));
        Assert.Equal(PartState.Planned, bench.Set.Facts.StateOf("L1.side", 2));
    }
}
