namespace Setout.Cutting.Tests.Runs;

/// <summary>Plans written by hand, with every size worked out in <see cref="SawPlans"/>.</summary>
public class SawSimulatorTests
{
    [Fact]
    public void Check_TwoSheetsAndABoard_FindsNothing() => Assert.Empty(SawPlans.Two().Check());

    [Fact]
    public void Check_SheetPartedBesideTheLine_FindsNothing() => Assert.Empty(SawPlans.Rough().Check());

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void Check_NarrowBladeLeavesMore_FindsNothing(long margin) => Assert.Empty(SawPlans.Thin(margin).Check());

    [Fact]
    public void Check_ShopWithoutASawForIt_MayRefuse() => Assert.Empty(SawPlans.Refused().Check());
}
