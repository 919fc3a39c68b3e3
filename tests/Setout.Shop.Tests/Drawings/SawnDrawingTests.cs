// Over 200 lines: each thing that a drawing says of the runs is read off it in its own way and held against them.
using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.SettingOut;
using Setout.Cutting.Boards;
using Setout.Cutting.Runs;
using Setout.Cutting.Sheets;
using Setout.Drawing.Breakdowns;
using Setout.Drawing.Documents;
using Setout.Drawing.Scenes;
using Setout.Shop.BenchSheets;
using Setout.Shop.Drawings;
using Setout.Shop.Plans;
using Setout.Shop.Runs;
using Setout.Shop.Tests.Plans;
using Run = Setout.Cutting.Runs.Run;

namespace Setout.Shop.Tests.Drawings;

/// <summary>Drawings say what the runs say: what waits, which sides are trued when, what is kept at which size, what wood is called. Read off the drawing and held against the runs.</summary>
public sealed partial class SawnDrawingTests
{
    [GeneratedRegex(@"reference edge 0: (?:trued(?: piece by piece)? in runs? ([\d, and]+?)(?: \([^)]*\))?, .+ off|true as it is|to be trued first, .+ off); end 0: (?:trued(?: piece by piece)? in runs? ([\d, and]+?)(?: \([^)]*\))?, .+ off|true as it is|to be trued first, .+ off); ")]
    private static partial Regex Trued();

    private static readonly BreakdownPaper s_paper = new(260, 180);

    private static IEnumerable<SceneItem> All(IEnumerable<SceneItem> items) => items.SelectMany(i => i is GroupItem g ? All(g.Items) : [i]);

    private static IEnumerable<GroupItem> Groups(IEnumerable<SceneItem> items) => items.OfType<GroupItem>().SelectMany(g => Groups(g.Items).Prepend(g));

    private static string Words(Scene scene) => string.Join(' ', All(scene.Items).OfType<TextItem>().Select(t => t.Text.PlainText));

    // Each sheet of a plan with its drawing, its material and number, and its cuts.
    private static IEnumerable<(Scene Scene, int Material, int Sheet, (Run Run, RunCut Cut)[] Cuts)> Sheets(Plan plan)
    {
        for (int m = 0; m < plan.Sheets.Length; m++)
        {
            ImmutableArray<MarkedSheet> drawn = MarkingOut.Of(plan, plan.Sheets[m], s_paper);
            for (int i = 0; i < drawn.Length; i++)
                yield return (drawn[i].Scene, m, i, [.. plan.Runs.Runs.SelectMany(r => r.Cuts.Select(c => (r, c))).Where(p => plan.Runs.Blanks[p.c.Blank] is var b && b.Material == m && b.Stock == i)]);
        }
    }

    private static int[] Numbers(Group group) => [.. group.Value.Split([",", " ", "and"], StringSplitOptions.RemoveEmptyEntries).Select(int.Parse)];

    [Theory]
    [MemberData(nameof(Sample.Data), MemberType = typeof(Sample))]
    public void Of_ASample_BothReferencesAreTruedInTheRunsThatSaySo(string sample)
    {
        Plan plan = Sample.Plan(sample);
        foreach ((Scene scene, int m, int i, (Run Run, RunCut Cut)[] cuts) in Sheets(plan))
        {
            Match said = Trued().Match(Words(scene));
            Assert.True(said.Success, Words(scene));
            foreach ((Group group, BlankSide side) in new[] { (said.Groups[1], BlankSide.NearEdge), (said.Groups[2], BlankSide.NearEnd) })
                Assert.All(Numbers(group), n => Assert.Contains(cuts, c => c.Run.Number == n && c.Run.Kind == RunKind.True && c.Cut.From == side));
            // Where the near edge of the whole sheet is trued, the drawing says by which run.
            RunBlank stock = plan.Runs.Blanks.First(b => b.Material == m && b.Stock == i);
            if (cuts.Where(c => c.Cut.Blank == stock.Id && c.Run.Kind == RunKind.True && c.Cut.From == BlankSide.NearEdge).ToArray() is [var first, ..]) Assert.Equal([first.Run.Number], Numbers(said.Groups[1]));
            Assert.Single(Groups(scene.Items), g => g.Title == "end 0");
        }
    }

    [Theory]
    [MemberData(nameof(Sample.Data), MemberType = typeof(Sample))]
    public void Of_ASample_OtherKerfsAndTheOtherFaceAreSaidWhereTheyOccur(string sample)
    {
        Plan plan = Sample.Plan(sample);
        foreach ((Scene scene, int m, _, (Run Run, RunCut Cut)[] cuts) in Sheets(plan))
        {
            bool differs = cuts.Any(c => c.Run.Kind is not (RunKind.True or RunKind.Clear) && c.Cut.Kerf != plan.Sheets[m].Instance.Kerf);
            Assert.Equal(differs, Words(scene).Contains("find the place by them, cut by the runs", StringComparison.Ordinal));
            Assert.Equal(!differs, Words(scene).Contains("all figures run from there", StringComparison.Ordinal));
            bool isGuided = cuts.Any(c => c.Run.Way == SawWay.Guide);
            Assert.Equal(isGuided, Words(scene).Contains("the 0 end is at your right", StringComparison.Ordinal));
        }
    }

    /// <summary>Wood that waits is drawn as what waits, and no run's letter stands on it.</summary>
    [Theory]
    [InlineData("sewing-corner")]
    [InlineData("plan-chest")]
    public void Of_ASample_CutsInWoodThatWaitsAreThinAndHaveNoLetter(string sample)
    {
        Plan plan = Sample.Plan(sample);
        int waiting = 0;
        foreach ((Scene scene, int m, int i, (Run Run, RunCut Cut)[] cuts) in Sheets(plan))
        {
            RunBlank[] waits = [.. plan.Runs.Blanks.Where(b => b.Material == m && b.Stock == i && !b.Waiting.IsEmpty)];
            bool hasThin = All(scene.Items).OfType<LineItem>().Any(l => l.Ink == Ink.Hidden);
            if (waits.Length == 0) Assert.False(hasThin);
            if (cuts.Length > 0 || waits.Length == 0) continue;
            waiting++;
            Assert.True(hasThin);
            Assert.DoesNotContain(All(scene.Items).OfType<LineItem>(), l => l.Ink == Ink.Pencil);
            Assert.DoesNotContain(All(scene.Items).OfType<TextItem>(), t => t.Ink == Ink.Pencil);
            Assert.Contains("nothing is cut from it yet", Words(scene), StringComparison.Ordinal);
        }
        Assert.True(waiting > 0);
    }

    [Fact]
    public void Of_TheSewingCorner_BoardsThatWaitSaySo()
    {
        Plan plan = Sample.Plan("sewing-corner");
        int whole = 0;
        foreach (BoardPlan boards in plan.Boards)
        {
            bool[] waits = [.. boards.Outcome.Layout.Boards.Select(b => b.PartIds.All(id => plan.Set.IsHeld(plan.Set.Parts.First(p => p.Key == id))))];
            foreach (Scene scene in BoardBars.Of(plan, boards, s_paper))
            {
                string words = Words(scene);
                GroupItem[] bars = [.. Groups(scene.Items).Where(g => g.Key.StartsWith($"{boards.Material.Name}-", StringComparison.Ordinal))];
                Assert.Equal(waits.Length, bars.Length);
                for (int i = 0; i < bars.Length; i++)
                {
                    Assert.Equal(waits[i], bars[i].Title.Contains("leave it whole: waits for a reading of", StringComparison.Ordinal));
                    if (!waits[i]) continue;
                    whole++;
                    Assert.DoesNotContain(bars[i].Items.OfType<LineItem>(), l => l.Ink == Ink.Pencil);
                    Assert.All(Groups(bars[i].Items).Where(g => plan.Set.Parts.Any(p => p.Key == g.Key)), g => Assert.All(g.Items.OfType<TextItem>(), t => Assert.True(t.Text.Runs[0].IsItalic)));
                }
                if (Array.TrueForAll(waits, w => w)) Assert.DoesNotContain("square one end first", words, StringComparison.Ordinal);
            }
        }
        Assert.True(whole > 0);
    }

    /// <summary>What goes to the rack has one size: the one it has as it is kept, what is raw included.</summary>
    [Theory]
    [MemberData(nameof(Sample.Data), MemberType = typeof(Sample))]
    public void Of_ASample_WhatIsKeptHasTheSizeOfItsBlank(string sample)
    {
        Plan plan = Sample.Plan(sample);
        LengthFormat bare = LengthFormat.For(plan.Set.Piece.Unit).Bare;
        foreach ((Scene scene, int m, int i, _) in Sheets(plan))
        {
            string[] said = [.. Groups(scene.Items).Select(g => g.Title).Where(t => t.StartsWith("keep", StringComparison.Ordinal))];
            foreach (RunBlank kept in plan.Runs.Blanks.Where(b => b.Material == m && b.Stock == i && b.Use == BlankUse.Keep))
            {
                bool isRaw = Enum.GetValues<BlankSide>().Any(kept.IsRaw);
                Assert.Contains(said, t => t.Contains($"{bare.Text(kept.Along)} x {bare.Text(kept.Across)}", StringComparison.Ordinal) && t.Contains("raw", StringComparison.Ordinal) == isRaw);
            }
        }
    }

    /// <summary>The same of boards, by name; where an end is trued and by which run is said, and where it stays raw.</summary>
    [Theory]
    [InlineData("herb-rack")]
    [InlineData("amateur-workbench")]
    [InlineData("sewing-corner")]
    public void Of_ASample_WhatIsKeptOfBoardsHasNameAndSizeOfItsBlank(string sample)
    {
        Plan plan = Sample.Plan(sample);
        LengthFormat bare = LengthFormat.For(plan.Set.Piece.Unit).Bare;
        var names = BlankNames.Of(plan);
        int seen = 0;
        foreach ((BoardPlan boards, int m) in plan.Boards.Select((b, i) => (b, plan.Sheets.Length + i)))
        {
            string said = string.Join(' ', BoardBars.Of(plan, boards, s_paper).Select(Words));
            RunBlank[] kept = [.. plan.Runs.Blanks.Where(b => b.Material == m && b.Use == BlankUse.Keep)];
            foreach (RunBlank b in kept)
            {
                string raw = b.IsRaw(BlankSide.NearEnd) && b.IsRaw(BlankSide.FarEnd) ? ", raw at the 0 end and far end" : b.IsRaw(BlankSide.NearEnd) ? ", raw at the 0 end" : b.IsRaw(BlankSide.FarEnd) ? ", raw at the far end" : "";
                Assert.Contains($"keep {names.Spoken(b.Id)}, {bare.Text(b.Along)}{raw}", said, StringComparison.Ordinal);
                seen++;
            }
            int[] trued = [.. plan.Runs.Runs.Where(r => r.Kind == RunKind.True && r.Cuts.Any(c => plan.Runs.Blanks[c.Blank].Material == m)).Select(r => r.Number)];
            Assert.All(trued, n => Assert.Matches($@"\(runs? [^)]*\b{n}\b", said));
        }
        Assert.True(seen > 0);
    }

    /// <summary>The third lane of the board with a flaw gives nothing before the flaw: no run trues that end.</summary>
    [Fact]
    public void Of_TheHerbRack_AnEndThatNoRunTruesStaysRaw()
    {
        Plan plan = Sample.Plan("herb-rack");
        string said = string.Join(' ', plan.Boards.SelectMany(b => BoardBars.Of(plan, b, s_paper)).Select(Words));
        Assert.Contains("1 flaw), 12.7 mm off first (run 3): lane 2 of 3 (7b)", said, StringComparison.Ordinal);
        Assert.Contains("1 flaw), its end at 0 stays raw: lane 3 of 3 (7)", said, StringComparison.Ordinal);
        Assert.Contains("keep 7c, 706.8, raw at the 0 end, its flaw in it", said, StringComparison.Ordinal);
    }

    /// <summary>What is the same for all sheets of a material is said on the first of its drawings.</summary>
    [Theory]
    [MemberData(nameof(Sample.Data), MemberType = typeof(Sample))]
    public void Of_ASample_WhatMayLieAtTheFenceIsSaidOnceForAMaterial(string sample)
    {
        Plan plan = Sample.Plan(sample);
        foreach ((Scene scene, int m, int i, (Run Run, RunCut Cut)[] cuts) in Sheets(plan))
            if (cuts.Length > 0) Assert.Equal(i == 0, Words(scene).Contains("at the fence only with an edge longer than the distance to the blade", StringComparison.Ordinal));
    }

    /// <summary>Ends that are trued piece by piece: each piece is named.</summary>
    [Theory]
    [MemberData(nameof(Sample.Data), MemberType = typeof(Sample))]
    public void Of_ASample_PiecesThatAreTruedAreNamed(string sample)
    {
        Plan plan = Sample.Plan(sample);
        var names = BlankNames.Of(plan);
        foreach ((Scene scene, _, _, (Run Run, RunCut Cut)[] cuts) in Sheets(plan))
        {
            string words = Words(scene);
            foreach (Match match in PieceByPiece().Matches(words))
            {
                int[] runs = Numbers(match.Groups[1]);
                string[] pieces = match.Groups[2].Value.Split(", ");
                Assert.NotEmpty(pieces);
                Assert.All(pieces, p => Assert.Contains(cuts, c => runs.Contains(c.Run.Number) && c.Run.Kind == RunKind.True && names.Spoken(c.Cut.Blank) == p));
            }
            Assert.DoesNotMatch(@"piece by piece in runs? [\d, and]+, ", words);
        }
    }

    [GeneratedRegex(@"piece by piece in runs? ([\d, and]+?) \(([^)]*)\)")]
    private static partial Regex PieceByPiece();

    /// <summary>Weights are in the unit of the piece.</summary>
    [Theory]
    [InlineData("jar-cabinet", " lb (", "kg")]
    [InlineData("plan-chest", " kg (", "lb")]
    public void Compose_ASheetsWeight_IsInTheUnitOfThePiece(string sample, string has, string hasNot)
    {
        string[] said = [.. BenchSheetWriter.Compose(Sample.Plan(sample), "", Paper.A4).Sections.SelectMany(s => s.Blocks.OfType<CautionBlock>()).SelectMany(c => c.Lines).Select(l => l.PlainText).Where(t => t.StartsWith("A whole sheet weighs", StringComparison.Ordinal))];
        Assert.NotEmpty(said);
        Assert.All(said, s => Assert.Contains(has, s, StringComparison.Ordinal));
        Assert.All(said, s => Assert.DoesNotContain(hasNot, s.Replace("51 lb (23 kg)", "", StringComparison.Ordinal), StringComparison.Ordinal));
    }

    /// <summary>Lanes and pieces inside strips have the names that the runs call them by.</summary>
    [Theory]
    [InlineData("herb-rack")]
    [InlineData("cedar-chest")]
    [InlineData("sewing-corner")]
    public void Of_ASample_WoodThatARunNamesIsNamedOnItsDrawing(string sample)
    {
        Plan plan = Sample.Plan(sample);
        var names = BlankNames.Of(plan);
        string sheets = string.Join(' ', Sheets(plan).Select(s => Words(s.Scene))), boards = string.Join(' ', plan.Boards.SelectMany(b => BoardBars.Of(plan, b, s_paper)).Select(Words));
        int seen = 0;
        foreach (RunBlank off in plan.Runs.Runs.SelectMany(r => r.Cuts).Select(c => c.Off).OfType<int>().Select(id => plan.Runs.Blanks[id]).Where(b => b.Use is BlankUse.Work or BlankUse.Waiting))
        {
            bool isSheet = names.IsSheet(off.Material);
            Assert.Contains(isSheet ? names[off.Id] : $"({names[off.Id]})", isSheet ? sheets : boards, StringComparison.Ordinal);
            seen++;
        }
        Assert.True(seen > 0);
    }

    /// <summary>Page and runs ask for a second person by one rule; where a weight is not on record, the page says that nobody knows.</summary>
    [Theory]
    [MemberData(nameof(Sample.Data), MemberType = typeof(Sample))]
    public void Compose_ASample_AsksForTwoAsItsRunsDo(string sample)
    {
        Plan plan = Sample.Plan(sample);
        Section[] sections = [.. BenchSheetWriter.Compose(plan, "", Paper.A4).Sections.Where(s => s.Title.StartsWith("Breakdown", StringComparison.Ordinal))];
        foreach (SheetPlan sheets in plan.Sheets)
        {
            Section section = sections.Single(s => s.Title == $"Breakdown of {sheets.Material.Name}");
            // Where a drawing needs nearly all of its page, in one line; where it needs all, in its heading.
            string caution = string.Join(' ', section.Blocks.SelectMany(b => b is TogetherBlock together ? together.Blocks : [b])
                .SelectMany(b => b switch { CautionBlock box => box.Lines, ParagraphBlock { Text: var line } when line.PlainText.StartsWith("Caution:", StringComparison.Ordinal) => [line], SceneBlock drawing when Words(drawing.Scene).Contains("Caution:", StringComparison.Ordinal) => All(drawing.Scene.Items).OfType<TextItem>().Select(t => t.Text), _ => Enumerable.Empty<Phrase>() }).Select(l => l.PlainText));
            Area? most = OneLift.MostArea(plan.Set, sheets.Material, plan.Source.Shop.Lift);
            Area largest = sheets.Outcome.Layout.Sheets.Select(l => sheets.Instance.Stock.First(s => s.Id == l.StockId)).Select(s => s.Along * s.Across).Max();
            Assert.Equal(most is null, caution.Contains("not on record", StringComparison.Ordinal));
            Assert.Equal(most is { } one && largest > one, caution.Contains("That may be more than", StringComparison.Ordinal));
        }
    }

    /// <summary>A metric sheet in a piece in inches is asked for as it is sold, and the other way round.</summary>
    [Theory]
    [InlineData("in", "1525 mm x 1525 mm", "1525 x 1525 mm")]
    [InlineData("in", "96 in x 48 in", "96 x 48 in")]
    [InlineData("mm", "1525 mm x 1525 mm", "1525 x 1525 mm")]
    [InlineData("mm", "2440 mm x 1220 mm", "2440 x 1220 mm")]
    [InlineData("mm", "97 1/4 in x 49 1/4 in", "97 1/4 x 49 1/4 in")]
    public void Make_Stock_IsSaidAsItWasWritten(string unit, string size, string words)
    {
        (PieceSource? source, _) = PieceSource.Read(
            $"setout: 1\nname: box\nunit: {unit}\nmaterials:\n  ply: {{panel: birch plywood, label: 12 mm}}\nparts:\n  - {{part: lid, of: ply, length: 300 mm, width: 200 mm}}\n", null,
            $"setout-shop: 1\nunit: {unit}\nstock:\n  - {{panel: birch plywood, label: 12 mm, size: {size}, price: 9}}\n");
        Assert.Equal(words, Assert.Single(Assert.Single(Sample.Make(source!).Sheets).Stock).Words);
    }
}
