using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut.Joinery;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut.Openings;

/// <summary>A partition, deck or shelf on the way to being joined.</summary>
/// <param name="Key">Its key.</param>
/// <param name="Name">For people.</param>
/// <param name="Panel">Its sheet.</param>
/// <param name="Thickness">Its thickness.</param>
/// <param name="Width">Its width.</param>
/// <param name="IsUpright">True for a partition.</param>
/// <param name="At">From where its space begins to its lower edge (left face for a partition).</param>
internal sealed record Dividing(string Key, string Name, Panel Panel, QuantityKey Thickness, PartSize Width, bool IsUpright, ImmutableArray<Term> At);

/// <summary>Partitions, decks and fixed shelves: butted, pocket-screwed, dowelled or in dadoes, with the cuts in what carries them.</summary>
internal static class DividerRule
{
    /// <summary>Joints, fastenings and cuts of one member.</summary>
    public static void Join(Book book, Space space, Dividing member, string buttWords)
    {
        (string key, DividerFit fit) = (member.Key, space.Dividers);
        ExactLength thick = book.Value(member.Thickness);
        int screws = 2 * Fastening.ScrewsAlong(book.Value(member.Width.Made));
        (Edge before, Edge after) = member.IsUpright ? (space.Edges.Bottom, space.Edges.Top) : (space.Edges.Left, space.Edges.Right);
        switch (fit.Choice.Joint)
        {
            case CaseJoint.Pocket:
                book.Joints.Add(new("butt", key, Face.Ends, space.Carrier, Face.Inside, "glue and pocket screws, pockets on the face that is not seen"));
                (string pocket, string source) = Fastening.PocketScrew(book, thick);
                book.Hardware.Add(new(key, pocket, screws, "piece", $"2 ends: {Fastening.SpacingWords}; {source}"));
                return;
            case CaseJoint.Dowels:
                book.Joints.Add(new("dowels", key, Face.Ends, space.Carrier, Face.Inside, "glue and dowels"));
                DowelRule.Write(book, new(key, member.Name, key, "both ends", 2, member.Width.AsCut, member.Thickness),
                    [.. Carriers(before, after, member.IsUpright).Select(c => (c.Edge.Part, c.Edge.Member, $"{c.Where}, on the line of {member.Name}"))]);
                return;
            case CaseJoint.Dado when fit.Depth is { } depth:
                foreach ((Edge edge, string word, string where) in Carriers(before, after, member.IsUpright)) Dado(book, space, member, fit, depth, edge, word, where);
                return;
            default:
                book.Joints.Add(new("butt", key, Face.Ends, space.Carrier, Face.Inside, buttWords));
                book.Hardware.Add(new(key, Fastening.PanelScrew(book, member.Panel, thick), screws, "piece", $"2 ends: {Fastening.SpacingWords}"));
                return;
        }
    }

    // The two sides of a case are one part and are cut alike; else each carrier has its own place for the cut.
    private static IEnumerable<(Edge Edge, string Word, string Where)> Carriers(Edge before, Edge after, bool isUpright)
    {
        string Where(Edge edge, string ofCase, string face) => edge.Kind == EdgeKind.CaseOutside ? $"the inside of the {ofCase}" : $"its {face} face";
        return before.Part == after.Part
            ? [(before, "dado", "the inside")]
            : [(before, "dado-before", isUpright ? Where(before, "bottom", "upper") : Where(before, "left side", "right")),
               (after, "dado-after", isUpright ? Where(after, "top", "lower") : Where(after, "right side", "left"))];
    }

    private static void Dado(Book book, Space space, Dividing member, DividerFit fit, PartSize depth, Edge edge, string word, string where)
    {
        string from = member.IsUpright ? "from the left end" : "above the lower end";
        QuantityKey at = book.Define(member.Key, $"{word}.at", $"{member.Name}, its dado in {edge.Part}, {from}",
            edge.Start.IsEmpty && member.At.IsEmpty ? new Stated(ExactLength.Zero, new(OriginKind.Worked, "at the end")) : new Sum([.. edge.Start, .. member.At]));
        book.Machinings.Add(new(edge.Part, $"Dado across {where} for {member.Name}", [("depth", depth.ToCut), ("width", member.Thickness), (from, at)]));
        book.Joints.Add(new("dado", member.Key, Face.Ends, edge.Part, Face.Inside, "glue; screws through it only where no face is seen") { Depth = depth.AsCut });
        LetInRule.Check(book, edge.Part, edge.Part, fit.Choice, depth, edge.Member);
    }
}
