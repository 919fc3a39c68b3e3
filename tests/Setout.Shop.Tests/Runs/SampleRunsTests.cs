using System.Collections.Immutable;
using Setout.Core.SettingOut;
using Setout.Cutting.Runs;
using Setout.Shop.Plans;
using Setout.Shop.Tests.Plans;
using Setout.Testing.Runs;

namespace Setout.Shop.Tests.Runs;

/// <summary>The runs of every sample and of every test piece, worked through by the simulator of the saw.</summary>
public class SampleRunsTests
{
    private const string Pieces = "tests/Setout.Shop.Tests/SettingOut/Pieces";

    public static TheoryData<string> Files => [.. Setout.Shop.Tests.Texts.Repository.PieceSamples.Concat(Setout.Testing.Repository.FilesIn(Pieces, "*.yaml"))];

    private static IEnumerable<object> Check(Plan plan) =>
        SawSimulator.Check(Sawing.Materials(plan.Set, plan.Sheets, plan.Boards, plan.Source.Shop.Lift), plan.Source.Shop.Saws, plan.Runs);

    /// <summary>As the layouts are given back: parts to the tick, kept blanks, waiting wood, limits and safety. What is refused stops the plan; all samples can be sawn.</summary>
    [Theory]
    [MemberData(nameof(Files))]
    public void Plan_OfAPiece_CanBeSawn(string file)
    {
        Plan plan = Sample.Make(Sample.Source(File.ReadAllText(Setout.Testing.Repository.PathOf(file)), null));
        Assert.Empty(Check(plan));
        Assert.Empty(plan.Runs.Refusals);
        Assert.True(plan.Sheets.IsEmpty && plan.Boards.IsEmpty || plan.Runs.Runs.Length > 0 || plan.Set.Parts.All(plan.Set.IsHeld));
    }

    /// <summary>The order of runs is the shortest there is: the planner's own bound, which an integer programme confirms on small cases.</summary>
    [Theory]
    [MemberData(nameof(Sample.Data), MemberType = typeof(Sample))]
    public void Plan_OfASample_HasTheFewestSettings(string sample)
    {
        RunPlan runs = Sample.Plan(sample).Runs;
        Assert.Equal(runs.LeastSettings, runs.Settings);
    }

    /// <summary>Seen from the parts: none that waits comes out, and each that does not does, unless it lies in a strip that a reading sizes.</summary>
    [Theory]
    [MemberData(nameof(Sample.Data), MemberType = typeof(Sample))]
    public void Plan_OfASample_CutsWhatDoesNotWait(string sample)
    {
        Plan plan = Sample.Plan(sample);
        Dictionary<string, int> cut = plan.Runs.Blanks.Where(b => b.Use == BlankUse.Part).CountBy(b => b.PartId).ToDictionary();
        foreach (Part part in plan.Set.Parts) Assert.Equal(plan.Set.IsHeld(part) ? 0 : part.Count, cut.GetValueOrDefault(part.Key));
    }
}
