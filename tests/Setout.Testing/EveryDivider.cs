namespace Setout.Testing;

/// <summary>A piece with a divider of every kind: posts M and rails R of a frame, partition P and decks E and H of a case; with shelves, drawers and a door beside them.</summary>
public static class EveryDivider
{
    /// <summary>Its text.</summary>
    public const string Text = """
        setout: 1
        name: Every divider
        unit: mm
        materials:
          ply: {panel: hardwood plywood, label: 18, thickness: 18}
          thin: {panel: hardwood plywood, label: 12, thickness: 12}
          oak: {stick: oak, section: 45 x 45, lengths: [{length: 2400}]}
        drawers:
          box: {sides: thin, bottom: thin, front: ply}
        doors:
          plain: {of: ply, lies: inset}
        assembly:
          - frame: F
            of: oak
            width: 1600
            height: 850
            depth: 600
            toe: 90
            across:
              - opening: L
                width: 500
                down: [{opening: L1, height: 250}, {rail: R}, {opening: L2, height: rest}]
              - posts: M
              - opening: K
                width: rest
          - case: C
            beside: F
            of: ply
            width: 1200
            height: 900
            depth: 400
            across:
              - opening: A
                width: 500
                doors: {like: plain, keys: [D1]}
                down: [{opening: A1, height: 300}, {deck: E}, {opening: A2, height: rest, shelves: {down: [S1, S2]}}]
              - partition: P
              - opening: B
                width: rest
                down: [{opening: B1, height: 400, drawers: {like: box, down: [{drawer: G1}, {drawer: G2}]}}, {deck: H}, {opening: B2, height: rest, shelves: {fit: adjustable, down: [S3]}}]
        """;
}
