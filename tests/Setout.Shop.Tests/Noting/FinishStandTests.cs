using Setout.Core.Fit.Mending;
using Setout.Core.SettingOut;
using Setout.Shop.Noting;
using Setout.Shop.Tests.Plans;
using Setout.Shop.Texts;
using Setout.Testing;

namespace Setout.Shop.Tests.Noting;

/// <summary>How the stage of finishing stands: what is due, what is held until it is cut or built, what is upset.</summary>
public class FinishStandTests
{
    private static AtTheBench Bench() => AtTheBench.OfText(File.ReadAllText(Repository.PathOf("tests/Setout.Shop.Tests/SettingOut/Pieces/finishes.yaml")));

    private static StageStand Stand(SetPiece set) => BenchStand.Of(set, [])[WorkStage.Finish];

    private static WorkBatch Batch(SetPiece set, string name) => Stand(set).Batches.Single(b => b.Name == name);

    [Fact]
    public void Batches_AreFinishesByTime_AndAllIsHeldAtFirst()
    {
        SetPiece set = Bench().Set;
        Assert.Equal(["wax, before it goes together", "wax, once it stands", "paint, before it goes together", "paint, once it stands", "primer, once it stands"], Stand(set).Batches.Select(b => b.Name));
        Assert.All(Stand(set).Batches, b => Assert.Equal((0, 0, b.All), (b.Settled, b.Due, b.Held)));
    }

    [Fact]
    public void Part_OfADrawer_IsDueOnceCut_AndOfTheCaseOnceAssembled_AndAFrontOnceFitted()
    {
        AtTheBench bench = Bench().Mark(Progress.Cut, "A1.side C.side A1.front");
        Assert.Equal(["A1.side"], Batch(bench.Set, "wax, before it goes together").Keys);
        Assert.Empty(Batch(bench.Set, "wax, once it stands").Keys);
        bench.Mark(Progress.Assembled, "C.side A1.front");
        Assert.Equal(["C.side"], Batch(bench.Set, "wax, once it stands").Keys);
        bench.Mark(Progress.Fitted, "A1.front").Mark(Progress.Finished, "C.side");
        Assert.Equal(["A1.front"], Batch(bench.Set, "wax, once it stands").Keys);
        Assert.Equal(2, Batch(bench.Set, "wax, once it stands").Settled);
    }

    /// <summary>Whoever marks by command is told what his log does not know yet; the mark stands.</summary>
    [Fact]
    public void Mark_OfWhatIsNotReady_IsToldForEachPart()
    {
        AtTheBench bench = Bench().Mark(Progress.Cut, "A1.side").Mark(Progress.Cut, "A1.front").Mark(Progress.Cut, "A1.end#1");
        string[] Told(params string[] words)
        {
            MarkEntry entry = NotedMark.Of(bench.Set, new(Progress.Finished, [.. words]), "e9", "2026-05-04T09:40:00Z").Entry!;
            return [.. NotedMark.NotReady(bench.Set, entry).Select(f => $"{f.Code} {f.Key}: {f.Words.Split(", and ")[^1]}")];
        }
        Assert.Empty(Told("A1.side", "A1.end#1"));
        Assert.Equal(["mark.not-ready A1.end: by the log it is not cut yet."], Told("A1.end"));
        Assert.Equal(["mark.not-ready A1.front: by the log it is not fitted yet."], Told("A1.front"));
        Assert.Empty(NotedMark.NotReady(bench.Set, new("e9", "2026-05-04T09:40:00Z", Progress.Cut, ["A1.end"], System.Collections.Immutable.ImmutableDictionary<Core.Workings.QuantityKey, Core.Measures.ExactLength>.Empty)));
    }

    [Fact]
    public void Part_CutAnew_IsDueAgain()
    {
        AtTheBench bench = Bench().Mark(Progress.Cut, "A1.side").Mark(Progress.Finished, "A1.side");
        Assert.Empty(Batch(bench.Set, "wax, before it goes together").Keys);
        bench.Mark(Progress.Cut, "A1.side#1", again: true);
        Assert.Equal(["A1.side#1"], Batch(bench.Set, "wax, before it goes together").Keys);
    }

    [Fact]
    public void Upset_ThatIsFinished_IsToldHereToo()
    {
        AtTheBench bench = Bench().Mark(Progress.Cut, "A1.end").Record("A1.opening", "530 mm");
        Upset[] upset = [.. bench.Advice.Select(a => a.Upset)];
        Assert.Contains(upset, u => u.Frozen.Contains("A1.end"));
        Assert.Empty(BenchStand.Of(bench.Set, [.. upset])[WorkStage.Finish].Upset);
        Assert.NotEmpty(BenchStand.Of(bench.Mark(Progress.Finished, "A1.end").Set, [.. upset])[WorkStage.Finish].Upset);
    }

    [Fact]
    public void Piece_WithoutAFinish_HasNothingToFinish() => Assert.Empty(Stand(new AtTheBench("jar-cabinet.yaml").Set).Batches);
}
