using Setout.Core.Measures;
using Setout.Cutting.Sheets;
using static Setout.Cutting.Tests.Sheets.SheetBuild;

namespace Setout.Cutting.Tests.Sheets;

public class SheetFaceTests
{
    // 1000 x 600, trims 10, 5, 4, 6: trued 985 x 590; kerf 3; a last sliver of 2 in the second strip becomes dust.
    private static readonly SheetInstance s_instance = Instance(
        [Part("a", 400, 250, 2), Part("b", 983, 200)],
        [Stock("ply", 1000, 600, 40, null, new EdgeTrim(Mm(10), Mm(5), Mm(4), Mm(6)))]);

    private static readonly LaidSheet s_sheet = new("ply", Rips(Length.Zero,
        Slice(250, Crosscuts(Length.Zero, Slice(400, Lies("a")), Slice(400, Lies("a")), Slice(179, KeepNode.Instance))),
        Slice(200, Crosscuts(Mm(2), Slice(983, Lies("b")))),
        Slice(134, KeepNode.Instance)));

    [Fact]
    public void Flatten_TwoStrips_PlacesFromTrueCornerWithKerfBetween()
    {
        Assert.Equal(
            [
                (FaceKind.Part, "a", Place(0, 0, 400, 250)),
                (FaceKind.Part, "a", Place(403, 0, 400, 250)),
                (FaceKind.Keep, "", Place(806, 0, 179, 250)),
                (FaceKind.Part, "b", Place(0, 253, 983, 200)),
                (FaceKind.Keep, "", Place(0, 456, 985, 134)),
            ],
            SheetFace.Flatten(s_instance, s_sheet).Select(r => (r.Kind, r.PartId, r.Place)));
    }

    [Fact]
    public void Flatten_Path_LeadsToTheNode() =>
        Assert.Equal([0, 1], SheetFace.Flatten(s_instance, s_sheet)[1].Path);

    [Fact]
    public void InOrder_TwoStrips_TrimsThenStageByStage()
    {
        Assert.Equal(
            [
                new(CutStepKind.Trim, 0, GrainAxis.Across, Place(-10, -4, 1000, 600), [], [Mm(4)]),
                new(CutStepKind.Trim, 0, GrainAxis.Along, Place(-10, 0, 1000, 596), [], [Mm(10)]),
                new(CutStepKind.Trim, 0, GrainAxis.Across, Place(0, 0, 990, 596), [], [Mm(590)]),
                new(CutStepKind.Trim, 0, GrainAxis.Along, Place(0, 0, 990, 590), [], [Mm(985)]),
                new(CutStepKind.Divide, 1, GrainAxis.Across, Place(0, 0, 985, 590), [], [Mm(250), Mm(453)]),
                new(CutStepKind.Divide, 2, GrainAxis.Along, Place(0, 0, 985, 250), [0], [Mm(400), Mm(803)]),
                new CutStep(CutStepKind.Divide, 2, GrainAxis.Along, Place(0, 253, 985, 200), [1], [Mm(983)]),
            ],
            SheetCuts.InOrder(s_instance, s_sheet));
    }

    [Fact]
    public void InOrder_SolverLayout_CutsEachBlankAfterItExists()
    {
        SheetInstance instance = Instance([Part("a", 300, 200, 9), Part("b", 450, 120, 7, GrainRule.Free)], [Stock("ply", 1200, 800)]);
        foreach (LaidSheet sheet in Solve(instance).Layout.Sheets)
        {
            var blanks = new HashSet<string> { "" };
            foreach (CutStep step in SheetCuts.InOrder(instance, sheet))
            {
                Assert.Contains(string.Join('.', step.Path), blanks);
                for (int i = 0; i <= step.Positions.Length; i++) blanks.Add(string.Join('.', step.Path.Add(i)));
            }
        }
    }

    [Fact]
    public void Flatten_UnknownStock_Throws() =>
        Assert.Throws<ArgumentException>(() => SheetFace.Flatten(s_instance, s_sheet with { StockId = "oak" }));

    private static SheetRectangle Place(long fromAlong, long fromAcross, long along, long across) =>
        new(Mm(fromAlong), Mm(fromAcross), Mm(along), Mm(across));
}
