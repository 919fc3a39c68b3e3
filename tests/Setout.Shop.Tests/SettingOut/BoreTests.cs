using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Testing;

namespace Setout.Shop.Tests.SettingOut;

/// <summary>Where holes are, by hand and by what must hold of any: inside their member, opposite one another, on its face.</summary>
public class BoreTests
{
    private static string[] Files => [.. Repository.FilesIn("samples", "*.yaml").Concat(Repository.FilesIn("tests/Setout.Shop.Tests/SettingOut/Pieces", "*.yaml")).Where(f => !f.EndsWith("shop.yaml", StringComparison.Ordinal))];

    private static SetPiece Set(string file) => Sample.SetOut(File.ReadAllText(Repository.PathOf(file)));

    private static SetPiece Named(string name) => Set(Files.Single(f => Path.GetFileNameWithoutExtension(f) == name));

    public static TheoryData<string> Bored => [.. Files.Where(f => Set(f).Bores.Length > 0)];

    [Fact]
    public void Pins_ByHand_AreWhereTheRowsSay()
    {
        // Reading shelves: the right bay begins at 18 + 2 x (576 + 18) = 1206 and ends at 1782. Lowest hole 96 above the bottom, which is 18 thick; rows 57 and 37 from the edges.
        Bore[] pins = [.. Named("shelves").Bores];
        Assert.Equal(2 * 2 * 22, pins.Length);
        Assert.Equal(["1206", "1782"], pins.Select(b => b.X.ToNearestTick().ToMillimetres().ToString("0", System.Globalization.CultureInfo.InvariantCulture)).Distinct());
        Assert.Equal([57, 243], pins.Select(b => (int)b.Y.ToNearestTick().ToMillimetres()).Distinct().Order());
        Assert.Equal(Enumerable.Range(0, 22).Select(i => 18 + 96 + (32 * i)), pins.Select(b => (int)b.Z.ToNearestTick().ToMillimetres()).Distinct().Order());
        Assert.All(pins, b => Assert.Equal((Described.Of("5mm"), Described.Of("10mm")), (b.Diameter, b.Depth)));
    }

    [Fact]
    public void Cups_ByHand_StandAtTheHingeEdgeOfTheBack()
    {
        // Door 3 hangs at the left, door 4 at the right of the pair; cups 22.5 mm from the edge, 80 mm from the ends, landed on 1/32.
        SetPiece set = Named("doors");
        Bore[] left = [.. set.Bores.Where(b => b.Part == "D3.stile")], right = [.. set.Bores.Where(b => b.Part == "D4.stile")];
        Placement first = set.Parts.Single(p => p.Key == "D3.stile").Placements[0], last = set.Parts.Single(p => p.Key == "D4.stile").Placements[1];
        ExactLength centre = Described.Of("22.5mm");
        Assert.All(left, b => Assert.Equal((1, first.X + centre, first.Y + first.SizeY), (b.Number, b.X, b.Y)));
        Assert.All(right, b => Assert.Equal((2, last.X + last.SizeX - centre, last.Y + last.SizeY), (b.Number, b.X, b.Y)));
        Assert.Equal([Described.Of("3 5/32"), Described.Of("22 23/32")], left.Select(b => b.Z - first.Z).Order());
    }

    [Fact]
    public void Dowels_ByHand_AreThreeAnEndInTheMiddleOfTheThickness()
    {
        // Cube D: 2 in from the front, 3 in apart; the deck is 23/32 thick.
        SetPiece set = Named("case-corners");
        Bore[] ends = [.. set.Bores.Where(b => b.Part == "D.deck")], faces = [.. set.Bores.Where(b => b.Part == "D.side")];
        Assert.Equal(2 * 2 * 3, ends.Length);
        Assert.Equal(ends.Select(b => (b.X, b.Y, b.Z)).Order(), faces.Select(b => (b.X, b.Y, b.Z)).Order());
        Assert.Equal([Described.Of("2"), Described.Of("5"), Described.Of("8")], ends.Select(b => b.Y).Distinct().Order());
        Assert.Contains(Described.Of("23/64"), ends.Select(b => b.Z));
    }

    /// <summary>The mouth of a hole lies on a face of its member, the hole inside it and short of the far face.</summary>
    [Theory]
    [MemberData(nameof(Bored))]
    public void Bores_OfEachPiece_LieInTheirMembers(string file)
    {
        SetPiece set = Set(file);
        foreach (Bore bore in set.Bores)
        {
            Placement box = set.Parts.Single(p => p.Key == bore.Part).Placements[bore.Number - 1];
            ExactLength half = bore.Diameter / 2;
            foreach (Along axis in Enum.GetValues<Along>())
            {
                (ExactLength at, ExactLength low, ExactLength size) = axis switch { Along.X => (bore.X, box.X, box.SizeX), Along.Y => (bore.Y, box.Y, box.SizeY), _ => (bore.Z, box.Z, box.SizeZ) };
                if (axis == bore.Along) Assert.True((at == low || at == low + size) && bore.Depth < size, $"{bore.Name} of {bore.Key} in {bore.Part} does not begin on a face, or comes through.");
                else Assert.True(at - half > low && at + half < low + size, $"{bore.Name} of {bore.Key} breaks out of {bore.Part}.");
            }
        }
    }

    /// <summary>
    /// No two holes of a member share room: looked at by their middles, widths and depths alone, in floating point. A screw's hole is 5 mm wide and half the panel deep.
    /// </summary>
    [Theory]
    [MemberData(nameof(Bored))]
    public void Bores_OfEachPiece_ShareNoRoom(string file)
    {
        SetPiece set = Set(file);
        Assert.Empty(Shared(set));
    }

    private static List<string> Shared(SetPiece set)
    {
        var shared = new List<string>();
        foreach (var member in set.Bores.Distinct().GroupBy(b => (b.Part, b.Number, b.Along)))
        {
            Placement box = set.Parts.Single(p => p.Key == member.Key.Part).Placements[member.Key.Number - 1];
            double size = (member.Key.Along switch { Along.X => box.SizeX, Along.Y => box.SizeY, _ => box.SizeZ }).ApproximateMillimetres, low = (member.Key.Along switch { Along.X => box.X, Along.Y => box.Y, _ => box.Z }).ApproximateMillimetres;
            (double U, double V, double From, double To, double Half, string Name)[] holes = [.. member.Select(b =>
            {
                double x = b.X.ApproximateMillimetres, y = b.Y.ApproximateMillimetres, z = b.Z.ApproximateMillimetres;
                (double at, double u, double v) = b.Along switch { Along.X => (x, y, z), Along.Y => (y, x, z), _ => (z, x, y) };
                double wide = b.Diameter.Sign == 0 ? 5 : b.Diameter.ApproximateMillimetres, deep = b.Depth.Sign > 0 ? b.Depth.ApproximateMillimetres : b.Diameter.Sign == 0 ? size / 2 : size;
                return Math.Abs(at - low) < 1e-6 ? (u, v, at, at + deep, wide / 2, $"{b.Name} of {b.Key}") : (u, v, at - deep, at, wide / 2, $"{b.Name} of {b.Key}");
            })];
            for (int i = 0; i < holes.Length; i++)
                for (int j = i + 1; j < holes.Length; j++)
                    if (Math.Min(holes[i].To, holes[j].To) - Math.Max(holes[i].From, holes[j].From) > 1e-6 && Math.Sqrt(Math.Pow(holes[i].U - holes[j].U, 2) + Math.Pow(holes[i].V - holes[j].V, 2)) < holes[i].Half + holes[j].Half - 1e-6)
                        shared.Add($"{holes[i].Name} and {holes[j].Name} in {member.Key.Part}#{member.Key.Number}");
        }
        return shared;
    }

    private static string Cupboard(string left, string right, string partition = "") => $$"""
        setout: 1
        name: Cupboard
        unit: in
        materials:
          ply: {panel: hardwood plywood, thickness: 3/4}
          thick: {panel: hardwood plywood, thickness: 1 1/4}
        doors:
          over: {of: ply}
        assembly:
          - case: C
            of: ply
            width: 40
            height: 30
            depth: 16
            across: [{opening: A{{left}}}, {partition: P{{partition}}}, {opening: B{{right}}}]

        """;

    /// <summary>Plates of a door and pins of the shelves behind it are both 37 mm from the front: the front row goes 1 in further in, the back row stays.</summary>
    [Fact]
    public void Pins_BesideHingePlates_StandFurtherIn()
    {
        SetPiece set = Sample.SetOut(Cupboard(", doors: {like: over, keys: [K]}, shelves: {fit: adjustable, down: [S]}", ""));
        Assert.Equal(Described.Of("37mm") + Described.Of("1"), set.Value("A.holes.front"));
        Assert.Equal(Described.Of("37mm"), set.Value("A.holes.back"));
        Assert.Empty(Shared(set));
        Assert.DoesNotContain(set.Findings, f => f.Code.Contains("holes", StringComparison.Ordinal));
        SetPiece open = Sample.SetOut(Cupboard(", shelves: {fit: adjustable, down: [S]}", ""));
        Assert.Equal(Described.Of("37mm"), open.Value("A.holes.front"));
    }

    /// <summary>Pins 10 mm deep from one side and plates from the other through 3/4 in: the row that is bored later stands clear where it can; where the plates come later, a finding says so.</summary>
    [Theory]
    [InlineData(", doors: {like: over, keys: [K], hinges: right}", ", shelves: {fit: adjustable, down: [S]}", null)]
    [InlineData(", shelves: {fit: adjustable, down: [S]}", ", doors: {like: over, keys: [K]}", "holes.meet")]
    public void Pins_AndPlatesThroughAPartition_AreToldApart(string left, string right, string? code)
    {
        SetPiece set = Sample.SetOut(Cupboard(left, right));
        Assert.Equal(code is null, Shared(set).Count == 0);
        Assert.Equal(code is null ? [] : [code], set.Findings.Where(f => f.Code.Contains("holes", StringComparison.Ordinal)).Select(f => f.Code));
        Assert.Empty(Shared(Sample.SetOut(Cupboard(left, right, ", of: thick"))));
    }

    /// <summary>Two rows through a partition: 20 mm in 3/4 in meet; 20 mm and the 3 mm between them go into 1 1/4.</summary>
    [Theory]
    [InlineData("", 1)]
    [InlineData(", of: thick", 0)]
    public void Pins_FromBothSides_MeetWherePartitionsAreThin(string partition, int findings)
    {
        SetPiece set = Sample.SetOut(Cupboard(", shelves: {fit: adjustable, down: [S]}", ", shelves: {fit: adjustable, down: [R]}", partition));
        Assert.Equal(findings, set.Findings.Count(f => f.Code == "shelf.holes-meet"));
        Assert.Equal(findings == 0, Shared(set).Count == 0);
        // Set back by what the remedy says, the rows stand beside one another.
        SetPiece aside = Sample.SetOut(Cupboard(", shelves: {fit: adjustable, setback: 1, down: [S]}", ", shelves: {fit: adjustable, down: [R]}", partition));
        Assert.DoesNotContain(aside.Bores.Where(b => b.Key == "A"), b => aside.Bores.Any(o => o.Key == "B" && o.Y == b.Y && o.Y < Described.Of("8") && o.Part == b.Part));
    }
}
