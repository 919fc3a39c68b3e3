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
}
