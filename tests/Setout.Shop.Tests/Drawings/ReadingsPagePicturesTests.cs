using Setout.Core.Fit;
using Setout.Core.SettingOut;
using Setout.Drawing.Fits;
using Setout.Drawing.Scenes;
using Setout.Shop.Drawings;
using Setout.Shop.Tests.Plans;
using Setout.Testing;

namespace Setout.Shop.Tests.Drawings;

/// <summary>The gaps that the page on readings shows: three sorts of the sample bench, before the first reading and after the day's.</summary>
public class ReadingsPagePicturesTests
{
    private static readonly string[] s_shown = ["L1.play", "L1.bottom.play-along", "L.fronts-short"];

    [Theory]
    [InlineData("readings-gaps-before", false)]
    [InlineData("readings-gaps-after", true)]
    public void Of_TheBenchOfThePage_IsTheCommittedPicture(string name, bool isRead)
    {
        AtTheBench bench = isRead ? BenchDayTests.OpeningsRead() : new AtTheBench("luthiers-bench.yaml");
        SetPiece set = bench.Set;
        FitReport report = FitCheck.Of(set, bench.Source.Shop.Accuracy);
        AlikeGaps[] shown = [.. AlikeGaps.Of(report).Where(a => a.Gaps.Any(g => s_shown.Contains(g.Gap.Key.Text))).OrderBy(a => a.First.Gap.Key.Text, StringComparer.Ordinal)];
        Scene scene = Assert.Single(GapPictures.Of(set, [.. shown], new GapPaper(158, 400)));
        Snapshots.MatchFile(SvgWriter.Write(scene, SvgOptions.Standalone), $"docs/pictures/{name}.svg");
    }
}
