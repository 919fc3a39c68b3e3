using Setout.Core.SettingOut;
using Setout.Shop.Noting;
using Setout.Shop.Plans;
using Setout.Shop.Tests.Plans;
using Setout.Shop.Texts;
using Setout.Testing;

namespace Setout.Shop.Tests.Noting;

/// <summary>What is bought and what is still to be: wood by its material, things by their names or with what they belong to.</summary>
public class BuyingStandTests
{
    private static string Dyes => File.ReadAllText(Repository.PathOf("tests/Setout.Shop.Tests/SettingOut/Pieces/finishes.yaml"));

    private static SetPiece Bought(SetPiece set, PieceSource source, params string[] words)
    {
        MarkEntry mark = NotedMark.Of(set, new(Progress.Bought, [.. words]), "b1", "2026-05-04T09:40:00Z").Entry!;
        return (source with { Log = new(source.Log.Entries.Add(mark)) }).SetOut();
    }

    private static IEnumerable<string> Due(SetPiece set) => BenchStand.Of(set, [])[WorkStage.Buy].Batches.SelectMany(b => b.Keys);

    /// <summary>The band belongs to the sheet whose edges it covers, and is bought elsewhere.</summary>
    [Fact]
    public void Band_OfASheetThatIsBought_IsStillToBeBought()
    {
        PieceSource source = AtTheBench.OfText(Dyes).Source;
        SetPiece set = source.SetOut();
        string band = Assert.Single(Due(set), t => t.StartsWith("Edge band", StringComparison.Ordinal));
        SetPiece wood = Bought(set, source, "birch");
        Assert.DoesNotContain("birch", Due(wood));
        Assert.Contains(band, Due(wood));
        Assert.DoesNotContain(band, Due(Bought(set, source, band)));
    }

    [Fact]
    public void Slides_OfDrawersThatAreBoughtOneByOne_AreBoughtWithTheLast()
    {
        PieceSource source = new AtTheBench("luthiers-bench.yaml").Source;
        SetPiece set = source.SetOut();
        string slides = Assert.Single(Due(set), t => t.Contains("slide", StringComparison.OrdinalIgnoreCase));
        string[] drawers = [.. set.Hardware.Where(h => h.Name == slides).Select(h => h.Key).Distinct()];
        Assert.Contains(slides, Due(Bought(set, source, drawers[1..])));
        Assert.DoesNotContain(slides, Due(Bought(set, source, drawers)));
    }

    /// <summary>How much of it is wanted stands in its name, and moves with every reading: it is marked by the piece's own name for it.</summary>
    [Theory]
    [InlineData("covers: 24 m2 per l, can: 0.375 l", "covers: 0.5 m2 per l")]
    [InlineData("covers: 24 m2 per l, can: 0.375 l", "can: 0.375 l")]
    public void Finish_BoughtByAmount_StaysBoughtWhenAReadingMovesTheAmount(string from, string to)
    {
        Assert.Contains(from, Dyes, StringComparison.Ordinal);
        PieceSource source = AtTheBench.OfText(Dyes.Replace(from, to, StringComparison.Ordinal)).Source;
        SetPiece set = source.SetOut();
        Assert.Contains("wax", Due(set));
        MarkEntry mark = NotedMark.Of(set, new(Progress.Bought, ["wax"]), "b1", "2026-05-04T09:40:00Z").Entry!;
        PieceSource later = source with { Log = new([mark, new ReadingEntry("r1", "2026-05-04T09:50:00Z", new("birch.thickness"), [Described.Of("12 mm")], "calliper", "")]) };
        string Name(SetPiece of) => of.Hardware.Single(h => h.Key == "wax").Name;
        Assert.NotEqual(Name(set), Name(later.SetOut()));
        Assert.DoesNotContain("wax", Due(later.SetOut()));
        Assert.True(ThingsToBuy.IsBought(later.SetOut(), "wax"));
    }
}
