using Setout.Core.Fit.Mending;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Shop.Noting;
using Setout.Shop.Plans;
using Setout.Shop.Tests.Plans;
using Setout.Shop.Texts;

namespace Setout.Shop.Tests.Noting;

/// <summary>What is let stand, and when it is told again.</summary>
public class LettingStandTests
{
    private const string At = "2026-05-05T09:40:00Z";

    // The box of L1 is cut for 19 9/16; then the opening is read narrower.
    private static AtTheBench Upset => new AtTheBench("luthiers-bench.yaml").Record("L.width", "19 9/16").Mark(Progress.Cut, "L1").Record("L.width", "19 15/32");

    private static PieceSource With(PieceSource source, LogEntry entry) => source with { Log = new(source.Log.Entries.Add(entry)) };

    private static Noted<AllowEntry> Allow(PieceSource source, string code, string key, string because = "it may") =>
        NotedAllow.Of(source.SetOut(), source.SetOut().Findings, code, key, because, "a1", At);

    [Fact]
    public void Finding_LetStand_IsANoteWithItsReason_UntilTheEntryIsVoided()
    {
        PieceSource source = Upset.Source;
        Finding warned = source.SetOut().Findings.First(f => f.Severity == Severity.Warn);
        PieceSource let = With(source, Allow(source, warned.Code, warned.Key, "seen and meant").Entry!);
        Finding now = let.SetOut().Findings.First(f => f.Code == warned.Code && f.Key == warned.Key);
        Assert.Equal((Severity.Note, "seen and meant", warned.Words), (now.Severity, now.LetStand, now.Words));
        Assert.Contains(With(let, new VoidEntry("v", At, "a1")).SetOut().Findings, f => f == warned);
    }

    [Fact]
    public void Finding_ThatSaysSomethingElse_IsToldAgainWithWhatItSaid()
    {
        PieceSource source = Upset.Source;
        Finding warned = source.SetOut().Findings.First(f => f.Severity == Severity.Warn);
        PieceSource let = With(source, new AllowEntry("a1", At, warned.Code, warned.Key, "seen") { Said = "something milder" });
        Finding now = let.SetOut().Findings.First(f => f.Code == warned.Code && f.Key == warned.Key);
        Assert.Equal(warned.Severity, now.Severity);
        Assert.Contains("something milder", now.Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void Upset_LetStand_StandsWhileItIsNoWorse()
    {
        AtTheBench bench = Upset;
        Core.Fit.Mending.Upset upset = Remedies.UpsetsOf(bench.Set).First(u => u.Kind == UpsetKind.GapOut);
        PieceSource let = With(bench.Source, Allow(bench.Source, "upset.gap", upset.Key.Text).Entry!);
        bool Stands(PieceSource source) => LettingStand.Of(Remedies.UpsetsOf(source.SetOut()), source.Log) is var (open, stand) && stand.Any(s => s.Upset.Key == upset.Key) && open.All(o => o.Key != upset.Key);
        Assert.True(Stands(let));
        PieceSource Read(PieceSource source, string id, int sixtyFourths) => With(source, new ReadingEntry(id, At, new("L.width"), [Core.Measures.ExactLength.FromInches(Core.Measures.Rational.Of((19 * 64) + sixtyFourths, 64))], "tape", ""));
        // Narrower still, then wider again.
        Assert.False(Stands(Read(let, "n", 28)));
        Assert.True(Stands(Read(Read(let, "n", 28), "w", 31)));
    }

    [Theory]
    [InlineData("no.such-code", "", "it may", "note.finding")]
    [InlineData("upset.gap", "L1.play", "it may", "note.finding")]
    [InlineData("material.not-read", "boxes", " ", "note.because")]
    public void What_CannotBeLetStand_SaysWhy(string code, string key, string because, string refused) =>
        Assert.Equal(refused, Allow(Sample.Source("luthiers-bench"), code, key, because).Fault!.Code);

    [Fact]
    public void Stop_IsNeverLetStand_AlsoNotByAnEntryOfAHand()
    {
        PieceSource source = Sample.Source(Sample.Text("luthiers-bench").Replace("width: 78", "width: 8", StringComparison.Ordinal), null);
        Finding stop = source.SetOut().Findings.First(f => f.Severity == Severity.Stop);
        Assert.Equal("note.stops", Allow(source, stop.Code, stop.Key).Fault!.Code);
        Assert.True(With(source, new AllowEntry("a1", At, stop.Code, stop.Key, "I dare")).SetOut().IsStopped);
    }
}
