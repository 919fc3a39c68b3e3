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
    private const string CutWords = "Cut all dadoes before anything is joined, those that face one another at one setting of the fence; try the fit with an offcut of what goes in.";

    /// <summary>Shelves in dadoes of their own, whatever else divides the case; null where there are no panels to cut them in, with a finding.</summary>
    public static DividerFit? InDadoes(Book book, Space space, Shelves shelves, QuantityKey thickness)
    {
        if (!Carriers.Has(book, space, "dadoes")) return null;
        var choice = new JointChoice(CaseJoint.Dado, shelves.Dado, shelves.Keys[0].Place);
        ImmutableArray<QuantityKey> cuts = [.. Carriers.Beside(space).Select(c => c.Member).Distinct()];
        return new(choice, LetInRule.Depth(book, space.Prefix, "dado", $"{space.Name}, dadoes for its shelves", choice, cuts, thickness)) { IsSlidIn = space.Edges.Left.Beside is not null };
    }

    /// <summary>Joints, fastenings and cuts of one member.</summary>
    public static void Join(Book book, Space space, Dividing member, string buttWords)
    {
        (string key, DividerFit fit) = (member.Key, space.Dividers);
        ExactLength thick = book.Value(member.Thickness);
        int screws = 2 * Fastening.ScrewsAlong(book.Value(member.Width.Made));
        (Edge before, Edge after) = member.IsUpright ? (space.Edges.Bottom, space.Edges.Top) : (Carriers.Panel(space.Edges.Left), Carriers.Panel(space.Edges.Right));
        switch (fit.Choice.Joint)
        {
            case CaseJoint.Pocket:
                Meet(JointKind.Butt, "glue and pocket screws, pockets on the face that is not seen");
                (string pocket, string source) = Fastening.PocketScrew(book, thick);
                Fastening.CheckPocket(book, key, member.Name, thick, Place());
                book.Hardware.Add(new(key, pocket, screws, "piece", $"2 ends: {Fastening.SpacingWords}; {source}"));
                return;
            case CaseJoint.Dowels:
                Meet(JointKind.Dowels, "glue and dowels");
                DowelRule.Write(book, new(key, member.Name, key, "both ends", 2, member.Width.AsCut, member.Thickness) { Place = fit.Choice.Place },
                    [.. Carried(before, after, member.IsUpright).Select(c => (c.Edge.Part, c.Edge.Member, $"{c.Where}, on the line of {member.Name}"))]);
                return;
            case CaseJoint.Dado when fit.Depth is { } depth:
                foreach ((Edge edge, string word, string where) in Carried(before, after, member.IsUpright)) Dado(book, member, fit, depth, edge, word, where);
                if (!book.Steps.Any(s => s.Words == CutWords)) book.Steps.Add(new(Stage.Cuts, CutWords, [], null, "crosscut"));
                return;
            default:
                Meet(JointKind.Butt, buttWords);
                Fastening.CheckEdge(book, key, member.Name, thick, Place());
                book.Hardware.Add(new(key, Fastening.PanelScrew(book, member.Panel, thick), screws, "piece", $"2 ends: {Fastening.SpacingWords}"));
                return;
        }

        Place Place() => fit.Choice.Place.IsKnown ? fit.Choice.Place : book.Parts.Find(p => p.Key == key)?.Place ?? space.Place;

        // What bounds the space has no part of its own where posts do.
        void Meet(JointKind kind, string held)
        {
            foreach (string part in new[] { before, after }.Select(e => e.Part.Length > 0 ? e.Part : space.Carrier).Distinct())
                book.Joints.Add(new(kind, key, Face.Ends, part, Face.Inside, held));
        }
    }

    // The two sides of a case are one part and are cut alike; else each carrier has its own place for the cut.
    private static IEnumerable<(Edge Edge, string Word, string Where)> Carried(Edge before, Edge after, bool isUpright)
    {
        string Where(Edge edge, string ofCase, string face) => edge.Kind == EdgeKind.CaseOutside ? $"the inside of the {ofCase}" : $"its {face} face";
        return before.Part == after.Part
            ? [(before, "dado", "the inside")]
            : [(before, "dado-before", isUpright ? Where(before, "bottom", "upper") : Where(before, "left side", "right")),
               (after, "dado-after", isUpright ? Where(after, "top", "lower") : Where(after, "right side", "left"))];
    }

    private static void Dado(Book book, Dividing member, DividerFit fit, PartSize depth, Edge edge, string word, string where)
    {
        string from = member.IsUpright ? "from the left end" : "above the lower end";
        QuantityKey at = book.Define(member.Key, $"{word}.at", $"{member.Name}, its dado in {edge.Part}, {from}",
            edge.Start.IsEmpty && member.At.IsEmpty ? new Stated(ExactLength.Zero, new(OriginKind.Worked, "at the end")) : new Sum([.. edge.Start, .. member.At]));
        book.Machinings.Add(new(edge.Part, $"Dado across {where} for {member.Name}", [("depth", depth.ToCut), ("width", member.Thickness), (from, at)]) { By = [member.Key] });
        // Solid wood in the dado of what does not move with it: glued in front, it goes back and forth in the rest.
        bool isLoose = (GrainWay.Moves(book, member.Key, Along.Y) - GrainWay.Moves(book, edge.Part, Along.Y)).Sign != 0;
        book.Joints.Add(new(JointKind.Dado, member.Key, Face.Ends, edge.Part, Face.Inside, isLoose ? "glue in its front quarter only, no screws; the rest slides in the dado" : "glue; screws through it only where no face is seen") { Depth = depth.AsCut, IsLoose = isLoose });
        LetInRule.Check(book, edge.Part, edge.Part, fit.Choice, depth, edge.Member);
        CheckBackToBack(book, member, fit, depth, edge);
    }

    /// <summary>Dadoes from both faces of one panel at one place leave less wood between them than is usual.</summary>
    private static void CheckBackToBack(Book book, Dividing member, DividerFit fit, PartSize depth, Edge edge)
    {
        if (book.Parts.Find(p => p.Key == edge.Part && p.Placements.Length == 1) is not { } carrier) return;
        (Placement box, Placement own) = (carrier.Placements[0], Of(member.Key));
        Placement Of(string key) => book.Parts.First(p => p.Key == key).Placements[0];
        bool Before(Placement p) => member.IsUpright ? p.Z < box.Z : p.X < box.X;
        bool Meet(Placement p) => (member.IsUpright ? own.Shared(p).X : own.Shared(p).Z).Sign > 0;
        ExactLength thick = book.Value(edge.Member);
        foreach (Joint other in book.Joints.Where(j => j.Kind == JointKind.Dado && j.Against == edge.Part && j.Part != member.Key && Before(Of(j.Part)) != Before(own) && Meet(Of(j.Part))).ToList())
        {
            (ExactLength deep, ExactLength far) = (book.Value(depth.AsCut), book.Value(other.Depth!.Value));
            ExactLength left = thick - deep - far;
            if (left >= thick * LetInRule.LeftBetween) continue;
            book.NoteOnce(left.Sign <= 0 ? "joint.through" : "joint.back-to-back", left.Sign <= 0 ? Severity.Stop : Severity.Warn, carrier.Key,
                $"Dadoes of {book.Say(deep)} and {book.Say(far)} meet from both faces of {carrier.Name}, {book.Say(thick)} thick.",
                $"Make them {book.Say(thick * TradeRules.Get("CJ3").Share)} deep at most, so that a third stays, or move one of the two. ({TradeRules.Get("CJ3").Cited})", fit.Choice.Depth?.Place ?? fit.Choice.Place);
        }
    }
}
