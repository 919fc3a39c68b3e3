using System.Globalization;
using System.Text;

namespace Setout.Speed;

/// <summary>A wide case of eight bays with eleven drawers each.</summary>
internal static class LargePiece
{
    public static string Text()
    {
        var text = new StringBuilder("""
            setout: 1
            name: Seed store
            unit: in
            materials:
              ply: {panel: hardwood plywood, label: 3/4}
              box: {panel: hardwood plywood, label: 1/2}
              bottoms: {panel: hardwood plywood, label: 1/4}
            drawers:
              usual: {sides: box, bottom: bottoms, front: ply}
            assembly:
              - case: C
                of: ply
                width: 160
                height: 66
                depth: 24
                across:

            """);
        for (int bay = 0; bay < 8; bay++)
        {
            if (bay > 0) text.Append(CultureInfo.InvariantCulture, $"      - partition: P{bay}\n");
            text.Append(CultureInfo.InvariantCulture, $"      - opening: B{bay}\n        drawers:\n          like: usual\n          down:\n");
            for (int drawer = 0; drawer < 11; drawer++) text.Append(CultureInfo.InvariantCulture, $"            - {{drawer: D{bay}-{drawer}}}\n");
        }
        return text.ToString();
    }
}
