using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Core.Workings;

namespace Setout.Shop.Tests.SettingOut;

/// <summary>
/// Pieces that cannot be built as described: nothing is said at the limit, a step past it is found, and who does what the remedy says is rid of the finding. Limits
/// are worked by hand beside each row; sheets are as thick as given, all is on a grid of 1/32 in.
/// </summary>
public class BoundsTests
{
    private const string Head = """
        setout: 1
        name: Bounds
        unit: in
        grid: GRID
        materials:
          ply: {panel: hardwood plywood, thickness: 3/4}
          half: {panel: hardwood plywood, thickness: 1/2}
          thin: {panel: hardwood plywood, thickness: 1/4}
          any: {panel: hardwood plywood, thickness: ANY}
          post: {stick: pine, section: 1 1/2 x 3 1/2}
          oak: {stick: oak, section: 3/4 x 1 1/2}
          lath: {stick: oak, section: LATH x 1 1/2}
        drawers:
          box: {sides: half, bottom: thin, front: plyBOX}
          light: {sides: any, bottom: thin, front: ply, corners: rabbet}
        doors:
          plain: {of: ply}
          inset: {of: ply, lies: inset}
          framed: {frame: {of: oak}, panel: thin, hinge: butt, lies: insetFRAMED}
        assembly:

        """;

    private static SetPiece Out(string row, string value)
    {
        // KEY=VALUE before the assembly goes into the head.
        string text = Head, assembly = row.Replace("@", value, StringComparison.Ordinal);
        foreach (string word in new[] { "GRID", "ANY", "LATH", "BOX", "FRAMED" })
        {
            string mark = word + "=";
            int at = assembly.IndexOf(mark, StringComparison.Ordinal), end = at < 0 ? -1 : assembly.IndexOf("; ", at, StringComparison.Ordinal);
            string said = at < 0 ? word switch { "GRID" => "1/32", "ANY" => "3/4", "LATH" => "3/4", _ => "" } : assembly[(at + mark.Length)..end];
            if (at >= 0) assembly = assembly.Remove(at, end + 2 - at);
            text = text.Replace(word, word is "BOX" or "FRAMED" && said.Length > 0 ? ", " + said : said, StringComparison.Ordinal);
        }
        return Sample.SetOut(text + string.Concat(assembly.Split(" | ").Select(m => $"  - {{{m}}}\n")));
    }

    private const string Case = "case: C, of: ply, width: 24, height: 30, depth: 16", Frame = "frame: F, of: post, width: 48, height: 34, depth: 24, toe: 4";

    [Theory]
    // Hinges. Cups stand 64 mm apart at least: two want 128 mm, 5.039 in. The door is as high as the case less 3 mm (0.118 in): 5 3/16 - 0.118 = 5 1/16 on the grid is enough, 5 1/32 is not.
    [InlineData("door.too-low", Severity.Stop, "case: C, of: ply, width: 24, height: @, depth: 16, doors: {like: plain, keys: [K]}", "5 3/16", "5 5/32", "5 3/16", "1/32 in")]
    // Butts of 2 1/2: two want 2 x 3 3/4 = 7 1/2; the inset door is 2 x 5/64 lower than its opening, landed down: opening 7 21/32, case 9 5/32.
    [InlineData("door.too-low", Severity.Stop, "case: C, of: ply, width: 24, height: @, depth: 16, doors: {like: inset, keys: [K]}", "9 5/32", "9 1/8", "9 5/32", "1/32 in")]
    // Cups want 22.5 + 17.5 = 40 mm, 1.575 in; the door is 3 mm narrower than the case: 1 11/16 - 0.118 = 1 9/16 is not enough, 1 23/32 - 0.118 = 1 19/32 is.
    [InlineData("door.narrow-for-cup", Severity.Stop, "case: C, of: ply, width: @, height: 30, depth: 16, doors: {like: plain, keys: [K]}", "1 23/32", "1 11/16", "1 23/32", "1/32 in")]
    // Plates 37 mm behind the front edge, 1.457 in.
    [InlineData("door.plate-off", Severity.Stop, "case: C, of: ply, width: 24, height: 30, depth: @, doors: {like: plain, keys: [K]}", "1 15/32", "1 7/16", "1 1/2", "1/16 in")]
    // Dowels of 1/4 in stock under 5/8: less than 1/32 beside them under 5/16; half of the stock at 1/2, less 1/32.
    [InlineData("dowel.too-thick", Severity.Stop, "ANY=@; case: C, of: any, width: 24, height: 30, depth: 16, corners: dowels", "15/32", "19/64", "1/2", "1/2 in")]
    [InlineData("dowel.too-thick", Severity.Warn, "ANY=@; case: C, of: any, width: 24, height: 30, depth: 16, corners: dowels", "15/32", "29/64", "1/2", "1/2 in")]
    // 1/4 stays behind a hole: in a side of 1/4 there is none; at 3/8 it is 1/8, half of a dowel of 1/4.
    [InlineData("dowel.no-depth", Severity.Stop, "ANY=@; case: C, of: any, width: 24, height: 30, depth: 16, dividers: dowels, across: [{opening: A}, {partition: P, of: half}, {opening: B}]", "3/8", "1/4", "3/8", "3/8 in")]
    // What is sold as 1/2 in holds a screw in its edge; as 3/8 one of a slide.
    [InlineData("joint.edge-too-thin", Severity.Warn, "ANY=@; case: C, of: any, width: 24, height: 30, depth: 16", "7/16", "27/64", "7/16", "7/16 in")]
    [InlineData("joint.no-pocket-screw", Severity.Warn, "ANY=@; case: C, of: any, width: 24, height: 30, depth: 16, corners: pocket", "7/16", "25/64", "7/16", "7/16 in")]
    [InlineData("slide.no-screw", Severity.Warn, "ANY=@; case: C, of: ply, width: 24, height: 30, depth: 16, drawers: {like: light, down: [{drawer: D}]}", "11/32", "21/64", "11/32", "11/32 in")]
    // Case of 3/4: two sides take 1 1/2; a toe kick leaves 30 - 1 1/2 = 28 1/2.
    [InlineData("case.no-inside", Severity.Stop, "case: C, of: ply, width: @, height: 30, depth: 16", "1 17/32", "1 1/2", "1 17/32", "1 1/2 in")]
    [InlineData("case.no-inside", Severity.Stop, "case: C, of: ply, width: 24, height: @, depth: 16", "1 17/32", "1 1/2", "1 17/32", "1 1/2 in")]
    [InlineData("case.no-inside", Severity.Stop, "case: C, of: ply, width: 24, height: 30, depth: @, back: thin", "9/32", "1/4", "9/32", "9/32 in")]
    [InlineData("case.toe-too-high", Severity.Stop, Case + ", toe: {height: @}", "28 15/32", "28 1/2", "28 15/32", "28 15/32 in")]
    [InlineData("case.toe-too-low", Severity.Stop, Case + ", toe: {height: @}", "1/32", "1/64", "1/32", "1/32 in")]
    [InlineData("case.rail-too-wide", Severity.Stop, Case + ", back: {of: thin, fit: grooved}, hanging rail: {of: ply, width: @}", "28 1/2", "28 17/32", "28 1/2", "28 1/2 in")]
    // Side 16, back 1/2, and a step of 1/32 inside: 15 15/32.
    [InlineData("case.back-too-far-in", Severity.Stop, Case + ", back: {of: half, fit: inset, inset: @}", "15 15/32", "15 1/2", "15 15/32", "15 15/32 in")]
    // A loose back in grooves of 1/4 may lie in one of them: out of the other at 1/4, held by less than half past 1/8.
    [InlineData("back.falls-out", Severity.Stop, Case + ", back: {of: thin, fit: grooved, play: @}", "1/8", "1/4", "1/8", "1/8 in")]
    [InlineData("back.falls-out", Severity.Warn, Case + ", back: {of: thin, fit: grooved, play: @}", "1/8", "5/32", "1/8", "1/8 in")]
    [InlineData("back.wide-gap", Severity.Warn, Case + ", back: {of: half, fit: inset, play: @}", "1/8", "5/32", "1/8", "1/8 in")]
    // A bottom has 1/16 of play: grooves of 1/8 hold it by half, those of 1/16 not at all.
    [InlineData("drawer.bottom-falls-out", Severity.Warn, "BOX=groove depth: @; " + Case + ", drawers: {like: box, down: [{drawer: D}]}", "1/8", "3/32", "1/8", "1/8 in")]
    [InlineData("drawer.bottom-falls-out", Severity.Stop, "BOX=groove depth: @; " + Case + ", drawers: {like: box, down: [{drawer: D}]}", "1/8", "1/16", "1/8", "1/8 in")]
    [InlineData("door.panel-falls-out", Severity.Stop, "FRAMED=play: @; " + Case + ", doors: {like: framed, keys: [K]}", "3/16", "3/8", "3/16", "3/16 in")]
    [InlineData("frame.panel-falls-out", Severity.Warn, Frame + ", panels: {of: thin, play: @}, across: [{opening: A}]", "1/8", "5/32", "1/8", "1/8 in")]
    // Grooves go into posts of 1 1/2 from front and back; half of a stile of 1 1/2 is 3/4.
    [InlineData("frame.groove-too-deep", Severity.Stop, Frame + ", panels: {of: thin, groove: @}, across: [{opening: A}]", "3/4", "1 1/2", "3/4", "3/4 in")]
    [InlineData("door.groove-too-deep", Severity.Stop, "FRAMED=groove: @; " + Case + ", doors: {like: framed, keys: [K]}", "3/4", "1 1/2", "3/4", "3/4 in")]
    [InlineData("door.groove-too-deep", Severity.Warn, "FRAMED=groove: @; " + Case + ", doors: {like: framed, keys: [K]}", "3/4", "25/32", "3/4", "3/4 in")]
    // A third of the stick, 3/16 at least: 9/16.
    [InlineData("tenon.thin", Severity.Warn, "LATH=@; " + Case + ", face frame: {of: lath, joint: tenon}", "9/16", "17/32", "9/16", "9/16 in")]
    // Dadoes as deep as the panel, and back to back as deep as half of it.
    [InlineData("joint.through", Severity.Stop, Case + ", shelves: {fit: dado, dado: @, down: [S]}", "3/8", "3/4", "3/8", "3/8 in")]
    [InlineData("joint.through", Severity.Stop, Case + ", across: [{opening: A, shelves: {fit: dado, dado: @, down: [S]}}, {partition: P}, {opening: B, shelves: {fit: dado, dado: @, down: [T]}}]", "1/4", "3/8", "1/4", "1/4 in")]
    // Frame of 34: toe, rails of 3 1/2 above and below, a step: 34 - 7 - 1/32 = 26 31/32. Depth: two posts of 1 1/2 and a step.
    [InlineData("frame.no-height", Severity.Stop, "frame: F, of: post, width: 48, height: 34, depth: 24, toe: @, across: [{opening: A}]", "26 31/32", "27", "26 31/32", "1/32 in")]
    [InlineData("frame.no-height", Severity.Stop, Frame + ", above: @, across: [{opening: A}]", "22 31/32", "23", "22 31/32", "1/32 in")]
    [InlineData("frame.no-depth", Severity.Stop, "frame: F, of: post, width: 48, height: 34, depth: @, toe: 4, across: [{opening: A}]", "3 1/32", "3", "3 1/32", "1/32 in")]
    // Shelves: 16 deep less a step; a strip of 3/4; pins of 1/4; two rows 37 mm in and two holes of 1/4 want 3.413 in.
    [InlineData("shelf.no-depth", Severity.Stop, Case + ", shelves: {setback: @, down: [S]}", "15 31/32", "16", "15 31/32", "15 31/32 in")]
    [InlineData("shelf.no-depth", Severity.Stop, Case + ", shelves: {setback: @, strip: {of: ply, height: 2}, down: [S]}", "15 1/4", "15 9/32", "15 1/4", "15 1/4 in")]
    [InlineData("shelf.off-its-pins", Severity.Warn, Case + ", shelves: {fit: adjustable, play: @, down: [S]}", "1/4", "9/32", "1/4", "1/4 in")]
    [InlineData("shelf.rows-meet", Severity.Stop, "case: C, of: ply, width: 24, height: 30, depth: @, shelves: {fit: adjustable, down: [S]}", "3 7/16", "3 3/8", "3 7/16", "1/16 in")]
    [InlineData("shelf.pitch-too-fine", Severity.Stop, Case + ", shelves: {fit: adjustable, pitch: @, down: [S]}", "1/2", "1/4", "1/2", "1/2 in")]
    // Shelf of 3/4 spans 36 x (3/4 + 1/32) / (3/4) = 37 1/2; fixed at its ends half as far again, 56 1/4; inside is 1 1/2 narrower. Screwed to a back, half as far again: 84 3/8.
    [InlineData("case.long-span", Severity.Warn, "case: C, of: ply, width: @, height: 30, depth: 16", "57 3/4", "57 25/32", "57 3/4", "56 1/4 in")]
    [InlineData("case.long-span", Severity.Warn, "case: C, of: ply, width: @, height: 30, depth: 16, hung: yes, back: {of: half, fit: rabbeted}", "85 27/32", "85 29/32", "85 27/32", "84 3/8 in")]
    // The play of side slides is 0 to 1/16; a narrow one 0.4 to 1 mm.
    [InlineData("drawer.grid-too-coarse", Severity.Warn, "GRID=@; " + Case + ", drawers: {like: box, down: [{drawer: D}]}", "1/16", "1", "1/16", "grid: 1/16 in")]
    [InlineData("drawer.grid-too-coarse", Severity.Warn, "GRID=@; BOX=window: narrow; " + Case + ", drawers: {like: box, down: [{drawer: D}]}", "1/64", "1", "1/64", "grid: 1/64 in")]
    [InlineData("grid.coarse", Severity.Warn, "GRID=@; " + Case, "1/8", "1/4", "1/16", "grid: 1/16 in")]
    public void AtTheLimitPastItAndMended(string code, Severity severity, string row, string limit, string past, string mended, string remedy)
    {
        Assert.DoesNotContain(Out(row, limit).Findings, f => f.Code == code);
        Finding[] found = [.. Out(row, past).Findings.Where(f => f.Code == code)];
        Assert.NotEmpty(found);
        Assert.All(found, f => Assert.Equal(severity, f.Severity));
        Assert.All(found, f => Assert.True(f.Place.IsKnown || code == "grid.coarse", f.Code));
        Assert.Contains(remedy, found[0].Remedy, StringComparison.Ordinal);
        Assert.DoesNotContain(Out(row, mended).Findings, f => f.Code == code);
    }

    [Theory]
    [InlineData("toe: {height: 4}, base: {of: ply}", "a toe kick and a base", Severity.Warn)]
    [InlineData("toe: {height: 4}, feet: {height: 4}", "a toe kick and feet", Severity.Warn)]
    [InlineData("base: {of: ply}, feet: {height: 4}", "a base and feet", Severity.Stop)]
    public void TwoThingsToStandOn_AreOneTooMany(string words, string said, Severity severity)
    {
        Finding found = Assert.Single(Out($"{Case}, {words}", "").Findings, f => f.Code == "case.two-feet");
        Assert.Equal(severity, found.Severity);
        Assert.Contains(said, found.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void LowDoor_SharesItsHeightAmongItsHinges()
    {
        // Case 6 1/2: the door is 6 13/32. Cups 80 mm from both ends would be 0.1 in apart; they stand a quarter of it from the ends: 1.6 in, 1 19/32 on the grid, and 4 13/16.
        Sample.AssertValues(Out("case: C, of: ply, width: 24, height: 6 1/2, depth: 16, doors: {like: plain, keys: [K]}", ""),
            ("K.height.as-cut", "6 3/8"), ("K.hinge-1.to-cut", "1 19/32"), ("K.hinge-2.to-cut", "4 25/32"));
        // As soon as 64 mm stay between them at 80 mm from the ends they do: 224 mm is 8.82 in.
        Sample.AssertValues(Out("case: C, of: ply, width: 24, height: 9, depth: 16, doors: {like: plain, keys: [K]}", ""), ("K.hinge-1.to-cut", "3 5/32"));
    }

    [Theory]
    // What carries top and bottom of a case that spans 94 in.
    [InlineData("", "top")]
    [InlineData(", toe: {height: 4}", "top, bottom")]
    [InlineData(", toe: {height: 4}, back: thin", "top")]
    [InlineData(", toe: {height: 4}, base: {of: ply}", "top")]
    [InlineData(", feet: {height: 4}", "top")]
    [InlineData(", hung: yes, back: half", "top, bottom")]
    [InlineData(", across: [{opening: A}, {partition: P}, {opening: B}]", "")]
    [InlineData(", down: [{opening: A}, {deck: D}, {opening: B, across: [{opening: E}, {partition: P}, {opening: F}]}]", "top")]
    [InlineData(" | top: T, of: ply", "")]
    public void LongCase_WhatCarriesIt(string words, string spans) =>
        Assert.Equal(spans, string.Join(", ", Out("case: C, of: ply, width: 95 1/2, height: 30, depth: 16" + words, "").Findings.Where(f => f.Code == "case.long-span").Select(f => f.Words.Split(' ')[1])));

    [Fact]
    public void GridTooCoarse_NamesTheUsualWindowOnlyWhereItHelps()
    {
        string Remedy(string grid) => Assert.Single(Out($"GRID={grid}; BOX=window: narrow; {Case}, drawers: {{like: box, down: [{{drawer: D}}]}}", "").Findings, f => f.Code == "drawer.grid-too-coarse").Remedy;
        Assert.Contains("window: usual", Remedy("1/16"), StringComparison.Ordinal);
        Assert.DoesNotContain("window: usual", Remedy("1"), StringComparison.Ordinal);
    }

    [Fact]
    public void KickBoardFlushWithTheSides_TakesNoNotch()
    {
        Assert.DoesNotContain(Out($"{Case}, toe: {{height: 4, setback: 0}}", "").Machinings, m => m.Words.StartsWith("Notch", StringComparison.Ordinal));
        Assert.Contains(Out($"{Case}, toe: {{height: 4, setback: 1/32}}", "").Machinings, m => m.Words.StartsWith("Notch", StringComparison.Ordinal));
    }

    [Fact]
    public void HangingRail_GoesInBehindAnInsetBack()
    {
        SetPiece set = Out($"{Case}, back: {{of: half, fit: inset}}, hanging rail: {{of: ply, width: 4}}", "");
        int back = set.Steps.ToList().FindIndex(s => s.Parts.Contains("C.back")), rail = set.Steps.ToList().FindIndex(s => s.Parts.Contains("C.rail"));
        Assert.True(back >= 0 && back < rail);
    }
}
