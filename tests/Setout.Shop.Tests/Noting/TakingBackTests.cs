using System.Collections.Immutable;
using Setout.Core.Workings;
using Setout.Shop.Noting;
using Setout.Shop.Plans;
using Setout.Shop.Tests.Plans;
using Setout.Shop.Texts;

namespace Setout.Shop.Tests.Noting;

/// <summary>Facts taken back and put back, and what a step of the text would upset of them.</summary>
public class TakingBackTests
{
    private const string At = "2026-05-05T09:40:00Z";

    private static PieceSource With(PieceSource source, params LogEntry[] entries) => source with { Log = new(source.Log.Entries.AddRange(entries)) };

    private static PieceSource Back(PieceSource source, string entry)
    {
        (ImmutableArray<NotedVoid> made, Finding? fault) = NotedVoid.BackOf(source, entry, "this log", i => $"b{source.Log.Entries.Length}-{i}", At);
        Assert.Null(fault);
        return With(source, [.. made.Select(m => m.Entry!)]);
    }

    [Fact]
    public void BackOf_AReadingTakenBack_CountsAgainAndNothingIsGone()
    {
        PieceSource read = new AtTheBench("luthiers-bench.yaml").Record("L.width", "19 1/2").Source;
        PieceSource voided = With(read, new VoidEntry("v", At, "e0")), again = Back(voided, "e0");
        Assert.Equal(read.SetOut().Worked[new("L.width")], again.SetOut().Worked[new("L.width")]);
        Assert.NotEqual(read.SetOut().Worked[new("L.width")], voided.SetOut().Worked[new("L.width")]);
        Assert.Equal(3, again.Log.Entries.Length);
        Assert.StartsWith("put back: read bay L, clear width between slide panels: 19 1/2", FactSentences.Of(again.Log.Entries[^1], again.Log, again.SetOut()), StringComparison.Ordinal);
        // And so on, as often as one likes.
        PieceSource anew = With(again, new VoidEntry("w", At, "e0"));
        Assert.Empty(anew.Log.Standing);
        Assert.Single(Back(anew, "e0").Log.Standing);
    }

    [Fact]
    public void BackOf_WhatTwoLogsTookBack_TakesBothVoidingsBack()
    {
        PieceSource source = new AtTheBench("luthiers-bench.yaml").Record("L.width", "19 1/2").Source;
        PieceSource again = Back(With(source, new VoidEntry("v", At, "e0"), new VoidEntry("w", At, "e0")), "e0");
        Assert.Equal("e0", Assert.Single(again.Log.Standing).Id);
        Assert.DoesNotContain(again.Log.Voidings, v => v.Entry == "e0");
    }

    [Fact]
    public void BackOf_WhatCountsOrIsNotThere_IsRefused()
    {
        PieceSource source = new AtTheBench("luthiers-bench.yaml").Record("L.width", "19 1/2").Source;
        Assert.Contains("counts already", NotedVoid.BackOf(source, "e0", "this log", i => $"b{i}", At).Fault!.Words, StringComparison.Ordinal);
        // A page names it by what it says; no id is typed there.
        Assert.Equal("'read bay L, clear width between slide panels: 19 1/2 in' counts already.", NotedVoid.BackOf(source with { Piece = source.Piece with { Hand = Hand.Pages } }, "e0", "this log", i => $"b{i}", At).Fault!.Words);
        Assert.Contains("no entry 'x'", NotedVoid.BackOf(source, "x", "this log", i => $"b{i}", At).Fault!.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void StepUpsets_OfATextThatMovesWhatIsCut_TellThem_AndOfOneThatDoesNotNothing()
    {
        PieceSource source = new AtTheBench("luthiers-bench.yaml").Mark(Progress.Cut, "L1.side L1.end").Source;
        ImmutableArray<string> Told(string from, string to) => StepUpsets.Of(source.SetOut(), Other(source, from, to).SetOut(), source.Log);
        Assert.Contains(Told("        width: 21\n        slide panels: carcase\n        drawers:\n          like: bench\n          down:                        # from the top", "        width: 22\n        slide panels: carcase\n        drawers:\n          like: bench\n          down:                        # from the top"),
            w => w.Contains("drawer L1", StringComparison.Ordinal));
        Assert.Empty(Told("left: 1, right: 1", "left: 2, right: 2"));
        // Nothing is cut: any step may be taken back.
        PieceSource bare = new AtTheBench("luthiers-bench.yaml").Source;
        Assert.Empty(StepUpsets.Of(bare.SetOut(), Other(bare, "width: 78", "width: 80").SetOut(), bare.Log));
    }

    [Fact]
    public void StepUpsets_OfATextWithoutAPartThatIsCut_SaySo()
    {
        PieceSource source = new AtTheBench("luthiers-bench.yaml").Mark(Progress.Cut, "R3.front").Record("R3.opening", "19 9/16").Source;
        PieceSource without = Other(source, "            - {drawer: R2, front: 8}\n            - {drawer: R3, front: rest}\n", "            - {drawer: R2, front: rest}\n");
        ImmutableArray<string> told = StepUpsets.Of(source.SetOut(), without.SetOut(), source.Log);
        Assert.Contains(told, w => w.Contains("would be no part of the piece", StringComparison.Ordinal));
        Assert.Single(told, w => w.Contains("is read, and would be no size of the piece", StringComparison.Ordinal));
        Assert.Equal(told.Distinct(), told);
    }

    private static PieceSource Other(PieceSource source, string from, string to)
    {
        string text = File.ReadAllText(Setout.Testing.Repository.PathOf("samples/luthiers-bench.yaml"));
        Assert.Contains(from, text, StringComparison.Ordinal);
        return source with { Piece = PieceText.Read(text.Replace(from, to, StringComparison.Ordinal)).Value! };
    }
}
