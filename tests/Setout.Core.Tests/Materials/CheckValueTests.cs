// Over 200 lines: one table of published check values, each quantity with the small piece that shows it.
using System.Collections.Immutable;
using System.Reflection;
using System.Text.Json;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;
using Setout.Core.SettingOut.Whole;
using Setout.Core.Workings;
using Setout.Testing;

namespace Setout.Core.Tests.Materials;

/// <summary>
/// Each row of data/check-values.json against the code. A row names its own source and how it was come by; both stand in the name of
/// the test. Where a row needs a whole piece, a small one is set out and the quantity read.
/// </summary>
public class CheckValueTests
{
    private static readonly ImmutableDictionary<string, JsonElement> s_cases = Load();

    private static ImmutableDictionary<string, JsonElement> Load()
    {
        using Stream stream = Assembly.GetExecutingAssembly().GetManifestResourceStream("check-values.json")!;
        using JsonDocument document = JsonDocument.Parse(stream);
        return document.RootElement.GetProperty("cases").EnumerateArray().ToImmutableDictionary(c => c.GetProperty("id").GetString()!, c => c.Clone());
    }

    private static readonly ImmutableDictionary<string, string> s_bases = new Dictionary<string, string>
    {
        ["S"] = "standard",
        ["T"] = "trade page",
        ["C"] = "common practice",
        ["M"] = "from memory, verify",
        ["D"] = "derived",
    }.ToImmutableDictionary();

    public static IEnumerable<TheoryDataRow<string>> Rows() => s_cases.OrderBy(c => c.Key, StringComparer.Ordinal).Select(c => new TheoryDataRow<string>(c.Key)
    {
        TestDisplayName = $"{c.Key}: {c.Value.GetProperty("source").GetString()} [{s_bases[c.Value.GetProperty("basis").GetString()!]}]",
    });

    [Theory]
    [MemberData(nameof(Rows))]
    public void CheckValue_AgainstTheCode_IsWithinItsTolerance(string id)
    {
        JsonElement row = s_cases[id], inputs = row.GetProperty("inputs");
        string unit = row.GetProperty("unit").GetString()!;
        foreach ((string name, ExactLength actual) in Actual(row.GetProperty("quantity").GetString()!, inputs))
        {
            decimal expected = name.Length == 0 ? row.GetProperty("expected").GetDecimal() : row.GetProperty("expected").GetProperty(name).GetDecimal();
            Rational found = unit == "mm" ? actual.Millimetres : actual.Inches, off = found - Rational.Of(expected);
            Rational tolerance = Rational.Of((decimal)row.GetProperty("tolerance").GetDouble());
            Assert.True((off.Sign < 0 ? -off : off).CompareTo(tolerance) <= 0, $"{id} {name}: {found} {unit}, expected {expected} within {tolerance}");
        }
    }

    private static IEnumerable<(string Name, ExactLength Actual)> Actual(string quantity, JsonElement inputs)
    {
        string Text(string key) => inputs.GetProperty(key).GetString()!;
        ExactLength Inches(string key) => ExactLength.FromInches(Rational.Of(inputs.GetProperty(key).GetDecimal()));
        switch (quantity)
        {
            case "softwood_dry_size":
                LumberFact lumber = LumberTable.Find(Text("nominal"))!;
                return [("thickness", lumber.Thickness), ("width", lumber.Width)];
            case "panel_thickness_range":
                PanelFact fact = PanelTable.Find(KindOf(Text("panel")), inputs.TryGetProperty("nominal", out JsonElement label) ? label.GetString()! : $"{inputs.GetProperty("nominal_mm")} mm")!;
                return [("min", fact.Least!.Value), ("max", fact.Most!.Value)];
            case "plausible_actual_thickness":
                return [("at_most", PanelTable.Find("hardwood plywood", "3/4")!.Default)];
            case "sheet_size_in_inches":
                SheetSize sheet = PanelTable.SizesOf("birch plywood").Single(s => s.Label == "5x5 ft");
                return [("width", sheet.Across), ("length", sheet.Along)];
            case "sheet_weight":
                return [];
            case "pocket_screw_length":
                return [("", TradeRules.PocketScrewFor(Inches("stock_thickness_in"))!.Value.Screw)];
            case "pocket_screw_thread":
                Assert.Equal("plywood", Text("material"));
                Assert.Contains(Drawer(Described.Of("15 in")).Hardware, h => h.Name.StartsWith("Pocket screw, coarse", StringComparison.Ordinal));
                return [];
            case "drawer_box_width_side_slide":
                // The rule aims for the middle of the window; its ends are where the play has its limits.
                SetPiece window = Drawer(Inches("opening_in"));
                Gap gap = Assert.Single(window.Gaps, g => g.Key.Text == "D1.play");
                bool loose = inputs.GetProperty("clearance_each_side_in").GetDecimal() > 0.5m;
                return [("", window.Worked[new("D1.box.as-built")] + window.Worked[new("D1.play")] - (loose ? gap.Most : gap.Least))];
            case "drawer_box_width_under_slide":
                bool metric = inputs.TryGetProperty("opening_mm", out _);
                ExactLength Given(string name) => metric ? ExactLength.FromMillimetres(Rational.Of(inputs.GetProperty(name + "_mm").GetDecimal())) : Inches(name + "_in");
                return [("", Drawer(Given("opening"), grid: Grid.FromStep(Length.FromTicks(1)), side: $"{Given("side").Millimetres} mm", ways: k => k with { Slides = SlideWay.Under }).Worked[new("D1.box.width")])];
            case "largest_slide_length":
                // A case so deep that just the usable depth is left: setback and rear clearance on top of it.
                Assert.Equal([.. inputs.GetProperty("series_in").EnumerateArray().Select(s => ExactLength.FromInches(s.GetInt64()))], TradeRules.Get("SS5").Series);
                SetPiece deep = Drawer(Described.Of("15 in"), Inches("usable_depth_in") + Described.Of("2 mm") + Described.Of("1/8 in"), Grid.FromStep(Length.FromTicks(1)));
                Assert.Equal(Inches("usable_depth_in"), deep.Worked[new("D1.slide.usable")]);
                return [("", deep.Worked[new("D1.slide.length")])];
            case "slide_setback":
                // Where the slide stands behind the face, as the depth usable for it takes it off.
                var usable = (Sum)Drawer(Described.Of("15 in")).Worked.Values[new("D1.slide.usable")].Quantity.Working;
                return [("", usable.Terms.Single(t => t.Words == "setback from the face").Figure!.Value)];
            case "equal_front_height":
                return FrontHeights(inputs);
            case "drawer_box_part_count":
                // Two sides, front and back, bottom; the false front is not part of the box.
                Assert.Equal(5, Drawer(Described.Of("15 in")).Parts.Where(p => p.Role is PartRole.BoxSide or PartRole.BoxEnd or PartRole.BoxBottom).Sum(p => p.Count));
                return [];
            case "drawer_bottom_size":
                return Bottom(Inches("inside_w_in"), Inches("inside_l_in"), Inches("groove_depth_in"));
            case "laminate_thickness":
                return [("", LaminateTable.Find(Text("grade"))!.Thickness)];
            case "laminated_thickness":
                return [("", Laminated(Inches("core_in"), Inches("face_in"), backer: Inches("backer_in")).Worked[new("T.thickness")])];
            case "laminated_length":
                Assert.Equal(2, inputs.GetProperty("laminated_ends").GetInt32());
                ExactLength film = Inches("edge_laminate_in"), core = Inches("core_length_in");
                SetPiece ends = Laminated(Described.Of("3/4"), film, length: core + (film * 2), edges: [TopSide.Left, TopSide.Right]);
                Assert.Equal(core, ends.Worked[new("T.length.to-cut")]);
                return [("", ends.Worked[new("T.outside.length")])];
            case "laminate_rough_size":
                SetPiece rough = Laminated(Described.Of("3/4"), Described.Of("0.048"), length: Inches("finished_l_in"), depth: Inches("finished_w_in"), over: Inches("oversize_per_edge_in"));
                return [("length", rough.Worked[new("T.laminate.length")]), ("width", rough.Worked[new("T.laminate.width")])];
            default:
                throw new InvalidOperationException($"No check for {quantity}.");
        }
    }

    private static string KindOf(string panel) => panel switch
    {
        "softwood_plywood_unsanded" => "softwood plywood",
        "softwood_plywood_sanded" => "sanded softwood plywood",
        "hardwood_plywood" => "hardwood plywood",
        "birch_plywood_metric" => "birch plywood",
        _ => panel,
    };

    /// <summary>A laminated top on a case of its size.</summary>
    private static SetPiece Laminated(ExactLength core, ExactLength film, ExactLength? backer = null, ExactLength? length = null, ExactLength? depth = null, ExactLength? over = null, ImmutableArray<TopSide> edges = default)
    {
        Given zero = Described.Given(ExactLength.Zero);
        var top = new Top("T", "", Described.Named("slab"), zero, zero, zero, zero, Place.None)
        {
            Laminate = new(Described.Named("own"), Described.Given(film), false, backer is { } b ? Described.Given(b) : null, edges.IsDefault ? [] : edges, over is { } o ? Described.Given(o) : null, Place.None),
        };
        Piece piece = Described.Piece(LengthUnit.Inch, [Described.Sheet("wood", Described.Of("1/2")), Described.Sheet("slab", core)], [],
            Described.Case(length ?? Described.Of("60"), Described.Of("30"), depth ?? Described.Of("24"), null), top);
        return PieceSetOut.Of(piece, Grid.SixtyFourth, ImmutableDictionary<QuantityKey, Pin>.Empty);
    }

    /// <summary>One drawer in a case whose clear width is given: sides of 1/2 in, so that the case is an inch wider.</summary>
    private static SetPiece Drawer(ExactLength opening, ExactLength? depth = null, Grid? grid = null, string side = "1/2", Given? slide = null, Func<DrawerKind, DrawerKind>? ways = null)
    {
        ExactLength wood = Described.Of("1/2");
        Piece piece = Described.Piece(LengthUnit.Inch,
            [Described.Sheet("wood", wood), Described.Sheet("thin", Described.Of(side)), Described.Sheet("bottom", Described.Of("1/4"))], [ways is null ? Described.Kind("box", slide: slide) : ways(Described.Kind("box"))],
            Described.Case(opening + (wood * 2), Described.Of("10"), depth ?? Described.Of("24"), new DrawerBank(Described.Named("box"), [Described.Drawer("D1")])));
        return PieceSetOut.Of(piece, grid ?? Grid.SixtyFourth, ImmutableDictionary<QuantityKey, Pin>.Empty);
    }

    /// <summary>So many fronts that cover a height exactly: overlay zero, and the opening as high as the fronts with what is above the top one left out.</summary>
    private static (string, ExactLength)[] FrontHeights(JsonElement inputs)
    {
        bool metric = inputs.TryGetProperty("height_mm", out _);
        string unit = metric ? "mm" : "in";
        ExactLength Length(string key)
        {
            Rational value = Rational.Of(inputs.GetProperty($"{key}_{unit}").GetDecimal());
            return metric ? ExactLength.FromMillimetres(value) : ExactLength.FromInches(value);
        }
        ExactLength wood = Described.Of("1/2"), clear = Length("height") - Length("above") - Length("below");
        int count = inputs.GetProperty("count").GetInt32();
        Piece piece = Described.Piece(metric ? LengthUnit.Millimetre : LengthUnit.Inch,
            [Described.Sheet("wood", wood), Described.Sheet("thin", wood), Described.Sheet("bottom", Described.Of("1/4"))],
            [Described.Kind("box", gap: Described.Given(Length("gap")), overlay: Described.Given(ExactLength.Zero))],
            Described.Case(Described.Of("24"), clear + (wood * 2), Described.Of("24"),
                new DrawerBank(Described.Named("box"), [.. Enumerable.Range(1, count).Select(i => Described.Drawer($"D{i}"))])));
        // A grid as fine as a tick: the row speaks of exact heights.
        SetPiece set = PieceSetOut.Of(piece, Grid.FromStep(Core.Measures.Length.FromTicks(1)), ImmutableDictionary<QuantityKey, Pin>.Empty);
        return [.. Enumerable.Range(1, count).Select(i => ("", set.Worked[new($"D{i}.front.height")]))];
    }

    /// <summary>A box of 1/2 in sides with the inside wanted: groove of 1/4 in, as half the side allows.</summary>
    private static (string, ExactLength)[] Bottom(ExactLength insideWidth, ExactLength insideLength, ExactLength groove)
    {
        ExactLength side = Described.Of("1/2");
        // Opening = box + two slides + play; the slide is as long as the box.
        SetPiece set = Drawer(insideWidth + (side * 2) + Described.Of("1 1/32"), slide: Described.Given(insideLength + (side * 2)));
        Assert.Equal(insideWidth, set.Worked[new("D1.end.length.as-cut")]);
        Assert.Equal(groove, set.Worked[new("D1.groove.depth.to-cut")]);
        return [("width", set.Worked[new("D1.bottom.width")]), ("length", set.Worked[new("D1.bottom.length")])];
    }

    [Fact]
    public void MassOf_SheetOfMdf_CoversThePublishedWeight()
    {
        // mdf_weight: 96 lb within 1.5 lb for 4x8 ft of 3/4 in, density from memory; trade pages give about 97 lb. The code works from
        // the range of the Wood Handbook (FPL-GTR-190, table 12-1), so its bound must hold the whole of that.
        JsonElement row = s_cases["mdf_weight"];
        double pounds = row.GetProperty("expected").GetDouble(), tolerance = row.GetProperty("tolerance").GetDouble();
        Mass mass = PanelTable.MassOf("mdf", Length.FromInches(48) * Length.FromInches(96), Described.Of("3/4"))!.Value;
        Assert.True(mass.Kilograms.Covers((pounds - tolerance) / Mass.PoundsPerKilogram));
        Assert.True(mass.Kilograms.Covers((pounds + tolerance) / Mass.PoundsPerKilogram));
        // The middle is no wild guess either: 800 kg/m3 by 0.05663 m3 is 45.3 kg.
        Assert.InRange(mass.Kilograms.Value, 45.2, 45.4);
        Assert.Null(PanelTable.MassOf("cork", Length.FromInches(48) * Length.FromInches(96), Described.Of("3/4")));
    }
}
