using Setout.Core.Fit.Mending;
using Setout.Core.SettingOut;
using Setout.Shop.Noting;
using Setout.Shop.Tests.Plans;
using Setout.Shop.Texts;

namespace Setout.Shop.Tests.Fit;

/// <summary>
/// Remedies that undo each other. Two drawers of the left bay are cut, and its rails read 20 7/8 where 21 was planned: each drawer can be trimmed by 1/8, or the rails cut anew, and a drawer trimmed to the short rails is loose between long ones.
/// </summary>
public class InsteadOfTests
{
    private const string Rails = "Cut anew: bay L rail (4), 21 in x 3 1/2 in";

    private static AtTheBench Bench() => new AtTheBench("luthiers-bench.yaml").Mark(Progress.Cut, "studs carcase L1 L2").Record("L.rail.length.as-cut", "20 7/8");

    private static MendingAdvice Of(IEnumerable<MendingAdvice> advice, string key) => advice.Single(a => a.Upset.Key.Text == key);

    [Fact]
    public void Trim_WhereTheRailsMayBeCutAnew_StandsInsteadOfThat_AndTheRailsInsteadOfBothTrims()
    {
        var advice = Bench().Advice;
        foreach ((string own, string other) in new[] { ("L1", "L2"), ("L2", "L1") })
        {
            Remedy[] offered = [.. Of(advice, $"{own}.play").Remedies];
            Assert.Equal([RemedyKind.Trim, RemedyKind.Recut], offered.Select(r => r.Kind));
            Assert.Equal(Rails, offered[1].Lead);
            Assert.Equal([$"“{Rails}”, offered for drawer {other}, slide play: one moves what the other is fitted to"], offered[0].Instead);
            Assert.Equal([$"all that is offered for drawer {other}, slide play, which it puts right too"], offered[1].Instead);
            Assert.StartsWith("instead of ", offered[0].InsteadWords, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void TwoTrims_GoTogether_AndSayNothing() =>
        Assert.DoesNotContain(Bench().Advice.SelectMany(a => a.Remedies).SelectMany(r => r.Instead), i => i.Contains("Trim", StringComparison.Ordinal));

    [Fact]
    public void Trim_CarriedOut_EndsTheOfferOfTheRails_WithWhy()
    {
        AtTheBench bench = Bench();
        SetPiece before = bench.Set;
        (var entries, var fault) = NotedMending.Of(bench.Source, Of(bench.Advice, "L1.play").Remedies[0], [], i => $"m{i}", "2026-05-04T10:00:00Z");
        Assert.Empty(fault);
        SetPiece after = (bench.Source with { Log = new(bench.Source.Log.Entries.AddRange(entries)) }).SetOut();
        string[] ended = [.. OffersGone.Of(before, after, bench.Source.Shop)];
        Assert.Contains("no longer upset, and nothing is offered for it any more: drawer L1, slide play: it comes to 1/32 in now", ended);
        Assert.Contains($"no longer offered for drawer L2, slide play: {Rails}; it would undo what was done or read now, or something else would be put out by it", ended);
        Assert.DoesNotContain(Of(Remedies.For(after, bench.Source.Shop.Shims, Setout.Shop.Plans.Blanks.Of(after, bench.Source.Shop)), "L2.play").Remedies, r => r.Parts.Contains("L.rail"));
        Assert.DoesNotContain(ended, e => e.Contains("Trim", StringComparison.Ordinal));
    }

    [Fact]
    public void Rails_CutAnew_EndBothUpsets()
    {
        AtTheBench bench = Bench();
        SetPiece before = bench.Set;
        (var entries, _) = NotedMending.Of(bench.Source, Of(bench.Advice, "L2.play").Remedies[1], ["21"], i => $"m{i}", "2026-05-04T10:00:00Z");
        SetPiece after = (bench.Source with { Log = new(bench.Source.Log.Entries.AddRange(entries)) }).SetOut();
        Assert.Equal(2, OffersGone.Of(before, after, bench.Source.Shop).Count(e => e.StartsWith("no longer upset", StringComparison.Ordinal)));
        Assert.Empty(OffersGone.Of(after, after, bench.Source.Shop));
    }
}
