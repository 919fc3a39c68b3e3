using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Testing;

namespace Setout.Shop.Tests.SettingOut;

/// <summary>Each cut and hole says which of several like parts it goes into, and in which face: by hand, and by what must hold of any piece.</summary>
public class CutPlaceTests
{
    public static TheoryData<string> Files => [.. Repository.FilesIn("samples", "*.yaml").Concat(Repository.FilesIn("tests/Setout.Shop.Tests/SettingOut/Pieces", "*.yaml")).Where(f => !f.EndsWith("shop.yaml", StringComparison.Ordinal))];

    private static SetPiece Case(string across, string kinds = "") => Sample.SetOut($$"""
        setout: 1
        name: Case
        unit: in
        materials:
          ply: {panel: hardwood plywood, label: 3/4}
        {{kinds}}
        assembly:
          - {case: C, of: ply, width: 40, height: 30, depth: 16, across: [{{across}}]}

        """);

    private static string[] Where(SetPiece set, string part) => [.. set.Machinings.Where(m => m.Part == part).Select(m => m.Where)];

    [Fact]
    public void Pins_OfTheRightBay_GoIntoTheRightSideAndTheRightFaceOfThePartition()
    {
        SetPiece set = Case("{opening: A}, {partition: P}, {opening: B, shelves: {fit: adjustable, down: [S1]}}");
        Assert.Equal(["right: left face"], Where(set, "C.side"));
        Assert.Equal(["right face"], Where(set, "P"));
        CutMember only = Assert.Single(set.Machinings.Single(m => m.Part == "C.side").Members);
        Assert.Equal((2, "right"), (only.Number, only.Which));
    }

    [Fact]
    public void Dadoes_OfEitherBay_GoIntoTheirOwnSideAndFace()
    {
        SetPiece set = Case("{opening: A, shelves: {fit: dado, dado: 1/4, down: [S1]}}, {partition: P}, {opening: B, shelves: {fit: dado, dado: 7/32, down: [S2, S3]}}");
        Assert.Equal(["left: right face", "right: left face", "right: left face"], Where(set, "C.side"));
        Assert.Equal(["left face", "right face", "right face"], Where(set, "P"));
    }

    [Fact]
    public void Plates_OfADoorHungAtThePartition_GoIntoItsFaceTowardsTheDoor()
    {
        SetPiece set = Case("{opening: A, doors: {like: f, keys: [K1], hinges: right}}, {partition: P}, {opening: B, doors: {like: f, keys: [K2], hinges: right}}", "doors:\n  f: {of: ply}");
        Assert.Equal(["left face"], Where(set, "P"));
        Assert.Equal(["right: left face"], Where(set, "C.side"));
        Assert.Equal(["inside, right edge"], Where(set, "K1"));
    }

    [Fact]
    public void Mortises_OfSixPosts_SayWhichFacesOfWhichPost()
    {
        SetPiece set = Sample.SetOut("""
            setout: 1
            name: Frame
            unit: in
            materials:
              leg: {stick: oak, section: 2 x 2, lengths: [{length: 96}]}
              rail: {stick: oak, section: 3/4 x 2, lengths: [{length: 96}]}
            assembly:
              - {frame: F, of: leg, rails: rail, width: 48, height: 34, depth: 24, toe: 4, corners: tenon, tenon: 1/2, across: [{opening: A}, {posts: M}, {opening: B}]}

            """);
        Machining[] mortises = [.. set.Machinings.Where(m => m.Words.StartsWith("Mortises", StringComparison.Ordinal))];
        Assert.Equal("F.post", Assert.Single(mortises.Select(m => m.Part).Distinct()));
        Assert.Equal(["left front", "left rear", "middle front", "middle rear", "right front", "right rear"], mortises.SelectMany(m => m.Members).Select(m => m.Which).Order());
        CutMember Of(string which) => mortises.SelectMany(m => m.Members).Single(m => m.Which == which);
        Assert.Equal(["back", "right face"], Of("left front").Faces.Order());
        Assert.Equal(["back", "left face", "right face"], Of("middle front").Faces.Order());
        Assert.Equal(["front", "left face"], Of("right rear").Faces.Order());
    }

    /// <summary>Each names members that are there, with faces; words tell them apart; and each hole, or what goes in, lies in just those members.</summary>
    [Theory]
    [MemberData(nameof(Files))]
    public void Cuts_OfEachPiece_NameMembersThatTheyLieIn(string file)
    {
        SetPiece set = Sample.SetOut(File.ReadAllText(Repository.PathOf(file)));
        foreach (Machining cut in set.Machinings)
        {
            Part part = set.Parts.Single(p => p.Key == cut.Part);
            Assert.True(cut.Members.Length > 0 && cut.Where.Length > 0, $"'{cut.Words}' in {cut.Part} names no member.");
            Assert.All(cut.Members, m => Assert.True(m.Number >= 1 && m.Number <= part.Count && m.Faces.Length > 0, $"'{cut.Words}' in {cut.Part}: {m}"));
            Assert.Equal(cut.Members.Length, cut.Members.Select(m => m.Number).Distinct().Count());
            if (part.Count > 1) Assert.Equal(cut.Members.Length, cut.Members.Select(m => m.Which).Distinct().Count());
            foreach (string by in cut.By)
            {
                int[] bored = [.. set.Bores.Where(b => b.Key == by && b.Part == cut.Part).Select(b => b.Number).Distinct().Order()];
                if (bored.Length > 0) Assert.Equal(bored, cut.Members.Select(m => m.Number).Order());
                else Assert.Contains(cut.Members, m => set.Parts.Single(p => p.Key == by).Placements.Any(o => Touch(part.Placements[m.Number - 1], o)));
            }
            // No other member has what is cut for.
            if (cut.By.Length > 0 && cut.Numbers.IsEmpty && !cut.By.Any(by => set.Bores.Any(b => b.Key == by && b.Part == cut.Part)))
                Assert.Equal(Enumerable.Range(1, part.Count).Where(n => cut.By.Any(by => set.Parts.Single(p => p.Key == by).Placements.Any(o => Touch(part.Placements[n - 1], o)))), cut.Members.Select(m => m.Number).Order());
        }
    }

    /// <summary>Whether two boxes meet in a face or more, within a sixteenth of an inch; in floating point, apart from the code that is tested.</summary>
    private static bool Touch(Placement a, Placement b)
    {
        static double Low(ExactLength at) => at.ApproximateMillimetres;
        double[] shared = [.. new[] { (a.X, a.SizeX, b.X, b.SizeX), (a.Y, a.SizeY, b.Y, b.SizeY), (a.Z, a.SizeZ, b.Z, b.SizeZ) }.Select(s => Math.Min(Low(s.Item1 + s.Item2), Low(s.Item3 + s.Item4)) - Math.Max(Low(s.Item1), Low(s.Item3)))];
        return shared.All(s => s > -1.6) && shared.Count(s => s > 1.6) >= 2;
    }
}
