// Over 200 lines: a table of every edit, one short test each.
using System.Collections.Immutable;
using Setout.Core.Measures.Text;
using Setout.Core.SettingOut;
using Setout.Shop.Edits;
using Setout.Shop.Plans;
using Setout.Shop.Texts;
using Setout.Shop.Tests.SettingOut;

namespace Setout.Shop.Tests.Edits;

/// <summary>Each edit on a sample: what changes in the text, what it is called, what is refused and why.</summary>
public class TradeEditTests
{
    private static Edited Do(string text, Edit edit, EditBench? bench = null)
    {
        Edited edited = edit.ApplyTo(text, bench);
        Assert.True(edited.IsDone, $"{edit}: {string.Join("; ", edited.Findings.Select(f => $"{f.Code} {f.Words} {f.Remedy}"))}");
        Assert.True(PieceText.Read(edited.Text!).IsSound);
        return edited;
    }

    private static string Refused(string text, Edit edit, EditBench? bench = null)
    {
        Edited edited = edit.ApplyTo(text, bench);
        Assert.Null(edited.Text);
        Assert.All(edited.Findings, f => Assert.NotEmpty(f.Remedy));
        return edited.Findings[0].Code;
    }

    // The lines that are gone and those that came, in their order.
    private static (string[] Gone, string[] Come) Lines(string before, string after)
    {
        string[] a = before.Split('\n'), b = after.Split('\n');
        int head = a.Zip(b).TakeWhile(p => p.First == p.Second).Count(), tail = a.Reverse().Zip(b.Reverse()).Take(Math.Min(a.Length, b.Length) - head).TakeWhile(p => p.First == p.Second).Count();
        return (a[head..^tail], b[head..^tail]);
    }

    private static void Changes(string sample, Edit edit, string name, string[] gone, string[] come)
    {
        string text = Sample.Text(sample);
        Edited edited = Do(text, edit);
        (string[] left, string[] came) = Lines(text, edited.Text!);
        Assert.Equal(name, edited.Name);
        Assert.Equal(gone, left);
        Assert.Equal(come, came);
    }

    [Fact]
    public void SetShare_WidthOfABay_ChangesOneFigure() => Changes(Sample.Bench, new SetShare("L", "22 1/2"), "width of opening L: 21 to 22 1/2", ["        width: 21"], ["        width: 22 1/2"]);

    [Fact]
    public void SetAny_SumAsTyped_StaysASum() => Changes(Sample.Bench, SetAny.OutsideSize("F", "width", " 96/3 + 44 "), "width of frame F: 78 to 96/3 + 44", ["    width: 78"], ["    width: 96/3 + 44"]);

    [Fact]
    public void SetAny_KeyThatIsMissing_StandsBehindTheSizes() => Changes(Sample.Cabinet, new SetAny(TextPath.Of("C", "corners"), "dado"), "corners of case C: dado", [], ["    corners: dado"]);

    [Fact]
    public void SetAny_MapThatIsMissing_IsBegun() => Changes(Sample.Cabinet, new SetAny(TextPath.Of("C", "toe", "height"), "4"), "height of toe of case C: 4", [], ["    toe: {height: 4}"]);

    [Fact]
    public void SetWritten_ListsAndMaps_StandAsTheyWereTyped()
    {
        Changes(Sample.Bench, new SetWritten(TextPath.Of("T", "layers"), "[slab, {of: slab, seams: [40]}]"), "layers of top T, as written", [], ["    layers: [slab, {of: slab, seams: [40]}]"]);
        Changes(Sample.Cabinet, new SetWritten(TextPath.Of("C", "back"), "of: thin\nfit: grooved\n"), "back of case C, as written", ["    back: thin"], ["    back: {of: thin, fit: grooved}"]);
        Assert.Equal("text.unknown-key", Refused(Sample.Text(Sample.Cabinet), new SetWritten(TextPath.Of("C", "back"), "{of: thin, fitt: grooved}")));
        Assert.Equal("text.not-yaml", Refused(Sample.Text(Sample.Cabinet), new SetWritten(TextPath.Of("C", "back"), "{of: thin")));
    }

    [Theory]
    [InlineData("width", "12 ells", "length.unknown-word")]
    [InlineData("width", "-3", "text.absurd-size")]
    [InlineData("case", "D", "edit.key")]
    [InlineData("across", "3", "splice.no-room")]
    [InlineData("hung", "perhaps", "text.unknown-word")]
    [InlineData("width", "38", "edit.nothing")]
    public void SetAny_WhatCannotBe_IsRefused(string key, string value, string code)
    {
        Assert.Equal(code, Refused(Sample.Text(Sample.Cabinet), new SetAny(TextPath.Of("C", key), value)));
    }

    [Fact]
    public void SetShare_TheRest_MakesItsNeighbourTheRest() => Changes(Sample.Bench, new SetShare("K", "30"), "width of opening K: rest to 30",
        ["        width: rest", "      - posts: M2", "      - opening: R", "        width: 21"], ["        width: 30", "      - posts: M2", "      - opening: R", "        width: rest"]);

    [Fact]
    public void SetFront_LengthBesideTheRest_ChangesOneFigure() => Changes(Sample.Bench, new SetFront("L2", "5 1/2"), "front of drawer L2: 5 to 5 1/2",
        ["            - {drawer: L2, front: 5}"], ["            - {drawer: L2, front: 5 1/2}"]);

    [Fact]
    public void AddDrawer_BesideARest_HasTheHeightOfItsNeighbour() => Changes(Sample.Bench, new AddDrawer("L", 1), "drawer L5 in opening L", [], ["            - {drawer: L5, front: 4}"]);

    [Fact]
    public void TakeOutDrawer_TheRest_MakesItsNeighbourTheRest() => Changes(Sample.Bench, new TakeOutDrawer("R3"), "take out drawer R3",
        ["            - {drawer: R2, front: 8}", "            - {drawer: R3, front: rest}"], ["            - {drawer: R2, front: rest}"]);

    [Fact]
    public void AddDrawer_Graduated_GetsANumberOfTheRatio() => Changes("sewing-corner.yaml", new AddDrawer("A"), "drawer A4 in case A",
        ["      graduated: \"3:4:5\"", "      down: [{drawer: A1}, {drawer: A2}, {drawer: A3}]"], ["      graduated: \"3:4:5:5\"", "      down: [{drawer: A1}, {drawer: A2}, {drawer: A3}, {drawer: A4}]"]);

    [Fact]
    public void Divide_OpenBay_BySizesTakesASheetForTheDeck() => Changes(Sample.Bench, Divide.At("K", false, "8"), "opening K divided down into 2", [],
        ["        down:", "          - {opening: K1, height: 8}", "          - {deck: E1, of: carcase}", "          - {opening: K2, height: rest}"]);

    [Fact]
    public void Divide_ByRails_NamesNoSheet() => Changes(Sample.Bench, Divide.Equally("K", false, 3, Between.Rails), "opening K divided down into 3", [],
        ["        down:", "          - {opening: K1}", "          - {rail: H1}", "          - {opening: K2}", "          - {rail: H2}", "          - {opening: K3}"]);

    [Fact]
    public void Divide_BayByPosts_KeepsItsKeyAndTheRest() => Changes(Sample.Bench, Divide.At("K", true, "12", with: Between.Posts), "bay K divided by posts into 2",
        [], ["        width: 12", "      - posts: M3", "      - opening: A"]);

    [Fact]
    public void Divide_BayWithASizeByPosts_GivesTheOtherASize()
    {
        // 21 less 10 and posts of 3 1/2.
        string text = Sample.Text(Sample.Bench);
        Edited edited = Do(text, Divide.At("L", true, "10", with: Between.Posts));
        Assert.Equal(["        width: 21"], Lines(text, edited.Text!).Gone[..1]);
        Assert.Contains("      - opening: A\n        width: 7 1/2\n", edited.Text!, StringComparison.Ordinal);
        Assert.False(RandomEditsTests.SetOut(Do(text, new Empty("L")).Text!).IsStopped);
    }

    [Fact]
    public void PutDrawers_InABareBay_GetsSlidePanels() => Changes(Sample.Bench, new PutDrawers("K", 2), "2 drawers in K",
        [], ["        slide panels: carcase", "        drawers:", "          like: bench", "          down:", "            - {drawer: K1}", "            - {drawer: K2}"]);

    [Fact]
    public void PutShelves_InAFrame_NamesASheet() => Changes(Sample.Bench, new PutShelves("K", 2, "fixed"), "2 shelves in K", [], ["        shelves: {of: carcase, down: [K1, K2]}"]);

    [Fact]
    public void PutDoors_WithoutAKind_AddsOne()
    {
        Edited edited = Do(Sample.Text(Sample.Cabinet), new PutDoors("A", true));
        Assert.Contains("\ndoors:\n  door: {of: birch}\n", edited.Text!, StringComparison.Ordinal);
        Assert.Contains("        doors: {like: door, keys: [A4, A5]}\n", edited.Text!, StringComparison.Ordinal);
        Assert.Equal("edit.kind-added", Assert.Single(edited.Findings).Code);
        Assert.False(RandomEditsTests.SetOut(edited.Text!).IsStopped);
    }

    [Fact]
    public void MoveDivider_BesideTheRest_SetsTheOther()
    {
        Changes(Sample.Bench, new MoveDivider("M1", "24"), "posts M1 moved: width of L 21 to 24", ["        width: 21"], ["        width: 24"]);
        // K is 22 as it was set out: 78 less two bays of 21 and four posts of 3 1/2.
        Changes(Sample.Bench, new MoveDivider("M2", "24"), "posts M2 moved: width of K 22 to 24", ["        width: 21"], ["        width: 19"]);
        Assert.Equal("edit.no-room", Refused(Sample.Text(Sample.Bench), new MoveDivider("M2", "51")));
    }

    [Fact]
    public void MoveDivider_AmongEqualShares_LeavesTheOthersWhereTheyWere()
    {
        string text = Do(Sample.Text(Sample.Cabinet), new Empty("C", "across")).Text!;
        text = Do(text, Divide.Equally("C", true, 4)).Text!;
        SetPiece before = RandomEditsTests.SetOut(text);
        string[] dividers = [.. before.Parts.Where(p => p.Role == PartRole.Partition).Select(p => p.Key)];
        Edited moved = Do(text, new MoveDivider(dividers[0], "6"));
        SetPiece after = RandomEditsTests.SetOut(moved.Text!);
        Assert.NotEqual(before.Parts.First(p => p.Key == dividers[0]).Placements[0].X, after.Parts.First(p => p.Key == dividers[0]).Placements[0].X);
        Assert.All(dividers[1..], d => Assert.True((before.Parts.First(p => p.Key == d).Placements[0].X - after.Parts.First(p => p.Key == d).Placements[0].X).Abs() <= after.Grid.Step));
    }

    [Fact]
    public void TakeOutDivider_FilledAndOpen_KeepsWhatIsFilled()
    {
        Edited edited = Do(Sample.Text(Sample.Bench), new TakeOutDivider("M1"));
        Assert.Equal("posts M1 taken out: L and K are L", edited.Name);
        Assert.Contains("      - opening: L\n        width: rest\n        slide panels: carcase\n", edited.Text!, StringComparison.Ordinal);
        Assert.Contains("L4, front: rest}\n      - posts: M2\n", edited.Text!, StringComparison.Ordinal);
        Edited other = Do(Sample.Text(Sample.Bench), new TakeOutDivider("M2"));
        Assert.Contains("      - posts: M1\n      - opening: R\n        width: rest\n", other.Text!, StringComparison.Ordinal);
    }

    [Fact]
    public void TakeOutOpening_OfThree_LeavesTwo()
    {
        Edited edited = Do(Sample.Text(Sample.Bench), new TakeOutOpening("L"));
        Assert.DoesNotContain("M1", edited.Text!, StringComparison.Ordinal);
        Assert.DoesNotContain("# from the top", edited.Text!, StringComparison.Ordinal);
        Assert.False(RandomEditsTests.SetOut(edited.Text!).IsStopped);
    }

    [Fact]
    public void TakeOut_WhatIsCut_IsRefusedAndSaysWhereTheMarkIsTakenBack()
    {
        Log log = LogText.Read("setout-log: 1\nentries:\n  - {id: a1, at: \"2026-05-04T09:40:00Z\", cut: [L1.side, R1.side]}\n  - {id: a2, at: \"2026-05-04T09:41:00Z\", cut: [L2.front]}\n  - {id: a3, at: \"2026-05-04T09:42:00Z\", read: R.width, values: [21 in]}\n").Value!;
        var bench = EditBench.Empty with { Log = log };
        Edited refused = new TakeOutOpening("L").ApplyTo(Sample.Text(Sample.Bench), bench);
        Assert.Equal(["edit.cut", "edit.cut"], refused.Findings.Select(f => f.Code));
        Assert.StartsWith("L1.side is marked cut", refused.Findings[0].Words, StringComparison.Ordinal);
        Assert.StartsWith("L2.front is marked cut", refused.Findings[1].Words, StringComparison.Ordinal);
        // Whoever edits has a page before him, on which no entry goes by its id.
        Assert.All(refused.Findings, f => Assert.DoesNotMatch(@"\ba[12]\b", f.Words + f.Remedy));
        Assert.All(refused.Findings, f => Assert.Contains("“What was read and marked”", f.Remedy, StringComparison.Ordinal));
        Assert.Equal("edit.cut", Refused(Sample.Text(Sample.Bench), new Empty("R"), bench));
        Assert.True(new TakeOutDrawer("L4").ApplyTo(Sample.Text(Sample.Bench), bench).IsDone);
        Log voided = LogText.Read("setout-log: 1\nentries:\n  - {id: a1, at: \"2026-05-04T09:40:00Z\", cut: [L1.side]}\n  - {id: a2, at: \"2026-05-04T09:41:00Z\", void: a1}\n").Value!;
        // Not cut after all; but the key of what was once marked is not given to anything else.
        Edited without = Do(Sample.Text(Sample.Bench), new TakeOutDrawer("L1"), EditBench.Empty with { Log = voided });
        Assert.Equal("L5", Do(without.Text!, new AddDrawer("L"), EditBench.Empty with { Log = voided }).Chosen);
        Assert.Equal("L1", Do(without.Text!, new AddDrawer("L")).Chosen);
        Assert.Equal("L6", Do(without.Text!, new AddDrawer("L"), EditBench.Empty with { Taken = ["L1", "L5"] }).Chosen);
    }

    [Fact]
    public void TakeOut_WhatWasRead_SaysThatTheReadingIsIdle()
    {
        Log log = LogText.Read("setout-log: 1\nentries:\n  - {id: a3, at: \"2026-05-04T09:42:00Z\", read: R.width, values: [21 in]}\n").Value!;
        Assert.Equal("edit.reading-idle", Assert.Single(new TakeOutOpening("R").ApplyTo(Sample.Text(Sample.Bench), EditBench.Empty with { Log = log }).Findings).Code);
    }

    [Fact]
    public void Edits_ThatDoNotFit_AreRefusedWithARemedy()
    {
        string bench = Sample.Text(Sample.Bench), cabinet = Sample.Text(Sample.Cabinet), sewing = Sample.Text("sewing-corner.yaml");
        Assert.Equal("edit.not-open", Refused(bench, Divide.Equally("L", true, 2)));
        Assert.Equal("edit.not-open", Refused(bench, new PutShelves("L", 2)));
        Assert.Equal("edit.behind-doors", Refused(Do(sewing, new Empty("B1", "shelves")).Text!, new PutDrawers("B1", 2)));
        Assert.Equal("edit.behind-doors", Refused(bench, new PutDoors("L", true)));
        Assert.Equal("edit.behind-doors", Refused(cabinet, new PutDoors("C", true)));
        Assert.Equal("edit.posts", Refused(cabinet, Divide.Equally("A", true, 2, Between.Posts)));
        Assert.Equal("edit.rails", Refused(Do(cabinet, new Empty("A")).Text!, Divide.Equally("A", false, 2, Between.Rails)));
        Assert.Equal("edit.count", Refused(bench, Divide.Equally("K", true, 1)));
        Assert.Equal("edit.count", Refused(bench, new PutDrawers("K", 31)));
        Assert.Equal("edit.no-such-key", Refused(bench, new Empty("Z")));
        Assert.Equal("edit.other-kind", Refused(bench, new TakeOutDrawer("K")));
        Assert.Equal("edit.two-contents", Refused(cabinet, new TakeOutDivider("P")));
        Assert.Equal("edit.in-use", Refused(bench, new TakeOut("studs")));
        Assert.Equal("edit.in-use", Refused(sewing, new TakeOut("framed")));
        Assert.Equal("edit.stands-by", Refused(sewing, new TakeOut("A")));
        Assert.Equal("edit.stands-by", Refused(bench, new TakeOut("F")));
        Assert.Equal("edit.covered", Refused(bench, new AddTop()));
        Assert.Equal("edit.not-there", Refused(bench, new UseMaterial(TextPath.Of("F", "of"), "walnut")));
        Assert.Equal("edit.name-taken", Refused(bench, new AddMaterial(Wood.Sheet("mdf", "1/2"), "slab")));
        Assert.Equal("edit.counted", Refused(Sample.Text(Sample.Bench).Replace("        width: rest\n", "        width: rest\n        down: {openings: 3, key: N, of: carcase}\n", StringComparison.Ordinal), new Empty("N2")));
        Assert.Equal("edit.mistakes", Refused(bench.Replace("toe: 4", "tow: 4", StringComparison.Ordinal), new Empty("L")));
        Assert.Equal("edit.last-bay", Refused(new NewPiece("x", LengthUnit.Inch, NewKind.Frame, "40", "30", "20").Text().Text!, new TakeOutOpening("A")));
        Assert.Equal("edit.last-member", Refused(new NewPiece("x", LengthUnit.Inch, NewKind.Case, "40", "30", "20").Text().Text!, new TakeOut("C")));
    }

    [Fact]
    public void SetAny_OfATextWithMistakes_MayMendThem() =>
        Assert.True(new SetAny(TextPath.Of("F", "width"), "78").ApplyTo(Sample.Text(Sample.Bench).Replace("width: 78", "width: 78 79", StringComparison.Ordinal)).IsDone);

    [Fact]
    public void AddMaterial_OfTheRack_IsUsedAtOnce()
    {
        TextRead<Shop.Texts.Shop> shop = ShopText.Read(Sample.Text("shop.yaml"));
        Wood[] woods = [.. shop.Value!.Stock.Select(s => Wood.Of(s)!)];
        Assert.All(woods, Assert.NotNull);
        // Each reads back as the wood of its line, so that the rack counts for it.
        Assert.All(shop.Value.Stock, line =>
        {
            string text = new NewPiece("x", LengthUnit.Inch, NewKind.Top, "30", "", "20").Text().Text!;
            Edited added = Do(text, new AddMaterial(Wood.Of(line)!, "new"));
            Assert.Equal(line.Identity, MaterialIdentity.Of(PieceText.Read(added.Text!).Value!.Materials["new"]));
        });
        Changes(Sample.Bench, new AddMaterial(Wood.Sheet("birch plywood", "18 mm"), null, TextPath.Of("T", "of")), "material ply-18: birch plywood 18 mm, for top T", [.. Span(Sample.Bench, "", "    of: slab")], [.. Span(Sample.Bench, "  ply-18: {panel: birch plywood, label: 18 mm}", "    of: ply-18")]);
    }

    // From behind the materials to the material of the top.
    private static IEnumerable<string> Span(string sample, string added, string last)
    {
        string text = Sample.Text(sample);
        string[] lines = text.Split('\n');
        int from = Array.IndexOf(lines, "  slab:    {panel: mdf, label: 3/4}") + 1, to = Array.IndexOf(lines, "    of: slab");
        return [.. added.Length > 0 ? [added] : Array.Empty<string>(), .. lines[from..to], last];
    }

    [Fact]
    public void ListOpenings_ThatAreCounted_ChangesNoPart()
    {
        foreach ((string file, string[] owners) in new[] { ("pigeon-holes.yaml", new[] { "A", "N" }) })
        {
            string text = File.ReadAllText(Setout.Testing.Repository.PathOf($"tests/Setout.Shop.Tests/SettingOut/Pieces/{file}"));
            string[] Parts(string of) => [.. RandomEditsTests.SetOut(of).Parts.Select(p => $"{p.Key} {p.Count} {string.Join(' ', p.Placements)}")];
            string listed = owners.Aggregate(text, (t, o) => Do(t, new ListOpenings(o)).Text!);
            Assert.DoesNotContain("openings:", listed, StringComparison.Ordinal);
            Assert.Equal(Parts(text), Parts(listed));
            Assert.True(new PutShelves("L2", 1).ApplyTo(listed).IsDone);
        }
        Assert.Equal("edit.not-counted", Refused(Sample.Text(Sample.Bench), new ListOpenings("K")));
    }

    [Fact]
    public void AddTopWellEdging_OnANewFrame_SetOut()
    {
        string text = new NewPiece("Bench", LengthUnit.Inch, NewKind.Frame, "60", "34", "24").Text().Text!;
        text = Do(text, new AddMaterial(Wood.Sheet("mdf", "3/4"), "slab")).Text!;
        text = Do(text, new AddMaterial(Wood.Stick("oak", "3/4 x 3/4"), "strip")).Text!;
        text = Do(text, new AddTop()).Text!;
        Edited edged = Do(text, new AddEdging("T"));
        Assert.Contains("edging: {of: strip}", edged.Text!, StringComparison.Ordinal);
        Assert.False(RandomEditsTests.SetOut(edged.Text!).IsStopped);
        Edited well = Do(text, new AddWell("T", "drum sander", null, "4", "18 x 14", "5 1/4", "A"));
        Assert.Contains("wells:", well.Text!, StringComparison.Ordinal);
        Assert.Equal("edit.no-place", Refused(text, new AddWell("T", "drum sander", null, "4", "18 x 14", "5 1/4")));
    }

    [Theory]
    [InlineData(NewKind.Case, LengthUnit.Inch, "30", "32", "12")]
    [InlineData(NewKind.Case, LengthUnit.Millimetre, "800", "60 cm", "400/2")]
    [InlineData(NewKind.Frame, LengthUnit.Inch, "5'", "34 1/2", "24")]
    [InlineData(NewKind.Frame, LengthUnit.Millimetre, "1400", "850", "600")]
    [InlineData(NewKind.Top, LengthUnit.Inch, "60", "", "25")]
    public void NewPiece_OfEachKind_SetsOut(NewKind kind, LengthUnit unit, string width, string height, string depth)
    {
        Edited made = new NewPiece("Odd: #1", unit, kind, width, height, depth).Text();
        Assert.True(made.IsDone, string.Join("; ", made.Findings));
        Assert.False(RandomEditsTests.SetOut(made.Text!).IsStopped);
        Assert.Contains(made.Chosen, PieceText.Read(made.Text!).Value!.Keys.Keys);
    }

    [Fact]
    public void NewPiece_OfWhatCannotBe_IsRefused()
    {
        Assert.False(new NewPiece("", LengthUnit.Inch, NewKind.Case, "30", "30", "12").Text().IsDone);
        Assert.False(new NewPiece("x", LengthUnit.Inch, NewKind.Case, "0", "30", "12").Text().IsDone);
        Assert.Equal("edit.other-wood", new NewPiece("x", LengthUnit.Inch, NewKind.Case, "30", "30", "12", Wood.Lumber("2x4")).Text().Findings[0].Code);
        Assert.Equal("edit.other-wood", new NewPiece("x", LengthUnit.Inch, NewKind.Frame, "30", "30", "12", Wood.Sheet("mdf", "3/4")).Text().Findings[0].Code);
    }

    [Fact]
    public void NewPiece_FilledOnTheDrawing_IsACabinetThatSetsOut()
    {
        string text = new NewPiece("Tool cabinet", LengthUnit.Inch, NewKind.Case, "36", "32", "16").Text().Text!;
        Edit[] edits = [Divide.At("C", true, "14"), new PutDrawers("C1", 3), Divide.At("C2", false, "12"), new PutShelves("B1", 1), new PutDoors("B2", false, Hinges: "right"), new SetFront("A2", "6")];
        foreach (Edit edit in edits) text = Do(text, edit).Text!;
        SetPiece set = RandomEditsTests.SetOut(text);
        Assert.False(set.IsStopped, text);
        Assert.Equal(3, set.Parts.Count(p => p.Role == PartRole.FalseFront));
        Assert.Single(set.Parts, p => p.Role == PartRole.Door);
    }

    [Fact]
    public void MoveItem_DrawersAndShelves_ChangePlaces()
    {
        Changes(Sample.Bench, new MoveItem("L1", 1), "drawer L1 moved down", ["            - {drawer: L1, front: 4}", "            - {drawer: L2, front: 5}"], ["            - {drawer: L2, front: 5}", "            - {drawer: L1, front: 4}"]);
        Changes(Sample.Cabinet, new MoveItem("A3", -2), "shelf A3 moved up", ["        shelves: {setback: 1/4, down: [A1, A2, A3]}"], ["        shelves: {setback: 1/4, down: [A3, A1, A2]}"]);
        Assert.Equal("edit.no-room", Refused(Sample.Text(Sample.Bench), new MoveItem("L1", -1)));
        Assert.Equal("edit.other-kind", Refused(Sample.Text(Sample.Bench), new MoveItem("L", 1)));
    }

    public static TheoryData<string, Edit, Func<Edited, Edit>> Inverses => new()
    {
        { Sample.Bench, new PutShelves("K", 3), _ => new Empty("K") },
        { Sample.Bench, Divide.Equally("K", false, 4), _ => new Empty("K") },
        { Sample.Bench, new SetShare("L", "20"), _ => new SetShare("L", "21") },
        { Sample.Bench, new AddDrawer("L", 0), e => new TakeOutDrawer(e.Chosen) },
        { Sample.Bench, new AddDrawer("L", 2), e => new TakeOutDrawer(e.Chosen) },
        { Sample.Bench, new MoveItem("L2", 2), _ => new MoveItem("L2", -2) },
        { Sample.Bench, new AddMaterial(Wood.Lumber("2x6")), e => new TakeOut(e.Chosen) },
        { Sample.Bench, new AddDrawerKind("other"), e => new TakeOut(e.Chosen) },
        { Sample.Bench, new AddOpening("K", Size: "6"), e => new TakeOutOpening(e.Chosen) },
        { Sample.Bench, new AddEdging("T"), _ => new ClearAny(TextPath.Of("T", "edging")) },
        { Sample.Chest, new AddDrawer("C", 4), e => new TakeOutDrawer(e.Chosen) },
        { Sample.Chest, new SetAny(TextPath.Of("shallow", "play"), "1"), _ => new ClearAny(TextPath.Of("shallow", "play")) },
        { Sample.Cabinet, new AddShelf("A", 1), e => new TakeOutShelf(e.Chosen) },
        { Sample.Cabinet, new AddTop(), e => new TakeOut(e.Chosen) },
        { Sample.Cabinet, SetAny.NameOf("C", "dye cabinet"), _ => SetAny.NameOf("C", "cabinet") },
        { "sewing-corner.yaml", new AddDrawer("A", 1), e => new TakeOutDrawer(e.Chosen) },
        { "sewing-corner.yaml", new AddStructure(NewKind.Case, "B", false, "20", "30", "22"), e => new TakeOut(e.Chosen) },
        { "sewing-corner.yaml", new Empty("B1", "shelves"), _ => new PutShelves("B1", 2, "adjustable") },
    };

    [Theory]
    [MemberData(nameof(Inverses))]
    public void EditThenItsInverse_GivesTheTextBack(string sample, Edit edit, Func<Edited, Edit> inverse)
    {
        string text = Sample.Text(sample);
        Edited there = Do(text, edit);
        string back = Do(there.Text!, inverse(there)).Text!;
        if (edit is Empty) Assert.Equal(PieceText.Read(text).Value!.Keys.Count, PieceText.Read(back).Value!.Keys.Count);
        else Assert.Equal(text, back);
    }
}
