using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut.Joinery;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut.Cases;

/// <summary>What the partitions, decks and fixed shelves of a case have in common.</summary>
internal static class CaseDividers
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
