using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Drawing.Elevations;
using Setout.Drawing.Scenes;
using Setout.Shop.Drawings;
using Setout.Shop.Plans;
using Setout.Testing;

namespace Setout.Shop.Tests.Drawings;

/// <summary>The figures of the page on setting out: what the program draws today, with figures that are true of what is drawn.</summary>
public partial class RuleFiguresTests
{
    private static readonly PaperBox s_paper = new(158, 132) { FigureSize = 3.4, Scale = 2 };

    public static TheoryData<string> Names => [.. RuleFigures.Sections.Select(f => f.Name)];

    private const string Page = "docs/setting-out.md", Pieces = "tests/Setout.Shop.Tests/SettingOut/Pieces";

    private static (string Name, string Title, ImmutableArray<FigureSection> Sections) Figure(string name) => RuleFigures.Sections.Single(f => f.Name == name);

    private static SetPiece Piece(string name)
    {
        string? path = new[] { $"samples/{name}.yaml", $"tests/Setout.Shop.Tests/SettingOut/Pieces/{name}.yaml" }.FirstOrDefault(p => File.Exists(Repository.PathOf(p)));
        Assert.True(path is not null, $"There is no sample and no test piece {name}.");
        return SettingOut.Sample.SetOut(File.ReadAllText(Repository.PathOf(path)));
    }

    private static Scene Draw(string name) => PieceSection.Draw(Figure(name).Title, [.. Figure(name).Sections.Select(s => (Piece(s.Piece), s.Detail))], s_paper);

    [Theory]
    [MemberData(nameof(Names))]
    public void Draw_Figure_IsTheCommittedPicture(string name) =>
        Snapshots.MatchFile(SvgWriter.Write(Draw(name), SvgOptions.Standalone), $"docs/pictures/rule-{name}.svg");

    public static TheoryData<string> Faces => [.. RuleFigures.Faces.Select(f => f.Name)];

    [Theory]
    [MemberData(nameof(Faces))]
    public void Draw_FaceWithHoles_IsTheCommittedPicture(string name)
    {
        (string _, string piece, string part) = RuleFigures.Faces.Single(f => f.Name == name);
        Scene scene = BoredParts.Of(Piece(piece), new PaperBox(158, 90) { FigureSize = 3.4 }).First(f => f.Parts.Any(p => p.Key == part)).Scene;
        Snapshots.MatchFile(SvgWriter.Write(scene, SvgOptions.Standalone), $"docs/pictures/rule-{name}.svg");
    }

    public static TheoryData<string> Wholes => [.. RuleFigures.Wholes.Select(f => f.Name)];

    [Theory]
    [MemberData(nameof(Wholes))]
    public void Draw_View_IsTheCommittedPicture(string name)
    {
        FigureView view = RuleFigures.Wholes.Single(f => f.Name == name);
        Snapshots.MatchFile(SvgWriter.Write(PieceView.Draw(Piece(view.Piece), view.From, view.Paper).Scene, SvgOptions.Standalone), $"docs/pictures/rule-{name}.svg");
    }

    /// <summary>The page shows every figure, and no other; it names every test piece, and no piece that is not there.</summary>
    [Fact]
    public void Page_FiguresAndPieces_AreThose()
    {
        string page = File.ReadAllText(Repository.PathOf(Page));
        Assert.Equal(RuleFigures.Sections.Select(f => f.Name).Concat(RuleFigures.Wholes.Select(f => f.Name)).Concat(RuleFigures.Faces.Select(f => f.Name)).Order(StringComparer.Ordinal), Picture().Matches(page).Select(m => m.Groups[1].Value).Order(StringComparer.Ordinal));
        string[] there = [.. Repository.FilesIn(Pieces, "*.yaml").Concat(Repository.FilesIn("samples", "*.yaml")).Select(f => Path.GetFileNameWithoutExtension(f))];
        string[] named = [.. Shown().Matches(page).SelectMany(m => Quoted().Matches(m.Value)).Select(m => m.Groups[1].Value).Distinct()];
        Assert.All(named, n => Assert.Contains(n, there));
        Assert.All(Repository.FilesIn(Pieces, "*.yaml"), f => Assert.Contains(Path.GetFileNameWithoutExtension(f), named));
    }

    [GeneratedRegex(@"\(pictures/rule-([a-z-]+)\.svg\)")]
    private static partial Regex Picture();

    [GeneratedRegex(@"[Ss]hown by [^\n]+")]
    private static partial Regex Shown();

    [GeneratedRegex("`([a-z-]+)`")]
    private static partial Regex Quoted();

    /// <summary>A name that lies on a figure, or off the paper, says nothing.</summary>
    [Theory]
    [MemberData(nameof(Names))]
    public void Draw_Figure_NoTextClashesOrSpills(string name)
    {
        Scene scene = Draw(name);
        TextItem[] texts = [.. Texts(scene.Items)];
        var paper = new Box(0, 0, scene.Width, scene.Height);
        Assert.All(texts, t => Assert.True(paper.Holds(Box.Of(t)), $"'{t.Text}' runs off the paper."));
        Box[] inks = [.. texts.Select(t => Box.Of(t).Grown(-0.12 * t.Size))];
        for (int i = 0; i < inks.Length; i++)
            for (int j = i + 1; j < inks.Length; j++)
                Assert.False(inks[i].Overlaps(inks[j]), $"'{texts[i].Text}' lies on '{texts[j].Text}'.");
        // What has a name is named.
        foreach (string label in Figure(name).Sections.SelectMany(s => s.Detail.Round).Where(r => r.Contains('=', StringComparison.Ordinal)).Select(r => r.Split('=')[1].Trim()))
            Assert.Contains(texts, t => t.Text.PlainText == label);
    }

    private static IEnumerable<TextItem> Texts(IEnumerable<SceneItem> items) => items.SelectMany(i => i switch { TextItem t => [t], GroupItem g => Texts(g.Items), _ => Array.Empty<TextItem>() });

    /// <summary>What stands on a figure is the distance between the edges that are drawn, but for less than a step of the grid where it was worked out and not cut.</summary>
    [Theory]
    [MemberData(nameof(Names))]
    public void Figures_OfEachSection_AreWhatIsDrawn(string name)
    {
        foreach (FigureSection section in Figure(name).Sections)
        {
            SetPiece set = Piece(section.Piece);
            foreach (DetailFigure figure in PieceSection.Figures(set, section.Detail))
            {
                ExactLength off = (figure.Value - figure.Drawn.ToExact()).Abs();
                Assert.True(off < set.Grid.Step.ToExact() / 2, $"{name}, {section.Detail.Caption}: {figure.Key} is {figure.Value}, drawn {figure.Drawn}.");
            }
        }
    }
}
