using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Cutting.Boards;
using Setout.Cutting.Runs;
using Setout.Cutting.Sheets;
using static Setout.Cutting.Runs.BlankSide;
using static Setout.Cutting.Runs.BlankUse;
using static Setout.Cutting.Tests.Runs.Written;

namespace Setout.Cutting.Tests.Runs;

/// <summary>Plans of runs written by hand. All saws take 3 mm; millimetres throughout.</summary>
internal static class SawPlans
{
    // Between two lanes 3 go to the blade and 1 to the plane on either side. Strips of less than 50 want a carrier.
    private static readonly SawLimits s_limits = new(
        new(Mm(3), Mm(800), Mm(1500), Mm(50), Mm(10)), new(Mm(650), Mm(1200)), new(Mm(3), null, Mm(2600), Mm(2)), new(Mm(3), Mm(200)), Mm(5));

    /// <summary>
    /// Two sheets of 1000 x 600 with a door that waits, and a board 90 wide that gives two lanes of 40 with a flaw. A sheet is more than one person lifts.
    /// </summary>
    public static SawCase Two()
    {
        // Trued 980 x 590. Sheet 0: 250 + 3 + 337 = 590; 300 + 3 + 300 + 3 + 374 = 980. Sheet 1: 300 + 3 + 677 = 980; 400 + 3 + 577 = 980.
        var sheets = new SheetInstance(
            [new("side", Mm(300), Mm(250), 3, GrainRule.Keep), new("door", Mm(400), Mm(337), 1, GrainRule.Keep)],
            [new("sheet", Mm(1000), Mm(600), Trim(10, 10, 5, 5), new Money(40), null)], Mm(3), new(Mm(100), Mm(500)));
        Slice S(long size, CutNode content) => new(Mm(size), content);
        PartNode P(string id) => new(id, Turn.None);
        Division D(GrainAxis axis, params ReadOnlySpan<Slice> slices) => new(axis, [.. slices], Length.Zero);
        var laid = new SheetLayout(
            [
                new("sheet", D(GrainAxis.Across, S(250, D(GrainAxis.Along, S(300, P("side")), S(300, P("side")), S(374, WasteNode.Instance))), S(337, KeepNode.Instance))),
                new("sheet", D(GrainAxis.Across, S(250, D(GrainAxis.Along, S(300, P("side")), S(677, KeepNode.Instance))), S(337, D(GrainAxis.Along, S(400, P("door")), S(577, KeepNode.Instance))))),
            ], []);
        // Clear from 10 to 500 and from 540 to 990. Lane 1: 490 - 303 = 187, 450 - 303 = 147. Lane 2: 490 - 406 = 84, 450 whole.
        var boards = new BoardInstance([new("leg", Mm(300), 2), new("rung", Mm(200), 2)],
            [new BoardStock("oak", Mm(1000), new(Mm(10), Mm(10)), new Money(9), null) { Rip = new(Mm(90), Mm(40), Mm(5)), Defects = [new(Mm(500), Mm(540))] }], Mm(3), Mm(400));
        var lanes = new BoardLayout(
            [new("oak", [new(1, 1, ["leg"], Mm(187), LeftOverUse.Waste), new(1, 2, ["leg"], Mm(147), LeftOverUse.Waste), new(2, 1, ["rung", "rung"], Mm(84), LeftOverUse.Waste), new(2, 2, [], Mm(450), LeftOverUse.Keep)])], []);

        var w = new Written();
        EdgeTrim ends = Trim(10, 10, 0, 0), end = Trim(0, 10, 0, 0);
        int sheet0 = w.Blank(0, 0, 1000, 600, Stock, Trim(10, 10, 5, 5)), sheet1 = w.Blank(0, 1, 1000, 600, Stock, Trim(10, 10, 5, 5)), board = w.Blank(1, 0, 1000, 90, Stock, ends, (500, 540));

        // 1. The long edges: 5 go, 3 of it to the blade.
        int sliver0 = w.Blank(0, 0, 1000, 2, Waste), edged0 = w.Blank(0, 0, 1000, 595, Work, Trim(10, 10, 0, 5)), sliver1 = w.Blank(0, 1, 1000, 2, Waste), edged1 = w.Blank(0, 1, 1000, 595, Work, Trim(10, 10, 0, 5));
        w.Run(SawWay.Guide, RunKind.True, 5, Cut(sheet0, NearEdge, 5, sliver0, edged0) with { TakesTwo = true }, Cut(sheet1, NearEdge, 5, sliver1, edged1) with { TakesTwo = true });
        // 2. Parted at 250: 595 - 250 - 3 = 342, 337 of it sound. That of sheet 1 waits whole.
        int strip0 = w.Blank(0, 0, 1000, 250, Work, ends), kept0 = w.Blank(0, 0, 1000, 342, Keep, Trim(10, 10, 0, 5)), strip1 = w.Blank(0, 1, 1000, 250, Work, ends), waits1 = w.Blank(0, 1, 1000, 342, Waiting, Trim(10, 10, 0, 5));
        w.Change(waits1, b => b with { Waiting = ["door"] });
        w.Run(SawWay.Guide, RunKind.Break, 250, Cut(edged0, NearEdge, 250, strip0, kept0, 1) with { TakesTwo = true }, Cut(edged1, NearEdge, 250, strip1, waits1, 1) with { TakesTwo = true });
        // 3. Near ends of the strips squared: 10 go.
        int butt0 = w.Blank(0, 0, 7, 250, Waste), square0 = w.Blank(0, 0, 990, 250, Work, end), butt1 = w.Blank(0, 1, 7, 250, Waste), square1 = w.Blank(0, 1, 990, 250, Work, end);
        w.Run(SawWay.Sled, RunKind.True, 10, Cut(strip0, NearEnd, 10, butt0, square0, null, NearEdge, 1), Cut(strip1, NearEnd, 10, butt1, square1, null, NearEdge, 1));
        // 4. Sides: 990 - 303 = 687, 687 - 303 = 384, 10 of it raw: one more of 300 would come out.
        int side0 = w.Part(0, 0, 300, 250, "side"), more0 = w.Blank(0, 0, 687, 250, Work, end), side1 = w.Part(0, 0, 300, 250, "side"), left0 = w.Blank(0, 0, 384, 250, Waste, end);
        int side2 = w.Part(0, 1, 300, 250, "side"), kept1 = w.Blank(0, 1, 687, 250, Keep, end);
        w.Change(left0, b => b with { Spares = 1, PartId = "side" });
        w.Run(SawWay.Sled, RunKind.Size, 300, Cut(square0, NearEnd, 300, side0, more0, 3, NearEdge, 1), Cut(more0, NearEnd, 300, side1, left0, 4, NearEdge, 1), Cut(square1, NearEnd, 300, side2, kept1, 3, NearEdge, 1));
        // 5. Lanes: 41 - 1 = 40; 90 - 41 - 3 - 1 = 45; 45 - 41 - 3 - 1 = 0.
        int lane1 = w.Blank(1, 0, 1000, 40, Work, ends, (500, 540)), wide = w.Blank(1, 0, 1000, 45, Work, ends, (500, 540)), lane2 = w.Blank(1, 0, 1000, 40, Work, ends, (500, 540));
        RunCut Lane(int blank, int off, int? rest, int from) => Cut(blank, NearEdge, 41, off, rest, from) with { Planed = Mm(1), PlanedRest = Mm(1), NeedsCarrier = true };
        w.Run(SawWay.Fence, RunKind.Lane, 41, Lane(board, lane1, wide, 0), Lane(wide, lane2, null, 5));
        // 6. Their near ends: 10 go.
        int butt2 = w.Blank(1, 0, 7, 40, Waste), long1 = w.Blank(1, 0, 990, 40, Work, end, (490, 530)), butt3 = w.Blank(1, 0, 7, 40, Waste), long2 = w.Blank(1, 0, 990, 40, Work, end, (490, 530));
        w.Run(SawWay.Stop, RunKind.True, 10, Cut(lane1, NearEnd, 10, butt2, long1, null, NearEdge, 0), Cut(lane2, NearEnd, 10, butt3, long2, null, NearEdge, 5));
        // 7. A leg: 990 - 303 = 687.
        int leg0 = w.Part(1, 0, 300, 40, "leg"), flawed = w.Blank(1, 0, 687, 40, Work, end, (187, 227));
        w.Run(SawWay.Stop, RunKind.Size, 300, Cut(long1, NearEnd, 300, leg0, flawed, 6, NearEdge, 0));
        // 8. The flaw of lane 1 up to the mark at 227: 687 - 227 = 460.
        int knot1 = w.Blank(1, 0, 224, 40, Waste, null, (187, 224)), sound1 = w.Blank(1, 0, 460, 40, Work, end);
        w.Run(SawWay.Stop, RunKind.Clear, 0, Cut(flawed, NearEnd, 227, knot1, sound1, 7, NearEdge, 0));
        // 9. Rungs, tried on what was cleared away: 990 - 203 = 787, 787 - 203 = 584.
        int rung0 = w.Part(1, 0, 200, 40, "rung"), more2 = w.Blank(1, 0, 787, 40, Work, end, (287, 327)), rung1 = w.Part(1, 0, 200, 40, "rung"), left2 = w.Blank(1, 0, 584, 40, Work, end, (84, 124));
        w.Run(SawWay.Stop, RunKind.Size, 200, Cut(long2, NearEnd, 200, rung0, more2, 6, NearEdge, 5), Cut(more2, NearEnd, 200, rung1, left2, 9, NearEdge, 5));
        w.Try(knot1);
        // 10. The flaw of lane 2: 584 - 124 = 460, 450 of it sound.
        int knot2 = w.Blank(1, 0, 121, 40, Waste, null, (84, 121)), kept2 = w.Blank(1, 0, 460, 40, Keep, end);
        w.Run(SawWay.Stop, RunKind.Clear, 0, Cut(left2, NearEnd, 124, knot2, kept2, 9, NearEdge, 5));
        // 11. The other leg: 460 - 303 = 157.
        int leg1 = w.Part(1, 0, 300, 40, "leg"), left1 = w.Blank(1, 0, 157, 40, Waste, end);
        w.Run(SawWay.Stop, RunKind.Size, 300, Cut(sound1, NearEnd, 300, leg1, left1, 8, NearEdge, 0));
        return new(
            [new RunSheets("ply", ["door"], sheets, laid) { MostArea = Mm(1000) * Mm(500) }, new RunBoards("oak", [], boards, lanes, Mm(40))], s_limits, w.Plan());
    }

    /// <summary>
    /// A sheet of 2000 x 1000, longer than the room at the fence, parted beside the line by a saw that may run off by 2. Its two shelves are one figure group.
    /// </summary>
    public static SawCase Rough()
    {
        // Trued 1980 x 980. 900 + 3 + 9 + 3 + 1065 = 1980; 480 + 3 + 480 + 3 + 14 = 980. The rough cut runs beyond the 9.
        var instance = new SheetInstance([new("shelf", Mm(900), Mm(480), 2, GrainRule.Keep)],
            [new("sheet", Mm(2000), Mm(1000), EdgeTrim.AllRound(Mm(10)), new Money(70), null)], Mm(3), new(Mm(100), Mm(500)))
        { Groups = [new("pair", GrainAxis.Across, ["shelf", "shelf"])] };
        var pair = new Division(GrainAxis.Across, [new(Mm(480), new PartNode("shelf", Turn.None)), new(Mm(480), new PartNode("shelf", Turn.None)), new(Mm(14), WasteNode.Instance)], Length.Zero);
        var laid = new SheetLayout([new("sheet", new Division(GrainAxis.Along, [new(Mm(900), pair), new(Mm(9), WasteNode.Instance), new(Mm(1065), KeepNode.Instance)], Length.Zero))], []);
        var w = new Written();
        int sheet = w.Blank(0, 0, 2000, 1000, Stock, Trim(10, 10, 10, 10));
        int sliver = w.Blank(0, 0, 2000, 7, Waste), edged = w.Blank(0, 0, 2000, 990, Work, Trim(10, 10, 0, 10));
        w.Run(SawWay.Guide, RunKind.True, 10, Cut(sheet, NearEdge, 10, sliver, edged));
        // 10 + 900 and 12 to spare; 2000 - 922 - 3 = 1075, 10 of it raw.
        int half = w.Blank(0, 0, 922, 990, Work, Trim(10, 12, 0, 10)), kept = w.Blank(0, 0, 1075, 990, Keep, Trim(0, 10, 0, 10));
        w.Run(SawWay.Guide, RunKind.Rough, 922, Cut(edged, NearEnd, 922, half, kept));
        int butt = w.Blank(0, 0, 7, 990, Waste), square = w.Blank(0, 0, 912, 990, Work, Trim(0, 12, 0, 10));
        w.Run(SawWay.Guide, RunKind.True, 10, Cut(half, NearEnd, 10, butt, square));
        // 990 - 483 = 507, 507 - 483 = 24, 10 of it raw.
        int strip0 = w.Blank(0, 0, 912, 480, Work, Trim(0, 12, 0, 0)), more = w.Blank(0, 0, 912, 507, Work, Trim(0, 12, 0, 10));
        int strip1 = w.Blank(0, 0, 912, 480, Work, Trim(0, 12, 0, 0)), left = w.Blank(0, 0, 912, 24, Waste, Trim(0, 12, 0, 10));
        w.Run(SawWay.Fence, RunKind.Size, 480, Cut(square, NearEdge, 480, strip0, more, 1), Cut(more, NearEdge, 480, strip1, left, 4));
        int shelf0 = w.Part(0, 0, 900, 480, "shelf"), end0 = w.Blank(0, 0, 9, 480, Waste), shelf1 = w.Part(0, 0, 900, 480, "shelf"), end1 = w.Blank(0, 0, 9, 480, Waste);
        w.Run(SawWay.Sled, RunKind.Size, 900, Cut(strip0, NearEnd, 900, shelf0, end0, 3, NearEdge, 1), Cut(strip1, NearEnd, 900, shelf1, end1, 3, NearEdge, 4));
        return new([new RunSheets("ply", [], instance, laid)], s_limits, w.Plan());
    }

    /// <summary>One rip with a guided saw of 2 where the layout reckons with 3: 600 - 250 - 2 = 348, one more than the layout keeps.</summary>
    public static SawCase Thin(long margin)
    {
        var instance = new SheetInstance([new("back", Mm(1000), Mm(250), 1, GrainRule.Keep)], [new("sheet", Mm(1000), Mm(600), EdgeTrim.None, new Money(70), null)], Mm(3), new(Mm(100), Mm(500)));
        var laid = new SheetLayout([new("sheet", new Division(GrainAxis.Across, [new(Mm(250), new PartNode("back", Turn.None)), new(Mm(347), KeepNode.Instance)], Length.Zero))], []);
        var w = new Written();
        int sheet = w.Blank(0, 0, 1000, 600, Stock), back = w.Part(0, 0, 1000, 250, "back"), kept = w.Blank(0, 0, 1000, 348, Keep, Trim(0, 0, 0, margin));
        w.Run(SawWay.Guide, RunKind.Size, 250, Cut(sheet, NearEdge, 250, back, kept, 0) with { Kerf = Mm(2) });
        return new([new RunSheets("ply", [], instance, laid)], s_limits with { Guided = new(Mm(2), null, Mm(2600), Mm(2)) }, w.Plan());
    }

    /// <summary>A shop with a fence alone: the end of the sheet cannot be squared, so no shelf comes out.</summary>
    public static SawCase Refused()
    {
        SawCase rough = Rough();
        var w = new Written();
        int sheet = w.Blank(0, 0, 2000, 1000, Stock, Trim(10, 10, 10, 10));
        w.Change(sheet, b => b with { Waiting = ["shelf", "shelf"] });
        return rough with
        {
            Limits = s_limits with { Guided = null, Sled = null, Boards = null },
            Plan = w.Plan() with { Refusals = [new(RefusalKind.NothingTrues, sheet, GrainAxis.Across, Mm(10), ["shelf"])] },
        };
    }
}
