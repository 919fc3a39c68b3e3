using System.Collections.Immutable;
using Setout.Core.Fit;
using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Shop.Plans;
using Setout.Shop.Tests.Plans;

namespace Setout.Shop.Tests.Fit;

/// <summary>What must hold of every report, whatever the piece.</summary>
public class FitReportTests
{
    private static (SetPiece Set, Accuracy Accuracy, FitReport Report) Of(string name)
    {
        PieceSource source = Sample.Source(name);
        SetPiece set = source.SetOut();
        return (set, source.Shop.Accuracy, FitCheck.Of(set, source.Shop.Accuracy));
    }

    [Theory, MemberData(nameof(Sample.Data), MemberType = typeof(Sample))]
    public void Report_Chances_LieFromNothingToOneAndAWholeIsNoLikelierThanItsPart(string name)
    {
        FitReport report = Of(name).Report;
        IEnumerable<Chance> all = report.Gaps.SelectMany(g => new[] { g.Chance, g.ChanceMeasured })
            .Concat(report.Groups.Append(report.Whole).SelectMany(g => new[] { g.Chance, g.ChanceMeasured })).Concat(report.Measure.Select(m => m.ChanceThen));
        Assert.All(all, c => Assert.True(c.Share.Value is >= 0 and <= 1 && c.Share.Error is >= 0 and < 0.02, $"{c}"));
        foreach (GroupFit group in report.Groups)
        {
            Assert.False(report.Whole.Chance.IsSurelyAbove(group.Chance), group.Key);
            Assert.False(report.Whole.ChanceMeasured.IsSurelyAbove(group.ChanceMeasured), group.Key);
            foreach (GapFit gap in report.Gaps.Where(g => g.Gap.Group == group.Key))
            {
                Assert.False(group.Chance.IsSurelyAbove(gap.Chance), gap.Gap.Name);
                Assert.False(group.ChanceMeasured.IsSurelyAbove(gap.ChanceMeasured), gap.Gap.Name);
            }
        }
        // What was chosen to be measured is chosen because it helps, and the last line is the whole.
        Assert.All(report.Measure.Where(m => m.Kind != MeasureKind.Awaited), m => Assert.True(m.MoreFit.Value > 0, m.Name));
        if (report.Measure.Length > 0) Assert.Equal(report.Whole.ChanceMeasured, report.Measure[^1].ChanceThen);
        // How many come right on the average is the sum of the chances of each: from the whole down, and from one reading to the next.
        Assert.Equal(report.Gaps.Sum(g => g.Chance.Share.Value), report.Whole.Right.Value, 1e-9);
        Assert.Equal(report.Gaps.Sum(g => g.ChanceMeasured.Share.Value), report.Whole.RightMeasured.Value, 1e-9);
        Assert.All(report.Groups, group => Assert.Equal(report.Gaps.Where(g => g.Gap.Group == group.Key).Sum(g => g.Chance.Share.Value), group.Right.Value, 1e-9));
        double right = report.Whole.Right.Value;
        foreach (MeasureFirst reading in report.Measure) Assert.Equal(right += reading.MoreFit.Value, reading.RightThen.Value, 1e-9);
        Assert.Equal(right, report.Whole.RightMeasured.Value, 1e-9);
        Assert.All(report.Allowances, a => Assert.True(a.FitBest.Value >= a.FitKept.Value && a.Best.Sign >= 0 && a.FitBest.Value <= a.Gaps, a.Name));
    }

    /// <summary>What is told after a reading agrees with the report.</summary>
    [Theory, MemberData(nameof(Sample.Data), MemberType = typeof(Sample))]
    public void Now_IsTheReportAsItStands(string name)
    {
        (SetPiece set, Accuracy accuracy, FitReport report) = Of(name);
        (GroupFit whole, ImmutableArray<GroupFit> groups) = FitCheck.Now(set, accuracy);
        Assert.Equal((report.Whole.Chance, report.Whole.Right.Value), (whole.Chance, whole.Right.Value));
        Assert.Equal(report.Groups.Select(g => (g.Key, g.Gaps, g.Chance, g.Right.Value)), groups.Select(g => (g.Key, g.Gaps, g.Chance, g.Right.Value)));
    }

    [Theory]
    [InlineData(37, 27.4, "about 27 of 37")]
    [InlineData(37, 36.6, "nearly all 37")]
    [InlineData(37, 36.995, "all 37")]
    [InlineData(7, 0.3, "hardly any of 7")]
    [InlineData(1, 0.4, "40 %")]
    public void Right_InWords_NeverSaysMoreThanThereIs(int gaps, double right, string words) =>
        Assert.Equal(words, FitLines.Right(new(right, 0), new("", gaps, new(new(0.4, 0), ChanceMethod.Convolution), new(new(0.4, 0), ChanceMethod.Convolution), new(right, 0), new(right, 0))));

    [Theory, MemberData(nameof(Sample.Data), MemberType = typeof(Sample))]
    public void Report_EveryCause_HasWordsAndAnIdOfItsOwn(string name)
    {
        FitReport report = Of(name).Report;
        var words = new Dictionary<string, string>();
        foreach (Cause cause in report.Gaps.SelectMany(g => g.Now.Effects.Concat(g.Measured.Effects)).Select(e => e.Cause))
        {
            Assert.False(string.IsNullOrWhiteSpace(cause.Words), cause.Id);
            Assert.True(cause.Range.Sign > 0, cause.Id);
            // A part goes by its name; keys are for who types them.
            Assert.DoesNotMatch(@"\.[a-z]", cause.Words);
            words[cause.Id] = cause.Words;
        }
        Assert.True(name is not ("luthiers-bench" or "plan-chest" or "jar-cabinet") || words.Count > 20, $"{words.Count} causes.");
    }

    /// <summary>Where a gap comes from in wood: from what is cut on, the figure is known and what stands behind it does not matter.</summary>
    [Theory, MemberData(nameof(Sample.Data), MemberType = typeof(Sample))]
    public void Gap_WayToWhatIsCut_MeetsNoLeastAndNoGreatest(string name)
    {
        SetPiece set = Of(name).Set;
        int cut = 0;
        foreach (Gap gap in set.Gaps)
        {
            var seen = new HashSet<QuantityKey>();
            var pending = new Stack<QuantityKey>([gap.Key]);
            while (pending.TryPop(out QuantityKey key))
            {
                if (!seen.Add(key)) continue;
                Working working = set.Worked.Values[key].Quantity.Working;
                Assert.False(working is Extreme, $"{gap.Key} comes through {key}.");
                if (working is ToCut) cut++;
                else foreach (QuantityKey from in working.WorkedFrom) pending.Push(from);
            }
        }
        Assert.True(set.Gaps.Length == 0 || cut > set.Gaps.Length, $"{cut} cuts under {set.Gaps.Length} gaps.");
    }

    [Theory, MemberData(nameof(Sample.Data), MemberType = typeof(Sample))]
    public void Report_OfAMoreAccurateShop_HasNoWorseWorstCase(string name)
    {
        (SetPiece set, Accuracy usual, FitReport report) = Of(name);
        // Each figure by itself, and all at once.
        Func<Accuracy, Accuracy>[] better =
        [
            a => a with { Setting = Half(a.Setting) }, a => a with { Repeat = Half(a.Repeat) }, a => a with { Sheet = Half(a.Sheet) }, a => a with { Spot = Half(a.Spot) },
            a => a with { Section = Half(a.Section) }, a => a with { Placing = Half(a.Placing) }, a => a with { Bought = Half(a.Bought) },
            a => a with { Instruments = a.Instruments.ToImmutableDictionary(i => i.Key, i => Half(i.Value)) },
        ];
        foreach (Accuracy accuracy in better.Select(b => b(usual)).Append(better.Aggregate(usual, (a, b) => b(a))))
        {
            var spreads = new Spreads(set, accuracy);
            foreach (GapFit gap in report.Gaps)
            {
                Spread then = spreads.Of(gap.Gap.Key)!;
                Assert.True(then.WorstLow >= gap.Now.WorstLow && then.WorstHigh <= gap.Now.WorstHigh && then.Value == gap.Now.Value, gap.Gap.Name);
            }
        }
    }

    [Fact]
    public void Report_Cancelled_Throws()
    {
        (SetPiece set, Accuracy accuracy, _) = Of("plan-chest");
        using var source = new CancellationTokenSource();
        source.Cancel();
        Assert.Throws<OperationCanceledException>(() => FitCheck.Of(set, accuracy, cancel: source.Token));
    }

    private static Length Half(Length length) => (length.ToExact() / 2).ToNearestTick();
}
