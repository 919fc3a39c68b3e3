using Setout.Core.SettingOut;
using Setout.Shop.Noting;
using Setout.Shop.Plans;
using Setout.Shop.Tests.Plans;
using Setout.Shop.Texts;
using Setout.Testing;

namespace Setout.Shop.Tests.Noting;

/// <summary>What is made of the words of a mark, of a voiding, and of a remedy that was carried out.</summary>
public class NotedMarkTests
{
    private const string At = "2026-05-05T09:40:00Z";

    private static Noted<MarkEntry> Mark(SetPiece set, Progress progress, string keys, string? sheet = null, bool again = false) =>
        NotedMark.Of(set, new(progress, [.. keys.Split(' ')]) { Sheet = sheet, IsAgain = again }, "m1", At);

    [Theory]
    [InlineData(Progress.Cut, "L3.side", "L3.side")]
    [InlineData(Progress.Cut, "L3.side#2", "L3.side#2")]
    [InlineData(Progress.Cut, "L3 L3.side", "L3.side L3.end L3.bottom")]
    [InlineData(Progress.Bought, "boxes", "boxes")]
    [InlineData(Progress.Bought, "L3", "L3")]
    public void Words_ThatNameSomething_AreTheEntry(Progress progress, string words, string keys) =>
        Assert.Equal(keys, string.Join(' ', Mark(new AtTheBench("luthiers-bench.yaml").Set, progress, words).Entry!.Keys));

    [Theory]
    [InlineData("L3.side#3", "note.key")]
    [InlineData("L3.sid", "note.key")]
    [InlineData("K9", "note.key")]
    public void Words_ThatNameNothing_AreRefused(string words, string code) =>
        Assert.Equal(code, Mark(new AtTheBench("luthiers-bench.yaml").Set, Progress.Cut, words).Fault!.Code);

    [Fact]
    public void Part_CutAlready_IsAskedAbout_AndTakenAsCutAnew()
    {
        SetPiece set = new AtTheBench("luthiers-bench.yaml").Mark(Progress.Cut, "L3.side").Set;
        Assert.Equal(Noted<MarkEntry>.Already, Mark(set, Progress.Cut, "L3.side").Fault!.Code);
        Assert.NotNull(Mark(set, Progress.Cut, "L3.side", again: true).Entry);
    }

    [Fact]
    public void Sheet_ThatWasNeverRead_IsRefused()
    {
        AtTheBench bench = new AtTheBench("luthiers-bench.yaml").Record("boxes.sheet-1.thickness", "0.47");
        Assert.Equal("note.sheet", Mark(bench.Set, Progress.Cut, "L3.side", "2").Fault!.Code);
        Assert.Equal("boxes.sheet-1", Mark(bench.Set, Progress.Cut, "L3.side", "1").Entry!.From);
    }

    [Fact]
    public void Void_OfWhatIsThere_TakesItBackOnce()
    {
        AtTheBench bench = new AtTheBench("luthiers-bench.yaml").Record("L.width", "19 1/2");
        Assert.Equal(bench.LastId, NotedVoid.Of(bench.Source, bench.LastId, "the log", "v1", At).Entry!.Entry);
        Assert.NotNull(NotedVoid.Of(bench.Source, "e77", "the log", "v1", At).Fault);
        string read = bench.LastId;
        Assert.NotNull(NotedVoid.Of(bench.Void(read).Source, read, "the log", "v1", At).Fault);
    }

    /// <summary>Whatever is offered, written down as the page does it, puts the gap inside its limits: looked at in the piece set out anew.</summary>
    [Fact]
    public void EveryRemedy_WrittenDown_MendsWhatItIsFor()
    {
        AtTheBench bench = new AtTheBench("luthiers-bench.yaml").Mark(Progress.Cut, "studs carcase").Record("L.width", "19 9/16").Mark(Progress.Cut, "L1").Mark(Progress.Assembled, "L1").Record("L1.box.as-built", "18 1/2").Record("L.width", "19 15/32");
        int tried = 0;
        foreach ((Core.Fit.Mending.Upset upset, var remedies, _) in bench.Advice)
        {
            foreach (Core.Fit.Mending.Remedy remedy in remedies.Where(r => r.Acts.Length > 0))
            {
                string[] measured = [.. remedy.Acts.OfType<Core.Fit.Mending.ReadAnew>().Select(a => Core.Measures.Text.NamedLength.Exactly(a.Value))];
                // A figure that nobody measured is no reading.
                if (measured.Length > 0) Assert.Equal(measured.Select((_, i) => NotedMending.Field(i)), NotedMending.Of(bench.Source, remedy, ["  ", .. measured.Skip(1).Select(_ => "thick")], i => $"r{i}", At).Faults.Select(f => f.Field));
                (var entries, var faults) = NotedMending.Of(bench.Source, remedy, [.. measured], i => $"r{i}", At);
                Assert.True(faults.IsEmpty, string.Join(' ', faults.Select(f => f.Words)));
                Assert.All(entries, e => Assert.Null(LogText.Fault(e)));
                SetPiece after = (bench.Source with { Log = new(bench.Source.Log.Entries.AddRange(entries)) }).SetOut();
                Assert.DoesNotContain(Core.Fit.Mending.Remedies.UpsetsOf(after), u => u.Key == upset.Key);
                tried++;
            }
        }
        Assert.True(tried > 0);
    }

    [Fact]
    public void Stand_OfAPiece_CountsEachMemberOnce()
    {
        AtTheBench bench = new AtTheBench("luthiers-bench.yaml");
        int all = bench.Set.Parts.Sum(p => p.Count);
        foreach (AtTheBench at in new[] { bench, bench.Mark(Progress.Cut, "studs carcase"), bench.Record("L.width", "19 9/16"), bench.Mark(Progress.Cut, "L1.side#1"), bench.Mark(Progress.Assembled, "F.post") })
        {
            SetPiece set = at.Set;
            var stand = BenchStand.Of(set, []);
            StageStand cut = stand[WorkStage.BreakDown];
            Assert.Equal(all, cut.Batches.Sum(b => b.All));
            Assert.Equal(all, cut.Settled + cut.Due + cut.Held);
            Assert.Equal(set.Parts.Sum(set.Facts.CutOf), cut.Settled);
            Assert.Equal(set.Parts.Where(set.IsHeld).Sum(p => p.Count), cut.Held);
            Assert.All(cut.Batches.Where(b => b.Held > 0), b => Assert.NotNull(b.Until));
            // What is due can be marked as it stands, and then nothing more is.
            Assert.All(cut.Batches.Where(b => b.Due > 0), b => Assert.NotNull(Mark(set, Progress.Cut, string.Join(' ', b.Keys)).Entry));
        }
    }
}
