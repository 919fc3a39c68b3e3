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
            string[] drawn = [.. Groups(WholeSection.Draw(set, opening.Key, s_paper).Items).Where(g => !IsBeyond(g)).Select(g => g.Key.Split('#')[0]).Where(k => set.Parts.Any(p => p.Key == k)).Distinct().Order(StringComparer.Ordinal)];
            Assert.Equal(cut, drawn);
        }
    }

    private static bool IsBeyond(GroupItem group) => group.Title.EndsWith(", beyond", StringComparison.Ordinal);

    /// <summary>What is seen beyond lies on the far side of the plane, and nothing that can be seen there is left out: by points, against the placements alone.</summary>
    [Theory, MemberData(nameof(Pieces))]
    public void Draw_ThroughEachOpening_ShowsWhatIsSeenBeyond(string file)
    {
        const int Points = 12;
        SetPiece set = Set(file);
        if (set.IsStopped || !WholeSection.Has(set)) return;
        Placement[] all = [.. set.Parts.SelectMany(p => p.Placements)];
        foreach (SetOpening opening in set.Openings.GroupBy(o => o.Key).Select(g => g.OrderBy(o => o.Content == "divided").First()))
        {
            ExactLength plane = opening.Space.X + (opening.Space.SizeX / 2);
            string[] drawn = [.. Groups(WholeSection.Draw(set, opening.Key, s_paper).Items).Where(IsBeyond).Select(g => g.Key)];
            foreach (Part part in set.Parts)
            {
                foreach ((int number, Placement box) in part.Placements.Index())
                {
                    string key = $"{part.Key}#{number + 1}";
                    ExactLength near = box.X + box.SizeX;
                    if (near > plane)
                    {
                        Assert.DoesNotContain(key, drawn);
                        continue;
                    }
                    Placement[] before = [.. all.Where(o => o.X < plane && o.X + o.SizeX > near)];
                    bool Covers(Placement o, ExactLength y, ExactLength z) => o.Y <= y && y <= o.Y + o.SizeY && o.Z <= z && z <= o.Z + o.SizeZ;
                    bool isSeen = Enumerable.Range(1, Points).SelectMany(i => Enumerable.Range(1, Points).Select(j => (Y: box.Y + (box.SizeY * Rational.Of(i) / Rational.Of(Points + 1)), Z: box.Z + (box.SizeZ * Rational.Of(j) / Rational.Of(Points + 1)))))
                        .Any(p => !before.Any(o => Covers(o, p.Y, p.Z)));
                    if (isSeen && !all.Any(o => o != box && o.X + o.SizeX == near && o.Y <= box.Y && box.Y + box.SizeY <= o.Y + o.SizeY && o.Z <= box.Z && box.Z + box.SizeZ <= o.Z + o.SizeZ)) Assert.Contains(key, drawn);
                }
            }
        }
    }

    /// <summary>What stands on the floor is drawn on it; what hangs is not.</summary>
    [Theory, InlineData("samples/luthiers-bench.yaml", true), InlineData("samples/jar-cabinet.yaml", false)]
    public void Draw_WhatStandsOnTheFloor_HasTheFloorUnderIt(string file, bool hasFloor)
    {
        Scene scene = WholeSection.Draw(Set(file), null, s_paper);
        LineItem[] floor = [.. scene.Items.OfType<LineItem>().Where(l => l.Ink == Ink.Outline)];
        Assert.Equal(hasFloor, floor.Length == 1);
        // The posts go down to it, though the plane cuts none of them.
        if (hasFloor) Assert.Contains("F.height", Groups(scene.Items).Select(g => g.Key));
    }

    [Theory]
    [InlineData("L3.side", "bay L")]
    [InlineData("L2", "bay L")]
    [InlineData("K", "bay K")]
    [InlineData("K.width", "bay K")]
    [InlineData("nowhere", "bay L")]
    [InlineData(null, "bay L")]
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
