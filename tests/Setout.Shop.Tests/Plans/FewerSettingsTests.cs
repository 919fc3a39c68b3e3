using System.Globalization;
using System.Text.RegularExpressions;
using Setout.Core.Workings;
using Setout.Cutting;
using Setout.Cutting.Boards;
using Setout.Cutting.Sheets;
using Setout.Shop.Plans;

namespace Setout.Shop.Tests.Plans;

/// <summary>Layouts that are sawn at fewer settings: for nothing they are taken, for a sheet more they are offered.</summary>
public partial class FewerSettingsTests
{
    private static string Piece(string ply, params ReadOnlySpan<(int Count, string Length, string Width)> parts)
    {
        var lines = new List<string>();
        for (int i = 0; i < parts.Length; i++) lines.Add($"  - {{part: p{i}, name: piece {i}, of: ply, count: {parts[i].Count}, length: {parts[i].Length}, width: {parts[i].Width}}}");
        return $"setout: 1\nname: Loose pieces\nunit: in\nmaterials:\n  ply: {{panel: hardwood plywood, label: 3/4, thickness: 0.72 in{ply}}}\nassembly: []\nparts:\n{string.Join('\n', lines)}\n";
    }

    // Invented: many widths on two sheets.
    private static string Many(string ply = "") => Piece(ply,
        (4, "44", "15 1/2"), (4, "14 1/2", "4 1/2"), (3, "24", "19 1/2"), (3, "19", "8 1/2"), (4, "10 1/2", "6"), (4, "12 1/4", "4 1/2"), (3, "34 1/2", "17 1/2"));

    [GeneratedRegex(@"^One sheet more of ply, for ([\d.]+) USD, saves (\d+) settings at the saws: (\d+) in place of (\d+)\.$")]
    private static partial Regex Offer();

    /// <summary>What is offered is had: the remedy followed costs what it says and saves what it says.</summary>
    [Fact]
    public void Make_PlainStripsCostASheetMore_OfferIsTrue()
    {
        Plan plan = Sample.Make(Sample.Source(Many(), null));
        Finding offer = Assert.Single(plan.Findings, f => f.Code == "layout.plainer");
        Match told = Offer().Match(offer.Words);
        Assert.True(told.Success, offer.Words);
        Assert.Equal(plan.Runs.Settings, int.Parse(told.Groups[4].ValueSpan, CultureInfo.InvariantCulture));
        Assert.Contains("'most stages: 2' with ply", offer.Remedy, StringComparison.Ordinal);

        Plan plainer = Sample.Make(Sample.Source(Many(", most stages: 2"), null));
        Assert.Equal(plan.Sheets[0].Outcome.Layout.Sheets.Length + 1, plainer.Sheets[0].Outcome.Layout.Sheets.Length);
        Assert.Equal(decimal.Parse(told.Groups[1].ValueSpan, CultureInfo.InvariantCulture), plainer.Cost.Amount - plan.Cost.Amount);
        Assert.Equal(int.Parse(told.Groups[3].ValueSpan, CultureInfo.InvariantCulture), plainer.Runs.Settings);
        Assert.DoesNotContain(plainer.Findings, f => f.Code == "layout.plainer");
    }

    /// <summary>Whoever takes the best so far gets the whole plan without the looks at plain strips, which take longest.</summary>
    [Fact]
    public void Make_BestSoFarIsTaken_NothingIsLaidOutOnceMore()
    {
        using var enough = new CancellationTokenSource();
        var told = new List<string>();
        Plan plan = new PlanMaker(SheetSolvers.Default, BoardSolvers.Default).Make(Sample.Source(Many(), null), LayoutEffort.Steps(SolverOptions.Default with { Enough = enough.Token }), new Told(words =>
        {
            told.Add(words);
            enough.Cancel();
        }), TestContext.Current.CancellationToken);
        Assert.DoesNotContain(told, t => t.Contains("plain strips", StringComparison.Ordinal));
        Assert.DoesNotContain(plan.Findings, f => f.Code == "layout.plainer");
        Assert.All(plan.Sheets, s => Assert.Empty(s.Outcome.Layout.LeftOut));
        Assert.NotEmpty(plan.Runs.Runs);
        Assert.Contains("at the saws", told[^1], StringComparison.Ordinal);
    }

    private sealed class Told(Action<string> tell) : IProgress<string>
    {
        public void Report(string value) => tell(value);
    }

    /// <summary>An offer speaks of the settings that the plan has in the end, whichever material was made plainer after it.</summary>
    [Fact]
    public void Make_SeveralMaterials_OffersSpeakOfTheSettingsThatThePlanHas()
    {
        string[] pairs = ["jar-cabinet", "luthiers-bench", "sewing-corner"];
        IEnumerable<Plan> plans = Sample.Names.Select(Sample.Plan).Append(Sample.Make(PiecesTogether.Of(pairs.Select(n => ($"{n}.yaml", Sample.Source(n)))).Source!));
        int told = 0;
        foreach (Plan plan in plans)
        {
            foreach (Finding offer in plan.Findings.Where(f => f.Code == "layout.plainer"))
            {
                Match figures = Regex.Match(offer.Words, @": (\d+) in place of (\d+)\.$");
                Assert.Equal(plan.Runs.Settings, int.Parse(figures.Groups[2].ValueSpan, CultureInfo.InvariantCulture));
                Assert.True(int.Parse(figures.Groups[1].ValueSpan, CultureInfo.InvariantCulture) < plan.Runs.Settings);
                told++;
            }
        }
        Assert.True(told > 0);
    }

    /// <summary>Seen from outside: no plan of a sample has a sheet layout of the same stock in plain strips that takes fewer settings.</summary>
    [Theory]
    [MemberData(nameof(Sample.Data), MemberType = typeof(Sample))]
    public void Make_ASample_NoPlainLayoutOfTheSameStockIsBetter(string sample)
    {
        Plan plan = Sample.Plan(sample);
        for (int i = 0; i < plan.Sheets.Length; i++)
        {
            SheetPlan sheets = plan.Sheets[i];
            if (sheets.Instance.MostStages is not null || !sheets.Outcome.Layout.LeftOut.IsEmpty) continue;
            SheetLayout plain = SheetSolvers.Default.Solve(sheets.Instance with { MostStages = 2 }, Cutting.SolverOptions.Default).Layout;
            if (!plain.LeftOut.IsEmpty || !plain.Sheets.Select(s => s.StockId).Order().SequenceEqual(sheets.Outcome.Layout.Sheets.Select(s => s.StockId).Order())) continue;
            SheetPlan other = sheets with { Outcome = sheets.Outcome with { Layout = plain } };
            int then = Sawing.Of(plan.Set, plan.Sheets.SetItem(i, other), plan.Boards, plan.Source.Shop, TestContext.Current.CancellationToken).Runs.Settings;
            Assert.True(then >= plan.Runs.Settings, $"{sheets.Material.Name}: {then} for {plan.Runs.Settings}");
        }
    }
}
