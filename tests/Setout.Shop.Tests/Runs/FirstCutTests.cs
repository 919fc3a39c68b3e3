using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Setout.Core.Measures.Text;
using Setout.Cutting.Runs;
using Setout.Cutting.Sheets;
using Setout.Drawing.Breakdowns;
using Setout.Drawing.Scenes;
using Setout.Shop.Drawings;
using Setout.Shop.Plans;
using Setout.Shop.Runs;
using Setout.Shop.Tests.Plans;
using Run = Setout.Cutting.Runs.Run;

namespace Setout.Shop.Tests.Runs;

/// <summary>The drawings agree with the runs.</summary>
public partial class FirstCutTests
{
    [GeneratedRegex("^cut ([a-z]+) at (.+)$")]
    private static partial Regex Lettered();

    [GeneratedRegex(@"run (\d+): ([a-z]+)(?: (?:and|to) ([a-z]+))? ")]
    private static partial Regex Told();

    private static IEnumerable<GroupItem> Groups(IEnumerable<SceneItem> items) => items.OfType<GroupItem>().SelectMany(g => Groups(g.Items).Prepend(g));

    private static string Words(Scene scene) => string.Join(' ', scene.Items.OfType<TextItem>().Select(t => t.Text.PlainText));

    /// <summary>Read off the drawing: the runs stand in order and letters follow them; each lettered cut that a run makes is named once.</summary>
    [Theory]
    [MemberData(nameof(Sample.Data), MemberType = typeof(Sample))]
    public void Of_ASample_LettersFollowTheRuns(string sample)
    {
        Plan plan = Sample.Plan(sample);
        int seen = 0;
        foreach (MarkedSheet sheet in plan.Sheets.SelectMany(s => MarkingOut.Of(plan, s, new BreakdownPaper(260, 180))))
        {
            string[] letters = [.. Groups(sheet.Scene.Items).Select(g => Lettered().Match(g.Title)).Where(m => m.Success).Select(m => m.Groups[1].Value).Order(StringComparer.Ordinal)];
            var told = Told().Matches(Words(sheet.Scene)).Select(m => (Run: int.Parse(m.Groups[1].ValueSpan), From: m.Groups[2].Value, To: m.Groups[3].Success ? m.Groups[3].Value : m.Groups[2].Value)).ToList();
            Assert.Equal(told.Select(t => t.Run).Order(), told.Select(t => t.Run));
            string[] named = [.. told.SelectMany(t => letters.Where(l => string.CompareOrdinal(l, t.From) >= 0 && string.CompareOrdinal(l, t.To) <= 0))];
            Assert.Equal(letters.Take(named.Length), named);
            seen += named.Length;
        }
        Assert.True(seen > 0 || plan.Sheets.IsEmpty);
    }

    /// <summary>A rough cut runs beyond the line of the layout: its tick has the figure of its run.</summary>
    [Fact]
    public void Of_RoughCutsOfTheSamples_TicksHaveTheFiguresOfTheRuns()
    {
        int seen = 0;
        foreach (Plan plan in Sample.Names.Select(Sample.Plan))
        {
            LengthFormat bare = LengthFormat.For(plan.Set.Piece.Unit).Bare;
            for (int m = 0; m < plan.Sheets.Length; m++)
            {
                ImmutableArray<MarkedSheet> drawn = MarkingOut.Of(plan, plan.Sheets[m], new BreakdownPaper(260, 180));
                foreach ((Run run, RunCut cut) in plan.Runs.Runs.Where(r => r.Kind == RunKind.Rough).SelectMany(r => r.Cuts.Select(c => (r, c))).Where(p => plan.Runs.Blanks[p.c.Blank].Material == m && p.c.FromRun is not null))
                {
                    string[] ticks = [.. Groups(drawn[plan.Runs.Blanks[cut.Blank].Stock].Scene.Items).Select(g => Lettered().Match(g.Title)).Where(t => t.Success).Select(t => t.Groups[2].Value)];
                    Assert.Contains(bare.Text(run.Figure), ticks);
                    seen++;
                }
            }
        }
        Assert.True(seen > 0);
    }

    /// <summary>Where nothing on a sheet waits, a run makes each of its first cuts, and what it says of them is where they lie.</summary>
    [Theory]
    [MemberData(nameof(Sample.Data), MemberType = typeof(Sample))]
    public void Making_ASheetWithoutWaitingWood_EachFirstCutIsMadeOnce(string sample)
    {
        Plan plan = Sample.Plan(sample);
        var saws = SawnSheets.Of(plan);
        for (int m = 0; m < plan.Sheets.Length; m++)
        {
            SheetPlan sheets = plan.Sheets[m];
            for (int i = 0; i < sheets.Outcome.Layout.Sheets.Length; i++)
            {
                if (plan.Runs.Blanks.Any(b => b.Material == m && b.Stock == i && !b.Waiting.IsEmpty)) continue;
                var made = new List<SawnLine>();
                foreach (CutStep step in SheetCuts.InOrder(sheets.Instance, sheets.Outcome.Layout.Sheets[i]).Where(s => s is { Kind: CutStepKind.Divide, Stage: 1 }))
                {
                    foreach (Core.Measures.Length at in step.Positions)
                    {
                        SawnLine? line = saws.Making(m, i, step.Axis, at, made);
                        // What a rough cut spares is a slice of its own, a kerf or so wide: one cut makes both its sides.
                        if (line is null && made.Any(l => (l.At - at).Abs() <= sheets.Instance.Kerf * 2)) continue;
                        Assert.NotNull(line);
                        made.Add(line);
                    }
                }
            }
        }
    }

    /// <summary>Each rectangle that is left at the end lies where the layout has it, but for what thinner blades leave.</summary>
    [Theory]
    [MemberData(nameof(Sample.Data), MemberType = typeof(Sample))]
    public void PlaceOf_EachPart_IsNearItsPlaceInTheLayout(string sample)
    {
        Plan plan = Sample.Plan(sample);
        var saws = SawnSheets.Of(plan);
        int seen = 0;
        for (int m = 0; m < plan.Sheets.Length; m++)
        {
            SheetPlan sheets = plan.Sheets[m];
            for (int i = 0; i < sheets.Outcome.Layout.Sheets.Length; i++)
            {
                ImmutableArray<PlacedRectangle> laid = SheetFace.Flatten(sheets.Instance, sheets.Outcome.Layout.Sheets[i]);
                foreach (RunBlank part in plan.Runs.Blanks.Where(b => b.Material == m && b.Stock == i && b.Use == BlankUse.Part))
                {
                    SheetRectangle at = saws.PlaceOf(part.Id)!;
                    Assert.Contains(laid, p => p.PartId == part.PartId && Near(p.Place.FromAlong, at.FromAlong) && Near(p.Place.FromAcross, at.FromAcross) && p.Place.Along == at.Along && p.Place.Across == at.Across);
                    seen++;
                }

                bool Near(Core.Measures.Length a, Core.Measures.Length b) => (a - b).Abs() <= sheets.Instance.Kerf * 4;
            }
        }
        Assert.True(seen > 0 || plan.Sheets.IsEmpty);
    }
}
