using Setout.Core.Pieces;
using Setout.Core.SettingOut.Joinery;

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
        PartSize? depth = LetInRule.Depth(book, shape.Key, "divider", $"{shape.Name}, dadoes for what divides it", choice, [shape.Thickness], shape.Thickness);
        return new(choice, depth);
    }

    /// <summary>Whether anything in a case goes in before it is closed: into dadoes, or onto dowels.</summary>
    public static bool GoesInFirst(DividerFit fit, OpeningContent? content) => fit.IsClosedIn || content.Within().Any(c => c is Shelves { Fit: ShelfFit.Dado });
}
