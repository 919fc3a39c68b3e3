using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Testing;
using static Setout.Shop.Tests.SettingOut.Sample;

namespace Setout.Shop.Tests.SettingOut;

/// <summary>Tenons and mortises of frames, face frames and doors by one rule, worked by hand. A third thick, shoulders of 1/4 in, mortises 1/16 in deeper: common practice, no source.</summary>
public class TenonTests
{
    private static string Text(string member, string unit = "in") => $$"""
        setout: 1
        name: Joints of a music stand
        unit: {{unit}}
        materials:
          ply: {panel: hardwood plywood, thickness: 3/4 in, grain: free}
          thin: {panel: hardwood plywood, thickness: 1/4 in, grain: free}
          posts: {stick: oak, section: 2 in x 2 in}
          rails: {stick: oak, section: 3/4 in x 3 in}
          slim: {stick: oak, section: 1/2 in x 1/2 in}
          half: {stick: oak, section: 1/2 in x 17/32 in}
          flat: {stick: oak, section: 3/4 in x 2 in}
        doors:
          kind: {frame: {of: flat, bottom rail: rails}, panel: thin, tenon: 1 in, lies: inset}
        assembly:
          - { {{member}} }

        """;

    private static (string Name, ExactLength Size)[] Cut(SetPiece set, string part, string words) =>
        [.. Assert.Single(set.Machinings, m => m.Part == part && m.Words.StartsWith(words, StringComparison.Ordinal)).Figures.Select(f => (f.Name, set.Worked[f.Key]))];

    [Fact]
    public void Frame_SaysWhereItsMortisesAre()
    {
        SetPiece set = SetOut(Text("frame: F, of: posts, rails: rails, width: 30, height: 28, depth: 20, toe: 4, above: 1/2, corners: tenon, across: [{opening: A}]"));
        // Tenon half of 2 = 1; 3/4 / 3 = 1/4 thick; mortise 1 1/16; 3 - 2 x 1/4 = 2 1/2 long. Bottom 4 + 1/4; top 28 - 1/2 - 3 + 1/4 = 24 3/4 from the lower end.
        Assert.Equal([("length", Described.Of("1")), ("thickness", Described.Of("1/4")), ("shoulder at each edge", Described.Of("1/4"))], Cut(set, "A.rail", "Tenon"));
        Assert.Equal([("depth", Described.Of("1 1/16")), ("width", Described.Of("1/4")), ("length", Described.Of("2 1/2")), ("bottom ones from the lower end", Described.Of("4 1/4")), ("top ones from the lower end", Described.Of("24 3/4"))], Cut(set, "F.post", "Mortises"));
    }

    [Fact]
    public void Door_WithLongTenons_KeepsTheEndsOfItsStiles()
    {
        SetPiece set = SetOut(Text("case: C, of: ply, width: 20, height: 30, depth: 12, doors: {like: kind, keys: [D]}"));
        // Mortise 1 1/16. Top rail 2 - 3/8 (groove) - 1/2 (end of the stile: common practice, no source) = 1 1/8; bottom rail 3 - 7/8 = 2 1/8; as thick as the groove, which is the panel.
        Assert.Equal([("depth from the edge", Described.Of("1 1/16")), ("width", Described.Of("1/4")), ("length", Described.Of("1 1/8")), ("from the end", Described.Of("1/2"))], Cut(set, "D.stile", "Mortise in the groove for the top rail"));
        Assert.Equal(("length", Described.Of("2 1/8")), Cut(set, "D.stile", "Mortise in the groove for the bottom rail")[2]);
        Assert.Equal([("from the outer edge", Described.Of("1/2")), ("haunch", Described.Of("3/8"))], Cut(set, "D.bottom-rail", "Cut the tenons away"));
    }

    [Theory]
    [InlineData("frame: F, of: posts, rails: rails, width: 762 mm, height: 711.2 mm, depth: 508 mm, toe: 101.6 mm, corners: tenon, across: [{opening: A}]", "F.tenon.mortise", "1 in + 2 mm")]
    [InlineData("case: C, of: ply, width: 508 mm, height: 762 mm, depth: 300 mm, doors: {like: kind, keys: [D]}", "kind.tenon.mortise", "27.5 mm")] // 1 in lands on 25.5 mm; and 2 mm
    public void Mortise_InMillimetres_IsTwoMillimetresDeeper(string member, string key, string deep) => AssertValues(SetOut(Text(member, "mm")), (key, deep));

    [Theory]
    [InlineData("half", null)] // 17/32 - 1/2 of shoulders: 1/32 is left
    [InlineData("slim", "tenon.no-width")] // 1/2 - 1/2
    public void Shoulders_ThatLeaveNothing_AreAStop(string mullions, string? code)
    {
        SetPiece set = SetOut(Text($"case: C, of: thin, width: 30, height: 30, depth: 12, face frame: {{of: flat, mullions: {mullions}, joint: tenon}}, across: [{{opening: A}}, {{partition: P}}, {{opening: B}}]"));
        Assert.Equal(code is null ? [] : [code], set.Findings.Where(f => f.Severity == Severity.Stop).Select(f => f.Code));
        Assert.All(set.Findings.Where(f => f.Code == code), f => Assert.True(f.Place.IsKnown));
    }
}
