using System.Globalization;
using System.Text;
using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Shop.Texts;

namespace Setout.Speed;

/// <summary>A wide case of bays with drawers, eight with eleven each unless said.</summary>
internal static class LargePiece
{
    public static string Text(int bays = 8, int drawers = 11)
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
        for (int bay = 0; bay < bays; bay++)
        {
            if (bay > 0) text.Append(CultureInfo.InvariantCulture, $"      - partition: P{bay}\n");
            text.Append(CultureInfo.InvariantCulture, $"      - opening: B{bay}\n        drawers:\n          like: usual\n          down:\n");
            for (int drawer = 0; drawer < drawers; drawer++) text.Append(CultureInfo.InvariantCulture, $"            - {{drawer: D{bay}-{drawer}}}\n");
        }
        return text.ToString();
    }

    /// <summary>Openings, boxes and sheets as they may be read: a 64th to three off, the same each time.</summary>
    public static Log Readings(SetPiece set)
    {
        string[] keys = ["ply.thickness", "box.thickness", .. Enumerable.Range(0, 8).Select(b => $"B{b}.width"), .. Enumerable.Range(0, 30).Select(i => $"D{i % 8}-{i / 8}.box.as-built")];
        return new([.. keys.Select((k, i) => new ReadingEntry($"e{i}", "2026-05-04T09:40:00Z", new(k),
            [set.Worked[new(k)] + ExactLength.FromInches(Rational.Of((i % 7) - 3, 64)), set.Worked[new(k)]], "tape", ""))]);
    }
}
