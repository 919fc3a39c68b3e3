using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Cutting.Runs;
using Setout.Shop.Plans;
using Setout.Shop.Runs;
using Setout.Shop.Texts;
using Setout.Testing.Runs;

namespace Setout.Shop.Tests.Plans;

/// <summary>Several pieces broken down together: the parts of each at its own figures, from pooled wood, in one set of runs.</summary>
public class PiecesTogetherTests
{
    private static (string, PieceSource) Piece(string name) => ($"{name}.yaml", Sample.Source(name));

    private static PieceSource Together(params string[] names) => PiecesTogether.Of(names.Select(Piece)).Source!;

    private static PieceSource Read(PieceSource source, string key, string length) =>
        source with { Log = new([.. source.Log.Entries, new ReadingEntry($"r{source.Log.Entries.Length}", "2026-11-27T10:00:00Z", new(key), [LengthText(length)], "calliper", "")]) };

    private static ExactLength LengthText(string text) => Setout.Core.Measures.Text.LengthText.Parse(text, Setout.Core.Measures.Text.LengthUnit.Inch).Value;

    private static readonly Lazy<Plan> s_two = new(() => Sample.Make(Together("jar-cabinet", "luthiers-bench")));

    public static TheoryData<string, string> Pairs => new() { { "jar-cabinet", "luthiers-bench" }, { "sewing-corner", "cedar-chest" }, { "luthiers-bench", "jar-cabinet" }, { "amateur-workbench", "sewing-corner" }, { "plan-chest", "herb-rack" } };

    [Theory]
    [MemberData(nameof(Pairs))]
    public void Plan_OfTwoSamples_CutsEveryPartOfBothToItsOwnFigures(string first, string second)
    {
        Plan plan = Sample.Make(Together(first, second));
        Assert.Empty(SawSimulator.Check(Sawing.Materials(plan.Set, plan.Sheets, plan.Boards, plan.Source.Shop.Lift), plan.Source.Shop.Saws, plan.Runs));
        Assert.Empty(plan.Runs.Refusals);
        Assert.Equal(plan.Runs.LeastSettings, plan.Runs.Settings);
        Assert.Equal(plan.Set.Parts.Length, plan.Set.Parts.Select(p => p.Mark).Distinct().Count());
        Dictionary<string, int> cut = plan.Runs.Blanks.Where(b => b.Use == BlankUse.Part).CountBy(b => b.PartId).ToDictionary();
        ILookup<string, int> laid = plan.Sheets.SelectMany(s => s.Instance.Parts.Select(p => (p.Id, p.Count))).Concat(plan.Boards.SelectMany(b => b.Instance.Parts.Select(p => (p.Id, p.Count)))).ToLookup(p => p.Id, p => p.Count);
        string[] materials = [.. plan.Sheets.Select(s => s.Material.Name), .. plan.Boards.Select(b => b.Material.Name)];
        foreach (MemberPiece member in plan.Source.Together!.Members)
        {
            SetPiece alone = Sample.Plan(member.File[..^".yaml".Length]).Set;
            foreach (Part part in alone.Parts)
            {
                Part here = plan.Set.Parts.Single(p => p.Key == member.Prefixed(part.Key));
                Assert.Equal((alone.ToCut(part.Length), alone.ToCut(part.Width), part.Count, alone.EdgesOf(part)), (plan.Set.ToCut(here.Length), plan.Set.ToCut(here.Width), here.Count, plan.Set.EdgesOf(here)));
                Assert.Equal(part.Count, laid[here.Key].Sum());
                // One that waits for nothing may lie in wood that is put aside whole for one of the other piece.
                int off = cut.GetValueOrDefault(here.Key);
                Assert.True(alone.IsHeld(part) ? off == 0 : off == part.Count || (off < part.Count && plan.Runs.Blanks.Any(b => b.Use == BlankUse.Waiting && materials[b.Material] == here.Material)), here.Key);
            }
        }
    }

    /// <summary>One sheet and money less, and the saws set more often: who breaks them down together is told both.</summary>
    [Fact]
    public void Price_WhereTheSawsAreSetMoreOften_SaysWhatIsSavedForIt()
    {
        Plan both = s_two.Value, jars = Sample.Plan("jar-cabinet"), bench = Sample.Plan("luthiers-bench");
        int more = both.Runs.Settings - jars.Runs.Settings - bench.Runs.Settings;
        Assert.True(more > 1, "The samples show it.");
        string said = TogetherSaving.Price([jars, bench], both);
        Assert.StartsWith($"Together the saws are set {more} times more than for each by itself, and that saves ", said, StringComparison.Ordinal);
        Assert.Contains(" sheets and 74.00 USD: wood that holds more parts is divided more often.", said, StringComparison.Ordinal);
        // Where it costs nothing there is nothing to say, and where nothing is saved that is what is said.
        Assert.Empty(TogetherSaving.Price([both], both));
        Assert.Empty(TogetherSaving.Price([both], jars));
        Assert.Equal($"Together the saws are set {more} times more than for each by itself, and nothing is saved for it: break them down each by itself.",
            TogetherSaving.Price([both with { Runs = both.Runs with { Runs = [.. both.Runs.Runs.Except(both.Runs.Runs.Where(r => r.IsSetting).Take(more))] } }], both));
    }

    /// <summary>Three kinds of plywood are in both: three sheets of 3/4 in one after the other, two together.</summary>
    [Fact]
    public void Plan_OfTwoWithTheSamePlywood_TakesLessWood()
    {
        Plan both = s_two.Value, jars = Sample.Plan("jar-cabinet"), bench = Sample.Plan("luthiers-bench");
        int Sheets(Plan plan, string name) => plan.Sheets.Single(s => s.Material.Name == name).Outcome.Layout.Sheets.Length;
        Assert.Equal((1, 2, 2), (Sheets(jars, "birch"), Sheets(bench, "carcase"), Sheets(both, "birch")));
        Assert.True(both.Cost < jars.Cost + bench.Cost, $"{both.Cost} and {jars.Cost} + {bench.Cost}");
        Assert.DoesNotContain(both.Sheets, s => s.Material.Name == "carcase");
    }

    /// <summary>A thickness read in one piece alone parts the woods, and says how to bring them together again.</summary>
    [Fact]
    public void Pool_ReadInOneOnly_IsCutApartUntilTheOtherReadsTheSame()
    {
        PieceSource jars = Read(Sample.Source("jar-cabinet"), "birch.thickness", "45/64"), bench = Sample.Source("luthiers-bench");
        SetPiece apart = PiecesTogether.Of([("a.yaml", jars), ("b.yaml", bench)]).Source!.SetOut();
        Finding said = Assert.Single(apart.Findings, f => f.Code == "together.apart");
        Assert.Contains("read 45/64 in, taken as 23/32 in", said.Words, StringComparison.Ordinal);
        Assert.Contains("setout record b.yaml carcase.thickness 45/64 in", said.Remedy, StringComparison.Ordinal);
        Assert.Contains("carcase", apart.Parts.Select(p => p.Material));
        SetPiece pooled = PiecesTogether.Of([("a.yaml", jars), ("b.yaml", Read(bench, "carcase.thickness", "45/64"))]).Source!.SetOut();
        Assert.DoesNotContain(pooled.Findings, f => f.Code == "together.apart");
        Assert.DoesNotContain("carcase", pooled.Parts.Select(p => p.Material));
        Assert.DoesNotContain(pooled.Findings, f => f.Code == "material.not-read" && f.Key == "birch");
    }

    /// <summary>Each wood goes into one log, once, under that piece's own name for it; each part into the log of its piece.</summary>
    [Fact]
    public void Split_OfARun_TellsEachPieceItsOwnAndTheWoodOnce()
    {
        PieceSource source = s_two.Value.Source;
        SawnPlan sawn = SawnPlan.Of(s_two.Value);
        Assert.Equal(["jar-cabinet.yaml", "luthiers-bench.yaml"], sawn.Pieces);
        int both = 0;
        foreach (Run run in sawn.Runs.Runs)
        {
            (MarkEntry? entry, Finding? refusal) = RunMarking.Of(source, source.SetOut(), sawn, run.Number, $"e{run.Number}", "2026-11-27T10:00:00Z");
            Assert.True(entry is not null, refusal?.Words);
            var split = source.Together!.Split(entry);
            both += split.Length - 1;
            Assert.Equal(entry.Keys.Order(StringComparer.Ordinal), split.SelectMany(s => ((MarkEntry)s.Entry).Keys.Select(s.Member.Prefixed)).Order(StringComparer.Ordinal));
            Assert.Equal(entry.Took.Length, split.Sum(s => ((MarkEntry)s.Entry).Took.Length));
            Assert.Equal(entry.Left.Select(l => l.Name).Order(StringComparer.Ordinal), split.SelectMany(s => ((MarkEntry)s.Entry).Left).Select(l => l.Name).Order(StringComparer.Ordinal));
            Assert.Equal(entry.Figures.Count, split.Sum(s => ((MarkEntry)s.Entry).Figures.Count));
            foreach ((MemberPiece member, LogEntry own) in split)
            {
                var mark = (MarkEntry)own;
                Assert.All(mark.Took.Select(t => t.Of).Concat(mark.Left.Select(l => l.Of)), of => Assert.Contains(of, member.Source.Piece.Materials.Keys));
                Assert.All(mark.Keys, k => Assert.Contains(member.Set.Parts, p => p.Key == k.Split('#')[0]));
                Assert.All(mark.Figures.Keys, k => Assert.Contains(k, member.Set.Worked.Values.Keys));
            }
            source = source.Together.With(split);
        }
        Assert.True(both > 0, $"{both}");
        // Told as one again, they are the log that the runs were marked in, and each piece knows what of it is cut.
        Assert.Equal(sawn.Runs.Runs.Length, source.Log.Entries.Length);
        Assert.Null(RunMarking.Next(source.Log, sawn));
        ILookup<string, RunBlank> made = sawn.Runs.Blanks.Where(b => b.Use == BlankUse.Part).ToLookup(b => b.PartId);
        foreach (MemberPiece member in source.Together!.Members) Assert.All(member.Set.Parts, p => Assert.Equal(made[member.Prefixed(p.Key)].Count(), member.Set.Facts.CutOf(p)));
    }

    /// <summary>Drawer fronts whose figure runs through keep to each other, and to none of the other piece.</summary>
    [Fact]
    public void Figures_OfBothPieces_StayWithTheirPiece()
    {
        PieceSource cases = Sample.Source(File.ReadAllText(Setout.Testing.Repository.PathOf("tests/Setout.Shop.Tests/SettingOut/Pieces/rolling-cases.yaml")), null);
        string other = cases.Piece.Unit == Sample.Source("jar-cabinet").Piece.Unit ? "jar-cabinet" : "plan-chest";
        Plan alone = Sample.Make(cases), both = Sample.Make(PiecesTogether.Of([("cases.yaml", cases), Piece(other)]).Source!);
        MemberPiece member = both.Source.Together!.Members[0];
        string[] Groups(Plan plan, Func<string, string> named) => [.. plan.Sheets.SelectMany(s => s.Instance.Groups).Select(g => $"{g.Axis}: {string.Join(", ", g.PartIds.Select(named))}").Order(StringComparer.Ordinal)];
        Assert.True(Groups(alone, k => k).Length >= 3);
        Assert.Equal(Groups(alone, k => k), Groups(both, k => member.Own(k)!));
    }

    [Fact]
    public void Of_WhatCannotBeTogether_SaysWhy()
    {
        Assert.Equal("together.units", PiecesTogether.Of([Piece("jar-cabinet"), Piece("plan-chest")]).Refusal?.Code);
        Assert.Equal("together.twice", PiecesTogether.Of([Piece("jar-cabinet"), Piece("jar-cabinet")]).Refusal?.Code);
        Assert.Equal("together.names", PiecesTogether.Of([Piece("jar-cabinet"), ("copy.yaml", Sample.Source("jar-cabinet"))]).Refusal?.Code);
    }
}
