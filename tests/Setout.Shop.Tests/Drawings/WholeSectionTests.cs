using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Drawing.Elevations;
using Setout.Drawing.Scenes;
using Setout.Shop.Drawings;
using Setout.Shop.Plans;
using Setout.Shop.Tests.SettingOut;
using Setout.Testing;

namespace Setout.Shop.Tests.Drawings;

/// <summary>A section across a whole piece.</summary>
public class WholeSectionTests
{
    private static readonly PaperBox s_paper = new(200, 116);

    public static TheoryData<string> Pieces => [.. Repository.FilesIn("tests/Setout.Shop.Tests/SettingOut/Pieces", "*.yaml").Concat(Repository.FilesIn("samples", "*.yaml")).Where(f => !f.EndsWith("shop.yaml", StringComparison.Ordinal))];

    private static SetPiece Set(string file) => PieceSource.Read(File.ReadAllText(Repository.PathOf(file)), null, Sample.Text("shop.yaml")).Source!.SetOut();

    private static IEnumerable<GroupItem> Groups(IEnumerable<SceneItem> items) => items.OfType<GroupItem>().SelectMany(g => Groups(g.Items).Prepend(g));

    /// <summary>Through each opening of each piece: what is drawn is what a plane there cuts, by the placements alone.</summary>
    [Theory, MemberData(nameof(Pieces))]
    public void Draw_ThroughEachOpening_ShowsJustWhatThePlaneCuts(string file)
    {
        SetPiece set = Set(file);
        if (set.IsStopped || !WholeSection.Has(set)) return;
        foreach (SetOpening opening in set.Openings.GroupBy(o => o.Key).Select(g => g.OrderBy(o => o.Content == "divided").First()))
        {
            ExactLength plane = opening.Space.X + (opening.Space.SizeX / 2);
            string[] cut = [.. set.Parts.Where(p => p.Placements.Any(a => a.X < plane && plane < a.X + a.SizeX)).Select(p => p.Key).Order(StringComparer.Ordinal)];
            string[] drawn = [.. Groups(WholeSection.Draw(set, opening.Key, s_paper).Items).Select(g => g.Key.Split('#')[0]).Where(k => set.Parts.Any(p => p.Key == k)).Distinct().Order(StringComparer.Ordinal)];
            Assert.Equal(cut, drawn);
        }
    }

    [Theory]
    [InlineData("L3.side", "bay L")]
    [InlineData("L2", "bay L")]
    [InlineData("K", "bay K")]
    [InlineData("K.width", "bay K")]
    [InlineData("nowhere", "bay K")]
    [InlineData(null, "bay K")]
    public void Draw_WhatIsChosen_IsWhereItCuts(string? chosen, string where) =>
        Assert.Contains($"through the middle of {where}", WholeSection.Draw(Set("samples/luthiers-bench.yaml"), chosen, s_paper).Description, StringComparison.Ordinal);

    /// <summary>A size on it spans what it says.</summary>
    [Fact]
    public void Draw_ACase_HasItsHeightAndDepth()
    {
        Scene scene = WholeSection.Draw(Set("samples/jar-cabinet.yaml"), "B", s_paper);
        Assert.Contains("C.height", Groups(scene.Items).Select(g => g.Key));
        Assert.Contains("C.depth", Groups(scene.Items).Select(g => g.Key));
    }
}
