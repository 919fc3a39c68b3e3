using System.Collections.Immutable;
using Setout.Core.SettingOut;
using Setout.Drawing.Elevations;
using Setout.Shop.Drawings;

namespace Setout.Shop.Tests.Drawings;

/// <summary>A section of a figure: the piece it is cut from, and where.</summary>
public sealed record FigureSection(string Piece, Detail Detail);

/// <summary>A view as a figure.</summary>
public sealed record FigureView(string Name, string Piece, Views From, PaperBox Paper);

/// <summary>
/// The figures of the page on setting out. A new one is a row here; its picture is <c>docs/pictures/rule-NAME.svg</c>. Pieces are samples or test pieces by their file's name.
/// </summary>
internal static class RuleFigures
{
    private const Views Front = Views.Front, Above = Views.Above, Right = Views.Right;

    private static FigureSection Of(string piece, string caption, Views from, string through, string round, string figures, int reach = 36, int? up = null) =>
        new(piece, new(caption, from, through, Split(round, ','), Split(figures, ';')) { Reach = reach, ReachUp = up });

    private static ImmutableArray<string> Split(string text, char at) => [.. text.Split(at, StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)];

    public static readonly ImmutableArray<(string Name, string Title, ImmutableArray<FigureSection> Sections)> Sections =
    [
        ("frame", "Joints of a frame: a rail and a tie in a post from above, a panel in its grooves",
        [
            Of("frame-joints", "tenons of rail and tie in a post, from above", Above, "B.rail#1", "F.post#1=post, B.rail#1=rail, F.tie#1=tie", "F.tenon: F.post#1/B.rail#1.left > F.post#1.right; F.tenon.thickness: F.post#1/B.rail#1.bottom > F.post#1/B.rail#1.top; F.tenon: F.post#1/F.tie#1.bottom > F.post#1.top", 36, 44),
            Of("frame-joints", "panel in the groove of a post, from above", Above, "F.end-panel#1", "F.post#1=post, F.end-panel#1=panel", "F.groove: F.post#1/F.end-panel#1.bottom > F.post#1.top; ply.thickness: F.end-panel#1.left > F.end-panel#1.right", 36, 40),
            Of("frame-joints", "panel in the groove of a tie, from the front", Front, "F.tie#1", "F.tie#1=tie, F.end-panel#1=panel", "F.groove: F.tie#1/F.end-panel#1.bottom > F.tie#1.top", 30, 30),
        ]),
        ("edges", "A lip and a band on the front edge of a sheet, from the right",
        [
            Of("tops", "lipped", Right, "V#1", "V#1=top, .V#1/lip", "ply.edge: V#1/lip.left > V#1/lip.right"),
            Of("sewing-corner", "banded, from above", Above, "A.side#1", "A.side#1=side, .A.side#1/band", "carcase.edge: A.side#1/band.bottom > A.side#1/band.top"),
        ]),
        ("case-corners", "Corners of a case and a partition in dadoes, from the front",
        [
            Of("case-corners", "butt", Front, "A.deck#1", "A.side#1=side, A.deck#1=bottom", "ply.thickness: A.deck#1.bottom > A.deck#1.top"),
            Of("case-corners", "rabbet", Front, "B.deck#1", "B.side#1=side, B.deck#1=bottom", "B.corner.depth.to-cut: B.deck#1.left > B.side#1.right; B.corner.width: B.side#1/B.deck#1.bottom > B.side#1/B.deck#1.top"),
            Of("case-corners", "dado: a tongue", Front, "C.deck#1", "C.side#1=side, C.deck#1=bottom", "C.corner.depth.to-cut: C.deck#1.left > C.side#1.right; C.tongue.to-cut: C.side#1/C.deck#1.bottom > C.side#1/C.deck#1.top; C.corner.from-end: C.side#1.bottom > C.side#1/C.deck#1.bottom"),
            Of("case-corners", "partition in a dado", Front, "P#1", "P#1=partition, E.deck#1=bottom", "E.divider.depth.to-cut: P#1.bottom > E.deck#1.top; ply.thickness: E.deck#1/P#1.left > E.deck#1/P#1.right"),
        ]),
        ("doubled-partition", "A doubled partition, from the front",
        [
            Of("doubled-partition", "its foot in the bottom", Front, "A1-2.left#1", "A1-2.left#1=left, A1-2.right#1=right, C.deck#1=bottom", "A1-2.both: A1-2.left#1.left > A1-2.right#1.right; C.divider.depth.to-cut: A1-2.left#1.bottom > C.deck#1.top", 40, 40),
            Of("doubled-partition", "shelves of two openings", Front, "A1-S#1", "A1-2.left#1=left, A1-2.right#1=right, A1-S#1=shelf, A2-S#1=shelf", "A1.dado.depth.to-cut: A1-2.left#1.left > A1-S#1.right; ply.thickness: A1-2.left#1.left > A1-2.left#1.right", 40, 40),
        ]),
        ("case-backs", "Backs, from above at the left rear corner",
        [
            Of("case-backs", "applied", Above, "A.back#1", "A.side#1=side, A.back#1=back", "thin.thickness: A.back#1.bottom > A.back#1.top"),
            Of("case-backs", "inset", Above, "B.back#1", "B.side#1=side, B.back#1=back", "B.back.inset: B.back#1.top > B.side#1.top"),
            Of("case-backs", "rabbeted", Above, "C.back#1", "C.side#1=side, C.back#1=back", "C.back.depth.to-cut: C.side#1/C.back#1.left > C.side#1.right; C.back.rabbet-width: C.side#1/C.back#1.bottom > C.side#1.top"),
            Of("case-backs", "grooved", Above, "D.back#1", "D.side#1=side, D.back#1=back", "D.back.depth.to-cut: D.side#1/D.back#1.left > D.side#1.right; D.back.inset: D.back#1.top > D.side#1.top"),
        ]),
        ("hanging-rail", "A hanging rail, from the right",
        [
            Of("case-backs", "hanging rail behind a grooved back", Right, "D.rail#1", "D.back#1=back, D.deck#2=top, +D.rail#1=rail", "D.rail.width.to-cut: D.rail#1.bottom > D.rail#1.top; D.back.inset: D.back#1.right > D.deck#2.right", 30, 104),
        ]),
        ("case-feet", "What a case stands on, from the right; a filler, from above",
        [
            Of("case-feet", "toe kick", Right, "A.kick#1", "A.deck#1=bottom, A.kick#1=kick", "A.toe.height: A.kick#1.bottom > A.deck#1.bottom; A.toe.setback: A.deck#1.left > A.kick#1.left", 75, 105),
            Of("case-feet", "base", Right, "B.base#1", "B.deck#1=bottom, B.base#1=base", "B.base.height.to-cut: B.base#1.bottom > B.base#1.top; B.base.setback: B.deck#1.left > B.base#1.left", 75, 105),
            Of("case-feet", "filler, from above", Above, "A.side#1@1/3", "A.filler-left#1=filler, A.side#1=side", "A.filler-left.space: A.filler-left#1.left > A.side#1.left", 65, 70),
        ]),
        ("face-frame", "A face frame, from above and from the front",
        [
            Of("face-frame", "packing behind a stile, from above", Above, "A1.side#1", "C.stile#1=stile, C.side#1=side, +L.packing-left#1=packing, +A1.side#1=box, +A1.front#1=front", "C.frame.left-in: C.side#1.right > C.stile#1.right; L.packing-left.thickness: L.packing-left#1.left > L.packing-left#1.right", 70, 64),
            Of("face-frame", "tenon of a rail in a stile, from the front", Front, "C.stile#1", "C.stile#1=stile, C.frame-rail#1=rail", "C.frame.tenon.to-cut: C.stile#1/C.frame-rail#1.left > C.stile#1.right; C.frame.tenon-shoulder: C.frame-rail#1.bottom > C.stile#1/C.frame-rail#1.bottom", 50, 50),
        ]),
        ("drawer-corners", "Corners of a drawer box, from above at the left front corner",
        [
            Of("drawer-corners", "butt", Above, "A1.side#1", "A1.side#1=side, A1.end#1=front", "box.thickness: A1.side#1.left > A1.side#1.right", 30, 26),
            Of("drawer-corners", "rabbet", Above, "A3.side#1", "A3.side#1=side, A3.end#1=front", "A3.corner.depth.to-cut: A3.end#1.left > A3.side#1.right", 30, 26),
            Of("drawer-corners", "dado: at the back", Above, "A4.side#1", "A4.side#1=side, A4.end#2=back", "A4.corner.depth.to-cut: A4.side#1/A4.end#2.left > A4.side#1.right; A4.corner.behind: A4.end#2.top > A4.side#1.top", 26, 34),
            Of("drawer-corners", "lock rabbet", Above, "A5.side#1", "A5.side#1=side, A5.end#1=front", "A5.corner.depth.to-cut: A5.side#1/A5.end#1.left > A5.side#1.right; A5.corner.tongue.to-cut: A5.side#1/A5.end#1.bottom > A5.side#1/A5.end#1.top", 30, 26),
            Of("drawer-corners", "box joint or through dovetail, at a finger or tail", Above, "A6.side#1", "A6.side#1=side, A6.end#1=front", "box.thickness: A6.side#1.left > A6.end#1/A6.side#1.right", 30, 26),
            Of("drawer-corners", "half-blind dovetail, at a tail", Above, "A7.side#1", "A7.side#1=side, A7.end#1=front", "A7.corner.lap: A7.end#1.bottom > A7.side#1.bottom; A7.corner.depth.to-cut: A7.side#1.bottom > A7.end#1.top", 30, 26),
        ]),
        ("drawer-bottoms", "Bottoms of a drawer box, from the front; slid in under a short back, from the right",
        [
            Of("drawer-bottoms", "grooved", Front, "A1.bottom#1", "A1.side#1=side, A1.bottom#1=bottom", "A1.groove.depth.to-cut: A1.side#1/A1.bottom#1.left > A1.side#1.right; A1.groove.up: A1.side#1.bottom > A1.side#1/A1.bottom#1.bottom", 38, 30),
            Of("drawer-bottoms", "slid in under the back, from the right", Right, "A2.bottom#1", "A2.back#1=back, A2.bottom#1=bottom", "thin.thickness: A2.bottom#1.bottom > A2.bottom#1.top; box.thickness: A2.back#1.left > A2.back#1.right", 38, 30),
            Of("drawer-bottoms", "applied", Front, "A3.bottom#1", "A3.side#1=side, A3.bottom#1=bottom", "thin.thickness: A3.bottom#1.bottom > A3.bottom#1.top", 38, 30),
            Of("drawer-bottoms", "let in", Front, "A4.bottom#1", "A4.side#1=side, A4.bottom#1=bottom", "A4.groove.depth.to-cut: A4.side#1/A4.bottom#1.left > A4.side#1.right; A4.groove.width: A4.side#1/A4.bottom#1.bottom > A4.side#1/A4.bottom#1.top", 38, 30),
        ]),
        ("drawer-slides", "What drawers run on, from the front at the lower left corner",
        [
            Of("drawer-runs", "slides at the side", Front, "S2.bottom#1", "C.side#1=side, S2.bottom#1=bottom, +S2.side#1=box, ~S2=slide", "side.slide.thickness: ~S2.left > ~S2.right; S2.groove.up: S2.side#1.bottom > S2.bottom#1.bottom", 44, 110),
            Of("drawer-runs", "slides under the box", Front, "U2.bottom#1", "P1#1=partition, U2.bottom#1=bottom, +U2.side#1=box", "under.slide.thickness: P1#1.right > U2.side#1.right; U2.groove.up: U2.side#1.bottom > U2.bottom#1.bottom", 44, 60),
            Of("drawer-runs", "runners", Front, "R2.bottom#1", "P2#1=partition, R2.bottom#1=bottom, +R2.side#1=box, +R2.runner#1=runner, +C.deck#1=bottom of the case", "ash.thickness: R2.runner#1.bottom > R2.runner#1.top; ash.width: R2.runner#1.left > R2.runner#1.right", 56, 60),
        ]),
        ("drawer-widths", "An opening and its boxes, from the front",
        [
            Of("drawer-runs", "opening, boxes and slides", Front, "S1.bottom#1", "C.side#1=side, P1#1=partition, +C.deck#1, +C.deck#2, +S1.side#1, +S1.side#2, +S1.bottom#1, +S2.side#1, +S2.side#2, +S2.bottom#1, ~S1, ~S2", "S1.opening: C.side#1.right > P1#1.left; S1.box.as-built: S1.side#1.left > S1.side#2.right; S1.side.width.to-cut: S1.side#2.bottom > S1.side#2.top", 30, 30),
        ]),
        ("doors", "Doors, from above",
        [
            Of("doors", "overlay", Above, "D1#1", "A.side#1=side, D1#1=door", "A1.overlay-left: D1#1.left > A.side#1.right", 40, 40),
            Of("doors", "inset", Above, "D2#1", "B.side#1=side, D2#1=door", "B1.door-gap: B.side#1.right > D2#1.left", 40, 40),
            Of("doors", "panel in a stile", Above, "D3.panel#1", "D3.stile#1=stile, D3.panel#1=panel", "framed.groove.depth.to-cut: D3.stile#1/D3.panel#1.left > D3.stile#1.right; D3.groove.width: D3.stile#1/D3.panel#1.bottom > D3.stile#1/D3.panel#1.top", 34, 30),
            Of("doors", "tenon of a rail", Above, "D3.rail#1", "D3.stile#1=stile, D3.rail#1=rail", "framed.tenon.length.to-cut: D3.stile#1/D3.rail#1.left > D3.stile#1.right", 34, 30),
        ]),
        ("shelves", "Shelves, from the front; the strip under one, from the right",
        [
            Of("shelves", "butted", Front, "L1#1", "C.side#1=side, L1#1=shelf", "birch.thickness: L1#1.bottom > L1#1.top", 40, 30),
            Of("shelves", "in a dado", Front, "M1#1", "P1#1=partition, M1#1=shelf", "M.dado.depth.to-cut: P1#1/M1#1.left > P1#1.right; birch.thickness: P1#1/M1#1.bottom > P1#1/M1#1.top", 40, 30),
            Of("shelves", "strip under the front edge, from the right", Right, "R1#1", "R1#1=shelf, R1.strip#1=strip", "R.shelf-setback: C.side#2.left > R1#1.left", 50, 50),
        ]),
        ("tops", "Edges of tops and a slot, from the right",
        [
            Of("tops", "layers, edging and slot", Right, "T.layer-1#1", "T.layer-1#1=layer, T.layer-2#1=layer, T.edging-front#1=edging", "T.thickness: T.layer-2#1.bottom > T.layer-1#1.top; K.depth: T.layer-1#1/K.bottom > T.layer-1#1.top; K.width: T.layer-1#1/K.left > T.layer-1#1/K.right; K.from: T.edging-front#1.left > T.layer-1#1/K.left", 140, 40),
        ]),
        ("laminate", "Laminate on a top, from the right",
        [
            Of("tops", "laminate on both faces", Right, "U#1", "U#1=core, .G.post#1", "U.laminate: U#1/laminate.bottom > U#1/laminate.top; slab.thickness: U#1.bottom > U#1.top", 50, 24),
        ]),
        ("wells", "A well, from the front",
        [
            Of("tops", "platform, bearers and sides below the opening", Front, "W.platform#1", "W.side#1=side, W.side#2=side, +W.platform#1=platform, +W.bearer#1=bearer, +W.bearer#2=bearer, +V#1=top", "W.drop: W.platform#1.top > V#1.top; W.width: W.side#1.right > W.side#2.left; W.side.width.to-cut: W.side#1.bottom > W.side#1.top", 60, 200),
        ]),
        ("rails-run", "Rails that pass the posts, from above; a stretcher, from the right",
        [
            Of("frame-runs", "lapped", Above, "L.rail#1", "L.post#1=post, L.rail#1=rail", "L.lap.post: L.post#1/L.rail#1.bottom > L.post#1/L.rail#1.top; L.lap: L.rail#1/L.post#1.bottom > L.rail#1/L.post#1.top", 36, 44),
            Of("frame-runs", "outside", Above, "O.rail#1", "O.post#1=post, O.rail#1=rail", "rails.thickness: O.rail#1.bottom > O.rail#1.top", 36, 44),
            Of("frame-runs", "inside", Above, "I.rail#1", "I.post#1=post, I.rail#1=rail", "rails.thickness: I.rail#1.bottom > I.rail#1.top", 36, 44),
            Of("frame-runs", "stretcher of an end, from the right", Right, "LE#1", "L.post#1=post, LE#1=stretcher", "LE.up: L.post#1.bottom > LE#1.bottom", 50, 44),
        ]),
        ("bearers", "A bearer and slats beside a post, from above; drawers back to back, from the right",
        [
            Of("frame-runs", "bearer for a slide", Above, "A1.bearer#1", "L.post#1=post, A1.bearer#1=bearer", "strip.thickness: A1.bearer#1.left > A1.bearer#1.right", 36, 44),
            Of("library-table", "slats", Above, "E1.slat#1", "F.post#1=post, E1.slat#1=slat", "E1.slat-space: F.post#1.right > E1.slat#1.left", 40, 30),
            Of("library-table", "drawers back to back, from the right", Right, "D1.bottom#1", "D1.back#1=back, D2.back#1=back, +D1.bottom#1=bottom, +D2.bottom#1=bottom", "D1.back.width.to-cut: D1.back#1.bottom > D1.back#1.top", 60, 60),
        ]),
        ("box-front", "A front that is the front of the box, from above and from the right",
        [
            Of("framed-front", "side in a rabbet of the front", Above, "G6.side#1", "G6.side#1=side, G6.front#1=front", "G6.corner.depth.to-cut: G6.side#1.bottom > G6.front#1.top", 36, 30),
            Of("library-table", "bottom between the sides and under the back, from the right", Right, "D1.bottom#1", "D1.back#1=back, D1.bottom#1=bottom", "soft.thickness: D1.bottom#1.bottom > D1.bottom#1.top", 40, 36),
        ]),
        ("face-doors", "Doors on a face frame and halves of an edge, from above",
        [
            Of("framed-front", "door on a face frame", Above, "A1.panel#1", "C.stile#1=stile, C.side#1=side, A1.stile#1=door", "A.overlay-left: A1.stile#1.left > C.stile#1.right", 44, 50),
            Of("framed-front", "packing behind a door", Above, "A4.side#1", "C.stile#1=stile, C.side#1=side, +A3.packing-left#1=packing, +A4.side#1=box, +A4.front#1=front, +A1.stile#1=door", "A3.packing-left.thickness: A3.packing-left#1.left > A3.packing-left#1.right", 90, 80),
            Of("framed-front", "half overlay on the edge of a case", Above, "G2#1", "G.side#1=side, G2#1=door", "G1.overlay-left: G2#1.left > G.side#1.right", 50, 44),
        ]),
        ("bay-well", "A well in a bay, from the front and from above",
        [
            Of("top-edgings", "platform on bearers", Front, "X.platform#1", "X.platform#1=platform, X.bearer#1=bearer, +W#1=top", "X.drop: X.platform#1.top > W#1.top", 60, 130),
            Of("top-edgings", "bearer on a post, from above", Above, "X.bearer#1", "J.post#3=post, X.bearer#1=bearer", "maple.thickness: X.bearer#1.left > X.bearer#1.right", 44, 44),
        ]),
    ];

    /// <summary>Views of whole pieces.</summary>
    public static readonly ImmutableArray<FigureView> Wholes =
    [
        new("structures", "case-feet", Front, new(158, 80) { FigureSize = 3.4 }),
        new("fronts", "drawer-runs", Front, new(158, 80) { FigureSize = 3.4 }),
        new("sewing-side", "sewing-corner", Right, new(158, 80) { FigureSize = 3.4 }),
        new("edging", "sewing-corner", Above, new(158, 80) { FigureSize = 3.4 }),
        new("library-table", "library-table", Front, new(158, 100) { FigureSize = 3.4 }),
        new("rolling", "rolling-cases", Front, new(158, 100) { FigureSize = 3 }),
        new("feet-side", "case-feet", Right, new(158, 100) { FigureSize = 3 }),
        new("face-sizes", "face-frame", Front, new(158, 100) { FigureSize = 3.4 }),
        new("edgings", "top-edgings", Above, new(158, 100) { FigureSize = 3 }),
        new("well-plan", "tops", Above, new(158, 110) { FigureSize = 3 }),
    ];

    /// <summary>Faces with their holes, by the key of a part.</summary>
    public static readonly ImmutableArray<(string Name, string Piece, string Part)> Faces =
    [
        ("dowels", "case-corners", "D.side"),
        ("cups", "doors", "D1"),
        ("pins", "sewing-corner", "B.side"),
    ];
}
