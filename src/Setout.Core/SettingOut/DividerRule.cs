using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut;

/// <summary>How what divides a space meets what carries it.</summary>
/// <param name="Choice">The joint.</param>
/// <param name="Depth">How far it goes in at each end; null where it only meets.</param>
internal sealed record DividerFit(JointChoice Choice, PartSize? Depth)
{
    /// <summary>Butted.</summary>
    public static DividerFit Butt { get; } = new(JointChoice.Butt, null);

    /// <summary>How far it goes in at one end, as a term; nothing where it only meets.</summary>
    public ImmutableArray<Term> AtOneEnd => Depth is null ? [] : [Term.From("into its dado", 1, Depth.AsCut)];

    /// <summary>How far it goes in at both ends.</summary>
    public ImmutableArray<Term> AtBothEnds => Depth is null ? [] : [Term.From("into its dadoes", 2, Depth.AsCut)];

    /// <summary>True where it goes in before the case is closed: into dadoes, or onto dowels.</summary>
    public bool IsClosedIn => Choice.Joint is CaseJoint.Dado or CaseJoint.Dowels;

    /// <summary>When it comes in.</summary>
    public Stage Stage => IsClosedIn ? Stage.Carcase : Stage.Inside;
}

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
    /// <summary>What such joints of a case are, worked out once for all of them.</summary>
    public static DividerFit Of(Book book, CaseShape shape)
    {
        JointChoice choice = shape.Described.Dividers;
        // Away from the ends a rabbet is a dado.
        if (choice.Joint == CaseJoint.Rabbet) choice = choice with { Joint = CaseJoint.Dado };
        PartSize? depth = LetInRule.Depth(book, shape.Key, "divider", $"{shape.Name}, dadoes for what divides it", choice, shape.Thickness, shape.Thickness);
        return new(choice, depth);
    }

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

    /// <summary>Dadoes from both faces of one partition at one height leave less wood between them than is usual.</summary>
    public static void CheckBackToBack(Book book, DividerFit fit)
    {
        if (fit.Depth is not { } depth) return;
        foreach (Part carrier in book.Parts.Where(p => p.Role is PartRole.Partition or PartRole.Deck && p.Placements.Length == 1).ToList())
        {
            Placement box = carrier.Placements[0];
            bool isUpright = carrier.Role == PartRole.Partition;
            List<Placement> held = [.. book.Joints.Where(j => j.Kind == "dado" && j.Against == carrier.Key).Select(j => book.Parts.First(p => p.Key == j.Part).Placements[0])];
            bool Before(Placement p) => isUpright ? p.X < box.X : p.Z < box.Z;
            bool Meet(Placement a, Placement b) => isUpright ? Shared(a.Z, a.SizeZ, b.Z, b.SizeZ) : Shared(a.X, a.SizeX, b.X, b.SizeX);
            ExactLength thick = book.Value(carrier.Thickness), left = thick - (book.Value(depth.AsCut) * 2);
            if (left >= thick / 3 || !held.Where(Before).Any(a => held.Where(b => !Before(b)).Any(b => Meet(a, b)))) continue;
            book.NoteOnce(left.Sign <= 0 ? "joint.through" : "joint.back-to-back", left.Sign <= 0 ? Severity.Stop : Severity.Warn, carrier.Key,
                $"Dadoes of {book.Say(book.Value(depth.AsCut))} meet from both faces of {carrier.Name}, {book.Say(thick)} thick.",
                $"Make them {book.Say(thick / 3)} deep at most, so that a third stays, or move one of the two. ({TradeRules.Get("CJ3").Cited})", fit.Choice.Depth?.Place ?? fit.Choice.Place);
        }
    }

    private static bool Shared(ExactLength a, ExactLength aSize, ExactLength b, ExactLength bSize) => a < b + bSize && b < a + aSize;
}
