using System.Collections.Immutable;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut.Openings;

/// <summary>The panels that carry what is in an opening: sides, partitions, decks, or the slide panels of a frame.</summary>
internal static class Carriers
{
    /// <summary>An edge by the panel that stands right beside the opening: of a frame its slide panel, not the post; of a doubled partition the one that faces it.</summary>
    public static Edge Panel(Edge edge) => edge with { Member = edge.Own };

    /// <summary>The panels left and right.</summary>
    public static ImmutableArray<Edge> Beside(Space space) => [Panel(space.Edges.Left), Panel(space.Edges.Right)];

    /// <summary>False between bare posts, with a finding.</summary>
    public static bool Has(Book book, Space space, string what)
    {
        if (Beside(space).All(e => e.Part.Length > 0)) return true;
        book.Note("shelf.no-panels", Severity.Stop, space.Owner, $"There are no panels beside {space.Name} to cut {what} in.", $"Add 'slide panels: MATERIAL' to the opening of the frame, {book.Hand.OrWrite("fit", "fixed")}.", space.Place);
        return false;
    }
}
