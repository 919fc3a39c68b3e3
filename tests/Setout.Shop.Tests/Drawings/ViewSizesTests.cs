// Over 200 lines: one table of what stands on a view, a short test each.
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Drawing.Elevations;
using Setout.Drawing.Scenes;
using Setout.Shop.Drawings;
using Setout.Testing;

namespace Setout.Shop.Tests.Drawings;

/// <summary>What the views say of a piece: feet and what they lift, faces of face frames, shelves, handles, rows of structures.</summary>
public class ViewSizesTests
{
    private static readonly PaperBox s_paper = new(400, 300);

    private static SetPiece Named(string name) => SettingOut.Sample.SetOut(File.ReadAllText(Repository.PathOf(new[] { $"samples/{name}.yaml", $"tests/Setout.Shop.Tests/SettingOut/Pieces/{name}.yaml" }.First(p => File.Exists(Repository.PathOf(p))))));

    private static GroupItem[] Groups(SetPiece set, Views from)
    {
        return [.. All(PieceView.Draw(set, from, s_paper).Scene.Items)];
        static IEnumerable<GroupItem> All(IEnumerable<SceneItem> items) => items.OfType<GroupItem>().SelectMany(g => All(g.Items).Prepend(g));
    }

    private static string[] Titles(SetPiece set, Views from) => [.. Groups(set, from).Select(g => g.Title)];

    /// <summary>As many feet are drawn from the front as are bought for the front, and two from the side.</summary>
    [Theory]
    [InlineData("feet", "Foot", 500, 4)]
    [InlineData("castors", "Castor", 900, 4)]
    [InlineData("levellers", "Leveller", 1900, 8)]
    public void Draw_CaseOnFeet_ShowsThemAndTheirHeightAndTheWhole(string kind, string word, int width, int bought)
    {
        SetPiece set = SettingOut.Sample.SetOut($$"""
            setout: 1
            name: Prop cupboard
            unit: mm
            materials: {ply: {panel: birch plywood, thickness: 18} }
            assembly:
              - {case: C, of: ply, feet: {kind: {{kind}}, height: 90}, width: {{width}}, height: 600, depth: 400}
            """);
        Assert.Equal(bought, set.Hardware.Where(h => h.Name.Contains(", 90 mm high", StringComparison.Ordinal)).Sum(h => h.Count));
        foreach ((Views from, int seen) in new[] { (Views.Front, bought / 2), (Views.Right, 2) })
        {
            GroupItem[] groups = Groups(set, from);
            // 90 + 600 = 690.
            Assert.Contains(groups, g => g.Title == "whole height, 690 mm");
            Assert.Contains(groups, g => g.Key == "C.lift" && g.Items.OfType<TextItem>().Any(t => t.Text.PlainText == "90"));
            // Each stands on the floor with its lowest part.
            double floor = PieceView.Draw(set, from, s_paper).Origin.Y;
            Assert.Equal(seen, groups.Where(g => g.Title.StartsWith(word, StringComparison.Ordinal)).SelectMany(g => g.Items.OfType<ShapeItem>()).Count(s => Math.Abs(s.Corners.Max(c => c.Y) - floor) < 0.02));
        }
        Assert.DoesNotContain(Groups(set, Views.Above), g => g.Title.StartsWith(word, StringComparison.Ordinal));
    }

    /// <summary>
    /// Face frame of stiles 1 3/4 on a case of 36: what is between its members, with them, is the whole width of the frame. The clear openings behind are not shown.
    /// </summary>
    [Fact]
    public void Front_FaceFrame_ShowsItsOpeningsAndMembersAndNotWhatIsBehind()
    {
        SetPiece set = Named("face-frame");
        GroupItem[] groups = Groups(set, Views.Front);
        Assert.DoesNotContain(groups, g => g.Key is "L.width" or "R.width");
        Part stile = set.Parts.Single(p => p.Key == "C.stile"), mullion = set.Parts.Single(p => p.Key == "P.mullion");
        ExactLength left = mullion.Placements[0].X - (stile.Placements[0].X + stile.Placements[0].SizeX), right = stile.Placements[1].X - (mullion.Placements[0].X + mullion.Placements[0].SizeX);
        LengthFormat format = LengthFormat.Inch;
        Assert.Contains(groups, g => g.Title == $"opening L, clear width at the face, {format.Text(left)}");
        Assert.Contains(groups, g => g.Title == $"opening R, clear width at the face, {format.Text(right)}");
        Assert.Equal(3, groups.Count(g => g.Key == "oak.width" && g.Title.EndsWith("width, 1 3/4 in", StringComparison.Ordinal) && !g.Title.Contains("rail", StringComparison.Ordinal)));
        Assert.Equal(stile.Placements[1].X + stile.Placements[1].SizeX - stile.Placements[0].X, left + right + (set.Worked[new QuantityKey("oak.width")] * 3));
    }

    /// <summary>Grain runs along a stick: up on stiles and mullions, level on rails.</summary>
    [Fact]
    public void Front_FaceFrame_GrainRunsAlongEachMember()
    {
        GroupItem[] groups = Groups(Named("face-frame"), Views.Front);
        foreach ((string key, bool isUpright) in new[] { ("C.stile#1", true), ("C.stile#2", true), ("P.mullion", true), ("C.frame-rail#1", false), ("C.frame-rail#2", false) })
        {
            LineItem[] strokes = [.. groups.Where(g => g.Key == key).SelectMany(g => g.Items).OfType<LineItem>().Where(l => l.Ink == Ink.Grain)];
            Assert.NotEmpty(strokes);
            Assert.All(strokes, s => Assert.Equal(isUpright, Math.Abs(s.To.Y - s.From.Y) > Math.Abs(s.To.X - s.From.X)));
        }
    }

    /// <summary>Widths of what stands on another are above it; the level chains below are those of what stands on the floor.</summary>
    [Fact]
    public void Front_CaseOnAnother_HasItsWidthsAboveIt()
    {
        SetPiece set = SettingOut.Sample.SetOut("""
            setout: 1
            name: Prop wall
            unit: mm
            materials: {ply: {panel: birch plywood, thickness: 18}}
            assembly:
              - {case: A, of: ply, width: 1000, height: 700, depth: 400, across: [{opening: A1}, {partition: P}, {opening: A2}]}
              - {case: B, of: ply, width: 1000, height: 500, depth: 300, on: A, across: [{opening: B1, width: 300}, {partition: Q}, {opening: B2}]}
              - {case: D, of: ply, width: 1000, height: 300, depth: 300, on: B}
            """);
        ElevationDrawing front = PieceView.Draw(set, Views.Front, s_paper);
        double Y(string key) => Groups(set, Views.Front).Single(g => g.Key == key).Items.OfType<TextItem>().Single().At.Y;
        Assert.True(Y("A1.width") > front.Origin.Y);
        double top = front.Origin.Y - (1500.0 / front.Scale);
        Assert.True(Y("B1.width") < top);
        // Something stands on B as well, so that its sizes say whose they are.
        Assert.Equal("B1: 300", Groups(set, Views.Front).Single(g => g.Key == "B1.width").Items.OfType<TextItem>().Single().Text.PlainText);
    }

    /// <summary>Spaces and shelves close over the height of their opening, before doors or not.</summary>
    [Theory]
    [InlineData("shelves", "C")]
    [InlineData("doors", "A1")]
    [InlineData("jar-cabinet", "A")]
    public void Front_Shelves_HaveTheirSpaces(string piece, string anyOpening)
    {
        SetPiece set = Named(piece);
        var where = new Whereabouts(set);
        Assert.NotEmpty(where.Shelves);
        Assert.Contains(where.Shelves, s => s.Opening.StartsWith(anyOpening[0]) || piece == "shelves");
        InnerDimension[] spaces = [.. ShelfSpaces.Of(set, where)];
        foreach (ShelvesAt at in where.Shelves)
        {
            Length drawn = spaces.Where(s => s.Span.Title.Contains($"of opening {at.Opening},", StringComparison.Ordinal)).Aggregate(Length.Zero, (sum, s) => sum + (s.Span.To - s.Span.From));
            Length thick = at.Shelves.Keys.Select(k => set.Parts.Single(p => p.Key == k.Text).Placements[0].SizeZ.ToNearestTick()).Aggregate(Length.Zero, (sum, t) => sum + t);
            Length high = set.Openings.Single(o => o.Key == at.Opening).Space.SizeZ.ToNearestTick();
            Assert.True((drawn + thick - high).Abs() < Length.FromMillimetres(1) / 10, $"{at.Opening}: {drawn} and {thick} are not {high}.");
        }
        foreach (string title in spaces.Select(s => s.Span.Title)) Assert.Contains(title, Titles(set, Views.Front));
    }

    /// <summary>A row of structures has its whole width, and the sizes in its chain add up to it.</summary>
    [Theory]
    [InlineData("sewing-corner")]
    [InlineData("case-feet")]
    [InlineData("doors")]
    [InlineData("tops")]
    public void Chains_OfARow_AddUpToTheWhole(string piece)
    {
        SetPiece set = Named(piece);
        ElevationChain[] above = [.. ViewChains.Of(set, Views.Front, new(set)).Where(c => c.Side == Setout.Drawing.Dimensioning.Side.Above)];
        ElevationSpan whole = Assert.Single(above[^1].Spans);
        Assert.StartsWith("whole width", whole.Title, StringComparison.Ordinal);
        ElevationSpan[] parts = [.. above.First(c => c.Spans[0].From == whole.From && c.Spans[^1].To == whole.To && c.Spans.Length > 1).Spans];
        for (int i = 1; i < parts.Length; i++) Assert.Equal(parts[i - 1].To, parts[i].From);
        ExactLength Said(ElevationSpan span) => LengthText.Parse(span.Figure.PlainText, set.Piece.Unit).Value;
        Assert.Equal(Said(whole), parts.Select(Said).Aggregate(ExactLength.Zero, (sum, s) => sum + s));
    }

    /// <summary>Handles of doors are drilled at the closing edge: those of a pair side by side where they meet.</summary>
    [Fact]
    public void Front_DoorHandles_AreAtTheClosingEdge()
    {
        SetPiece set = SettingOut.Sample.SetOut("""
            setout: 1
            name: Mask cupboard
            unit: mm
            materials:
              ply: {panel: birch plywood, thickness: 18}
              oak: {stick: oak, section: 20 x 60, lengths: [{length: 2400}]}
              thin: {panel: birch plywood, thickness: 6}
            doors:
              slab: {of: ply, handles: {of: knob, from edge: 40, from top: 100, place: in line}}
              framed: {frame: {of: oak}, panel: thin, handles: {of: bow, apart: 96, from bottom: 80, place: in line}}
            assembly:
              - case: C
                of: ply
                width: 1200
                height: 700
                depth: 400
                across: [{opening: A, doors: {like: slab, keys: [D1], hinges: right}}, {partition: P}, {opening: B, doors: {like: framed, keys: [D2, D3]}}]
            """);
        ILookup<string, ModelHole> pulls = DoorPulls.Of(set, new(set));
        Placement slab = set.Parts.Single(p => p.Key == "D1").Placements[0], left = set.Parts.Single(p => p.Key == "D2.stile").Placements[1];
        ModelHole one = Assert.Single(pulls["D1"]);
        Assert.Equal((slab.X.ToNearestTick() + Length.FromMillimetres(40), (slab.Z + slab.SizeZ).ToNearestTick() - Length.FromMillimetres(100)), (one.X, one.Y));
        Assert.Equal([80, 176], pulls["D2.stile#2"].Select(h => (int)(h.Y - left.Z.ToNearestTick()).ApproximateMillimetres));
        Assert.All(pulls["D2.stile#2"], h => Assert.Equal(left.X.ToNearestTick() + Length.FromMillimetres(30), h.X));
        Assert.Equal(2, pulls["D3.stile#1"].Count());
        Assert.Contains(Groups(set, Views.Front).Where(g => g.Key == "D1").SelectMany(g => g.Items), i => i is ShapeItem { Corners.Length: 16 });
    }

    /// <summary>Ties under a top are drawn broken on the plan, as rails are.</summary>
    [Theory]
    [InlineData("luthiers-bench")]
    [InlineData("frame-joints")]
    public void Plan_TiesUnderATop_AreBroken(string piece) =>
        Assert.Contains(Groups(Named(piece), Views.Above), g => g.Key.StartsWith("F.tie", StringComparison.Ordinal) && g.Title.EndsWith(", hidden", StringComparison.Ordinal));

    /// <summary>A door hung on the left has its plates on the inside of the left side; one that is hung on the right on that of the right.</summary>
    [Theory]
    [InlineData("left", "inner face of the left side")]
    [InlineData("right", "inner face of the right side")]
    public void Faces_OfASide_AreNamedByTheirMeaning(string hinges, string face)
    {
        SetPiece set = SettingOut.Sample.SetOut($$"""
            setout: 1
            name: Wig cupboard
            unit: mm
            materials: {ply: {panel: birch plywood, thickness: 18} }
            doors: {slab: {of: ply} }
            assembly:
              - case: C
                of: ply
                width: 500
                height: 700
                depth: 400
                down: [{opening: A, doors: {like: slab, keys: [D1], hinges: {{hinges}} } }]
            """);
        BoredFace side = Assert.Single(BoredParts.Of(set, s_paper), f => f.Parts.Any(p => p.Key == "C.side"));
        Assert.Contains(face, side.Scene.Title, StringComparison.Ordinal);
    }

    /// <summary>Three thirds of an inch are shown as 21/64 each, 63/64 in all, beside a whole of 1: the drawing says why.</summary>
    [Fact]
    public void Chains_RoundedApart_AreFoundOut()
    {
        Length[] at = [.. Enumerable.Range(0, 4).Select(i => (Described.Of("1") * Rational.Of(i, 3)).ToNearestTick())];
        ElevationChain Chain(params ElevationSpan[] spans) => new(Setout.Drawing.Dimensioning.Side.Above, [.. spans]);
        ElevationSpan Span(int from, int to) => new(at[from], at[to], Phrase.Of("x"));
        Assert.True(ChainSums.AreRoundedApart([Chain(Span(0, 1), Span(1, 2), Span(2, 3)), Chain(Span(0, 3))], LengthFormat.Inch));
        // One that leaves out a part is no sum.
        Assert.False(ChainSums.AreRoundedApart([Chain(Span(0, 1), Span(2, 3)), Chain(Span(0, 3))], LengthFormat.Inch));
        Assert.False(ChainSums.AreRoundedApart([Chain(Span(0, 1), Span(1, 2), Span(2, 3))], LengthFormat.Inch));
    }
}
