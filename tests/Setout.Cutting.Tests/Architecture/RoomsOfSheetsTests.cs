using Setout.Cutting.Sheets;
using Setout.Testing.Architecture;

namespace Setout.Cutting.Tests.Architecture;

/// <summary>The rooms behind the sheet solvers, read from the compiled assembly: bounds and patterns know the model and not each other; the search knows all three.</summary>
public sealed class RoomsOfSheetsTests
{
    private static readonly IReadOnlyList<TypeReference> s_references = TypeReferences.Read(typeof(SheetInstance).Assembly.Location);

    [Fact]
    public void Sheets_OrderOfRooms_IsKept() => Assert.Empty(
        new NamespaceOrder("Setout.Cutting.Sheets", ["Model"], ["Bounds", "Patterns"], ["Search"]).Breaches(s_references, []));

    [Fact]
    public void Sheets_OrderTurnedRound_IsBroken() => Assert.Contains(
        "Setout.Cutting.Sheets.Search.GoalSheetSolver may not see Setout.Cutting.Sheets.Patterns.PatternBound",
        new NamespaceOrder("Setout.Cutting.Sheets", ["Search"], ["Patterns"]).Breaches(s_references, []));
}
