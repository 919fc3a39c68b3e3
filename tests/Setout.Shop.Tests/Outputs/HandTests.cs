using System.Collections.Concurrent;
using System.Text.RegularExpressions;
using Setout.Core.Measures.Text;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Drawing.Documents;
using Setout.Shop.BenchSheets;
using Setout.Shop.Plans;
using Setout.Shop.Runs;
using Setout.Shop.Tests.Plans;
using Setout.Shop.Texts;

namespace Setout.Shop.Tests.Outputs;

/// <summary>Bench sheets, findings and steps made for commands and for pages: they say the same of the piece, and each tells its reader where to enter what is read.</summary>
public partial class HandTests
{
    private static readonly ConcurrentDictionary<string, Lazy<Plan>> s_pages = new(StringComparer.Ordinal);

    private static Plan ForPages(string sample) => s_pages.GetOrAdd(sample, n => new(() => Sample.Make(Sample.Source(n).For(Hand.Pages)))).Value;

    private static string[] Printed(Plan plan) =>
        [.. PageComposer.Compose(BenchSheetWriter.Compose(plan, "", Paper.Letter)).Pages.SelectMany(p => p.Pieces.OfType<TextPiece>().Select(t => t.Text.PlainText))];

    // An option stands alone or before its value; a dash between words is another thing.
    [GeneratedRegex(@"\bsetout\b|(^|\s)--[a-z]|\bFILE\b|the shop file|(as |\()saws: ")]
    private static partial Regex Command();

    [Theory, MemberData(nameof(Sample.Data), MemberType = typeof(Sample))]
    public void Sheets_MadeForPages_NameNoCommandAndSayWhereOnTheWorkbench(string sample)
    {
        string[] pages = Printed(ForPages(sample)), commands = Printed(Sample.Plan(sample));
        Assert.DoesNotContain(pages, Command().IsMatch);
        Assert.Contains(pages, t => t.Contains("“This run is cut”", StringComparison.Ordinal));
        // What is to be read, or what may fail to fit.
        Assert.Equal(Sample.Plan(sample).Set.Gaps.Length > 0 || Sample.Plan(sample).Findings.Any(f => f.Code == "material.not-read"), commands.Any(t => t.Contains("setout record FILE", StringComparison.Ordinal)));
        Assert.Contains(commands, t => t.Contains("setout mark FILE cut --run N", StringComparison.Ordinal));
        Assert.DoesNotContain(commands, t => t.Contains("on the workbench", StringComparison.Ordinal));
    }

    /// <summary>What is let stand is kept in the words of a finding, and holds whoever looks.</summary>
    [Theory, MemberData(nameof(Sample.Data), MemberType = typeof(Sample))]
    public void Plan_ForEitherHand_IsTheSameButForWhereThingsAreEntered(string sample)
    {
        Plan pages = ForPages(sample), commands = Sample.Plan(sample);
        Assert.Equal((commands.Source.Hash, SawnPlan.Of(commands).Id), (pages.Source.Hash, SawnPlan.Of(pages).Id));
        Assert.Equal(commands.Set.Parts.Select(p => (p.Key, commands.Set.ToCut(p.Length))), pages.Set.Parts.Select(p => (p.Key, pages.Set.ToCut(p.Length))));
        Assert.Equal(commands.Findings.Select(f => (f.Code, f.Key, f.Severity, f.Words)), pages.Findings.Select(f => (f.Code, f.Key, f.Severity, f.Words)));
        Assert.DoesNotContain(pages.Findings, f => Command().IsMatch(f.Remedy));
        Assert.All(commands.Findings.Where(f => f.Code == "material.not-read"), f => Assert.Contains("setout record FILE", f.Remedy, StringComparison.Ordinal));
        Assert.Equal(commands.Set.Steps.Length, pages.Set.Steps.Length);
        Assert.DoesNotContain(pages.Set.Steps, s => Command().IsMatch(s.Words));
    }

    [Fact]
    public void Sheets_OfSeveralPiecesForPages_NameNoCommandAndCallPiecesAsTheyAreKept()
    {
        PieceSource Of(Hand hand) => PiecesTogether.Of(new[] { "jar-cabinet", "luthiers-bench" }.Select(n => (n + ".yaml", Sample.Source(n).For(hand)))).Source!;
        Plan forPages = Sample.Make(Of(Hand.Pages));
        string[] pages = Printed(forPages), commands = Printed(Sample.Make(Of(Hand.Commands)));
        Assert.Contains("enter birch for Jar cabinet at “birch, thickness” and for Luthiers' bench at “carcase, thickness”; ", RunWords.Of(forPages).First[0], StringComparison.Ordinal);
        Assert.DoesNotContain(pages, t => Command().IsMatch(t) || t.Contains(".yaml", StringComparison.Ordinal));
        Assert.Contains(pages, t => t.Contains("“Break down together”", StringComparison.Ordinal));
        Assert.Contains(commands, t => t.Contains("setout record jar-cabinet.yaml", StringComparison.Ordinal));
        Assert.Contains(commands, t => t == "luthiers-bench.yaml");
    }

    [Theory]
    [InlineData(LengthUnit.Inch)]
    [InlineData(LengthUnit.Millimetre)]
    public void For_ASourceShownInEitherUnit_KeepsTheOther(LengthUnit unit)
    {
        PieceSource source = Sample.Source("jar-cabinet");
        Assert.Equal((unit, Hand.Pages), (source.ShownIn(unit).For(Hand.Pages).Piece.Shown, source.For(Hand.Pages).ShownIn(unit).Piece.Hand));
        Assert.Equal(Hand.Commands, source.For(Hand.Pages).For(Hand.Commands).Piece.Hand);
        PieceSource together = PiecesTogether.Of(new[] { "jar-cabinet", "luthiers-bench" }.Select(n => (n + ".yaml", Sample.Source(n)))).Source!.For(Hand.Pages).ShownIn(unit);
        Assert.All(together.Together!.Members, m => Assert.Equal((unit, Hand.Pages), (m.Source.Piece.Shown, m.Source.Piece.Hand)));
        Assert.Equal(Hand.Pages, together.SetOut().Piece.Hand);
    }

    /// <summary>Readings that do not agree, a reading that is far off, a box that does not go in: each remedy for its reader.</summary>
    [Theory]
    [InlineData("L.width", "19 46/64", "tape", "carcase, thickness")]
    [InlineData("carcase.thickness", "23/32, 3/4", "calliper", "carcase, thickness")]
    [InlineData("L1.box.as-built", "19 1/2", "tape", "Fit")]
    public void Remedies_OfReadings_NameTheirPlaceForPagesAndTheCommandElse(string key, string values, string with, string place)
    {
        var read = new ReadingEntry("r1", "2026-11-27T10:00:00Z", new(key), [.. values.Split(',').Select(v => LengthText.Parse(v.Trim(), LengthUnit.Inch).Value)], with, "");
        SetPiece Set(Hand hand) => (Sample.Source("luthiers-bench") with { Log = new([read]) }).For(hand).SetOut();
        Finding[] told = [.. Set(Hand.Pages).Findings.Where(f => f.Key == key.Split('.')[0])];
        Assert.NotEmpty(told);
        Assert.DoesNotContain(told, f => Command().IsMatch(f.Remedy));
        Assert.Contains(told, f => f.Remedy.Contains(Hands.Place(place), StringComparison.Ordinal));
        Assert.Contains(Set(Hand.Commands).Findings.Where(f => f.Key == key.Split('.')[0]), f => Command().IsMatch(f.Remedy));
    }
}
