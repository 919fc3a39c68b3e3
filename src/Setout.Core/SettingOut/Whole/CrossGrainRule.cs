using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut.Joinery;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut.Whole;

/// <summary>
/// Parts that are held fast to one another and move apart from one another: solid wood across its grain against what does not move that way. Each joint is
/// looked at where its parts meet, each way along that face: what one moves there more than the other. Up to a hair the joint takes it; past that it is a finding.
/// </summary>
internal static class CrossGrainRule
{
    private sealed record Pull(Part Moving, Part Other, ExactLength By, ExactLength Along);

    /// <summary>Looks at all joints; writes first what each wide part of solid wood moves.</summary>
    public static void Look(Book book)
    {
        foreach (Part part in book.Parts.Where(p => p.Placements.Length > 0 && book.Piece.Materials[p.Material] is Panel).ToList()) WoodMoves.Of(book, part);
        if (!book.Parts.Any(p => WoodMoves.Solid(book.Piece.Materials[p.Material]) is not null)) return;
        ExactLength most = Usual.Length(book, "WD1");
        ILookup<string, Part> parts = book.Parts.ToLookup(p => p.Key);
        var said = new HashSet<(string, string)>();
        foreach (Joint joint in book.Joints.Where(j => !j.IsLoose).ToList())
        {
            if (parts[joint.Part].FirstOrDefault() is not { } part || parts[joint.Against].FirstOrDefault() is not { } against) continue;
            if (Pulled(book, joint, part, against) is not { } pull || pull.By <= most || !said.Add((pull.Moving.Key, pull.Other.Key))) continue;
            WoodMoves.Of(book, pull.Moving);
            string held = joint.Held.Contains("glue", StringComparison.Ordinal) ? "glued" : "screwed hard";
            book.NoteOnce("wood.cross-grain", Severity.Warn, pull.Moving.Key,
                $"{pull.Moving.Name} is {held} to {pull.Other.Name} for {book.Say(pull.Along)} across its grain, and moves {book.Say(pull.By)} there that {pull.Other.Name} does not follow: one of them splits, or the joint opens.",
                $"{Remedy(book, joint, pull)} (a joint takes about {book.Say(most)}: {TradeRules.Get("WD1").Cited})",
                pull.Moving.Place);
        }
    }

    /// <summary>What to change, by how much.</summary>
    private static string Remedy(Book book, Joint joint, Pull pull)
    {
        string by = book.SayAtLeast(pull.By), slots = $"screws in slots {book.SayAtLeast(pull.By + Usual.Length(book, "WD2"))} long";
        return (joint.Kind, pull.Moving.Role) switch
        {
            (JointKind.Lip, _) => $"Leave its ends without a lip ({book.Hand.Key("edges", "raw")} or {book.Hand.Say("'chamfered'", "to chamfered")} for this wood), or use plywood.",
            (JointKind.Edging, _) => $"Take that side out of the {book.Hand.Key("sides")} of the edging, or use plywood for the top. A strip across the ends of boards stays only where it is fixed in its middle and moves {by} on a tongue or on {slots}.",
            (JointKind.Face, _) => "Lay all layers of one wood with their grain one way, or make all of them of sheet goods.",
            (_, PartRole.BoxBottom) => $"{book.Hand.Write("bottom fit", "grooved")} or 'slid in', where it has {by} of play, or use plywood for the bottom.",
            _ => $"Fix it at one place only and let the rest move {by}: {slots}, or a groove without glue. Or use plywood for {pull.Moving.Name}.",
        };
    }

    private static Pull? Pulled(Book book, Joint joint, Part part, Part against)
    {
        // Lips have no place of their own: one on an end lies across the whole width.
        if (joint.Kind == JointKind.Lip)
            return joint.On != Face.Ends || WoodMoves.Of(book, against) is not { } moves ? null : new(against, part, book.Value(moves), book.Value(against.Width.Made));
        Pull? worst = null;
        foreach (Placement a in part.Placements)
            foreach (Placement b in against.Placements)
                foreach ((Along way, ExactLength along) in Meeting(book, a, b))
                {
                    Rational first = GrainWay.Moves(book, part, a, way), second = GrainWay.Moves(book, against, b, way), more = first - second;
                    ExactLength by = along * (more.Sign < 0 ? -more : more);
                    if (worst is null || by > worst.By) worst = more.Sign < 0 ? new(against, part, by, along) : new(part, against, by, along);
                }
        return worst;
    }

    /// <summary>How far two boxes lie on one another each way along the face where they meet; none where they do not meet.</summary>
    private static IEnumerable<(Along Way, ExactLength Along)> Meeting(Book book, Placement a, Placement b)
    {
        (ExactLength x, ExactLength y, ExactLength z) = a.Shared(b);
        (Along Way, ExactLength Along)[] ways = [(Along.X, x), (Along.Y, y), (Along.Z, z)];
        ExactLength near = -(book.Grid.Step.ToExact() * 2);
        if (ways.Any(w => w.Along < near)) return [];
        return ways.OrderBy(w => w.Along).Skip(1).Where(w => w.Along.Sign > 0);
    }
}
