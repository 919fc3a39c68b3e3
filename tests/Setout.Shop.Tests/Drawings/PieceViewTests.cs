using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Drawing.Elevations;
using Setout.Drawing.Scenes;
using Setout.Shop.Drawings;
using Setout.Testing;

namespace Setout.Shop.Tests.Drawings;

/// <summary>A piece from the front, from above and from the right: what is seen, what is hidden, and that every figure is true of what is drawn.</summary>
public class PieceViewTests
{
    private static readonly PaperBox[] s_papers = [new(200, 116), new(175, 110), new(100, 130)];
    private static readonly PaperBox s_phone = new(88, 130) { LeastShrunk = 1 };

    private static string[] Files => [.. Repository.FilesIn("samples", "*.yaml").Concat(Repository.FilesIn("tests/Setout.Shop.Tests/SettingOut/Pieces", "*.yaml")).Where(f => !f.EndsWith("shop.yaml", StringComparison.Ordinal))];

    public static TheoryData<string> Pieces => [.. Files.Where(f => PieceView.Has(Set(f)))];

    private static SetPiece Set(string file) => SettingOut.Sample.SetOut(File.ReadAllText(Repository.PathOf(file)));

    private static SetPiece Named(string name) => Set(Files.Single(f => Path.GetFileNameWithoutExtension(f) == name));

    private static IEnumerable<GroupItem> Groups(IEnumerable<SceneItem> items) => items.OfType<GroupItem>().SelectMany(g => Groups(g.Items).Prepend(g));

    private static IEnumerable<TextItem> Texts(IEnumerable<SceneItem> items) => items.SelectMany(i => i switch { TextItem t => [t], GroupItem g => Texts(g.Items), _ => Array.Empty<TextItem>() });

    [Theory]
    [MemberData(nameof(Pieces))]
    public void Draw_EachViewOnEachPaper_NoFigureClashesOrSpills(string file)
    {
        SetPiece set = Set(file);
        foreach (Views from in PieceView.All)
        {
            foreach (PaperBox paper in s_papers)
            {
                NoFigureClashesOrSpills(PieceView.Draw(set, from, paper).Scene, $"{from} on {paper.Width} mm");
            }
        }
    }

    private static void NoFigureClashesOrSpills(Scene scene, string where)
    {
        TextItem[] texts = [.. Texts(scene.Items)];
        var sheet = new Box(0, 0, scene.Width, scene.Height);
        Assert.All(texts, t => Assert.True(sheet.Holds(Box.Of(t)), $"{where}: '{t.Text}' runs off the paper."));
        Box[] inks = [.. texts.Select(t => Box.Of(t).Grown(-0.12 * t.Size))];
        for (int i = 0; i < inks.Length; i++)
            for (int j = i + 1; j < inks.Length; j++)
                Assert.False(inks[i].Overlaps(inks[j]), $"{where}: '{texts[i].Text}' lies on '{texts[j].Text}'.");
    }

    /// <summary>On the paper of a phone nothing is shrunk, whatever is chosen: figures stay as large as they are.</summary>
    [Theory]
    [MemberData(nameof(Pieces))]
    public void DrawFew_EachViewAndEachThingChosen_KeepsItsFiguresLargeAndApart(string file)
    {
        SetPiece set = Set(file);
        foreach (Views from in PieceView.All)
        {
            foreach (string chosen in set.Openings.Select(o => o.Key).Concat(set.Piece.Members.Select(m => m.Key)).Prepend(""))
            {
                Scene scene = PieceView.DrawFew(set, from, s_phone, chosen).Scene;
                Assert.Equal(s_phone.Width, scene.Width, 6);
                NoFigureClashesOrSpills(scene, $"{from} with '{chosen}' chosen");
            }
        }
    }

    [Fact]
    public void DrawFew_Bench_ShowsTheWholeTheBaysAndWhatIsChosen()
    {
        SetPiece set = Named("luthiers-bench");
        string[] Figures(string chosen) => [.. Groups(PieceView.DrawFew(set, Views.Front, s_phone, chosen).Scene.Items).SelectMany(g => g.Items.OfType<TextItem>()).Where(t => t.HasGround).Select(t => t.Text.PlainText).Order(StringComparer.Ordinal)];

        Assert.Equal(["21", "21", "22", "34", "78"], Figures(""));
        Assert.Equal(["21", "21", "22", "34", "4", "78"], Figures("L1"));
        Assert.Equal(["21", "21", "22", "34", "4", "78"], Figures("L1.front.height"));
    }

    /// <summary>A dimension is as long as it says, but for what rounding left of what was given.</summary>
    [Theory]
    [MemberData(nameof(Pieces))]
    public void Dimensions_OfEachPiece_AreAsLongAsTheySay(string file)
    {
        SetPiece set = Set(file);
        Assert.All(set.Dimensions, d => Assert.True((d.To - d.From - set.Worked[d.Key]).Abs() < set.Grid.Step.ToExact() * 2, $"{d.Key} is {set.Worked[d.Key]}, drawn {d.To - d.From}."));
    }

    /// <summary>On plan and side every figure of a depth or height runs between edges of members, and the whole depth and height are among them.</summary>
    [Theory]
    [MemberData(nameof(Pieces))]
    public void Draw_PlanAndSide_SayHowDeepThePieceIs(string file)
    {
        SetPiece set = Set(file);
        foreach (Views from in new[] { Views.Above, Views.Right })
        {
            ImmutableArray<SetDimension> deep = [.. set.Dimensions.Where(d => d.IsDeep && d.In.HasFlag(from))];
            Assert.NotEmpty(deep);
            string[] keys = [.. Groups(PieceView.Draw(set, from, s_papers[0]).Scene.Items).Select(g => g.Key)];
            Assert.Contains(deep, d => keys.Contains(d.Key.Text));
        }
    }

    /// <summary>Whether a group paints a point.</summary>
    private static bool Paints(IEnumerable<GroupItem> groups, string key, Point at) =>
        groups.Where(g => g.Key == key).SelectMany(g => g.Items).OfType<ShapeItem>().Any(s => s.Wash != Wash.None && at.X > s.Corners.Min(c => c.X) && at.X < s.Corners.Max(c => c.X) && at.Y > s.Corners.Min(c => c.Y) && at.Y < s.Corners.Max(c => c.Y));

    [Fact]
    public void Plan_TopOverAWell_IsOpenThereAndThePlatformShows()
    {
        SetPiece set = Named("tops");
        ElevationDrawing plan = PieceView.Draw(set, Views.Above, new(400, 200));
        GroupItem[] groups = [.. Groups(plan.Scene.Items)];
        Placement open = set.CutOuts.First(c => c.Key == "W").Space;
        Point At(ExactLength x, ExactLength y) => new(plan.Origin.X + (x.ToNearestTick().ApproximateMillimetres / plan.Scale), plan.Origin.Y - (y.ToNearestTick().ApproximateMillimetres / plan.Scale));
        Point middle = At(open.X + (open.SizeX / 2), open.Y + (open.SizeY / 2)), beside = At(open.X + open.SizeX + Described.Of("2"), open.Y + (open.SizeY / 2));

        Assert.False(Paints(groups, "V", middle));
        Assert.True(Paints(groups, "V", beside));
        Assert.True(Paints(groups, "W.platform", middle));
        Assert.Contains(groups, g => g.Key == "K" && g.Title == "Slot K");
    }

    [Fact]
    public void Side_ToeKick_IsANotchInTheSide()
    {
        SetPiece set = Named("sewing-corner");
        ElevationDrawing side = PieceView.Draw(set, Views.Right, new(400, 300));
        GroupItem[] groups = [.. Groups(side.Scene.Items)];
        Point At(string y, string z) => new(side.Origin.X + (Described.Of(y).ToNearestTick().ApproximateMillimetres / side.Scale), side.Origin.Y - (Described.Of(z).ToNearestTick().ApproximateMillimetres / side.Scale));

        // 4 in high and 3 in deep.
        Assert.False(Paints(groups, "B.side#2", At("2 7/8", "3 7/8")));
        Assert.True(Paints(groups, "B.side#2", At("3 1/8", "3 7/8")));
        Assert.True(Paints(groups, "B.side#2", At("2 7/8", "4 1/8")));
    }

    /// <summary>From the side one looks into the space next to the eye: the shelves of the case at the right, not the drawers of that at the left.</summary>
    [Fact]
    public void Side_OfTwoCases_ShowsWhatStandsInTheNearerOneOnly()
    {
        string[] hidden = [.. Groups(PieceView.Draw(Named("sewing-corner"), Views.Right, s_papers[0]).Scene.Items).Where(g => g.Title.EndsWith(", hidden", StringComparison.Ordinal)).Select(g => g.Key)];
        Assert.Contains("S1", hidden);
        Assert.Contains("B.deck#1", hidden);
        Assert.DoesNotContain(hidden, k => k.StartsWith('A'));
    }

    /// <summary>Mitred strips are as long outside as they are and shorter inside by what meets them; together they cover no place twice.</summary>
    [Fact]
    public void Plan_MitredStrips_MeetAtTheirPoints()
    {
        ElevationDrawing plan = PieceView.Draw(Named("sewing-corner"), Views.Above, new(400, 200));
        Dictionary<string, ShapeItem> strips = Groups(plan.Scene.Items).Where(g => g.Key.StartsWith("T.edging-", StringComparison.Ordinal)).ToDictionary(g => g.Key, g => g.Items.OfType<ShapeItem>().First());
        double thick = 19.05 / plan.Scale;
        Point[] front = [.. strips["T.edging-front"].Corners], left = [.. strips["T.edging-left"].Corners];

        Assert.Equal(4, front.Length);
        double outside = front.Max(c => c.X) - front.Min(c => c.X), inside = front.Where(c => c.Y == front.Min(p => p.Y)).Max(c => c.X) - front.Where(c => c.Y == front.Min(p => p.Y)).Min(c => c.X);
        Assert.Equal(2 * thick, outside - inside, 6);
        // The point of the front strip is the point of the left one, and so is the inner end of the mitre.
        Assert.Equal(2, front.Count(f => left.Any(l => Math.Abs(l.X - f.X) < 1e-6 && Math.Abs(l.Y - f.Y) < 1e-6)));
    }

    /// <summary>The picture on the first page of the project.</summary>
    [Fact]
    public void Draw_TheSampleBench_IsTheCommittedPicture() =>
        Snapshots.MatchFile(SvgWriter.Write(PieceView.Draw(Named("luthiers-bench"), Views.Front, new(260, 180)).Scene, SvgOptions.Standalone), "docs/pictures/luthiers-bench.svg");
}
