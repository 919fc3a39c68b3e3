using System.Text;
using Setout.Cutting.Runs;
using Setout.Shop.Outputs;
using Setout.Shop.Plans;
using Setout.Shop.Runs;
using Setout.Shop.Tests.Plans;

namespace Setout.Shop.Tests.Rack;

/// <summary>What plan.json tells of the runs is enough to mark them.</summary>
public sealed class SawnPlanJsonTests
{
    private static void AssertReadsBack(Plan plan)
    {
        var sawn = SawnPlan.Of(plan);
        SawnPlan? back = SawnPlanJson.Read(Encoding.UTF8.GetString(PlanJson.Write(plan))).Value;
        Assert.NotNull(back);
        Assert.Equal((sawn.Id, sawn.Texts, sawn.Runs.LeastSettings), (back.Id, back.Texts, back.Runs.LeastSettings));
        Assert.Equal(sawn.Names, back.Names);
        Assert.Equal(sawn.Materials.Where(m => !m.Stock.IsEmpty).Select(m => (m.Name, m.IsSheet, string.Join("; ", m.Stock))), back.Materials.Select(m => (m.Name, m.IsSheet, string.Join("; ", m.Stock))));
        static string Words(SawnPlan p, RunBlank b) => $"{p.Materials[b.Material].Name} {b.Stock} {b.Along} {b.Across} {b.Use} {b.PartId} {b.Turn} {b.Trim} {string.Join(' ', b.Flaws)}";
        Assert.Equal(sawn.Runs.Blanks.Select(b => Words(sawn, b)), back.Runs.Blanks.Select(b => Words(back, b)));
        static string Cut(RunCut c) => $"{c.Blank} {c.Axis} {c.From} {c.Figure} {c.Kerf} {c.Off} {c.Rest}";
        Assert.Equal(sawn.Runs.Runs.Select(r => $"{r.Number} {r.Way} {r.Kind} {r.Figure}: {string.Join(", ", r.Cuts.Select(Cut))}"), back.Runs.Runs.Select(r => $"{r.Number} {r.Way} {r.Kind} {r.Figure}: {string.Join(", ", r.Cuts.Select(Cut))}"));
    }

    [Theory]
    [MemberData(nameof(Sample.Data), MemberType = typeof(Sample))]
    public void Read_PlanOfASample_IsWhatWasWritten(string name) => AssertReadsBack(Sample.Plan(name));

    [Fact]
    public void Read_PlansOfRandomPieces_AreWhatWasWritten()
    {
        for (int seed = 1; seed <= 12; seed++) AssertReadsBack(new SawnShop(RunSequenceTests.Source(seed)).Plan());
    }

    [Fact]
    public void Read_WhatIsNone_SaysWhy()
    {
        string json = Encoding.UTF8.GetString(PlanJson.Write(Sample.Plan("herb-rack")));
        foreach ((string from, string to) in new[] { ("\"in_order\"", "\"in_odrer\""), ("\"use\": \"stock\"", "\"use\": \"stack\""), ("\"id\": 1,", "\"id\": 2,"), ("\"blank\": ", "\"blank\": 99"), ("\"of\": {", "\"fo\": {"), ("\"runs\": {", "\"rusn\": {"), ("{", "") })
        {
            int at = json.IndexOf(from, json.IndexOf("\"runs\": {", StringComparison.Ordinal) is var runs && from != "{" ? Math.Max(0, runs) : 0, StringComparison.Ordinal);
            Assert.True(at >= 0, from);
            var read = SawnPlanJson.Read(json.Remove(at, from.Length).Insert(at, to));
            Assert.True(read.Value is null && read.Findings is [{ Code: "plan.unreadable" }], from);
        }
    }
}
