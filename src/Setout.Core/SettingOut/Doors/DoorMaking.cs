using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut.Doors;

/// <summary>A door that is to be made: its aims and its place.</summary>
/// <param name="Key">Permanent.</param>
/// <param name="Name">For people.</param>
/// <param name="Place">Where it stands in the piece file.</param>
/// <param name="Width">Its width.</param>
/// <param name="Height">Its height.</param>
/// <param name="X">From the left of the structure.</param>
/// <param name="Y">From its front.</param>
/// <param name="Z">From its lower edge.</param>
/// <param name="Held">What is to be read before it is cut.</param>
/// <param name="IsInset">True when it goes inside.</param>
/// <param name="IsOfPair">True for one of two.</param>
internal sealed record DoorSpot(
    string Key, string Name, Place Place, Sum Width, Sum Height, ExactLength X, ExactLength Y, ExactLength Z, ImmutableArray<QuantityKey> Held, bool IsInset, bool IsOfPair)
{
    /// <summary>Which way its width is landed: what two alike are off together would be twice a step, were both to go down.</summary>
    public (Rounding Way, string Why) AcrossLanding => IsOfPair ? (Rounding.Nearest, "to the nearest step") : Landing;

    /// <summary>Which way its height is landed.</summary>
    public (Rounding Way, string Why) Landing => IsInset ? (Rounding.Down, "down: it must go inside") : (Rounding.Nearest, "to the nearest step");
}

/// <summary>A door as it comes out.</summary>
/// <param name="Width">As made.</param>
/// <param name="Height">As made.</param>
/// <param name="Thickness">Where the hinges are.</param>
/// <param name="Hung">The key of the part that the hinges are let into.</param>
/// <param name="Solid">How wide it is beside a groove, where it is a stile; null for a slab.</param>
internal sealed record MadeDoor(QuantityKey Width, QuantityKey Height, QuantityKey Thickness, string Hung, Sum? Solid)
{
    /// <summary>Width of its stiles; null for a slab.</summary>
    public QuantityKey? Stile { get; init; }
}

/// <summary>How a door is made: of one sheet, or framed.</summary>
internal static class DoorMaking
{
    /// <summary>How thick doors of a kind are; null where their material is not one that does, with a finding.</summary>
    public static QuantityKey? ThicknessOf(Book book, Space space, DoorKind kind)
    {
        if (kind.Make is FramedPanel framed) return book.StickOf(framed.Stiles, space.Owner) is { } stick ? Book.ThicknessOf(stick.Name) : null;
        return book.PanelOf(((Slab)kind.Make).Of, space.Owner) is { } panel ? Book.ThicknessOf(panel.Name) : null;
    }

    /// <summary>Writes one door; null where its materials will not do, with a finding.</summary>
    public static MadeDoor? Write(Book book, DoorKind kind, DoorSpot spot) =>
        kind.Make is FramedPanel framed ? FramedDoor.Write(book, kind, framed, spot) : WriteSlab(book, (Slab)kind.Make, spot);

    private static MadeDoor? WriteSlab(Book book, Slab slab, DoorSpot spot)
    {
        (string key, string name) = (spot.Key, spot.Name);
        if (book.PanelOf(slab.Of, key) is not { } panel) return null;
        QuantityKey t = book.ThicknessOf(key, panel.Name);
        PartSize height = book.DefineSize(key, "height", $"{name}, height", spot.Height, PartRole.Door, panel, 2, spot.Landing);
        PartSize width = book.DefineSize(key, "width", $"{name}, width", spot.Width, PartRole.Door, panel, 2, spot.AcrossLanding);
        // The grain of a door stands upright.
        book.Add(new(key, key, name, PartRole.Door, panel.Name, height, width, t, 1, panel.Grain,
            [new(spot.X, spot.Y, spot.Z, book.Value(width.Made), book.Value(t), book.Value(height.Made))], spot.Place, spot.Held)
        { Seen = new(2, 2) });
        book.Show(new(height.Made, false, spot.Z, spot.Z + book.Value(height.Made), 0, spot.X));
        return new(width.Made, height.Made, t, key, null);
    }
}
