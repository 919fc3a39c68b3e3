using Setout.Core.Measures;
using Setout.Testing.Architecture;

namespace Setout.Core.Tests.Architecture;

/// <summary>The order of the namespaces of Core, read from the compiled assembly.</summary>
public sealed class NamespaceOrderTests
{
    private static readonly string s_core = typeof(Length).Assembly.Location;

    private static readonly NamespaceOrder s_order = new("Setout.Core",
        ["Measures"], ["Workings"], ["Materials"], ["Pieces"], ["SettingOut"], ["SettingOut.Joinery"], ["SettingOut.Drawers"], ["SettingOut.Doors"], ["SettingOut.Openings"], ["SettingOut.Tops", "SettingOut.Frames", "SettingOut.Cases"], ["SettingOut.Whole"],
        ["Fit", "Craft"]);

    private static readonly IReadOnlyList<string> s_namespaces =
        [.. typeof(Length).Assembly.GetTypes().Where(t => t.DeclaringType is null).Select(t => t.Namespace ?? "")];

    [Fact]
    public void Core_OrderOfTheDesign_IsKept() => Assert.Empty(s_order.Breaches(TypeReferences.Read(s_core), s_namespaces));

    [Fact]
    public void Core_OrderTurnedRound_IsBroken()
    {
        // Measures.Text is built on Measures, so the opposite order must be found broken.
        IReadOnlyList<TypeReference> references = TypeReferences.Read(s_core);
        var reversed = new NamespaceOrder("Setout", ["Core.Measures.Text"], ["Core.Measures"], ["Core"]);
        IReadOnlyList<string> breaches = reversed.Breaches(references, s_namespaces);
        Assert.Contains("Setout.Core.Measures.Text.LengthText may not see Setout.Core.Measures.ExactLength", breaches);
        Assert.Contains("Setout.Core.Measures.Text.LengthScanner may not see Setout.Core.Measures.Rational", breaches);
    }

    [Fact]
    public void Core_NamespaceWithoutALayer_IsBroken() => Assert.Equal(
        ["Setout.Core.Odds is in no layer: give it a place in the order", "Setout.Core is in no layer: give it a place in the order"],
        s_order.Breaches([], ["Setout.Core.Odds", "Setout.Core", "Setout.Core.Measures", "System"]).Order(StringComparer.Ordinal).Reverse());

    [Fact]
    public void LayersOfOneRow_SeeingEachOther_AreBroken() => Assert.Equal(
        ["Setout.Core.Craft.Sag may not see Setout.Core.Fit.Chance"],
        s_order.Breaches([new("Setout.Core.Craft", "Sag", "Setout.Core.Fit", "Chance"), new("Setout.Core.Craft", "Sag", "Setout.Core.Pieces", "Shelf")], []));

    /// <summary>The checker itself: each way of naming a type is found, and what is allowed is not.</summary>
    [Theory]
    [InlineData("ByBase", true)]
    [InlineData("ByInterface", true)]
    [InlineData("ByField", true)]
    [InlineData("BySignature", true)]
    [InlineData("ByCode", true)]
    [InlineData("ByLambda", true)]
    [InlineData("ByGenericCall", true)]
    [InlineData("ByCatch", true)]
    [InlineData("ByAttribute", true)]
    [InlineData("ByConstraint`1", true)]
    [InlineData("ByTypeOf", true)]
    [InlineData("Clean", false)]
    [InlineData("LooksDown", false)]
    public void Reader_EachWayOfNamingAType_IsFound(string type, bool isBreach)
    {
        var order = new NamespaceOrder("Setout.Core.Tests.Architecture.Samples", ["Low"], ["High"]);
        IReadOnlyList<string> breaches = order.Breaches(TypeReferences.Read(typeof(NamespaceOrderTests).Assembly.Location), []);
        Assert.Equal(isBreach, breaches.Any(b => b.Contains($".{type} may not see", StringComparison.Ordinal)));
    }
}
