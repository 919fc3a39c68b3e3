// Over 200 lines: one formula wherever wood moves, with the sum beside each.
using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Testing;
using static Setout.Shop.Tests.SettingOut.Sample;

namespace Setout.Shop.Tests.SettingOut;

/// <summary>
/// Solid wood moves across its grain by its width times the change a unit of width and per cent of moisture: Wood Handbook 2010, equation 13-2, with table 13-5.
/// Sums stand beside each test; where room is left and how wide a joint may be is common practice, no source.
/// </summary>
public class SolidWoodTests
{
    private const string Head = """
        setout: 1
        name: Boards
        unit: in
        materials:
          ply: {panel: hardwood plywood, thickness: 3/4}
          mdf: {panel: mdf, thickness: 3/4}
          half: {panel: hardwood plywood, thickness: 1/2}
          cherry: {panel: WOOD, thickness: 3/4}
          pine: {panel: white pine, thickness: 3/8}
          sheet: {panel: hardwood plywood, thickness: 3/8}
          lipped: {panel: WOOD, thickness: 3/4, edges: lipped, lip: strips}
          strips: {stick: oak, section: 1/4 x 7/8}
          runner: {stick: oak, section: 3/4 x 1 1/2}

        """;

    private static string Text(string rest, string wood = "cherry") => Head.Replace("WOOD", wood, StringComparison.Ordinal) + rest;

    private static string Case(string of, string inside = "", string size = "width: 24, height: 30, depth: 12", string more = "") => $"assembly:\n  - {{case: C, of: {of}, {size}{inside}}}\n{more}";

    private static string[] Codes(string text) => [.. SetOut(text).Findings.Where(f => f.Severity != Severity.Note).Select(f => f.Code)];

    private static Finding Only(string text) => Assert.Single(SetOut(text).Findings, f => f.Severity != Severity.Note);

    /// <summary>12 in of cherry from 30 to 50 % of humidity: 12 x 0.00248 x (9.2 - 6.2) = 0.0893 in (tables 4-2 and 13-5). 8 in of alder over 6 %: 0.12288; a chart that rounds the coefficient prints 0.1248.</summary>
    [Theory]
    [InlineData("cherry", 3, "12", 0.08928)]
    [InlineData("alder", 6, "8", 0.12288)]
    [InlineData("red oak", 6, "10", 0.2214)]
    [InlineData("quarter-sawn red oak", 6, "10", 0.0948)]
    public void Top_Moves_AsTheHandbookSays(string wood, int moisture, string depth, double inches)
    {
        SetPiece set = SetOut($"moisture: {moisture}\n" + Text(Case("ply", "", $"width: 24, height: 30, depth: {depth}", "  - {top: T, of: cherry, on: C}\n"), wood));
        Assert.Equal(inches, set.Value("T.moves").ApproximateMillimetres / 25.4, 1e-9);
        // 3/16 in for the screw, and what it moves.
        Assert.Equal(set.Value("T.moves") + Described.Of("3/16"), set.Value("T.slot-length"));
        Assert.DoesNotContain(set.Findings, f => f.Code.StartsWith("wood.", StringComparison.Ordinal));
    }

    /// <summary>A joint takes 3/32 in: of cherry over 6 % that is 6.3 in wide; what it moves and 3/16 in are 0.2814 in, on the grid 5/16.</summary>
    [Theory]
    [InlineData("6 9/32", false)]
    [InlineData("6 5/16", true)]
    public void Top_ScrewedHard_IsFoundPastItsLimit(string depth, bool isFound)
    {
        string text = Text(Case("ply", "", $"width: 24, height: 30, depth: {depth}", "  - {top: T, of: cherry, on: C, held: screws}\n"));
        Assert.Equal(isFound ? ["wood.cross-grain"] : [], Codes(text));
        if (isFound) Assert.Contains("'held: slots' for slots 5/16 in long", Only(text).Remedy, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("", "screws from below in slots across its grain", 1)]
    [InlineData(", held: slots", "screws from below in slots across its grain", 1)]
    [InlineData(", held: buttons", "buttons in a groove", 0)]
    [InlineData(", held: clips", "clips that turn", 0)]
    public void Top_ThatMayMove_IsHeldLoose(string held, string words, int slotted)
    {
        SetPiece set = SetOut(Text(Case("ply", more: $"  - {{top: T, of: cherry, on: C{held}}}\n")));
        Assert.DoesNotContain(set.Findings, f => f.Severity != Severity.Note);
        Joint joint = Assert.Single(set.Joints, j => j.Part == "T");
        Assert.Equal((words, true), (joint.Held, joint.IsLoose));
        Machining[] slots = [.. set.Machinings.Where(m => m.Part == "C.deck")];
        Assert.Equal(slotted, slots.Length);
        // Top of the case, its upper face.
        Assert.All(slots, s => Assert.Equal("upper: upper face", s.Where));
    }

    [Fact]
    public void Top_OnACaseOfTheSameWood_MovesWithIt()
    {
        SetPiece set = SetOut(Text(Case("cherry", more: "  - {top: T, of: cherry, on: C}\n")));
        Assert.Equal("screws from below", Assert.Single(set.Joints, j => j.Part == "T").Held);
        Assert.Empty(set.Findings.Where(f => f.Severity != Severity.Note));
    }

    /// <summary>Clear width 22 1/2, grooves 1/4: 23 in of cherry move 23 x 0.00248 x 6 = 0.34224 in, which the back is narrower.</summary>
    [Fact]
    public void Back_InGrooves_HasWhatItMoves()
    {
        SetPiece set = SetOut(Text(Case("ply", ", back: {of: cherry, fit: grooved, depth: 3/8}")));
        ExactLength room = Described.Of("22 1/2") + Described.Of("3/4");
        Assert.Equal(room, set.Value("C.back.room"));
        Assert.Equal(room * Rational.Of(248 * 6, 100_000), set.Value("C.back.moves"));
        Assert.Equal(room - set.Value("C.back.moves"), set.Value("C.back.width"));
        Assert.Equal(room - Described.Of("1/16"), SetOut(Text(Case("ply", ", back: {of: ply, fit: grooved, depth: 3/8}"))).Value("C.back.width"));
        Assert.Empty(Codes(Text(Case("ply", ", back: {of: cherry, fit: grooved, depth: 3/8}"))));
    }

    /// <summary>Shallow grooves let it out as it dries: half its play and half of what it moves is all of that, 0.3385 in.</summary>
    [Theory]
    [InlineData("back: {of: cherry, fit: grooved, depth: 1/4}", "case.panel-leaves-groove")]
    [InlineData("back: {of: cherry, fit: grooved, depth: 3/8, play: 1/8}", "case.panel-captured")]
    [InlineData("back: {of: cherry, fit: inset}", "wood.cross-grain")]
    [InlineData("back: {of: cherry, fit: rabbeted}", "wood.cross-grain")]
    [InlineData("back: cherry", "wood.cross-grain")]
    public void Back_HeldTooTight_IsFound(string back, string code) => Assert.Equal([code], Codes(Text(Case("ply", ", " + back))));

    /// <summary>A single inset door: opening 22 1/2, two gaps of 5/64 and what 22 1/2 in move, 22.5 x 0.01488 = 0.3348. It is hung at its gap, so the room is at the other edge.</summary>
    [Theory]
    [InlineData("left")]
    [InlineData("right")]
    public void Door_InsetSlab_LeavesRoomAtItsClosingEdge(string hinges)
    {
        SetPiece set = SetOut(Text("doors:\n  d: {of: cherry, lies: inset}\n" + Case("ply", $", doors: {{like: d, keys: [K], hinges: {hinges}}}")));
        ExactLength clear = Described.Of("22 1/2"), gap = Described.Of("5/64"), moves = clear * Rational.Of(248 * 6, 100_000);
        Assert.Equal(clear - (gap * 2) - moves, set.Value("K.width"));
        Placement door = set.Parts.Single(p => p.Key == "K").Placements[0];
        ExactLength left = door.X - Described.Of("3/4"), right = Described.Of("24") - Described.Of("3/4") - door.X - door.SizeX;
        (ExactLength hinge, ExactLength closing) = hinges == "left" ? (left, right) : (right, left);
        ExactLength step = Described.Of("1/32");
        Assert.InRange((hinge - gap).Abs().ApproximateMillimetres, 0, step.ApproximateMillimetres);
        Assert.InRange((closing - gap - moves).Abs().ApproximateMillimetres, 0, step.ApproximateMillimetres);
    }

    [Fact]
    public void Doors_InPairs_LeaveTheirRoomWhereTheyMeet()
    {
        SetPiece solid = SetOut(Text("doors:\n  d: {of: cherry, lies: inset}\n" + Case("ply", ", doors: {like: d, keys: [K, L]}"))), sheet = SetOut(Text("doors:\n  d: {of: ply, lies: inset}\n" + Case("ply", ", doors: {like: d, keys: [K, L]}")));
        ExactLength Between(SetPiece set) => set.Parts.Single(p => p.Key == "L").Placements[0].X - set.Parts.Single(p => p.Key == "K").Placements[0].X - set.Parts.Single(p => p.Key == "K").Placements[0].SizeX;
        Assert.Equal(solid.Value("C.opening.door-room"), (sheet.Value("K.width") - solid.Value("K.width")) * 2);
        Assert.Equal(solid.Value("C.opening.door-room"), Between(solid) - Between(sheet));
        Assert.Empty(solid.Findings.Where(f => f.Severity != Severity.Note));
    }

    /// <summary>A gap that was given holds a door as wide as what is left: (22 1/2 - 2 g) x 0.01488 at most g is g = 0.3251 in; one on the grid of 1/32 below is 5/16, above 11/32.</summary>
    [Theory]
    [InlineData("11/32", null)]
    [InlineData("5/16", "wood.no-room")]
    public void Door_WithAGapOfItsOwn_MustHoldWhatItMoves(string gap, string? code)
    {
        string text = Text($"doors:\n  d: {{of: cherry, lies: inset, gap: {gap}}}\n" + Case("ply", ", doors: {like: d, keys: [K]}"));
        Assert.Equal(code is null ? [] : [code], Codes(text));
        if (code is not null) Assert.Contains("Leave 11/32 in or more", Only(text).Remedy, StringComparison.Ordinal);
    }

    /// <summary>Fronts of cherry 12 in high or so grow by half of 12 x 0.01488 = 0.18 in each way: a gap of 1/8 does not hold two halves.</summary>
    [Fact]
    public void Fronts_OfBoards_NeedGapsThatHoldThem()
    {
        string Kind(string gap) => Text($"drawers:\n  d: {{sides: half, bottom: sheet, front: cherry{gap}}}\n" + Case("ply", ", down: [{opening: A, drawers: {like: d, down: [{drawer: D1}, {drawer: D2}]}}]", "width: 24, height: 30, depth: 20"));
        Finding finding = Only(Kind(""));
        Assert.Equal("wood.no-room", finding.Code);
        string needs = finding.Remedy[(finding.Remedy.IndexOf("gap: ", StringComparison.Ordinal) + 5)..finding.Remedy.IndexOf(" in'", StringComparison.Ordinal)];
        Assert.Empty(Codes(Kind($", gap: {needs}")));
        Assert.Equal(["wood.no-room"], Codes(Kind($", gap: {needs} - 1/32")));
        // The box of plywood does not follow: its screws stand in upright slots.
        Assert.Contains(SetOut(Kind("")).Machinings, m => m.Part == "D1.end" && m.Where == "front: front" && m.Figures.Any(f => f.Key.Text == "D1.front.slot"));
    }

    /// <summary>Its longer side along the grain, a bottom moves the other way: a wide drawer's out behind the back, a deep drawer's in the grooves of its sides.</summary>
    [Theory]
    [InlineData("slid in", 30, 14, "length")]
    [InlineData("grooved", 30, 14, "length")]
    [InlineData("grooved", 12, 20, "width")]
    [InlineData("slid in", 12, 20, "width")]
    public void Bottom_OfBoards_IsSmallerByWhatItMoves(string fit, int wide, int deep, string way)
    {
        string Kind(string of) => Text($"drawers:\n  d: {{sides: half, bottom: {of}, front: ply, bottom fit: {fit}, groove depth: 1/4}}\n" + Case("ply", ", down: [{opening: A, drawers: {like: d, down: [{drawer: D1}]}}]", $"width: {wide}, height: 8, depth: {deep}"));
        SetPiece solid = SetOut(Kind("pine")), sheet = SetOut(Kind("sheet"));
        string other = way == "length" ? "width" : "length";
        Assert.Equal(sheet.Value($"D1.bottom.{other}"), solid.Value($"D1.bottom.{other}"));
        // White pine, table 13-5: 0.00212. Sheet goods have 1/16 in, but for the open end of one that is slid in.
        ExactLength moves = solid.Value("D1.bottom.room") * Rational.Of(212 * 6, 100_000), play = fit == "slid in" && way == "length" ? ExactLength.Zero : Described.Of("1/16");
        Assert.Equal(moves, solid.Value("D1.bottom.moves"));
        Assert.Equal(moves - play, sheet.Value($"D1.bottom.{way}") - solid.Value($"D1.bottom.{way}"));
        Assert.DoesNotContain(solid.Findings, f => f.Severity != Severity.Note);
        Assert.Equal(fit == "slid in" && way == "length", solid.Machinings.Any(m => m.Part == "D1.bottom"));
    }

    [Theory]
    [InlineData("applied")]
    [InlineData("let in")]
    public void Bottom_OfBoardsThatIsGluedOn_IsFound(string fit)
    {
        Finding finding = SetOut(Text($"drawers:\n  d: {{sides: half, bottom: pine, front: ply, bottom fit: {fit}}}\n" + Case("ply", ", down: [{opening: A, drawers: {like: d, down: [{drawer: D1}]}}]", "width: 20, height: 8, depth: 20"))).Findings.First(f => f.Severity != Severity.Note);
        Assert.Equal(("wood.cross-grain", "D1.bottom"), (finding.Code, finding.Key));
        Assert.Contains("bottom fit", finding.Remedy, StringComparison.Ordinal);
    }

    /// <summary>A shelf of cherry between sides of plywood leaves 12 x 0.01488 behind it; in a case of cherry nothing, and of oak what oak moves less than nothing.</summary>
    [Theory]
    [InlineData("ply", "dado", 1488)]
    [InlineData("ply", "adjustable", 1488)]
    [InlineData("cherry", "dado", 0)]
    [InlineData("cherry", "adjustable", 0)]
    public void Shelf_LeavesWhatItMovesMoreThanItsSides(string of, string fit, int share)
    {
        SetPiece set = SetOut(Text(Case(of, $", shelves: {{of: cherry, fit: {fit}, down: [S]}}")));
        Assert.Equal(set.Value("C.opening.depth") * (Rational.One - Rational.Of(share, 100_000)), set.Value("S.width"));
        Assert.DoesNotContain(set.Findings, f => f.Severity != Severity.Note);
        if (fit == "dado") Assert.Equal(share > 0, set.Joints.First(j => j.Part == "S").IsLoose);
    }

    [Theory]
    [InlineData("ply", "cherry", "S", "11 13/16")]
    [InlineData("cherry", "ply", "C.side", "12")]
    public void Shelf_ScrewedFastToWhatDoesNotFollow_IsFound(string of, string shelf, string moving, string along)
    {
        Finding finding = Only(Text(Case(of, $", shelves: {{of: {shelf}, fit: fixed, down: [S]}}")));
        Assert.Equal(("wood.cross-grain", moving), (finding.Code, finding.Key));
        Assert.Contains($"{along} in across its grain", finding.Words, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("cherry", true)]
    [InlineData("ply", false)]
    public void Runners_AcrossBoards_StandInSlots(string of, bool isSlotted)
    {
        SetPiece set = SetOut(Text("drawers:\n  d: {sides: half, bottom: sheet, front: ply, slides: runners, runner: runner}\n" + Case(of, ", down: [{opening: A, drawers: {like: d, down: [{drawer: D1}]}}]", "width: 20, height: 8, depth: 20")));
        Assert.Equal(isSlotted, set.Machinings.Any(m => m.Part == "D1.runner"));
        Assert.DoesNotContain(set.Findings, f => f.Severity != Severity.Note);
        if (isSlotted) Assert.Equal((set.Value("D1.runner.length.as-cut") * Rational.Of(1488, 100_000)) + Described.Of("3/16"), set.Value("D1.runner.slot"));
    }

    /// <summary>Both ends of one top are one thing to put right.</summary>
    [Theory]
    [InlineData("", "edging: {of: strips, sides: [front]}", 0)]
    [InlineData("", "edging: {of: strips, corners: butted, sides: [front, left]}", 1)]
    [InlineData("", "edging: {of: strips}", 1)]
    [InlineData("", "layers: [cherry, cherry]", 0)]
    [InlineData("", "layers: [cherry, mdf]", 1)]
    [InlineData("", "laminate: {of: HGS, faces: both}", 1)]
    [InlineData("lipped", "", 1)]
    public void Top_GluedAcrossItsGrain_IsFound(string of, string more, int findings)
    {
        string[] codes = Codes(Text(Case("ply", more: $"  - {{top: T, of: {(of.Length > 0 ? of : "cherry")}, on: C, overhang: {{front: 1, left: 1, right: 1}}{(more.Length > 0 ? ", " + more : "")}}}\n")));
        Assert.Equal(Enumerable.Repeat("wood.cross-grain", findings), codes.Where(c => c.StartsWith("wood.", StringComparison.Ordinal)));
    }

    [Fact]
    public void Moves_InInchesAndMillimetres_Agree()
    {
        SetPiece inch = SetOut(Text(Case("ply", more: "  - {top: T, of: cherry, on: C}\n")));
        SetPiece metric = SetOut(Text(Case("ply", "", "width: 24 in, height: 30 in, depth: 12 in", "  - {top: T, of: cherry, on: C}\n")).Replace("unit: in", "unit: mm", StringComparison.Ordinal).Replace("thickness: 3/4", "thickness: 3/4 in", StringComparison.Ordinal)
            .Replace("thickness: 1/2", "thickness: 1/2 in", StringComparison.Ordinal).Replace("thickness: 3/8", "thickness: 3/8 in", StringComparison.Ordinal).Replace("1/4 x 7/8", "1/4 in x 7/8 in", StringComparison.Ordinal).Replace("3/4 x 1 1/2", "3/4 in x 1 1/2 in", StringComparison.Ordinal));
        // The same to what half a step of either grid moves.
        Assert.InRange(Math.Abs(inch.Value("T.moves").ApproximateMillimetres - metric.Value("T.moves").ApproximateMillimetres), 0, 0.01);
    }

    /// <summary>What has no solid wood in it knows nothing of it.</summary>
    [Fact]
    public void SheetGoods_HaveNoMovement()
    {
        SetPiece set = SetOut(Text("doors:\n  d: {of: ply, lies: inset}\n" + Case("ply", ", back: {of: half, fit: grooved}, down: [{opening: A, doors: {like: d, keys: [K]}, shelves: {fit: adjustable, down: [S]}}]", more: "  - {top: T, of: mdf, on: C, held: screws}\n")));
        Assert.DoesNotContain(set.Worked.Order, k => k.Text.Contains("moves", StringComparison.Ordinal) || k.Text.Contains("room", StringComparison.Ordinal) || k.Text.EndsWith("slot-length", StringComparison.Ordinal));
        Assert.DoesNotContain(set.Findings, f => f.Code.StartsWith("wood.", StringComparison.Ordinal));
    }

    /// <summary>A case of cherry beside one of plywood: sides 12 deep, 12 x 0.01488 = 0.179 in; the rear screws stand in slots of that and 3/16. Beside one of cherry they do not.</summary>
    [Theory]
    [InlineData("ply", true)]
    [InlineData("cherry", false)]
    public void Neighbours_OfUnlikeWood_AreScrewedInSlotsBehind(string of, bool isSlotted)
    {
        SetPiece set = SetOut(Text(Case("cherry", more: $"  - {{case: D, of: {of}, width: 20, height: 30, depth: 12, beside: C}}\n")));
        Machining[] slots = [.. set.Machinings.Where(m => m.Part == "D.side")];
        Assert.Equal(isSlotted ? 1 : 0, slots.Length);
        if (!isSlotted) return;
        Assert.Equal("left: left face", slots[0].Where);
        Assert.Equal((Described.Of("12") * Rational.Of(1488, 100_000)) + Described.Of("3/16"), set.Value("D.beside-slot"));
    }
}
